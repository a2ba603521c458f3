// SPDX-License-Identifier: MIT
// clampbook import: rows of a spreadsheet, or a whole export, into the book.

#include "clampbook/answer/document.hpp"
#include "clampbook/base/error.hpp"
#include "telling.hpp"

#include <CLI/CLI.hpp>

#include <array>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <ostream>

namespace clampbook::cli {
namespace {

struct ImportOptions {
    std::string file;
    intake::ImportOptions how;
};

double seconds_now() { return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count(); }

// An export begins with a brace; no header line of rows does.
bool is_json(std::istream& in) {
    const auto begin = in.tellg();
    const int first = (in >> std::ws).peek();
    in.clear();
    in.seekg(begin);
    return first == '{';
}

bool is_book(std::istream& in) {
    std::array<char, 15> first{};
    const auto begin = in.tellg();
    in.read(first.data(), first.size());
    in.clear();
    in.seekg(begin);
    return std::string_view{first.data(), first.size()} == "SQLite format 3";
}

// Lines that were kept, and how many more there are.
void add_notes(answer::Document& document, const char* what, const intake::Told& told) {
    for (const std::string& line : told.lines) {
        document.notes.push_back(std::string{what} + line);
    }
    if (told.total > told.lines.size()) {
        document.notes.push_back(fmt::format("{}{} more", what, told.total - told.lines.size()));
    }
}

} // namespace

Watch::Watch(World& world, Share share) : world_(world), share_(std::move(share)), last_(seconds_now()) {}

Watch::~Watch() {
    if (shown_) {
        world_.err << "\r\x1b[K" << std::flush;
    }
}

void Watch::follow(intake::ImportOptions& options) {
    options.interrupted = world_.interrupted;
    if (world_.err_is_terminal) {
        options.progress = [this](std::size_t rows) { show(rows); };
    }
}

void Watch::show(std::size_t rows) {
    const double now = seconds_now();
    if (now - last_ < (shown_ ? 0.2 : 1.0)) {
        return;
    }
    last_ = now;
    shown_ = true;
    const auto share = share_ ? share_() : std::nullopt;
    world_.err << "\r\x1b[K" << rows << " read" << (share ? fmt::format(", {:.0f} %", 100 * *share) : "")
               << " (Ctrl-C stops it and leaves the book as it was)" << std::flush;
}

int show_report(Context& context, const intake::ImportReport& report, const char* schema, const std::string& heading,
                const std::string& not_kept) {
    if (report.faults.total > 0) {
        for (const std::string& fault : report.faults.lines) {
            context.world.err << "clampbook: " << fault << "\n";
        }
        const std::size_t more = report.faults.total - report.faults.lines.size();
        throw error(report.conflicts_alone ? ErrorKind::conflict : ErrorKind::invalid_data, "{}{} fault{}; nothing was written",
                    more > 0 ? fmt::format("and {} more: ", more) : "", report.faults.total, report.faults.total == 1 ? "" : "s");
    }
    answer::Document document;
    document.schema = schema;
    document.heading = heading + (report.kept ? "" : " (" + not_kept + ")");
    document.section({});
    document.add("written", "written", report.kept ? "yes" : "no");
    document.add("read", "read", answer::count_figure(report.read));
    document.add("values", "values taken", answer::count_figure(report.values));
    document.add("here_already", "here already", answer::count_figure(report.here_already));
    document.add("superseded", "superseded by them", answer::count_figure(report.superseded));
    document.add("checks", "checks taken", answer::count_figure(report.checks));
    document.add("joints", "new joints", answer::count_figure(report.joints));
    document.add("assemblies", "new assemblies", answer::count_figure(report.assemblies));
    document.add("machines", "new machines", answer::count_figure(report.machines));
    document.add("sources", "new sources", answer::count_figure(report.sources));
    document.add("implausible", "taken although implausible", answer::count_figure(report.confirmed.total));
    document.add("left_out", "left as they are", answer::count_figure(report.left_out.total));
    add_notes(document, "taken although implausible: ", report.confirmed);
    add_notes(document, "left as it is: ", report.left_out);
    show(context, document);
    return 0;
}

Action setup_import(CLI::App& app, Context& context) {
    auto options = std::make_shared<ImportOptions>();
    app.add_option("file", options->file, "rows as CSV (with ; or ,), or an export as JSON")->type_name("FILE")->required();
    app.add_flag("--dry-run", options->how.dry_run, "judge all of it and write nothing")->group("What");
    add_text(app, "--confirm-all", options->how.rules.confirm_all, "REASON", "What",
             "why implausible values stand so in their sources; the reason is kept with each");
    add_text(app, "--supersede", options->how.rules.supersede, "REASON", "What",
             "why values of the file take the place of others from the same page");
    add_person(app, context);
    add_json(app, context);
    add_book(app, context);
    add_reference(app, context);
    return [options, &context] {
        namespace fs = std::filesystem;
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
