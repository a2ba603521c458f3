// SPDX-License-Identifier: MIT
// A book file that somebody hands in, opened and asked as the commands do. Bytes that begin with "--" are lines of SQL, run on a
// copy of a small book first: that reaches rows, triggers and views which hardly any change of single bytes makes.

#include "scratch.hpp"
#include "targets.hpp"

#include "clampbook/answer/export.hpp"
#include "clampbook/answer/find.hpp"
#include "clampbook/answer/records.hpp"
#include "clampbook/answer/sheet.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/present/present.hpp"

#include <sqlite3.h>

#include <array>
#include <filesystem>
#include <sstream>

namespace fuzz {
namespace {

using namespace clampbook;

constexpr int k_steps = 20'000; // of the database's machine, for one statement

int stop(void* /*unused*/) { return 1; }

// Nothing but the book's own file, and no end of pragmas.
int allowed(void* /*unused*/, int action, const char* name, const char* /*unused*/, const char* /*unused*/,
            const char* /*unused*/) {
    if (action == SQLITE_ATTACH || action == SQLITE_DETACH) {
        return SQLITE_DENY;
    }
    if (action == SQLITE_PRAGMA) {
        const std::string_view pragma = name;
        return pragma == "writable_schema" || pragma == "user_version" || pragma == "ignore_check_constraints" ||
                       pragma == "foreign_keys" || pragma == "encoding"
                   ? SQLITE_OK
                   : SQLITE_DENY;
    }
    return SQLITE_OK;
}

void change(const std::string& path, std::string_view lines) {
    sqlite3* db = nullptr;
    require(sqlite3_open(path.c_str(), &db) == SQLITE_OK, "the small book opens");
    sqlite3_limit(db, SQLITE_LIMIT_LENGTH, 100'000);
    sqlite3_set_authorizer(db, allowed, nullptr);
    sqlite3_exec(db, "PRAGMA ignore_check_constraints = ON; PRAGMA writable_schema = ON", nullptr, nullptr, nullptr);
    for (const std::string& line : split(lines, '\n')) {
        sqlite3_progress_handler(db, k_steps, stop, nullptr);
        sqlite3_exec(db, line.c_str(), nullptr, nullptr, nullptr); // what it does not take, it does not take
    }
    sqlite3_exec(db, "COMMIT", nullptr, nullptr, nullptr);
    sqlite3_close(db);
}

template <typename F>
void ask(const char* what, F&& body) {
    std::string shown;
    const auto fault = refused([&] { shown = body(); });
    require(!fault || fault->kind() != ErrorKind::internal,
            std::string{what} + ": a damaged book is never an internal fault: " + (fault ? fault->what() : ""));
    require_shown(shown, what);
}

std::string lines(const std::vector<std::string>& all) { return join(all, "\n"); }

// One of the searches at a time: what they read of the curated tables takes longer than all other questions together.
void ask_all(const book::Book& book, std::size_t search) {
    ask("book info", [&] { return present::text(answer::book_info(book)) + present::json(answer::book_info(book)); });
    ask("book verify", [&] { return lines(book.verify()); });
    ask("audit", [&] { return lines(book.audit()); });
    ask("conflicts", [&] { return present::text(answer::conflicts(book)); });
    ask("find", [&] {
        constexpr std::array k_searches{"drain", "carrier M18x1.5", "nothing such"};
        const answer::FindAnswer found = answer::find(book, curated(), {k_searches.at(search % k_searches.size())});
        return present::text(found) + present::json(found);
    });
    ask("history", [&] {
        const book::Place place = answer::joint_named(book, curated(), "1");
        const answer::TableAnswer story = answer::history(book, place);
        return present::text(story) + present::json(story) + present::csv(story);
    });
    ask("joint list", [&] { return present::text(answer::joints(book, {})); });
    ask("source list", [&] { return present::text(answer::sources(book)); });
    ask("sheet", [&] {
        answer::SheetRequest request;
        request.date = k_stamp.date();
        request.since = "2";
        const answer::Sheet sheet = answer::sheet(book, curated(), request);
        return present::text(sheet) + present::json(sheet) + present::html(sheet) + present::csv(answer::sheet_table(sheet));
    });
    ask("export --csv", [&] {
        std::ostringstream out;
        answer::export_csv(book, out);
        return out.str();
    });
    ask("export --json", [&] {
        std::ostringstream out;
        answer::export_json(book, out);
        return out.str();
    });
}

} // namespace

void book(std::string_view bytes) {
    const std::string path = scratch("handed-in.db");
    if (bytes.starts_with("--")) {
        write_bytes(path, small_book());
        change(path, bytes);
    } else {
        write_bytes(path, bytes);
    }
    const auto opened = refused([&] { ask_all(book::Book{path, book::Access::read}, bytes.size()); });
    require(!opened || opened->kind() != ErrorKind::internal,
            std::string{"opening is never an internal fault: "} + (opened ? opened->what() : ""));
    taken() += opened ? 0U : 1U;
    std::error_code ignored;
    for (const char* end : {"", "-wal", "-shm", "-journal"}) {
        std::filesystem::remove(path + end, ignored);
    }
}

} // namespace fuzz
