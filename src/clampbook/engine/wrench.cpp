// SPDX-License-Identifier: MIT
#include "clampbook/engine/wrench.hpp"

#include "clampbook/engine/require.hpp"

#include <cmath>

namespace clampbook::engine {

double adapter_ratio(const Adapter& adapter) {
    require_positive(adapter.wrench.in(millimetre), "the length of the wrench");
    const double length = adapter.adapter.in(millimetre);
    if (!(length >= 0) || !std::isfinite(length)) {
        throw error(ErrorKind::out_of_validity,
                    "the length of an adapter is zero or more, not {:.4g} mm; one that points back "
                    "is turned by 180°",
                    length);
    }
    const double degrees = adapter.turned.in(degree);
    if (!(degrees >= 0 && degrees <= 180)) {
        throw error(ErrorKind::out_of_validity, "an adapter is turned by 0° to 180°, not {:.4g}°", degrees);
    }
    const double ratio = 1 + std::cos(degrees * constants::k_pi / 180) * (adapter.adapter / adapter.wrench);
    if (!(ratio >= k_lever_left_min)) {
        throw error(ErrorKind::out_of_validity,
                    "an adapter of {:.4g} mm turned by {:.4g}° leaves too little of a lever of {:.4g} mm: {:.0f} %, and at least "
                    "{:.0f} % are needed",
                    length, degrees, adapter.wrench.in(millimetre), ratio * 100, k_lever_left_min * 100);
    }
    return ratio;
}

Torque setting_for(Torque torque, const Adapter& adapter) {
    require_positive(torque.in(newton_metre), "the torque");
    return torque / adapter_ratio(adapter);
}

Torque applied_by(Torque setting, const Adapter& adapter) {
    require_positive(setting.in(newton_metre), "the setting");
    return adapter_ratio(adapter) * setting;
}

ToolRange tested_range(Torque largest) {
    require_positive(largest.in(newton_metre), "the largest torque of the tool");
    return {0.2 * largest, largest};
}

ToolRange best_range(Torque largest) {
    require_positive(largest.in(newton_metre), "the largest torque of the tool");
    return {0.25 * largest, 0.75 * largest};
}

bool is_small_tool(Torque largest) { return largest <= 10.0 * newton_metre; }

} // namespace clampbook::engine
