// SPDX-License-Identifier: MIT
#pragma once

// Writing a table in the form that was asked for; shared by the subcommands that answer with one.

namespace clampbook::answer {
struct TableAnswer;
}

namespace clampbook::cli {

struct Context;

/// Writes text, --csv or --json, and gives exit code 0. Throws usage where both forms were asked for.
int write_table(const answer::TableAnswer& table, const Context& context);

} // namespace clampbook::cli
