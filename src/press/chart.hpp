// SPDX-License-Identifier: MIT
#pragma once

// Draws a chart as a textbook would: words stand at what they name, nothing needs a colour, no word covers another.

#include "canvas.hpp"
#include "handout.hpp"

#include <string>

namespace clampbook::press {

/// What the drawing takes at this width, without title and caption.
[[nodiscard]] double chart_height(const Chart& chart, const Fonts& fonts, double width);

/// From its upper left corner.
void draw_chart(Canvas& canvas, const Chart& chart, const Fonts& fonts, double x, double y, double width);

} // namespace clampbook::press
