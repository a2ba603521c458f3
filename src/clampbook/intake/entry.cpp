// SPDX-License-Identifier: MIT
// Joints and values as people enter them, judged before they are kept.

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/intake/intake.hpp"
#include "clampbook/intake/judge.hpp"
#include "clampbook/model/ring.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <functional>

namespace clampbook::intake {
namespace {

constexpr std::array<std::string_view, 3> k_screw_forms{"hexagon", "socket", "flange"};

// "copper 18x24": the material in the standard's words, the size as typed with the sign ×.
std::string ring_of(const reference::Reference& reference, std::string_view typed) {
    const RingName ring = read_ring(typed);
    const std::string material = reference.ring_material(ring.material);
    return ring.size ? material + " " + ring.size->text : material;
}

std::string form_of(const reference::Reference& reference, std::string_view typed) {
    std::string folded = fold(typed);
    if (std::ranges::find(k_screw_forms, folded) != k_screw_forms.end()) {
        return folded;
    }
    try {
        return reference.plug_form(typed);
    } catch (const Error& fault) {
        throw error(fault.kind(), "{}; screws are hexagon, socket or flange", fault.what());
    }
}

// A short form of one alloy's name becomes the name. A family's word (steel, cast aluminium) stays what it is: which
// alloy it was, nobody said.
std::string housing_of(const reference::Reference& reference, std::string_view typed) {
    const std::string code = reference.housing(typed);
    const auto letters = [](std::string_view text) { return join(folded_words(text), ""); };
    return letters(code).ends_with(letters(typed)) ? code : std::string{trim(typed)};
}

} // namespace

Judge::Judge(const reference::Reference& reference) : reference_(reference), memory_(std::make_unique<Memory>()) {}
Judge::~Judge() = default;

std::string key_of(std::initializer_list<std::string_view> parts) {
    std::string key;
    for (const std::string_view part : parts) {
        key.append(part).push_back('\x1f');
    }
    return key;
}

std::string confirmation(const Judge& judge, const Joint& joint, const Tightening& tightening, std::string_view reason,
                         std::string_view option) {
    const auto fault = implausible(judge, joint, tightening);
    if (!fault) {
        return {};
    }
    if (trim(reason).empty()) {
        throw error(ErrorKind::conflict, "{}. Look at the source again; if it stands there, say why with {} \"reason\"", *fault,
                    option);
    }
    return std::string{trim(reason)};
}

void require_date(std::string_view text, std::string_view what) {
    const auto part = [&](std::size_t at, std::size_t size) -> std::optional<int> {
        int value = 0;
        for (const char c : text.substr(at, size)) {
            if (c < '0' || c > '9') {
                return std::nullopt;
            }
            value = value * 10 + (c - '0');
        }
        return value;
    };
    if (text.size() == 10 && text[4] == '-' && text[7] == '-') {
        const auto year = part(0, 4);
        const auto month = part(5, 2);
        const auto day = part(8, 2);
        if (year && month && day &&
            std::chrono::year_month_day{std::chrono::year{*year}, std::chrono::month{static_cast<unsigned>(*month)},
                                        std::chrono::day{static_cast<unsigned>(*day)}}
                .ok()) {
            return;
        }
    }
    throw error(ErrorKind::usage, "{} '{}' is no date; a date is written like 2026-11-25", what, text);
}

void require_past(std::string_view date, std::string_view what, const book::Stamp& stamp) {
    require_date(date, what);
    if (date > stamp.date()) {
        throw error(ErrorKind::usage, "{} {} lies in the future; today is {}", what, date, stamp.date());
    }
}

void require_origin(const Value& value) {
    if (value.label == Label::maker && (!value.source || value.page.empty())) {
        throw error(ErrorKind::usage,
                    "a maker's figure needs the document it comes from, and the page in it: a source and a page");
    }
    if (value.label == Label::standard && !value.source) {
        throw error(ErrorKind::usage, "a standard's figure needs the standard it comes from: a source");
    }
}

bool same_place(const Value& a, const Value& b) {
    const auto source = [](const Value& v) { return v.source ? v.source->id : 0; };
    return a.label == b.label && source(a) == source(b) && a.page == b.page;
}

namespace {

// Runs the reading of one field; its fault names the field where that is wanted.
void field(FieldNames names, std::string_view name, const std::function<void()>& read) {
    try {
        read();
    } catch (const Error& fault) {
        if (names == FieldNames::left_out) {
            throw;
        }
        throw error(fault.kind(), "{}: {}", name, fault.what());
    }
}

// What of a joint the curated database has words for, in its words.
Joint curated_words(const reference::Reference& reference, const Joint& told, FieldNames names) {
    Joint joint;
    std::optional<reference::ThreadRow> thread;
    const auto said = [](const std::string& text) { return !trim(text).empty(); };
    if (said(told.thread)) {
        field(names, "thread", [&] {
            thread = reference.thread(read_thread(told.thread));
            joint.thread = thread->code;
        });
    }
    if (said(told.property_class)) {
        field(names, "property_class", [&] {
            joint.property_class = reference.fastener_class(told.property_class);
            const auto known = reference.class_names();
            if (thread && std::ranges::find(known, joint.property_class) != known.end()) {
                (void)reference.property_class(joint.property_class, *thread);
            }
        });
    }
    if (said(told.form)) {
        field(names, "form", [&] { joint.form = form_of(reference, told.form); });
    }
    if (said(told.ring)) {
        field(names, "ring", [&] { joint.ring = ring_of(reference, told.ring); });
    }
    if (said(told.housing)) {
        field(names, "housing", [&] { joint.housing = housing_of(reference, told.housing); });
    }
    return joint;
}

} // namespace

Joint in_standard_words(const Judge& judge, Joint joint, FieldNames names) {
    joint.name = std::string{trim(joint.name)};
    if (joint.name.empty()) {
        throw error(ErrorKind::usage, "the joint has no name");
    }
    field(names, "count", [&] {
        if (joint.count < 1 || joint.count > 999) {
            throw error(ErrorKind::usage, "a joint has 1 to 999 screws, not {}", joint.count);
        }
    });
    field(names, "engagement_mm", [&] {
        if (joint.engagement_mm && !(*joint.engagement_mm > 0 && *joint.engagement_mm < 1000)) {
            throw error(ErrorKind::usage, "an engagement of {} mm is not between 0 and 1000 mm",
                        print_shortest(*joint.engagement_mm));
        }
    });
    const Joint& words =
        judge.memory().words.of(key_of({joint.thread, joint.property_class, joint.form, joint.ring, joint.housing}),
                                [&] { return curated_words(judge.reference(), joint, names); });
    joint.thread = words.thread;
    joint.property_class = words.property_class;
    joint.form = words.form;
    joint.ring = words.ring;
    joint.housing = words.housing;
    joint.safety_critical = joint.safety_critical || is_safety_critical(joint.role);
    return joint;
}

RecordId keep(book::Book& book, const Value& value, const std::vector<RecordId>& replaces, const std::string& reason,
              const book::Stamp& stamp) {
    RecordId id = 0;
    book.in_one_go([&] {
        id = book.add_value(value, stamp);
        for (const RecordId replaced : replaces) {
            book.end_value(replaced, {id, reason, stamp.person, stamp.date()}, stamp);
        }
    });
    return id;
}

RecordId enter(book::Book& book, const Judge& judge, const Entry& entry, const book::Stamp& stamp) {
    Value value;
    value.joint = entry.joint;
    value.label = entry.label;
    value.tightening = read_tightening(entry.tightening);
    value.source = entry.source;
    value.page = std::string{trim(entry.page)};
    value.note = std::string{trim(entry.note)};
    value.entered_by = entry.entered_by.empty() ? stamp.person : entry.entered_by;
    value.entered_on = entry.entered_on.empty() ? stamp.date() : entry.entered_on;
    require_past(value.entered_on, "the date of entry", stamp);
    require_origin(value);
    RecordId id = 0;
    book.in_one_go([&] {
        if (const auto place = book.place(entry.joint)) {
            value.confirmed = confirmation(judge, place->joint, value.tightening, entry.confirmed, "--confirm");
        }
        for (const Value& there : book.values(entry.joint)) {
            if (there.standing != Standing::current || !same_place(there, value)) {
                continue;
            }
            if (there.tightening.steps == value.tightening.steps) {
                throw error(ErrorKind::conflict,
                            "'{}' with this label, source and page is current in the book already (value {})",
                            there.tightening.as_written, there.id);
            }
            const bool somewhere = value.source || !value.page.empty(); // a place that two figures cannot both stand in
            if (somewhere && !same_figure(there.tightening, value.tightening) &&
                std::ranges::find(entry.replaces, there.id) == entry.replaces.end()) {
                throw error(ErrorKind::conflict,
                            "'{}' with this label, source and page is current in the book (value {}): supersede that one, or say "
                            "where '{}' comes from",
                            there.tightening.as_written, there.id, value.tightening.as_written);
            }
        }
        id = keep(book, value, entry.replaces, entry.reason, stamp);
    });
    return id;
}

Source source_named(const book::Book& book, std::string_view text) {
    const std::string wanted = fold(text);
    std::vector<Source> found;
    std::vector<std::string> names;
    for (const Source& source : book.sources()) {
        if (std::to_string(source.id) == wanted || (!source.number.empty() && fold(source.number) == wanted) ||
            fold(source.title) == wanted) {
            found.push_back(source);
        }
        names.push_back(source.title);
        if (!source.number.empty()) {
            names.push_back(source.number);
        }
    }
    if (found.empty()) {
        throw error(ErrorKind::not_found, "no source '{}' is in the book{}; add it with 'clampbook source add'", text,
                    did_you_mean(text, names));
    }
    if (found.size() > 1) {
        std::vector<std::string> lines;
        for (const Source& source : found) {
            lines.push_back(std::to_string(source.id) + " (" + source.line() + ")");
        }
        throw error(ErrorKind::conflict, "'{}' names {} sources; give the number of one: {}", text, found.size(),
                    join(lines, "; "));
    }
    return found.front();
}

} // namespace clampbook::intake
