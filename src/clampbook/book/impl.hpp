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

/// The values of which a column (`v.joint`, `v.id`) has a number, in their order; prepared once, asked often.
class ValueQuery {
public:
    ValueQuery(SQLite::Database& db, const char* column);
    ~ValueQuery();
    ValueQuery(const ValueQuery&) = delete;
    ValueQuery& operator=(const ValueQuery&) = delete;
    [[nodiscard]] std::vector<Value> of(RecordId id);

private:
    std::unique_ptr<SQLite::Statement> values_;
    std::unique_ptr<SQLite::Statement> steps_;
};

/// Turns the fault being handled into an Error that names the book.
[[noreturn]] void rethrow_as_error(const std::string& path);

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
