// SPDX-License-Identifier: MIT
#include "clampbook/engine/thread_geometry.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/engine/require.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace clampbook::engine {
namespace {

void require_core(Length major, Length core) {
    if (!(core > 0 * millimetre)) {
        throw error(ErrorKind::out_of_validity, "a thread of {:.4g} mm leaves no core: its pitch is too coarse for the diameter",
                    major.in(millimetre));
    }
    if (!std::isfinite(major.in(millimetre))) {
        throw error(ErrorKind::out_of_validity, "the diameter of a thread must be finite");
    }
}

// ISO 3 preferred numbers of the R40 series, one decade.
constexpr std::array k_r40{1.0,  1.06, 1.12, 1.18, 1.25, 1.32, 1.4,  1.5,  1.6,  1.7,  1.8, 1.9,  2.0, 2.12,
                           2.24, 2.36, 2.5,  2.65, 2.8,  3.0,  3.15, 3.35, 3.55, 3.75, 4.0, 4.25, 4.5, 4.75,
                           5.0,  5.3,  5.6,  6.0,  6.3,  6.7,  7.1,  7.5,  8.0,  8.5,  9.0, 9.5,  10.0};

double to_r40(double value) {
    const double decade = std::pow(10.0, std::floor(std::log10(value)));
    const double mantissa = value / decade;
    // Half way between two numbers the larger one is taken, as the printed T_D1 of a pitch of 1 mm shows.
    const auto distance = [&](double step) { return std::fabs(step - mantissa); };
    return decade *
           *std::min_element(k_r40.rbegin(), k_r40.rend(), [&](double a, double b) { return distance(a) < distance(b) - 1e-9; });
}

// ISO 965-1 Tables 3 to 5: the diameter ranges, mm.
constexpr std::array k_ranges{0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45.0, 90.0, 180.0};

} // namespace

ThreadGeometry metric_geometry(Length major, Length pitch) {
    require_positive(pitch.in(millimetre), "the pitch");
    ThreadGeometry g;
    g.major = major;
    g.pitch = pitch;
    g.pitch_diameter = major - 0.649519 * pitch;
    g.minor_internal = major - 1.082532 * pitch;
    g.minor_external = major - 1.226869 * pitch;
    require_core(major, g.minor_external);
    g.stress_area = disc((g.pitch_diameter + g.minor_external) / 2);
    return g;
}

ThreadGeometry unified_geometry(Length major, double threads_per_inch) {
    require_positive(threads_per_inch, "the number of threads per inch");
    const Length pitch = (1.0 / threads_per_inch) * inch;
    ThreadGeometry g;
    g.major = major;
    g.pitch = pitch;
    g.pitch_diameter = major - 0.64951905 * pitch;
    g.minor_internal = major - 1.08253175 * pitch;
    g.minor_external = major - 1.19078493 * pitch;
    require_core(major, g.minor_external);
    g.stress_area = disc(major - 0.9743 * pitch);
    return g;
}

PipeGeometry whitworth_pipe_geometry(Length major, double threads_per_inch) {
    require_positive(threads_per_inch, "the number of threads per inch");
    const Length pitch = (1.0 / threads_per_inch) * inch;
    const PipeGeometry g{major, pitch, major - 0.640327 * pitch, major - 1.280654 * pitch};
    require_core(major, g.minor);
    return g;
}

ThreadGeometry pipe_plug_geometry(Length major, double threads_per_inch) {
    const PipeGeometry pipe = whitworth_pipe_geometry(major, threads_per_inch);
    ThreadGeometry g;
    g.major = pipe.major;
    g.pitch = pipe.pitch;
    g.pitch_diameter = pipe.pitch_diameter;
    g.minor_internal = pipe.minor;
    g.minor_external = pipe.minor;
    g.stress_area = disc((pipe.pitch_diameter + pipe.minor) / 2);
    g.profile = Profile::degrees_55;
    return g;
}

ThreadGeometry parallel_geometry(ThreadSystem system, std::string_view name, Length major, std::optional<Length> pitch,
                                 std::optional<double> threads_per_inch) {
    switch (system) {
    case ThreadSystem::metric:
        return metric_geometry(major, pitch.value());
    case ThreadSystem::unified:
        return unified_geometry(major, threads_per_inch.value());
    case ThreadSystem::pipe_parallel:
        return pipe_plug_geometry(major, threads_per_inch.value());
    case ThreadSystem::pipe_taper:
    case ThreadSystem::npt:
        break;
    }
    throw error(ErrorKind::out_of_validity,
                "{} is a taper thread: it wedges, and no preload or stripping load is computed for it", name);
}

SizeRange metric_size_range(Length major) {
    const double d = major.in(millimetre);
    if (!(d >= 1) || d > k_ranges.back()) {
        throw error(ErrorKind::out_of_validity, "ISO 965-1 gives tolerances for diameters of 1 to 180 mm, not {:.4g} mm", d);
    }
    const auto* high = std::ranges::lower_bound(k_ranges, d);
    return {*(high - 1) * millimetre, *high * millimetre};
}

Tolerances metric_tolerances(Length major, Length pitch) {
    const double p = pitch.in(millimetre);
    if (!(p >= 0.2) || p > 8) {
        throw error(ErrorKind::out_of_validity, "ISO 965-1 gives tolerances for pitches of 0.2 to 8 mm, not {:.4g} mm", p);
    }
    const SizeRange range = metric_size_range(major);
    const double d = std::sqrt(range.over.in(millimetre) * range.up_to.in(millimetre));
    const double external = to_r40(90 * std::pow(p, 0.4) * std::pow(d, 0.1));
    return {std::round(15 + 11 * p) * micrometre, to_r40(180 * std::cbrt(p * p) - 3.15 / std::sqrt(p)) * micrometre,
            to_r40(p < 1 ? 433 * p - 190 * std::pow(p, 1.22) : 230 * std::pow(p, 0.7)) * micrometre, external * micrometre,
            to_r40(1.32 * 90 * std::pow(p, 0.4) * std::pow(d, 0.1)) * micrometre};
}

Tolerances unified_tolerances(Length major, double threads_per_inch, Length engagement) {
    require_positive(threads_per_inch, "the number of threads per inch");
    require_positive(major.in(inch), "the diameter");
    require_positive(engagement.in(inch), "the length of engagement");
    const double d = major.in(inch);
    const double p = 1.0 / threads_per_inch;
    const double p23 = std::cbrt(p * p);
    const double external = 0.0015 * std::cbrt(d) + 0.0015 * std::sqrt(engagement.in(inch)) + 0.015 * p23;
    const double floor = 0.25 * p - 0.40 * p * p;
    const double internal_minor = d >= 0.25 ? floor : std::clamp(0.05 * p23 + 0.03 * p / d - 0.002, floor, 0.394 * p);
    return {0.3 * external * inch, 0.060 * p23 * inch, internal_minor * inch, external * inch, 1.3 * external * inch};
}

Limits external_limits(const ThreadGeometry& g, const Tolerances& t) {
    Limits l;
    l.major_max = g.major - t.fundamental;
    l.major_min = l.major_max - t.major_external;
    l.pitch_max = g.pitch_diameter - t.fundamental;
    l.pitch_min = l.pitch_max - t.pitch_external;
    l.minor_max = g.minor_external - t.fundamental;
    l.minor_min = l.pitch_min - 0.616025 * g.pitch;
    return l;
}

Limits internal_limits(const ThreadGeometry& g, const Tolerances& t) {
    Limits l;
    l.major_min = g.major;
    l.pitch_min = g.pitch_diameter;
    l.pitch_max = g.pitch_diameter + t.pitch_internal;
    l.minor_min = g.minor_internal;
    l.minor_max = g.minor_internal + t.minor_internal;
    return l;
}

} // namespace clampbook::engine
