// SPDX-License-Identifier: MIT
// clampbook doctor: which book, curated figures and press are in use, whether they are sound, and what to do where they are not.

#include "clampbook/answer/doctor.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "command.hpp"
#include "output.hpp"

#include <CLI/CLI.hpp>
#include <unistd.h>

#include <filesystem>
#include <ostream>

namespace clampbook::cli {
namespace {

namespace fs = std::filesystem;

// The file and its folder, in which the database keeps files beside it while it writes; where there is no file yet, the nearest
// folder above it that is there.
bool may_be_written(const std::string& path) {
    std::error_code problem;
    fs::path folder = fs::absolute(path, problem).parent_path();
    if (fs::exists(path, problem)) {
        return access(path.c_str(), W_OK) == 0 && access(folder.c_str(), W_OK) == 0;
    }
    while (!fs::exists(folder, problem) && folder.has_relative_path()) {
        folder = folder.parent_path();
    }
    return access(folder.c_str(), W_OK | X_OK) == 0;
}

// What the press says of itself is a line each: its name and version, then `wanted: found` of each font.
answer::PressFacts press_facts(Context& context) {
    answer::PressFacts facts;
    facts.program = find_press(context.world);
    if (!facts.program.problem.empty()) {
        return facts;
    }
    try {
        for (const std::string& line : split(pressed(context, {"--check"}, {}), '\n')) {
            constexpr std::string_view k_name = "clampbook-press ";
            const std::size_t colon = line.find(": ");
            if (facts.version.empty() && line.starts_with(k_name)) {
                facts.version = line.substr(k_name.size());
            } else if (colon != std::string::npos) {
                facts.fonts.emplace_back(line.substr(0, colon), line.substr(colon + 2));
            }
        }
        if (facts.version.empty() || facts.fonts.empty()) {
            throw error(ErrorKind::invalid_data, "it doesn't say what it is");
        }
    } catch (const Error& fault) {
        facts.program.problem = fmt::format("'{}' is not the press of this program ({}): install the package clampbook-press, or "
                                            "name the right program in CLAMPBOOK_PRESS",
                                            facts.program.what, fault.what());
    }
    return facts;
}

} // namespace

Action setup_doctor(CLI::App& app, Context& context) {
    add_json(app, context);
    add_book(app, context);
    add_reference(app, context);
    add_person(app, context);
    return [&context] {
        answer::DoctorFacts facts;
        facts.version = CLAMPBOOK_VERSION;
        facts.book = context.chosen_book();
        facts.book_writable = may_be_written(facts.book.what);
        facts.person = context.chosen_person();
        facts.reference = context.reference_path;
        facts.press = press_facts(context);
        const answer::Diagnosis diagnosis = answer::doctor(facts);
        show(context, diagnosis.document);
        if (diagnosis.faults > 0) {
            throw error(ErrorKind::invalid_data, "{} fault{} of the book or of the curated figures", diagnosis.faults,
                        diagnosis.faults == 1 ? "" : "s");
        }
        return 0;
    };
}

} // namespace clampbook::cli
