// SPDX-License-Identifier: MIT
// The lessons on what gives way: strip (coarse and fine, aluminium and iron, engagement) and plug (the window of a drain plug).

#include "clampbook/base/error.hpp"
#include "clampbook/engine/strip.hpp"
#include "clampbook/teach/lesson_parts.hpp"
#include "clampbook/units/reading.hpp"

#include <algorithm>
#include <array>

namespace clampbook::teach {
namespace {

using answer::Chart;
using answer::ChartKind;
using answer::Document;
using answer::LineStyle;
using reference::Reference;

// Loads at which a thread in a housing strips, over the engagement. Without torque: only what the engine needs.
struct Stripping {
    engine::ThreadPair pair;
    engine::ShearStrengths strengths;

    [[nodiscard]] Force at(Length engagement) const {
        return engine::strip_loads(engine::shear_areas(pair, engagement), strengths).least();
    }
};

Stripping stripping(const Reference& reference, const answer::Screw& screw, const reference::MaterialRow& housing) {
    return {
        answer::pair_of(reference, screw.thread, false).pair,
        {reference.shear_ratio(screw.property_class.name).ratio * screw.property_class.tensile_strength, housing.shear_strength}};
}

} // namespace

void teach_strip(Lesson& lesson, const Reference& reference, const LessonRequest& request) {
    answer::StripRequest strip;
    strip.thread = chosen(lesson, "--thread", request.thread, "M10");
    const std::string fine = chosen(lesson, "--other-thread", request.other_thread, "M10x1.25");
    strip.property_class = chosen(lesson, "--class", request.property_class, "8.8");
    strip.housing = chosen(lesson, "--housing", request.housing, "EN AC-46000");
    const std::string second = chosen(lesson, "--other-housing", request.other_housing, "EN-GJL-250");
    strip.engagement = chosen(lesson, "--engagement", request.engagement, "12mm");
    const Document found = answer::strip(reference, strip);
    lesson.notes = found.notes;
    const answer::Screw screw = answer::screw_of(reference, strip.thread, strip.property_class);
    const answer::Screw fine_screw = answer::screw_of(reference, fine, strip.property_class);
    Document aside;
    const reference::MaterialRow soft = answer::material_of(reference, strip.housing, aside);
    const reference::MaterialRow hard = answer::material_of(reference, second, aside);
    const auto engagement = read_quantity(strip.engagement, Dimension::length).as<Dimension::length>();
    const Stripping here = stripping(reference, screw, soft);
    const Stripping fine_here = stripping(reference, fine_screw, soft);
    const Stripping in_hard = stripping(reference, screw, hard);
    const Force strips = force_in(found, "strip_load");
    const Force breaks = force_in(found, "min_tensile_load");
    const Force fine_strips = fine_here.at(engagement);
    const Force hard_strips = in_hard.at(engagement);
    const Length needed = figure_in(found, "needed_engagement").value * millimetre;
    const Length needed_hard = engine::engagement_for(breaks, in_hard.pair, in_hard.strengths);
    const bool housing_first = force_in(found, "housing.strip_load") <= force_in(found, "screw.strip_load");

    lesson.grasp = {
        "A thread strips where shear area times shear strength of its weaker side is less than what pulls at it; in " +
            soft.code + " this side is " + (housing_first ? "the housing." : "the screw."),
        "A broken screw is a new screw, a stripped housing is a new housing: so the screw goes in so deep that it breaks first, "
        "here " +
            millimetres(needed) + " of full thread, in " + hard.code + " " + millimetres(needed_hard) + ".",
        "A fine thread is no cure: at the same depth " + fine + " strips at " + kilonewtons(fine_strips) + ", " + strip.thread +
            " at " + kilonewtons(strips) + "."};
    lesson.steps.push_back({"housing.shear_area", "shear area in the housing", "A_SI = π L/P · d [P/2 + (d − D2) tan 30°]",
                            "L " + strip.engagement, figure_in(found, "housing.shear_area")});
    lesson.steps.push_back({"screw.shear_area", "shear area in the screw", "A_SG = π L/P · D1 [P/2 + (d2 − D1) tan 30°]", "",
                            figure_in(found, "screw.shear_area")});
    lesson.steps.push_back({"housing.shear_strength", "shear strength of the housing", "τ_B of " + soft.code, "",
                            figure_in(found, "housing.shear_strength")});
    lesson.steps.push_back({"screw.shear_strength", "shear strength of the screw", "τ_S = ratio · R_m", "",
                            figure_in(found, "screw.shear_strength")});
    lesson.steps.push_back(
        {"strength_ratio", "strength ratio", "R_s = τ_B A_SI / (τ_S A_SG)", "", figure_in(found, "strength_ratio")});
    lesson.steps.push_back({"c3", "the housing's thread bends", "C3 by R_s", "", figure_in(found, "c3")});
    lesson.steps.push_back({"housing.strip_load", "the housing's thread strips at", "F = C1 C3 τ_B A_SI",
                            figure_in(found, "c1").print + " · " + figure_in(found, "c3").print + " · " +
                                figure_in(found, "housing.shear_strength").print + " · " +
                                figure_in(found, "housing.shear_area").print,
                            in_kilonewtons(figure_in(found, "housing.strip_load"))});
    lesson.steps.push_back({"screw.strip_load", "the screw's thread strips at", "F = C1 C2 τ_S A_SG", "",
                            in_kilonewtons(figure_in(found, "screw.strip_load"))});
    lesson.steps.push_back(
        {"min_tensile_load", "the screw breaks at", "F_m = R_m A_s", "", in_kilonewtons(figure_in(found, "min_tensile_load"))});
    lesson.steps.push_back({"needed_engagement", "depth from which the screw breaks first", "L = F_m / (load per mm)", "",
                            figure_in(found, "needed_engagement")});
    lesson.steps.push_back(
        {"fine_strip_load", fine + " at the same depth", "the same", "", derived_force(fine_strips, "SAE 770420")});
    lesson.steps.push_back({"hard_strip_load", "in " + hard.code + " at the same depth", "the same",
                            "τ_B " + answer::print_quantity(hard.shear_strength.in(megapascal), "MPa", 3),
                            derived_force(hard_strips, "SAE 770420")});

    Chart& chart = lesson.chart;
    chart.title = "Load at stripping over the engagement";
    chart.words = "Where a line passes the screw's breaking load, the screw breaks first.";
    const Length from = screw.geometry.pitch;
    const Length to = std::max(1.2 * std::max(engagement, needed), 1.5 * screw.thread.major);
    const Length last = std::min(to, std::min(3 * screw.thread.major, 3 * fine_screw.thread.major));
    const Length first = std::max(from, fine_screw.geometry.pitch);
    double top = breaks.in(newton);
    const auto add = [&](std::string name, LineStyle style, const Stripping& of) {
        chart.lines.push_back({std::move(name), style, curve(first.in(millimetre), last.in(millimetre), 24, [&](double x) {
                                   return of.at(x * millimetre).in(newton);
                               })});
    };
    add(strip.thread + " in " + soft.code, LineStyle::solid, here);
    add(fine + " in " + soft.code, LineStyle::dashed, fine_here);
    add(strip.thread + " in " + hard.code, LineStyle::dotted, in_hard);
    for (const answer::ChartLine& line : chart.lines) {
        top = std::max(top, std::min(line.points.back().second, 2 * breaks.in(newton)));
    }
    chart.x = answer::nice_axis("engagement", "mm", "mm", 0, last.in(millimetre));
    chart.y = answer::nice_axis("load", "N", "kN", 0, top);
    for (answer::ChartLine& line : chart.lines) { // a line that leaves the chart ends at its upper edge
        while (line.points.size() > 2 && line.points[line.points.size() - 2].second > chart.y.high) {
            line.points.pop_back();
        }
        auto& [x, y] = line.points.back();
        if (const auto& [px, py] = line.points[line.points.size() - 2]; y > chart.y.high) {
            x = px + (x - px) * (chart.y.high - py) / (y - py);
            y = chart.y.high;
        }
    }
    chart.limits.push_back({false, breaks.in(newton), "the screw breaks " + kilonewtons(breaks)});
    chart.limits.push_back({true, engagement.in(millimetre), strip.engagement});
    const std::string same = "clampbook strip " + quoted(strip.thread) + " " + quoted(strip.property_class) + " --engagement " +
                             quoted(strip.engagement);
    lesson.commands = {{same + " --housing " + quoted(strip.housing), "the whole computation, and the torque at stripping"},
                       {same + " --housing " + quoted(second), "the same screw in another housing"},
                       {"clampbook strip " + quoted(strip.thread) + " " + quoted(strip.property_class) + " --housing " +
                            quoted(strip.housing) + " --engagement 6..18:3mm",
                        "a table over the depth"}};
    lesson.questions = {{"Only half of the thread is left in the housing (" + millimetres(0.5 * engagement) +
                             "). At which pull does it strip now?",
                         kilonewtons(here.at(0.5 * engagement)) +
                             ": half the depth, half the load. A thread that was torn once does not carry as before."},
                        {"Would a stronger screw hold better in this housing?",
                         housing_first
                             ? "No. The housing's thread strips at " + kilonewtons(force_in(found, "housing.strip_load")) +
                                   " whatever the screw bears; a stronger screw only asks for more depth before it breaks first."
                             : "Here the screw's own thread goes first, at " + kilonewtons(force_in(found, "screw.strip_load")) +
                                   "; a stronger one holds more, until the housing goes first."}};
    lesson.cautions = found.cautions;
}

void teach_plug(Lesson& lesson, const Reference& reference, const LessonRequest& request) {
    answer::PlugRequest plug;
    plug.thread = chosen(lesson, "--thread", request.thread, "M18x1.5");
    plug.housing = chosen(lesson, "--housing", request.housing, "EN AC-46000");
    plug.ring = chosen(lesson, "--ring", request.ring, "copper");
    const Document found = answer::plug(reference, plug);
    lesson.notes = found.notes;
    if (find_figure(found, "strip_torque") == nullptr) {
        throw error(ErrorKind::out_of_validity,
                    "{} seals by its own taper, without a window of torque; this lesson takes a parallel thread", plug.thread);
    }
    const answer::Figure* seat = find_figure(found, "seat_torque");
    if (seat == nullptr) {
        throw error(ErrorKind::out_of_validity,
                    "a ring '{}' is not seated by the torque; this lesson takes a flat ring of copper, aluminium or steel",
                    plug.ring);
    }
    const bool empty = text_in(found, "window.state") == "empty";
    const Torque low = torque_in(found, "window.low");
    const Torque high = torque_in(found, "window.high");
    const answer::Figure* advice = find_figure(found, "advice");
    std::optional<Torque> chart_torque;
    const reference::ThreadRow thread = reference.thread(read_thread(plug.thread));
    if (thread.system == ThreadSystem::metric && thread.major <= 39 * millimetre) {
        answer::DeriveRequest bolt;
        bolt.thread = plug.thread;
        bolt.property_class = "8.8";
        chart_torque = torque_in(answer::derive(reference, bolt), "torque");
    }
    const Torque strips = torque_in(found, "strip_torque");

    lesson.grasp = {"The torque of a plug has one task: to press its ring until it flows into both faces; here " +
                        newton_metres(low) + " do that even where friction is high. More does not seal better.",
                    empty ? "Here no torque both seals and spares: at most " + newton_metres(high) + " are allowed."
                          : "Over it stands a lid: at most " + newton_metres(high) +
                                ", or housing, ring face or plug suffer. Between lies the window.",
                    chart_torque ? "A chart for bolts says " + newton_metres(*chart_torque) + " for this thread" +
                                       (*chart_torque > strips ? ", more than the " + newton_metres(strips) +
                                                                     " at which this one strips: it ruins the sump."
                                                               : ": it knows nothing of rings and soft housings.")
                                 : "A chart for bolts knows nothing of rings and soft housings."};
    const auto step = [&](const char* key, const char* title, const char* formula, std::string worked = {}) {
        if (const answer::Figure* figure = find_figure(found, key)) {
            lesson.steps.push_back(
                {key, title, formula, std::move(worked), figure->unit == "N" ? in_kilonewtons(*figure) : *figure});
        }
    };
    step("ring.seating_stress", "pressure that seats the ring", "y");
    step("seat_torque", "torque that seats it at the highest friction", "F = π/4 (D² − d²) y; T by friction",
         "D " + figure_in(found, "face.outer").print + ", d " + figure_in(found, "face.inner").print + ", μ " +
             figure_in(found, "friction.high").print);
    step("strip_load", "load at which the thread strips", "F = C1 C3 τ A", "L " + figure_in(found, "engagement").print);
    step("strip_torque", "torque that makes it at the lowest friction", "T by friction",
         "μ " + figure_in(found, "friction.low").print);
    step("plug_torque", "torque at which the plug yields", "pull and twist together");
    step("face_torque", "torque that crushes the face under the ring", "p_G · face; T by friction");
    step("window.low", "lower end of the window", "the ring is seated");
    step("window.high", "upper end of the window", "each limit over its reserve, the least");
    step("advice", "advice", "in the window, on a practical step");

    Chart& chart = lesson.chart;
    chart.kind = ChartKind::bars;
    chart.title = "The torques of one plug, as a ladder";
    chart.words = "The wrench belongs between the ends of the window; what stands above it breaks something.";
    std::vector<std::pair<std::string, Torque>> rungs;
    const auto rung = [&](const char* key, std::string name) {
        if (const answer::Figure* figure = find_figure(found, key)) {
            rungs.emplace_back(std::move(name), figure->value * newton_metre);
        }
    };
    rung("breaking_torque", "plug breaks");
    rung("plug_torque", "plug yields");
    rung("strip_torque", "thread strips");
    rung("face_torque", "face under the ring is crushed");
    rung("advice", "advice");
    rung("seat_torque", "ring is seated");
    if (chart_torque) {
        rungs.emplace_back("bolt chart, class 8.8", *chart_torque);
    }
    std::ranges::stable_sort(rungs, [](const auto& a, const auto& b) { return a.second > b.second; });
    double most = 0;
    for (const auto& [name, torque] : rungs) {
        const bool is_chart = name.starts_with("bolt chart");
        chart.bars.push_back({name,
                              {{0, torque.in(newton_metre), "",
                                is_chart           ? std::size_t{3}
                                : name == "advice" ? std::size_t{0}
                                                   : std::size_t{2}}},
                              newton_metres(torque)});
        most = std::max(most, torque.in(newton_metre));
    }
    chart.x = answer::nice_axis("torque", "N·m", "N·m", 0, most);
    if (!empty) {
        chart.bands.push_back(
            {true, low.in(newton_metre), high.in(newton_metre), "window " + newton_metres(low) + " to " + newton_metres(high)});
    }
    const std::string same = "clampbook plug " + quoted(plug.thread);
    lesson.commands = {
        {same + " --housing " + quoted(plug.housing) + " --ring " + quoted(plug.ring), "the window, with every limit and source"},
        {same + " --housing EN-GJL-250 --ring " + quoted(plug.ring), "the same plug in cast iron"},
        {"clampbook teach plug --ring aluminium", "a softer ring: less torque seats it"}};
    lesson.questions = {{"The plug weeps after it was tightened to " + (advice != nullptr ? advice->print : newton_metres(low)) +
                             ". Tighten further?",
                         "No: loosen it and look. The ring is old, the face is scored, or dirt lies between. More torque only "
                         "brings the thread nearer to the " +
                             newton_metres(strips) + " at which it strips."},
                        {"Why is the lower end reckoned with high friction and the upper end with low?",
                         "Friction is not known. At the highest the ring must still be seated (" + newton_metres(low) +
                             "); at the lowest nothing may break: there the same torque pulls most."}};
    lesson.cautions = found.cautions;
}

} // namespace clampbook::teach
