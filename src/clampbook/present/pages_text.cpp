// SPDX-License-Identifier: MIT
// Pages for a terminal: the blocks from the top down, wrapped to its width; in plain ASCII where that is all it shows.

#include "clampbook/base/text.hpp"
#include "clampbook/present/present.hpp"

#include <algorithm>
#include <array>

namespace clampbook::present {
namespace {

using answer::BlockKind;

// The signs beyond ASCII that our texts use, and how a typewriter would write them.
constexpr std::array<std::pair<std::string_view, std::string_view>, 62> k_typewriter{{
    {"N·m", "N.m"}, {"lbf·ft", "lbf.ft"}, {"lbf·in", "lbf.in"}, {"kgf·m", "kgf.m"}, {" · ", " * "}, {"·", "*"},    {"×", "x"},
    {"−", "-"},     {"–", "-"},           {"±", "+/-"},         {"°", " deg"},      {"²", "^2"},    {"³", "^3"},   {"√", "sqrt"},
    {"≥", ">="},    {"≤", "<="},          {"→", "->"},          {"′", "'"},         {"µ", "u"},     {"μ", "mu"},   {"α", "alpha"},
    {"δ", "delta"}, {"Δ", "D"},           {"φ", "phi"},         {"Φ", "Phi"},       {"ρ", "rho"},   {"π", "pi"},   {"σ", "sigma"},
    {"τ", "tau"},   {"θ", "theta"},       {"ν", "nu"},          {"Σ", "Sum"},       {"•", "*"},     {"…", "..."},  {"“", "\""},
    {"”", "\""},    {"‘", "'"},           {"’", "'"},           {"½", "1/2"},       {"β", "beta"},  {"ä", "ae"},   {"ö", "oe"},
    {"ü", "ue"},    {"Ä", "Ae"},          {"Ö", "Oe"},          {"Ü", "Ue"},        {"ß", "ss"},    {"é", "e"},    {"è", "e"},
    {"ñ", "n"},     {"å", "a"},           {"Å", "A"},           {"ø", "o"},         {"æ", "ae"},    {"█", "#"},    {"▓", "="},
    {"▒", "+"},     {"░", "-"},           {"│", "|"},           {"─", "-"},         {"└", "+"},     {"⌀", "dia "},
}};

class Lines {
public:
    explicit Lines(std::size_t width) : width_(width) {}

    void paragraph(const std::string& lead, const std::string& words) {
        std::string before = lead;
        const std::string indent(display_width(lead), ' ');
        for (const std::string& line : wrap(words, width_ - indent.size())) {
            out_ += before + line + "\n";
            before = indent;
        }
    }
    void line(const std::string& words) { out_ += words + "\n"; }
    void blank() {
        if (!out_.empty() && !out_.ends_with("\n\n")) {
            out_ += "\n";
        }
    }
    void raw(const std::string& text) { out_ += text; }
    [[nodiscard]] std::string take() { return std::move(out_); }

private:
    std::size_t width_;
    std::string out_;
};

void table(Lines& lines, const answer::PageBlock& block) {
    std::vector<std::size_t> widths;
    for (std::size_t c = 0; c < block.columns.size(); ++c) {
        std::size_t width = display_width(block.columns[c].title);
        for (const auto& row : block.rows) {
            for (const std::string& part : split(row[c], '\n')) {
                width = std::max(width, display_width(part));
            }
        }
        widths.push_back(width);
    }
    const auto set = [&](const std::vector<std::string>& cells) {
        std::string row;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            row +=
                (c == 0 ? "" : "  ") + (block.columns[c].number ? pad_left(cells[c], widths[c]) : pad_right(cells[c], widths[c]));
        }
        row.erase(row.find_last_not_of(' ') + 1);
        lines.line(row);
    };
    std::vector<std::string> head;
    for (const answer::PageColumn& column : block.columns) {
        head.push_back(column.title);
    }
    set(head);
    for (const auto& row : block.rows) {
        std::size_t height = 1;
        std::vector<std::vector<std::string>> parts;
        for (const std::string& cell : row) {
            parts.push_back(split(cell, '\n'));
            height = std::max(height, parts.back().size());
        }
        for (std::size_t i = 0; i < height; ++i) {
            std::vector<std::string> cells;
            for (const auto& part : parts) {
                cells.push_back(i < part.size() ? part[i] : std::string{});
            }
            set(cells);
        }
    }
}

void step(Lines& lines, const answer::PageBlock& block) {
    const std::string lead = pad_left(block.mark, 3) + "  ";
    lines.paragraph(lead, block.text + (block.result.empty() ? "" : ": " + block.result));
    if (!block.formula.empty()) {
        lines.paragraph("       ", block.formula);
    }
    if (!block.source.empty()) {
        lines.paragraph("       ", block.source);
    }
}

} // namespace

std::string ascii(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        const auto* const found =
            std::ranges::find_if(k_typewriter, [&](const auto& one) { return text.starts_with(one.first); });
        if (found != k_typewriter.end()) {
            out += found->second;
            text.remove_prefix(found->first.size());
            continue;
        }
        const auto first = static_cast<unsigned char>(text.front());
        out += first < 0x80 ? text.front() : '?';
        const std::size_t size = first < 0x80 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
        text.remove_prefix(std::min(size, text.size()));
    }
    return out;
}

std::string text(const answer::Pages& pages, const Layout& layout) {
    Lines lines{layout.width};
    for (const answer::PageBlock& block : pages.blocks) {
        switch (block.kind) {
        case BlockKind::title:
            lines.blank();
            lines.paragraph("", block.text);
            lines.line(std::string(std::min(display_width(block.text), layout.width), '='));
            break;
        case BlockKind::heading:
        case BlockKind::text:
            lines.blank();
            lines.paragraph("", block.text);
            break;
        case BlockKind::small:
            lines.blank();
            lines.paragraph("  ", block.text);
            break;
        case BlockKind::caution:
            lines.paragraph("! ", block.text);
            break;
        case BlockKind::item:
            lines.paragraph(pad_left(block.mark, 3) + "  ", block.text);
            break;
        case BlockKind::command:
            lines.line("  " + block.text); // as it is typed: never wrapped
            lines.paragraph("       ", block.formula);
            break;
        case BlockKind::step:
            step(lines, block);
            break;
        case BlockKind::table:
            lines.blank();
            table(lines, block);
            break;
        case BlockKind::chart:
            lines.blank();
            lines.raw(present::text(block.chart.value(), layout));
            lines.blank();
            break;
        case BlockKind::contents:
            lines.paragraph("", block.text);
            lines.blank();
            for (const answer::PageBlock& other : pages.blocks) {
                if (other.kind == BlockKind::title) {
                    lines.paragraph("  ", other.text);
                }
            }
            lines.blank();
            break;
        case BlockKind::new_page:
            lines.blank();
            break;
        case BlockKind::room:
            break; // there is no pen at a terminal
        }
    }
    const std::string out = lines.take();
    return layout.ascii ? ascii(out) : out;
}

} // namespace clampbook::present
