// SPDX-License-Identifier: MIT
// Exercises as JSON, their answers always with them.

#include "clampbook/present/impl.hpp"
#include "clampbook/present/present.hpp"

namespace clampbook::present {
namespace {

Json figures(const std::vector<teach::ExerciseFigure>& list) {
    Json out = Json::object();
    for (const teach::ExerciseFigure& one : list) {
        out[one.key] = json_of(one.figure);
    }
    return out;
}

} // namespace

std::string json(const teach::Exercises& all) {
    Json out = Json::object();
    out["schema"] = schema_name("teach-exercises");
    out["seed"] = all.seed;
    out["topics"] = all.topics;
    out["exercises"] = Json::array();
    for (const teach::Exercise& exercise : all.exercises) {
        Json steps = Json::array();
        for (const teach::ExerciseStep& step : exercise.steps) {
            steps.push_back({{"title", step.title}, {"worked", step.worked}, {"result", step.result}});
        }
        out["exercises"].push_back({{"number", exercise.number},
                                    {"topic", exercise.topic},
                                    {"level", exercise.level},
                                    {"text", exercise.text},
                                    {"given", figures(exercise.given)},
                                    {"steps", std::move(steps)},
                                    {"answer", figures(exercise.answers)},
                                    {"words", exercise.words}});
    }
    out["cautions"] = json_of(all.cautions);
    return finished(out);
}

} // namespace clampbook::present
