// SPDX-License-Identifier: MIT
// The numbers of each lesson against the engine, reckoned here from the curated figures on a way of its own, and what a lesson
// must have.

#include "clampbook/answer/parts.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/engine/friction.hpp"
#include "clampbook/engine/scatter.hpp"
#include "clampbook/engine/strength.hpp"
#include "clampbook/engine/strip.hpp"
#include "clampbook/engine/wrench.hpp"
#include "clampbook/teach/lesson.hpp"
#include "curated.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace clampbook;
using namespace clampbook::teach;
using Catch::Matchers::WithinRel;
using unit_tests::curated;

namespace {

const LessonStep& step(const Lesson& lesson, std::string_view key) {
    const auto found = std::ranges::find(lesson.steps, key, &LessonStep::key);
    INFO(lesson.name << " " << key);
    REQUIRE(found != lesson.steps.end());
    return *found;
}

double value(const Lesson& lesson, std::string_view key) {
    REQUIRE(step(lesson, key).figure);
    return step(lesson, key).figure->value;
}

// M10 under a hexagon head: ISO 4014 d_w 14.63 mm, ISO 273 medium hole 11 mm.
engine::FrictionJoint m10(double friction, double pitch = 1.5) {
    return {engine::metric_geometry(10 * millimetre, pitch * millimetre), friction, friction, 14.63 * millimetre,
            11 * millimetre};
}

} // namespace

TEST_CASE("every lesson has all that a lesson must have") {
    REQUIRE(lesson_entries().size() == 9);
    for (const LessonEntry& entry : lesson_entries()) {
        INFO(entry.name);
        const Lesson l = lesson(curated(), entry.name, {});
        CHECK(l.name == entry.name);
        CHECK(l.grasp.size() == 3);
        CHECK(l.questions.size() == 2);
        CHECK(l.commands.size() == 3);
        CHECK(l.inputs.size() == entry.options.size());
        CHECK(l.steps.size() >= 7);
        CHECK_FALSE(l.cautions.empty());
        std::set<std::string> keys;
        for (const LessonStep& s : l.steps) {
            CHECK(keys.insert(s.key).second);
            if (s.figure) {
                CHECK(s.figure->label.has_value());
                CHECK((s.figure->citation || !s.figure->basis.empty()));
            }
        }
        // a chart whose every value lies on its axes
        CHECK_FALSE(l.chart.title.empty());
        CHECK_FALSE(l.chart.words.empty());
        CHECK(l.chart.lines.size() + l.chart.columns.size() + l.chart.bars.size() >= 2);
        const auto on = [](const answer::Axis& axis, double at) {
            return at >= axis.low * (1 - 1e-9) && at <= axis.high * (1 + 1e-9);
        };
        for (const answer::ChartLine& line : l.chart.lines) {
            for (const auto& [x, y] : line.points) {
                CHECK((on(l.chart.x, x) && on(l.chart.y, y)));
            }
        }
        for (const answer::ChartBar& bar : l.chart.bars) {
            for (const answer::BarPart& part : bar.parts) {
                CHECK((on(l.chart.x, part.from) && on(l.chart.x, part.to) && part.from < part.to));
            }
        }
        for (const answer::ChartLimit& limit : l.chart.limits) {
            CHECK(on(limit.on_x ? l.chart.x : l.chart.y, limit.at));
        }
    }
}

TEST_CASE("preload: the loads of the printed table and the springs between them") {
    const Lesson l = lesson(curated(), "preload", {});
    // ISO 898-1 table 5: M10 8.8 has 33 700 N; three quarters of it.
    CHECK(value(l, "proof_load") == 33700);
    CHECK_THAT(value(l, "preload"), WithinRel(0.75 * 33700, 1e-12));
    const double screw = value(l, "screw_compliance");
    const double parts = value(l, "parts_compliance");
    const double share = parts / (screw + parts);
    CHECK_THAT(value(l, "load_share"), WithinRel(share, 1e-12));
    CHECK_THAT(value(l, "elongation"), WithinRel(25275 * screw, 1e-12));
    CHECK_THAT(value(l, "loaded_screw"), WithinRel(25275 + share * 10000, 1e-12));
    CHECK_THAT(value(l, "loaded_clamping"), WithinRel(25275 - (1 - share) * 10000, 1e-12));
    CHECK_THAT(value(l, "opening_load"), WithinRel(25275 / (1 - share), 1e-12));
    // the chart's load is the way between its two points
    REQUIRE(l.chart.points.size() == 3);
    CHECK_THAT(l.chart.points[1].y - l.chart.points[2].y, WithinRel(10000.0, 1e-9));
    CHECK(l.chart.points[1].x == l.chart.points[2].x);
}

TEST_CASE("shares: the parts add up, and oil is reckoned with the same torque") {
    const Lesson l = lesson(curated(), "shares", {});
    const Force preload = engine::assembly_preload(640 * megapascal, 0.9, m10(0.12).thread, 0.12);
    CHECK_THAT(value(l, "preload"), WithinRel(preload.in(newton), 1e-9));
    const engine::TorqueShares parts = engine::friction_torque(preload, m10(0.12));
    CHECK_THAT(value(l, "torque"), WithinRel(parts.total.in(newton_metre), 1e-9));
    CHECK_THAT(value(l, "pitch") + value(l, "thread") + value(l, "head"), WithinRel(value(l, "torque"), 1e-12));
    CHECK_THAT(value(l, "oiled_preload"), WithinRel(engine::friction_preload(parts.total, m10(0.08)).in(newton), 1e-9));
    REQUIRE(l.chart.bars.size() == 3);
    CHECK_THAT(l.chart.bars[1].parts[0].to, WithinRel(value(l, "pitch") / value(l, "torque"), 1e-9));
}

TEST_CASE("nut-factor: K of its parts, and the friction behind a K") {
    LessonRequest request;
    request.friction = "0.14";
    request.nut_factor = "0.18";
    const Lesson l = lesson(curated(), "nut-factor", request);
    CHECK_THAT(value(l, "nut_factor"), WithinRel(engine::equivalent_nut_factor(m10(0.14)), 1e-12));
    CHECK_THAT(value(l, "pitch") + value(l, "thread") + value(l, "head"), WithinRel(value(l, "nut_factor"), 1e-12));
    CHECK_THAT(engine::equivalent_nut_factor(m10(value(l, "friction"))), WithinRel(0.18, 1e-9));
    CHECK_THAT(value(l, "torque"), WithinRel(0.18 * 0.75 * 33700 * 10 / 1000, 1e-12));
    CHECK(value(l, "flange") > value(l, "nut_factor"));
}

TEST_CASE("scatter: bounds by friction and tool, and draws between them") {
    const Lesson l = lesson(curated(), "scatter", {});
    const Torque torque = 44 * newton_metre;
    const engine::PreloadBounds both = engine::friction_bounds(torque, m10(0.13), {0.10, 0.16}, 0.04);
    CHECK_THAT(value(l, "least"), WithinRel(both.least.in(newton), 1e-12));
    CHECK_THAT(value(l, "most"), WithinRel(both.most.in(newton), 1e-12));
    CHECK_THAT(value(l, "tightening_factor"), WithinRel(both.factor(), 1e-12));
    CHECK_THAT(value(l, "friction.most"), WithinRel(engine::friction_preload(torque, m10(0.10)).in(newton), 1e-12));
    CHECK_THAT(value(l, "tool.most"), WithinRel(1.04 * value(l, "middle"), 1e-12));
    CHECK((value(l, "least") < value(l, "p5") && value(l, "p5") < value(l, "p95") && value(l, "p95") < value(l, "most")));
    double all = 0;
    for (const double share : l.chart.columns) {
        all += share;
    }
    CHECK_THAT(all, WithinRel(1.0, 1e-12));
}

TEST_CASE("angle: the turn that yields, and what stays") {
    const Lesson l = lesson(curated(), "angle", {});
    const Force yields = engine::assembly_preload(940 * megapascal, 1, m10(0.12).thread, 0.12);
    CHECK_THAT(value(l, "yield_preload"), WithinRel(yields.in(newton), 1e-9));
    CHECK_THAT(value(l, "preload"), WithinRel(yields.in(newton), 1e-9));
    CHECK_THAT(value(l, "travel"), WithinRel(0.375, 1e-12));
    CHECK_THAT(value(l, "snug_preload"), WithinRel(engine::friction_preload(20 * newton_metre, m10(0.12)).in(newton), 1e-9));
    LessonRequest request;
    request.turn = "20°";
    const Lesson elastic = lesson(curated(), "angle", request);
    CHECK(std::ranges::find(elastic.steps, std::string{"permanent_elongation"}, &LessonStep::key) == elastic.steps.end());
    CHECK_THAT(value(elastic, "preload"), WithinRel(value(elastic, "snug_preload") + value(elastic, "gained"), 1e-12));
    CHECK(elastic.grasp[1].find("stays under the yield point") != std::string::npos);
}

TEST_CASE("strip: the chart passes through the lesson's own figure") {
    const Lesson l = lesson(curated(), "strip", {});
    CHECK(value(l, "min_tensile_load") == 46400); // ISO 898-1 table 4
    const double c3 = value(l, "c3");
    CHECK_THAT(value(l, "housing.strip_load"), WithinRel(c3 * 140 * value(l, "housing.shear_area"), 1e-9));
    // the screw breaks first from where its line passes the breaking load: by the load per mm
    CHECK_THAT(value(l, "needed_engagement"), WithinRel(12 * 46400 / value(l, "housing.strip_load"), 1e-9));
    const auto& points = l.chart.lines.front().points;
    const auto [x, y] = points[10];
    CHECK_THAT(y / x, WithinRel(value(l, "housing.strip_load") / 12, 1e-9));
}

TEST_CASE("plug: the window is the plug command's") {
    const Lesson l = lesson(curated(), "plug", {});
    answer::PlugRequest request;
    request.thread = "M18x1.5";
    request.housing = "46000";
    request.ring = "copper";
    const answer::Document found = answer::plug(curated(), request);
    int compared = 0;
    for (const answer::Section& section : found.sections) {
        for (const answer::Item& item : section.items) {
            const auto same = std::ranges::find(l.steps, item.key, &LessonStep::key);
            if (item.figure && same != l.steps.end()) {
                CHECK(same->figure->value == item.figure->value);
                ++compared;
            }
        }
    }
    CHECK(compared >= 8);
    REQUIRE(l.chart.bands.size() == 1);
    CHECK(l.chart.bands[0].low == value(l, "window.low"));
    LessonRequest taper;
    taper.thread = "R1/2";
    CHECK_THROWS_WITH(lesson(curated(), "plug", taper),
                      "R1/2 seals by its own taper, without a window of torque; this lesson takes a parallel thread");
    LessonRequest ring;
    ring.ring = "bonded";
    CHECK_THROWS_WITH(lesson(curated(), "plug", ring),
                      "a ring 'bonded' is not seated by the torque; this lesson takes a flat ring of copper, aluminium or steel");
}

TEST_CASE("units: the four readings of one number, and the adapter") {
    const Lesson l = lesson(curated(), "units", {});
    // NIST SP 811 B.8: 1 lbf·ft = 1.3558179483314 N·m, 1 lbf·in a twelfth, 1 kgf·m = 9.80665 N·m
    CHECK_THAT(value(l, "as_meant"), WithinRel(24 * 1.3558179483314004, 1e-14));
    CHECK_THAT(value(l, "read_as.pound_inch"), WithinRel(2 * 1.3558179483314004, 1e-14));
    CHECK_THAT(value(l, "read_as.kilopond_metre"), WithinRel(24 * 9.80665, 1e-14));
    CHECK(value(l, "read_as.newton_metre") == 24);
    const double torque = value(l, "as_meant");
    CHECK_THAT(value(l, "setting.in_line"), WithinRel(torque * 400 / 460, 1e-12));
    CHECK_THAT(value(l, "setting.across"), WithinRel(torque, 1e-12));
    CHECK_THAT(value(l, "setting.back"), WithinRel(torque * 400 / 340, 1e-12));
}

TEST_CASE("order: trade facts say that they are practice") {
    const Lesson l = lesson(curated(), "order", {});
    for (const char* key : {"level.low", "level.high", "interval"}) {
        CHECK(step(l, key).figure->label == Label::practice);
        CHECK(step(l, key).figure->basis == "common practice, no source");
    }
    const auto at = [&](std::string_view key) { return std::ranges::find(l.steps, key, &LessonStep::key) - l.steps.begin(); };
    CHECK(at("fill_plug") < at("drain"));
    CHECK(at("drain") < at("drain_plug"));
    CHECK(at("level.low") < at("close"));
    CHECK_FALSE(step(l, "drain_plug").figure); // a generic figure never looks like a prescribed one
}

TEST_CASE("an option that a lesson does not take, and no such lesson") {
    LessonRequest request;
    request.ring = "copper";
    CHECK_THROWS_WITH(lesson(curated(), "shares", request),
                      "the lesson 'shares' does not take --ring; it takes --thread, --class, --friction, --oiled, --head");
    CHECK_THROWS_WITH(lesson(curated(), "preloud", {}),
                      "there is no lesson 'preloud' (did you mean 'preload'?); 'clampbook teach' lists them");
    LessonRequest oiled;
    oiled.oiled = "0.2";
    CHECK_THROWS_WITH(lesson(curated(), "shares", oiled),
                      "--oiled 0.2 must be less than --friction 0.12: oil takes friction away");
    LessonRequest two;
    two.friction = "0.12,0.14";
    CHECK_THROWS_AS(lesson(curated(), "shares", two), Error);
}

TEST_CASE("a booklet begins with its contents; answers stand on a page of their own") {
    std::vector<Lesson> lessons;
    for (const char* name : {"preload", "units"}) {
        lessons.push_back(lesson(curated(), name, {}));
    }
    const answer::Pages booklet = handout(lessons, true, "2026-11-27");
    CHECK(booklet.blocks.front().kind == answer::BlockKind::contents);
    const auto titles = std::ranges::count(booklet.blocks, answer::BlockKind::title, &answer::PageBlock::kind);
    const auto pages = std::ranges::count(booklet.blocks, answer::BlockKind::new_page, &answer::PageBlock::kind);
    CHECK(titles == 3);
    CHECK(pages == 3);
    const answer::Pages one = handout({lessons.front()}, false, "2026-11-27");
    CHECK(one.blocks.front().kind == answer::BlockKind::title);
    for (const answer::PageBlock& block : one.blocks) {
        CHECK(block.text != lessons.front().questions.front().answer);
    }
}

TEST_CASE("an axis holds its ends on round ticks") {
    const answer::Axis axis = answer::nice_axis("preload", "N", "kN", 0, 37100);
    CHECK(axis.low == 0);
    CHECK(axis.high == 40000);
    CHECK(answer::tick_words(axis, 20000) == "20");
    const answer::Axis narrow = answer::nice_axis("preload", "N", "kN", 20035, 33700);
    CHECK(narrow.ticks.front() == 20000);
    CHECK(answer::tick_words(narrow, 22500) == "22.5");
    CHECK_THROWS_AS(answer::nice_axis("nothing", "N", "kN", 5, 5), Error);
}
