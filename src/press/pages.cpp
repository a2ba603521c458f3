// SPDX-License-Identifier: MIT
// Sets the spec sheet on pages: an assembly stays together where it can, its table head is repeated where it can't, and each page
// says which revision of the book it is and how many pages there are.

#include "compose.hpp"
#include "press.hpp"

#include "clampbook/base/error.hpp"

namespace clampbook::press {
namespace {

constexpr double k_endless = 1e9;

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
            block->draw(canvas, k_side, y, width);
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
        placed.block->draw(canvas, k_side, placed.y, width);
    }
    return canvas.finish();
}

} // namespace clampbook::press
