// SPDX-License-Identifier: MIT
// A damaged reference file is refused or answers; it never ends the program and never throws anything but invalid_data.

#include "clampbook/base/error.hpp"
#include "clampbook/model/thread.hpp"
#include "clampbook/reference/reference.hpp"
#include "support.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <catch2/catch.hpp>

#include <algorithm>

namespace {

using namespace data_tests;
using clampbook::ErrorKind;
using clampbook::reference::Reference;

enum class Outcome { answered, refused };

// Opens the file and asks everything that the reader can be asked. A name that the damage has changed may be found no
// more: that is an answer.
Outcome ask(const fs::path& path) {
    const auto lookup = [](auto&& question) {
        try {
            question();
        } catch (const clampbook::Error& fault) {
            if (fault.kind() != ErrorKind::not_found) {
                throw;
            }
        }
    };
    try {
        const Reference reference{path.string()};
        for (const auto& topic : reference.topics()) {
            static_cast<void>(reference.table(topic.name));
        }
        static_cast<void>(reference.words());
        static_cast<void>(reference.nut_factors());
        static_cast<void>(reference.class_names());
        static_cast<void>(reference.metadata("content.sha256"));
        for (const char* name : {"M10", "M18x1.5", "3/8-16 UNC", "G1/2", "R1/2", "1/2-14 NPT"}) {
            lookup([&] { static_cast<void>(reference.thread(clampbook::read_thread(name))); });
        }
        lookup([&] {
            const auto m10 = reference.thread(clampbook::read_thread("M10"));
            static_cast<void>(reference.property_class(reference.class_name("8.8"), m10));
        });
        lookup([&] { static_cast<void>(reference.housing("EN AC-46000")); });
        lookup([&] { static_cast<void>(reference.ring_material("copper")); });
        lookup([&] { static_cast<void>(reference.plug_form("collar hexagon")); });
        static_cast<void>(reference.load("M10", "8.8"));
        static_cast<void>(reference.tolerance("es g", 10 * clampbook::millimetre, 1.5 * clampbook::millimetre));
    } catch (const clampbook::Error& fault) {
        INFO(fault.what());
        REQUIRE(fault.kind() == ErrorKind::invalid_data);
        return Outcome::refused;
    }
    return Outcome::answered;
}

std::string refusal(const fs::path& path) {
    try {
        const Reference reference{path.string()};
    } catch (const clampbook::Error& fault) {
        CHECK(fault.kind() == ErrorKind::invalid_data);
        return fault.what();
    }
    return "accepted";
}

} // namespace

TEST_CASE("the whole file answers") { CHECK(ask(k_built) == Outcome::answered); }

TEST_CASE("a file cut short is refused") {
    const TemporaryFolder folder;
    const std::string whole = read_file(k_built);
    std::mt19937_64 random{20};
    for (int i = 0; i < 60; ++i) {
        const std::size_t length = i == 0 ? 0 : i == 1 ? 16 : i == 2 ? whole.size() - 1 : random() % whole.size();
        INFO("cut to " << length << " bytes");
        write_file(folder / "cut.db", whole.substr(0, length));
        CHECK(ask(folder / "cut.db") == Outcome::refused);
    }
}

TEST_CASE("a file with one bit turned is refused or answers") {
    const TemporaryFolder folder;
    const std::string whole = read_file(k_built);
    std::mt19937_64 random{1};
    int refused = 0;
    for (int i = 0; i < 100; ++i) {
        std::string bytes = whole;
        // every other one in the header and the schema, where most of it matters
        const std::size_t at = random() % (i % 2 == 0 ? std::size_t{100} : whole.size());
        const auto bit = static_cast<unsigned>(random() % 8);
        bytes[at] = static_cast<char>(static_cast<unsigned char>(bytes[at]) ^ (1U << bit));
        INFO("bit " << bit << " of byte " << at);
        write_file(folder / "bit.db", bytes);
        refused += ask(folder / "bit.db") == Outcome::refused ? 1 : 0;
    }
    CHECK(refused > 0);
}

TEST_CASE("a file with a page of noise is refused or answers") {
    const TemporaryFolder folder;
    const std::string whole = read_file(k_built);
    std::mt19937_64 random{2};
    int refused = 0;
    for (int i = 0; i < 40; ++i) {
        std::string bytes = whole;
        const std::size_t length = 1 + random() % 4096;
        const std::size_t at = random() % (whole.size() - length);
        std::generate_n(bytes.begin() + static_cast<std::ptrdiff_t>(at), length, [&] { return static_cast<char>(random()); });
        INFO(length << " bytes of noise at " << at);
        write_file(folder / "noise.db", bytes);
        refused += ask(folder / "noise.db") == Outcome::refused ? 1 : 0;
    }
    CHECK(refused > 20);
}

TEST_CASE("another layout is refused with both numbers") {
    const TemporaryFolder folder;
    fs::copy_file(k_built, folder / "other.db");
    const auto set = [&](const std::string& sql) {
        SQLite::Database db{(folder / "other.db").string(), SQLite::OPEN_READWRITE};
        db.exec(sql);
    };
    set("UPDATE metadata SET value = '7' WHERE key = 'layout.major'");
    CHECK(refusal(folder / "other.db") == "'" + (folder / "other.db").string() + "' has layout 7, this program reads layout 1");
    set("DELETE FROM metadata WHERE key = 'layout.major'");
    CHECK(refusal(folder / "other.db") == (folder / "other.db").string() + ": its metadata lack 'layout.major'");
    set("DROP TABLE metadata");
    CHECK(refusal(folder / "other.db") == "'" + (folder / "other.db").string() + "' is no reference database of clampbook");
}

TEST_CASE("a file whose rows break their schema is refused") {
    const TemporaryFolder folder;
    fs::copy_file(k_built, folder / "other.db");
    const auto with = [&](const std::string& sql) {
        SQLite::Database db{(folder / "other.db").string(), SQLite::OPEN_READWRITE};
        db.exec("PRAGMA ignore_check_constraints = ON; PRAGMA writable_schema = ON; " + sql);
    };
    // the column may be empty for as long as it takes to empty it
    const std::string strict = "major_diameter_mm REAL NOT NULL";
    with("UPDATE sqlite_schema SET sql = replace(sql, '" + strict + "', 'major_diameter_mm REAL  ') WHERE name = 'thread'");
    with("UPDATE thread SET major_diameter_mm = NULL WHERE code = 'M10'");
    with("UPDATE sqlite_schema SET sql = replace(sql, 'major_diameter_mm REAL  ', '" + strict + "') WHERE name = 'thread'");
    CHECK(refusal(folder / "other.db") ==
          "'" + (folder / "other.db").string() + "' is damaged: NULL value in thread.major_diameter_mm");
}

TEST_CASE("what is no database at all is refused") {
    const TemporaryFolder folder;
    write_file(folder / "text.db", "A letter, not a database.\n" + std::string(2000, 'x'));
    CHECK_THAT(refusal(folder / "text.db"),
               Catch::Contains("text.db: not a whole reference database") && Catch::Contains("not a database"));
    write_file(folder / "short.db", "SQLite format 3");
    CHECK_THAT(refusal(folder / "short.db"), Catch::Contains("short.db: not a whole reference database"));
    fs::create_directory(folder / "folder.db");
    CHECK(refusal(folder / "folder.db") ==
          "'" + (folder / "folder.db").string() + "' is no file; a reference database is wanted there");
    CHECK(refusal(folder / "missing.db") ==
          "'" + (folder / "missing.db").string() + "' is no file; a reference database is wanted there");
    CHECK_FALSE(fs::exists(folder / "missing.db"));
    CHECK(refusal("") == "'' is no file; a reference database is wanted there");
    const fs::path long_name = folder / std::string(300, 'x');
    CHECK_THAT(refusal(long_name), Catch::Contains("is no file; a reference database is wanted there"));
}
