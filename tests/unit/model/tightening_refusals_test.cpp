// SPDX-License-Identifier: MIT
// What is no tightening, or contradicts itself, is refused with the part at fault as it was typed.

#include "clampbook/model/tightening.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <random>

namespace {

using namespace clampbook;
using Catch::Contains;

std::string refused(std::string_view text) {
    return unit_tests::refusal(ErrorKind::usage, [&] { return read_tightening(text); });
}

} // namespace

TEST_CASE("nothing, and no text") {
    CHECK_THAT(refused(""), Contains("no tightening was written; a tightening is written like '32 N·m'"));
    CHECK_THAT(refused(" \u00a0"), Contains("no tightening was written"));
    CHECK_THAT(refused("\xFF 32 N·m"), Contains("not UTF-8"));
    CHECK_THAT(refused("tight"), Contains("'tight' does not begin with a number"));
    CHECK_THAT(refused("very hand tight"), Contains("does not begin with a number"));
}

TEST_CASE("units are as strict as everywhere") {
    CHECK_THAT(refused("32"), Contains("'32' has no unit"));
    CHECK_THAT(refused("24 lb"), Contains("'lb' is a mass, not a torque or a force; write lbf·ft or lbf·in for a torque"));
    CHECK_THAT(refused("20 N·m, 3 kg"), Contains("'kg' is a mass"));
    CHECK_THAT(refused("1,250 N·m"), Contains("as 1250 or as 1.250"));
    CHECK_THAT(refused("32 Nmx"), Contains("'Nmx' is no unit known here"));
    CHECK_THAT(refused("32 mm"), Contains("'32 mm' is a length; a step is a torque or an angle"));
    CHECK_THAT(refused("32 kN"), Contains("'32 kN' is a force; a step is a torque or an angle"));
    CHECK_THAT(refused("50 N·m + 5 mm"), Contains("'5 mm' is a length"));
    CHECK_THAT(refused("20 %"), Contains("is a number; a step is a torque or an angle"));
}

TEST_CASE("a lower limit has one sign") {
    CHECK_THAT(refused("33 +3/--23 N·m"), Contains("'33 +3/--23 N·m' is not understood"));
    CHECK_THAT(refused("33 +3/-+2 N·m"), Contains("is not understood"));
}

TEST_CASE("steps that no fastener is tightened to") {
    CHECK_THAT(refused("20 N·m + 3.3e33°"), Contains("'3.3e33°' lies outside of what a fastener is tightened to: 0.0001 to"));
    CHECK_THAT(refused("0.00009 N·m"), Contains("'0.00009 N·m' lies outside"));
    CHECK_THAT(refused("10001 kN·m"), Contains("'10001 kN·m' lies outside"));
    CHECK(read_tightening("10000 kN·m + 0.0001°").steps.size() == 2);
}

TEST_CASE("steps that are empty, signed or nothing") {
    CHECK_THAT(refused("20 N·m,, 50 N·m"), Contains("has an empty step"));
    CHECK_THAT(refused("20 N·m,"), Contains("has an empty step"));
    CHECK_THAT(refused(", 20 N·m"), Contains("has an empty step"));
    CHECK_THAT(refused("50 N·m +"), Contains("has an empty step"));
    CHECK_THAT(refused("+50 N·m"), Contains("has an empty step"));
    CHECK_THAT(refused("-50 N·m"), Contains("must be more than zero and carries no sign"));
    CHECK_THAT(refused("\u221250 N·m"), Contains("must be more than zero and carries no sign"));
    CHECK_THAT(refused("0 N·m"), Contains("must be more than zero"));
    CHECK_THAT(refused("50 N·m + 0°"), Contains("must be more than zero"));
    CHECK_THAT(refused("50 N·m + -90°"), Contains("must be more than zero"));
    CHECK_THAT(refused("50 N·m + 30 N·m"), Contains("'30 N·m' follows a plus; write '20 N·m, 50 N·m' for steps"));
}

TEST_CASE("ranges that are none") {
    CHECK_THAT(refused("36–30 N·m"), Contains("the range runs backwards"));
    CHECK_THAT(refused("30–30 N·m"), Contains("the range runs backwards"));
    CHECK_THAT(refused("30 lbf·ft – 50 N·m"), Contains("both ends of a range need the same unit"));
    CHECK_THAT(refused("30–36"), Contains("'36' has no unit"));
    CHECK_THAT(refused("30 N·m –"), Contains("nothing was written"));
    CHECK_THAT(refused("– 36 N·m"), !Contains("accepted"));
    CHECK_THAT(refused("30–36–40 N·m"), !Contains("accepted"));
}

TEST_CASE("two torques with a slash between them are not a fraction of one") {
    CHECK_THAT(refused("30/36 N·m"), !Contains("accepted"));
    CHECK_THAT(refused("5/7 N·m"), !Contains("accepted"));
}

TEST_CASE("tolerances that are none") {
    CHECK_THAT(refused("32 ± 3"), Contains("has no unit"));
    CHECK_THAT(refused("32 ± 40 N·m"), Contains("the tolerance is not smaller than the value"));
    CHECK_THAT(refused("32 ± 32 N·m"), Contains("the tolerance is not smaller than the value"));
    CHECK_THAT(refused("32 N·m ± 100%"), Contains("the tolerance is not smaller than the value"));
    CHECK_THAT(refused("32 N·m ± -3"), Contains("the tolerance is not smaller than the value"));
    CHECK_THAT(refused("32 N·m ± 3 mm"), Contains("does not become"));
    CHECK_THAT(refused("32 +3/-40 N·m"), Contains("the tolerance is not smaller than the value"));
    CHECK_THAT(refused("32 +3/-1"), Contains("has no unit"));
    CHECK_THAT(refused("± 3 N·m"), !Contains("accepted"));
    CHECK_THAT(refused("32 ±"), !Contains("accepted"));
}

TEST_CASE("angles in parts that are none") {
    CHECK_THAT(refused("2 × 90 N·m"), Contains("where an angle is wanted"));
    CHECK_THAT(refused("2 ×"), !Contains("accepted"));
    CHECK_THAT(refused("50 N·m + 0 × 90°"), Contains("must be more than zero"));
}

TEST_CASE("brackets that contradict, or are not closed") {
    CHECK_THAT(refused("24 lbf·ft (50 N·m)"), Contains("the figures do not agree; '50 N·m' is 36.9 lbf·ft, not 24 lbf·ft"));
    CHECK_THAT(refused("24 lbf·ft (24 N·m)"), Contains("the figures do not agree"));
    CHECK_THAT(refused("30–36 N·m (22–35 lbf·ft)"), Contains("the figures do not agree"));
    CHECK_THAT(refused("33 N·m (90°)"), Contains("the two figures are not of one kind"));
    CHECK_THAT(refused("33 N·m (24 lbf·ft"), Contains("the bracket is not closed at the end"));
    CHECK_THAT(refused("33 N·m (24 lbf·ft]"), Contains("the bracket is not closed at the end"));
    CHECK_THAT(refused("33 N·m (24 lbf·ft) dry"), Contains("the bracket is not closed at the end"));
    CHECK_THAT(refused("33 N·m)"), !Contains("accepted"));
    CHECK_THAT(refused("(33 N·m)"), !Contains("accepted"));
}

TEST_CASE("a message repeats what was typed, not a respelling of it") {
    CHECK_THAT(refused("36–30 N·m"), Contains("'36–30 N·m'"));
    CHECK_THAT(refused("36 to 30 N·m"), Contains("'36 to 30 N·m'"));
    CHECK_THAT(refused("32 +/- 40 N·m"), Contains("'32 +/- 40 N·m'"));
    CHECK_THAT(refused("\u221250 N·m"), Contains("'\u221250 N·m'"));
}

TEST_CASE("no text at all ends in anything but steps or a refusal", "[long]") {
    const std::vector<std::string> pieces{"32", "1 1/2", " ", "N·m", "lbf·ft", "°",   " turn",  "+",    "-",    "–",          "±",
                                          "/",  ",",     ";", "(",   ")",      "[",   "]",      "then", " to ", "hand-tight", "×",
                                          "x ", "%",     ".", "0",   "3,5",    "1e9", "\u2212", "~",    "lb",   "e5"};
    std::mt19937 random{9};
    std::size_t read = 0;
    for (int i = 0; i < 20000; ++i) {
        std::string text;
        for (std::size_t n = 1 + random() % 7; n > 0; --n) {
            text += pieces[random() % pieces.size()];
        }
        INFO(text);
        try {
            const Tightening tightening = read_tightening(text);
            ++read;
            REQUIRE_FALSE(tightening.steps.empty());
            for (const Step& step : tightening.steps) {
                REQUIRE(((step.kind == StepKind::hand_tight) ||
                         (step.low > 0 && step.low <= step.nominal && step.nominal <= step.high)));
            }
            REQUIRE(agree(tightening, tightening));
            REQUIRE_FALSE(tightening_in(tightening, "N·m").empty());
        } catch (const Error& fault) {
            REQUIRE(fault.kind() == ErrorKind::usage);
        }
    }
    CHECK(read > 100);
}
