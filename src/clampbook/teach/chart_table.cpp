// SPDX-License-Identifier: MIT
// What a chart is drawn from, as a table.

#include "clampbook/teach/lesson.hpp"
#include "clampbook/units/reading.hpp"

namespace clampbook::teach {
namespace {

// In the unit that the axis is labelled in.
answer::TableCell cell(const answer::Axis& axis, double value) {
    const double shown = axis.shown_in.empty() ? value : unit_named(axis.shown_in).from_canonical(value);
    return {answer::print_quantity(shown, axis.shown_in, 4), value};
}

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
    const auto on_x = [&](double value) { return cell(chart.x, value); };
    const auto on_y = [&](double value) { return cell(chart.y, value); };
    const auto add = [&](const char* kind, const std::string& name, answer::TableCell x, answer::TableCell x_to,
                         answer::TableCell y) {
        table.rows.push_back({{kind, std::nullopt}, {name, std::nullopt}, std::move(x), std::move(x_to), std::move(y)});
    };
    for (const answer::ChartLine& line : chart.lines) {
        for (const auto& [x, y] : line.points) {
            add("line", line.name, on_x(x), none, on_y(y));
        }
    }
    const double step =
        chart.columns.empty() ? 0 : (chart.columns_high - chart.columns_low) / static_cast<double>(chart.columns.size());
    for (std::size_t i = 0; i < chart.columns.size(); ++i) {
        const double from = chart.columns_low + static_cast<double>(i) * step;
        add("column", "", on_x(from), on_x(from + step), on_y(chart.columns[i]));
    }
    for (const answer::ChartBar& bar : chart.bars) {
        for (const answer::BarPart& part : bar.parts) {
            add("bar", bar.name + (part.name.empty() ? "" : ": " + part.name), on_x(part.from), on_x(part.to), none);
        }
    }
    for (const answer::ChartBand& band : chart.bands) {
        add("band", band.words, on_x(band.low), on_x(band.high), none);
    }
    for (const answer::ChartLimit& limit : chart.limits) {
        add("limit", limit.words, limit.on_x ? on_x(limit.at) : none, none, limit.on_x ? none : on_y(limit.at));
    }
    for (const answer::ChartPoint& point : chart.points) {
        add("point", point.words, on_x(point.x), none, on_y(point.y));
    }
    return table;
}

} // namespace clampbook::teach
