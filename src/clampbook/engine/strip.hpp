// SPDX-License-Identifier: MIT
#pragma once

// When a thread strips: the areas that shear in screw and in tapped hole, the loads at which they do, and how deep a screw
// must be screwed in so that it breaks first. Pure functions; strengths of screws and housings, the curated database knows.
//
// Sources: shear areas FED-STD-H28/2 and ASME B1.1 (appendix B), in the form that reproduces a handbook's metric table;
// corrections C1, C2, C3 E. M. Alexander, SAE 770420, taken up by ISO/TR 16224 and VDI 2230-1 (from memory).
// Valid for one start, threads of full profile over the length given (chamfer and run-out are not engagement), static load.

#include "clampbook/engine/thread_geometry.hpp"
#include "clampbook/units/quantity.hpp"

namespace clampbook::engine {

/// The diameters that meet in the worst pair of screw and hole: the screw at its smallest, the hole at its largest.
struct ThreadPair {
    Length pitch;
    Length external_major; ///< d min
    Length external_pitch; ///< d2 min
    Length internal_pitch; ///< D2 max
    Length internal_minor; ///< D1 max
    Profile profile = Profile::degrees_60;
};

/// From limits of size.
[[nodiscard]] ThreadPair worst_pair(Length pitch, const Limits& external, const Limits& internal);
/// As if both were made exactly to the basic profile.
[[nodiscard]] ThreadPair basic_pair(const ThreadGeometry& thread);

struct ShearAreas {
    Area external; ///< A_SG, in the screw's thread, at the hole's minor diameter
    Area internal; ///< A_SI, in the hole's thread, at the screw's major diameter
};

/// A_SG = π L/P · D1 [P/2 + tan(α/2) (d2 − D1)], A_SI = π L/P · d [P/2 + tan(α/2) (d − D2)].
/// Throws out_of_validity unless the threads overlap and the engagement is at least one pitch and at most
/// k_engagement_most diameters: deeper, the load no longer spreads over it.
[[nodiscard]] ShearAreas shear_areas(const ThreadPair& pair, Length engagement);
inline constexpr double k_engagement_most = 3;

/// C1: a nut of width s across flats on a thread D gives way sideways. 1 for massive parts and s/D >= 1.9.
/// Throws out_of_validity where s/D < 1.4.
[[nodiscard]] double nut_dilation(double width_over_diameter);
/// C2 and C3: bending of the screw's and of the hole's thread, by R_s = (τ A of the hole)/(τ A of the screw). Outside
/// 0.4 < R_s < 2.2 the fit is not given: its value at that end is kept. Throws out_of_validity unless R_s > 0.
[[nodiscard]] double external_bending(double strength_ratio);
[[nodiscard]] double internal_bending(double strength_ratio);
inline constexpr double k_bending_ratio_min = 0.4;
inline constexpr double k_bending_ratio_max = 2.2;

/// Shear strengths of the two members.
struct ShearStrengths {
    Stress external;
    Stress internal;
};

struct StripLoads {
    double ratio = 0; ///< R_s
    double c1 = 1;
    double c2 = 0;
    double c3 = 0;
    Force external; ///< the screw's thread strips: C1 C2 τ A_SG
    Force internal; ///< the hole's thread strips: C1 C3 τ A_SI

    [[nodiscard]] bool internal_first() const { return internal <= external; }
    [[nodiscard]] Force least() const { return internal_first() ? internal : external; }
};

/// Throws out_of_validity unless both strengths are more than zero.
[[nodiscard]] StripLoads strip_loads(const ShearAreas& areas, const ShearStrengths& strengths, double c1 = 1);

/// The engagement at which the thread carries `load` before the weaker member strips; with the screw's own breaking load
/// R_m A_s, the length from which the screw breaks first (VDI 2230-1, from memory). Without run-out and chamfer.
[[nodiscard]] Length engagement_for(Force load, const ThreadPair& pair, const ShearStrengths& strengths, double c1 = 1);

/// FED-STD-H28/2: the engagement at which screw and equally strong hole are as strong as the stress area:
/// L = 2 A_t / {π D1 [1/2 + tan(α/2)/P (d2 − D1)]}.
[[nodiscard]] Length equal_strength_engagement(Area stress_area, const ThreadPair& pair);

/// NASA RP-1228 (from memory): a conservative shortcut for tapped holes, F = π d2 τ L/3.
[[nodiscard]] Force pull_out_shortcut(Length pitch_diameter, Stress shear_strength, Length engagement);

} // namespace clampbook::engine
