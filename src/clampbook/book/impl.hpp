// SPDX-License-Identifier: MIT
#pragma once

// What the sources of this floor share: the open file, the transaction, and the one place where the database library's
// faults become ours. Not installed.

#include "clampbook/base/error.hpp"
#include "clampbook/base/prepared.hpp"
#include "clampbook/book/book.hpp"

#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace SQLite {
class Database;
class Statement;
} // namespace SQLite

namespace clampbook::book {

/// 'Clbk' in the file's header.
inline constexpr int k_application_id = 0x436c626b;

using Statements = PreparedShelf<SQLite::Database, SQLite::Statement>;
using Query = Prepared<SQLite::Database, SQLite::Statement>;

/// What an event says, name and text.
using EventDetail = std::vector<std::pair<std::string_view, std::string>>;

/// Whether values are refused where their steps are not what their text says, or given as they stand, to be judged by the caller.
enum class Reading { strict, as_it_stands };

struct Book::Impl {
    std::string path;
    Access access = Access::read;
    std::unique_ptr<SQLite::Database> db;
    mutable Statements statements{db};
    bool in_transaction = false;
    bool can_weigh = false; ///< the connection knows the weighing of search.cpp
    /// Joints from here on were written in this transaction and their words are not entered yet; 0 where there are none. One after
    /// the other at its end, since any other write between two of them makes the index write out what it holds.
    RecordId first_unindexed = 0;
    /// The end of the chain of events as this transaction has it; read when it first appends one, kept in the book at its end.
    struct Chain {
        std::int64_t count = 0;
        std::string head;
    };
    std::optional<Chain> chain;
    /// Who was named last in this transaction; rows of one file mostly name a few people.
    std::vector<std::pair<std::string, RecordId>> people;
    std::optional<std::string> digest; ///< of a published copy, which is opened as immutable

    Impl() = default;
    ~Impl();
    Impl(const Impl&) = delete;
    Impl& operator=(const Impl&) = delete;
    Impl(Impl&&) = delete;
    Impl& operator=(Impl&&) = delete;
    /// Runs `body` in BEGIN IMMEDIATE … COMMIT, or as part of the transaction that is open already.
    void transact(const std::function<void()>& body);
    /// Copies the book as it is now into a file that isn't there yet.
    void copy_to(const std::string& draft) const;
    RecordId person(const std::string& name);
    /// Appends a line to the chain of events; detail is given as name and text pairs.
    void append_event(const Stamp& stamp, const std::string& kind, std::optional<RecordId> joint, std::optional<RecordId> value,
                      const EventDetail& detail);
    /// Writes the chain's count and head down.
    void keep_chain();
    /// Enters the words of every joint from `first_unindexed` on.
    void index_joints();
    [[nodiscard]] RecordId joint_of_value(RecordId value) const;
    /// The values of which a column (`v.joint`, `v.id`) has a number, in their order.
    [[nodiscard]] std::vector<Value> values_of(const char* column, RecordId id, Reading reading = Reading::strict) const;
    /// Events that a condition picks, in order; `number` is bound to its one question mark.
    [[nodiscard]] std::vector<Event> events_where(const char* condition, std::int64_t number) const;
};

/// The digest that a published copy ends with; none where the file is no such copy. Looks at its two ends alone. Throws
/// invalid_data where the copy isn't there whole.
[[nodiscard]] std::optional<std::string> published_digest(const std::string& path);
/// Makes the copy of a published copy a book that can be written again.
void make_ordinary(const std::string& draft);

/// The statements that lay a new book out, as they stand in schema/book.
[[nodiscard]] std::string_view schema_text();
/// Takes away from a file what it may not do to us: run code of its own, or fill the memory.
void restrain(SQLite::Database& db);
/// Throws invalid_data where the file has a table, index, view or trigger that isn't ours, naming it.
void require_layout(SQLite::Database& db, const std::string& path);
/// A sentence for each part of the layout that isn't there.
[[nodiscard]] std::vector<std::string> missing_parts(SQLite::Database& db);
/// A word as the index is asked for it, whatever it holds: words are letters and digits, but a file may come from anybody.
[[nodiscard]] std::string in_quotes(std::string_view word);
/// A sentence for each joint whose search words aren't what its record says, and for what is wrong with their index.
[[nodiscard]] std::vector<std::string> faults_of_words(SQLite::Database& db, Statements& statements);

/// Turns the fault being handled into an Error that names the book.
[[noreturn]] void rethrow_as_error(const std::string& path);

/// Runs what reads a record. What is wrong with its words is a fault of the book, not of whoever asks.
template <typename F>
auto reading_of(std::string_view what, RecordId id, F&& body) {
    try {
        return std::forward<F>(body)();
    } catch (const Error& fault) {
        throw error(ErrorKind::invalid_data, "{} {} of the book: {}", what, id, fault.what());
    }
}

template <typename F>
auto guarded(const std::string& path, F&& body) {
    try {
        return std::forward<F>(body)();
    } catch (const Error&) {
        throw;
    } catch (...) {
        rethrow_as_error(path);
    }
}

/// As guarded; says of what the disk refused that nothing came of it, where that is known.
void all_or_nothing(const std::string& path, const std::function<void()>& body);

/// Throws invalid_data where the text holds what nobody can type: control characters, or bytes that are no UTF-8.
[[nodiscard]] std::string text_at(const SQLite::Statement& query, int column);
[[nodiscard]] RecordId id_at(const SQLite::Statement& query, int column);

/// The hash before the first event.
inline constexpr std::string_view k_no_events = "0000000000000000000000000000000000000000000000000000000000000000";

/// What the steps of a value have that its text doesn't say; nothing where they are one.
[[nodiscard]] std::optional<std::string> fault_of_steps(const Value& value);

/// SHA-256 over one event's line and the hash before it, as 64 hexadecimal digits.
[[nodiscard]] std::string event_hash(const std::string& previous, std::int64_t seq, const Stamp& stamp, const std::string& kind,
                                     std::optional<RecordId> joint, std::optional<RecordId> value, const std::string& detail);

} // namespace clampbook::book
