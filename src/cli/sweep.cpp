// SPDX-License-Identifier: MIT
// A table of answers in the form that was asked for, and as a chart for the wall.

#include "clampbook/answer/sweep.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/present/present.hpp"
#include "output.hpp"
#include "question.hpp"
#include "table.hpp"

#include <ostream>

namespace clampbook::cli {

void require_no_table_form(const Context& context, const std::string& pdf) {
    if (context.csv || !pdf.empty()) {
        throw error(ErrorKind::usage,
                    "{} makes a table, and this is a single answer; ask for several with a list like M8,M10 or a range like "
                    "0.08..0.20:0.02",
                    context.csv ? "--csv" : "--pdf");
    }
}

int show_sweep(Context& context, const answer::Sweep& sweep, const std::string& pdf) {
    if (context.json && context.csv) {
        throw error(ErrorKind::usage, "--json and --csv exclude each other: an answer has one form");
    }
    if (!pdf.empty()) {
        press(context, {"pdf", pdf}, present::json(answer::wall_chart(sweep, context.world.clock().substr(0, 10))));
        if (!context.json && !context.csv) {
            context.world.out << "the wall chart was written: " << pdf << "\n";
            return 0;
        }
    }
    if (context.csv) { // which has no room for them
        for (const std::string& left_out : sweep.left_out) {
            context.world.err << "clampbook: " << left_out << "\n";
        }
    }
    return write_table(sweep.table, context);
}

} // namespace clampbook::cli
