// SPDX-License-Identifier: MIT
// Inch and pipe threads against ASME B1.1, ISO 228-1, ISO 7-1 and ASME B1.20.1.
#include "cases.hpp"

#include "clampbook/engine/thread_geometry.hpp"
#include "clampbook/reference/reference.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

using namespace clampbook;
using namespace published;

namespace {

constexpr double k_same = 1e-9;

} // namespace

TEST_CASE("unified threads of ASME B1.1", "[published]") {
    const reference::Reference reference;
    Family family{"unc_unf_threads", 40};
    Tally& listed = family.tally("diameter and threads per inch of the curated thread", "", "none");
    Tally& diameters =
        family.tally("engine's pitch and minor diameters", "in", "half a last digit; a known difference 0.00011 in");
    Tally& areas = family.tally("engine's stress area", "in²", "half a last digit; a known difference three halves");
    Tally& metric = family.tally("the printed stress area in mm²", "mm²", "half a last digit");
    Tally& curated = family.tally("curated pitch and minor diameters", "in", "none");
    Tally& curated_areas = family.tally("curated stress area", "in²", "none");
    for (const Case& row : family.rows()) {
        const std::string name = row.text("size") + "-" + row.text("tpi") + " " + row.text("series");
        INFO(row.where() << ": " << name);
        const auto found = reference.find_thread(read_thread(name));
        REQUIRE(found.has_value());
        REQUIRE(found->threads_per_inch.has_value());
        CHECK(found->series == row.text("series"));
        listed.compare(row, "D", found->major.in(inch), row.number("major_in"), k_same, row.confidence());
        listed.compare(row, "n", *found->threads_per_inch, row.number("tpi"), k_same, row.confidence());
        const auto g = engine::unified_geometry(row.number("major_in") * inch, row.number("tpi"));
        const auto diameter = [&](const std::string& column, Length ours, std::optional<Length> kept) {
            // Where the page's figure was given up for the formula's, the source cell says so.
            const Origin origin =
                row.text("source").find(column.substr(0, column.size() - 3) + " by formula") == std::string::npos
                    ? row.confidence()
                    : Origin::formula;
            diameters.compare(row, column, ours.in(inch), row.number(column), half_last_digit(row.text(column)), origin, 0.00011);
            if (kept) {
                curated.compare(row, "curated " + column, kept->in(inch), row.number(column), k_same, origin);
            }
        };
        diameter("pitch_dia_in", g.pitch_diameter, found->pitch_diameter);
        diameter("minor_ext_UNR_in", g.minor_external, found->minor_external);
        diameter("minor_int_in", g.minor_internal, found->minor_internal);
        const double half = half_last_digit(row.text("stress_area_in2"));
        areas.compare(row, "stress_area_in2", g.stress_area.in(square_inch), row.number("stress_area_in2"), half,
                      row.confidence(), 3 * half);
        metric.compare(row, "in mm2", (row.number("stress_area_in2") * square_inch).in(square_millimetre),
                       row.number("stress_area_mm2"), half_last_digit(row.text("stress_area_mm2")), row.confidence());
        if (found->stress_area) {
            curated_areas.compare(row, "curated area", found->stress_area->in(square_inch), row.number("stress_area_in2"), k_same,
                                  row.confidence());
        }
    }
    family.finish();
}

TEST_CASE("limits of size of ASME B1.1, classes 2A and 2B", "[published]") {
    const reference::Reference reference;
    Family family{"unified_limits", 22};
    Tally& fine = family.tally("engine's limits, printed to 0.0001 in", "in", "0.0001 in");
    Tally& coarse = family.tally("engine's nut bore, printed to 0.001 in", "in", "0.0006 in");
    for (const Case& row : family.rows()) {
        INFO(row.where() << ": " << row.text("thread") << " " << row.text("part"));
        const auto thread = reference.thread(read_thread(row.text("thread")));
        REQUIRE(thread.threads_per_inch.has_value());
        REQUIRE((row.text("part") == "2A" || row.text("part") == "2B"));
        const auto geometry = engine::unified_geometry(thread.major, *thread.threads_per_inch);
        const auto tolerances = engine::unified_tolerances(thread.major, *thread.threads_per_inch, thread.major);
        const auto l = row.text("part") == "2A" ? engine::external_limits(geometry, tolerances)
                                                : engine::internal_limits(geometry, tolerances);
        std::size_t compared = 0;
        for (const auto& [column, ours] : {std::pair{"major_max_in", l.major_max}, std::pair{"major_min_in", l.major_min},
                                           std::pair{"pitch_max_in", l.pitch_max}, std::pair{"pitch_min_in", l.pitch_min},
                                           std::pair{"minor_max_in", l.minor_max}, std::pair{"minor_min_in", l.minor_min}}) {
            if (row.has(column)) {
                const bool four = row.text(column).size() == std::string_view{"0.0001"}.size();
                (four ? fine : coarse)
                    .compare(row, column, ours.in(inch), row.number(column), (four ? 0.0001 : 0.0006) + k_same, row.confidence());
                ++compared;
            }
        }
        CHECK(compared == 4);
    }
    family.finish();
}

TEST_CASE("pipe threads of ISO 228-1, ISO 7-1 and ASME B1.20.1", "[published]") {
    const reference::Reference reference;
    Family family{"pipe_threads", 39};
    Tally& curated = family.tally("curated diameters and lengths", "mm", "none");
    Tally& sizes = family.tally("engine's pitch, pitch diameter, minor diameter (G, R)", "mm",
                                "half a last digit; a known difference 0.001 mm");
    Tally& gauge = family.tally("E1 of the curated D, n and L1 (NPT)", "in", "half a last digit");
    Tally& useful = family.tally("L2 of the curated D and n (NPT)", "in", "half a last digit");
    Tally& metric = family.tally("D, pitch, E1, L1, L2 in mm (NPT)", "mm", "half a last digit");
    std::size_t npt = 0;
    for (const Case& row : family.rows()) {
        INFO(row.where() << ": " << row.text("thread"));
        const auto found = reference.find_thread(read_thread(row.text("thread")));
        REQUIRE(found.has_value());
        REQUIRE(found->threads_per_inch.has_value());
        REQUIRE(found->pitch_diameter.has_value());
        CHECK(*found->threads_per_inch == row.number("tpi"));
        CHECK(found->series == (row.text("taper") == "1:16" ? "taper pipe" : row.text("taper") + " pipe"));
        const Origin origin = row.confidence();
        if (row.text("standard") == "ASME B1.20.1") {
            REQUIRE(found->gauge_length.has_value());
            REQUIRE(found->useful_length.has_value());
            ++npt;
            curated.compare(row, "curated E1", found->pitch_diameter->in(millimetre), 25.4 * row.number("E1_in"), k_same, origin);
            curated.compare(row, "curated L1", found->gauge_length->in(millimetre), 25.4 * row.number("L1_in"), k_same, origin);
            curated.compare(row, "curated L2", found->useful_length->in(millimetre), 25.4 * row.number("L2_in"), k_same, origin);
            // ASME B1.20.1 clause 3: E0 = D - (0.05 D + 1.1)/n, E1 = E0 + 0.0625 L1, L2 = (0.80 D + 6.8)/n.
            const double d = found->major.in(inch);
            const double n = *found->threads_per_inch;
            const double e1 = d - (0.05 * d + 1.1) / n + 0.0625 * found->gauge_length->in(inch);
            const double l2 = (0.80 * d + 6.8) / n;
            gauge.compare(row, "E1_in", e1, row.number("E1_in"), half_last_digit(row.text("E1_in")), origin);
            useful.compare(row, "L2_in", l2, row.number("L2_in"), half_last_digit(row.text("L2_in")), origin);
            for (const auto& [column, ours] :
                 {std::pair{"major_mm", d}, std::pair{"pitch_mm", 1 / n},
                  std::pair{"pitch_dia_mm", found->pitch_diameter->in(inch)}, std::pair{"useful_or_L2_length_mm", l2},
                  std::pair{"gauge_or_L1_length_mm", found->gauge_length->in(inch)}}) {
                metric.compare(row, column, 25.4 * ours, row.number(column), 0.0005 + k_same, origin);
            }
            continue;
        }
        const bool taper = row.text("standard") == "ISO 7-1";
        REQUIRE((taper || row.text("standard") == "ISO 228-1"));
        const auto g = engine::whitworth_pipe_geometry(row.number("major_mm") * millimetre, row.number("tpi"));
        // The pitch diameters of the parallel thread were computed, those of the taper thread read.
        const Origin pitch_origin = taper ? origin : Origin::formula;
        const auto size = [&](const std::string& column, Length ours, Origin from) {
            sizes.compare(row, column, ours.in(millimetre), row.number(column), half_last_digit(row.text(column)), from, 0.001);
        };
        size("pitch_mm", g.pitch, origin);
        size("pitch_dia_mm", g.pitch_diameter, pitch_origin);
        size("minor_mm", g.minor, origin);
        REQUIRE(found->minor_internal.has_value());
        curated.compare(row, "curated_major_mm", found->major.in(millimetre), row.number("major_mm"), k_same, origin);
        curated.compare(row, "curated_pitch_dia_mm", found->pitch_diameter->in(millimetre), row.number("pitch_dia_mm"), k_same,
                        pitch_origin);
        curated.compare(row, "curated_minor_mm", found->minor_internal->in(millimetre), row.number("minor_mm"), k_same, origin,
                        0.001 + k_same);
        if (taper) {
            REQUIRE(found->gauge_length.has_value());
            REQUIRE(found->useful_length.has_value());
            curated.compare(row, "gauge length", found->gauge_length->in(millimetre), row.number("gauge_or_L1_length_mm"), k_same,
                            origin);
            curated.compare(row, "useful length", found->useful_length->in(millimetre), row.number("useful_or_L2_length_mm"),
                            k_same, origin);
        }
    }
    CHECK(npt == 10);
    family.finish();
}
