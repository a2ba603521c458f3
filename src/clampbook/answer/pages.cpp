// SPDX-License-Identifier: MIT
#include "clampbook/answer/pages.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/units/reading.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace clampbook::answer {
namespace {

const UnitInfo& shown_unit(const Axis& axis) {
    return axis.shown_in.empty() ? canonical_unit(Dimension::number) : unit_named(axis.shown_in);
}

// Decimals without which two neighbouring ticks would read the same.
int decimals_of(double step) {
    int decimals = 0;
    double shifted = step;
    while (decimals < 6 && std::abs(shifted - std::round(shifted)) > 1e-6 * step) {
        shifted *= 10;
        ++decimals;
    }
    return decimals;
}

} // namespace

Axis nice_axis(std::string title, std::string unit, std::string shown_in, double low, double high, std::size_t parts) {
    Axis axis{std::move(title), std::move(unit), std::move(shown_in), low, high, {}};
    const UnitInfo& shown = shown_unit(axis);
    const double from = shown.from_canonical(low);
    const double to = shown.from_canonical(high);
    if (!(from < to) || parts == 0) {
        throw error(ErrorKind::internal, "an axis from {} to {} has no length", from, to);
    }
    const double wanted = (to - from) / static_cast<double>(parts);
    const double power = std::pow(10.0, std::floor(std::log10(wanted)));
    double step = 10 * power;
    for (const double part : {1.0, 2.0, 2.5, 5.0}) {
        if (part * power >= wanted * 0.85) {
            step = part * power;
            break;
        }
    }
    const auto first = static_cast<long>(std::floor(from / step + 1e-9));
    const auto last = static_cast<long>(std::ceil(to / step - 1e-9));
    for (long i = first; i <= last; ++i) {
        axis.ticks.push_back(shown.to_canonical(static_cast<double>(i) * step));
    }
    axis.low = axis.ticks.front();
    axis.high = axis.ticks.back();
    return axis;
}

std::string tick_words(const Axis& axis, double at) {
    const UnitInfo& shown = shown_unit(axis);
    int decimals = 0;
    for (std::size_t i = 1; i < axis.ticks.size(); ++i) {
        decimals = std::max(decimals, decimals_of(shown.from_canonical(axis.ticks[i]) - shown.from_canonical(axis.ticks[i - 1])));
    }
    return print_fixed(shown.from_canonical(at), decimals);
}

PageBlock& Pages::add(BlockKind kind, std::string text) {
    PageBlock& block = blocks.emplace_back();
    block.kind = kind;
    block.text = std::move(text);
    return block;
}

const char* name_of(BlockKind kind) {
    static constexpr std::array k_names{"title", "heading", "text",  "small", "caution",  "item",    "command",
                                        "step",  "table",   "chart", "room",  "contents", "new_page"};
    return k_names.at(static_cast<std::size_t>(kind));
}

const char* name_of(ChartKind kind) {
    static constexpr std::array k_names{"lines", "columns", "bars"};
    return k_names.at(static_cast<std::size_t>(kind));
}

const char* name_of(LineStyle style) {
    static constexpr std::array k_names{"solid", "dashed", "dotted"};
    return k_names.at(static_cast<std::size_t>(style));
}

} // namespace clampbook::answer
