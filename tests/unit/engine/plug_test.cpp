// SPDX-License-Identifier: MIT
// The torque window of a plug: its ends worked by hand, which member governs, practical steps, taper turns, and the limits.

#include "clampbook/engine/plug.hpp"
#include "outside.hpp"

#include <catch2/catch.hpp>

namespace {

using namespace clampbook;
using namespace clampbook::engine;
using namespace unit_tests;
using Catch::Contains;
using Catch::WithinRel;

const Plug k_plug{metric_geometry(18.0 * millimetre, 1.5 * millimetre), 22.0 * millimetre, 18.0 * millimetre, 0 * millimetre};
constexpr Band k_friction{0.08, 0.16};

PlugLimits limits() {
    return {seating_load(18.0 * millimetre, 22.0 * millimetre, 90.0 * megapascal), 50000.0 * newton, 40000.0 * newton,
            420.0 * megapascal, 520.0 * megapascal};
}

// T/F of this plug by hand: d2 = 17.0257215, tan φ = 0.0280439, ρ′ as μ/cos 30°; the ring's mean diameter is 20 mm.
double lever(double mu) {
    const double flank = mu / 0.8660254037844387;
    const double helix = 1.5 / (constants::k_pi * 17.0257215);
    return 17.0257215 / 2 * (helix + flank) / (1 - helix * flank) + mu * 10;
}

} // namespace

TEST_CASE("a ring is seated over its whole face") {
    // π/4 (22² − 18²) · 90 and the same of a copper ring 14x18: 11309.7 and 9047.79 N
    CHECK_THAT(seating_load(18.0 * millimetre, 22.0 * millimetre, 90.0 * megapascal).in(newton), WithinRel(11309.73, 1e-6));
    CHECK_THAT(seating_load(14.0 * millimetre, 18.0 * millimetre, 90.0 * megapascal).in(newton), WithinRel(9047.79, 1e-6));
}

TEST_CASE("the window of a plug, worked by hand") {
    const PlugWindow window = plug_window(k_plug, limits(), k_friction);
    CHECK_THAT(window.seat.value().in(newton_metre), WithinRel(11.30973 * lever(0.16), 1e-6)); // rough: hard to seat
    CHECK_THAT(window.strip.in(newton_metre), WithinRel(50 * lever(0.08), 1e-6));              // smooth: easily stripped
    CHECK_THAT(window.face.value().in(newton_metre), WithinRel(40 * lever(0.08), 1e-6));
    CHECK_THAT(window.breaking / window.yield, WithinRel(520.0 / 420, 1e-12));
    CHECK(window.yield <= friction_torque(hollow_preload(420.0 * megapascal, k_plug.thread, 0.08, 0 * millimetre),
                                          {k_plug.thread, 0.08, 0.08, k_plug.face_outer, k_plug.face_inner})
                              .total);
    CHECK(window.governs == PlugMember::face);
    CHECK_THAT(window.high.in(newton_metre), WithinRel(window.face->in(newton_metre) / 1.25, 1e-12));
    CHECK_FALSE(window.is_empty());
}

TEST_CASE("the weakest member governs") {
    PlugLimits weak = limits();
    weak.strip = 20000.0 * newton;
    PlugWindow window = plug_window(k_plug, weak, k_friction);
    CHECK(window.governs == PlugMember::thread);
    CHECK_THAT(window.high.in(newton_metre), WithinRel(window.strip.in(newton_metre) / 1.5, 1e-12));
    CHECK(window.is_empty()); // 24.4 under the 38.7 N·m that seat the ring
    weak = limits();
    weak.yield_strength = 60.0 * megapascal;
    window = plug_window(k_plug, weak, k_friction);
    CHECK(window.governs == PlugMember::plug);
    CHECK_THAT(window.high.in(newton_metre), WithinRel(window.yield.in(newton_metre) / 1.25, 1e-12));
    weak = limits();
    weak.face.reset();
    weak.seat.reset();
    window = plug_window(k_plug, weak, k_friction);
    CHECK(window.governs == PlugMember::thread);
    CHECK_FALSE(window.seat);
    CHECK_FALSE(window.face);
    CHECK_FALSE(window.is_empty()); // open below
}

TEST_CASE("a hollow plug is weaker, a solid one is a screw") {
    const ThreadGeometry& thread = k_plug.thread;
    CHECK_THAT(hollow_preload(420.0 * megapascal, thread, 0.12, 0 * millimetre).in(newton),
               WithinRel(assembly_preload(420.0 * megapascal, 1, thread, 0.12).in(newton), 1e-12));
    // bore 8: A = π/4 (d0² − 64), W = π/12 (d0³ − 512), with d0² = 4 As/π
    const double d0 = std::sqrt(4 * thread.stress_area.in(square_millimetre) / constants::k_pi);
    const double area = constants::k_pi / 4 * (d0 * d0 - 64);
    const double section = constants::k_pi / 12 * (d0 * d0 * d0 - 512);
    const double twist = thread_lever(thread, 0.12).in(millimetre) / section;
    CHECK_THAT(hollow_preload(420.0 * megapascal, thread, 0.12, 8.0 * millimetre).in(newton),
               WithinRel(420 / std::sqrt(1 / (area * area) + 3 * twist * twist), 1e-12));
    Plug hollow = k_plug;
    hollow.bore = 10.0 * millimetre;
    CHECK(plug_window(hollow, limits(), k_friction).yield < plug_window(k_plug, limits(), k_friction).yield);
}

TEST_CASE("advice lands on a step that a wrench has") {
    const auto advice = [](double low, double high) { return practical_torque(low * newton_metre, high * newton_metre); };
    CHECK(advice(38.7, 53.3) == 46.0 * newton_metre); // √(38.7 · 53.3) = 45.4, on a step of 2
    CHECK(advice(140, 200) == 170.0 * newton_metre);  // 167.3, on a step of 10
    CHECK(advice(140, 900) == 180.0 * newton_metre);  // a quarter over the lower end, 175, on a step of 10
    CHECK(advice(0.55, 4) == 1.0 * newton_metre);     // 0.69 rounds to 0.5, which is too little
    CHECK(advice(31, 38.4) == 34.0 * newton_metre);   // 34.5, on a step of 2, the nearer one below
    CHECK(advice(60, 66) == 65.0 * newton_metre);     // 62.9, on a step of 5
    CHECK(advice(11.5, 12.9) == 12.0 * newton_metre); // 12.2, on a step of 1
    CHECK(advice(7.6, 8.2) == 8.0 * newton_metre);    // 7.89, on a step of 0.5
    CHECK(advice(2.1, 2.4) == std::nullopt);          // no half newton metre in it
    CHECK(advice(2.1, 2.5) == 2.5 * newton_metre);
    CHECK(advice(20, 19) == std::nullopt);
    CHECK(advice(62.6, 62.9) == std::nullopt);
    CHECK(advice(62.4, 62.6) == 62.5 * newton_metre);
    CHECK(outside([&] { return advice(0, 5); }) == "the lower end of the window must be more than zero");
}

TEST_CASE("turns of a taper thread") {
    // R1/2: gauge length 8.2, useful 13.2, 14 per inch: 4.52 turns by hand, 2.756 to the end (ISO 7-1 calls it 2 3/4)
    const TaperTurns turns = taper_turns(8.2 * millimetre, 13.2 * millimetre, 25.4 / 14 * millimetre);
    CHECK_THAT(turns.hand_tight, WithinRel(8.2 * 14 / 25.4, 1e-12));
    CHECK_THAT(turns.available, WithinRel(2.75, 0.01));
    CHECK_THAT(turns.interference.in(millimetre), WithinRel(25.4 / 14 / 16, 1e-12));
    CHECK_THAT(outside([] { return taper_turns(8.0 * millimetre, 8.0 * millimetre, 1.0 * millimetre).available; }),
               Contains("leaves nothing behind"));
    CHECK(outside([] { return taper_turns(0 * millimetre, 8.0 * millimetre, 1.0 * millimetre).available; }) ==
          "the gauge length must be more than zero");
    CHECK(outside([] { return taper_turns(1.0 * millimetre, 8.0 * millimetre, 0 * millimetre).available; }) ==
          "the pitch must be more than zero");
}

TEST_CASE("outside its limits the plug says so") {
    CHECK_THAT(outside([] { return seating_load(18.0 * millimetre, 18.0 * millimetre, 1.0 * megapascal); }),
               Contains("has no face"));
    CHECK(outside([] { return seating_load(0 * millimetre, 18.0 * millimetre, 1.0 * megapascal); }) ==
          "the inner diameter of the ring must be more than zero");
    CHECK(outside([] { return seating_load(1.0 * millimetre, 18.0 * millimetre, 0 * megapascal); }) ==
          "the seating stress must be more than zero");
    CHECK(outside([] {
              return plug_window(k_plug, limits(), {0.16, 0.08}).high;
          }) == "the band of friction 0.16 to 0.08 runs backwards");
    CHECK_THAT(outside([] { return plug_window(k_plug, limits(), {0.01, 0.08}).high; }), Contains("lies outside 0.02"));
    Plug hollow = k_plug;
    hollow.bore = 17.0 * millimetre;
    CHECK_THAT(outside([&] { return plug_window(hollow, limits(), k_friction).high; }), Contains("leaves nothing of a core"));
    hollow.bore = -1.0 * millimetre;
    CHECK_THAT(outside([&] { return plug_window(hollow, limits(), k_friction).high; }), Contains("leaves nothing of a core"));
    CHECK(outside([] { return hollow_preload(0 * megapascal, k_plug.thread, 0.1, 0 * millimetre); }) ==
          "the strength of the section must be more than zero");
}
