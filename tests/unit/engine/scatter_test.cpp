// SPDX-License-Identifier: MIT
// Scatter: bounds and factors both ways, draws that are the same everywhere and have the moments of their distribution, and
// the limits.

#include "clampbook/engine/scatter.hpp"
#include "outside.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numeric>
#include <random>

namespace {

using namespace clampbook;
using namespace clampbook::engine;
using namespace unit_tests;
using Catch::Contains;
using Catch::WithinAbs;
using Catch::WithinRel;

FrictionJoint m10() {
    return {metric_geometry(10.0 * millimetre, 1.5 * millimetre), 0.1, 0.1, 14.63 * millimetre, 11.0 * millimetre};
}

constexpr Force k_mean = 25000.0 * newton;

} // namespace

TEST_CASE("tightening factor and scatter, each from the other") {
    CHECK(tightening_factor(0) == 1);
    CHECK_THAT(tightening_factor(0.25), WithinRel(5.0 / 3, 1e-15));
    CHECK_THAT(scatter_of(1.6), WithinRel(0.6 / 2.6, 1e-15));
    CHECK(scatter_of(1) == 0);
    const PreloadBounds bounds = bounds_about(k_mean, 0.2);
    CHECK_THAT(bounds.least.in(newton), WithinRel(20000, 1e-14));
    CHECK_THAT(bounds.most.in(newton), WithinRel(30000, 1e-14));
    CHECK_THAT(bounds.factor(), WithinRel(tightening_factor(0.2), 1e-14));
    CHECK_THAT(least_preload(bounds.most, bounds.factor()).in(newton), WithinRel(bounds.least.in(newton), 1e-14));
}

TEST_CASE("bounds by friction: rough and weak against smooth and strong") {
    const PreloadBounds bounds = friction_bounds(40.0 * newton_metre, m10(), {0.10, 0.16}, 0.04);
    FrictionJoint smooth = m10();
    FrictionJoint rough = m10();
    rough.thread_friction = rough.head_friction = 0.16;
    CHECK_THAT(bounds.most.in(newton), WithinRel(friction_preload(41.6 * newton_metre, smooth).in(newton), 1e-14));
    CHECK_THAT(bounds.least.in(newton), WithinRel(friction_preload(38.4 * newton_metre, rough).in(newton), 1e-14));
    const PreloadBounds none = friction_bounds(40.0 * newton_metre, m10(), {0.12, 0.12}, 0);
    CHECK(none.least == none.most);
}

TEST_CASE("preload after tightening and in service") {
    // NASA-STD-5020A: 2000 lbf, Γ 35 %, over four screws 17.5 % for the least
    const PreloadBounds initial = initial_bounds({2000.0 * newton, 0.35, 1.04, 0.96, 4});
    CHECK_THAT(initial.most.in(newton), WithinRel(2000 * 1.04 * 1.35, 1e-14));
    CHECK_THAT(initial.least.in(newton), WithinRel(2000 * 0.96 * 0.825, 1e-14));
    const PreloadBounds later = service_bounds(initial, {100.0 * newton, 300.0 * newton, 0.05});
    CHECK_THAT(later.most.in(newton), WithinRel(initial.most.in(newton) + 100, 1e-14));
    CHECK_THAT(later.least.in(newton), WithinRel(initial.least.in(newton) * 0.95 - 300, 1e-14));
    CHECK(service_bounds(initial, {0 * newton, 5000.0 * newton, 0}).least < 0 * newton); // the joint is open
}

TEST_CASE("the generator is the one that the language fixes") {
    // ISO/IEC 14882, [rand.predef]: the 10000th number of a default-seeded mt19937_64
    std::mt19937_64 generator;
    generator.discard(9999);
    CHECK(generator() == 9981545732273789042ULL);
}

TEST_CASE("the same seed draws the same, to the last bit") {
    // Worked by the definition: the top 53 bits of each number, as a share of the band.
    std::mt19937_64 generator{7};
    std::vector<double> expected(1000);
    for (double& value : expected) {
        value = 20000.0 + static_cast<double>(generator() >> 11U) / 9007199254740992.0 * (30000.0 - 20000.0);
    }
    const Spread drawn = draw_about(k_mean, 0.2, {7, 1000, Shape::rectangular});
    std::sort(expected.begin(), expected.end());
    CHECK(drawn.least().in(newton) == expected.front());
    CHECK(drawn.most().in(newton) == expected.back());
    CHECK(drawn.percentile(0.5).in(newton) == expected[499]);
    CHECK(drawn.mean() == draw_about(k_mean, 0.2, {7, 1000, Shape::rectangular}).mean());
    CHECK(drawn.mean() != draw_about(k_mean, 0.2, {8, 1000, Shape::rectangular}).mean());
    // By friction: what the same arithmetic gives in another language, its generator written out by the definition.
    const Spread friction = draw_by_friction(40.0 * newton_metre, m10(), {0.10, 0.16}, 0.04, {1, 1000, Shape::rectangular});
    CHECK(friction.least().in(newton) == 18844.392469231647);
    CHECK(friction.percentile(0.5).in(newton) == 22688.078076342637);
    CHECK(friction.most().in(newton) == 28964.994775844836);
}

TEST_CASE("a million draws have the moments of their distribution") {
    const auto check = [](Shape shape, double divisor, double quarter) {
        const Spread drawn = draw_about(k_mean, 0.2, {3, 1'000'000, shape});
        CHECK(drawn.count() == 1'000'000);
        CHECK_THAT(drawn.mean().in(newton), WithinRel(25000, 5e-4));
        CHECK_THAT(drawn.deviation().in(newton), WithinRel(5000 / std::sqrt(divisor), 2e-3));
        CHECK_THAT(drawn.percentile(0.25).in(newton), WithinRel(quarter, 1e-3));
        CHECK(drawn.least() >= 20000.0 * newton);
        CHECK(drawn.most() <= 30000.0 * newton);
    };
    check(Shape::rectangular, 3, 22500);
    check(Shape::triangular, 6, 20000 + 5000 * std::sqrt(0.5)); // the lower half of a triangle: x = √(2 p) of its half width
    // Over and under a limit: exact shares are known.
    const Spread drawn = draw_about(k_mean, 0.2, {3, 1'000'000, Shape::rectangular});
    CHECK_THAT(drawn.share_over(29000.0 * newton), WithinAbs(0.1, 2e-3));
    CHECK_THAT(drawn.share_under(21000.0 * newton), WithinAbs(0.1, 2e-3));
    CHECK(drawn.share_over(30000.0 * newton) == 0);
    CHECK(drawn.share_under(20000.0 * newton) == 0);
}

TEST_CASE("draws by friction stay within their bounds and come close to them") {
    const Band band{0.10, 0.16};
    const PreloadBounds bounds = friction_bounds(40.0 * newton_metre, m10(), band, 0.04);
    for (const Shape shape : {Shape::rectangular, Shape::triangular}) {
        const Spread drawn = draw_by_friction(40.0 * newton_metre, m10(), band, 0.04, {1, 1'000'000, shape});
        CHECK(drawn.least() >= bounds.least);
        CHECK(drawn.most() <= bounds.most);
        CHECK(drawn.least() < 1.1 * bounds.least);
        CHECK(drawn.most() > 0.9 * bounds.most);
    }
    // Without a tool's deviation and without a band nothing is left to chance.
    const Spread fixed = draw_by_friction(40.0 * newton_metre, m10(), {0.12, 0.12}, 0, {1, 1000, Shape::rectangular});
    CHECK(fixed.least() == fixed.most());
    CHECK(fixed.deviation().in(newton) < 1e-6);
}

TEST_CASE("percentiles and histogram of a handful of values") {
    const Spread few{{4, 1, 3, 2, 5}};
    CHECK_THAT((Spread{{3, 7}}.deviation().in(newton)), WithinRel(std::sqrt(8), 1e-14)); // 2² + 2² over one
    CHECK(few.percentile(0.2) == 1.0 * newton);
    CHECK(few.percentile(0.21) == 2.0 * newton);
    CHECK(few.percentile(0.99) == 5.0 * newton);
    CHECK(few.mean() == 3.0 * newton);
    CHECK_THAT(few.deviation().in(newton), WithinRel(std::sqrt(2.5), 1e-15));
    CHECK(few.share_over(3.0 * newton) == 0.4);
    CHECK(few.share_under(3.0 * newton) == 0.4);
    CHECK(few.histogram(1.0 * newton, 5.0 * newton, 2) == std::vector<std::size_t>{2, 3}); // 3 begins the second half
    CHECK(few.histogram(1.0 * newton, 5.0 * newton, 4) == std::vector<std::size_t>{1, 1, 1, 2});
    CHECK(few.histogram(2.0 * newton, 4.0 * newton, 1) == std::vector<std::size_t>{3});
    const Spread drawn = draw_about(k_mean, 0.2, {3, 1000, Shape::rectangular});
    const auto counts = drawn.histogram(20000.0 * newton, 30000.0 * newton, 7);
    CHECK(std::accumulate(counts.begin(), counts.end(), std::size_t{0}) == 1000);
    CHECK(Spread{{1}}.deviation() == 0.0 * newton);
}

TEST_CASE("outside its limits scatter says so") {
    for (const double s : {-0.01, 1.0, k_nan}) {
        CHECK_THAT(outside([&] { return tightening_factor(s); }), Contains("lies outside 0 to under 100 %"));
        CHECK_THAT(outside([&] { return bounds_about(k_mean, s).least; }), Contains("lies outside 0 to under 100 %"));
        CHECK_THAT(outside([&] {
                       return friction_bounds(1.0 * newton_metre, m10(), {0.1, 0.2}, s).least;
                   }),
                   Contains("a tool's deviation"));
        CHECK_THAT(outside([&] { return initial_bounds({k_mean, s}).least; }), Contains("lies outside 0 to under 100 %"));
    }
    for (const double alpha : {0.99, k_nan, k_infinity}) {
        CHECK_THAT(outside([&] { return scatter_of(alpha); }), Contains("is less than 1"));
        CHECK_THAT(outside([&] { return least_preload(k_mean, alpha); }), Contains("is less than 1"));
    }
    CHECK(outside([] { return bounds_about(0 * newton, 0.1).least; }) == "the preload must be more than zero");
    CHECK(outside([] {
              return friction_bounds(1.0 * newton_metre, m10(), {0.2, 0.1}, 0).least;
          }) == "the band of friction 0.2 to 0.1 runs backwards");
    CHECK_THAT(outside([] {
                   return friction_bounds(1.0 * newton_metre, m10(), {0.01, 0.1}, 0).least;
               }),
               Contains("lies outside 0.02"));
    CHECK(outside([] {
              return draw_about(k_mean, 0.1, {1, 999, Shape::rectangular}).mean();
          }) == "999 draws lie outside 1000 to 10000000");
    CHECK_THAT(outside([] {
                   return draw_about(k_mean, 0.1, {1, 10'000'001, Shape::rectangular}).mean();
               }),
               Contains("lie outside"));
    CHECK(outside([] { return Spread{{}}.mean(); }) == "a spread needs at least one preload");
    CHECK_THAT(outside([] { return Spread{{1}}.percentile(0); }), Contains("lies outside 0 to 100 %"));
    CHECK_THAT(outside([] { return Spread{{1}}.percentile(1); }), Contains("lies outside 0 to 100 %"));
    CHECK_THAT(outside([] { return Spread{{1}}.histogram(2.0 * newton, 2.0 * newton, 3).size(); }), Contains("a band in order"));
    CHECK_THAT(outside([] { return Spread{{1}}.histogram(1.0 * newton, 2.0 * newton, 0).size(); }),
               Contains("at least one part"));
    CHECK(outside([] { return initial_bounds({k_mean, 0.1, 1, 1, 0}).least; }) == "a joint has at least one screw, not 0");
    CHECK_THAT(outside([] { return initial_bounds({k_mean, 0.1, 0.9, 1.1, 1}).least; }), Contains("runs backwards"));
    CHECK_THAT(outside([] {
                   return service_bounds({k_mean, k_mean}, {-1.0 * newton, 0 * newton, 0}).least;
               }),
               Contains("must not be negative"));
    CHECK_THAT(outside([] {
                   return service_bounds({k_mean, k_mean}, {0 * newton, 0 * newton, 1}).least;
               }),
               Contains("under 100 %"));
}
