// SPDX-License-Identifier: MIT
// The factor of every unit, written out a second time. Source: NIST SP 811 (2008), Appendix B.8 and B.9, where the unit
// is listed; decimal multiples by definition.

#include "clampbook/units/reading.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <set>

TEST_CASE("every unit has the factor that was agreed") {
    using namespace clampbook;
    const struct {
        const char* symbol;
        double value;     // in the unit
        double canonical; // N·m, N, mm, mm², MPa, °C, l, °, 1 or 1/K
    } factors[] = {
        {"N·m", 1, 1},
        {"N·mm", 1, 0.001},
        {"N·cm", 1, 0.01},
        {"cN·m", 1, 0.01},
        {"daN·m", 1, 10},
        {"kN·m", 1, 1000},
        {"lbf·ft", 1, 1.3558179483314004},
        {"lbf·in", 1, 0.1129848290276167},
        {"ozf·in", 1, 7.0615518142260437e-3},
        {"kgf·m", 1, 9.80665},
        {"kgf·cm", 1, 0.0980665},
        {"kp·m", 1, 9.80665},
        {"kp·cm", 1, 0.0980665},
        {"N", 1, 1},
        {"daN", 1, 10},
        {"kN", 1, 1000},
        {"lbf", 1, 4.4482216152605},
        {"kgf", 1, 9.80665},
        {"kp", 1, 9.80665},
        {"mm", 1, 1},
        {"cm", 1, 10},
        {"m", 1, 1000},
        {"µm", 1, 0.001},
        {"in", 1, 25.4},
        {"ft", 1, 304.8},
        {"mm²", 1, 1},
        {"cm²", 1, 100},
        {"in²", 1, 645.16},
        {"MPa", 1, 1},
        {"N/mm²", 1, 1},
        {"GPa", 1, 1000},
        {"kPa", 1, 0.001},
        {"bar", 1, 0.1},
        {"psi", 1, 6.894757293168361e-3},
        {"ksi", 1, 6.894757293168361},
        {"°C", 20, 20},
        {"°F", 68, 20},
        {"K", 293.15, 20},
        {"l", 1, 1},
        {"ml", 1, 0.001},
        {"US gal", 1, 3.785411784},
        {"US qt", 1, 0.946352946},
        {"US pt", 1, 0.473176473},
        {"imp gal", 1, 4.54609},
        {"imp qt", 1, 1.1365225},
        {"imp pt", 1, 0.56826125},
        {"°", 1, 1},
        {"turn", 1, 360},
        {"rad", 1, 57.295779513082323},
        {"", 1, 1},
        {"%", 1, 0.01},
        {"1/K", 1, 1},
        {"1e-6/K", 1, 1e-6},
    };
    std::set<std::string_view> seen;
    for (const auto& row : factors) {
        for (const UnitInfo& unit : all_units()) {
            if (unit.symbol == row.symbol) {
                INFO(unit.symbol);
                CHECK_THAT(unit.to_canonical(row.value), Catch::WithinRel(row.canonical, 1e-14));
                CHECK_THAT(unit.from_canonical(row.canonical), Catch::WithinRel(row.value, 1e-14));
                seen.insert(unit.symbol);
            }
        }
    }
    for (const UnitInfo& unit : all_units()) {
        INFO("'" << unit.symbol << "' has no row here");
        CHECK(seen.contains(unit.symbol));
    }
}
