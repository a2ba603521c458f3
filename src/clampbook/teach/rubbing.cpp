// SPDX-License-Identifier: MIT
// The lessons on friction: shares (where the torque goes), nut-factor (K and the friction behind it) and scatter (how far the
// preload lies from what was meant).

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/engine/scatter.hpp"
#include "clampbook/engine/strength.hpp"
#include "clampbook/teach/lesson_parts.hpp"
#include "clampbook/units/reading.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>

namespace clampbook::teach {
namespace {

using answer::Chart;
using answer::ChartKind;
using answer::Document;
using answer::LineStyle;
using reference::Reference;

// "0.164" of a nut factor.
answer::Figure factor_figure(double value, std::string basis) { return answer::number_figure(value, std::move(basis), 3); }

std::string screw_words(const std::string& thread, const std::string& property_class) {
    return quoted(thread) + " " + quoted(property_class);
}

// Bars of one torque, each parted as its friction parts it.
Chart share_bars(const TurnedScrew& s, Torque torque, std::initializer_list<double> frictions) {
    Chart chart;
    chart.kind = ChartKind::bars;
    chart.title = "Where " + newton_metres(torque) + " go, and the preload that is left";
    chart.words = "Less friction leaves more of the same torque to stretch the screw.";
    chart.x = answer::nice_axis("share of the torque", "", "%", 0, 1);
    for (const double friction : frictions) {
        const engine::FrictionJoint joint = s.with_friction(friction);
        const Force preload = engine::friction_preload(torque, joint);
        const engine::TorqueShares parts = engine::friction_torque(preload, joint);
        const double pitch = parts.pitch / parts.total;
        const double thread = pitch + parts.thread / parts.total;
        chart.bars.push_back({"friction " + coefficient(friction),
                              {{0, pitch, "pitch", 0}, {pitch, thread, "thread", 1}, {thread, 1, "head", 2}},
                              kilonewtons(preload)});
    }
    return chart;
}

} // namespace

void teach_shares(Lesson& lesson, const Reference& reference, const LessonRequest& request) {
    const std::string thread = chosen(lesson, "--thread", request.thread, "M10");
    const std::string property_class = chosen(lesson, "--class", request.property_class, "8.8");
    const std::string friction_text = chosen(lesson, "--friction", request.friction, "0.12");
    const std::string oiled_text = chosen(lesson, "--oiled", request.oiled, "0.08");
    const std::string head = chosen(lesson, "--head", request.head, "hexagon");
    const double friction = one_friction(friction_text);
    const double oiled = one_friction(oiled_text);
    if (!(oiled < friction)) {
        throw error(ErrorKind::usage, "--oiled {} must be less than --friction {}: oil takes friction away", oiled_text,
                    friction_text);
    }
    const TurnedScrew s = turned_screw(reference, thread, property_class, head);
    answer::DeriveRequest derive;
    derive.thread = thread;
    derive.property_class = property_class;
    derive.friction.coefficients = friction_text;
    derive.friction.face.head = head;
    const Document found = answer::derive(reference, derive);
    const Torque torque = torque_in(found, "torque");
    const Force preload = force_in(found, "preload");
    const Force slick = engine::friction_preload(torque, s.with_friction(oiled));
    const double used = engine::utilisation_of(slick, s.yield_strength(), s.screw.geometry, oiled);
    const auto share = [&](const char* key) { return percent_words(figure_in(found, key).value / torque.in(newton_metre)); };

    lesson.grasp = {"Of " + newton_metres(torque) + " only " + share("shares.pitch") + " stretch the screw; " +
                        share("shares.thread") + " rub away in the thread and " + share("shares.head") + " under the head.",
                    "So the wrench measures friction more than anything else: what it clicks at is not what clamps.",
                    "A drop of oil that takes friction from " + friction_text + " to " + oiled_text + " makes " +
                        kilonewtons(slick) + " of the same torque in place of " + kilonewtons(preload) + ", " +
                        percent_words(slick / preload - 1) + " more."};
    lesson.steps.push_back(
        {"preload", "preload at 90 % of the yield strength", "F = ν Rp0.2 A_s / √(1 + 3 (τ/σ)²)",
         "0.9 · " + figure_in(found, "yield_strength").print + " · " + figure_in(found, "stress_area").print + " / √(…)",
         in_kilonewtons(figure_in(found, "preload"))});
    lesson.steps.push_back({"pitch", "torque that climbs the pitch", "T_P = F · P/(2π)",
                            kilonewtons(preload) + " · " + millimetres(s.screw.geometry.pitch) + " / 6.283",
                            figure_in(found, "shares.pitch")});
    lesson.steps.push_back({"thread", "torque that rubs in the thread", "T_G = F · d2/2 · tan(φ + ρ′) − T_P",
                            "d2 " + millimetres(s.screw.geometry.pitch_diameter) + ", tan ρ′ = " + friction_text + "/cos 30°",
                            figure_in(found, "shares.thread")});
    lesson.steps.push_back(
        {"head", "torque that rubs under the head", "T_K = F · μ · (d_w + d_h)/4",
         kilonewtons(preload) + " · " + friction_text + " · (" + s.bearing.print + " + " + s.hole.print + ")/4",
         figure_in(found, "shares.head")});
    lesson.steps.push_back({"torque", "the whole torque", "T = T_P + T_G + T_K", "", figure_in(found, "torque")});
    lesson.steps.push_back({"oiled_preload", "the same torque, oiled", "F = T / [d2/2 tan(φ + ρ′) + μ (d_w + d_h)/4]",
                            "μ " + oiled_text, derived_force(slick, "(VDI 2230-1)")});
    lesson.steps.push_back({"oiled_utilisation", "which uses of the yield strength", "pull and twist together", "",
                            answer::share_figure(used, "(VDI 2230-1)")});
    lesson.chart = share_bars(s, torque, {oiled, friction, std::min(friction + 0.04, engine::k_friction_max)});
    const std::string screw = screw_words(thread, property_class);
    lesson.commands = {
        {"clampbook derive " + screw + " --friction " + friction_text, "the same computation, with its inputs and sources"},
        {"clampbook derive " + screw + " --friction " + friction_text + " --utilisation 50%",
         "half the preload: the shares stay the same"},
        {"clampbook teach shares --head flange", "a wider face under the head takes more of the torque"}};
    lesson.questions = {{"The thread is oiled, but the torque of the dry one is used. What happens to the screw?",
                         "It would be pulled to " + kilonewtons(slick) + ", " + percent_words(used) + " of its yield strength" +
                             (used > 1 ? ": it yields and stays longer." : ": its reserve is smaller than meant.") +
                             " A torque belongs to the state of thread and head that its source names."},
                        {"Which torque makes the old preload of " + kilonewtons(preload) + " with oil?",
                         newton_metres(engine::friction_torque(preload, s.with_friction(oiled)).total) + " in place of " +
                             newton_metres(torque) + ". But only where the maker allows oil there."}};
    lesson.cautions = {answer::caution_generic(), answer::caution_coefficients(), answer::caution_maker_first()};
}

void teach_nut_factor(Lesson& lesson, const Reference& reference, const LessonRequest& request) {
    const std::string thread = chosen(lesson, "--thread", request.thread, "M10");
    const std::string property_class = chosen(lesson, "--class", request.property_class, "8.8");
    const std::string friction_text = chosen(lesson, "--friction", request.friction, "0.12");
    const std::string factor_text = chosen(lesson, "--nut-factor", request.nut_factor, "0.20");
    const std::string band_text = chosen(lesson, "--friction-band", request.friction_band, "0.08..0.16");
    const std::string other = chosen(lesson, "--other-thread", request.other_thread, "M24");
    const double friction = one_friction(friction_text);
    const engine::Band band = answer::read_friction_band(band_text);
    const TurnedScrew s = turned_screw(reference, thread, property_class, "hexagon");
    const TurnedScrew wide = turned_screw(reference, thread, property_class, "flange");
    const TurnedScrew second = turned_screw(reference, other, property_class, "hexagon");
    const engine::FrictionJoint joint = s.with_friction(friction);
    const double d = s.screw.geometry.major.in(millimetre);
    const double k = engine::equivalent_nut_factor(joint);
    answer::DeriveRequest derive;
    derive.thread = thread;
    derive.property_class = property_class;
    derive.nut_factor = factor_text;
    const Document by_factor = answer::derive(reference, derive);
    const double given = figure_in(by_factor, "nut_factor").value;
    const double behind = engine::friction_of_nut_factor(given, joint);
    const Torque torque = torque_in(by_factor, "torque");
    const double pitch = s.screw.geometry.pitch.in(millimetre) / (2 * constants::k_pi) / d;
    const double in_thread = engine::thread_lever(s.screw.geometry, friction).in(millimetre) / d - pitch;
    const double under_head = k - pitch - in_thread;
    const double k_wide = engine::equivalent_nut_factor(wide.with_friction(friction));
    const double k_other = engine::equivalent_nut_factor(second.with_friction(friction));

    lesson.grasp = {
        "The nut factor K folds pitch, thread friction, head friction and the sizes of the joint into one number: T = K F d.",
        "It is no constant of a material: the same friction of " + friction_text + " is K = " + print_significant(k, 3) +
            " under a hexagon head and " + print_significant(k_wide, 3) + " under a flange.",
        "Whoever takes K = " + factor_text + " for this screw says that its friction is " + print_significant(behind, 2) +
            "; if it is less, the screw is pulled harder than meant."};
    lesson.steps.push_back({"pitch", "part of the pitch", "K_P = P / (2π d)",
                            millimetres(s.screw.geometry.pitch) + " / (6.283 · " + millimetres(s.screw.geometry.major) + ")",
                            factor_figure(pitch, "(VDI 2230-1)")});
    lesson.steps.push_back({"thread", "part of the thread", "K_G = d2/(2 d) · tan(φ + ρ′) − K_P", "μ " + friction_text,
                            factor_figure(in_thread, "(VDI 2230-1)")});
    lesson.steps.push_back({"head", "part of the head", "K_K = μ (d_w + d_h)/(4 d)",
                            friction_text + " · (" + s.bearing.print + " + " + s.hole.print + ") / (4 · " +
                                millimetres(s.screw.geometry.major) + ")",
                            factor_figure(under_head, "(VDI 2230-1)")});
    lesson.steps.push_back({"nut_factor", "nut factor of this joint", "K = K_P + K_G + K_K", "", factor_figure(k, "T / (F d)")});
    lesson.steps.push_back(
        {"flange", "the same friction under a flange", "K", "d_w " + wide.bearing.print, factor_figure(k_wide, "T / (F d)")});
    lesson.steps.push_back({"other_thread", "the same friction on " + other, "K", "", factor_figure(k_other, "T / (F d)")});
    lesson.steps.push_back({"friction", "and back: the friction that K = " + factor_text + " means here", "μ from K(μ) = K", "",
                            answer::number_figure(behind, "the inverse of K", 3)});
    lesson.steps.push_back(
        {"torque", "torque with that K", "T = K · F · d",
         factor_text + " · " + kilonewtons(force_in(by_factor, "preload")) + " · " + millimetres(s.screw.geometry.major),
         figure_in(by_factor, "torque")});

    Chart& chart = lesson.chart;
    const Force proof = s.proof_load();
    const Force yield = s.yield_strength() * s.screw.geometry.stress_area;
    chart.title = "Preload over torque for a band of friction";
    chart.words = "One torque, many preloads: the smoother the screw, the steeper its line.";
    const Torque most = engine::friction_torque(1.05 * yield, s.with_friction((band.low + band.high) / 2)).total;
    chart.x = answer::nice_axis("torque", "N·m", "N·m", 0, most.in(newton_metre));
    chart.y = answer::nice_axis("preload", "N", "kN", 0, 1.15 * yield.in(newton));
    const std::array styles{LineStyle::dashed, LineStyle::solid, LineStyle::dotted};
    const std::array frictions{band.low, (band.low + band.high) / 2, band.high};
    for (std::size_t i = 0; i < frictions.size(); ++i) {
        const engine::FrictionJoint with = s.with_friction(frictions.at(i));
        const double per_torque = engine::friction_preload(torque, with).in(newton) / torque.in(newton_metre);
        const double end = std::min(chart.x.high, chart.y.high / per_torque);
        chart.lines.push_back({"friction " + coefficient(frictions.at(i)), styles.at(i), {{0, 0}, {end, end * per_torque}}});
        chart.points.push_back(
            {torque.in(newton_metre), torque.in(newton_metre) * per_torque, kilonewtons(engine::friction_preload(torque, with))});
    }
    chart.limits.push_back({false, proof.in(newton), s.screw.load_name() + " " + kilonewtons(proof)});
    chart.limits.push_back({false, yield.in(newton), "yield " + kilonewtons(yield)});
    chart.limits.push_back({true, torque.in(newton_metre), newton_metres(torque)});
    const std::string screw = screw_words(thread, property_class);
    lesson.commands = {
        {"clampbook list nut-factors", "the nut factors that are published, by condition, with their sources"},
        {"clampbook derive " + screw + " --nut-factor " + factor_text, "the torque of this lesson"},
        {"clampbook derive " + screw + " --friction " + band_text + ":0.02", "torque and K over the whole band, as a table"}};
    lesson.questions = {
        {"A chart says K = " + factor_text + ". The screw is new and oiled, its friction " + coefficient(band.low) +
             ". What does " + newton_metres(torque) + " make of it?",
         kilonewtons(engine::friction_preload(torque, s.with_friction(band.low))) + " in place of " +
             kilonewtons(force_in(by_factor, "preload")) + "; its " + s.screw.load_name() + " is " + kilonewtons(proof) + "."},
        {"Why does " + other + " have another K than " + thread + " with the same friction?",
         "Pitch, pitch diameter and head do not grow alike with the diameter: K = " + print_significant(k_other, 3) + " there, " +
             print_significant(k, 3) + " here."}};
    lesson.cautions = {answer::caution_generic(), answer::caution_friction(), answer::caution_maker_first()};
}

void teach_scatter(Lesson& lesson, const Reference& reference, const LessonRequest& request) {
    answer::ScatterRequest scatter;
    scatter.thread = chosen(lesson, "--thread", request.thread, "M10");
    scatter.property_class = chosen(lesson, "--class", request.property_class, "8.8");
    scatter.friction = chosen(lesson, "--friction-band", request.friction_band, "0.10..0.16");
    scatter.tool = chosen(lesson, "--tool", request.tool, "4%");
    scatter.seed = chosen(lesson, "--seed", request.seed, "1");
    scatter.draws = "100000";
    const engine::Band band = answer::read_friction_band(scatter.friction);
    const double tool = answer::read_share(scatter.tool, "a tool's deviation is a share", "4%");
    const TurnedScrew s = turned_screw(reference, scatter.thread, scatter.property_class, "hexagon");
    const engine::FrictionJoint middle = s.with_friction((band.low + band.high) / 2);
    // Three quarters of the proof load in the middle of the band, on a mark of a wrench.
    const double usual = std::round(engine::friction_torque(0.75 * s.proof_load(), middle).total.in(newton_metre));
    scatter.torque = chosen(lesson, "--torque", request.torque, (print_shortest(std::max(usual, 1.0)) + " N·m").c_str());
    const Document found = answer::scatter(reference, scatter);
    const auto torque = read_quantity(scatter.torque, Dimension::torque).as<Dimension::torque>();
    const Force mean = engine::friction_preload(torque, middle);
    const engine::PreloadBounds by_tool = engine::bounds_about(mean, tool);
    const engine::PreloadBounds by_friction = engine::friction_bounds(torque, middle, band, 0);
    const engine::PreloadBounds both{force_in(found, "preload.least"), force_in(found, "preload.most")};
    const double half = engine::scatter_of(both.factor());
    const reference::ScatterRow printed = reference.scatter("handbook torque wrench");

    lesson.grasp = {"The wrench is right within ±" + percent_as_given(tool) + ", and still the preload lies within ±" +
                        percent_words(half) + ".",
                    "Nearly all of that comes from friction, which nobody sees: from " + coefficient(band.low) + " to " +
                        coefficient(band.high) + ".",
                    "A better wrench hardly helps; clean, alike and rightly oiled threads and faces do."};
    lesson.steps.push_back({"middle", "preload in the middle of the band", "F = T / [d2/2 tan(φ + ρ′) + μ (d_w + d_h)/4]",
                            "T " + scatter.torque + ", μ " + coefficient((band.low + band.high) / 2),
                            derived_force(mean, "(VDI 2230-1)")});
    lesson.steps.push_back({"tool.least", "the tool alone: at least", "F (1 − s)", "s = " + percent_as_given(tool),
                            derived_force(by_tool.least, "the tool's deviation")});
    lesson.steps.push_back({"tool.most", "and at most", "F (1 + s)", "", derived_force(by_tool.most, "the tool's deviation")});
    lesson.steps.push_back({"friction.least", "friction alone: at least", "F at the highest friction",
                            "μ " + coefficient(band.high), derived_force(by_friction.least, "(VDI 2230-1)")});
    lesson.steps.push_back({"friction.most", "and at most", "F at the lowest friction", "μ " + coefficient(band.low),
                            derived_force(by_friction.most, "(VDI 2230-1)")});
    lesson.steps.push_back({"least", "both: at least", "", "", in_kilonewtons(figure_in(found, "preload.least"))});
    lesson.steps.push_back({"most", "and at most", "", "", in_kilonewtons(figure_in(found, "preload.most"))});
    lesson.steps.push_back(
        {"tightening_factor", "tightening factor", "α_A = F_max / F_min", "", figure_in(found, "tightening_factor")});
    answer::Figure plus_minus = answer::share_figure(half, "(α_A − 1)/(α_A + 1)");
    plus_minus.print = "±" + plus_minus.print;
    lesson.steps.push_back({"scatter", "as a share of the middle", "s = (α_A − 1)/(α_A + 1)", "", std::move(plus_minus)});
    if (printed.half_range) {
        answer::Figure f = answer::share_figure(*printed.half_range, printed.method);
        f.print = "±" + f.print;
        f.label = Label::standard;
        f.citation = printed.citation;
        lesson.steps.push_back({"handbook", "a handbook says for a torque wrench", "", "", std::move(f)});
    }
    lesson.steps.push_back({"p5", "drawn: 5 % lie under", "", figure_in(found, "draws").print + " draws",
                            in_kilonewtons(figure_in(found, "percentiles.p5"))});
    lesson.steps.push_back({"p95", "drawn: 95 % lie under", "", "", in_kilonewtons(figure_in(found, "percentiles.p95"))});

    Chart& chart = lesson.chart;
    const answer::Histogram& h = *found.histogram;
    chart.kind = ChartKind::columns;
    chart.title = "How often each preload comes from " + scatter.torque;
    chart.words =
        "Drawn with every friction of the band and every deviation of the tool alike; most preloads lie near the middle, the "
        "ends are rare but come.";
    chart.columns_low = h.low;
    chart.columns_high = h.high;
    double highest = 0;
    for (const std::size_t count : h.counts) {
        chart.columns.push_back(static_cast<double>(count) / static_cast<double>(h.total));
        highest = std::max(highest, chart.columns.back());
    }
    const bool shows_proof = s.proof_load().in(newton) < h.high * 1.1;
    chart.x = answer::nice_axis("preload", "N", "kN", h.low, shows_proof ? std::max(h.high, s.proof_load().in(newton)) : h.high);
    chart.y = answer::nice_axis("share of the draws", "", "%", 0, highest * 1.15, 4);
    for (const int percent : {5, 50, 95}) {
        const std::string key = "percentiles.p" + std::to_string(percent);
        chart.limits.push_back(
            {true, figure_in(found, key).value, std::to_string(percent) + " % under " + kilonewtons(force_in(found, key))});
    }
    if (shows_proof) {
        chart.limits.push_back({true, s.proof_load().in(newton), s.screw.load_name() + " " + kilonewtons(s.proof_load())});
    }
    const std::string screw = screw_words(scatter.thread, scatter.property_class);
    const std::string same =
        "clampbook scatter " + screw + " --torque " + quoted(scatter.torque) + " --friction " + scatter.friction;
    lesson.commands = {{same + " --tool " + quoted(scatter.tool), "the same draws, a million of them"},
                       {"clampbook teach scatter --tool 1%", "a wrench four times as good: look how little changes"},
                       {"clampbook teach scatter --friction-band 0.12..0.14", "a narrower band of friction: look how much"}};
    lesson.questions = {{"A wrench with ±1 % in place of ±" + percent_as_given(tool) + ": how far does the preload spread then?",
                         "±" + percent_words(engine::scatter_of(engine::friction_bounds(torque, middle, band, 0.01).factor())) +
                             " in place of ±" + percent_words(half) + ". The friction decides."},
                        {"The joint needs at least " + kilonewtons(both.least) + ". Which preload must the screw bear?",
                         "Up to " + kilonewtons(both.most) + ": α_A = " + print_significant(both.factor(), 3) +
                             " times as much. The screw is chosen for the most, the joint is reckoned with the least."}};
    lesson.cautions = found.cautions;
}

} // namespace clampbook::teach
