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
    app.add_option("--nut-factor", request.nut_factor, "K of T = K F d, 0.05 to 0.5")->type_name("K")->group("Friction");
    app.add_option("--condition", request.condition, "condition with a curated K ('clampbook list nut-factors')")
        ->type_name("WORDS")
        ->group("Friction");
    app.add_option("--preload", request.preload, "percent of proof load, or a force: 75%, 25 kN")
        ->type_name("SHARE")
        ->group("Load");
    app.add_flag("--permanent", request.permanent, "default preload of a joint that stays closed (90 % for 75 %)")->group("Load");
    app.add_option("--torque", request.torque, "the other way round: the preload that this torque makes")
        ->type_name("TORQUE")
        ->group("Load");
    add_json(app, context);
    add_reference(app, context);
    return [options, &context] {
        const reference::Reference reference = context.reference();
        const ScrewWords screw = screw_words(reference, options->words);
        options->request.thread = screw.thread;
        options->request.property_class = screw.property_class;
        const answer::Document document = answer::derive(reference, options->request);
        context.world.out << (context.json ? present::json(document) : present::text(document));
        return 0;
    };
}

} // namespace clampbook::cli
