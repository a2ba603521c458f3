// SPDX-License-Identifier: MIT
#include "clampbook/base/cells.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/present/present.hpp"

namespace clampbook::present {

std::string csv(const answer::TableAnswer& table) {
    std::string out;
    const auto line = [&](const std::vector<std::string>& cells) {
        for (std::size_t i = 0; i < cells.size(); ++i) {
            out += (i == 0 ? "" : ",") + csv_cell(cells[i]);
        }
        out += "\n";
    };
    std::vector<std::string> header;
    for (const answer::TableColumn& column : table.columns) {
        header.push_back(column.key + (column.unit.empty() ? "" : "[" + column.unit + "]"));
        if (!column.unit.empty()) {
            header.push_back(column.key + "_print");
        }
    }
    line(header);
    for (const auto& row : table.rows) {
        std::vector<std::string> cells;
        for (std::size_t c = 0; c < table.columns.size(); ++c) {
            const bool number = table.columns[c].number;
            cells.push_back(!number ? spreadsheet_text(row[c].text) : row[c].number ? print_shortest(*row[c].number) : "");
            if (!table.columns[c].unit.empty()) {
                cells.push_back(row[c].text);
            }
        }
        line(cells);
    }
    return out;
}

} // namespace clampbook::present
