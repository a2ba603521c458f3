// SPDX-License-Identifier: MIT
// scatter: the preloads that one torque makes, by a way of tightening or by friction and tool, as bounds and as draws.

#include "clampbook/engine/scatter.hpp"
#include "clampbook/answer/parts.hpp"
#include "clampbook/answer/screw.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/engine/strength.hpp"
#include "clampbook/units/reading.hpp"

#include <functional>

namespace clampbook::answer {
namespace {

using reference::Reference;

constexpr std::size_t k_parts = 20;

engine::Draws read_draws(const ScatterRequest& request) {
    engine::Draws draws;
    if (!request.seed.empty()) {
        draws.seed = read_count(request.seed, "seed", 0, 1'000'000'000);
    }
    if (!request.draws.empty()) {
        draws.count = read_count(request.draws, "number of draws", engine::k_draws_min, engine::k_draws_max);
    }
    if (request.shape == "triangular") {
        draws.shape = engine::Shape::triangular;
    } else if (!request.shape.empty() && request.shape != "rectangular") {
        throw error(ErrorKind::usage, "'{}' is no shape known here; it is rectangular or triangular", request.shape);
    }
    return draws;
}

std::string shape_words(const engine::Draws& draws) {
    return draws.shape == engine::Shape::rectangular ? "rectangular (every value alike; JCGM 100:2008, 4.3.7)"
                                                     : "triangular (the middle likelier; JCGM 100:2008, 4.3.9)";
}

// What both ways give: the bounds, the draws, where they come from.
struct Outcome {
    engine::PreloadBounds bounds;
    std::string bounds_basis;
    std::function<engine::Spread()> draw; ///< made last, when nothing is left to refuse
    std::string drawn;                    ///< what is drawn, in words
};

Outcome by_method(Document& document, const Reference& reference, const ScatterRequest& request, const Screw& screw,
                  Torque torque, const engine::Draws& draws) {
    if (request.face != FaceChoice{} || !request.tool.empty()) {
        throw error(ErrorKind::usage,
                    "--tool, --head, --hole and --bearing belong to --friction; a method's scatter holds its tool");
    }
    const reference::ScatterRow row = reference.scatter(request.method);
    const ChosenNutFactor k = chosen_nut_factor(reference, request.nut_factor, request.condition);
    const Force mean = engine::preload_from(torque, k.value, screw.thread.major);
    const double s = row.half_range ? *row.half_range : engine::scatter_of(*row.factor);
    document.add("nut_factor", "nut factor K", k.figure);
    document.add("method", "way of tightening", row.method);
    Figure scatter = share_figure(s, row.half_range ? "on either side of the mean" : "(α_A − 1)/(α_A + 1)");
    scatter.print = "±" + scatter.print;
    scatter.label = row.half_range ? Label::standard : Label::derived;
    scatter.citation = row.citation;
    document.add("scatter", "its scatter", scatter);
    return {engine::bounds_about(mean, s), "mean ± scatter", [=] { return engine::draw_about(mean, s, draws); },
            "the preload, " + shape_words(draws) + ", over its whole scatter"};
}

Outcome by_friction(Document& document, const Reference& reference, const ScatterRequest& request, const Screw& screw,
                    Torque torque, const engine::Draws& draws) {
    if (!request.nut_factor.empty() || !request.condition.empty()) {
        throw error(ErrorKind::usage, "--nut-factor and --condition belong to --method; --friction stands in their place");
    }
    const engine::Band band = read_friction_band(request.friction);
    const double tool = request.tool.empty() ? 0 : read_share(request.tool, "a tool's deviation is a share of its reading", "4%");
    const auto [bearing, hole] = face_of(reference, request.face, screw.thread.size);
    const engine::FrictionJoint joint{screw.geometry, band.low, band.low, bearing.value * millimetre, hole.value * millimetre};
    document.add("friction.low", "friction, lowest", number_figure(band.low, "as given"));
    document.add("friction.high", "friction, highest", number_figure(band.high, "as given"));
    Figure deviation = share_figure(tool, request.tool.empty() ? "not counted" : "as given");
    deviation.print = "±" + deviation.print;
    document.add("tool", "deviation of the tool", deviation);
    document.add("bearing_diameter", "bearing face d_w", bearing);
    document.add("hole", "hole d_h", hole);
    return {engine::friction_bounds(torque, joint, band, tool), "torque and friction at their ends (VDI 2230-1)",
            [=] { return engine::draw_by_friction(torque, joint, band, tool, draws); },
            "friction in the thread, friction under the head and the tool's deviation, each for itself and " +
                shape_words(draws) + ", over its whole band"};
}

Figure drawn_force(Force force) { return force_figure(force, "drawn"); }

void add_outcome(Document& document, const ScatterRequest& request, const Screw& screw, const engine::Draws& draws,
                 const Outcome& outcome) {
    std::optional<Force> needed;
    if (!request.needed.empty()) {
        needed = read_quantity(request.needed, Dimension::force).as<Dimension::force>();
    }
    const engine::Spread spread = outcome.draw();
    const Force proof = screw.proof_load.value * newton;
    document.section("bounds that always hold");
    document.add("preload.least", "least preload", force_figure(outcome.bounds.least, outcome.bounds_basis));
    document.add("preload.most", "most preload", force_figure(outcome.bounds.most, outcome.bounds_basis));
    document.add("tightening_factor", "tightening factor α_A",
                 number_figure(outcome.bounds.factor(), "most over least (VDI 2230-1)", 3));

    document.section(fmt::format("{} draws, seed {}", draws.count, draws.seed));
    document.add("draws", "", count_figure(draws.count));
    document.add("seed", "", count_figure(draws.seed));
    document.add("mean", "mean", drawn_force(spread.mean()));
    document.add("standard_deviation", "standard deviation", drawn_force(spread.deviation()));
    for (const int percent : {1, 5, 25, 50, 75, 95, 99}) {
        document.add(fmt::format("percentiles.p{}", percent), fmt::format("{} % lie under", percent),
                     drawn_force(spread.percentile(percent / 100.0)));
    }
    document.section("chances");
    document.add("chance_over_proof", "passes the " + screw.load_name(),
                 share_figure(spread.share_over(proof), "of the draws, over " + screw.proof_load.print));
    Histogram h;
    h.title = "how often each preload comes";
    h.unit = "N";
    h.shown_in = "kN";
    h.low = outcome.bounds.least.in(newton);
    h.high = outcome.bounds.most.in(newton);
    h.total = draws.count;
    h.marks.push_back({proof.in(newton), screw.load_name()});
    if (needed) {
        document.add("chance_under_needed", "falls under what is needed",
                     share_figure(spread.share_under(*needed), "of the draws, under " + request.needed));
        h.marks.push_back({needed->in(newton), "needed"});
    }
    if (outcome.bounds.least < outcome.bounds.most) {
        h.counts = spread.histogram(outcome.bounds.least, outcome.bounds.most, k_parts);
        document.histogram = std::move(h);
    }
    document.notes.push_back("Drawn: " + outcome.drawn + ".");
    document.notes.emplace_back(
        "The same seed draws the same on every machine (64-bit Mersenne twister). A preload over the yield "
        "point is counted as if the screw stayed elastic.");
}

} // namespace

Document scatter(const Reference& reference, const ScatterRequest& request) {
    if (request.torque.empty()) {
        throw error(ErrorKind::usage, "a torque is missing; give it with --torque, like --torque '50 N·m'");
    }
    if (request.method.empty() == request.friction.empty()) {
        throw error(ErrorKind::usage, "what the scatter comes from is {}; give either --method or --friction",
                    request.method.empty() ? "missing" : "said twice");
    }
    const Screw screw = screw_of(reference, request.thread, request.property_class);
    const engine::Draws draws = read_draws(request);
    const Reading reading = read_quantity(request.torque, Dimension::torque);
    const auto torque = reading.as<Dimension::torque>();
    Document document;
    document.schema = "scatter";
    document.heading = screw.title() + ": spread of the preload from one torque (derived, no maker's figure)";
    document.section({});
    document.add("label", "", std::string{label_name(Label::derived)});
    document.add("thread", "", screw.thread.code);
    document.add("property_class", "", screw.property_class.name);
    document.add("torque", "torque T", torque_as_given(reading));
    document.add("proof_load", screw.load_name(), screw.proof_load);
    const Outcome outcome = request.friction.empty() ? by_method(document, reference, request, screw, torque, draws)
                                                     : by_friction(document, reference, request, screw, torque, draws);
    if (const Force breaks = screw.tensile_load.value * newton; outcome.bounds.least > breaks) {
        throw error(ErrorKind::out_of_validity,
                    "{} breaks every {}: even the least preload, {}, passes its minimum tensile load of {}", request.torque,
                    screw.title(), print_quantity(outcome.bounds.least.in(newton), "N", 3), screw.tensile_load.print);
    }
    add_outcome(document, request, screw, draws, outcome);
    for (const Caution& caution : {caution_generic(), caution_coefficients(), caution_maker_first()}) {
        document.cautions.push_back(caution);
    }
    return document;
}

} // namespace clampbook::answer
