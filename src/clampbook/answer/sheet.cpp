// SPDX-License-Identifier: MIT
#include "clampbook/answer/sheet.hpp"

#include "clampbook/answer/query.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/model/thread.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <set>

namespace clampbook::answer {
namespace {

using book::Book;
using book::Place;

constexpr std::size_t k_all = std::numeric_limits<std::int32_t>::max();

Caution caution_printed_copy() { return {"printed-copy", "Printed copies are out of date when the book's revision is newer."}; }

// Names as people list them; where they are alike to the eye (box 7, box 007), the older record first.
bool name_before(std::string_view a, RecordId a_id, std::string_view b, RecordId b_id) {
    const bool before = comes_before(a, b);
    return before != comes_before(b, a) ? before : a_id < b_id;
}

// The order of the sheet. Records decide what belongs together, names only what comes first.
bool in_order(const Place& a, const Place& b) {
    if (a.machine.id != b.machine.id) {
        return name_before(a.machine.maker + " " + a.machine.title(), a.machine.id, b.machine.maker + " " + b.machine.title(),
                           b.machine.id);
    }
    if (a.assembly.id != b.assembly.id) {
        return name_before(a.assembly.name, a.assembly.id, b.assembly.name, b.assembly.id);
    }
    return name_before(a.joint.name, a.joint.id, b.joint.name, b.joint.id);
}

std::vector<Place> chosen_places(const Book& book, const reference::Reference& reference, const SheetRequest& request) {
    std::vector<Place> places = book.places();
    std::ranges::stable_sort(places, in_order);
    if (request.machine) {
        std::erase_if(places, [&](const Place& place) { return place.machine.id != request.machine->id; });
    }
    if (trim(request.words).empty()) {
        return places;
    }
    const SearchPlan plan = search_plan(reference, request.words);
    book::SearchResult found = book.search(plan.literal, k_all);
    if (found.total == 0 && plan.wide) {
        found = book.search(*plan.wide, k_all);
    }
    std::set<RecordId> fits;
    for (const Place& place : found.places) {
        fits.insert(place.joint.id);
    }
    std::erase_if(places, [&](const Place& place) { return !fits.contains(place.joint.id); });
    return places;
}

std::string words_for(const SheetRequest& request) {
    std::string out = trim(request.words).empty() ? "all joints" : "joints that fit '" + std::string{trim(request.words)} + "'";
    return request.machine ? out + " of " + request.machine->title() : out;
}

std::string screws_of(const Joint& joint) {
    std::vector<std::string> parts;
    if (!joint.thread.empty()) {
        parts.push_back(thread_for_print(joint.thread));
    }
    if (!joint.property_class.empty()) {
        parts.push_back(joint.property_class);
    }
    const std::string screw = join(parts, " ");
    if (screw.empty()) {
        return joint.count > 1 ? std::to_string(joint.count) + " off" : "";
    }
    return (joint.count > 1 ? std::to_string(joint.count) + " × " : "") + screw;
}

std::string sign_of(const Value& value) {
    const bool computed = value.label == Label::derived || value.label == Label::practice;
    return std::string{computed ? "~" : ""} + (value.is_checked() ? "" : "?");
}

// What happened to values since a revision.
class Changes {
public:
    Changes(const Book& book, std::int64_t revision) {
        for (const book::Event& event : book.told_of_values_after(revision)) {
            told_[event.value].insert(event.kind);
        }
        for (const auto& [value, kinds] : told_) {
            if (kinds.contains("value superseded")) {
                const Value ended = book.value(value).value();
                replaces_[ended.superseded_by].push_back(ended.tightening.as_written);
            }
        }
    }
    [[nodiscard]] std::string of_current(RecordId value) const {
        const auto told = told_.find(value);
        if (told == told_.end()) {
            return {};
        }
        const auto before = replaces_.find(value);
        if (before != replaces_.end()) {
            return "new, in place of " + join(before->second, " and ");
        }
        return told->second.contains("value entered") ? "new" : "checked since";
    }
    // Entered and ended since: a reader of the older sheet never saw it.
    [[nodiscard]] bool ended_of_older(RecordId value) const {
        const auto told = told_.find(value);
        return told != told_.end() && !told->second.contains("value entered");
    }

private:
    std::map<RecordId, std::set<std::string>> told_;
    std::map<RecordId, std::vector<std::string>> replaces_;
};

struct Since {
    std::int64_t revision = 0;
    std::string words;
};

Since since_of(const Book& book, const book::Info& info, const SheetRequest& request) {
    const std::string text{trim(request.since)};
    const bool digits = !text.empty() && text.find_first_not_of("0123456789") == std::string::npos;
    const bool date = text.size() == 10 && text[4] == '-' && text[7] == '-';
    if (digits && text.size() < 10) {
        const std::int64_t revision = std::stoll(text);
        if (revision < 1 || revision > static_cast<std::int64_t>(info.events)) {
            throw error(ErrorKind::usage, "the book has revisions 1 to {}, and no {}", info.events, text);
        }
        return {revision, "revision " + text};
    }
    if (!date || text.find_first_not_of("0123456789-") != std::string::npos) {
        throw error(ErrorKind::usage, "'{}' is neither a revision of the book (like {}) nor a date (like {})", text, info.events,
                    request.date);
    }
    if (text > request.date) {
        throw error(ErrorKind::usage, "{} lies in the future; today is {}", text, request.date);
    }
    const std::int64_t revision = book.events_before(text);
    return {revision, fmt::format("{} (revision {})", text, revision)};
}

// Numbers the sources in the order in which the sheet meets them.
class Sources {
public:
    explicit Sources(std::vector<Source>& list) : list_(list) {}
    std::string reference(const Value& value) {
        if (!value.source) {
            return value.page;
        }
        const auto [found, added] = number_.emplace(value.source->id, list_.size() + 1);
        if (added) {
            list_.push_back(*value.source);
        }
        return fmt::format("[{}]{}", found->second, value.page.empty() ? "" : " " + value.page);
    }

private:
    std::vector<Source>& list_;
    std::map<RecordId, std::size_t> number_;
};

SheetLine line_of(FoundValue found, Sources& sources) {
    SheetLine line;
    const Value& value = found.value;
    line.sign = sign_of(value);
    line.state = std::string{label_name(value.label)} + (value.is_checked() ? ", checked" : ", unchecked");
    line.source = sources.reference(value);
    line.found = std::move(found);
    return line;
}

SheetJoint joint_of(const FoundJoint& found, const SheetRequest& request, const std::optional<Changes>& changes,
                    Sources& sources) {
    SheetJoint out;
    out.joint = found.place.joint;
    out.screws = screws_of(out.joint);
    out.ring = found.ring + (found.ring.empty() || found.renew.empty() ? "" : ", " + found.renew);
    for (const FoundValue& value : found.values) {
        if (request.only_checked && !value.value.is_checked()) {
            continue;
        }
        if (value.value.standing == Standing::current) {
            out.lines.push_back(line_of(value, sources));
            out.lines.back().change = changes ? changes->of_current(value.value.id) : "";
        } else if (changes && changes->ended_of_older(value.value.id)) {
            out.ended.push_back(line_of(value, sources));
            const bool withdrawn = value.value.standing == Standing::withdrawn;
            out.ended.back().change = (withdrawn ? "withdrawn: " : "superseded: ") + value.value.end_reason;
        }
    }
    const bool disagree = std::ranges::any_of(out.lines, [&](const SheetLine& line) {
        return !agree(out.lines.front().found.value.tightening, line.found.value.tightening);
    });
    out.disagreement = disagree ? "These current values disagree: settle which one holds before you tighten." : "";
    return out;
}

void count(Sheet& sheet, const SheetJoint& joint, std::map<std::string, std::size_t>& checkers) {
    ++sheet.joints;
    sheet.without_value += joint.lines.empty() ? 1U : 0U;
    for (const SheetLine& line : joint.lines) {
        ++sheet.values;
        if (line.found.value.is_checked()) {
            ++sheet.checked;
            ++checkers[line.found.value.checked_by];
        }
    }
}

} // namespace

std::string sheet_legend() {
    return "? unchecked: nobody has keyed it again from its source.  ~ derived or common practice: no maker's figure.";
}

Sheet sheet(const Book& book, const reference::Reference& reference, const SheetRequest& request) {
    const book::Info info = book.info();
    Sheet sheet;
    sheet.chosen = words_for(request) + (request.only_checked ? "; checked values alone" : "");
    sheet.title = trim(request.title).empty() ? "Tightening values" : std::string{trim(request.title)};
    sheet.prepared_by = trim(request.prepared_by);
    sheet.date = request.date;
    sheet.revision = static_cast<std::int64_t>(info.events);
    sheet.digest = info.head;
    std::optional<Changes> changes;
    if (!trim(request.since).empty()) {
        const Since since = since_of(book, info, request);
        sheet.since = since.words;
        changes.emplace(book, since.revision);
    }
    std::map<std::string, std::size_t> checkers;
    Sources sources{sheet.sources};
    for (const Place& place : chosen_places(book, reference, request)) {
        const FoundJoint found = joint(book, reference, place.joint.id);
        SheetJoint line = joint_of(found, request, changes, sources);
        if (request.only_checked && line.lines.empty() && line.ended.empty()) {
            ++sheet.left_out;
            continue;
        }
        if (sheet.assemblies.empty() || sheet.assemblies.back().assembly.id != place.assembly.id) {
            sheet.assemblies.push_back({place.machine, place.assembly, {}});
        }
        count(sheet, line, checkers);
        sheet.assemblies.back().joints.push_back(std::move(line));
        for (const Caution& caution : found.cautions) {
            if (std::ranges::find(sheet.cautions, caution) == sheet.cautions.end()) {
                sheet.cautions.push_back(caution);
            }
        }
    }
    if (sheet.assemblies.empty() && sheet.left_out == 0) {
        throw error(ErrorKind::not_found, "{}",
                    info.joints == 0 ? "the book has no joints yet" : "nothing in the book is among " + words_for(request));
    }
    sheet.checked_by.assign(checkers.begin(), checkers.end());
    std::erase(sheet.cautions, caution_maker_first());
    sheet.cautions.insert(sheet.cautions.begin(), caution_maker_first());
    sheet.cautions.push_back(caution_printed_copy());
    return sheet;
}

} // namespace clampbook::answer
