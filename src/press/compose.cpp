// SPDX-License-Identifier: MIT
#include "compose.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <algorithm>
#include <array>
#include <iterator>

namespace clampbook::press {
namespace {

constexpr double k_gap = 6;          // between columns
constexpr std::size_t k_wide = 160;  // bytes from which on a text gets the whole width
constexpr std::size_t k_figure = 60; // bytes from which on a figure is set small

constexpr Style k_title{19, true};
constexpr Style k_machine{14, true};
constexpr Style k_assembly{11.5, true};
constexpr Style k_plain{9};
constexpr Style k_name{10.5, true};
constexpr Style k_alarm{8, true};
constexpr Style k_head{8, true};

struct Column {
    const char* title;
    double share; // of the width
};
constexpr std::array k_columns{Column{"Joint", 0.28}, Column{"Screws", 0.14},  Column{"Tightening, as written", 0.24},
                               Column{"N·m", 0.105},  Column{"lbf·ft", 0.105}, Column{"Whose figure, source", 0.13}};

class Composer {
public:
    Composer(const Sheet& sheet, const Fonts& fonts, double width) : sheet_(sheet), fonts_(fonts), width_(width) {}

    [[nodiscard]] std::vector<Group> groups() const {
        std::vector<Group> out;
        out.push_back(title());
        std::string machine;
        for (const Assembly& assembly : sheet_.assemblies) {
            const std::string here = assembly.machine + "\n" + assembly.maker;
            out.push_back(table(assembly, machine != here));
            machine = here;
        }
        out.push_back(sources());
        out.push_back(signatures());
        out.push_back(cautions());
        return out;
    }

private:
    [[nodiscard]] Block paragraph(const std::string& words, const Style& style, double above, double indent = 0) const {
        Block out;
        out.cells.push_back({indent, Stack{fonts_, width_ - indent}});
        out.cells.back().stack.add(words, style);
        out.above = above;
        return out;
    }
    // A name on the left, and what belongs to it.
    [[nodiscard]] Block named(const std::string& name, const std::string& words, double left,
                              const Style& style = k_plain) const {
        Block out = paragraph(name, k_head, 2);
        out.cells.push_back({left, Stack{fonts_, width_ - left}});
        out.cells.back().stack.add(words, style);
        return out;
    }
    [[nodiscard]] Block row() const {
        Block out;
        double x = 0;
        for (const Column& column : k_columns) {
            out.cells.push_back({x, Stack{fonts_, column.share * width_ - k_gap}});
            x += column.share * width_;
        }
        out.above = k_pad;
        return out;
    }

    [[nodiscard]] Group title() const {
        Group out;
        out.lead.push_back(paragraph(sheet_.title, k_title, 0));
        out.lead.push_back(paragraph(sheet_.chosen, k_assembly, 2));
        out.lead.push_back(paragraph(
            fmt::format("{}; revision {} of the book, digest {}", sheet_.date, sheet_.revision, sheet_.digest.substr(0, 16)),
            k_plain, 2));
        if (!sheet_.since.empty()) {
            out.lead.push_back(paragraph("Marked: what changed since " + sheet_.since, k_plain, 2));
        }
        out.lead.push_back(paragraph(sheet_.legend, k_head, 6));
        return out;
    }

    [[nodiscard]] Block table_head() const {
        Block out = row();
        for (std::size_t i = 0; i < out.cells.size(); ++i) {
            out.cells[i].stack.add(k_columns.at(i).title, k_head);
        }
        out.rule_below = 1;
        return out;
    }
    [[nodiscard]] Group table(const Assembly& assembly, bool new_machine) const {
        Group out;
        if (new_machine) {
            out.lead.push_back(paragraph(assembly.machine + ", by " + assembly.maker, k_machine, 16));
            out.lead.back().outline = assembly.machine;
            out.lead.back().rule_below = 1.6;
        }
        out.lead.push_back(paragraph(assembly.name, k_assembly, new_machine ? 6 : 13));
        out.lead.back().outline = assembly.name;
        out.lead.back().level = 1;
        out.lead.push_back(table_head());
        out.again.push_back(paragraph(assembly.machine + ": " + assembly.name + " (continued)", k_assembly, 0));
        out.again.push_back(table_head());
        for (const Joint& joint : assembly.joints) {
            add_rows(out.rows, joint);
        }
        return out;
    }

    void add_rows(std::vector<Block>& rows, const Joint& joint) const {
        std::vector<Block> all;
        Block first = row();
        if (joint.name.size() > k_wide) {
            all.push_back(paragraph(joint.name, k_name, k_pad));
        } else {
            first.cells[0].stack.add(joint.name, k_name);
        }
        first.cells[0].stack.add(joint.safety_critical ? "SAFETY-CRITICAL" : "", k_alarm);
        first.cells[0].stack.add(joint.disagreement, k_alarm);
        first.cells[0].stack.add(joint.ring, k_small);
        first.cells[1].stack.add(joint.screws, k_plain);
        if (joint.lines.empty()) {
            first.cells[2].stack.add("no value in the book", k_small);
        }
        std::vector<Block> wide;
        add_note(first.cells[0].stack, wide, joint.note);
        bool is_first = true;
        const auto add = [&](const Line& line, bool ended) {
            Block block = is_first ? std::move(first) : row();
            is_first = false;
            add_value(block, wide, line, ended);
            all.push_back(std::move(block));
        };
        for (const Line& line : joint.lines) {
            add(line, false);
        }
        for (const Line& line : joint.ended) {
            add(line, true);
        }
        if (is_first) {
            all.push_back(std::move(first));
        }
        std::ranges::move(wide, std::back_inserter(all));
        for (Block& block : all) {
            block.with_next = true;
        }
        all.back().with_next = false;
        all.back().rule_below = 0.5;
        std::ranges::move(all, std::back_inserter(rows));
    }
    // A note stands in its column, a long one under the row.
    void add_note(Stack& stack, std::vector<Block>& wide, const std::string& note) const {
        if (note.size() > k_wide) {
            wide.push_back(paragraph(note, k_small, 1));
        } else {
            stack.add(note, k_small);
        }
    }
    void add_value(Block& block, std::vector<Block>& wide, const Line& line, bool ended) const {
        const Style figure{line.as_written.size() > k_figure ? 9.0 : 15.0, !line.is_unchecked() && !line.is_computed() && !ended,
                           line.is_unchecked(), 0, ended};
        const Rule rule = ended                 ? Rule::none
                          : line.is_computed()  ? Rule::twofold
                          : line.is_unchecked() ? Rule::dashed
                                                : Rule::none;
        const std::string words = line.sign + (line.sign.empty() ? "" : " ") + line.as_written;
        if (words.size() > k_wide) {
            wide.push_back(paragraph(words, k_plain, 1));
        } else {
            block.cells[2].stack.add(words, figure, rule);
        }
        block.cells[2].stack.add(line.change, k_alarm);
        add_note(block.cells[2].stack, wide, line.note);
        block.cells[3].stack.add(line.newton_metres.size() > k_wide ? "" : line.newton_metres, k_plain);
        block.cells[4].stack.add(line.pound_feet.size() > k_wide ? "" : line.pound_feet, k_plain);
        const std::size_t comma = std::min(line.state.find(", "), line.state.size());
        block.cells[5].stack.add(line.state.substr(0, comma), k_plain);
        block.cells[5].stack.add(line.is_unchecked() ? "UNCHECKED" : "checked", line.is_unchecked() ? k_alarm : k_small);
        block.cells[5].stack.add(line.source, k_small);
    }

    [[nodiscard]] Group sources() const {
        Group out;
        if (sheet_.sources.empty()) {
            return out;
        }
        out.lead.push_back(paragraph("Sources", k_assembly, 20));
        out.lead.back().rule_below = 1;
        out.again.push_back(paragraph("Sources (continued)", k_assembly, 0));
        for (std::size_t i = 0; i < sheet_.sources.size(); ++i) {
            out.rows.push_back(named(fmt::format("[{}]", i + 1), sheet_.sources[i], 34));
        }
        return out;
    }
    [[nodiscard]] Group signatures() const {
        Group out;
        out.lead.push_back(paragraph("This sheet", k_assembly, 16));
        out.lead.back().rule_below = 1;
        for (const auto& [name, words] : {std::pair{"Holds", sheet_.counts},
                                          {"Date", sheet_.date},
                                          {"Revision", std::to_string(sheet_.revision)},
                                          {"Digest", sheet_.digest},
                                          {"Prepared by", sheet_.prepared_by},
                                          {"Checked by", join(sheet_.checked_by, ", ")}}) {
            out.lead.push_back(named(name, words.empty() ? "........................................" : words, 80));
        }
        return out;
    }
    [[nodiscard]] Group cautions() const {
        Group out;
        for (const std::string& caution : sheet_.cautions) {
            out.lead.push_back(named("!", caution, 12, k_head));
        }
        if (!out.lead.empty()) {
            out.lead.front().above = 12;
        }
        return out;
    }

    const Sheet& sheet_;
    const Fonts& fonts_;
    double width_;
};

} // namespace

std::vector<Group> compose(const Sheet& sheet, const Fonts& fonts, double width) {
    return Composer{sheet, fonts, width}.groups();
}

} // namespace clampbook::press
