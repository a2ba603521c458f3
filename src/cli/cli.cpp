// SPDX-License-Identifier: MIT
// Picks the subcommand, builds it alone, runs it, and turns whatever happens into one sentence and an exit code.

#include "cli.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "command.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <new>
#include <ostream>

namespace clampbook::cli {
namespace {

constexpr int k_usage = 2;
constexpr std::size_t k_longest_argument = 4000; // bytes; a note is far shorter, and a message repeats what it refuses

void show_help(std::ostream& out) {
    out << "clampbook " << k_about
        << ".\n\n"
           "usage: clampbook COMMAND [WORDS] [OPTIONS]      clampbook COMMAND --help tells more\n";
    std::string group;
    for (const Command& command : commands()) {
        if (group != command.group) {
            group = command.group;
            out << "\n" << group << "\n";
        }
        out << "  " << pad_right(command.name, 11) << command.summary << "\n";
    }
    out << "\n" << join(wrap(k_shared_by_all, 80), "\n") << "\n\n! " << k_maker_first << "\n";
}

// The subcommand may stand behind shared options that take a value.
std::size_t command_position(const std::vector<std::string>& arguments) {
    std::size_t at = 0;
    while (at < arguments.size() && arguments[at].starts_with("--")) {
        const bool takes_value = arguments[at] == "--book" || arguments[at] == "--reference" || arguments[at] == "--by";
        at += takes_value ? 2 : 1;
    }
    return at;
}

// The first line names the program alone, so that a script can cut it at the blank.
void show_version(std::ostream& out) {
    const reference::Reference reference;
    out << "clampbook " CLAMPBOOK_VERSION "\n"
        << "dataset " << reference.metadata("dataset.version") << " of " << reference.metadata("dataset.date") << "\n"
        << "content " << reference.metadata("content.sha256") << "\n"
        << "layout of the curated figures " << reference.metadata("layout.major") << "." << reference.metadata("layout.minor")
        << ", of the book " << book::k_layout << "\n";
}

int run_command(const Command& command, std::vector<std::string> arguments, World& world) {
    Context context{world, {}, {}, {}, false, false};
    CLI::App app{command.summary, std::string{"clampbook "} + command.name};
    app.get_formatter()->column_width(34);
    const Action action = command.setup(app, context);
    std::ranges::reverse(arguments); // the library takes them last first
    try {
        app.parse(std::move(arguments));
    } catch (const CLI::CallForHelp&) {
        // A command with subcommands of its own shows the help of the one that was named.
        const CLI::App* shown = &app;
        while (!shown->get_subcommands().empty()) {
            shown = shown->get_subcommands().front();
        }
        world.out << shown->help(shown == &app ? "" : app.get_name());
        return 0;
    } catch (const CLI::ParseError& fault) {
        world.err << "clampbook " << command.name << ": " << fault.what() << "; see 'clampbook " << command.name << " --help'\n";
        return k_usage;
    }
    return action();
}

int dispatch(std::vector<std::string> arguments, World& world) {
    for (const std::string& argument : arguments) {
        if (!is_utf8(argument)) {
            throw error(ErrorKind::usage, "what was typed is not UTF-8 text");
        }
        if (argument.size() > k_longest_argument) {
            throw error(ErrorKind::usage, "one of the words typed is longer than {} bytes", k_longest_argument);
        }
        if (has_control(argument)) {
            throw error(ErrorKind::usage, "what was typed holds a line end or another control character");
        }
    }
    const std::size_t at = command_position(arguments);
    if (at >= arguments.size()) {
        if (std::ranges::find(arguments, "--version") != arguments.end()) {
            show_version(world.out);
            return 0;
        }
        const bool asked = arguments.empty() || std::ranges::find(arguments, "--help") != arguments.end();
        if (!asked) {
            throw error(ErrorKind::usage, "no command was given; see 'clampbook --help'");
        }
        show_help(world.out);
        return 0;
    }
    const std::string name = arguments[at];
    // Shared options in front of the command belong behind all its words.
    std::rotate(arguments.begin(), arguments.begin() + static_cast<std::ptrdiff_t>(at), arguments.end());
    arguments.erase(arguments.begin());
    if (name == "help" || name == "-h") {
        show_help(world.out);
        return 0;
    }
    std::vector<std::string> names;
    for (const Command& command : commands()) {
        if (name == command.name) {
            return run_command(command, std::move(arguments), world);
        }
        names.emplace_back(command.name);
    }
    throw error(ErrorKind::usage, "'{}' is no command{}; see 'clampbook --help'", name, did_you_mean(name, names));
}

} // namespace

int run(const std::vector<std::string>& arguments, World world) {
    int code = 0;
    try {
        code = dispatch(arguments, world);
    } catch (const Error& fault) {
        world.err << "clampbook: " << fault.what() << "\n";
        code = fault.exit_code();
    } catch (const std::bad_alloc&) {
        world.err << "clampbook: there is not enough memory for this\n";
        code = 1;
    } catch (const std::exception& fault) {
        world.err << "clampbook: " << fault.what() << "\n";
        code = 1;
    }
    bool written = false;
    try {
        written = static_cast<bool>(world.out.flush());
    } catch (const std::ios_base::failure&) {
        written = false; // a stream that was told to throw
    }
    if (!written) {
        world.err << "clampbook: the answer could not be written in full: its reader closed the pipe, or the disk is full"
                  << (code == 0 ? "; the command itself was carried out" : "") << "\n";
        code = code == 0 ? 1 : code;
    }
    return code;
}

} // namespace clampbook::cli
