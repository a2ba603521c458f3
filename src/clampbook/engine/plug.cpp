// SPDX-License-Identifier: MIT
#include "clampbook/engine/plug.hpp"

#include "clampbook/engine/require.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace clampbook::engine {
namespace {

Torque torque_at(Force force, const Plug& plug, double friction) {
    return friction_torque(force, {plug.thread, friction, friction, plug.face_outer, plug.face_inner}).total;
}

// Low friction lets less torque pull more; high friction twists more. Which end is worse hangs on the section.
Torque section_torque(Stress strength, const Plug& plug, Band friction) {
    const auto at = [&](double mu) { return torque_at(hollow_preload(strength, plug.thread, mu, plug.bore), plug, mu); };
    return std::min(at(friction.low), at(friction.high));
}

} // namespace

Force seating_load(Length inner, Length outer, Stress seating_stress) {
    require_positive(inner.in(millimetre), "the inner diameter of the ring");
    require_positive(seating_stress.in(megapascal), "the seating stress");
    if (!(outer > inner) || !std::isfinite(outer.in(millimetre))) {
        throw error(ErrorKind::out_of_validity, "a ring of {:.4g} mm outside has no face about a hole of {:.4g} mm",
                    outer.in(millimetre), inner.in(millimetre));
    }
    return seating_stress * (disc(outer) - disc(inner));
}

PlugWindow plug_window(const Plug& plug, const PlugLimits& limits, Band friction) {
    if (!(friction.low <= friction.high)) {
        throw error(ErrorKind::out_of_validity, "the band of friction {:.6g} to {:.6g} runs backwards", friction.low,
                    friction.high);
    }
    PlugWindow window;
    if (limits.seat) {
        window.seat = torque_at(*limits.seat, plug, friction.high);
    }
    window.strip = torque_at(limits.strip, plug, friction.low);
    window.yield = section_torque(limits.yield_strength, plug, friction);
    window.breaking = section_torque(limits.tensile_strength, plug, friction);
    window.high = window.strip / k_strip_reserve;
    if (const Torque plug_high = window.yield / k_plug_reserve; plug_high < window.high) {
        window.high = plug_high;
        window.governs = PlugMember::plug;
    }
    if (limits.face) {
        window.face = torque_at(*limits.face, plug, friction.low);
        if (const Torque face_high = *window.face / k_face_reserve; face_high < window.high) {
            window.high = face_high;
            window.governs = PlugMember::face;
        }
    }
    return window;
}

std::optional<Torque> practical_torque(Torque low, Torque high) {
    require_positive(low.in(newton_metre), "the lower end of the window");
    if (!(low <= high)) {
        return std::nullopt;
    }
    const double middle = std::min(std::sqrt(low.in(newton_metre) * high.in(newton_metre)), 1.25 * low.in(newton_metre));
    for (const double step : std::array{10.0, 5.0, 2.0, 1.0, 0.5}) {
        if (step > middle / 10 && step != 0.5) {
            continue; // too coarse for so small a torque
        }
        for (const double marks : {std::round(middle / step), std::ceil(middle / step)}) {
            if (const Torque mark = marks * step * newton_metre; mark >= low && mark <= high) {
                return mark;
            }
        }
    }
    return std::nullopt;
}

TaperTurns taper_turns(Length gauge_length, Length useful_length, Length pitch) {
    require_positive(pitch.in(millimetre), "the pitch");
    require_positive(gauge_length.in(millimetre), "the gauge length");
    if (!(useful_length > gauge_length)) {
        throw error(ErrorKind::out_of_validity, "a useful thread of {:.4g} mm leaves nothing behind a gauge length of {:.4g} mm",
                    useful_length.in(millimetre), gauge_length.in(millimetre));
    }
    return {gauge_length / pitch, (useful_length - gauge_length) / pitch, pitch / 16};
}

} // namespace clampbook::engine
