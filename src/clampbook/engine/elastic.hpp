// SPDX-License-Identifier: MIT
#pragma once

// The clamped joint as two springs: how far screw and parts give, what an angle of turn, a settling surface, heat and a load
// from outside do to the preload. Pure functions; moduli and expansions, the curated database knows.
//
// Sources: Shigley, Mechanical Engineering Design, chapter 8 (stiffness of bolt and members, joint diagram); VDI 2230-1
// (compliance of head, thread and engaged thread, embedding, heat; from memory).
// Valid while nothing yields and, for the parts, while they are wider than the cone of pressure that spreads in them.

#include "clampbook/units/quantity.hpp"

#include <span>

namespace clampbook::engine {

/// How far something gives for each newton. The inverse of stiffness.
struct Compliance {
    double millimetre_per_newton = 0;

    friend Compliance operator+(Compliance a, Compliance b) noexcept {
        return {a.millimetre_per_newton + b.millimetre_per_newton};
    }
    friend Length operator*(Force f, Compliance c) noexcept { return f.in(newton) * c.millimetre_per_newton * millimetre; }
    friend Force operator/(Length l, Compliance c) noexcept { return l.in(millimetre) / c.millimetre_per_newton * newton; }
};

/// A bar: l/(E A). Throws out_of_validity unless all three are more than zero.
[[nodiscard]] Compliance bar(Length length, Area section, Stress modulus);

/// Bolt in the grip, shank and thread one behind the other: 1/k_b = l_d/(E A_d) + l_t/(E A_t); k_b = A_d A_t E/(A_d l_t + A_t l_d).
/// A length of zero leaves its part out. Throws out_of_validity unless one of them is more than zero.
struct BoltParts {
    Area shank;
    Length shank_length;
    Area thread; ///< stress area
    Length thread_length;
};
[[nodiscard]] Compliance bolt_in_grip(const BoltParts& parts, Stress modulus);

/// What head and engaged thread add to it (VDI 2230-1): the head 0.5 d (hexagon, flange) or 0.4 d (socket) of a bar of the
/// nominal diameter, the engaged thread 0.5 d of a bar of the core, and the nut 0.4 d or the tapped part 0.33 d of a bar of
/// the nominal diameter.
struct BoltEnds {
    Length diameter;
    Area core; ///< of d3
    bool socket_head = false;
    bool tapped = false;
    Stress modulus;       ///< of the screw
    Stress other_modulus; ///< of the nut or the tapped part
};
[[nodiscard]] Compliance bolt_ends(const BoltEnds& ends);

/// A cone of pressure of 30° that spreads from a face D through a thickness t about a hole d:
/// k = 0.5774 π E d / ln{[(1.155 t + D − d)(D + d)] / [(1.155 t + D + d)(D − d)]}.
/// Throws out_of_validity unless t > 0 and 0 < d < D.
[[nodiscard]] Compliance cone(Stress modulus, Length hole, Length face, Length thickness);

/// Layers between head and nut, from the head on.
struct Layer {
    Length thickness;
    Stress modulus;
};
/// The clamped parts: cones from both ends, each from a face D, that meet in the middle of the grip.
/// Throws out_of_validity where there is no layer, and as `cone` does.
[[nodiscard]] Compliance clamped_parts(std::span<const Layer> layers, Length hole, Length face);

/// The fit by Wileman, Choudhury and Green (Shigley, Table 8-8): k = E d A exp(B d/l). `a` and `b` are the material's constants.
/// Throws out_of_validity unless modulus, hole and grip are more than zero.
[[nodiscard]] Compliance clamped_by_fit(Stress modulus, Length hole, Length grip, double a, double b);

struct Springs {
    Compliance screw; ///< δ_S
    Compliance parts; ///< δ_P

    /// What one newton of preload costs in travel.
    [[nodiscard]] Compliance both() const { return screw + parts; }
    /// Share of a load from outside that the screw sees, Φ = k_b/(k_b + k_m) = δ_P/(δ_S + δ_P), for a load that acts under
    /// head and nut.
    [[nodiscard]] double load_share() const {
        return parts.millimetre_per_newton / (screw.millimetre_per_newton + parts.millimetre_per_newton);
    }
};

/// The turn that stretches screw and parts to a preload: θ = 360° F (δ_S + δ_P)/P, counted from snug.
/// Throws out_of_validity unless force and lead are more than zero.
[[nodiscard]] Angle turn_for(Force preload, const Springs& springs, Length lead);
/// The other way round.
[[nodiscard]] Force preload_by_turn(Angle turn, const Springs& springs, Length lead);
/// MIL-HDBK-60: the turn that stretches the bolt alone: θ = 360° σ L/(E P).
[[nodiscard]] Angle turn_of_bolt_alone(Stress stress, Length length, Stress modulus, Length lead);

/// Preload lost where the surfaces settle by f_Z: F_Z = f_Z/(δ_S + δ_P) (VDI 2230-1).
[[nodiscard]] Force embedding_loss(Length settling, const Springs& springs);

/// Preload gained where the parts grow more than the screw: ΔF = (α_P − α_S) ΔT l/(δ_S + δ_P), for one temperature
/// throughout and moduli that do not change. Negative for a loss. Expansions per kelvin.
[[nodiscard]] Force thermal_change(double parts_expansion, double screw_expansion, double kelvin, Length grip,
                                   const Springs& springs);

/// The joint under a load from outside.
struct LoadedJoint {
    Force screw;    ///< F_i + Φ P
    Force clamping; ///< F_i − (1 − Φ) P
};
/// Throws out_of_validity where the load opens the joint: from F_i/(1 − Φ) on, the springs no longer work together.
[[nodiscard]] LoadedJoint under_load(Force preload, double load_share, Force load);
/// The load that leaves `clamping` between the parts: (F_i − F_r)/(1 − Φ); none leaves the load that opens the joint.
[[nodiscard]] Force load_leaving(Force preload, double load_share, Force clamping);

/// How many times the load it would take to bring the screw to its proof load: (S_p A_t − F_i)/(Φ P).
[[nodiscard]] double load_factor(Force proof_load, Force preload, double load_share, Force load);
/// How many times the load it would take to open the joint: F_i/((1 − Φ) P).
[[nodiscard]] double separation_factor(Force preload, double load_share, Force load);
/// Amplitude of the stress for a load that comes and goes: Φ P/(2 A_t).
[[nodiscard]] Stress stress_amplitude(double load_share, Force load, Area stress_area);

} // namespace clampbook::engine
