// SPDX-License-Identifier: MIT
#pragma once

// A screw as the answers need it: its thread and class from the curated database, and its loads, printed where they
// are printed and computed where not. Shared by strength and derive.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/engine/thread_geometry.hpp"
#include "clampbook/reference/reference.hpp"

#include <string_view>

namespace clampbook::answer {

struct Screw {
    reference::ThreadRow thread;
    engine::ThreadGeometry geometry; ///< by formula
    reference::ClassRow property_class;
    bool has_proof_stress = true;
    Figure area;
    Figure proof_load; ///< at the 0.2 % limit where the class has no proof stress
    Figure tensile_load;
};

/// Throws not_found with the nearest thread or class, out_of_validity for a pipe thread or a class not made in that
/// size.
[[nodiscard]] Screw screw_of(const reference::Reference& reference, std::string_view designation,
                             std::string_view property_class);

/// `derive` where coefficients of friction are given.
[[nodiscard]] Document derive_by_friction(const reference::Reference& reference, const DeriveRequest& request);

} // namespace clampbook::answer
