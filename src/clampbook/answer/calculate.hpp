// SPDX-License-Identifier: MIT
#pragma once

// The answers that need no book: a conversion, a thread, the strength of a screw, a generic tightening. Each joins
// curated figures and engine into a document; nothing is printed here.

#include "clampbook/answer/document.hpp"
#include "clampbook/reference/reference.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace clampbook::answer {

struct ConvertRequest {
    std::string quantity;
    std::string to;    ///< a unit; empty gives the workshop's other units
    std::string scale; ///< the step of a tool's scale: `0.5`, `0.5 N·m`; empty for none
};

/// The result carries the digits that the input carries plus one for the eye, and full precision for JSON.
/// Throws usage for what does not read, and out_of_validity where the scale's step is not more than zero or would round
/// the whole figure away.
[[nodiscard]] Document convert(const ConvertRequest& request);

/// Geometry of a thread, and its limits of size by tolerance class.
[[nodiscard]] Document thread(const reference::Reference& reference, std::string_view designation);

/// Stress area, proof load and minimum tensile load with table and clause.
[[nodiscard]] Document strength(const reference::Reference& reference, std::string_view designation,
                                std::string_view property_class);

/// What the friction form is asked with; all empty where the nut factor's form is meant.
struct FrictionChoices {
    std::string coefficients; ///< `0.12`, or thread and head apart: `0.12,0.14`
    std::string utilisation;  ///< `90%` of the yield strength; empty for 90 %
    std::string head;         ///< hexagon, socket, flange; empty for hexagon
    std::string hole;         ///< fine, medium, coarse, or a diameter; empty for medium
    std::string bearing;      ///< diameter of the bearing face, in place of a head's
    std::string torsion;      ///< plastic or elastic; empty for plastic
    std::string under;        ///< the material under the head; empty for none

    bool operator==(const FrictionChoices&) const = default;
};

struct DeriveRequest {
    std::string thread;
    std::string property_class;
    std::string nut_factor; ///< a number; empty for the condition's
    std::string condition;  ///< of the curated nut factors; empty for `not stated`
    std::string preload;    ///< `75%` of proof load or a force; empty for the default
    std::string torque;     ///< the other way round: the preload that it makes
    bool permanent = false; ///< default preload of a joint that stays closed
    FrictionChoices friction = {};
};

/// Preload and torque by a nut factor or, where coefficients of friction are given, by these, with the shares of the torque.
/// Throws usage for what does not read or excludes each other, not_found for a head or hole that the curated database has
/// not in this size, out_of_validity outside the method with the limit named.
[[nodiscard]] Document derive(const reference::Reference& reference, const DeriveRequest& request);

} // namespace clampbook::answer
