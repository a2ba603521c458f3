// SPDX-License-Identifier: MIT
// Builds the curated reference database from the SQL in schema/reference and the rows in data, and refuses to build a
// wrong one: typed cells, constraints, foreign keys, whole-database checks, content hash. A build-time tool; its
// messages are for whoever edits the data.

#include "builder.hpp"

#include "clampbook/base/error.hpp"

#include <exception>
#include <iostream>
#include <string_view>

int main(int argc, char** argv) {
    if (argc != 5) {
        std::cerr << "usage: refbuild SCHEMA_FOLDER DATA_FOLDER HASH_FILE OUTPUT.db\n";
        return 2;
    }
    try {
        const auto summary = clampbook::refbuild::build({argv[1], argv[2], argv[3], argv[4]});
        std::cout << summary.rows << " rows in " << summary.tables << " tables, content " << summary.content_hash.substr(0, 12)
                  << "\n";
        return 0;
    } catch (const clampbook::Error& fault) {
        std::cerr << "refbuild: " << fault.what() << "\n";
        return fault.exit_code();
    } catch (const std::exception& fault) {
        std::cerr << "refbuild: " << fault.what() << "\n";
        return 1;
    }
}
