// SPDX-License-Identifier: MIT
#pragma once

// Quantities as people write them, and the table of all units that clampbook reads and prints. `32 N·m`, `32Nm`,
// `24 ft-lb`, `283 in. lbs`, `3,3 kgf·m`, `1 3/8 in` are read; what could mean two things is refused with both.

#include "clampbook/units/quantity.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace clampbook {

/// One unit of the table. `symbol` is how it is printed. canonical = (value - zero) * factor; the zero is another
/// number than 0 for temperatures alone, whose canonical unit is °C.
struct UnitInfo {
    Dimension dimension;
    std::string_view symbol;
    double factor;
    double zero;
    std::string_view spellings; ///< further spellings, folded and without separators, blank between them

    [[nodiscard]] double to_canonical(double value) const noexcept { return (value - zero) * factor; }
    [[nodiscard]] double from_canonical(double value) const noexcept { return value / factor + zero; }
};

/// A quantity that was read: the number and unit as written, and how many digits were written.
struct Reading {
    std::string text;     ///< as typed, white space at the ends taken off
    double value = 0;     ///< in `unit`
    const UnitInfo* unit; ///< an entry of the table; never null
    int significant = 1;
    bool is_signed = false;

    [[nodiscard]] double canonical() const noexcept { return unit->to_canonical(value); }
    template <Dimension D>
    [[nodiscard]] Quantity<D> as() const {
        return canonical() * Unit<D>{1.0};
    }
};

/// Every unit, in the order in which the workshop would list them.
[[nodiscard]] std::span<const UnitInfo> all_units() noexcept;

/// `torque`, `force`, ... with its article: "a torque".
[[nodiscard]] std::string_view dimension_name(Dimension dimension) noexcept;

/// The unit that JSON always uses: mm, mm², l, N, N·m, MPa, °, °C, 1/K, and no text for a number.
[[nodiscard]] const UnitInfo& canonical_unit(Dimension dimension);

/// The unit that `text` names. Throws usage where it names none, or where it names a mass for a force or torque
/// (`lb`, `kg`) or a gallon without saying whose; the message says what was read and what would be right.
[[nodiscard]] const UnitInfo& unit_named(std::string_view text);

/// Reads a whole quantity. Throws usage with what was read and what would be right: no number, no unit, a unit of
/// another dimension than `wanted`, a number that can be read two ways.
[[nodiscard]] Reading read_quantity(std::string_view text);
[[nodiscard]] Reading read_quantity(std::string_view text, Dimension wanted);

/// Reads one quantity after the other, as `read_quantity` does, and remembers how the last unit was written: in a long list it
/// mostly stays the same.
class QuantityReader {
public:
    struct Plain {
        std::string_view number; ///< as typed
        double value = 0;        ///< in `unit`
        const UnitInfo* unit = nullptr;
        int significant = 1;
    };
    [[nodiscard]] Plain read(std::string_view text);

private:
    std::string last_text_;
    const UnitInfo* last_ = nullptr;
};

/// The same number in another unit of the same dimension, at full double precision. Throws usage for another dimension.
[[nodiscard]] double convert(const Reading& reading, const UnitInfo& to);
/// `text` is what was typed, for the message.
[[nodiscard]] double convert(std::string_view text, double value, const UnitInfo& from, const UnitInfo& to);

/// `32.5 N·m`, `90°`: number and symbol with the blank that the unit wants.
[[nodiscard]] std::string with_unit(std::string_view number, const UnitInfo& unit);
/// The unit as it stands behind a number, at the end of `out`.
void append_unit(std::string& out, const UnitInfo& unit);

} // namespace clampbook
