// SPDX-License-Identifier: MIT
// Books made by somebody who means harm: each is refused with exit code 4 and a sentence, or answered as what it is. Nothing of
// theirs runs, no signal ends the program, reading leaves the file as it is, no control character reaches a terminal, and
// whoever merges one keeps a whole book.

#include "in_child.hpp"
#include "writing.hpp"

#include "clampbook/base/text.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <catch2/catch.hpp>

#include <iostream>

namespace {

using namespace fault_tests;

struct Hostile {
    std::string name;
    std::string sql;     ///< run on the small shop's book by nobody's program
    std::string refusal; ///< words of the sentence with which every question is refused; empty: some may be answered
};

// A table's statement replaced behind SQLite's back, the sql between run under it, and the statement put back: `theirs` must stand in
// it only once.
std::string under(const std::string& table, const std::string& ours, const std::string& theirs, const std::string& sql) {
    const auto swap = [&](const std::string& from, const std::string& to) {
        return "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace(sql, '" + from + "', '" + to +
               "') WHERE name = '" + table + "'; PRAGMA writable_schema = RESET; ";
    };
    return swap(ours, theirs) + (sql.empty() ? "" : sql + "; " + swap(theirs, ours));
}

// Constraints and types looked away from.
std::string loosely(const std::string& table, const std::string& sql) {
    return "PRAGMA foreign_keys = OFF; PRAGMA ignore_check_constraints = ON; " + under(table, "\n) STRICT", "\n)", sql);
}

const std::vector<Hostile>& hostile_books() {
    static const std::string drop =
        "DROP TRIGGER value_is_kept; DROP TRIGGER step_is_kept; DROP TRIGGER event_is_kept; "
        "DROP TRIGGER value_end_is_not_replaced; DROP TRIGGER person_is_kept; DROP TRIGGER source_is_kept; ";
    static const std::vector<Hostile> all{
        // what would run
        {"a trigger", "CREATE TRIGGER evil AFTER INSERT ON value BEGIN DELETE FROM joint_words; END", "'evil' in it is not ours"},
        {"a trigger instead of ours",
         "DROP TRIGGER value_stays; CREATE TRIGGER value_stays BEFORE DELETE ON value BEGIN SELECT 1; END",
         "'value_stays' in it is not ours"},
        {"a view in a table's place",
         "ALTER TABLE step RENAME TO step_of_old; CREATE VIEW step AS SELECT value, position, kind, 2 * nominal AS nominal, low, "
         "2 * high "
         "AS high, unit, significant FROM step_of_old",
         "in it is not ours"},
        {"a virtual table", "CREATE VIRTUAL TABLE evil USING fts5 (x)", "in it is not ours"},
        {"a table that shadows", "CREATE TABLE joint_words_evil (x)", "'joint_words_evil' in it is not ours"},
        {"an index over an expression", "CREATE INDEX evil ON joint (hex(zeroblob(100)))", "'evil' in it is not ours"},
        {"a name with an escape in it", "CREATE TABLE \"evil\x1b[2J\" (x)", "something in it is not ours"},
        {"a generated column",
         under("joint", "folded TEXT NOT NULL,", "folded TEXT NOT NULL, evil TEXT AS (hex(zeroblob(1000000))),", ""),
         "'joint' in it is not ours"},
        {"a default that fills the memory",
         under("joint", "note TEXT NOT NULL DEFAULT ''''", "note TEXT NOT NULL DEFAULT (hex(zeroblob(400000000)))", ""),
         "'joint' in it is not ours"},
        {"a check that fills the memory", under("person", "length(name) > 0", "length(hex(zeroblob(400000000))) > 0", ""),
         "'person' in it is not ours"},
        {"no strict types", under("joint", ") STRICT", ")", ""), "'joint' in it is not ours"},
        {"statistics", "ANALYZE", "'sqlite_stat1' in it is not ours"},
        {"a statement that does not read", under("joint", "CREATE TABLE", "CREATE TALBE", ""), "is damaged"},
        // what it says of itself
        {"another application", "PRAGMA application_id = 7", "is a database, but no book of clampbook"},
        {"a layout below nothing", "PRAGMA user_version = -5", "has layout -5"},
        {"a layout of the far future", "PRAGMA user_version = 2147483647", "has layout 2147483647, made by a newer clampbook"},
        {"nothing known of its events", "DELETE FROM book_info", ""},
        {"events that cannot be counted", "UPDATE book_info SET value = 'many'", ""},
        {"more events than numbers", "UPDATE book_info SET value = '9223372036854775807' WHERE key = 'event.count'", ""},
        // texts
        {"a text of ten megabytes", "UPDATE machine SET note = hex(zeroblob(5000000))", ""},
        {"a name of ten megabytes", "UPDATE joint SET name = hex(zeroblob(5000000)), folded = 'x' WHERE id = 1", ""},
        {"a figure of ten megabytes", drop + "UPDATE value SET as_written = hex(zeroblob(5000000))", ""},
        {"a name just short enough", "UPDATE joint SET name = hex(zeroblob(400000)), folded = 'x' WHERE id = 1", ""},
        {"an escape in a name", "UPDATE machine SET model = 'X' || char(27) || '[31m'", ""},
        {"an escape in a note", "UPDATE joint SET note = char(27) || ']0;evil' || char(7)", ""},
        {"an escape of one byte", "UPDATE joint SET note = char(155) || '31m'", ""},
        {"an escape in a figure", drop + "UPDATE value SET as_written = '24 N·m' || char(27)", ""},
        {"a person with a line end", drop + "UPDATE person SET name = 'Ann' || char(10) || 'Bob'", ""},
        {"a source that ends early", drop + "UPDATE source SET title = 'man' || char(0) || 'ual'", ""},
        {"bytes that are no text", "UPDATE joint SET name = cast(x'ff41c3' AS TEXT) WHERE id = 1", ""},
        {"an order for the shell", "UPDATE joint SET thread = '$(touch evil)', housing = '`touch evil`'", ""},
        {"nothing where a name was", loosely("joint", "UPDATE joint SET name = '' WHERE id = 1"), ""},
        // wrong types, ranges and numbers
        {"words where numbers were",
         loosely("joint", "UPDATE joint SET count = 'many', safety_critical = 'perhaps', engagement_mm = 'deep'"), ""},
        {"bytes where words were", loosely("joint", "UPDATE joint SET name = x'00ff00', role = x'646f6f72'"), ""},
        {"a role that is none", loosely("joint", "UPDATE joint SET role = 'evil'"), ""},
        {"a ring that is none", "UPDATE joint SET ring = 'evil'", ""},
        {"a class, a housing and a form that are none",
         "UPDATE joint SET property_class = 'evil', housing = 'evil', form = 'evil'", ""},
        {"a count beyond counting", loosely("joint", "UPDATE joint SET count = 9223372036854775807"), ""},
        {"an endless engagement", loosely("joint", "UPDATE joint SET engagement_mm = 9e999"), ""},
        {"an engagement below nothing", loosely("joint", "UPDATE joint SET engagement_mm = -9e999"), ""},
        {"an endless figure", drop + "UPDATE step SET nominal = 9e999, high = 9e999", ""},
        {"a figure that is none",
         "PRAGMA ignore_check_constraints = ON; " + drop +
             "UPDATE step SET nominal = 9e999 - 9e999 WHERE 0; UPDATE step SET low = -9e999",
         ""},
        {"digits beyond counting", drop + "PRAGMA ignore_check_constraints = ON; UPDATE step SET significant = 1099511627777",
         ""},
        {"steps beyond counting",
         drop + "WITH RECURSIVE n(i) AS (SELECT 2 UNION ALL SELECT i + 1 FROM n WHERE i < 50000) INSERT INTO step "
                "SELECT 1, i, 'torque', 1, 1, 1, 'N·m', 1 FROM n",
         ""},
        {"a label that is none", drop + "PRAGMA ignore_check_constraints = ON; UPDATE value SET label = 'evil'", ""},
        {"a unit that is none", drop + "UPDATE step SET unit = 'evil'", ""},
        {"the last number of all",
         "PRAGMA foreign_keys = OFF; " + drop + "UPDATE value SET id = 9223372036854775807 WHERE id = 1", ""},
        {"numbers below nothing", "PRAGMA foreign_keys = OFF; " + drop + "UPDATE joint SET id = -id; UPDATE machine SET id = -id",
         ""},
        // what points to what
        {"a value superseded by itself", "INSERT INTO value_end VALUES (1, 'superseded', 1, 'evil', 1, '2026-01-01')", ""},
        {"values superseded in a ring",
         "INSERT INTO value_end VALUES (1, 'superseded', 2, 'evil', 1, '2026-01-01'), (2, 'superseded', 1, 'evil', 1, "
         "'2026-01-01')",
         ""},
        {"a value superseded by nobody",
         "PRAGMA foreign_keys = OFF; INSERT INTO value_end VALUES (1, 'superseded', 77, 'evil', 1, '2026-01-01')", ""},
        {"a standing that is none",
         "PRAGMA ignore_check_constraints = ON; INSERT INTO value_end VALUES (1, 'evil', NULL, 'evil', 1, '2026-01-01')", ""},
        {"a joint of no assembly", "PRAGMA foreign_keys = OFF; UPDATE joint SET assembly = 77", ""},
        {"a value of nobody", "PRAGMA foreign_keys = OFF; " + drop + "UPDATE value SET entered_by = 77", ""},
        // events
        {"an event that is no JSON", drop + "UPDATE event SET detail = '{evil}' WHERE seq = 7", ""},
        {"an event nested deep", drop + "UPDATE event SET detail = '{\"a\":' || replace(hex(zeroblob(2000)), '0', '[') || '}'",
         ""},
        {"an event with an escape", drop + "UPDATE event SET detail = '{\"as_written\":\"\\u001b[31m\"}' WHERE seq = 7", ""},
        {"an event of a kind with an escape", drop + "UPDATE event SET kind = char(27) || 'c'", ""},
        {"an event of the last number", drop + "UPDATE event SET seq = 9223372036854775807 WHERE seq = 9", ""},
        // the search words
        {"words of another format", "UPDATE joint_words_config SET v = 99", ""},
        {"words without an index", "DELETE FROM joint_words_data", ""},
        {"an index of noise", "UPDATE joint_words_data SET block = randomblob(4000)", ""},
        {"a word index as long as allowed", "UPDATE joint_words_data SET block = zeroblob(900000)", ""},
        {"words that rank by an order of theirs", "INSERT INTO joint_words_config VALUES ('rank', 'evil()')", "answered"},
        {"words of joints that are none", "INSERT INTO joint_words (rowid, joint) VALUES (77, 'plug')", ""},
        {"words to begin with that are questions",
         "INSERT INTO vocabulary VALUES ('plug\" OR joint : \"a'), ('plugs\"'), ('plug*')", ""},
        {"words to begin with without end", "UPDATE vocabulary SET word = word || hex(zeroblob(400000))", ""},
        {"no words to begin with", "DELETE FROM vocabulary", ""},
        // harmless, and to be answered
        {"another log", "PRAGMA journal_mode = DELETE", "answered"},
        {"other pages", "PRAGMA journal_mode = DELETE; PRAGMA page_size = 512; VACUUM", "answered"},
    };
    return all;
}

const std::vector<Words> k_questions{
    {"find", "plug"},
    {"find", "cover", "screws", "--json"},
    {"history", "1"},
    {"history", "2", "--json"},
    {"export", "--json"},
    {"export", "--csv"},
    {"sheet"},
    {"sheet", "--csv"},
    {"book", "info"},
    {"machine", "list"},
    {"machine", "show", "X"},
    {"joint", "list"},
    {"joint", "show", "1"},
    {"source", "list"},
    {"source", "show", "1"},
    {"assembly", "list", "--machine", "X"},
    {"conflicts"},
    {"audit"},
    {"book", "verify"},
    {"sheet", "--html", "{}/sheet.html"},
};
const std::vector<Words> k_orders{
    {"enter", "25 N·m", "--joint", "cover screws", "--label", "shop", "--confirm", "counted"},
    {"check", "1", "24 N·m", "--by", "Cid"},
    {"withdraw", "1", "--reason", "misread"},
    {"supersede", "2", "31 N·m", "--reason", "misread", "--confirm", "counted"},
    {"machine", "add", "--maker", "Maker", "--model", "Z"},
    {"assembly", "add", "pump", "--machine", "X"},
    {"joint", "add", "level plug", "--machine", "X", "--assembly", "box", "--role", "level"},
    {"import", "{}/rows.csv"},
    {"import", "{}/export.json"},
    {"book", "backup", "{}/copy.db"},
};

std::string joined(const Words& words) { return clampbook::join(words, " "); }

// Lines end; nothing else that is no letter may be in what is shown.
bool is_clean(const std::string& shown) {
    return clampbook::is_utf8(shown) && std::ranges::none_of(clampbook::split(shown, '\n'), clampbook::has_control);
}

// What is wrong with an exit, or nothing. `codes` are those that are allowed.
std::string wrong(const Shop& shop, const Words& words, int code, const std::vector<int>& codes) {
    if (std::ranges::find(codes, code) == codes.end()) {
        return "'" + joined(words) + "' exits with " + std::to_string(code) + ": " + shop.said().substr(0, 300);
    }
    if (!is_clean(shop.said()) || !is_clean(shop.answered())) {
        return "'" + joined(words) + "' lets a control character through";
    }
    return {};
}

std::string met(Shop& shop, const Hostile& hostile, const std::string& sound) {
    const std::string bytes = data_tests::read_file(shop.path("book.db"));
    const bool refused = !hostile.refusal.empty() && hostile.refusal != "answered";
    int refusals = 0;
    for (const Words& words : k_questions) {
        const int code = shop.run(words);
        const auto codes = refused                         ? std::vector<int>{4}
                           : hostile.refusal == "answered" ? std::vector<int>{0}
                                                           : std::vector<int>{0, 3, 4};
        if (const std::string what = wrong(shop, words, code, codes); !what.empty()) {
            return what;
        }
        if (refused && shop.said().find(hostile.refusal) == std::string::npos) {
            return "'" + joined(words) + "' says: " + shop.said();
        }
        if (hostile.refusal.empty() && shop.said().find("malformed database schema") != std::string::npos) {
            return "the book was not made as meant: " + shop.said();
        }
        refusals += code == 4 ? 1 : 0;
    }
    if (data_tests::read_file(shop.path("book.db")) != bytes) {
        return "reading changed the file";
    }
    // Taken into a sound book.
    std::ofstream{shop.path("sound.db"), std::ios::binary} << sound;
    for (const Words& words : {Words{"merge", "{}/book.db", "--apply", "--book", "{}/sound.db"},
                               Words{"book", "verify", "--book", "{}/sound.db"}, Words{"audit", "--book", "{}/sound.db"}}) {
        const int code = shop.run(words);
        const auto codes = words.front() == "merge" ? std::vector<int>{0, 4, 6} : std::vector<int>{0};
        if (const std::string what = wrong(shop, words, code, codes); !what.empty()) {
            return what;
        }
    }
    for (const Words& words : k_orders) {
        const int code = shop.run(words);
        if (const std::string what = wrong(shop, words, code, refused ? std::vector<int>{4} : std::vector<int>{0, 3, 4, 5, 6});
            !what.empty()) {
            return what;
        }
    }
    return refused ? "refused" : hostile.refusal == "answered" ? "answered" : refusals > 0 ? "refused in part" : "not noticed";
}

} // namespace

TEST_CASE("a hostile book is refused, or answered as what it is") {
    Shop shop;
    std::map<std::string, int> tally;
    for (const Hostile& hostile : hostile_books()) {
        INFO(hostile.name);
        shop.put_back();
        const std::string sound = shop.at_first().at("other.db");
        try {
            SQLite::Database{shop.path("book.db"), SQLite::OPEN_READWRITE}.exec(hostile.sql);
        } catch (const SQLite::Exception& fault) {
            // What breaks the layout is told on the way back from it.
            if (hostile.refusal != "is damaged") {
                FAIL_CHECK("cannot be made: " << fault.what());
            }
        }
        CHECK(shop.files().at("book.db") != shop.at_first().at("book.db"));
        const std::string how = in_child([&] { return met(shop, hostile, sound); });
        ++tally[how];
        CHECK((how == "refused" || how == "refused in part" || how == "answered") == true);
        if (how != "refused" && how != "refused in part" && how != "answered") {
            std::cout << hostile.name << ": " << how << std::endl;
        }
        CHECK_FALSE(fs::exists("evil"));
    }
    std::cout << hostile_books().size() << " hostile books: " << tally["refused"] << " refused, " << tally["refused in part"]
              << " refused where they were asked for it, " << tally["answered"] << " harmless ones answered" << std::endl;
}
