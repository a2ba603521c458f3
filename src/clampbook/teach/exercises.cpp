// SPDX-License-Identifier: MIT
#include "clampbook/teach/exercises.hpp"

#include "clampbook/answer/parts.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/teach/problems.hpp"

#include <algorithm>

namespace clampbook::teach {
namespace {

using answer::BlockKind;
using answer::PageBlock;
using answer::Pages;

constexpr std::uint64_t k_count_most = 60;
constexpr std::uint64_t k_seed_most = 1'000'000'000;
constexpr std::size_t k_levels = 3;

std::vector<const Topic*> chosen_topics(const std::string& typed) {
    std::vector<const Topic*> out;
    if (typed.empty()) {
        for (const Topic& topic : problem_topics()) {
            out.push_back(&topic);
        }
        return out;
    }
    for (const std::string& part : split(typed, ',')) {
        const std::string name{trim(part)};
        const auto found = std::ranges::find_if(problem_topics(), [&](const Topic& topic) { return name == topic.name; });
        if (found == problem_topics().end()) {
            throw error(ErrorKind::usage, "'{}' is no topic{}; there are {}", name, did_you_mean(name, exercise_topics()),
                        join(exercise_topics(), ", "));
        }
        if (std::ranges::find(out, &*found) == out.end()) {
            out.push_back(&*found);
        }
    }
    return out;
}

} // namespace

std::vector<std::string> exercise_topics() {
    std::vector<std::string> out;
    for (const Topic& topic : problem_topics()) {
        out.emplace_back(topic.name);
    }
    return out;
}

Exercises exercises(const reference::Reference& reference, const ExercisesRequest& request) {
    const std::uint64_t count =
        request.count.empty() ? 12 : answer::read_count(request.count, "number of exercises", 1, k_count_most);
    const std::uint64_t level = request.level.empty() ? 0 : answer::read_count(request.level, "level", 1, k_levels);
    const std::vector<const Topic*> topics = chosen_topics(request.topics);
    Exercises out;
    out.seed = request.seed.empty() ? 1 : answer::read_count(request.seed, "seed", 0, k_seed_most);
    for (const Topic* topic : topics) {
        out.topics.emplace_back(topic->name);
    }
    Dice dice{out.seed};
    for (std::size_t i = 0; i < count; ++i) {
        const Topic& topic = *topics[i % topics.size()];
        Exercise exercise;
        do { // none twice on one sheet
            exercise = {};
            exercise.number = i + 1;
            exercise.topic = topic.name;
            exercise.level = level != 0 ? level : 1 + i * k_levels / count;
            topic.draw(exercise, dice, reference);
        } while (std::ranges::find(out.exercises, exercise.text, &Exercise::text) != out.exercises.end());
        out.exercises.push_back(std::move(exercise));
    }
    out.cautions = {answer::caution_generic(), answer::caution_maker_first()};
    return out;
}

Pages worksheet(const Exercises& all, bool answers, const std::string& date) {
    Pages pages;
    pages.title = "Exercises: torque and preload";
    pages.date = date;
    pages.foot = fmt::format("{}; {}; seed {}. The machines are invented: no figure here is anybody's prescription.", pages.title,
                             date, all.seed);
    pages.add(BlockKind::title, pages.title);
    pages.add(BlockKind::text, "For a pocket calculator. Reckon with the figures as they are printed and tell answers to three "
                               "digits. The figures of screws are those of "
                               "ISO 898-1; the machines of the winter-service yard are invented.");
    pages.add(BlockKind::text, "Name ........................................    Date ....................");
    for (const Exercise& exercise : all.exercises) {
        pages.add(BlockKind::item, exercise.text).mark = std::to_string(exercise.number);
        pages.add(BlockKind::room, {}).lines = exercise.level == 1 ? 2 : 3;
    }
    for (const Caution& caution : all.cautions) {
        pages.add(BlockKind::caution, caution.text);
    }
    if (!answers) {
        return pages;
    }
    pages.add(BlockKind::new_page, {});
    pages.add(BlockKind::title, fmt::format("Answers, seed {}", all.seed));
    for (const Exercise& exercise : all.exercises) {
        pages.add(BlockKind::heading, fmt::format("{}  {}, level {}", exercise.number, exercise.topic, exercise.level));
        for (const ExerciseStep& step : exercise.steps) {
            PageBlock& block = pages.add(BlockKind::step, step.title);
            block.formula = step.worked;
            block.result = step.result;
        }
        pages.add(BlockKind::item, exercise.words).mark = "→";
    }
    return pages;
}

} // namespace clampbook::teach
