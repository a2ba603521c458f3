// SPDX-License-Identifier: MIT
#pragma once

// Lessons for apprentices: why the wrench clicks at one number and the clamping force is another. Every number in them comes from
// the same answers and the same engine that the other commands use, for inputs that the trainer may change.

#include "clampbook/answer/document.hpp"
#include "clampbook/answer/pages.hpp"
#include "clampbook/answer/records.hpp"
#include "clampbook/reference/reference.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace clampbook::teach {

/// What may be changed, as typed; empty for the lesson's own choice. A lesson takes some of them.
struct LessonRequest {
    std::string thread;
    std::string other_thread;
    std::string property_class;
    std::string friction;
    std::string friction_band;
    std::string oiled;
    std::string nut_factor;
    std::string head;
    std::string preload;
    std::string torque;
    std::string tool;
    std::string seed;
    std::string load;
    std::string grip;
    std::string under;
    std::string snug;
    std::string turn;
    std::string housing;
    std::string other_housing;
    std::string engagement;
    std::string ring;
    std::string adapter;
    std::string length;
};

struct LessonOption {
    const char* name; ///< `--thread`
    std::string LessonRequest::*text;
    const char* type; ///< `THREAD`, for the help
    const char* help;
};
[[nodiscard]] std::span<const LessonOption> lesson_options() noexcept;

/// One step of the computation, or of the work.
struct LessonStep {
    std::string key; ///< stable
    std::string title;
    std::string formula;                  ///< with symbols: `F_p = S_p · A_s`
    std::string worked;                   ///< with numbers: `580 MPa · 58.0 mm²`
    std::optional<answer::Figure> figure; ///< with its label and where its formula or figure comes from
};

struct LessonCommand {
    std::string command; ///< can be typed as it stands
    std::string why;
};

struct LessonQuestion {
    std::string question;
    std::string answer;
};

struct Lesson {
    std::string name;
    std::string title;
    std::vector<std::string> grasp;  ///< three sentences
    std::vector<std::string> inputs; ///< what it was computed with: "--thread M10"
    std::vector<LessonStep> steps;
    answer::Chart chart;
    std::vector<LessonCommand> commands;
    std::vector<LessonQuestion> questions; ///< two
    std::vector<std::string> notes;
    std::vector<Caution> cautions;
};

/// A lesson as the list of them shows it.
struct LessonEntry {
    const char* name;
    const char* title;
    std::vector<const char*> options; ///< those that it takes
};
[[nodiscard]] std::vector<LessonEntry> lesson_entries();

/// Throws not_found with the nearest for no such lesson, usage for an option that the lesson does not take or that does not read,
/// out_of_validity outside a method's limits.
[[nodiscard]] Lesson lesson(const reference::Reference& reference, std::string_view name, const LessonRequest& request);

/// What a chart is drawn from, a row a point, bar or limit.
[[nodiscard]] answer::TableAnswer chart_table(const answer::Chart& chart);

/// Lessons as pages, each on pages of its own; with `answers`, the answers to the questions follow on a page of their own. More
/// than one lesson makes a booklet: it begins with its contents.
[[nodiscard]] answer::Pages handout(const std::vector<Lesson>& lessons, bool answers, const std::string& date);

} // namespace clampbook::teach
