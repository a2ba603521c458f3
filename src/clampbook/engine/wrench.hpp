// SPDX-License-Identifier: MIT
#pragma once

// The torque wrench: what to set where an adapter makes it longer or shorter, and what a tool's range and class allow.
// Pure functions; which deviation a class of tool may have, the curated database knows.

#include "clampbook/units/quantity.hpp"

namespace clampbook::engine {

/// An adapter on the drive of a wrench. Lengths from the middle of the grip to the drive, and from the drive to the
/// fastener; the angle is how far the adapter is turned away from the wrench's axis: 0° carries on straight ahead, 90°
/// stands across, 180° points back at the grip.
struct Adapter {
    Length wrench;
    Length adapter;
    Angle turned;
};

/// (L + E cos a)/L: how much more torque the fastener gets than the wrench shows.
/// Source: US Army TM 9-254, figure 4-6, and worked examples in tests/published.
/// Throws out_of_validity unless L > 0, E >= 0, 0° <= a <= 180° and something is left of the lever: L + E cos a >= L/4.
[[nodiscard]] double adapter_ratio(const Adapter& adapter);
inline constexpr double k_lever_left_min = 0.25;

/// What the wrench is set to so that the fastener gets `torque`: T L/(L + E cos a).
[[nodiscard]] Torque setting_for(Torque torque, const Adapter& adapter);
/// What the fastener gets where the wrench shows `setting`.
[[nodiscard]] Torque applied_by(Torque setting, const Adapter& adapter);

/// A tool is tested from 20 % of its largest torque on (ISO 6789-1, conformance test at 20, 60 and 100 %); under that the
/// standard says nothing of it.
struct ToolRange {
    Torque least; ///< 20 % of the largest
    Torque most;

    [[nodiscard]] bool holds(Torque setting) const { return setting >= least && setting <= most; }
};
/// Throws out_of_validity unless the largest torque is more than zero.
[[nodiscard]] ToolRange tested_range(Torque largest);

/// US Army TB 43-0218: the middle half of a stated range is the best band: 25 to 75 %.
[[nodiscard]] ToolRange best_range(Torque largest);

/// True where the limit for small tools counts: ISO 6789 has one for a largest torque of at most 10 N·m.
[[nodiscard]] bool is_small_tool(Torque largest);

} // namespace clampbook::engine
