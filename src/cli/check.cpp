// SPDX-License-Identifier: MIT
// clampbook check: the second person keys a figure again from its source.

#include "clampbook/base/text.hpp"
#include "entry.hpp"

#include <CLI/CLI.hpp>

namespace clampbook::cli {
namespace {

struct CheckOptions {
    std::vector<std::string> tightening;
};

} // namespace

Action setup_check(CLI::App& app, Context& context) {
    auto options = std::make_shared<CheckOptions>();
    Action run = telling_of_value(
        app, context, "check",
        [options](book::Book& book, const reference::Reference& reference, const Value& value, const book::Stamp& stamp) {
            static_cast<void>(reference);
            intake::check(book, value.id, join(options->tightening, " "), stamp);
            return "value " + std::to_string(value.id) + " is checked by " + stamp.person;
        });
    app.add_option("tightening", options->tightening, "the figure, keyed again from the source: 32 N·m")
        ->type_name("")
        ->required();
    return run;
}

} // namespace clampbook::cli
