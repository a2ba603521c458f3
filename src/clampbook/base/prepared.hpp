// SPDX-License-Identifier: MIT
#pragma once

// Statements of a database that are prepared once and kept by their text for the next time: preparing one takes ten times as long
// as running it. This header knows no database; `Database` and `Statement` are those of the floor that uses it, where a statement
// is made from a database and a text. One shelf serves one thread. Not installed.

#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

namespace clampbook {

template <typename Database, typename Statement>
class PreparedShelf {
public:
    /// The database may be opened later; the shelf has to go before it.
    explicit PreparedShelf(const std::unique_ptr<Database>& db) : db_(db) {}

    /// The statements of one text that nobody uses just now. The reference stays good as long as the shelf.
    [[nodiscard]] std::vector<std::unique_ptr<Statement>>& free(std::string_view sql) {
        const auto found = free_.find(sql);
        return found == free_.end() ? free_[std::string{sql}] : found->second;
    }
    [[nodiscard]] std::unique_ptr<Statement> prepare(std::string_view sql) const {
        return std::make_unique<Statement>(*db_, std::string{sql});
    }

private:
    struct Hash {
        using is_transparent = void;
        std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>{}(text); }
    };
    const std::unique_ptr<Database>& db_;
    std::unordered_map<std::string, std::vector<std::unique_ptr<Statement>>, Hash, std::equal_to<>> free_;
};

/// One statement in use: nothing is bound yet. The same text may be in use several times at once.
template <typename Database, typename Statement>
class Prepared {
public:
    Prepared(PreparedShelf<Database, Statement>& shelf, std::string_view sql) : free_(shelf.free(sql)) {
        if (free_.empty()) {
            statement_ = shelf.prepare(sql);
        } else {
            statement_ = std::move(free_.back());
            free_.pop_back();
        }
    }
    ~Prepared() {
        // A fault of the last run was told when it happened; what cannot be kept is only prepared again.
        try {
            statement_->tryReset();
            statement_->clearBindings();
            free_.push_back(std::move(statement_));
        } catch (...) {
            statement_.reset();
        }
    }
    Prepared(const Prepared&) = delete;
    Prepared& operator=(const Prepared&) = delete;
    Prepared(Prepared&&) = delete;
    Prepared& operator=(Prepared&&) = delete;

    template <typename... Values>
    void bind(int place, Values&&... values) {
        statement_->bind(place, std::forward<Values>(values)...);
    }
    /// For a text that stays what it is until the statement has run.
    void bindNoCopy(int place, const std::string& text) { statement_->bindNoCopy(place, text); } // NOLINT: as below
    bool executeStep() { return statement_->executeStep(); } // NOLINT: named as in the library behind
    int exec() { return statement_->exec(); }
    void reset() { statement_->reset(); }
    [[nodiscard]] auto getColumn(int column) const { return statement_->getColumn(column); } // NOLINT: as above
    /// For what reads a row of any statement.
    operator Statement&() const { return *statement_; } // NOLINT

private:
    std::vector<std::unique_ptr<Statement>>& free_;
    std::unique_ptr<Statement> statement_;
};

} // namespace clampbook
