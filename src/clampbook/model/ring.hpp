// SPDX-License-Identifier: MIT
#pragma once

// Sealing rings as people write them: a material, and a size where it is not the usual one for the thread. What the material's
// right name is, the curated database knows.

#include "clampbook/units/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace clampbook {

struct RingSize {
    Length inner;
    Length outer;
    std::optional<Length> thickness;
    std::string text; ///< "18×24×1.5"
};

struct RingName {
    std::string material; ///< as typed
    std::optional<RingSize> size;
};

/// Reads `copper`, `copper 18x24`, `Cu 18*24 x 1,5`. Throws usage where the size is none: not two or three numbers, or an
/// outer diameter that is not larger than the inner one.
[[nodiscard]] RingName read_ring(std::string_view typed);

} // namespace clampbook
