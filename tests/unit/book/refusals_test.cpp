// SPDX-License-Identifier: MIT
// Every named constraint and every trigger of the book's schema is seen refusing, told by somebody who writes to the file
// behind the program's back.

#include "../../data/foreign_keys.hpp"
#include "../../data/support.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/book/book.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <catch2/catch.hpp>

#include <regex>
#include <set>

namespace {

using namespace clampbook;
using data_tests::broken_keys;
namespace fs = std::filesystem;

using Cells = std::map<std::string, std::string>; // a column, and what stands for it in SQL

const std::string k_zeros(64, '0');

// A row of each table that the book would take as it is, beside what `Told` holds already.
const std::map<std::string, Cells> k_good{
    {"book_info", {{"key", "'k'"}, {"value", "'v'"}}},
    {"person", {{"name", "'Second'"}, {"folded", "'second'"}}},
    {"source",
     {{"kind", "'manual'"},
      {"title", "'Other'"},
      {"date", "'2020'"},
      {"folded", "'other'"},
      {"added_by", "1"},
      {"added_at", "'2026-11-25T10:00:00Z'"}}},
    {"machine", {{"maker", "'m'"}, {"model", "'Y'"}, {"folded", "'m y'"}}},
    {"assembly", {{"machine", "1"}, {"name", "'hub'"}, {"folded", "'hub'"}}},
    {"joint",
     {{"assembly", "1"},
      {"name", "'fill plug'"},
      {"role", "'fill'"},
      {"count", "1"},
      {"engagement_mm", "12"},
      {"safety_critical", "0"},
      {"folded", "'fill plug'"}}},
    {"value",
     {{"joint", "1"},
      {"label", "'maker'"},
      {"as_written", "'5 N·m'"},
      {"source", "1"},
      {"page", "'p. 3'"},
      {"entered_by", "1"},
      {"entered_on", "'2026-11-25'"}}},
    {"step",
     {{"value", "1"},
      {"position", "9"},
      {"kind", "'torque'"},
      {"nominal", "2"},
      {"low", "1"},
      {"high", "3"},
      {"unit", "'N·m'"},
      {"significant", "2"}}},
    {"value_check", {{"value", "1"}, {"as_written", "'5 N·m'"}, {"checked_by", "1"}, {"checked_on", "'2026-11-25'"}}},
    {"value_end",
     {{"value", "1"},
      {"standing", "'superseded'"},
      {"by_value", "2"},
      {"reason", "'new edition'"},
      {"ended_by", "1"},
      {"ended_on", "'2026-11-25'"}}},
    {"event",
     {{"seq", "1000"},
      {"at", "'2026-11-25T10:00:00Z'"},
      {"person", "'Ann'"},
      {"kind", "'told'"},
      {"joint", "1"},
      {"value", "1"},
      {"detail", "'{}'"},
      {"previous", "'" + k_zeros + "'"},
      {"hash", "'" + k_zeros + "'"}}},
    {"vocabulary", {{"word", "'breather'"}}},
};

struct Refusal {
    std::string constraint;
    std::string table;
    Cells cells; // put in place of those of the good row
};

const std::vector<Refusal> k_refusals{
    {"ck_book_info_key", "book_info", {{"key", "''"}}},
    {"ck_person_name", "person", {{"name", "''"}}},
    {"uq_person_name", "person", {{"folded", "'ann'"}}},
    {"ck_source_kind", "source", {{"kind", "''"}}},
    {"ck_source_title", "source", {{"title", "''"}}},
    {"fk_source_person", "source", {{"added_by", "99"}}},
    {"ck_source_added_at", "source", {{"added_at", "'2026-11-25'"}}},
    {"ck_source_added_at", "source", {{"added_at", "'2026-11-25T10:00:00'"}}},
    {"ck_source_date", "source", {{"date", "'May 2020'"}}},
    {"uq_source",
     "source",
     {{"folded", "'manual x\x1f"
                 "wm-1\x1f"
                 "4'"}}},
    {"ck_machine_maker", "machine", {{"maker", "''"}}},
    {"ck_machine_model", "machine", {{"model", "''"}}},
    {"uq_machine", "machine", {{"folded", "'maker\x1fx\x1f'"}}},
    {"fk_assembly_machine", "assembly", {{"machine", "99"}}},
    {"ck_assembly_name", "assembly", {{"name", "''"}}},
    {"uq_assembly", "assembly", {{"folded", "'box'"}}},
    {"fk_joint_assembly", "joint", {{"assembly", "99"}}},
    {"ck_joint_name", "joint", {{"name", "''"}}},
    {"ck_joint_role", "joint", {{"role", "'sump'"}}},
    {"ck_joint_count", "joint", {{"count", "0"}}},
    {"ck_joint_count", "joint", {{"count", "1000"}}},
    {"ck_joint_engagement", "joint", {{"engagement_mm", "0"}}},
    {"ck_joint_engagement", "joint", {{"engagement_mm", "1000"}}},
    {"ck_joint_safety", "joint", {{"safety_critical", "2"}}},
    {"uq_joint", "joint", {{"folded", "'drain plug'"}}},
    {"fk_value_joint", "value", {{"joint", "99"}}},
    {"ck_value_label", "value", {{"label", "'guess'"}}},
    {"ck_value_as_written", "value", {{"as_written", "''"}}},
    {"fk_value_source", "value", {{"source", "99"}}},
    {"fk_value_person", "value", {{"entered_by", "99"}}},
    {"ck_value_entered_on", "value", {{"entered_on", "'25.11.2026'"}}},
    {"ck_value_maker_source", "value", {{"source", "NULL"}}},
    {"ck_value_maker_source", "value", {{"page", "''"}}},
    {"fk_step_value", "step", {{"value", "99"}}},
    {"ck_step_position", "step", {{"position", "0"}}},
    {"ck_step_kind", "step", {{"kind", "'turn'"}}},
    {"ck_step_significant", "step", {{"significant", "0"}}},
    {"ck_step_significant", "step", {{"significant", "18"}}},
    {"ck_step_band", "step", {{"low", "2.5"}}},
    {"ck_step_band", "step", {{"high", "1.5"}}},
    {"ck_step_positive", "step", {{"low", "0"}}},
    {"ck_step_positive", "step", {{"kind", "'angle'"}, {"low", "-1"}}},
    {"pk_value_check", "value_check", {{"value", "2"}}},
    {"fk_value_check_value", "value_check", {{"value", "99"}}},
    {"ck_value_check_text", "value_check", {{"as_written", "''"}}},
    {"fk_value_check_person", "value_check", {{"checked_by", "99"}}},
    {"ck_value_check_on", "value_check", {{"checked_on", "'today'"}}},
    {"pk_value_end", "value_end", {{"value", "2"}}},
    {"fk_value_end_value", "value_end", {{"value", "99"}}},
    {"ck_value_end_standing", "value_end", {{"standing", "'gone'"}, {"by_value", "NULL"}}},
    {"fk_value_end_by", "value_end", {{"by_value", "99"}}},
    {"ck_value_end_reason", "value_end", {{"reason", "''"}}},
    {"fk_value_end_person", "value_end", {{"ended_by", "99"}}},
    {"ck_value_end_on", "value_end", {{"ended_on", "'today'"}}},
    {"ck_value_end_by", "value_end", {{"by_value", "NULL"}}},
    {"ck_value_end_by", "value_end", {{"standing", "'withdrawn'"}}},
    {"ck_event_at", "event", {{"at", "'2026-11-25 10:00'"}}},
    {"ck_event_kind", "event", {{"kind", "''"}}},
    {"fk_event_joint", "event", {{"joint", "99"}}},
    {"fk_event_value", "event", {{"value", "99"}}},
    {"ck_event_detail", "event", {{"detail", "'[]'"}}},
    {"ck_event_previous", "event", {{"previous", "'0'"}}},
    {"ck_event_hash", "event", {{"hash", "'0'"}}},
    {"ck_vocabulary_word", "vocabulary", {{"word", "''"}}},
};

struct Constraint {
    std::string table;
    std::string column;
};

// Read from the text of the migrations, so that a new constraint without a refusal fails below.
std::map<std::string, Constraint> constraints_of_schema() {
    static const std::regex table_line{R"(^CREATE TABLE (\w+))"};
    static const std::regex named{R"(CONSTRAINT (\w+))"};
    std::map<std::string, Constraint> found;
    for (const fs::path& file : data_tests::files_in(data_tests::k_source / "schema/book", ".sql")) {
        std::istringstream in{data_tests::read_file(file)};
        std::string table;
        std::string column;
        for (std::string line; std::getline(in, line);) {
            std::smatch match;
            if (std::regex_search(line, match, table_line)) {
                table = match[1];
            }
            const std::string first = line.substr(std::min(line.size(), line.find_first_not_of(' ')));
            if (first.starts_with("CONSTRAINT uq_")) {
                column = first.substr(first.find('(') + 1, first.find(')') - first.find('(') - 1);
            } else if (!first.starts_with("CONSTRAINT")) {
                column = first.substr(0, first.find(' '));
            }
            for (std::sregex_iterator it{line.begin(), line.end(), named}, end; it != end; ++it) {
                INFO((*it)[1] << " stands twice in the schema");
                REQUIRE(found.emplace((*it)[1], Constraint{table, column}).second);
            }
        }
    }
    return found;
}

// A book in which something was told, opened without the program.
struct Told {
    data_tests::TemporaryFolder folder;
    SQLite::Database db;

    Told() : db{made(folder), SQLite::OPEN_READWRITE} {
        db.exec("PRAGMA foreign_keys = ON");
        db.exec("INSERT INTO value_check VALUES (2, '5 N·m', 1, '2026-11-25')");
        db.exec("INSERT INTO value_end VALUES (2, 'withdrawn', NULL, 'wrong plug', 1, '2026-11-25')");
    }

    static std::string made(const data_tests::TemporaryFolder& folder) {
        const book::Stamp stamp{"Ann", "2026-11-25T10:00:00Z"};
        const std::string path = (folder / "book.db").string();
        book::Book book = book::Book::create(path, stamp);
        const RecordId source = book.add_source({0, "manual", "Manual X", "WM-1", "4", "2020", "", "", ""}, stamp);
        const RecordId machine = book.add_machine({0, "Maker", "X", "", "", "", ""}, stamp);
        Joint joint;
        joint.assembly = book.add_assembly({0, machine, "box", ""}, stamp);
        joint.name = "drain plug";
        Value value;
        value.joint = book.add_joint(joint, stamp);
        value.tightening = read_tightening("5 N·m");
        value.entered_by = "Ann";
        value.entered_on = "2026-11-25";
        value.source = Source{};
        value.source->id = source;
        (void)book.add_value(value, stamp);
        (void)book.add_value(value, stamp);
        return path;
    }

    std::string fault_of(const std::string& sql) {
        try {
            db.exec(sql);
        } catch (const SQLite::Exception& fault) {
            return fault.what();
        }
        return "accepted";
    }
};

std::string insertion(const std::string& table, const Cells& changed, const char* verb = "INSERT") {
    Cells cells = changed;
    cells.insert(k_good.at(table).begin(), k_good.at(table).end());
    std::string columns;
    std::string values;
    for (const auto& [column, value] : cells) {
        columns += (columns.empty() ? "" : ", ") + column;
        values += (values.empty() ? "" : ", ") + value;
    }
    return std::string{verb} + " INTO " + table + " (" + columns + ") VALUES (" + values + ")";
}

struct Trigger {
    std::string name;
    std::string table;
    std::string change;
    std::string sentence;
};

constexpr const char* k_replace = "INSERT OR REPLACE";

const std::vector<Trigger> k_triggers{
    {"value_is_kept", "value", "UPDATE value SET page = 'p. 4'", "a value is never changed: it is superseded by another"},
    {"value_stays", "value", "DELETE FROM value", "a value is never deleted: it is withdrawn with a reason"},
    {"step_is_kept", "step", "UPDATE step SET high = 900", "a step belongs to a value and is never changed"},
    {"step_stays", "step", "DELETE FROM step", "a step belongs to a value and is never deleted"},
    {"value_check_is_kept", "value_check", "UPDATE value_check SET checked_on = '2020-01-01'", "a check is never changed"},
    {"value_check_stays", "value_check", "DELETE FROM value_check", "a check is never deleted"},
    {"value_end_is_kept", "value_end", "UPDATE value_end SET reason = 'none'", "the end of a value is never changed"},
    {"value_end_stays", "value_end", "DELETE FROM value_end", "the end of a value is never deleted"},
    {"source_is_kept", "source", "UPDATE source SET edition = '5'",
     "a source is never changed: values cite it; add the new edition as another"},
    {"source_stays", "source", "DELETE FROM source", "a source is never deleted: values cite it"},
    {"person_is_kept", "person", "UPDATE person SET name = 'Bob'",
     "a person is never changed: the name stands behind what was entered"},
    {"person_stays", "person", "DELETE FROM person", "a person is never deleted: the name stands behind what was entered"},
    {"event_is_kept", "event", "UPDATE event SET person = 'Bob'", "an event is never changed"},
    {"event_stays", "event", "DELETE FROM event", "an event is never deleted"},
    {"value_is_not_replaced", "value", insertion("value", {{"id", "1"}}, k_replace),
     "a value is never replaced: it is superseded by another"},
    {"step_is_not_replaced", "step", insertion("step", {{"position", "1"}}, k_replace),
     "a step belongs to a value and is never replaced"},
    {"value_check_is_not_replaced", "value_check", insertion("value_check", {{"value", "2"}}, k_replace),
     "a check is never replaced"},
    {"value_end_is_not_replaced", "value_end", insertion("value_end", {{"value", "2"}, {"by_value", "1"}}, k_replace),
     "the end of a value is never replaced"},
    {"source_is_not_replaced", "source", insertion("source", {{"id", "1"}}, k_replace),
     "a source is never replaced: values cite it; add the new edition as another"},
    {"person_is_not_replaced", "person", insertion("person", {{"id", "1"}}, k_replace),
     "a person is never replaced: the name stands behind what was entered"},
    {"event_is_not_replaced", "event", insertion("event", {{"seq", "1"}}, k_replace), "an event is never replaced"},
};

} // namespace

TEST_CASE("the rows that the refusals start from are good") {
    Told told;
    for (const auto& [table, unused] : k_good) {
        INFO(table);
        told.db.exec("BEGIN");
        CHECK(told.fault_of(insertion(table, {})) == "accepted");
        CHECK(broken_keys(told.db, table).empty());
        told.db.exec("ROLLBACK");
    }
}

TEST_CASE("each named constraint of the book refuses what breaks it") {
    Told told;
    // The triggers against replacing a row come before the keys; here the keys are asked alone.
    for (const Trigger& trigger : k_triggers) {
        if (trigger.name.ends_with("_is_not_replaced")) {
            told.db.exec("DROP TRIGGER " + trigger.name);
        }
    }
    const auto constraints = constraints_of_schema();
    for (const Refusal& refusal : k_refusals) {
        const std::string sql = insertion(refusal.table, refusal.cells);
        INFO(refusal.constraint << ": " << sql);
        REQUIRE(constraints.contains(refusal.constraint));
        const Constraint& constraint = constraints.at(refusal.constraint);
        CHECK(constraint.table == refusal.table);
        told.db.exec("BEGIN");
        const std::string answer = told.fault_of(sql);
        told.db.exec("ROLLBACK");
        if (refusal.constraint.starts_with("ck_")) {
            CHECK(answer == "CHECK constraint failed: " + refusal.constraint);
        } else if (refusal.constraint.starts_with("fk_")) {
            CHECK(answer == "FOREIGN KEY constraint failed");
            // which of the table's keys it was
            told.db.exec("PRAGMA foreign_keys = OFF");
            told.db.exec("BEGIN");
            CHECK(told.fault_of(sql) == "accepted");
            CHECK(broken_keys(told.db, refusal.table) == std::set<std::string>{constraint.column});
            told.db.exec("ROLLBACK");
            told.db.exec("PRAGMA foreign_keys = ON");
        } else {
            std::string columns;
            for (const std::string& column : split(constraint.column, ',')) {
                columns += (columns.empty() ? "" : ", ") + refusal.table + "." + std::string{trim(column)};
            }
            CHECK(answer == "UNIQUE constraint failed: " + columns);
        }
    }
}

TEST_CASE("no constraint of the book is without a refusal") {
    std::set<std::string> refused;
    for (const Refusal& refusal : k_refusals) {
        refused.insert(refusal.constraint);
    }
    std::set<std::string> named;
    for (const auto& [name, constraint] : constraints_of_schema()) {
        named.insert(name);
    }
    CHECK(named.size() >= 50);
    CHECK(named == refused);
}

TEST_CASE("what was written down refuses to be changed or deleted, and says why") {
    Told told;
    for (const Trigger& trigger : k_triggers) {
        INFO(trigger.change);
        REQUIRE(told.db.execAndGet("SELECT count(*) FROM " + trigger.table).getInt() > 0);
        CHECK(told.fault_of(trigger.change) == trigger.sentence);
    }
    std::set<std::string> tried;
    for (const Trigger& trigger : k_triggers) {
        tried.insert(trigger.name + " ON " + trigger.table);
    }
    std::set<std::string> there;
    SQLite::Statement query{told.db, "SELECT name || ' ON ' || tbl_name FROM sqlite_schema WHERE type = 'trigger'"};
    while (query.executeStep()) {
        there.insert(query.getColumn(0).getString());
    }
    CHECK(there == tried);
}

TEST_CASE("what was written down is not overwritten by a row in its place") {
    Told told;
    CHECK(told.fault_of(insertion("source",
                                  {{"folded", "'manual x\x1f"
                                              "wm-1\x1f"
                                              "4'"}},
                                  k_replace)) == "a source is never replaced: values cite it; add the new edition as another");
    for (const auto& [table, key] : std::vector<std::pair<std::string, Cells>>{{"value", {{"id", "1"}}},
                                                                               {"step", {{"position", "1"}}},
                                                                               {"value_check", {{"value", "2"}}},
                                                                               {"value_end", {{"value", "2"}, {"by_value", "1"}}},
                                                                               {"source", {{"id", "1"}}},
                                                                               {"event", {{"seq", "1"}}}}) {
        INFO(table);
        told.db.exec("BEGIN");
        CHECK(told.fault_of(insertion(table, key, "INSERT OR REPLACE")) != "accepted");
        told.db.exec("ROLLBACK");
    }
}

TEST_CASE("cells of the book that must be there, and their types") {
    Told told;
    CHECK(told.fault_of(insertion("value", {{"joint", "NULL"}})) == "NOT NULL constraint failed: value.joint");
    CHECK(told.fault_of(insertion("step", {{"nominal", "NULL"}})) == "NOT NULL constraint failed: step.nominal");
    CHECK(told.fault_of(insertion("step", {{"nominal", "'tight'"}})) == "cannot store TEXT value in REAL column step.nominal");
    CHECK(told.fault_of(insertion("joint", {{"count", "'two'"}})) == "cannot store TEXT value in INTEGER column joint.count");
    SQLite::Statement query{told.db, "SELECT name, strict FROM pragma_table_list WHERE schema = 'main' AND type = 'table' "
                                     "AND name NOT LIKE 'sqlite%'"};
    int tables = 0;
    while (query.executeStep()) {
        INFO(query.getColumn(0).getString());
        CHECK(query.getColumn(1).getInt() == 1);
        ++tables;
    }
    CHECK(tables == static_cast<int>(k_good.size()));
}
