// SPDX-License-Identifier: MIT
#pragma once

// Answers kept by the text of their question, for what asks the same things again and again.

#include <cstddef>
#include <string>
#include <unordered_map>
#include <utility>

namespace clampbook {

/// Forgets all answers where they become many, so that it takes no more memory in a large file than in a small one.
template <typename Answer>
class Remembered {
public:
    /// The answer, or nothing where none is known. Good until the next `keep`.
    [[nodiscard]] const Answer* known(const std::string& question) const {
        const auto there = answers_.find(question);
        return there == answers_.end() ? nullptr : &there->second;
    }
    const Answer& keep(std::string question, Answer answer) {
        if (answers_.size() >= k_most) {
            answers_.clear();
        }
        return answers_.insert_or_assign(std::move(question), std::move(answer)).first->second;
    }
    /// The answer to `question`, found by `find` the first time. Nothing is remembered of a question that `find` throws at.
    template <typename Find>
    const Answer& of(const std::string& question, Find&& find) {
        const Answer* there = known(question);
        return there != nullptr ? *there : keep(question, std::forward<Find>(find)());
    }

private:
    static constexpr std::size_t k_most = 4096;
    std::unordered_map<std::string, Answer> answers_;
};

} // namespace clampbook
