// SPDX-License-Identifier: MIT
#include "clampbook/reference/content.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/digest.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <string_view>

namespace clampbook::reference {
namespace {

// As an SQL name; a file that somebody made may name its tables anyhow.
std::string quoted(const std::string& name) {
    std::string out = "\"";
    for (const char c : name) {
        out += c == '"' ? std::string{"\"\""} : std::string{c};
    }
    return out + "\"";
}

} // namespace

std::vector<std::string> tables_of(SQLite::Database& db) {
    SQLite::Statement query{db, "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name"};
    std::vector<std::string> names;
    while (query.executeStep()) {
        names.push_back(query.getColumn(0).getString());
    }
    return names;
}

std::string content_hash(SQLite::Database& db) {
    Sha256 hash;
    for (const std::string& table : tables_of(db)) {
        if (table == "metadata") {
            continue;
        }
        hash.feed("table " + table + "\n");
        SQLite::Statement query{db, "SELECT * FROM " + quoted(table)}; // WITHOUT ROWID: in the order of the primary key
        while (query.executeStep()) {
            for (int i = 0; i < query.getColumnCount(); ++i) {
                const SQLite::Column cell = query.getColumn(i);
                hash.feed(cell.isNull() ? "-" : cell.isFloat() ? "r" + print_shortest(cell.getDouble()) : "t" + cell.getString());
                hash.feed("\x1f");
            }
            hash.feed("\n");
        }
    }
    return hex_of(hash.digest());
}

} // namespace clampbook::reference
