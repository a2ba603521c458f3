// SPDX-License-Identifier: MIT
// clampbook source: the documents that the shop's figures are taken from.

#include "clampbook/answer/records.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/intake/intake.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"
#include "table.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {

Action setup_source(CLI::App& app, Context& context) {
    app.require_subcommand(1);
    auto source = std::make_shared<Source>();
    auto name = std::make_shared<std::vector<std::string>>();
    CLI::App* add_app = app.add_subcommand("add", "put a document on record");
    add_app->add_option("--title", source->title, "its title")->type_name("TEXT")->required()->group("What");
    add_app->add_option("--kind", source->kind, "manual, bulletin, plate, measurement, ...")
        ->type_name("WORD")
        ->default_str("manual")
        ->group("What");
    add_app->add_option("--number", source->number, "its document number")->type_name("TEXT")->group("What");
    add_app->add_option("--edition", source->edition, "its edition or revision")->type_name("TEXT")->group("What");
    add_app->add_option("--date", source->date, "its date, like 2026-11-25")->type_name("DATE")->group("What");
    add_app->add_option("--kept", source->kept, "where it is kept")->type_name("TEXT")->group("What");
    add_app->add_option("--note", source->note, "a remark")->type_name("TEXT")->group("What");
    add_book(*add_app, context);
    add_person(*add_app, context);
    CLI::App* list_app = app.add_subcommand("list", "all sources of the book");
    add_book(*list_app, context);
    add_json(*list_app, context);
    add_csv(*list_app, context);
    CLI::App* show_app = app.add_subcommand("show", "one source whole");
    show_app->add_option("source", *name, "its number in the book, its document number or its title")->type_name("")->required();
    add_book(*show_app, context);
    add_json(*show_app, context);
    return [=, &context] {
        if (add_app->parsed()) {
            source->title = std::string{trim(source->title)};
            source->kind = source->kind.empty() ? "manual" : source->kind;
            if (source->title.empty()) {
                throw error(ErrorKind::usage, "a source needs a title");
            }
            if (!source->date.empty()) {
                intake::require_date(source->date, "the source's date");
            }
            const book::Stamp stamp = context.stamp();
            const RecordId id = context.book(book::Access::write).add_source(*source, stamp);
            context.world.out << "source " << id << " is in the book: " << source->line() << "\n";
            return 0;
        }
        const book::Book book = context.book(book::Access::read);
        if (list_app->parsed()) {
            return write_table(answer::sources(book), context);
        }
        const answer::Document document = answer::source(intake::source_named(book, join(*name, " ")));
        context.world.out << (context.json ? present::json(document) : present::text(document));
        return 0;
    };
}

} // namespace clampbook::cli
