// SPDX-License-Identifier: MIT
// Ranges and lists as they are typed: what they hold, and what is refused.

#include "clampbook/answer/range.hpp"
#include "clampbook/units/reading.hpp"
#include "curated.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

namespace {

using namespace clampbook;
using answer::RangeUnit;
using unit_tests::curated;
using unit_tests::refusal;
using Texts = std::vector<std::string>;

} // namespace

TEST_CASE("ranges: counted in decimal, both ends in where the steps land there") {
    CHECK(answer::range_of("0.08..0.20:0.02", RangeUnit::none) == Texts{"0.08", "0.10", "0.12", "0.14", "0.16", "0.18", "0.20"});
    CHECK(answer::range_of("0.08..0.20:0.05", RangeUnit::none) == Texts{"0.08", "0.13", "0.18"});
    CHECK(answer::range_of("0.1..0.3:0.1", RangeUnit::none) == Texts{"0.1", "0.2", "0.3"});
    CHECK(answer::range_of("8..20mm:2mm", RangeUnit::length) ==
          Texts{"8 mm", "10 mm", "12 mm", "14 mm", "16 mm", "18 mm", "20 mm"});
    CHECK(answer::range_of("8..20:4mm", RangeUnit::length) == Texts{"8 mm", "12 mm", "16 mm", "20 mm"});
    CHECK(answer::range_of(" 8 mm .. 20 : 6 ", RangeUnit::length) == Texts{"8 mm", "14 mm", "20 mm"});
    CHECK(answer::range_of("0.25..0.5:0.125in", RangeUnit::length) == Texts{"0.250 in", "0.375 in", "0.500 in"});
    CHECK(answer::range_of("20..60:20Nm", RangeUnit::torque) == Texts{"20 N·m", "40 N·m", "60 N·m"});
    CHECK(answer::range_of("60..90:15%", RangeUnit::share) == Texts{"60 %", "75 %", "90 %"});
    CHECK(answer::range_of("10..14:2kN", RangeUnit::load) == Texts{"10 kN", "12 kN", "14 kN"});
    CHECK(answer::range_of("60%..90:30", RangeUnit::load) == Texts{"60 %", "90 %"});
    CHECK(answer::range_of("8,5..9,5:0,5mm", RangeUnit::length) == Texts{"8.5 mm", "9.0 mm", "9.5 mm"});
    CHECK(answer::range_of("8..9.25:1mm", RangeUnit::length) == Texts{"8 mm", "9 mm"});
    // no drift: each value reads as the very number that its text means
    const Texts fine = answer::range_of("0.05..0.50:0.01", RangeUnit::none);
    REQUIRE(fine.size() == 46);
    CHECK(fine[25] == "0.30");
    CHECK(read_quantity(fine[25], Dimension::number).value == 0.3);
    CHECK(answer::range_of("0..1.999:0.001", RangeUnit::none).size() == answer::k_combinations_max);
    CHECK(answer::is_range("0.1..0.2"));
    CHECK_FALSE(answer::is_range("0.12,0.14"));
}

TEST_CASE("ranges: what is refused says what would be right") {
    const auto refused = [](const char* text, RangeUnit unit) {
        return refusal(ErrorKind::usage, [&] { return answer::range_of(text, unit); });
    };
    CHECK(refused("0.08..0.20", RangeUnit::none) == "'0.08..0.20' has no step; write one behind a colon, like '0.08..0.20:0.02'");
    CHECK(refused("8..20", RangeUnit::length) == "'8..20' has no step; write one behind a colon, like '8..20:2mm'");
    CHECK(refused("1..2kN", RangeUnit::load) == "'1..2kN' has no step; write one behind a colon, like '1..2:0.2kN'");
    CHECK(refused("0.20..0.08:0.02", RangeUnit::none) ==
          "'0.20..0.08:0.02' runs backwards; write the smaller end first: '0.08..0.20:0.02'");
    CHECK(refused("20..8", RangeUnit::length) == "'20..8' runs backwards; write the smaller end first: '8..20:2mm'");
    CHECK(refused("0.08..0.20:0", RangeUnit::none) ==
          "the step of '0.08..0.20:0' is zero; write one that goes on, like '0.08..0.20:0.02'");
    CHECK(refused("0.08..0.20:0.13", RangeUnit::none) ==
          "the step of '0.08..0.20:0.13' is wider than the range; write a smaller one, like '0.08..0.20:0.02'");
    CHECK(answer::range_of("0.08..0.20:0.12", RangeUnit::none) == Texts{"0.08", "0.20"});
    CHECK(refused("8..8:1mm", RangeUnit::length) == "both ends of '8..8:1mm' are the same; write '8mm' alone, or a wider range");
    CHECK(refused("8..20:2", RangeUnit::length) == "'8..20:2' has no unit; write it behind the step, like '8..20:2mm'");
    CHECK(refused("20..60:10", RangeUnit::torque) == "'20..60:10' has no unit; write it behind the step, like '20..60:10N·m'");
    CHECK(refused("60..90:10", RangeUnit::share) == "'60..90:10' has no unit; write it behind the step, like '60..90:10%'");
    CHECK(refused("8..20:2N·m", RangeUnit::length) ==
          "'8..20:2N·m' is written in N·m, where a length is wanted, like '8..20:2mm'");
    CHECK(refused("0.1..0.2:2%", RangeUnit::none) ==
          "'0.1..0.2:2%' is written in %, where a bare number is wanted, like '0.08..0.20:0.02'");
    CHECK(refused("10..20:2mm", RangeUnit::load).find("percent or a force are wanted") != std::string::npos);
    CHECK(refused("60..90:2kN", RangeUnit::share).find("percent are wanted") != std::string::npos);
    CHECK(refused("8mm..20:2in", RangeUnit::length) ==
          "'8mm..20:2in' holds two units, mm and in; write one of them, behind the step");
    CHECK(refused("8..20:2parsec", RangeUnit::length).find("'parsec' is no unit known here") != std::string::npos);
    CHECK(refused("0..2:0.001", RangeUnit::none) ==
          "'0..2:0.001' holds 2001 values, more than 2000; write a greater step, like '0..2:0.5'");
    for (const char* text : {"..0.2:0.1", "0.1..:0.1", "0.1..0.2:", "0.1...0.2:0.1", "1..2..3:1", "-1..2:1", "1/4..1/2:1/8",
                             "0.12,0.14..0.2:0.02", "0.1..0.2:0.05:0.1", "x..y:z", "1...2:1", "1..2.:1"}) {
        INFO(text);
        CHECK(refused(text, RangeUnit::none).find("is no plain number; a range is written like '0.08..0.20:0.02'") !=
              std::string::npos);
    }
    CHECK(refused("1e1..2e1:5", RangeUnit::none).find("'e1' is no unit known here") != std::string::npos);
    CHECK(refused("1,250..2,500:1,250N·m", RangeUnit::torque).find("can be read two ways") != std::string::npos);
    CHECK(refused("0.123456789..1:0.1", RangeUnit::none).find("too many digits; at most 8") != std::string::npos);
    CHECK(refused("12345678.9..2:0.1", RangeUnit::none).find("too many digits; at most 8") != std::string::npos);
    CHECK(refused("0.12", RangeUnit::none) == "'0.12' is no range; one is written like '0.08..0.20:0.02'");
}

TEST_CASE("lists: a decimal comma stays in its thread or class") {
    CHECK(answer::thread_list("M8,M10,M12") == Texts{"M8", "M10", "M12"});
    CHECK(answer::thread_list("M8, M10") == Texts{"M8", "M10"});
    CHECK(answer::thread_list("M18x1,5") == Texts{"M18x1,5"});
    CHECK(answer::thread_list("M18x1,5,M20x1,5,M8") == Texts{"M18x1,5", "M20x1,5", "M8"});
    CHECK(answer::thread_list("M2,5,M1,6x0,35") == Texts{"M2,5", "M1,6x0,35"});
    CHECK(answer::thread_list("3/8-16 UNC,1/2-13 UNC") == Texts{"3/8-16 UNC", "1/2-13 UNC"});
    CHECK(answer::thread_list("3/8-16,1-8,#10-32") == Texts{"3/8-16", "1-8", "#10-32"});
    CHECK(answer::class_list(curated(), "8.8,10.9") == Texts{"8.8", "10.9"});
    CHECK(answer::class_list(curated(), "8,8,10,9") == Texts{"8,8", "10,9"});
    CHECK(answer::class_list(curated(), "grade 5, grade 8,A2-70") == Texts{"grade 5", "grade 8", "A2-70"});
    const auto refused = [](ErrorKind kind, const auto& list) { return refusal(kind, list); };
    CHECK(refused(ErrorKind::usage, [] { return answer::thread_list("M8,,M10"); }) ==
          "'M8,,M10' has a comma with nothing behind it; write what belongs there, or leave the comma out");
    CHECK(refused(ErrorKind::usage, [] { return answer::thread_list("M8,"); }).find("nothing behind it") != std::string::npos);
    CHECK(refused(ErrorKind::usage, [] { return answer::thread_list(",M8"); }).find("nothing before it") != std::string::npos);
    CHECK(
        refused(ErrorKind::usage, [] { return answer::thread_list("M8,M10y"); }).starts_with("'M10y' does not read as a thread"));
    CHECK(refused(ErrorKind::not_found, [] { return answer::class_list(curated(), "8.8,11.9"); }).starts_with("'11.9' is no"));
}
