// SPDX-License-Identifier: MIT
#include "clampbook/exchange/rows.hpp"

#include "clampbook/base/cells.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/exchange/csv.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace clampbook::exchange {
namespace {

constexpr std::array k_columns{
    JointColumn{"machine_maker", &JointRow::machine_maker, true, false},
    JointColumn{"machine_model", &JointRow::machine_model, true, false},
    JointColumn{"machine_variant", &JointRow::machine_variant, false, false},
    JointColumn{"assembly", &JointRow::assembly, true, false},
    JointColumn{"joint", &JointRow::joint, true, false},
    JointColumn{"role", &JointRow::role, false, false},
    JointColumn{"count", &JointRow::count, false, true},
    JointColumn{"thread", &JointRow::thread, false, false},
    JointColumn{"property_class", &JointRow::property_class, false, false},
    JointColumn{"form", &JointRow::form, false, false},
    JointColumn{"ring", &JointRow::ring, false, false},
    JointColumn{"housing", &JointRow::housing, false, false},
    JointColumn{"engagement_mm", &JointRow::engagement_mm, false, true},
    JointColumn{"safety_critical", &JointRow::safety_critical, false, false},
    JointColumn{"tightening", &JointRow::tightening, true, false},
    JointColumn{"label", &JointRow::label, true, false},
    JointColumn{"source_kind", &JointRow::source_kind, false, false},
    JointColumn{"source_title", &JointRow::source_title, false, false},
    JointColumn{"source_number", &JointRow::source_number, false, false},
    JointColumn{"source_edition", &JointRow::source_edition, false, false},
    JointColumn{"source_date", &JointRow::source_date, false, false},
    JointColumn{"page", &JointRow::page, false, false},
    JointColumn{"entered_by", &JointRow::entered_by, true, false},
    JointColumn{"entered_on", &JointRow::entered_on, false, false},
    JointColumn{"note", &JointRow::note, false, false},
    JointColumn{"value_note", &JointRow::value_note, false, false},
    JointColumn{"confirmed", &JointRow::confirmed, false, false},
};

} // namespace

std::span<const JointColumn> joint_columns() noexcept { return k_columns; }

void read_joint_rows(std::istream& in, std::string_view name, const std::function<void(const JointRow&)>& on_row,
                     const OnFault& on_fault) {
    std::vector<const JointColumn*> columns;
    bool decimal_comma = false;
    const auto on_header = [&](const CsvHeader& header) {
        decimal_comma = header.separator == ';';
        std::vector<std::string> known;
        for (const JointColumn& column : k_columns) {
            known.emplace_back(column.name);
        }
        for (const std::string& typed : header.columns) {
            const auto* found = std::ranges::find(k_columns, typed, &JointColumn::name);
            if (found == k_columns.end()) {
                throw error(ErrorKind::invalid_data, "{}:1: the column '{}' is not known{}", name, typed,
                            did_you_mean(typed, known));
            }
            columns.push_back(found);
        }
        for (const JointColumn& column : k_columns) {
            if (column.needed) {
                (void)header.at(column.name, name);
            }
        }
    };
    const auto take = [&](const CsvRow& csv) {
        JointRow row;
        row.line = csv.line;
        for (std::size_t i = 0; i < columns.size(); ++i) {
            std::string text = from_spreadsheet_text(trim(csv.cells[i]));
            if (decimal_comma && columns[i]->number) {
                std::ranges::replace(text, ',', '.');
            }
            row.*columns[i]->cell = std::move(text);
        }
        on_row(row);
    };
    read_csv(in, name, on_header, take, on_fault);
}

std::string joint_header() {
    std::vector<std::string> names;
    for (const JointColumn& column : k_columns) {
        names.emplace_back(column.name);
    }
    return join(names, ",") + "\n";
}

std::string joint_line(const JointRow& row) {
    std::string out;
    append_joint_line(out, row);
    return out;
}

void append_joint_line(std::string& out, const JointRow& row) {
    for (const JointColumn& column : k_columns) {
        append_csv_cell(out, spreadsheet_text(trim(row.*column.cell))); // as it will be read
        out += ',';
    }
    out.back() = '\n';
}

} // namespace clampbook::exchange
