// SPDX-License-Identifier: MIT
// Lessons as JSON.

#include "clampbook/present/impl.hpp"
#include "clampbook/present/present.hpp"

namespace clampbook::present {
namespace {

using present::json_of; // those that the floor shares

Json json_of(const teach::Lesson& lesson) {
    Json out = Json::object();
    out["lesson"] = lesson.name;
    out["title"] = lesson.title;
    out["grasp"] = lesson.grasp;
    out["inputs"] = lesson.inputs;
    out["steps"] = Json::array();
    for (const teach::LessonStep& step : lesson.steps) {
        out["steps"].push_back({{"key", step.key},
                                {"title", step.title},
                                {"formula", step.formula},
                                {"worked", step.worked},
                                {"figure", step.figure ? json_of(*step.figure) : Json(nullptr)}});
    }
    out["chart"] = json_of(lesson.chart);
    out["try"] = Json::array();
    for (const teach::LessonCommand& command : lesson.commands) {
        out["try"].push_back({{"command", command.command}, {"why", command.why}});
    }
    out["questions"] = Json::array();
    for (const teach::LessonQuestion& question : lesson.questions) {
        out["questions"].push_back({{"question", question.question}, {"answer", question.answer}});
    }
    out["notes"] = lesson.notes;
    out["cautions"] = json_of(lesson.cautions);
    return out;
}

} // namespace

std::string json(const teach::Lesson& lesson) {
    Json out = Json::object();
    out["schema"] = schema_name("teach");
    out.update(json_of(lesson));
    return finished(out);
}

std::string json(const std::vector<teach::Lesson>& lessons) {
    Json out = Json::object();
    out["schema"] = schema_name("teach-all");
    out["lessons"] = Json::array();
    for (const teach::Lesson& lesson : lessons) {
        out["lessons"].push_back(json_of(lesson));
    }
    return finished(out);
}

} // namespace clampbook::present
