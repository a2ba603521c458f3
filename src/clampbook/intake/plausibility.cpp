// SPDX-License-Identifier: MIT
// Does a tightening make sense on a joint? The window from its thread, class, role, ring and housing, and the slip of the pen
// that explains a figure outside it.

#include "clampbook/engine/plausibility.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/engine/plug.hpp"
#include "clampbook/engine/strength.hpp"
#include "clampbook/engine/strip.hpp"
#include "clampbook/intake/intake.hpp"
#include "clampbook/intake/judge.hpp"
#include "clampbook/model/ring.hpp"
#include "clampbook/model/thread.hpp"
#include "clampbook/units/reading.hpp"

#include <algorithm>
#include <array>

namespace clampbook::intake {
namespace {

using engine::TighteningHabit;
using engine::TorqueWindow;
using reference::Reference;
using reference::ThreadRow;

constexpr double k_dry_nut_factor = 0.32; // the upper end of a screw's window

// The last torque that is asked for, and how it is meant.
struct Asked {
    Step step;
    TighteningHabit habit = TighteningHabit::clamped;
};

std::optional<Asked> asked_of(const Joint& joint, const Tightening& tightening) {
    std::optional<Asked> asked;
    for (const Step& step : tightening.steps) {
        if (step.kind == StepKind::torque && (!asked || step.nominal >= asked->step.nominal)) {
            asked = Asked{step, TighteningHabit::clamped};
        } else if (step.kind == StepKind::angle && asked) {
            asked->habit = TighteningHabit::by_angle;
        }
    }
    const bool free = joint.role == Role::bearing || joint.role == Role::sensor || joint.role == Role::vent;
    if (asked && free) {
        asked->habit = TighteningHabit::free;
    }
    return asked;
}

// A nut class stands for the screw that belongs to it.
std::string screw_class(const Reference& reference, const std::string& name) {
    static constexpr std::array<std::pair<std::string_view, std::string_view>, 5> k_screws{
        {{"5", "5.8"}, {"6", "6.8"}, {"8", "8.8"}, {"10", "10.9"}, {"12", "12.9"}}};
    for (const auto& [nut, screw] : k_screws) {
        if (nut == name) {
            return std::string{screw};
        }
    }
    const auto names = reference.class_names();
    return std::ranges::find(names, name) == names.end() ? std::string{} : name;
}

// The proof load, or the load at the 0.2 % limit; nothing where the class isn't made in this size.
std::optional<Force> proof_load(const Reference& reference, const ThreadRow& thread, const engine::ThreadGeometry& geometry,
                                const std::string& name) {
    try {
        const reference::ClassRow row = reference.property_class(name, thread);
        return engine::load_at(row.proof_stress.value_or(row.yield_strength), geometry.stress_area);
    } catch (const Error& fault) {
        if (fault.kind() != ErrorKind::out_of_validity) {
            throw;
        }
        return std::nullopt;
    }
}

// Shear strength of a screw's thread of a strong class, so that the housing decides.
engine::ShearStrengths shear_strengths(const Reference& reference, const Joint& joint) {
    const Stress strong = reference.property_class("8.8", reference.thread(read_thread("M10"))).tensile_strength;
    return {reference.shear_ratio("8.8").ratio * strong, reference.material(reference.housing(joint.housing)).shear_strength};
}

// What strips the thread in the housing; nothing where housing or depth isn't known, or too shallow to compute.
std::optional<Force> strip_load(const Reference& reference, const Joint& joint, const engine::ThreadGeometry& geometry) {
    if (joint.housing.empty() || !joint.engagement_mm) {
        return std::nullopt;
    }
    const Length deepest = engine::k_engagement_most * geometry.major;
    const Length depth = std::min(*joint.engagement_mm * millimetre, deepest);
    if (depth < geometry.pitch) {
        return std::nullopt;
    }
    return engine::strip_loads(engine::shear_areas(engine::basic_pair(geometry), depth), shear_strengths(reference, joint))
        .least();
}

struct Face {
    Length inner;
    Length outer;
};

Face ring_face(const Reference& reference, const Joint& joint, const engine::ThreadGeometry& geometry) {
    if (const auto ring = joint.ring.empty() ? std::nullopt : read_ring(joint.ring).size) {
        return {ring->inner, ring->outer};
    }
    if (const auto usual = reference.usual_ring(joint.thread)) {
        return {usual->inner, usual->outer};
    }
    return {geometry.major, 1.25 * geometry.major};
}

TorqueWindow plug_window(const Reference& reference, const Joint& joint, const engine::ThreadGeometry& geometry,
                         TighteningHabit habit) {
    const Face face = ring_face(reference, joint, geometry);
    const reference::FrictionClassRow friction = reference.friction_class("B"); // its ends: greased and nearly dry
    const auto torque = [&](Force force, double mu) {
        return engine::friction_torque(force, {geometry, mu, mu, face.outer, face.inner}).total;
    };
    const auto seat = [&](std::string_view material) -> std::optional<Torque> {
        const auto y = reference.ring(material, joint.thread).seating_stress;
        return y ? std::optional{torque(engine::seating_load(face.inner, face.outer, *y), friction.low)} : std::nullopt;
    };
    const std::string ring = joint.ring.empty() ? std::string{} : reference.ring_material(read_ring(joint.ring).material);
    engine::PlugScale scale;
    scale.soft = seat("aluminium").value();
    if (!ring.empty()) {
        scale.ring = seat(ring);
        scale.seated = scale.ring.has_value();
    }
    if (const auto strips = strip_load(reference, joint, geometry)) {
        scale.strength = torque(*strips, friction.high.value());
    }
    return engine::plug_torque_window(scale, habit);
}

TorqueWindow screw_window(const Reference& reference, const Joint& joint, const ThreadRow& thread,
                          const engine::ThreadGeometry& geometry, Force weakest, Force strongest, TighteningHabit habit) {
    TorqueWindow window = engine::screw_window(weakest, strongest, geometry.major, habit);
    if (const auto strips = strip_load(reference, joint, geometry)) {
        window.high = std::max(window.low, std::min(window.high, engine::torque_for(*strips, k_dry_nut_factor, thread.major)));
    }
    return window;
}

// Nothing where too little is known.
std::optional<TorqueWindow> window_of(const Reference& reference, const Joint& joint, TighteningHabit habit) {
    if (joint.thread.empty()) {
        return std::nullopt;
    }
    const ThreadRow thread = reference.thread(read_thread(joint.thread));
    if (thread.series == "taper pipe" || joint.form.starts_with("taper")) {
        return std::nullopt;
    }
    const engine::ThreadGeometry geometry =
        engine::parallel_geometry(thread.system, thread.code, thread.major, thread.pitch, thread.threads_per_inch);
    const std::string name = screw_class(reference, joint.property_class);
    const bool screwed_in_like_a_plug = joint.role == Role::sensor || joint.role == Role::filter;
    if (is_plug(joint.role) || is_pipe(thread.system) || (name.empty() && screwed_in_like_a_plug)) {
        return plug_window(reference, joint, geometry, habit);
    }
    if (!name.empty()) {
        const auto proof = proof_load(reference, thread, geometry, name);
        return proof ? std::optional{screw_window(reference, joint, thread, geometry, *proof, *proof, habit)} : std::nullopt;
    }
    const bool metric = thread.system == ThreadSystem::metric;
    const auto weakest = proof_load(reference, thread, geometry, metric ? "4.6" : "grade 1");
    const auto strongest = proof_load(reference, thread, geometry, metric ? "12.9" : "grade 8");
    if (!weakest || !strongest) {
        return std::nullopt;
    }
    return screw_window(reference, joint, thread, geometry, *weakest, *strongest, habit);
}

std::string newton_metres(Torque torque) { return print_significant(torque.in(newton_metre), 2); }

std::string slip_words(const engine::Slip& slip) {
    if (!slip.unit.empty()) {
        return fmt::format("the source says {}", slip.unit);
    }
    return slip.factor < 1 ? "its point stands one place too far right" : "its point stands one place too far left";
}

std::string explanation(const std::vector<engine::Slip>& slips) {
    if (slips.empty()) {
        return {};
    }
    std::vector<std::string> words;
    for (const engine::Slip& slip : slips) {
        words.push_back(slip_words(slip));
    }
    return (slips.size() == 1 ? "; it fits if " : "; it would fit if ") + join(words, ", or if ");
}

std::string title_of(const Joint& joint) {
    const std::string thread = thread_for_print(joint.thread);
    return joint.name + " " + thread + (is_plug(joint.role) || joint.property_class.empty() ? "" : " " + joint.property_class);
}

} // namespace

std::optional<std::string> implausible(const Judge& judge, const Joint& joint, const Tightening& tightening) {
    const auto asked = asked_of(joint, tightening);
    if (!asked) {
        return std::nullopt;
    }
    const std::string like =
        key_of({joint.thread, joint.property_class, joint.form, joint.ring, joint.housing, role_name(joint.role),
                joint.engagement_mm ? print_shortest(*joint.engagement_mm) : "", std::to_string(static_cast<int>(asked->habit))});
    const auto& window = judge.memory().windows.of(like, [&] { return window_of(judge.reference(), joint, asked->habit); });
    const Torque torque = asked->step.nominal * newton_metre;
    if (!window || window->holds(torque)) {
        return std::nullopt;
    }
    std::string out = fmt::format("'{}' is implausible on {}", tightening.as_written, title_of(joint));
    if (joint.safety_critical) {
        out += ", a safety-critical joint";
    } else {
        out += fmt::format(": {} to {} N·m make sense there", newton_metres(window->low), newton_metres(window->high));
    }
    return out + explanation(engine::slips_into(*window, torque, asked->step.unit));
}

} // namespace clampbook::intake
