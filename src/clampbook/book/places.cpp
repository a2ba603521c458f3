// SPDX-License-Identifier: MIT
// Joints with the machine and assembly that they belong to: one by its number, or all of them in the order of their names.

#include "clampbook/book/columns.hpp"
#include "clampbook/book/impl.hpp"
#include "clampbook/model/thread.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cmath>
#include <map>

namespace clampbook::book {
namespace {

constexpr const char* k_by_number = " FROM joint j JOIN assembly a ON a.id = j.assembly JOIN machine m ON m.id = a.machine ";
// Read in the order of the indexes of names, so that nothing is sorted.
constexpr const char* k_by_name =
    " FROM machine m CROSS JOIN assembly a ON a.machine = m.id CROSS JOIN joint j ON j.assembly = a.id ";
constexpr const char* k_name_order = "ORDER BY m.folded, a.folded, j.folded";

std::string place_query(const char* from, const std::string& rest, const char* more_columns = "") {
    return std::string{"SELECT "} + k_machine_columns + ", " + k_assembly_columns + ", " + k_joint_columns + more_columns + from +
           rest;
}

Place place_at(SQLite::Statement& query) { return {machine_at(query, 0), assembly_at(query, 7), joint_at(query, 11)}; }

} // namespace

Machine machine_at(const SQLite::Statement& q, int c) {
    return {id_at(q, c),       text_at(q, c + 1), text_at(q, c + 2), text_at(q, c + 3),
            text_at(q, c + 4), text_at(q, c + 5), text_at(q, c + 6)};
}

Assembly assembly_at(const SQLite::Statement& q, int c) {
    return {id_at(q, c), id_at(q, c + 1), text_at(q, c + 2), text_at(q, c + 3)};
}

Joint joint_at(SQLite::Statement& q, int c) {
    Joint j;
    j.id = id_at(q, c);
    j.assembly = id_at(q, c + 1);
    j.name = text_at(q, c + 2);
    j.role = reading_of("joint", j.id, [&] { return read_role(text_at(q, c + 3)); });
    j.count = q.getColumn(c + 4).getInt();
    if (j.count < 1) {
        throw error(ErrorKind::invalid_data, "joint {} of the book: a count of {} is none", j.id, j.count);
    }
    j.thread = text_at(q, c + 5);
    if (!j.thread.empty()) {
        (void)reading_of("joint", j.id, [&] { return read_thread(j.thread); });
    }
    j.property_class = text_at(q, c + 6);
    j.form = text_at(q, c + 7);
    j.ring = text_at(q, c + 8);
    j.housing = text_at(q, c + 9);
    if (!q.getColumn(c + 10).isNull()) {
        const double engagement = q.getColumn(c + 10).getDouble();
        if (!(engagement > 0 && std::isfinite(engagement))) {
            throw error(ErrorKind::invalid_data, "joint {} of the book: an engagement of {} mm is no length", j.id, engagement);
        }
        j.engagement_mm = engagement;
    }
    j.safety_critical = q.getColumn(c + 11).getInt() != 0;
    j.note = text_at(q, c + 12);
    return j;
}

std::vector<Place> Book::places() const {
    return guarded(impl_->path, [&] {
        Query query{impl_->statements, place_query(k_by_name, k_name_order)};
        std::vector<Place> out;
        while (query.executeStep()) {
            out.push_back(place_at(query));
        }
        return out;
    });
}

void Book::each_joint(const std::function<void(const JointRecord&)>& body) const {
    guarded(impl_->path, [&] {
        Query query{impl_->statements, place_query(k_by_name, k_name_order)};
        while (query.executeStep()) {
            Place place = place_at(query);
            JointRecord record{std::move(place.machine), std::move(place.assembly), std::move(place.joint), {}};
            record.values = impl_->values_of("v.joint", record.joint.id);
            std::map<RecordId, RecordId> number;
            for (Value& value : record.values) {
                const RecordId next = static_cast<RecordId>(number.size()) + 1;
                number.emplace(value.id, next);
                value.id = next;
            }
            for (Value& value : record.values) {
                if (value.superseded_by != 0) {
                    const auto by = number.find(value.superseded_by);
                    if (by == number.end()) {
                        throw error(ErrorKind::invalid_data,
                                    "joint {} of the book: a value of another joint took the place of one", record.joint.id);
                    }
                    value.superseded_by = by->second;
                }
            }
            body(record);
        }
    });
}

void Book::each_current(const std::function<void(const Place&, const Value*)>& body) const {
    guarded(impl_->path, [&] {
        Query query{
            impl_->statements,
            place_query(k_by_name,
                        "LEFT JOIN value v ON v.joint = j.id AND NOT EXISTS (SELECT 1 FROM value_end e WHERE e.value = v.id) "
                        "LEFT JOIN person p ON p.id = v.entered_by LEFT JOIN source s ON s.id = v.source " +
                            std::string{k_name_order} + ", v.id",
                        ", v.id, v.label, v.as_written, v.page, v.note, v.confirmed, p.name, v.entered_on, s.id, s.kind, "
                        "s.title, s.number, s.edition, s.date")};
        constexpr int k_value = 24;
        constexpr int k_source = 32;
        Place there;
        Value value;
        const auto put = [&](std::string& into, int column) { into = text_at(query, column); };
        while (query.executeStep()) {
            if (id_at(query, 11) != there.joint.id) {
                there = place_at(query);
            }
            if (query.getColumn(k_value).isNull()) {
                body(there, nullptr);
                continue;
            }
            value.id = id_at(query, k_value);
            value.joint = there.joint.id;
            value.label = reading_of("value", value.id, [&] { return read_label(text_at(query, k_value + 1)); });
            put(value.tightening.as_written, k_value + 2);
            put(value.page, k_value + 3);
            put(value.note, k_value + 4);
            put(value.confirmed, k_value + 5);
            put(value.entered_by, k_value + 6);
            put(value.entered_on, k_value + 7);
            if (query.getColumn(k_source).isNull()) {
                value.source.reset();
            } else if (!value.source || value.source->id != id_at(query, k_source)) {
                value.source = Source{};
                value.source->id = id_at(query, k_source);
                put(value.source->kind, k_source + 1);
                put(value.source->title, k_source + 2);
                put(value.source->number, k_source + 3);
                put(value.source->edition, k_source + 4);
                put(value.source->date, k_source + 5);
            }
            body(there, &value);
        }
    });
}

std::optional<Place> Book::place(RecordId joint) const {
    return guarded(impl_->path, [&]() -> std::optional<Place> {
        Query query{impl_->statements, place_query(k_by_number, "WHERE j.id = ?")};
        query.bind(1, joint);
        return query.executeStep() ? std::optional{place_at(query)} : std::nullopt;
    });
}

} // namespace clampbook::book
