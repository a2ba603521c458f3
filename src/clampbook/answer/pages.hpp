// SPDX-License-Identifier: MIT
#pragma once

// Charts and pages as data: what a lesson, a sheet of exercises or a wall chart consists of, so that the terminal, the browser and
// the press only differ in form. Values stand in the canonical unit; `shown_in` is the unit for the eye.

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace clampbook::answer {

struct Axis {
    std::string title;
    std::string unit;     ///< of all values along it; empty for a bare number
    std::string shown_in; ///< the unit that it is labelled in: `kN`; empty for a bare number
    double low = 0;
    double high = 0;
    std::vector<double> ticks; ///< where it is labelled, low and high among them
};

/// Steps of 1, 2, 2.5 or 5 times a power of ten in the unit shown, about `parts` of them, that hold low and high.
[[nodiscard]] Axis nice_axis(std::string title, std::string unit, std::string shown_in, double low, double high,
                             std::size_t parts = 5);

/// For the eye, in the unit shown: as many decimals as the ticks need.
[[nodiscard]] std::string tick_words(const Axis& axis, double at);

enum class LineStyle { solid, dashed, dotted };

struct ChartLine {
    std::string name; ///< stands at its end
    LineStyle style = LineStyle::solid;
    std::vector<std::pair<double, double>> points; ///< at least two, x rising or standing still
};

/// A value worth seeing, as a line right through the chart.
struct ChartLimit {
    bool on_x = false;
    double at = 0;
    std::string words; ///< "proof load 33.7 kN"
};

/// A part of an axis that is shaded.
struct ChartBand {
    bool on_x = false;
    double low = 0;
    double high = 0;
    std::string words;
};

struct ChartPoint {
    double x = 0;
    double y = 0;
    std::string words;
};

struct BarPart {
    double from = 0;
    double to = 0;
    std::string name;      ///< stands in it where it fits
    std::size_t shade = 0; ///< 0 dark, 1 middle, 2 light, 3 empty: told apart in grey print too
};

struct ChartBar {
    std::string name;
    std::vector<BarPart> parts;
    std::string words; ///< behind its end: "52.1 N·m"
};

/// `lines`: lines over x. `columns`: how often values fall into equal parts of a band of x. `bars`: bars along x, one a row.
enum class ChartKind { lines, columns, bars };

struct Chart {
    ChartKind kind = ChartKind::lines;
    std::string title;
    std::string words; ///< what there is to see in it, one sentence
    Axis x;
    Axis y; ///< not of bars
    std::vector<ChartLine> lines;
    double columns_low = 0;
    double columns_high = 0;
    std::vector<double> columns; ///< heights in y
    std::vector<ChartBar> bars;  ///< from the top down
    std::vector<ChartLimit> limits;
    std::vector<ChartBand> bands;
    std::vector<ChartPoint> points;
};

/// What stands on a page, from the top down.
enum class BlockKind {
    title,    ///< begins a part that the contents name
    heading,  ///< within a part
    text,     ///< a paragraph
    small,    ///< a paragraph of lesser weight: notes, sources
    caution,  ///< a warning
    item,     ///< a paragraph behind a mark: "1", "•"
    command,  ///< what can be typed, and why
    step,     ///< of a computation: what, formula, result, source
    table,    ///< rows and columns
    chart,    ///< a drawing
    room,     ///< empty lines to write on
    contents, ///< the titles with their pages
    new_page, ///< what follows stands on another page
};

struct PageColumn {
    std::string title;
    bool number = false; ///< set to the right
};

struct PageBlock {
    BlockKind kind = BlockKind::text;
    std::string text;
    std::string mark;      ///< of an item or a step
    std::string formula;   ///< of a step, or why a command is worth typing
    std::string result;    ///< of a step
    std::string source;    ///< of a step: label, formula's clause
    std::size_t lines = 0; ///< of room
    std::vector<PageColumn> columns;
    std::vector<std::vector<std::string>> rows;
    std::optional<Chart> chart;
};

struct Pages {
    std::string title;
    std::string foot;  ///< stands under every page, before the page's number
    std::string date;  ///< ISO 8601
    bool wall = false; ///< a wall chart: on its side, in large type
    std::vector<PageBlock> blocks;

    PageBlock& add(BlockKind kind, std::string text);
};

/// Kinds and styles by their names in JSON.
[[nodiscard]] const char* name_of(BlockKind kind);
[[nodiscard]] const char* name_of(ChartKind kind);
[[nodiscard]] const char* name_of(LineStyle style);

} // namespace clampbook::answer
