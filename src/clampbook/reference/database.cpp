// SPDX-License-Identifier: MIT
#include "clampbook/reference/content.hpp"
#include "clampbook/reference/impl.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>

#include <cstdint>
#include <filesystem>
#include <new>
#include <system_error>

// Put there by clampbook_embed in src/CMakeLists.txt.
extern "C" {
extern const unsigned char clampbook_reference_begin[];
extern const unsigned char clampbook_reference_end[];
}

namespace clampbook::reference {

Reference::Impl::~Impl() = default;

void rethrow_as_damage(const std::string& name) {
    try {
        throw;
    } catch (const SQLite::Exception& fault) {
        if (fault.getErrorCode() == SQLITE_NOMEM) {
            throw std::bad_alloc{};
        }
        throw error(ErrorKind::invalid_data, "{}: not a whole reference database ({})", name, fault.what());
    } catch (const std::bad_alloc&) {
        throw; // no fault of the file
    } catch (const std::exception& fault) {
        throw error(ErrorKind::internal, "{}: {}", name, fault.what());
    }
}

Citation citation_at(const SQLite::Statement& query, int first) {
    return {text_at(query, first), text_at(query, first + 1), text_at(query, first + 2), text_at(query, first + 3),
            text_at(query, first + 4)};
}

std::optional<double> number_at(const SQLite::Statement& query, int column) {
    const SQLite::Column cell = const_cast<SQLite::Statement&>(query).getColumn(column);
    return cell.isNull() ? std::nullopt : std::optional{cell.getDouble()};
}

std::string text_at(const SQLite::Statement& query, int column) {
    return const_cast<SQLite::Statement&>(query).getColumn(column).getString();
}

Reference::Reference() : impl_(std::make_unique<Impl>()) {
    impl_->name = "the embedded reference";
    guarded(impl_->name, [&] {
        impl_->db = std::make_unique<SQLite::Database>(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_NOMUTEX);
        const auto size = static_cast<sqlite3_int64>(clampbook_reference_end - clampbook_reference_begin);
        // Read-only, and not freed by the library: the cast gives nothing away.
        const int code =
            sqlite3_deserialize(impl_->db->getHandle(), "main", const_cast<unsigned char*>(clampbook_reference_begin), size, size,
                                SQLITE_DESERIALIZE_READONLY);
        if (code != SQLITE_OK) {
            throw error(ErrorKind::internal, "{} cannot be opened ({})", impl_->name, sqlite3_errstr(code));
        }
    });
}

Reference::Reference(const std::string& path) : impl_(std::make_unique<Impl>()) {
    impl_->name = path;
    std::error_code none;
    if (!std::filesystem::is_regular_file(path, none)) {
        throw error(ErrorKind::invalid_data, "'{}' is no file; a reference database is wanted there", path);
    }
    guarded(path, [&] {
        impl_->db = std::make_unique<SQLite::Database>(path, SQLite::OPEN_READONLY | SQLite::OPEN_NOMUTEX);
        sqlite3_db_config(impl_->db->getHandle(), SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
        if (impl_->db->execAndGet("SELECT count(*) FROM sqlite_schema WHERE name = 'metadata'").getInt() == 0) {
            throw error(ErrorKind::invalid_data, "'{}' is no reference database of clampbook", path);
        }
        const std::string layout = metadata("layout.major");
        if (layout != std::to_string(k_layout_major)) {
            throw error(ErrorKind::invalid_data, "'{}' has layout {}, this program reads layout {}", path, layout,
                        k_layout_major);
        }
        const auto pages = impl_->db->execAndGet("PRAGMA page_count").getInt64();
        const auto page = impl_->db->execAndGet("PRAGMA page_size").getInt64();
        if (static_cast<std::uintmax_t>(pages * page) != std::filesystem::file_size(path)) {
            throw error(ErrorKind::invalid_data, "'{}' is not whole: {} pages of {} bytes are expected", path, pages, page);
        }
        Query check{impl_->statements, "PRAGMA integrity_check(1)"};
        if (!check.executeStep() || check.getColumn(0).getString() != "ok") {
            throw error(ErrorKind::invalid_data, "'{}' is damaged: {}", path, check.getColumn(0).getString());
        }
    });
}

Reference::~Reference() = default;
Reference::Reference(Reference&&) noexcept = default;
Reference& Reference::operator=(Reference&&) noexcept = default;

std::string Reference::metadata(std::string_view key) const {
    return guarded(impl_->name, [&] {
        Query query{impl_->statements, "SELECT value FROM metadata WHERE key = ?"};
        query.bind(1, std::string{key});
        if (!query.executeStep()) {
            throw error(ErrorKind::invalid_data, "{}: its metadata lack '{}'", impl_->name, key);
        }
        return query.getColumn(0).getString();
    });
}

std::string Reference::content_hash() const {
    return guarded(impl_->name, [&] { return reference::content_hash(*impl_->db); });
}

} // namespace clampbook::reference
