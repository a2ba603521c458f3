// SPDX-License-Identifier: MIT
#pragma once

// The exchange file as rows: one a joint and value, in the words that people and spreadsheets write. Here the columns are
// known by name and nothing more; what the cells mean is judged by the intake. It carries what holds now; a book's whole story
// goes through `export.hpp`.

#include "clampbook/exchange/csv.hpp"

#include <cstddef>
#include <functional>
#include <iosfwd>
#include <span>
#include <string>
#include <string_view>

namespace clampbook::exchange {

/// One row, a text a column; empty where the file has no such column or the cell is empty.
struct JointRow {
    std::size_t line = 0;
    std::string machine_maker;
    std::string machine_model;
    std::string machine_variant;
    std::string assembly;
    std::string joint;
    std::string role;
    std::string count;
    std::string thread;
    std::string property_class;
    std::string form;
    std::string ring;
    std::string housing;
    std::string engagement_mm;
    std::string safety_critical;
    std::string tightening;
    std::string label;
    std::string source_kind;
    std::string source_title;
    std::string source_number;
    std::string source_edition;
    std::string source_date;
    std::string page;
    std::string entered_by;
    std::string entered_on;
    std::string note;       ///< of the joint
    std::string value_note; ///< of the value alone
    std::string confirmed;  ///< why an implausible value stands all the same
};

struct JointColumn {
    std::string_view name;
    std::string JointRow::*cell;
    bool needed; ///< the header must have it
    bool number; ///< a number, which a file with semicolons may write with a decimal comma
};

/// The columns in the order in which they are written.
[[nodiscard]] std::span<const JointColumn> joint_columns() noexcept;

/// Reads the rows of a file one by one. Throws invalid_data for an unknown column (with the nearest known one), for a
/// needed column that is missing, and for all that `read_csv` refuses; `on_fault` as there.
void read_joint_rows(std::istream& in, std::string_view name, const std::function<void(const JointRow&)>& on_row,
                     const OnFault& on_fault = {});

/// Header line and rows as `read_joint_rows` reads them; what a spreadsheet would run as a formula is kept from it.
[[nodiscard]] std::string joint_header();
[[nodiscard]] std::string joint_line(const JointRow& row);
/// The same at the end of `out`.
void append_joint_line(std::string& out, const JointRow& row);

} // namespace clampbook::exchange
