// SPDX-License-Identifier: MIT
#pragma once

// What the lessons are written with: figures from the other answers, numbers for sentences, and one function a lesson. Not
// installed.

#include "clampbook/answer/bolted_joint.hpp"
#include "clampbook/engine/friction.hpp"
#include "clampbook/teach/lesson.hpp"

#include <string>
#include <string_view>

namespace clampbook::teach {

/// A figure of another answer, by its key. Throws internal where the answer has none.
[[nodiscard]] const answer::Figure& figure_in(const answer::Document& document, std::string_view key);
/// The same where it may be missing.
[[nodiscard]] const answer::Figure* find_figure(const answer::Document& document, std::string_view key);
/// A text of another answer.
[[nodiscard]] std::string text_in(const answer::Document& document, std::string_view key);

[[nodiscard]] Force force_in(const answer::Document& document, std::string_view key);
[[nodiscard]] Torque torque_in(const answer::Document& document, std::string_view key);

// For sentences: three digits, in the units that the workshop thinks in.
[[nodiscard]] std::string kilonewtons(Force force);
[[nodiscard]] std::string newton_metres(Torque torque);
[[nodiscard]] std::string percent_words(double share);
[[nodiscard]] std::string micrometres(Length length);
[[nodiscard]] std::string millimetres(Length length);

/// A coefficient of friction, without idle zeros.
[[nodiscard]] std::string coefficient(double value);
/// A share that somebody typed: "4 %".
[[nodiscard]] std::string percent_as_given(double share);

/// Derived here; the basis names the source of the formula.
[[nodiscard]] answer::Figure derived_force(Force force, std::string basis);
[[nodiscard]] answer::Figure derived_torque(Torque torque, std::string basis);
[[nodiscard]] answer::Figure derived_stretch(Length length, std::string basis);
/// The same figure in kN for the eye.
[[nodiscard]] answer::Figure in_kilonewtons(answer::Figure figure);

/// `text`, or the lesson's own choice; noted among the inputs of the lesson as the option that would say so.
std::string chosen(Lesson& lesson, const char* option, const std::string& text, const char* otherwise);

/// A word of a command line, quoted where a shell would part it.
[[nodiscard]] std::string quoted(std::string_view word);

/// A screw with the face under its head and a coefficient of friction in thread and under the head alike.
struct TurnedScrew {
    answer::Screw screw;
    answer::Figure bearing;
    answer::Figure hole;

    [[nodiscard]] engine::FrictionJoint with_friction(double friction) const;
    [[nodiscard]] Stress yield_strength() const { return screw.property_class.yield_strength; }
    [[nodiscard]] Force proof_load() const { return screw.proof_load.value * newton; }
};
[[nodiscard]] TurnedScrew turned_screw(const reference::Reference& reference, const std::string& thread,
                                       const std::string& property_class, const std::string& head);

/// One coefficient. Throws usage for two.
[[nodiscard]] double one_friction(std::string_view text);

/// Points of a curve in equal steps of x, both ends included.
template <typename F>
[[nodiscard]] std::vector<std::pair<double, double>> curve(double from, double to, std::size_t parts, F&& y_of) {
    std::vector<std::pair<double, double>> out;
    for (std::size_t i = 0; i <= parts; ++i) {
        const double x = from + (to - from) * static_cast<double>(i) / static_cast<double>(parts);
        out.emplace_back(x, y_of(x));
    }
    return out;
}

// One function a lesson; `lesson` has looked at the options already.
void teach_preload(Lesson& lesson, const reference::Reference& reference, const LessonRequest& request);
void teach_shares(Lesson& lesson, const reference::Reference& reference, const LessonRequest& request);
void teach_nut_factor(Lesson& lesson, const reference::Reference& reference, const LessonRequest& request);
void teach_scatter(Lesson& lesson, const reference::Reference& reference, const LessonRequest& request);
void teach_angle(Lesson& lesson, const reference::Reference& reference, const LessonRequest& request);
void teach_strip(Lesson& lesson, const reference::Reference& reference, const LessonRequest& request);
void teach_plug(Lesson& lesson, const reference::Reference& reference, const LessonRequest& request);
void teach_units(Lesson& lesson, const reference::Reference& reference, const LessonRequest& request);
void teach_order(Lesson& lesson, const reference::Reference& reference, const LessonRequest& request);

} // namespace clampbook::teach
