// SPDX-License-Identifier: MIT
// The audit: is the book still what it was told? The triggers stop an honest mistake; whoever takes them away first leaves traces
// here, unless they also compute every later hash anew and the two figures that the book remembers of its chain.

#include "clampbook/base/text.hpp"
#include "clampbook/book/impl.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <algorithm>
#include <iterator>
#include <map>

namespace clampbook::book {
namespace {

using Faults = std::vector<std::string>;

std::optional<RecordId> optional_id(const SQLite::Statement& query, int column) {
    const SQLite::Column cell = const_cast<SQLite::Statement&>(query).getColumn(column);
    return cell.isNull() ? std::nullopt : std::optional{cell.getInt64()};
}

std::string kept(SQLite::Database& db, const char* key) {
    SQLite::Statement query{db, "SELECT value FROM book_info WHERE key = ?"};
    query.bind(1, key);
    return query.executeStep() ? text_at(query, 0) : std::string{};
}

// The first line that does not follow from the one before; what comes after it cannot be trusted either, and isn't named.
void audit_chain(SQLite::Database& db, Faults& faults) {
    SQLite::Statement query{db, "SELECT seq, at, person, kind, joint, value, detail, previous, hash FROM event ORDER BY seq"};
    std::int64_t count = 0;
    std::string last{k_no_events};
    while (query.executeStep()) {
        const std::int64_t seq = id_at(query, 0);
        const std::string title =
            fmt::format("event {} ({}, {}, {})", seq, text_at(query, 3), text_at(query, 2), text_at(query, 1));
        if (seq != ++count) {
            faults.push_back(fmt::format("event {} is missing: {} follows event {}", count, title, count - 1));
            return;
        }
        const std::string hash = event_hash(text_at(query, 7), seq, {text_at(query, 2), text_at(query, 1)}, text_at(query, 3),
                                            optional_id(query, 4), optional_id(query, 5), text_at(query, 6));
        const auto value = optional_id(query, 5);
        const std::string of_value = value ? fmt::format(", which tells of value {}", *value) : std::string{};
        if (hash != text_at(query, 8)) {
            faults.push_back(fmt::format("{}{}: was changed after it was told", title, of_value));
            return;
        }
        if (text_at(query, 7) != last) {
            faults.push_back(
                fmt::format("{}{}: does not follow the event before it: one of the two was put in its place", title, of_value));
            return;
        }
        last = hash;
    }
    if (kept(db, "event.count") != std::to_string(count)) {
        faults.push_back(
            fmt::format("{} events were told, and {} are here: the last were taken away", kept(db, "event.count"), count));
    } else if (kept(db, "event.head") != last) {
        faults.push_back("the last event is not the one that the book remembers");
    }
}

// What an event says of a record, by the record's number and the name of the fact.
class Told {
public:
    /// `number` is where the events have the record's: e.value, e.joint, or a fact.
    Told(SQLite::Database& db, const std::string& kind, const std::string& number = "e.value") {
        // A line that isn't even JSON any more was named by the chain.
        SQLite::Statement query{db, "SELECT " + number +
                                        ", e.seq, j.key, j.value, coalesce(e.joint, '') FROM event e, "
                                        "json_each(CASE WHEN json_valid(e.detail) THEN e.detail ELSE '{}' END) j "
                                        "WHERE e.kind = ?"};
        query.bind(1, kind);
        while (query.executeStep()) {
            Record& record = records_[id_at(query, 0)];
            record.seq = id_at(query, 1);
            record.facts[text_at(query, 2)] = text_at(query, 3);
            record.facts["joint"] = text_at(query, 4);
        }
    }

    // Compares one fact of a record that is there, and remembers that it is.
    void compare(RecordId id, const std::string& record, const std::string& fact, const std::string& here, Faults& faults) {
        const auto found = records_.find(id);
        if (found == records_.end()) {
            if (strangers_.insert({id, true}).second) {
                faults.push_back(record + ": no event tells of it");
            }
            return;
        }
        found->second.met = true;
        const auto told_fact = found->second.facts.find(fact);
        if (told_fact == found->second.facts.end()) {
            return; // an older program told less, and nobody can take a fact out of an event unseen
        }
        const std::string& told = told_fact->second;
        if (told != here) {
            faults.push_back(
                fmt::format("{}: its {} is '{}', and event {} told '{}'", record, fact, here, found->second.seq, told));
        }
    }
    // Records that were told and are gone.
    void missing(const std::string& record, Faults& faults) const {
        for (const auto& [id, told] : records_) {
            if (!told.met) {
                faults.push_back(fmt::format("{} {}: is gone, and event {} told of it", record, id, told.seq));
            }
        }
    }

private:
    struct Record {
        std::int64_t seq = 0;
        std::map<std::string, std::string> facts;
        bool met = false;
    };
    std::map<RecordId, Record> records_;
    std::map<RecordId, bool> strangers_;
};

using Facts = std::vector<std::pair<std::string_view, std::string>>;

void audit_record(Told& told, RecordId id, const char* what, const Facts& facts, Faults& faults) {
    for (const auto& [fact, here] : facts) {
        told.compare(id, fmt::format("{} {}", what, id), std::string{fact}, here, faults);
    }
}

// What figures hang on: a joint that is called otherwise, or hangs on another machine, has somebody else's figures.
void audit_records(const Book& book, SQLite::Database& db, Faults& faults) {
    const auto number = [](RecordId id) { return std::to_string(id); };
    Told sources{db, "source added", "json_extract(e.detail, '$.source')"};
    for (const Source& s : book.sources()) {
        audit_record(sources, s.id, "source",
                     {{"kind", s.kind},
                      {"title", s.title},
                      {"number", s.number},
                      {"edition", s.edition},
                      {"date", s.date},
                      {"kept", s.kept},
                      {"file_digest", s.file_digest},
                      {"note", s.note},
                      {"added_by", s.added_by},
                      {"added_at", s.added_at}},
                     faults);
    }
    sources.missing("source", faults);
    Told machines{db, "machine added", "json_extract(e.detail, '$.machine')"};
    Told assemblies{db, "assembly added", "json_extract(e.detail, '$.assembly')"};
    for (const auto& [m, parts] : book.machine_records()) {
        audit_record(machines, m.id, "machine",
                     {{"maker", m.maker},
                      {"model", m.model},
                      {"variant", m.variant},
                      {"years", m.years},
                      {"code", m.code},
                      {"note", m.note}},
                     faults);
        for (const Assembly& a : parts) {
            audit_record(assemblies, a.id, "assembly", {{"machine", number(m.id)}, {"name", a.name}, {"note", a.note}}, faults);
        }
    }
    machines.missing("machine", faults);
    assemblies.missing("assembly", faults);
    Told joints{db, "joint added", "e.joint"};
    for (const Place& place : book.places()) {
        const Joint& joint = place.joint;
        Facts facts{{"name", joint.name}, {"assembly", number(joint.assembly)}, {"note", joint.note}};
        std::ranges::copy(facts_of(joint), std::back_inserter(facts));
        audit_record(joints, joint.id, "joint", facts, faults);
    }
    joints.missing("joint", faults);
}

void audit_values(const Book::Impl& book, Faults& faults) {
    SQLite::Database& db = *book.db;
    Told entered{db, "value entered"};
    SQLite::Statement joints{db, "SELECT DISTINCT joint FROM value ORDER BY joint"};
    while (joints.executeStep()) {
        for (const Value& v : book.values_of("v.joint", id_at(joints, 0), Reading::as_it_stands)) {
            const std::string record = fmt::format("value {}", v.id);
            const auto compare = [&](const char* fact, const std::string& here) {
                entered.compare(v.id, record, fact, here, faults);
            };
            compare("joint", std::to_string(v.joint));
            compare("as_written", v.tightening.as_written);
            compare("label", std::string{label_name(v.label)});
            compare("source", v.source ? v.source->line() : "");
            compare("page", v.page);
            compare("note", v.note);
            compare("confirmed", v.confirmed);
            compare("entered_by", v.entered_by);
            compare("entered_on", v.entered_on);
            if (auto fault = fault_of_steps(v)) {
                faults.push_back(std::move(*fault));
            }
        }
    }
    entered.missing("value", faults);
}

void audit_checks(SQLite::Database& db, Faults& faults) {
    Told checked{db, "value checked"};
    SQLite::Statement checks{
        db, "SELECT c.value, c.as_written, p.name, c.checked_on FROM value_check c JOIN person p ON p.id = c.checked_by"};
    while (checks.executeStep()) {
        const std::string record = fmt::format("the check of value {}", id_at(checks, 0));
        checked.compare(id_at(checks, 0), record, "as_written", text_at(checks, 1), faults);
        checked.compare(id_at(checks, 0), record, "checked_by", text_at(checks, 2), faults);
        checked.compare(id_at(checks, 0), record, "checked_on", text_at(checks, 3), faults);
    }
    checked.missing("the check of value", faults);
    for (const char* standing : {"superseded", "withdrawn"}) {
        Told ended{db, std::string{"value "} + standing};
        SQLite::Statement ends{db, "SELECT e.value, e.reason, coalesce(e.by_value, ''), p.name, e.ended_on FROM value_end e JOIN "
                                   "person p ON p.id = e.ended_by WHERE e.standing = ?"};
        ends.bind(1, standing);
        while (ends.executeStep()) {
            const std::string record = fmt::format("the end of value {}", id_at(ends, 0));
            ended.compare(id_at(ends, 0), record, "reason", text_at(ends, 1), faults);
            ended.compare(id_at(ends, 0), record, "by_value", text_at(ends, 2), faults);
            ended.compare(id_at(ends, 0), record, "ended_by", text_at(ends, 3), faults);
            ended.compare(id_at(ends, 0), record, "ended_on", text_at(ends, 4), faults);
        }
        ended.missing("the end of value", faults);
    }
}

} // namespace

std::vector<std::string> Book::audit() const {
    return guarded(impl_->path, [&] {
        Faults faults;
        if (auto fault = publication_fault()) {
            return Faults{std::move(*fault)};
        }
        impl_->keep_chain(); // what was told just now counts
        audit_chain(*impl_->db, faults);
        audit_records(*this, *impl_->db, faults);
        audit_values(*impl_, faults);
        audit_checks(*impl_->db, faults);
        return faults;
    });
}

} // namespace clampbook::book
