// SPDX-License-Identifier: MIT
#pragma once

// A small book in a folder of its own, and ways to look at it and change it behind the program's back.

#include "../../data/support.hpp"
#include "clampbook/book/book.hpp"
#include "support.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

namespace unit_tests {

using namespace clampbook;
using book::Access;
using book::Book;
namespace fs = std::filesystem;

inline const book::Stamp k_stamp{"Ann", "2026-11-25T10:15:00Z"};

inline Value value_of(RecordId joint, const std::string& text) {
    Value value;
    value.joint = joint;
    value.tightening = read_tightening(text);
    value.entered_by = "Bob";
    value.entered_on = "2026-11-24";
    return value;
}

// A book with a machine, an assembly and two joints, the first with a value.
struct Shop {
    data_tests::TemporaryFolder folder;
    std::string path = (folder / "book.db").string();
    Book book = Book::create(path, k_stamp);
    RecordId machine = book.add_machine({0, "Maker", "Carrier A", "wide", "1999–2004", "K7", ""}, k_stamp);
    RecordId assembly = book.add_assembly({0, machine, "Rear Axle", ""}, k_stamp);
    RecordId drain = add_joint("drain plug", Role::drain, "M18x1.5");
    RecordId cover = add_joint("cover screws", Role::cover, "M8");
    RecordId value = book.add_value(value_of(drain, "32 ± 3 N·m"), k_stamp);

    RecordId add_joint(const std::string& name, Role role, const std::string& thread) {
        Joint joint;
        joint.assembly = assembly;
        joint.name = name;
        joint.role = role;
        joint.thread = thread;
        return book.add_joint(joint, k_stamp);
    }
    [[nodiscard]] SQLite::Database raw() const { return {path, SQLite::OPEN_READWRITE}; }
    // Shuts the book, changes the file behind its back, and tells what the book says of itself then.
    std::vector<std::string> faults_after(const std::string& sql) {
        raw().exec(sql);
        return Book{path, Access::read}.verify();
    }
};

// Everything in a book's tables, so that two books can be compared.
inline std::string content_of(const std::string& path) {
    SQLite::Database db{path, SQLite::OPEN_READONLY};
    std::vector<std::string> tables;
    SQLite::Statement names{db, "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name"};
    while (names.executeStep()) {
        tables.push_back(names.getColumn(0).getString());
    }
    std::string out;
    for (const std::string& table : tables) {
        SQLite::Statement rows{db, "SELECT * FROM " + table};
        while (rows.executeStep()) {
            out += table;
            for (int i = 0; i < rows.getColumnCount(); ++i) {
                out += "|" + rows.getColumn(i).getString();
            }
            out += "\n";
        }
    }
    return out;
}

} // namespace unit_tests
