// SPDX-License-Identifier: MIT
// clampbook check: the second person keys a figure again from its source.

#include "clampbook/base/text.hpp"
#include "entry.hpp"

#include <CLI/CLI.hpp>

namespace clampbook::cli {
namespace {

struct CheckOptions {
    std::string value;
    std::vector<std::string> tightening;
};

} // namespace

Action setup_check(CLI::App& app, Context& context) {
    auto options = std::make_shared<CheckOptions>();
    app.add_option("value", options->value, "number of the value, as find shows it: 3")->type_name("")->required();
    app.add_option("tightening", options->tightening, "the figure, keyed again from the source: 32 N·m")
        ->type_name("")
        ->required();
    add_person(app, context);
    add_json(app, context);
    add_book(app, context);
    add_reference(app, context);
    return [options, &context] {
        const book::Stamp stamp = context.stamp();
        book::Book book = context.book(book::Access::write);
        const reference::Reference reference = context.reference();
        const Value value = intake::value_numbered(book, options->value);
        intake::check(book, value.id, join(options->tightening, " "), stamp);
        show_value(context, book, reference, value.joint, "check",
                   "value " + std::to_string(value.id) + " is checked by " + stamp.person);
        return 0;
    };
}

} // namespace clampbook::cli
