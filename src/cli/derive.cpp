// SPDX-License-Identifier: MIT
// clampbook derive: a generic preload and torque, clearly labelled.

#include "question.hpp"

#include <CLI/CLI.hpp>

namespace clampbook::cli {

Action setup_derive(CLI::App& app, Context& context) {
    auto question = std::make_shared<Question<answer::DeriveRequest>>();
    answer::DeriveRequest& request = question->request;
    add_screws(app, question->words);
    add_text(app, "--nut-factor", request.nut_factor, "K", "By nut factor",
             "K of T = K F d, 0.05 to 0.5; a range: 0.12..0.20:0.02");
    add_text(app, "--condition", request.condition, "WORDS", "By nut factor",
             "condition with a curated K ('clampbook list nut-factors'), or a list");
    add_text(app, "--preload", request.preload, "SHARE", "Load", "percent of proof load, or a force: 75%, 25 kN, 60..90:10%");
    app.add_flag("--permanent", request.permanent, "default preload of a joint that stays closed (90 % for 75 %)")->group("Load");
    add_text(app, "--torque", request.torque, "TORQUE", "Load",
             "the other way round: the preload that this torque makes; a range: 20..60:10N·m");
    answer::FrictionChoices& friction = request.friction;
    const char* const by_friction = "By coefficients of friction";
    add_text(app, "--friction", friction.coefficients, "MU[,MU]", by_friction,
             "in the thread and under the head: 0.12, or 0.12,0.14; both alike over a range: 0.08..0.20:0.02");
    add_text(app, "--utilisation", friction.utilisation, "SHARE", by_friction,
             "percent of the yield strength (90%); a range: 60..90:10%");
    add_face(app, friction.face, by_friction);
    add_text(app, "--torsion", friction.torsion, "RULE", by_friction, "plastic, or elastic for the older rule (plastic)");
    add_text(app, "--under", friction.under, "MATERIAL", by_friction, "material under the head, for its surface pressure");
    return asking_each(app, context, std::move(question), answer::derive, answer::derive_sweep);
}

} // namespace clampbook::cli
