// SPDX-License-Identifier: MIT
#pragma once

// Rows whose inputs differ from kind to kind: one cell `d_mm=12; P_mm=1.75`, the unit in each name.

#include "cases.hpp"

#include "clampbook/base/text.hpp"

#include <catch2/catch.hpp>

#include <charconv>
#include <map>
#include <string>
#include <string_view>

namespace published {

class Inputs {
public:
    explicit Inputs(const Case& row) : where_(row.where()) {
        for (const std::string& part : clampbook::split(row.text("inputs"), ';')) {
            const std::string_view item = clampbook::trim(part);
            const std::size_t equals = item.find('=');
            INFO(where_ << ": " << item);
            REQUIRE(equals != std::string_view::npos);
            texts_.emplace(item.substr(0, equals), item.substr(equals + 1));
        }
    }

    [[nodiscard]] const std::string& text(std::string_view name) const {
        const auto found = texts_.find(name);
        INFO(where_ << ": no input " << name);
        REQUIRE(found != texts_.end());
        return found->second;
    }
    [[nodiscard]] double number(std::string_view name) const { return read(text(name)); }
    /// `1|2|3`
    [[nodiscard]] std::vector<double> numbers(std::string_view name) const {
        std::vector<double> out;
        for (const std::string& part : clampbook::split(text(name), '|')) {
            out.push_back(read(part));
        }
        return out;
    }

private:
    [[nodiscard]] double read(const std::string& cell) const {
        double value = 0;
        const auto [end, fault] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
        INFO(where_ << ": '" << cell << "' is no number");
        REQUIRE(fault == std::errc{});
        REQUIRE(end == cell.data() + cell.size());
        return value;
    }

    std::string where_;
    std::map<std::string, std::string, std::less<>> texts_;
};

} // namespace published
