// SPDX-License-Identifier: MIT
#pragma once

// How a problem is drawn: a topic's function fills an exercise from the dice. Not for users of the library.

#include "clampbook/teach/exercises.hpp"

#include <initializer_list>
#include <random>
#include <string>
#include <string_view>

namespace clampbook::teach {

/// Whole numbers from a seed; only integer arithmetic is done to what the generator gives, so that every machine draws alike.
class Dice {
public:
    explicit Dice(std::uint64_t seed) : engine_(seed) {}
    [[nodiscard]] std::uint64_t below(std::uint64_t n) { return engine_() % n; }
    /// From `low` to `high` in whole steps.
    [[nodiscard]] double in_steps(int low, int high, int step = 1) {
        const auto places = static_cast<std::uint64_t>(high - low) / static_cast<std::uint64_t>(step) + 1;
        return low + static_cast<double>(below(places)) * step;
    }
    template <typename T>
    [[nodiscard]] T of(std::initializer_list<T> all) {
        return *(all.begin() + below(all.size()));
    }

private:
    std::mt19937_64 engine_;
};

inline constexpr double k_foot = 1.356; // N·m, as a shop's chart rounds it (NIST SP 811, B.8: 1.355818)
inline constexpr double k_two_pi = 6.283;
inline constexpr double k_pound = 4.448; // N (NIST SP 811, B.8: 4.448222)
inline constexpr double k_share = 0.75;

/// A given as it is printed, in a unit of the table; empty for a bare number.
const answer::Figure& give(Exercise& exercise, std::string key, std::string title, double number, std::string_view unit);

/// An answer to three digits, in a unit of the table; gives how it is printed.
std::string answer_in(Exercise& exercise, std::string key, std::string title, double number, std::string_view unit);

struct PoolScrew {
    std::string title;
    double diameter;     // mm
    double area;         // mm²
    double proof_stress; // MPa
    double proof_load;   // kN, as printed
    double tensile_load; // kN, as printed
};
/// One of the everyday screws, with the figures that ISO 898-1 prints.
[[nodiscard]] PoolScrew draw_screw(Dice& dice, const reference::Reference& reference);

void draw_conversion(Exercise& exercise, Dice& dice, const reference::Reference& reference);
void draw_proof_load(Exercise& exercise, Dice& dice, const reference::Reference& reference);
void draw_preload(Exercise& exercise, Dice& dice, const reference::Reference& reference);
void draw_torque(Exercise& exercise, Dice& dice, const reference::Reference& reference);
void draw_inverse(Exercise& exercise, Dice& dice, const reference::Reference& reference);
void draw_shares(Exercise& exercise, Dice& dice, const reference::Reference& reference);
void draw_adapter(Exercise& exercise, Dice& dice, const reference::Reference& reference);
void draw_strip(Exercise& exercise, Dice& dice, const reference::Reference& reference);
void draw_plug(Exercise& exercise, Dice& dice, const reference::Reference& reference);
void draw_slip(Exercise& exercise, Dice& dice, const reference::Reference& reference);

struct Topic {
    const char* name;
    void (*draw)(Exercise&, Dice&, const reference::Reference&);
};
[[nodiscard]] const std::vector<Topic>& problem_topics();

} // namespace clampbook::teach
