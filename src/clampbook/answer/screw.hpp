// SPDX-License-Identifier: MIT
#pragma once

// A screw as the answers need it: its thread and class from the curated database, and its loads, printed where they
// are printed and computed where not. Shared by strength and derive.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/engine/thread_geometry.hpp"
#include "clampbook/reference/reference.hpp"

#include <string>
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

    [[nodiscard]] std::string title() const;     ///< "M10 8.8"
    [[nodiscard]] std::string load_name() const; ///< "proof load", or what stands in its place
};

/// Throws not_found with the nearest thread or class, out_of_validity for a pipe thread or a class not made in that
/// size.
[[nodiscard]] Screw screw_of(const reference::Reference& reference, std::string_view designation,
                             std::string_view property_class);

/// A nut factor with the band that its source, or the scatter of a torque wrench, gives it.
struct ChosenNutFactor {
    double value = 0;
    double low = 0;
    double high = 0;
    Figure figure;
    std::string band_basis;
};
/// From a number or a condition, of which at most one is given; else the one for conditions not stated. Throws usage,
/// not_found or out_of_validity as `derive` does.
[[nodiscard]] ChosenNutFactor chosen_nut_factor(const reference::Reference& reference, std::string_view given,
                                                std::string_view condition);

/// `derive` where coefficients of friction are given.
[[nodiscard]] Document derive_by_friction(const reference::Reference& reference, const DeriveRequest& request);

} // namespace clampbook::answer
