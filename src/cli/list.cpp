// SPDX-License-Identifier: MIT
// clampbook list: the curated tables as they stand, with their sources.

#include "clampbook/answer/records.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"
#include "table.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {

int write_table(const answer::TableAnswer& table, const Context& context) {
    if (context.json && context.csv) {
        throw error(ErrorKind::usage, "--json and --csv exclude each other: an answer has one form");
    }
    context.world.out << (context.json ? present::json(table) : context.csv ? present::csv(table) : present::text(table));
    return 0;
}

Action setup_list(CLI::App& app, Context& context) {
    auto topic = std::make_shared<std::string>();
    app.add_option("table", *topic, "threads, classes, loads, ... sources; without it, all tables are named")->type_name("");
    add_json(app, context);
    add_csv(app, context);
    add_reference(app, context);
    return [topic, &context] {
        const reference::Reference reference = context.reference();
        return write_table(topic->empty() ? answer::list_topics(reference) : answer::list_table(reference, *topic), context);
    };
}

} // namespace clampbook::cli
