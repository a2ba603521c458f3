// SPDX-License-Identifier: MIT
#include "chart_parts.hpp"

#include <algorithm>

namespace clampbook::press {
double width_of(const Fonts& fonts, const std::string& words) {
    return Text{fonts, words, k_chart_words, k_unbroken}.used_width();
}

void Above::add(double x, const std::string& words) {
    const double width = width_of(*fonts_, words);
    const double from = std::clamp(x - width / 2, low_, std::max(low_, high_ - width));
    std::size_t row = 0;
    const auto is_taken = [&](std::size_t at) {
        return std::ranges::any_of(words_, [&](const auto& one) {
            return one.row == at && from < one.x + one.width + k_words_gap && one.x < from + width + k_words_gap;
        });
    };
    while (is_taken(row)) {
        ++row;
    }
    rows_ = std::max(rows_, row + 1);
    words_.push_back({words, from, width, row});
}

void Above::draw(Canvas& canvas, double bottom) const {
    for (const auto& one : words_) {
        canvas.text(Text{*fonts_, one.words, k_chart_words, k_unbroken}, one.x,
                    bottom - static_cast<double>(one.row + 1) * k_words_line);
    }
}

double Above::lowest(const std::string& words, double bottom) const {
    const auto found = std::ranges::find_if(words_, [&](const auto& one) { return one.words == words; });
    return found == words_.end() ? bottom : bottom - static_cast<double>(found->row) * k_words_line;
}

void draw_x_axis(Canvas& canvas, const Fonts& fonts, const Frame& frame) {
    double free_from = -k_unbroken;
    for (const Tick& tick : frame.axis->ticks) {
        const double x = frame.at(tick.at);
        canvas.line(x, frame.bottom, x, frame.bottom + 3, 0.7);
        const Text words{fonts, tick.words, k_ticks, k_unbroken};
        if (x - words.used_width() / 2 > free_from) {
            canvas.text(words, x - words.used_width() / 2, frame.bottom + 4);
            free_from = x + words.used_width() / 2 + 3;
        }
    }
    const Text title{fonts, frame.axis->title, k_chart_words, k_unbroken};
    canvas.text(title, frame.right - title.used_width(), frame.bottom + 4 + k_words_line);
}

} // namespace clampbook::press
