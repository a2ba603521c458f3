// SPDX-License-Identifier: MIT
#pragma once

// How far the preload may lie from the one that was meant: the bounds that always hold, and draws from stated
// distributions that say how likely what lies between them is. Pure functions; which scatter a way of tightening has, the
// curated database knows.

#include "clampbook/engine/friction.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace clampbook::engine {

/// α_A = F_max / F_min = (1 + s)/(1 − s) for a preload that lies within ±s about its mean. Source: VDI 2230-1, Table A8,
/// whose columns this links. Throws out_of_validity unless 0 <= s < 1.
[[nodiscard]] double tightening_factor(double scatter);

/// The other way round: s = (α_A − 1)/(α_A + 1). Throws out_of_validity unless α_A >= 1.
[[nodiscard]] double scatter_of(double tightening_factor);

struct PreloadBounds {
    Force least;
    Force most;

    [[nodiscard]] double factor() const { return most / least; } ///< α_A
};

/// F (1 − s) and F (1 + s). Throws out_of_validity unless F is more than zero and 0 <= s < 1.
[[nodiscard]] PreloadBounds bounds_about(Force mean, double scatter);

/// F_max/α_A (VDI 2230-1): what is certainly there where no more than `most` is. Throws out_of_validity unless α_A >= 1.
[[nodiscard]] Force least_preload(Force most, double tightening_factor);

/// From `low` to `high`.
struct Band {
    double low = 0;
    double high = 0;
};

/// The bounds of the preload that a torque makes: the tool at its highest and the friction in thread and under the head at
/// its lowest, and the other way round. The joint's own coefficients are not looked at; `tool` is the tool's deviation as a
/// share, 0.04 for ±4 %. Throws out_of_validity unless 0 <= tool < 1 and the band is in order and within the limits of
/// friction.hpp.
[[nodiscard]] PreloadBounds friction_bounds(Torque torque, const FrictionJoint& joint, Band friction, double tool);

/// Preload as NASA-STD-5020A bounds it (equations from memory): `initial` after tightening, with the torque's own band as
/// shares of the nominal (1.04 and 0.96) and the uncertainty Γ. Where a joint has several screws and none is critical for
/// its separation, their mean counts: Γ/√n for the least.
struct TighteningSpread {
    Force nominal;
    double uncertainty = 0; ///< Γ
    double torque_most = 1;
    double torque_least = 1;
    int screws = 1; ///< over which the least may be taken as a mean; 1 where each is critical
};
[[nodiscard]] PreloadBounds initial_bounds(const TighteningSpread& spread);

/// What time and heat do to it: gains go to the most, losses to the least. `relaxation` is a share of the least initial
/// preload (the standard takes 5 % where nothing better is known). The least may fall under zero: the joint is then open.
struct ServiceChange {
    Force gain;
    Force loss;
    double relaxation = 0;
};
[[nodiscard]] PreloadBounds service_bounds(const PreloadBounds& initial, const ServiceChange& change);

/// The distributions that draws are made from, each over its whole band. `rectangular`: every value alike, where nothing
/// more is known (JCGM 100:2008, 4.3.7). `triangular`: values near the middle likelier (4.3.9).
enum class Shape { rectangular, triangular };

struct Draws {
    std::uint64_t seed = 1;
    std::size_t count = 1'000'000;
    Shape shape = Shape::rectangular;
};
inline constexpr std::size_t k_draws_min = 1'000;
inline constexpr std::size_t k_draws_max = 10'000'000;

/// Drawn preloads, and what can be read off them.
class Spread {
public:
    /// In any order; at least one.
    explicit Spread(std::vector<double> newtons);

    [[nodiscard]] std::size_t count() const noexcept { return sorted_.size(); }
    [[nodiscard]] Force least() const;
    [[nodiscard]] Force most() const;
    [[nodiscard]] Force mean() const;
    [[nodiscard]] Force deviation() const; ///< standard deviation, over n − 1
    /// The value that a share of the draws does not pass, 0 < share < 1: the draw at place ⌈share · n⌉.
    [[nodiscard]] Force percentile(double share) const;
    [[nodiscard]] double share_over(Force limit) const;
    [[nodiscard]] double share_under(Force limit) const;
    /// How many fall into each of so many equal parts of low..high; the last holds its upper end.
    [[nodiscard]] std::vector<std::size_t> histogram(Force low, Force high, std::size_t parts) const;

private:
    std::vector<double> sorted_; // [N]
};

/// Draws about a mean within ±scatter. The same seed gives the same draws on every machine: the generator is the 64-bit
/// Mersenne twister, whose numbers the language fixes, and nothing but the four operations is done to them.
/// Throws out_of_validity as `bounds_about` does, and unless k_draws_min <= count <= k_draws_max.
[[nodiscard]] Spread draw_about(Force mean, double scatter, const Draws& draws);

/// Draws by friction: thread, head and tool each for itself, from its own band. Throws as `friction_bounds` does.
[[nodiscard]] Spread draw_by_friction(Torque torque, const FrictionJoint& joint, Band friction, double tool, const Draws& draws);

} // namespace clampbook::engine
