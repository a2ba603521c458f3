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

int read_count(std::string_view text) {
    const double number = read_number(text, "a count");
    if (!(number >= 0 && number <= 1e6) || number != static_cast<int>(number)) {
        throw error(ErrorKind::usage, "'{}' is no whole number of screws", text);
    }
    return static_cast<int>(number);
}

// The joint as the row tells it, in the words of the standards.
Joint told_joint(const Judge& judge, const exchange::JointRow& row) {
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
    return in_standard_words(judge, joint, FieldNames::given);
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

// What a row tells, read and in the words of the standards; nothing of the book was asked yet.
struct ToldRow {
    Machine machine;
    Joint joint;
    JointFacts facts;           // what the row says of the joint
    std::optional<Value> value; // its source without a number
};

Source source_of(const exchange::JointRow& row) {
    Source source;
    source.kind = row.source_kind.empty() ? "document" : row.source_kind;
    source.title = row.source_title;
    source.number = row.source_number;
    source.edition = row.source_edition;
    source.date = row.source_date;
    return source;
}

Value read_value(const Judge& judge, const exchange::JointRow& row, const book::Stamp& stamp) {
    Value value;
    value.label = cell("label", [&] { return read_label(row.label); });
    value.tightening = cell("tightening", [&] {
        return judge.memory().tightenings.of(row.tightening, [&] { return read_tightening(row.tightening); });
    });
    value.source = row.source_title.empty() ? std::nullopt : std::optional{source_of(row)};
    value.page = row.page;
    cell(value.source ? "page" : "source_title", [&] { require_origin(value); });
    if (!row.entered_on.empty()) {
        cell("entered_on", [&] { require_past(row.entered_on, "the date of entry", stamp); });
    }
    value.entered_by = row.entered_by.empty() ? stamp.person : row.entered_by;
    value.entered_on = row.entered_on.empty() ? stamp.date() : row.entered_on;
    return value;
}

ToldRow read_row(const Judge& judge, const exchange::JointRow& row, const book::Stamp& stamp) {
    for (const exchange::JointColumn& column : exchange::joint_columns()) {
        if (has_control(row.*column.cell)) {
            throw error(ErrorKind::usage, "{}: the cell holds a line end or another control character", column.name);
        }
    }
    if (row.machine_maker.empty() || row.machine_model.empty()) {
        throw error(ErrorKind::usage, "machine_maker and machine_model must not be empty");
    }
    if (row.assembly.empty() || row.joint.empty()) {
        throw error(ErrorKind::usage, "assembly and joint must not be empty");
    }
    ToldRow told;
    told.machine.maker = row.machine_maker;
    told.machine.model = row.machine_model;
    told.machine.variant = row.machine_variant;
    told.joint = told_joint(judge, row);
    told.facts = said_by(row, told.joint);
    if (!row.tightening.empty()) {
        told.value = read_value(judge, row, stamp);
        return told;
    }
    for (const auto& [column, text] : {std::pair{"label", row.label}, {"source_title", row.source_title}, {"page", row.page}}) {
        if (!text.empty()) {
            throw error(ErrorKind::usage, "tightening: is empty, though the row has a {} ('{}')", column, text);
        }
    }
    return told;
}

} // namespace

Rows::Rows(book::Book& book, const Judge& judge, std::string file, book::Stamp stamp, Rules rules)
    : book_(book), judge_(judge), file_(std::move(file)), stamp_(std::move(stamp)), rules_(std::move(rules)),
      first_new_(book.next_value()) {}

// The number of the row's assembly, 0 where the book lacks it or its machine. Rows of one assembly mostly stand together, so the
// last answer is kept.
RecordId Rows::assembly_of(const exchange::JointRow& row, const Machine& like) {
    std::string names = key_of({row.machine_maker, row.machine_model, row.machine_variant, row.assembly});
    if (names != last_names_) {
        const auto machine = book_.find_machine(like);
        const auto assembly = machine ? book_.find_assembly(machine->id, row.assembly) : std::nullopt;
        if (!assembly) {
            return 0;
        }
        last_names_ = std::move(names);
        last_assembly_ = assembly->id;
    }
    return last_assembly_;
}

// Whether the book has the source, which then gets its number. Rows of one file name a few, which are remembered.
bool Rows::in_book(Source& source) {
    std::string names = key_of({source.title, source.number, source.edition, source.date});
    if (const Source* known = sources_.known(names)) {
        source = *known;
        return true;
    }
    const auto there = known_source(book_, source);
    if (there) {
        source = sources_.keep(std::move(names), *there);
    }
    return there.has_value();
}

// Whether the value is new beside those that the joint has; `replaces` gets those that it ends. Throws conflict where the book says
// otherwise.
Taken Rows::judged(const Value& told, const std::vector<Value>& here, std::vector<RecordId>& replaces) const {
    const Value* ended = nullptr;
    for (const Value& there : here) {
        if (!same_place(there, told)) {
            continue;
        }
        const bool same = there.tightening.steps == told.tightening.steps;
        if (there.standing != Standing::current) {
            ended = same ? &there : ended;
        } else if (same) {
            return Taken::here_already;
        } else if (!same_figure(there.tightening, told.tightening)) {
            if (there.id >= first_new_) {
                throw error(ErrorKind::conflict,
                            "tightening: '{}', and another row of this file says '{}' with the same label, "
                            "source and page",
                            told.tightening.as_written, there.tightening.as_written);
            }
            if (rules_.supersede.empty()) {
                throw error(ErrorKind::conflict,
                            "tightening: '{}', and the book has '{}' with the same label, source and page "
                            "(value {}); settle it with --supersede \"reason\", or mend the row",
                            told.tightening.as_written, there.tightening.as_written, there.id);
            }
            replaces.push_back(there.id);
        }
    }
    if (ended != nullptr) {
        throw error(ErrorKind::conflict,
                    "tightening: '{}' was {} in the book (value {}: {}); where it holds again, say so with "
                    "'clampbook enter'",
                    told.tightening.as_written, standing_name(ended->standing), ended->id, ended->end_reason);
    }
    return replaces.empty() ? Taken::value : Taken::superseding;
}

// All is read and judged first; what is written after that fails only where the whole does.
RowTaken Rows::take_told(const exchange::JointRow& row) {
    ToldRow told = read_row(judge_, row, stamp_);
    const RecordId assembly = assembly_of(row, told.machine);
    // Rows of one joint mostly stand together.
    const bool again = made_.id != 0 && assembly == made_.assembly && row.joint == made_.name;
    const auto there = again ? std::optional{made_} : assembly == 0 ? std::nullopt : book_.find_joint(assembly, row.joint);
    if (there) {
        require_agreement(*there, told.facts);
    }
    const Joint& joint = there ? *there : told.joint;
    RowTaken taken;
    std::vector<RecordId> replaces;
    bool new_source = false;
    if (told.value) {
        Value& value = *told.value;
        if (value.source) {
            new_source = !in_book(*value.source);
        }
        taken.what = again   ? judged(value, made_values_, replaces)
                     : there ? judged(value, book_.values(there->id), replaces)
                             : Taken::value;
        if (taken.what == Taken::here_already) {
            return taken;
        }
        // A note about the joint that the book has otherwise can only be about this value.
        value.note = row.value_note;
        if (!row.note.empty() && joint.note != row.note) {
            value.note += (value.note.empty() ? "" : "; ") + row.note;
        }
        cell("tightening", [&] {
            value.confirmed = confirmation(judge_, joint, value.tightening,
                                           row.confirmed.empty() ? rules_.confirm_all : row.confirmed, "--confirm-all");
        });
    }
    book_.in_one_go([&] {
        if (!there) {
            told.joint.assembly = assembly;
            add_joint(told.machine, row.assembly, told.joint);
        }
        if (told.value) {
            told.value->joint = joint.id;
            if (new_source) {
                told.value->source->id = book_.add_source(*told.value->source, stamp_);
            }
            told.value->id = keep(book_, *told.value, replaces, rules_.supersede, stamp_);
            taken.value = told.value->id;
        }
    });
    if (!there) {
        made_ = std::move(told.joint);
        made_values_.clear();
    }
    if (told.value && told.value->joint == made_.id) {
        made_values_.push_back(std::move(*told.value));
    }
    return taken;
}

// Adds the joint, and its assembly and machine where the book lacks them; it gets its number.
void Rows::add_joint(const Machine& machine, const std::string& assembly_name, Joint& joint) {
    if (joint.assembly == 0) {
        const auto there = book_.find_machine(machine);
        const RecordId id = there ? there->id : book_.add_machine(machine, stamp_);
        joint.assembly = book_.add_assembly({0, id, assembly_name, ""}, stamp_);
    }
    joint.id = book_.add_joint(joint, stamp_);
}

RowTaken Rows::take(const exchange::JointRow& row) {
    try {
        return take_told(row);
    } catch (const Error& fault) {
        if (fault.kind() == ErrorKind::internal) {
            throw; // the disk's, not the row's
        }
        throw error(fault.kind() == ErrorKind::conflict ? ErrorKind::conflict : ErrorKind::invalid_data, "{}:{}: {}", file_,
                    row.line, fault.what());
    }
}

} // namespace clampbook::intake
