// SPDX-License-Identifier: MIT
#pragma once

// Quantities as types. A torque cannot be added to a force, and no number becomes a quantity without a named unit:
// `32.0 * newton_metre`. Torque is not energy: there is no joule here. Products that the trade uses (stress × area,
// force × length) give the right type; everything else does not compile.

#include "clampbook/units/constants.hpp"

#include <compare>

namespace clampbook {

/// Stable names; the order is free. `number` is a bare figure or ratio, `expansion` a change of length per kelvin.
enum class Dimension { number, length, area, volume, force, torque, stress, angle, temperature, expansion };

template <Dimension D>
class Quantity;

/// A unit of one dimension: how many canonical units (mm, mm², l, N, N·m, MPa, °, 1) it is.
template <Dimension D>
struct Unit {
    double factor;
};

template <Dimension D>
class Quantity {
public:
    constexpr Quantity() = default;

    [[nodiscard]] constexpr double in(Unit<D> unit) const noexcept { return value_ / unit.factor; }

    [[nodiscard]] static constexpr Quantity of(double n, Unit<D> unit) noexcept { return Quantity{n * unit.factor}; }

    friend constexpr Quantity operator*(double n, Quantity q) noexcept { return Quantity{n * q.value_}; }
    friend constexpr Quantity operator*(Quantity q, double n) noexcept { return Quantity{n * q.value_}; }
    friend constexpr Quantity operator/(Quantity q, double n) noexcept { return Quantity{q.value_ / n}; }
    friend constexpr double operator/(Quantity a, Quantity b) noexcept { return a.value_ / b.value_; }
    friend constexpr Quantity operator+(Quantity a, Quantity b) noexcept { return Quantity{a.value_ + b.value_}; }
    friend constexpr Quantity operator-(Quantity a, Quantity b) noexcept { return Quantity{a.value_ - b.value_}; }
    friend constexpr auto operator<=>(Quantity a, Quantity b) noexcept = default;

private:
    constexpr explicit Quantity(double value) noexcept : value_(value) {}
    double value_ = 0; // in the canonical unit
};

template <Dimension D>
[[nodiscard]] constexpr Quantity<D> operator*(double n, Unit<D> unit) noexcept {
    return Quantity<D>::of(n, unit);
}

using Ratio = Quantity<Dimension::number>;
using Length = Quantity<Dimension::length>;
using Area = Quantity<Dimension::area>;
using Force = Quantity<Dimension::force>;
using Torque = Quantity<Dimension::torque>;
using Stress = Quantity<Dimension::stress>;
using Angle = Quantity<Dimension::angle>;

inline constexpr Unit<Dimension::number> one{1.0};
inline constexpr Unit<Dimension::number> percent{0.01};
inline constexpr Unit<Dimension::length> millimetre{1.0};
inline constexpr Unit<Dimension::length> micrometre{1e-3};
inline constexpr Unit<Dimension::length> inch{constants::k_inch_mm};
inline constexpr Unit<Dimension::area> square_millimetre{1.0};
inline constexpr Unit<Dimension::area> square_inch{constants::k_in2_mm2};
inline constexpr Unit<Dimension::force> newton{1.0};
inline constexpr Unit<Dimension::force> kilonewton{1000.0};
inline constexpr Unit<Dimension::force> pound_force{constants::k_lbf_N};
inline constexpr Unit<Dimension::torque> newton_metre{1.0};
inline constexpr Unit<Dimension::torque> pound_force_foot{constants::k_lbf_ft_Nm};
inline constexpr Unit<Dimension::torque> pound_force_inch{constants::k_lbf_in_Nm};
inline constexpr Unit<Dimension::stress> megapascal{1.0};
inline constexpr Unit<Dimension::stress> pound_per_square_inch{constants::k_psi_MPa};
inline constexpr Unit<Dimension::angle> degree{1.0};
inline constexpr Unit<Dimension::angle> turn{constants::k_turn_degrees};

[[nodiscard]] constexpr Force operator*(Stress s, Area a) noexcept { return (s.in(megapascal) * a.in(square_millimetre)) * newton; }
[[nodiscard]] constexpr Stress operator/(Force f, Area a) noexcept {
    return (f.in(newton) / a.in(square_millimetre)) * megapascal;
}
[[nodiscard]] constexpr Torque operator*(Force f, Length l) noexcept {
    return (f.in(newton) * l.in(millimetre) / 1000.0) * newton_metre;
}
[[nodiscard]] constexpr Force operator/(Torque t, Length l) noexcept {
    return (t.in(newton_metre) * 1000.0 / l.in(millimetre)) * newton;
}
[[nodiscard]] constexpr Area operator*(Length a, Length b) noexcept {
    return (a.in(millimetre) * b.in(millimetre)) * square_millimetre;
}

/// A circle of that diameter.
[[nodiscard]] constexpr Area disc(Length diameter) noexcept { return (constants::k_pi / 4) * (diameter * diameter); }

} // namespace clampbook
