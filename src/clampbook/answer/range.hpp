// SPDX-License-Identifier: MIT
#pragma once

// Several values in one text, as they are typed on the command line: ranges (`0.08..0.20:0.02`, `8..20:2mm`) and lists with
// commas (`M8,M10`, `8.8,10.9`), in which a decimal comma stays one.

#include "clampbook/reference/reference.hpp"

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace clampbook::answer {

/// So many values, or combinations of values, and no more.
inline constexpr std::size_t k_combinations_max = 2000;

/// What the figures of a range are.
enum class RangeUnit {
    none,   ///< bare numbers
    share,  ///< in percent
    torque, ///< in a unit of torque
    length, ///< in a unit of length
    load,   ///< in percent, or in a unit of force
};

[[nodiscard]] bool is_range(std::string_view text) noexcept;

/// The values of `A..B:STEP`, A first, each as it would be typed alone: `0.08`, `10 mm`. They are counted in decimal, A + i STEP, so that
/// none drifts; B is among them where the steps land there. The unit stands behind the step or an end. Throws usage, saying what would be
/// right, for what does not read, runs backwards, has no step, one of zero or one that is wider than the range, no unit or another one than
/// is wanted, or more values than `k_combinations_max`.
[[nodiscard]] std::vector<std::string> range_of(std::string_view text, RangeUnit wanted);

/// The parts of a list with commas. A part is the longest run of up to four pieces between commas that `read` takes, so that `M18x1,5` is
/// one part. Throws usage for an empty part, and what `read` throws for one that it does not take.
[[nodiscard]] std::vector<std::string> list_of(std::string_view text, const std::function<void(std::string_view)>& read);

/// Lists of threads, by their spelling alone, and of property classes.
[[nodiscard]] std::vector<std::string> thread_list(std::string_view text);
[[nodiscard]] std::vector<std::string> class_list(const reference::Reference& reference, std::string_view text);

} // namespace clampbook::answer
