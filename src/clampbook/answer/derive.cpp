// SPDX-License-Identifier: MIT
#include "clampbook/answer/calculate.hpp"
#include "clampbook/answer/screw.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/engine/strength.hpp"
#include "clampbook/units/reading.hpp"

#include <algorithm>

namespace clampbook::answer {
namespace {

using reference::Reference;

void band_from_scatter(ChosenNutFactor& k, const reference::ScatterRow& scatter) {
    // F = T/(K d): a preload ±s about its mean is a nut factor between K/(1+s) and K/(1−s).
    k.low = k.value / (1 + scatter.half_range.value());
    k.high = k.value / (1 - scatter.half_range.value());
    k.band_basis =
        fmt::format("±{:.0f} % of preload for a {} ({})", *scatter.half_range * 100, scatter.method, scatter.citation.line());
}

// The preload asked for, and in which words it was asked.
struct ChosenPreload {
    Force force;
    std::string basis;
    std::optional<Citation> citation;
};

ChosenPreload chosen_preload(const Reference& reference, const DeriveRequest& request, const Screw& screw) {
    const Force proof = screw.proof_load.value * newton;
    if (request.preload.empty()) {
        const auto choice = reference.preload_choice(request.permanent ? "permanent" : "reused");
        return {choice.share * proof,
                fmt::format("{:.0f} % of the {}, for {}", choice.share * 100, screw.load_name(), choice.words), choice.citation};
    }
    if (request.permanent) {
        throw error(ErrorKind::usage, "--preload and --permanent exclude each other: one of them sets the preload");
    }
    if (read_whole_decimal(request.preload)) {
        throw error(ErrorKind::usage, "'{}' has no unit; a preload is a share of the {} like '75%', or a force like '25 kN'",
                    request.preload, screw.load_name());
    }
    const Reading reading = read_quantity(request.preload);
    if (reading.unit->dimension == Dimension::number) {
        const double share = reading.canonical();
        if (!(share > 0)) {
            throw error(ErrorKind::out_of_validity, "a preload of {} must be more than zero", request.preload);
        }
        if (share > 1) {
            throw error(ErrorKind::out_of_validity, "a preload of {} passes the {} of {}; at most 100 %", request.preload,
                        screw.load_name(), screw.proof_load.print);
        }
        return {share * proof,
                fmt::format("{} of the {}, as given", with_unit(print_shortest(share * 100), unit_named("%")), screw.load_name()),
                {}};
    }
    if (reading.unit->dimension != Dimension::force) {
        throw error(ErrorKind::usage, "'{}' is {}; a preload is a force or a percentage of proof load, like '25 kN' or '75%'",
                    request.preload, dimension_name(reading.unit->dimension));
    }
    const Force force = reading.as<Dimension::force>();
    if (!(force > 0 * newton)) {
        throw error(ErrorKind::out_of_validity, "a preload of {} must be more than zero", request.preload);
    }
    if (force > proof) {
        throw error(ErrorKind::out_of_validity, "a preload of {} passes the {} of {}", request.preload, screw.load_name(),
                    screw.proof_load.print);
    }
    return {force, "as given", {}};
}

Figure utilisation(Force preload, const Screw& screw) {
    return share_figure(preload / (screw.proof_load.value * newton), "of the " + screw.load_name());
}

void add_steps(Document& document, const Screw& screw, const ChosenNutFactor& k) {
    document.section("inputs");
    document.add("thread", "thread", screw.thread.code);
    document.add("property_class", "property class", screw.property_class.name);
    Figure diameter = figure(screw.thread.major, "mm", 4, Label::standard);
    diameter.print =
        (screw.thread.system == ThreadSystem::metric ? print_shortest(diameter.value) : print_fixed(diameter.value, 3)) + " mm";
    diameter.citation = screw.thread.citation;
    document.add("diameter", "nominal diameter d", diameter);
    document.add("stress_area", "stress area As", screw.area);
    document.add("proof_load", screw.load_name(), screw.proof_load);
    document.add("nut_factor", "nut factor K", k.figure);
}

void add_band(Document& document, const Screw& screw, const ChosenNutFactor& k, Torque torque) {
    const Force proof = screw.proof_load.value * newton;
    const Length d = screw.thread.major;
    const double low = std::max(k.low, engine::k_nut_factor_min);
    const double high = std::min(k.high, engine::k_nut_factor_max);
    const engine::PreloadBand band = engine::preload_band(torque, low, high, d);
    document.section("what this torque may make");
    document.add("preload_band.low", "least preload", force_figure(band.least, "T / (K d) at K = " + print_significant(high, 3)));
    document.add("preload_band.high", "most preload", force_figure(band.most, "T / (K d) at K = " + print_significant(low, 3)));
    document.add("preload_band.basis", "band from", k.band_basis);
    if (low > k.low || high < k.high) {
        document.notes.push_back(
            fmt::format("The band is held to nut factors from {:.2f} to {:.2f}, outside which the method is not used.",
                        engine::k_nut_factor_min, engine::k_nut_factor_max));
    }
    if (band.most > proof) {
        document.cautions.push_back(
            {"over-proof", fmt::format("At the low end of friction this torque passes the {} of {}: the screw may yield.",
                                       screw.load_name(), screw.proof_load.print)});
    }
}

} // namespace

ChosenNutFactor chosen_nut_factor(const Reference& reference, std::string_view given, std::string_view condition) {
    ChosenNutFactor k;
    if (!given.empty()) {
        if (!condition.empty()) {
            throw error(ErrorKind::usage,
                        "--nut-factor and --condition exclude each other: the condition has its own nut factor");
        }
        k.value = read_quantity(given, Dimension::number).value;
        if (!(k.value >= engine::k_nut_factor_min && k.value <= engine::k_nut_factor_max)) {
            throw error(ErrorKind::out_of_validity, "a nut factor of {} lies outside {:.2f} to {:.2f}", given,
                        engine::k_nut_factor_min, engine::k_nut_factor_max);
        }
        k.figure.print = std::string{given};
        k.figure.label = Label::derived;
        k.figure.basis = "as given";
        band_from_scatter(k, reference.scatter("torque, unlubricated"));
    } else {
        const reference::NutFactorRow row = reference.nut_factor(condition.empty() ? "not stated" : condition);
        if (row.value) {
            k.value = *row.value;
            k.figure.basis = row.condition;
        } else {
            k.value = (*row.low + *row.high) / 2;
            k.figure.basis = fmt::format("{}; middle of {:.3g} to {:.3g}", row.condition, *row.low, *row.high);
        }
        k.figure.print = print_significant(k.value, 3);
        k.figure.label = row.value ? Label::standard : Label::derived;
        k.figure.citation = row.citation;
        if (row.low && row.high) {
            k.low = *row.low;
            k.high = *row.high;
            k.band_basis =
                fmt::format("nut factor {:.3g} to {:.3g} for {} ({})", k.low, k.high, row.condition, row.citation.line());
        } else {
            const bool lubricated = row.code == "lubricated" || row.code == "anti-seize" || row.code == "chart lubricated";
            const bool cadmium = row.code == "cadmium-plated";
            band_from_scatter(k, reference.scatter(lubricated ? "torque, lubricated"
                                                   : cadmium  ? "torque, cadmium-plated"
                                                              : "torque, unlubricated"));
        }
    }
    k.figure.value = k.value;
    return k;
}

Document derive(const Reference& reference, const DeriveRequest& request) {
    if (!request.friction.coefficients.empty()) {
        return derive_by_friction(reference, request);
    }
    if (request.friction != FrictionChoices{}) {
        throw error(ErrorKind::usage,
                    "--utilisation, --head, --hole, --bearing, --torsion and --under belong to --friction, which is missing");
    }
    const Screw screw = screw_of(reference, request.thread, request.property_class);
    const ChosenNutFactor k = chosen_nut_factor(reference, request.nut_factor, request.condition);
    const Length d = screw.thread.major;
    Document document;
    document.schema = "derive";
    const std::string name = thread_for_print(screw.thread.code) + " " + screw.property_class.name;
    const auto finish = [&](Torque torque) {
        add_steps(document, screw, k);
        add_band(document, screw, k, torque);
        if (!screw.has_proof_stress) {
            document.notes.push_back(screw.property_class.citation.title +
                                     " gives no proof stress for this class; its 0.2 % limit stands in its place. "
                                     "Stainless threads gall: use a lubricant and its own nut factor.");
        }
        for (const Caution& caution : {caution_generic(), caution_friction(), caution_maker_first()}) {
            document.cautions.push_back(caution);
        }
    };
    document.section({});
    document.add("label", "", std::string{label_name(Label::derived)});
    if (!request.torque.empty()) {
        if (!request.preload.empty() || request.permanent) {
            throw error(ErrorKind::usage, "--torque and --preload exclude each other: one follows from the other");
        }
        const Reading reading = read_quantity(request.torque, Dimension::torque);
        const Torque torque = reading.as<Dimension::torque>();
        const Force preload = engine::preload_from(torque, k.value, d);
        if (const Force proof = screw.proof_load.value * newton; preload > proof) {
            const Torque most = engine::torque_for(proof, k.value, d);
            throw error(ErrorKind::out_of_validity,
                        "{} on {} would make {}, more than its {} of {}; with this nut factor at most {} ({})", request.torque,
                        name, print_quantity(preload.in(newton), "N", 3), screw.load_name(), screw.proof_load.print,
                        print_quantity(most.in(newton_metre), "N·m", 3), print_quantity(most.in(pound_force_foot), "lbf·ft", 3));
        }
        document.heading = name + ": generic preload from a torque (derived, no maker's figure)";
        document.add("torque", "torque T", torque_as_given(reading));
        document.add("preload", "preload F", force_figure(preload, "T / (K d) (Shigley, Eq. 8-27)"));
        document.add("utilisation", "used", utilisation(preload, screw));
        finish(torque);
        return document;
    }
    const ChosenPreload preload = chosen_preload(reference, request, screw);
    const Torque torque = engine::torque_for(preload.force, k.value, d);
    document.heading = name + ": generic tightening (derived, no maker's figure)";
    document.add("torque", "torque T", torque_figure(torque, Label::derived, "K · F · d (Shigley, Eq. 8-27)"));
    Figure force = force_figure(preload.force, preload.basis);
    force.citation = preload.citation;
    document.add("preload", "preload F", force);
    document.add("utilisation", "used", utilisation(preload.force, screw));
    finish(torque);
    return document;
}

} // namespace clampbook::answer
