// SPDX-License-Identifier: MIT
// clampbook strip: what a thread bears before it strips, and how deep is deep enough.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {
namespace {

struct StripOptions {
    std::vector<std::string> words;
    answer::StripRequest request;
};

} // namespace

Action setup_strip(CLI::App& app, Context& context) {
    auto options = std::make_shared<StripOptions>();
    answer::StripRequest& r = options->request;
    app.add_option("screw", options->words, "thread and property class: M10 8.8, 3/8-16 UNC grade 5")->type_name("")->required();
    add_text(app, "--housing", r.housing, "MATERIAL", "Joint", "what the hole is tapped into ('clampbook list housings')");
    add_text(app, "--engagement", r.engagement, "LENGTH", "Joint", "length of full thread in the hole: 12 mm");
    add_text(app, "--across-flats", r.across_flats, "LENGTH", "Joint", "width of a nut or thin boss, which gives way sideways");
    app.add_flag("--nominal", r.nominal, "basic sizes in place of the limits of size")->group("Joint");
    add_text(app, "--friction", r.friction, "MU[,MU]", "Torque",
             "for the torque at stripping, in the thread and under the head (0.08)");
    add_text(app, "--head", r.face.head, "HEAD", "Torque", "hexagon, socket or flange (hexagon)");
    add_text(app, "--hole", r.face.hole, "HOLE", "Torque", "fine, medium or coarse, or a diameter (medium)");
    add_text(app, "--bearing", r.face.bearing, "LENGTH", "Torque", "diameter of the bearing face, in place of a head's: 16.6 mm");
    add_json(app, context);
    add_reference(app, context);
    return [options, &context] {
        const reference::Reference reference = context.reference();
        const ScrewWords screw = screw_words(reference, options->words);
        options->request.thread = screw.thread;
        options->request.property_class = screw.property_class;
        show(context, answer::strip(reference, options->request));
        return 0;
    };
}

} // namespace clampbook::cli
