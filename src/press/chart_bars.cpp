// SPDX-License-Identifier: MIT
// Charts of bars along x.

#include "chart_parts.hpp"

#include <algorithm>
#include <array>

namespace clampbook::press {
namespace {

constexpr Style k_inside{8, true, false, 1};
constexpr Style k_inside_light{8, true, false, 0};
constexpr double k_row = 22;
constexpr double k_bar = 13;
constexpr std::array k_shades{0.2, 0.55, 0.85, 1.0};

class Bars {
public:
    Bars(const Chart& chart, const Fonts& fonts, double x, double y, double width)
        : chart_(chart), fonts_(fonts), x_(x), y_(y), frame_(frame_of(chart, fonts, x, y, width)),
          above_(fonts, frame_.left, x + width) {
        for (const ChartBand& band : chart.bands) {
            above_.add(frame_.at((band.low + band.high) / 2), band.words);
        }
        for (const ChartLimit& limit : chart.limits) {
            above_.add(frame_.at(limit.at), limit.words);
        }
        frame_.top = y + above_.height() + 2;
        frame_.bottom = frame_.top + k_row * static_cast<double>(chart.bars.size());
    }
    [[nodiscard]] double height() const { return frame_.bottom + k_under - y_; }

    void draw(Canvas& canvas) const {
        for (const ChartBand& band : chart_.bands) {
            canvas.box(frame_.at(band.low), frame_.top, frame_.at(band.high) - frame_.at(band.low), frame_.bottom - frame_.top,
                       0.92, 0);
        }
        for (const Tick& tick : chart_.x.ticks) {
            canvas.polyline({{frame_.at(tick.at), frame_.top}, {frame_.at(tick.at), frame_.bottom}}, 0.5, Stroke::solid, 0.85);
        }
        above_.draw(canvas, frame_.top - 2);
        for (const ChartBand& band : chart_.bands) {
            canvas.line(frame_.at(band.low), frame_.top, frame_.at(band.low), frame_.bottom, 0.8, Stroke::dashed);
            canvas.line(frame_.at(band.high), frame_.top, frame_.at(band.high), frame_.bottom, 0.8, Stroke::dashed);
        }
        for (const ChartLimit& limit : chart_.limits) {
            canvas.line(frame_.at(limit.at), above_.lowest(limit.words, frame_.top - 2), frame_.at(limit.at), frame_.bottom, 0.8,
                        Stroke::dashed);
        }
        double top = frame_.top;
        for (const ChartBar& bar : chart_.bars) {
            draw_bar(canvas, bar, top);
            top += k_row;
        }
        canvas.line(frame_.left, frame_.bottom, frame_.right, frame_.bottom, 0.9);
        canvas.line(frame_.left, frame_.top, frame_.left, frame_.bottom, 0.9);
        draw_x_axis(canvas, fonts_, frame_);
    }

private:
    static Frame frame_of(const Chart& chart, const Fonts& fonts, double x, double y, double width) {
        double names = 0;
        double words = 8;
        for (const ChartBar& bar : chart.bars) {
            names = std::max(names, width_of(fonts, bar.name));
            words = std::max(words, width_of(fonts, bar.words) + 8);
        }
        return {x + std::min(names, width * 0.35) + k_words_gap + 2, y, x + width - words, y, &chart.x};
    }
    void draw_bar(Canvas& canvas, const ChartBar& bar, double top) const {
        const Text name{fonts_, bar.name, k_chart_words, frame_.left - x_ - k_words_gap};
        canvas.text(name, x_, top + (k_row - name.height()) / 2);
        double end = frame_.left;
        for (const BarPart& part : bar.parts) {
            const double from = frame_.at(part.from);
            const double to = std::max(frame_.at(part.to), from + 1);
            canvas.box(from, top + (k_row - k_bar) / 2, to - from, k_bar, k_shades.at(part.shade), 0.6);
            const Text words{fonts_, part.name, part.shade <= 1 ? k_inside : k_inside_light, k_unbroken};
            if (!part.name.empty() && words.used_width() + 4 <= to - from) {
                canvas.text(words, (from + to - words.used_width()) / 2, top + (k_row - words.height()) / 2);
            }
            end = std::max(end, to);
        }
        const Text words{fonts_, bar.words, k_chart_words, k_unbroken};
        canvas.box(end + 2, top + (k_row - words.height()) / 2, words.used_width() + 4, words.height(), 1, 0);
        canvas.text(words, end + 4, top + (k_row - words.height()) / 2);
    }

    const Chart& chart_;
    const Fonts& fonts_;
    double x_;
    double y_;
    Frame frame_;
    Above above_;
};

} // namespace

double draw_bars(Canvas* canvas, const Chart& chart, const Fonts& fonts, double x, double y, double width) {
    const Bars bars{chart, fonts, x, y, width};
    if (canvas != nullptr) {
        bars.draw(*canvas);
    }
    return bars.height();
}

} // namespace clampbook::press
