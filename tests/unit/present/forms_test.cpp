// SPDX-License-Identifier: MIT
// Documents in their forms: JSON with its stable keys and no figure without origin, text that fits 80 columns, CSV that
// reads back.

#include "../../data/support.hpp"
#include "clampbook/answer/calculate.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/exchange/csv.hpp"
#include "clampbook/intake/intake.hpp"
#include "clampbook/present/present.hpp"
#include "demo.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <random>

namespace {

using namespace clampbook;
using Catch::WithinRel;
using unit_tests::curated;
using unit_tests::demo;
using Json = nlohmann::ordered_json;

Json parsed(const std::string& text, const std::string& schema) {
    CHECK(text.ends_with("}\n"));
    Json json = Json::parse(text);
    CHECK(json.begin().key() == "schema");
    CHECK(json.at("schema") == "clampbook/" + schema + "/v1");
    return json;
}

void has_keys(const Json& json, std::initializer_list<const char*> keys) {
    for (const char* key : keys) {
        INFO(key);
        CHECK(json.contains(key));
    }
}

// Walks to every number: it must be the value of a figure that says its label and where it comes from.
std::size_t figures_with_origin(const Json& json, const std::string& at) {
    INFO(at);
    if (json.is_object() && json.contains("value")) {
        CHECK(json.at("value").is_number());
        CHECK(json.contains("print"));
        CHECK(json.contains("label"));
        const bool cited = json.contains("citation") && !json.at("citation").at("source").get<std::string>().empty() &&
                           !json.at("citation").at("place").get<std::string>().empty();
        CHECK((cited || json.contains("basis")));
        return 1;
    }
    CHECK_FALSE(json.is_number());
    std::size_t figures = 0;
    if (json.is_structured()) {
        for (const auto& [key, inner] : json.items()) {
            figures += figures_with_origin(inner, at + "." + key);
        }
    }
    return figures;
}

// The first line of the text that is wider than a terminal.
std::string too_wide(const std::string& text) {
    for (const std::string& line : split(text, '\n')) {
        if (display_width(line) > 80) {
            return line;
        }
    }
    return {};
}

struct Screw {
    std::string thread;
    std::string property_class;
};

// Every screw of which the reference prints loads, and some of which it does not.
std::vector<Screw> screws() {
    std::vector<Screw> out{{"M8", "A2-70"}, {"M20", "A4-50"}, {"M39", "A4-100"}, {"M27x2", "4.6"}};
    const reference::Table loads = curated().table("loads");
    const auto column = [&](std::string_view key) {
        return static_cast<std::size_t>(std::ranges::find(loads.columns, key, &reference::TableColumn::key) -
                                        loads.columns.begin());
    };
    for (const auto& row : loads.rows) {
        out.push_back({row.at(column("thread")).text, row.at(column("class")).text});
    }
    return out;
}

void round_trips(const answer::TableAnswer& table) {
    INFO(table.title);
    std::istringstream in{present::csv(table)};
    const exchange::CsvTable back = exchange::read_csv(in, "table.csv");
    REQUIRE(back.rows.size() == table.rows.size());
    std::size_t differences = 0;
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
        std::size_t at = 0;
        for (std::size_t c = 0; c < table.columns.size(); ++c) {
            const answer::TableColumn& column = table.columns[c];
            const answer::TableCell& cell = table.rows[r][c];
            const std::string& read = back.rows[r].cells.at(at);
            if (column.number) {
                const auto number = read_decimal(read);
                differences += (number ? std::optional{number->value} : std::nullopt) != cell.number ? 1U : 0U;
            } else {
                differences += read != cell.text ? 1U : 0U;
            }
            CHECK(back.header.columns.at(at) == column.key + (column.unit.empty() ? "" : "[" + column.unit + "]"));
            if (!column.unit.empty()) {
                ++at;
                differences += back.rows[r].cells.at(at) != cell.text ? 1U : 0U;
            }
            ++at;
        }
        CHECK(at == back.header.columns.size());
    }
    CHECK(differences == 0);
}

} // namespace

TEST_CASE("JSON of thread, strength, derive and convert has its stable keys") {
    has_keys(parsed(present::json(answer::thread(curated(), "M18x1.5")), "thread"),
             {"major_diameter", "pitch", "pitch_diameter", "minor_diameter_internal", "minor_diameter_external", "stress_area"});
    has_keys(parsed(present::json(answer::strength(curated(), "M10", "8.8")), "strength"),
             {"stress_area", "proof_load", "min_tensile_load", "proof_stress", "yield_strength", "tensile_strength"});
    const Json derived = parsed(present::json(answer::derive(curated(), {"M10", "8.8", "0.2", {}, "75%", {}, false})), "derive");
    has_keys(derived, {"preload", "torque", "proof_load", "nut_factor", "utilisation", "label", "cautions"});
    CHECK(derived.at("label") == "derived");
    CHECK(derived.at("preload").at("value") == 25275.0);
    CHECK(derived.at("preload").at("unit") == "N");
    has_keys(derived.at("preload_band"), {"low", "high", "basis"});
    for (const Json& caution : derived.at("cautions")) {
        has_keys(caution, {"code", "text"});
    }
    const Json converted = parsed(present::json(answer::convert({"24 lbf·ft", "N·m", "0.5"})), "convert");
    has_keys(converted, {"input", "result"});
    CHECK_THAT(converted.at("result").at("value").get<double>(), WithinRel(24 * 0.3048 * 4.4482216152605, 1e-12));
    CHECK(converted.at("result").at("unit") == "N·m");
    has_keys(converted.at("scale"), {"setting", "error"});
}

TEST_CASE("every figure in the JSON of thread, strength and derive says its label and where it comes from") {
    for (const char* name : {"M10", "M18x1.5", "3/8-16", "1-8 UNC", "G1/2", "R1/2", "1/2-14 NPT"}) {
        const Json json = parsed(present::json(answer::thread(curated(), name)), "thread");
        CHECK(figures_with_origin(json, name) >= 2);
        if (json.contains("threads_per_inch")) {
            INFO(name);
            CHECK(json.at("threads_per_inch").is_object());
        }
    }
    for (const Screw& screw : screws()) {
        const std::string name = screw.thread + " " + screw.property_class;
        const Json strength = parsed(present::json(answer::strength(curated(), screw.thread, screw.property_class)), "strength");
        CHECK(figures_with_origin(strength, name) >= 5);
        const Json derived = parsed(
            present::json(answer::derive(curated(), {screw.thread, screw.property_class, {}, {}, {}, {}, false})), "derive");
        CHECK(figures_with_origin(derived, name) == 9);
    }
}

TEST_CASE("JSON of find has its stable keys, and each value says whose it is") {
    const Json json =
        parsed(present::json(answer::find(demo(), curated(), {"yard carrier a rear axle drive drain", false, 40})), "find");
    has_keys(json, {"query", "total", "matches", "nearest"});
    REQUIRE(json.at("matches").size() == 1);
    const Json& match = json.at("matches").at(0);
    has_keys(match, {"joint", "values", "disagreement", "derive_command", "no_generic", "cautions"});
    has_keys(match.at("joint"), {"id", "name", "machine", "assembly", "role", "thread", "safety_critical"});
    REQUIRE(match.at("values").size() == 2);
    for (const Json& value : match.at("values")) {
        has_keys(value, {"steps", "as_written", "label", "check", "standing", "source", "page"});
        CHECK(value.at("label") == "demo");
        CHECK(value.at("check") == "unchecked");
        CHECK(value.at("standing") == "current");
        CHECK_FALSE(value.at("source").at("title").get<std::string>().empty());
    }
    const Json& step = match.at("values").at(0).at("steps").at(0);
    CHECK(match.at("values").at(0).at("as_written") == "29 lbf·ft");
    CHECK(step.at("kind") == "torque");
    CHECK_THAT(step.at("nominal").at("value").get<double>(), WithinRel(29 * 0.3048 * 4.4482216152605, 1e-12));
    CHECK(step.at("nominal").at("unit") == "N·m");
    has_keys(step, {"low", "high", "unit_as_written"});
    const Json one = parsed(present::json(answer::joint(demo(), curated(), 90), "joint"), "joint");
    CHECK(one.at("joint") == match.at("joint"));
    CHECK(parsed(present::json(answer::find(demo(), curated(), {"quux", false, 40})), "find").at("matches").empty());
}

TEST_CASE("JSON of tables holds numbers as numbers, and a stream's JSON stands on one line") {
    for (const reference::Topic& topic : curated().topics()) {
        INFO(topic.name);
        const Json json = parsed(present::json(answer::list_table(curated(), topic.name)), "list");
        REQUIRE(json.at("rows").size() == topic.rows);
    }
    const Json threads = parsed(present::json(answer::list_table(curated(), "threads")), "list");
    const Json* coarse = nullptr;
    for (const Json& row : threads.at("rows")) {
        coarse = row.at("code") == "M10" ? &row : coarse;
    }
    REQUIRE(coarse != nullptr);
    CHECK(coarse->at("pitch").at("value") == 1.5);
    CHECK(coarse->at("pitch").at("unit") == "mm");
    CHECK(coarse->at("threads_per_inch").is_null());
    CHECK(parsed(present::json(answer::list_topics(curated())), "list").at("tables").at(0).at("rows").is_number_integer());
    CHECK(parsed(present::json(answer::book_info(demo())), "book-info").at("machines") == 6);
    CHECK(parsed(present::json(answer::machines(demo())), "machine-list").at("machines").size() == 6);
    const std::string line = present::json(answer::convert({"32 N·m", "lbf·ft", {}}), true);
    CHECK(std::ranges::count(line, '\n') == 1);
    CHECK(parsed(line, "convert").at("result").at("unit") == "lbf·ft");
    answer::Document broken;
    broken.schema = "broken";
    broken.add("text", "text", std::string{"\xff"});
    CHECK(unit_tests::refusal(ErrorKind::internal, [&] { return present::json(broken); }) != "accepted");
}

TEST_CASE("the text of every document fits 80 columns") {
    const reference::Table threads = curated().table("threads");
    const auto code = static_cast<std::size_t>(std::ranges::find(threads.columns, "code", &reference::TableColumn::key) -
                                               threads.columns.begin());
    for (const auto& row : threads.rows) {
        std::string name = row.at(code).text;
        if (name.ends_with(" 8-UN")) {
            name.replace(name.size() - 4, 2, ""); // the series as people write it
        }
        INFO(name);
        CHECK(too_wide(present::text(answer::thread(curated(), name))).empty());
    }
    for (const Screw& screw : screws()) {
        INFO(screw.thread << " " << screw.property_class);
        CHECK(too_wide(present::text(answer::strength(curated(), screw.thread, screw.property_class))).empty());
        answer::DeriveRequest request{screw.thread, screw.property_class, {}, "any lubricant", {}, {}, true};
        CHECK(too_wide(present::text(answer::derive(curated(), request))).empty());
        request = {screw.thread, screw.property_class, "0.5", {}, {}, "0.012345678 lbf·ft", false};
        CHECK(too_wide(present::text(answer::derive(curated(), request))).empty());
    }
    for (const Source& source : demo().sources()) {
        CHECK(too_wide(present::text(answer::source(source))).empty());
    }
}

TEST_CASE("the text of a single joint fits 80 columns") {
    std::size_t joints = 0;
    for (const book::Place& place : demo().places()) {
        const answer::FoundJoint joint = answer::joint(demo(), curated(), place.joint.id);
        INFO(present::text(joint));
        CHECK(too_wide(present::text(joint)).empty());
        ++joints;
    }
    CHECK(joints > 100);
    // names and figures as long as a book may hold them
    answer::FoundJoint joint = answer::joint(demo(), curated(), 90);
    joint.place.machine.maker = "The maker of a great many machines for the winter and the summer";
    joint.place.machine.variant = "with hydrostatic drive, four-wheel steering and a plough";
    joint.place.assembly.name = "planetary reduction gear of the rear axle drive, right side";
    joint.place.joint.name = "drain plug of the inner housing, behind the cover";
    joint.values.at(0).value.tightening = read_tightening("20 N·m, 50 N·m, 80 N·m, 110 N·m, 140 N·m, 90°, 90°");
    joint.values.at(0).in_newton_metres = "20 N·m, 50 N·m, 80 N·m, 110 N·m, 140 N·m, 90°, 90°";
    joint.values.at(0).in_pound_feet = tightening_in(joint.values.at(0).value.tightening, "lbf·ft");
    CHECK(too_wide(present::text(joint)) == "");
}

TEST_CASE("the text of a document tells every figure's label and cites its source at the foot") {
    const std::string text = present::text(answer::strength(curated(), "M10", "8.8"));
    CHECK(text.starts_with("M10 8.8\n"));
    CHECK(text.find("  proof load                   33700 N   standard (1)\n") != std::string::npos);
    CHECK(text.find("(1) ISO 898-1:2013, Tables 4 and 5 (published, keyed from a reproduction)") != std::string::npos);
    CHECK(text.ends_with("! The maker's instructions, local codes and licensed practice come first.\n"));
    CHECK(present::conversion_text(answer::convert({"24 lbf·ft", "N·m", "0.5"})) ==
          "24 lbf·ft = 32.5 N·m\nnearest mark of a scale in steps of 0.5 N·m: set 32.5 N·m, -0.12 % off\n");
    CHECK(present::conversion_text(answer::convert({"24 lbf·ft", "N·m", {}})) == "24 lbf·ft = 32.5 N·m\n");
}

TEST_CASE("the text of several joints groups them, marks disagreement, and tells how to see one whole") {
    const std::string text = present::text(answer::find(demo(), curated(), {"M18x1.5 yard carrier a", false, 40}));
    CHECK(text.starts_with("5 joints fit 'M18x1.5 yard carrier a'\n\nYard carrier A, narrow track, by demo maker (invented)\n"));
    CHECK(text.find("! these current values disagree\n") != std::string::npos);
    CHECK(text.find("no value   #115\n") != std::string::npos);
    CHECK(text.find("demo, unchecked   #91\n") != std::string::npos);
    CHECK(text.find("'clampbook joint show NUMBER'") != std::string::npos);
    const std::string some = present::text(answer::find(demo(), curated(), {"sump plug", true, 3}));
    CHECK(some.find("and 17 more; add a word to narrow it down, or --most 20\n") != std::string::npos);
    CHECK(present::text(answer::find(demo(), curated(), {"quux", false, 40})).empty());
}

TEST_CASE("CSV reads back as the table that was written") {
    for (const reference::Topic& topic : curated().topics()) {
        round_trips(answer::list_table(curated(), topic.name));
    }
    round_trips(answer::list_topics(curated()));
    round_trips(answer::machines(demo()));
    round_trips(answer::sources(demo()));
    round_trips(answer::joints(demo(), std::nullopt));
    round_trips(answer::history(demo(), answer::joint_named(demo(), curated(), "#90")));
    answer::TableAnswer odd{"odd", "odd", "rows", {{"a", "a", "", false}, {"b", "b", "mm", true}}, {}, {}};
    odd.rows.push_back({{"comma, \"quote\"\nline", {}}, {"0,1 mm", 0.1}});
    odd.rows.push_back({{" blank ", {}}, {"", {}}});
    round_trips(odd);
}

TEST_CASE("a line of a list says what the conversion by itself says") {
    constexpr std::array<std::string_view, 9> k_torques{"N·m",   "Nm",   "lbf·ft", "ft-lb", "in-lb",
                                                        "kgf·m", "N·mm", "ozf·in", "kN·m"};
    std::mt19937 random{11};
    for (const char* to : {"N·m", "lbf·ft", "kgf·cm"}) {
        answer::Converter converter{to};
        for (int i = 0; i < 2000; ++i) {
            std::string number = std::to_string(random() % 500);
            number += random() % 2 == 0 ? "." + std::to_string(random() % 100) : "";
            number = (random() % 9 == 0 ? " " : "") + number + (random() % 3 == 0 ? "" : " ");
            const std::string typed = number + std::string{k_torques.at(static_cast<std::size_t>(i) / 50 % k_torques.size())};
            INFO(typed << " to " << to);
            std::string line;
            present::append_conversion(line, converter.of(typed));
            REQUIRE(line == present::conversion_text(answer::convert({typed, to, ""})));
        }
    }
    // What the quick way leaves to the careful one is read and refused as ever, after a line of the same unit too.
    answer::Converter converter{"mm"};
    for (const char* typed : {"1 in", "3/8 in", "1 3/8 in", "1,5 in", "-2 in", "1e-3 in"}) {
        std::string line;
        present::append_conversion(line, converter.of(typed));
        CHECK(line == present::conversion_text(answer::convert({typed, "mm", ""})));
    }
    answer::Converter torque{"N·m"};
    (void)torque.of("24 lbf·ft");
    for (const char* typed : {"3/8 lbf·ft", "1,250 lbf·ft", "24", "24 lb", "24 in", "x lbf·ft", "1.2.3 lbf·ft"}) {
        INFO(typed);
        CHECK(unit_tests::refusal(ErrorKind::usage, [&] { return torque.of(typed).value; }) ==
              unit_tests::refusal(ErrorKind::usage, [&] {
                  return answer::convert({typed, "N·m", ""});
              }));
    }
    answer::Converter celsius{"°C"};
    CHECK(celsius.of("32 °F").value == 0);
    CHECK(unit_tests::refusal(ErrorKind::usage, [&] { return celsius.of("-500 °F").value; }) ==
          "'-500 °F' lies under absolute zero (-273.15 °C)");
}
