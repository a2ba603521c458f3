// SPDX-License-Identifier: MIT
// clampbook angle: what a turn after a snug torque makes of a joint.

#include "question.hpp"

#include <CLI/CLI.hpp>

namespace clampbook::cli {

Action setup_angle(CLI::App& app, Context& context) {
    auto question = std::make_shared<Question<answer::AngleRequest>>();
    answer::AngleRequest& r = question->request;
    add_screw(app, question->words);
    add_text(app, "--grip", r.grip, "LENGTH", "Joint", "thickness that is clamped: 40 mm");
    add_text(app, "--under", r.under, "MATERIAL", "Joint", "what is clamped ('clampbook list housings')");
    add_text(app, "--tapped", r.tapped, "MATERIAL", "Joint", "what the screw is screwed into (a steel nut)");
    add_text(app, "--shank", r.shank, "LENGTH", "Joint", "unthreaded length in the grip (none)");
    add_face(app, r.face, "Joint");
    add_text(app, "--snug", r.snug, "TORQUE", "Tightening", "torque before the turn: 20 N·m");
    add_text(app, "--turn", r.turn, "ANGLE", "Tightening", "turn after it: 90°, 1/4 turn");
    add_text(app, "--friction", r.friction, "MU[,MU]", "Tightening", "in the thread and under the head (0.12)");
    add_text(app, "--load", r.load, "FORCE", "Afterwards", "load from outside that pulls the joint apart");
    add_text(app, "--roughness", r.roughness, "RZ", "Afterwards", "Rz in µm that the surfaces stay under: 10, 40 or 160 (40)");
    add_text(app, "--interfaces", r.interfaces, "NUMBER", "Afterwards", "between the clamped parts (1)");
    add_text(app, "--tightened-at", r.tightened_at, "TEMPERATURE", "Afterwards", "20 °C");
    add_text(app, "--working-at", r.working_at, "TEMPERATURE", "Afterwards", "90 °C");
    return asking(app, context, std::move(question), answer::angle);
}

} // namespace clampbook::cli
