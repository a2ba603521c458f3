// SPDX-License-Identifier: MIT
// clampbook supersede: another value takes the place of one; both stay in the book.

#include "clampbook/base/text.hpp"
#include "entry.hpp"

#include <CLI/CLI.hpp>

namespace clampbook::cli {
namespace {

struct SupersedeOptions {
    std::string value;
    std::vector<std::string> tightening;
    std::string reason;
    EntryWords entry;
};

} // namespace

Action setup_supersede(CLI::App& app, Context& context) {
    auto options = std::make_shared<SupersedeOptions>();
    app.add_option("value", options->value, "number of the value, as find shows it: 3")->type_name("")->required();
    app.add_option("tightening", options->tightening, "the figure that takes its place: 35 N·m")->type_name("")->required();
    add_text(app, "--reason", options->reason, "REASON", "What", "why the value no longer holds; it is kept");
    add_entry(app, options->entry);
    add_person(app, context);
    add_json(app, context);
    add_book(app, context);
    add_reference(app, context);
    return [options, &context] {
        const book::Stamp stamp = context.stamp();
        book::Book book = context.book(book::Access::write);
        const reference::Reference reference = context.reference();
        const Value value = intake::value_numbered(book, options->value);
        const RecordId next = intake::supersede(
            book, reference, value.id,
            {entry_of(book, options->entry, join(options->tightening, " ")), options->entry.label.empty(), options->reason},
            stamp);
        show_value(context, book, reference, value.joint, "supersede",
                   "value " + std::to_string(next) + " takes the place of value " + std::to_string(value.id) + ", unchecked");
        return 0;
    };
}

} // namespace clampbook::cli
