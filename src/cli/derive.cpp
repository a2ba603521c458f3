// SPDX-License-Identifier: MIT
// clampbook derive: a generic preload and torque, clearly labelled.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {
namespace {

struct DeriveOptions {
    std::vector<std::string> words;
    answer::DeriveRequest request;
    answer::FrictionRequest friction; // thread, class and torque are those of the request
};

// The friction form has its own choices, and the nut factor's mean nothing to it.
void require_one_form(const DeriveOptions& options) {
    const answer::FrictionRequest& f = options.friction;
    const answer::DeriveRequest& r = options.request;
    const bool of_friction =
        !(f.utilisation.empty() && f.head.empty() && f.hole.empty() && f.bearing.empty() && f.torsion.empty() && f.under.empty());
    if (f.friction.empty() && of_friction) {
        throw error(ErrorKind::usage,
                    "--utilisation, --head, --hole, --bearing, --torsion and --under belong to --friction, which is missing");
    }
    if (!f.friction.empty() && !(r.nut_factor.empty() && r.condition.empty() && r.preload.empty() && !r.permanent)) {
        throw error(ErrorKind::usage,
                    "--friction excludes --nut-factor, --condition, --preload and --permanent; its preload is set "
                    "by --utilisation or --torque");
    }
}

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
    answer::FrictionRequest& friction = options->friction;
    app.add_option("--friction", friction.friction, "coefficients of friction in thread and under head: 0.12, or 0.12,0.14")
        ->type_name("MU[,MU]")
        ->group("By coefficients of friction");
    app.add_option("--utilisation", friction.utilisation, "percent of the yield strength (90%)")
        ->type_name("SHARE")
        ->group("By coefficients of friction");
    app.add_option("--head", friction.head, "hexagon, socket or flange (hexagon)")
        ->type_name("HEAD")
        ->group("By coefficients of friction");
    app.add_option("--hole", friction.hole, "fine, medium or coarse, or a diameter (medium)")
        ->type_name("HOLE")
        ->group("By coefficients of friction");
    app.add_option("--bearing", friction.bearing, "diameter of the bearing face, in place of a head's: 16.6 mm")
        ->type_name("LENGTH")
        ->group("By coefficients of friction");
    app.add_option("--torsion", friction.torsion, "plastic, or elastic for the older rule (plastic)")
        ->type_name("RULE")
        ->group("By coefficients of friction");
    app.add_option("--under", friction.under, "material under the head, for its surface pressure")
        ->type_name("MATERIAL")
        ->group("By coefficients of friction");
    add_json(app, context);
    add_reference(app, context);
    return [options, &context] {
        const reference::Reference reference = context.reference();
        const ScrewWords screw = screw_words(reference, options->words);
        options->request.thread = screw.thread;
        options->request.property_class = screw.property_class;
        require_one_form(*options);
        answer::FrictionRequest& by_friction = options->friction;
        by_friction.thread = screw.thread;
        by_friction.property_class = screw.property_class;
        by_friction.torque = options->request.torque;
        const answer::Document document = by_friction.friction.empty() ? answer::derive(reference, options->request)
                                                                       : answer::derive_by_friction(reference, by_friction);
        context.world.out << (context.json ? present::json(document) : present::text(document));
        return 0;
    };
}

} // namespace clampbook::cli
