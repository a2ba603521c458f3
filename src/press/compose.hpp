// SPDX-License-Identifier: MIT
#pragma once

// The spec sheet as blocks.

#include "blocks.hpp"
#include "sheet.hpp"

#include <vector>

namespace clampbook::press {

/// The whole sheet in the order of its pages, for columns of this width together. `fonts` must live as long as the blocks.
[[nodiscard]] std::vector<Group> compose(const Sheet& sheet, const Fonts& fonts, double width);

} // namespace clampbook::press
