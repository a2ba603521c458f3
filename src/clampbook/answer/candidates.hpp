// SPDX-License-Identifier: MIT
#pragma once

// What a shell may offer while somebody types: names out of the curated tables and out of the book. The command line chooses which of
// them fit where, and by what was typed already.

#include "clampbook/book/book.hpp"
#include "clampbook/reference/reference.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace clampbook::answer {

struct Candidate {
    std::string word; ///< one word for the shell, blanks and all
    std::string what; ///< what it is, for the eye; may be empty
};

/// A column of a curated table, each name once, with another column that says what it is (empty for none).
[[nodiscard]] std::vector<Candidate> curated_names(const reference::Reference& reference, std::string_view topic,
                                                   std::string_view column, std::string_view what);

[[nodiscard]] std::vector<Candidate> machine_names(const book::Book& book);
/// Of the machine of that name, as `machine_named` reads it; of all machines where it is empty or names none.
[[nodiscard]] std::vector<Candidate> assembly_names(const book::Book& book, const std::string& machine);
/// Each by its name alone where that is enough, else with assembly, else with machine too.
[[nodiscard]] std::vector<Candidate> joint_names(const book::Book& book);
[[nodiscard]] std::vector<Candidate> source_names(const book::Book& book);
/// Numbers of current values, with the joint that each belongs to, and not with the figure: whoever checks it keys it from its source.
[[nodiscard]] std::vector<Candidate> value_numbers(const book::Book& book);

/// Words of joints, assemblies and machines that go on from `before`: those of joints that all of those words fit. Without any,
/// the words of the joints' own names.
[[nodiscard]] std::vector<Candidate> search_words(const book::Book& book, const std::vector<std::string>& before);

} // namespace clampbook::answer
