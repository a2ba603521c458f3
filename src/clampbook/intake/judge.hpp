// SPDX-License-Identifier: MIT
#pragma once

// What the ways into the book share when they judge a value or a joint; a value typed, one of a row, one of another book. Not
// installed.

#include "clampbook/base/remembered.hpp"
#include "clampbook/book/book.hpp"
#include "clampbook/engine/plausibility.hpp"
#include "clampbook/intake/import.hpp"
#include "clampbook/reference/reference.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace clampbook::intake {

struct Judge::Memory {
    Remembered<Tightening> tightenings;                      ///< as they are written, read
    Remembered<Joint> words;                                 ///< thread, class, form, ring and housing in standard words
    Remembered<std::optional<engine::TorqueWindow>> windows; ///< what makes sense on such a joint
};

/// One key of several texts.
[[nodiscard]] std::string key_of(std::initializer_list<std::string_view> parts);

/// Throws usage unless `date` is a date and not after the stamp's.
void require_past(std::string_view date, std::string_view what, const book::Stamp& stamp);

/// Throws usage where the label asks for a source or page that the value lacks.
void require_origin(const Value& value);

/// Why an implausible value is taken all the same; empty for one that makes sense. Throws conflict, naming the option that would
/// say so, where no reason is given.
[[nodiscard]] std::string confirmation(const Judge& judge, const Joint& joint, const Tightening& tightening,
                                       std::string_view reason, std::string_view option);

/// True where label, source and page are the same: two such values of one joint are one reading of one print.
[[nodiscard]] bool same_place(const Value& a, const Value& b);

/// Throws conflict where the book has something else for one of the facts that are said (those that aren't empty).
void require_agreement(const Joint& there, const JointFacts& said);

/// Keeps a value that was judged and ends those that it replaces; gives its number.
RecordId keep(book::Book& book, const Value& value, const std::vector<RecordId>& replaces, const std::string& reason,
              const book::Stamp& stamp);

/// The source as the book has it, if it does. Throws usage where its date is none, conflict where the dates differ.
[[nodiscard]] std::optional<Source> known_source(const book::Book& book, const Source& source);

/// Adds the source where the book lacks it; gives it as the book has it. Throws as `known_source` does.
[[nodiscard]] Source source_in_book(book::Book& book, const Source& source, const book::Stamp& stamp);

} // namespace clampbook::intake
