// SPDX-License-Identifier: MIT
// Tightenings as the trade writes them, taken apart into steps, put together again, and compared.

#include "clampbook/model/tightening.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <utility>
#include <vector>

namespace {

using namespace clampbook;

constexpr double k_lbf_ft = 1.3558179483314004;
constexpr double k_lbf_in = 0.1129848290276167;

Step torque(double nominal, double low, double high, const char* unit, int digits) {
    return {StepKind::torque, nominal, low, high, unit, digits};
}
Step torque(double nominal, int digits, const char* unit = "N·m") { return torque(nominal, nominal, nominal, unit, digits); }
Step angle(double degrees, int digits, const char* unit = "°") {
    return {StepKind::angle, degrees, degrees, degrees, unit, digits};
}
const Step k_hand{StepKind::hand_tight, 0, 0, 0, "", 1};

void check_steps(const std::string& text, const std::vector<Step>& wanted) {
    INFO(text);
    const Tightening read = read_tightening(text);
    REQUIRE(read.steps.size() == wanted.size());
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        INFO("step " << i + 1);
        const Step& step = read.steps[i];
        CHECK(step.kind == wanted[i].kind);
        CHECK_THAT(step.nominal, Catch::WithinRel(wanted[i].nominal, 1e-13));
        CHECK_THAT(step.low, Catch::WithinRel(wanted[i].low, 1e-13));
        CHECK_THAT(step.high, Catch::WithinRel(wanted[i].high, 1e-13));
        CHECK(step.unit == wanted[i].unit);
        CHECK(step.significant == wanted[i].significant);
    }
}

} // namespace

TEST_CASE("one torque is one step") {
    check_steps("32 N·m", {torque(32, 2)});
    check_steps("32Nm", {torque(32, 2)});
    check_steps("3,3 kgf·m", {torque(3.3 * 9.80665, 2, "kgf·m")});
    check_steps("3.3 kgf·m", {torque(3.3 * 9.80665, 2, "kgf·m")});
    check_steps("24 lbf·ft", {torque(24 * k_lbf_ft, 2, "lbf·ft")});
    check_steps("24 ft-lb", {torque(24 * k_lbf_ft, 2, "lbf·ft")});
    check_steps("283 in-lb", {torque(283 * k_lbf_in, 3, "lbf·in")});
    check_steps("32,5 N·m", {torque(32.5, 3)});
    check_steps("100 N·m", {torque(100, 3)});
    CHECK_FALSE(read_tightening("32 N·m").steps[0].has_band());
}

TEST_CASE("the text is kept letter for letter") {
    for (const char* text : {"32 N·m", "30–36 Nm", "50 N·m + 90°", "20 N·m, 50 N·m, 90°", "24 lbf·ft (33 N·m)", "32 +/- 3 Nm",
                             "hand-tight + 1 1/2 turns", "3,3 kgf·m"}) {
        CHECK(read_tightening(text).as_written == text);
        CHECK(read_tightening("  " + std::string{text} + "\u00a0").as_written == text);
    }
}

TEST_CASE("a range is a band with its middle") {
    const std::vector<Step> band{torque(33, 30, 36, "N·m", 2)};
    for (const char* text : {"30–36 N·m", "30-36 N·m", "30 - 36 N·m", "30 – 36 N·m", "30—36 Nm", "30 to 36 N·m", "30...36 N·m",
                             "30..36 N·m", "30 N·m–36 N·m", "30 N·m to 36 N·m", "30 N·m – 36 Nm"}) {
        check_steps(text, band);
    }
    check_steps("2,5–3,5 N·m", {torque(3, 2.5, 3.5, "N·m", 2)});
    check_steps("95–105 N·m", {torque(100, 95, 105, "N·m", 3)});
    check_steps("22–27 lbf·ft", {torque(24.5 * k_lbf_ft, 22 * k_lbf_ft, 27 * k_lbf_ft, "lbf·ft", 2)});
    check_steps("85–95°", {{StepKind::angle, 90, 85, 95, "°", 2}});
    CHECK(read_tightening("30–36 N·m").steps[0].has_band());
}

TEST_CASE("a tolerance is a band about its value") {
    const std::vector<Step> band{torque(32, 29, 35, "N·m", 2)};
    for (const char* text : {"32 ± 3 N·m", "32±3 N·m", "32 N·m ± 3 N·m", "32 N·m ± 3", "32 +/- 3 N·m", "32 +/-3 N·m",
                             "32 +- 3 N·m", "32 N·m +/-3"}) {
        check_steps(text, band);
    }
    check_steps("40 N·m ± 10%", {torque(40, 36, 44, "N·m", 2)});
    check_steps("40 N·m ± 2.5 %", {torque(40, 39, 41, "N·m", 2)});
    check_steps("90° ± 5°", {{StepKind::angle, 90, 85, 95, "°", 2}});
    check_steps("90 ± 5°", {{StepKind::angle, 90, 85, 95, "°", 2}});
    check_steps("20 lbf·ft ± 2", {torque(20 * k_lbf_ft, 18 * k_lbf_ft, 22 * k_lbf_ft, "lbf·ft", 2)});
}

TEST_CASE("an upper and a lower deviation need not be equal") {
    const std::vector<Step> band{torque(32, 31, 35, "N·m", 2)};
    for (const char* text : {"32 +3/-1 N·m", "32 N·m +3/-1", "32 +3/−1 N·m", "32 + 3 / - 1 N·m"}) {
        check_steps(text, band);
    }
    check_steps("20 N·m, 32 +3/-1 N·m + 90°", {torque(20, 2), torque(32, 31, 35, "N·m", 2), angle(90, 2)});
    check_steps("32 +0/-2,5 N·m", {torque(32, 29.5, 32, "N·m", 2)});
}

TEST_CASE("steps follow one another by comma, semicolon, plus and then") {
    const std::vector<Step> steps{torque(20, 2), torque(50, 2), angle(90, 2)};
    for (const char* text : {"20 N·m, 50 N·m, 90°", "20 N·m; 50 N·m; 90°", "20 N·m, 50 N·m + 90°", "20 N·m then 50 N·m then 90°",
                             "20 N·m, then 50 N·m, then 90°", "20Nm,50Nm,90°", "20 N·m; then 50 N·m + 90 deg"}) {
        INFO(text);
        const Tightening read = read_tightening(text);
        CHECK(read.steps == steps);
    }
    check_steps("50 N·m + 90°", {torque(50, 2), angle(90, 2)});
    check_steps("50 N·m+90°", {torque(50, 2), angle(90, 2)});
    check_steps("50 N·m + 90° + 90°", {torque(50, 2), angle(90, 2), angle(90, 2)});
    check_steps("50 N·m + 1/4 turn", {torque(50, 2), angle(90, 4, "turn")});
    check_steps("2,5 N·m, 3,5 N·m", {torque(2.5, 2), torque(3.5, 2)});
    check_steps("30–36 N·m, 45 ± 5°", {torque(33, 30, 36, "N·m", 2), {StepKind::angle, 45, 40, 50, "°", 2}});
}

TEST_CASE("an angle may be told in parts") {
    check_steps("50 N·m + 2 × 90°", {torque(50, 2), angle(180, 2)});
    check_steps("50 N·m + 2×90°", {torque(50, 2), angle(180, 2)});
    check_steps("50 N·m + 2 x 90°", {torque(50, 2), angle(180, 2)});
    check_steps("3 × 1/4 turn", {angle(270, 4, "turn")});
}

TEST_CASE("hand-tight is a step of its own") {
    for (const char* text :
         {"hand-tight", "Hand tight", "handtight", "hand‑tight", "finger-tight", "FINGER TIGHT", "snug by hand", "hand"}) {
        check_steps(text, {k_hand});
    }
    check_steps("hand-tight + 1 turn", {k_hand, angle(360, 1, "turn")});
    check_steps("hand-tight + 1 1/2 turns", {k_hand, angle(540, 4, "turn")});
    check_steps("hand-tight, 90°", {k_hand, angle(90, 2)});
    check_steps("hand-tight then 20 N·m", {k_hand, torque(20, 2)});
}

TEST_CASE("a second figure in brackets that agrees is taken for what it is") {
    check_steps("24 lbf·ft (33 N·m)", {torque(24 * k_lbf_ft, 2, "lbf·ft")});
    check_steps("33 N·m (24 lbf·ft)", {torque(33, 2)});
    check_steps("33 N·m [24 lbf·ft]", {torque(33, 2)});
    check_steps("33 N·m (3.3 kgf·m)", {torque(33, 2)});
    check_steps("30–36 N·m (22–27 lbf·ft)", {torque(33, 30, 36, "N·m", 2)});
    check_steps("50 N·m (37 lbf·ft) + 90°", {torque(50, 2), angle(90, 2)});
    check_steps("20 N·m (15 lbf·ft), 50 N·m (37 lbf·ft), 90° (1/4 turn)", {torque(20, 2), torque(50, 2), angle(90, 2)});
}

TEST_CASE("a tightening is shown in either unit of torque") {
    const auto shown = [](const char* text, const char* unit) { return tightening_in(read_tightening(text), unit); };
    // a band narrower than the digits that are shown
    CHECK(shown("32.6 N·m ± 0.0001 N·m", "lbf·ft") == "24.04 lbf·ft");
    CHECK(shown("32 N·m", "N·m") == "32 N·m");
    CHECK(shown("32.0 N·m", "N·m") == "32.0 N·m");
    CHECK(shown("100 N·m", "N·m") == "100 N·m");
    CHECK(shown("32 N·m", "lbf·ft") == "23.6 lbf·ft");
    CHECK(shown("24 lbf·ft", "N·m") == "32.5 N·m");
    CHECK(shown("24 lbf·ft", "lbf·ft") == "24 lbf·ft");
    CHECK(shown("30–36 N·m", "N·m") == "30–36 N·m");
    CHECK(shown("95–105 N·m", "N·m") == "95–105 N·m");
    CHECK(shown("100 ± 10 N·m", "N·m") == "90–110 N·m");
    CHECK(shown("30-36 N·m", "lbf·ft") == "22.1–26.6 lbf·ft");
    CHECK(shown("32 ± 3 N·m", "N·m") == "29–35 N·m");
    CHECK(shown("40 N·m ± 2,5 %", "N·m") == "39–41 N·m");
    CHECK(shown("32 +0,5/-1 N·m", "N·m") == "31–32.5 N·m");
    CHECK(shown("50 N·m + 90°", "N·m") == "50 N·m + 90°");
    CHECK(shown("50 N·m + 90°", "lbf·ft") == "36.9 lbf·ft + 90°");
    CHECK(shown("20 N·m; 50 N·m; 90°", "N·m") == "20 N·m, 50 N·m + 90°");
    CHECK(shown("hand-tight + 1 turn", "N·m") == "hand-tight + 1 turn");
    CHECK(shown("50 N·m + 2 × 90°", "N·m") == "50 N·m + 180°");
    CHECK(shown("3,3 kgf·m", "N·m") == "32.4 N·m");
}

TEST_CASE("what is shown reads back as the same steps") {
    for (const char* text : {"32 N·m", "30–36 N·m", "32 ± 3 N·m", "50 N·m + 90°", "20 N·m, 50 N·m, 90°", "hand-tight + 1 turn",
                             "24 lbf·ft", "32 +3/-1 N·m", "85–95°", "3.3 kgf·m"}) {
        for (const char* unit : {"N·m", "lbf·ft"}) {
            INFO(text << " in " << unit);
            const Tightening written = read_tightening(text);
            const Tightening again = read_tightening(tightening_in(written, unit));
            CHECK(agree(written, again));
            CHECK(tightening_in(again, unit) == tightening_in(written, unit));
        }
    }
}

TEST_CASE("the final torque is the highest one") {
    const auto final = [](const char* text) { return final_torque(read_tightening(text)); };
    CHECK(final("32 N·m") == 32);
    CHECK(final("20 N·m, 50 N·m + 90°") == 50);
    CHECK(final("80 N·m, 50 N·m") == 80);
    CHECK(final("30–36 N·m") == 36);
    CHECK_FALSE(final("hand-tight + 90°"));
    CHECK_FALSE(final_torque(Tightening{}));
}

TEST_CASE("two figures agree within the digits that they were written with") {
    const std::pair<const char*, const char*> same[] = {
        {"32 N·m", "32 N·m"},
        {"32 N·m", "32.4 N·m"},
        {"32.0 N·m", "32 N·m"},
        {"24 lbf·ft", "33 N·m"},
        {"24 lbf·ft", "32.5 N·m"},
        {"30–36 N·m", "33 ± 3 N·m"},
        {"30–36 N·m", "32 N·m"},
        {"30–36 N·m", "36–40 N·m"},
        {"50 N·m + 90°", "50 N·m + 1/4 turn"},
        {"50 N·m + 90°", "50 N·m, 90°"},
        {"hand-tight", "finger tight"},
        {"20 N·m; 50 N·m", "20 N·m, 50 N·m"},
    };
    for (const auto& [a, b] : same) {
        INFO(a << " and " << b);
        CHECK(agree(read_tightening(a), read_tightening(b)));
        CHECK(agree(read_tightening(b), read_tightening(a)));
    }
    const std::pair<const char*, const char*> different[] = {
        {"32 N·m", "33 N·m"},       {"32 N·m", "32.6 N·m"},
        {"32.0 N·m", "32.1 N·m"},   {"24 lbf·ft", "24 N·m"},
        {"30–36 N·m", "37–40 N·m"}, {"50 N·m + 90°", "50 N·m + 180°"},
        {"50 N·m + 90°", "50 N·m"}, {"50 N·m, 90°", "90°, 50 N·m"},
        {"hand-tight", "20 N·m"},   {"20 N·m, 50 N·m", "50 N·m, 20 N·m"},
    };
    for (const auto& [a, b] : different) {
        INFO(a << " and " << b);
        CHECK_FALSE(agree(read_tightening(a), read_tightening(b)));
        CHECK_FALSE(agree(read_tightening(b), read_tightening(a)));
    }
}

TEST_CASE("the kinds of step have stable names") {
    CHECK(step_kind_name(StepKind::torque) == "torque");
    CHECK(step_kind_name(StepKind::angle) == "angle");
    CHECK(step_kind_name(StepKind::hand_tight) == "hand-tight");
}

TEST_CASE("one figure keyed twice is the same, another is not") {
    const auto same = [](const char* a, const char* b) { return same_figure(read_tightening(a), read_tightening(b)); };
    CHECK(same("32 N·m", "32Nm"));
    CHECK(same("32 N·m", "32.0 N·m"));
    CHECK(same("30–36 N·m", "33 ± 3 N·m"));
    CHECK(same("50 N·m + 90°", "50Nm+90°"));
    CHECK(same("hand-tight + 1 turn", "hand-tight + 360°"));
    CHECK_FALSE(same("32 N·m", "32.1 N·m"));
    CHECK_FALSE(same("30–36 N·m", "33 N·m")); // agree, but say less
    CHECK_FALSE(same("30–36 N·m", "30–37 N·m"));
    CHECK_FALSE(same("50 N·m + 90°", "50 N·m"));
    CHECK_FALSE(same("50 N·m, 90°", "90°, 50 N·m"));
    CHECK_FALSE(same("hand-tight", "1 N·m"));
    // another unit, within what either print rounds away
    CHECK(same("32 N·m", "23.6 lbf·ft"));
    CHECK(same("283 lbf·in", "32.0 N·m"));
    CHECK_FALSE(same("32 N·m", "32 lbf·ft"));
    CHECK_FALSE(same("32.0 N·m", "25 lbf·ft"));
}
