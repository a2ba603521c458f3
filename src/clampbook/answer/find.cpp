// SPDX-License-Identifier: MIT
#include "clampbook/answer/find.hpp"

#include "clampbook/answer/query.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <algorithm>
#include <map>

namespace clampbook::answer {
namespace {

using book::Book;
using book::Place;
using reference::Reference;

std::string describe_ring(const Reference& reference, const Joint& joint, std::string& renew) {
    if (joint.ring.empty()) {
        return {};
    }
    const std::size_t blank = joint.ring.find(' ');
    const std::string material = joint.ring.substr(0, blank);
    const auto info = [&] {
        try {
            return reference.ring(material, joint.thread);
        } catch (const Error& fault) {
            throw error(ErrorKind::invalid_data, "joint {} of the book has a ring that is none: {}", joint.id, fault.what());
        }
    }();
    if (material == "none") {
        return {};
    }
    renew = info.renew;
    if (blank != std::string::npos) {
        return info.name + joint.ring.substr(blank) + " mm";
    }
    return info.usual.empty() ? info.name : info.name + " " + info.usual + " (usual size)";
}

// A command that is shown gets typed: a book of somebody else's must not have the shell do anything with it.
std::string shell_word(const std::string& text) {
    const auto plain = [](char c) {
        return static_cast<unsigned char>(c) >= 0x80 || (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') ||
               (c >= 'a' && c <= 'z') || std::string_view{"-_./+,:"}.find(c) != std::string_view::npos;
    };
    if (std::ranges::all_of(text, plain)) {
        return text;
    }
    std::string out = "'";
    for (const char c : text) {
        out += c == '\'' ? std::string{"'\\''"} : std::string{c};
    }
    return out + "'";
}

// What to say of a joint without a current value.
void say_no_value(const Reference& reference, FoundJoint& found) {
    const Joint& joint = found.place.joint;
    if (joint.safety_critical) {
        found.no_generic = "No generic figure stands in for a missing one on a safety-critical joint: get the maker's.";
        return;
    }
    if (is_plug(joint.role)) {
        if (joint.thread.empty() || joint.ring.empty() || joint.housing.empty()) {
            found.no_generic =
                "No generic figure: a plug's torque follows from its thread, ring and housing, and they aren't all known.";
            return;
        }
        found.derive_command = "clampbook plug " + shell_word(joint.thread) + " --housing " + shell_word(joint.housing) +
                               " --ring " + shell_word(joint.ring) +
                               (joint.form.empty() || joint.form == "collar hexagon" ? "" : " --form " + shell_word(joint.form)) +
                               (joint.engagement_mm ? " --engagement " + print_shortest(*joint.engagement_mm) + "mm" : "");
        return;
    }
    const auto classes = reference.class_names();
    if (joint.thread.empty() || std::ranges::find(classes, joint.property_class) == classes.end()) {
        found.no_generic = "No generic figure: it needs the thread and the property class of the screw.";
        return;
    }
    found.derive_command = "clampbook derive " + shell_word(joint.thread) + " " + shell_word(joint.property_class);
}

FoundJoint found_joint(const Book& book, const Reference& reference, Place place) {
    FoundJoint found;
    found.place = std::move(place);
    const Joint& joint = found.place.joint;
    for (Value& value : book.values(joint.id)) {
        FoundValue f;
        if (final_torque(value.tightening)) {
            f.in_newton_metres = tightening_in(value.tightening, "N·m");
            f.in_pound_feet = tightening_in(value.tightening, "lbf·ft");
        }
        f.value = std::move(value);
        found.values.push_back(std::move(f));
    }
    std::ranges::stable_sort(found.values, {}, [](const FoundValue& f) { return f.value.standing != Standing::current; });
    found.ring = describe_ring(reference, joint, found.renew);
    const auto current = found.current();
    for (std::size_t i = 1; i < current.size(); ++i) {
        if (!agree(current[0]->value.tightening, current[i]->value.tightening)) {
            found.disagreement = fmt::format("{} current values, and they disagree: {}", current.size(), [&] {
                std::vector<std::string> texts;
                for (const FoundValue* value : current) {
                    texts.push_back(value->value.tightening.as_written);
                }
                return join(texts, " against ");
            }());
            break;
        }
    }
    if (current.empty()) {
        say_no_value(reference, found);
    }
    if (joint.safety_critical) {
        found.cautions.push_back(caution_safety_critical());
    }
    if (joint.role == Role::drain) {
        found.cautions.push_back(caution_fill_first());
    }
    if (std::ranges::any_of(current, [](const FoundValue* f) { return f->value.label == Label::demo; })) {
        found.cautions.push_back(caution_demo());
    }
    found.cautions.push_back(caution_maker_first());
    return found;
}

// Joints of one assembly stay together, the assembly with the best match first.
void keep_together(std::vector<Place>& places) {
    std::map<RecordId, std::size_t> machine_rank;
    std::map<RecordId, std::size_t> assembly_rank;
    for (std::size_t i = 0; i < places.size(); ++i) {
        machine_rank.emplace(places[i].machine.id, i);
        assembly_rank.emplace(places[i].assembly.id, i);
    }
    std::ranges::stable_sort(places, [&](const Place& a, const Place& b) {
        return std::pair{machine_rank[a.machine.id], assembly_rank[a.assembly.id]} <
               std::pair{machine_rank[b.machine.id], assembly_rank[b.assembly.id]};
    });
}

std::vector<std::string> names_near(const Book& book, const Reference& reference, std::string_view words) {
    std::vector<std::string> names = book.names();
    for (const reference::Word& word : reference.words()) {
        names.push_back(word.text);
    }
    std::vector<std::string> out;
    const auto add = [&](const std::optional<std::string>& name) {
        const auto same = [&](const std::string& other) { return fold(other) == fold(*name); };
        if (name && fold(*name) != fold(words) && std::ranges::none_of(out, same)) {
            out.push_back(*name);
        }
    };
    add(nearest(words, names));
    // A single word that is no beginning of any name's word is the one that was mistyped.
    std::vector<std::string> parts;
    for (const std::string& name : names) {
        for (std::string& part : folded_words(name)) {
            parts.push_back(std::move(part));
        }
    }
    for (const std::string& word : folded_words(words)) {
        if (std::ranges::none_of(parts, [&](const std::string& part) { return part.starts_with(word); })) {
            add(nearest(word, parts));
        }
    }
    // A trade word that leads to no joint of this book is no help.
    std::erase_if(out, [&](const std::string& name) {
        const SearchPlan plan = search_plan(reference, name);
        return book.search(plan.wide ? *plan.wide : plan.literal, 0).total == 0;
    });
    return out;
}

} // namespace

std::vector<const FoundValue*> FoundJoint::current() const {
    std::vector<const FoundValue*> out;
    for (const FoundValue& f : values) {
        if (f.value.standing == Standing::current) {
            out.push_back(&f);
        }
    }
    return out;
}

FindAnswer find(const Book& book, const Reference& reference, const FindRequest& request) {
    const SearchPlan plan = search_plan(reference, request.words);
    FindAnswer answer;
    answer.query = std::string{trim(request.words)};
    book::SearchResult literal = book.search(plan.literal, request.at_most);
    const bool wider = plan.wide.has_value();
    if (!wider || (literal.total > 0 && !request.wide)) {
        answer.total = literal.total;
        if (wider) {
            answer.other_words = book.search(*plan.wide, 0).total - literal.total;
        }
    } else {
        literal = book.search(*plan.wide, request.at_most);
        answer.total = literal.total;
    }
    keep_together(literal.places);
    for (Place& place : literal.places) {
        answer.matches.push_back(found_joint(book, reference, std::move(place)));
    }
    if (answer.matches.empty()) {
        answer.nearest = names_near(book, reference, request.words);
    }
    return answer;
}

FoundJoint joint(const Book& book, const Reference& reference, RecordId id) {
    auto place = book.place(id);
    if (!place) {
        throw error(ErrorKind::not_found, "there is no joint #{} in the book", id);
    }
    return found_joint(book, reference, std::move(*place));
}

Place joint_named(const Book& book, const Reference& reference, std::string_view text) {
    std::string_view digits = trim(text);
    if (digits.starts_with('#')) {
        digits.remove_prefix(1);
    }
    if (!digits.empty() && digits.size() < 12 && digits.find_first_not_of("0123456789") == std::string_view::npos) {
        return joint(book, reference, std::stoll(std::string{digits})).place;
    }
    const SearchPlan plan = search_plan(reference, text);
    book::SearchResult result = book.search(plan.literal, 20);
    if (result.total == 0 && plan.wide) {
        result = book.search(*plan.wide, 20);
    }
    if (result.total == 0) {
        const auto near = names_near(book, reference, text);
        throw error(ErrorKind::not_found, "no joint fits '{}'{}; add it with 'clampbook joint add'", text,
                    near.empty() ? "" : "; near it: " + join(near, ", "));
    }
    // Words that name one joint whole are not made ambiguous by joints that merely contain them.
    const std::string wanted = fold(text);
    std::vector<const Place*> exact;
    for (const Place& place : result.places) {
        const std::string in_assembly = fold(place.assembly.name + " " + place.joint.name);
        if (wanted == fold(place.joint.name) || wanted == in_assembly ||
            wanted == fold(place.machine.model) + " " + in_assembly ||
            wanted == fold(place.machine.title()) + " " + in_assembly) {
            exact.push_back(&place);
        }
    }
    if (exact.size() == 1) {
        return *exact.front();
    }
    if (result.total > 1) {
        std::vector<std::string> lines;
        for (const Place& place : result.places) {
            lines.push_back(
                fmt::format("#{} {}, {}, {}", place.joint.id, place.machine.title(), place.assembly.name, place.joint.name));
        }
        throw error(ErrorKind::conflict, "'{}' fits {} joints; give more words or the number of one:\n  {}", text, result.total,
                    join(lines, "\n  "));
    }
    return result.places.front();
}

} // namespace clampbook::answer
