// SPDX-License-Identifier: MIT
#pragma once

// Every command that writes into a book, each with words that fit one small shop, and that shop as files that can be put
// back as often as it takes.

#include "../unit/cli/stage.hpp"

#include <map>
#include <string>
#include <vector>

namespace fault_tests {

namespace fs = std::filesystem;
using unit_tests::Words;

struct WritingCommand {
    std::string name; ///< command and subcommand: "source add"
    Words words;      ///< with {} for the folder of the files
};

[[nodiscard]] const std::vector<WritingCommand>& writing_commands();

/// The files of a folder, by name.
using Files = std::map<std::string, std::string>;

/// A shop in a folder: book.db, and what the commands take: rows.csv, export.json, other.db.
class Shop {
public:
    Shop();
    /// Puts the files back as they were, and takes every other away.
    void put_back();
    /// The same with other files in place of these.
    void put(const Files& files) const;
    int run(const Words& words);
    int run(const WritingCommand& command) { return run(command.words); }
    [[nodiscard]] std::string said() const { return stage_.err.str(); }
    [[nodiscard]] std::string answered() const { return stage_.out.str(); }
    [[nodiscard]] Files files() const;
    /// What every book in the folder holds, and what else is there that wasn't at the beginning.
    [[nodiscard]] std::string state() const;
    /// What `book verify` and `audit` say of every book in the folder; nothing where they pass. A book whose bytes were
    /// looked at before is not looked at again.
    [[nodiscard]] std::string faults();
    [[nodiscard]] std::string path(const std::string& name) const { return stage_.path(name); }
    [[nodiscard]] const Files& at_first() const { return at_first_; }

private:
    unit_tests::Stage stage_;
    Files at_first_;
    std::map<std::size_t, std::string> looked_at_;
};

/// Everything in a book's tables, so that two books can be compared.
[[nodiscard]] std::string content_of(const std::string& path);

} // namespace fault_tests
