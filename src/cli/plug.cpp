// SPDX-License-Identifier: MIT
// clampbook plug: the torque window of a plug, or the turns of a taper one.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {
namespace {

struct PlugOptions {
    std::vector<std::string> words;
    answer::PlugRequest request;
};

} // namespace

Action setup_plug(CLI::App& app, Context& context) {
    auto options = std::make_shared<PlugOptions>();
    answer::PlugRequest& r = options->request;
    app.add_option("plug", options->words, "thread and, where it is not 5.8, property class: M18x1.5, G1/2, M18x1.5 8.8")
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
    add_json(app, context);
    add_reference(app, context);
    return [options, &context] {
        const reference::Reference reference = context.reference();
        const ScrewWords plug = plug_words(reference, options->words);
        options->request.thread = plug.thread;
        options->request.property_class = plug.property_class;
        show(context, answer::plug(reference, options->request));
        return 0;
    };
}

} // namespace clampbook::cli
