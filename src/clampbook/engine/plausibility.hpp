// SPDX-License-Identifier: MIT
#pragma once

// Which torques make sense on a joint, and which slip of the pen explains one that does not. A window is no advice: it is
// wide enough for every lubricant and every maker's habit, and narrow enough (a ratio of 8 from end to end) that a torque
// in lbf·in typed as lbf·ft, in N·m for kgf·m, or with its point one place off, falls out of it. Pure functions.
//
// The widths are ours (practice: common practice, no source); tests/unit/intake measures them on 2,000 sensible tightenings.

#include "clampbook/units/quantity.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace clampbook::engine {

struct TorqueWindow {
    Torque low;
    Torque high;

    [[nodiscard]] bool holds(Torque torque) const { return torque >= low && torque <= high; }
};

/// What a joint's tightening is like, as far as the window is concerned.
enum class TighteningHabit {
    clamped,  ///< the torque makes the preload
    by_angle, ///< a turn follows, so the torque only brings the parts together
    free      ///< a bearing is set, a sensor or vent screwed in: there may be hardly any torque
};

/// Of a screw by its proof load: T/(F_p d) from 0.04 to 0.32. 0.04 is a third of the proof load on a well greased thread,
/// 0.32 the whole of it on a dry one. Where an angle follows the lower end is a quarter of that, where it is free a hundredth.
/// Throws out_of_validity unless both proof load and diameter are more than zero.
[[nodiscard]] TorqueWindow screw_window(Force proof_load, Length diameter, TighteningHabit habit);
/// The same where only the weakest and the strongest screw that it may be are known.
[[nodiscard]] TorqueWindow screw_window(Force weakest, Force strongest, Length diameter, TighteningHabit habit);

/// What a plug's window is made of, each a torque at the end of the friction that widens it.
struct PlugScale {
    Torque soft;                    ///< just seats a soft ring of the usual size where friction is low
    bool seated = true;             ///< false where nothing is seated: an O-ring, a bonded ring, none
    std::optional<Torque> ring;     ///< the same as `soft` for the ring that is there
    std::optional<Torque> strength; ///< what the housing's thread bears where friction is high
};

/// Of a plug: from three quarters of `soft` (0.4 where nothing is seated), and from 0.6 of `ring`, to six times `soft` or 3.8
/// times `ring`, and no more than `strength`. Throws out_of_validity unless `soft` is more than zero.
[[nodiscard]] TorqueWindow plug_torque_window(const PlugScale& scale, TighteningHabit habit);

/// A slip: the source meant another unit, or the point stands elsewhere.
struct Slip {
    std::string_view unit; ///< that the source has; empty for a decimal slip
    double factor = 1;     ///< what was meant is the typed torque times this

    friend bool operator==(const Slip&, const Slip&) = default;
};

/// The slips after which a torque typed in `unit` lies in the window.
[[nodiscard]] std::vector<Slip> slips_into(const TorqueWindow& window, Torque typed, std::string_view unit);

} // namespace clampbook::engine
