// SPDX-License-Identifier: MIT
// Sets the spec sheet on pages: an assembly stays together where it can, its table head is repeated where it can't, and each page
// says which revision of the book it is and how many pages there are.

#include "canvas.hpp"
#include "compose.hpp"
#include "press.hpp"

#include "clampbook/base/error.hpp"

#include <algorithm>

namespace clampbook::press {
namespace {

constexpr double k_side = 40; // margins
constexpr double k_top = 44;
constexpr double k_bottom = 50;
constexpr double k_endless = 1e9;
constexpr Style k_small{8, false, false, 0.25};

struct Placed {
    std::size_t page;
    double y;
    const Block* block;
};

// Gives every block its page and place.
class Pages {
public:
    Pages(double top, double bottom) : top_(top), bottom_(bottom), y_(top) {}

    void place(const Group& group) {
        const double room = bottom_ - y_;
        const double whole = height(group.lead, y_ == top_) + height(group.rows, false);
        const bool fits_alone = height(group.lead, true) + height(group.rows, false) <= bottom_ - top_;
        const bool can_begin = height(group.lead, false) + unit_height(group.rows, 0) <= room;
        if (y_ != top_ && whole > room && (fits_alone || !can_begin)) {
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
    [[nodiscard]] const std::vector<Placed>& placed() const { return placed_; }
    [[nodiscard]] std::size_t count() const { return page_ + 1; }
    [[nodiscard]] double end() const { return y_; }

private:
    static double height(const std::vector<Block>& blocks, bool first_on_page) {
        double out = 0;
        for (const Block& block : blocks) {
            out += block.height() + (first_on_page ? 0 : block.above);
            first_on_page = false;
        }
        return out;
    }
    static std::size_t unit_end(const std::vector<Block>& blocks, std::size_t from) {
        std::size_t to = from;
        while (to < blocks.size() && blocks[to].with_next) {
            ++to;
        }
        return std::min(to + 1, blocks.size());
    }
    static double unit_height(const std::vector<Block>& blocks, std::size_t from) {
        double out = 0;
        for (std::size_t i = from; i < unit_end(blocks, from); ++i) {
            out += blocks[i].height() + blocks[i].above;
        }
        return out;
    }
    void turn() {
        ++page_;
        y_ = top_;
    }
    void put(const std::vector<Block>& blocks, std::size_t from, std::size_t to) {
        for (std::size_t i = from; i < to; ++i) {
            y_ += y_ == top_ ? 0 : blocks[i].above;
            placed_.push_back({page_, y_, &blocks[i]});
            y_ += blocks[i].height();
        }
    }

    double top_;
    double bottom_;
    double y_;
    std::size_t page_ = 0;
    std::vector<Placed> placed_;
};

void draw(Canvas& canvas, const Block& block, double x, double y, double width) {
    for (const Cell& cell : block.cells) {
        cell.stack.draw(canvas, x + cell.at, y);
    }
    if (block.rule_below > 0) {
        canvas.line(x, y + block.height(), x + width, y + block.height(), block.rule_below);
    }
}

} // namespace

std::string pdf(const Sheet& sheet, const Paper& paper) {
    const double width = paper.width - 2 * k_side;
    const Fonts fonts;
    const std::vector<Group> groups = compose(sheet, fonts, width);
    Pages pages{k_top, paper.height - k_bottom};
    for (const Group& group : groups) {
        pages.place(group);
    }
    Canvas canvas = Canvas::pdf(paper.width, paper.height, {sheet.title, sheet.prepared_by, sheet.date});
    std::size_t next = 0;
    for (std::size_t page = 0; page < pages.count(); ++page) {
        for (; next < pages.placed().size() && pages.placed()[next].page == page; ++next) {
            const auto& [on, y, block] = pages.placed()[next];
            draw(canvas, *block, k_side, y, width);
            if (!block->outline.empty()) {
                canvas.outline(block->outline, block->level, page + 1, k_side, y);
            }
        }
        const std::string running =
            fmt::format("{}; {}; revision {}; digest {}\nPage {} of {}. Out of date when the book's revision is newer.",
                        sheet.title, sheet.date, sheet.revision, sheet.digest.substr(0, 16), page + 1, pages.count());
        canvas.text(Text{fonts, running, k_small, width}, k_side, paper.height - k_bottom + 14);
        canvas.next_page();
    }
    return canvas.finish();
}

std::string svg(const Sheet& sheet) {
    const double width = k_a4.width - 2 * k_side;
    const Fonts fonts;
    const std::vector<Group> groups = compose(sheet, fonts, width);
    Pages pages{k_top, k_endless};
    for (const Group& group : groups) {
        pages.place(group);
    }
    Canvas canvas = Canvas::svg(k_a4.width, pages.end() + k_top);
    for (const Placed& placed : pages.placed()) {
        draw(canvas, *placed.block, k_side, placed.y, width);
    }
    return canvas.finish();
}

} // namespace clampbook::press
