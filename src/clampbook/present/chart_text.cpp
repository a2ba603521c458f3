// SPDX-License-Identifier: MIT
// Charts for a terminal: in block characters, or in plain ASCII. What words a chart needs stand beside or under it, so that none
// covers a line.

#include "clampbook/base/text.hpp"
#include "clampbook/present/layout.hpp"
#include "clampbook/present/present.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace clampbook::present {
namespace {

using answer::Chart;
using answer::ChartKind;

constexpr std::size_t k_rows = 17;

// The signs that a chart is drawn with.
struct Signs {
    std::array<const char*, 3> line;  ///< by style
    std::array<const char*, 4> shade; ///< by shade
    const char* upright;
    const char* flat;
    const char* corner;
    const char* limit_flat;
    const char* limit_upright;
};
constexpr Signs k_blocks{{"█", "▒", "•"}, {"█", "▓", "░", "·"}, "│", "─", "└", "╌", "┊"};
constexpr Signs k_plain{{"#", "+", "."}, {"#", "=", "-", "."}, "|", "-", "+", "-", ":"};

// One place a column, so that rows can be written over.
class Grid {
public:
    Grid(std::size_t rows, std::size_t columns) : cells_(rows, std::vector<std::string>(columns, " ")) {}

    void set(std::size_t row, std::size_t column, const std::string& sign) {
        if (row < cells_.size() && column < cells_[row].size()) {
            cells_[row][column] = sign;
        }
    }
    [[nodiscard]] bool is_free(std::size_t row, std::size_t column) const { return cells_.at(row).at(column) == " "; }
    [[nodiscard]] std::string row(std::size_t at) const { return join(cells_.at(at), ""); }
    [[nodiscard]] std::size_t columns() const { return cells_.front().size(); }

private:
    std::vector<std::vector<std::string>> cells_;
};

std::size_t place(double at, double low, double high, std::size_t places) {
    const double share = std::clamp((at - low) / (high - low), 0.0, 1.0);
    return static_cast<std::size_t>(std::lround(share * static_cast<double>(places - 1)));
}

std::string without_end_blanks(std::string line) {
    line.erase(line.find_last_not_of(' ') + 1);
    return line + "\n";
}

std::string axis_title(const answer::Axis& axis) {
    return axis.title + (axis.shown_in.empty() ? "" : " [" + axis.shown_in + "]");
}

// Words set at places of a line of their own; those that would run into others go to the next line.
std::string placed(std::vector<std::pair<std::size_t, std::string>> words, std::size_t width) {
    std::ranges::stable_sort(words, {}, [](const auto& one) { return one.first; });
    std::vector<std::string> lines;
    for (const auto& [at, text] : words) {
        const std::size_t size = display_width(text);
        const std::size_t middle = at >= size / 2 ? at - size / 2 : 0;
        const std::size_t from = size >= width ? 0 : std::min(middle, width - size);
        auto line = std::ranges::find_if(lines, [&](const std::string& l) { return l.empty() || display_width(l) + 1 <= from; });
        if (line == lines.end()) {
            line = lines.insert(lines.end(), std::string{});
        }
        *line = pad_right(*line, from) + text;
    }
    std::string out;
    for (std::string& line : lines) {
        out += without_end_blanks(std::move(line));
    }
    return out;
}

std::string indented(const std::string& lines, std::size_t columns) {
    std::string out;
    for (const std::string& line : split(lines, '\n')) {
        out += line.empty() ? "" : std::string(columns, ' ') + line + "\n";
    }
    return out;
}

std::string tick_line(const answer::Axis& axis, std::size_t places, std::size_t gutter, std::size_t width) {
    std::vector<std::pair<std::size_t, std::string>> words;
    std::size_t free_from = 0;
    for (const double at : axis.ticks) {
        const std::string text = answer::tick_words(axis, at);
        const std::size_t middle = gutter + place(at, axis.low, axis.high, places);
        if (words.empty() || middle >= free_from + text.size() / 2) { // ticks too near to each other are left out
            words.emplace_back(middle, text);
            free_from = middle + text.size() / 2 + 2;
        }
    }
    return placed(std::move(words), width) + without_end_blanks(pad_left(axis_title(axis), std::min(gutter + places, width)));
}

// Words at rows, moved apart where two would share one.
class Margin {
public:
    explicit Margin(std::size_t rows) : rows_(rows) {}
    void add(std::size_t row, const std::string& words) {
        for (std::size_t away = 0; away < rows_.size(); ++away) {
            for (const std::size_t at : {row + away, row - away}) {
                if (at < rows_.size() && rows_[at].empty()) {
                    rows_[at] = words;
                    return;
                }
            }
        }
    }
    [[nodiscard]] const std::string& at(std::size_t row) const { return rows_.at(row); }

private:
    std::vector<std::string> rows_;
};

// Over x and y: lines or columns, limits, points.
class Plot {
public:
    Plot(const Chart& chart, std::size_t width, const Signs& signs)
        : chart_(chart), signs_(signs), width_(width), gutter_(gutter_of(chart) + 2), margin_width_(margin_of(chart, width)),
          grid_(k_rows, width - gutter_ - margin_width_), margin_(k_rows) {}

    [[nodiscard]] std::string drawn() {
        draw_columns();
        for (const answer::ChartLimit& limit : chart_.limits) {
            draw_limit(limit);
        }
        for (const answer::ChartLine& line : chart_.lines) {
            draw_line(line);
        }
        std::size_t number = 0;
        for (const answer::ChartPoint& point : chart_.points) {
            grid_.set(row_of(point.y), column_of(point.x), std::to_string(++number));
        }
        std::string out = axis_title(chart_.y) + "\n";
        for (std::size_t row = 0; row < k_rows; ++row) {
            out += without_end_blanks(pad_left(y_label(row), gutter_ - 2) + " " + signs_.upright + grid_.row(row) + " " +
                                      margin_.at(row));
        }
        out += std::string(gutter_ - 1, ' ') + signs_.corner;
        for (std::size_t i = 0; i < grid_.columns(); ++i) {
            out += signs_.flat;
        }
        return out + "\n" + tick_line(chart_.x, grid_.columns(), gutter_, width_) +
               indented(placed(under_, width_ - gutter_), gutter_) + legend();
    }

private:
    static std::size_t gutter_of(const Chart& chart) {
        std::size_t out = 0;
        for (const double at : chart.y.ticks) {
            out = std::max(out, answer::tick_words(chart.y, at).size());
        }
        return out;
    }
    static std::size_t margin_of(const Chart& chart, std::size_t width) {
        std::size_t out = 0;
        for (const answer::ChartLine& line : chart.lines) {
            out = std::max(out, display_width(line.name) + 3);
        }
        for (const answer::ChartLimit& limit : chart.limits) {
            out = std::max(out, limit.on_x ? 0 : display_width(limit.words) + 1);
        }
        return std::min(out, width / 2);
    }
    [[nodiscard]] std::size_t row_of(double y) const { return k_rows - 1 - place(y, chart_.y.low, chart_.y.high, k_rows); }
    [[nodiscard]] std::size_t column_of(double x) const { return place(x, chart_.x.low, chart_.x.high, grid_.columns()); }
    [[nodiscard]] std::string y_label(std::size_t row) const {
        for (const double at : chart_.y.ticks) {
            if (row_of(at) == row) {
                return answer::tick_words(chart_.y, at);
            }
        }
        return {};
    }
    void draw_columns() {
        if (chart_.kind != ChartKind::columns) {
            return;
        }
        const double step = (chart_.columns_high - chart_.columns_low) / static_cast<double>(chart_.columns.size());
        const double across = (chart_.x.high - chart_.x.low) / static_cast<double>(grid_.columns());
        for (std::size_t c = 0; c < grid_.columns(); ++c) {
            const double x = chart_.x.low + (static_cast<double>(c) + 0.5) * across;
            const double part = (x - chart_.columns_low) / step;
            if (part < 0 || part >= static_cast<double>(chart_.columns.size())) {
                continue;
            }
            const double height = chart_.columns[static_cast<std::size_t>(part)];
            const double rows = height / (chart_.y.high - chart_.y.low) * static_cast<double>(k_rows);
            for (std::size_t r = 0; static_cast<double>(r) + 0.5 <= rows; ++r) {
                grid_.set(k_rows - 1 - r, c, signs_.shade[1]);
            }
        }
    }
    void draw_limit(const answer::ChartLimit& limit) {
        if (!limit.on_x) {
            const std::size_t row = row_of(limit.at);
            for (std::size_t c = 0; c < grid_.columns(); ++c) {
                grid_.set(row, c, signs_.limit_flat);
            }
            margin_.add(row, limit.words);
            return;
        }
        const std::size_t column = column_of(limit.at);
        for (std::size_t r = 0; r < k_rows; ++r) {
            grid_.set(r, column, signs_.limit_upright);
        }
        under_.emplace_back(column, limit.words);
    }
    void draw_line(const answer::ChartLine& line) {
        const char* sign = signs_.line.at(static_cast<std::size_t>(line.style));
        for (std::size_t i = 1; i < line.points.size(); ++i) {
            const auto [x1, y1] = line.points[i - 1];
            const auto [x2, y2] = line.points[i];
            constexpr int k_parts = 400;
            for (int part = 0; part <= k_parts; ++part) {
                const double t = static_cast<double>(part) / k_parts;
                grid_.set(row_of(y1 + t * (y2 - y1)), column_of(x1 + t * (x2 - x1)), sign);
            }
        }
        margin_.add(row_of(line.points.back().second), std::string{sign} + " " + line.name);
    }
    [[nodiscard]] std::string legend() const {
        std::string out;
        std::size_t number = 0;
        for (const answer::ChartPoint& point : chart_.points) {
            out += "  " + std::to_string(++number) + "  " + point.words + "\n";
        }
        return out;
    }

    const Chart& chart_;
    const Signs& signs_;
    std::size_t width_;
    std::size_t gutter_;
    std::size_t margin_width_;
    Grid grid_;
    Margin margin_;
    std::vector<std::pair<std::size_t, std::string>> under_;
};

std::string bars(const Chart& chart, std::size_t width, const Signs& signs) {
    std::size_t names = 0;
    std::size_t words = 0;
    for (const answer::ChartBar& bar : chart.bars) {
        names = std::max(names, display_width(bar.name));
        words = std::max(words, display_width(bar.words));
    }
    const std::size_t gutter = names + 2;
    const std::size_t places = width - gutter - (words == 0 ? 0 : words + 1);
    const auto at = [&](double x) { return place(x, chart.x.low, chart.x.high, places + 1); };
    std::string out;
    std::vector<std::pair<std::string, std::size_t>> legend;
    for (const answer::ChartBar& bar : chart.bars) {
        Grid grid{1, places};
        for (const answer::BarPart& part : bar.parts) {
            for (std::size_t c = at(part.from); c < std::max(at(part.to), at(part.from) + 1); ++c) {
                grid.set(0, c, signs.shade.at(part.shade));
            }
            if (!part.name.empty() && std::ranges::find(legend, std::pair{part.name, part.shade}) == legend.end()) {
                legend.emplace_back(part.name, part.shade);
            }
        }
        out += without_end_blanks(pad_right(bar.name, names) + " " + signs.upright + grid.row(0) + " " + bar.words);
    }
    out += std::string(gutter - 1, ' ') + signs.corner;
    for (std::size_t i = 0; i < places; ++i) {
        out += signs.flat;
    }
    out += "\n" + tick_line(chart.x, places + 1, gutter, width);
    for (const answer::ChartBand& band : chart.bands) {
        const std::size_t from = gutter + at(band.low);
        const std::size_t between = at(band.high) > at(band.low) + 1 ? at(band.high) - at(band.low) - 1 : 0;
        out +=
            std::string(from, ' ') + "[" + std::string(between, '=') + "]\n" + placed({{from + between / 2, band.words}}, width);
    }
    std::string names_line;
    for (const auto& [name, shade] : legend) {
        names_line += (names_line.empty() ? "  " : "   ") + std::string{signs.shade.at(shade)} + " " + name;
    }
    return out + (names_line.empty() ? "" : names_line + "\n");
}

} // namespace

std::string text(const answer::Chart& chart, const Layout& layout) {
    const Signs& signs = layout.ascii ? k_plain : k_blocks;
    std::string out = chart.title + "\n\n";
    out += chart.kind == ChartKind::bars ? bars(chart, layout.width, signs) : Plot{chart, layout.width, signs}.drawn();
    if (!chart.words.empty()) {
        out += "\n";
        for (const std::string& line : wrap(chart.words, layout.width)) {
            out += line + "\n";
        }
    }
    return layout.ascii ? ascii(out) : out;
}

} // namespace clampbook::present
