// SPDX-License-Identifier: MIT
// What of a joint the judgement looks at, and when it doesn't judge. How good it is, slips_test.cpp measures.

#include "../curated.hpp"
#include "clampbook/intake/intake.hpp"

#include <catch2/catch.hpp>

#include <string>

namespace {

using namespace clampbook;
using unit_tests::curated;

Joint screw(const std::string& thread, const std::string& property_class, Role role = Role::cover) {
    Joint joint;
    joint.name = "screw";
    joint.role = role;
    joint.thread = thread;
    joint.property_class = property_class;
    return joint;
}

std::string judged(const Joint& joint, const std::string& tightening) {
    return intake::implausible(curated(), joint, read_tightening(tightening)).value_or("sensible");
}

} // namespace

TEST_CASE("a screw by its proof load, a nut as the screw that belongs to it") {
    // M10 8.8: 580 MPa · 57.99 mm² · 10 mm: 0.04 of that is 13.5, 0.32 is 108 N·m
    CHECK(judged(screw("M10", "8.8"), "13 N·m")
              .starts_with("'13 N·m' is implausible on screw M10 8.8: 13 to 110 N·m make sense there"));
    CHECK(judged(screw("M10", "8.8"), "14 N·m") == "sensible");
    CHECK(judged(screw("M10", "8.8"), "107 N·m") == "sensible");
    CHECK(judged(screw("M10", "8.8"), "109 N·m") != "sensible");
    CHECK(judged(screw("M10", "8"), "109 N·m") != "sensible");
    CHECK(judged(screw("M10", "10"), "109 N·m") == "sensible");
    CHECK(judged(screw("3/8-16 UNC", "grade 5"), "300 N·m") != "sensible");
    CHECK(judged(screw("M10", "A2-70"), "40 N·m") == "sensible");
    // a range and a tolerance by their middle, several torques by the last, an angle behind it, a bearing that is set
    CHECK(judged(screw("M10", "8.8"), "100–120 N·m") != "sensible");
    CHECK(judged(screw("M10", "8.8"), "10 N·m, 50 N·m") == "sensible");
    CHECK(judged(screw("M10", "8.8"), "5 N·m") != "sensible");
    CHECK(judged(screw("M10", "8.8"), "5 N·m + 90°") == "sensible");
    CHECK(judged(screw("M10", "8.8"), "3 N·m + 90°") != "sensible");
    CHECK(judged(screw("M10", "8.8", Role::bearing), "1 N·m") == "sensible");
}

TEST_CASE("a housing that strips first lowers the upper end") {
    Joint joint = screw("M10", "8.8");
    joint.housing = "EN AC-46000";
    joint.engagement_mm = 6;
    CHECK(judged(joint, "100 N·m") != "sensible");
    joint.engagement_mm = 25;
    CHECK(judged(joint, "100 N·m") == "sensible");
    joint.engagement_mm = 60; // deeper than the method goes: as deep as it goes
    CHECK(judged(joint, "100 N·m") == "sensible");
    joint.engagement_mm = 1; // not one pitch: too little to compute with
    CHECK(judged(joint, "100 N·m") == "sensible");
}

TEST_CASE("a plug by its ring, wherever it closes a space") {
    Joint plug = screw("M18x1.5", "", Role::drain);
    CHECK(judged(plug, "11 N·m") == "sensible");
    plug.ring = "copper";
    CHECK(judged(plug, "11 N·m") != "sensible");
    plug.ring = "o-ring";
    CHECK(judged(plug, "8 N·m") == "sensible");
    plug.ring = "copper 18x24";
    CHECK(judged(plug, "100 N·m") == "sensible"); // a wider ring takes more
    plug.ring = "copper";
    CHECK(judged(plug, "100 N·m") != "sensible");
    plug.housing = "EN AC-46000";
    plug.engagement_mm = 3;
    CHECK(judged(plug, "80 N·m") != "sensible");
    CHECK(judged(screw("G1/2", "", Role::other), "1000 N·m") != "sensible"); // a pipe thread seals too
    CHECK(judged(screw("M14x1.5", "", Role::filter), "200 N·m") != "sensible");
    CHECK(judged(screw("M14x1.5", "", Role::sensor), "1 N·m") == "sensible");
}

TEST_CASE("where too little is known nothing is judged") {
    CHECK(judged(screw("", "8.8"), "9000 N·m") == "sensible");
    CHECK(judged(screw("R1/2", "", Role::drain), "9000 N·m") == "sensible");
    CHECK(judged(screw("1/2-14 NPT", "", Role::drain), "9000 N·m") == "sensible");
    Joint taper = screw("M18x1.5", "", Role::drain);
    taper.form = "taper socket";
    CHECK(judged(taper, "9000 N·m") == "sensible");
    CHECK(judged(screw("M10", "8.8"), "hand-tight + 1 turn") == "sensible");
    CHECK(judged(screw("M48x2", "10"), "9000 N·m") == "sensible"); // class 10.9 ends at M39
    // no class: anything from the weakest to the strongest screw
    CHECK(judged(screw("M10", ""), "160 N·m") == "sensible");
    CHECK(judged(screw("M10", ""), "190 N·m") != "sensible");
    CHECK(judged(screw("M10", ""), "6 N·m") == "sensible");
    CHECK(judged(screw("M10", ""), "5 N·m") != "sensible");
    CHECK(judged(screw("3/8-16 UNC", ""), "5000 N·m") != "sensible");
}

TEST_CASE("on a safety-critical joint no figure is told") {
    Joint wheel = screw("M14x1.5", "10", Role::wheel);
    wheel.safety_critical = true;
    const std::string told = judged(wheel, "1400 N·m");
    CHECK(told.starts_with("'1400 N·m' is implausible on screw M14×1.5 10, a safety-critical joint"));
    CHECK(told.find("make sense") == std::string::npos);
    CHECK(told.find("its point stands one place too far right") != std::string::npos);
}
