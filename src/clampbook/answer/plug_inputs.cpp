// SPDX-License-Identifier: MIT
#include "clampbook/answer/plug_inputs.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/units/reading.hpp"

#include <algorithm>
#include <cmath>

namespace clampbook::answer {
namespace {

using reference::Reference;
using reference::ThreadRow;

constexpr std::string_view k_usual_class = "5.8";

// A plug is no screw: a class stands for its steel, in whatever size. Inch grades are looked up in their own thread.
reference::ClassRow class_of(const Reference& reference, const PlugRequest& request, const ThreadRow& thread) {
    const std::string name = reference.class_name(request.property_class.empty() ? k_usual_class : request.property_class);
    const bool own = thread.system == ThreadSystem::unified;
    return reference.property_class(name, own ? thread : reference.thread(read_thread("M10")));
}

std::string form_of(const Reference& reference, const PlugRequest& request) {
    if (!request.form.empty()) {
        return reference.plug_form(request.form);
    }
    return reference.ring_material(read_ring(request.ring).material) == "o-ring" ? "o-ring hexagon" : "collar hexagon";
}

void look_up_ring(PlugInputs& in, const Reference& reference, const PlugRequest& request) {
    const RingName ring = read_ring(request.ring);
    in.ring = reference.ring(reference.ring_material(ring.material), in.thread.code);
    const bool flat = in.ring.material == "aluminium" || in.ring.material == "copper" || in.ring.material == "steel";
    if (ring.size && !flat) {
        throw error(ErrorKind::usage, "--ring {} takes no size: only a flat metal ring is seated over its face",
                    in.ring.material);
    }
    if (ring.size) {
        in.ring_size = ring.size;
        in.ring_words = ring.size->text + " mm, as given";
    } else if (flat) {
        const auto usual = reference.usual_ring(in.thread.code);
        if (!usual) {
            throw error(ErrorKind::not_found, "no flat ring is kept here for {}; give its size, like --ring '{} 18x22'",
                        in.thread.code, in.ring.material);
        }
        in.ring_size = RingSize{usual->inner, usual->outer, usual->thickness, usual->print};
        in.ring_words = usual->print + ", usual for this thread (DIN 7603)";
        in.ring_citation = usual->citation;
    }
    if (in.ring_size && in.ring_size->inner < in.thread.major - 0.5 * millimetre) {
        throw error(ErrorKind::out_of_validity, "a ring of {} does not go over a thread of {} mm", in.ring_size->text,
                    print_significant(in.thread.major.in(millimetre), 4));
    }
}

void look_up_face(PlugInputs& in) {
    const auto collar = in.part ? in.part->collar_diameter : std::nullopt;
    if (in.ring_size) {
        in.face_inner = in.ring_size->inner;
        in.face_outer = collar ? std::min(in.ring_size->outer, *collar) : in.ring_size->outer;
        in.face_words = "the ring, under the collar";
        return;
    }
    in.face_inner = in.thread.major;
    in.face_outer = collar.value_or(1.3 * in.thread.major);
    in.face_words = collar ? "the collar, " + in.part->code : "taken as 1.3 d: no collar of this plug is kept here (practice)";
}

void look_up_engagement(PlugInputs& in, const PlugRequest& request) {
    if (!request.engagement.empty()) {
        in.engagement = given_length(request.engagement);
        return;
    }
    if (!in.part) {
        throw error(ErrorKind::not_found,
                    "no plug of the form '{}' is kept here for {}, so how deep it goes isn't known; give it with --engagement",
                    in.form, in.thread.code);
    }
    const Length ring = in.ring_size ? in.ring_size->thickness.value_or(1.5 * millimetre) : 0 * millimetre;
    in.engagement = derived_length(in.part->thread_length - ring - in.geometry.pitch,
                                   "thread of " + in.part->code + " less ring and one pitch of chamfer and run-out");
    in.engagement.citation = in.part->citation;
}

void look_up_bore(PlugInputs& in, const Reference& reference, const PlugRequest& request) {
    if (!request.bore.empty()) {
        in.bore = read_quantity(request.bore, Dimension::length).as<Dimension::length>();
        in.bore_words = "as given";
        return;
    }
    if (reference.plug_form_row(in.form).drive == "hexagon socket") {
        if (!in.part) {
            throw error(ErrorKind::not_found,
                        "no plug of the form '{}' is kept here for {}, so its socket isn't known; give the "
                        "hole across its corners with --bore",
                        in.form, in.thread.code);
        }
        in.bore = 2 / std::sqrt(3.0) * in.part->across_flats;
        in.bore_words = "the socket's corners, taken to reach into the thread";
    }
}

} // namespace

PlugInputs plug_inputs(Document& document, const Reference& reference, const PlugRequest& request, ThreadRow thread) {
    PlugInputs in;
    in.thread = std::move(thread);
    in.geometry = geometry_of(in.thread);
    in.form = form_of(reference, request);
    const reference::PlugFormRow form = reference.plug_form_row(in.form);
    look_up_ring(in, reference, request);
    if (form.seal == "thread") {
        throw error(ErrorKind::out_of_validity, "a {} in {} seals by its thread, {}: take turns or torque from the maker",
                    form.name, thread_for_print(in.thread.code),
                    form.code.starts_with("taper") ? "and no gauge length of it is kept here" : "and has no face to turn on");
    }
    if ((form.seal == "o-ring") != (in.ring.material == "o-ring")) {
        throw error(ErrorKind::usage, "a {} seals by {}, not by '{}'", form.name, form.seal == "ring" ? "a ring" : "an o-ring",
                    in.ring.material);
    }
    in.housing = material_of(reference, request.housing, document);
    in.plug_class = class_of(reference, request, in.thread);
    in.shear = reference.shear_ratio(in.plug_class.name);
    in.part = reference.plug(in.form, in.thread.code);
    if (!in.part && form.seal == "o-ring") {
        in.part = reference.plug("collar hexagon", in.thread.code); // stands in for the collar and the length
    }
    in.pair = pair_of(reference, in.thread, false);
    if (request.friction.empty()) {
        const reference::FrictionClassRow b = reference.friction_class("B");
        in.friction = {b.low, b.high.value()};
        in.friction_basis = "friction class B";
        in.friction_citation = b.citation;
    } else {
        in.friction = read_friction_band(request.friction);
        in.friction_basis = "as given";
    }
    look_up_face(in);
    look_up_engagement(in, request);
    look_up_bore(in, reference, request);
    return in;
}

} // namespace clampbook::answer
