// SPDX-License-Identifier: MIT
// The friction form: each way and back, its shares, how it moves with friction, and its limits. The tables that it
// reproduces stand in tests/published.

#include "clampbook/engine/friction.hpp"
#include "clampbook/engine/strength.hpp"
#include "outside.hpp"

#include <catch2/catch.hpp>

#include <random>

namespace {

using namespace clampbook;
using namespace clampbook::engine;
using namespace unit_tests;
using Catch::Contains;
using Catch::WithinRel;

FrictionJoint m12(double thread_friction, double head_friction) {
    return {metric_geometry(12.0 * millimetre, 1.75 * millimetre), thread_friction, head_friction, 16.63 * millimetre,
            13.5 * millimetre};
}

constexpr Stress k_yield = 640.0 * megapascal;

} // namespace

TEST_CASE("preload and torque in one go are the same as one after the other") {
    FrictionJoint joint{metric_geometry(10.0 * millimetre, 1.5 * millimetre), 0.10, 0.14, 16.0 * millimetre, 11.0 * millimetre};
    const Stress yield = 640.0 * megapascal;
    const FrictionTightening both = friction_tightening(yield, 0.9, joint);
    const Force preload = assembly_preload(yield, 0.9, joint.thread, joint.thread_friction);
    CHECK(both.preload == preload);
    CHECK(both.torque.total == friction_torque(preload, joint).total);
    CHECK(both.torque.head == friction_torque(preload, joint).head);
    const FrictionTightening elastic = friction_tightening(yield, 1, joint, Torsion::elastic);
    CHECK(elastic.preload == assembly_preload(yield, 1, joint.thread, joint.thread_friction, Torsion::elastic));
    joint.head_friction = 0.6;
    CHECK_THROWS_WITH(friction_tightening(yield, 0.9, joint), Contains("under the head lies outside 0.02 to 0.50"));
}

TEST_CASE("the friction form, worked by hand") {
    // d2 = 10.86334 mm, tan φ = 0.0512773, tan ρ′ = 0.161658, tan(φ + ρ′) = 0.214715; T/F = 1.166262 + 0.14 · 7.5325 mm
    const FrictionJoint joint = m12(0.14, 0.14);
    const TorqueShares shares = friction_torque(40000.0 * newton, joint);
    CHECK_THAT(shares.total.in(newton_metre), WithinRel(40.0 * (1.166262 + 1.05455), 1e-5));
    CHECK_THAT(shares.pitch.in(newton_metre), WithinRel(40.0 * 1.75 / (2 * 3.14159265358979), 1e-12));
    CHECK_THAT(shares.head.in(newton_metre), WithinRel(40.0 * 1.05455, 1e-12));
    // As = 84.2665 mm², d0 = 10.35816 mm: 1.5 · d2/d0 · 0.214715 = 0.337781; √(1 + 3 · 0.337781²) = 1.158571
    CHECK_THAT(assembly_preload(k_yield, 0.9, joint.thread, 0.14).in(newton), WithinRel(0.9 * 640 * 84.26654 / 1.158571, 1e-5));
    // with 2 in place of 1.5: 0.450374, 1.268271
    CHECK_THAT(assembly_preload(k_yield, 0.9, joint.thread, 0.14, Torsion::elastic).in(newton),
               WithinRel(0.9 * 640 * 84.26654 / 1.268271, 1e-5));
    // π/4 · (16.63² − 13.5²) = 74.0685 mm²
    CHECK_THAT(bearing_pressure(40000.0 * newton, 16.63 * millimetre, 13.5 * millimetre).in(megapascal),
               WithinRel(40000 / 74.06847, 1e-5));
}

TEST_CASE("the friction form agrees with itself over random joints") {
    std::mt19937 random{20261125};
    const auto between = [&](double low, double high) { return std::uniform_real_distribution<double>{low, high}(random); };
    for (int i = 0; i < 2000; ++i) {
        const double d = between(3, 64);
        const double p = between(0.05, 0.17) * d;
        const double hole = between(1.02, 1.3) * d;
        const FrictionJoint joint{metric_geometry(d * millimetre, p * millimetre), between(0.02, 0.48), between(0.02, 0.5),
                                  between(1.05, 2) * hole * millimetre, hole * millimetre};
        const double share = between(0.05, 1);
        const Torsion torsion = i % 2 == 0 ? Torsion::plastic : Torsion::elastic;
        INFO("d " << d << ", P " << p << ", thread " << joint.thread_friction << ", head " << joint.head_friction);
        const Force preload = assembly_preload(k_yield, share, joint.thread, joint.thread_friction, torsion);
        REQUIRE_THAT(utilisation_of(preload, k_yield, joint.thread, joint.thread_friction, torsion), WithinRel(share, 1e-12));
        // the twist takes something of the pull, and more of it by the older rule
        REQUIRE(preload < share * load_at(k_yield, joint.thread.stress_area));
        REQUIRE(assembly_preload(k_yield, share, joint.thread, joint.thread_friction, Torsion::elastic) <=
                assembly_preload(k_yield, share, joint.thread, joint.thread_friction));
        const TorqueShares shares = friction_torque(preload, joint);
        REQUIRE_THAT((shares.pitch + shares.thread + shares.head).in(newton_metre),
                     WithinRel(shares.total.in(newton_metre), 1e-12));
        REQUIRE(shares.pitch > 0 * newton_metre);
        REQUIRE(shares.thread > 0 * newton_metre);
        REQUIRE_THAT(friction_preload(shares.total, joint).in(newton), WithinRel(preload.in(newton), 1e-12));
        const double k = equivalent_nut_factor(joint);
        REQUIRE_THAT(k * preload.in(newton) * d / 1000, WithinRel(shares.total.in(newton_metre), 1e-12));
        // more friction in the thread: less preload to the same stress, and less from the same torque
        FrictionJoint rougher = joint;
        rougher.thread_friction += 0.01;
        REQUIRE(assembly_preload(k_yield, share, joint.thread, rougher.thread_friction, torsion) < preload);
        REQUIRE(friction_preload(shares.total, rougher) < preload);
    }
}

TEST_CASE("a nut factor and the friction behind it lead to each other") {
    for (const double friction : {0.02, 0.08, 0.12, 0.20, 0.50}) {
        REQUIRE_THAT(friction_of_nut_factor(equivalent_nut_factor(m12(friction, friction)), m12(0.3, 0.1)),
                     WithinRel(friction, 1e-12));
    }
    CHECK_THROWS_WITH(friction_of_nut_factor(0.02, m12(0.14, 0.14)),
                      "a nut factor of 0.02 lies outside 0.046 to 0.607, which friction from 0.02 to 0.5 gives here");
    CHECK_THROWS_AS(friction_of_nut_factor(0.9, m12(0.14, 0.14)), Error);
}

TEST_CASE("outside its limits the friction form says so") {
    const FrictionJoint good = m12(0.14, 0.14);
    const auto with = [&](auto change) {
        FrictionJoint joint = good;
        change(joint);
        return outside([&] { (void)friction_torque(1000.0 * newton, joint); });
    };
    CHECK(with([](auto&) {}) == "accepted");
    for (const double friction : {0.019, 0.501, -0.1, k_nan}) {
        CHECK_THAT(with([&](auto& joint) { joint.thread_friction = friction; }),
                   Contains("in the thread lies outside 0.02 to 0.50"));
        CHECK_THAT(with([&](auto& joint) { joint.head_friction = friction; }),
                   Contains("under the head lies outside 0.02 to 0.50"));
        CHECK_THAT(outside([&] { (void)assembly_preload(k_yield, 0.9, good.thread, friction); }), Contains("in the thread"));
    }
    CHECK(with([](auto& joint) { joint.bearing_inner = joint.bearing_outer; }) ==
          "a bearing face of 16.63 mm does not cover a hole of 16.63 mm");
    CHECK(with([](auto& joint) { joint.bearing_outer = k_infinity * millimetre; }) ==
          "a bearing face of inf mm does not cover a hole of 13.5 mm");
    CHECK(with([](auto& joint) { joint.bearing_inner = 0.0 * millimetre; }) == "the hole under the head must be more than zero");
    CHECK_THAT(with([](auto& joint) {
                   joint.thread.pitch = 60.0 * millimetre;
                   joint.thread_friction = 0.5;
               }),
               Contains("is too steep for a thread of 12 mm"));
    for (const double share : {0.0, -0.1, 1.001, k_nan}) {
        CHECK_THAT(outside([&] { (void)assembly_preload(k_yield, share, good.thread, 0.14); }),
                   Contains("lies outside 0 to 100 %"));
    }
    CHECK(outside([&] { (void)assembly_preload(0.0 * megapascal, 0.9, good.thread, 0.14); }) ==
          "the yield strength must be more than zero");
    CHECK(outside([&] { (void)friction_torque(0.0 * newton, good); }) == "the preload must be more than zero");
    CHECK(outside([&] { (void)friction_preload(k_nan * newton_metre, good); }) == "the torque must be more than zero");
    CHECK(outside([&] { (void)utilisation_of(0.0 * newton, k_yield, good.thread, 0.14); }) ==
          "the preload must be more than zero");
    CHECK_THAT(outside([&] { (void)bearing_pressure(1.0 * newton, 10.0 * millimetre, 11.0 * millimetre); }),
               Contains("does not cover"));
}
