// SPDX-License-Identifier: MIT
#pragma once

// A tightening as the trade writes it, in steps: `32 N·m`, `30–36 N·m`, `32 ± 3 N·m`, `50 N·m + 90°`,
// `20 N·m, 50 N·m, 90°`, `hand-tight + 1 1/2 turns`, `24 lbf·ft (33 N·m)`. The text is kept letter for letter; the
// steps are what was understood of it.

#include "clampbook/units/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace clampbook {

/// Stored in books by name: do not rename.
enum class StepKind { torque, angle, hand_tight };

[[nodiscard]] std::string_view step_kind_name(StepKind kind) noexcept;

/// One step. `low` and `high` are the limits where the text gives a range or a tolerance, else both equal `nominal`.
/// In N·m for a torque and in degrees for an angle; all zero for hand-tight.
struct Step {
    StepKind kind = StepKind::torque;
    double nominal = 0;
    double low = 0;
    double high = 0;
    std::string unit;    ///< the unit as the table of units writes it: `lbf·ft`
    int significant = 2; ///< digits that the number was written with
    friend bool operator==(const Step&, const Step&) = default;

    [[nodiscard]] bool has_band() const noexcept { return low != high; }
};

struct Tightening {
    std::string as_written;
    std::vector<Step> steps;
    friend bool operator==(const Tightening&, const Tightening&) = default;
};

/// Reads a tightening. Throws usage naming the part that was not understood and how it would be written; a second
/// figure in brackets that does not agree with the first within its digits is refused too.
[[nodiscard]] Tightening read_tightening(std::string_view text);

/// The same steps with their torques in another unit (`N·m` or `lbf·ft`), as text: `50 N·m + 90°`, `30–36 N·m`.
/// A torque in its own unit keeps its digits; a converted one gets a digit more than was written. Throws usage where the
/// unit is none of torque.
[[nodiscard]] std::string tightening_in(const Tightening& tightening, std::string_view torque_unit);

/// The highest torque among the steps [N·m], or nothing where no step is a torque.
[[nodiscard]] std::optional<double> final_torque(const Tightening& tightening) noexcept;

/// True where the two ask for the same within the digits that they were written with: the same kinds of step in the
/// same order, each pair of bands overlapping or apart by no more than the coarser one's rounding.
[[nodiscard]] bool agree(const Tightening& a, const Tightening& b);

/// True where the two are one figure, keyed twice: the same kinds of step in the same order with the same numbers, to the last bit
/// in one unit, and within the rounding of the coarser print where the units differ.
[[nodiscard]] bool same_figure(const Tightening& a, const Tightening& b);

} // namespace clampbook
