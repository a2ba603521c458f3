// SPDX-License-Identifier: MIT
// The curated tables as `list` shows them: all of them list, and no figure stands there without source, place, basis and
// how it was keyed.

#include "clampbook/reference/reference.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

namespace {

using namespace clampbook;
using namespace clampbook::reference;

std::optional<std::size_t> column_of(const Table& table, std::string_view key) {
    const auto found = std::ranges::find(table.columns, key, &TableColumn::key);
    return found == table.columns.end() ? std::nullopt : std::optional{static_cast<std::size_t>(found - table.columns.begin())};
}

std::string cell(const Table& table, std::size_t row, std::string_view key) {
    const auto column = column_of(table, key);
    return column ? table.rows[row][*column].text : std::string{};
}

} // namespace

TEST_CASE("every topic lists as many rows as it says, each cell under a column of its own") {
    const Reference reference;
    const auto topics = reference.topics();
    CHECK(topics.size() == 29);
    std::set<std::string> names;
    for (const Topic& topic : topics) {
        INFO(topic.name);
        CHECK(names.insert(topic.name).second);
        const Table table = reference.table(topic.name);
        CHECK(table.topic == topic.name);
        CHECK(table.title == topic.title);
        CHECK(table.rows.size() == topic.rows);
        CHECK(topic.rows > 0);
        std::set<std::string> keys;
        for (const TableColumn& column : table.columns) {
            CHECK(keys.insert(column.key).second);
            CHECK_FALSE(column.key.ends_with("_print"));
        }
        const bool whole = std::ranges::all_of(table.rows, [&](const auto& row) { return row.size() == table.columns.size(); });
        CHECK(whole);
    }
}

TEST_CASE("every printed figure has its number, and every number its print") {
    const Reference reference;
    std::size_t figures = 0;
    for (const Topic& topic : reference.topics()) {
        const Table table = reference.table(topic.name);
        for (std::size_t c = 0; c < table.columns.size(); ++c) {
            const bool quantity = table.columns[c].is_quantity;
            INFO(topic.name << " " << table.columns[c].key);
            CHECK((quantity || table.columns[c].unit.empty()));
            std::size_t alone = 0;
            for (const auto& row : table.rows) {
                alone += row[c].value.has_value() != (quantity && !row[c].text.empty()) ? 1U : 0U;
                figures += row[c].value ? 1U : 0U;
            }
            CHECK(alone == 0);
        }
    }
    CHECK(figures > 3000);
}

TEST_CASE("every row that holds figures says source, place, basis and how it was keyed") {
    const Reference reference;
    const Table sources = reference.table("sources");
    std::set<std::string> known;
    for (std::size_t i = 0; i < sources.rows.size(); ++i) {
        known.insert(cell(sources, i, "code"));
        CHECK_FALSE(cell(sources, i, "title").empty());
    }
    const std::set<std::string> bases{"published", "derived", "practice"};
    const std::set<std::string> ways{"document", "reproduction", "memory", "computed"};
    std::set<std::string> used;
    for (const Topic& topic : reference.topics()) {
        const Table table = reference.table(topic.name);
        // Spellings, differences of print and the sources themselves are about other rows.
        const bool own_source = topic.name != "aliases" && topic.name != "differences" && topic.name != "sources";
        CHECK(own_source == column_of(table, "source").has_value());
        CHECK((own_source || std::ranges::none_of(table.columns, &TableColumn::is_quantity)));
        for (std::size_t i = 0; own_source && i < table.rows.size(); ++i) {
            INFO(topic.name << " row " << i + 1 << ": " << table.rows[i].front().text << " " << cell(table, i, "code"));
            CHECK(known.contains(cell(table, i, "source")));
            used.insert(cell(table, i, "source"));
            CHECK_FALSE(cell(table, i, "place").empty());
            CHECK(bases.contains(cell(table, i, "basis")));
            CHECK(ways.contains(cell(table, i, "keyed")));
        }
    }
    CHECK(used.size() > 40);
}

TEST_CASE("a figure with a source of its own beside the row's names one that exists") {
    const Reference reference;
    const Table sources = reference.table("sources");
    std::set<std::string> known;
    for (std::size_t i = 0; i < sources.rows.size(); ++i) {
        known.insert(cell(sources, i, "code"));
    }
    struct Own {
        const char* topic;
        const char* figure;
        const char* stem;
    };
    for (const Own& own : {Own{"ring-materials", "seating_stress", "seating"}, Own{"housings", "shear_strength", "shear"},
                           Own{"housings", "modulus", "elastic"}, Own{"housings", "expansion", "elastic"},
                           Own{"housings", "limiting_pressure", "pressure"}}) {
        const Table table = reference.table(own.topic);
        std::size_t figures = 0;
        for (std::size_t i = 0; i < table.rows.size(); ++i) {
            const bool there = !cell(table, i, own.figure).empty();
            const std::string stem = own.stem;
            INFO(own.topic << " " << own.figure << ", " << cell(table, i, "code"));
            CHECK((!there || known.contains(cell(table, i, stem + "_source"))));
            CHECK((!there || !cell(table, i, stem + "_place").empty()));
            CHECK((!there || !cell(table, i, stem + "_keyed").empty()));
            figures += there ? 1U : 0U;
        }
        CHECK(figures > 0);
    }
}

TEST_CASE("a topic is named as it is listed, and an unknown one is told with all") {
    const Reference reference;
    CHECK(reference.table("Nut-Factors").topic == "nut-factors");
    CHECK(reference.table("bolt_load").topic == "loads");
    const std::string unknown = unit_tests::refusal(ErrorKind::not_found, [&] { return reference.table("thread_s"); });
    CHECK(unknown.starts_with("'thread_s' is no table (did you mean 'threads'?); the tables are threads, tolerances, "));
    for (const Topic& topic : reference.topics()) {
        CHECK(unknown.find(topic.name) != std::string::npos);
    }
    const Table threads = reference.table("threads");
    const auto pitch = column_of(threads, "pitch");
    REQUIRE(pitch);
    CHECK(threads.columns[*pitch].unit == "mm");
    CHECK(threads.columns[*pitch].is_quantity);
}
