// SPDX-License-Identifier: MIT
// clampbook assembly: the assemblies of a machine.

#include "clampbook/answer/records.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "command.hpp"
#include "table.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {

Action setup_assembly(CLI::App& app, Context& context) {
    app.require_subcommand(1);
    auto assembly = std::make_shared<Assembly>();
    auto machine = std::make_shared<std::string>();
    auto name = std::make_shared<std::vector<std::string>>();
    const auto machine_option = [&](CLI::App* to) {
        to->add_option("--machine", *machine, "its machine: model, model and variant, code, or #number")
            ->type_name("NAME")
            ->required()
            ->group("Where");
    };
    CLI::App* add_app = app.add_subcommand("add", "put an assembly on record");
    add_app->add_option("name", *name, "its name, like: rear axle drive")->type_name("")->required();
    machine_option(add_app);
    add_app->add_option("--note", assembly->note, "a remark")->type_name("TEXT")->group("What");
    add_book(*add_app, context);
    add_person(*add_app, context);
    CLI::App* list_app = app.add_subcommand("list", "the assemblies of a machine");
    machine_option(list_app);
    add_book(*list_app, context);
    add_json(*list_app, context);
    add_csv(*list_app, context);
    return [=, &context] {
        if (list_app->parsed()) {
            const book::Book book = context.book(book::Access::read);
            return write_table(answer::assemblies(book, answer::machine_named(book, *machine)), context);
        }
        const book::Stamp stamp = context.stamp();
        book::Book book = context.book(book::Access::write);
        const Machine owner = answer::machine_named(book, *machine);
        assembly->machine = owner.id;
        assembly->name = std::string{trim(join(*name, " "))};
        if (assembly->name.empty()) {
            throw error(ErrorKind::usage, "an assembly needs a name");
        }
        const RecordId id = book.add_assembly(*assembly, stamp);
        context.world.out << "assembly #" << id << " is in the book: " << owner.title() << ", " << assembly->name << "\n";
        return 0;
    };
}

} // namespace clampbook::cli
