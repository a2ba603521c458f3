// SPDX-License-Identifier: MIT
// clampbook derive: a generic preload and torque, clearly labelled.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {
namespace {

struct DeriveOptions {
    std::vector<std::string> words;
    answer::DeriveRequest request;
};

} // namespace

Action setup_derive(CLI::App& app, Context& context) {
    auto options = std::make_shared<DeriveOptions>();
    answer::DeriveRequest& request = options->request;
    app.add_option("screw", options->words, "thread and property class: M10 8.8, 3/8-16 UNC grade 5")->type_name("")->required();
    app.add_option("--nut-factor", request.nut_factor, "K of T = K F d, 0.05 to 0.5")->type_name("K")->group("By nut factor");
    app.add_option("--condition", request.condition, "condition with a curated K ('clampbook list nut-factors')")
        ->type_name("WORDS")
        ->group("By nut factor");
    app.add_option("--preload", request.preload, "percent of proof load, or a force: 75%, 25 kN")
        ->type_name("SHARE")
        ->group("Load");
    app.add_flag("--permanent", request.permanent, "default preload of a joint that stays closed (90 % for 75 %)")->group("Load");
    app.add_option("--torque", request.torque, "the other way round: the preload that this torque makes")
        ->type_name("TORQUE")
        ->group("Load");
    answer::FrictionChoices& friction = request.friction;
    const auto of_friction = [&app](const char* name, std::string& choice, const char* type, const char* help) {
        app.add_option(name, choice, help)->type_name(type)->group("By coefficients of friction");
    };
    of_friction("--friction", friction.coefficients, "MU[,MU]", "in the thread and under the head: 0.12, or 0.12,0.14");
    of_friction("--utilisation", friction.utilisation, "SHARE", "percent of the yield strength (90%)");
    of_friction("--head", friction.face.head, "HEAD", "hexagon, socket or flange (hexagon)");
    of_friction("--hole", friction.face.hole, "HOLE", "fine, medium or coarse, or a diameter (medium)");
    of_friction("--bearing", friction.face.bearing, "LENGTH", "diameter of the bearing face, in place of a head's: 16.6 mm");
    of_friction("--torsion", friction.torsion, "RULE", "plastic, or elastic for the older rule (plastic)");
    of_friction("--under", friction.under, "MATERIAL", "material under the head, for its surface pressure");
    add_json(app, context);
    add_reference(app, context);
    return [options, &context] {
        const reference::Reference reference = context.reference();
        const ScrewWords screw = screw_words(reference, options->words);
        options->request.thread = screw.thread;
        options->request.property_class = screw.property_class;
        const answer::Document document = answer::derive(reference, options->request);
        show(context, document);
        return 0;
    };
}

} // namespace clampbook::cli
