// SPDX-License-Identifier: MIT
// Files written whole: in place of another, through a link, to what is no ordinary file, and what is left where it fails.

#include "../../data/support.hpp"
#include "clampbook/base/file.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <filesystem>

namespace {

namespace fs = std::filesystem;
using clampbook::ErrorKind;
using clampbook::write_whole_file;

std::string refused(const std::string& path) {
    return unit_tests::refusal(ErrorKind::internal, [&] { return write_whole_file(path, "new"), 0; });
}

} // namespace

TEST_CASE("a file is written whole, in place of one that is there") {
    const data_tests::TemporaryFolder folder;
    const std::string path = (folder / "sheet").string();
    write_whole_file(path, "one");
    write_whole_file(path, "two\nlines");
    CHECK(data_tests::read_file(path) == "two\nlines");
    fs::create_symlink("sheet", folder / "link");
    write_whole_file((folder / "link").string(), "three");
    CHECK(data_tests::read_file(path) == "three");
    CHECK(fs::is_symlink(folder / "link"));
    CHECK(std::distance(fs::directory_iterator{folder / "."}, {}) == 2); // nothing else is left
}

TEST_CASE("a draft is put in its place, or taken away where that cannot be") {
    const data_tests::TemporaryFolder folder;
    const std::string draft = (folder / "draft").string();
    data_tests::write_file(draft, "new");
    data_tests::write_file(folder / "sheet", "old");
    clampbook::put_in_place(draft, (folder / "sheet").string());
    CHECK(data_tests::read_file(folder / "sheet") == "new");
    CHECK_FALSE(fs::exists(draft));
    data_tests::write_file(draft, "new");
    CHECK(unit_tests::refusal(ErrorKind::internal, [&] {
              return clampbook::put_in_place(draft, (folder / "none/sheet").string()), 0;
          }).ends_with("/none/sheet' cannot be written: No such file or directory"));
    CHECK_FALSE(fs::exists(draft));
    CHECK(unit_tests::refusal(ErrorKind::internal, [&] {
              return clampbook::put_in_place(draft, (folder / "sheet").string()), 0;
          }).ends_with("/sheet' cannot be written: No such file or directory"));
    CHECK(data_tests::read_file(folder / "sheet") == "new");
}

TEST_CASE("what is no ordinary file stays what it is") {
    write_whole_file("/dev/null", "nothing");
    CHECK(fs::is_character_file("/dev/null"));
    CHECK(refused("/dev/full") == "'/dev/full' cannot be written: No space left on device");
    CHECK(fs::is_character_file("/dev/full"));
}

TEST_CASE("where it fails, nothing is left behind") {
    const data_tests::TemporaryFolder folder;
    CHECK(refused((folder / "none/sheet").string()).ends_with("/none/sheet' cannot be written: No such file or directory"));
    CHECK(refused((folder / ".").string()).ends_with("cannot be written: it is a folder"));
    CHECK(fs::is_empty(folder / "."));
}
