// SPDX-License-Identifier: MIT
// The friction form of a derivation, preload and the torque that makes it, beside a plain loop of the same arithmetic: what the types,
// the limits and the shares cost. Google Benchmark measures; `allocations` counts what the derivation asked of the memory.

#include "clampbook/engine/friction.hpp"

#include <benchmark/benchmark.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <new>

namespace {

std::size_t asked = 0; // NOLINT: what operator new counts

constexpr std::size_t k_joints = 64;
constexpr double k_pi = 3.14159265358979323846;
constexpr double k_yield = 640;
constexpr double k_utilisation = 0.9;

// Sizes of a screw in mm, all a little different, so that nothing is computed once for all.
struct Sizes {
    double major, pitch, pitch_diameter, area, friction, head_friction, outer, inner;
};

std::array<Sizes, k_joints> sizes() {
    std::array<Sizes, k_joints> out{};
    for (std::size_t i = 0; i < k_joints; ++i) {
        const double d = 6 + 0.25 * static_cast<double>(i);
        const double p = 0.15 * d;
        out[i] = {
            d,    p,       d - 0.6495 * p, k_pi / 4 * (d - 0.9382 * p) * (d - 0.9382 * p), 0.10 + 0.001 * static_cast<double>(i),
            0.12, 1.5 * d, 1.1 * d};
    }
    return out;
}

std::array<clampbook::engine::FrictionJoint, k_joints> joints() {
    using namespace clampbook;
    std::array<engine::FrictionJoint, k_joints> out{};
    const auto all = sizes();
    for (std::size_t i = 0; i < k_joints; ++i) {
        const Sizes& s = all[i];
        out[i].thread.profile = engine::Profile::degrees_60;
        out[i].thread.major = s.major * millimetre;
        out[i].thread.pitch = s.pitch * millimetre;
        out[i].thread.pitch_diameter = s.pitch_diameter * millimetre;
        out[i].thread.stress_area = s.area * square_millimetre;
        out[i].thread_friction = s.friction;
        out[i].head_friction = s.head_friction;
        out[i].bearing_outer = s.outer * millimetre;
        out[i].bearing_inner = s.inner * millimetre;
    }
    return out;
}

void derive(benchmark::State& state) {
    using namespace clampbook;
    const auto all = joints();
    const std::size_t before = asked;
    for (auto _ : state) {
        for (const auto& joint : all) {
            benchmark::DoNotOptimize(engine::friction_tightening(k_yield * megapascal, k_utilisation, joint));
        }
    }
    state.counters["allocations"] = static_cast<double>(asked - before);
}
BENCHMARK(derive);

struct Shares {
    double total, pitch, thread, head;
};

void plain(benchmark::State& state) {
    const auto all = sizes();
    const double cosine = std::cos(k_pi / 6);
    for (auto _ : state) {
        for (const Sizes& s : all) {
            const double helix = s.pitch / (k_pi * s.pitch_diameter);
            const double flank = s.friction / cosine;
            const double tangent = (helix + flank) / (1 - helix * flank);
            const double d0 = std::sqrt(4 / k_pi * s.area);
            const double shear = 1.5 * s.pitch_diameter / d0 * tangent;
            const double preload = k_utilisation / std::sqrt(1 + 3 * shear * shear) * k_yield * s.area;
            const double thread = s.pitch_diameter / 2 * tangent;
            const double head = s.head_friction / 4 * (s.outer + s.inner);
            Shares shares{preload * (thread + head) / 1000, preload * s.pitch / (2 * k_pi) / 1000, 0, preload * head / 1000};
            shares.thread = shares.total - shares.pitch - shares.head;
            benchmark::DoNotOptimize(shares);
        }
    }
}
BENCHMARK(plain);

} // namespace

void* operator new(std::size_t size) {
    ++asked;
    if (void* place = std::malloc(size)) {
        return place;
    }
    throw std::bad_alloc{};
}
void operator delete(void* place) noexcept { std::free(place); }
void operator delete(void* place, std::size_t /*size*/) noexcept { std::free(place); }

BENCHMARK_MAIN();
