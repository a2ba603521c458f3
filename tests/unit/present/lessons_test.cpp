// SPDX-License-Identifier: MIT
// Lessons and charts at the terminal: at three widths, with and without signs beyond ASCII, against golden text; and their JSON.

#include "clampbook/base/text.hpp"
#include "clampbook/present/present.hpp"
#include "clampbook/teach/lesson.hpp"
#include "curated.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sstream>

using namespace clampbook;
using unit_tests::curated;

namespace {

// Compared with what was looked at by a person; CLAMPBOOK_WRITE_GOLDEN writes it anew, to be looked at again.
void check_golden(const std::string& name, const std::string& text) {
    const std::string path = std::string{CLAMPBOOK_SOURCE_DIR} + "/tests/unit/present/golden/" + name;
    if (std::getenv("CLAMPBOOK_WRITE_GOLDEN") != nullptr) {
        std::ofstream{path, std::ios::binary} << text;
    }
    std::ifstream in{path, std::ios::binary};
    REQUIRE(in);
    std::stringstream golden;
    golden << in.rdbuf();
    CHECK(text == golden.str());
}

} // namespace

TEST_CASE("a chart keeps to the width of the terminal, and to ASCII where that is asked for") {
    for (const teach::LessonEntry& entry : teach::lesson_entries()) {
        const teach::Lesson lesson = teach::lesson(curated(), entry.name, {});
        const answer::Pages pages = teach::handout({lesson}, true, "2026-11-27");
        for (const std::size_t width : {std::size_t{60}, std::size_t{80}, std::size_t{120}}) {
            for (const bool ascii : {false, true}) {
                INFO(entry.name << " at " << width << (ascii ? " in ASCII" : ""));
                const std::string chart = present::text(lesson.chart, {width, ascii});
                std::size_t widest = 0;
                for (const std::string& line : split(chart, '\n')) {
                    widest = std::max(widest, display_width(line));
                }
                CHECK(widest <= width);
                CHECK(widest > width / 2);
                // every word that the chart has is there
                for (const answer::ChartLimit& limit : lesson.chart.limits) {
                    const std::string words = ascii ? present::ascii(limit.words) : limit.words;
                    CHECK(chart.find(words) != std::string::npos);
                }
                for (const answer::ChartLine& line : lesson.chart.lines) {
                    CHECK(chart.find(line.name) != std::string::npos);
                }
                const std::string whole = present::text(pages, {width, ascii});
                if (ascii) {
                    CHECK(std::ranges::all_of(whole, [](char c) { return static_cast<unsigned char>(c) < 0x80; }));
                    // no sign without a spelling: question marks are the questions' alone
                    CHECK(std::ranges::count(whole, '?') == std::ranges::count(present::text(pages, {width, false}), '?'));
                }
            }
        }
    }
}

TEST_CASE("charts at the terminal look as they were approved") {
    for (const char* name : {"preload", "shares", "scatter", "plug"}) {
        const answer::Chart chart = teach::lesson(curated(), name, {}).chart;
        check_golden(std::string{name} + "_80.txt", present::text(chart, {80, false}));
        check_golden(std::string{name} + "_60_ascii.txt", present::text(chart, {60, true}));
    }
    check_golden("angle_120.txt", present::text(teach::lesson(curated(), "angle", {}).chart, {120, false}));
}

TEST_CASE("what is beyond ASCII gets a typewriter's spelling") {
    CHECK(present::ascii("K · F · d = 50.6 N·m, μ 0.12, ±4 %, 90°") == "K * F * d = 50.6 N.m, mu 0.12, +/-4 %, 90 deg");
    CHECK(present::ascii("語") == "?");
}

TEST_CASE("a lesson's JSON holds its figures and its chart") {
    const auto json = nlohmann::json::parse(present::json(teach::lesson(curated(), "preload", {})));
    CHECK(json["schema"] == "clampbook/teach/v1");
    CHECK(json["steps"][1]["figure"]["value"] == 33700);
    CHECK(json["steps"][1]["figure"]["unit"] == "N");
    CHECK(json["chart"]["x"]["shown_in"] == "µm");
    CHECK(json["chart"]["limits"][0] == nlohmann::json{{"axis", "y"}, {"at", 33700.0}, {"words", "proof load 33.7 kN"}});
    CHECK(json["questions"].size() == 2);
}
