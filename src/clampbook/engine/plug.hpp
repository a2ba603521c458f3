// SPDX-License-Identifier: MIT
#pragma once

// The torque window of a plug that closes an oil space: enough to seat its ring even where friction is high, and not so much
// that the housing's thread strips, the plug yields or the face under the ring is crushed where friction is low. Pure
// functions; seating stresses, strengths and sizes, the curated database knows.
//
// Sources: seating load = face of the ring × seating stress y (ASME BPVC VIII-2, Table 4.16.1); torques by friction.hpp;
// strip loads by strip.hpp. The reserves are ours (practice: common practice, no source).

#include "clampbook/engine/scatter.hpp"

#include <optional>

namespace clampbook::engine {

/// A plug as it turns: its thread, the ring-shaped face on which it turns, and the hole in its threaded core.
struct Plug {
    ThreadGeometry thread;
    Length face_outer;
    Length face_inner;
    Length bore; ///< of a hollow plug or a socket that reaches into the thread; zero for a solid one
};

/// Seating load of a flat ring: π/4 (D² − d²) y. Throws out_of_validity unless 0 < d < D and y > 0.
[[nodiscard]] Force seating_load(Length inner, Length outer, Stress seating_stress);

/// What loads the members bear.
struct PlugLimits {
    std::optional<Force> seat; ///< seats the ring; none where nothing is seated or no figure is known
    Force strip;               ///< strips the weaker thread
    std::optional<Force> face; ///< crushes the face under the ring
    Stress yield_strength;     ///< of the plug
    Stress tensile_strength;   ///< of the plug
};

/// A limit is divided by its reserve before it bounds the window.
inline constexpr double k_strip_reserve = 1.5;
inline constexpr double k_plug_reserve = 1.25;
inline constexpr double k_face_reserve = 1.25;

enum class PlugMember { thread, plug, face };

struct PlugWindow {
    std::optional<Torque> seat; ///< seats the ring at the highest friction
    Torque strip;               ///< strips the thread at the lowest
    Torque yield;               ///< the plug's weakest section yields
    Torque breaking;            ///< and breaks
    std::optional<Torque> face; ///< crushes the face at the lowest friction
    Torque high;                ///< the least of the limits, each over its reserve
    PlugMember governs = PlugMember::thread;

    /// The lower end is `seat`; without one the window has an upper end alone.
    [[nodiscard]] bool is_empty() const { return seat && *seat > high; }
};

/// Throws out_of_validity as the formulas of friction.hpp do.
[[nodiscard]] PlugWindow plug_window(const Plug& plug, const PlugLimits& limits, Band friction);

/// A torque in the window that a wrench can be set to: the mean by ratio of its ends, but no more than a quarter over its lower
/// end, since a seated ring gains nothing by more (practice); on the coarsest of the steps 10, 5, 2, 1 and 0.5 N·m that is no
/// more than a tenth of it and lands inside. Nothing where no step of 0.5 N·m does.
[[nodiscard]] std::optional<Torque> practical_torque(Torque low, Torque high);

/// A taper thread that is screwed in further than by hand.
struct TaperTurns {
    double hand_tight = 0; ///< turns in the gauge length
    double available = 0;  ///< turns from there to the end of the useful thread
    Length interference;   ///< on the diameter, for each turn: P/16
};
/// Taper 1 to 16 on the diameter (ISO 7-1, ASME B1.20.1). Throws out_of_validity unless 0 < gauge length < useful length
/// and the pitch is more than zero.
[[nodiscard]] TaperTurns taper_turns(Length gauge_length, Length useful_length, Length pitch);

} // namespace clampbook::engine
