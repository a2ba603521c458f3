// SPDX-License-Identifier: MIT
// clampbook scatter: how far the preload from one torque spreads, as bounds and as draws.

#include "question.hpp"

#include <CLI/CLI.hpp>

namespace clampbook::cli {

Action setup_scatter(CLI::App& app, Context& context) {
    auto question = std::make_shared<Question<answer::ScatterRequest>>();
    answer::ScatterRequest& r = question->request;
    add_screws(app, question->words);
    add_text(app, "--torque", r.torque, "TORQUE", "Load", "the torque that is set: 50 N·m, or a range: 20..60:10N·m");
    add_text(app, "--needed", r.needed, "FORCE", "Load", "the preload that the joint needs: the chance to miss it");
    add_text(app, "--method", r.method, "WORDS", "By way of tightening",
             "way of tightening with a curated scatter ('clampbook list scatter')");
    add_text(app, "--nut-factor", r.nut_factor, "K", "By way of tightening",
             "K of T = K F d for the preload that is meant, 0.05 to 0.5; a range: 0.12..0.20:0.02");
    add_text(app, "--condition", r.condition, "WORDS", "By way of tightening",
             "condition with a curated K ('clampbook list nut-factors'), or a list");
    add_text(app, "--friction", r.friction, "MIN..MAX", "By friction and tool",
             "friction in the thread and under the head, its band: 0.10..0.16");
    add_text(app, "--tool", r.tool, "SHARE", "By friction and tool",
             "deviation of the tool to either side: 4%, or a range: 2..10:2%");
    add_face(app, r.face, "By friction and tool");
    add_text(app, "--draws", r.draws, "NUMBER", "Draws",
             "how many draws, 1000 to 10000000 (1000000); fewer make a long table quicker");
    add_text(app, "--seed", r.seed, "NUMBER", "Draws", "the same seed draws the same everywhere (1)");
    add_text(app, "--shape", r.shape, "SHAPE", "Draws", "rectangular, or triangular for a likelier middle (rectangular)");
    return asking_each(app, context, std::move(question), answer::scatter, answer::scatter_sweep);
}

} // namespace clampbook::cli
