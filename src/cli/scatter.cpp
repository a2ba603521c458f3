// SPDX-License-Identifier: MIT
// clampbook scatter: how far the preload from one torque spreads, as bounds and as draws.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {
namespace {

struct ScatterOptions {
    std::vector<std::string> words;
    answer::ScatterRequest request;
};

} // namespace

Action setup_scatter(CLI::App& app, Context& context) {
    auto options = std::make_shared<ScatterOptions>();
    answer::ScatterRequest& r = options->request;
    app.add_option("screw", options->words, "thread and property class: M10 8.8, 3/8-16 UNC grade 5")->type_name("")->required();
    add_text(app, "--torque", r.torque, "TORQUE", "Load", "the torque that is set: 50 N·m");
    add_text(app, "--needed", r.needed, "FORCE", "Load", "the preload that the joint needs: the chance to miss it");
    add_text(app, "--method", r.method, "WORDS", "By way of tightening",
             "way of tightening with a curated scatter ('clampbook list scatter')");
    add_text(app, "--nut-factor", r.nut_factor, "K", "By way of tightening",
             "K of T = K F d for the preload that is meant, 0.05 to 0.5");
    add_text(app, "--condition", r.condition, "WORDS", "By way of tightening",
             "condition with a curated K ('clampbook list nut-factors')");
    add_text(app, "--friction", r.friction, "MIN..MAX", "By friction and tool",
             "friction in the thread and under the head, its band: 0.10..0.16");
    add_text(app, "--tool", r.tool, "SHARE", "By friction and tool", "deviation of the tool to either side: 4%");
    add_text(app, "--head", r.face.head, "HEAD", "By friction and tool", "hexagon, socket or flange (hexagon)");
    add_text(app, "--hole", r.face.hole, "HOLE", "By friction and tool", "fine, medium or coarse, or a diameter (medium)");
    add_text(app, "--bearing", r.face.bearing, "LENGTH", "By friction and tool",
             "diameter of the bearing face, in place of a head's: 16.6 mm");
    add_text(app, "--draws", r.draws, "NUMBER", "Draws", "how many draws, 1000 to 10000000 (1000000)");
    add_text(app, "--seed", r.seed, "NUMBER", "Draws", "the same seed draws the same everywhere (1)");
    add_text(app, "--shape", r.shape, "SHAPE", "Draws", "rectangular, or triangular for a likelier middle (rectangular)");
    add_json(app, context);
    add_reference(app, context);
    return [options, &context] {
        const reference::Reference reference = context.reference();
        const ScrewWords screw = screw_words(reference, options->words);
        options->request.thread = screw.thread;
        options->request.property_class = screw.property_class;
        show(context, answer::scatter(reference, options->request));
        return 0;
    };
}

} // namespace clampbook::cli
