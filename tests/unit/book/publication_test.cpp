// SPDX-License-Identifier: MIT
// Published copies: what they hold and say, that nothing is ever written to or beside them, and that one which is damaged, cut
// short or something else is told.

#include "shop.hpp"

#include <catch2/catch.hpp>

namespace {

using namespace unit_tests;
using data_tests::read_file;
using data_tests::write_file;

constexpr std::size_t k_line = 65; // the digest and its line feed

struct Published : Shop {
    std::string copy = (folder / "bay.db").string();
    Published() { book.publish(copy, {"Lead", "2026-11-26T08:00:00Z"}); }

    // The copy with other bytes, put in its place as a file sync would.
    void replace(const std::string& bytes) const {
        fs::remove(copy);
        write_file(copy, bytes);
    }
    [[nodiscard]] std::string opened() const {
        return refusal(ErrorKind::invalid_data, [&] { return Book{copy, Access::read}; });
    }
};

std::size_t files_in(const data_tests::TemporaryFolder& folder, const std::string& name) {
    return static_cast<std::size_t>(
        std::count_if(fs::directory_iterator{folder / "."}, {},
                      [&](const fs::directory_entry& entry) { return entry.path().filename().string().starts_with(name); }));
}

} // namespace

TEST_CASE("a published copy holds what the book held, and says when, by whom and from where") {
    Published shop;
    const std::string head = shop.book.info().head;
    shop.book.add_machine({0, "m", "told later", "", "", "", ""}, k_stamp);
    const Book copy{shop.copy, Access::read};
    const auto said = copy.publication();
    REQUIRE(said.has_value());
    CHECK(said->at == "2026-11-26T08:00:00Z");
    CHECK(said->by == "Lead");
    CHECK(said->from == shop.path);
    CHECK(said->revision == 6);
    CHECK(copy.info().events == 6);
    CHECK(copy.info().head == head);
    CHECK(copy.machines().size() == 1);
    CHECK(copy.values(shop.drain).at(0).tightening.as_written == "32 ± 3 N·m");
    CHECK(copy.verify().empty());
    CHECK(copy.audit().empty());
    CHECK_FALSE(copy.publication_fault());
    CHECK(said->digest + "\n" == read_file(shop.copy).substr(read_file(shop.copy).size() - k_line));
    CHECK_FALSE(shop.book.publication());
    CHECK_FALSE(shop.book.publication_fault());
}

TEST_CASE("a published copy needs no log, no lock and no file beside it") {
    Published shop;
    const std::string bytes = read_file(shop.copy);
    CHECK(bytes.substr(18, 2) == std::string("\1\1")); // file format versions: a rollback journal, no WAL
    CHECK(fs::status(shop.copy).permissions() == fs::perms{0444});
    const Book copy{shop.copy, Access::read};
    (void)copy.search({{{"drain"}, {}, {}, {}}}, 5);
    CHECK(files_in(shop.folder, "bay.db") == 1);
    CHECK(read_file(shop.copy) == bytes);
}

TEST_CASE("a published copy is never written, and says where to") {
    Published shop;
    const std::string bytes = read_file(shop.copy);
    CHECK(refusal(ErrorKind::conflict,
                  [&] {
                      return Book{shop.copy, Access::write};
                  }) == "'" + shop.copy + "' is a published copy, which is never changed: tell it to the book '" + shop.path +
                            "' that Lead published it from, and publish that again");
    CHECK(refusal(ErrorKind::conflict, [&] {
              Book{shop.copy, Access::read}.publish((shop.folder / "again.db").string(), k_stamp);
              return 0;
          }).starts_with("'" + shop.copy + "' is a published copy itself"));
    CHECK(refusal(ErrorKind::internal, [&] {
              return Book{shop.copy, Access::read}.add_machine({0, "M", "Y", "", "", "", ""}, k_stamp);
          }).find("read-only") != std::string::npos);
    CHECK(read_file(shop.copy) == bytes);
    CHECK(files_in(shop.folder, "again.db") == 0);
}

TEST_CASE("a newer copy takes the place of an older one, which its readers keep, and of nothing else") {
    Published shop;
    const Book old{shop.copy, Access::read};
    shop.book.add_machine({0, "m", "told later", "", "", "", ""}, k_stamp);
    shop.book.publish(shop.copy, k_stamp);
    CHECK(old.machines().size() == 1);
    CHECK(Book(shop.copy, Access::read).machines().size() == 2);
    // A link is followed.
    const std::string link = (shop.folder / "link.db").string();
    fs::create_symlink("bay.db", link);
    shop.book.add_machine({0, "m", "told last", "", "", "", ""}, k_stamp);
    shop.book.publish(link, k_stamp);
    CHECK(fs::is_symlink(link));
    CHECK(Book(shop.copy, Access::read).machines().size() == 3);

    const std::string other = (shop.folder / "other.db").string();
    write_file(other, "notes");
    for (const std::string& taken : {shop.path, other, (shop.folder / ".").string()}) {
        CHECK(refusal(ErrorKind::conflict, [&] { return shop.book.publish(taken, k_stamp).digest; }) ==
              "'" + taken + "' exists already and is no published copy; only an older one is replaced");
    }
    CHECK(read_file(other) == "notes");
    CHECK(refusal(ErrorKind::internal,
                  [&] { return shop.book.publish((shop.folder / "none/bay.db").string(), k_stamp).digest; }) != "accepted");
    CHECK(files_in(shop.folder, "") == 6); // the book, its two companions, the copy, the link, the notes
}

TEST_CASE("a copy that was cut short, or has more than was published, is refused when it is opened") {
    Published shop;
    const std::string whole = read_file(shop.copy);
    const std::string bytes = std::to_string(whole.size());
    for (const std::size_t left : {std::size_t{100}, std::size_t{4096}, whole.size() - k_line, whole.size() - 1}) {
        shop.replace(whole.substr(0, left));
        CHECK(shop.opened().starts_with("'" + shop.copy + "' is a published copy that has not come over whole (" +
                                        std::to_string(left) + " bytes instead of " + bytes));
    }
    shop.replace(whole + "\n");
    CHECK(shop.opened().find("not come over whole") != std::string::npos);
    shop.replace(whole.substr(0, whole.size() - k_line) + std::string(k_line, '\0')); // room that was set aside
    CHECK(shop.opened().find("no digest at its end") != std::string::npos);
    shop.replace(whole);
    CHECK(shop.opened() == "accepted");
    // A copy that came over by half is an older copy like another.
    shop.replace(whole.substr(0, 5000));
    shop.book.publish(shop.copy, k_stamp);
    CHECK(Book(shop.copy, Access::read).verify().empty());
}

TEST_CASE("a byte that is not what was published is told by verify, audit and the digest") {
    Published shop;
    const std::string whole = read_file(shop.copy);
    const auto with_byte = [&](std::size_t at) {
        std::string bent = whole;
        bent[at] = static_cast<char>(bent[at] ^ 1);
        return bent;
    };
    // In a cell, in room that no record takes (an empty page end), and in the digest itself.
    const std::size_t cell = whole.find("drain plug");
    const std::size_t room = whole.find(std::string(64, '\0'), 4096);
    REQUIRE(cell != std::string::npos);
    REQUIRE(room != std::string::npos);
    for (const std::size_t at : {cell, room, whole.size() - k_line}) {
        std::string bent = with_byte(at);
        if (at == whole.size() - k_line) {
            bent[at] = whole[at] == '0' ? '1' : '0';
        }
        shop.replace(bent);
        const Book copy{shop.copy, Access::read};
        REQUIRE(copy.publication_fault());
        CHECK(copy.publication_fault()->starts_with("the published copy is not what was published: its digest is "));
        CHECK(copy.verify() == std::vector{*copy.publication_fault()});
        CHECK(copy.audit() == std::vector{*copy.publication_fault()});
    }
}

TEST_CASE("a backup of a published copy is a book that can be written again") {
    Published shop;
    const std::string again = (shop.folder / "again.db").string();
    Book{shop.copy, Access::read}.backup(again);
    CHECK(content_of(again) == content_of(shop.path));
    Book book{again, Access::write};
    CHECK_FALSE(book.publication());
    book.add_machine({0, "m", "goes on", "", "", "", ""}, k_stamp);
    CHECK(book.verify().empty());
    CHECK(book.audit().empty());
}
