// SPDX-License-Identifier: MIT
#pragma once

// Pages as blocks: what stands beside each other, what is never parted, and what is set again where a table goes on on the next
// page; and the way that gives each block its page and place.

#include "canvas.hpp"

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

namespace clampbook::press {

inline constexpr Style k_small{8, false, false, 0.25};

// The rule that stands under a figure.
enum class Rule { none, dashed, twofold };

// Texts under each other, in one column.
class Stack {
public:
    Stack(const Fonts& fonts, double width) : fonts_(&fonts), width_(width) {}
    void add(const std::string& words, const Style& style, Rule rule = Rule::none);
    [[nodiscard]] double height() const { return height_; }
    void draw(Canvas& canvas, double x, double y) const;

private:
    struct Item {
        Text text;
        Rule rule = Rule::none;
    };
    const Fonts* fonts_;
    double width_;
    double height_ = 0;
    std::vector<Item> items_;
};

struct Cell {
    double at = 0; // where it begins
    Stack stack;
};

// Cells beside each other; never parted.
struct Block {
    std::vector<Cell> cells;
    std::function<void(Canvas&, double, double)> drawing; // besides the cells, from its upper left corner
    double drawing_height = 0;
    double above = 0; // white space before it, unless it is first on a page
    double rule_below = 0;
    bool new_page = false;  // begins a page
    bool with_next = false; // never parted from the one after it
    std::string outline;    // its entry in the PDF's outline
    int level = 0;

    [[nodiscard]] double height() const;
    void draw(Canvas& canvas, double x, double y, double width) const;
};

// Blocks that belong together, and what is set again where they have to be parted.
struct Group {
    std::vector<Block> lead;
    std::vector<Block> again;
    std::vector<Block> rows;
};

inline constexpr double k_pad = 3; ///< over and under a row

/// Margins of a page.
inline constexpr double k_side = 40;
inline constexpr double k_top = 44;
inline constexpr double k_bottom = 50;

struct Placed {
    std::size_t page;
    double y;
    const Block* block;
};

/// Gives every block its page and place. The groups must live as long as this.
class Pages {
public:
    Pages(double top, double bottom) : top_(top), bottom_(bottom), y_(top) {}

    void place(const Group& group);
    [[nodiscard]] const std::vector<Placed>& placed() const { return placed_; }
    [[nodiscard]] std::size_t count() const { return page_ + 1; }
    [[nodiscard]] double end() const { return y_; }

private:
    void turn();
    void put(const std::vector<Block>& blocks, std::size_t from, std::size_t to);

    double top_;
    double bottom_;
    double y_;
    std::size_t page_ = 0;
    std::vector<Placed> placed_;
};

} // namespace clampbook::press
