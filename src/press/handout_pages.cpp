// SPDX-License-Identifier: MIT
// Sets pages of any matter: a lesson, a booklet, a worksheet, a chart for the wall.

#include "blocks.hpp"
#include "chart.hpp"
#include "chart_parts.hpp"
#include "handout.hpp"
#include "press.hpp"

#include "clampbook/base/error.hpp"

#include <algorithm>
#include <memory>
#include <optional>

namespace clampbook::press {
namespace {

constexpr double k_margin = 18;       // where the text beside a mark begins
constexpr double k_written_line = 20; // of room to write on
constexpr double k_wall_scale = 1.45;
constexpr double k_column_gap = 16;
constexpr double k_cell_pad = 2.5;

class Setter {
public:
    Setter(const Handout& handout, const Fonts& fonts, double width)
        : handout_(handout), fonts_(fonts), width_(width), scale_(handout.wall ? k_wall_scale : 1.0) {}

    [[nodiscard]] std::vector<Group> groups() {
        for (std::size_t i = 0; i < handout_.blocks.size(); ++i) {
            const PageBlock& block = handout_.blocks[i];
            const bool has_room = i + 1 < handout_.blocks.size() && handout_.blocks[i + 1].kind == Kind::room;
            if (block.kind == Kind::item && has_room) { // a question stays with the room for its answer
                pending_.push_back(marked(block.mark, block.text, style(10), 4));
            } else {
                add(block);
            }
        }
        flush({});
        return std::move(groups_);
    }
    /// To be filled with the pages of the titles, in their order, before anything is drawn.
    [[nodiscard]] const std::shared_ptr<std::vector<std::size_t>>& title_pages() const { return title_pages_; }

private:
    [[nodiscard]] Style style(double size, bool bold = false, double grey = 0) const {
        return {size * scale_, bold, false, grey};
    }

    [[nodiscard]] Block paragraph(const std::string& words, const Style& with, double above, double indent = 0) const {
        Block out;
        out.cells.push_back({indent, Stack{fonts_, width_ - indent}});
        out.cells.back().stack.add(words, with);
        out.above = above * scale_;
        return out;
    }
    [[nodiscard]] Block marked(const std::string& mark, const std::string& words, const Style& with, double above) const {
        Block out = paragraph(words, with, above, k_margin * scale_);
        out.cells.push_back({0, Stack{fonts_, k_margin * scale_}});
        out.cells.back().stack.add(mark, {with.size, true});
        return out;
    }

    void add(const PageBlock& block) {
        switch (block.kind) {
        case Kind::title: {
            Block out = paragraph(block.text, style(19, true), 22);
            out.rule_below = 1.2;
            out.outline = block.text;
            pending_.push_back(std::move(out));
            return;
        }
        case Kind::heading: {
            Block out = paragraph(block.text, style(12, true), 13);
            out.outline = block.text;
            out.level = 1;
            pending_.push_back(std::move(out));
            return;
        }
        case Kind::text:
            return flush(paragraph(block.text, style(10), 5));
        case Kind::small:
            return flush(paragraph(block.text, style(8, false, 0.25), 4));
        case Kind::caution:
            return flush(marked("!", block.text, style(9, true), 4));
        case Kind::item:
            return flush(marked(block.mark, block.text, style(10), 4));
        case Kind::command:
            return flush(command(block));
        case Kind::step:
            return flush(step(block));
        case Kind::table:
            return table(block);
        case Kind::chart:
            return flush(chart(block.chart.value()));
        case Kind::room:
            return flush(room(block.lines));
        case Kind::contents:
            return contents(block);
        case Kind::new_page:
            new_page_ = true;
            return;
        }
    }

    // Titles and headings go with what follows them.
    void flush(std::optional<Block> block) {
        Group group;
        group.rows = std::move(pending_);
        pending_.clear();
        if (block) {
            group.rows.push_back(std::move(*block));
        }
        for (std::size_t i = 0; i + 1 < group.rows.size(); ++i) {
            group.rows[i].with_next = true;
        }
        push(std::move(group));
    }
    void push(Group group) {
        Block* first = !group.lead.empty() ? &group.lead.front() : !group.rows.empty() ? &group.rows.front() : nullptr;
        if (first != nullptr) {
            first->new_page = new_page_;
            new_page_ = false;
            groups_.push_back(std::move(group));
        }
    }

    [[nodiscard]] Block command(const PageBlock& block) const {
        Block out;
        out.cells.push_back({8, Stack{fonts_, width_ - 8}});
        Style typed = style(9);
        typed.fixed_pitch = true;
        out.cells.back().stack.add(block.text, typed);
        out.cells.back().stack.add(block.formula, style(9, false, 0.25));
        out.above = 4;
        return out;
    }
    [[nodiscard]] Block step(const PageBlock& block) const {
        const double result_width =
            block.result.empty() ? 0 : Text{fonts_, block.result, style(10, true), k_unbroken}.used_width();
        const double room = std::min(result_width, width_ / 2);
        Block out = marked(block.mark, block.text, style(10, true), 5);
        out.cells.front().stack = Stack{fonts_, width_ - k_margin - room - 12};
        out.cells.front().stack.add(block.text, style(10, true));
        out.cells.front().stack.add(block.formula, style(10));
        out.cells.front().stack.add(block.source, style(7.5, false, 0.3));
        if (room > 0) {
            out.cells.push_back({width_ - room, Stack{fonts_, room + 1}});
            out.cells.back().stack.add(block.result, style(10, true));
        }
        return out;
    }
    [[nodiscard]] Block room(std::size_t lines) const {
        Block out;
        out.drawing_height = static_cast<double>(lines) * k_written_line;
        out.drawing = [lines, width = width_](Canvas& canvas, double x, double y) {
            for (std::size_t i = 1; i <= lines; ++i) {
                const double at = y + static_cast<double>(i) * k_written_line - 1;
                canvas.polyline({{x + k_margin, at}, {x + width, at}}, 0.5, Stroke::dotted, 0.4);
            }
        };
        return out;
    }
    [[nodiscard]] Block chart(const Chart& drawn) const {
        const Text title{fonts_, drawn.title, style(10.5, true), width_};
        const Text caption{fonts_, drawn.words, style(9, false, 0.2), width_};
        const double drawing = chart_height(drawn, fonts_, width_);
        Block out;
        out.above = 12;
        out.drawing_height = title.height() + 6 + drawing + 4 + caption.height();
        out.drawing = [=, &drawn, &fonts = fonts_, width = width_](Canvas& canvas, double x, double y) {
            canvas.text(title, x, y);
            draw_chart(canvas, drawn, fonts, x, y + title.height() + 6, width);
            canvas.text(caption, x, y + title.height() + 6 + drawing + 4);
        };
        return out;
    }

    void contents(const PageBlock& block) {
        pending_.push_back(paragraph(block.text, style(22, true), 0));
        pending_.back().outline = block.text;
        std::vector<std::string> titles;
        for (const PageBlock& other : handout_.blocks) {
            if (other.kind == Kind::title) {
                titles.push_back(other.text);
            }
        }
        constexpr double k_entry = 20;
        Block out;
        out.above = 18;
        out.drawing_height = static_cast<double>(titles.size()) * k_entry + 12;
        out.drawing = [titles, &fonts = fonts_, width = width_, pages = title_pages_, with = style(11)](Canvas& canvas, double x,
                                                                                                        double y) {
            for (std::size_t i = 0; i < titles.size(); ++i) {
                const double at = y + static_cast<double>(i) * k_entry;
                const Text title{fonts, titles[i], with, width};
                const Text number{fonts, std::to_string(pages->at(i)), with, width};
                canvas.text(title, x, at);
                canvas.text(number, x + width - number.used_width(), at);
                canvas.line(x + title.used_width() + 6, at + title.height() - 3.5, x + width - number.used_width() - 6,
                            at + title.height() - 3.5, 0.8, Stroke::dotted);
            }
        };
        flush(std::move(out));
    }

    void table(const PageBlock& block) {
        const Style plain = style(9.5);
        const Style head = style(9.5, true);
        std::vector<double> widths;
        double all = -k_column_gap;
        for (std::size_t c = 0; c < block.columns.size(); ++c) {
            double width = Text{fonts_, block.columns[c].title, head, k_unbroken}.used_width();
            for (const auto& row : block.rows) {
                width = std::max(width, Text{fonts_, row[c], plain, k_unbroken}.used_width());
            }
            widths.push_back(width + 1);
            all += width + 1 + k_column_gap;
        }
        if (all > width_) {
            const double share = (width_ - k_column_gap * static_cast<double>(widths.size() - 1)) /
                                 (all - k_column_gap * static_cast<double>(widths.size() - 1));
            for (double& width : widths) {
                width *= share;
            }
        }
        // A chart on the wall fills it.
        const double gap = handout_.wall && all < width_ && widths.size() > 1
                               ? k_column_gap + (width_ - all) / static_cast<double>(widths.size() - 1)
                               : k_column_gap;
        const auto row_of = [&](const auto& cell_of, const Style& with) {
            Block out;
            double x = 0;
            for (std::size_t c = 0; c < widths.size(); ++c) {
                const std::string& words = cell_of(c);
                const double used = std::min(Text{fonts_, words, with, widths[c]}.used_width() + 1, widths[c]);
                out.cells.push_back({block.columns[c].number ? x + widths[c] - used : x,
                                     Stack{fonts_, block.columns[c].number ? used : widths[c]}});
                out.cells.back().stack.add(words, with);
                x += widths[c] + gap;
            }
            out.above = k_cell_pad;
            return out;
        };
        Block header = row_of([&](std::size_t c) -> const std::string& { return block.columns[c].title; }, head);
        header.rule_below = 1;
        Group group;
        group.lead = std::move(pending_);
        pending_.clear();
        header.above = group.lead.empty() ? 10 : 6;
        group.lead.push_back(header);
        group.again.push_back(std::move(header));
        for (const auto& row : block.rows) {
            group.rows.push_back(row_of([&](std::size_t c) -> const std::string& { return row[c]; }, plain));
            group.rows.back().rule_below = 0.3;
        }
        push(std::move(group));
    }

    const Handout& handout_;
    const Fonts& fonts_;
    double width_;
    double scale_;
    bool new_page_ = false;
    std::vector<Block> pending_;
    std::vector<Group> groups_;
    std::shared_ptr<std::vector<std::size_t>> title_pages_ = std::make_shared<std::vector<std::size_t>>();
};

} // namespace

std::string pdf(const Handout& handout, const Paper& paper) {
    const double page_width = handout.wall ? paper.height : paper.width;
    const double page_height = handout.wall ? paper.width : paper.height;
    const double width = page_width - 2 * k_side;
    const Fonts fonts;
    Setter setter{handout, fonts, width};
    const std::vector<Group> groups = setter.groups();
    Pages pages{k_top, page_height - k_bottom};
    for (const Group& group : groups) {
        pages.place(group);
    }
    std::size_t title = 0;
    const auto is_next_title = [&](const Block& block) {
        while (title < handout.blocks.size() && handout.blocks[title].kind != Kind::title) {
            ++title;
        }
        return title < handout.blocks.size() && block.level == 0 && block.outline == handout.blocks[title].text;
    };
    for (const Placed& placed : pages.placed()) {
        if (is_next_title(*placed.block)) {
            setter.title_pages()->push_back(placed.page + 1);
            ++title;
        }
    }
    Canvas canvas = Canvas::pdf(page_width, page_height, {handout.title, {}, handout.date});
    std::size_t next = 0;
    for (std::size_t page = 0; page < pages.count(); ++page) {
        for (; next < pages.placed().size() && pages.placed()[next].page == page; ++next) {
            const auto& [on, y, block] = pages.placed()[next];
            block->draw(canvas, k_side, y, width);
            if (!block->outline.empty()) {
                canvas.outline(block->outline, block->level, page + 1, k_side, y);
            }
        }
        const std::string foot = fmt::format("{}\nPage {} of {}", handout.foot, page + 1, pages.count());
        canvas.text(Text{fonts, foot, {8, false, false, 0.25}, width}, k_side, page_height - k_bottom + 14);
        canvas.next_page();
    }
    return canvas.finish();
}

std::string picture(const Handout& handout, Picture form) {
    const auto found = std::ranges::find_if(handout.blocks, [](const PageBlock& block) { return block.chart.has_value(); });
    if (found == handout.blocks.end()) {
        throw error(ErrorKind::invalid_data, "these pages have no chart to draw; a PDF of them can be set");
    }
    constexpr double k_width = 480;
    constexpr double k_edge = 12;
    constexpr double k_pixels = 3; // a point
    const Fonts fonts;
    const Chart& chart = *found->chart;
    const Text title{fonts, chart.title, {10.5, true}, k_width};
    const double height = title.height() + 6 + chart_height(chart, fonts, k_width);
    Canvas canvas = form == Picture::svg ? Canvas::svg(k_width + 2 * k_edge, height + 2 * k_edge)
                                         : Canvas::png(k_width + 2 * k_edge, height + 2 * k_edge, k_pixels);
    canvas.text(title, k_edge, k_edge);
    draw_chart(canvas, chart, fonts, k_edge, k_edge + title.height() + 6, k_width);
    return canvas.finish();
}

} // namespace clampbook::press
