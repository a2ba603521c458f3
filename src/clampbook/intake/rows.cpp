// SPDX-License-Identifier: MIT
// Rows of the exchange file on their way into the book.

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/intake/import.hpp"
#include "clampbook/intake/judge.hpp"

#include <algorithm>

namespace clampbook::intake {
namespace {

bool read_yes(std::string_view text) {
    const std::string word = fold(text);
    if (word == "yes" || word == "y" || word == "1" || word == "true") {
        return true;
    }
    if (word.empty() || word == "no" || word == "n" || word == "0" || word == "false") {
        return false;
    }
    throw error(ErrorKind::usage, "'{}' is neither yes nor no", text);
}

double read_number(std::string_view text, std::string_view what) {
    const auto number = read_whole_decimal(text);
    if (!number) {
        throw error(ErrorKind::usage, "'{}' is no number for {}", text, what);
    }
    return number->value;
}

// Runs one cell's reading and says which column it was where it fails.
template <typename F>
auto cell(std::string_view column, F&& body) {
    try {
        return std::forward<F>(body)();
    } catch (const Error& fault) {
        throw error(fault.kind(), "{}: {}", column, fault.what());
    }
}

RecordId machine_of(book::Book& book, const exchange::JointRow& row, const book::Stamp& stamp) {
    Machine machine;
    machine.maker = row.machine_maker;
    machine.model = row.machine_model;
    machine.variant = row.machine_variant;
    if (machine.maker.empty() || machine.model.empty()) {
        throw error(ErrorKind::usage, "machine_maker and machine_model must not be empty");
    }
    const auto there = book.find_machine(machine);
    return there ? there->id : book.add_machine(machine, stamp);
}

int read_count(std::string_view text) {
    const double number = read_number(text, "a count");
    if (!(number >= 0 && number <= 1e6) || number != static_cast<int>(number)) {
        throw error(ErrorKind::usage, "'{}' is no whole number of screws", text);
    }
    return static_cast<int>(number);
}

// The joint as the row tells it, in the words of the standards.
Joint told_joint(const reference::Reference& reference, const exchange::JointRow& row) {
    Joint joint;
    joint.name = row.joint;
    joint.role = cell("role", [&] { return row.role.empty() ? Role::other : read_role(row.role); });
    joint.count = row.count.empty() ? 1 : cell("count", [&] { return read_count(row.count); });
    joint.thread = row.thread;
    joint.property_class = row.property_class;
    joint.form = row.form;
    joint.ring = row.ring;
    joint.housing = row.housing;
    if (!row.engagement_mm.empty()) {
        joint.engagement_mm = cell("engagement_mm", [&] { return read_number(row.engagement_mm, "a length in mm"); });
    }
    joint.safety_critical = cell("safety_critical", [&] { return read_yes(row.safety_critical); });
    joint.note = row.note;
    return in_standard_words(reference, joint, FieldNames::given);
}

// What the row says; an empty cell says nothing.
JointFacts said_by(const exchange::JointRow& row, const Joint& told) {
    JointFacts facts = facts_of(told);
    const std::array cells{&row.role, &row.count,   &row.thread,        &row.property_class, &row.form,
                           &row.ring, &row.housing, &row.engagement_mm, &row.safety_critical};
    for (std::size_t i = 0; i < facts.size(); ++i) {
        if (cells[i]->empty()) {
            facts[i].second.clear();
        }
    }
    return facts;
}

RecordId joint_of(book::Book& book, const reference::Reference& reference, const exchange::JointRow& row,
                  const book::Stamp& stamp) {
    const RecordId machine = machine_of(book, row, stamp);
    if (row.assembly.empty() || row.joint.empty()) {
        throw error(ErrorKind::usage, "assembly and joint must not be empty");
    }
    const auto assembly_there = book.find_assembly(machine, row.assembly);
    const RecordId assembly = assembly_there ? assembly_there->id : book.add_assembly({0, machine, row.assembly, ""}, stamp);
    Joint told = told_joint(reference, row);
    if (const auto there = book.find_joint(assembly, row.joint)) {
        require_agreement(*there, said_by(row, told));
        return there->id;
    }
    told.assembly = assembly;
    return book.add_joint(told, stamp);
}

std::optional<Source> source_of(book::Book& book, const exchange::JointRow& row, const book::Stamp& stamp) {
    if (row.source_title.empty()) {
        return std::nullopt;
    }
    Source source;
    source.kind = row.source_kind.empty() ? "document" : row.source_kind;
    source.title = row.source_title;
    source.number = row.source_number;
    source.edition = row.source_edition;
    source.date = row.source_date;
    return source_in_book(book, source, stamp);
}

// The value of a row that has one.
RowTaken take_value(book::Book& book, const reference::Reference& reference, const exchange::JointRow& row, RecordId joint,
                    const book::Stamp& stamp, const Rules& rules, RecordId first_new) {
    Entry entry;
    entry.joint = joint;
    // A note about the joint that the book has otherwise can only be about this value.
    const auto place = book.place(joint);
    std::vector<std::string> notes;
    if (!row.value_note.empty()) {
        notes.push_back(row.value_note);
    }
    if (!row.note.empty() && place && place->joint.note != row.note) {
        notes.push_back(row.note);
    }
    entry.note = clampbook::join(notes, "; ");
    entry.tightening = row.tightening;
    entry.label = cell("label", [&] { return read_label(row.label); });
    entry.source = source_of(book, row, stamp);
    entry.page = row.page;
    entry.entered_by = row.entered_by;
    entry.entered_on = row.entered_on;
    entry.confirmed = row.confirmed.empty() ? rules.confirm_all : row.confirmed;
    entry.reason = rules.supersede;
    entry.confirm_option = "--confirm-all";

    Value told;
    told.label = entry.label;
    told.source = entry.source;
    told.page = entry.page;
    told.tightening = cell("tightening", [&] { return read_tightening(row.tightening); });
    cell(told.source ? "page" : "source_title", [&] { require_origin(told); });
    if (!row.entered_on.empty()) {
        cell("entered_on", [&] { require_past(row.entered_on, "the date of entry", stamp); });
    }
    std::optional<Value> ended;
    for (Value& there : book.values(joint)) {
        if (!same_place(there, told)) {
            continue;
        }
        const bool same = there.tightening.steps == told.tightening.steps;
        if (there.standing != Standing::current) {
            ended = same ? std::optional{std::move(there)} : std::move(ended);
        } else if (same) {
            return {Taken::here_already, 0};
        } else if (!same_figure(there.tightening, told.tightening)) {
            if (there.id >= first_new) {
                throw error(ErrorKind::conflict,
                            "tightening: '{}', and another row of this file says '{}' with the same label, "
                            "source and page",
                            row.tightening, there.tightening.as_written);
            }
            if (rules.supersede.empty()) {
                throw error(ErrorKind::conflict,
                            "tightening: '{}', and the book has '{}' with the same label, source and page "
                            "(value {}); settle it with --supersede \"reason\", or mend the row",
                            row.tightening, there.tightening.as_written, there.id);
            }
            entry.replaces.push_back(there.id);
        }
    }
    if (ended) {
        throw error(ErrorKind::conflict,
                    "tightening: '{}' was {} in the book (value {}: {}); where it holds again, say so with "
                    "'clampbook enter'",
                    row.tightening, standing_name(ended->standing), ended->id, ended->end_reason);
    }
    const RecordId id = cell("tightening", [&] { return enter(book, reference, entry, stamp); });
    return {entry.replaces.empty() ? Taken::value : Taken::superseding, id};
}

RowTaken take_told(book::Book& book, const reference::Reference& reference, const exchange::JointRow& row,
                   const book::Stamp& stamp, const Rules& rules, RecordId first_new) {
    const RecordId joint = joint_of(book, reference, row, stamp);
    if (!row.tightening.empty()) {
        return take_value(book, reference, row, joint, stamp, rules, first_new);
    }
    for (const auto& [column, text] : {std::pair{"label", row.label}, {"source_title", row.source_title}, {"page", row.page}}) {
        if (!text.empty()) {
            throw error(ErrorKind::usage, "tightening: is empty, though the row has a {} ('{}')", column, text);
        }
    }
    return {Taken::joint, 0};
}

} // namespace

RowTaken take_row(book::Book& book, const reference::Reference& reference, const exchange::JointRow& row, std::string_view file,
                  const book::Stamp& stamp, const Rules& rules, RecordId first_new) {
    try {
        for (const exchange::JointColumn& column : exchange::joint_columns()) {
            if (has_control(row.*column.cell)) {
                throw error(ErrorKind::usage, "{}: the cell holds a line end or another control character", column.name);
            }
        }
        RowTaken taken;
        book.in_one_go([&] { taken = take_told(book, reference, row, stamp, rules, first_new); });
        return taken;
    } catch (const Error& fault) {
        if (fault.kind() == ErrorKind::internal) {
            throw; // the disk's, not the row's
        }
        throw error(fault.kind() == ErrorKind::conflict ? ErrorKind::conflict : ErrorKind::invalid_data, "{}:{}: {}", file,
                    row.line, fault.what());
    }
}

} // namespace clampbook::intake
