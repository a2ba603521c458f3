// SPDX-License-Identifier: MIT
#pragma once

// A book as files that another book takes: rows of the exchange file (what holds now), or the whole story as JSON. The same book
// gives the same bytes, and so does a book made from them. Written joint by joint, whatever the book's size.

#include "clampbook/book/book.hpp"

#include <iosfwd>

namespace clampbook::answer {

/// A row a current value; a joint without one has a row of its own. Checks and ended values aren't in it.
void export_csv(const book::Book& book, std::ostream& out);

/// All that was told of sources, machines, assemblies, joints and values, in the form of `exchange/export.hpp`.
void export_json(const book::Book& book, std::ostream& out);

} // namespace clampbook::answer
