// SPDX-License-Identifier: MIT
// Stripping: areas worked by hand, Alexander's factors at their joints, who strips first, and the limits. The published rows
// stand in tests/published.

#include "clampbook/engine/strip.hpp"
#include "outside.hpp"

#include <catch2/catch.hpp>

namespace {

using namespace clampbook;
using namespace clampbook::engine;
using namespace unit_tests;
using Catch::Contains;
using Catch::WithinAbs;
using Catch::WithinRel;

const ThreadGeometry k_m10 = metric_geometry(10.0 * millimetre, 1.5 * millimetre);

} // namespace

TEST_CASE("shear areas of basic threads, worked by hand") {
    // D1 = 8.376202, d2 = 9.0257215: external π/1.5 · 8.376202 · (0.75 + 0.5773503 · 0.6495195) = 19.7346 mm²/mm
    // internal π/1.5 · 10 · (0.75 + 0.5773503 · 0.9742785) = 27.4889 mm²/mm
    const ShearAreas areas = shear_areas(basic_pair(k_m10), 10.0 * millimetre);
    CHECK_THAT(areas.external.in(square_millimetre), WithinRel(197.346, 1e-4));
    CHECK_THAT(areas.internal.in(square_millimetre), WithinRel(274.889, 1e-5));
    // A pipe thread of 55°: tan 27.5° = 0.5205671; G1/2, P 1.814286, D1 18.631, d2 19.793
    const ThreadGeometry pipe = pipe_plug_geometry(20.955 * millimetre, 14);
    // Nothing is printed for its stress area; as of a metric screw, the mean of pitch and minor diameter is taken.
    CHECK_THAT(pipe.stress_area.in(square_millimetre), WithinRel(constants::k_pi / 4 * 19.212 * 19.212, 1e-4));
    const ShearAreas gas = shear_areas(basic_pair(pipe), 12.0 * millimetre);
    const double p = 25.4 / 14;
    CHECK_THAT(gas.external.in(square_millimetre),
               WithinRel(constants::k_pi * 12 / p * (20.955 - 1.280654 * p) * (p / 2 + 0.5205670505 * 0.640327 * p), 1e-6));
    CHECK_THAT(gas.internal.in(square_millimetre),
               WithinRel(constants::k_pi * 12 / p * 20.955 * (p / 2 + 0.5205670505 * 0.640327 * p), 1e-6));
}

TEST_CASE("the worst pair is the smallest screw in the largest hole") {
    const Tolerances t = metric_tolerances(10.0 * millimetre, 1.5 * millimetre);
    const Limits external = external_limits(k_m10, t);
    const Limits internal = internal_limits(k_m10, t);
    const ThreadPair pair = worst_pair(k_m10.pitch, external, internal);
    CHECK(pair.external_major == external.major_min);
    CHECK(pair.external_pitch == external.pitch_min);
    CHECK(pair.internal_pitch == internal.pitch_max);
    CHECK(pair.internal_minor == internal.minor_max);
    const ShearAreas worst = shear_areas(pair, 10.0 * millimetre);
    const ShearAreas basic = shear_areas(basic_pair(k_m10), 10.0 * millimetre);
    CHECK(worst.external < basic.external);
    CHECK(worst.internal < basic.internal);
}

TEST_CASE("Alexander's factors where their ranges meet") {
    CHECK(nut_dilation(1.9) == 1);
    CHECK(nut_dilation(5) == 1);
    CHECK_THAT(nut_dilation(1.8999999), WithinAbs(1, 1e-6)); // continuous
    CHECK_THAT(nut_dilation(1.4), WithinRel(0.75, 1e-12));
    CHECK(external_bending(1) == 0.897);
    CHECK_THAT(external_bending(1.0000001), WithinAbs(0.897, 1e-3));
    CHECK(external_bending(2.2) == external_bending(9));
    CHECK(internal_bending(1) == 0.897);
    CHECK_THAT(internal_bending(0.9999999), WithinAbs(0.897, 1e-3));
    CHECK(internal_bending(0.4) == internal_bending(0.01));
    CHECK(internal_bending(0.4) > internal_bending(0.9));
}

TEST_CASE("the weaker member strips first, and deep enough neither does") {
    const ThreadPair pair = basic_pair(k_m10);
    const ShearAreas areas = shear_areas(pair, 12.0 * millimetre);
    const StripLoads soft = strip_loads(areas, {520.0 * megapascal, 140.0 * megapascal});
    CHECK(soft.internal_first());
    CHECK(soft.least() == soft.internal);
    CHECK(soft.c2 == 0.897);
    CHECK_THAT(soft.internal.in(newton), WithinRel(soft.c3 * 140 * areas.internal.in(square_millimetre), 1e-13));
    const StripLoads hard = strip_loads(areas, {300.0 * megapascal, 600.0 * megapascal});
    CHECK_FALSE(hard.internal_first());
    CHECK(hard.least() == hard.external);
    CHECK(hard.c3 == 0.897);
    CHECK_THAT(hard.external.in(newton), WithinRel(hard.c2 * 300 * areas.external.in(square_millimetre), 1e-13));
    CHECK_THAT(strip_loads(areas, {300.0 * megapascal, 600.0 * megapascal}, 0.84).external.in(newton),
               WithinRel(0.84 * hard.external.in(newton), 1e-13));
    // At the engagement that a load needs, the load at stripping is that load.
    const ShearStrengths strengths{520.0 * megapascal, 140.0 * megapascal};
    const Length needed = engagement_for(40000.0 * newton, pair, strengths, 0.9);
    CHECK_THAT(strip_loads(shear_areas(pair, needed), strengths, 0.9).least().in(newton), WithinRel(40000, 1e-12));
}

TEST_CASE("outside its limits stripping says so") {
    const ThreadPair pair = basic_pair(k_m10);
    CHECK_THAT(outside([&] { return shear_areas(pair, 1.49 * millimetre).external; }),
               Contains("lies outside 1.5 mm, one pitch, to 30 mm"));
    CHECK_THAT(outside([&] { return shear_areas(pair, 30.1 * millimetre).external; }), Contains("three diameters"));
    CHECK_THAT(outside([&] { return shear_areas(pair, k_nan * millimetre).external; }), Contains("one pitch"));
    CHECK(outside([&] { return shear_areas(pair, 30.0 * millimetre).external; }) == "accepted");
    ThreadPair apart = pair;
    apart.internal_minor = 10.0 * millimetre;
    CHECK(outside([&] { return shear_areas(apart, 10.0 * millimetre).external; }) ==
          "a screw of 10 mm does not reach into a hole of 10 mm");
    apart = pair;
    apart.pitch = 0 * millimetre;
    CHECK(outside([&] { return shear_areas(apart, 10.0 * millimetre).external; }) == "the pitch must be more than zero");
    CHECK_THAT(outside([] { return nut_dilation(1.39); }), Contains("at least 1.4 times"));
    CHECK_THAT(outside([] { return nut_dilation(k_nan); }), Contains("at least 1.4 times"));
    CHECK(outside([] { return external_bending(0); }) == "the ratio of strengths must be more than zero");
    CHECK(outside([] { return internal_bending(k_nan); }) == "the ratio of strengths must be more than zero");
    const ShearAreas areas = shear_areas(pair, 10.0 * millimetre);
    CHECK(outside([&] {
              return strip_loads(areas, {0 * megapascal, 1.0 * megapascal}).c1;
          }) == "the shear strength of the screw must be more than zero");
    CHECK(outside([&] {
              return strip_loads(areas, {1.0 * megapascal, 0 * megapascal}).c1;
          }) == "the shear strength of the tapped part must be more than zero");
    CHECK(outside([&] {
              return engagement_for(0 * newton, pair, {1.0 * megapascal, 1.0 * megapascal});
          }) == "the load must be more than zero");
    CHECK(outside([&] { return equal_strength_engagement(0 * square_millimetre, pair); }) ==
          "the stress area must be more than zero");
    CHECK(outside([] { return pull_out_shortcut(1.0 * millimetre, 1.0 * megapascal, 0 * millimetre); }) ==
          "the engagement must be more than zero");
    CHECK_THAT(outside([] { return parallel_geometry(ThreadSystem::npt, "1/2-14 NPT", 21.0 * millimetre, {}, 14).major; }),
               Contains("1/2-14 NPT is a taper thread"));
}
