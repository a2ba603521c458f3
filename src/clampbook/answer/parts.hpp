// SPDX-License-Identifier: MIT
#pragma once

// What several calculations read from a request in the same words, and look up in the same place: coefficients of friction,
// the face under a head, a material, the worst pair of threads.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/engine/friction.hpp"
#include "clampbook/engine/scatter.hpp"
#include "clampbook/engine/strip.hpp"
#include "clampbook/reference/reference.hpp"
#include "clampbook/units/reading.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace clampbook::answer {

struct Coefficients {
    double thread = 0;
    double head = 0;
};

/// `0.12`, or thread and head apart: `0.12,0.14`. A decimal comma would make two figures of one, so that the decimals are
/// written with a point. Throws usage for anything else.
[[nodiscard]] Coefficients read_coefficients(std::string_view text);

/// Coefficients with where they come from.
struct GivenFriction {
    Coefficients mu;
    std::string basis;
    std::optional<Citation> citation = {};
};
/// What was typed, or what stands in where nothing was.
template <typename F>
[[nodiscard]] GivenFriction friction_of(std::string_view typed, F&& otherwise) {
    return typed.empty() ? std::forward<F>(otherwise)() : GivenFriction{read_coefficients(typed), "as given"};
}
/// Both as lines of the document.
void add_friction(Document& document, const GivenFriction& friction);

/// `0.10..0.16`. Throws usage for anything else.
[[nodiscard]] engine::Band read_friction_band(std::string_view text);

/// `4%` as 0.04. Throws usage where the sign is missing; `what` names it and `example` shows one.
[[nodiscard]] double read_share(std::string_view text, std::string_view what, std::string_view example);

/// A whole number from `low` to `high`. Throws usage for anything else, naming `what` is wanted.
[[nodiscard]] std::uint64_t read_count(std::string_view text, std::string_view what, std::uint64_t low, std::uint64_t high);

/// A coefficient of friction, or another bare number that was given or computed.
[[nodiscard]] Figure number_figure(double value, std::string basis);
/// The same, for the eye with so many digits.
[[nodiscard]] Figure number_figure(double value, std::string basis, int significant);

/// The nearest mark of a tool's scale. A step without a unit is in `unit`; with one, the tool is marked in that.
struct ScaleMark {
    double exact = 0;   ///< what was wanted, in the scale's unit
    double setting = 0; ///< the mark, in the scale's unit
    const UnitInfo* unit = nullptr;
    std::string print; ///< of the mark, with the decimals that the step needs
    std::string basis; ///< "nearest mark of a scale in steps of 0.5 N·m"
};
/// Throws usage for a step that does not read, out_of_validity where it is not more than zero or rounds `wanted` to nothing;
/// `wanted` is canonical and `print` how it is shown.
[[nodiscard]] ScaleMark mark_on_scale(double wanted, const UnitInfo& unit, std::string_view print, std::string_view step);

/// A length as somebody gave it.
[[nodiscard]] Figure given_length(std::string_view text);
/// A length that was computed.
[[nodiscard]] Figure derived_length(Length length, std::string basis);
/// A length that the curated database has.
[[nodiscard]] Figure curated_length(const reference::SizeRow& row);

/// What the face comes to.
struct Face {
    Figure bearing; ///< d_w
    Figure hole;    ///< d_h
};
/// Throws usage for what does not read or excludes each other, not_found where the curated database has none of that size.
[[nodiscard]] Face face_of(const reference::Reference& reference, const FaceChoice& choice, std::string_view size);

/// A material from an everyday word. Where the word names a family alone, the answer says which of them stands for it.
[[nodiscard]] reference::MaterialRow material_of(const reference::Reference& reference, std::string_view typed,
                                                 Document& document);

/// Screws' steel, or the stainless one for a class of that.
[[nodiscard]] reference::MaterialRow material_of_screw(const reference::Reference& reference, std::string_view class_name);

/// Geometry of any thread that is parallel. Throws out_of_validity for a taper one.
[[nodiscard]] engine::ThreadGeometry geometry_of(const reference::ThreadRow& thread);

/// The tolerances of 6g and 6H as ISO 965-1 prints them, or by its formulas where it doesn't.
struct MetricTolerances {
    engine::Tolerances tolerances;
    bool printed = true; ///< all of them
};
[[nodiscard]] MetricTolerances metric_tolerances_of(const reference::Reference& reference, const reference::ThreadRow& thread);

/// Class 2A and 2B over the length of engagement that the standard takes for the series.
[[nodiscard]] engine::Tolerances unified_tolerances_of(const reference::ThreadRow& thread,
                                                       const engine::ThreadGeometry& geometry);

/// Screw and hole at the worst of their limits of size, or both at the basic sizes, and which of these in words.
struct PairChoice {
    engine::ThreadPair pair;
    std::string basis;
};
[[nodiscard]] PairChoice pair_of(const reference::Reference& reference, const reference::ThreadRow& thread, bool nominal);

/// A stress to three digits.
[[nodiscard]] Figure stress_figure(Stress stress, Label label, std::string basis);
/// A stress that the curated database has.
[[nodiscard]] Figure curated_stress(Stress stress, std::optional<Citation> citation, std::string basis = {});

} // namespace clampbook::answer
