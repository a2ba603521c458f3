// SPDX-License-Identifier: MIT
// clampbook withdraw: a value that no longer holds, and has no other in its place.

#include "entry.hpp"

#include <CLI/CLI.hpp>

namespace clampbook::cli {
namespace {

struct WithdrawOptions {
    std::string reason;
};

} // namespace

Action setup_withdraw(CLI::App& app, Context& context) {
    auto options = std::make_shared<WithdrawOptions>();
    Action run = telling_of_value(
        app, context, "withdraw",
        [options](book::Book& book, const reference::Reference& reference, const Value& value, const book::Stamp& stamp) {
            static_cast<void>(reference);
            intake::withdraw(book, value.id, options->reason, stamp);
            return "value " + std::to_string(value.id) + " is withdrawn";
        });
    add_text(app, "--reason", options->reason, "REASON", "What", "why the value no longer holds; it is kept");
    return run;
}

} // namespace clampbook::cli
