// SPDX-License-Identifier: MIT
#pragma once

// A published copy: a book as it was at one moment, for any number of readers on other machines. The file is an SQLite
// database followed by one line, the SHA-256 of all bytes before it in 64 hexadecimal digits:
// `head -c -65 FILE | sha256sum` gives the same as `tail -c 65 FILE`. It is opened as immutable: no lock is taken and
// nothing is ever written beside it, so that a read-only share or a file sync will do. Its application id differs from
// that of a book, and its book_info says when, by whom and from which book it was published.

#include <cstdint>
#include <string>

namespace clampbook::book {

/// What a published copy says of itself.
struct Publication {
    std::string at;            ///< UTC time
    std::string by;            ///< who published it
    std::string from;          ///< the book, as its path was given then
    std::int64_t revision = 0; ///< of the book: how many events it had
    std::string digest;        ///< the last line of the file
};

} // namespace clampbook::book
