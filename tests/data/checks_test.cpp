// SPDX-License-Identifier: MIT
// Every whole-database check of schema/reference/checks is seen refusing: mutations.csv changes one thing in a copy of
// the data, and the builder, with that check alone, must answer with its message and the row at fault.

#include "builder.hpp"
#include "support.hpp"

#include "clampbook/base/error.hpp"

#include <catch2/catch.hpp>

#include <set>

namespace {

using namespace data_tests;
using clampbook::refbuild::build;

// The lines of a file, one of which is edited: `from` becomes `to` in the line that begins with `line_start`; an empty
// `from` takes the line away, an empty `line_start` puts `to` at the end.
void edit(const fs::path& file, const Row& mutation) {
    std::vector<std::string> lines;
    std::istringstream in{read_file(file)};
    for (std::string line; std::getline(in, line);) {
        lines.push_back(line);
    }
    const std::string& start = mutation.at("line_start");
    const std::string& from = mutation.at("from");
    if (start.empty()) {
        lines.push_back(mutation.at("to"));
    } else {
        std::vector<std::size_t> found;
        for (std::size_t i = 0; i < lines.size(); ++i) {
            if (lines[i].starts_with(start)) {
                found.push_back(i);
            }
        }
        INFO(file << " should hold one line that begins with " << start);
        REQUIRE(found.size() == 1);
        std::string& line = lines[found.front()];
        if (from.empty()) {
            lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(found.front()));
        } else {
            INFO("its line should hold '" << from << "' once: " << line);
            const std::size_t at = line.find(from);
            REQUIRE(at != std::string::npos);
            REQUIRE(line.find(from, at + 1) == std::string::npos);
            line.replace(at, from.size(), mutation.at("to"));
        }
    }
    std::string text;
    for (const std::string& line : lines) {
        text += line + "\n";
    }
    write_file(file, text);
}

std::string message_of(const fs::path& check) {
    const std::string text = read_file(check);
    return text.substr(3, text.find('\n') - 3);
}

} // namespace

TEST_CASE("each check finds what it is there to find") {
    const auto mutations = rows_of(k_source / "tests/data/mutations.csv");
    for (std::size_t i = 0; i < mutations.size();) {
        const std::string check = mutations[i].at("check");
        const std::string number = mutations[i].at("case");
        INFO("check " << check << ", case " << number);
        const TemporaryFolder folder;
        copy_files(k_schema, folder / "schema", ".sql");
        copy_files(k_data, folder / "data", ".csv");
        fs::create_directory(folder / "schema/checks");
        const fs::path check_file = k_schema / "checks" / (check + ".sql");
        REQUIRE(fs::is_regular_file(check_file));
        fs::copy_file(check_file, folder / "schema/checks" / check_file.filename());

        const std::string finding = mutations[i].at("finding");
        REQUIRE_FALSE(finding.empty());
        for (; i < mutations.size() && mutations[i].at("check") == check && mutations[i].at("case") == number; ++i) {
            edit(folder / mutations[i].at("file"), mutations[i]);
        }
        std::string answer = "the builder accepted it";
        try {
            build({folder / "schema", folder / "data", k_hash_file, folder / "out.db"});
        } catch (const clampbook::Error& fault) {
            REQUIRE(fault.kind() == clampbook::ErrorKind::invalid_data);
            answer = fault.what();
        }
        CHECK_THAT(answer, Catch::StartsWith(check + ".sql: " + message_of(check_file) + "\n"));
        CHECK_THAT(answer, Catch::Contains(finding));
        CHECK_FALSE(fs::exists(folder / "out.db"));
    }
}

TEST_CASE("no check is without a mutation") {
    std::set<std::string> seen;
    for (const Row& row : rows_of(k_source / "tests/data/mutations.csv")) {
        seen.insert(row.at("check"));
    }
    for (const fs::path& file : files_in(k_schema / "checks", ".sql")) {
        INFO(file.filename() << " has no row in tests/data/mutations.csv");
        CHECK(seen.contains(file.stem().string()));
    }
}
