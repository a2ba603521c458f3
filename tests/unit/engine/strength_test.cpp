// SPDX-License-Identifier: MIT
// Loads on the stress area and the nut-factor form, with its inverse and its limits.

#include "clampbook/engine/strength.hpp"
#include "outside.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

namespace {

using namespace clampbook;
using namespace clampbook::engine;
using namespace unit_tests;
using Catch::Contains;
using Catch::WithinRel;

} // namespace

TEST_CASE("a load is stress times area") {
    CHECK_THAT(load_at(580.0 * megapascal, 58.0 * square_millimetre).in(newton), WithinRel(33640.0, 1e-14));
    CHECK_THAT(load_at(85000.0 * pound_per_square_inch, 0.0775 * square_inch).in(pound_force), WithinRel(6587.5, 1e-13));
    for (const double wrong : {0.0, -1.0, k_nan, k_infinity}) {
        CHECK(outside([&] { return load_at(wrong * megapascal, 58.0 * square_millimetre); }) ==
              "the stress must be more than zero");
        CHECK(outside([&] { return load_at(580.0 * megapascal, wrong * square_millimetre); }) ==
              "the stress area must be more than zero");
    }
}

TEST_CASE("torque is nut factor times preload times diameter") {
    CHECK_THAT(torque_for(25000.0 * newton, 0.2, 10.0 * millimetre).in(newton_metre), WithinRel(50.0, 1e-14));
    CHECK_THAT(torque_for(4000.0 * pound_force, 0.2, 0.375 * inch).in(pound_force_inch), WithinRel(300.0, 1e-13));
    CHECK_THAT(preload_from(50.0 * newton_metre, 0.2, 10.0 * millimetre).in(newton), WithinRel(25000.0, 1e-14));
}

TEST_CASE("preload and torque are each other's inverse") {
    std::mt19937_64 random{10};
    std::uniform_real_distribution<double> factor{k_nut_factor_min, k_nut_factor_max};
    std::uniform_real_distribution<double> load{10, 1e6};
    std::uniform_real_distribution<double> size{1, 100};
    for (int i = 0; i < 5000; ++i) {
        const Force preload = load(random) * newton;
        const Length diameter = size(random) * millimetre;
        const double k = factor(random);
        const Torque torque = torque_for(preload, k, diameter);
        REQUIRE_THAT(preload_from(torque, k, diameter) / preload, WithinRel(1.0, 1e-12));
        REQUIRE_THAT(torque.in(newton_metre), WithinRel(k * preload.in(newton) * diameter.in(millimetre) / 1000, 1e-12));
        // twice the preload wants twice the torque; a slipperier thread makes more preload of the same torque
        REQUIRE_THAT(torque_for(2.0 * preload, k, diameter) / torque, WithinRel(2.0, 1e-12));
        REQUIRE(preload_from(torque, k_nut_factor_min, diameter) >= preload_from(torque, k, diameter));
    }
}

TEST_CASE("a nut factor is taken up to its limits and not beyond") {
    const auto torque = [](double k) { return torque_for(25000.0 * newton, k, 10.0 * millimetre); };
    CHECK_THAT(torque(0.05).in(newton_metre), WithinRel(12.5, 1e-14));
    CHECK_THAT(torque(0.50).in(newton_metre), WithinRel(125.0, 1e-14));
    CHECK(outside([&] { return torque(std::nextafter(0.05, 0.0)); }) == "a nut factor of 0.05 lies outside 0.05 to 0.50");
    CHECK(outside([&] { return torque(0.049); }) == "a nut factor of 0.049 lies outside 0.05 to 0.50");
    CHECK(outside([&] { return torque(std::nextafter(0.5, 1.0)); }) == "a nut factor of 0.5 lies outside 0.05 to 0.50");
    CHECK(outside([&] { return torque(0.501); }) == "a nut factor of 0.501 lies outside 0.05 to 0.50");
    for (const double wrong : {0.0, -0.2, k_infinity, k_nan}) {
        CHECK_THAT(outside([&] { return torque(wrong); }), Contains("lies outside 0.05 to 0.50"));
        CHECK_THAT(outside([&] { return preload_from(50.0 * newton_metre, wrong, 10.0 * millimetre); }),
                   Contains("lies outside 0.05 to 0.50"));
    }
}

TEST_CASE("what is not more than zero is refused by its name") {
    for (const double wrong : {0.0, -1.0, k_nan, k_infinity}) {
        CHECK(outside([&] { return torque_for(wrong * newton, 0.2, 10.0 * millimetre); }) ==
              "the preload must be more than zero");
        CHECK(outside([&] { return torque_for(1000.0 * newton, 0.2, wrong * millimetre); }) ==
              "the diameter must be more than zero");
        CHECK(outside([&] { return preload_from(wrong * newton_metre, 0.2, 10.0 * millimetre); }) ==
              "the torque must be more than zero");
        CHECK(outside([&] { return preload_from(50.0 * newton_metre, 0.2, wrong * millimetre); }) ==
              "the diameter must be more than zero");
    }
}

TEST_CASE("a band of nut factors makes a band of preloads") {
    const PreloadBand band = preload_band(50.0 * newton_metre, 0.1, 0.2, 10.0 * millimetre);
    CHECK_THAT(band.least.in(newton), WithinRel(25000.0, 1e-14));
    CHECK_THAT(band.most.in(newton), WithinRel(50000.0, 1e-14));
    const PreloadBand point = preload_band(50.0 * newton_metre, 0.2, 0.2, 10.0 * millimetre);
    CHECK(point.least == point.most);
    CHECK(outside([] { return preload_band(50.0 * newton_metre, 0.2, 0.1, 10.0 * millimetre); }) ==
          "a band of nut factors runs from the lower to the higher, not from 0.2 to 0.1");
    CHECK_THAT(outside([] { return preload_band(50.0 * newton_metre, 0.04, 0.2, 10.0 * millimetre); }),
               Contains("0.04 lies outside"));
    CHECK_THAT(outside([] { return preload_band(50.0 * newton_metre, 0.1, 0.6, 10.0 * millimetre); }),
               Contains("0.6 lies outside"));
}
