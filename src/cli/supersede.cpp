// SPDX-License-Identifier: MIT
// clampbook supersede: another value takes the place of one; both stay in the book.

#include "clampbook/base/text.hpp"
#include "entry.hpp"

#include <CLI/CLI.hpp>

namespace clampbook::cli {
namespace {

struct SupersedeOptions {
    std::vector<std::string> tightening;
    std::string reason;
    EntryWords entry;
};

} // namespace

Action setup_supersede(CLI::App& app, Context& context) {
    auto options = std::make_shared<SupersedeOptions>();
    Action run = telling_of_value(
        app, context, "supersede",
        [options](book::Book& book, const reference::Reference& reference, const Value& value, const book::Stamp& stamp) {
            const RecordId next = intake::supersede(
                book, reference, value.id,
                {entry_of(book, options->entry, join(options->tightening, " ")), options->entry.label.empty(), options->reason},
                stamp);
            return "value " + std::to_string(next) + " takes the place of value " + std::to_string(value.id) + ", unchecked";
        });
    app.add_option("tightening", options->tightening, "the figure that takes its place: 35 N·m")->type_name("")->required();
    add_text(app, "--reason", options->reason, "REASON", "What", "why the value no longer holds; it is kept");
    add_entry(app, options->entry);
    return run;
}

} // namespace clampbook::cli
