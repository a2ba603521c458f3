// SPDX-License-Identifier: MIT
#pragma once

// The book's own records as documents and tables: what `book info`, `source list`, `machine show`, `history` and the
// like show; and the curated tables of `list`.

#include "clampbook/answer/document.hpp"
#include "clampbook/book/book.hpp"
#include "clampbook/reference/reference.hpp"

#include <optional>
#include <string>
#include <vector>

namespace clampbook::answer {

/// A table for the eye and for the machine: in text each column is as wide as it needs; empty columns are left out.
struct TableColumn {
    std::string key;
    std::string title;
    std::string unit;    ///< of the number in the cells, empty for text
    bool number = false; ///< right-aligned, a JSON number
    bool hidden = false; ///< left to CSV and JSON
};
struct TableCell {
    std::string text;
    std::optional<double> number;
};
struct TableAnswer {
    std::string schema;
    std::string title;
    std::string rows_key = "rows"; ///< JSON name of the list
    std::vector<TableColumn> columns;
    std::vector<std::vector<TableCell>> rows;
    std::vector<std::string> notes;
    std::vector<Caution> cautions = {};
    bool quantities = false; ///< numbers are quantities: JSON tells each with its unit and as it is printed
};

/// The tables that `list` knows, or one of them.
[[nodiscard]] TableAnswer list_topics(const reference::Reference& reference);
[[nodiscard]] TableAnswer list_table(const reference::Reference& reference, std::string_view topic);

/// Of a published copy that is damaged, a note says so.
[[nodiscard]] Document book_info(const book::Book& book);
[[nodiscard]] TableAnswer sources(const book::Book& book);
[[nodiscard]] Document source(const Source& source);
[[nodiscard]] TableAnswer machines(const book::Book& book);
/// A machine with its assemblies and joints.
[[nodiscard]] TableAnswer machine(const book::Book& book, const Machine& machine);
[[nodiscard]] TableAnswer assemblies(const book::Book& book, const Machine& machine);
/// All joints of the book, or those of one machine, each with its current values as written.
[[nodiscard]] TableAnswer joints(const book::Book& book, const std::optional<Machine>& machine);
/// The story of a joint: what was told of it, by whom and when.
[[nodiscard]] TableAnswer history(const book::Book& book, const book::Place& place);

/// Joints whose current values disagree, a row a value, and by how much each is off the lowest.
[[nodiscard]] TableAnswer conflicts(const book::Book& book);
/// What a published copy says of itself, in a line.
[[nodiscard]] std::string published_line(const book::Publication& copy);
/// What the audit found, a row a fault.
[[nodiscard]] TableAnswer audit(const book::Book& book);

/// The one machine that `text` means: model, "model, variant", maker and model, code, or number. Throws not_found with the
/// nearest, conflict with the machines that fit.
[[nodiscard]] Machine machine_named(const book::Book& book, std::string_view text);
/// The assembly of a machine by name; throws not_found with the nearest.
[[nodiscard]] Assembly assembly_named(const book::Book& book, const Machine& machine, std::string_view text);

} // namespace clampbook::answer
