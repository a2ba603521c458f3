// SPDX-License-Identifier: MIT
// clampbook enter: a tightening value with its source, kept letter for letter.

#include "clampbook/answer/find.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/present/present.hpp"
#include "entry.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {
namespace {

struct EnterOptions {
    std::vector<std::string> tightening;
    std::string joint;
    EntryWords entry;
};

} // namespace

void add_entry(CLI::App& app, EntryWords& words) {
    add_text(app, "--label", words.label, "LABEL", "What", "whose figure: maker, standard, shop, derived, practice, demo");
    add_text(app, "--source", words.source, "SOURCE", "What", "the document: its number in the book, document number or title");
    add_text(app, "--page", words.page, "TEXT", "What", "page or table in it");
    add_text(app, "--note", words.note, "TEXT", "What", "a remark");
    add_text(app, "--confirm", words.confirm, "REASON", "What",
             "why an implausible value stands so in the source; the reason is kept");
    add_text(app, "--on", words.on, "DATE", "Who", "the day, if not today: 2026-11-25");
}

intake::Entry entry_of(const book::Book& book, const EntryWords& words, const std::string& tightening) {
    intake::Entry entry;
    entry.tightening = tightening;
    (void)read_tightening(entry.tightening); // what was typed comes first, then where it goes
    if (!words.label.empty()) {
        entry.label = read_label(words.label);
    }
    if (!words.source.empty()) {
        entry.source = intake::source_named(book, words.source);
    }
    entry.page = words.page;
    entry.note = words.note;
    entry.entered_on = words.on;
    entry.confirmed = words.confirm;
    return entry;
}

void show_value(Context& context, const book::Book& book, const reference::Reference& reference, RecordId joint,
                const char* schema, const std::string& told) {
    // Whoever told it must not tell it again because it couldn't be read back.
    const answer::FoundJoint found = [&] {
        try {
            return answer::joint(book, reference, joint);
        } catch (const std::exception& fault) {
            throw error(ErrorKind::internal, "{}; but it cannot be shown: {}", told, fault.what());
        }
    }();
    if (context.json) {
        context.world.out << present::json(found, schema);
    } else {
        context.world.out << told << "\n\n" << present::text(found);
    }
}

Action telling_of_value(CLI::App& app, Context& context, const char* schema, Telling tell) {
    auto number = std::make_shared<std::string>();
    // First of the words, whatever else the command reads.
    app.add_option("value", *number, "number of the value, as find shows it: 3")->type_name("")->required();
    add_person(app, context);
    add_json(app, context);
    add_book(app, context);
    add_reference(app, context);
    return [number, &context, schema, tell = std::move(tell)] {
        const book::Stamp stamp = context.stamp();
        book::Book book = context.book(book::Access::write);
        const reference::Reference reference = context.reference();
        const Value value = intake::value_numbered(book, *number);
        (void)answer::joint(book, reference, value.joint); // to a joint that can't be read, nothing is added
        const std::string told = tell(book, reference, value, stamp);
        show_value(context, book, reference, value.joint, schema, told);
        return 0;
    };
}

Action setup_enter(CLI::App& app, Context& context) {
    auto options = std::make_shared<EnterOptions>();
    app.add_option("tightening", options->tightening, "as the source writes it: 32 N·m, 30–36 N·m, 20 N·m, 50 N·m, 90°")
        ->type_name("")
        ->required();
    app.add_option("--joint", options->joint, "number of the joint, or words that fit it alone")
        ->type_name("WORDS")
        ->required()
        ->group("Where");
    add_entry(app, options->entry);
    app.get_option("--label")->required();
    add_person(app, context);
    add_json(app, context);
    add_book(app, context);
    add_reference(app, context);
    return [options, &context] {
        const book::Stamp stamp = context.stamp();
        book::Book book = context.book(book::Access::write);
        const reference::Reference reference = context.reference();
        const std::string tightening = join(options->tightening, " ");
        const Label label = read_label(options->entry.label); // told before anything is looked up
        (void)read_tightening(tightening);
        const RecordId joint = answer::joint_named(book, reference, options->joint).joint.id;
        (void)answer::joint(book, reference, joint); // to one that can't be read, nothing is added
        intake::Entry entry = entry_of(book, options->entry, tightening);
        entry.label = label;
        entry.joint = joint;
        const RecordId id = intake::enter(book, reference, entry, stamp);
        show_value(context, book, reference, joint, "enter", "value " + std::to_string(id) + " is in the book, unchecked");
        return 0;
    };
}

} // namespace clampbook::cli
