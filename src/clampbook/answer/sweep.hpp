// SPDX-License-Identifier: MIT
#pragma once

// One question asked over and over: `derive`, `scatter` and `strip` for each combination of the ranges and lists that stand in a request,
// as one table or as a wall chart. Each row is what the single answer says; nothing is computed here.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/answer/pages.hpp"
#include "clampbook/answer/records.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace clampbook::answer {

struct Sweep {
    TableAnswer table;
    std::string heading;               ///< "Generic tightening"
    std::string holds_for;             ///< what is the same in all rows: "friction 0.12, 90 % of the yield strength"
    std::vector<std::string> left_out; ///< combinations that have no row, and why: they stand in the table's notes too
    std::vector<std::size_t> varied;   ///< columns of the inputs that vary, outermost first
    struct Cell {
        std::size_t figure = 0; ///< columns
        std::size_t under = 0;
    };
    std::optional<Cell> cell; ///< what stands in a matrix, where one is worth reading
};

/// Lists may be threads, property classes and conditions; ranges the nut factor, preload, torque, friction and utilisation. Nothing where
/// the request holds neither. A combination that the method does not allow, or whose size is not kept, is left out and told in the notes;
/// where none is left, its error is thrown. Throws usage at once, also for more than `k_combinations_max` combinations.
[[nodiscard]] std::optional<Sweep> derive_sweep(const reference::Reference& reference, const DeriveRequest& request);

/// The same; ranges may be torque, nut factor and the tool's deviation. Friction stays a band.
[[nodiscard]] std::optional<Sweep> scatter_sweep(const reference::Reference& reference, const ScatterRequest& request);

/// The same; lists may be housings too, ranges engagement and friction.
[[nodiscard]] std::optional<Sweep> strip_sweep(const reference::Reference& reference, const StripRequest& request);

/// The table as a page for the wall: a matrix where two inputs vary and a cell is known, else its rows.
[[nodiscard]] Pages wall_chart(const Sweep& sweep, std::string date);

} // namespace clampbook::answer
