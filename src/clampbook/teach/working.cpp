// SPDX-License-Identifier: MIT
// The lessons on the work itself: units (one number, four torques; adapters) and order (the order of a fluid change, which is
// common practice of the trade).

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/engine/wrench.hpp"
#include "clampbook/teach/lesson_parts.hpp"
#include "clampbook/units/reading.hpp"

#include <algorithm>
#include <array>

namespace clampbook::teach {
namespace {

using answer::Chart;
using answer::ChartKind;
using answer::Document;
using reference::Reference;

constexpr const char* k_practice = "common practice, no source";

// The same number in another unit of torque.
answer::Figure read_as(double value, const UnitInfo& unit, std::string basis) {
    return derived_torque(unit.to_canonical(value) * newton_metre, std::move(basis));
}

answer::Figure practice_figure(double canonical, std::string_view unit, std::string print, std::string also = {}) {
    answer::Figure f;
    f.value = canonical;
    f.unit = unit;
    f.print = std::move(print);
    f.also = std::move(also);
    f.label = Label::practice;
    f.basis = k_practice;
    return f;
}

std::string fahrenheit(double celsius) { return answer::print_quantity(unit_named("°F").from_canonical(celsius), "°F", 3); }

} // namespace

void teach_units(Lesson& lesson, const Reference& reference, const LessonRequest& request) {
    const std::string torque_text = chosen(lesson, "--torque", request.torque, "24 lbf·ft");
    const std::string adapter_text = chosen(lesson, "--adapter", request.adapter, "60mm");
    const std::string length_text = chosen(lesson, "--length", request.length, "400mm");
    const Reading meant = read_quantity(torque_text, Dimension::torque);
    const auto torque = meant.as<Dimension::torque>();
    const std::string number = print_shortest(meant.value);
    constexpr std::array k_units{"lbf·in", "N·m", "lbf·ft", "kgf·m"};
    answer::WrenchRequest wrench;
    wrench.torque = torque_text;
    wrench.adapter = adapter_text;
    wrench.length = length_text;
    wrench.unit = "N·m";
    const auto setting = [&](const char* turned) {
        wrench.turned = turned;
        return figure_in(answer::wrench(reference, wrench), "setting");
    };
    const answer::Figure in_line = setting("0°");
    const answer::Figure across = setting("90°");
    const answer::Figure back = setting("180°");
    const double inch = unit_named("lbf·in").to_canonical(meant.value);
    const double foot = unit_named("lbf·ft").to_canonical(meant.value);

    lesson.grasp = {"A number without its unit is no torque: " + number + " can be " + newton_metres(inch * newton_metre) +
                        " or " + newton_metres(unit_named("kgf·m").to_canonical(meant.value) * newton_metre) + ".",
                    "The dangerous slip is inch for foot: lbf·in is a twelfth of lbf·ft, so that " + number +
                        " read as the wrong one is 12 times too much or too little.",
                    "An adapter in line makes the wrench longer: for " + newton_metres(torque) + " it is set to " +
                        in_line.print + "; across the wrench it changes nothing."};
    lesson.steps.push_back({"as_meant", "what is meant", "T", torque_text,
                            derived_torque(torque, "exact factors of inch, pound and standard gravity (NIST SP 811, B.8)")});
    for (const char* symbol : k_units) {
        const UnitInfo& unit = unit_named(symbol);
        lesson.steps.push_back({std::string{"read_as."} + (symbol == std::string_view{"N·m"}      ? "newton_metre"
                                                           : symbol == std::string_view{"lbf·ft"} ? "pound_foot"
                                                           : symbol == std::string_view{"lbf·in"} ? "pound_inch"
                                                                                                  : "kilopond_metre"),
                                "the number read as " + std::string{symbol}, "",
                                number + " · " + print_significant(unit.factor, 6) + " N·m",
                                read_as(meant.value, unit, "(NIST SP 811, B.8)")});
    }
    lesson.steps.push_back({"setting.in_line", "adapter in line: set", "S = T L / (L + E cos a)",
                            newton_metres(torque) + " · " + length_text + " / (" + length_text + " + " + adapter_text + ")",
                            in_line});
    lesson.steps.push_back({"setting.across", "adapter across: set", "S = T, for cos 90° = 0", "", across});
    lesson.steps.push_back({"setting.back", "adapter turned back: set", "S = T L / (L − E), for cos 180° = −1",
                            newton_metres(torque) + " · " + length_text + " / (" + length_text + " − " + adapter_text + ")",
                            back});
    Chart& chart = lesson.chart;
    chart.kind = ChartKind::bars;
    chart.title = "What " + number + " is, by the unit behind it";
    chart.words = "The same number is four torques; only one of them is meant.";
    double most = 0;
    for (const char* symbol : k_units) {
        const UnitInfo& unit = unit_named(symbol);
        const double value = unit.to_canonical(meant.value);
        most = std::max(most, value);
        const bool is_meant = unit.symbol == meant.unit->symbol;
        chart.bars.push_back({number + " " + symbol + (is_meant ? ", as meant" : ""),
                              {{0, value, "", is_meant ? std::size_t{0} : std::size_t{2}}},
                              newton_metres(value * newton_metre)});
    }
    chart.x = answer::nice_axis("torque", "N·m", "N·m", 0, most);
    lesson.commands = {{"clampbook convert " + quoted(torque_text), "the torque in the workshop's other units"},
                       {"clampbook wrench " + quoted(torque_text) + " --adapter " + quoted(adapter_text) + " --length " +
                            quoted(length_text) + " --unit N·m",
                        "what to set, step by step"},
                       {"clampbook convert '24 lbf·in' --to N·m", "the slip in numbers"}};
    lesson.questions = {
        {"A bulletin says " + number + " lbf·in. Somebody sets " + number + " lbf·ft. What arrives, and what was meant?",
         newton_metres(foot * newton_metre) + " arrive, " + newton_metres(inch * newton_metre) +
             " were meant: 12 times as much."},
        {"The adapter of " + adapter_text + " is turned back over the handle. Is the wrench set higher or lower?",
         "Higher, to " + back.print + ": the lever is shorter than the wrench shows."}};
    lesson.cautions = {answer::caution_maker_first()};
}

void teach_order(Lesson& lesson, const Reference& reference, const LessonRequest& request) {
    answer::PlugRequest plug;
    plug.thread = chosen(lesson, "--thread", request.thread, "M18x1.5");
    plug.housing = chosen(lesson, "--housing", request.housing, "EN AC-46000");
    plug.ring = chosen(lesson, "--ring", request.ring, "copper");
    const Document found = answer::plug(reference, plug);
    const answer::Figure* low = find_figure(found, "window.low");
    const answer::Figure* high = find_figure(found, "window.high");
    const std::string degrees = "20 to 40 °C (" + fahrenheit(20) + " to " + fahrenheit(40) + ")";

    lesson.grasp = {
        "The fill plug comes first: a unit that was drained and can't be filled is a vehicle that stays where it stands.",
        "Rings and strainer are new every time, and every plug goes back at the torque of this very joint, from the maker's "
        "manual or the shop's own book.",
        "The level is set with the engine off and the fluid at " + degrees +
            ": it is right when the flow at the level opening thins to drops at its edge."};
    struct Work {
        const char* key;
        const char* title;
        const char* why;
    };
    constexpr std::array k_before{
        Work{"faults", "read out the faults and note them", "what was there before the work is known afterwards"},
        Work{"place", "level ground, secured; fluid and tools ready", "a tilted unit shows a wrong level"},
        Work{"fill_plug", "loosen the fill plug", "before the drain plug: what can't be filled must not be emptied"},
        Work{"drain", "open the drain plug and drain", "look at fluid and chips before they are gone"},
        Work{"clean", "clean; new strainer, new rings", "a ring that was seated once is hard and marked"}};
    for (const Work& work : k_before) {
        lesson.steps.push_back({work.key, work.title, "", work.why, std::nullopt});
    }
    LessonStep close{"drain_plug", "refit the drain plug at its torque", "", "the shop's figure; none is shipped here",
                     std::nullopt};
    if (low != nullptr && high != nullptr && text_in(found, "window.state") == "open") {
        close.worked += ". While it is missing: the generic window of such a plug, " + low->print + " to " + high->print +
                        " (derived), the lower half of it";
    }
    lesson.steps.push_back(std::move(close));
    lesson.steps.push_back(
        {"fill", "fill until it stands at the edge", "", "the right fluid, by the maker's number", std::nullopt});
    lesson.steps.push_back(
        {"level.low", "set the level, engine off, not colder than", "", "", practice_figure(20, "°C", "20 °C", fahrenheit(20))});
    lesson.steps.push_back({"level.high", "and not warmer than", "", "the level is right when the flow thins to drops",
                            practice_figure(40, "°C", "40 °C", fahrenheit(40))});
    lesson.steps.push_back({"close", "new ring, close at its torque", "", "", std::nullopt});
    lesson.steps.push_back({"interval", "write down what was done; next change after", "",
                            "who, when, which figures and from where", practice_figure(36, "", "36 months")});
    Chart& chart = lesson.chart;
    chart.kind = ChartKind::bars;
    chart.title = "What is open at which step";
    chart.words = "The fill plug is loose before the drain plug is, and stays so until the level is right.";
    const auto number_of = [&](std::string_view key) {
        const auto at = std::ranges::find(lesson.steps, key, &LessonStep::key);
        return static_cast<double>(at - lesson.steps.begin()) + 1;
    };
    chart.x = answer::Axis{"step", "", "", 1, static_cast<double>(lesson.steps.size()) + 1, {}};
    for (std::size_t i = 1; i <= lesson.steps.size(); ++i) {
        chart.x.ticks.push_back(static_cast<double>(i));
    }
    chart.bars.push_back({"fill plug", {{number_of("fill_plug"), number_of("close"), "", 2}}, ""});
    chart.bars.push_back({"drain plug", {{number_of("drain"), number_of("drain_plug"), "", 1}}, ""});
    chart.bars.push_back({"fluid at 20 to 40 °C", {{number_of("level.low"), number_of("close"), "", 0}}, ""});
    lesson.commands = {
        {"clampbook plug " + quoted(plug.thread) + " --housing " + quoted(plug.housing) + " --ring " + quoted(plug.ring),
         "the generic window, while no figure of the maker is on hand"},
        {"clampbook demo try.db", "an invented book to look plugs up in"},
        {"clampbook find drain plug drop box --book try.db", "a look-up, with whose figure it is"}};
    lesson.questions = {
        {"The fill plug doesn't come loose. What now?",
         "Nothing is drained. The unit keeps its fluid and the vehicle its wheels; first the fill plug is made to open."},
        {"The fluid is 60 °C warm and the flow has thinned to drops. Is the level right?",
         "No. Warm fluid takes more room: cooled down to " + degrees +
             " it will stand too low. Let it cool and set the level again."}};
    lesson.notes = {"The order, the temperatures and the interval are practice: common practice, no source. The maker's "
                    "instruction for the unit goes before them."};
    lesson.cautions = {
        answer::caution_fill_first(),
        {"hot-fluid", "Fluid and parts may be hot, and a raised vehicle can fall: secure it, and wear gloves and goggles."},
        answer::caution_generic(),
        answer::caution_maker_first()};
}

} // namespace clampbook::teach
