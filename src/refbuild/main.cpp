// SPDX-License-Identifier: MIT
// Builds the curated reference database from the SQL in schema/reference and the rows in data, and refuses to build a
// wrong one: typed cells, constraints, foreign keys, whole-database checks, content hash. A build-time tool; its
// messages are for whoever edits the data.

#include "builder.hpp"

#include "clampbook/base/error.hpp"

#include <fmt/core.h>

#include <cstdio>
#include <exception>
#include <string_view>

int main(int argc, char** argv) {
    if (argc != 5) {
        fmt::print(stderr, "usage: refbuild SCHEMA_FOLDER DATA_FOLDER HASH_FILE OUTPUT.db\n");
        return 2;
    }
    try {
        const auto summary = clampbook::refbuild::build({argv[1], argv[2], argv[3], argv[4]});
        fmt::print("{} rows in {} tables, content {}\n", summary.rows, summary.tables, summary.content_hash.substr(0, 12));
        return 0;
    } catch (const clampbook::Error& fault) {
        fmt::print(stderr, "refbuild: {}\n", fault.what());
        return fault.exit_code();
    } catch (const std::exception& fault) {
        fmt::print(stderr, "refbuild: {}\n", fault.what());
        return 1;
    }
}
