// SPDX-License-Identifier: MIT
// What a chart is drawn from, as a table.

#include "clampbook/base/decimal.hpp"
#include "clampbook/teach/lesson.hpp"

namespace clampbook::teach {
namespace {

answer::TableCell number(double value) { return {print_shortest(value), value}; }

} // namespace

answer::TableAnswer chart_table(const answer::Chart& chart) {
    answer::TableAnswer table;
    table.schema = "teach-chart";
    table.title = chart.title;
    table.columns = {{"kind", "kind", "", false, false},
                     {"name", "name", "", false, false},
                     {"x", chart.x.title, chart.x.unit, true, false},
                     {"x_to", chart.x.title + ", to", chart.x.unit, true, false},
                     {"y", chart.y.title, chart.y.unit, true, false}};
    const answer::TableCell none{"", std::nullopt};
    const auto add = [&](const char* kind, const std::string& name, answer::TableCell x, answer::TableCell x_to,
                         answer::TableCell y) {
        table.rows.push_back({{kind, std::nullopt}, {name, std::nullopt}, std::move(x), std::move(x_to), std::move(y)});
    };
    for (const answer::ChartLine& line : chart.lines) {
        for (const auto& [x, y] : line.points) {
            add("line", line.name, number(x), none, number(y));
        }
    }
    const double step =
        chart.columns.empty() ? 0 : (chart.columns_high - chart.columns_low) / static_cast<double>(chart.columns.size());
    for (std::size_t i = 0; i < chart.columns.size(); ++i) {
        const double from = chart.columns_low + static_cast<double>(i) * step;
        add("column", "", number(from), number(from + step), number(chart.columns[i]));
    }
    for (const answer::ChartBar& bar : chart.bars) {
        for (const answer::BarPart& part : bar.parts) {
            add("bar", bar.name + (part.name.empty() ? "" : ": " + part.name), number(part.from), number(part.to), none);
        }
    }
    for (const answer::ChartBand& band : chart.bands) {
        add("band", band.words, number(band.low), number(band.high), none);
    }
    for (const answer::ChartLimit& limit : chart.limits) {
        add("limit", limit.words, limit.on_x ? number(limit.at) : none, none, limit.on_x ? none : number(limit.at));
    }
    for (const answer::ChartPoint& point : chart.points) {
        add("point", point.words, number(point.x), none, number(point.y));
    }
    return table;
}

} // namespace clampbook::teach
