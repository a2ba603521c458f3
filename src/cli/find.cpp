// SPDX-License-Identifier: MIT
// clampbook find: the technician's lookup.

#include "clampbook/answer/find.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {
namespace {

constexpr int k_nothing_found = 3;

// What to say, beside the exit code, where no current value was found.
int without_value(const answer::FindAnswer& found, Context& context, const book::Book& book) {
    std::ostream& err = context.world.err;
    if (!found.matches.empty()) {
        err << "clampbook: no value is in the book for " << (found.total == 1 ? "this joint" : "these joints") << "\n";
        return k_nothing_found;
    }
    err << "clampbook: nothing in the book fits '" << found.query << "'";
    if (!found.nearest.empty()) {
        err << "; near it: " << join(found.nearest, ", ");
    }
    if (book.info().joints == 0) {
        err << "; the book holds no joint yet: begin with 'clampbook machine add', or try 'clampbook demo FILE'";
    }
    err << "\n";
    return k_nothing_found;
}

} // namespace

Action setup_find(CLI::App& app, Context& context) {
    auto words = std::make_shared<std::vector<std::string>>();
    auto request = std::make_shared<answer::FindRequest>();
    app.add_option("words", *words, "in any order: joint, assembly, machine, thread; also cut short, also de, fr, es, sv")
        ->type_name("")
        ->required();
    app.add_flag("--wide", request->wide, "other trade words for the same thing too")->group("What");
    app.add_option("--most", request->at_most, "at most so many joints")
        ->type_name("N")
        ->capture_default_str()
        ->check(CLI::Range(1, 100000))
        ->group("What");
    add_json(app, context);
    add_book(app, context);
    add_reference(app, context);
    return [words, request, &context] {
        const book::Book book = context.book(book::Access::read);
        request->words = join(*words, " ");
        const answer::FindAnswer found = answer::find(book, context.reference(), *request);
        context.world.out << (context.json ? present::json(found) : present::text(found));
        const bool any =
            std::ranges::any_of(found.matches, [](const answer::FoundJoint& match) { return !match.current().empty(); });
        return any ? 0 : without_value(found, context, book);
    };
}

} // namespace clampbook::cli
