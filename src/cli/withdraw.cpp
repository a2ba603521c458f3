// SPDX-License-Identifier: MIT
// clampbook withdraw: a value that no longer holds, and has no other in its place.

#include "entry.hpp"

#include <CLI/CLI.hpp>

namespace clampbook::cli {
namespace {

struct WithdrawOptions {
    std::string value;
    std::string reason;
};

} // namespace

Action setup_withdraw(CLI::App& app, Context& context) {
    auto options = std::make_shared<WithdrawOptions>();
    app.add_option("value", options->value, "number of the value, as find shows it: 3")->type_name("")->required();
    add_text(app, "--reason", options->reason, "REASON", "What", "why the value no longer holds; it is kept");
    add_person(app, context);
    add_json(app, context);
    add_book(app, context);
    add_reference(app, context);
    return [options, &context] {
        const book::Stamp stamp = context.stamp();
        book::Book book = context.book(book::Access::write);
        const reference::Reference reference = context.reference();
        const Value value = intake::value_numbered(book, options->value);
        intake::withdraw(book, value.id, options->reason, stamp);
        show_value(context, book, reference, value.joint, "withdraw", "value " + std::to_string(value.id) + " is withdrawn");
        return 0;
    };
}

} // namespace clampbook::cli
