// SPDX-License-Identifier: MIT
#pragma once

// Screw and clamped parts as the two springs of a joint, with every size and modulus looked up or taken as given. Shared by the
// angle and by the lessons about clamping.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/answer/parts.hpp"
#include "clampbook/answer/screw.hpp"
#include "clampbook/engine/elastic.hpp"

#include <optional>

namespace clampbook::answer {

struct BoltedJoint {
    Screw screw;
    reference::MaterialRow screw_steel;
    reference::MaterialRow under;
    std::optional<reference::MaterialRow> tapped;
    Length grip;
    Length shank;
    Face face;
    GivenFriction friction;
    engine::Springs springs;
    engine::FrictionJoint twisted;
};

/// Of the request only what makes the joint is read, not how it is turned and loaded. Throws out_of_validity for a grip that is not
/// more than zero or a shank outside it, else as the parts that it reads; notes what a family's word stands for.
[[nodiscard]] BoltedJoint bolted_joint(Document& document, const reference::Reference& reference, const AngleRequest& request);

} // namespace clampbook::answer
