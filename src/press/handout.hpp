// SPDX-License-Identifier: MIT
#pragma once

// Pages and charts as the press reads them: the public JSON `clampbook/pages/v1`. What they are about, the press doesn't know.

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace clampbook::press {

class Part;

struct Tick {
    double at = 0;
    std::string words;
};
struct Axis {
    std::string title; ///< with its unit
    double low = 0;
    double high = 0;
    std::vector<Tick> ticks;
};
enum class LineStyle { solid, dashed, dotted };
struct XY {
    double x = 0;
    double y = 0;
};
struct ChartLine {
    std::string name;
    LineStyle style = LineStyle::solid;
    std::vector<XY> points;
};
struct ChartLimit {
    bool on_x = false;
    double at = 0;
    std::string words;
};
struct ChartBand {
    bool on_x = false;
    double low = 0;
    double high = 0;
    std::string words;
};
struct ChartPoint {
    XY at;
    std::string words;
};
struct BarPart {
    double from = 0;
    double to = 0;
    std::string name;
    std::size_t shade = 0;
};
struct ChartBar {
    std::string name;
    std::vector<BarPart> parts;
    std::string words;
};
enum class ChartKind { lines, columns, bars };
struct Chart {
    ChartKind kind = ChartKind::lines;
    std::string title;
    std::string words;
    Axis x;
    Axis y;
    std::vector<ChartLine> lines;
    double columns_low = 0;
    double columns_high = 0;
    std::vector<double> columns;
    std::vector<ChartBar> bars;
    std::vector<ChartLimit> limits;
    std::vector<ChartBand> bands;
    std::vector<ChartPoint> points;
};

enum class Kind { title, heading, text, small, caution, item, command, step, table, chart, room, contents, new_page };
struct PageBlock {
    Kind kind = Kind::text;
    std::string text;
    std::string mark;
    std::string formula;
    std::string result;
    std::string source;
    std::size_t lines = 0;
    struct Column {
        std::string title;
        bool number = false;
    };
    std::vector<Column> columns;
    std::vector<std::vector<std::string>> rows;
    std::optional<Chart> chart;
};

struct Handout {
    std::string title;
    std::string foot;
    std::string date;
    bool wall = false;
    std::vector<PageBlock> blocks;
};

/// Throws invalid_data with the path of what is missing, of the wrong kind, or unknown.
[[nodiscard]] Handout read_handout(const Part& part);

} // namespace clampbook::press
