// SPDX-License-Identifier: MIT
// clampbook conflicts: joints whose current values disagree.

#include "clampbook/answer/records.hpp"
#include "command.hpp"
#include "table.hpp"

#include <CLI/CLI.hpp>

namespace clampbook::cli {

Action setup_conflicts(CLI::App& app, Context& context) {
    add_json(app, context);
    add_csv(app, context);
    add_book(app, context);
    return [&context] { return write_table(answer::conflicts(context.book(book::Access::read)), context); };
}

} // namespace clampbook::cli
