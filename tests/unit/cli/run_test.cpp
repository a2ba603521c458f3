// SPDX-License-Identifier: MIT
// The command line as a function: arguments, streams, clock and environment in, exit code out. Each exit code of the
// table once, each way in which the world outside can fail.

#include "stage.hpp"

#include <catch2/catch.hpp>

#include <functional>
#include <optional>
#include <sstream>
#include <streambuf>

namespace {

using namespace clampbook;
using unit_tests::Stage;
using unit_tests::Words;

// Takes so many characters and no more.
class FullDisk : public std::streambuf {
public:
    explicit FullDisk(int room) : room_(room) {}

protected:
    int_type overflow(int_type c) override { return room_-- > 0 ? c : traits_type::eof(); }

private:
    int room_;
};

// One sentence on the side for faults, nothing on the side for answers.
void says(const Stage& stage, const std::string& sentence) {
    CHECK(stage.out.str().empty());
    CHECK(stage.err.str() == "clampbook: " + sentence + "\n");
}

} // namespace

TEST_CASE("exit 0: an answer on the one stream, nothing on the other") {
    Stage stage;
    CHECK(stage.run({"convert", "24", "lbf·ft", "--to", "N·m"}) == 0);
    CHECK(stage.out.str() == "24 lbf·ft = 32.5 N·m\n");
    CHECK(stage.err.str().empty());
    CHECK(stage.run({"derive", "M10", "8.8", "--nut-factor", "0.20", "--preload", "75%", "--json"}) == 0);
    CHECK(stage.out.str().starts_with("{\n  \"schema\": \"clampbook/derive/v1\","));
    CHECK(stage.err.str().empty());
    for (const Words& words : {Words{}, Words{"--help"}, Words{"help"}, Words{"-h"}}) {
        CHECK(stage.run(words) == 0);
        CHECK(stage.out.str().find("usage: clampbook COMMAND") != std::string::npos);
    }
    CHECK(stage.run({"--version"}) == 0);
    CHECK(stage.out.str().starts_with("clampbook "));
    CHECK(stage.run({"book", "new", "--help"}) == 0);
    CHECK(stage.out.str().find("--book") != std::string::npos);
}

TEST_CASE("exit 2: what was typed was not understood") {
    Stage stage;
    CHECK(stage.run({"convret", "24 lbf·ft"}) == 2);
    says(stage, "'convret' is no command (did you mean 'convert'?); see 'clampbook --help'");
    CHECK(stage.run({"--json"}) == 2);
    says(stage, "no command was given; see 'clampbook --help'");
    CHECK(stage.run({"convert", "24 lbs"}) == 2);
    CHECK(stage.out.str().empty());
    CHECK(stage.run({"convert", "24 N·m", "--unit", "lbf·ft"}) == 2);
    CHECK(stage.out.str().empty());
    CHECK(stage.err.str().find("--unit") != std::string::npos);
    CHECK(stage.err.str().ends_with("see 'clampbook convert --help'\n"));
    CHECK(stage.run({"derive", "M10", "8.8", "--torque", "5 N·m", "--preload", "10%"}) == 2);
    CHECK(stage.run({"list", "threads", "--json", "--csv"}) == 2);
    CHECK(stage.run({"convert", "24 \xff"}) == 2);
}

TEST_CASE("exit 3: nothing was found") {
    Stage stage;
    CHECK(stage.run({"thread", "M10x1.3"}) == 3);
    CHECK(stage.err.str().find("M10×1.25") != std::string::npos);
    CHECK(stage.run({"list", "thread_s"}) == 3);
    stage.furnish();
    CHECK(stage.run({"find", "quuxzz"}) == 3);
    says(stage, "nothing in the book fits 'quuxzz'");
    CHECK(stage.run({"find", "cover", "screws"}) == 3);
    CHECK(stage.out.str().find("clampbook derive M8 8.8") != std::string::npos);
    CHECK(stage.err.str() == "clampbook: no value is in the book for this joint\n");
}

TEST_CASE("exit 4: a book, file or stream is not what it should be") {
    Stage stage;
    CHECK(stage.run({"find", "drain"}) == 4);
    says(stage,
         "there is no book at '" + stage.path("book.db") + "'; make one with 'clampbook book new', or name another with --book");
    data_tests::write_file(stage.path("text.txt"), "a shopping list");
    CHECK(stage.run({"book", "info", "--book", stage.path("text.txt")}) == 4);
    CHECK(stage.run({"thread", "M10", "--reference", stage.path("text.txt")}) == 4);
    stage.in.str("24 lbf·ft\n# a remark\n\n32 quux\n10 N·m # behind it\n");
    CHECK(stage.run({"convert", "--batch", "--to", "N·m"}) == 4);
    CHECK(stage.out.str() == "24 lbf·ft = 32.5 N·m\n10 N·m = 10 N·m\n");
    CHECK(stage.err.str().starts_with("clampbook: line 4: "));
}

TEST_CASE("exit 5: outside the validity of the method") {
    Stage stage;
    CHECK(stage.run({"derive", "M10", "8.8", "--nut-factor", "0.6"}) == 5);
    says(stage, "a nut factor of 0.6 lies outside 0.05 to 0.50");
    CHECK(stage.run({"strength", "M42", "8.8"}) == 5);
    CHECK(stage.run({"strength", "G1/2", "8.8"}) == 5);
}

TEST_CASE("exit 6: it is there already") {
    Stage stage;
    stage.furnish();
    CHECK(stage.run({"book", "new"}) == 6);
    says(stage, "'" + stage.path("book.db") + "' exists already; a new book needs a new name");
    CHECK(stage.run({"machine", "add", "--maker", "Maker", "--model", "x"}) == 6);
    CHECK(stage.run({"enter", "20 N·m", "--joint", "cover screws", "--label", "shop"}) == 0);
    CHECK(stage.run({"enter", "20 N·m", "--joint", "cover screws", "--label", "shop"}) == 6);
    CHECK(stage.run({"find", "cover"}) == 0);
}

TEST_CASE("exit 1: an answer that cannot be written in full") {
    Stage stage;
    const std::string sentence = "the answer could not be written in full: its reader closed the pipe, or the disk is full; "
                                 "the command itself was carried out";
    std::ostringstream bad;
    bad.setstate(std::ios::badbit);
    CHECK(stage.run_to({"convert", "24 lbf·ft"}, bad) == 1);
    says(stage, sentence);
    FullDisk disk{100};
    std::ostream full{&disk};
    CHECK(stage.run_to({"list", "threads"}, full) == 1);
    says(stage, sentence);
    // what the command itself found wrong counts more
    std::ostringstream again;
    again.setstate(std::ios::badbit);
    CHECK(stage.run_to({"thread", "M10x1.3"}, again) == 3);
    // a stream that throws does not get through
    FullDisk none{0};
    std::ostream throws{&none};
    throws.exceptions(std::ios::badbit);
    int code = 0;
    CHECK_NOTHROW(code = stage.run_to({"convert", "24 lbf·ft"}, throws));
    CHECK(code == 1);
}

TEST_CASE("exit 1: a clock that fails, told in a sentence") {
    Stage stage;
    stage.clock = []() -> std::string { throw std::runtime_error{"the clock of this machine gives no time"}; };
    CHECK(stage.run({"book", "new"}) == 1);
    says(stage, "the clock of this machine gives no time");
    CHECK_FALSE(std::filesystem::exists(stage.path("book.db")));
}

TEST_CASE("who and when come from the clock, --by and CLAMPBOOK_BY") {
    Stage stage;
    stage.furnish();
    CHECK(stage.run({"enter", "20 N·m", "--joint", "cover screws", "--label", "shop", "--by", "Bob"}) == 0);
    CHECK(stage.out.str().find("entered by Bob on 2026-11-25\n") != std::string::npos);
    CHECK(stage.run({"history", "cover", "screws", "--csv"}) == 0);
    CHECK(stage.out.str().find(",2026-11-25T10:15:00Z,Ann,joint added,") != std::string::npos);
    CHECK(stage.out.str().find(",2026-11-25T10:15:00Z,Bob,value entered,") != std::string::npos);
    CHECK(stage.run({"enter", "21 N·m", "--joint", "cover screws", "--label", "shop", "--on", "2026-11-26"}) == 2);
    stage.variables.erase("CLAMPBOOK_BY");
    CHECK(stage.run({"enter", "21 N·m", "--joint", "cover screws", "--label", "shop"}) == 2);
    says(stage, "nobody is named; say who tells it with --by NAME or in CLAMPBOOK_BY");
    CHECK(stage.run({"enter", "21 N·m", "--joint", "cover screws", "--label", "shop", "--by", " "}) == 2);
}

TEST_CASE("the book is --book, else CLAMPBOOK_BOOK, else in the data folder, else under home") {
    Stage stage;
    stage.variables = {{"CLAMPBOOK_BY", "Ann"}};
    CHECK(stage.run({"book", "new"}) == 2);
    says(stage, "there is no home folder to look for the book in; name it with --book FILE or in CLAMPBOOK_BOOK");
    const auto made_at = [&](const std::string& at, Words words = {"book", "new"}) {
        INFO(at);
        CHECK(stage.run(words) == 0);
        CHECK(stage.out.str() == "a new book was made: " + stage.path(at) + "\n");
        CHECK(std::filesystem::exists(stage.path(at)));
    };
    stage.variables["HOME"] = stage.path("home");
    made_at("home/.local/share/clampbook/book.db");
    stage.variables["XDG_DATA_HOME"] = stage.path("data");
    made_at("data/clampbook/book.db");
    stage.variables["CLAMPBOOK_BOOK"] = stage.path("named.db");
    made_at("named.db");
    made_at("given.db", {"book", "new", "--book", stage.path("given.db")});
    made_at("before.db", {"--book", stage.path("before.db"), "book", "new"});
    made_at("placed.db", {"book", "new", stage.path("placed.db")});
}
