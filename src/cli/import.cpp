// SPDX-License-Identifier: MIT
// clampbook import: rows of a spreadsheet, or a whole export, into the book.

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "telling.hpp"

#include <CLI/CLI.hpp>

#include <array>
#include <filesystem>
#include <fstream>
#include <ostream>

namespace clampbook::cli {
namespace {

struct ImportOptions {
    std::string file;
    intake::ImportOptions how;
};

// An export begins with a brace; no header line of rows does.
bool is_json(std::istream& in) { return in.peek() == '{'; }

bool is_book(std::istream& in) {
    const auto begin = in.tellg();
    if (begin < 0) {
        return false; // a pipe, which cannot be read twice
    }
    std::array<char, 15> first{};
    in.read(first.data(), first.size());
    in.clear();
    in.seekg(begin);
    return std::string_view{first.data(), first.size()} == "SQLite format 3";
}

// For the help: what the head line of a file of rows may hold.
std::string columns_in_words() {
    std::vector<std::string> names;
    for (const exchange::JointColumn& column : exchange::joint_columns()) {
        names.push_back(std::string{column.name} + (column.needed ? "*" : ""));
    }
    return "Columns of the rows, in any order; those with * are needed. An empty book's 'clampbook export --csv' is such a head "
           "line.\n  " +
           join(wrap(join(names, " "), 78), "\n  ");
}

} // namespace

Action setup_import(CLI::App& app, Context& context) {
    auto options = std::make_shared<ImportOptions>();
    app.add_option("file", options->file, "rows as CSV (with ; or ,), or an export as JSON")->type_name("FILE")->required();
    app.add_flag("--dry-run", options->how.dry_run, "judge all of it and write nothing")->group("What");
    add_telling(app, context, options->how.rules);
    add_text(app, "--supersede", options->how.rules.supersede, "REASON", "What",
             "why values of the file take the place of others from the same page");
    app.footer(columns_in_words());
    return [options, &app, &context] {
        namespace fs = std::filesystem;
        require_reasons(app, options->how.rules);
        const std::string& path = options->file;
        book::Stamp stamp = context.stamp();
        stamp.origin = fs::path{path}.filename().string();
        std::error_code problem;
        if (fs::is_directory(path, problem)) {
            throw error(ErrorKind::invalid_data, "'{}' is a folder, not a file", path);
        }
        std::ifstream in{path, std::ios::binary};
        if (!in) {
            throw error(ErrorKind::invalid_data, "'{}' cannot be read: {}", path,
                        fs::exists(path, problem) ? "the file may not be opened" : "there is no such file");
        }
        if (is_book(in)) {
            throw error(ErrorKind::invalid_data, "'{}' is a book; 'clampbook merge' takes another shop's book", path);
        }
        const auto size = fs::file_size(path, problem);
        book::Book book = context.book(book::Access::write);
        const reference::Reference reference = context.reference();
        intake::ImportReport report;
        {
            Watch watch{context.world, [&]() -> std::optional<double> {
                            const auto at = static_cast<double>(in.tellg());
                            return problem || size == 0 || at < 0 ? std::nullopt : std::optional{at / static_cast<double>(size)};
                        }};
            watch.follow(options->how);
            report = (is_json(in) ? intake::import_export : intake::import_rows)(book, reference, in, path, options->how, stamp);
        }
        return show_report(context, report, "import", "Import of " + path, "dry run: nothing was written");
    };
}

} // namespace clampbook::cli
