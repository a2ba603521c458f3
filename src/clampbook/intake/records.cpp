// SPDX-License-Identifier: MIT
// Records of an export or of another book on their way into this one: with the people, dates, checks and ends that they have there.

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/intake/import.hpp"
#include "clampbook/intake/judge.hpp"

#include <algorithm>

namespace clampbook::intake {
namespace {

// A value of theirs and where it stands in this book.
struct Pair {
    const Value* theirs = nullptr;
    const Value* here = nullptr;
    RecordId id = 0; // its number in this book
};

bool same_value(const Value& theirs, const Value& here) {
    return same_place(theirs, here) && theirs.tightening.steps == here.tightening.steps;
}

// Each of theirs with one of ours that is the same figure from the same place: first those that stand alike, so that a figure
// that was withdrawn and entered again finds both of its kind.
std::vector<Pair> paired(const std::vector<Value>& theirs, const std::vector<Value>& here) {
    std::vector<Pair> pairs;
    for (const Value& value : theirs) {
        pairs.push_back({&value, nullptr, 0});
    }
    std::vector<const Value*> left;
    for (const Value& value : here) {
        left.push_back(&value);
    }
    for (const bool alike : {true, false}) {
        for (Pair& pair : pairs) {
            if (pair.here != nullptr) {
                continue;
            }
            const auto found = std::ranges::find_if(left, [&](const Value* value) {
                return same_value(*pair.theirs, *value) && (!alike || pair.theirs->standing == value->standing);
            });
            if (found != left.end()) {
                pair.here = *found;
                pair.id = pair.here->id;
                left.erase(found);
            }
        }
    }
    return pairs;
}

void require_sound(const Judge& judge, const Joint& joint, Value& value, const Rules& rules, const book::Stamp& stamp,
                   JointTaken& taken) {
    require_origin(value);
    require_past(value.entered_on, "the date of entry", stamp);
    if (value.is_checked()) {
        require_past(value.checked_on, "the date of the check", stamp);
        if (fold(value.checked_by) == fold(value.entered_by)) {
            throw error(ErrorKind::conflict, "'{}' was entered and checked by {}: it takes a second person to check it",
                        value.tightening.as_written, value.checked_by);
        }
        if (!same_figure(read_tightening(value.check_as_written), value.tightening)) {
            throw error(ErrorKind::conflict, "the check says '{}' and the value '{}'", value.check_as_written,
                        value.tightening.as_written);
        }
    }
    if (value.standing != Standing::current) {
        require_past(value.ended_on, "the date of its end", stamp);
        return; // what no longer holds may have ended for making no sense
    }
    if (value.confirmed.empty()) {
        value.confirmed = confirmation(judge, joint, value.tightening, rules.confirm_all, "--confirm-all");
        if (!value.confirmed.empty()) {
            taken.confirmed.push_back(implausible(judge, joint, value.tightening).value());
        }
    }
}

// What they did with a value that we have, and we did not, or the other way round.
void compare_life(book::Book& book, const Pair& pair, const book::Stamp& stamp, JointTaken& taken) {
    const Value& theirs = *pair.theirs;
    const Value& here = *pair.here;
    ++taken.here_already;
    const bool current = here.standing == Standing::current;
    if (current && theirs.standing != Standing::current) {
        taken.left_out.push_back(fmt::format("'{}' was {} there ({}) and is current here (value {})",
                                             theirs.tightening.as_written, standing_name(theirs.standing), theirs.end_reason,
                                             here.id));
    } else if (!current && theirs.standing == Standing::current) {
        taken.left_out.push_back(fmt::format("'{}' is current there and was {} here (value {}: {})", theirs.tightening.as_written,
                                             standing_name(here.standing), here.id, here.end_reason));
    }
    if (theirs.is_checked() && !here.is_checked() && current && fold(theirs.checked_by) != fold(here.entered_by)) {
        book.check_value(here.id, {theirs.check_as_written, theirs.checked_by, theirs.checked_on}, stamp);
    }
}

} // namespace

void require_agreement(const Joint& there, const JointFacts& said) {
    const JointFacts has = facts_of(there);
    for (std::size_t i = 0; i < said.size(); ++i) {
        const auto& [name, text] = said[i];
        if (!text.empty() && text != has[i].second) {
            throw error(ErrorKind::conflict, "{}: '{}', and the book has {} for this joint", name, text,
                        has[i].second.empty() ? "nothing" : "'" + has[i].second + "'");
        }
    }
}

std::optional<Source> known_source(const book::Book& book, const Source& source) {
    if (!source.date.empty()) {
        require_date(source.date, "source_date");
    }
    auto there = book.find_source(source);
    if (there && !source.date.empty() && there->date != source.date) {
        throw error(ErrorKind::conflict, "source_date: '{}', and the book has {} for this source", source.date,
                    there->date.empty() ? "nothing" : "'" + there->date + "'");
    }
    return there;
}

Source source_in_book(book::Book& book, const Source& source, const book::Stamp& stamp) {
    if (auto there = known_source(book, source)) {
        return *there;
    }
    Source added = source;
    added.id = book.add_source(source, stamp);
    return added;
}

void take_source(book::Book& book, const Source& source, const book::Stamp& stamp) {
    book.in_one_go([&] { (void)source_in_book(book, source, stamp); });
}

void take_machine(book::Book& book, const MachineRecord& record, const book::Stamp& stamp) {
    book.in_one_go([&] {
        const auto there = book.find_machine(record.machine);
        const RecordId machine = there ? there->id : book.add_machine(record.machine, stamp);
        for (Assembly assembly : record.assemblies) {
            assembly.machine = machine;
            if (!book.find_assembly(machine, assembly.name)) {
                book.add_assembly(assembly, stamp);
            }
        }
    });
}

JointTaken take_joint(book::Book& book, const Judge& judge, const JointRecord& record, const Rules& rules,
                      const book::Stamp& stamp) {
    const auto machine = book.find_machine(record.machine);
    const auto assembly = machine ? book.find_assembly(machine->id, record.assembly.name) : std::nullopt;
    if (!assembly) {
        throw error(ErrorKind::invalid_data, "its machine '{}' with the assembly '{}' is not among the machines",
                    record.machine.title(), record.assembly.name);
    }
    Joint joint = in_standard_words(judge, record.joint, FieldNames::given);
    joint.assembly = assembly->id;
    if (const auto there = book.find_joint(assembly->id, joint.name)) {
        // What every joint has unless somebody says otherwise is not said.
        JointFacts said = facts_of(joint);
        const JointFacts unsaid = facts_of(Joint{});
        for (std::size_t i = 0; i < said.size(); ++i) {
            if (said[i] == unsaid[i]) {
                said[i].second.clear();
            }
        }
        require_agreement(*there, said);
        joint.id = there->id;
    } else {
        joint.id = book.add_joint(joint, stamp);
    }
    std::vector<Value> theirs = record.values;
    for (Value& value : theirs) {
        if (value.source) {
            const auto source = book.find_source(*value.source);
            if (!source) {
                throw error(ErrorKind::invalid_data, "the source of '{}', {}, is not among the sources",
                            value.tightening.as_written, value.source->line());
            }
            value.source = source;
        }
    }
    const std::vector<Value> here = book.values(joint.id);
    std::vector<Pair> pairs = paired(theirs, here);
    JointTaken taken;
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        if (pairs[i].here != nullptr) {
            compare_life(book, pairs[i], stamp, taken);
            continue;
        }
        Value& value = theirs[i];
        require_sound(judge, joint, value, rules, stamp, taken);
        value.joint = joint.id;
        pairs[i].id = book.add_value(value, stamp);
        if (value.is_checked()) {
            book.check_value(pairs[i].id, {value.check_as_written, value.checked_by, value.checked_on}, stamp);
        }
    }
    for (const Pair& pair : pairs) {
        const Value& value = *pair.theirs;
        if (pair.here == nullptr && value.standing != Standing::current) {
            const RecordId by = value.superseded_by == 0 ? 0 : pairs.at(static_cast<std::size_t>(value.superseded_by - 1)).id;
            book.end_value(pair.id, {by, value.end_reason, value.ended_by, value.ended_on}, stamp);
        }
    }
    return taken;
}

} // namespace clampbook::intake
