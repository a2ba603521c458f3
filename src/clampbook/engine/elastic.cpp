// SPDX-License-Identifier: MIT
#include "clampbook/engine/elastic.hpp"

#include "clampbook/engine/require.hpp"
#include "clampbook/engine/thread_geometry.hpp"

#include <algorithm>
#include <cmath>

namespace clampbook::engine {
namespace {

constexpr double k_tan_30 = tan_flank(Profile::degrees_60); // the cone's half angle happens to be the thread's
constexpr Angle k_full_turn = 1.0 * turn;

void require_springs(const Springs& springs) {
    require_positive(springs.screw.millimetre_per_newton, "the compliance of the screw");
    require_positive(springs.parts.millimetre_per_newton, "the compliance of the clamped parts");
}

void require_share(double load_share) {
    if (!(load_share > 0 && load_share < 1)) {
        throw error(ErrorKind::out_of_validity, "a share of the load of {:.6g} lies outside 0 to 1", load_share);
    }
}

void require_load(Force preload, double load_share, Force load) {
    require_positive(preload.in(newton), "the preload");
    require_share(load_share);
    require_positive(load.in(newton), "the load");
}

} // namespace

Compliance bar(Length length, Area section, Stress modulus) {
    require_positive(length.in(millimetre), "the length");
    require_positive(section.in(square_millimetre), "the section");
    require_positive(modulus.in(megapascal), "the modulus");
    return {length.in(millimetre) / (section.in(square_millimetre) * modulus.in(megapascal))};
}

Compliance bolt_in_grip(const BoltParts& parts, Stress modulus) {
    const bool shank = parts.shank_length > 0 * millimetre;
    const bool thread = parts.thread_length > 0 * millimetre;
    if (!shank && !thread) {
        throw error(ErrorKind::out_of_validity, "a bolt has neither shank nor thread in the grip");
    }
    return (shank ? bar(parts.shank_length, parts.shank, modulus) : Compliance{}) +
           (thread ? bar(parts.thread_length, parts.thread, modulus) : Compliance{});
}

Compliance bolt_ends(const BoltEnds& ends) {
    const Area nominal = disc(ends.diameter);
    return bar((ends.socket_head ? 0.4 : 0.5) * ends.diameter, nominal, ends.modulus) +
           bar(0.5 * ends.diameter, ends.core, ends.modulus) +
           bar((ends.tapped ? 0.33 : 0.4) * ends.diameter, nominal, ends.other_modulus);
}

Compliance cone(Stress modulus, Length hole, Length face, Length thickness) {
    require_positive(modulus.in(megapascal), "the modulus");
    require_positive(hole.in(millimetre), "the hole");
    require_positive(thickness.in(millimetre), "the thickness");
    if (!(face > hole)) {
        throw error(ErrorKind::out_of_validity, "a bearing face of {:.4g} mm does not cover a hole of {:.4g} mm",
                    face.in(millimetre), hole.in(millimetre));
    }
    const double d = hole.in(millimetre);
    const double spread = 2 * k_tan_30 * thickness.in(millimetre);
    const double outer = face.in(millimetre);
    const double ratio = (spread + outer - d) * (outer + d) / ((spread + outer + d) * (outer - d));
    return {std::log(ratio) / (k_tan_30 * constants::k_pi * modulus.in(megapascal) * d)};
}

Compliance clamped_parts(std::span<const Layer> layers, Length hole, Length face) {
    Length grip;
    for (const Layer& layer : layers) {
        require_positive(layer.thickness.in(millimetre), "the thickness of a clamped part");
        grip = grip + layer.thickness;
    }
    require_positive(grip.in(millimetre), "the grip");
    const Length half = grip / 2;
    Compliance sum;
    Length from;
    for (const Layer& layer : layers) {
        const Length to = from + layer.thickness;
        // The upper cone spreads downwards from the head, the lower one upwards from the other end; a layer that reaches
        // over the middle has a part in each. A piece of a cone begins where its narrower end lies.
        if (const Length end = std::min(to, half); end > from) {
            sum = sum + cone(layer.modulus, hole, face + 2 * k_tan_30 * from, end - from);
        }
        if (const Length begin = std::max(from, half); to > begin) {
            sum = sum + cone(layer.modulus, hole, face + 2 * k_tan_30 * (grip - to), to - begin);
        }
        from = to;
    }
    return sum;
}

Compliance clamped_by_fit(Stress modulus, Length hole, Length grip, double a, double b) {
    require_positive(modulus.in(megapascal), "the modulus");
    require_positive(hole.in(millimetre), "the hole");
    require_positive(grip.in(millimetre), "the grip");
    return {1 / (modulus.in(megapascal) * hole.in(millimetre) * a * std::exp(b * (hole / grip)))};
}

Angle turn_for(Force preload, const Springs& springs, Length lead) {
    require_positive(preload.in(newton), "the preload");
    require_positive(lead.in(millimetre), "the pitch");
    require_springs(springs);
    return (preload * springs.both()) / lead * k_full_turn;
}

Force preload_by_turn(Angle turn, const Springs& springs, Length lead) {
    require_positive(turn.in(degree), "the turn");
    require_positive(lead.in(millimetre), "the pitch");
    require_springs(springs);
    return (turn / k_full_turn * lead) / springs.both();
}

Angle turn_of_bolt_alone(Stress stress, Length length, Stress modulus, Length lead) {
    require_positive(stress.in(megapascal), "the stress");
    require_positive(length.in(millimetre), "the length");
    require_positive(modulus.in(megapascal), "the modulus");
    require_positive(lead.in(millimetre), "the pitch");
    return (stress / modulus) * (length / lead) * k_full_turn;
}

Force embedding_loss(Length settling, const Springs& springs) {
    if (!(settling >= 0 * millimetre)) {
        throw error(ErrorKind::out_of_validity, "surfaces settle by zero or more, not by {:.4g} mm", settling.in(millimetre));
    }
    require_springs(springs);
    return settling / springs.both();
}

Force thermal_change(double parts_expansion, double screw_expansion, double kelvin, Length grip, const Springs& springs) {
    require_positive(parts_expansion, "the expansion of the clamped parts");
    require_positive(screw_expansion, "the expansion of the screw");
    require_positive(grip.in(millimetre), "the grip");
    require_springs(springs);
    if (!std::isfinite(kelvin)) {
        throw error(ErrorKind::out_of_validity, "a change of temperature must be finite");
    }
    return ((parts_expansion - screw_expansion) * kelvin * grip) / springs.both();
}

LoadedJoint under_load(Force preload, double load_share, Force load) {
    require_load(preload, load_share, load);
    const Force opening = load_leaving(preload, load_share, 0 * newton);
    if (!(load < opening)) {
        throw error(ErrorKind::out_of_validity, "a load of {:.0f} N opens the joint: it carries less than {:.0f} N",
                    load.in(newton), opening.in(newton));
    }
    return {preload + load_share * load, preload - (1 - load_share) * load};
}

Force load_leaving(Force preload, double load_share, Force clamping) {
    require_positive(preload.in(newton), "the preload");
    require_share(load_share);
    if (!(clamping >= 0 * newton && clamping <= preload)) {
        throw error(ErrorKind::out_of_validity, "a clamping force of {:.0f} N cannot be left of a preload of {:.0f} N",
                    clamping.in(newton), preload.in(newton));
    }
    return (preload - clamping) / (1 - load_share);
}

double load_factor(Force proof_load, Force preload, double load_share, Force load) {
    require_load(preload, load_share, load);
    if (!(proof_load >= preload)) {
        throw error(ErrorKind::out_of_validity, "a preload of {:.0f} N passes the proof load of {:.0f} N", preload.in(newton),
                    proof_load.in(newton));
    }
    return (proof_load - preload) / (load_share * load);
}

double separation_factor(Force preload, double load_share, Force load) {
    require_load(preload, load_share, load);
    return preload / ((1 - load_share) * load);
}

Stress stress_amplitude(double load_share, Force load, Area stress_area) {
    require_share(load_share);
    require_positive(load.in(newton), "the load");
    require_positive(stress_area.in(square_millimetre), "the stress area");
    return load_share * load / (2 * stress_area);
}

} // namespace clampbook::engine
