// SPDX-License-Identifier: MIT
#pragma once

// What the press draws on: pages of a PDF or one SVG, with text that is laid out and measured before it is drawn. Points (1/72 in)
// from the upper left corner. The libraries behind it stay in canvas.cpp.

#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace clampbook::press {

struct Style {
    double size = 9;
    bool bold = false;
    bool italic = false;
    double grey = 0; ///< 0 black, 1 white
    bool struck = false;
    bool fixed_pitch = false; ///< each letter as wide as the other, as a command is typed
};

/// The fonts, at measures that depend on no screen.
class Fonts {
public:
    Fonts();
    struct Impl;

private:
    friend class Text;
    std::shared_ptr<const Impl> impl_;
};

/// Names of fonts: one that the pages ask for, and the one that this machine has for it, empty where it has none.
using FontPairs = std::vector<std::pair<std::string, std::string>>;
[[nodiscard]] FontPairs fonts_here();

/// A piece of text, broken into lines of a width.
class Text {
public:
    Text(const Fonts& fonts, const std::string& words, const Style& style, double width);
    [[nodiscard]] double height() const { return height_; }
    [[nodiscard]] double used_width() const { return used_width_; }
    struct Impl;

private:
    friend class Canvas;
    std::shared_ptr<const Impl> impl_;
    double height_ = 0;
    double used_width_ = 0;
};

enum class Stroke { solid, dashed, dotted };

struct Point {
    double x = 0;
    double y = 0;
};

class Canvas {
public:
    struct About {
        std::string title;
        std::string author;
        std::string date; ///< ISO 8601; the file says this day, not the clock's, so that the same content gives the same bytes
    };
    [[nodiscard]] static Canvas pdf(double width, double height, const About& about);
    [[nodiscard]] static Canvas svg(double width, double height);
    /// So many pixels a point.
    [[nodiscard]] static Canvas png(double width, double height, double scale);

    void text(const Text& text, double x, double y);
    void line(double x1, double y1, double x2, double y2, double thickness, Stroke stroke = Stroke::solid);
    void polyline(const std::vector<Point>& points, double thickness, Stroke stroke, double grey = 0);
    /// An area, 0 black to 1 white, with an outline of this thickness; zero for none.
    void box(double x, double y, double width, double height, double grey, double outline);
    void dot(double x, double y, double radius);
    /// Ends the page; the next thing drawn is on another.
    void next_page();
    /// An entry of the PDF's outline that leads to this page, one level under the last entry of the level above.
    void outline(const std::string& words, int level, std::size_t page, double x, double y);
    /// Ends the drawing and gives the file's bytes. Throws internal with what the library says.
    [[nodiscard]] std::string finish();
    struct Impl;

private:
    explicit Canvas(std::shared_ptr<Impl> impl) : impl_(std::move(impl)) {}
    std::shared_ptr<Impl> impl_;
};

} // namespace clampbook::press
