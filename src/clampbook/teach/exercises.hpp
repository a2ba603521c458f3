// SPDX-License-Identifier: MIT
#pragma once

// Exercises for apprentices: problems whose figures are drawn from a seed and whose answers follow from what is printed in them, so
// that a pocket calculator gives the same three digits. The same seed gives the same sheet on every machine.

#include "clampbook/answer/document.hpp"
#include "clampbook/answer/pages.hpp"
#include "clampbook/reference/reference.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace clampbook::teach {

/// As typed; empty for 12, 1, all topics, rising levels.
struct ExercisesRequest {
    std::string count;
    std::string seed;
    std::string topics; ///< names with commas between them
    std::string level;  ///< 1 one step, 2 two, 3 the other way round or put together
};

struct ExerciseFigure {
    std::string key;
    std::string title;
    answer::Figure figure; ///< in the canonical unit; `print` as the sheet says it
};

struct ExerciseStep {
    std::string title;
    std::string worked; ///< formula and numbers
    std::string result;
};

struct Exercise {
    std::size_t number = 0;
    std::string topic;
    std::size_t level = 1;
    std::string text;
    std::vector<ExerciseFigure> given;
    std::vector<ExerciseStep> steps;
    std::vector<ExerciseFigure> answers;
    std::string words; ///< the answer in a sentence
};

struct Exercises {
    std::uint64_t seed = 1;
    std::vector<std::string> topics;
    std::vector<Exercise> exercises;
    std::vector<Caution> cautions;
};

[[nodiscard]] std::vector<std::string> exercise_topics();

/// Throws usage for a count that is not 1 to 60, a seed that is not 0 to 1 000 000 000, a level that is not 1 to 3, and a topic
/// that there isn't, with the nearest.
[[nodiscard]] Exercises exercises(const reference::Reference& reference, const ExercisesRequest& request);

/// A worksheet with room to write; with `answers`, the worked key follows on pages of its own.
[[nodiscard]] answer::Pages worksheet(const Exercises& all, bool answers, const std::string& date);

} // namespace clampbook::teach
