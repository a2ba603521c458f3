// SPDX-License-Identifier: MIT
// The builder of the curated database: the same bytes from the same inputs, and a refusal with file, line and column
// for what does not fit.

#include "builder.hpp"
#include "support.hpp"

#include "clampbook/base/error.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

namespace {

using namespace data_tests;
using Catch::Contains;
using clampbook::refbuild::build;
using clampbook::refbuild::Inputs;

// A copy of schema and data that may be broken.
struct Workshop {
    TemporaryFolder folder;
    Inputs inputs{folder / "schema", folder / "data", folder / "reference.sha256", folder / "out.db"};

    Workshop() {
        copy_files(k_schema, inputs.schema, ".sql");
        copy_files(k_schema / "checks", inputs.schema / "checks", ".sql");
        copy_files(k_data, inputs.data, ".csv");
        fs::copy_file(k_hash_file, inputs.hash_file);
    }

    // Replaces the only occurrence of `from`.
    void change(const std::string& file, const std::string& from, const std::string& to) const {
        std::string text = read_file(inputs.data / file);
        const std::size_t at = text.find(from);
        REQUIRE(at != std::string::npos);
        REQUIRE(text.find(from, at + 1) == std::string::npos);
        write_file(inputs.data / file, text.replace(at, from.size(), to));
    }

    [[nodiscard]] std::size_t line_of(const std::string& file, const std::string& start) const {
        const std::string text = "\n" + read_file(inputs.data / file);
        const std::size_t at = text.find("\n" + start);
        REQUIRE(at != std::string::npos);
        return static_cast<std::size_t>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n')) + 1;
    }

    // What the builder says; it must refuse, and leave nothing behind under the name of the output.
    [[nodiscard]] std::string refusal() const {
        try {
            build(inputs);
        } catch (const clampbook::Error& fault) {
            CHECK(fault.kind() == clampbook::ErrorKind::invalid_data);
            CHECK_FALSE(fs::exists(inputs.output));
            return fault.what();
        }
        FAIL("the builder accepted it");
        return {};
    }

    [[nodiscard]] std::string at(const std::string& file, const std::string& start, const std::string& rest) const {
        return (inputs.data / file).string() + ":" + std::to_string(line_of(file, start)) + ": " + rest;
    }
};

constexpr const char* k_threads = "thread_iso.csv";
constexpr const char* k_m10 = "ISO,M10,M10,M,coarse,ISO 262,M10,10,1.5,";

} // namespace

TEST_CASE("the same inputs give the same bytes") {
    const TemporaryFolder folder;
    const auto first = build({k_schema, k_data, k_hash_file, folder / "one.db"});
    const auto second = build({k_schema, k_data, k_hash_file, folder / "two.db"});
    const std::string bytes = read_file(folder / "one.db");
    CHECK(bytes == read_file(folder / "two.db"));
    CHECK(bytes == read_file(k_built));
    CHECK(bytes.starts_with("SQLite format 3"));
    CHECK(first.content_hash == second.content_hash);
    CHECK(read_file(k_hash_file) == first.content_hash + "\n");
    CHECK(first.rows == second.rows);

    std::size_t tables = 0;
    for (const fs::path& file : files_in(k_schema, ".sql")) {
        const std::string sql = read_file(file);
        for (std::size_t at = sql.find("\nCREATE TABLE "); at != std::string::npos; at = sql.find("\nCREATE TABLE ", at + 1)) {
            ++tables;
        }
    }
    CHECK(first.tables == tables);
    std::size_t rows = 0;
    for (const fs::path& file : files_in(k_data, ".csv")) {
        rows += rows_of(file).size();
    }
    CHECK(first.rows == rows);
}

TEST_CASE("rows in another order give the same content") {
    const Workshop shop;
    std::string text = read_file(shop.inputs.data / "authority.csv");
    const std::size_t header = text.find('\n') + 1;
    const std::size_t row = text.find('\n', header) + 1;
    const std::string first = text.substr(header, row - header);
    write_file(shop.inputs.data / "authority.csv", text.erase(header, first.size()) + first);
    const auto summary = build(shop.inputs);
    CHECK(read_file(k_hash_file) == summary.content_hash + "\n");
    CHECK(read_file(shop.inputs.output) == read_file(k_built));
}

TEST_CASE("a cell that does not fit is named by file, line and column") {
    const Workshop shop;
    SECTION("no number") {
        shop.change(k_threads, k_m10, "ISO,M10,M10,M,coarse,ISO 262,M10,10,wide,");
        CHECK(shop.refusal() == shop.at(k_threads, "ISO,M10,", "pitch: 'wide' is not a number"));
    }
    SECTION("a number with more behind it") {
        shop.change(k_threads, k_m10, "ISO,M10,M10,M,coarse,ISO 262,M10,10,1.5 mm,");
        CHECK(shop.refusal() == shop.at(k_threads, "ISO,M10,", "pitch: '1.5 mm' is not a number"));
    }
    SECTION("a number that can be read two ways") {
        shop.change("bolt_load_iso898_coarse.csv", "ISO,M10 8.8,M10,8.8,58.0,33700,", "ISO,M10 8.8,M10,8.8,58.0,\"33,700\",");
        CHECK_THAT(shop.refusal(),
                   Contains(shop.at("bolt_load_iso898_coarse.csv", "ISO,M10 8.8,", "proof_load: '33,700' can be read")));
    }
    SECTION("white space at an end of a quoted cell") {
        shop.change(k_threads, k_m10, "ISO,M10,M10,M,coarse,\"ISO 262 \",M10,10,1.5,");
        CHECK(shop.refusal() == shop.at(k_threads, "ISO,M10,", "selection: 'ISO 262 ' has white space at an end"));
    }
    SECTION("a constraint, by its name") {
        shop.change(k_threads, k_m10, "ISO,M10,M10,M,coarse,ISO 262,M10,10,15,");
        CHECK(shop.refusal() == shop.at(k_threads, "ISO,M10,", "CHECK constraint failed: ck_thread_pitch"));
    }
    SECTION("a cell that must be there") {
        shop.change(k_threads, k_m10, "ISO,M10,M10,M,coarse,ISO 262,M10,,1.5,");
        CHECK(shop.refusal() == shop.at(k_threads, "ISO,M10,", "NOT NULL constraint failed: thread.major_diameter_print"));
    }
    SECTION("a row twice") {
        shop.change(k_threads, std::string{"\n"} + k_m10,
                    std::string{"\n"} + k_m10 + ",,,,iso-261-1998,again,published,memory,\n" + k_m10);
        CHECK_THAT(shop.refusal(), Contains("UNIQUE constraint failed: thread."));
    }
    SECTION("a row with a cell too many") {
        shop.change(k_threads, k_m10, std::string{k_m10} + ",");
        CHECK_THAT(shop.refusal(), Contains(shop.at(k_threads, "ISO,M10,", "")) && Contains("cells, where the header has"));
    }
}

TEST_CASE("a header that does not fit is named") {
    const Workshop shop;
    const std::string name = (shop.inputs.data / k_threads).string();
    SECTION("a column that the table does not have") {
        shop.change(k_threads, "authority,code,name,system", "authority,code,title,system");
        CHECK(shop.refusal() == name + ":1: table thread has no column named title");
    }
    SECTION("a unit that nobody knows") {
        shop.change(k_threads, "major_diameter(mm)", "major_diameter(ells)");
        CHECK_THAT(shop.refusal(), Contains(name + ":1: 'major_diameter(ells)': 'ells' is no unit known here"));
    }
    SECTION("a unit of another dimension") {
        shop.change(k_threads, "major_diameter(mm)", "major_diameter(N)");
        CHECK(shop.refusal() == name + ":1: table thread has no column named major_diameter_N");
    }
    SECTION("an open bracket") {
        shop.change(k_threads, "major_diameter(mm)", "major_diameter(mm");
        CHECK(shop.refusal() == name + ":1: 'major_diameter(mm': the unit's bracket is not closed");
    }
    SECTION("a dimension that curated data do not hold") {
        shop.change(k_threads, "major_diameter(mm)", "major_diameter(°C)");
        CHECK_THAT(shop.refusal(), Contains("a temperature is no kind of quantity that curated data hold"));
    }
}

TEST_CASE("what belongs together is checked together") {
    const Workshop shop;
    SECTION("a row that points nowhere") {
        shop.change("plug_din.csv", "collar hexagon,M18x1.5,", "collar hexagon,M18x9,");
        CHECK(shop.refusal() == "table plug: a row points to a row of thread that does not exist");
    }
    SECTION("a file that belongs to no table") {
        write_file(shop.inputs.data / "gasket.csv", "code\nA\n");
        CHECK(shop.refusal() == (shop.inputs.data / "gasket.csv").string() + ": no table of the schema has this name");
    }
    SECTION("a table without rows") {
        fs::remove(shop.inputs.data / "known_difference.csv");
        CHECK(shop.refusal() == "table known_difference: no row; a table without data is a table too many");
    }
    SECTION("a check without a message") {
        write_file(shop.inputs.schema / "checks/zz.sql", "SELECT 1 WHERE 0;\n");
        CHECK_THAT(shop.refusal(), Contains("zz.sql: a check begins with a comment that is its message"));
    }
    SECTION("a schema that is no SQL") {
        write_file(shop.inputs.schema / "999_last.sql", "CREATE TABEL t (a);\n");
        CHECK_THAT(shop.refusal(), Contains("999_last.sql: ") && Contains("syntax error"));
    }
    SECTION("an empty schema file") {
        write_file(shop.inputs.schema / "999_last.sql", "");
        CHECK_THAT(shop.refusal(), Contains("999_last.sql: the file is missing or empty"));
    }
    SECTION("twenty findings are shown, the others counted") {
        write_file(shop.inputs.schema / "checks/aa.sql", "-- too many\nSELECT code FROM thread LIMIT 23;\n");
        const std::string text = shop.refusal();
        CHECK_THAT(text, Catch::StartsWith("aa.sql: too many\n  ") && Catch::EndsWith("\n  and 3 more"));
        CHECK(std::count(text.begin(), text.end(), '\n') == 21);
    }
}

TEST_CASE("data that nobody reviewed are refused with both hashes") {
    const Workshop shop;
    const std::string reviewed = read_file(k_hash_file).substr(0, 64);
    SECTION("one letter of one note") {
        shop.change("authority.csv", "United States Army", "United States army");
        const std::string text = shop.refusal();
        CHECK_THAT(text, Catch::StartsWith(shop.inputs.hash_file.string() + ": the content is not the reviewed one\n"));
        CHECK_THAT(text, Contains("reviewed: " + reviewed));
        const std::size_t at = text.find("built:    ") + 10;
        const std::string built = text.substr(at, 64);
        CHECK(built.find_first_not_of("0123456789abcdef") == std::string::npos);
        CHECK(built != reviewed);
        // with that hash in the file it is accepted
        write_file(shop.inputs.hash_file, built + "\n");
        CHECK(build(shop.inputs).content_hash == built);
    }
    SECTION("the trailing zero of one print") {
        shop.change(k_threads, "ISO,M10x1,M10×1,M,fine,ISO 262,M10,10,1,9.350,", "ISO,M10x1,M10×1,M,fine,ISO 262,M10,10,1,9.35,");
        CHECK_THAT(shop.refusal(), Contains("reviewed: " + reviewed + "\n  built:    "));
    }
    SECTION("no hash at all") {
        fs::remove(shop.inputs.hash_file);
        CHECK_THAT(shop.refusal(), Contains("reviewed: none\n  built:    " + reviewed));
    }
}

TEST_CASE("a refused build leaves the database of before in its place") {
    const Workshop shop;
    build(shop.inputs);
    const std::string before = read_file(shop.inputs.output);
    shop.change(k_threads, k_m10, "ISO,M10,M10,M,coarse,ISO 262,M10,10,wide,");
    CHECK_THROWS_AS(build(shop.inputs), clampbook::Error);
    CHECK(read_file(shop.inputs.output) == before);
}
