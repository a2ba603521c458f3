// SPDX-License-Identifier: MIT
// The book as a file: made, opened, copied.

#include "clampbook/base/file.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/book/impl.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>
#include <unistd.h>

#include <filesystem>
#include <system_error>

// Put there by clampbook_embed in src/CMakeLists.txt.
extern "C" {
extern const char clampbook_book_schema_begin[];
extern const char clampbook_book_schema_end[];
}

namespace clampbook::book {
namespace {

namespace fs = std::filesystem;

constexpr int k_busy_ms = 10'000;

void prepare(SQLite::Database& db, Access access) {
    restrain(db);
    db.setBusyTimeout(k_busy_ms);
    db.exec("PRAGMA foreign_keys = ON");
    if (access == Access::write) {
        db.exec("PRAGMA synchronous = FULL");
        db.exec("PRAGMA cache_size = -16000"); // so that a long import seldom writes a page twice
    } else {
        db.exec("PRAGMA cache_size = -500"); // a lookup reads little twice, and the system keeps that
    }
}

std::string uri_of(const std::string& path, std::string_view options) {
    std::string out = "file:";
    for (const char c : path) {
        if (c == '%' || c == '?' || c == '#') {
            out += fmt::format("%{:02X}", static_cast<unsigned>(static_cast<unsigned char>(c)));
        } else {
            out += c;
        }
    }
    return out + "?" + std::string{options};
}

void first_look(SQLite::Database& db) { (void)db.execAndGet("SELECT count(*) FROM sqlite_schema").getInt(); }

// Of a file that nobody changes: without a lock, and without files beside it.
std::unique_ptr<SQLite::Database> open_immutable(const std::string& path) {
    auto db = std::make_unique<SQLite::Database>(uri_of(path, "mode=ro&immutable=1"),
                                                 SQLite::OPEN_READONLY | SQLite::OPEN_URI | SQLite::OPEN_NOMUTEX);
    prepare(*db, Access::read);
    first_look(*db);
    return db;
}

std::unique_ptr<SQLite::Database> open_beside_others(const std::string& path) {
    auto db = std::make_unique<SQLite::Database>(path, SQLite::OPEN_READONLY | SQLite::OPEN_NOMUTEX);
    prepare(*db, Access::read);
    first_look(*db);
    return db;
}

std::unique_ptr<SQLite::Database> open_read(const std::string& path) {
    try {
        return open_beside_others(path);
    } catch (const SQLite::Exception& fault) {
        if (fault.getExtendedErrorCode() == SQLITE_READONLY_ROLLBACK) {
            // Its making was cut short. Whoever may write undoes what is there of it, and then it says what it is.
            SQLite::Database made{path, SQLite::OPEN_READWRITE};
            first_look(made);
            return open_beside_others(path);
        }
        // On a read-only disk the files beside the book cannot be made. Where none of them holds anything, the book
        // itself is all there is, and nobody can change it.
        const int code = fault.getErrorCode();
        std::error_code none;
        const auto waiting = fs::file_size(path + "-wal", none);
        const bool alone = static_cast<bool>(none) || waiting == 0;
        if ((code == SQLITE_CANTOPEN || code == SQLITE_READONLY || code == SQLITE_IOERR) && alone) {
            return open_immutable(path);
        }
        throw;
    }
}

void require_book(SQLite::Database& db, const std::string& path, bool published) {
    const int application = db.execAndGet("PRAGMA application_id").getInt();
    const int layout = db.execAndGet("PRAGMA user_version").getInt();
    if (application != k_application_id && !published) {
        throw error(ErrorKind::invalid_data, "'{}' is a database, but no book of clampbook", path);
    }
    if (layout > k_layout) {
        throw error(ErrorKind::invalid_data, "'{}' has layout {}, made by a newer clampbook; this one reads up to layout {}",
                    path, layout, k_layout);
    }
    if (layout < 0) {
        throw error(ErrorKind::invalid_data, "'{}' has layout {}, which no clampbook made", path, layout);
    }
    if (layout == 0) {
        throw error(ErrorKind::invalid_data, "'{}' is a book that was never finished; make it anew with 'clampbook book new'",
                    path);
    }
    require_layout(db, path);
}

// Readers and a writer beside each other want a write-ahead log. It stays with the file.
void set_log(SQLite::Database& db) {
    if (db.execAndGet("PRAGMA journal_mode = WAL").getString() != "wal") {
        throw error(ErrorKind::internal, "'{}' cannot have a log beside it on this disk", db.getFilename());
    }
}

void remove_database(const std::string& path) {
    std::error_code none;
    for (const char* end : {"", "-wal", "-shm", "-journal"}) {
        fs::remove(path + end, none);
    }
}

// Has a book made under the name of a draft, and puts it in its place when it is whole and closed. A draft that an earlier
// run left behind is no hindrance, and none is left behind here.
void in_draft(const std::string& path, const std::function<void(const std::string&)>& make) {
    const std::string draft = path + ".draft";
    remove_database(draft);
    try {
        make(draft);
        put_in_place(draft, path);
    } catch (...) {
        remove_database(draft);
        throw;
    }
    remove_database(draft);
}

} // namespace

Book::Impl::~Impl() = default;

void expect_one_thread() noexcept {
    (void)sqlite3_config(SQLITE_CONFIG_SINGLETHREAD); // refused where it comes too late, which does no harm
    (void)sqlite3_config(SQLITE_CONFIG_MEMSTATUS, 0);
}

std::string_view schema_text() { return {clampbook_book_schema_begin, clampbook_book_schema_end}; }

Book::Book(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
Book::~Book() = default;
Book::Book(Book&&) noexcept = default;
Book& Book::operator=(Book&&) noexcept = default;

Book Book::create(const std::string& path, const Stamp& stamp) {
    if (fs::exists(fs::symlink_status(path))) {
        throw error(ErrorKind::conflict, "'{}' exists already; a new book needs a new name", path);
    }
    std::error_code problem;
    const fs::path folder = fs::path{path}.parent_path();
    if (!folder.empty() && !fs::is_directory(folder) && (fs::create_directories(folder, problem), problem)) {
        throw error(ErrorKind::internal, "the folder '{}' cannot be made: {}", folder.string(), problem.message());
    }
    auto impl = std::make_unique<Impl>();
    impl->path = path;
    impl->access = Access::write;
    try {
        guarded(path, [&] {
            impl->db =
                std::make_unique<SQLite::Database>(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE | SQLite::OPEN_NOMUTEX);
            impl->db->exec(fmt::format("PRAGMA application_id = {}", k_application_id));
            set_log(*impl->db);
            prepare(*impl->db, Access::write);
            impl->transact([&] {
                impl->db->exec(std::string{schema_text()});
                impl->db->exec(fmt::format("PRAGMA user_version = {}", k_layout));
                SQLite::Statement insert{*impl->db,
                                         "INSERT INTO book_info (key, value) VALUES ('event.count', '0'), ('event.head', ?)"};
                insert.bind(1, std::string{k_no_events});
                insert.exec();
                impl->append_event(stamp, "book made", std::nullopt, std::nullopt, {{"layout", std::to_string(k_layout)}});
            });
        });
    } catch (...) {
        // A book that could not be finished leaves nothing behind.
        impl.reset();
        remove_database(path);
        throw;
    }
    return Book{std::move(impl)};
}

void Book::create_whole(const std::string& path, const Stamp& stamp, const std::function<void(Book&)>& fill) {
    if (fs::exists(fs::symlink_status(path))) {
        throw error(ErrorKind::conflict, "'{}' exists already; a new book needs a new name", path);
    }
    in_draft(path, [&](const std::string& draft) {
        Book book = create(draft, stamp);
        fill(book);
        // The file alone gets the name: nothing of it may be left in the log, as it may be when the last one closes it.
        guarded(path, [&] { book.impl_->db->exec("PRAGMA wal_checkpoint(TRUNCATE)"); });
    });
}

Book::Book(const std::string& path, Access access) : impl_(std::make_unique<Impl>()) {
    std::error_code problem;
    const fs::file_status status = fs::status(path, problem);
    if (status.type() == fs::file_type::not_found) {
        throw error(ErrorKind::invalid_data,
                    "there is no book at '{}'; make one with 'clampbook book new', or name another with --book", path);
    }
    if (status.type() == fs::file_type::directory) {
        throw error(ErrorKind::invalid_data, "'{}' is a folder; the book is a file", path);
    }
    if (status.type() != fs::file_type::regular) {
        throw error(ErrorKind::invalid_data, "'{}' is no ordinary file; the book is one", path);
    }
    if (fs::file_size(path, problem) == 0) {
        throw error(ErrorKind::invalid_data, "'{}' is an empty file, not a book", path);
    }
    if (::access(path.c_str(), R_OK) != 0) {
        throw error(ErrorKind::invalid_data, "'{}' cannot be read: the file may not be opened", path);
    }
    impl_->path = path;
    impl_->access = access;
    const auto open = [&] {
        impl_->digest = published_digest(path);
        if (impl_->digest) {
            // Again where another was put in its place meanwhile.
            for (auto before = impl_->digest; !impl_->db || impl_->digest != before; impl_->digest = published_digest(path)) {
                before = impl_->digest;
                impl_->db = open_immutable(path);
            }
        } else if (access == Access::read) {
            impl_->db = open_read(path);
        } else {
            impl_->db = std::make_unique<SQLite::Database>(path, SQLite::OPEN_READWRITE | SQLite::OPEN_NOMUTEX);
            prepare(*impl_->db, access);
        }
        require_book(*impl_->db, path, impl_->digest.has_value());
    };
    access == Access::read ? guarded(path, open) : all_or_nothing(path, open);
    if (impl_->digest && access == Access::write) {
        const Publication copy = *publication();
        throw error(ErrorKind::conflict,
                    "'{}' is a published copy, which is never changed: tell it to the book '{}' that {} published it from, and "
                    "publish that again",
                    path, copy.from, copy.by);
    }
}

void Book::Impl::copy_to(const std::string& draft) const {
    SQLite::Statement copy{*db, "VACUUM INTO ?"};
    copy.bind(1, draft);
    copy.exec();
}

void Book::backup(const std::string& path) const {
    if (fs::exists(fs::symlink_status(path))) {
        throw error(ErrorKind::conflict, "'{}' exists already; a backup needs a new name", path);
    }
    in_draft(path, [&](const std::string& draft) {
        guarded(path, [&] {
            impl_->copy_to(draft);
            if (impl_->digest) {
                make_ordinary(draft);
            }
            // A copy begins with a log of the other kind, under which writers would keep readers waiting.
            set_log(*std::make_unique<SQLite::Database>(draft, SQLite::OPEN_READWRITE));
        });
    });
}

std::string text_at(const SQLite::Statement& query, int column) {
    std::string text = const_cast<SQLite::Statement&>(query).getColumn(column).getString();
    if (has_control(text) || !is_utf8(text)) {
        throw error(ErrorKind::invalid_data,
                    "the book holds a text that nobody can have typed; 'clampbook book verify' looks it over");
    }
    return text;
}

RecordId id_at(const SQLite::Statement& query, int column) {
    return const_cast<SQLite::Statement&>(query).getColumn(column).getInt64();
}

} // namespace clampbook::book
