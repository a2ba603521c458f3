// SPDX-License-Identifier: MIT
#pragma once

// A search as typed, made into groups for the book: which words are a thread, which are trade words with other names
// for the same thing, and which stand for themselves.

#include "clampbook/book/book.hpp"
#include "clampbook/reference/reference.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace clampbook::answer {

struct SearchPlan {
    std::vector<book::SearchGroup> literal;             ///< the very words
    std::optional<std::vector<book::SearchGroup>> wide; ///< with other trade words; nothing where it would be the same
};

/// Throws usage where `words` holds no word.
[[nodiscard]] SearchPlan search_plan(const reference::Reference& reference, std::string_view words);

} // namespace clampbook::answer
