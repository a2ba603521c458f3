// SPDX-License-Identifier: MIT
// Conversion factors against NIST SP 811 and the definitions behind it, and conversions there and back.
#include "cases.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/units/reading.hpp"

#include <catch2/catch.hpp>
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <random>

using namespace clampbook;
using namespace published;

TEST_CASE("unit factors", "[published]") {
    Family family{"unit_factors", 42};
    Tally& factors = family.tally("converted figures", "%", "1e-12 of the figure");
    Tally& known = family.tally("units that are read here", "", "a known difference is refused");
    for (const Case& row : family.rows()) {
        INFO(row.where() << ": " << row.text("from") << " to " << row.text("to"));
        CHECK(row.number("tolerance_rel") == 1e-12);
        std::optional<double> ours;
        try {
            ours = convert(read_quantity(row.text("value") + " " + row.text("from")), unit_named(row.text("to")));
        } catch (const Error& refusal) {
            REQUIRE(refusal.kind() == ErrorKind::usage);
        }
        known.compare_flag(row, "unit", !ours.has_value(), row.confidence());
        if (ours) {
            factors.compare(row, "factor", *ours, row.number("expected"), 1e-12, row.confidence());
        }
    }
    CHECK(factors.figures() == 25);
    family.finish();
}

TEST_CASE("a figure converted there and back is the same", "[published]") {
    constexpr std::size_t k_values = 200;
    std::mt19937_64 random{20240229};
    std::uniform_real_distribution<double> mantissa{1.0, 10.0};
    std::uniform_real_distribution<double> warm{-270.0, 2000.0};
    std::uniform_int_distribution<int> exponent{-6, 8};
    double worst = 0;
    std::size_t pairs = 0;
    std::size_t trips = 0;
    for (const UnitInfo& from : all_units()) {
        for (const UnitInfo& to : all_units()) {
            if (from.dimension != to.dimension || &from == &to) {
                continue;
            }
            ++pairs;
            for (std::size_t i = 0; i < k_values; ++i) {
                const bool temperature = from.dimension == Dimension::temperature;
                const double sign = !temperature && random() % 2 == 0 ? -1.0 : 1.0;
                const double value =
                    temperature ? from.from_canonical(warm(random)) : sign * mantissa(random) * std::pow(10.0, exponent(random));
                const Reading reading{{}, value, &from, 17, value < 0};
                const double there = convert(reading, to);
                const double back = convert(Reading{{}, there, &to, 17, there < 0}, from);
                // A temperature is held against its distance from absolute zero, where its scale begins.
                const double scale = std::fabs(temperature ? (from.to_canonical(value) + 273.15) / from.factor : value);
                const double apart = std::fabs(back - value) / scale;
                INFO(value << " " << from.symbol << " to " << to.symbol << ": " << there << ", and back " << back);
                REQUIRE(std::isfinite(there));
                CHECK(apart <= 1e-12);
                worst = std::max(worst, apart);
                ++trips;
            }
        }
    }
    CHECK(pairs >= 300);
    report(
        fmt::format("| all units | random figures, there and back | {} pairs | 0 | 0 | {} | {} | 0 | {} | 1e-12 of the figure |",
                    pairs, trips, trips, worst < 1e-12 ? "under 1e-12 of the figure" : "too much"));
}
