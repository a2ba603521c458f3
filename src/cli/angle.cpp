// SPDX-License-Identifier: MIT
// clampbook angle: what a turn after a snug torque makes of a joint.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {
namespace {

struct AngleOptions {
    std::vector<std::string> words;
    answer::AngleRequest request;
};

} // namespace

Action setup_angle(CLI::App& app, Context& context) {
    auto options = std::make_shared<AngleOptions>();
    answer::AngleRequest& r = options->request;
    app.add_option("screw", options->words, "thread and property class: M10 8.8, 3/8-16 UNC grade 5")->type_name("")->required();
    add_text(app, "--grip", r.grip, "LENGTH", "Joint", "thickness that is clamped: 40 mm");
    add_text(app, "--under", r.under, "MATERIAL", "Joint", "what is clamped ('clampbook list housings')");
    add_text(app, "--tapped", r.tapped, "MATERIAL", "Joint", "what the screw is screwed into (a steel nut)");
    add_text(app, "--shank", r.shank, "LENGTH", "Joint", "unthreaded length in the grip (none)");
    add_text(app, "--head", r.face.head, "HEAD", "Joint", "hexagon, socket or flange (hexagon)");
    add_text(app, "--hole", r.face.hole, "HOLE", "Joint", "fine, medium or coarse, or a diameter (medium)");
    add_text(app, "--bearing", r.face.bearing, "LENGTH", "Joint", "diameter of the bearing face, in place of a head's: 16.6 mm");
    add_text(app, "--snug", r.snug, "TORQUE", "Tightening", "torque before the turn: 20 N·m");
    add_text(app, "--turn", r.turn, "ANGLE", "Tightening", "turn after it: 90°, 1/4 turn");
    add_text(app, "--friction", r.friction, "MU[,MU]", "Tightening", "in the thread and under the head (0.12)");
    add_text(app, "--load", r.load, "FORCE", "Afterwards", "load from outside that pulls the joint apart");
    add_text(app, "--roughness", r.roughness, "RZ", "Afterwards", "Rz in µm that the surfaces stay under: 10, 40 or 160 (40)");
    add_text(app, "--interfaces", r.interfaces, "NUMBER", "Afterwards", "between the clamped parts (1)");
    add_text(app, "--tightened-at", r.tightened_at, "TEMPERATURE", "Afterwards", "20 °C");
    add_text(app, "--working-at", r.working_at, "TEMPERATURE", "Afterwards", "90 °C");
    add_json(app, context);
    add_reference(app, context);
    return [options, &context] {
        const reference::Reference reference = context.reference();
        const ScrewWords screw = screw_words(reference, options->words);
        options->request.thread = screw.thread;
        options->request.property_class = screw.property_class;
        show(context, answer::angle(reference, options->request));
        return 0;
    };
}

} // namespace clampbook::cli
