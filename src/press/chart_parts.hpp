// SPDX-License-Identifier: MIT
#pragma once

// What the kinds of chart have in common: how words are set, where a value lies, the x axis and the words over a chart.

#include "canvas.hpp"
#include "handout.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace clampbook::press {

inline constexpr Style k_chart_words{8};
inline constexpr Style k_ticks{8, false, false, 0.25};
inline constexpr double k_unbroken = 1e4;    ///< a width that no words reach
inline constexpr double k_words_line = 10.5; ///< from one line of words to the next
inline constexpr double k_words_gap = 5;
inline constexpr double k_under = 4 + 2 * k_words_line + 4; ///< tick words and the axis's title

[[nodiscard]] double width_of(const Fonts& fonts, const std::string& words);

/// Rows of words centred at places over the chart; those that would meet others stand a row higher.
class Above {
public:
    Above(const Fonts& fonts, double low, double high) : fonts_(&fonts), low_(low), high_(high) {}
    void add(double x, const std::string& words);
    [[nodiscard]] double height() const { return static_cast<double>(rows_) * k_words_line; }
    /// `bottom` is where the lowest row ends.
    void draw(Canvas& canvas, double bottom) const;
    /// Where the row of these words ends.
    [[nodiscard]] double lowest(const std::string& words, double bottom) const;

private:
    struct One {
        std::string words;
        double x;
        double width;
        std::size_t row;
    };
    const Fonts* fonts_;
    double low_;
    double high_;
    std::size_t rows_ = 0;
    std::vector<One> words_;
};

/// The area that is plotted in, and where a value of the x axis lies.
struct Frame {
    double left;
    double top;
    double right;
    double bottom;
    const Axis* axis;

    [[nodiscard]] double at(double value) const { return left + (value - axis->low) / (axis->high - axis->low) * (right - left); }
};

void draw_x_axis(Canvas& canvas, const Fonts& fonts, const Frame& frame);

/// Bars along x, one a row, from the upper left corner; without a canvas it is only measured. Gives the height.
double draw_bars(Canvas* canvas, const Chart& chart, const Fonts& fonts, double x, double y, double width);

} // namespace clampbook::press
