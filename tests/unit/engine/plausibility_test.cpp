// SPDX-License-Identifier: MIT
// Windows of sensible torques and the slips that explain one outside. How many slips are caught is measured in
// tests/unit/intake/slips_test.cpp.

#include "clampbook/engine/plausibility.hpp"
#include "outside.hpp"

#include <catch2/catch.hpp>

namespace {

using namespace clampbook;
using namespace clampbook::engine;
using namespace unit_tests;
using Catch::WithinRel;

constexpr TorqueWindow k_window{10.0 * newton_metre, 80.0 * newton_metre};
using Habit = TighteningHabit;

} // namespace

TEST_CASE("windows are a ratio of eight wide") {
    // M10 8.8: proof load 33.7 kN, d 10 mm
    const TorqueWindow screw = screw_window(33700.0 * newton, 10.0 * millimetre, Habit::clamped);
    CHECK_THAT(screw.low.in(newton_metre), WithinRel(13.48, 1e-12));
    CHECK_THAT(screw.high.in(newton_metre), WithinRel(107.84, 1e-12));
    CHECK_THAT(screw_window(33700.0 * newton, 10.0 * millimetre, Habit::by_angle).low.in(newton_metre), WithinRel(3.37, 1e-12));
    CHECK_THAT(screw_window(33700.0 * newton, 10.0 * millimetre, Habit::free).low.in(newton_metre), WithinRel(0.1348, 1e-12));
    const TorqueWindow any = screw_window(10000.0 * newton, 50000.0 * newton, 10.0 * millimetre, Habit::clamped);
    CHECK_THAT(any.low.in(newton_metre), WithinRel(4, 1e-12));
    CHECK_THAT(any.high.in(newton_metre), WithinRel(160, 1e-12));
    PlugScale scale{14.0 * newton_metre, true, {}, {}};
    CHECK_THAT(plug_torque_window(scale, Habit::clamped).low.in(newton_metre), WithinRel(10.5, 1e-12));
    CHECK_THAT(plug_torque_window(scale, Habit::clamped).high.in(newton_metre), WithinRel(84, 1e-12));
    scale.seated = false;
    CHECK_THAT(plug_torque_window(scale, Habit::clamped).low.in(newton_metre), WithinRel(5.6, 1e-12));
    scale = {14.0 * newton_metre, true, 28.0 * newton_metre, 50.0 * newton_metre};
    CHECK_THAT(plug_torque_window(scale, Habit::clamped).low.in(newton_metre), WithinRel(16.8, 1e-12));
    CHECK(plug_torque_window(scale, Habit::clamped).high == 50.0 * newton_metre);
    scale.strength.reset();
    CHECK_THAT(plug_torque_window(scale, Habit::clamped).high.in(newton_metre), WithinRel(106.4, 1e-12));
    scale.strength = 2.0 * newton_metre; // nothing holds: the window closes, it doesn't turn round
    CHECK(plug_torque_window(scale, Habit::clamped).high == plug_torque_window(scale, Habit::clamped).low);
}

TEST_CASE("a slip is named by what the source would say") {
    const auto slips = [](double typed, std::string_view unit) { return slips_into(k_window, typed * newton_metre, unit); };
    // 120 N·m: fits as lbf·in (13.6), or with the point moved (12); as kgf·m or lbf·ft it would be more still
    REQUIRE(slips(120, "N·m").size() == 2);
    CHECK(slips(120, "N·m")[0].unit == "lbf·in");
    CHECK_THAT(slips(120, "N·m")[0].factor, WithinRel(0.1129848290276167, 1e-12));
    CHECK(slips(120, "N·m")[1] == Slip{{}, 0.1});
    // 85 N·m for 85 lbf·in is 9.6 N·m: too little, and 8.5 too
    CHECK(slips(85, "N·m").empty());
    // 8 N·m: fits as lbf·ft alone? 10.8, as kgf·m 78.5, with the point moved 80
    REQUIRE(slips(8, "N·m").size() == 3);
    CHECK(slips(8, "N·m")[0].unit == "lbf·ft");
    CHECK(slips(8, "N·m")[1].unit == "kgf·m");
    // typed 70 lbf·ft = 94.9 N·m, and the source says N·m
    const auto one = slips_into(k_window, 70.0 * pound_force_foot, "lbf·ft");
    REQUIRE(one.size() == 1);
    CHECK(one[0].unit == "N·m");
    CHECK_THAT((one[0].factor * (70.0 * pound_force_foot)).in(newton_metre), WithinRel(70, 1e-12));
    // typed 300 lbf·ft, source lbf·in: a twelfth
    const auto twelfth = slips_into(k_window, 300.0 * pound_force_foot, "lbf·ft");
    REQUIRE(twelfth.size() == 2); // or with its point moved
    CHECK(twelfth[0].unit == "lbf·in");
    CHECK_THAT(twelfth[0].factor, WithinRel(1.0 / 12, 1e-12));
    CHECK(slips(10000, "N·m").empty());
    // kp·m is kgf·m: nobody meant the one where the other was typed
    const auto old_unit = slips_into(k_window, 490.0 * newton_metre, "kp·m");
    REQUIRE(old_unit.size() == 3);
    CHECK(old_unit[0].unit == "N·m");
    CHECK(slips_into(k_window, 490.0 * newton_metre, "kgf·m") == old_unit);
    // a unit that nobody takes for another has decimal slips alone
    CHECK(slips_into(k_window, 120.0 * newton_metre, "kN·m") == std::vector<Slip>{{{}, 0.1}});
}

TEST_CASE("outside its limits plausibility says so") {
    CHECK(outside([] { return screw_window(0 * newton, 1.0 * millimetre, Habit::clamped).low; }) ==
          "the proof load must be more than zero");
    CHECK(outside([] { return screw_window(1.0 * newton, 0 * millimetre, Habit::clamped).low; }) ==
          "the diameter must be more than zero");
    CHECK(outside([] { return screw_window(2.0 * newton, 1.0 * newton, 1.0 * millimetre, Habit::clamped).low; }) ==
          "the strongest screw must not be weaker than the weakest");
    CHECK(outside([] { return plug_torque_window({}, Habit::clamped).low; }) ==
          "the torque that seats a ring must be more than zero");
}
