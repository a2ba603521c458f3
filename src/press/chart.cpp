// SPDX-License-Identifier: MIT
#include "chart.hpp"

#include "chart_parts.hpp"

#include <algorithm>

namespace clampbook::press {
namespace {

constexpr double k_plot = 190; // height of what is plotted

struct Rect {
    double x = 0;
    double y = 0;
    double width = 0;
    double height = 0;

    [[nodiscard]] bool meets(const Rect& other) const {
        return x < other.x + other.width && other.x < x + width && y < other.y + other.height && other.y < y + height;
    }
    [[nodiscard]] bool holds(const Point& point) const {
        return point.x > x - 1 && point.x < x + width + 1 && point.y > y - 1 && point.y < y + height + 1;
    }
};

class Plot {
public:
    Plot(const Chart& chart, const Fonts& fonts, double x, double y, double width)
        : chart_(chart), fonts_(fonts), frame_(frame_of(chart, fonts, x, y, width)), above_(fonts, frame_.left, x + width),
          title_y_(y) {
        for (const ChartLimit& limit : chart.limits) {
            if (limit.on_x) {
                above_.add(frame_.at(limit.at), limit.words);
            }
        }
        for (const ChartBand& band : chart.bands) {
            if (band.on_x) {
                above_.add(frame_.at((band.low + band.high) / 2), band.words);
            }
        }
        frame_.top = y + k_words_line + above_.height() + 2;
        frame_.bottom = frame_.top + k_plot;
    }
    [[nodiscard]] double height() const { return frame_.bottom + k_under - title_y_; }

    void draw(Canvas& canvas) {
        const Text title{fonts_, chart_.y.title, k_chart_words, k_unbroken};
        canvas.text(title, frame_.left - gutter_of(chart_, fonts_), title_y_);
        draw_bands(canvas);
        draw_grid(canvas);
        draw_columns(canvas);
        draw_limits(canvas);
        draw_lines(canvas);
        draw_points(canvas);
        draw_margin(canvas);
        canvas.line(frame_.left, frame_.bottom, frame_.right, frame_.bottom, 0.9);
        canvas.line(frame_.left, frame_.top, frame_.left, frame_.bottom, 0.9);
        draw_x_axis(canvas, fonts_, frame_);
    }

private:
    static double gutter_of(const Chart& chart, const Fonts& fonts) {
        double out = 0;
        for (const Tick& tick : chart.y.ticks) {
            out = std::max(out, width_of(fonts, tick.words));
        }
        return out + k_words_gap;
    }
    static Frame frame_of(const Chart& chart, const Fonts& fonts, double x, double y, double width) {
        double margin = 8;
        for (const ChartLine& line : chart.lines) {
            margin = std::max(margin, width_of(fonts, line.name) + 14);
        }
        for (const ChartLimit& limit : chart.limits) {
            margin = std::max(margin, limit.on_x ? 0.0 : width_of(fonts, limit.words) + 14);
        }
        return {x + gutter_of(chart, fonts), y, x + width - std::min(margin, width * 0.4), y, &chart.x};
    }
    [[nodiscard]] double y_at(double value) const {
        return frame_.bottom - (value - chart_.y.low) / (chart_.y.high - chart_.y.low) * (frame_.bottom - frame_.top);
    }
    [[nodiscard]] Point point_at(const XY& xy) const { return {frame_.at(xy.x), y_at(xy.y)}; }

    void draw_bands(Canvas& canvas) const {
        for (const ChartBand& band : chart_.bands) {
            if (band.on_x) {
                canvas.box(frame_.at(band.low), frame_.top, frame_.at(band.high) - frame_.at(band.low), k_plot, 0.92, 0);
            } else {
                canvas.box(frame_.left, y_at(band.high), frame_.right - frame_.left, y_at(band.low) - y_at(band.high), 0.92, 0);
            }
        }
    }
    void draw_grid(Canvas& canvas) const {
        for (const Tick& tick : chart_.y.ticks) {
            const double y = y_at(tick.at);
            canvas.polyline({{frame_.left, y}, {frame_.right, y}}, 0.5, Stroke::solid, 0.85);
            const Text words{fonts_, tick.words, k_ticks, k_unbroken};
            canvas.text(words, frame_.left - k_words_gap - words.used_width() + 1, y - words.height() / 2);
        }
        for (const Tick& tick : chart_.x.ticks) {
            canvas.polyline({{frame_.at(tick.at), frame_.top}, {frame_.at(tick.at), frame_.bottom}}, 0.5, Stroke::solid, 0.85);
        }
    }
    void draw_columns(Canvas& canvas) const {
        const double step =
            chart_.columns.empty() ? 0 : (chart_.columns_high - chart_.columns_low) / static_cast<double>(chart_.columns.size());
        for (std::size_t i = 0; i < chart_.columns.size(); ++i) {
            const double from = frame_.at(chart_.columns_low + static_cast<double>(i) * step);
            const double to = frame_.at(chart_.columns_low + static_cast<double>(i + 1) * step);
            const double y = y_at(chart_.columns[i]);
            canvas.box(from, y, to - from, frame_.bottom - y, 0.75, 0.5);
        }
    }
    void draw_limits(Canvas& canvas) const {
        for (const ChartLimit& limit : chart_.limits) {
            if (limit.on_x) {
                const double x = frame_.at(limit.at);
                canvas.line(x, above_.lowest(limit.words, frame_.top - 2), x, frame_.bottom, 0.8, Stroke::dashed);
            } else {
                canvas.line(frame_.left, y_at(limit.at), frame_.right, y_at(limit.at), 0.8, Stroke::dashed);
            }
        }
        above_.draw(canvas, frame_.top - 2);
    }
    void draw_lines(Canvas& canvas) {
        for (const ChartLine& line : chart_.lines) {
            std::vector<Point> points;
            for (const XY& xy : line.points) {
                points.push_back(point_at(xy));
            }
            for (std::size_t i = 1; i < points.size(); ++i) { // for the words of points, which keep off
                for (int part = 0; part <= 60; ++part) {
                    const double t = part / 60.0;
                    traces_.push_back({points[i - 1].x + t * (points[i].x - points[i - 1].x),
                                       points[i - 1].y + t * (points[i].y - points[i - 1].y)});
                }
            }
            canvas.polyline(points, 1.7, static_cast<Stroke>(line.style));
        }
        for (const ChartLimit& limit : chart_.limits) {
            for (int part = 0; part <= 120; ++part) {
                const double t = part / 120.0;
                traces_.push_back(limit.on_x ? Point{frame_.at(limit.at), frame_.top + t * k_plot}
                                             : Point{frame_.left + t * (frame_.right - frame_.left), y_at(limit.at)});
            }
        }
    }
    // Words of a point stand where they meet least.
    void draw_points(Canvas& canvas) {
        std::vector<Rect> taken;
        for (const ChartPoint& point : chart_.points) {
            const Point at = point_at(point.at);
            taken.push_back({at.x - 3, at.y - 3, 6, 6});
        }
        for (const ChartPoint& point : chart_.points) {
            const Point at = point_at(point.at);
            canvas.dot(at.x, at.y, 2.4);
            const Text words{fonts_, point.words, k_chart_words, k_unbroken};
            const double w = words.used_width();
            const double h = words.height();
            Rect best;
            double least = 1e9;
            for (const double away : {5.0, 12.0, 20.0}) {
                for (const Rect& r :
                     {Rect{at.x + away, at.y - h / 2, w, h}, Rect{at.x + away, at.y + away * 0.5, w, h},
                      Rect{at.x + away, at.y - h - away * 0.5, w, h}, Rect{at.x - w - away, at.y - h / 2, w, h},
                      Rect{at.x - w - away, at.y + away * 0.5, w, h}, Rect{at.x - w - away, at.y - h - away * 0.5, w, h}}) {
                    double bad = away * 0.02;
                    for (const Rect& other : taken) {
                        bad += r.meets(other) ? 100 : 0;
                    }
                    for (const Point& trace : traces_) {
                        bad += r.holds(trace) ? 1 : 0;
                    }
                    bad += r.x < frame_.left + 2 || r.x + w > frame_.right + 2 || r.y < frame_.top || r.y + h > frame_.bottom
                               ? 500
                               : 0;
                    if (bad < least) {
                        least = bad;
                        best = r;
                    }
                }
            }
            taken.push_back(best);
            canvas.box(best.x - 1, best.y, w + 2, h, 1, 0);
            canvas.text(words, best.x, best.y);
        }
    }
    // Names of lines and limits, at the heights where they end, moved apart where they would meet.
    void draw_margin(Canvas& canvas) const {
        struct Name {
            Point from;
            double y;
            const std::string* words;
        };
        std::vector<Name> names;
        for (const ChartLine& line : chart_.lines) {
            const Point end = point_at(line.points.back());
            names.push_back({end, end.y, &line.name});
        }
        for (const ChartLimit& limit : chart_.limits) {
            if (!limit.on_x) {
                names.push_back({{frame_.right, y_at(limit.at)}, y_at(limit.at), &limit.words});
            }
        }
        std::ranges::stable_sort(names, {}, [](const Name& name) { return name.y; });
        for (int round = 0; round < 200; ++round) {
            for (std::size_t i = 1; i < names.size(); ++i) {
                if (const double lack = k_words_line - (names[i].y - names[i - 1].y); lack > 0.01) {
                    names[i - 1].y -= lack / 2;
                    names[i].y += lack / 2;
                }
            }
            for (Name& name : names) {
                name.y = std::clamp(name.y, frame_.top, frame_.bottom);
            }
        }
        for (const Name& name : names) {
            const Text words{fonts_, *name.words, k_chart_words, k_unbroken};
            const double x = frame_.right + 12;
            canvas.polyline(
                {{name.from.x + 2, name.from.y}, {std::max(name.from.x + 2, frame_.right + 2), name.from.y}, {x - 2, name.y}},
                0.5, Stroke::solid, 0.4);
            canvas.text(words, x, name.y - words.height() / 2);
        }
    }

    const Chart& chart_;
    const Fonts& fonts_;
    Frame frame_;
    Above above_;
    double title_y_;
    std::vector<Point> traces_;
};

} // namespace

double chart_height(const Chart& chart, const Fonts& fonts, double width) {
    return chart.kind == ChartKind::bars ? draw_bars(nullptr, chart, fonts, 0, 0, width)
                                         : Plot{chart, fonts, 0, 0, width}.height();
}

void draw_chart(Canvas& canvas, const Chart& chart, const Fonts& fonts, double x, double y, double width) {
    if (chart.kind == ChartKind::bars) {
        (void)draw_bars(&canvas, chart, fonts, x, y, width);
    } else {
        Plot{chart, fonts, x, y, width}.draw(canvas);
    }
}

} // namespace clampbook::press
