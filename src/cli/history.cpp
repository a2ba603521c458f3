// SPDX-License-Identifier: MIT
// clampbook history: what was told of a joint, by whom and when.

#include "clampbook/answer/find.hpp"
#include "clampbook/answer/records.hpp"
#include "clampbook/base/text.hpp"
#include "command.hpp"
#include "table.hpp"

#include <CLI/CLI.hpp>

namespace clampbook::cli {

Action setup_history(CLI::App& app, Context& context) {
    auto words = std::make_shared<std::vector<std::string>>();
    app.add_option("joint", *words, "number of the joint, or words that fit it alone")->type_name("")->required();
    add_json(app, context);
    add_csv(app, context);
    add_book(app, context);
    add_reference(app, context);
    return [words, &context] {
        const book::Book book = context.book(book::Access::read);
        return write_table(answer::history(book, answer::joint_named(book, context.reference(), join(*words, " "))), context);
    };
}

} // namespace clampbook::cli
