// SPDX-License-Identifier: MIT
#pragma once

// The friction form of tightening: how much preload a screw takes while it is pulled and twisted at once, and how much
// of the torque goes into the pitch, the thread and the head. Pure functions over a joint's sizes and two coefficients
// of friction; which sizes a head has, and which friction a surface, the curated database knows.
//
// Source of the method: VDI 2230-1, assembly preload and tightening torque (Table A1), with tan(φ + ρ′) left exact.
// Valid for one start, a 60° or 55° profile, a screw whose weakest section is its stress area (no waisted or hollow shank) and
// a flat ring-shaped bearing face.

#include "clampbook/engine/thread_geometry.hpp"
#include "clampbook/units/quantity.hpp"

namespace clampbook::engine {

/// How the twist of the shank is counted. `plastic`: the whole section yields in shear, W = π d0³/12 (VDI 2230 since 2001).
/// `elastic`: only its rim does, W = π d0³/16 (the older rule; torques about 6 to 9 % lower).
enum class Torsion { plastic, elastic };

/// The coefficients of friction for which the form is used here. Under 0.02 a screw would turn itself loose, over 0.50
/// it galls.
inline constexpr double k_friction_min = 0.02;
inline constexpr double k_friction_max = 0.50;

/// What a tightening meets.
struct FrictionJoint {
    ThreadGeometry thread;
    double thread_friction = 0; ///< μ_G
    double head_friction = 0;   ///< μ_K
    Length bearing_outer;       ///< d_w, the least diameter of the bearing face
    Length bearing_inner;       ///< d_h, the hole
};

/// Where the torque goes. The three add up to the whole.
struct TorqueShares {
    Torque total;
    Torque pitch;  ///< F P/(2π): what stretches the screw
    Torque thread; ///< lost in the thread
    Torque head;   ///< F μ_K D_Km/2, lost under the head
};

/// What the thread asks of the torque for each newton of preload: d2/2 · tan(φ + ρ′). Throws out_of_validity where the
/// friction lies outside its limits.
[[nodiscard]] Length thread_lever(const ThreadGeometry& thread, double friction);

/// The preload at which pull and twist together, by von Mises, use up `utilisation` of the yield strength:
/// F = ν Rp0.2 A_s / √(1 + 3 [k (d2/d0) tan(φ + ρ′)]²), k = 1.5 plastic or 2 elastic, d0 = √(4 A_s/π).
/// Throws out_of_validity unless 0 < utilisation <= 1, the yield strength is more than zero and the friction lies within
/// k_friction_min..k_friction_max.
[[nodiscard]] Force assembly_preload(Stress yield_strength, double utilisation, const ThreadGeometry& thread,
                                     double thread_friction, Torsion torsion = Torsion::plastic);

/// The inverse: how much of the yield strength a preload uses while it is being tightened. May be more than one.
[[nodiscard]] double utilisation_of(Force preload, Stress yield_strength, const ThreadGeometry& thread, double thread_friction,
                                    Torsion torsion = Torsion::plastic);

/// The torque that makes a preload: T = F [d2/2 · tan(φ + ρ′) + μ_K D_Km/2], D_Km = (d_w + d_h)/2,
/// tan φ = P/(π d2), tan ρ′ = μ_G/cos 30°.
/// Throws out_of_validity unless the preload is more than zero, both frictions lie within their limits and the bearing face
/// is a ring: 0 < d_h < d_w.
[[nodiscard]] TorqueShares friction_torque(Force preload, const FrictionJoint& joint);

/// A preload, and the torque that makes it.
struct FrictionTightening {
    Force preload;
    TorqueShares torque;
};

/// `assembly_preload` and its `friction_torque` in one go, with the limits of both.
[[nodiscard]] FrictionTightening friction_tightening(Stress yield_strength, double utilisation, const FrictionJoint& joint,
                                                     Torsion torsion = Torsion::plastic);

/// The preload that a torque makes; the inverse of `friction_torque`, with the same limits.
[[nodiscard]] Force friction_preload(Torque torque, const FrictionJoint& joint);

/// The preload at which a section of the thread's core with a hole through it reaches `strength` in pull and twist
/// together: the same rule over the ring between bore and d0, A = π/4 (d0² − b²), W = π/12 (d0³ − b³). Without a bore it is
/// `assembly_preload` at full utilisation. Throws out_of_validity unless 0 <= bore < d0, and as that does.
[[nodiscard]] Force hollow_preload(Stress strength, const ThreadGeometry& thread, double thread_friction, Length bore);

/// The nut factor that says the same for this joint: K = T/(F d).
[[nodiscard]] double equivalent_nut_factor(const FrictionJoint& joint);

/// The other way round: the friction, in thread and under the head alike, at which the nut factor is that. The joint's own
/// coefficients are not looked at. Throws out_of_validity where no friction within its limits gives that nut factor.
[[nodiscard]] double friction_of_nut_factor(double nut_factor, const FrictionJoint& joint);

/// Mean pressure under the head: p = F/[π/4 (d_w² − d_h²)], VDI 2230-1 (surface pressure).
/// Throws out_of_validity unless the preload is more than zero and 0 < d_h < d_w.
[[nodiscard]] Stress bearing_pressure(Force preload, Length bearing_outer, Length bearing_inner);

} // namespace clampbook::engine
