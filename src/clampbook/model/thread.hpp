// SPDX-License-Identifier: MIT
#pragma once

// Names of screw threads as people write them. This file reads the spelling only; whether such a thread is made, and
// what its pitch is where the name leaves it out, the curated database knows.

#include "clampbook/units/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace clampbook {

/// Standards behind them: M ISO 261, UN ASME B1.1, G ISO 228-1, R ISO 7-1, NPT ASME B1.20.1.
enum class ThreadSystem { metric, unified, pipe_parallel, pipe_taper, npt };

[[nodiscard]] constexpr bool is_pipe(ThreadSystem system) noexcept {
    return system != ThreadSystem::metric && system != ThreadSystem::unified;
}

/// A thread's name taken apart.
struct ThreadName {
    ThreadSystem system = ThreadSystem::metric;
    std::string size;                       ///< `M18`, `3/8`, `#10`, `1-1/8`: diameter as the standard writes it
    std::optional<Length> pitch;            ///< metric, where written
    std::optional<double> threads_per_inch; ///< inch and pipe, where written
    std::string series;                     ///< `UNC`, `UNF`, `UN` where written, else empty
    std::string text;                       ///< as typed
};

/// Reads `M18x1.5`, `M18×1,5`, `m18 x 1.5`, `M10`, `3/8-16 UNC`, `3/8-16`, `#10-32`, `1 1/8-7 UNC`, `G1/2`, `R 1/2`,
/// `1/2-14 NPT`, `NPT 1/2`. Throws usage with an example of the nearest right spelling.
[[nodiscard]] ThreadName read_thread(std::string_view text);

/// True where the text begins like a thread's name, so that a search can tell it from a word.
[[nodiscard]] bool looks_like_thread(std::string_view text) noexcept;

/// The name for the eye: `M18x1.5` as `M18×1.5`.
[[nodiscard]] std::string thread_for_print(std::string_view code);

} // namespace clampbook
