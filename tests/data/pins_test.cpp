// SPDX-License-Identifier: MIT
// A second keying: figures typed again from the sources stand in pins.csv and must be what the database holds, to the
// last letter of their print.

#include "support.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <catch2/catch.hpp>

#include <set>

TEST_CASE("the figures keyed a second time stand in the database as printed") {
    using namespace data_tests;
    SQLite::Database db{k_built.string(), SQLite::OPEN_READONLY};
    const auto pins = rows_of(k_source / "tests/data/pins.csv");
    CHECK(pins.size() >= 200);
    std::set<std::string> seen;
    for (const Row& pin : pins) {
        INFO(pin.at("table") << " " << pin.at("authority") << " " << pin.at("code") << ": " << pin.at("column"));
        CHECK(seen.insert(pin.at("table") + "|" + pin.at("authority") + "|" + pin.at("code") + "|" + pin.at("column")).second);
        SQLite::Statement query{db, "SELECT " + pin.at("column") + "_print FROM " + pin.at("table") +
                                        " WHERE authority = ? AND code = ?"};
        query.bind(1, pin.at("authority"));
        query.bind(2, pin.at("code"));
        REQUIRE(query.executeStep());
        CHECK(query.getColumn(0).getString() == pin.at("print"));
    }
}
