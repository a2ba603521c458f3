// SPDX-License-Identifier: MIT
// What a file is held to before anything in it is believed: a book may come from anybody. Its layout has to be ours word for
// word, since a trigger, a view or a check of somebody else's would be run by us.

#include "clampbook/base/text.hpp"
#include "clampbook/book/impl.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>

#include <algorithm>
#include <array>

namespace clampbook::book {
namespace {

// A note is a few lines; what is longer than this was not typed, and would fill the memory.
constexpr int k_longest_text = 1'000'000; // bytes

// What the virtual table of the search words makes for itself.
constexpr std::array<std::string_view, 5> k_shadows{
    "CREATE TABLE 'joint_words_data'(id INTEGER PRIMARY KEY, block BLOB)",
    "CREATE TABLE 'joint_words_idx'(segid, term, pgno, PRIMARY KEY(segid, term)) WITHOUT ROWID",
    "CREATE TABLE 'joint_words_content'(id INTEGER PRIMARY KEY, c0, c1, c2, c3, c4, c5)",
    "CREATE TABLE 'joint_words_docsize'(id INTEGER PRIMARY KEY, sz BLOB)",
    "CREATE TABLE 'joint_words_config'(k PRIMARY KEY, v) WITHOUT ROWID",
};

// A name out of a file of which nothing is known yet, as it may be shown.
std::string shown(const std::string& name) {
    constexpr std::size_t k_longest_name = 60;
    return name.size() > k_longest_name || !is_utf8(name) || has_control(name) ? "something" : "'" + name + "'";
}

} // namespace

void restrain(SQLite::Database& db) {
    sqlite3* const handle = db.getHandle();
    sqlite3_db_config(handle, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_ENABLE_VIEW, 0, nullptr);
    sqlite3_limit(handle, SQLITE_LIMIT_LENGTH, k_longest_text);
    db.exec("PRAGMA cell_size_check = ON");
}

void require_layout(SQLite::Database& db, const std::string& path) {
    const std::string_view ours = schema_text();
    SQLite::Statement parts{db, "SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL"};
    while (parts.executeStep()) {
        const std::string sql = parts.getColumn(1).getString();
        if (ours.find(sql + ";") == std::string_view::npos && std::ranges::find(k_shadows, sql) == k_shadows.end()) {
            throw error(ErrorKind::invalid_data, "'{}' is no book as clampbook makes them: {} in it is not ours", path,
                        shown(parts.getColumn(0).getString()));
        }
    }
}

std::vector<std::string> missing_parts(SQLite::Database& db) {
    std::vector<std::string> faults;
    SQLite::Statement find{db, "SELECT 1 FROM sqlite_schema WHERE sql = ?"};
    const std::string_view ours = schema_text();
    constexpr std::string_view k_begin = "\nCREATE ";
    for (std::size_t at = ours.find(k_begin); at != std::string_view::npos; at = ours.find(k_begin, at + 1)) {
        const std::string statement{ours.substr(at + 1, ours.find(";\n", at) - at - 1)};
        find.bind(1, statement);
        if (!find.executeStep()) {
            faults.push_back("a part of the layout is missing: " + statement.substr(0, statement.find_first_of("(\n")));
        }
        find.reset();
    }
    return faults;
}

} // namespace clampbook::book
