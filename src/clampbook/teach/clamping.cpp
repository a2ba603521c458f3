// SPDX-License-Identifier: MIT
// The lessons on what a tightened screw is: preload (the joint as two springs) and angle (torque, then a turn past yield).

#include "clampbook/base/error.hpp"
#include "clampbook/engine/elastic.hpp"
#include "clampbook/teach/lesson_parts.hpp"
#include "clampbook/units/reading.hpp"

#include <algorithm>

namespace clampbook::teach {
namespace {

using answer::Chart;
using answer::Document;
using answer::LineStyle;
using reference::Reference;

void add_notes(Lesson& lesson, const Document& document) {
    lesson.notes.insert(lesson.notes.end(), document.notes.begin(), document.notes.end());
}

LessonStep compliance_step(std::string key, std::string title, std::string formula, std::string worked, engine::Compliance c,
                           std::string basis) {
    LessonStep step{std::move(key), std::move(title), std::move(formula), std::move(worked), std::nullopt};
    answer::Figure f;
    f.value = c.millimetre_per_newton;
    f.unit = "mm/N";
    f.print = answer::print_quantity(c.millimetre_per_newton * 1e6, "", 3) + " µm/kN";
    f.label = Label::derived;
    f.basis = std::move(basis);
    step.figure = std::move(f);
    return step;
}

// Screw and parts as the two sides of a triangle over how far they give.
Chart joint_diagram(const answer::BoltedJoint& joint, Force preload, const engine::LoadedJoint& loaded) {
    const double screw = joint.springs.screw.millimetre_per_newton;
    const double parts = joint.springs.parts.millimetre_per_newton;
    const double f = preload.in(newton);
    const double proof = joint.screw.proof_load.value;
    const double apex = f * screw;
    const double at_load = loaded.screw.in(newton) * screw;
    const double screw_end = std::max(loaded.screw.in(newton), std::min(proof, f * 1.15));
    Chart chart;
    chart.title = "Joint diagram";
    chart.words =
        "The screw is pulled along its line, the parts are pressed along theirs; a load from outside moves both a little "
        "to the right, and the force between the two lines is the load.";
    chart.x = answer::nice_axis("how far the screw stretches, and the parts give", "mm", "µm", 0,
                                std::max(apex + f * parts, screw_end * screw) * 1.02);
    chart.y = answer::nice_axis("force", "N", "kN", 0, std::max(proof, screw_end) * 1.05);
    chart.lines.push_back({"screw", LineStyle::solid, {{0, 0}, {screw_end * screw, screw_end}}});
    chart.lines.push_back({"clamped parts", LineStyle::dashed, {{apex, f}, {apex + f * parts, 0}}});
    chart.limits.push_back({false, proof, joint.screw.load_name() + " " + kilonewtons(proof * newton)});
    chart.points.push_back({apex, f, "preload " + kilonewtons(preload)});
    chart.points.push_back({at_load, loaded.screw.in(newton), "screw under load " + kilonewtons(loaded.screw)});
    chart.points.push_back({at_load, loaded.clamping.in(newton), "left between the parts " + kilonewtons(loaded.clamping)});
    return chart;
}

} // namespace

void teach_preload(Lesson& lesson, const Reference& reference, const LessonRequest& request) {
    const std::string thread = chosen(lesson, "--thread", request.thread, "M10");
    const std::string property_class = chosen(lesson, "--class", request.property_class, "8.8");
    const std::string share = chosen(lesson, "--preload", request.preload, "75%");
    const std::string grip = chosen(lesson, "--grip", request.grip, "40mm");
    const std::string under = chosen(lesson, "--under", request.under, "steel");
    const std::string load_text = chosen(lesson, "--load", request.load, "10kN");

    answer::AngleRequest of_joint;
    of_joint.thread = thread;
    of_joint.property_class = property_class;
    of_joint.grip = grip;
    of_joint.under = under;
    Document aside;
    const answer::BoltedJoint joint = answer::bolted_joint(aside, reference, of_joint);
    add_notes(lesson, aside);
    const Document strength = answer::strength(reference, thread, property_class);
    answer::DeriveRequest derive;
    derive.thread = thread;
    derive.property_class = property_class;
    derive.preload = share;
    const Document tightening = answer::derive(reference, derive);
    const Force preload = force_in(tightening, "preload");
    const Force load = read_quantity(load_text, Dimension::force).as<Dimension::force>();
    const double phi = joint.springs.load_share();
    const engine::LoadedJoint loaded = engine::under_load(preload, phi, load);
    const Force opening = engine::load_leaving(preload, phi, 0 * newton);
    const std::string area = joint.screw.area.print;

    lesson.grasp = {
        "A tightened screw is a stretched spring: the torque is only the means, the clamping force between the parts is the aim.",
        "The " + joint.screw.load_name() +
            " is the pull that the screw bears without staying longer; the preload stays under it, here " + kilonewtons(preload) +
            " of " + kilonewtons(joint.screw.proof_load.value * newton) + ".",
        "Of a load from outside the screw feels only " + percent_words(phi) +
            " while the parts stay pressed together: the rest takes pressure off the parts."};
    lesson.steps.push_back({"stress_area", "stress area", "A_s", "", figure_in(tightening, "stress_area")});
    lesson.steps.push_back({"proof_load", joint.screw.load_name(),
                            joint.screw.has_proof_stress ? "F_p = S_p · A_s" : "F_0.2 = Rp0.2 · A_s",
                            (joint.screw.has_proof_stress ? figure_in(strength, "proof_stress").print
                                                          : figure_in(strength, "yield_strength").print) +
                                " · " + area,
                            in_kilonewtons(joint.screw.proof_load)});
    lesson.steps.push_back({"preload", "preload", "F = share · F_p",
                            percent_words(preload / (joint.screw.proof_load.value * newton)) + " · " +
                                kilonewtons(joint.screw.proof_load.value * newton),
                            in_kilonewtons(figure_in(tightening, "preload"))});
    lesson.steps.push_back(compliance_step("screw_compliance", "how far the screw gives", "δ_S = Σ l / (E A)", "",
                                           joint.springs.screw, "head, shank, thread, engaged thread (VDI 2230-1)"));
    lesson.steps.push_back(compliance_step("parts_compliance", "how far the parts give", "δ_P, cones of pressure of 30°", "",
                                           joint.springs.parts, "cones from both ends (Shigley, Eq. 8-20)"));
    lesson.steps.push_back({"elongation", "so the screw is longer by", "f = F · δ_S", kilonewtons(preload) + " · δ_S",
                            derived_stretch(preload * joint.springs.screw, "F δ_S (VDI 2230-1)")});
    lesson.steps.push_back({"load_share", "share of a load that the screw feels", "Φ = δ_P / (δ_S + δ_P)", "",
                            answer::share_figure(phi, "(Shigley, Eq. 8-24)")});
    lesson.steps.push_back({"loaded_screw", "pull in the screw under " + kilonewtons(load), "F + Φ P",
                            kilonewtons(preload) + " + " + percent_words(phi) + " · " + kilonewtons(load),
                            derived_force(loaded.screw, "(Shigley, Eq. 8-24)")});
    lesson.steps.push_back({"loaded_clamping", "force left between the parts", "F − (1 − Φ) P", "",
                            derived_force(loaded.clamping, "(Shigley, Eq. 8-25)")});
    lesson.steps.push_back(
        {"opening_load", "load that opens the joint", "F / (1 − Φ)", "", derived_force(opening, "(Shigley, Eq. 8-29)")});
    lesson.chart = joint_diagram(joint, preload, loaded);
    const std::string screw = quoted(thread) + " " + quoted(property_class);
    lesson.commands = {
        {"clampbook strength " + screw, "the loads and the table that they stand in"},
        {"clampbook derive " + screw + " --preload 50%", "less preload: less torque, and a joint that opens sooner"},
        {"clampbook teach preload --grip 80mm", "a longer grip: a softer screw that feels less of the load"}};
    lesson.questions = {{"The load from outside grows to " + kilonewtons(1.2 * opening) + ". What carries it?",
                         "The joint opens at " + kilonewtons(opening) +
                             ". Beyond that nothing is pressed together any more: the screw carries the whole load and feels "
                             "every change of it. So the "
                             "preload is chosen with a reserve against opening."},
                        {"The surfaces settle by 5 µm after tightening. How much clamping force is lost?",
                         kilonewtons(engine::embedding_loss(5 * micrometre, joint.springs)) +
                             ": 5 µm / (δ_S + δ_P). The whole preload is held by only " +
                             micrometres(preload * joint.springs.both()) + " of stretch and pressing together."}};
    lesson.cautions = {answer::caution_generic(), answer::caution_maker_first()};
}

void teach_angle(Lesson& lesson, const Reference& reference, const LessonRequest& request) {
    answer::AngleRequest turn;
    turn.thread = chosen(lesson, "--thread", request.thread, "M10");
    turn.property_class = chosen(lesson, "--class", request.property_class, "10.9");
    turn.grip = chosen(lesson, "--grip", request.grip, "60mm");
    turn.under = chosen(lesson, "--under", request.under, "steel");
    turn.snug = chosen(lesson, "--snug", request.snug, "20 N·m");
    turn.turn = chosen(lesson, "--turn", request.turn, "90°");
    turn.friction = chosen(lesson, "--friction", request.friction, "0.12");
    (void)one_friction(turn.friction);
    const std::string band_text = chosen(lesson, "--friction-band", request.friction_band, "0.08..0.16");
    const engine::Band band = answer::read_friction_band(band_text);
    const Document found = answer::angle(reference, turn);
    add_notes(lesson, found);
    Document aside;
    const answer::BoltedJoint joint = answer::bolted_joint(aside, reference, turn);
    const auto angle = read_quantity(turn.turn, Dimension::angle).as<Dimension::angle>();
    const auto snug_torque = read_quantity(turn.snug, Dimension::torque).as<Dimension::torque>();
    const bool yields = text_in(found, "yields") == "yes";
    const Length lead = joint.screw.geometry.pitch;
    const Force yield = force_in(found, "yield_preload");
    const Force preload = force_in(found, "preload");
    const auto at = [&](double friction) {
        engine::FrictionJoint with = joint.twisted;
        with.thread_friction = friction;
        with.head_friction = friction;
        return std::pair{engine::friction_preload(snug_torque, with),
                         engine::assembly_preload(joint.screw.property_class.yield_strength, 1, joint.screw.geometry, friction)};
    };
    const auto preload_at = [&](double friction) {
        const auto [from, limit] = at(friction);
        return std::min(from + engine::preload_by_turn(angle, joint.springs, lead), limit);
    };
    const Force smooth = preload_at(band.low);
    const Force rough = preload_at(band.high);
    const double by_torque = at(band.low).first / at(band.high).first;

    lesson.grasp = {
        "A small torque lays the parts flat; then the turn sets how far the screw is stretched, whatever the friction.",
        yields ? "This turn goes past the yield point: from there the preload stays near " + kilonewtons(yield) +
                     " and hardly asks for friction any more."
               : "This turn stays under the yield point: the screw would go back to its length when loosened.",
        yields ? "What is stretched past yield stays longer for good: such screws are used once."
               : "Only where the maker prescribes a turn past yield are the screws used once."};
    lesson.steps.push_back({"snug_preload", "preload from the snug torque", "F_0 = T / [d2/2 tan(φ + ρ′) + μ D_Km/2]",
                            "T " + turn.snug + ", μ " + turn.friction, in_kilonewtons(figure_in(found, "snug_preload"))});
    lesson.steps.push_back({"both_compliances", "how far screw and parts give", "δ_S + δ_P",
                            figure_in(found, "screw_compliance").print + " + " + figure_in(found, "parts_compliance").print,
                            std::nullopt});
    lesson.steps.push_back(
        {"travel", "the turn travels", "θ/360° · P", turn.turn + "/360° · " + millimetres(lead), figure_in(found, "travel")});
    lesson.steps.push_back({"gained", yields ? "which would add, if all stayed elastic" : "which adds",
                            "ΔF = θ/360° · P / (δ_S + δ_P)", "", in_kilonewtons(figure_in(found, "gained"))});
    lesson.steps.push_back({"yield_preload", "but the screw yields at", "F_y = Rp0.2 A_s / √(1 + 3 (τ/σ)²)", "",
                            in_kilonewtons(figure_in(found, "yield_preload"))});
    lesson.steps.push_back(
        {"preload", "so the preload is", yields ? "F_y" : "F_0 + ΔF", "", in_kilonewtons(figure_in(found, "preload"))});
    lesson.steps.push_back({"elongation", "the screw is longer by", yields ? "F δ_S, and the rest of the turn" : "F δ_S", "",
                            figure_in(found, "elongation")});
    if (yields) {
        lesson.steps.push_back({"permanent_elongation", "of it for good", "what passes the yield point", "",
                                figure_in(found, "permanent_elongation")});
    }
    Chart& chart = lesson.chart;
    chart.title = "Preload over the turn after snug";
    chart.words = "Different friction begins at different preloads; the same turn ends near the same one.";
    chart.x = answer::nice_axis("turn after the snug torque", "°", "°", 0, angle.in(degree) * 1.05);
    chart.y = answer::nice_axis("preload", "N", "kN", 0,
                                std::max({yield.in(newton), at(band.low).second.in(newton), preload.in(newton)}) * 1.1);
    const std::array styles{LineStyle::dashed, LineStyle::solid, LineStyle::dotted};
    const std::array frictions{band.low, (band.low + band.high) / 2, band.high};
    for (std::size_t i = 0; i < frictions.size(); ++i) {
        const auto [from, limit] = at(frictions.at(i));
        const Angle to_yield = from < limit ? engine::turn_for(limit - from, joint.springs, lead) : 0 * degree;
        std::vector<std::pair<double, double>> points{{0, std::min(from, limit).in(newton)}};
        if (to_yield > 0 * degree && to_yield < angle) {
            points.emplace_back(to_yield.in(degree), limit.in(newton));
        }
        points.emplace_back(angle.in(degree), preload_at(frictions.at(i)).in(newton));
        chart.lines.push_back({"friction " + coefficient(frictions.at(i)), styles.at(i), std::move(points)});
    }
    chart.limits.push_back({true, angle.in(degree), "turn " + turn.turn});
    const std::string screw = quoted(turn.thread) + " " + quoted(turn.property_class);
    lesson.commands = {{"clampbook angle " + screw + " --grip " + quoted(turn.grip) + " --under " + quoted(turn.under) +
                            " --snug " + quoted(turn.snug) + " --turn " + quoted(turn.turn),
                        "the whole computation, with what settles afterwards"},
                       {"clampbook teach angle --turn 30°", "a short turn: the screw stays elastic, and friction still shows"},
                       {"clampbook teach angle --grip 20mm", "a short grip: the same turn is a far larger stretch"}};
    lesson.questions = {{"With friction from " + band_text +
                             ", how far does the preload spread by the snug torque alone, and how far after the turn?",
                         "By the torque alone the most is " + answer::print_quantity(by_torque, "", 3) +
                             " times the least; after the turn " + answer::print_quantity(smooth / rough, "", 3) + " times (" +
                             kilonewtons(rough) + " to " + kilonewtons(smooth) + ")."},
                        {"Why may a screw that was turned past yield not be used again?",
                         yields ? "It stays " + figure_in(found, "permanent_elongation").print +
                                      " longer for good. Each time more of its stretch is used up, until it necks and breaks; "
                                      "and its next yield point is "
                                      "unknown."
                                : "This one was not: it would be longer for good only past " + kilonewtons(yield) +
                                      ". Once past it, more of its stretch is used up each time, until it necks and breaks."}};
    lesson.cautions = found.cautions;
}

} // namespace clampbook::teach
