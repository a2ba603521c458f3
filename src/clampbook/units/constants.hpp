// SPDX-License-Identifier: MIT
#pragma once

// The constants behind every unit of clampbook, in two groups: defined (a literal, with who defined it) and derived
// (an expression of the defined ones). There are no measured constants. Nothing else in the program may spell out a
// conversion factor.

namespace clampbook::constants {

// Defined. International yard and pound agreement of 1959, restated in NIST SP 811 (2008) Appendix B.6:
inline constexpr double k_inch_mm = 25.4;        ///< [mm]
inline constexpr double k_pound_kg = 0.45359237; ///< [kg]
// Defined. 3rd CGPM 1901, ISO 80000-3: standard acceleration of free fall.
inline constexpr double k_standard_gravity = 9.80665; ///< [m/s²]
// Defined. NIST SP 811 Appendix B.6: US liquid gallon 231 in³; imperial gallon 4.54609 l.
inline constexpr double k_us_gallon_in3 = 231.0;       ///< [in³]
inline constexpr double k_imperial_gallon_l = 4.54609; ///< [l]
// Defined. ISO 80000-3: full angle; the ratio of circumference and diameter to double precision.
inline constexpr double k_turn_degrees = 360.0; ///< [°]
inline constexpr double k_pi = 3.14159265358979323846;

// Derived.
inline constexpr double k_lbf_N = k_pound_kg * k_standard_gravity;                                 ///< [N]
inline constexpr double k_kgf_N = k_standard_gravity;                                              ///< [N]; kp is its older name
inline constexpr double k_ozf_N = k_lbf_N / 16.0;                                                  ///< [N]
inline constexpr double k_foot_mm = 12.0 * k_inch_mm;                                              ///< [mm]
inline constexpr double k_lbf_ft_Nm = k_lbf_N * k_foot_mm / 1000.0;                                ///< [N·m]
inline constexpr double k_lbf_in_Nm = k_lbf_N * k_inch_mm / 1000.0;                                ///< [N·m]
inline constexpr double k_ozf_in_Nm = k_ozf_N * k_inch_mm / 1000.0;                                ///< [N·m]
inline constexpr double k_in2_mm2 = k_inch_mm * k_inch_mm;                                         ///< [mm²]
inline constexpr double k_psi_MPa = k_lbf_N / k_in2_mm2;                                           ///< [MPa]
inline constexpr double k_us_gallon_l = k_us_gallon_in3 * k_inch_mm * k_inch_mm * k_inch_mm / 1e6; ///< [l]

constexpr bool agrees(double a, double b) { return (a < b ? b - a : a - b) <= 4e-16 * (b < 0 ? -b : b); }
// NIST SP 811 Appendix B.8 and B.9, the factors that it marks exact or prints to more digits than a double holds:
static_assert(agrees(k_lbf_N, 4.4482216152605));
static_assert(agrees(k_lbf_ft_Nm, 1.3558179483314004));
static_assert(agrees(k_lbf_in_Nm, 0.1129848290276167));
static_assert(agrees(k_us_gallon_l, 3.785411784));

} // namespace clampbook::constants
