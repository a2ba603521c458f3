// SPDX-License-Identifier: MIT
// Every named constraint of the curated schema is seen refusing: refusals.csv holds for each a statement that breaks it
// and nothing else. A new constraint without such a statement fails here.

#include "foreign_keys.hpp"
#include "support.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <catch2/catch.hpp>

#include <regex>
#include <set>

namespace {

using namespace data_tests;

// What the schema's text says of a constraint, and what the database says when it is broken.
struct Constraint {
    std::string table;
    std::string column;  // of a foreign key
    std::string message; // of a check or a uniqueness
};

std::string comma_list(const std::string& table, const std::string& columns) {
    static const std::regex word{R"(\w+)"};
    std::string out;
    for (std::sregex_iterator it{columns.begin(), columns.end(), word}, end; it != end; ++it) {
        out += (out.empty() ? "" : ", ") + table + "." + it->str();
    }
    return out;
}

std::map<std::string, Constraint> constraints_of_schema() {
    static const std::regex table_line{R"(^CREATE TABLE (\w+))"};
    static const std::regex named{R"(CONSTRAINT ((?:ck|fk|uq)_\w+)(?: UNIQUE \(([^)]*)\))?)"};
    static const std::regex index{R"(^CREATE UNIQUE INDEX (uq_\w+) ON (\w+) \(([^()]*)(\(?))"};
    std::map<std::string, Constraint> found;
    const auto add = [&](const std::string& name, Constraint constraint) {
        INFO("the name " << name << " stands twice in the schema");
        REQUIRE(found.emplace(name, std::move(constraint)).second);
    };
    for (const fs::path& file : files_in(k_schema, ".sql")) {
        std::istringstream in{read_file(file)};
        std::string table;
        for (std::string line; std::getline(in, line);) {
            std::smatch match;
            if (std::regex_search(line, match, table_line)) {
                table = match[1];
            }
            if (std::regex_search(line, match, index)) {
                const bool expression = match[4].length() > 0;
                add(match[1], {match[2],
                               {},
                               "UNIQUE constraint failed: " +
                                   (expression ? "index '" + match[1].str() + "'" : comma_list(match[2], match[3]))});
            }
            if (std::regex_search(line, match, named)) {
                const std::string name = match[1];
                const std::string first = line.substr(line.find_first_not_of(' '));
                const std::string column = first.substr(0, first.find(' '));
                add(name, {table, name.starts_with("fk_") ? column : "",
                           name.starts_with("ck_") ? "CHECK constraint failed: " + name
                                                   : "UNIQUE constraint failed: " + comma_list(table, match[2])});
            }
        }
    }
    return found;
}

struct Copy {
    TemporaryFolder folder;
    SQLite::Database db;

    Copy() : db{copied(folder), SQLite::OPEN_READWRITE} { db.exec("PRAGMA foreign_keys = ON"); }

    static std::string copied(const TemporaryFolder& folder) {
        fs::copy_file(k_built, folder / "reference.db");
        return (folder / "reference.db").string();
    }
};

std::string fault_of(SQLite::Database& db, const std::string& sql) {
    try {
        db.exec(sql);
    } catch (const SQLite::Exception& fault) {
        return fault.what();
    }
    return "accepted";
}

} // namespace

TEST_CASE("each named constraint refuses what breaks it") {
    Copy copy;
    const auto constraints = constraints_of_schema();
    for (const Row& row : rows_of(k_source / "tests/data/refusals.csv")) {
        const std::string& name = row.at("constraint");
        const std::string& sql = row.at("sql");
        INFO(name << ": " << sql);
        REQUIRE(constraints.contains(name));
        const Constraint& constraint = constraints.at(name);
        copy.db.exec("BEGIN");
        const std::string answer = fault_of(copy.db, sql);
        if (constraint.column.empty()) {
            CHECK(answer == constraint.message);
            copy.db.exec("ROLLBACK");
        } else {
            // a foreign key is looked at when the transaction ends
            CHECK(answer == "accepted");
            CHECK(broken_keys(copy.db, constraint.table) == std::set<std::string>{constraint.column});
            CHECK(fault_of(copy.db, "COMMIT") == "FOREIGN KEY constraint failed");
            copy.db.exec("ROLLBACK");
        }
    }
    CHECK(copy.db.execAndGet("PRAGMA integrity_check").getString() == "ok");
}

TEST_CASE("no constraint is without a refusal") {
    std::set<std::string> refused;
    for (const Row& row : rows_of(k_source / "tests/data/refusals.csv")) {
        refused.insert(row.at("constraint"));
    }
    const auto constraints = constraints_of_schema();
    CHECK(constraints.size() > 300);
    for (const auto& [name, constraint] : constraints) {
        INFO(name << " of table " << constraint.table << " has no row in tests/data/refusals.csv");
        CHECK(refused.contains(name));
    }
}

TEST_CASE("the schema's text and the database agree on their constraints") {
    Copy copy;
    static const std::regex name{R"(\b(?:ck|fk|uq)_\w+)"};
    std::set<std::string> in_database;
    std::size_t strict = 0;
    SQLite::Statement query{copy.db, "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND type IN ('table', 'index')"};
    while (query.executeStep()) {
        const std::string sql = query.getColumn(0).getString();
        for (std::sregex_iterator it{sql.begin(), sql.end(), name}, end; it != end; ++it) {
            in_database.insert(it->str());
        }
        if (sql.starts_with("CREATE TABLE")) {
            INFO(sql);
            CHECK(sql.ends_with("STRICT, WITHOUT ROWID"));
            ++strict;
        }
    }
    std::set<std::string> in_text;
    for (const auto& [constraint, unused] : constraints_of_schema()) {
        in_text.insert(constraint);
    }
    CHECK(in_text == in_database);
    CHECK(strict > 20);
}

TEST_CASE("cells that must be there, and their types") {
    Copy copy;
    const auto refused = [&](const std::string& sql, const std::string& message) {
        INFO(sql);
        CHECK(fault_of(copy.db, sql) == message);
    };
    refused("UPDATE thread SET major_diameter_mm = NULL WHERE code = 'M10'",
            "NOT NULL constraint failed: thread.major_diameter_mm");
    refused("UPDATE thread SET source = NULL WHERE code = 'M10'", "NOT NULL constraint failed: thread.source");
    refused("UPDATE bolt_load SET place = NULL WHERE code = 'M10 8.8'", "NOT NULL constraint failed: bolt_load.place");
    refused("UPDATE housing SET keyed = NULL WHERE code = 'EN AC-46000'", "NOT NULL constraint failed: housing.keyed");
    refused("UPDATE word SET concept = NULL WHERE code = 'axle/en/axle'", "NOT NULL constraint failed: word.concept");
    refused("INSERT INTO authority (code) VALUES ('XX')", "NOT NULL constraint failed: authority.name");
    refused("INSERT INTO authority (code, name) VALUES ('ISO', 'again')", "UNIQUE constraint failed: authority.code");
    refused("UPDATE thread SET major_diameter_mm = 'wide' WHERE code = 'M10'",
            "cannot store TEXT value in REAL column thread.major_diameter_mm");
    refused("UPDATE nut_factor SET value_value = x'00' WHERE code = 'anti-seize'",
            "cannot store BLOB value in REAL column nut_factor.value_value");
    refused("UPDATE source SET title = x'00' WHERE code = 'asme-b1.1'", "cannot store BLOB value in TEXT column source.title");
}
