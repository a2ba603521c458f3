// SPDX-License-Identifier: MIT
// Reading of case files and counting of what was compared.
#include "cases.hpp"

#include "clampbook/base/text.hpp"

#include <catch2/catch.hpp>
#include <fmt/core.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fstream>
#include <iostream>
#include <string>
#include <utility>

namespace published {
namespace {

std::string folder() { return std::string{CLAMPBOOK_SOURCE_DIR} + "/tests/published/"; }

std::string shown(double value, const std::string& unit) {
    if (value == 0 || (unit != "%" && value < 1e-9)) {
        return "0";
    }
    if (unit == "%" && value < 1e-12) {
        return "under 1e-12 of the figure"; // rounding noise, whose digits hang on the compiler
    }
    const double number = unit == "%" ? value * 100 : value;
    const std::string text = number < 100 ? fmt::format("{:.2g}", number) : fmt::format("{:.0f}", number);
    return unit.empty() ? text : text + " " + unit;
}

} // namespace

Case::Case(const clampbook::exchange::CsvTable& table, std::size_t row, std::string file)
    : table_(&table), row_(&table.rows.at(row)), file_(std::move(file)) {
    for (const std::string& part : clampbook::split(text("known_difference"), ';')) {
        const std::string_view item = clampbook::trim(part);
        if (item.empty()) {
            continue;
        }
        const std::size_t colon = item.find(':');
        INFO(where() << ": known_difference: " << item);
        REQUIRE(colon != std::string_view::npos);
        REQUIRE(colon + 2 < item.size());
        known_.emplace(item.substr(0, colon), clampbook::trim(item.substr(colon + 1)));
    }
    static_cast<void>(confidence());
    INFO(where() << ": no source");
    REQUIRE(has("source"));
}

const std::string& Case::text(std::string_view column) const { return row_->cells.at(table_->header.at(column, file_)); }

double Case::number(std::string_view column) const {
    const std::string& cell = text(column);
    double value = 0;
    const auto [end, fault] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    INFO(where() << ": " << column << ": '" << cell << "' is no number");
    REQUIRE(fault == std::errc{});
    REQUIRE(end == cell.data() + cell.size());
    return value;
}

Origin Case::confidence() const {
    const std::string& word = text("confidence");
    INFO(where() << ": confidence: " << word);
    REQUIRE((word == "seen" || word == "memory" || word == "formula"));
    return word == "seen" ? Origin::seen : word == "memory" ? Origin::memory : Origin::formula;
}

std::string Case::where() const { return fmt::format("{}:{}", file_, row_->line); }

double half_last_digit(std::string_view printed, bool three_digits) {
    const std::size_t point = printed.find('.');
    if (point != std::string_view::npos) {
        return 0.5 * std::pow(10.0, -static_cast<double>(printed.size() - point - 1)) + 1e-9;
    }
    if (three_digits && printed.size() > 3) {
        return 0.5 * std::pow(10.0, static_cast<double>(printed.size() - 3)) + 1e-9;
    }
    return 0.5 + 1e-9;
}

Tally::Tally(std::string what, std::string unit, std::string allowed)
    : what_(std::move(what)), unit_(std::move(unit)), allowed_(std::move(allowed)) {}

void Tally::count(Origin origin) {
    switch (origin) {
    case Origin::seen:
        ++seen_;
        return;
    case Origin::memory:
        ++memory_;
        return;
    case Origin::formula:
        ++formula_;
        return;
    }
}

void Tally::compare(const Case& row, std::string_view field, double ours, double printed, double tolerance, Origin origin,
                    double furthest) {
    const double apart = std::fabs(ours - printed) / (unit_ == "%" ? std::fabs(printed) : 1.0);
    INFO(row.where() << ": " << field << ": ours " << ours << ", printed " << printed << ", apart " << apart << " " << unit_);
    REQUIRE(std::isfinite(apart));
    count(origin);
    if (const auto known = row.known().find(field); known != row.known().end()) {
        INFO("known difference (" << known->second << ") that is gone, or that has grown: limits " << tolerance << " and "
                                  << furthest);
        CHECK(apart > tolerance);
        CHECK(apart <= furthest);
        ++known_;
        met_.insert(row.where() + ": " + known->first);
        worst_known_ = std::max(worst_known_, apart);
        return;
    }
    CHECK(apart <= tolerance);
    if (apart > worst_) {
        worst_ = apart;
        worst_at_ = fmt::format("{}: {}: ours {:.8g}, printed {:.8g}", row.where(), field, ours, printed);
    }
}

void Tally::compare_flag(const Case& row, std::string_view field, bool differs, Origin origin) {
    const auto known = row.known().find(field);
    INFO(row.where() << ": " << field << ": " << (differs ? "differs" : "agrees"));
    CHECK(differs == (known != row.known().end()));
    count(origin);
    if (known != row.known().end()) {
        ++known_;
        met_.insert(row.where() + ": " + known->first);
    }
}

std::string Tally::line(std::string_view family, std::size_t rows) const {
    const std::string difference =
        worst_known_ > 0 ? fmt::format("{} (at most {})", known_, shown(worst_known_, unit_)) : fmt::format("{}", known_);
    return fmt::format("| {} | {} | {} | {} | {} | {} | {} | {} | {} | {} |", family, what_, rows, seen_, memory_, formula_,
                       figures() - known_, difference, shown(worst_, unit_), allowed_);
}

Family::Family(std::string name, std::size_t expected) : name_(std::move(name)) {
    const std::string file = name_ + ".csv";
    std::ifstream in{folder() + file, std::ios::binary};
    INFO(folder() + file);
    REQUIRE(in.is_open());
    table_ = clampbook::exchange::read_csv(in, file);
    REQUIRE(table_.rows.size() == expected);
    for (std::size_t i = 0; i < table_.rows.size(); ++i) {
        rows_.emplace_back(table_, i, file);
    }
}

Tally& Family::tally(std::string what, std::string unit, std::string allowed) {
    return tallies_.emplace_back(std::move(what), std::move(unit), std::move(allowed));
}

void Family::finish() const {
    std::set<std::string> met;
    for (const Tally& tally : tallies_) {
        INFO(name_ << ": " << tally.what());
        CHECK(tally.figures() > 0);
        met.insert(tally.met().begin(), tally.met().end());
        report(tally.line(name_, rows_.size()));
        if (!tally.worst_at().empty()) {
            std::cout << "    worst at " << tally.worst_at() << '\n';
        }
    }
    for (const Case& row : rows_) {
        for (const auto& [field, reason] : row.known()) {
            INFO(row.where() << ": the known difference in '" << field << "' (" << reason << ") was never compared");
            CHECK(met.contains(row.where() + ": " + field));
        }
    }
}

void report(const std::string& line) {
    std::cout << line << '\n';
    std::ifstream in{folder() + "README.md", std::ios::binary};
    REQUIRE(in.is_open());
    bool found = false;
    for (std::string held; !found && std::getline(in, held);) {
        found = held == line;
    }
    INFO("tests/published/README.md does not hold this line:\n" << line);
    CHECK(found);
}

} // namespace published
