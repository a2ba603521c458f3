// SPDX-License-Identifier: MIT
// derive by coefficients of friction: the preload that a share of the yield strength allows while the screw is twisted, the
// torque for it, and where that torque goes.

#include "clampbook/answer/parts.hpp"
#include "clampbook/answer/screw.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/units/reading.hpp"

namespace clampbook::answer {
namespace {

using reference::Reference;

constexpr double k_usual_utilisation = 0.9;

engine::Torsion read_torsion(std::string_view text) {
    if (text.empty() || text == "plastic") {
        return engine::Torsion::plastic;
    }
    if (text == "elastic") {
        return engine::Torsion::elastic;
    }
    throw error(ErrorKind::usage, "'{}' is no way to count torsion; it is plastic or elastic", text);
}

Figure torque_share(Torque part, Torque total, std::string basis) {
    Figure f = torque_figure(part, Label::derived, std::move(basis));
    f.also = print_significant(part / total * 100, 3) + " %";
    return f;
}

void add_surface(Document& document, const Reference& reference, const DeriveRequest& request, Force preload,
                 const engine::FrictionJoint& joint) {
    if (request.friction.under.empty()) {
        return;
    }
    const reference::MaterialRow material = material_of(reference, request.friction.under, document);
    const Stress pressure = engine::bearing_pressure(preload, joint.bearing_outer, joint.bearing_inner);
    document.section("under the head");
    document.add("under", "material", material.code + ", " + material.name);
    document.add("surface_pressure", "surface pressure",
                 stress_figure(pressure, Label::derived, "F / [π/4 (d_w² − d_h²)] (VDI 2230-1)"));
    if (!material.limiting_pressure) {
        document.notes.push_back("No limiting surface pressure is kept here for " + material.code + ".");
        return;
    }
    document.add("limiting_pressure", "limiting pressure", curated_stress(*material.limiting_pressure, material.pressure));
    if (pressure > *material.limiting_pressure) {
        document.cautions.push_back({"over-pressure", "The surface under the head yields at this preload: it is lost again. A "
                                                      "flange, a hard washer or less preload is needed."});
    }
}

} // namespace

Document derive_by_friction(const Reference& reference, const DeriveRequest& request) {
    if (!request.nut_factor.empty() || !request.condition.empty() || !request.preload.empty() || request.permanent) {
        throw error(ErrorKind::usage,
                    "--friction excludes --nut-factor, --condition, --preload and --permanent; its preload is set by "
                    "--utilisation or --torque");
    }
    const Screw screw = screw_of(reference, request.thread, request.property_class);
    const Coefficients mu = read_coefficients(request.friction.coefficients);
    const engine::Torsion torsion = read_torsion(request.friction.torsion);
    const auto [bearing, hole] = face_of(reference, request.friction.face, screw.thread.size);
    const engine::FrictionJoint joint{screw.geometry, mu.thread, mu.head, bearing.value * millimetre, hole.value * millimetre};
    const Stress yield = screw.property_class.yield_strength;
    const std::string name = screw.title();

    Document document;
    document.schema = "derive";
    document.section({});
    document.add("label", "", std::string{label_name(Label::derived)});
    Force preload;
    Torque torque;
    double used = 0;
    if (request.torque.empty()) {
        used = request.friction.utilisation.empty()
                   ? k_usual_utilisation
                   : read_share(request.friction.utilisation, "a utilisation is a share of the yield strength", "90%");
        const engine::FrictionTightening tightened = engine::friction_tightening(yield, used, joint, torsion);
        preload = tightened.preload;
        torque = tightened.torque.total;
        document.heading = name + ": generic tightening by friction (derived, no maker's figure)";
        document.add("torque", "torque T",
                     torque_figure(torque, Label::derived, "F [d2/2 tan(φ + ρ′) + μ_K D_Km/2] (VDI 2230-1)"));
        document.add("preload", "preload F", force_figure(preload, "ν Rp0.2 As / √(1 + 3 (τ/σ)²) (VDI 2230-1)"));
        document.add(
            "utilisation", "used",
            share_figure(used, std::string{"of the yield strength"} +
                                   (request.friction.utilisation.empty() ? ", the usual share (VDI 2230-1)" : ", as given")));
    } else {
        if (!request.friction.utilisation.empty()) {
            throw error(ErrorKind::usage, "--torque and --utilisation exclude each other: one follows from the other");
        }
        const Reading reading = read_quantity(request.torque, Dimension::torque);
        torque = reading.as<Dimension::torque>();
        preload = engine::friction_preload(torque, joint);
        used = engine::utilisation_of(preload, yield, joint.thread, mu.thread, torsion);
        if (used > 1) {
            const Torque most = engine::friction_tightening(yield, 1, joint, torsion).torque.total;
            throw error(ErrorKind::out_of_validity, "{} on {} passes its yield strength; with this friction at most {} ({})",
                        request.torque, name, print_quantity(most.in(newton_metre), "N·m", 3),
                        print_quantity(most.in(pound_force_foot), "lbf·ft", 3));
        }
        document.heading = name + ": generic preload from a torque, by friction (derived, no maker's figure)";
        document.add("torque", "torque T", torque_as_given(reading));
        document.add("preload", "preload F", force_figure(preload, "T / [d2/2 tan(φ + ρ′) + μ_K D_Km/2] (VDI 2230-1)"));
        document.add("utilisation", "used", share_figure(used, "of the yield strength, pull and twist together"));
    }

    const engine::TorqueShares parts = engine::friction_torque(preload, joint);
    document.section("where the torque goes");
    document.add("shares.pitch", "pitch, stretches the screw", torque_share(parts.pitch, parts.total, "F P/(2π)"));
    document.add("shares.thread", "friction in the thread", torque_share(parts.thread, parts.total, "the rest"));
    document.add("shares.head", "friction under the head", torque_share(parts.head, parts.total, "F μ_K D_Km/2"));

    document.section("inputs");
    document.add("thread", "thread", screw.thread.code);
    document.add("property_class", "property class", screw.property_class.name);
    Figure area = figure(joint.thread.stress_area, "mm²", 4, Label::derived);
    area.basis = "by formula, not rounded";
    document.add("stress_area", "stress area As", area);
    document.add("yield_strength", "yield strength Rp0.2, least", curated_stress(yield, screw.property_class.citation));
    add_friction(document, {mu, "as given"});
    document.add("bearing_diameter", "bearing face d_w", bearing);
    document.add("hole", "hole d_h", hole);
    document.add("torsion", "torsion", std::string{torsion == engine::Torsion::plastic ? "plastic" : "elastic, the older rule"});
    document.add("nut_factor", "equivalent nut factor K",
                 number_figure(engine::equivalent_nut_factor(joint), "T / (F d), for this joint alone", 3));
    add_surface(document, reference, request, preload, joint);
    for (const Caution& caution : {caution_generic(), caution_coefficients(), caution_maker_first()}) {
        document.cautions.push_back(caution);
    }
    return document;
}

} // namespace clampbook::answer
