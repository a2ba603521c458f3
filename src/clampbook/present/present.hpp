// SPDX-License-Identifier: MIT
#pragma once

// Documents in the forms that people and programs read: text for 80 columns, JSON under a versioned schema, CSV for
// tables. Nothing is computed or looked up here; what a document does not hold is not shown.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/answer/document.hpp"
#include "clampbook/answer/find.hpp"
#include "clampbook/answer/pages.hpp"
#include "clampbook/answer/records.hpp"
#include "clampbook/answer/sheet.hpp"
#include "clampbook/teach/exercises.hpp"
#include "clampbook/teach/lesson.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace clampbook::present {

[[nodiscard]] std::string text(const answer::Document& document);
[[nodiscard]] std::string text(const answer::TableAnswer& table);
[[nodiscard]] std::string text(const answer::FindAnswer& found);
/// One joint whole, as `find` shows it when it is the only one.
[[nodiscard]] std::string text(const answer::FoundJoint& found);
[[nodiscard]] std::string text(const answer::Sheet& sheet);
/// A conversion in one line: `24 lbf·ft = 32.5 N·m`, and a second one for a tool's scale.
[[nodiscard]] std::string conversion_text(const answer::Document& document);
/// The same for a line of a list, at the end of `out`.
void append_conversion(std::string& out, const answer::Conversion& conversion);

/// JSON ends with a line end. `compact` puts it on one line, for streams.
[[nodiscard]] std::string json(const answer::Document& document, bool compact = false);
[[nodiscard]] std::string json(const answer::TableAnswer& table);
[[nodiscard]] std::string json(const answer::FindAnswer& found);
[[nodiscard]] std::string json(const answer::FoundJoint& joint, std::string_view schema);
/// All that a page shows, its texts ready to be set: also what the press reads.
[[nodiscard]] std::string json(const answer::Sheet& sheet);

/// The terminal that a page or chart is laid out for.
struct Layout {
    std::size_t width = 80; ///< 60 to 200 columns
    bool ascii = false;     ///< nothing beyond ASCII
};
inline constexpr std::size_t k_width_min = 60;
inline constexpr std::size_t k_width_max = 200;

[[nodiscard]] std::string text(const answer::Chart& chart, const Layout& layout);
[[nodiscard]] std::string text(const answer::Pages& pages, const Layout& layout);
/// Without what is beyond ASCII: `N·m` as `N.m`, `μ` as `mu`; a sign that has no such spelling as `?`.
[[nodiscard]] std::string ascii(std::string_view text);

[[nodiscard]] std::string json(const teach::Lesson& lesson);
[[nodiscard]] std::string json(const std::vector<teach::Lesson>& lessons);
[[nodiscard]] std::string json(const teach::Exercises& all);
/// Pages as the press reads them.
[[nodiscard]] std::string json(const answer::Pages& pages);
/// Pages for a browser and its printer, without script; needs no network. `drawings` are their charts as SVG, in order.
[[nodiscard]] std::string html(const answer::Pages& pages, const std::vector<std::string>& drawings);

/// One file for a browser: needs no network, searches, switches units, prints on A4 and Letter. What is in the sheet stays text.
[[nodiscard]] std::string html(const answer::Sheet& sheet);

/// Header line and rows; numbers at full precision in the column's unit, which the header names: `pitch[mm]`.
[[nodiscard]] std::string csv(const answer::TableAnswer& table);

} // namespace clampbook::present
