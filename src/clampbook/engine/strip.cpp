// SPDX-License-Identifier: MIT
#include "clampbook/engine/strip.hpp"

#include "clampbook/engine/require.hpp"

#include <algorithm>

namespace clampbook::engine {
namespace {

// Height of the sheared ring per pitch of engagement.
Length external_step(const ThreadPair& pair) {
    return pair.pitch / 2 + tan_flank(pair.profile) * (pair.external_pitch - pair.internal_minor);
}
Length internal_step(const ThreadPair& pair) {
    return pair.pitch / 2 + tan_flank(pair.profile) * (pair.external_major - pair.internal_pitch);
}

void require_pair(const ThreadPair& pair) {
    require_positive(pair.pitch.in(millimetre), "the pitch");
    require_positive(pair.internal_minor.in(millimetre), "the minor diameter of the hole");
    if (!(pair.external_major > pair.internal_minor) || !(external_step(pair) > 0 * millimetre) ||
        !(internal_step(pair) > 0 * millimetre)) {
        throw error(ErrorKind::out_of_validity, "a screw of {:.4g} mm does not reach into a hole of {:.4g} mm",
                    pair.external_major.in(millimetre), pair.internal_minor.in(millimetre));
    }
}

// Both areas for one millimetre of engagement [mm²/mm].
ShearAreas areas_per_millimetre(const ThreadPair& pair) {
    require_pair(pair);
    const double turns = 1 / pair.pitch.in(millimetre);
    return {constants::k_pi * turns * (pair.internal_minor * external_step(pair)),
            constants::k_pi * turns * (pair.external_major * internal_step(pair))};
}

} // namespace

ThreadPair worst_pair(Length pitch, const Limits& external, const Limits& internal) {
    return {pitch, external.major_min, external.pitch_min, internal.pitch_max, internal.minor_max};
}

ThreadPair basic_pair(const ThreadGeometry& thread) {
    return {thread.pitch, thread.major, thread.pitch_diameter, thread.pitch_diameter, thread.minor_internal, thread.profile};
}

ShearAreas shear_areas(const ThreadPair& pair, Length engagement) {
    const ShearAreas each = areas_per_millimetre(pair);
    const Length most = k_engagement_most * pair.external_major;
    if (!(engagement >= pair.pitch && engagement <= most)) {
        throw error(
            ErrorKind::out_of_validity,
            "an engagement of {:.4g} mm lies outside {:.4g} mm, one pitch, to {:.4g} mm, three diameters: deeper, the load "
            "no longer spreads over the whole thread",
            engagement.in(millimetre), pair.pitch.in(millimetre), most.in(millimetre));
    }
    const double length = engagement.in(millimetre);
    return {length * each.external, length * each.internal};
}

double nut_dilation(double width_over_diameter) {
    const double w = width_over_diameter;
    if (!(w >= 1.4)) {
        throw error(ErrorKind::out_of_validity,
                    "a nut {:.4g} times as wide as its thread is too thin for this method; at least 1.4 times", w);
    }
    return w >= 1.9 ? 1.0 : 3.8 * w - w * w - 2.61;
}

double external_bending(double strength_ratio) {
    require_positive(strength_ratio, "the ratio of strengths");
    if (strength_ratio <= 1) {
        return 0.897;
    }
    const double r = std::min(strength_ratio, k_bending_ratio_max);
    return 5.594 - 13.682 * r + 14.107 * r * r - 6.057 * r * r * r + 0.9353 * r * r * r * r;
}

double internal_bending(double strength_ratio) {
    require_positive(strength_ratio, "the ratio of strengths");
    if (strength_ratio >= 1) {
        return 0.897;
    }
    const double r = std::max(strength_ratio, k_bending_ratio_min);
    return 0.728 + 1.769 * r - 2.896 * r * r + 1.296 * r * r * r;
}

StripLoads strip_loads(const ShearAreas& areas, const ShearStrengths& strengths, double c1) {
    require_positive(strengths.external.in(megapascal), "the shear strength of the screw");
    require_positive(strengths.internal.in(megapascal), "the shear strength of the tapped part");
    require_positive(c1, "the factor C1");
    StripLoads loads;
    const Force external = strengths.external * areas.external;
    const Force internal = strengths.internal * areas.internal;
    loads.ratio = internal / external;
    loads.c1 = c1;
    loads.c2 = external_bending(loads.ratio);
    loads.c3 = internal_bending(loads.ratio);
    loads.external = c1 * loads.c2 * external;
    loads.internal = c1 * loads.c3 * internal;
    return loads;
}

Length engagement_for(Force load, const ThreadPair& pair, const ShearStrengths& strengths, double c1) {
    require_positive(load.in(newton), "the load");
    // Neither R_s nor the factors depend on the length: the load grows with it in proportion.
    return load / strip_loads(areas_per_millimetre(pair), strengths, c1).least() * millimetre;
}

Length equal_strength_engagement(Area stress_area, const ThreadPair& pair) {
    require_positive(stress_area.in(square_millimetre), "the stress area");
    return 2 * (stress_area.in(square_millimetre) / areas_per_millimetre(pair).external.in(square_millimetre)) * millimetre;
}

Force pull_out_shortcut(Length pitch_diameter, Stress shear_strength, Length engagement) {
    require_positive(pitch_diameter.in(millimetre), "the pitch diameter");
    require_positive(shear_strength.in(megapascal), "the shear strength");
    require_positive(engagement.in(millimetre), "the engagement");
    return shear_strength * ((constants::k_pi / 3) * (pitch_diameter * engagement));
}

} // namespace clampbook::engine
