// SPDX-License-Identifier: MIT
// clampbook strip: what a thread bears before it strips, and how deep is deep enough.

#include "question.hpp"

#include <CLI/CLI.hpp>

namespace clampbook::cli {

Action setup_strip(CLI::App& app, Context& context) {
    auto question = std::make_shared<Question<answer::StripRequest>>();
    answer::StripRequest& r = question->request;
    add_screws(app, question->words);
    add_text(app, "--housing", r.housing, "MATERIAL", "Joint",
             "what the hole is tapped into ('clampbook list housings'), or a list");
    add_text(app, "--engagement", r.engagement, "LENGTH", "Joint",
             "length of full thread in the hole: 12 mm, or a range: 8..20:2mm");
    add_text(app, "--across-flats", r.across_flats, "LENGTH", "Joint", "width of a nut or thin boss, which gives way sideways");
    app.add_flag("--nominal", r.nominal, "basic sizes in place of the limits of size")->group("Joint");
    add_text(app, "--friction", r.friction, "MU[,MU]", "Torque",
             "for the torque at stripping, in the thread and under the head (0.08); a range: 0.08..0.16:0.02");
    add_face(app, r.face, "Torque");
    return asking_each(app, context, std::move(question), answer::strip, answer::strip_sweep);
}

} // namespace clampbook::cli
