// SPDX-License-Identifier: MIT
// Tolerances and limits of size: against printed ones, their order, and that a nut always goes on its screw.

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

// The order that any pair of limits must have, and the clearance between screw and nut.
void require_order(const Limits& external, const Limits& internal) {
    REQUIRE(external.major_min < external.major_max);
    REQUIRE(external.pitch_min < external.pitch_max);
    REQUIRE(external.minor_min < external.minor_max);
    REQUIRE(internal.pitch_min < internal.pitch_max);
    REQUIRE(internal.minor_min < internal.minor_max);
    REQUIRE(internal.major_max == 0.0 * millimetre);
    REQUIRE(external.pitch_max < external.major_min);
    REQUIRE(external.minor_max < external.pitch_min);
    REQUIRE(external.minor_min > 0.0 * millimetre);
    REQUIRE(internal.minor_max < internal.pitch_max);
    REQUIRE(internal.pitch_max < internal.major_min);
    // the internal thread lies outside the external one, everywhere
    REQUIRE(internal.major_min > external.major_max);
    REQUIRE(internal.pitch_min > external.pitch_max);
    REQUIRE(internal.minor_min > external.minor_max);
}

} // namespace

TEST_CASE("metric tolerances are as printed, or a step beside it where the print was smoothed") {
    // ISO 965-1 Tables 1 to 5, µm: es of g, Td 6, TD1 6, Td2 6, TD2 6
    const struct {
        double d, p, es, major, minor, pitch_external, pitch_internal;
    } printed[] = {
        {6, 1, 26, 180, 236, 112, 150},     {8, 1.25, 28, 212, 265, 118, 160}, {10, 1.5, 32, 236, 300, 132, 180},
        {12, 1.75, 34, 265, 335, 150, 200}, {16, 2, 38, 280, 375, 160, 212},   {18, 1.5, 32, 236, 300, 140, 190},
        {20, 2.5, 42, 335, 450, 170, 224},  {24, 3, 48, 375, 500, 200, 265},
    };
    for (const auto& row : printed) {
        INFO("M" << row.d << " x " << row.p);
        const Tolerances t = metric_tolerances(row.d * millimetre, row.p * millimetre);
        CHECK_THAT(t.fundamental.in(micrometre), WithinAbs(row.es, 1.001));
        CHECK_THAT(t.major_external.in(micrometre), WithinAbs(row.major, 1e-9));
        CHECK_THAT(t.pitch_external.in(micrometre), WithinAbs(row.pitch_external, 1e-9));
        CHECK_THAT(t.minor_internal.in(micrometre), Catch::WithinRel(row.minor, 0.062)); // a step of R40 is 6 %
        CHECK_THAT(t.pitch_internal.in(micrometre), Catch::WithinRel(row.pitch_internal, 0.062));
    }
}

TEST_CASE("the limits of M10 are as printed") {
    // ISO 965-2: M10, 6g and 6H, mm
    const ThreadGeometry g = metric_geometry(10.0 * millimetre, 1.5 * millimetre);
    const Tolerances t{32.0 * micrometre, 236.0 * micrometre, 300.0 * micrometre, 132.0 * micrometre,
                       180.0 * micrometre}; // ISO 965-1
    const Limits screw = external_limits(g, t);
    CHECK_THAT(screw.major_max.in(millimetre), WithinAbs(9.968, 0.00051));
    CHECK_THAT(screw.major_min.in(millimetre), WithinAbs(9.732, 0.00051));
    CHECK_THAT(screw.pitch_max.in(millimetre), WithinAbs(8.994, 0.00051));
    CHECK_THAT(screw.pitch_min.in(millimetre), WithinAbs(8.862, 0.00051));
    CHECK_THAT(screw.minor_max.in(millimetre), WithinAbs(8.128, 0.00051));
    CHECK_THAT(screw.minor_min.in(millimetre), WithinAbs(7.938, 0.00051));
    const Limits nut = internal_limits(g, t);
    CHECK_THAT(nut.major_min.in(millimetre), WithinAbs(10.0, 1e-12));
    CHECK_THAT(nut.pitch_min.in(millimetre), WithinAbs(9.026, 0.00051));
    CHECK_THAT(nut.pitch_max.in(millimetre), WithinAbs(9.206, 0.00051));
    CHECK_THAT(nut.minor_min.in(millimetre), WithinAbs(8.376, 0.00051));
    CHECK_THAT(nut.minor_max.in(millimetre), WithinAbs(8.676, 0.00051));
}

TEST_CASE("the limits of unified threads are as printed") {
    // ASME B1.1, classes 2A and 2B, in
    const struct {
        double d, n, major_max, major_min, pitch_max, pitch_min, nut_pitch_max, nut_minor_min, nut_minor_max;
    } printed[] = {
        {0.25, 20, 0.2489, 0.2408, 0.2164, 0.2127, 0.2224, 0.196, 0.207},
        {0.375, 16, 0.3737, 0.3643, 0.3331, 0.3287, 0.3401, 0.307, 0.321},
        {0.5, 13, 0.4985, 0.4876, 0.4485, 0.4435, 0.4565, 0.417, 0.434},
        {0.5, 20, 0.4987, 0.4906, 0.4662, 0.4619, 0.4731, 0.446, 0.457},
    };
    for (const auto& row : printed) {
        INFO(row.d << " in, " << row.n << " threads per inch");
        const ThreadGeometry g = unified_geometry(row.d * inch, row.n);
        const Tolerances t = unified_tolerances(row.d * inch, row.n, row.d * inch);
        const Limits screw = external_limits(g, t);
        const Limits nut = internal_limits(g, t);
        const double step = 0.000101; // the print rounds the tolerance and the limit, a step together
        CHECK_THAT(screw.major_max.in(inch), WithinAbs(row.major_max, step));
        CHECK_THAT(screw.major_min.in(inch), WithinAbs(row.major_min, step));
        CHECK_THAT(screw.pitch_max.in(inch), WithinAbs(row.pitch_max, step));
        CHECK_THAT(screw.pitch_min.in(inch), WithinAbs(row.pitch_min, step));
        CHECK_THAT(nut.pitch_max.in(inch), WithinAbs(row.nut_pitch_max, step));
        CHECK_THAT(nut.minor_min.in(inch), WithinAbs(row.nut_minor_min, 0.00051));
        CHECK_THAT(nut.minor_max.in(inch), WithinAbs(row.nut_minor_max, 0.00051));
    }
}

TEST_CASE("limits are in order and leave clearance, whatever the metric thread") {
    std::mt19937_64 random{13};
    std::uniform_real_distribution<double> any_pitch{0.2, 8};
    std::uniform_real_distribution<double> any_size{1, 180};
    int tried = 0;
    for (int i = 0; i < 5000; ++i) {
        const double p = any_pitch(random);
        const double d = any_size(random);
        if (d < 2 * p) {
            continue; // hardly a thread
        }
        INFO("M" << d << " x " << p);
        const ThreadGeometry g = metric_geometry(d * millimetre, p * millimetre);
        const Tolerances t = metric_tolerances(d * millimetre, p * millimetre);
        require_order(external_limits(g, t), internal_limits(g, t));
        ++tried;
    }
    CHECK(tried > 4000);
}

TEST_CASE("limits are in order and leave clearance, whatever the unified thread") {
    std::mt19937_64 random{14};
    std::uniform_real_distribution<double> any_count{4, 80};
    std::uniform_real_distribution<double> pitches{3.5, 40};
    for (int i = 0; i < 5000; ++i) {
        const double n = any_count(random);
        const double d = pitches(random) / n;
        INFO(d << " in, " << n << " threads per inch");
        const ThreadGeometry g = unified_geometry(d * inch, n);
        const Tolerances t = unified_tolerances(d * inch, n, i % 2 == 0 ? d * inch : (9 / n) * inch);
        require_order(external_limits(g, t), internal_limits(g, t));
        REQUIRE_THAT(t.fundamental / t.pitch_external, Catch::WithinRel(0.3, 1e-12));
        REQUIRE_THAT(t.pitch_internal / t.pitch_external, Catch::WithinRel(1.3, 1e-12));
    }
}

TEST_CASE("tolerances do not shrink as pitch or diameter grow") {
    Tolerances before = metric_tolerances(20.0 * millimetre, 0.2 * millimetre);
    for (double p = 0.25; p <= 8; p += 0.05) {
        const Tolerances now = metric_tolerances(20.0 * millimetre, p * millimetre);
        INFO("pitch " << p);
        REQUIRE(now.fundamental >= before.fundamental);
        REQUIRE(now.major_external >= before.major_external);
        REQUIRE(now.pitch_external >= before.pitch_external);
        REQUIRE(now.pitch_internal >= before.pitch_internal);
        before = now;
    }
    before = metric_tolerances(1.0 * millimetre, 0.2 * millimetre);
    for (double d = 1; d <= 180; d += 0.7) {
        const Tolerances now = metric_tolerances(d * millimetre, 0.2 * millimetre);
        INFO("diameter " << d);
        REQUIRE(now.pitch_external >= before.pitch_external);
        REQUIRE(now.fundamental == before.fundamental);
        before = now;
    }
}

TEST_CASE("a diameter falls into the range of ISO 965-1 up to and including its end") {
    const auto range = [](double d) {
        const SizeRange r = metric_size_range(d * millimetre);
        return std::pair{r.over.in(millimetre), r.up_to.in(millimetre)};
    };
    CHECK(range(1) == std::pair{0.99, 1.4});
    CHECK(range(1.4) == std::pair{0.99, 1.4});
    CHECK(range(1.41) == std::pair{1.4, 2.8});
    CHECK(range(5.6) == std::pair{2.8, 5.6});
    CHECK(range(10) == std::pair{5.6, 11.2});
    CHECK(range(22.4) == std::pair{11.2, 22.4});
    CHECK(range(22.5) == std::pair{22.4, 45.0});
    CHECK(range(180) == std::pair{90.0, 180.0});
}

TEST_CASE("outside the standard there is no tolerance, and the limit is named") {
    CHECK(outside([] { return metric_size_range(0.9 * millimetre); }) ==
          "ISO 965-1 gives tolerances for diameters of 1 to 180 mm, not 0.9 mm");
    CHECK_THAT(outside([] { return metric_size_range(180.1 * millimetre); }), Contains("1 to 180 mm, not 180.1 mm"));
    CHECK_THAT(outside([] { return metric_size_range(k_nan * millimetre); }), Contains("1 to 180 mm, not nan mm"));
    CHECK(outside([] { return metric_tolerances(10.0 * millimetre, 0.19 * millimetre); }) ==
          "ISO 965-1 gives tolerances for pitches of 0.2 to 8 mm, not 0.19 mm");
    CHECK_THAT(outside([] { return metric_tolerances(100.0 * millimetre, 8.1 * millimetre); }),
               Contains("0.2 to 8 mm, not 8.1 mm"));
    CHECK_THAT(outside([] { return metric_tolerances(100.0 * millimetre, k_nan * millimetre); }), Contains("0.2 to 8 mm"));
    CHECK_THAT(outside([] { return metric_tolerances(0.5 * millimetre, 0.2 * millimetre); }), Contains("1 to 180 mm"));
    CHECK(metric_tolerances(180.0 * millimetre, 8.0 * millimetre).fundamental > 0.0 * millimetre);
    CHECK(metric_tolerances(1.0 * millimetre, 0.2 * millimetre).fundamental > 0.0 * millimetre);
    for (const double wrong : {0.0, -13.0, k_nan}) {
        CHECK(outside([&] { return unified_tolerances(0.5 * inch, wrong, 0.5 * inch); }) ==
              "the number of threads per inch must be more than zero");
    }
}

TEST_CASE("a unified thread without a size or an engagement has no tolerance") {
    for (const double wrong : {0.0, -0.5, k_nan}) {
        CHECK_THAT(outside([&] { return unified_tolerances(wrong * inch, 13, 0.5 * inch); }), !Contains("accepted"));
        CHECK_THAT(outside([&] { return unified_tolerances(0.5 * inch, 13, wrong * inch); }), !Contains("accepted"));
    }
}
