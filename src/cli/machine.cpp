// SPDX-License-Identifier: MIT
// clampbook machine: the machines of the book.

#include "clampbook/answer/records.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "command.hpp"
#include "table.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {

Action setup_machine(CLI::App& app, Context& context) {
    app.require_subcommand(1);
    auto machine = std::make_shared<Machine>();
    auto name = std::make_shared<std::vector<std::string>>();
    CLI::App* add_app = app.add_subcommand("add", "put a machine on record");
    add_app->add_option("--maker", machine->maker, "who makes it")->type_name("TEXT")->required()->group("What");
    add_app->add_option("--model", machine->model, "its model")->type_name("TEXT")->required()->group("What");
    add_app->add_option("--variant", machine->variant, "its variant, where figures differ between variants")
        ->type_name("TEXT")
        ->group("What");
    add_app->add_option("--years", machine->years, "years of make")->type_name("TEXT")->group("What");
    add_app->add_option("--code", machine->code, "the shop's own short name for it")->type_name("TEXT")->group("What");
    add_app->add_option("--note", machine->note, "a remark")->type_name("TEXT")->group("What");
    add_book(*add_app, context);
    add_person(*add_app, context);
    CLI::App* list_app = app.add_subcommand("list", "all machines of the book");
    add_book(*list_app, context);
    add_json(*list_app, context);
    add_csv(*list_app, context);
    CLI::App* show_app = app.add_subcommand("show", "a machine with its joints");
    show_app->add_option("machine", *name, "its model, model and variant, code, or #number")->type_name("")->required();
    add_book(*show_app, context);
    add_json(*show_app, context);
    add_csv(*show_app, context);
    return [=, &context] {
        if (add_app->parsed()) {
            machine->maker = std::string{trim(machine->maker)};
            machine->model = std::string{trim(machine->model)};
            if (machine->maker.empty() || machine->model.empty()) {
                throw error(ErrorKind::usage, "a machine needs a maker and a model");
            }
            const book::Stamp stamp = context.stamp();
            const RecordId id = context.book(book::Access::write).add_machine(*machine, stamp);
            context.world.out << "machine #" << id << " is in the book: " << machine->title() << "\n";
            return 0;
        }
        const book::Book book = context.book(book::Access::read);
        return write_table(list_app->parsed() ? answer::machines(book)
                                              : answer::machine(book, answer::machine_named(book, join(*name, " "))),
                           context);
    };
}

} // namespace clampbook::cli
