// SPDX-License-Identifier: MIT
#pragma once

// The case files of this folder and the bookkeeping over them: every row is read and counted, every figure compared is
// tallied by where it came from, and a difference that is known must still be there. What a family adds up to is one
// line of the README, which must hold it word for word.

#include "clampbook/exchange/csv.hpp"

#include <cstddef>
#include <deque>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace published {

/// Where a printed figure was read: in a document or a reproduction of it, recalled, or computed from a stated relation
/// (a regression value, no independent evidence).
enum class Origin { seen, memory, formula };

/// One row of a case file.
class Case {
public:
    Case(const clampbook::exchange::CsvTable& table, std::size_t row, std::string file);

    /// The text of a cell. Throws where the file has no such column.
    [[nodiscard]] const std::string& text(std::string_view column) const;
    /// The whole cell as a number; fails the test where it is none.
    [[nodiscard]] double number(std::string_view column) const;
    [[nodiscard]] bool has(std::string_view column) const { return !text(column).empty(); }
    /// The column `confidence`; it must be filled in every row.
    [[nodiscard]] Origin confidence() const;
    /// File and line.
    [[nodiscard]] std::string where() const;
    /// The column `known_difference`, `field: reason; field: reason`, by field.
    [[nodiscard]] const std::map<std::string, std::string, std::less<>>& known() const { return known_; }

private:
    const clampbook::exchange::CsvTable* table_;
    const clampbook::exchange::CsvRow* row_;
    std::string file_;
    std::map<std::string, std::string, std::less<>> known_;
};

/// Half a unit of the last digit that a number was printed with, and a hair for binary fractions. A whole number of more
/// than three digits counts as rounded to three where `three_digits` is set, as areas and loads are in ISO 898-1.
[[nodiscard]] double half_last_digit(std::string_view printed, bool three_digits = false);

/// The figures of one kind, compared within one tolerance.
class Tally {
public:
    Tally(std::string what, std::string unit, std::string allowed);

    /// Compares ours with a printed figure. A known difference of this row in `field` must differ by more than
    /// `tolerance` and by no more than `furthest`; every other figure must lie within `tolerance`. With the unit `%`
    /// the two limits are shares of the printed figure.
    void compare(const Case& row, std::string_view field, double ours, double printed, double tolerance, Origin origin,
                 double furthest);
    /// The same where no difference is known to any row.
    void compare(const Case& row, std::string_view field, double ours, double printed, double tolerance, Origin origin) {
        compare(row, field, ours, printed, tolerance, origin, tolerance);
    }
    /// A known difference that is no matter of size: `differs` must be so exactly where the row says so.
    void compare_flag(const Case& row, std::string_view field, bool differs, Origin origin);

    [[nodiscard]] std::string line(std::string_view family, std::size_t rows) const;
    [[nodiscard]] const std::string& what() const { return what_; }
    [[nodiscard]] const std::string& worst_at() const { return worst_at_; }
    [[nodiscard]] std::size_t figures() const { return seen_ + memory_ + formula_; }
    [[nodiscard]] const std::set<std::string>& met() const { return met_; }

private:
    void count(Origin origin);

    std::string what_;
    std::string unit_;
    std::string allowed_;
    std::size_t seen_ = 0;
    std::size_t memory_ = 0;
    std::size_t formula_ = 0;
    std::size_t known_ = 0;
    double worst_ = 0;
    double worst_known_ = 0;
    std::string worst_at_;
    std::set<std::string> met_; // the known differences found, as file:line: field
};

/// One case file with its tallies.
class Family {
public:
    /// Reads `<name>.csv` of this folder; fails the test unless it has `expected` rows.
    Family(std::string name, std::size_t expected);
    Family(const Family&) = delete; // its rows point into it
    Family& operator=(const Family&) = delete;
    ~Family() = default;

    [[nodiscard]] const std::vector<Case>& rows() const { return rows_; }
    /// `unit` is that of the deviations shown; `allowed` says the tolerance in words.
    [[nodiscard]] Tally& tally(std::string what, std::string unit, std::string allowed);
    /// Fails where a known difference of the file was never compared, where a tally is empty, or where the README
    /// shows other figures. Prints the lines of the README.
    void finish() const;

private:
    std::string name_;
    clampbook::exchange::CsvTable table_;
    std::vector<Case> rows_;
    std::deque<Tally> tallies_;
};

/// Prints a line of the README's table and fails the test where the README does not hold it.
void report(const std::string& line);

} // namespace published
