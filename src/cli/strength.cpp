// SPDX-License-Identifier: MIT
// clampbook strength: what a screw of a thread and class carries.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {

Action setup_strength(CLI::App& app, Context& context) {
    auto words = std::make_shared<std::vector<std::string>>();
    app.add_option("screw", *words, "thread and property class: M10 8.8, M8 A2-70, 3/8-16 UNC grade 5")
        ->type_name("")
        ->required();
    add_json(app, context);
    add_reference(app, context);
    return [words, &context] {
        const reference::Reference reference = context.reference();
        const ScrewWords screw = screw_words(reference, *words);
        const answer::Document document = answer::strength(reference, screw.thread, screw.property_class);
        show(context, document);
        return 0;
    };
}

} // namespace clampbook::cli
