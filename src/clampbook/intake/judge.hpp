// SPDX-License-Identifier: MIT
#pragma once

// What the ways into the book share when they judge a value or a joint; a value typed, one of a row, one of another book. Not
// installed.

#include "clampbook/book/book.hpp"
#include "clampbook/intake/import.hpp"
#include "clampbook/reference/reference.hpp"

#include <string>
#include <string_view>

namespace clampbook::intake {

/// Throws usage unless `date` is a date and not after the stamp's.
void require_past(std::string_view date, std::string_view what, const book::Stamp& stamp);

/// Throws usage where the label asks for a source or page that the value lacks.
void require_origin(const Value& value);

/// Why an implausible value is taken all the same; empty for one that makes sense. Throws conflict, naming the option that would
/// say so, where no reason is given.
[[nodiscard]] std::string confirmation(const reference::Reference& reference, const Joint& joint, const Tightening& tightening,
                                       std::string_view reason, std::string_view option);

/// True where label, source and page are the same: two such values of one joint are one reading of one print.
[[nodiscard]] bool same_place(const Value& a, const Value& b);

/// Throws conflict where the book has something else for one of the facts that are said (those that aren't empty).
void require_agreement(const Joint& there, const JointFacts& said);

/// Adds the source where the book lacks it; gives it as the book has it. Throws conflict where the dates differ.
[[nodiscard]] Source source_in_book(book::Book& book, const Source& source, const book::Stamp& stamp);

} // namespace clampbook::intake
