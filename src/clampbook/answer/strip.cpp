// SPDX-License-Identifier: MIT
// strip: what a thread bears before it strips, which of the two members goes first, and how deep is deep enough.

#include "clampbook/engine/strip.hpp"
#include "clampbook/answer/parts.hpp"
#include "clampbook/answer/screw.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/units/reading.hpp"

namespace clampbook::answer {
namespace {

using reference::Reference;

Figure area_figure(Area area, const std::string& basis) {
    Figure f = figure(area, "mm²", 3, Label::derived);
    f.basis = basis;
    return f;
}

// By the friction form; a size without a curated face has no torque unless its face is given.
void add_torque(Document& document, const Reference& reference, const StripRequest& request, const Screw& screw,
                const engine::StripLoads& loads) {
    const bool asked = request.face != FaceChoice{} || !request.friction.empty();
    const GivenFriction mu = friction_of(request.friction, [&] {
        const reference::FrictionClassRow b = reference.friction_class("B");
        return GivenFriction{{b.low, b.low}, "the low end of friction class B", b.citation};
    });
    std::optional<Face> face;
    try {
        face = face_of(reference, request.face, screw.thread.size);
    } catch (const Error& fault) {
        if (asked || fault.kind() != ErrorKind::not_found) {
            throw;
        }
        document.notes.push_back("No torque at stripping: " + std::string{fault.what()} + ".");
        return;
    }
    const engine::FrictionJoint joint{screw.geometry, mu.mu.thread, mu.mu.head, face->bearing.value * millimetre,
                                      face->hole.value * millimetre};
    const Force tensile = screw.tensile_load.value * newton;
    document.section("torque");
    if (loads.least() < tensile) {
        document.add("strip_torque", "torque at stripping",
                     torque_figure(engine::friction_torque(loads.least(), joint).total, Label::derived,
                                   "F [d2/2 tan(φ + ρ′) + μ_K D_Km/2] (VDI 2230-1)"));
    } else {
        document.notes.emplace_back("No torque at stripping: the screw breaks first.");
    }
    add_friction(document, mu);
    document.add("bearing_diameter", "bearing face d_w", face->bearing);
    document.add("hole", "hole d_h", face->hole);
    document.notes.emplace_back(
        "The torque assumes a head that turns on its face, and low friction: oil lets less torque pull more.");
}

} // namespace

Document strip(const Reference& reference, const StripRequest& request) {
    for (const auto& [given, option] :
         {std::pair{&request.housing, "--housing"}, std::pair{&request.engagement, "--engagement"}}) {
        if (given->empty()) {
            throw error(ErrorKind::usage,
                        "{} is missing; strip asks what the screw is in and how deep, like --housing EN-GJL-250 "
                        "--engagement 12mm",
                        option);
        }
    }
    const Screw screw = screw_of(reference, request.thread, request.property_class);
    Document document;
    document.schema = "strip";
    document.heading = screw.title() + " in a tapped hole: when it strips (derived, no maker's figure)";
    const reference::MaterialRow housing = material_of(reference, request.housing, document);
    const reference::ShearRatioRow ratio = reference.shear_ratio(screw.property_class.name);
    const PairChoice pair = pair_of(reference, screw.thread, request.nominal);
    const auto engagement = read_quantity(request.engagement, Dimension::length).as<Dimension::length>();
    double c1 = 1;
    if (!request.across_flats.empty()) {
        c1 = engine::nut_dilation(read_quantity(request.across_flats, Dimension::length).as<Dimension::length>() /
                                  screw.thread.major);
    }
    const engine::ShearAreas areas = engine::shear_areas(pair.pair, engagement);
    const engine::ShearStrengths strengths{ratio.ratio * screw.property_class.tensile_strength, housing.shear_strength};
    const engine::StripLoads loads = engine::strip_loads(areas, strengths, c1);
    const Force tensile = screw.tensile_load.value * newton;
    const bool screw_breaks = tensile <= loads.least();
    const bool internal = loads.internal_first();

    document.section({});
    document.add("label", "", std::string{label_name(Label::derived)});
    document.add("strip_load", "load at stripping", force_figure(loads.least(), internal ? "C1 C3 τ A_SI" : "C1 C2 τ A_SG"));
    document.add("critical_member", "what goes first",
                 std::string{screw_breaks ? "the screw breaks"
                             : internal   ? "the thread in the housing strips"
                                          : "the screw's thread strips"});
    document.add("min_tensile_load", "the screw breaks at", screw.tensile_load);
    document.add("needed_engagement", "so that it breaks first",
                 derived_length(engine::engagement_for(tensile, pair.pair, strengths, c1),
                                "of full thread: Rm As over the load per mm (VDI 2230-1)"));
    document.add("engagement", "engagement here", given_length(request.engagement));

    document.section("areas and loads");
    document.add("shear_area", "", area_figure(internal ? areas.internal : areas.external, pair.basis));
    document.add("screw.shear_area", "shear area, screw A_SG", area_figure(areas.external, pair.basis));
    document.add("housing.shear_area", "shear area, housing A_SI", area_figure(areas.internal, pair.basis));
    Figure screw_shear = stress_figure(strengths.external, Label::derived, fmt::format("{:.2f} Rm", ratio.ratio));
    screw_shear.citation = ratio.citation;
    document.add("screw.shear_strength", "shear strength, screw", screw_shear);
    document.add("housing.shear_strength", "shear strength, housing",
                 curated_stress(strengths.internal, housing.shear, housing.shear_basis));
    document.add("strength_ratio", "R_s, housing over screw", number_figure(loads.ratio, "τ A of the one over the other", 3));
    document.add(
        "c1", "C1, nut gives way sideways",
        number_figure(loads.c1, request.across_flats.empty() ? "massive housing" : "3.8 s/D − (s/D)² − 2.61 (SAE 770420)", 3));
    document.add("c2", "C2, screw's thread bends", number_figure(loads.c2, "SAE 770420, by R_s", 3));
    document.add("c3", "C3, housing's thread bends", number_figure(loads.c3, "SAE 770420, by R_s", 3));
    document.add("screw.strip_load", "screw's thread strips at", force_figure(loads.external, "C1 C2 τ A_SG"));
    document.add("housing.strip_load", "housing's thread strips at", force_figure(loads.internal, "C1 C3 τ A_SI"));
    document.section("inputs");
    document.add("thread", "thread", screw.thread.code);
    document.add("property_class", "property class", screw.property_class.name);
    document.add("housing.material", "housing", housing.code + ", " + housing.name);
    add_torque(document, reference, request, screw, loads);
    if (!ratio.own) {
        document.notes.push_back("No shear ratio of class " + screw.property_class.name +
                                 " is kept here: the least of those kept stands in.");
    }
    if (loads.ratio < engine::k_bending_ratio_min || loads.ratio > engine::k_bending_ratio_max) {
        document.notes.push_back(
            fmt::format("R_s lies outside {} to {}, where the factor's fit is given: its value at that end is kept.",
                        engine::k_bending_ratio_min, engine::k_bending_ratio_max));
    }
    document.notes.emplace_back("Full thread over the whole engagement: add chamfer and run-out, about two pitches. One pull, no "
                                "alternating load; a thread that was opened often bears less.");
    for (const Caution& caution : {caution_generic(), caution_no_prescription(), caution_maker_first()}) {
        document.cautions.push_back(caution);
    }
    return document;
}

} // namespace clampbook::answer
