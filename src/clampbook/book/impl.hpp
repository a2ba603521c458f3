// SPDX-License-Identifier: MIT
#pragma once

// What the sources of this floor share: the open file, the transaction, and the one place where the database library's
// faults become ours. Not installed.

#include "clampbook/base/error.hpp"
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
/// The number of the last file in schema/book.
inline constexpr int k_layout = 1;

/// What an event says, name and text.
using EventDetail = std::vector<std::pair<std::string_view, std::string>>;

struct Book::Impl {
    std::string path;
    Access access = Access::read;
    std::unique_ptr<SQLite::Database> db;
    bool in_transaction = false;

    Impl() = default;
    ~Impl();
    Impl(const Impl&) = delete;
    Impl& operator=(const Impl&) = delete;
    Impl(Impl&&) = delete;
    Impl& operator=(Impl&&) = delete;
    /// Runs `body` in BEGIN IMMEDIATE … COMMIT, or as part of the transaction that is open already.
    void transact(const std::function<void()>& body);
    RecordId person(const std::string& name);
    /// Appends a line to the chain of events; detail is given as name and text pairs.
    void append_event(const Stamp& stamp, const std::string& kind, std::optional<RecordId> joint, std::optional<RecordId> value,
                      const EventDetail& detail);
    void index_joint(RecordId joint);
    [[nodiscard]] RecordId joint_of_value(RecordId value) const;
    /// Events that a condition picks, in order; `number` is bound to its one question mark.
    [[nodiscard]] std::vector<Event> events_where(const char* condition, std::int64_t number) const;
};

/// Whether values are refused where their steps are not what their text says, or given as they stand, to be judged by the caller.
enum class Reading { strict, as_it_stands };

/// The values of which a column (`v.joint`, `v.id`) has a number, in their order; prepared once, asked often.
class ValueQuery {
public:
    ValueQuery(SQLite::Database& db, const char* column, Reading reading = Reading::strict);
    ~ValueQuery();
    ValueQuery(const ValueQuery&) = delete;
    ValueQuery& operator=(const ValueQuery&) = delete;
    [[nodiscard]] std::vector<Value> of(RecordId id);

private:
    std::unique_ptr<SQLite::Statement> values_;
    std::unique_ptr<SQLite::Statement> steps_;
    Reading reading_;
};

/// The statements that lay a new book out, as they stand in schema/book.
[[nodiscard]] std::string_view schema_text();
/// Takes away from a file what it may not do to us: run code of its own, or fill the memory.
void restrain(SQLite::Database& db);
/// Throws invalid_data where the file has a table, index, view or trigger that isn't ours, naming it.
void require_layout(SQLite::Database& db, const std::string& path);
/// A sentence for each part of the layout that isn't there.
[[nodiscard]] std::vector<std::string> missing_parts(SQLite::Database& db);
/// A sentence for each joint whose search words aren't what its record says, and for what is wrong with their index.
[[nodiscard]] std::vector<std::string> faults_of_words(SQLite::Database& db);

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
