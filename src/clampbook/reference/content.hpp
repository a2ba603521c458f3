// SPDX-License-Identifier: MIT
#pragma once

// The content hash of a curated database: what the builder writes into it, and what is computed again where somebody asks whether a
// file still holds what was built. Not installed.

#include <string>
#include <vector>

namespace SQLite {
class Database;
} // namespace SQLite

namespace clampbook::reference {

/// Names of the tables, sorted.
[[nodiscard]] std::vector<std::string> tables_of(SQLite::Database& db);

/// SHA-256 in hexadecimal digits of every table but `metadata`, rows in the order of their key, cells with their type: a change
/// of any cell changes it. Throws what the database library throws.
[[nodiscard]] std::string content_hash(SQLite::Database& db);

} // namespace clampbook::reference
