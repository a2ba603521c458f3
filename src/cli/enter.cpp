// SPDX-License-Identifier: MIT
// clampbook enter: a tightening value with its source, kept letter for letter.

#include "clampbook/answer/find.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/intake/intake.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {
namespace {

struct EnterOptions {
    std::vector<std::string> tightening;
    std::string joint;
    std::string label;
    std::string source;
    std::string page;
    std::string note;
    std::string on;
    std::string confirm;
};

} // namespace

Action setup_enter(CLI::App& app, Context& context) {
    auto options = std::make_shared<EnterOptions>();
    app.add_option("tightening", options->tightening, "as the source writes it: 32 N·m, 30–36 N·m, 20 N·m, 50 N·m, 90°")
        ->type_name("")
        ->required();
    app.add_option("--joint", options->joint, "number of the joint, or words that fit it alone")
        ->type_name("WORDS")
        ->required()
        ->group("Where");
    app.add_option("--label", options->label, "whose figure: maker, standard, shop, derived, practice, demo")
        ->type_name("LABEL")
        ->required()
        ->group("What");
    app.add_option("--source", options->source, "the document: its number in the book, document number or title")
        ->type_name("SOURCE")
        ->group("What");
    app.add_option("--page", options->page, "page or table in it")->type_name("TEXT")->group("What");
    app.add_option("--note", options->note, "a remark")->type_name("TEXT")->group("What");
    app.add_option("--confirm", options->confirm, "why an implausible value stands so in the source; the reason is kept")
        ->type_name("REASON")
        ->group("What");
    app.add_option("--on", options->on, "the day, if not today: 2026-11-25")->type_name("DATE")->group("Who");
    add_person(app, context);
    add_json(app, context);
    add_book(app, context);
    add_reference(app, context);
    return [options, &context] {
        const book::Stamp stamp = context.stamp();
        book::Book book = context.book(book::Access::write);
        const reference::Reference reference = context.reference();
        intake::Entry entry;
        entry.tightening = join(options->tightening, " ");
        entry.label = read_label(options->label);
        (void)read_tightening(entry.tightening); // what was typed comes first, then where it goes
        entry.joint = answer::joint_named(book, reference, options->joint).joint.id;
        if (!options->source.empty()) {
            entry.source = intake::source_named(book, options->source);
        }
        entry.page = options->page;
        entry.note = options->note;
        entry.entered_on = options->on;
        entry.confirmed = options->confirm;
        const RecordId id = intake::enter(book, reference, entry, stamp);
        const answer::FoundJoint found = answer::joint(book, reference, entry.joint);
        if (context.json) {
            context.world.out << present::json(found, "enter");
        } else {
            context.world.out << "value " << id << " is in the book, unchecked\n\n" << present::text(found);
        }
        return 0;
    };
}

} // namespace clampbook::cli
