// SPDX-License-Identifier: MIT
// The clamped joint: springs worked by hand, turn and preload each from the other, load, heat and embedding, and the limits. The
// worked examples stand in tests/published.

#include "clampbook/engine/elastic.hpp"
#include "outside.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <cmath>

namespace {

using namespace clampbook;
using namespace clampbook::engine;
using namespace unit_tests;
using Catch::Contains;
using Catch::WithinRel;

constexpr Stress k_steel = 205000.0 * megapascal;
constexpr Springs k_springs{{4e-6}, {1e-6}};

double per_newton(Compliance c) { return c.millimetre_per_newton; }

} // namespace

TEST_CASE("a bolt is its parts one behind the other") {
    CHECK_THAT(per_newton(bar(40.0 * millimetre, 58.0 * square_millimetre, k_steel)), WithinRel(40.0 / (58.0 * 205000), 1e-14));
    const BoltParts parts{78.5 * square_millimetre, 30.0 * millimetre, 58.0 * square_millimetre, 10.0 * millimetre};
    CHECK_THAT(per_newton(bolt_in_grip(parts, k_steel)), WithinRel((30 / 78.5 + 10 / 58.0) / 205000, 1e-14));
    // a step of half a millimetre is a part too
    const BoltParts with_step{78.5 * square_millimetre, 0.5 * millimetre, 58.0 * square_millimetre, 0.25 * millimetre};
    CHECK_THAT(per_newton(bolt_in_grip(with_step, k_steel)), WithinRel((0.5 / 78.5 + 0.25 / 58.0) / 205000, 1e-14));
    // ends of an M10: 0.5 d and 0.4 d of the nominal, 0.5 d of the core
    const double nominal = constants::k_pi / 4 * 100;
    BoltEnds ends{10.0 * millimetre, 52.3 * square_millimetre, false, false, k_steel, k_steel};
    CHECK_THAT(per_newton(bolt_ends(ends)), WithinRel((5 / nominal + 5 / 52.3 + 4 / nominal) / 205000, 1e-14));
    ends.socket_head = true;
    ends.tapped = true;
    ends.other_modulus = 75000.0 * megapascal;
    CHECK_THAT(per_newton(bolt_ends(ends)), WithinRel((4 / nominal + 5 / 52.3) / 205000 + 3.3 / nominal / 75000, 1e-14));
}

TEST_CASE("cones: two halves make the whole, and layers of one material make one layer") {
    const Length hole = 11.0 * millimetre;
    const Length face = 16.0 * millimetre;
    const std::array one{Layer{40.0 * millimetre, k_steel}};
    const double whole = per_newton(clamped_parts(one, hole, face));
    CHECK_THAT(whole, WithinRel(2 * per_newton(cone(k_steel, hole, face, 20.0 * millimetre)), 1e-14));
    const std::array three{Layer{7.0 * millimetre, k_steel}, Layer{25.0 * millimetre, k_steel}, Layer{8.0 * millimetre, k_steel}};
    CHECK_THAT(per_newton(clamped_parts(three, hole, face)), WithinRel(whole, 1e-12));
    const std::array meeting_in_the_middle{Layer{20.0 * millimetre, k_steel}, Layer{20.0 * millimetre, k_steel}};
    CHECK_THAT(per_newton(clamped_parts(meeting_in_the_middle, hole, face)), WithinRel(whole, 1e-12));
    const std::array softer{Layer{7.0 * millimetre, k_steel}, Layer{33.0 * millimetre, 75000.0 * megapascal}};
    CHECK(per_newton(clamped_parts(softer, hole, face)) > whole);
}

TEST_CASE("turn and preload, each from the other") {
    // 30 kN over 5 µm/kN is 0.15 mm of travel: a tenth of a pitch of 1.5 mm
    CHECK_THAT(turn_for(30000.0 * newton, k_springs, 1.5 * millimetre).in(degree), WithinRel(36, 1e-14));
    CHECK_THAT(preload_by_turn(36.0 * degree, k_springs, 1.5 * millimetre).in(newton), WithinRel(30000, 1e-14));
    CHECK(k_springs.load_share() == 0.2);
    CHECK_THAT(embedding_loss(11.0 * micrometre, k_springs).in(newton), WithinRel(2200, 1e-14));
    CHECK(embedding_loss(0 * millimetre, k_springs) == 0 * newton);
    // aluminium about a steel screw, 70 K warmer: (21 − 11.5) · 70 · 1e-6 · 40 mm over 5 µm/kN
    CHECK_THAT(thermal_change(21e-6, 11.5e-6, 70, 40.0 * millimetre, k_springs).in(newton),
               WithinRel(9.5e-6 * 70 * 40 / 5e-6, 1e-12));
    CHECK(thermal_change(21e-6, 11.5e-6, -70, 40.0 * millimetre, k_springs) < 0 * newton);
    CHECK(thermal_change(11.5e-6, 11.5e-6, 70, 40.0 * millimetre, k_springs) == 0 * newton);
}

TEST_CASE("the joint diagram") {
    const LoadedJoint loaded = under_load(20000.0 * newton, 0.25, 8000.0 * newton);
    CHECK(loaded.screw == 22000.0 * newton);
    CHECK(loaded.clamping == 14000.0 * newton);
    const Force opens = load_leaving(20000.0 * newton, 0.25, 0 * newton);
    CHECK_THAT(opens.in(newton), WithinRel(20000 / 0.75, 1e-14));
    CHECK_THAT(under_load(20000.0 * newton, 0.25, 0.999999 * opens).clamping.in(newton), WithinRel(0.02, 1e-3));
    CHECK_THAT(separation_factor(20000.0 * newton, 0.25, opens), WithinRel(1, 1e-14));
    CHECK_THAT(load_factor(33700.0 * newton, 20000.0 * newton, 0.25, 8000.0 * newton), WithinRel(13700 / 2000.0, 1e-14));
    CHECK_THAT(stress_amplitude(0.25, 8000.0 * newton, 58.0 * square_millimetre).in(megapascal), WithinRel(2000 / 116.0, 1e-14));
}

TEST_CASE("outside its limits the clamped joint says so") {
    CHECK(outside([] { return per_newton(bar(0 * millimetre, 1.0 * square_millimetre, k_steel)); }) ==
          "the length must be more than zero");
    CHECK(outside([] { return per_newton(bar(1.0 * millimetre, 0 * square_millimetre, k_steel)); }) ==
          "the section must be more than zero");
    CHECK(outside([] { return per_newton(bar(1.0 * millimetre, 1.0 * square_millimetre, 0 * megapascal)); }) ==
          "the modulus must be more than zero");
    CHECK_THAT(outside([] { return per_newton(bolt_in_grip({}, k_steel)); }), Contains("neither shank nor thread"));
    CHECK_THAT(outside([] { return per_newton(cone(k_steel, 11.0 * millimetre, 11.0 * millimetre, 5.0 * millimetre)); }),
               Contains("does not cover a hole"));
    CHECK(outside([] { return per_newton(cone(k_steel, 11.0 * millimetre, 16.0 * millimetre, 0 * millimetre)); }) ==
          "the thickness must be more than zero");
    CHECK(outside([] { return per_newton(clamped_parts({}, 11.0 * millimetre, 16.0 * millimetre)); }) ==
          "the grip must be more than zero");
    CHECK(outside([] { return per_newton(clamped_by_fit(k_steel, 11.0 * millimetre, 0 * millimetre, 0.8, 0.6)); }) ==
          "the grip must be more than zero");
    CHECK(outside([] { return turn_for(0 * newton, k_springs, 1.5 * millimetre); }) == "the preload must be more than zero");
    CHECK(outside([] { return preload_by_turn(0 * degree, k_springs, 1.5 * millimetre); }) == "the turn must be more than zero");
    CHECK(outside([] { return preload_by_turn(9.0 * degree, k_springs, 0 * millimetre); }) == "the pitch must be more than zero");
    CHECK(outside([] {
              return preload_by_turn(9.0 * degree, Springs{{0}, {1e-6}}, 1.0 * millimetre);
          }) == "the compliance of the screw must be more than zero");
    CHECK(outside([] { return turn_of_bolt_alone(0 * megapascal, 1.0 * millimetre, k_steel, 1.0 * millimetre); }) ==
          "the stress must be more than zero");
    CHECK_THAT(outside([] { return embedding_loss(-1.0 * micrometre, k_springs); }), Contains("settle by zero or more"));
    CHECK(outside([] { return thermal_change(0, 1e-5, 1, 1.0 * millimetre, k_springs); }) ==
          "the expansion of the clamped parts must be more than zero");
    CHECK(outside([] { return thermal_change(1e-5, 1e-5, k_nan, 1.0 * millimetre, k_springs); }) ==
          "a change of temperature must be finite");
    CHECK(outside([] { return under_load(20000.0 * newton, 0.25, 26667.0 * newton).screw; }) ==
          "a load of 26667 N opens the joint: it carries less than 26667 N");
    for (const double share : {0.0, 1.0, k_nan}) {
        CHECK_THAT(outside([&] { return under_load(1.0 * newton, share, 0.1 * newton).screw; }), Contains("lies outside 0 to 1"));
        CHECK_THAT(outside([&] { return stress_amplitude(share, 1.0 * newton, 1.0 * square_millimetre); }),
                   Contains("lies outside 0 to 1"));
    }
    CHECK_THAT(outside([] { return load_leaving(1.0 * newton, 0.2, 2.0 * newton); }), Contains("cannot be left of"));
    CHECK_THAT(outside([] { return load_factor(1.0 * newton, 2.0 * newton, 0.2, 1.0 * newton); }),
               Contains("passes the proof load"));
    CHECK(outside([] { return separation_factor(1.0 * newton, 0.2, 0 * newton); }) == "the load must be more than zero");
}
