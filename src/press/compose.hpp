// SPDX-License-Identifier: MIT
#pragma once

// The sheet as blocks: what stands beside each other, what is never parted, and what is set again where a table goes on on the next
// page. Where each block comes to lie is decided in pages.cpp.

#include "canvas.hpp"
#include "sheet.hpp"

#include <string>
#include <vector>

namespace clampbook::press {

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
    double above = 0; // white space before it, unless it is first on a page
    double rule_below = 0;
    bool with_next = false; // never parted from the one after it
    std::string outline;    // its entry in the PDF's outline
    int level = 0;

    [[nodiscard]] double height() const;
};

// Blocks that belong together, and what is set again where they have to be parted.
struct Group {
    std::vector<Block> lead;
    std::vector<Block> again;
    std::vector<Block> rows;
};

/// The whole sheet in the order of its pages, for columns of this width together. `fonts` must live as long as the blocks.
[[nodiscard]] std::vector<Group> compose(const Sheet& sheet, const Fonts& fonts, double width);

} // namespace clampbook::press
