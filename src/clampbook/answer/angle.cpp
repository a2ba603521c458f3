// SPDX-License-Identifier: MIT
// angle: what a turn after a snug torque makes of a joint: preload, elongation, whether the screw yields, and what a load,
// a settling surface and heat do to it afterwards.

#include "clampbook/answer/bolted_joint.hpp"
#include "clampbook/answer/screw.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/engine/elastic.hpp"
#include "clampbook/units/reading.hpp"

#include <array>
#include <cmath>
#include <vector>

namespace clampbook::answer {
namespace {

using reference::Reference;

Figure stiffness_figure(engine::Compliance compliance, std::string basis) {
    // Shown as what a kilonewton costs in travel; JSON has it in mm, at one newton.
    Figure f;
    f.value = compliance.millimetre_per_newton;
    f.unit = "mm/N";
    f.print = print_significant(compliance.millimetre_per_newton * 1e6, 3) + " µm/kN";
    f.label = Label::derived;
    f.basis = std::move(basis);
    return f;
}

Figure length_in_micrometres(Length length, std::string basis) {
    Figure f = figure(length, "mm", 3, Label::derived);
    f.print = print_quantity(length.in(micrometre), "µm", 3);
    f.basis = std::move(basis);
    return f;
}

// A gain or loss: with its sign.
Figure change_figure(Force force, std::string basis) {
    Figure f = force_figure(force, std::move(basis));
    if (force > 0 * newton) {
        f.print = "+" + f.print;
        f.also = "+" + f.also;
    }
    return f;
}

// What the tightening comes to. Over the yield point the preload stays near it, and the rest of the turn stretches the screw
// for good.
struct Tightened {
    Force snug;
    Force gained;
    Force elastic; ///< as if nothing yielded
    Force yields;  ///< pull and twist together
    [[nodiscard]] bool passes_yield() const { return elastic > yields; }
    [[nodiscard]] Force preload() const { return passes_yield() ? yields : elastic; }
};

void add_preload(Document& document, const BoltedJoint& j, const Tightened& t, Angle turned) {
    document.section({});
    document.add("label", "", std::string{label_name(Label::derived)});
    document.add("preload", "preload F",
                 force_figure(t.preload(), t.passes_yield() ? "held at the yield point" : "snug + gained"));
    document.add("snug_preload", "from the snug torque",
                 force_figure(t.snug, "T / [d2/2 tan(φ + ρ′) + μ_K D_Km/2] (VDI 2230-1)"));
    document.add(
        "gained", "gained by the turn",
        force_figure(t.gained, std::string{"θ/360° P/(δ_S + δ_P)"} + (t.passes_yield() ? ", if it stayed elastic" : "")));
    document.add("yield_preload", "yields from", force_figure(t.yields, "Rp0.2 As / √(1 + 3 (τ/σ)²) (VDI 2230-1)"));
    document.add("yields", "", std::string{t.passes_yield() ? "yes" : "no"});
    document.add("state", "the screw", std::string{t.passes_yield() ? "yields; new screws every time" : "stays elastic"});
    const Length travel = turned / (1.0 * turn) * j.screw.geometry.pitch;
    const Length elastic = t.preload() * j.springs.screw;
    document.add("elongation", "it is longer by",
                 length_in_micrometres(t.passes_yield() ? elastic + (t.elastic - t.yields) * j.springs.both() : elastic,
                                       t.passes_yield() ? "F δ_S, and the rest of the turn" : "F δ_S"));
    document.add("travel", "the turn travels", length_in_micrometres(travel, "θ/360° P"));
    if (t.passes_yield()) {
        document.add("permanent_elongation", "of it for good",
                     length_in_micrometres((t.elastic - t.yields) * j.springs.both(), "what passes the yield point"));
        document.cautions.push_back({"yields",
                                     "The screw yields: new screws every time. The preload is that of the weakest screw of its "
                                     "class; a stronger one goes higher."});
    }
}

void add_springs(Document& document, const BoltedJoint& j) {
    document.section("springs");
    document.add("screw_compliance", "screw δ_S",
                 stiffness_figure(j.springs.screw, "head, shank, thread, engaged thread (VDI 2230-1)"));
    document.add("parts_compliance", "clamped parts δ_P",
                 stiffness_figure(j.springs.parts, "cones of 30° from both ends (Shigley, Eq. 8-20)"));
    Figure share = share_figure(j.springs.load_share(), "of a load from outside, Φ = δ_P/(δ_S + δ_P)");
    document.add("load_share", "the screw sees", share);
}

void add_diagram(Document& document, const AngleRequest& request, const BoltedJoint& j, Force preload) {
    const double share = j.springs.load_share();
    document.section("joint diagram");
    document.add("opening_load", "opens at a load of",
                 force_figure(engine::load_leaving(preload, share, 0 * newton), "F/(1 − Φ)"));
    if (request.load.empty()) {
        return;
    }
    const Force load = read_quantity(request.load, Dimension::force).as<Dimension::force>();
    const engine::LoadedJoint loaded = engine::under_load(preload, share, load);
    document.add("loaded.screw", "screw under " + request.load, force_figure(loaded.screw, "F + Φ P"));
    document.add("loaded.clamping", "left between the parts", force_figure(loaded.clamping, "F − (1 − Φ) P"));
    document.add("separation_factor", "times that load opens it",
                 number_figure(engine::separation_factor(preload, share, load), "F/((1 − Φ) P)", 3));
    document.add(
        "stress_amplitude", "stress amplitude, 0 to that load",
        stress_figure(engine::stress_amplitude(share, load, j.screw.geometry.stress_area), Label::derived, "Φ P/(2 As)"));
}

// Rz that the surfaces stay under.
int read_roughness(std::string_view text) {
    const std::array known{10, 40, 160};
    for (const int rz : known) {
        if (trim(text) == std::to_string(rz)) {
            return rz;
        }
    }
    throw error(ErrorKind::usage,
                "'{}' is no roughness kept here; it is 10, 40 or 160, the Rz in µm that the surfaces stay under", text);
}

Force add_embedding(Document& document, const Reference& reference, const AngleRequest& request, const BoltedJoint& j) {
    const int roughness = request.roughness.empty() ? 40 : read_roughness(request.roughness);
    const int interfaces =
        request.interfaces.empty() ? 1 : static_cast<int>(read_count(request.interfaces, "number of interfaces", 0, 20));
    const int bearings = j.tapped ? 1 : 2;
    const reference::EmbeddingRow thread = reference.embedding(roughness, "thread");
    const Length settling = thread.amount + static_cast<double>(bearings) * reference.embedding(roughness, "head or nut").amount +
                            static_cast<double>(interfaces) * reference.embedding(roughness, "interface").amount;
    const Force loss = engine::embedding_loss(settling, j.springs);
    document.section("later");
    Figure f =
        length_in_micrometres(settling, fmt::format("{}: thread, {} bearing face{}, {} interface{}", thread.roughness, bearings,
                                                    bearings == 1 ? "" : "s", interfaces, interfaces == 1 ? "" : "s"));
    f.citation = thread.citation;
    document.add("settling", "the surfaces settle by", f);
    document.add("embedding_loss", "which costs", change_figure(-1.0 * loss, "f_Z/(δ_S + δ_P) (VDI 2230-1)"));
    return loss;
}

std::optional<Force> add_heat(Document& document, const AngleRequest& request, const BoltedJoint& j) {
    if (request.tightened_at.empty() != request.working_at.empty()) {
        throw error(ErrorKind::usage, "--tightened-at and --working-at belong together: heat is the difference of the two");
    }
    if (request.tightened_at.empty()) {
        return std::nullopt;
    }
    const double kelvin = read_quantity(request.working_at, Dimension::temperature).canonical() -
                          read_quantity(request.tightened_at, Dimension::temperature).canonical();
    const Force change = engine::thermal_change(j.under.expansion, j.screw_steel.expansion, kelvin, j.grip, j.springs);
    document.add("thermal_change", fmt::format("from {} to {}", request.tightened_at, request.working_at),
                 change_figure(change, "(α_P − α_S) ΔT l/(δ_S + δ_P)"));
    const auto expansion = [&](std::string key, std::string title, const reference::MaterialRow& material) {
        Figure f;
        f.value = material.expansion;
        f.unit = "1/K";
        f.print = print_significant(material.expansion * 1e6, 3) + "e-6 1/K";
        f.label = Label::standard;
        f.citation = material.elastic;
        document.add(std::move(key), std::move(title), f);
    };
    expansion("expansion.parts", "expansion, " + j.under.code, j.under);
    expansion("expansion.screw", "expansion, screw", j.screw_steel);
    return change;
}

void add_inputs(Document& document, const AngleRequest& request, const BoltedJoint& j, const Reading& snug,
                const Reading& turned) {
    document.section("inputs");
    document.add("thread", "thread", j.screw.thread.code);
    document.add("property_class", "property class", j.screw.property_class.name);
    document.add("snug_torque", "snug torque", torque_as_given(snug));
    Figure angle = figure(turned.as<Dimension::angle>(), "°", 4, Label::derived);
    angle.basis = "as given";
    document.add("turn", "turn after it", angle);
    document.add("grip", "grip", given_length(request.grip));
    if (!request.shank.empty()) {
        document.add("shank", "of it unthreaded shank", given_length(request.shank));
    }
    const auto material = [&](std::string key, std::string title, const reference::MaterialRow& row) {
        Figure f = figure(row.modulus, "MPa", 3, Label::standard);
        f.basis = row.code;
        f.citation = row.elastic;
        document.add(std::move(key), std::move(title), f);
    };
    material("modulus.parts", "modulus, clamped parts", j.under);
    if (j.tapped) {
        material("modulus.tapped", "modulus, tapped part", *j.tapped);
    }
    material("modulus.screw", "modulus, screw", j.screw_steel);
    document.add("bearing_diameter", "bearing face d_w", j.face.bearing);
    document.add("hole", "hole d_h", j.face.hole);
    add_friction(document, j.friction);
}

void require_inputs(const AngleRequest& request) {
    for (const auto& [given, option] : {std::pair{&request.grip, "--grip"}, std::pair{&request.under, "--under"},
                                        std::pair{&request.snug, "--snug"}, std::pair{&request.turn, "--turn"}}) {
        if (given->empty()) {
            throw error(ErrorKind::usage,
                        "{} is missing; angle asks what is clamped and how it is turned, like --grip 40mm --under steel --snug "
                        "'20 N·m' --turn 90°",
                        option);
        }
    }
}

} // namespace

Document angle(const Reference& reference, const AngleRequest& request) {
    require_inputs(request);
    Document document;
    document.schema = "angle";
    const BoltedJoint j = bolted_joint(document, reference, request);
    const Reading snug = read_quantity(request.snug, Dimension::torque);
    const Reading turned = read_quantity(request.turn, Dimension::angle);
    Tightened t;
    t.snug = engine::friction_preload(snug.as<Dimension::torque>(), j.twisted);
    t.gained = engine::preload_by_turn(turned.as<Dimension::angle>(), j.springs, j.screw.geometry.pitch);
    t.elastic = t.snug + t.gained;
    t.yields = engine::assembly_preload(j.screw.property_class.yield_strength, 1, j.screw.geometry, j.friction.mu.thread);
    if (t.snug > t.yields) {
        throw error(ErrorKind::out_of_validity, "a snug torque of {} passes the yield point of {} before the turn begins",
                    request.snug, j.screw.title());
    }
    document.heading = j.screw.title() + ": preload from a turn (derived, no maker's figure)";
    add_preload(document, j, t, turned.as<Dimension::angle>());
    add_springs(document, j);
    add_diagram(document, request, j, t.preload());
    const Force loss = add_embedding(document, reference, request, j);
    const Force none = 0 * newton;
    const Force heat = add_heat(document, request, j).value_or(none);
    const engine::PreloadBounds after =
        engine::service_bounds({t.preload(), t.preload()}, {std::max(heat, none), loss + std::max(-1.0 * heat, none), 0});
    if (after.least > none) {
        document.add("service.least", "then at least", force_figure(after.least, "less what settles and what heat takes"));
    } else {
        document.add("service.state", "then",
                     std::string{"the joint is loose: what settles and what heat takes is more than its preload"});
    }
    document.add("service.most", "and at most", force_figure(after.most, "and what heat adds"));
    add_inputs(document, request, j, snug, turned);
    document.notes.emplace_back(
        "The turn counts from snug: from where the parts lie flat, not from the first contact. Clamped parts wider "
        "than the cone of pressure; one material through the grip.");
    for (const Caution& caution : {caution_generic(), caution_coefficients(), caution_maker_first()}) {
        document.cautions.push_back(caution);
    }
    return document;
}

} // namespace clampbook::answer
