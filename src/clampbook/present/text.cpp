// SPDX-License-Identifier: MIT
#include "clampbook/base/text.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/present/layout.hpp"
#include "clampbook/present/present.hpp"
#include "clampbook/units/reading.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace clampbook::present {
namespace {

void cautions(std::string& out, const std::vector<Caution>& list) {
    for (const Caution& caution : list) {
        paragraph(out, "! ", caution.text);
    }
}

// Citations are numbered in the order in which they appear and told at the foot.
class Footnotes {
public:
    std::string mark(const Citation& citation) {
        const std::string line = citation.line() + " [" + citation.source + "]";
        auto found = std::ranges::find(lines_, line);
        if (found == lines_.end()) {
            found = lines_.insert(lines_.end(), line);
        }
        return fmt::format("({})", found - lines_.begin() + 1);
    }
    void append_to(std::string& out) const {
        for (std::size_t i = 0; i < lines_.size(); ++i) {
            paragraph(out, fmt::format("({}) ", i + 1), lines_[i]);
        }
    }
    [[nodiscard]] bool empty() const { return lines_.empty(); }

private:
    std::vector<std::string> lines_;
};

std::string value_text(const answer::Item& item) {
    if (!item.figure) {
        return item.text;
    }
    return item.figure->print + (item.figure->also.empty() ? "" : " = " + item.figure->also);
}

std::string origin_text(const answer::Item& item, Footnotes& notes) {
    if (!item.figure) {
        return {};
    }
    std::string out{item.figure->label ? label_name(*item.figure->label) : ""};
    if (!item.figure->basis.empty()) {
        out += (out.empty() ? "" : ": ") + item.figure->basis;
    }
    if (item.figure->citation) {
        out += (out.empty() ? "" : " ") + notes.mark(*item.figure->citation);
    }
    return out;
}

// What all figures of a section have in common is told once, beside its title.
std::string common_origin(const answer::Section& section) {
    const answer::Figure* first = nullptr;
    std::size_t figures = 0;
    for (const auto& item : section.items) {
        if (!item.figure) {
            continue;
        }
        ++figures;
        first = first == nullptr ? &*item.figure : first;
        if (item.figure->citation || item.figure->basis.empty() || item.figure->basis != first->basis ||
            item.figure->label != first->label) {
            return {};
        }
    }
    return figures < 2 || !first->label ? std::string{} : std::string{label_name(*first->label)} + ": " + first->basis;
}

// A bar of so many eighths of a column.
std::string bar(double columns) {
    static constexpr std::array<std::string_view, 8> k_eighths{"", "▏", "▎", "▍", "▌", "▋", "▊", "▉"};
    const auto eighths = static_cast<std::size_t>(std::lround(columns * 8));
    std::string out;
    for (std::size_t i = 0; i < eighths / 8; ++i) {
        out += "█";
    }
    return out + std::string{k_eighths[eighths % 8]};
}

// One line a part: its band, a bar, its share, and the limits that lie in it.
void histogram(std::string& out, const answer::Histogram& h) {
    constexpr double k_bar = 36;
    const std::size_t most = *std::ranges::max_element(h.counts);
    const double width = (h.high - h.low) / static_cast<double>(h.counts.size());
    const UnitInfo& unit = unit_named(h.shown_in);
    const auto number = [&](double value) { return print_significant(unit.from_canonical(value), 3); };
    std::size_t edge = 0;
    for (std::size_t i = 0; i <= h.counts.size(); ++i) {
        edge = std::max(edge, number(h.low + static_cast<double>(i) * width).size());
    }
    paragraph(out, "", h.title);
    for (std::size_t i = 0; i < h.counts.size(); ++i) {
        const double from = h.low + static_cast<double>(i) * width;
        const double share = static_cast<double>(h.counts[i]) / static_cast<double>(h.total);
        std::string line = "  " + pad_left(number(from), edge) + " to " + pad_left(number(from + width), edge) + " " +
                           h.shown_in + "  " +
                           pad_right(bar(most == 0 ? 0.0 : k_bar * static_cast<double>(h.counts[i]) / static_cast<double>(most)),
                                     static_cast<std::size_t>(k_bar)) +
                           fmt::format(" {:5.1f} %", share * 100);
        for (const auto& mark : h.marks) {
            if (mark.at >= from && mark.at < from + width) {
                line += " < " + mark.words;
            }
        }
        out += line + "\n";
    }
}

} // namespace

std::string text(const answer::Document& document) {
    std::string out = document.heading.empty() ? "" : document.heading + "\n";
    Footnotes notes;
    std::size_t title_width = 0;
    std::size_t value_width = 0;
    for (const auto& section : document.sections) {
        for (const auto& item : section.items) {
            title_width = std::max(title_width, display_width(item.title));
            if (item.figure) {
                value_width = std::max(value_width, display_width(value_text(item)));
            }
        }
    }
    for (const auto& section : document.sections) {
        out += "\n";
        const std::string common = common_origin(section);
        if (!section.title.empty()) {
            paragraph(out, "", section.title + (common.empty() ? "" : " (" + common + ")"));
        }
        for (const auto& item : section.items) {
            if (item.title.empty()) {
                continue; // for programs, not for the eye
            }
            const std::string lead = "  " + pad_right(item.title, title_width) + "  ";
            const std::string value = value_text(item);
            if (value.empty()) {
                continue;
            }
            const std::string origin = common.empty() ? origin_text(item, notes) : std::string{};
            if (origin.empty()) {
                paragraph(out, lead, value);
                continue;
            }
            const std::string start = lead + pad_right(value, value_width) + "  ";
            if (display_width(start) + display_width(origin) <= k_width) {
                out += start + origin + "\n";
            } else {
                out += lead + value + "\n";
                paragraph(out, std::string(display_width(lead) + 2, ' '), origin);
            }
        }
    }
    if (document.histogram) {
        out += "\n";
        histogram(out, *document.histogram);
    }
    if (!document.notes.empty()) {
        out += "\n";
        for (const std::string& note : document.notes) {
            paragraph(out, "  ", note);
        }
    }
    if (!notes.empty()) {
        out += "\n";
        notes.append_to(out);
    }
    if (!document.cautions.empty()) {
        out += "\n";
        cautions(out, document.cautions);
    }
    return out;
}

std::string text(const answer::TableAnswer& table) {
    std::string out;
    line_or_paragraph(out, "", table.title);
    out += "\n";
    std::vector<std::size_t> shown;
    std::vector<std::size_t> widths;
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
        const std::string& key = table.columns[c].key;
        const bool empty = std::ranges::all_of(table.rows, [&](const auto& row) { return row[c].text.empty(); });
        // A name that only repeats the code says nothing: it is left to --csv and --json.
        const bool repeats = key == "name" && c > 0 &&
                             std::ranges::all_of(table.rows, [&](const auto& row) { return row[c].text == row[c - 1].text; });
        if (!empty && !repeats && !table.columns[c].hidden) {
            std::size_t width = display_width(table.columns[c].title);
            for (const auto& row : table.rows) {
                width = std::max(width, display_width(row[c].text));
            }
            shown.push_back(c);
            widths.push_back(width);
        }
    }
    const auto line = [&](const auto& cell_of) {
        std::string row;
        for (std::size_t i = 0; i < shown.size(); ++i) {
            const std::string cell = cell_of(shown[i]);
            const bool right = table.columns[shown[i]].number;
            const bool last = i + 1 == shown.size();
            row += (i == 0 ? "" : "  ") + (right ? pad_left(cell, widths[i]) : last ? cell : pad_right(cell, widths[i]));
        }
        const std::size_t end = row.find_last_not_of(' ');
        return row.substr(0, end == std::string::npos ? 0 : end + 1) + "\n";
    };
    if (table.rows.empty()) {
        out += "none\n";
    } else {
        out += line([&](std::size_t c) { return table.columns[c].title; });
        out += line([&](std::size_t c) {
            const auto at = static_cast<std::size_t>(std::ranges::find(shown, c) - shown.begin());
            return std::string(widths[at], '-');
        });
        for (const auto& row : table.rows) {
            out += line([&](std::size_t c) { return row[c].text; });
        }
    }
    if (!table.notes.empty()) {
        out += "\n";
        for (const std::string& note : table.notes) {
            paragraph(out, "", note);
        }
    }
    if (!table.cautions.empty()) {
        out += "\n";
        cautions(out, table.cautions);
    }
    return out;
}

std::string conversion_text(const answer::Document& document) {
    std::string out;
    std::string setting;
    for (const auto& section : document.sections) {
        for (const auto& item : section.items) {
            if (!item.figure) {
                continue;
            }
            if (item.key == "input") {
                out += item.figure->print;
            } else if (item.key == "scale.setting") {
                setting = item.figure->basis + ": set " + item.figure->print;
            } else if (item.key == "scale.error") {
                setting += ", " + item.figure->print + " off";
            } else {
                out += " = " + item.figure->print;
            }
        }
    }
    return out + "\n" + (setting.empty() ? "" : setting + "\n");
}

void append_conversion(std::string& out, const answer::Conversion& conversion) {
    out += conversion.number;
    append_unit(out, *conversion.from);
    out += " = ";
    append_significant(out, conversion.value, conversion.digits);
    append_unit(out, *conversion.to);
    out += '\n';
}

} // namespace clampbook::present
