// SPDX-License-Identifier: MIT
#pragma once

// The technician's lookup: words in, joints and their values out, each with whose figure it is. Words may stand in any
// order, be cut short, be trade words of five languages, names of machines and assemblies, or thread sizes.

#include "clampbook/answer/document.hpp"
#include "clampbook/book/book.hpp"
#include "clampbook/reference/reference.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace clampbook::answer {

struct FoundValue {
    Value value;
    std::string in_newton_metres; ///< "34 N·m", "50 N·m + 90°"; empty where no step is a torque
    std::string in_pound_feet;    ///< the same in lbf·ft
};

struct FoundJoint {
    book::Place place;
    std::vector<FoundValue> values; ///< current ones first, then the others
    std::string ring;               ///< "copper ring 18×22×1.5 mm", empty where none
    std::string renew;              ///< "renew at every opening"
    std::string disagreement;       ///< set where current values disagree
    std::string derive_command;     ///< set where there is no value and a generic figure may be derived
    std::string no_generic;         ///< set where there is no value and none may be derived: why
    std::vector<Caution> cautions;

    [[nodiscard]] std::vector<const FoundValue*> current() const;
};

struct FindAnswer {
    std::string query;
    std::vector<FoundJoint> matches;  ///< best first, those of one assembly together
    std::size_t total = 0;            ///< may be more than matches
    std::size_t other_words = 0;      ///< further joints under other words for the same thing
    std::vector<std::string> nearest; ///< names near the query where nothing was found
};

struct FindRequest {
    std::string words;
    bool wide = false; ///< other trade words for the same thing too, even where the very words were found
    std::size_t at_most = 40;
};

/// Throws usage where the query holds no word.
[[nodiscard]] FindAnswer find(const book::Book& book, const reference::Reference& reference, const FindRequest& request);

/// The joint itself, as `find` shows it. Throws not_found.
[[nodiscard]] FoundJoint joint(const book::Book& book, const reference::Reference& reference, RecordId id);

/// The one joint that `text` means: its number, or words that fit one joint alone. Throws not_found with the nearest,
/// conflict with the joints that fit.
[[nodiscard]] book::Place joint_named(const book::Book& book, const reference::Reference& reference, std::string_view text);

} // namespace clampbook::answer
