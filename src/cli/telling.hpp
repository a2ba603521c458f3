// SPDX-License-Identifier: MIT
#pragma once

// What the commands that take many tellings at once share: their options, the words while they run, and the report.

#include "clampbook/intake/import.hpp"
#include "command.hpp"

#include <functional>
#include <optional>
#include <string>

namespace clampbook::cli {

/// --confirm-all, and what every telling has.
void add_telling(CLI::App& app, Context& context, intake::Rules& rules);

/// Throws usage where an option was given to say why, and says nothing.
void require_reasons(const CLI::App& app, const intake::Rules& rules);

/// How much of it is read, from 0 to 1, where that can be said.
using Share = std::function<std::optional<double>()>;

/// What is wanted while the file is read: stops when somebody interrupts, and on a terminal shows how far it is.
class Watch {
public:
    Watch(World& world, Share share);
    ~Watch();
    Watch(const Watch&) = delete;
    Watch& operator=(const Watch&) = delete;
    void follow(intake::ImportOptions& options);

private:
    void show(std::size_t rows);
    World& world_;
    Share share_;
    double last_ = 0;
    bool shown_ = false;
};

/// Shows the report of what was done to `name`, or all its faults, and gives the exit code. Throws the last word on faults.
int show_report(Context& context, const intake::ImportReport& report, const char* schema, const std::string& heading,
                const std::string& not_kept);

} // namespace clampbook::cli
