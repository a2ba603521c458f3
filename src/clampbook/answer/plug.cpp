// SPDX-License-Identifier: MIT
// plug: between which torques a plug seals and nothing breaks; for a taper thread, how many turns it has.

#include "clampbook/engine/plug.hpp"
#include "clampbook/answer/parts.hpp"
#include "clampbook/answer/plug_inputs.hpp"
#include "clampbook/answer/screw.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/engine/strength.hpp"
#include "clampbook/units/reading.hpp"

#include <cmath>

namespace clampbook::answer {
namespace {

using reference::Reference;
using reference::ThreadRow;

constexpr double k_wrench_turns_low = 1;
constexpr double k_wrench_turns_high = 2;

Figure derived_torque(Torque torque, std::string basis) { return torque_figure(torque, Label::derived, std::move(basis)); }

Figure turns_figure(double turns, Label label, std::string basis) {
    Figure f = number_figure(turns, std::move(basis));
    f.print = print_significant(turns, 2) + " turns";
    f.label = label;
    return f;
}

std::string over(std::string_view what, double reserve) { return fmt::format("{} / {}", what, reserve); }

std::string governs_words(const engine::PlugWindow& window) {
    switch (window.governs) {
    case engine::PlugMember::thread:
        return over("stripping", engine::k_strip_reserve);
    case engine::PlugMember::plug:
        return over("yield of the plug", engine::k_plug_reserve);
    case engine::PlugMember::face:
        return over("pressure under the ring", engine::k_face_reserve);
    }
    return {};
}

// The two ends of the window, where it has them.
struct Window {
    std::optional<Torque> low;
    std::string low_basis;
    Torque high;
    std::string high_basis;
};

// With an O-ring nothing is seated: the torques at which such ports are tested bound the window.
Window port_window(Document& document, const Reference& reference, const PlugInputs& in, const engine::PlugWindow& limits) {
    Window window{std::nullopt, {}, limits.high, governs_words(limits)};
    const auto ports = reference.port_torques(in.thread.code);
    if (ports.empty()) {
        document.notes.push_back("No torque of a port with O-ring is kept here for " + in.thread.code +
                                 ": only upper limits are known.");
        return window;
    }
    window.low = ports.front().torque;
    window.low_basis = ports.front().standard + ", light series";
    if (ports.back().torque < window.high) {
        window.high = ports.back().torque;
        window.high_basis = ports.back().standard + ", heavy series";
    }
    document.section("torques of such ports, in steel");
    for (const auto& port : ports) {
        Figure f = torque_figure(port.torque, Label::standard, port.series == "L" ? "light series" : "heavy series");
        f.citation = port.citation;
        document.add(port.series == "L" ? "port_torque.light" : "port_torque.heavy", port.standard, f);
    }
    return window;
}

void add_window(Document& document, const Window& window) {
    Section& top = document.sections.front();
    const auto add = [&](std::string key, std::string title, Figure f) {
        top.items.push_back({std::move(key), std::move(title), std::move(f), {}});
    };
    const auto say = [&](std::string key, std::string title, std::string text) {
        top.items.push_back({std::move(key), std::move(title), std::nullopt, std::move(text)});
    };
    if (window.low && *window.low > window.high) {
        const auto newton_metres = [](Torque t) { return print_quantity(t.in(newton_metre), "N·m", 4); };
        say("window.state", "window", "empty");
        say("window.reason", "why",
            fmt::format("{} asks for {}, {} allows {}", window.low_basis, newton_metres(*window.low), window.high_basis,
                        newton_metres(window.high)));
        add("window.low", "wanted at least", derived_torque(*window.low, window.low_basis));
        add("window.high", "allowed at most", derived_torque(window.high, window.high_basis));
        document.cautions.push_back({"empty-window",
                                     "No torque both seals and spares: another ring, a deeper thread or the maker's "
                                     "own procedure is needed."});
        return;
    }
    if (window.low) {
        say("window.state", "window", "open");
        if (const auto advice = engine::practical_torque(*window.low, window.high)) {
            Figure f = derived_torque(*advice, "in the window, no more than the ring needs, on a practical step");
            f.print = print_quantity(advice->in(newton_metre), "N·m", 3);
            add("advice", "advice", f);
        } else {
            say("advice_text", "advice", "none: no step of 0.5 N·m lies in the window");
        }
        add("window.low", "at least", derived_torque(*window.low, window.low_basis));
    } else {
        say("window.state", "window", "open below");
    }
    add("window.high", "at most", derived_torque(window.high, window.high_basis));
}

void add_limits(Document& document, const PlugInputs& in, const engine::PlugWindow& limits, Force strip_load) {
    const std::string low = fmt::format("friction {}", print_shortest(in.friction.low));
    document.section("limits");
    if (limits.seat) {
        document.add("seat_torque", "seats the ring",
                     derived_torque(*limits.seat, fmt::format("π/4 (D² − d²) y, friction {}", print_shortest(in.friction.high))));
    }
    document.add("strip_torque", "strips the thread", derived_torque(limits.strip, low));
    document.add("plug_torque", "plug yields", derived_torque(limits.yield, "pull and twist, least over the friction"));
    document.add("breaking_torque", "plug breaks", derived_torque(limits.breaking, "the same to Rm"));
    if (limits.face) {
        document.add("face_torque", "crushes the face under the ring", derived_torque(*limits.face, "limiting pressure, " + low));
    }
    document.add("strip_load", "load at stripping", force_figure(strip_load, "SAE 770420"));
}

void add_inputs(Document& document, const PlugInputs& in) {
    document.section("inputs");
    document.add("thread", "thread", in.thread.code);
    document.add("form", "form", in.form);
    document.add("property_class", "plug's strength", "class " + in.plug_class.name);
    document.add("ring.material", "ring", in.ring.material + (in.ring_words.empty() ? "" : ", " + in.ring_words));
    if (in.ring.seating_stress && in.ring_size) {
        document.add("ring.seating_stress", "seating stress y", curated_stress(*in.ring.seating_stress, in.ring.seating));
    }
    if (in.ring.material != "none") {
        document.add("ring.renew", "and", in.ring.renew);
    }
    document.add("face.inner", "face turned on, inside", derived_length(in.face_inner, in.face_words));
    document.add("face.outer", "face turned on, outside", derived_length(in.face_outer, in.face_words));
    document.add("engagement", "engagement", in.engagement);
    if (in.bore > 0 * millimetre) {
        document.add("bore", "hole in the core", derived_length(in.bore, in.bore_words));
    }
    document.add("housing.material", "housing", in.housing.code + ", " + in.housing.name);
    document.add("housing.shear_strength", "its shear strength",
                 curated_stress(in.housing.shear_strength, in.housing.shear, in.housing.shear_basis));
    if (in.housing.limiting_pressure) {
        document.add("housing.limiting_pressure", "its limiting pressure",
                     curated_stress(*in.housing.limiting_pressure, in.housing.pressure));
    }
    const auto friction = [&](double mu) {
        Figure f = number_figure(mu, in.friction_basis);
        f.label = in.friction_citation ? Label::standard : Label::derived;
        f.citation = in.friction_citation;
        return f;
    };
    document.add("friction.low", "friction, lowest", friction(in.friction.low));
    document.add("friction.high", "friction, highest", friction(in.friction.high));
}

// What the chart on the wall says for a screw of this thread, and what it would do here.
void compare_with_bolt_chart(Document& document, const Reference& reference, const PlugInputs& in,
                             const engine::PlugWindow& limits) {
    if (in.thread.system != ThreadSystem::metric || in.thread.major > 39 * millimetre) {
        return;
    }
    const Screw screw = screw_of(reference, in.thread.code, "8.8");
    const Torque chart = engine::torque_for(reference.preload_choice("reused").share * (screw.proof_load.value * newton),
                                            chosen_nut_factor(reference, {}, {}).value, in.thread.major);
    document.notes.push_back(fmt::format(
        "Not for a plug: a chart for screws of class 8.8 says {} for this thread, {} at which this one strips ({}).",
        print_quantity(chart.in(newton_metre), "N·m", 2), chart > limits.strip ? "more than the torque" : "less than the torque",
        print_quantity(limits.strip.in(newton_metre), "N·m", 2)));
}

void add_assumptions(Document& document, const PlugInputs& in, bool usual_class) {
    document.notes.push_back("Threads: " + in.pair.basis + ".");
    if (usual_class) {
        document.notes.emplace_back("The plug's steel is taken as class 5.8 (practice: common practice, no source).");
    }
    document.notes.push_back(
        fmt::format("Reserves: {} against stripping, {} against yield of the plug, {} against the pressure under "
                    "the ring (practice: common practice, no source).",
                    engine::k_strip_reserve, engine::k_plug_reserve, engine::k_face_reserve));
    if (in.ring_size) {
        document.notes.emplace_back(
            "The whole face of the ring is seated. No limiting pressure of the ring itself is published: a solid "
            "metal ring flattens and holds.");
    } else if (in.ring.material == "bonded") {
        document.notes.emplace_back(
            "No seating stress of a bonded ring is published: its lip seals as soon as the steel lies flat.");
    } else if (in.ring.material == "none") {
        document.notes.emplace_back("Nothing is seated without a ring: only upper limits are known.");
    } else if (in.ring.material == "o-ring") {
        document.notes.emplace_back(
            "The faces meet metal to metal; the o-ring is squeezed by its groove, not by the torque. The torques of "
            "such ports hold for steel.");
    }
}

Document taper(const ThreadRow& thread) {
    if (!thread.gauge_length || !thread.useful_length) {
        throw error(ErrorKind::not_found, "no gauge length is kept here for {}", thread.code);
    }
    const Length pitch = (1.0 / *thread.threads_per_inch) * inch;
    const engine::TaperTurns turns = engine::taper_turns(*thread.gauge_length, *thread.useful_length, pitch);
    Document document;
    document.schema = "plug";
    document.heading = thread.code + " plug: turns past hand-tight (derived, no maker's figure)";
    document.section({});
    document.add("label", "", std::string{label_name(Label::derived)});
    document.add("thread", "", thread.code);
    document.add("turns.low", "advice, at least", turns_figure(k_wrench_turns_low, Label::practice, "past hand-tight"));
    document.add(
        "turns.high", "advice, at most",
        turns_figure(std::min(k_wrench_turns_high, std::floor(2 * turns.available) / 2), Label::practice, "past hand-tight"));
    document.add("turns.available", "the thread has",
                 turns_figure(turns.available, Label::derived, "(useful − gauge length) / P, past hand-tight"));
    document.add("turns.hand_tight", "by hand", turns_figure(turns.hand_tight, Label::derived, "gauge length / P"));
    document.add("interference", "wider by each turn", derived_length(turns.interference, "P/16 on the diameter"));
    document.section("inputs");
    const auto printed = [&](Length length) {
        Figure f = figure(length, "mm", 4, Label::standard);
        f.citation = thread.citation;
        return f;
    };
    document.add("gauge_length", "gauge length", printed(*thread.gauge_length));
    document.add("useful_length", "useful thread", printed(*thread.useful_length));
    document.add("pitch", "pitch P", derived_length(pitch, "1 in / threads per inch"));
    document.notes.emplace_back("No torque is claimed for a taper thread: it wedges, and sealant and casting decide how hard.");
    document.notes.emplace_back(
        "Hand-tight is where a plug of full size stops by hand; it may stop up to a turn earlier or later.");
    document.cautions.push_back(
        {"taper-splits", "A taper plug splits a cast boss before it feels tight: stop at the turns, not at the feel."});
    return document;
}

} // namespace

Document plug(const Reference& reference, const PlugRequest& request) {
    ThreadRow thread = reference.thread(read_thread(request.thread));
    if (thread.series == "taper pipe") {
        Document document = taper(thread);
        for (const Caution& caution : {caution_fill_first(), caution_generic(), caution_maker_first()}) {
            document.cautions.push_back(caution);
        }
        return document;
    }
    for (const auto& [given, option] : {std::pair{&request.housing, "--housing"}, std::pair{&request.ring, "--ring"}}) {
        if (given->empty()) {
            throw error(ErrorKind::usage,
                        "{} is missing; plug asks what the plug is in and what seals it, like --housing EN-GJL-250 "
                        "--ring copper",
                        option);
        }
    }
    Document document;
    document.schema = "plug";
    const PlugInputs in = plug_inputs(document, reference, request, std::move(thread));
    document.heading = thread_for_print(in.thread.code) + " plug: torque window (derived, no maker's figure)";
    document.section({});
    document.add("label", "", std::string{label_name(Label::derived)});

    const engine::StripLoads strip =
        engine::strip_loads(engine::shear_areas(in.pair.pair, in.engagement.value * millimetre),
                            {in.shear.ratio * in.plug_class.tensile_strength, in.housing.shear_strength});
    engine::PlugLimits limits;
    limits.strip = strip.least();
    limits.yield_strength = in.plug_class.yield_strength;
    limits.tensile_strength = in.plug_class.tensile_strength;
    if (in.ring.seating_stress && in.ring_size) {
        limits.seat = engine::seating_load(in.face_inner, in.face_outer, *in.ring.seating_stress);
    }
    if (in.housing.limiting_pressure) {
        limits.face = engine::seating_load(in.face_inner, in.face_outer, *in.housing.limiting_pressure);
    } else {
        document.notes.push_back("No limiting surface pressure is kept here for " + in.housing.code + ".");
    }
    const engine::PlugWindow found =
        engine::plug_window({in.geometry, in.face_outer, in.face_inner, in.bore}, limits, in.friction);
    const Window window = in.ring.material == "o-ring" ? port_window(document, reference, in, found)
                                                       : Window{found.seat, "seating the ring", found.high, governs_words(found)};
    add_window(document, window);
    add_limits(document, in, found, limits.strip);
    add_inputs(document, in);
    compare_with_bolt_chart(document, reference, in, found);
    add_assumptions(document, in, request.property_class.empty());
    for (const Caution& caution : {caution_generic(), caution_no_prescription(), caution_fill_first(), caution_maker_first()}) {
        document.cautions.push_back(caution);
    }
    return document;
}

} // namespace clampbook::answer
