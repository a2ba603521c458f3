// SPDX-License-Identifier: MIT
#include "clampbook/engine/friction.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/engine/require.hpp"

#include <cmath>

namespace clampbook::engine {
namespace {

// The refusals stand apart and the steps are inline, so that what is computed stays short: it runs a million times in a draw.
[[noreturn, gnu::cold, gnu::noinline]] void refuse_friction(double friction, const char* where) {
    throw error(ErrorKind::out_of_validity, "a coefficient of friction of {:.6g} {} lies outside {:.2f} to {:.2f}", friction,
                where, k_friction_min, k_friction_max);
}

[[noreturn, gnu::cold, gnu::noinline]] void refuse_ring(Length outer, Length inner) {
    throw error(ErrorKind::out_of_validity, "a bearing face of {:.4g} mm does not cover a hole of {:.4g} mm",
                outer.in(millimetre), inner.in(millimetre));
}

[[noreturn, gnu::cold, gnu::noinline]] void refuse_pitch(const ThreadGeometry& thread) {
    throw error(ErrorKind::out_of_validity, "a pitch of {:.4g} mm is too steep for a thread of {:.4g} mm",
                thread.pitch.in(millimetre), thread.major.in(millimetre));
}

[[noreturn, gnu::cold, gnu::noinline]] void refuse_utilisation(double utilisation) {
    throw error(ErrorKind::out_of_validity, "a utilisation of {:.6g} % of the yield strength lies outside 0 to 100 %",
                utilisation * 100);
}

inline void require_friction(double friction, const char* where) {
    if (!within(friction, k_friction_min, k_friction_max)) {
        refuse_friction(friction, where);
    }
}

inline void require_ring(Length outer, Length inner) {
    const double face = outer.in(millimetre);
    const double hole = inner.in(millimetre);
    require_positive(hole, "the hole under the head");
    if (!(face > hole) || !within(face, k_least, k_most)) {
        refuse_ring(outer, inner);
    }
}

// tan(φ + ρ′), which passes every limit only where pitch and friction are far beyond any thread.
inline double tan_helix_and_friction(const ThreadGeometry& thread, double friction) {
    require_friction(friction, "in the thread");
    require_positive(thread.pitch.in(millimetre), "the pitch");
    require_positive(thread.pitch_diameter.in(millimetre), "the pitch diameter");
    const double helix = thread.pitch / (constants::k_pi * thread.pitch_diameter);
    const double flank = friction / cos_flank(thread.profile);
    if (helix * flank >= 1) {
        refuse_pitch(thread);
    }
    return (helix + flank) / (1 - helix * flank);
}

// σ_red / σ: how much the twist adds to the pull, σ and τ over the whole stress area. `tangent` is tan(φ + ρ′).
inline double stress_ratio(const ThreadGeometry& thread, double tangent, Torsion torsion) {
    require_positive(thread.stress_area.in(square_millimetre), "the stress area");
    const double d0 = std::sqrt(4 / constants::k_pi * thread.stress_area.in(square_millimetre));
    const double section = torsion == Torsion::plastic ? 1.5 : 2.0;
    const double shear = section * thread.pitch_diameter.in(millimetre) / d0 * tangent;
    return std::sqrt(1 + 3 * shear * shear);
}

// The head's share of T / F: μ_K D_Km/2
inline Length head_lever(const FrictionJoint& joint) {
    require_friction(joint.head_friction, "under the head");
    require_ring(joint.bearing_outer, joint.bearing_inner);
    return joint.head_friction / 4 * (joint.bearing_outer + joint.bearing_inner);
}

inline Force assembly_preload_at(Stress yield_strength, double utilisation, const ThreadGeometry& thread, double tangent,
                                 Torsion torsion) {
    require_positive(yield_strength.in(megapascal), "the yield strength");
    if (!within(utilisation, k_least, 1)) {
        refuse_utilisation(utilisation);
    }
    return utilisation / stress_ratio(thread, tangent, torsion) * (yield_strength * thread.stress_area);
}

inline TorqueShares shares_at(Force preload, const FrictionJoint& joint, Length thread) {
    const Length head = head_lever(joint);
    TorqueShares shares;
    shares.total = preload * (thread + head);
    shares.pitch = preload * (joint.thread.pitch / (2 * constants::k_pi));
    shares.head = preload * head;
    shares.thread = shares.total - shares.pitch - shares.head;
    return shares;
}

// T / F
Length lever(const FrictionJoint& joint) {
    const Length thread = thread_lever(joint.thread, joint.thread_friction); // first: its fault is told first
    return thread + head_lever(joint);
}

} // namespace

Length thread_lever(const ThreadGeometry& thread, double friction) {
    return thread.pitch_diameter / 2 * tan_helix_and_friction(thread, friction);
}

Force assembly_preload(Stress yield_strength, double utilisation, const ThreadGeometry& thread, double thread_friction,
                       Torsion torsion) {
    return assembly_preload_at(yield_strength, utilisation, thread, tan_helix_and_friction(thread, thread_friction), torsion);
}

double utilisation_of(Force preload, Stress yield_strength, const ThreadGeometry& thread, double thread_friction,
                      Torsion torsion) {
    require_positive(preload.in(newton), "the preload");
    require_positive(yield_strength.in(megapascal), "the yield strength");
    return preload / (yield_strength * thread.stress_area) *
           stress_ratio(thread, tan_helix_and_friction(thread, thread_friction), torsion);
}

TorqueShares friction_torque(Force preload, const FrictionJoint& joint) {
    require_positive(preload.in(newton), "the preload");
    return shares_at(preload, joint, thread_lever(joint.thread, joint.thread_friction));
}

FrictionTightening friction_tightening(Stress yield_strength, double utilisation, const FrictionJoint& joint, Torsion torsion) {
    const double tangent = tan_helix_and_friction(joint.thread, joint.thread_friction);
    const Force preload = assembly_preload_at(yield_strength, utilisation, joint.thread, tangent, torsion);
    return {preload, shares_at(preload, joint, joint.thread.pitch_diameter / 2 * tangent)};
}

Force friction_preload(Torque torque, const FrictionJoint& joint) {
    require_positive(torque.in(newton_metre), "the torque");
    return torque / lever(joint);
}

Force hollow_preload(Stress strength, const ThreadGeometry& thread, double thread_friction, Length bore) {
    require_positive(strength.in(megapascal), "the strength of the section");
    require_positive(thread.stress_area.in(square_millimetre), "the stress area");
    const double d0 = std::sqrt(4 / constants::k_pi * thread.stress_area.in(square_millimetre));
    const double b = bore.in(millimetre);
    if (!(b >= 0 && b < d0)) {
        throw error(ErrorKind::out_of_validity, "a bore of {:.4g} mm leaves nothing of a core of {:.4g} mm", b, d0);
    }
    const double area = constants::k_pi / 4 * (d0 * d0 - b * b);
    const double section = constants::k_pi / 12 * (d0 * d0 * d0 - b * b * b);
    const double twist = thread_lever(thread, thread_friction).in(millimetre) / section;
    return strength.in(megapascal) / std::sqrt(1 / (area * area) + 3 * twist * twist) * newton;
}

double equivalent_nut_factor(const FrictionJoint& joint) {
    require_positive(joint.thread.major.in(millimetre), "the diameter");
    return lever(joint) / joint.thread.major;
}

double friction_of_nut_factor(double nut_factor, const FrictionJoint& joint) {
    const auto nut_factor_at = [&joint](double friction) {
        FrictionJoint with = joint;
        with.thread_friction = friction;
        with.head_friction = friction;
        return equivalent_nut_factor(with);
    };
    double low = k_friction_min;
    double high = k_friction_max;
    if (!(nut_factor >= nut_factor_at(low) && nut_factor <= nut_factor_at(high))) {
        throw error(ErrorKind::out_of_validity,
                    "a nut factor of {} lies outside {:.3f} to {:.3f}, which friction from {} to {} gives here", nut_factor,
                    nut_factor_at(low), nut_factor_at(high), low, high);
    }
    // It rises with friction throughout: halving to the last digit of a double.
    for (int i = 0; i < 60; ++i) {
        const double middle = (low + high) / 2;
        (nut_factor_at(middle) < nut_factor ? low : high) = middle;
    }
    return (low + high) / 2;
}

Stress bearing_pressure(Force preload, Length bearing_outer, Length bearing_inner) {
    require_positive(preload.in(newton), "the preload");
    require_ring(bearing_outer, bearing_inner);
    return preload / (disc(bearing_outer) - disc(bearing_inner));
}

} // namespace clampbook::engine
