// SPDX-License-Identifier: MIT
// The layout numbers of the schema and of the reader are one and the same.

#include "clampbook/reference/impl.hpp"
#include "clampbook/reference/reference.hpp"
#include "support.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <catch2/catch.hpp>

#include <regex>

TEST_CASE("the schema's layout is the one that the reader knows") {
    using namespace data_tests;
    const clampbook::reference::Reference embedded;
    const clampbook::reference::Reference built{k_built.string()};
    for (const auto* reference : {&embedded, &built}) {
        CHECK(reference->metadata("layout.major") == std::to_string(clampbook::reference::k_layout_major));
        CHECK(reference->metadata("layout.minor") == std::to_string(clampbook::reference::k_layout_minor));
    }
}

TEST_CASE("the metadata are complete, and the embedded database is the built one") {
    using namespace data_tests;
    const clampbook::reference::Reference embedded;
    SQLite::Database db{k_built.string(), SQLite::OPEN_READONLY};
    SQLite::Statement query{db, "SELECT key, value FROM metadata"};
    std::size_t lines = 0;
    while (query.executeStep()) {
        INFO(query.getColumn(0).getString());
        CHECK(embedded.metadata(query.getColumn(0).getString()) == query.getColumn(1).getString());
        ++lines;
    }
    CHECK(lines == 6);
    CHECK(embedded.metadata("content.sha256") + "\n" == read_file(k_hash_file));
    CHECK(std::regex_match(embedded.metadata("dataset.version"), std::regex{R"(\d{4}\.\d+)"}));
    CHECK(std::regex_match(embedded.metadata("dataset.date"), std::regex{R"(\d{4}-\d{2}-\d{2})"}));
    CHECK(embedded.metadata("dataset.date").starts_with(embedded.metadata("dataset.version").substr(0, 4)));
}
