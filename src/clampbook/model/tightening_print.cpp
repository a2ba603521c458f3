// SPDX-License-Identifier: MIT
// A tightening in the unit that is asked for; tightening.cpp reads it.

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/model/tightening.hpp"
#include "clampbook/units/reading.hpp"

#include <cmath>

namespace clampbook {
namespace {

// In its own unit a figure keeps its digits, or gets the fewest that say it where it is one end of a band or a fraction of
// a turn; a converted one gets a digit more than was written.
std::string number_in(double canonical, const Step& step, const UnitInfo& to) {
    const double value = to.from_canonical(canonical);
    if (to.symbol == step.unit) {
        const bool as_written = step.kind == StepKind::torque && !step.has_band();
        for (int digits = as_written ? step.significant : 1; digits <= 6; ++digits) {
            std::string text = print_significant(value, digits);
            if (std::fabs(read_decimal(text)->value - value) <= 1e-9 * std::fabs(value)) {
                return text;
            }
        }
    }
    return print_significant(value, step.significant + 1);
}

std::string step_in(const Step& step, std::string_view torque_unit) {
    if (step.kind == StepKind::hand_tight) {
        return "hand-tight";
    }
    const UnitInfo& unit = unit_named(step.kind == StepKind::torque ? torque_unit : step.unit == "turn" ? "turn" : "°");
    std::string number = number_in(step.low, step, unit);
    // A band that is narrower than the digits shown is one figure to the eye; a range from it to itself reads as no range.
    if (const std::string high = number_in(step.high, step, unit); high != number) {
        number += "–" + high;
    }
    const bool several = unit.symbol == "turn" && unit.from_canonical(step.high) > 1;
    return with_unit(number, unit) + (several ? "s" : "");
}

} // namespace

std::string tightening_in(const Tightening& tightening, std::string_view torque_unit) {
    if (unit_named(torque_unit).dimension != Dimension::torque) {
        throw error(ErrorKind::usage, "'{}' is no unit of torque", torque_unit);
    }
    std::string out;
    for (const Step& step : tightening.steps) {
        if (!out.empty()) {
            out += step.kind == StepKind::angle ? " + " : ", ";
        }
        out += step_in(step, torque_unit);
    }
    return out;
}

} // namespace clampbook
