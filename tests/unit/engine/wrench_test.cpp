// SPDX-License-Identifier: MIT
// The torque wrench: adapters in line, across and backwards, ranges, and the limits. Worked examples stand in tests/published.

#include "clampbook/engine/wrench.hpp"
#include "outside.hpp"

#include <catch2/catch.hpp>

namespace {

using namespace clampbook;
using namespace clampbook::engine;
using namespace unit_tests;
using Catch::Contains;
using Catch::WithinRel;

Adapter adapter(double length, double turned) { return {300.0 * millimetre, length * millimetre, turned * degree}; }

} // namespace

TEST_CASE("an adapter lengthens the wrench, leaves it, or shortens it") {
    CHECK_THAT(adapter_ratio(adapter(50, 0)), WithinRel(350.0 / 300, 1e-14));
    CHECK(adapter_ratio(adapter(50, 90)) == 1); // across: nothing changes, exactly
    CHECK_THAT(adapter_ratio(adapter(50, 180)), WithinRel(250.0 / 300, 1e-14));
    CHECK_THAT(adapter_ratio(adapter(50, 60)), WithinRel(325.0 / 300, 1e-14));
    CHECK(adapter_ratio(adapter(0, 0)) == 1);
    CHECK_THAT(setting_for(35.0 * newton_metre, adapter(50, 0)).in(newton_metre), WithinRel(30, 1e-14));
    CHECK_THAT(applied_by(30.0 * newton_metre, adapter(50, 0)).in(newton_metre), WithinRel(35, 1e-14));
}

TEST_CASE("ranges of a tool") {
    const ToolRange tested = tested_range(200.0 * newton_metre);
    CHECK(tested.least == 40.0 * newton_metre);
    CHECK(tested.holds(40.0 * newton_metre));
    CHECK(tested.holds(200.0 * newton_metre));
    CHECK_FALSE(tested.holds(39.9 * newton_metre));
    CHECK_FALSE(tested.holds(200.1 * newton_metre));
    CHECK(best_range(200.0 * newton_metre).least == 50.0 * newton_metre);
    CHECK(best_range(200.0 * newton_metre).most == 150.0 * newton_metre);
    CHECK(is_small_tool(10.0 * newton_metre));
    CHECK_FALSE(is_small_tool(10.1 * newton_metre));
}

TEST_CASE("outside its limits the wrench says so") {
    CHECK_THAT(outside([] { return adapter_ratio(adapter(-1, 0)); }), Contains("is turned by 180°"));
    CHECK_THAT(outside([] { return adapter_ratio(adapter(k_nan, 0)); }), Contains("zero or more"));
    for (const double angle : {-0.1, 180.1, k_nan}) {
        CHECK_THAT(outside([&] { return adapter_ratio(adapter(50, angle)); }), Contains("turned by 0° to 180°"));
    }
    CHECK_THAT(outside([] { return adapter_ratio(adapter(226, 180)); }), Contains("at least 25 % are needed"));
    CHECK(outside([] { return adapter_ratio(adapter(225, 180)); }) == "accepted");
    CHECK(outside([] {
              return adapter_ratio({0 * millimetre, 1.0 * millimetre, 0 * degree});
          }) == "the length of the wrench must be more than zero");
    CHECK(outside([] { return setting_for(0 * newton_metre, adapter(50, 0)); }) == "the torque must be more than zero");
    CHECK(outside([] { return applied_by(k_nan * newton_metre, adapter(50, 0)); }) == "the setting must be more than zero");
    CHECK(outside([] { return tested_range(0 * newton_metre).least; }) ==
          "the largest torque of the tool must be more than zero");
    CHECK(outside([] { return best_range(0 * newton_metre).least; }) == "the largest torque of the tool must be more than zero");
}
