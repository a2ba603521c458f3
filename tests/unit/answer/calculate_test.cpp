// SPDX-License-Identifier: MIT
// The answers that need no book, figure by figure: conversions, threads, strengths, and generic tightening both ways.

#include "clampbook/answer/calculate.hpp"
#include "clampbook/base/decimal.hpp"
#include "curated.hpp"
#include "documents.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

namespace {

using namespace clampbook;
using answer::DeriveRequest;
using answer::Document;
using answer::Figure;
using Catch::WithinRel;
using unit_tests::cautions;
using unit_tests::curated;
using unit_tests::figure;
using unit_tests::item;
using unit_tests::refusal;

DeriveRequest request(const std::function<void(DeriveRequest&)>& change = {}) {
    DeriveRequest r;
    r.thread = "M10";
    r.property_class = "8.8";
    if (change) {
        change(r);
    }
    return r;
}

Document derived(const std::function<void(DeriveRequest&)>& change) { return answer::derive(curated(), request(change)); }

std::string refused(ErrorKind kind, const std::function<void(DeriveRequest&)>& change) {
    return refusal(kind, [&] { return derived(change); });
}

Document converted(const std::string& quantity, const std::string& to = {}, const std::string& scale = {}) {
    return answer::convert({quantity, to, scale});
}

std::string print_of(const Document& document, std::string_view key) { return figure(document, key).print; }

} // namespace

TEST_CASE("derive: torque and preload from a nut factor and a share of the proof load") {
    const Document d = derived([](DeriveRequest& r) {
        r.nut_factor = "0.2";
        r.preload = "75%";
    });
    CHECK(d.schema == "derive");
    CHECK(item(d, "label")->text == "derived");
    CHECK_THAT(figure(d, "preload").value, WithinRel(25275.0, 1e-12));
    CHECK(figure(d, "preload").unit == "N");
    CHECK_THAT(figure(d, "torque").value, WithinRel(50.55, 1e-12));
    CHECK(figure(d, "torque").unit == "N·m");
    CHECK(figure(d, "torque").print == "50.6 N·m");
    CHECK(figure(d, "torque").also == "37.3 lbf·ft");
    CHECK(figure(d, "torque").label == Label::derived);
    CHECK_THAT(figure(d, "utilisation").value, WithinRel(0.75, 1e-12));
    CHECK_THAT(figure(d, "proof_load").value, WithinRel(33700.0, 1e-12));
    CHECK_THAT(figure(d, "stress_area").value, WithinRel(58.0, 1e-12));
    CHECK_THAT(figure(d, "diameter").value, WithinRel(10.0, 1e-12));
    CHECK_THAT(figure(d, "nut_factor").value, WithinRel(0.2, 1e-12));
    CHECK(figure(d, "proof_load").citation->source == "iso-898-1-2013");
    CHECK(cautions(d, "generic"));
    CHECK(cautions(d, "friction"));
    CHECK(cautions(d, "maker-first"));
}

TEST_CASE("derive: the way back gives what went in") {
    for (const auto& [thread, name] : std::vector<std::pair<const char*, const char*>>{
             {"M10", "8.8"}, {"M18x1.5", "10.9"}, {"3/8-16", "grade 5"}, {"M8", "A2-70"}, {"1-1/8-12", "grade 8"}}) {
        for (const char* k : {"0.05", "0.137", "0.2", "0.5"}) {
            INFO(thread << " " << name << " K " << k);
            const auto with = [&](const std::function<void(DeriveRequest&)>& change) {
                DeriveRequest r{thread, name, k, {}, {}, {}, false};
                change(r);
                return answer::derive(curated(), r);
            };
            const Document there = with([](DeriveRequest& r) { r.preload = "61.8%"; });
            const Document back =
                with([&](DeriveRequest& r) { r.torque = fmt::format("{:.17g} N·m", figure(there, "torque").value); });
            CHECK_THAT(figure(back, "preload").value, WithinRel(figure(there, "preload").value, 1e-12));
            CHECK_THAT(figure(back, "utilisation").value, WithinRel(0.618, 1e-12));
            CHECK_THAT(figure(back, "preload_band.low").value, WithinRel(figure(there, "preload_band.low").value, 1e-12));
        }
    }
    const Document inch = derived([](DeriveRequest& r) { r.torque = "30 lbf·ft"; });
    CHECK(figure(inch, "torque").print == "30 lbf·ft");
    CHECK(figure(inch, "torque").also == "40.7 N·m");
    CHECK_THAT(figure(inch, "torque").value, WithinRel(30 * 0.3048 * 4.4482216152605, 1e-12));
}

TEST_CASE("derive: the preload asked for as a force, a share, or left to the usual") {
    CHECK_THAT(figure(derived([](DeriveRequest& r) { r.preload = "20 kN"; }), "preload").value, WithinRel(20000.0, 1e-12));
    CHECK_THAT(figure(derived([](DeriveRequest& r) { r.preload = "100%"; }), "preload").value, WithinRel(33700.0, 1e-12));
    const Figure usual = figure(answer::derive(curated(), request()), "preload");
    CHECK_THAT(usual.value, WithinRel(0.75 * 33700, 1e-12));
    CHECK(usual.citation->source == "shigley");
    CHECK_THAT(figure(derived([](DeriveRequest& r) { r.permanent = true; }), "preload").value, WithinRel(0.9 * 33700, 1e-12));
    // a class without proof stress is held against its 0.2 % limit
    const Document stainless = derived([](DeriveRequest& r) { r.property_class = "A2-70"; });
    CHECK_THAT(figure(stainless, "proof_load").value, WithinRel(450 * figure(stainless, "stress_area").value, 1e-12));
    CHECK(item(stainless, "proof_load")->title == "load at the 0.2 % limit");
    CHECK(stainless.notes.front().find("gives no proof stress for this class") != std::string::npos);
}

TEST_CASE("derive: the nut factor of a condition, and the band of preload that a torque may make") {
    const Document stated = derived([](DeriveRequest& r) { r.condition = "Lubricated"; });
    CHECK_THAT(figure(stated, "nut_factor").value, WithinRel(0.18, 1e-12));
    CHECK(figure(stated, "nut_factor").label == Label::standard);
    CHECK(figure(stated, "nut_factor").citation->source == "shigley");
    const double preload = figure(stated, "preload").value;
    // NSTS 08307: ±25 % for lubricated bolts
    CHECK_THAT(figure(stated, "preload_band.low").value, WithinRel(0.75 * preload, 1e-12));
    CHECK_THAT(figure(stated, "preload_band.high").value, WithinRel(1.25 * preload, 1e-12));
    const Document plain = answer::derive(curated(), request());
    CHECK_THAT(figure(plain, "nut_factor").value, WithinRel(0.2, 1e-12));
    CHECK_THAT(figure(plain, "preload_band.low").value, WithinRel(0.65 * 25275, 1e-12));
    CHECK_THAT(figure(plain, "preload_band.high").value, WithinRel(1.35 * 25275, 1e-12));
    CHECK(cautions(plain, "over-proof"));
    CHECK_FALSE(cautions(derived([](DeriveRequest& r) { r.preload = "50%"; }), "over-proof"));
    const Document cadmium = derived([](DeriveRequest& r) { r.condition = "cadmium-plated"; });
    CHECK_THAT(figure(cadmium, "preload_band.high").value, WithinRel(1.3 * 25275, 1e-12));
    const Document range = derived([](DeriveRequest& r) { r.condition = "zinc on steel"; });
    CHECK_THAT(figure(range, "nut_factor").value, WithinRel(0.26, 1e-12));
    CHECK(figure(range, "nut_factor").label == Label::derived);
    const double torque = figure(range, "torque").value;
    CHECK_THAT(figure(range, "preload_band.low").value, WithinRel(torque * 1000 / (0.35 * 10), 1e-12));
    CHECK_THAT(figure(range, "preload_band.high").value, WithinRel(torque * 1000 / (0.17 * 10), 1e-12));
    const Document most = derived([](DeriveRequest& r) { r.nut_factor = "0.5"; });
    CHECK_THAT(figure(most, "preload_band.low").value, WithinRel(figure(most, "preload").value, 1e-12));
    CHECK(most.notes.front().find("held to nut factors from 0.05 to 0.50") != std::string::npos);
}

TEST_CASE("derive: options that exclude each other, and limits named") {
    using enum ErrorKind;
    CHECK(refused(usage, [](auto& r) {
              r.nut_factor = "0.2", r.condition = "lubricated";
          }).starts_with("--nut-factor and --condition exclude each other"));
    CHECK(refused(usage, [](auto& r) {
              r.torque = "50 N·m", r.preload = "75%";
          }).starts_with("--torque and --preload exclude each other"));
    CHECK(refused(usage, [](auto& r) { r.torque = "50 N·m", r.permanent = true; }).starts_with("--torque and"));
    CHECK(refused(usage, [](auto& r) {
              r.preload = "75%", r.permanent = true;
          }).starts_with("--preload and --permanent exclude each other"));
    CHECK(refused(out_of_validity, [](auto& r) { r.nut_factor = "0.049"; }) == "a nut factor of 0.049 lies outside 0.05 to 0.50");
    CHECK(refused(out_of_validity, [](auto& r) { r.nut_factor = "0.501"; }) == "a nut factor of 0.501 lies outside 0.05 to 0.50");
    CHECK(refused(not_found, [](auto& r) { r.condition = "stainles"; }).find("did you mean 'stainless'?") != std::string::npos);
    CHECK(refused(out_of_validity, [](auto& r) { r.preload = "101%"; }) ==
          "a preload of 101% passes the proof load of 33700 N; at most 100 %");
    CHECK(refused(out_of_validity, [](auto& r) { r.preload = "0%"; }) == "a preload of 0% must be more than zero");
    CHECK(refused(out_of_validity, [](auto& r) { r.preload = "-5 kN"; }) == "a preload of -5 kN must be more than zero");
    CHECK(refused(out_of_validity, [](auto& r) { r.preload = "33.8 kN"; }) ==
          "a preload of 33.8 kN passes the proof load of 33700 N");
    const std::string bare = refused(usage, [](auto& r) { r.preload = "0.5"; });
    CHECK(bare.starts_with("'0.5' has no unit"));
    CHECK(bare.find("a torque is written") == std::string::npos); // it is a preload that was asked for
    CHECK(refused(usage, [](auto& r) { r.preload = "34 N·m"; }).starts_with("'34 N·m' is a torque; a preload is a force"));
    CHECK(refused(out_of_validity, [](auto& r) { r.torque = "67.5 N·m"; }) ==
          "67.5 N·m on M10 8.8 would make 33800 N, more than its proof load of 33700 N; with this nut factor at most 67.4 N·m "
          "(49.7 lbf·ft)");
    CHECK(refused(out_of_validity, [](auto& r) { r.torque = "0 N·m"; }) == "the torque must be more than zero");
    CHECK(refused(usage, [](auto& r) { r.torque = "5 kN"; }) != "accepted");
    CHECK(refused(out_of_validity, [](auto& r) { r.thread = "G1/2"; }).starts_with("G1/2 is a pipe thread"));
    CHECK(refused(out_of_validity, [](auto& r) { r.thread = "M42"; }).find("M1.6 to M39") != std::string::npos);
    CHECK(refused(not_found, [](auto& r) { r.property_class = "8.9"; }) != "accepted");
}

TEST_CASE("derive by friction: every figure has an origin, the shares are the whole, and back again") {
    DeriveRequest r = request();
    r.friction.coefficients = "0.12,0.14";
    r.friction.under = "S355J2";
    const Document there = answer::derive(curated(), r);
    const double torque = figure(there, "torque").value;
    CHECK_THAT(figure(there, "shares.pitch").value + figure(there, "shares.thread").value + figure(there, "shares.head").value,
               WithinRel(torque, 1e-12));
    CHECK_THAT(figure(there, "nut_factor").value * figure(there, "preload").value * 0.010, WithinRel(torque, 1e-12));
    CHECK(figure(there, "friction.thread").value == 0.12);
    CHECK(figure(there, "friction.head").value == 0.14);
    CHECK(figure(there, "bearing_diameter").citation);
    CHECK(figure(there, "hole").citation);
    CHECK(figure(there, "limiting_pressure").citation);
    CHECK(figure(there, "limiting_pressure").value > figure(there, "surface_pressure").value);
    CHECK_FALSE(cautions(there, "over-pressure"));
    CHECK(cautions(there, "generic"));
    CHECK(cautions(there, "friction"));
    r.friction.under = "cast aluminium";
    CHECK(cautions(answer::derive(curated(), r), "over-pressure"));
    r.torque = print_shortest(torque) + " N·m";
    const Document back = answer::derive(curated(), r);
    CHECK_THAT(figure(back, "preload").value, WithinRel(figure(there, "preload").value, 1e-12));
    CHECK_THAT(figure(back, "utilisation").value, WithinRel(0.9, 1e-12));
    r.property_class = "10.9";
    CHECK(figure(answer::derive(curated(), r), "yield_strength").value == 940);
    r.thread = "G1/2";
    CHECK(refusal(ErrorKind::out_of_validity, [&] { (void)answer::derive(curated(), r); }) != "accepted");
}

TEST_CASE("strength: printed loads are standard, computed ones derived") {
    const Document printed = answer::strength(curated(), "M10", "8.8");
    CHECK(printed.schema == "strength");
    for (const auto& [key, value] : std::vector<std::pair<const char*, double>>{{"stress_area", 58.0},
                                                                                {"proof_load", 33700.0},
                                                                                {"min_tensile_load", 46400.0},
                                                                                {"proof_stress", 580.0},
                                                                                {"yield_strength", 640.0},
                                                                                {"tensile_strength", 800.0}}) {
        INFO(key);
        CHECK_THAT(figure(printed, key).value, WithinRel(value, 1e-12));
        CHECK(figure(printed, key).label == Label::standard);
        CHECK(figure(printed, key).citation);
    }
    const Document ruled = answer::strength(curated(), "M5", "12.9"); // not in the print: by its rule, three digits
    CHECK(figure(ruled, "proof_load").label == Label::derived);
    CHECK(figure(ruled, "min_tensile_load").label == Label::derived);
    CHECK(figure(ruled, "stress_area").label == Label::standard);
    const Document stainless = answer::strength(curated(), "M10", "A2 70");
    CHECK(item(stainless, "proof_load") == nullptr);
    const double area = figure(stainless, "stress_area").value;
    CHECK(figure(stainless, "stress_area").label == Label::derived);
    CHECK_THAT(figure(stainless, "yield_load").value, WithinRel(450 * area, 1e-12));
    CHECK(figure(stainless, "yield_load").label == Label::derived);
    CHECK_THAT(figure(stainless, "min_tensile_load").value, WithinRel(700 * area, 1e-12));
    CHECK(refusal(ErrorKind::out_of_validity, [] { return answer::strength(curated(), "M42", "8.8"); }) != "accepted");
    CHECK(refusal(ErrorKind::usage, [] { return answer::strength(curated(), "wide", "8.8"); }) != "accepted");
}

TEST_CASE("thread: printed sizes are standard, the others by formula, pipe threads without stress area") {
    const Document metric = answer::thread(curated(), "M10x1.5");
    CHECK(item(metric, "thread")->text == "M10");
    CHECK_THAT(figure(metric, "major_diameter").value, WithinRel(10.0, 1e-12));
    CHECK_THAT(figure(metric, "pitch").value, WithinRel(1.5, 1e-12));
    CHECK_THAT(figure(metric, "pitch_diameter").value, WithinRel(10 - 0.649519 * 1.5, 1e-6)); // ISO 724
    CHECK(figure(metric, "pitch").label == Label::standard);
    CHECK(figure(metric, "pitch_diameter").label == Label::derived);
    // ISO 965-1: M10, 6g and 6H
    CHECK(print_of(metric, "limits.external.major_max") == "9.968 mm");
    CHECK(print_of(metric, "limits.external.pitch_min") == "8.862 mm");
    CHECK(print_of(metric, "limits.internal.pitch_max") == "9.206 mm");
    const Document inch = answer::thread(curated(), "3/8-16");
    CHECK(figure(inch, "stress_area").also == "0.0775 in²"); // ASME B1.1
    CHECK(figure(inch, "stress_area").label == Label::standard);
    for (const char* pipe : {"G1/2", "R1/2", "1/2-14 NPT"}) {
        const Document d = answer::thread(curated(), pipe);
        INFO(pipe);
        CHECK(item(d, "stress_area") == nullptr);
        CHECK(std::ranges::any_of(d.notes, [](const std::string& note) { return note.ends_with("carries no property class."); }));
    }
}

TEST_CASE("convert: exact value, digits of the input and one more, and the workshop's other units") {
    const Document d = converted("24 lbf·ft", "N·m");
    CHECK_THAT(figure(d, "result").value, WithinRel(24 * 0.3048 * 4.4482216152605, 1e-12));
    CHECK(print_of(d, "result") == "32.5 N·m");
    CHECK(print_of(d, "input") == "24 lbf·ft");
    CHECK_FALSE(figure(d, "result").label); // the user's own number in another unit
    CHECK(print_of(converted("32 N·m", "N·m"), "result") == "32 N·m");
    const Document other = converted("32 N·m");
    CHECK(print_of(other, "result") == "23.6 lbf·ft");
    CHECK(print_of(other, "also.lbf·in") == "283 lbf·in");
    CHECK(print_of(other, "also.kgf·m") == "3.26 kgf·m");
    CHECK(print_of(converted("-40 °C"), "result") == "-40.0 °F");
    CHECK(refusal(ErrorKind::usage, [] { return converted("24 lbf·ft", "mm"); }) ==
          "'24 lbf·ft' is a torque and does not become a length (mm)");
    CHECK(refusal(ErrorKind::usage, [] { return converted("24 lbs", "N·m"); }) != "accepted");
}

TEST_CASE("convert: a tool's scale rounds to its nearest mark and says by how much") {
    const Document d = converted("24 lbf·ft", "N·m", "0.5");
    CHECK_THAT(figure(d, "scale.setting").value, WithinRel(32.5, 1e-12));
    CHECK(print_of(d, "scale.setting") == "32.5 N·m");
    CHECK_THAT(figure(d, "scale.error").value, WithinRel(32.5 / (24 * 0.3048 * 4.4482216152605) - 1, 1e-12));
    CHECK(print_of(d, "scale.error") == "-0.12 %");
    CHECK(print_of(converted("33 N·m", "N·m", "2,5 N·m"), "scale.setting") == "32.5 N·m");
    CHECK(print_of(converted("33 N·m", "N·m", "2,5 N·m"), "scale.error") == "-1.52 %");
    CHECK(print_of(converted("24 lbf·ft", "N·m", "0.1 kgf·m"), "scale.setting") == "3.3 kgf·m"); // as the tool is marked
    CHECK(print_of(converted("24 lbf·ft", {}, "5"), "scale.setting") == "35 N·m");
    CHECK(print_of(converted("24 lbf·ft", {}, "5"), "scale.error") == "+7.56 %");
    const auto refused_scale = [](const char* scale) {
        return refusal(ErrorKind::out_of_validity, [&] { return converted("24 lbf·ft", "N·m", scale); });
    };
    CHECK(refused_scale("0") == "the scale's step '0' must be more than zero");
    CHECK(refused_scale("-1").ends_with("must be more than zero"));
    CHECK(refused_scale("100").starts_with("a scale in steps of 100 N·m rounds 32.5 N·m to nothing"));
    CHECK(refusal(ErrorKind::usage, [] { return converted("24 lbf·ft", "N·m", "5 mm"); }) != "accepted");
}
