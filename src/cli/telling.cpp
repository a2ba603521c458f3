// SPDX-License-Identifier: MIT
#include "telling.hpp"

#include "clampbook/answer/document.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <CLI/CLI.hpp>

#include <chrono>
#include <ostream>

namespace clampbook::cli {
namespace {

double seconds_now() { return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count(); }

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

void require_reasons(const CLI::App& app, const intake::Rules& rules) {
    for (const auto& [name, reason] : {std::pair{"--confirm-all", rules.confirm_all}, {"--supersede", rules.supersede}}) {
        const CLI::Option* const option = app.get_option_no_throw(name);
        if (option != nullptr && option->count() > 0 && trim(reason).empty()) {
            throw error(ErrorKind::usage, "{} wants a reason; it is kept in the book", name);
        }
    }
}

void add_telling(CLI::App& app, Context& context, intake::Rules& rules) {
    add_text(app, "--confirm-all", rules.confirm_all, "REASON", "What",
             "why implausible values stand so in their sources; the reason is kept with each");
    add_person(app, context);
    add_json(app, context);
    add_book(app, context);
    add_reference(app, context);
}

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

} // namespace clampbook::cli
