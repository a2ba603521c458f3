// SPDX-License-Identifier: MIT
#include "clampbook/engine/strength.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/engine/require.hpp"

#include <cmath>

namespace clampbook::engine {
namespace {

void require_nut_factor(double k) {
    if (!(k >= k_nut_factor_min && k <= k_nut_factor_max)) {
        throw error(ErrorKind::out_of_validity, "a nut factor of {:.6g} lies outside {:.2f} to {:.2f}", k, k_nut_factor_min,
                    k_nut_factor_max);
    }
}

} // namespace

Force load_at(Stress stress, Area stress_area) {
    require_positive(stress.in(megapascal), "the stress");
    require_positive(stress_area.in(square_millimetre), "the stress area");
    return stress * stress_area;
}

Torque torque_for(Force preload, double nut_factor, Length diameter) {
    require_nut_factor(nut_factor);
    require_positive(preload.in(newton), "the preload");
    require_positive(diameter.in(millimetre), "the diameter");
    return nut_factor * (preload * diameter);
}

Force preload_from(Torque torque, double nut_factor, Length diameter) {
    require_nut_factor(nut_factor);
    require_positive(torque.in(newton_metre), "the torque");
    require_positive(diameter.in(millimetre), "the diameter");
    return torque / (nut_factor * diameter);
}

PreloadBand preload_band(Torque torque, double nut_factor_low, double nut_factor_high, Length diameter) {
    if (!(nut_factor_low <= nut_factor_high)) {
        throw error(ErrorKind::out_of_validity,
                    "a band of nut factors runs from the lower to the higher, not from {:.6g} to {:.6g}", nut_factor_low,
                    nut_factor_high);
    }
    return {preload_from(torque, nut_factor_high, diameter), preload_from(torque, nut_factor_low, diameter)};
}

} // namespace clampbook::engine
