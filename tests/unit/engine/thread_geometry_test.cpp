// SPDX-License-Identifier: MIT
// Basic sizes of threads against the closed form of their profiles and against printed tables.

#include "clampbook/engine/thread_geometry.hpp"
#include "outside.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

namespace {

using namespace clampbook;
using namespace clampbook::engine;
using namespace unit_tests;
using Catch::Contains;
using Catch::WithinAbs;
using Catch::WithinRel;

} // namespace

TEST_CASE("a metric thread has the profile of ISO 68-1") {
    std::mt19937_64 random{11};
    std::uniform_real_distribution<double> any_pitch{0.2, 8};
    std::uniform_real_distribution<double> pitches{1.4, 40};
    for (int i = 0; i < 2000; ++i) {
        const double p = any_pitch(random);
        const double d = pitches(random) * p;
        const ThreadGeometry g = metric_geometry(d * millimetre, p * millimetre);
        // from the height of the sharp triangle, H = √3/2 · P, and not from the decimals that the engine uses
        const double h = std::sqrt(3.0) / 2 * p;
        const double rounding = 1e-6 * p;
        REQUIRE(g.major.in(millimetre) == d);
        REQUIRE(g.pitch.in(millimetre) == p);
        REQUIRE_THAT(g.pitch_diameter.in(millimetre), WithinAbs(d - 3 * h / 4, rounding));
        REQUIRE_THAT(g.minor_internal.in(millimetre), WithinAbs(d - 5 * h / 4, rounding));
        REQUIRE_THAT(g.minor_external.in(millimetre), WithinAbs(d - 17 * h / 12, rounding));
        const double mean = (2 * d - 3 * h / 4 - 17 * h / 12) / 2;
        REQUIRE_THAT(g.stress_area.in(square_millimetre), WithinRel(std::acos(-1.0) / 4 * mean * mean, 2e-5));
        REQUIRE(g.minor_external < g.minor_internal);
        REQUIRE(g.minor_internal < g.pitch_diameter);
        REQUIRE(g.pitch_diameter < g.major);
    }
}

TEST_CASE("metric threads are as printed") {
    // ISO 724 (pitch and minor diameters), ISO 898-1 Tables 4 and 6 (d3 by its clause 9.1.6.1; stress areas)
    const struct {
        double d, p, d2, minor_internal, d3, area, area_rounding;
    } printed[] = {
        {6, 1, 5.350, 4.917, 4.773, 20.1, 0.05},     {8, 1.25, 7.188, 6.647, 6.466, 36.6, 0.05},
        {10, 1.5, 9.026, 8.376, 8.160, 58.0, 0.05},  {12, 1.75, 10.863, 10.106, 9.853, 84.3, 0.05},
        {16, 2, 14.701, 13.835, 13.546, 157, 0.5},   {20, 2.5, 18.376, 17.294, 16.933, 245, 0.5},
        {24, 3, 22.051, 20.752, 20.319, 353, 0.5},   {18, 1.5, 17.026, 16.376, 16.160, 216, 0.5},
        {10, 1.25, 9.188, 8.647, 8.466, 61.2, 0.05}, {12, 1.5, 11.026, 10.376, 10.160, 88.1, 0.05},
    };
    for (const auto& row : printed) {
        INFO("M" << row.d << " x " << row.p);
        const ThreadGeometry g = metric_geometry(row.d * millimetre, row.p * millimetre);
        CHECK_THAT(g.pitch_diameter.in(millimetre), WithinAbs(row.d2, 0.00051));
        CHECK_THAT(g.minor_internal.in(millimetre), WithinAbs(row.minor_internal, 0.00051));
        CHECK_THAT(g.minor_external.in(millimetre), WithinAbs(row.d3, 0.00051));
        CHECK_THAT(g.stress_area.in(square_millimetre), WithinAbs(row.area, row.area_rounding));
    }
}

TEST_CASE("unified threads are as printed") {
    // ASME B1.1: basic pitch and minor diameters, stress areas, in
    const struct {
        double d, n, d2, minor_internal, area;
    } printed[] = {
        {0.25, 20, 0.2175, 0.1959, 0.0318},   {0.375, 16, 0.3344, 0.3073, 0.0775}, {0.5, 13, 0.4500, 0.4167, 0.1419},
        {0.4375, 14, 0.3911, 0.3602, 0.1063}, {0.75, 10, 0.6850, 0.6417, 0.334},   {1, 8, 0.9188, 0.8647, 0.606},
    };
    for (const auto& row : printed) {
        INFO(row.d << " in, " << row.n << " threads per inch");
        const ThreadGeometry g = unified_geometry(row.d * inch, row.n);
        CHECK_THAT(g.pitch.in(inch), WithinRel(1 / row.n, 1e-15));
        CHECK_THAT(g.pitch_diameter.in(inch), WithinAbs(row.d2, 0.000051));
        CHECK_THAT(g.minor_internal.in(inch), WithinAbs(row.minor_internal, 0.000051));
        CHECK_THAT(g.stress_area.in(square_inch), WithinAbs(row.area, row.area < 0.2 ? 0.000051 : 0.00051));
    }
}

TEST_CASE("a unified thread has the profile of ASME B1.1") {
    std::mt19937_64 random{12};
    std::uniform_real_distribution<double> any_count{4, 80};
    std::uniform_real_distribution<double> pitches{1.4, 40};
    for (int i = 0; i < 2000; ++i) {
        const double n = any_count(random);
        const double d = pitches(random) / n;
        const ThreadGeometry g = unified_geometry(d * inch, n);
        const double h = std::sqrt(3.0) / 2 / n;
        REQUIRE_THAT(g.pitch_diameter.in(inch), WithinAbs(d - 3 * h / 4, 1e-8));
        REQUIRE_THAT(g.minor_internal.in(inch), WithinAbs(d - 5 * h / 4, 1e-8));
        REQUIRE_THAT(g.minor_external.in(inch), WithinAbs(d - 11 * h / 8, 1e-8));
        const double core = d - 0.9743 / n;
        REQUIRE_THAT(g.stress_area.in(square_inch), WithinRel(std::acos(-1.0) / 4 * core * core, 1e-9));
    }
}

TEST_CASE("pipe threads are as printed") {
    // ISO 228-1, mm
    const struct {
        double d, n, d2, d1;
    } printed[] = {
        {9.728, 28, 9.147, 8.566}, {13.157, 19, 12.301, 11.445}, {20.955, 14, 19.793, 18.631}, {33.249, 11, 31.770, 30.291}};
    for (const auto& row : printed) {
        INFO(row.d << " mm, " << row.n << " threads per inch");
        const PipeGeometry g = whitworth_pipe_geometry(row.d * millimetre, row.n);
        CHECK(g.major.in(millimetre) == row.d);
        CHECK_THAT(g.pitch.in(millimetre), WithinRel(25.4 / row.n, 1e-15));
        CHECK_THAT(g.pitch_diameter.in(millimetre), WithinAbs(row.d2, 0.00101));
        CHECK_THAT(g.minor.in(millimetre), WithinAbs(row.d1, 0.00101));
        // the 55° profile: the depth is twice the difference of major and pitch diameter
        CHECK_THAT(row.d - g.minor.in(millimetre), WithinRel(2 * (row.d - g.pitch_diameter.in(millimetre)), 1e-12));
    }
}

TEST_CASE("a pitch of nothing is refused") {
    for (const double wrong : {0.0, -1.0, k_nan, k_infinity}) {
        CHECK(outside([&] { return metric_geometry(10.0 * millimetre, wrong * millimetre); }) ==
              "the pitch must be more than zero");
        CHECK(outside([&] { return unified_geometry(0.5 * inch, wrong); }) ==
              "the number of threads per inch must be more than zero");
        CHECK(outside([&] { return whitworth_pipe_geometry(10.0 * millimetre, wrong); }) ==
              "the number of threads per inch must be more than zero");
    }
}

TEST_CASE("a thread without a core is refused") {
    const char* const text = "leaves no core: its pitch is too coarse for the diameter";
    CHECK(outside([] { return metric_geometry(1.0 * millimetre, 1.0 * millimetre); }) ==
          "a thread of 1 mm leaves no core: its pitch is too coarse for the diameter");
    CHECK_THAT(outside([] { return metric_geometry(1.226869 * millimetre, 1.0 * millimetre); }), Contains(text));
    CHECK(metric_geometry(1.227 * millimetre, 1.0 * millimetre).minor_external > 0.0 * millimetre);
    CHECK_THAT(outside([] { return unified_geometry(0.1 * inch, 10); }), Contains("a thread of 2.54 mm leaves no core"));
    CHECK_THAT(outside([] { return whitworth_pipe_geometry(2.0 * millimetre, 14); }),
               Contains("a thread of 2 mm leaves no core"));
    for (const double wrong : {0.0, -10.0, k_nan}) {
        CHECK_THAT(outside([&] { return metric_geometry(wrong * millimetre, 1.0 * millimetre); }), Contains(text));
        CHECK_THAT(outside([&] { return unified_geometry(wrong * inch, 13); }), Contains(text));
        CHECK_THAT(outside([&] { return whitworth_pipe_geometry(wrong * millimetre, 14); }), Contains(text));
    }
}

TEST_CASE("an endless diameter is refused") {
    CHECK_THAT(outside([] { return metric_geometry(k_infinity * millimetre, 1.0 * millimetre); }), !Contains("accepted"));
    CHECK_THAT(outside([] { return unified_geometry(k_infinity * inch, 13); }), !Contains("accepted"));
    CHECK_THAT(outside([] { return whitworth_pipe_geometry(k_infinity * millimetre, 14); }), !Contains("accepted"));
}
