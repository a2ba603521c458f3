// SPDX-License-Identifier: MIT
#pragma once

// What a screw carries, and the nut-factor form of tightening: T = K · F · d. Pure functions over quantities; which
// strength a property class has, and which nut factor a condition, the curated database knows.

#include "clampbook/units/quantity.hpp"

namespace clampbook::engine {

/// Load on the stress area at a stress: proof load, minimum tensile load.
/// Source: ISO 898-1 clause 9.1 (minimum tensile load R_m · A_s), clause 9.3 (proof load S_p · A_s).
/// Throws out_of_validity unless both are more than zero.
[[nodiscard]] Force load_at(Stress stress, Area stress_area);

/// The nut factors for which the nut-factor form is used here. Under 0.05 no dry or lubricated steel thread lies; over
/// 0.5 a thread galls before it clamps.
inline constexpr double k_nut_factor_min = 0.05;
inline constexpr double k_nut_factor_max = 0.50;

/// Torque that makes a preload: T = K F d.
/// Source: Shigley, Mechanical Engineering Design, 9th edition, Eq. 8-27.
/// Throws out_of_validity where K lies outside k_nut_factor_min..k_nut_factor_max or F or d is not more than zero.
[[nodiscard]] Torque torque_for(Force preload, double nut_factor, Length diameter);

/// Preload that a torque makes: F = T / (K d). The inverse of `torque_for`, with the same limits.
[[nodiscard]] Force preload_from(Torque torque, double nut_factor, Length diameter);

/// The preloads that one torque can make over a band of nut factors. Throws out_of_validity as `preload_from` does, and
/// where the band runs backwards.
struct PreloadBand {
    Force least; ///< at the highest nut factor
    Force most;  ///< at the lowest
};
[[nodiscard]] PreloadBand preload_band(Torque torque, double nut_factor_low, double nut_factor_high, Length diameter);

} // namespace clampbook::engine
