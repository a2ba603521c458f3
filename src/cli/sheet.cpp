// SPDX-License-Identifier: MIT
// clampbook sheet: the shop's spec sheet, on the screen or as files.

#include "clampbook/answer/sheet.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/file.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/intake/intake.hpp"
#include "clampbook/present/present.hpp"
#include "command.hpp"
#include "output.hpp"

#include <CLI/CLI.hpp>

#include <ostream>

namespace clampbook::cli {
namespace {

struct SheetOptions {
    std::vector<std::string> words;
    std::string machine;
    std::string title;
    std::string prepared_by;
    std::string only;
    std::string since;
    std::string paper = "a4";
    std::string html;
    std::string pdf;
    std::string svg;
    std::string xlsx;
};

answer::SheetRequest request_of(const book::Book& book, const SheetOptions& options, const std::string& date) {
    answer::SheetRequest request;
    request.words = join(options.words, " ");
    if (!options.machine.empty()) {
        request.machine = answer::machine_named(book, options.machine);
    }
    if (!options.only.empty() && fold(options.only) != "checked") {
        throw error(ErrorKind::usage, "--only takes 'checked', not '{}'", options.only);
    }
    request.only_checked = !options.only.empty();
    request.since = options.since;
    if (options.since.find('-') != std::string::npos) {
        intake::require_date(options.since, "--since");
    }
    request.title = options.title;
    request.prepared_by = options.prepared_by;
    request.date = date;
    return request;
}

} // namespace

Action setup_sheet(CLI::App& app, Context& context) {
    auto options = std::make_shared<SheetOptions>();
    app.add_option("words", options->words, "joints that fit these words; without any, all of them")->type_name("");
    add_text(app, "--machine", options->machine, "WORDS", "What", "joints of one machine: its model, code or number");
    add_text(app, "--only", options->only, "checked", "What", "leave out what no second person has checked");
    add_text(app, "--since", options->since, "REVISION", "What", "mark what changed since a revision of the book, or a date");
    add_text(app, "--title", options->title, "TEXT", "Head", "what stands over the sheet");
    add_text(app, "--prepared-by", options->prepared_by, "NAME", "Head", "who answers for it");
    add_json(app, context);
    add_csv(app, context);
    add_text(app, "--html", options->html, "FILE", "Form", "one page for browser and phone: searches, switches units, prints");
    add_text(app, "--pdf", options->pdf, "FILE", "Form", "pages to print");
    add_text(app, "--svg", options->svg, "FILE", "Form", "one long drawing");
    add_text(app, "--xlsx", options->xlsx, "FILE", "Form", "a spreadsheet with real numbers");
    add_text(app, "--paper", options->paper, "PAPER", "Form", "of the PDF: a4 or letter (a4)");
    add_book(app, context);
    add_reference(app, context);
    return [options, &context] {
        if (context.json && context.csv) {
            throw error(ErrorKind::usage, "--json and --csv exclude each other: an answer has one form");
        }
        if (options->paper != "a4" && options->paper != "letter") {
            throw error(ErrorKind::usage, "--paper takes a4 or letter, not '{}'", options->paper);
        }
        const std::string book_path = context.path_of_book();
        const book::Book book = context.book(book::Access::read);
        const answer::Sheet sheet =
            answer::sheet(book, context.reference(), request_of(book, *options, context.world.clock().substr(0, 10)));
        const auto target = [&](const std::string& file) {
            require_other_file(file, book_path);
            return !file.empty();
        };
        const bool wants_json = context.json || !(options->pdf + options->svg + options->xlsx).empty();
        const std::string json = wants_json ? present::json(sheet) : std::string{};
        std::vector<std::string> written;
        if (target(options->html)) {
            write_whole_file(options->html, present::html(sheet));
            written.push_back(options->html);
        }
        for (const auto& [form, file] : {std::pair{"pdf", options->pdf}, {"svg", options->svg}, {"xlsx", options->xlsx}}) {
            if (target(file)) {
                press(context, {form, file, "--paper", options->paper}, json);
                written.push_back(file);
            }
        }
        if (context.json || context.csv || written.empty()) {
            context.world.out << (context.json  ? json
                                  : context.csv ? present::csv(answer::sheet_table(sheet))
                                                : present::text(sheet));
        } else {
            context.world.out << "the sheet was written: " << join(written, ", ") << "\n";
        }
        return 0;
    };
}

} // namespace clampbook::cli
