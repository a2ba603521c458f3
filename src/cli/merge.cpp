// SPDX-License-Identifier: MIT
// clampbook merge: another shop's book into this one, after a look at what that would do.

#include "clampbook/base/error.hpp"
#include "telling.hpp"

#include <CLI/CLI.hpp>

#include <filesystem>

namespace clampbook::cli {
namespace {

struct MergeOptions {
    std::string file;
    bool apply = false;
    intake::ImportOptions how;
};

} // namespace

Action setup_merge(CLI::App& app, Context& context) {
    auto options = std::make_shared<MergeOptions>();
    app.add_option("file", options->file, "the other shop's book; it is read and stays as it is")->type_name("FILE")->required();
    app.add_flag("--apply", options->apply, "write it; without this, only what would be done is shown")->group("What");
    add_telling(app, context, options->how.rules);
    return [options, &app, &context] {
        namespace fs = std::filesystem;
        require_reasons(app, options->how.rules);
        book::Stamp stamp = context.stamp();
        stamp.origin = fs::path{options->file}.filename().string();
        const book::Book other{options->file, book::Access::read};
        std::error_code problem;
        if (fs::equivalent(options->file, context.path_of_book(), problem)) {
            throw error(ErrorKind::conflict, "'{}' is the book itself; name another shop's book", options->file);
        }
        book::Book book = context.book(book::Access::write);
        options->how.dry_run = !options->apply;
        intake::ImportReport report;
        {
            Watch watch{context.world, {}};
            watch.follow(options->how);
            report = intake::merge(book, context.reference(), other, options->file, options->how, stamp);
        }
        return show_report(context, report, "merge", "Merge of " + options->file,
                           "preview: nothing was written; --apply writes it");
    };
}

} // namespace clampbook::cli
