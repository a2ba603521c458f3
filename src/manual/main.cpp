// SPDX-License-Identifier: MIT
// Writes the manual pages into a folder. Run by the build; it is not installed.

#include "clampbook/base/error.hpp"
#include "clampbook/base/file.hpp"
#include "clampbook/reference/reference.hpp"
#include "manual/manual.hpp"

#include <iostream>

int main(int argc, char** argv) try {
    using namespace clampbook;
    if (argc != 2) {
        throw error(ErrorKind::usage, "usage: clampbook_manual FOLDER");
    }
    const std::string folder = std::string{argv[1]} + "/";
    // The day of the curated figures: a day of the release, and the same whenever it is built.
    const manual::Issue issue{CLAMPBOOK_VERSION, reference::Reference{}.metadata("dataset.date")};
    write_whole_file(folder + "clampbook.1", manual::program_page(issue));
    write_whole_file(folder + "clampbook-press.1", manual::press_page(issue));
    for (const cli::Command& command : cli::commands()) {
        write_whole_file(folder + "clampbook-" + command.name + ".1", manual::command_page(command, issue));
    }
    return 0;
} catch (const clampbook::Error& fault) {
    std::cerr << "clampbook_manual: " << fault.what() << "\n";
    return fault.exit_code();
} catch (const std::exception& fault) {
    std::cerr << "clampbook_manual: " << fault.what() << "\n";
    return 1;
}
