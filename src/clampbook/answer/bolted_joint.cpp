// SPDX-License-Identifier: MIT
#include "clampbook/answer/bolted_joint.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/units/reading.hpp"

#include <vector>

namespace clampbook::answer {
namespace {

engine::Springs springs_of(const AngleRequest& request, const BoltedJoint& j) {
    const engine::ThreadGeometry& thread = j.screw.geometry;
    const Length hole = j.face.hole.value * millimetre;
    const Length face = j.face.bearing.value * millimetre;
    engine::Springs springs;
    springs.screw =
        engine::bolt_in_grip({disc(thread.major), j.shank, thread.stress_area, j.grip - j.shank}, j.screw_steel.modulus) +
        engine::bolt_ends({thread.major, disc(thread.minor_external), request.face.head == "socket", j.tapped.has_value(),
                           j.screw_steel.modulus, j.tapped ? j.tapped->modulus : j.screw_steel.modulus});
    std::vector<engine::Layer> layers{{j.grip, j.under.modulus}};
    if (j.tapped) {
        layers.push_back({thread.major / 2, j.tapped->modulus}); // the cone goes on into the tapped part (Shigley, 8-5)
    }
    springs.parts = engine::clamped_parts(layers, hole, face);
    return springs;
}

} // namespace

BoltedJoint bolted_joint(Document& document, const reference::Reference& reference, const AngleRequest& request) {
    BoltedJoint j;
    j.screw = screw_of(reference, request.thread, request.property_class);
    j.screw_steel = material_of_screw(reference, j.screw.property_class.name);
    j.under = material_of(reference, request.under, document);
    if (!request.tapped.empty()) {
        j.tapped = material_of(reference, request.tapped, document);
    }
    j.grip = read_quantity(request.grip, Dimension::length).as<Dimension::length>();
    if (!request.shank.empty()) {
        j.shank = read_quantity(request.shank, Dimension::length).as<Dimension::length>();
    }
    if (!(j.grip > 0 * millimetre)) {
        throw error(ErrorKind::out_of_validity, "a grip of {} must be more than zero", request.grip);
    }
    if (!(j.shank >= 0 * millimetre && j.shank <= j.grip)) {
        throw error(ErrorKind::out_of_validity, "a shank of {} lies outside the grip of {}", request.shank, request.grip);
    }
    j.face = face_of(reference, request.face, j.screw.thread.size);
    j.friction = friction_of(request.friction, [&] {
        const reference::FrictionClassRow b = reference.friction_class("B");
        const double middle = (b.low + b.high.value()) / 2;
        return GivenFriction{{middle, middle}, "the middle of friction class B", b.citation};
    });
    j.springs = springs_of(request, j);
    j.twisted = {j.screw.geometry, j.friction.mu.thread, j.friction.mu.head, j.face.bearing.value * millimetre,
                 j.face.hole.value * millimetre};
    return j;
}

} // namespace clampbook::answer
