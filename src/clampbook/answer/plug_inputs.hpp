// SPDX-License-Identifier: MIT
#pragma once

// What the torque window of a plug is computed from: the request in the standards' words, and every size and strength looked up
// or taken as given.

#include "clampbook/answer/parts.hpp"
#include "clampbook/model/ring.hpp"

#include <optional>
#include <string>

namespace clampbook::answer {

struct PlugInputs {
    reference::ThreadRow thread;
    engine::ThreadGeometry geometry;
    std::string form;
    reference::RingInfo ring;
    std::optional<reference::PlugRow> part;
    std::optional<RingSize> ring_size;
    std::string ring_words;
    std::optional<Citation> ring_citation;
    reference::MaterialRow housing;
    reference::ClassRow plug_class;
    reference::ShearRatioRow shear;
    PairChoice pair;
    engine::Band friction;
    std::string friction_basis;
    std::optional<Citation> friction_citation;
    Figure engagement;
    Length bore;
    std::string bore_words;
    Length face_inner;
    Length face_outer;
    std::string face_words;
};

/// Throws usage where ring and form don't belong together, not_found where a size is neither kept nor given, out_of_validity for
/// a plug that seals by its thread or a ring that doesn't go over it. Notes in the document what a family's word stands for.
[[nodiscard]] PlugInputs plug_inputs(Document& document, const reference::Reference& reference, const PlugRequest& request,
                                     reference::ThreadRow thread);

} // namespace clampbook::answer
