// SPDX-License-Identifier: MIT
// clampbook plug: the torque window of a plug, or the turns of a taper one.

#include "question.hpp"

#include <CLI/CLI.hpp>

namespace clampbook::cli {

Action setup_plug(CLI::App& app, Context& context) {
    auto question = std::make_shared<Question<answer::PlugRequest>>();
    answer::PlugRequest& r = question->request;
    app.add_option("plug", question->words, "thread and, where it is not 5.8, property class: M18x1.5, G1/2, M18x1.5 8.8")
        ->type_name("")
        ->required();
    add_text(app, "--housing", r.housing, "MATERIAL", "Joint", "what the plug is in ('clampbook list housings')");
    add_text(app, "--ring", r.ring, "RING", "Joint",
             "copper, aluminium, steel, bonded, o-ring or none; with a size if unusual: copper 18x24");
    add_text(app, "--form", r.form, "FORM", "Joint", "form of the plug ('clampbook list plug-forms'; collar hexagon)");
    add_text(app, "--engagement", r.engagement, "LENGTH", "Joint",
             "length of full thread in the hole (the standard's plug, less ring and chamfer)");
    add_text(app, "--bore", r.bore, "LENGTH", "Joint",
             "hole in the threaded core of a hollow plug (none, or the socket's corners)");
    add_text(app, "--friction", r.friction, "MIN..MAX", "Joint", "band of friction, 0.08..0.16 (friction class B)");
    return asking(app, context, std::move(question), answer::plug, plug_words);
}

} // namespace clampbook::cli
