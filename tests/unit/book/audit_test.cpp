// SPDX-License-Identifier: MIT
// The audit against somebody who knows how the chain is made: a line changed with its own hash computed anew is given away by the
// line after it, and by the figures that the book remembers. What is done with SQL alone stands in tests/cli/life.test.

#include "clampbook/book/impl.hpp"
#include "shop.hpp"

#include <catch2/catch.hpp>

using namespace unit_tests;

namespace {

// Changes the detail of an event and gives it a hash that fits it.
void forge(Shop& shop, std::int64_t seq) {
    SQLite::Database db = shop.raw();
    db.exec("DROP TRIGGER event_is_kept");
    SQLite::Statement query{db, "SELECT previous, at, person, kind, joint, value, detail FROM event WHERE seq = ?"};
    query.bind(1, seq);
    REQUIRE(query.executeStep());
    const auto id = [&](int column) {
        return query.getColumn(column).isNull() ? std::nullopt : std::optional<RecordId>{query.getColumn(column).getInt64()};
    };
    std::string detail = query.getColumn(6).getString();
    detail.replace(detail.find("\":\"") + 3, 1, "X");
    const std::string hash =
        book::event_hash(query.getColumn(0).getString(), seq, {query.getColumn(2).getString(), query.getColumn(1).getString()},
                         query.getColumn(3).getString(), id(4), id(5), detail);
    query.reset();
    SQLite::Statement update{db, "UPDATE event SET detail = ?, hash = ? WHERE seq = ?"};
    update.bind(1, detail);
    update.bind(2, hash);
    update.bind(3, seq);
    update.exec();
}

} // namespace

TEST_CASE("a book that nobody touched is as it was told") {
    Shop shop;
    shop.book.check_value(shop.value, {"32 ± 3 N·m", "Cid", "2026-11-25"}, {"Cid", "2026-11-25T10:15:00Z"});
    const RecordId next = shop.book.add_value(value_of(shop.drain, "35 N·m"), k_stamp);
    shop.book.end_value(shop.value, {next, "bulletin", "Ann", "2026-11-25"}, k_stamp);
    shop.book.end_value(next, {0, "misread", "Ann", "2026-11-25"}, k_stamp);
    CHECK(shop.book.audit().empty());
    CHECK(shop.book.value(shop.value)->superseded_by == next);
    CHECK(shop.book.value(shop.value)->checked_by == "Cid");
}

TEST_CASE("a forged line doesn't fit the one after it") {
    Shop shop;
    forge(shop, 3); // the assembly's
    const auto faults = Book{shop.path, Access::read}.audit();
    REQUIRE(faults.size() == 3);
    CHECK(faults[0].starts_with("event 4 ("));
    CHECK(faults[0].find("does not follow the event before it") != std::string::npos);
    CHECK(faults[1] == "assembly 1: no event tells of it"); // its number was forged
    CHECK(faults[2] == "assembly 0: is gone, and event 3 told of it");
}

TEST_CASE("a forged last line isn't the one that the book remembers") {
    Shop shop;
    forge(shop, 6); // the value's
    const auto faults = Book{shop.path, Access::read}.audit();
    REQUIRE(faults.size() == 2);
    CHECK(faults[0] == "the last event is not the one that the book remembers");
    CHECK(faults[1].starts_with("value 1: its as_written is '32 ± 3 N·m', and event 6 told 'X2 ± 3 N·m'"));
}

TEST_CASE("nothing that the book remembers of itself can be changed unseen") {
    for (const std::string key : {"event.count", "event.head"}) {
        Shop shop;
        shop.raw().exec("UPDATE book_info SET value = value || '0' WHERE key = '" + key + "'");
        CHECK(Book{shop.path, Access::read}.audit().size() == 1);
    }
    Shop shop;
    CHECK(shop.raw().execAndGet("SELECT group_concat(key, ' ') FROM book_info").getString() == "event.count event.head");
    // The day it was made is told by its first event.
    shop.raw().exec("DROP TRIGGER event_is_kept; UPDATE event SET at = '2019' || substr(at, 5) WHERE seq = 1");
    const Book bent{shop.path, Access::read};
    CHECK(bent.info().created_on == "2019-11-25");
    CHECK(bent.audit() ==
          std::vector<std::string>{"event 1 (book made, Ann, 2019-11-25T10:15:00Z): was changed after it was told"});
}

TEST_CASE("a value ends once") {
    Shop shop;
    shop.book.end_value(shop.value, {0, "misread", "Ann", "2026-11-25"}, k_stamp);
    CHECK(refusal(ErrorKind::conflict, [&] {
              shop.book.end_value(shop.value, {0, "again", "Ann", "2026-11-25"}, k_stamp);
              return 0;
          }) != "accepted");
    shop.book.check_value(shop.value, {"32 N·m", "Ann", "2026-11-25"}, k_stamp);
    CHECK(refusal(ErrorKind::conflict, [&] {
              shop.book.check_value(shop.value, {"32 N·m", "Ann", "2026-11-25"}, k_stamp);
              return 0;
          }) != "accepted");
}

TEST_CASE("who checked or ended a value, and when, is held against what was told") {
    const std::pair<const char*, const char*> changes[] = {
        {"DROP TRIGGER value_check_is_kept; UPDATE value_check SET checked_on = '2026-01-01'",
         "the check of value 1: its checked_on is '2026-01-01', and event 8 told '2026-11-20'"},
        {"DROP TRIGGER value_check_is_kept; UPDATE value_check SET checked_by = 1",
         "the check of value 1: its checked_by is 'Bob', and event 8 told 'Cid'"},
        {"DROP TRIGGER value_end_is_kept; UPDATE value_end SET ended_on = '2026-01-01'",
         "the end of value 2: its ended_on is '2026-01-01', and event 9 told '2026-11-21'"},
        {"DROP TRIGGER value_end_is_kept; UPDATE value_end SET ended_by = 1",
         "the end of value 2: its ended_by is 'Bob', and event 9 told 'Dee'"},
    };
    for (const auto& [sql, fault] : changes) {
        INFO(sql);
        Shop shop;
        const RecordId other = shop.book.add_value(value_of(shop.cover, "24 N·m"), k_stamp);
        shop.book.check_value(shop.value, {"32 ± 3 N·m", "Cid", "2026-11-20"}, k_stamp);
        shop.book.end_value(other, {0, "misread", "Dee", "2026-11-21"}, k_stamp);
        CHECK(shop.book.audit().empty());
        shop.raw().exec(sql);
        CHECK(Book{shop.path, Access::read}.audit() == std::vector<std::string>{fault});
    }
}

TEST_CASE("what was told of values after a revision, and how many events a day began with") {
    Shop shop;
    const auto begun = static_cast<std::int64_t>(shop.book.info().events);
    shop.book.check_value(shop.value, {"32 ± 3 N·m", "Cid", "2026-11-26"}, {"Cid", "2026-11-26T00:00:00Z", "file.csv"});
    const auto told = shop.book.told_of_values_after(begun);
    REQUIRE(told.size() == 1);
    CHECK(told[0].kind == "value checked");
    CHECK(told[0].value == shop.value);
    CHECK(told[0].joint == shop.drain);
    CHECK(told[0].facts.back() == std::pair<std::string, std::string>{"origin", "file.csv"});
    CHECK(shop.book.told_of_values_after(begun - 1).size() == 2);
    CHECK(shop.book.told_of_values_after(begun + 1).empty());
    CHECK(shop.book.events_before("2026-11-25") == 0);
    CHECK(shop.book.events_before("2026-11-26") == begun);
    CHECK(shop.book.events_before("2026-11-27") == begun + 1);
}
