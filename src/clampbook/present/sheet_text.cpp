// SPDX-License-Identifier: MIT
// The spec sheet on 80 columns. An unchecked or derived figure has a sign before it and its state in words behind it.

#include "clampbook/base/text.hpp"
#include "clampbook/present/layout.hpp"
#include "clampbook/present/present.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace clampbook::present {
namespace {

using answer::SheetJoint;
using answer::SheetLine;

constexpr std::size_t k_name = 26;
constexpr std::size_t k_screws = 20;
constexpr std::size_t k_sign = 3;
constexpr std::size_t k_figure = k_width - 2 - k_name - k_screws - k_sign;

// Cells beside each other, each wrapped in its own width.
void row(std::string& out, const std::vector<std::pair<std::string, std::size_t>>& cells) {
    std::vector<std::vector<std::string>> wrapped;
    std::size_t height = 0;
    for (const auto& [text, width] : cells) {
        wrapped.push_back(wrap(text, width - 1));
        height = std::max(height, wrapped.back().size());
    }
    for (std::size_t i = 0; i < height; ++i) {
        std::string line = "  ";
        for (std::size_t c = 0; c < cells.size(); ++c) {
            line += pad_right(i < wrapped[c].size() ? wrapped[c][i] : "", cells[c].second);
        }
        line.erase(line.find_last_not_of(' ') + 1);
        out += line + "\n";
    }
}

// Every torque of it is in that unit already.
bool written_in(const Tightening& tightening, std::string_view unit) {
    return std::ranges::all_of(tightening.steps,
                               [&](const Step& step) { return step.kind != StepKind::torque || step.unit == unit; });
}

void value_lines(std::string& out, const std::string& name, const std::string& screws, const SheetLine& line) {
    const std::string& written = line.found.value.tightening.as_written;
    row(out, {{name, k_name}, {screws, k_screws}, {line.sign, k_sign}, {written, k_figure + 1}});
    std::vector<std::string> parts;
    for (const auto& [unit, other] : {std::pair{"N·m", line.found.in_newton_metres}, {"lbf·ft", line.found.in_pound_feet}}) {
        if (!other.empty() && !written_in(line.found.value.tightening, unit)) {
            parts.push_back(other);
        }
    }
    parts.push_back(line.state);
    if (!line.source.empty()) {
        parts.push_back(line.source);
    }
    paragraph(out, "      ", join(parts, "; "));
    if (!line.change.empty()) {
        paragraph(out, "      * ", line.change);
    }
    if (!line.found.value.note.empty()) {
        paragraph(out, "      ", "note: " + line.found.value.note);
    }
}

void joint_lines(std::string& out, const SheetJoint& joint) {
    const std::string name = joint.joint.name + (joint.joint.safety_critical ? " (safety-critical)" : "");
    if (joint.lines.empty()) {
        row(out, {{name, k_name}, {joint.screws, k_screws}, {"", k_sign}, {"", k_figure + 1}});
        out += "      no value in the book\n";
    }
    bool first = true;
    for (const SheetLine& line : joint.lines) {
        value_lines(out, first ? name : "", first ? joint.screws : "", line);
        first = false;
    }
    for (const SheetLine& line : joint.ended) {
        paragraph(out, "      * ", line.found.value.tightening.as_written + " " + line.change);
    }
    if (!joint.disagreement.empty()) {
        paragraph(out, "      ! ", joint.disagreement);
    }
    if (!joint.ring.empty()) {
        paragraph(out, "      ", "ring: " + joint.ring);
    }
    if (!joint.joint.note.empty()) {
        paragraph(out, "      ", joint.joint.note);
    }
}

} // namespace

std::string text(const answer::Sheet& sheet) {
    std::string out;
    paragraph(out, "", sheet.title);
    paragraph(out, "", sheet.chosen);
    paragraph(out, "",
              fmt::format("{}; revision {} of the book, digest {}", sheet.date, sheet.revision, sheet.digest.substr(0, 16)));
    if (!sheet.since.empty()) {
        paragraph(out, "", "* marks what changed since " + sheet.since);
    }
    out += "\n";
    paragraph(out, "", answer::sheet_legend());
    RecordId machine = 0;
    for (const answer::SheetAssembly& group : sheet.assemblies) {
        out += "\n";
        if (group.machine.id != machine) {
            machine = group.machine.id;
            paragraph(out, "", group.machine.title() + ", by " + group.machine.maker);
            out += "\n";
        }
        paragraph(out, "- ", group.assembly.name);
        for (const SheetJoint& joint : group.joints) {
            joint_lines(out, joint);
        }
    }
    out += "\n";
    paragraph(out, "",
              fmt::format("{} joints, {} values, {} of them checked; {} joints without a value", sheet.joints, sheet.values,
                          sheet.checked, sheet.without_value));
    if (sheet.left_out > 0) {
        paragraph(out, "", fmt::format("{} joints have no checked value and are left out", sheet.left_out));
    }
    if (!sheet.sources.empty()) {
        out += "\nSources\n";
    }
    for (std::size_t i = 0; i < sheet.sources.size(); ++i) {
        paragraph(out, fmt::format("  [{}] ", i + 1), sheet.sources[i].line());
    }
    out += "\n";
    const auto named = [&](const char* name, const std::string& words) {
        if (words.empty()) {
            out += std::string{name} + "\n";
        } else {
            paragraph(out, pad_right(name, 13), words);
        }
    };
    named("Prepared by", sheet.prepared_by);
    std::vector<std::string> checkers;
    for (const auto& [name, n] : sheet.checked_by) {
        checkers.push_back(fmt::format("{} ({})", name, n));
    }
    named("Checked by", join(checkers, ", "));
    named("Digest", sheet.digest);
    out += "\n";
    for (const Caution& caution : sheet.cautions) {
        paragraph(out, "! ", caution.text);
    }
    return out;
}

} // namespace clampbook::present
