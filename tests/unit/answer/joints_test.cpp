// SPDX-License-Identifier: MIT
// The answers on whole joints: scatter, stripping, plugs, turns and tools. That every figure has an origin, that the answers
// agree with each other and with the engine, and what each is asked with.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/engine/strip.hpp"
#include "curated.hpp"
#include "documents.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

namespace {

using namespace clampbook;
using namespace unit_tests;
using answer::AngleRequest;
using answer::Document;
using answer::PlugRequest;
using answer::ScatterRequest;
using answer::StripRequest;
using answer::WrenchRequest;
using Catch::WithinRel;

ScatterRequest scatter_request() {
    ScatterRequest r;
    r.thread = "M10";
    r.property_class = "8.8";
    r.torque = "40 N·m";
    r.friction = "0.10..0.16";
    r.draws = "1000";
    return r;
}

StripRequest strip_request() {
    StripRequest r;
    r.thread = "M10";
    r.property_class = "8.8";
    r.housing = "EN AC-46000";
    r.engagement = "12 mm";
    return r;
}

PlugRequest plug_request() {
    PlugRequest r;
    r.thread = "M18x1.5";
    r.housing = "EN AC-46000";
    r.ring = "copper";
    return r;
}

AngleRequest angle_request() {
    AngleRequest r;
    r.thread = "M10";
    r.property_class = "8.8";
    r.grip = "40 mm";
    r.under = "S355J2";
    r.snug = "20 N·m";
    r.turn = "20°";
    return r;
}

double value(const Document& document, std::string_view key) { return figure(document, key).value; }

std::string text(const Document& document, std::string_view key) {
    const auto* found = item(document, key);
    return found == nullptr ? "missing" : found->text;
}

bool says(const Document& document, std::string_view words) {
    return std::ranges::any_of(document.notes, [&](const std::string& note) { return note.find(words) != std::string::npos; });
}

} // namespace

TEST_CASE("every figure of every answer has an origin, and the cautions stand beside it") {
    ScatterRequest by_method = scatter_request();
    by_method.friction.clear();
    by_method.method = "torque, lubricated";
    PlugRequest port = plug_request();
    port.ring = "o-ring";
    PlugRequest taper;
    taper.thread = "R3/4";
    AngleRequest warm = angle_request();
    warm.load = "5 kN";
    warm.tapped = "EN AC-46000";
    warm.tightened_at = "20 °C";
    warm.working_at = "90 °C";
    for (const Document& document :
         {answer::scatter(curated(), scatter_request()), answer::scatter(curated(), by_method),
          answer::strip(curated(), strip_request()), answer::plug(curated(), plug_request()), answer::plug(curated(), port),
          answer::plug(curated(), taper), answer::angle(curated(), warm)}) {
        INFO(document.heading);
        check_origins(document);
        CHECK(text(document, "label") == "derived");
        CHECK(document.heading.find("derived, no maker's figure") != std::string::npos);
        CHECK(cautions(document, "generic"));
        CHECK(cautions(document, "maker-first"));
    }
    WrenchRequest tool;
    tool.torque = "32 N·m";
    tool.adapter = "50 mm";
    tool.length = "300 mm";
    tool.maximum = "100 N·m";
    tool.tool = "II A";
    tool.scale = "1";
    const Document wrench = answer::wrench(curated(), tool);
    check_origins(wrench);
    CHECK(cautions(wrench, "maker-first"));
}

TEST_CASE("scatter: the histogram holds every draw, between the bounds") {
    ScatterRequest r = scatter_request();
    r.tool = "4%";
    r.needed = "20 kN";
    const Document d = answer::scatter(curated(), r);
    REQUIRE(d.histogram);
    std::size_t sum = 0;
    for (const std::size_t count : d.histogram->counts) {
        sum += count;
    }
    CHECK(sum == 1000);
    CHECK(d.histogram->total == 1000);
    CHECK_THAT(d.histogram->low, WithinRel(value(d, "preload.least"), 1e-12));
    CHECK_THAT(d.histogram->high, WithinRel(value(d, "preload.most"), 1e-12));
    REQUIRE(d.histogram->marks.size() == 2);
    CHECK(d.histogram->marks[1].words == "needed");
    CHECK(d.histogram->marks[1].at == 20000);
    CHECK_THAT(value(d, "tightening_factor"), WithinRel(value(d, "preload.most") / value(d, "preload.least"), 1e-12));
    CHECK(value(d, "percentiles.p5") < value(d, "percentiles.p50"));
    // One end of friction and no tool: nothing to draw, and no histogram of nothing.
    r = scatter_request();
    r.friction = "0.12..0.12";
    CHECK_FALSE(answer::scatter(curated(), r).histogram);
}

TEST_CASE("strip: what carries, what goes first, and how deep it must be") {
    const Document d = answer::strip(curated(), strip_request());
    CHECK(value(d, "strip_load") == value(d, "housing.strip_load"));
    CHECK(value(d, "shear_area") == value(d, "housing.shear_area"));
    CHECK(text(d, "critical_member") == "the thread in the housing strips");
    CHECK(cautions(d, "no-prescription"));
    // as deep as it says, the load at stripping is the screw's own
    StripRequest deep = strip_request();
    deep.engagement = print_shortest(value(d, "needed_engagement")) + " mm";
    const Document enough = answer::strip(curated(), deep);
    CHECK_THAT(value(enough, "strip_load"), WithinRel(value(enough, "min_tensile_load"), 1e-9));
    deep.engagement = "20 mm";
    CHECK(text(answer::strip(curated(), deep), "critical_member") == "the screw breaks");
    CHECK(says(answer::strip(curated(), deep), "the screw breaks first"));
    // basic sizes bear more than the worst of the limits
    StripRequest basic = strip_request();
    basic.nominal = true;
    CHECK(value(answer::strip(curated(), basic), "strip_load") > value(d, "strip_load"));
    // only a family's word needs a word on which of it is meant
    CHECK_FALSE(says(d, "names a family"));
    StripRequest family = strip_request();
    family.housing = "cast aluminium";
    CHECK(says(answer::strip(curated(), family), "'cast aluminium' names a family; EN AC-46000 stands for it"));
    family.housing = "46000";
    CHECK_FALSE(says(answer::strip(curated(), family), "names a family"));
}

TEST_CASE("plug: the window, its reserves, and what each choice moves") {
    const Document d = answer::plug(curated(), plug_request());
    CHECK(text(d, "window.state") == "open");
    CHECK_THAT(value(d, "window.low"), WithinRel(value(d, "seat_torque"), 1e-12));
    CHECK_THAT(value(d, "window.high"), WithinRel(std::min({value(d, "strip_torque") / 1.5, value(d, "plug_torque") / 1.25,
                                                            value(d, "face_torque") / 1.25}),
                                                  1e-12));
    CHECK(value(d, "advice") >= value(d, "window.low"));
    CHECK(value(d, "advice") <= value(d, "window.high"));
    CHECK(figure(d, "friction.low").label == Label::standard);
    CHECK(says(d, "Not for a plug"));
    CHECK(cautions(d, "fill-first"));
    PlugRequest r = plug_request();
    r.ring = "steel";
    const Document empty = answer::plug(curated(), r);
    CHECK(text(empty, "window.state") == "empty");
    CHECK(item(empty, "advice") == nullptr);
    CHECK(cautions(empty, "empty-window"));
    CHECK(text(empty, "window.reason").find("seating the ring asks for") == 0);
    r.ring = "bonded";
    const Document bonded = answer::plug(curated(), r);
    CHECK(text(bonded, "window.state") == "open below");
    CHECK(item(bonded, "window.low") == nullptr);
    CHECK(item(bonded, "advice") == nullptr);
    CHECK(item(bonded, "seat_torque") == nullptr);
    // a housing without a limiting pressure says so, and a socket weakens the plug
    r = plug_request();
    r.housing = "EN-GJS-400-15";
    CHECK(item(answer::plug(curated(), r), "face_torque") == nullptr);
    CHECK(says(answer::plug(curated(), r), "No limiting surface pressure is kept here for EN-GJS-400-15"));
    r = plug_request();
    r.form = "collar socket";
    CHECK(value(answer::plug(curated(), r), "plug_torque") < value(d, "plug_torque"));
    // the O-ring's window is the ports', capped by what the plug bears
    r = plug_request();
    r.ring = "o-ring";
    r.housing = "EN-GJL-250";
    const Document port = answer::plug(curated(), r);
    CHECK(value(port, "window.low") == 45);
    CHECK(value(port, "window.high") == 70);
    r.property_class = "4.6";
    r.bore = "13 mm";
    CHECK(value(answer::plug(curated(), r), "window.high") < 45);
    CHECK(text(answer::plug(curated(), r), "window.state") == "empty");
}

TEST_CASE("plug: an inch thread takes an inch grade, a pipe thread its own tolerances") {
    PlugRequest r = plug_request();
    r.thread = "3/4-16 UNF";
    r.property_class = "grade 5";
    r.ring = "copper 20x26";
    r.engagement = "12 mm";
    CHECK(figure(answer::plug(curated(), r), "plug_torque").value > 0);
    r.thread = "G3/4";
    r.property_class = "";
    r.ring = "copper";
    r.engagement = "";
    CHECK(says(answer::plug(curated(), r), "ISO 228-1"));
    // G3/4: 14 per inch, d 26.441 − 0.284, D2 25.279 + 0.142, D1 24.117 + 0.541, d2 25.279 − 0.284 (basic sizes by formula)
    const engine::ThreadGeometry g = engine::pipe_plug_geometry(26.441 * millimetre, 14);
    const engine::ThreadPair worst{g.pitch,
                                   g.major - 0.284 * millimetre,
                                   g.pitch_diameter - 0.284 * millimetre,
                                   g.pitch_diameter + 0.142 * millimetre,
                                   g.minor_internal + 0.541 * millimetre,
                                   engine::Profile::degrees_55};
    const auto loads =
        engine::strip_loads(engine::shear_areas(worst, value(answer::plug(curated(), r), "engagement") * millimetre),
                            {0.6 * 520.0 * megapascal, 140.0 * megapascal});
    CHECK_THAT(value(answer::plug(curated(), r), "strip_load"), WithinRel(loads.least().in(newton), 1e-12));
    CHECK_FALSE(says(answer::plug(curated(), r), "Not for a plug")); // no chart of screws has a pipe thread
}

TEST_CASE("angle: preload, yield, and what becomes of it") {
    const Document d = answer::angle(curated(), angle_request());
    CHECK_THAT(value(d, "preload"), WithinRel(value(d, "snug_preload") + value(d, "gained"), 1e-12));
    CHECK(text(d, "yields") == "no");
    CHECK_THAT(value(d, "elongation"), WithinRel(value(d, "preload") * value(d, "screw_compliance"), 1e-12));
    CHECK(item(d, "permanent_elongation") == nullptr);
    CHECK_THAT(value(d, "service.least"), WithinRel(value(d, "preload") + value(d, "embedding_loss"), 1e-12));
    AngleRequest r = angle_request();
    r.turn = "90°";
    const Document over = answer::angle(curated(), r);
    CHECK(text(over, "yields") == "yes");
    CHECK(text(over, "state") == "yields; new screws every time");
    CHECK(value(over, "preload") == value(over, "yield_preload"));
    CHECK(cautions(over, "yields"));
    // what the screw and the parts give adds up to the whole turn: elastic, and for good
    const double travel =
        value(over, "travel") + value(over, "snug_preload") * (value(over, "screw_compliance") + value(over, "parts_compliance"));
    CHECK_THAT(value(over, "preload") * (value(over, "screw_compliance") + value(over, "parts_compliance")) +
                   value(over, "permanent_elongation"),
               WithinRel(travel, 1e-9));
    // settling: thread 3, each bearing face 3, interface 2 µm (VDI 2230-1, Table 5); a tapped hole has one bearing face
    CHECK_THAT(value(d, "settling"), WithinRel(0.011, 1e-12));
    r = angle_request();
    r.tapped = "S355J2";
    CHECK_THAT(value(answer::angle(curated(), r), "settling"), WithinRel(0.008, 1e-12));
    // steel in aluminium: heat adds, cold takes; the same steel neither
    r = angle_request();
    r.under = "EN AC-46000";
    r.tightened_at = "20 °C";
    r.working_at = "90 °C";
    CHECK(value(answer::angle(curated(), r), "thermal_change") > 0);
    r.working_at = "-20 °C";
    CHECK(value(answer::angle(curated(), r), "thermal_change") < 0);
    r = angle_request();
    r.tightened_at = "68 °F";
    r.working_at = "90 °C";
    CHECK(value(answer::angle(curated(), r), "thermal_change") == 0);
    // a stainless screw is softer and grows more
    r.property_class = "A2-70";
    r.turn = "5°";
    CHECK(value(answer::angle(curated(), r), "modulus.screw") == 195000);
    CHECK(value(answer::angle(curated(), r), "thermal_change") < 0);
}

TEST_CASE("wrench: the setting, on the tool's own scale") {
    WrenchRequest r;
    r.torque = "32 N·m";
    r.adapter = "50 mm";
    r.length = "300 mm";
    CHECK_THAT(value(answer::wrench(curated(), r), "setting"), WithinRel(32 * 300.0 / 350, 1e-12));
    r.unit = "lbf·ft";
    r.scale = "0.5";
    const Document d = answer::wrench(curated(), r);
    CHECK(figure(d, "setting").print == "20.23 lbf·ft");
    CHECK(figure(d, "setting").unit == "N·m");
    CHECK_THAT(value(d, "scale.setting"), WithinRel(20 * 1.3558179483314004, 1e-12));
    CHECK_THAT(value(d, "scale.error"), WithinRel(20 * 1.3558179483314004 * 350 / 300 / 32 - 1, 1e-9));
    r.tool = "II A";
    const Document classed = answer::wrench(curated(), r);
    // the deviation goes about what the fastener gets at the mark
    CHECK_THAT(value(classed, "applied.low"), WithinRel(0.96 * 20 * 1.3558179483314004 * 350 / 300, 1e-9));
    CHECK_THAT(value(classed, "applied.high"), WithinRel(1.04 * 20 * 1.3558179483314004 * 350 / 300, 1e-9));
}
