// SPDX-License-Identifier: MIT
// clampbook audit: is the book still what it was told?

#include "clampbook/answer/records.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "command.hpp"
#include "table.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {

Action setup_audit(CLI::App& app, Context& context) {
    add_json(app, context);
    add_csv(app, context);
    add_book(app, context);
    return [&context] {
        const answer::TableAnswer found = answer::audit(context.book(book::Access::read));
        if (context.json || context.csv) {
            (void)write_table(found, context);
        } else if (found.rows.empty()) {
            context.world.out << "nothing was changed behind the program's back: " << join(found.notes, "\n") << "\n";
        } else {
            for (const auto& row : found.rows) {
                context.world.err << "clampbook: " << row.front().text << "\n";
            }
        }
        if (!found.rows.empty()) {
            throw error(ErrorKind::invalid_data, "'{}' is not what it was told: {} fault{}", context.path_of_book(),
                        found.rows.size(), found.rows.size() == 1 ? "" : "s");
        }
        return 0;
    };
}

} // namespace clampbook::cli
