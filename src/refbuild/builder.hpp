// SPDX-License-Identifier: MIT
#pragma once

// The builder of the curated database, apart from its main so that the tests can run it on broken copies of the data.

#include <cstddef>
#include <filesystem>
#include <string>

namespace clampbook::refbuild {

struct Inputs {
    std::filesystem::path schema;    ///< folder of numbered *.sql files with a folder checks/ in it
    std::filesystem::path data;      ///< folder of *.csv files
    std::filesystem::path hash_file; ///< the reviewed content hash, one line of 64 hexadecimal digits
    std::filesystem::path output;
};

struct Summary {
    std::size_t tables = 0;
    std::size_t rows = 0;
    std::string content_hash;
};

/// Builds `output` whole or not at all: it is written beside its place and renamed at the end. The same inputs give the
/// same bytes. Throws invalid_data with file, line and column of the first cell that does not fit, the message of the
/// check that found something, or both hashes where the content is not the reviewed one.
Summary build(const Inputs& inputs);

} // namespace clampbook::refbuild
