// SPDX-License-Identifier: MIT
// The book as a file: made once, opened again, refused where it is none, verified, copied.

#include "shop.hpp"

#include <catch2/catch.hpp>

namespace {

using namespace unit_tests;

std::string opened(const std::string& path, ErrorKind kind) {
    return refusal(kind, [&] { return Book{path, Access::read}; });
}

} // namespace

TEST_CASE("a book is made once, in a folder made for it, and opened again") {
    data_tests::TemporaryFolder folder;
    const std::string path = (folder / "new/deeper/book.db").string();
    { (void)Book::create(path, k_stamp); }
    const std::string before = data_tests::read_file(path);
    CHECK(refusal(ErrorKind::conflict, [&] { return Book::create(path, k_stamp); }) ==
          "'" + path + "' exists already; a new book needs a new name");
    CHECK(data_tests::read_file(path) == before);
    const book::Info info = Book{path, Access::read}.info();
    CHECK(info.path == path);
    CHECK(info.layout == 1);
    CHECK(info.created_on == "2026-11-25");
    CHECK(info.events == 1);
    CHECK(info.joints + info.values + info.machines + info.sources == 0);
}

TEST_CASE("a book that could not be finished leaves nothing behind") {
    data_tests::TemporaryFolder folder;
    const std::string path = (folder / "book.db").string();
    CHECK(refusal(ErrorKind::conflict, [&] { return Book::create(path, {"Ann", "yesterday"}); }) != "accepted");
    CHECK(fs::is_empty(folder / "."));
}

TEST_CASE("what is no book is refused, and told apart") {
    data_tests::TemporaryFolder folder;
    const std::string path = (folder / "book.db").string();
    CHECK(opened(path, ErrorKind::invalid_data).starts_with("there is no book at '" + path + "'"));
    CHECK(opened((folder / ".").string(), ErrorKind::invalid_data).ends_with("is a folder; the book is a file"));
    std::ofstream{path}.close();
    CHECK(opened(path, ErrorKind::invalid_data).ends_with("is an empty file, not a book"));
    data_tests::write_file(path, std::string(5000, 'x'));
    CHECK(opened(path, ErrorKind::invalid_data) == "'" + path + "' is no book: it is not a database file");
    fs::remove(path);
    SQLite::Database{path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE}.exec("CREATE TABLE person (name TEXT)");
    CHECK(opened(path, ErrorKind::invalid_data) == "'" + path + "' is a database, but no book of clampbook");
}

TEST_CASE("a newer or unfinished layout is refused, with both numbers") {
    Shop shop;
    shop.raw().exec("PRAGMA user_version = 99");
    for (const Access access : {Access::read, Access::write}) {
        CHECK(refusal(ErrorKind::invalid_data, [&] {
                  return Book{shop.path, access};
              }) == "'" + shop.path + "' has layout 99, made by a newer clampbook; this one reads up to layout 1");
    }
    shop.raw().exec("PRAGMA user_version = 0");
    CHECK(opened(shop.path, ErrorKind::invalid_data).find("never finished") != std::string::npos);
    shop.raw().exec("PRAGMA user_version = 1");
    CHECK(Book(shop.path, Access::read).info().joints == 2);
}

TEST_CASE("a book opened for reading is not written") {
    Shop shop;
    Book reader{shop.path, Access::read};
    CHECK(refusal(ErrorKind::internal, [&] {
              return reader.add_machine({0, "M", "Y", "", "", "", ""}, k_stamp);
          }).find("read-only") != std::string::npos);
    CHECK(shop.book.machines().size() == 1);
}

TEST_CASE("a book beside which no file can be made is read as it stands, unless a part of it is elsewhere") {
    Shop shop;
    data_tests::TemporaryFolder other;
    const std::string path = (other / "book.db").string();
    shop.raw().exec("PRAGMA wal_checkpoint(TRUNCATE)");
    (void)shop.book.add_assembly({0, shop.machine, "told last", ""}, k_stamp);
    REQUIRE(fs::file_size(shop.path + "-wal") > 0); // where the last telling is
    fs::copy_file(shop.path, path);
    fs::copy_file(shop.path + "-wal", path + "-wal");
    // names that lead nowhere: what should stand there can be neither opened nor made, even by root
    fs::create_symlink(other / "none/x", path + "-shm");
    CHECK(opened(path, ErrorKind::internal) != "accepted");
    fs::remove(path);
    fs::remove(path + "-wal");
    shop.raw().exec("PRAGMA wal_checkpoint(TRUNCATE)");
    fs::copy_file(shop.path, path);
    fs::create_symlink(other / "none/x", path + "-wal");
    const Book book{path, Access::read};
    CHECK(book.values(shop.drain).size() == 1);
    CHECK(book.verify().empty());
}

TEST_CASE("verify is silent over a whole book and names a planted fault") {
    using Faults = std::vector<std::string>;
    CHECK(Shop{}.book.verify().empty());
    const auto without = [](const std::string& trigger, const std::string& on, const std::string& sql) {
        Faults faults = Shop{}.faults_after("DROP TRIGGER " + trigger + "; " + sql);
        REQUIRE(faults.size() == 2);
        CHECK(faults[0] == "a part of the layout is missing: CREATE TRIGGER " + trigger + on);
        return faults[1];
    };
    CHECK(without("step_is_kept", " BEFORE UPDATE ON step", "UPDATE step SET nominal = 40, high = 40") ==
          "value 1: its steps are not what '32 ± 3 N·m' says");
    CHECK(without("value_is_kept", " BEFORE UPDATE ON value", "UPDATE value SET as_written = '36 ± 3 N·m'") ==
          "value 1: its steps are not what '36 ± 3 N·m' says");
    CHECK(without("step_stays", " BEFORE DELETE ON step", "DELETE FROM step") ==
          "value 1: its steps are not what '32 ± 3 N·m' says");
    CHECK(without("value_is_kept", " BEFORE UPDATE ON value", "UPDATE value SET as_written = 'tight'")
              .starts_with("value 1: 'tight'"));
    CHECK(Shop{}.faults_after("DELETE FROM joint_words WHERE rowid = 2") == Faults{"joint 2: cannot be found by its words"});
    const Faults links = Shop{}.faults_after("PRAGMA foreign_keys = OFF; UPDATE joint SET assembly = 77 WHERE id = 2");
    REQUIRE(links.size() == 1);
    CHECK(links[0].starts_with("joint 2: points to a"));
    CHECK(Shop{}.faults_after("UPDATE joint SET name = 'filler', folded = 'filler' WHERE id = 2") ==
          Faults{"joint 2: cannot be found by its words"});
    CHECK(Shop{}.faults_after("UPDATE joint_words_content SET c1 = 'front axle' WHERE id = 2") ==
          Faults{"joint 2: cannot be found by its words", "the index of the search words is not what the words say"});
    CHECK(Shop{}.faults_after("DELETE FROM vocabulary WHERE word = 'rear'") ==
          Faults{"joint 1: cannot be found by the beginning of 'rear'", "joint 2: cannot be found by the beginning of 'rear'"});
    CHECK(Shop{}.faults_after("INSERT INTO vocabulary VALUES ('fil'), ('plug\" OR \"x')") ==
          Faults{"the word 'fil' is among the search words, and no joint has it",
                 "the word 'plug\" OR \"x' is among the search words, and no joint has it"});
    const std::string index_of =
        "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = 'CREATE INDEX value_of_joint ON value (";
    const std::string there = ")' WHERE name = 'value_of_joint'; PRAGMA writable_schema = RESET; ";
    const Faults index =
        Shop{}.faults_after(index_of + "label" + there + "REINDEX value_of_joint; " + index_of + "joint" + there);
    REQUIRE(!index.empty());
    CHECK(index[0].starts_with("the database file: "));
}

TEST_CASE("a backup holds the same, and takes no name that is there") {
    Shop shop;
    const std::string copy = (shop.folder / "copy.db").string();
    Book{shop.path, Access::read}.backup(copy);
    CHECK(content_of(copy) == content_of(shop.path));
    CHECK(SQLite::Database{copy}.execAndGet("PRAGMA journal_mode").getString() == "wal"); // readers beside a writer, as before
    const Book book{copy, Access::write};
    CHECK(book.verify().empty());
    CHECK(book.info().head == shop.book.info().head);
    const std::string before = data_tests::read_file(copy);
    CHECK(refusal(ErrorKind::conflict, [&] { return shop.book.backup(copy), 0; }) ==
          "'" + copy + "' exists already; a backup needs a new name");
    CHECK(data_tests::read_file(copy) == before);
    CHECK(refusal(ErrorKind::internal, [&] { return shop.book.backup((shop.folder / "none/copy.db").string()), 0; }) !=
          "accepted");
    CHECK_FALSE(fs::exists(copy + ".draft"));
}

TEST_CASE("a part that fails inside a transaction leaves what was written before it") {
    Shop shop;
    const auto before = shop.book.info();
    shop.book.in_one_go([&] {
        shop.book.add_machine({0, "m", "first", "", "", "", ""}, k_stamp);
        CHECK(refusal(ErrorKind::conflict, [&] {
                  shop.book.in_part([&] {
                      shop.book.add_machine({0, "m", "second", "", "", "", ""}, k_stamp);
                      shop.book.in_one_go([&] { shop.book.add_machine({0, "m", "third", "", "", "", ""}, k_stamp); });
                      shop.book.add_machine({0, "m", "first", "", "", "", ""}, k_stamp);
                  });
                  return 0;
              }) == "the machine 'first' is in the book already");
        shop.book.add_machine({0, "m", "fourth", "", "", "", ""}, k_stamp);
    });
    CHECK(shop.book.info().machines == before.machines + 2);
    CHECK(shop.book.info().events == before.events + 2);
    CHECK(shop.book.audit().empty());
    CHECK(shop.book.verify().empty());
}

TEST_CASE("a name with signs that mean something in an address is a name") {
    const data_tests::TemporaryFolder folder;
    const std::string path = (folder / "100 % sure? #2.db").string();
    {
        Book made = Book::create(path, k_stamp);
        made.publish((folder / "copy % ? #.db").string(), k_stamp);
    }
    CHECK(Book{path, Access::read}.verify().empty());
    CHECK(Book{(folder / "copy % ? #.db").string(), Access::read}.verify().empty());
}
