// SPDX-License-Identifier: MIT
// derive by coefficients of friction: the preload that a share of the yield strength allows while the screw is twisted, the
// torque for it, and where that torque goes.

#include "clampbook/engine/friction.hpp"
#include "clampbook/answer/calculate.hpp"
#include "clampbook/answer/screw.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/units/reading.hpp"

#include <algorithm>
#include <array>

namespace clampbook::answer {
namespace {

using reference::Reference;

constexpr std::array<std::string_view, 3> k_heads{"hexagon", "socket", "flange"};
constexpr std::array<std::string_view, 3> k_fits{"fine", "medium", "coarse"};
constexpr double k_usual_utilisation = 0.9;

struct Coefficients {
    double thread = 0;
    double head = 0;
};

// "0.12", or "0.12,0.14". A decimal comma would make two figures of one, so the decimals are written with a point.
Coefficients read_coefficients(std::string_view text) {
    const auto parts = split(text, ',');
    const auto one = [&](const std::string& part) {
        const auto number = read_whole_decimal(part);
        if (!number || parts.size() > 2 || part.find('.') == std::string::npos) {
            throw error(ErrorKind::usage,
                        "'{}' does not read as a coefficient of friction; write 0.12, or thread and head apart: 0.12,0.14", text);
        }
        return number->value;
    };
    const double thread = one(parts.front());
    return {thread, one(parts.back())};
}

double read_utilisation(std::string_view text) {
    if (text.empty()) {
        return k_usual_utilisation;
    }
    const Reading reading = read_quantity(text, Dimension::number);
    if (reading.unit->symbol != "%") {
        throw error(ErrorKind::usage, "'{}' has no unit; a utilisation is a share of the yield strength like '90%'", text);
    }
    return reading.canonical();
}

engine::Torsion read_torsion(std::string_view text) {
    if (text.empty() || text == "plastic") {
        return engine::Torsion::plastic;
    }
    if (text == "elastic") {
        return engine::Torsion::elastic;
    }
    throw error(ErrorKind::usage, "'{}' is no way to count torsion; it is plastic or elastic", text);
}

Figure given_length(std::string_view text) {
    Figure f = figure(read_quantity(text, Dimension::length).as<Dimension::length>(), "mm", 4, Label::derived);
    f.basis = "as given";
    return f;
}

Figure curated_length(const reference::SizeRow& row) {
    Figure f = figure(row.size, "mm", 4, Label::standard);
    f.print = print_shortest(f.value) + " mm";
    f.basis = row.name;
    f.citation = row.citation;
    return f;
}

Figure bearing_of(const Reference& reference, const DeriveRequest& request, const Screw& screw) {
    if (!request.friction.bearing.empty()) {
        if (!request.friction.head.empty()) {
            throw error(ErrorKind::usage, "--head and --bearing exclude each other: a head has its own bearing face");
        }
        return given_length(request.friction.bearing);
    }
    const std::string head = request.friction.head.empty() ? "hexagon" : request.friction.head;
    if (std::ranges::find(k_heads, head) == k_heads.end()) {
        throw error(ErrorKind::usage, "'{}' is no head known here; a head is hexagon, socket or flange", request.friction.head);
    }
    if (const auto row = reference.bearing_diameter(head, screw.thread.size)) {
        return curated_length(*row);
    }
    throw error(ErrorKind::not_found, "no bearing face of a {} head is kept here for {}; give its diameter with --bearing", head,
                screw.thread.size);
}

Figure hole_of(const Reference& reference, const DeriveRequest& request, const Screw& screw) {
    const std::string fit = request.friction.hole.empty() ? "medium" : request.friction.hole;
    if (std::ranges::find(k_fits, fit) == k_fits.end()) {
        if (!read_decimal(trim(fit))) {
            throw error(ErrorKind::usage, "'{}' is no hole known here; a hole is fine, medium, coarse or a diameter like '11 mm'",
                        fit);
        }
        return given_length(request.friction.hole);
    }
    if (const auto row = reference.clearance_hole(fit, screw.thread.size)) {
        return curated_length(*row);
    }
    throw error(ErrorKind::not_found, "no clearance hole is kept here for {}; give its diameter with --hole", screw.thread.size);
}

Figure coefficient(double value, std::string basis) {
    Figure f;
    f.value = value;
    f.print = print_shortest(value);
    f.label = Label::derived;
    f.basis = std::move(basis);
    return f;
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
    const reference::PressureRow limit = reference.limiting_pressure(reference.housing(request.friction.under));
    const Stress pressure = engine::bearing_pressure(preload, joint.bearing_outer, joint.bearing_inner);
    document.section("under the head");
    document.add("under", "material", limit.name);
    Figure f = figure(pressure, "MPa", 3, Label::derived);
    f.basis = "F / [π/4 (d_w² − d_h²)] (VDI 2230-1)";
    document.add("surface_pressure", "surface pressure", f);
    if (!limit.limit) {
        document.notes.push_back("No limiting surface pressure is kept here for " + limit.name + ".");
        return;
    }
    Figure most = figure(*limit.limit, "MPa", 3, Label::standard);
    most.citation = limit.citation;
    document.add("limiting_pressure", "limiting pressure", most);
    if (pressure > *limit.limit) {
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
    const Figure bearing = bearing_of(reference, request, screw);
    const Figure hole = hole_of(reference, request, screw);
    const engine::FrictionJoint joint{screw.geometry, mu.thread, mu.head, bearing.value * millimetre, hole.value * millimetre};
    const Stress yield = screw.property_class.yield_strength;
    const std::string name = thread_for_print(screw.thread.code) + " " + screw.property_class.name;

    Document document;
    document.schema = "derive";
    document.section({});
    document.add("label", "", std::string{label_name(Label::derived)});
    Force preload;
    Torque torque;
    double used = 0;
    if (request.torque.empty()) {
        used = read_utilisation(request.friction.utilisation);
        preload = engine::assembly_preload(yield, used, joint.thread, mu.thread, torsion);
        torque = engine::friction_torque(preload, joint).total;
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
            const Torque most =
                engine::friction_torque(engine::assembly_preload(yield, 1, joint.thread, mu.thread, torsion), joint).total;
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
    Figure strength = figure(yield, "MPa", 3, Label::standard);
    strength.citation = screw.property_class.citation;
    document.add("yield_strength", "yield strength Rp0.2, least", strength);
    document.add("friction.thread", "friction in the thread μ_G", coefficient(mu.thread, "as given"));
    document.add("friction.head", "friction under the head μ_K", coefficient(mu.head, "as given"));
    document.add("bearing_diameter", "bearing face d_w", bearing);
    document.add("hole", "hole d_h", hole);
    document.add("torsion", "torsion", std::string{torsion == engine::Torsion::plastic ? "plastic" : "elastic, the older rule"});
    Figure k = coefficient(engine::equivalent_nut_factor(joint), "T / (F d), for this joint alone");
    k.print = print_significant(k.value, 3);
    document.add("nut_factor", "equivalent nut factor K", k);
    add_surface(document, reference, request, preload, joint);
    for (const Caution& caution : {caution_generic(), caution_coefficients(), caution_maker_first()}) {
        document.cautions.push_back(caution);
    }
    return document;
}

} // namespace clampbook::answer
