// SPDX-License-Identifier: MIT
#pragma once

// Which foreign keys a table's rows break: SQLite's own refusal does not name them.

#include <SQLiteCpp/SQLiteCpp.h>

#include <map>
#include <set>
#include <string>

namespace data_tests {

/// The columns of the foreign keys that the table's rows break.
inline std::set<std::string> broken_keys(SQLite::Database& db, const std::string& table) {
    std::map<int, std::string> columns;
    SQLite::Statement list{db, "PRAGMA foreign_key_list(" + table + ")"};
    while (list.executeStep()) {
        columns[list.getColumn(0).getInt()] = list.getColumn(3).getString();
    }
    std::set<std::string> broken;
    SQLite::Statement check{db, "PRAGMA foreign_key_check(" + table + ")"};
    while (check.executeStep()) {
        broken.insert(columns.at(check.getColumn(3).getInt()));
    }
    return broken;
}

} // namespace data_tests
