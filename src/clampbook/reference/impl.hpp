// SPDX-License-Identifier: MIT
#pragma once

// What the sources of this floor share and nobody else sees: the open database and the guard that turns a fault of the
// database library into ours. Not installed.

#include "clampbook/base/error.hpp"
#include "clampbook/base/prepared.hpp"
#include "clampbook/reference/reference.hpp"

#include <memory>
#include <optional>
#include <string>
#include <utility>

// Forward declarations to keep the database library's headers out of every header of ours.
namespace SQLite {
class Column;
class Database;
class Statement;
} // namespace SQLite

namespace clampbook::reference {

/// The layout that this reader understands. They change together with schema/reference/000_core.sql.
inline constexpr int k_layout_major = 1;
inline constexpr int k_layout_minor = 1;

using Statements = PreparedShelf<SQLite::Database, SQLite::Statement>;
using Query = Prepared<SQLite::Database, SQLite::Statement>;

struct Reference::Impl {
    std::string name; ///< for messages
    std::unique_ptr<SQLite::Database> db;
    mutable Statements statements{db};

    Impl() = default;
    ~Impl();
    Impl(const Impl&) = delete;
    Impl& operator=(const Impl&) = delete;
    Impl(Impl&&) = delete;
    Impl& operator=(Impl&&) = delete;
};

/// Runs a query; what the database library throws becomes invalid_data naming the database.
[[noreturn]] void rethrow_as_damage(const std::string& name);

template <typename F>
auto guarded(const std::string& name, F&& body) {
    try {
        return std::forward<F>(body)();
    } catch (const Error&) {
        throw;
    } catch (...) {
        rethrow_as_damage(name);
    }
}

/// The SELECT list and join that every lookup ends with, and the citation read from its last five columns.
inline constexpr const char* k_citation_columns =
    "s.code, coalesce(s.number || CASE WHEN s.edition IS NULL THEN '' ELSE ':' || s.edition END, "
    "s.title || CASE WHEN s.edition IS NULL THEN '' ELSE ' (' || s.edition || ')' END), t.place, t.basis, t.keyed";
[[nodiscard]] Citation citation_at(const SQLite::Statement& query, int first);

[[nodiscard]] std::optional<double> number_at(const SQLite::Statement& query, int column);
[[nodiscard]] std::string text_at(const SQLite::Statement& query, int column);

} // namespace clampbook::reference
