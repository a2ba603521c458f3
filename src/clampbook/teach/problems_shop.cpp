// SPDX-License-Identifier: MIT
// The problems about the joint and the work: shares, adapter, stripping, plug, slips.

#include "clampbook/answer/parts.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/engine/plug.hpp"
#include "clampbook/engine/wrench.hpp"
#include "clampbook/model/thread.hpp"
#include "clampbook/teach/problems.hpp"

#include <algorithm>
#include <cmath>

namespace clampbook::teach {

using reference::Reference;

void draw_shares(Exercise& e, Dice& dice, const Reference& reference) {
    const PoolScrew s = draw_screw(dice, reference);
    const double force = std::round(k_share * s.proof_load);
    const std::string thread = s.title.substr(0, s.title.find(' '));
    give(e, "preload", "preload F", force, "kN");
    if (e.level < 3) {
        const double pitch = reference.thread(read_thread(thread)).pitch.value().in(millimetre);
        give(e, "pitch", "pitch P", pitch, "mm");
        e.text = fmt::format(
            "A screw {} with a pitch of {} mm is tightened to {} kN. Which part of the torque climbs the pitch? (T_P = F P / {})",
            thread, pitch, force, k_two_pi);
        const double part = force * pitch / k_two_pi;
        const std::string p = answer_in(e, "pitch_torque", "torque of the pitch", part, "N·m");
        e.steps = {{"torque of the pitch", fmt::format("{} kN · {} mm / {}", force, pitch, k_two_pi), p}};
        e.words = fmt::format("{} stretch the screw.", p);
        if (e.level == 2) {
            const double whole = std::round(part / dice.of({0.11, 0.13, 0.15}));
            give(e, "torque", "whole torque T", whole, "N·m");
            e.text += fmt::format(" Which share of the whole torque of {} N·m is it?", whole);
            const std::string share = answer_in(e, "share", "share", part / whole * 100, "%");
            e.steps.push_back({"share", fmt::format("{} / {} N·m", p, whole), share});
            e.words = fmt::format("{}, {} of the torque: the rest is friction.", p, share);
        }
        return;
    }
    const answer::Face face = answer::face_of(reference, {}, thread);
    const double rough = dice.of({0.14, 0.15, 0.16});
    const double smooth = dice.of({0.08, 0.09, 0.10});
    give(e, "bearing", "bearing face d_w", face.bearing.value, "mm");
    give(e, "hole", "hole d_h", face.hole.value, "mm");
    give(e, "rough", "friction before", rough, "");
    give(e, "smooth", "friction after", smooth, "");
    const double lever = (face.bearing.value + face.hole.value) / 4;
    e.text = fmt::format("Under the head of a screw {} (bearing face {} mm, hole {} mm, preload {} kN) oil takes the friction "
                         "from {} to {}. How many N·m less does the same "
                         "preload ask for? (T_K = F μ (d_w + d_h) / 4)",
                         thread, face.bearing.value, face.hole.value, force, rough, smooth);
    const std::string before = answer_in(e, "before", "before", force * rough * lever, "N·m");
    const std::string after = answer_in(e, "after", "after", force * smooth * lever, "N·m");
    const std::string less = answer_in(e, "less", "less", force * (rough - smooth) * lever, "N·m");
    e.steps = {
        {"before", fmt::format("{} kN · {} · ({} + {}) mm / 4", force, rough, face.bearing.value, face.hole.value), before},
        {"after", fmt::format("the same with {}", smooth), after},
        {"less", before + " − " + after, less}};
    e.words = fmt::format("{} less. With the old torque the screw would be pulled harder.", less);
}

void draw_adapter(Exercise& e, Dice& dice, const Reference&) {
    const double length = dice.in_steps(300, 600, 50);
    const double reach = dice.in_steps(40, 120, 10);
    const double t = dice.in_steps(30, 120, 5);
    const double degrees = e.level == 1 ? 0 : e.level == 2 ? 180 : 60;
    const double cosine = e.level == 1 ? 1 : e.level == 2 ? -1 : 0.5;
    const std::string unit = e.level == 3 ? "lbf·ft" : "N·m";
    give(e, "torque", "torque wanted", t, unit);
    give(e, "length", "wrench L", length, "mm");
    give(e, "adapter", "adapter E", reach, "mm");
    give(e, "turned", "turned by a", degrees, "°");
    e.text = fmt::format("{} {} are wanted at the screw. The wrench is {} mm long from grip to drive, the adapter {} mm, {}. To "
                         "what is the wrench set? (S = T L / (L + E cos a){})",
                         t, unit, length, reach,
                         e.level == 1   ? "straight ahead"
                         : e.level == 2 ? "turned back over the handle (cos 180° = −1)"
                                        : "turned away by 60° (cos 60° = 0.5)",
                         e.level == 3 ? fmt::format("; 1 lbf·ft = {} N·m", k_foot) : "");
    const double setting =
        engine::setting_for(t * newton_metre, {length * millimetre, reach * millimetre, degrees * degree}).in(newton_metre);
    const std::string s = answer_in(e, "setting", "setting", setting, unit);
    e.steps = {
        {"setting", fmt::format("{} · {} / ({} {} {})", t, length, length, cosine < 0 ? "−" : "+", reach * std::abs(cosine)), s}};
    e.words = fmt::format("To {}.", s);
    if (e.level == 2) {
        e.text += " And what would the screw get if the wrench were set to the wanted torque?";
        const double applied =
            engine::applied_by(t * newton_metre, {length * millimetre, reach * millimetre, degrees * degree}).in(newton_metre);
        const std::string got = answer_in(e, "applied", "the screw gets", applied, "N·m");
        e.steps.push_back({"unheeded", fmt::format("{} · ({} − {}) / {}", t, length, reach, length), got});
        e.words = fmt::format("To {}; unheeded, the screw would get only {}.", s, got);
    }
    if (e.level == 3) {
        give(e, "factor", "N·m a lbf·ft", k_foot, "");
        e.text += " Give it in N·m too.";
        const std::string metric = answer_in(e, "metric", "setting", setting * k_foot, "N·m");
        e.steps.push_back({"in N·m", fmt::format("{} · {}", s, k_foot), metric});
        e.words = fmt::format("To {}, that is {}.", s, metric);
    }
}

void draw_strip(Exercise& e, Dice& dice, const Reference& reference) {
    const PoolScrew s = draw_screw(dice, reference);
    const double shear = dice.of({110.0, 140.0, 160.0, 190.0});
    const double area = dice.in_steps(8, 30) * 10;
    give(e, "shear_strength", "shear strength τ", shear, "MPa");
    if (e.level < 3) {
        give(e, "shear_area", "shear area A", area, "mm²");
        e.text = fmt::format("A tapped hole has a shear area of {} mm² in a housing with a shear strength of {} MPa. At which "
                             "pull does its thread strip? (F = τ A, without corrections)",
                             area, shear);
        const double load = shear * area / 1000;
        const std::string f = answer_in(e, "strip_load", "load at stripping", load, "kN");
        e.steps = {{"load at stripping", fmt::format("{} MPa · {} mm²", shear, area), f}};
        e.words = fmt::format("At {}.", f);
        if (e.level == 2) {
            give(e, "breaks", "the screw breaks at", s.tensile_load, "kN");
            e.text +=
                fmt::format(" The screw {} breaks at {} kN. What goes first, and how many percent is the weaker of the stronger?",
                            s.title, s.tensile_load);
            const double share = std::min(load, s.tensile_load) / std::max(load, s.tensile_load) * 100;
            const std::string p = answer_in(e, "share", "weaker over stronger", share, "%");
            e.steps.push_back({"weaker over stronger", fmt::format("{} and {} kN", f, s.tensile_load), p});
            e.words = fmt::format("{} goes first; it bears {} of the other.",
                                  load < s.tensile_load ? "The thread in the housing" : "The screw", p);
        }
        return;
    }
    const double per_mm = dice.in_steps(14, 26);
    give(e, "area_per_mm", "shear area for each mm", per_mm, "mm²");
    give(e, "breaks", "the screw breaks at", s.tensile_load, "kN");
    e.text = fmt::format("A screw {} breaks at {} kN. Each mm of full thread has a shear area of {} mm² in a housing of {} MPa "
                         "shear strength. How deep must it go in at least so that "
                         "the screw breaks first? Is 1 in enough? (1 in = 25.4 mm)",
                         s.title, s.tensile_load, per_mm, shear);
    const double depth = s.tensile_load * 1000 / (shear * per_mm);
    const std::string l = answer_in(e, "depth", "depth", depth, "mm");
    e.steps = {{"load for each mm", fmt::format("{} MPa · {} mm²", shear, per_mm),
                answer::print_quantity(shear * per_mm / 1000, "kN", 3)},
               {"depth", fmt::format("{} N / ({} MPa · {} mm²)", s.tensile_load * 1000, shear, per_mm), l}};
    e.words = fmt::format("{} of full thread; 1 in is {}.", l, depth <= 25.4 ? "enough" : "not enough");
}

void draw_plug(Exercise& e, Dice& dice, const Reference&) {
    const double seat = dice.in_steps(18, 45);
    const double strips = dice.in_steps(60, 120, 3);
    const double high = strips / engine::k_strip_reserve;
    give(e, "strips", "strips at", strips, "N·m");
    give(e, "reserve", "reserve", engine::k_strip_reserve, "");
    if (e.level == 1) {
        e.text = fmt::format(
            "The thread of a drain plug strips at {} N·m. With a reserve of 1.5, what is the most it may be tightened with?",
            strips);
    } else {
        give(e, "seat", "seats the ring", seat, "N·m");
    }
    const std::string most = answer_in(e, "high", "at most", high, "N·m");
    e.steps = {{"over the reserve", fmt::format("{} N·m / 1.5", strips), most}};
    if (e.level == 1) {
        e.words = fmt::format("At most {}.", most);
        return;
    }
    const double set = e.level == 2 ? dice.in_steps(15, 90, 5) : dice.in_steps(12, 70);
    const double in_nm = e.level == 2 ? set : set * k_foot;
    const std::string unit = e.level == 2 ? "N·m" : "lbf·ft";
    give(e, "set", "torque", set, unit);
    e.text = fmt::format("The ring of a drain plug is seated from {} N·m on; its thread strips at {} N·m. Reckon with a reserve "
                         "of 1.5 against stripping. Does {} {} lie in the window?",
                         seat, strips, set, unit);
    if (e.level == 3) {
        give(e, "factor", "N·m a lbf·ft", k_foot, "");
        e.text += fmt::format(" (1 lbf·ft = {} N·m)", k_foot);
        const std::string metric = answer_in(e, "metric", "torque", in_nm, "N·m");
        e.steps.push_back({"in N·m", fmt::format("{} · {}", set, k_foot), metric});
    }
    e.words = fmt::format("The window is {} N·m to {}: {}.", seat, most,
                          in_nm < seat   ? "no, the ring is not seated"
                          : in_nm > high ? "no, it is too much"
                                         : "yes");
}

void draw_slip(Exercise& e, Dice& dice, const Reference&) {
    const std::size_t wrong = dice.below(3);
    const double k = dice.in_steps(14, 20) / 100;
    std::string lines;
    double right_of_wrong = 0;
    const double first = dice.in_steps(15, 30);
    for (std::size_t i = 0; i < 3; ++i) {
        const std::string key = "line" + std::to_string(i + 1);
        const double left = first + static_cast<double>(i) * dice.in_steps(7, 19) + static_cast<double>(i);
        const std::string mark = fmt::format(" ({}) ", i + 1);
        if (e.level < 3) {
            const bool to_metric = e.level == 1;
            const double right = to_metric ? left * k_foot : left / k_foot;
            const double slipped = to_metric ? left * k_foot / 12 : left * k_foot; // lbf·in for lbf·ft; times in place of over
            const double shown = std::stod(print_significant(i == wrong ? slipped : right, 3));
            right_of_wrong = i == wrong ? right : right_of_wrong;
            give(e, key + ".left", "line " + std::to_string(i + 1), left, to_metric ? "lbf·ft" : "N·m");
            give(e, key + ".right", "says", shown, to_metric ? "N·m" : "lbf·ft");
            lines += mark + e.given[e.given.size() - 2].figure.print + " = " + e.given.back().figure.print + ";";
        } else {
            const double d = 6 + 2 * static_cast<double>(i);
            const double right = k * left * d;
            const double shown = std::stod(print_significant(i == wrong ? right * 10 : right, 3));
            right_of_wrong = i == wrong ? right : right_of_wrong;
            give(e, key + ".preload", "preload", left, "kN");
            give(e, key + ".diameter", "diameter", d, "mm");
            give(e, key + ".torque", "says", shown, "N·m");
            lines += fmt::format("{}M{}, {} kN: {} N·m;", mark, d, left, shown);
        }
    }
    lines.back() = '.';
    const char* what = "";
    if (e.level == 1) {
        give(e, "factor", "N·m a lbf·ft", k_foot, "");
        e.text = fmt::format(
            "One line of a sheet is wrong. Which one, what would be right, and what was mixed up? (1 lbf·ft = {} N·m){}", k_foot,
            lines);
        what = "lbf·in was taken for lbf·ft: a twelfth";
    } else if (e.level == 2) {
        give(e, "factor", "N·m a lbf·ft", k_foot, "");
        e.text = fmt::format(
            "One line of a sheet is wrong. Which one, what would be right, and what was done to it? (1 lbf·ft = {} N·m){}",
            k_foot, lines);
        what = "it was multiplied where it had to be divided";
    } else {
        give(e, "nut_factor", "nut factor K", k, "");
        e.text = fmt::format("Three torques were reckoned by T = K F d with K = {}. One is wrong. Which one, what would be "
                             "right, and what happened to it?{}",
                             k, lines);
        what = "the decimal point slipped: ten times too much";
    }
    e.answers.push_back({"line", "wrong line", answer::count_figure(wrong + 1)});
    const std::string right = answer_in(e, "right", "right", right_of_wrong, e.level == 2 ? "lbf·ft" : "N·m");
    e.steps = {{"reckon each line again",
                e.level == 3   ? "T = K F d"
                : e.level == 1 ? fmt::format("times {}", k_foot)
                               : fmt::format("over {}", k_foot),
                "line " + std::to_string(wrong + 1)},
               {"what would be right", "", right}};
    e.words = fmt::format("Line {}: {} would be right; {}.", wrong + 1, right, what);
}

} // namespace clampbook::teach
