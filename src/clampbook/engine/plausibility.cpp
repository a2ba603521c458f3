// SPDX-License-Identifier: MIT
#include "clampbook/engine/plausibility.hpp"

#include "clampbook/engine/require.hpp"

#include <algorithm>
#include <array>

namespace clampbook::engine {
namespace {

constexpr double k_screw_low = 0.04;
constexpr double k_screw_high = 0.32;
constexpr double k_plug_low = 0.75;
constexpr double k_unseated_low = 0.4;
constexpr double k_plug_high = 6.0;
constexpr double k_ring_low = 0.6;
constexpr double k_ring_high = 3.8;

double low_share(TighteningHabit habit) {
    switch (habit) {
    case TighteningHabit::clamped:
        return 1;
    case TighteningHabit::by_angle:
        return 0.25;
    case TighteningHabit::free:
        return 0.01;
    }
    return 1;
}

// Units that are taken for one another, with their size in N·m.
struct TorqueUnit {
    std::string_view symbol;
    double newton_metres;
};
constexpr std::array k_confused{TorqueUnit{"N·m", 1}, TorqueUnit{"lbf·ft", constants::k_lbf_ft_Nm},
                                TorqueUnit{"lbf·in", constants::k_lbf_in_Nm}, TorqueUnit{"kgf·m", constants::k_kgf_N}};

} // namespace

TorqueWindow screw_window(Force proof_load, Length diameter, TighteningHabit habit) {
    return screw_window(proof_load, proof_load, diameter, habit);
}

TorqueWindow screw_window(Force weakest, Force strongest, Length diameter, TighteningHabit habit) {
    require_positive(weakest.in(newton), "the proof load");
    require_positive(diameter.in(millimetre), "the diameter");
    if (!(strongest >= weakest)) {
        throw error(ErrorKind::out_of_validity, "the strongest screw must not be weaker than the weakest");
    }
    return {low_share(habit) * k_screw_low * (weakest * diameter), k_screw_high * (strongest * diameter)};
}

TorqueWindow plug_torque_window(const PlugScale& scale, TighteningHabit habit) {
    require_positive(scale.soft.in(newton_metre), "the torque that seats a ring");
    TorqueWindow window{(scale.seated ? k_plug_low : k_unseated_low) * scale.soft, k_plug_high * scale.soft};
    if (scale.ring) {
        window.low = std::max(window.low, k_ring_low * *scale.ring);
        window.high = std::max(window.high, k_ring_high * *scale.ring);
    }
    if (scale.strength) {
        window.high = std::max(std::min(window.high, *scale.strength), window.low);
    }
    window.low = low_share(habit) * window.low;
    return window;
}

std::vector<Slip> slips_into(const TorqueWindow& window, Torque typed, std::string_view unit) {
    std::vector<Slip> slips;
    const auto consider = [&](const Slip& slip) {
        if (window.holds(slip.factor * typed)) {
            slips.push_back(slip);
        }
    };
    const std::string_view modern = unit == "kp·m" ? "kgf·m" : unit; // one unit, by its older name
    const auto* const as_typed = std::ranges::find(k_confused, modern, &TorqueUnit::symbol);
    if (as_typed != k_confused.end()) {
        for (const TorqueUnit& meant : k_confused) {
            if (meant.symbol != modern) {
                consider({meant.symbol, meant.newton_metres / as_typed->newton_metres});
            }
        }
    }
    consider({{}, 0.1});
    consider({{}, 10});
    return slips;
}

} // namespace clampbook::engine
