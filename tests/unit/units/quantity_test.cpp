// SPDX-License-Identifier: MIT
// Quantities are types: what may be added, multiplied and compared compiles, everything else does not.

#include "clampbook/units/quantity.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <concepts>
#include <type_traits>

namespace {

using namespace clampbook;

template <typename A, typename B>
concept Adds = requires(A a, B b) {
    a + b;
};
template <typename A, typename B>
concept Subtracts = requires(A a, B b) {
    a - b;
};
template <typename A, typename B>
concept Compares = requires(A a, B b) {
    a < b;
};
template <typename A, typename B>
concept Equals = requires(A a, B b) {
    a == b;
};
template <typename A, typename B>
concept Multiplies = requires(A a, B b) {
    a* b;
};
template <typename A, typename B>
concept Divides = requires(A a, B b) {
    a / b;
};
template <typename Q, typename U>
concept ReadsIn = requires(Q q, U u) {
    q.in(u);
};

// of one dimension
static_assert(Adds<Torque, Torque> && Subtracts<Force, Force> && Compares<Length, Length> && Equals<Stress, Stress>);
static_assert(std::same_as<decltype(Torque{} / Torque{}), double>);
static_assert(std::same_as<decltype(2.0 * Torque{}), Torque> && std::same_as<decltype(Torque{} / 2.0), Torque>);
// of two: torque is no force, no stress and no energy
static_assert(!Adds<Torque, Force> && !Subtracts<Torque, Force> && !Compares<Torque, Force> && !Equals<Torque, Force>);
static_assert(!Adds<Length, Area> && !Adds<Stress, Force> && !Adds<Angle, Torque> && !Adds<Ratio, Angle>);
static_assert(!Compares<Length, Angle> && !Compares<Stress, Torque>);
// with bare numbers
static_assert(!Adds<Torque, double> && !Compares<Torque, double> && !Equals<double, Force>);
static_assert(!std::is_convertible_v<double, Torque> && !std::is_constructible_v<Torque, double>);
static_assert(!std::is_convertible_v<Torque, double> && !std::is_convertible_v<Force, Torque>);
static_assert(!std::is_assignable_v<Torque&, Force> && !std::is_assignable_v<Torque&, double>);
// products of the trade, and no others
static_assert(std::same_as<decltype(Stress{} * Area{}), Force> && std::same_as<decltype(Force{} / Area{}), Stress>);
static_assert(std::same_as<decltype(Force{} * Length{}), Torque> && std::same_as<decltype(Torque{} / Length{}), Force>);
static_assert(std::same_as<decltype(Length{} * Length{}), Area>);
static_assert(!Multiplies<Torque, Torque> && !Multiplies<Force, Force> && !Multiplies<Torque, Length>);
static_assert(!Divides<Force, Length> && !Divides<Torque, Force> && !Divides<Length, Torque> && !Divides<double, Force>);
// a unit belongs to its dimension
static_assert(ReadsIn<Torque, Unit<Dimension::torque>> && !ReadsIn<Torque, Unit<Dimension::force>>);
static_assert(!ReadsIn<Torque, double>);

} // namespace

TEST_CASE("a quantity gives back what was put in, in its own unit exactly") {
    CHECK((32.0 * newton_metre).in(newton_metre) == 32);
    CHECK((24.0 * pound_force_foot).in(pound_force_foot) == 24);
    CHECK((90.0 * degree).in(turn) == 0.25);
    CHECK((75.0 * percent).in(one) == 0.75);
    CHECK(Torque{}.in(newton_metre) == 0);
}

TEST_CASE("units are the factors that were agreed internationally") {
    // NIST SP 811 (2008), Appendix B.8: the digits printed there
    CHECK((1.0 * inch).in(millimetre) == 25.4);
    CHECK_THAT((1.0 * pound_force).in(newton), Catch::WithinRel(4.4482216152605, 1e-15));
    CHECK_THAT((1.0 * pound_force_foot).in(newton_metre), Catch::WithinRel(1.3558179483314004, 1e-15));
    CHECK_THAT((1.0 * pound_force_inch).in(newton_metre), Catch::WithinRel(0.1129848290276167, 1e-15));
    CHECK_THAT((1.0 * pound_per_square_inch).in(megapascal), Catch::WithinRel(6.894757293168361e-3, 1e-15));
    CHECK((1.0 * square_inch).in(square_millimetre) == 645.16);
    CHECK_THAT((12.0 * pound_force_inch) / (1.0 * pound_force_foot), Catch::WithinRel(1.0, 1e-15));
    CHECK((1.0 * kilonewton).in(newton) == 1000);
    CHECK((1.0 * micrometre).in(millimetre) == 1e-3);
    CHECK((1.0 * turn).in(degree) == 360);
}

TEST_CASE("products carry their units") {
    CHECK_THAT(((640.0 * megapascal) * (58.0 * square_millimetre)).in(newton), Catch::WithinRel(37120.0, 1e-15));
    CHECK_THAT(((37120.0 * newton) / (58.0 * square_millimetre)).in(megapascal), Catch::WithinRel(640.0, 1e-15));
    CHECK_THAT(((25000.0 * newton) * (10.0 * millimetre)).in(newton_metre), Catch::WithinRel(250.0, 1e-15));
    CHECK_THAT(((250.0 * newton_metre) / (10.0 * millimetre)).in(newton), Catch::WithinRel(25000.0, 1e-15));
    CHECK_THAT(((0.5 * inch) * (0.5 * inch)).in(square_inch), Catch::WithinRel(0.25, 1e-15));
}

TEST_CASE("quantities are ordered and reckoned with") {
    const Length a = 10.0 * millimetre;
    const Length b = 1.0 * inch;
    CHECK(a < b);
    CHECK(b > a);
    CHECK(a == 0.01 * (1000.0 * millimetre));
    CHECK((a + b).in(millimetre) == 35.4);
    CHECK_THAT((b - a).in(millimetre), Catch::WithinRel(15.4, 1e-15));
    CHECK((2.0 * a) == (a * 2.0));
    CHECK((a / 4.0).in(millimetre) == 2.5);
    CHECK(b / a == 2.54);
}
