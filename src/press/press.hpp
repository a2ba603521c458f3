// SPDX-License-Identifier: MIT
#pragma once

// What the press makes: pages as PDF, one long drawing as SVG, a spreadsheet, a picture of a chart. The same input gives the same bytes.

#include "handout.hpp"
#include "sheet.hpp"

#include <string>

namespace clampbook::press {

/// Points (1/72 in) of a page.
struct Paper {
    double width;
    double height;
};
/// ISO 216 and ANSI/ASME Y14.1.
inline constexpr Paper k_a4{210 * 72 / 25.4, 297 * 72 / 25.4};
inline constexpr Paper k_letter{8.5 * 72, 11.0 * 72};

// Each gives the bytes of a file. They throw internal with what the library says.
[[nodiscard]] std::string pdf(const Sheet& sheet, const Paper& paper);
[[nodiscard]] std::string svg(const Sheet& sheet);
[[nodiscard]] std::string xlsx(const Sheet& sheet);
[[nodiscard]] std::string pdf(const Handout& handout, const Paper& paper);

enum class Picture { svg, png };
/// The first chart of the pages alone. Throws invalid_data where there is none.
[[nodiscard]] std::string picture(const Handout& handout, Picture form);

} // namespace clampbook::press
