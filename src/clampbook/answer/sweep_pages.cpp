// SPDX-License-Identifier: MIT
// A table of answers as a page for the wall.

#include "clampbook/answer/sweep.hpp"

#include <algorithm>
#include <utility>

namespace clampbook::answer {
namespace {

std::vector<std::string> texts_of_column(const TableAnswer& table, std::size_t column) {
    std::vector<std::string> texts;
    for (const auto& row : table.rows) {
        if (std::ranges::find(texts, row[column].text) == texts.end()) {
            texts.push_back(row[column].text);
        }
    }
    return texts;
}

std::size_t column_of_cautions(const TableAnswer& table) {
    return static_cast<std::size_t>(std::ranges::find(table.columns, "cautions", &TableColumn::key) - table.columns.begin());
}

// The first input goes down, the second across; a field that was left out holds a dash.
void matrix(PageBlock& block, const Sweep& sweep) {
    const TableAnswer& table = sweep.table;
    const std::size_t down = sweep.varied[0];
    const std::size_t across = sweep.varied[1];
    const std::vector<std::string> lines = texts_of_column(table, down);
    const std::vector<std::string> heads = texts_of_column(table, across);
    block.columns.push_back({table.columns[down].title, false});
    for (const std::string& head : heads) {
        block.columns.push_back({table.columns[across].title + " " + head, true});
    }
    for (const std::string& line : lines) {
        std::vector<std::string> fields{line};
        for (const std::string& head : heads) {
            const auto row = std::ranges::find_if(
                table.rows, [&](const auto& one) { return one[down].text == line && one[across].text == head; });
            if (row == table.rows.end()) {
                fields.emplace_back("–");
                continue;
            }
            const bool marked = !(*row)[column_of_cautions(table)].text.empty();
            fields.push_back((*row)[sweep.cell->figure].text + (marked ? " !" : "") + "\n" + (*row)[sweep.cell->under].text);
        }
        block.rows.push_back(std::move(fields));
    }
}

void rows(PageBlock& block, const TableAnswer& table) {
    std::vector<std::size_t> shown;
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
        const bool empty = std::ranges::all_of(table.rows, [&](const auto& row) { return row[c].text.empty(); });
        if (!table.columns[c].hidden && !empty) {
            shown.push_back(c);
            block.columns.push_back({table.columns[c].title, table.columns[c].number});
        }
    }
    for (const auto& row : table.rows) {
        std::vector<std::string> fields;
        for (const std::size_t c : shown) {
            fields.push_back(row[c].text);
        }
        block.rows.push_back(std::move(fields));
    }
}

} // namespace

Pages wall_chart(const Sweep& sweep, std::string date) {
    const TableAnswer& table = sweep.table;
    Pages pages;
    pages.title = sweep.heading;
    pages.foot = "Generic figures, derived from published inputs: no maker's figure";
    pages.date = std::move(date);
    pages.wall = true;
    pages.add(BlockKind::title, sweep.heading);
    pages.add(BlockKind::text,
              "Derived, generic, no maker's figure." + (sweep.holds_for.empty() ? "" : " For " + sweep.holds_for + "."));
    if (sweep.cell && sweep.varied.size() == 2) {
        matrix(pages.add(BlockKind::table, {}), sweep);
        const auto marks = texts_of_column(table, column_of_cautions(table));
        const bool marked = std::ranges::any_of(marks, [](const std::string& mark) { return !mark.empty(); });
        const TableColumn& under = table.columns[sweep.cell->under];
        pages.add(BlockKind::small, "In each field: " + table.columns[sweep.cell->figure].title + ", and under it " +
                                        (under.key == "utilisation" ? "the share of the screw that is used" : under.title) +
                                        (marked ? ". A ! behind it: see the caution for marked fields." : "."));
    } else {
        rows(pages.add(BlockKind::table, {}), table);
    }
    for (const std::string& note : table.notes) {
        pages.add(BlockKind::small, note);
    }
    for (const Caution& caution : table.cautions) {
        pages.add(BlockKind::caution, caution.text);
    }
    return pages;
}

} // namespace clampbook::answer
