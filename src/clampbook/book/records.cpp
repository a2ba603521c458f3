// SPDX-License-Identifier: MIT
// Machines, assemblies, joints, sources and people of the book: written once each, found by their folded names.

#include "clampbook/base/text.hpp"
#include "clampbook/book/columns.hpp"
#include "clampbook/book/impl.hpp"
#include "clampbook/model/thread.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <algorithm>
#include <iterator>

namespace clampbook::book {
namespace {

// The parts of a name, folded, so that "Rear Axle" and "rear  axle" are one assembly.
std::string folded(std::initializer_list<std::string_view> parts) {
    std::string out;
    for (const std::string_view part : parts) {
        out += (out.empty() ? "" : "\x1f") + fold(part);
    }
    return out;
}

std::string folded_machine(const Machine& m) { return folded({m.maker, m.model, m.variant}); }
std::string folded_source(const Source& s) { return folded({s.title, s.number, s.edition}); }

constexpr const char* k_source_columns = "s.id, s.kind, s.title, s.number, s.edition, s.date, s.kept, s.file_digest, s.note, "
                                         "p.name, s.added_at FROM source s JOIN person p ON p.id = s.added_by ";

Source source_at(const SQLite::Statement& q, int c) {
    return {id_at(q, c),       text_at(q, c + 1), text_at(q, c + 2), text_at(q, c + 3), text_at(q, c + 4), text_at(q, c + 5),
            text_at(q, c + 6), text_at(q, c + 7), text_at(q, c + 8), text_at(q, c + 9), text_at(q, c + 10)};
}

void refuse_second(bool there, std::string_view what, std::string_view name) {
    if (there) {
        throw error(ErrorKind::conflict, "the {} '{}' is in the book already", what, name);
    }
}

void bind_all(SQLite::Statement& statement, std::initializer_list<std::string_view> texts) {
    int i = 1;
    for (const std::string_view text : texts) {
        statement.bind(i++, std::string{text});
    }
}

} // namespace

RecordId Book::Impl::person(const std::string& name) {
    constexpr std::size_t k_most = 16;
    const auto known = std::ranges::find(people, name, &std::pair<std::string, RecordId>::first);
    if (known != people.end()) {
        return known->second;
    }
    const std::string shown{trim(name)};
    if (shown.empty()) {
        throw error(ErrorKind::usage, "nobody is named; say who with --by NAME or in CLAMPBOOK_BY");
    }
    if (!is_utf8(shown) || has_control(shown)) {
        throw error(ErrorKind::usage, "'{}' is no name: it holds a line end or another control character, or is not UTF-8 text",
                    shown);
    }
    const std::string letters = fold(shown);
    Query find{statements, "SELECT id FROM person WHERE folded = ?"};
    find.bind(1, letters);
    RecordId id = 0;
    if (find.executeStep()) {
        id = id_at(find, 0);
    } else {
        Query insert{statements, "INSERT INTO person (name, folded) VALUES (?, ?)"};
        bind_all(insert, {shown, letters});
        insert.exec();
        id = db->getLastInsertRowid();
    }
    if (people.size() >= k_most) {
        people.clear();
    }
    people.emplace_back(name, id);
    return id;
}

RecordId Book::add_source(const Source& source, const Stamp& stamp) {
    return guarded(impl_->path, [&] {
        RecordId id = 0;
        impl_->transact([&] {
            refuse_second(find_source(source).has_value(), "source", source.line());
            Query insert{impl_->statements,
                         "INSERT INTO source (kind, title, number, edition, date, kept, file_digest, note, folded, "
                         "added_by, added_at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"};
            bind_all(insert, {source.kind, source.title, source.number, source.edition, source.date, source.kept,
                              source.file_digest, source.note, folded_source(source)});
            const std::string by = source.added_by.empty() ? stamp.person : source.added_by;
            const std::string at = source.added_at.empty() ? stamp.at : source.added_at;
            insert.bind(10, impl_->person(by));
            insert.bind(11, at);
            insert.exec();
            id = impl_->db->getLastInsertRowid();
            impl_->append_event(stamp, "source added", std::nullopt, std::nullopt,
                                {{"source", std::to_string(id)},
                                 {"kind", source.kind},
                                 {"title", source.title},
                                 {"number", source.number},
                                 {"edition", source.edition},
                                 {"date", source.date},
                                 {"kept", source.kept},
                                 {"file_digest", source.file_digest},
                                 {"note", source.note},
                                 {"added_by", by},
                                 {"added_at", at}});
        });
        return id;
    });
}

RecordId Book::add_machine(const Machine& machine, const Stamp& stamp) {
    return guarded(impl_->path, [&] {
        RecordId id = 0;
        impl_->transact([&] {
            refuse_second(find_machine(machine).has_value(), "machine", machine.title());
            Query insert{impl_->statements,
                         "INSERT INTO machine (maker, model, variant, years, code, note, folded) VALUES (?, ?, ?, ?, ?, ?, ?)"};
            bind_all(insert, {machine.maker, machine.model, machine.variant, machine.years, machine.code, machine.note,
                              folded_machine(machine)});
            insert.exec();
            id = impl_->db->getLastInsertRowid();
            impl_->append_event(stamp, "machine added", std::nullopt, std::nullopt,
                                {{"machine", std::to_string(id)},
                                 {"maker", machine.maker},
                                 {"model", machine.model},
                                 {"variant", machine.variant},
                                 {"years", machine.years},
                                 {"code", machine.code},
                                 {"note", machine.note}});
        });
        return id;
    });
}

RecordId Book::add_assembly(const Assembly& assembly, const Stamp& stamp) {
    return guarded(impl_->path, [&] {
        RecordId id = 0;
        impl_->transact([&] {
            refuse_second(find_assembly(assembly.machine, assembly.name).has_value(), "assembly", assembly.name);
            Query insert{impl_->statements, "INSERT INTO assembly (name, note, folded, machine) VALUES (?, ?, ?, ?)"};
            bind_all(insert, {assembly.name, assembly.note, fold(assembly.name)});
            insert.bind(4, assembly.machine);
            insert.exec();
            id = impl_->db->getLastInsertRowid();
            impl_->append_event(stamp, "assembly added", std::nullopt, std::nullopt,
                                {{"assembly", std::to_string(id)},
                                 {"machine", std::to_string(assembly.machine)},
                                 {"name", assembly.name},
                                 {"note", assembly.note}});
        });
        return id;
    });
}

RecordId Book::add_joint(const Joint& joint, const Stamp& stamp) {
    return guarded(impl_->path, [&] {
        RecordId id = 0;
        impl_->transact([&] {
            refuse_second(find_joint(joint.assembly, joint.name).has_value(), "joint", joint.name);
            Query insert{impl_->statements,
                         "INSERT INTO joint (name, role, thread, property_class, form, ring, housing, note, folded, assembly, "
                         "count, engagement_mm, safety_critical) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"};
            bind_all(insert, {joint.name, role_name(joint.role), joint.thread, joint.property_class, joint.form, joint.ring,
                              joint.housing, joint.note, fold(joint.name)});
            insert.bind(10, joint.assembly);
            insert.bind(11, joint.count);
            if (joint.engagement_mm) {
                insert.bind(12, *joint.engagement_mm);
            }
            insert.bind(13, joint.safety_critical ? 1 : 0);
            insert.exec();
            id = impl_->db->getLastInsertRowid();
            impl_->first_unindexed = impl_->first_unindexed == 0 ? id : impl_->first_unindexed;
            EventDetail detail{{"name", joint.name}, {"assembly", std::to_string(joint.assembly)}};
            std::ranges::copy(facts_of(joint), std::back_inserter(detail));
            detail.emplace_back("note", joint.note);
            impl_->append_event(stamp, "joint added", id, std::nullopt, detail);
        });
        return id;
    });
}

std::vector<Source> Book::sources() const {
    return guarded(impl_->path, [&] {
        Query query{impl_->statements, std::string{"SELECT "} + k_source_columns + "ORDER BY s.id"};
        std::vector<Source> out;
        while (query.executeStep()) {
            out.push_back(source_at(query, 0));
        }
        return out;
    });
}

std::optional<Source> Book::find_source(const Source& like) const {
    return guarded(impl_->path, [&]() -> std::optional<Source> {
        Query query{impl_->statements, std::string{"SELECT "} + k_source_columns + "WHERE s.folded = ?"};
        query.bind(1, folded_source(like));
        return query.executeStep() ? std::optional{source_at(query, 0)} : std::nullopt;
    });
}

std::vector<Machine> Book::machines() const {
    return guarded(impl_->path, [&] {
        Query query{impl_->statements, std::string{"SELECT "} + k_machine_columns + " FROM machine m ORDER BY m.folded"};
        std::vector<Machine> out;
        while (query.executeStep()) {
            out.push_back(machine_at(query, 0));
        }
        return out;
    });
}

std::optional<Machine> Book::find_machine(const Machine& like) const {
    return guarded(impl_->path, [&]() -> std::optional<Machine> {
        Query query{impl_->statements, std::string{"SELECT "} + k_machine_columns + " FROM machine m WHERE m.folded = ?"};
        query.bind(1, folded_machine(like));
        return query.executeStep() ? std::optional{machine_at(query, 0)} : std::nullopt;
    });
}

std::vector<Assembly> Book::assemblies(RecordId machine) const {
    return guarded(impl_->path, [&] {
        Query query{impl_->statements,
                    std::string{"SELECT "} + k_assembly_columns + " FROM assembly a WHERE a.machine = ? ORDER BY a.folded"};
        query.bind(1, machine);
        std::vector<Assembly> out;
        while (query.executeStep()) {
            out.push_back(assembly_at(query, 0));
        }
        return out;
    });
}

std::optional<Assembly> Book::find_assembly(RecordId machine, std::string_view name) const {
    return guarded(impl_->path, [&]() -> std::optional<Assembly> {
        Query query{impl_->statements,
                    std::string{"SELECT "} + k_assembly_columns + " FROM assembly a WHERE a.machine = ? AND a.folded = ?"};
        query.bind(1, machine);
        query.bind(2, fold(name));
        return query.executeStep() ? std::optional{assembly_at(query, 0)} : std::nullopt;
    });
}

std::optional<Joint> Book::find_joint(RecordId assembly, std::string_view name) const {
    return guarded(impl_->path, [&]() -> std::optional<Joint> {
        Query query{impl_->statements,
                    std::string{"SELECT "} + k_joint_columns + " FROM joint j WHERE j.assembly = ? AND j.folded = ?"};
        query.bind(1, assembly);
        query.bind(2, fold(name));
        return query.executeStep() ? std::optional{joint_at(query, 0)} : std::nullopt;
    });
}

std::vector<MachineRecord> Book::machine_records() const {
    std::vector<MachineRecord> out;
    for (Machine& machine : machines()) {
        const RecordId id = machine.id;
        out.push_back({std::move(machine), assemblies(id)});
    }
    return out;
}

std::vector<std::string> Book::names() const {
    return guarded(impl_->path, [&] {
        Query query{impl_->statements, "SELECT maker FROM machine UNION SELECT model FROM machine UNION SELECT name FROM "
                                       "assembly UNION SELECT name FROM joint"};
        std::vector<std::string> out;
        while (query.executeStep()) {
            out.push_back(text_at(query, 0));
        }
        return out;
    });
}

} // namespace clampbook::book
