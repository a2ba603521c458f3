// SPDX-License-Identifier: MIT
#pragma once

// Geometry of 60° and 55° screw threads from diameter and pitch alone, and the limits of size of the usual tolerance
// classes. Pure functions; what is printed in a standard's tables stands in the curated database, not here.

#include "clampbook/model/thread.hpp"
#include "clampbook/units/quantity.hpp"

#include <optional>
#include <string_view>

namespace clampbook::engine {

/// The angle between the flanks: 60° of ISO metric and unified threads, 55° of pipe threads.
enum class Profile { degrees_60, degrees_55 };

/// Cosine and tangent of half that angle, as figures, so that they are the same on every machine.
[[nodiscard]] constexpr double cos_flank(Profile profile) {
    return profile == Profile::degrees_60 ? 0.86602540378443864676 : 0.88701083317822171;
}
[[nodiscard]] constexpr double tan_flank(Profile profile) {
    return profile == Profile::degrees_60 ? 0.57735026918962576451 : 0.52056705055174631;
}

/// Basic sizes of a parallel thread.
struct ThreadGeometry {
    Length major;          ///< d, D
    Length pitch;          ///< P
    Length pitch_diameter; ///< d2, D2
    Length minor_internal; ///< D1
    Length minor_external; ///< d3 (ISO, with the rounded root H/6), UNR minor diameter (inch)
    Area stress_area;      ///< A_s
    Profile profile = Profile::degrees_60;
};

/// ISO metric thread.
/// Source: ISO 68-1 basic profile, ISO 724 (d2 = d − 0.649519 P, D1 = d − 1.082532 P), ISO 898-1 clause 9.1.6.1
/// (d3 = d − 1.226869 P, A_s = π/4 · ((d2 + d3)/2)²).
/// Throws out_of_validity unless 0 < P and the root leaves a core (d3 > 0).
[[nodiscard]] ThreadGeometry metric_geometry(Length major, Length pitch);

/// Unified inch thread with the UNR root.
/// Source: ASME B1.1 basic sizes (d2 = d − 0.64951905 P, D1 = d − 1.08253175 P), UNR minor diameter
/// d − 1.19078493 P, stress area for steels up to 100 ksi π/4 · (d − 0.9743 P)².
/// Throws out_of_validity unless 0 < n and the root leaves a core.
[[nodiscard]] ThreadGeometry unified_geometry(Length major, double threads_per_inch);

/// 55° pipe thread profile, parallel (ISO 228-1) or in the gauge plane (ISO 7-1): d2 = d − 0.640327 P and
/// d1 = d − 1.280654 P. There is no stress area: these threads are not made to carry a bolt load.
struct PipeGeometry {
    Length major;
    Length pitch;
    Length pitch_diameter;
    Length minor;
};
[[nodiscard]] PipeGeometry whitworth_pipe_geometry(Length major, double threads_per_inch);

/// A parallel pipe thread as a plug carries it: the same sizes, and for the core the section of the mean of pitch and minor
/// diameter, in the manner of ISO 898-1. The standard itself gives none: it is used for the strength of a plug alone.
[[nodiscard]] ThreadGeometry pipe_plug_geometry(Length major, double threads_per_inch);

/// The one of these three that a system asks for. Throws out_of_validity for a taper thread, naming it.
[[nodiscard]] ThreadGeometry parallel_geometry(ThreadSystem system, std::string_view name, Length major,
                                               std::optional<Length> pitch, std::optional<double> threads_per_inch);

/// Largest and smallest permitted diameters of one member.
struct Limits {
    Length major_max;
    Length major_min;
    Length pitch_max;
    Length pitch_min;
    Length minor_max;
    Length minor_min;
};

/// The tolerances that the limits are built from.
struct Tolerances {
    Length fundamental;    ///< es of position g (as a positive number), or the allowance of class 2A
    Length major_external; ///< T_d
    Length minor_internal; ///< T_D1
    Length pitch_external; ///< T_d2
    Length pitch_internal; ///< T_D2
};

/// ISO tolerances of grade 6 and position g by formula, rounded to the R40 series. The printed tables of ISO 965-1 were
/// smoothed by hand afterwards and differ in places by a step: prefer the print where the curated database has it.
/// Source: ISO 965-1 clause 13: es(g) = 15 + 11 P, T_d = 180 P^(2/3) − 3.15/√P, T_D1 = 433 P − 190 P^1.22 (P < 1) or
/// 230 P^0.7, T_d2 = 90 P^0.4 d^0.1 with d the geometric mean of the size range, T_D2 = 1.32 T_d2 (µm, mm).
/// Throws out_of_validity outside 0.2 mm <= P <= 8 mm and 1 mm <= d <= 180 mm.
[[nodiscard]] Tolerances metric_tolerances(Length major, Length pitch);

/// The diameter range of ISO 965-1 that `major` falls into: over `low`, up to and including `high`.
struct SizeRange {
    Length over;
    Length up_to;
};
[[nodiscard]] SizeRange metric_size_range(Length major);

/// Class 2A and 2B tolerances, length of engagement one diameter for UNC and UNF, nine pitches for the 8-UN series.
/// Source: ASME B1.1 clause 5.8: T_d2(2A) = 0.0015 ∛D + 0.0015 √LE + 0.015 ∛P² (in), allowance 0.3 T_d2,
/// T_d = 0.060 ∛P², T_D2(2B) = 1.3 T_d2, T_D1 = 0.25 P − 0.40 P² for D >= 1/4 in, else 0.05 ∛P² + 0.03 P/D − 0.002
/// held between 0.25 P − 0.40 P² and 0.394 P.
[[nodiscard]] Tolerances unified_tolerances(Length major, double threads_per_inch, Length engagement);

/// Limits of the external thread: 6g (ISO) or 2A (inch) by the tolerances given. The minor diameter at most is the
/// basic one less the fundamental deviation; at least it is d2 min − 0.616025 P, the root rounded with R = 0.125 P
/// (ISO 965-1 clause 11; ASME B1.1 rounds the UNR root alike).
[[nodiscard]] Limits external_limits(const ThreadGeometry& geometry, const Tolerances& tolerances);

/// Limits of the internal thread, 6H or 2B: position H begins at the basic size. `major_max` stays zero: it is not
/// limited by the standard.
[[nodiscard]] Limits internal_limits(const ThreadGeometry& geometry, const Tolerances& tolerances);

} // namespace clampbook::engine
