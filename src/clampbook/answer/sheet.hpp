// SPDX-License-Identifier: MIT
#pragma once

// The shop's spec sheet: what holds now for the joints that were asked for, by machine and assembly, each figure with its label,
// check and source; and a foot from which a reader can tell years later which book, at which revision, said so. The texts that a
// page shows are made here, once for all forms.

#include "clampbook/answer/find.hpp"
#include "clampbook/answer/records.hpp"
#include "clampbook/book/book.hpp"
#include "clampbook/reference/reference.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace clampbook::answer {

struct SheetRequest {
    std::string words;              ///< joints that fit these words; empty: all
    std::optional<Machine> machine; ///< joints of this machine alone
    bool only_checked = false;
    std::string since; ///< a revision, or a date like 2026-11-25; empty: nothing is marked
    std::string title; ///< empty: one is made from what was asked
    std::string prepared_by;
    std::string date; ///< of the sheet, ISO 8601
};

/// One value as a line of the sheet.
struct SheetLine {
    FoundValue found;
    std::string sign;   ///< "?" unchecked, "~" derived or common practice, "~?" both, empty: checked and told by somebody
    std::string state;  ///< "maker, checked"
    std::string source; ///< "[2] p. 45", by the number in the foot; empty where none was given
    std::string change; ///< since the revision asked for: "new", "new, in place of 32 N·m", "withdrawn: …"; empty: as before
};

struct SheetJoint {
    Joint joint;
    std::string screws;           ///< "8 × M10 8.8"
    std::string ring;             ///< "copper ring 18×22×1.5 mm (usual size), renew at every opening"
    std::vector<SheetLine> lines; ///< current values; empty where the book has none
    std::vector<SheetLine> ended; ///< since the revision asked for
    std::string disagreement;     ///< set where current values disagree
};

struct SheetAssembly {
    Machine machine;
    Assembly assembly;
    std::vector<SheetJoint> joints;
};

struct Sheet {
    std::string title;
    std::string chosen; ///< "all joints", "joints that fit 'drain'", "…; checked values alone"
    std::string prepared_by;
    std::string date;
    std::int64_t revision = 0; ///< of the book: how many events it holds
    std::string digest;        ///< hash of the last of them
    std::string since;         ///< "revision 40 (2026-10-01)"; empty where nothing is marked
    std::vector<SheetAssembly> assemblies;
    std::vector<Source> sources;                                 ///< in the order of their numbers, from 1
    std::vector<std::pair<std::string, std::size_t>> checked_by; ///< who checked how many of the values
    std::size_t joints = 0;
    std::size_t values = 0;
    std::size_t checked = 0;
    std::size_t without_value = 0; ///< joints on the sheet without a figure
    std::size_t left_out = 0;      ///< joints without a checked value, where only those were wanted
    std::vector<Caution> cautions;
};

/// Throws not_found where no joint fits, usage where `since` is no revision of this book and no date up to today.
[[nodiscard]] Sheet sheet(const book::Book& book, const reference::Reference& reference, const SheetRequest& request);

/// The sheet as rows, a row a value, for CSV.
[[nodiscard]] TableAnswer sheet_table(const Sheet& sheet);

/// What the signs mean, for the head of a sheet.
[[nodiscard]] std::string sheet_legend();

} // namespace clampbook::answer
