// SPDX-License-Identifier: MIT
#include "clampbook/exchange/rows.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/exchange/csv.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace clampbook::exchange {
namespace {

constexpr std::array k_columns{
    JointColumn{"machine_maker", &JointRow::machine_maker, true},
    JointColumn{"machine_model", &JointRow::machine_model, true},
    JointColumn{"machine_variant", &JointRow::machine_variant, false},
    JointColumn{"assembly", &JointRow::assembly, true},
    JointColumn{"joint", &JointRow::joint, true},
    JointColumn{"role", &JointRow::role, false},
    JointColumn{"count", &JointRow::count, false},
    JointColumn{"thread", &JointRow::thread, false},
    JointColumn{"property_class", &JointRow::property_class, false},
    JointColumn{"form", &JointRow::form, false},
    JointColumn{"ring", &JointRow::ring, false},
    JointColumn{"housing", &JointRow::housing, false},
    JointColumn{"engagement_mm", &JointRow::engagement_mm, false},
    JointColumn{"safety_critical", &JointRow::safety_critical, false},
    JointColumn{"tightening", &JointRow::tightening, true},
    JointColumn{"label", &JointRow::label, true},
    JointColumn{"source_kind", &JointRow::source_kind, false},
    JointColumn{"source_title", &JointRow::source_title, false},
    JointColumn{"source_number", &JointRow::source_number, false},
    JointColumn{"source_edition", &JointRow::source_edition, false},
    JointColumn{"source_date", &JointRow::source_date, false},
    JointColumn{"page", &JointRow::page, false},
    JointColumn{"entered_by", &JointRow::entered_by, true},
    JointColumn{"entered_on", &JointRow::entered_on, false},
    JointColumn{"note", &JointRow::note, false},
};

} // namespace

std::span<const JointColumn> joint_columns() noexcept { return k_columns; }

void read_joint_rows(std::istream& in, std::string_view name, const std::function<void(const JointRow&)>& on_row) {
    std::vector<std::string JointRow::*> cells;
    const auto on_header = [&](const CsvHeader& header) {
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
            cells.push_back(found->cell);
        }
        for (const JointColumn& column : k_columns) {
            if (column.needed) {
                (void)header.at(column.name, name);
            }
        }
    };
    read_csv(in, name, on_header, [&](const CsvRow& csv) {
        JointRow row;
        row.line = csv.line;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            row.*cells[i] = std::string{trim(csv.cells[i])};
        }
        on_row(row);
    });
}

} // namespace clampbook::exchange
