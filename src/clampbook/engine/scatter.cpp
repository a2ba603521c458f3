// SPDX-License-Identifier: MIT
#include "clampbook/engine/scatter.hpp"

#include "clampbook/engine/require.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>

namespace clampbook::engine {
namespace {

void require_scatter(double scatter) {
    if (!(scatter >= 0 && scatter < 1)) {
        throw error(ErrorKind::out_of_validity, "a scatter of ±{:.6g} % lies outside 0 to under 100 %", scatter * 100);
    }
}

void require_factor(double factor) {
    if (!(factor >= 1) || !std::isfinite(factor)) {
        throw error(ErrorKind::out_of_validity, "a tightening factor of {:.6g} is less than 1: most preload over least", factor);
    }
}

void require_tool(double tool) {
    if (!(tool >= 0 && tool < 1)) {
        throw error(ErrorKind::out_of_validity, "a tool's deviation of {:.6g} % lies outside 0 to under 100 %", tool * 100);
    }
}

void require_order(Band band) {
    if (!(band.low <= band.high)) {
        throw error(ErrorKind::out_of_validity, "the band of friction {:.6g} to {:.6g} runs backwards", band.low, band.high);
    }
}

FrictionJoint with_friction(FrictionJoint joint, double thread, double head) {
    joint.thread_friction = thread;
    joint.head_friction = head;
    return joint;
}

// Numbers from 0 to under 1 by the top 53 bits, and values of a band by a shape.
class Source {
public:
    explicit Source(const Draws& draws) : generator_(draws.seed), shape_(draws.shape) {
        if (draws.count < k_draws_min || draws.count > k_draws_max) {
            throw error(ErrorKind::out_of_validity, "{} draws lie outside {} to {}", draws.count, k_draws_min, k_draws_max);
        }
    }

    [[nodiscard]] double within(double low, double high) {
        const double share = shape_ == Shape::rectangular ? unit() : triangular_unit();
        return low + share * (high - low);
    }

private:
    double unit() { return static_cast<double>(generator_() >> 11U) * 0x1p-53; }
    double triangular_unit() {
        const double first = unit();
        return (first + unit()) / 2;
    }

    std::mt19937_64 generator_;
    Shape shape_;
};

} // namespace

double tightening_factor(double scatter) {
    require_scatter(scatter);
    return (1 + scatter) / (1 - scatter);
}

double scatter_of(double tightening_factor) {
    require_factor(tightening_factor);
    return (tightening_factor - 1) / (tightening_factor + 1);
}

PreloadBounds bounds_about(Force mean, double scatter) {
    require_positive(mean.in(newton), "the preload");
    require_scatter(scatter);
    return {(1 - scatter) * mean, (1 + scatter) * mean};
}

Force least_preload(Force most, double tightening_factor) {
    require_positive(most.in(newton), "the preload");
    require_factor(tightening_factor);
    return most / tightening_factor;
}

PreloadBounds friction_bounds(Torque torque, const FrictionJoint& joint, Band friction, double tool) {
    require_tool(tool);
    require_order(friction);
    return {friction_preload((1 - tool) * torque, with_friction(joint, friction.high, friction.high)),
            friction_preload((1 + tool) * torque, with_friction(joint, friction.low, friction.low))};
}

PreloadBounds initial_bounds(const TighteningSpread& spread) {
    require_positive(spread.nominal.in(newton), "the preload");
    require_scatter(spread.uncertainty);
    if (spread.screws < 1) {
        throw error(ErrorKind::out_of_validity, "a joint has at least one screw, not {}", spread.screws);
    }
    require_positive(spread.torque_least, "the least share of the torque");
    if (!(spread.torque_least <= spread.torque_most) || !std::isfinite(spread.torque_most)) {
        throw error(ErrorKind::out_of_validity, "the torque's band {:.6g} to {:.6g} runs backwards", spread.torque_least,
                    spread.torque_most);
    }
    const double least = 1 - spread.uncertainty / std::sqrt(static_cast<double>(spread.screws));
    return {spread.torque_least * least * spread.nominal, spread.torque_most * (1 + spread.uncertainty) * spread.nominal};
}

PreloadBounds service_bounds(const PreloadBounds& initial, const ServiceChange& change) {
    if (!(change.gain >= 0 * newton && change.loss >= 0 * newton && change.relaxation >= 0 && change.relaxation < 1)) {
        throw error(ErrorKind::out_of_validity, "gain and loss of preload must not be negative, and its relaxation under 100 %");
    }
    return {(1 - change.relaxation) * initial.least - change.loss, initial.most + change.gain};
}

Spread::Spread(std::vector<double> newtons) : sorted_(std::move(newtons)) {
    if (sorted_.empty()) {
        throw error(ErrorKind::out_of_validity, "a spread needs at least one preload");
    }
    std::sort(sorted_.begin(), sorted_.end());
}

Force Spread::least() const { return sorted_.front() * newton; }
Force Spread::most() const { return sorted_.back() * newton; }

Force Spread::mean() const {
    return std::accumulate(sorted_.begin(), sorted_.end(), 0.0) / static_cast<double>(sorted_.size()) * newton;
}

Force Spread::deviation() const {
    if (sorted_.size() < 2) {
        return 0.0 * newton;
    }
    const double middle = mean().in(newton);
    double sum = 0;
    for (const double value : sorted_) {
        sum += (value - middle) * (value - middle);
    }
    return std::sqrt(sum / static_cast<double>(sorted_.size() - 1)) * newton;
}

Force Spread::percentile(double share) const {
    if (!(share > 0 && share < 1)) {
        throw error(ErrorKind::out_of_validity, "a percentile of {:.6g} % lies outside 0 to 100 %", share * 100);
    }
    const auto place = static_cast<std::size_t>(std::ceil(share * static_cast<double>(sorted_.size())));
    return sorted_[std::clamp<std::size_t>(place, 1, sorted_.size()) - 1] * newton;
}

double Spread::share_over(Force limit) const {
    const auto first = std::upper_bound(sorted_.begin(), sorted_.end(), limit.in(newton));
    return static_cast<double>(sorted_.end() - first) / static_cast<double>(sorted_.size());
}

double Spread::share_under(Force limit) const {
    const auto end = std::lower_bound(sorted_.begin(), sorted_.end(), limit.in(newton));
    return static_cast<double>(end - sorted_.begin()) / static_cast<double>(sorted_.size());
}

std::vector<std::size_t> Spread::histogram(Force low, Force high, std::size_t parts) const {
    if (!(low < high) || parts < 1) {
        throw error(ErrorKind::out_of_validity, "a histogram needs at least one part and a band in order");
    }
    std::vector<std::size_t> counts(parts);
    const double width = (high - low).in(newton) / static_cast<double>(parts);
    auto from = std::lower_bound(sorted_.begin(), sorted_.end(), low.in(newton));
    for (std::size_t i = 0; i < parts; ++i) {
        const double end = low.in(newton) + static_cast<double>(i + 1) * width;
        const auto to =
            i + 1 == parts ? std::upper_bound(from, sorted_.end(), high.in(newton)) : std::lower_bound(from, sorted_.end(), end);
        counts.at(i) = static_cast<std::size_t>(to - from);
        from = to;
    }
    return counts;
}

Spread draw_about(Force mean, double scatter, const Draws& draws) {
    const PreloadBounds bounds = bounds_about(mean, scatter);
    Source source{draws};
    std::vector<double> values(draws.count);
    for (double& value : values) {
        value = source.within(bounds.least.in(newton), bounds.most.in(newton));
    }
    return Spread{std::move(values)};
}

Spread draw_by_friction(Torque torque, const FrictionJoint& joint, Band friction, double tool, const Draws& draws) {
    static_cast<void>(friction_bounds(torque, joint, friction, tool)); // everything is looked at once, before the draws
    Source source{draws};
    std::vector<double> values(draws.count);
    for (double& value : values) {
        const double thread = source.within(friction.low, friction.high);
        const double head = source.within(friction.low, friction.high);
        const double share = source.within(1 - tool, 1 + tool);
        value = friction_preload(share * torque, with_friction(joint, thread, head)).in(newton);
    }
    return Spread{std::move(values)};
}

} // namespace clampbook::engine
