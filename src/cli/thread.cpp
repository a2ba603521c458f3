// SPDX-License-Identifier: MIT
// clampbook thread: geometry of a thread and its limits of size.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {

Action setup_thread(CLI::App& app, Context& context) {
    auto words = std::make_shared<std::vector<std::string>>();
    app.add_option("thread", *words, "M18x1.5, M10, 3/8-16 UNC, #10-32, G1/2, R1/2, 1/2-14 NPT")->type_name("")->required();
    add_json(app, context);
    add_reference(app, context);
    return [words, &context] {
        const answer::Document document = answer::thread(context.reference(), join(*words, " "));
        show(context, document);
        return 0;
    };
}

} // namespace clampbook::cli
