// SPDX-License-Identifier: MIT
#pragma once

// What is told of a value besides its figure; shared by enter and supersede.

#include "clampbook/intake/intake.hpp"
#include "command.hpp"

#include <functional>
#include <string>

namespace clampbook::cli {

struct EntryWords {
    std::string label;
    std::string source;
    std::string page;
    std::string note;
    std::string on;
    std::string confirm;
};

/// --label, --source, --page, --note, --on and --confirm.
void add_entry(CLI::App& app, EntryWords& words);

/// The entry, its source looked up in the book. The label is left alone where none was typed.
[[nodiscard]] intake::Entry entry_of(const book::Book& book, const EntryWords& words, const std::string& tightening);

/// Adds the value's number and what every telling has, and gives what to run: `tell` writes, and says in words what it wrote.
using Telling = std::function<std::string(book::Book&, const reference::Reference&, const Value&, const book::Stamp&)>;
[[nodiscard]] Action telling_of_value(CLI::App& app, Context& context, const char* schema, Telling tell);

/// Shows a joint after something was told of one of its values: what was told and the joint, or the joint as JSON.
void show_value(Context& context, const book::Book& book, const reference::Reference& reference, RecordId joint,
                const char* schema, const std::string& told);

} // namespace clampbook::cli
