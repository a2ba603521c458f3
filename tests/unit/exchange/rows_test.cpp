// SPDX-License-Identifier: MIT
// The exchange file's columns: the documented names and no others, in any order, each cell in its place.

#include "clampbook/exchange/rows.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <sstream>
#include <vector>

namespace {

using namespace clampbook;
using namespace clampbook::exchange;

const std::string k_documented = // design of the exchange file, in its order
    "machine_maker,machine_model,machine_variant,assembly,joint,role,count,thread,property_class,form,ring,housing,engagement_mm,"
    "safety_critical,tightening,label,source_kind,source_title,source_number,source_edition,source_date,page,entered_by,entered_"
    "on,note,value_note,confirmed";
const std::string k_needed = "machine_maker,machine_model,assembly,joint,tightening,label,entered_by";

std::vector<JointRow> rows_of(const std::string& text) {
    std::istringstream in{text};
    std::vector<JointRow> rows;
    read_joint_rows(in, "sheet.csv", [&](const JointRow& row) { rows.push_back(row); });
    return rows;
}

std::string refused(const std::string& text) {
    return unit_tests::refusal(ErrorKind::invalid_data, [&] { return rows_of(text); });
}

} // namespace

TEST_CASE("the columns are those that are documented") {
    std::string names;
    std::string needed;
    for (const JointColumn& column : joint_columns()) {
        names += (names.empty() ? "" : ",") + std::string{column.name};
        if (column.needed) {
            needed += (needed.empty() ? "" : ",") + std::string{column.name};
        }
    }
    CHECK(names == k_documented);
    CHECK(needed == k_needed);
}

TEST_CASE("each cell comes into its own place, whatever the order of the columns") {
    std::string header;
    std::string cells;
    std::string header_back;
    std::string cells_back;
    for (const JointColumn& column : joint_columns()) {
        const std::string name{column.name};
        const std::string comma = header.empty() ? "" : ",";
        header += comma + name;
        cells += comma + "the " + name;
        header_back.insert(0, name + comma);
        cells_back.insert(0, "the " + name + comma);
    }
    for (const std::string& text : {header + "\n" + cells + "\n", header_back + "\n" + cells_back + "\n"}) {
        const auto rows = rows_of(text);
        REQUIRE(rows.size() == 1);
        CHECK(rows[0].line == 2);
        for (const JointColumn& column : joint_columns()) {
            CHECK(rows[0].*column.cell == "the " + std::string{column.name});
        }
    }
}

TEST_CASE("columns that are not there give empty cells, and white space at the ends goes") {
    const auto rows = rows_of(k_needed + "\nA,B,C,D,\" 32 N·m \",shop,E\n\"A\nA\",B,C,D,33 N·m,shop,E\nA,B,C,D,34 N·m,shop,E\n");
    REQUIRE(rows.size() == 3);
    CHECK(rows[0].tightening == "32 N·m");
    CHECK(rows[0].page.empty());
    CHECK(rows[1].line == 3);
    CHECK(rows[2].line == 5);
}

TEST_CASE("a column that nobody knows, and one that is missing, are named") {
    CHECK(refused(k_needed + ",tighten\n") == "sheet.csv:1: the column 'tighten' is not known (did you mean 'tightening'?)");
    CHECK(refused(k_needed + ",colour\n") == "sheet.csv:1: the column 'colour' is not known");
    CHECK_THAT(refused("Machine_maker\n"),
               Catch::Contains("the column 'Machine_maker' is not known (did you mean 'machine_maker'?)"));
    std::istringstream names{k_needed};
    for (std::string name; std::getline(names, name, ',');) {
        std::string header = k_needed + ",";
        header.erase(header.find(name + ","), name.size() + 1);
        header.pop_back();
        CHECK_THAT(refused(header + "\n"), Catch::Contains("sheet.csv: the column '" + name + "' is missing"));
    }
    CHECK(refused(k_needed + "\nA,B\n") == "sheet.csv:2: 2 cells, where the header has 7");
}
