// SPDX-License-Identifier: MIT
// All or nothing: what is told to the book in one go, in parts that may fail by themselves, and the faults of disk and database
// told in words.

#include "clampbook/book/impl.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>

#include <new>

namespace clampbook::book {

void rethrow_as_error(const std::string& path) {
    try {
        throw;
    } catch (const SQLite::Exception& fault) {
        switch (fault.getErrorCode()) {
        case SQLITE_NOMEM:
            throw std::bad_alloc{};
        case SQLITE_NOTADB:
            throw error(ErrorKind::invalid_data, "'{}' is no book: it is not a database file", path);
        case SQLITE_TOOBIG:
            throw error(ErrorKind::invalid_data, "'{}': a text is longer than a book keeps", path);
        case SQLITE_CORRUPT:
        case -1: // a row that every book has isn't there
        case SQLITE_FORMAT:
        case SQLITE_MISMATCH:
        case SQLITE_ERROR: // the layout is known to be ours: what its statements stumble over is what they read
            throw error(ErrorKind::invalid_data, "'{}' is damaged ({}); restore the last backup", path, fault.what());
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            throw error(ErrorKind::conflict, "'{}' is being written by another program; nothing was changed, try again", path);
        case SQLITE_FULL:
            throw error(ErrorKind::internal, "'{}': the disk is full", path);
        case SQLITE_READONLY:
            throw error(ErrorKind::internal, "'{}' cannot be written: the file or its disk is read-only", path);
        case SQLITE_CANTOPEN:
        case SQLITE_PERM:
        case SQLITE_AUTH:
            throw error(ErrorKind::internal, "'{}' cannot be opened here; check that the folder exists and may be written", path);
        case SQLITE_IOERR:
            throw error(ErrorKind::internal, "'{}': the disk failed ({})", path, sqlite3_errstr(fault.getExtendedErrorCode()));
        case SQLITE_CONSTRAINT:
            throw error(ErrorKind::conflict, "'{}' refused the record: {}", path, fault.what());
        default:
            throw error(ErrorKind::internal, "'{}': {}", path, fault.what());
        }
    } catch (const std::bad_alloc&) {
        throw; // no fault of the book
    } catch (const std::exception& fault) {
        throw error(ErrorKind::internal, "'{}': {}", path, fault.what());
    }
}

void all_or_nothing(const std::string& path, const std::function<void()>& body) {
    try {
        guarded(path, body);
    } catch (const Error& fault) {
        if (fault.kind() == ErrorKind::internal) {
            throw error(ErrorKind::internal, "{}; nothing was changed", fault.what());
        }
        throw;
    }
}

void Book::Impl::transact(const std::function<void()>& body) {
    if (in_transaction) {
        body();
        return;
    }
    all_or_nothing(path, [&] {
        Query{statements, "BEGIN IMMEDIATE"}.exec();
        in_transaction = true;
        const auto forget = [&] {
            in_transaction = false;
            first_unindexed = 0;
            chain.reset();
            people.clear();
        };
        try {
            body();
            index_joints();
            keep_chain();
            Query{statements, "COMMIT"}.exec();
            forget();
        } catch (...) {
            forget();
            // Some faults have rolled back already; only then is a second ROLLBACK an error, and it changes nothing.
            if (sqlite3_get_autocommit(db->getHandle()) == 0) {
                db->tryExec("ROLLBACK");
            }
            throw;
        }
    });
}

void Book::in_one_go(const std::function<void()>& body) {
    guarded(impl_->path, [&] { impl_->transact(body); });
}

void Book::in_part(const std::function<void()>& body) {
    guarded(impl_->path, [&] {
        if (!impl_->in_transaction) {
            impl_->transact(body);
            return;
        }
        const auto chain = impl_->chain;
        const RecordId first_unindexed = impl_->first_unindexed;
        Query{impl_->statements, "SAVEPOINT part"}.exec();
        try {
            body();
        } catch (...) {
            // Where the database has given the whole transaction up, there is no part of it to go back to.
            impl_->chain = chain;
            // What was indexed since then is not any more; a number from before, where there was one, reaches all that is left.
            impl_->first_unindexed = first_unindexed;
            impl_->people.clear();
            impl_->db->tryExec("ROLLBACK TO part");
            impl_->db->tryExec("RELEASE part");
            throw;
        }
        Query{impl_->statements, "RELEASE part"}.exec();
    });
}

} // namespace clampbook::book
