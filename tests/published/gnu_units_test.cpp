// SPDX-License-Identifier: MIT
// Every unit with every other unit of its dimension, against the program GNU units (the command `units`). One run with
// all questions on its standard input; where the program is missing, the test fails.
#include "cases.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/units/reading.hpp"

#include <catch2/catch.hpp>
#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <map>
#include <string>
#include <string_view>
#include <vector>

using namespace clampbook;
using namespace published;

namespace {

// How GNU units writes each unit of ours. A temperature is a function there.
const std::map<std::string_view, std::string_view> k_names{{"N·m", "N m"},
                                                           {"N·mm", "N mm"},
                                                           {"N·cm", "N cm"},
                                                           {"cN·m", "cN m"},
                                                           {"daN·m", "daN m"},
                                                           {"kN·m", "kN m"},
                                                           {"lbf·ft", "lbf ft"},
                                                           {"lbf·in", "lbf in"},
                                                           {"ozf·in", "oz force in"},
                                                           {"kgf·m", "kgf m"},
                                                           {"kgf·cm", "kgf cm"},
                                                           {"kp·m", "kilopond m"},
                                                           {"kp·cm", "kilopond cm"},
                                                           {"N", "N"},
                                                           {"daN", "daN"},
                                                           {"kN", "kN"},
                                                           {"lbf", "lbf"},
                                                           {"kgf", "kgf"},
                                                           {"kp", "kilopond"},
                                                           {"mm", "mm"},
                                                           {"cm", "cm"},
                                                           {"m", "m"},
                                                           {"µm", "micrometer"},
                                                           {"in", "in"},
                                                           {"ft", "ft"},
                                                           {"mm²", "mm^2"},
                                                           {"cm²", "cm^2"},
                                                           {"in²", "in^2"},
                                                           {"MPa", "MPa"},
                                                           {"N/mm²", "N/mm^2"},
                                                           {"GPa", "GPa"},
                                                           {"kPa", "kPa"},
                                                           {"bar", "bar"},
                                                           {"psi", "psi"},
                                                           {"ksi", "ksi"},
                                                           {"°C", "tempC"},
                                                           {"°F", "tempF"},
                                                           {"K", "K"},
                                                           {"l", "liter"},
                                                           {"ml", "milliliter"},
                                                           {"US gal", "usgallon"},
                                                           {"US qt", "usquart"},
                                                           {"US pt", "uspint"},
                                                           {"imp gal", "brgallon"},
                                                           {"imp qt", "brquart"},
                                                           {"imp pt", "brpint"},
                                                           {"°", "degree"},
                                                           {"turn", "turn"},
                                                           {"rad", "radian"},
                                                           {"", "1"},
                                                           {"%", "percent"},
                                                           {"1/K", "1/K"},
                                                           {"1e-6/K", "1e-6/K"}};

struct Question {
    const UnitInfo* from;
    const UnitInfo* to;
    double value;
    std::string spelled; // the unit that is converted from, as somebody types it
};

// What else is read as this unit. A bare number has no spelling, and 1e6/K would be read as part of the figure.
std::vector<std::string> other_spellings(const UnitInfo& unit) {
    std::vector<std::string> out;
    if (unit.dimension != Dimension::number && unit.dimension != Dimension::expansion) {
        for (std::string& spelled : split(unit.spellings, ' ')) {
            if (!spelled.empty() && spelled != unit.symbol) {
                out.push_back(std::move(spelled));
            }
        }
    }
    return out;
}

std::vector<Question> all_questions() {
    constexpr std::array k_values{1.0, 32.0, 0.0371, 7.3125e5, -12.7};
    constexpr std::array k_temperatures{20.0, 98.6, 273.15, 1234.5, 0.001};
    std::vector<Question> questions;
    for (const UnitInfo& from : all_units()) {
        for (const UnitInfo& to : all_units()) {
            if (from.dimension == to.dimension && &from != &to) {
                for (const double value : from.dimension == Dimension::temperature ? k_temperatures : k_values) {
                    questions.push_back({&from, &to, value, std::string{from.symbol}});
                }
                for (const std::string& spelled : other_spellings(from)) {
                    questions.push_back({&from, &to, 43.75, spelled});
                }
            }
        }
    }
    return questions;
}

std::string name_of(const UnitInfo& unit) {
    const auto name = k_names.find(unit.symbol);
    INFO("no name in GNU units is noted here for '" << unit.symbol << "'");
    REQUIRE(name != k_names.end());
    return std::string{name->second};
}

std::string have(const Question& q) {
    const std::string name = name_of(*q.from);
    return name.starts_with("temp") ? fmt::format("{}({:.17g})", name, q.value) : fmt::format("{:.17g} ({})", q.value, name);
}

// A temperature function is asked for by its bare name.
std::string want(const Question& q) { return name_of(*q.to); }

// The program's lines of output, one a question.
std::vector<std::string> answers(const std::vector<Question>& questions) {
    const std::string file = std::string{CLAMPBOOK_BINARY_DIR} + "/gnu_units_questions.txt";
    {
        std::ofstream out{file, std::ios::binary};
        for (const Question& q : questions) {
            out << have(q) << '\n' << want(q) << '\n';
        }
        REQUIRE(out.flush().good());
    }
    // In the C locale, with US customary units, and without anybody's own units file.
    const std::string command =
        "LC_ALL=C UNITS_ENGLISH=US HOME=/nonexistent units --terse --output-format %.17g < '" + file + "' 2>&1";
    std::FILE* pipe = ::popen(command.c_str(), "r");
    REQUIRE(pipe != nullptr);
    std::string text;
    std::array<char, 4096> buffer{};
    for (std::size_t got = 0; (got = std::fread(buffer.data(), 1, buffer.size(), pipe)) > 0;) {
        text.append(buffer.data(), got);
    }
    const int status = ::pclose(pipe);
    INFO("units (package `units`) must be installed and understand every question; it said: " << text.substr(0, 400));
    REQUIRE(status == 0);
    std::vector<std::string> lines;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        lines.push_back(text.substr(at, end - at));
        at = end + 1;
    }
    REQUIRE(lines.size() == questions.size());
    return lines;
}

} // namespace

TEST_CASE("every pair of units agrees with GNU units", "[published]") {
    const std::vector<Question> questions = all_questions();
    REQUIRE(questions.size() >= 500);
    const std::vector<std::string> lines = answers(questions);
    double worst = 0;
    std::string worst_at;
    std::size_t pairs = 0;
    std::string last_from;
    const UnitInfo* last_to = nullptr;
    for (std::size_t i = 0; i < questions.size(); ++i) {
        const Question& q = questions[i];
        pairs += q.spelled != last_from || q.to != last_to ? 1U : 0U;
        last_from = q.spelled;
        last_to = q.to;
        INFO(q.spelled << ": " << have(q) << " to " << want(q) << ": units says '" << lines[i] << "'");
        double theirs = 0;
        const char* end = lines[i].data() + lines[i].size();
        const auto read = std::from_chars(lines[i].data(), end, theirs);
        REQUIRE(read.ec == std::errc{});
        REQUIRE(read.ptr == end);
        const Reading reading = q.spelled == q.from->symbol
                                    ? read_quantity(with_unit(print_shortest(q.value), *q.from), q.from->dimension)
                                    : read_quantity(print_shortest(q.value) + " " + q.spelled, q.from->dimension);
        REQUIRE(reading.unit == q.from);
        const double ours = convert(reading, *q.to);
        // A temperature is held against its distance from absolute zero, where its scale begins.
        const double scale =
            std::fabs(q.to->dimension == Dimension::temperature ? (q.to->to_canonical(theirs) + 273.15) / q.to->factor : theirs);
        const double apart = std::fabs(ours - theirs) / scale;
        INFO("ours " << print_shortest(ours) << ", apart " << apart);
        CHECK(apart <= 1e-12);
        if (apart > worst) {
            worst = apart;
            worst_at = have(q) + " to " + want(q);
        }
    }
    CHECK(pairs >= 500);
    report(fmt::format("| GNU units | every unit, by every spelling, in every other of its dimension | {} pairs | 0 | 0 | {} | "
                       "{} | 0 | {} | 1e-12 of the figure |",
                       pairs, questions.size(), questions.size(), worst < 1e-12 ? "under 1e-12 of the figure" : "too much"));
    std::cout << "    worst " << worst << " at " << worst_at << '\n';
}
