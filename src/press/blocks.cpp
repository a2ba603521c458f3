// SPDX-License-Identifier: MIT
#include "blocks.hpp"

#include <algorithm>

namespace clampbook::press {
namespace {

constexpr double k_rule_room = 3; // under a figure that has a rule

double height_of(const std::vector<Block>& blocks, bool first_on_page) {
    double out = 0;
    for (const Block& block : blocks) {
        out += block.height() + (first_on_page ? 0 : block.above);
        first_on_page = false;
    }
    return out;
}

std::size_t unit_end(const std::vector<Block>& blocks, std::size_t from) {
    std::size_t to = from;
    while (to < blocks.size() && blocks[to].with_next) {
        ++to;
    }
    return std::min(to + 1, blocks.size());
}

double unit_height(const std::vector<Block>& blocks, std::size_t from) {
    double out = 0;
    for (std::size_t i = from; i < unit_end(blocks, from); ++i) {
        out += blocks[i].height() + blocks[i].above;
    }
    return out;
}

} // namespace

void Stack::add(const std::string& words, const Style& style, Rule rule) {
    if (!words.empty()) {
        items_.push_back({Text{*fonts_, words, style, width_}, rule});
        height_ += items_.back().text.height() + (rule == Rule::none ? 0 : k_rule_room);
    }
}

void Stack::draw(Canvas& canvas, double x, double y) const {
    for (const auto& [text, rule] : items_) {
        canvas.text(text, x, y);
        y += text.height();
        if (rule != Rule::none) {
            canvas.line(x, y, x + text.used_width(), y, 0.9, rule == Rule::dashed ? Stroke::dashed : Stroke::solid);
        }
        if (rule == Rule::twofold) {
            canvas.line(x, y + 1.8, x + text.used_width(), y + 1.8, 0.9);
        }
        y += rule == Rule::none ? 0 : k_rule_room;
    }
}

double Block::height() const {
    double out = 0;
    for (const Cell& cell : cells) {
        out = std::max(out, cell.stack.height());
    }
    return std::max(out, drawing_height) + (rule_below > 0 ? k_pad : 0);
}

void Block::draw(Canvas& canvas, double x, double y, double width) const {
    for (const Cell& cell : cells) {
        cell.stack.draw(canvas, x + cell.at, y);
    }
    if (drawing) {
        drawing(canvas, x, y);
    }
    if (rule_below > 0) {
        canvas.line(x, y + height(), x + width, y + height(), rule_below);
    }
}

void Pages::place(const Group& group) {
    const double room = bottom_ - y_;
    const double whole = height_of(group.lead, y_ == top_) + height_of(group.rows, false);
    const bool fits_alone = height_of(group.lead, true) + height_of(group.rows, false) <= bottom_ - top_;
    const bool can_begin = height_of(group.lead, false) + unit_height(group.rows, 0) <= room;
    const std::vector<Block>& first = group.lead.empty() ? group.rows : group.lead;
    const bool begins = !first.empty() && first.front().new_page;
    if (y_ != top_ && (begins || (whole > room && (fits_alone || !can_begin)))) {
        turn();
    }
    put(group.lead, 0, group.lead.size());
    for (std::size_t from = 0; from < group.rows.size();) {
        const std::size_t to = unit_end(group.rows, from);
        if (unit_height(group.rows, from) > bottom_ - y_ && y_ != top_) {
            turn();
            put(group.again, 0, group.again.size());
        }
        put(group.rows, from, to);
        from = to;
    }
}

void Pages::turn() {
    ++page_;
    y_ = top_;
}

void Pages::put(const std::vector<Block>& blocks, std::size_t from, std::size_t to) {
    for (std::size_t i = from; i < to; ++i) {
        y_ += y_ == top_ ? 0 : blocks[i].above;
        placed_.push_back({page_, y_, &blocks[i]});
        y_ += blocks[i].height();
    }
}

} // namespace clampbook::press
