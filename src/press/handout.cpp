// SPDX-License-Identifier: MIT
#include "handout.hpp"

#include "reader.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace clampbook::press {
namespace {

constexpr std::array k_chart_kinds{"lines", "columns", "bars"};
constexpr std::array k_styles{"solid", "dashed", "dotted"};
constexpr std::array k_axes{"x", "y"};
constexpr std::array k_block_kinds{"title", "heading", "text",  "small", "caution",  "item",    "command",
                                   "step",  "table",   "chart", "room",  "contents", "new_page"};
constexpr std::size_t k_shades_most = 4;
constexpr std::int64_t k_lines_most = 200;
constexpr double k_shortest_axis = 1e-9; // of the larger end, or of 1

Axis axis_of(const Part& part) {
    const std::string unit = part.text("shown_in");
    Axis out{part.text("title") + (unit.empty() ? "" : " [" + unit + "]"), part.number("low"), part.number("high"), {}};
    if (out.high - out.low < k_shortest_axis * std::max({1.0, std::abs(out.low), std::abs(out.high)})) {
        throw error(ErrorKind::invalid_data, "the axis '{}' has no length", out.title);
    }
    part.each("ticks", [&](const Part& tick) { out.ticks.push_back({tick.number("at"), tick.text("words")}); });
    return out;
}

ChartLine line_of_chart(const Part& part) {
    ChartLine out{part.text("name"), static_cast<LineStyle>(part.choice("style", k_styles)), {}};
    part.each("points", [&](const Part& point) {
        std::vector<double> pair;
        point.each([&](const Part& one) { pair.push_back(one.number()); });
        if (pair.size() != 2) {
            throw error(ErrorKind::invalid_data, "a point of the line '{}' has {} numbers, not two", out.name, pair.size());
        }
        out.points.push_back({pair[0], pair[1]});
    });
    if (out.points.size() < 2) {
        throw error(ErrorKind::invalid_data, "the line '{}' has fewer than two points", out.name);
    }
    return out;
}

ChartBar bar_of(const Part& part) {
    ChartBar out{part.text("name"), {}, part.text("words")};
    part.each("parts", [&](const Part& one) {
        const std::int64_t shade = one.whole("shade");
        if (shade < 0 || shade >= static_cast<std::int64_t>(k_shades_most)) {
            throw error(ErrorKind::invalid_data, "a part of the bar '{}' has the shade {}; there are 0 to {}", out.name, shade,
                        k_shades_most - 1);
        }
        out.parts.push_back({one.number("from"), one.number("to"), one.text("name"), static_cast<std::size_t>(shade)});
    });
    return out;
}

Chart chart_of(const Part& part) {
    Chart out;
    out.kind = static_cast<ChartKind>(part.choice("kind", k_chart_kinds));
    out.title = part.text("title");
    out.words = part.text("words");
    out.x = axis_of(part.at("x"));
    if (out.kind != ChartKind::bars) {
        out.y = axis_of(part.at("y"));
    }
    part.each("lines", [&](const Part& line) { out.lines.push_back(line_of_chart(line)); });
    if (out.kind == ChartKind::columns) {
        const Part columns = part.at("columns");
        out.columns_low = columns.number("low");
        out.columns_high = columns.number("high");
        columns.each("heights", [&](const Part& height) { out.columns.push_back(height.number()); });
    }
    part.each("bars", [&](const Part& bar) { out.bars.push_back(bar_of(bar)); });
    part.each("limits", [&](const Part& limit) {
        out.limits.push_back({limit.choice("axis", k_axes) == 0, limit.number("at"), limit.text("words")});
    });
    part.each("bands", [&](const Part& band) {
        out.bands.push_back({band.choice("axis", k_axes) == 0, band.number("low"), band.number("high"), band.text("words")});
    });
    part.each("points", [&](const Part& point) {
        out.points.push_back({{point.number("x"), point.number("y")}, point.text("words")});
    });
    return out;
}

PageBlock block_of(const Part& part) {
    PageBlock out;
    out.kind = static_cast<Kind>(part.choice("kind", k_block_kinds));
    out.text = part.text_or_nothing("text");
    out.mark = part.text_or_nothing("mark");
    out.formula = part.text_or_nothing("formula");
    out.result = part.text_or_nothing("result");
    out.source = part.text_or_nothing("source");
    if (out.kind == Kind::room) {
        const std::int64_t lines = part.whole("lines");
        if (lines < 0 || lines > k_lines_most) {
            throw error(ErrorKind::invalid_data, "room for {} lines is asked for; 0 to {} are possible", lines, k_lines_most);
        }
        out.lines = static_cast<std::size_t>(lines);
    }
    if (out.kind == Kind::table) {
        part.each("columns", [&](const Part& column) { out.columns.push_back({column.text("title"), column.yes("number")}); });
        part.each("rows", [&](const Part& row) {
            std::vector<std::string>& cells = out.rows.emplace_back();
            row.each([&](const Part& cell) { cells.push_back(cell.text()); });
            if (cells.size() != out.columns.size()) {
                throw error(ErrorKind::invalid_data, "a row of the table has {} cells for {} columns", cells.size(),
                            out.columns.size());
            }
        });
    }
    if (out.kind == Kind::chart) {
        out.chart = chart_of(part.at("chart"));
    }
    return out;
}

} // namespace

Handout read_handout(const Part& part) {
    Handout out{part.text("title"), part.text("foot"), part.text("date"), part.yes("wall"), {}};
    part.each("blocks", [&](const Part& block) { out.blocks.push_back(block_of(block)); });
    return out;
}

} // namespace clampbook::press
