// SPDX-License-Identifier: MIT
#pragma once

// What `doctor` answers: where the program finds its book, its curated figures and its press, whether they are sound, and what to
// do where they are not. What only the world outside knows comes in as facts; book and reference are opened here.

#include "clampbook/answer/document.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace clampbook::answer {

/// Something that was chosen, and by what: "--book", "CLAMPBOOK_BOOK", "your data folder".
struct Chosen {
    std::string what; ///< empty where nothing was
    std::string by;
    std::string problem = {}; ///< a sentence where it cannot be taken as it is
};

/// What the press said of itself.
struct PressFacts {
    Chosen program;
    std::string version;
    /// The families that its pages ask for, and those that this machine sets them in.
    std::vector<std::pair<std::string, std::string>> fonts;
};

struct DoctorFacts {
    std::string version; ///< the program's
    Chosen book;
    bool book_writable = false; ///< the file, or where there is none, the place for one
    Chosen person;
    std::string reference; ///< a file in place of the built-in one, or empty
    PressFacts press;
};

/// The findings are the document's cautions. Those that make the book or the reference unusable or untrue are counted.
struct Diagnosis {
    Document document;
    std::size_t faults = 0;
};

[[nodiscard]] Diagnosis doctor(const DoctorFacts& facts);

} // namespace clampbook::answer
