// SPDX-License-Identifier: MIT
// clampbook export: the book as a file that another book, or a spreadsheet, takes.

#include "clampbook/answer/export.hpp"
#include "clampbook/base/error.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {

Action setup_export(CLI::App& app, Context& context) {
    app.add_flag("--csv", context.csv, "rows of the exchange file: a row a current value")->group("Form");
    app.add_flag("--json", context.json, "the whole story: ended values, checks, people and dates too")->group("Form");
    add_book(app, context);
    return [&context] {
        if (context.csv == context.json) {
            throw error(ErrorKind::usage, "say which form, and one alone: --csv (what holds now) or --json (the whole story)");
        }
        const book::Book book = context.book(book::Access::read);
        (context.csv ? answer::export_csv : answer::export_json)(book, context.world.out);
        return 0;
    };
}

} // namespace clampbook::cli
