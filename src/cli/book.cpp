// SPDX-License-Identifier: MIT
// clampbook book: the file itself, made, looked over, verified, backed up.

#include "clampbook/answer/records.hpp"
#include "clampbook/base/error.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {
namespace {

int make(Context& context, const std::string& path) {
    if (!path.empty()) {
        context.book_path = path;
    }
    const std::string at = context.path_of_book();
    (void)book::Book::create(at, context.stamp());
    context.world.out << "a new book was made: " << at << "\n";
    return 0;
}

int verify(Context& context) {
    const std::string path = context.path_of_book();
    const book::Book book = context.book(book::Access::read);
    const auto faults = book.verify();
    for (const std::string& fault : faults) {
        context.world.err << "clampbook: " << fault << "\n";
    }
    if (!faults.empty()) {
        throw error(ErrorKind::invalid_data, "'{}' is not whole: {} fault{}", path, faults.size(), faults.size() == 1 ? "" : "s");
    }
    context.world.out << "the book is whole: " << path << "\n";
    if (const auto copy = book.publication()) {
        context.world.out << answer::published_line(*copy) << "\n";
    }
    return 0;
}

int back_up(Context& context, const std::string& path) {
    context.book(book::Access::read).backup(path);
    context.world.out << "the book was copied to " << path << "\n";
    return 0;
}

int publish(Context& context, const std::string& path) {
    const book::Stamp stamp = context.stamp();
    const book::Publication copy = context.book(book::Access::read).publish(path, stamp);
    context.world.out << "the book was published: " << path << "\n" << answer::published_line(copy) << "\n";
    return 0;
}

int tell_about(Context& context) {
    const book::Book book = context.book(book::Access::read);
    const answer::Document document = answer::book_info(book);
    show(context, document);
    if (!document.notes.empty()) {
        throw error(ErrorKind::invalid_data, "'{}' is not what was published", context.path_of_book());
    }
    return 0;
}

} // namespace

Action setup_book(CLI::App& app, Context& context) {
    app.require_subcommand(1);
    auto path = std::make_shared<std::string>();
    CLI::App* make_app = app.add_subcommand("new", "make an empty book");
    make_app->add_option("file", *path, "where; else --book, CLAMPBOOK_BOOK or your data folder")->type_name("FILE");
    add_book(*make_app, context);
    add_person(*make_app, context);
    CLI::App* info_app = app.add_subcommand("info", "what the book holds");
    add_book(*info_app, context);
    add_json(*info_app, context);
    CLI::App* verify_app = app.add_subcommand("verify", "look the file over: links, search words, values against their text");
    add_book(*verify_app, context);
    CLI::App* backup_app = app.add_subcommand("backup", "copy the book as it is now into a new file");
    backup_app->add_option("file", *path, "the copy, a new name")->type_name("FILE")->required();
    add_book(*backup_app, context);
    CLI::App* publish_app = app.add_subcommand("publish", "a read-only copy with a digest, for any number of readers");
    publish_app->add_option("file", *path, "the copy: a new name, or an older copy that it replaces")
        ->type_name("FILE")
        ->required();
    add_book(*publish_app, context);
    add_person(*publish_app, context);
    return [=, &context] {
        if (make_app->parsed()) {
            return make(context, *path);
        }
        if (verify_app->parsed()) {
            return verify(context);
        }
        if (backup_app->parsed()) {
            return back_up(context, *path);
        }
        if (publish_app->parsed()) {
            return publish(context, *path);
        }
        return tell_about(context);
    };
}

} // namespace clampbook::cli
