// SPDX-License-Identifier: MIT
// Values and the chain of events: what is written down here is never changed again.

#include "clampbook/base/digest.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/book/impl.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <algorithm>
#include <array>
#include <iterator>

namespace clampbook::book {

namespace {

// Beyond any book: numbers of events are held exactly by every reader of the export's JSON (2^53).
constexpr std::int64_t k_most_events = std::int64_t{1} << 53;

void append_json(std::string& out, std::string_view text) {
    const auto is_plain = [](char c) { return c != '"' && c != '\\' && static_cast<unsigned char>(c) >= 0x20; };
    out += '"';
    while (!text.empty()) {
        const auto plain = static_cast<std::size_t>(std::ranges::find_if_not(text, is_plain) - text.begin());
        out += text.substr(0, plain);
        if (plain < text.size()) {
            const char c = text[plain];
            out +=
                static_cast<unsigned char>(c) < 0x20 ? fmt::format("\\u{:04x}", static_cast<unsigned>(c)) : std::string{'\\', c};
        }
        text.remove_prefix(std::min(plain + 1, text.size()));
    }
    out += '"';
}

// An object of texts in the order given.
std::string json_of(const EventDetail& detail, const std::string& origin) {
    std::string out = "{";
    const auto add = [&](std::string_view name, std::string_view text) {
        out += out.size() == 1 ? "" : ",";
        append_json(out, name);
        out += ':';
        append_json(out, text);
    };
    for (const auto& [name, text] : detail) {
        add(name, text);
    }
    if (!origin.empty()) {
        add("origin", origin);
    }
    return out + "}";
}

} // namespace

std::string event_hash(const std::string& previous, std::int64_t seq, const Stamp& stamp, const std::string& kind,
                       std::optional<RecordId> joint, std::optional<RecordId> value, const std::string& detail) {
    const auto number = [](const std::optional<RecordId>& id) { return id ? std::to_string(*id) : std::string{"-"}; };
    const std::string line = fmt::format("{}\n{}\n{}\n{}\n{}\n{}\n{}\n{}\n", previous, seq, stamp.at, stamp.person, kind,
                                         number(joint), number(value), detail);
    return hex_of(sha256(line));
}

void Book::Impl::append_event(const Stamp& stamp, const std::string& kind, std::optional<RecordId> joint,
                              std::optional<RecordId> value, const EventDetail& detail) {
    const std::string json = json_of(detail, stamp.origin);
    if (!chain) {
        Query kept{statements, "SELECT c.value, h.value FROM book_info c, book_info h WHERE c.key = 'event.count' AND h.key = "
                               "'event.head'"};
        if (!kept.executeStep()) {
            throw error(ErrorKind::invalid_data, "'{}' has lost the head of its chain of events; restore the last backup", path);
        }
        const std::int64_t count = id_at(kept, 0);
        if (count < 0 || count >= k_most_events) {
            throw error(ErrorKind::invalid_data, "'{}' says that it keeps {} events; restore the last backup", path, count);
        }
        chain = Chain{count, text_at(kept, 1)};
    }
    const std::int64_t seq = chain->count + 1;
    const std::string hash = event_hash(chain->head, seq, stamp, kind, joint, value, json);
    Query insert{
        statements,
        "INSERT INTO event (seq, at, person, kind, joint, value, detail, previous, hash) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)"};
    insert.bind(1, seq);
    insert.bindNoCopy(2, stamp.at);
    insert.bindNoCopy(3, stamp.person);
    insert.bindNoCopy(4, kind);
    if (joint) {
        insert.bind(5, *joint);
    }
    if (value) {
        insert.bind(6, *value);
    }
    insert.bindNoCopy(7, json);
    insert.bindNoCopy(8, chain->head);
    insert.bindNoCopy(9, hash);
    insert.exec();
    chain = Chain{seq, hash};
}

void Book::Impl::keep_chain() {
    if (!chain) {
        return;
    }
    Query keep{statements, "UPDATE book_info SET value = ? WHERE key = ?"};
    for (const auto& [key, text] : {std::pair{"event.count", std::to_string(chain->count)}, {"event.head", chain->head}}) {
        keep.bind(1, text);
        keep.bind(2, key);
        keep.exec();
        keep.reset();
    }
    chain.reset();
}

RecordId Book::add_value(const Value& value, const Stamp& stamp) {
    return guarded(impl_->path, [&] {
        RecordId id = 0;
        impl_->transact([&] {
            Query insert{impl_->statements,
                         "INSERT INTO value (joint, label, as_written, source, page, note, confirmed, entered_by, entered_on) "
                         "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)"};
            insert.bind(1, value.joint);
            insert.bind(2, std::string{label_name(value.label)});
            insert.bindNoCopy(3, value.tightening.as_written);
            if (value.source) {
                insert.bind(4, value.source->id);
            }
            insert.bindNoCopy(5, value.page);
            insert.bindNoCopy(6, value.note);
            insert.bindNoCopy(7, value.confirmed);
            insert.bind(8, impl_->person(value.entered_by));
            insert.bindNoCopy(9, value.entered_on);
            insert.exec();
            id = impl_->db->getLastInsertRowid();
            Query step{impl_->statements, "INSERT INTO step (value, position, kind, nominal, low, high, unit, significant) "
                                          "VALUES (?, ?, ?, ?, ?, ?, ?, ?)"};
            int position = 1;
            for (const Step& s : value.tightening.steps) {
                step.bind(1, id);
                step.bind(2, position++);
                step.bind(3, std::string{step_kind_name(s.kind)});
                step.bind(4, s.nominal);
                step.bind(5, s.low);
                step.bind(6, s.high);
                step.bindNoCopy(7, s.unit);
                step.bind(8, s.significant);
                step.exec();
                step.reset();
            }
            impl_->append_event(stamp, "value entered", value.joint, id,
                                {{"as_written", value.tightening.as_written},
                                 {"label", std::string{label_name(value.label)}},
                                 {"source", value.source ? value.source->line() : ""},
                                 {"page", value.page},
                                 {"note", value.note},
                                 {"confirmed", value.confirmed},
                                 {"entered_by", value.entered_by},
                                 {"entered_on", value.entered_on}});
        });
        return id;
    });
}

namespace {

Standing read_standing(std::string_view name) {
    for (const Standing standing : {Standing::current, Standing::superseded, Standing::withdrawn}) {
        if (name == standing_name(standing)) {
            return standing;
        }
    }
    throw error(ErrorKind::invalid_data, "'{}' is no standing of a value", name);
}

} // namespace

std::vector<Value> Book::Impl::values_of(const char* column, RecordId id, Reading reading) const {
    Query query{statements, std::string{"SELECT v.id, v.label, v.as_written, v.page, v.note, v.confirmed, p.name, v.entered_on, "
                                        "coalesce(cp.name, ''), coalesce(c.checked_on, ''), coalesce(e.standing, 'current'), "
                                        "s.id, s.kind, s.title, s.number, s.edition, s.date, s.kept, s.file_digest, s.note, "
                                        "v.joint, coalesce(e.by_value, 0), coalesce(e.reason, ''), coalesce(c.as_written, ''), "
                                        "coalesce(ep.name, ''), coalesce(e.ended_on, ''), coalesce(sp.name, ''), "
                                        "coalesce(s.added_at, '') "
                                        "FROM value v JOIN person p ON p.id = v.entered_by LEFT JOIN source s ON s.id = v.source "
                                        "LEFT JOIN value_check c ON c.value = v.id LEFT JOIN person cp ON cp.id = c.checked_by "
                                        "LEFT JOIN value_end e ON e.value = v.id LEFT JOIN person ep ON ep.id = e.ended_by "
                                        "LEFT JOIN person sp ON sp.id = s.added_by WHERE "} +
                                column + " = ? ORDER BY v.id"};
    Query steps{statements, "SELECT kind, nominal, low, high, unit, significant FROM step WHERE value = ? ORDER BY position"};
    query.bind(1, id);
    std::vector<Value> out;
    while (query.executeStep()) {
        Value v;
        v.id = id_at(query, 0);
        v.label = reading_of("value", v.id, [&] { return read_label(text_at(query, 1)); });
        v.tightening.as_written = text_at(query, 2);
        v.page = text_at(query, 3);
        v.note = text_at(query, 4);
        v.confirmed = text_at(query, 5);
        v.entered_by = text_at(query, 6);
        v.entered_on = text_at(query, 7);
        v.checked_by = text_at(query, 8);
        v.checked_on = text_at(query, 9);
        const std::string standing = text_at(query, 10);
        v.standing = reading_of("value", v.id, [&] { return read_standing(standing); });
        if (!query.getColumn(11).isNull()) {
            v.source = Source{id_at(query, 11),   text_at(query, 12), text_at(query, 13), text_at(query, 14),
                              text_at(query, 15), text_at(query, 16), text_at(query, 17), text_at(query, 18),
                              text_at(query, 19), text_at(query, 26), text_at(query, 27)};
        }
        v.joint = id_at(query, 20);
        v.superseded_by = id_at(query, 21);
        v.end_reason = text_at(query, 22);
        v.check_as_written = text_at(query, 23);
        v.ended_by = text_at(query, 24);
        v.ended_on = text_at(query, 25);
        steps.bind(1, v.id);
        while (steps.executeStep()) {
            const std::string kind = text_at(steps, 0);
            v.tightening.steps.push_back({kind == "torque"  ? StepKind::torque
                                          : kind == "angle" ? StepKind::angle
                                                            : StepKind::hand_tight,
                                          steps.getColumn(1).getDouble(), steps.getColumn(2).getDouble(),
                                          steps.getColumn(3).getDouble(), text_at(steps, 4), steps.getColumn(5).getInt()});
        }
        steps.reset();
        if (auto fault = reading == Reading::strict ? fault_of_steps(v) : std::nullopt) {
            throw error(ErrorKind::invalid_data, "{}; the book was damaged or changed, 'clampbook audit' tells more", *fault);
        }
        out.push_back(std::move(v));
    }
    return out;
}

std::vector<Value> Book::values(RecordId joint) const {
    return guarded(impl_->path, [&] { return impl_->values_of("v.joint", joint); });
}

std::optional<Value> Book::value(RecordId id) const {
    return guarded(impl_->path, [&]() -> std::optional<Value> {
        auto found = impl_->values_of("v.id", id);
        return found.empty() ? std::nullopt : std::optional{std::move(found.front())};
    });
}

RecordId Book::next_value() const {
    return guarded(impl_->path,
                   [&] { return RecordId{impl_->db->execAndGet("SELECT coalesce(max(id), 0) + 1 FROM value").getInt64()}; });
}

void Book::check_value(RecordId value, const Check& check, const Stamp& stamp) {
    guarded(impl_->path, [&] {
        impl_->transact([&] {
            const RecordId joint = impl_->joint_of_value(value);
            Query insert{impl_->statements,
                         "INSERT INTO value_check (value, as_written, checked_by, checked_on) VALUES (?, ?, ?, ?)"};
            insert.bind(1, value);
            insert.bind(2, check.as_written);
            insert.bind(3, impl_->person(check.by));
            insert.bind(4, check.on);
            insert.exec();
            impl_->append_event(stamp, "value checked", joint, value,
                                {{"as_written", check.as_written}, {"checked_by", check.by}, {"checked_on", check.on}});
        });
    });
}

void Book::end_value(RecordId value, const End& end, const Stamp& stamp) {
    guarded(impl_->path, [&] {
        impl_->transact([&] {
            const RecordId joint = impl_->joint_of_value(value);
            const std::string standing{standing_name(end.by_value == 0 ? Standing::withdrawn : Standing::superseded)};
            Query insert{
                impl_->statements,
                "INSERT INTO value_end (value, standing, by_value, reason, ended_by, ended_on) VALUES (?, ?, ?, ?, ?, ?)"};
            insert.bind(1, value);
            insert.bind(2, standing);
            if (end.by_value != 0) {
                insert.bind(3, end.by_value);
            }
            insert.bind(4, end.reason);
            insert.bind(5, impl_->person(end.by));
            insert.bind(6, end.on);
            insert.exec();
            impl_->append_event(stamp, "value " + standing, joint, value,
                                {{"reason", end.reason},
                                 {"by_value", end.by_value == 0 ? "" : std::to_string(end.by_value)},
                                 {"ended_by", end.by},
                                 {"ended_on", end.on}});
        });
    });
}

RecordId Book::Impl::joint_of_value(RecordId value) const {
    Query query{statements, "SELECT joint FROM value WHERE id = ?"};
    query.bind(1, value);
    if (!query.executeStep()) {
        throw error(ErrorKind::not_found, "there is no value #{} in the book", value);
    }
    return id_at(query, 0);
}

std::vector<Event> Book::Impl::events_where(const char* condition, std::int64_t number) const {
    Query query{statements,
                std::string{"SELECT seq, at, person, kind, coalesce(joint, 0), coalesce(value, 0), detail FROM event WHERE "} +
                    condition + " ORDER BY seq"};
    Query facts{statements, "SELECT key, value FROM json_each(?) WHERE value <> ''"};
    query.bind(1, number);
    std::vector<Event> out;
    while (query.executeStep()) {
        Event event{id_at(query, 0), text_at(query, 1), text_at(query, 2), text_at(query, 3),
                    id_at(query, 4), id_at(query, 5),   text_at(query, 6), {}};
        facts.bind(1, event.detail);
        while (facts.executeStep()) {
            event.facts.emplace_back(text_at(facts, 0), text_at(facts, 1));
        }
        facts.reset();
        out.push_back(std::move(event));
    }
    return out;
}

std::vector<Event> Book::history(RecordId joint) const {
    return guarded(impl_->path, [&] { return impl_->events_where("joint = ?", joint); });
}

std::vector<Event> Book::told_of_values_after(std::int64_t seq) const {
    return guarded(impl_->path, [&] { return impl_->events_where("value IS NOT NULL AND seq > ?", seq); });
}

std::int64_t Book::events_before(const std::string& date) const {
    return guarded(impl_->path, [&] {
        Query query{impl_->statements, "SELECT count(*) FROM event WHERE at < ?"};
        query.bind(1, date);
        query.executeStep();
        return id_at(query, 0);
    });
}

Info Book::info() const {
    return guarded(impl_->path, [&] {
        const auto count = [&](const char* sql) { return static_cast<std::size_t>(impl_->db->execAndGet(sql).getInt64()); };
        Info info;
        info.path = impl_->path;
        info.machines = count("SELECT count(*) FROM machine");
        info.assemblies = count("SELECT count(*) FROM assembly");
        info.joints = count("SELECT count(*) FROM joint");
        info.joints_without_value =
            count("SELECT count(*) FROM joint j WHERE NOT EXISTS (SELECT 1 FROM value v LEFT JOIN value_end e "
                  "ON e.value = v.id WHERE v.joint = j.id AND e.value IS NULL)");
        info.values = count("SELECT count(*) FROM value");
        info.checked_values = count("SELECT count(*) FROM value_check");
        info.sources = count("SELECT count(*) FROM source");
        info.people = count("SELECT count(*) FROM person");
        info.events = count("SELECT count(*) FROM event");
        info.layout = impl_->db->execAndGet("PRAGMA user_version").getInt();
        Query head{impl_->statements, "SELECT value FROM book_info WHERE key = 'event.head'"};
        info.head = head.executeStep() ? text_at(head, 0) : std::string{};
        Query ends{impl_->statements,
                   "SELECT coalesce((SELECT substr(at, 1, 10) FROM event WHERE seq = 1), ''), coalesce(max(at), '') FROM event"};
        ends.executeStep();
        info.created_on = text_at(ends, 0);
        info.last_event_at = text_at(ends, 1);
        return info;
    });
}

} // namespace clampbook::book
