// SPDX-License-Identifier: MIT
// The problems about a screw: conversion, proof load, preload, torque and back. Each answer is reckoned from the givens as the sheet
// prints them.

#include "clampbook/teach/problems.hpp"

#include "clampbook/answer/parts.hpp"
#include "clampbook/answer/screw.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/engine/plug.hpp"
#include "clampbook/engine/strength.hpp"
#include "clampbook/engine/wrench.hpp"
#include "clampbook/teach/lesson_parts.hpp"
#include "clampbook/units/reading.hpp"

#include <array>
#include <cmath>

namespace clampbook::teach {
namespace {

using reference::Reference;

answer::Figure plain(double canonical, std::string_view unit, std::string print) {
    answer::Figure f;
    f.value = canonical;
    f.unit = unit;
    f.print = std::move(print);
    f.label = Label::derived;
    f.basis = "of the exercise";
    return f;
}

} // namespace

const answer::Figure& give(Exercise& e, std::string key, std::string title, double number, std::string_view unit) {
    const UnitInfo& info = unit.empty() ? canonical_unit(Dimension::number) : unit_named(unit);
    e.given.push_back({std::move(key), std::move(title),
                       plain(info.to_canonical(number), unit.empty() ? "" : canonical_unit(info.dimension).symbol,
                             unit.empty() ? print_shortest(number) : with_unit(print_shortest(number), info))});
    return e.given.back().figure;
}

std::string answer_in(Exercise& e, std::string key, std::string title, double number, std::string_view unit) {
    const UnitInfo& info = unit.empty() ? canonical_unit(Dimension::number) : unit_named(unit);
    std::string print = answer::print_quantity(number, unit, 3);
    e.answers.push_back({std::move(key), std::move(title),
                         plain(info.to_canonical(number), unit.empty() ? "" : canonical_unit(info.dimension).symbol, print)});
    return print;
}

PoolScrew draw_screw(Dice& dice, const Reference& reference) {
    const std::string thread = dice.of({"M6", "M8", "M10", "M12", "M14"});
    const std::string property_class = dice.of({"8.8", "10.9"});
    const answer::Screw screw = answer::screw_of(reference, thread, property_class);
    const answer::Document strength = answer::strength(reference, thread, property_class);
    return {thread + " " + property_class,
            screw.thread.major.in(millimetre),
            screw.area.value,
            figure_in(strength, "proof_stress").value,
            screw.proof_load.value / 1000,
            screw.tensile_load.value / 1000};
}

void draw_conversion(Exercise& e, Dice& dice, const Reference&) {
    if (e.level == 1) {
        const double n = dice.in_steps(12, 90);
        give(e, "torque", "torque", n, "lbf·ft");
        give(e, "factor", "N·m a lbf·ft", k_foot, "");
        e.text = fmt::format("A bulletin says {} lbf·ft. How much is that in N·m? (1 lbf·ft = {} N·m)", n, k_foot);
        const std::string t = answer_in(e, "result", "torque", n * k_foot, "N·m");
        e.steps = {{"times the factor", fmt::format("{} · {}", n, k_foot), t}};
        e.words = fmt::format("{} lbf·ft are {}.", n, t);
        return;
    }
    if (e.level == 2) {
        const double n = dice.in_steps(60, 480, 6);
        give(e, "torque", "torque", n, "lbf·in");
        give(e, "factor", "N·m a lbf·ft", k_foot, "");
        e.text = fmt::format(
            "A small screw is marked {} lbf·in. How much is that in lbf·ft, and in N·m? (12 lbf·in = 1 lbf·ft = {} N·m)", n,
            k_foot);
        const std::string feet = answer_in(e, "feet", "torque", n / 12, "lbf·ft");
        const std::string t = answer_in(e, "result", "torque", n / 12 * k_foot, "N·m");
        e.steps = {{"inches to feet", fmt::format("{} / 12", n), feet},
                   {"times the factor", fmt::format("{} / 12 · {}", n, k_foot), t}};
        e.words = fmt::format("{}, which is {}. Set as lbf·ft it would be 12 times too much.", feet, t);
        return;
    }
    double n = 0;
    double exact = 0;
    do { // not on a mark, and not in the middle between two
        n = dice.in_steps(20, 120);
        exact = n / k_foot;
    } while (std::abs(exact - std::round(exact)) < 0.05 || std::abs(exact - std::floor(exact) - 0.5) < 0.05);
    const double mark = std::round(exact);
    give(e, "torque", "torque", n, "N·m");
    give(e, "factor", "N·m a lbf·ft", k_foot, "");
    e.text = fmt::format("{} N·m are wanted, but the wrench is marked in whole lbf·ft. Which mark is the nearest, and by how "
                         "many percent is it off? "
                         "(1 lbf·ft = {} N·m)",
                         n, k_foot);
    const std::string feet = answer_in(e, "exact", "exactly", exact, "lbf·ft");
    const std::string nearest = answer_in(e, "mark", "nearest mark", mark, "lbf·ft");
    const std::string off = answer_in(e, "off", "off by", (mark / exact - 1) * 100, "%");
    e.steps = {{"by the factor", fmt::format("{} / {}", n, k_foot), feet},
               {"the nearest whole", "round", nearest},
               {"off by", fmt::format("{} / ({} / {}) − 1", mark, n, k_foot), off}};
    e.words = fmt::format("The mark {}, off by {}.", mark, off);
}

void draw_proof_load(Exercise& e, Dice& dice, const Reference& reference) {
    const PoolScrew s = draw_screw(dice, reference);
    give(e, "proof_stress", "proof stress S_p", s.proof_stress, "MPa");
    const double load = s.proof_stress * s.area / 1000;
    if (e.level < 3) {
        give(e, "area", "stress area A_s", s.area, "mm²");
        e.text =
            fmt::format("A screw {} has a stress area of {} mm²; its class has a proof stress of {} MPa. What is its proof load?",
                        s.title, s.area, s.proof_stress);
        const std::string f = answer_in(e, "proof_load", "proof load", load, "kN");
        e.steps = {{"stress times area", fmt::format("F_p = S_p · A_s = {} MPa · {} mm²", s.proof_stress, s.area), f}};
        e.words = fmt::format("It bears {} without staying longer.", f);
        if (e.level == 2) {
            const double pull = std::round(load * dice.of({0.4, 0.5, 0.6, 0.7, 0.8}));
            give(e, "pull", "pull", pull, "kN");
            e.text += fmt::format(" Which share of it is a pull of {} kN?", pull);
            const std::string share = answer_in(e, "share", "share", pull / load * 100, "%");
            e.steps.push_back({"pull over proof load", fmt::format("{} kN / {}", pull, f), share});
            e.words = fmt::format("Its proof load is {}; the pull is {} of it.", f, share);
        }
        return;
    }
    const double pull = std::round(load * 0.9);
    give(e, "pull", "pull", pull, "kN");
    e.text = fmt::format("A pull of {} kN must stay under the proof load of a screw whose class has a proof stress of {} MPa. "
                         "Which stress area is needed at least?",
                         pull, s.proof_stress);
    const std::string area = answer_in(e, "area", "stress area", pull * 1000 / s.proof_stress, "mm²");
    e.steps = {{"load over stress", fmt::format("A_s = F / S_p = {} N / {} MPa", pull * 1000, s.proof_stress), area}};
    e.words = fmt::format("At least {}; an {} has {} mm².", area, s.title, s.area);
}

void draw_preload(Exercise& e, Dice& dice, const Reference& reference) {
    const PoolScrew s = draw_screw(dice, reference);
    const double percent = dice.of({50.0, 60.0, 70.0, 75.0, 90.0});
    if (e.level == 1) {
        give(e, "proof_load", "proof load F_p", s.proof_load, "kN");
        give(e, "share", "share", percent, "%");
        e.text =
            fmt::format("The proof load of a screw {} is {} kN. Which preload is {} % of it?", s.title, s.proof_load, percent);
        const std::string f = answer_in(e, "preload", "preload", s.proof_load * percent / 100, "kN");
        e.steps = {{"share of the proof load", fmt::format("F = {} · {} kN", percent / 100, s.proof_load), f}};
        e.words = fmt::format("{}.", f);
        return;
    }
    give(e, "area", "stress area A_s", s.area, "mm²");
    give(e, "proof_stress", "proof stress S_p", s.proof_stress, "MPa");
    const double load = s.proof_stress * s.area / 1000;
    if (e.level == 2) {
        give(e, "share", "share", percent, "%");
        e.text = fmt::format("A screw {}: stress area {} mm², proof stress {} MPa. Which preload is {} % of its proof load?",
                             s.title, s.area, s.proof_stress, percent);
        const std::string p = answer_in(e, "proof_load", "proof load", load, "kN");
        const std::string f = answer_in(e, "preload", "preload", load * percent / 100, "kN");
        e.steps = {{"proof load", fmt::format("{} MPa · {} mm²", s.proof_stress, s.area), p},
                   {"share of it", fmt::format("{} · {}", percent / 100, p), f}};
        e.words = fmt::format("{} of {}.", f, p);
        return;
    }
    const double pounds = std::round(load * 1000 * dice.of({0.6, 0.8, 1.1}) / k_pound / 100) * 100;
    give(e, "pounds", "preload", pounds, "lbf");
    give(e, "factor", "N a lbf", k_pound, "");
    e.text = fmt::format("An old chart asks for a preload of {} lbf in a screw {} (stress area {} mm², proof stress {} MPa). How "
                         "much is that in kN, and which share of "
                         "the proof load? May it be used? (1 lbf = {} N)",
                         pounds, s.title, s.area, s.proof_stress, k_pound);
    const double force = pounds * k_pound / 1000;
    const std::string f = answer_in(e, "preload", "preload", force, "kN");
    const std::string share = answer_in(e, "share", "share", force / load * 100, "%");
    e.steps = {{"in kN", fmt::format("{} · {} N", pounds, k_pound), f},
               {"over the proof load", fmt::format("{} / ({} MPa · {} mm²)", f, s.proof_stress, s.area), share}};
    e.words = fmt::format("{}, {} of the proof load: {}.", f, share,
                          force > load ? "no, it passes the proof load" : "it stays under the proof load");
}

void draw_torque(Exercise& e, Dice& dice, const Reference& reference) {
    const PoolScrew s = draw_screw(dice, reference);
    const double k = dice.in_steps(12, 20) / 100;
    double force = std::round(k_share * s.proof_load);
    give(e, "nut_factor", "nut factor K", k, "");
    give(e, "diameter", "diameter d", s.diameter, "mm");
    if (e.level == 1) {
        give(e, "preload", "preload F", force, "kN");
        e.text = fmt::format(
            "A screw {} is to be tightened to {} kN. The nut factor is {}. Which torque is needed? (T = K F d, d = {} mm)",
            s.title, force, k, s.diameter);
    } else {
        give(e, "proof_load", "proof load F_p", s.proof_load, "kN");
        force = k_share * s.proof_load;
        e.text = fmt::format("A screw {} (d = {} mm, proof load {} kN) is to be tightened to 75 % of its proof load; the nut "
                             "factor is {}. Which torque is needed?",
                             s.title, s.diameter, s.proof_load, k);
        const std::string f = answer_in(e, "preload", "preload", force, "kN");
        e.steps.push_back({"preload", fmt::format("0.75 · {} kN", s.proof_load), f});
    }
    const double t = engine::torque_for(force * kilonewton, k, s.diameter * millimetre).in(newton_metre);
    const std::string print = answer_in(e, "torque", "torque", t, "N·m");
    e.steps.push_back({"torque",
                       fmt::format("T = K F d = {} · {} kN · {} mm", k,
                                   e.level == 1 ? print_shortest(force) : print_significant(force, 3), s.diameter),
                       print});
    e.words = fmt::format("{}.", print);
    if (e.level == 3) {
        give(e, "factor", "N·m a lbf·ft", k_foot, "");
        e.text += fmt::format(" And what is that in lbf·ft? (1 lbf·ft = {} N·m)", k_foot);
        const std::string feet = answer_in(e, "feet", "torque", t / k_foot, "lbf·ft");
        e.steps.push_back({"in lbf·ft", fmt::format("{} / {}", print, k_foot), feet});
        e.words = fmt::format("{}, that is {}.", print, feet);
    }
}

void draw_inverse(Exercise& e, Dice& dice, const Reference& reference) {
    const PoolScrew s = draw_screw(dice, reference);
    const double k = dice.in_steps(12, 20) / 100;
    const double t = std::round(k * k_share * s.proof_load * s.diameter);
    give(e, "torque", "torque T", t, "N·m");
    give(e, "diameter", "diameter d", s.diameter, "mm");
    if (e.level == 3) {
        const double measured = std::round(s.proof_load * dice.of({0.5, 0.6, 0.65}));
        const double wanted = std::round(k_share * s.proof_load);
        give(e, "measured", "measured preload", measured, "kN");
        give(e, "wanted", "wanted preload", wanted, "kN");
        e.text = fmt::format("A screw {} (d = {} mm) was tightened with {} N·m; a load cell shows {} kN. Which nut factor is "
                             "that, and which torque makes {} kN?",
                             s.title, s.diameter, t, measured, wanted);
        const double factor = t / (measured * s.diameter);
        const std::string kf = answer_in(e, "nut_factor", "nut factor", factor, "");
        const std::string needed = answer_in(e, "needed", "torque", factor * wanted * s.diameter, "N·m");
        e.steps = {{"nut factor", fmt::format("K = T / (F d) = {} N·m / ({} kN · {} mm)", t, measured, s.diameter), kf},
                   {"torque", fmt::format("T = {} N·m · {} / {}", t, wanted, measured), needed}};
        e.words = fmt::format("K = {}; {} N·m make {} kN, so {} are needed.", kf, t, measured, needed);
        return;
    }
    give(e, "nut_factor", "nut factor K", k, "");
    e.text = fmt::format("A screw {} (d = {} mm) was tightened with {} N·m. Its nut factor is taken as {}. Which preload does "
                         "that make? (F = T / (K d))",
                         s.title, s.diameter, t, k);
    const double force = engine::preload_from(t * newton_metre, k, s.diameter * millimetre).in(kilonewton);
    const std::string f = answer_in(e, "preload", "preload", force, "kN");
    e.steps = {{"preload", fmt::format("F = {} N·m / ({} · {} mm)", t, k, s.diameter), f}};
    e.words = fmt::format("{}.", f);
    if (e.level == 2) {
        give(e, "proof_load", "proof load F_p", s.proof_load, "kN");
        e.text += fmt::format(" Which share of its proof load of {} kN is it?", s.proof_load);
        const std::string share = answer_in(e, "share", "share", force / s.proof_load * 100, "%");
        e.steps.push_back({"share", fmt::format("{} / {} kN", f, s.proof_load), share});
        e.words = fmt::format("{}, {} of the proof load.", f, share);
    }
}

const std::vector<Topic>& problem_topics() {
    static const std::vector<Topic> all{{"conversion", draw_conversion},
                                        {"proof-load", draw_proof_load},
                                        {"preload", draw_preload},
                                        {"torque", draw_torque},
                                        {"inverse", draw_inverse},
                                        {"shares", draw_shares},
                                        {"adapter", draw_adapter},
                                        {"strip", draw_strip},
                                        {"plug", draw_plug},
                                        {"slip", draw_slip}};
    return all;
}

} // namespace clampbook::teach
