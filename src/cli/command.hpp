// SPDX-License-Identifier: MIT
#pragma once

// How a subcommand is made: a name, a line of help, and a function that adds its options and gives back what to run.
// Only the subcommand that was asked for is ever built, so that the others cost a lookup nothing.

#include "clampbook/answer/document.hpp"
#include "clampbook/book/book.hpp"
#include "clampbook/reference/reference.hpp"
#include "cli.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace CLI {
class App;
class Option;
} // namespace CLI

namespace clampbook::answer {
struct Chosen;
} // namespace clampbook::answer

namespace clampbook::cli {

// What --help says of the whole program; the manual page says the same.
inline constexpr const char* k_about = "keeps the tightening values of a workshop and says of every figure where it came from";
inline constexpr const char* k_shared_by_all =
    "Every command that answers takes --json; tables take --csv too. The book is the file that --book FILE or CLAMPBOOK_BOOK "
    "names, else ~/.local/share/clampbook/book.db.";
inline constexpr const char* k_maker_first = "The maker's instructions, local codes and licensed practice come first.";

/// What every subcommand can reach: the streams, the clock, and the options that all of them share.
struct Context {
    World& world;
    std::string book_path;
    std::string reference_path;
    std::string person;
    bool json = false;
    bool csv = false;

    [[nodiscard]] reference::Reference reference() const;
    [[nodiscard]] book::Book book(book::Access access) const;
    /// The book's path: --book, CLAMPBOOK_BOOK, or the user's data folder. Throws usage where there is no home folder.
    [[nodiscard]] std::string path_of_book() const;
    /// The same with what named it, and who is writing. Nothing is chosen, or there is a sentence beside it, where it won't do.
    [[nodiscard]] answer::Chosen chosen_book() const;
    [[nodiscard]] answer::Chosen chosen_person() const;
    /// Who is writing, and now. Throws usage where nobody is named.
    [[nodiscard]] book::Stamp stamp() const;
};

/// Runs and gives the exit code.
using Action = std::function<int()>;

struct Command {
    const char* name;
    const char* group;
    const char* summary;
    Action (*setup)(CLI::App& app, Context& context);
};

[[nodiscard]] const std::vector<Command>& commands();

// The options that several subcommands share, each with one wording.
void add_json(CLI::App& app, Context& context);
void add_csv(CLI::App& app, Context& context);
void add_book(CLI::App& app, Context& context);
void add_reference(CLI::App& app, Context& context);
void add_person(CLI::App& app, Context& context);

/// An option whose text is read later, where everything that was typed is known.
void add_text(CLI::App& app, const char* name, std::string& text, const char* type, const char* group, const char* help);

/// Prints a document in the form that was asked for.
void show(Context& context, const answer::Document& document);

// One function a file of this folder.
Action setup_angle(CLI::App& app, Context& context);
Action setup_assembly(CLI::App& app, Context& context);
Action setup_audit(CLI::App& app, Context& context);
Action setup_book(CLI::App& app, Context& context);
Action setup_check(CLI::App& app, Context& context);
Action setup_complete(CLI::App& app, Context& context);
Action setup_conflicts(CLI::App& app, Context& context);
Action setup_convert(CLI::App& app, Context& context);
Action setup_demo(CLI::App& app, Context& context);
Action setup_derive(CLI::App& app, Context& context);
Action setup_doctor(CLI::App& app, Context& context);
Action setup_enter(CLI::App& app, Context& context);
Action setup_export(CLI::App& app, Context& context);
Action setup_find(CLI::App& app, Context& context);
Action setup_history(CLI::App& app, Context& context);
Action setup_import(CLI::App& app, Context& context);
Action setup_joint(CLI::App& app, Context& context);
Action setup_list(CLI::App& app, Context& context);
Action setup_machine(CLI::App& app, Context& context);
Action setup_merge(CLI::App& app, Context& context);
Action setup_plug(CLI::App& app, Context& context);
Action setup_scatter(CLI::App& app, Context& context);
Action setup_sheet(CLI::App& app, Context& context);
Action setup_source(CLI::App& app, Context& context);
Action setup_strength(CLI::App& app, Context& context);
Action setup_strip(CLI::App& app, Context& context);
Action setup_supersede(CLI::App& app, Context& context);
Action setup_teach(CLI::App& app, Context& context);
Action setup_thread(CLI::App& app, Context& context);
Action setup_withdraw(CLI::App& app, Context& context);
Action setup_wrench(CLI::App& app, Context& context);

/// A thread and a property class from words typed one after the other, quoted or not: `3/8-16 UNC grade 5`.
struct ScrewWords {
    std::string thread;
    std::string property_class;
};
[[nodiscard]] ScrewWords screw_words(const reference::Reference& reference, const std::vector<std::string>& words);
/// The same where both may be lists with commas: `M8,M10 8.8,10.9`; they are left as texts.
[[nodiscard]] ScrewWords screw_list_words(const reference::Reference& reference, const std::vector<std::string>& words);
/// The same of a plug, whose class may be left out.
[[nodiscard]] ScrewWords plug_words(const reference::Reference& reference, const std::vector<std::string>& words);

} // namespace clampbook::cli
