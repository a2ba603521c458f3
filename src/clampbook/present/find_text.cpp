// SPDX-License-Identifier: MIT
// The technician's screen. One joint is shown whole; several get a line each, grouped by machine and assembly.

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/present/layout.hpp"
#include "clampbook/present/present.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace clampbook::present {
namespace {

using answer::FoundJoint;
using answer::FoundValue;

// As written first; N·m and lbf·ft beside it, leaving out the one that says the same again.
std::string both_units(const FoundValue& value) {
    std::string out = value.value.tightening.as_written;
    for (const std::string& other : {value.in_newton_metres, value.in_pound_feet}) {
        const bool said = other.empty() || other == value.value.tightening.as_written;
        out += said ? "" : "   " + other;
    }
    return out;
}

std::string upper(std::string_view text) {
    std::string out{text};
    for (char& c : out) {
        c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    }
    return out;
}

std::string whose(const Value& value) {
    std::string out =
        value.is_checked() ? "checked by " + value.checked_by + " on " + value.checked_on : std::string{"unchecked"};
    if (value.standing != Standing::current) {
        out += ", " + upper(standing_name(value.standing)) +
               (value.superseded_by == 0 ? "" : fmt::format(" by #{}", value.superseded_by)) + ": " + value.end_reason;
    }
    return out;
}

void value_block(std::string& out, const FoundValue& found) {
    const Value& value = found.value;
    out += "\n";
    line_or_paragraph(out, "  ", both_units(found));
    paragraph(out, "    ", upper(label_name(value.label)) + ": " + std::string{label_meaning(value.label)} + "; " + whose(value));
    if (value.source) {
        paragraph(out, "    ", value.source->line() + (value.page.empty() ? "" : ", " + value.page));
    } else {
        out += "    no source given\n";
    }
    paragraph(out, "    ", fmt::format("value #{}, entered by {} on {}", value.id, value.entered_by, value.entered_on));
    for (const auto& [lead, body] : {std::pair{"note: ", value.note}, {"confirmed although implausible: ", value.confirmed}}) {
        if (!body.empty()) {
            paragraph(out, "    ", lead + body);
        }
    }
}

std::string joint_facts(const FoundJoint& found) {
    const Joint& j = found.place.joint;
    std::vector<std::string> facts;
    const auto add = [&](const std::string& fact) { facts.push_back(fact); };
    if (j.count > 1) {
        add(std::to_string(j.count) + " off");
    }
    if (!j.thread.empty()) {
        add("thread " + thread_for_print(j.thread) + (j.property_class.empty() ? "" : ", class " + j.property_class));
    } else if (!j.property_class.empty()) {
        add("class " + j.property_class);
    }
    if (!j.form.empty()) {
        add("form " + j.form);
    }
    if (!j.housing.empty()) {
        add("housing " + j.housing);
    }
    if (j.engagement_mm) {
        add("engagement " + print_shortest(*j.engagement_mm) + " mm");
    }
    return join(facts, "; ");
}

// A line a value; the second and further ones stand under the first.
std::string short_values(const FoundJoint& found, std::size_t indent) {
    const std::string number = fmt::format("   #{}", found.place.joint.id);
    const auto current = found.current();
    if (current.empty()) {
        return "no value" + number;
    }
    std::string out;
    for (const FoundValue* value : current) {
        out += (out.empty() ? "" : "\n" + std::string(indent, ' ')) + both_units(*value) + "   " +
               std::string{label_name(value->value.label)} + ", " + (value->value.is_checked() ? "checked" : "unchecked") +
               number;
    }
    return out + (found.disagreement.empty() ? "" : "\n" + std::string(indent, ' ') + "! these current values disagree");
}

} // namespace

std::string text(const FoundJoint& found) {
    const Machine& machine = found.place.machine;
    const Joint& joint = found.place.joint;
    std::string out;
    line_or_paragraph(out, "", machine.title() + ", by " + machine.maker);
    line_or_paragraph(out, "",
                      found.place.assembly.name + ", " + joint.name + fmt::format("   #{}, {}", joint.id, role_name(joint.role)) +
                          (joint.safety_critical ? ", SAFETY-CRITICAL" : ""));
    const auto current = found.current();
    if (!found.disagreement.empty()) {
        out += "\n";
        paragraph(out, "! ", found.disagreement + ". Settle which one holds before you tighten.");
    }
    for (const FoundValue& value : found.values) {
        value_block(out, value);
    }
    if (current.empty()) {
        out += found.values.empty() ? "\n  No value is in the book for this joint.\n"
                                    : "\n  No current value is in the book for this joint.\n";
        if (!found.derive_command.empty()) {
            // A command stays on one line, so that it can be pasted.
            const std::string words = "  A generic figure, clearly labelled:";
            const bool fits = display_width(words) + 1 + display_width(found.derive_command) <= k_width;
            out += words + (fits ? " " : "\n    ") + found.derive_command + "\n";
        } else {
            paragraph(out, "  ", found.no_generic);
        }
    }
    out += "\n";
    if (const std::string facts = joint_facts(found); !facts.empty()) {
        paragraph(out, "  ", facts);
    }
    if (!found.ring.empty()) {
        paragraph(out, "  ", "ring: " + found.ring + ", " + found.renew);
    }
    if (!joint.note.empty()) {
        paragraph(out, "  ", "note: " + joint.note);
    }
    out += "\n";
    for (const Caution& caution : found.cautions) {
        paragraph(out, "! ", caution.text);
    }
    return out;
}

std::string text(const answer::FindAnswer& found) {
    std::string out;
    if (found.matches.empty()) {
        return {};
    }
    if (found.matches.size() == 1 && found.total == 1) {
        out = text(found.matches.front());
    } else {
        out = fmt::format("{} joints fit '{}'\n", found.total, found.query);
        std::size_t name_width = 0;
        std::size_t thread_width = 0;
        for (const FoundJoint& match : found.matches) {
            name_width = std::max(name_width, display_width(match.place.joint.name));
            thread_width = std::max(thread_width, display_width(thread_for_print(match.place.joint.thread)));
        }
        const book::Place* last = nullptr;
        for (const FoundJoint& match : found.matches) {
            const auto& place = match.place;
            if (last == nullptr || last->machine.id != place.machine.id) {
                out += "\n" + place.machine.title() + ", by " + place.machine.maker + "\n";
            }
            if (last == nullptr || last->assembly.id != place.assembly.id) {
                out += "  " + place.assembly.name + "\n";
            }
            const std::string lead = "    " + pad_right(place.joint.name, name_width) + "  " +
                                     pad_right(thread_for_print(place.joint.thread), thread_width) + "  ";
            out += lead + short_values(match, display_width(lead)) + "\n";
            last = &place;
        }
        if (found.total > found.matches.size()) {
            out += fmt::format("\nand {} more; add a word to narrow it down, or --most {}\n", found.total - found.matches.size(),
                               found.total);
        }
        out += "\nWhose figure it is, and the cautions: 'clampbook joint show NUMBER'\n";
    }
    if (found.other_words > 0) {
        out += fmt::format("\n{} more under other words for the same thing: add --wide\n", found.other_words);
    }
    return out;
}

} // namespace clampbook::present
