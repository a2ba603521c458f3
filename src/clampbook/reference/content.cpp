// SPDX-License-Identifier: MIT
#include "clampbook/reference/content.hpp"

#include "clampbook/base/decimal.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sodium.h>

#include <array>
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
    crypto_hash_sha256_state state;
    crypto_hash_sha256_init(&state);
    const auto feed = [&](std::string_view text) {
        crypto_hash_sha256_update(&state, reinterpret_cast<const unsigned char*>(text.data()), text.size());
    };
    for (const std::string& table : tables_of(db)) {
        if (table == "metadata") {
            continue;
        }
        feed("table " + table + "\n");
        SQLite::Statement query{db, "SELECT * FROM " + quoted(table)}; // WITHOUT ROWID: in the order of the primary key
        while (query.executeStep()) {
            for (int i = 0; i < query.getColumnCount(); ++i) {
                const SQLite::Column cell = query.getColumn(i);
                feed(cell.isNull() ? "-" : cell.isFloat() ? "r" + print_shortest(cell.getDouble()) : "t" + cell.getString());
                feed("\x1f");
            }
            feed("\n");
        }
    }
    std::array<unsigned char, crypto_hash_sha256_BYTES> digest{};
    crypto_hash_sha256_final(&state, digest.data());
    std::array<char, crypto_hash_sha256_BYTES * 2 + 1> text{};
    sodium_bin2hex(text.data(), text.size(), digest.data(), digest.size());
    return text.data();
}

} // namespace clampbook::reference
