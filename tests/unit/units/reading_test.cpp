// SPDX-License-Identifier: MIT
// Every spelling of every unit is read back as that unit, and what is no unit, or may be two, is refused with advice.

#include "clampbook/base/text.hpp"
#include "clampbook/units/reading.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <map>
#include <set>

namespace {

using namespace clampbook;
using Catch::Contains;

std::string refused(std::string_view text) {
    return unit_tests::refusal(ErrorKind::usage, [&] { return read_quantity(text); });
}
std::string refused(std::string_view text, Dimension wanted) {
    return unit_tests::refusal(ErrorKind::usage, [&] { return read_quantity(text, wanted); });
}
std::string refused_unit(std::string_view text) {
    return unit_tests::refusal(ErrorKind::usage, [&] { return unit_named(text); });
}

std::vector<std::string> spellings_of(const UnitInfo& unit) {
    std::vector<std::string> all = split(unit.spellings, ' ');
    if (!unit.symbol.empty()) {
        all.emplace_back(unit.symbol);
    }
    return all;
}

std::string upper(std::string text) {
    for (char& c : text) {
        c = static_cast<char>(c >= 'a' && c <= 'z' ? c - 'a' + 'A' : c);
    }
    return text;
}

} // namespace

TEST_CASE("every spelling of every unit names that unit") {
    CHECK(all_units().size() > 45);
    for (const UnitInfo& unit : all_units()) {
        for (const std::string& spelling : spellings_of(unit)) {
            INFO(spelling << " should be " << unit.symbol);
            REQUIRE_FALSE(spelling.empty());
            CHECK(&unit_named(spelling) == &unit);
            CHECK(&unit_named("  " + spelling + " ") == &unit);
            CHECK(&unit_named(upper(spelling)) == &unit);
            if (spelling != "1") { // "32 1" would be two numbers
                const Reading reading = read_quantity("32.5 " + spelling, unit.dimension);
                CHECK(reading.unit == &unit);
                CHECK(reading.value == 32.5);
                CHECK(reading.significant == 3);
                CHECK(reading.text == "32.5 " + spelling);
                CHECK(read_quantity("32.5 " + spelling).unit == &unit);
            }
        }
    }
}

TEST_CASE("no spelling stands for two units, and none is out of reach") {
    std::map<std::string, std::string> owner;
    std::set<std::string> symbols;
    for (const UnitInfo& unit : all_units()) {
        INFO(unit.symbol);
        CHECK(symbols.insert(std::string{unit.symbol}).second);
        for (const std::string& spelling : split(unit.spellings, ' ')) {
            INFO(spelling << " of " << unit.symbol << " and " << owner[spelling]);
            CHECK(owner[spelling].empty());
            owner[spelling] = unit.symbol.empty() ? "number" : unit.symbol;
            CHECK(fold(spelling) == spelling); // else it could never be met
        }
    }
}

TEST_CASE("quantities are read as the trade writes them") {
    const struct {
        const char* text;
        const char* symbol;
        double value;
        double canonical;
    } cases[] = {
        {"32 N·m", "N·m", 32, 32},
        {"32Nm", "N·m", 32, 32},
        {"32 N m", "N·m", 32, 32},
        {"32 N.m", "N·m", 32, 32},
        {"32 N-m", "N·m", 32, 32},
        {"32 N*m", "N·m", 32, 32},
        {"32 N⋅m", "N·m", 32, 32},
        {"32 N×m", "N·m", 32, 32},
        {" 32\u00a0N·m\u202f", "N·m", 32, 32},
        {"32,5 Nm", "N·m", 32.5, 32.5},
        {"24 lbf·ft", "lbf·ft", 24, 24 * 1.3558179483314004},
        {"24 ft-lb", "lbf·ft", 24, 24 * 1.3558179483314004},
        {"24 ft. lbs.", "lbf·ft", 24, 24 * 1.3558179483314004},
        {"24 foot-pounds", "lbf·ft", 24, 24 * 1.3558179483314004},
        {"24 lb ft", "lbf·ft", 24, 24 * 1.3558179483314004},
        {"283 in-lb", "lbf·in", 283, 283 * 0.1129848290276167},
        {"283 in. lbs", "lbf·in", 283, 283 * 0.1129848290276167},
        {"40 in-oz", "ozf·in", 40, 40 * 0.1129848290276167 / 16},
        {"3,3 kgf·m", "kgf·m", 3.3, 3.3 * 9.80665},
        {"3.3 mkg", "kgf·m", 3.3, 3.3 * 9.80665},
        {"33 kp cm", "kp·cm", 33, 0.33 * 9.80665},
        {"3.2 daN·m", "daN·m", 3.2, 32},
        {"320 N·cm", "N·cm", 320, 3.2},
        {"1 3/8 in", "in", 1.375, 34.925},
        {"1/2\"", "in", 0.5, 12.7},
        {"1/2″", "in", 0.5, 12.7},
        {"10 µm", "µm", 10, 0.01},
        {"10 μm", "µm", 10, 0.01},
        {"90°", "°", 90, 90},
        {"90º", "°", 90, 90},
        {"1/4 turn", "turn", 0.25, 90},
        {"3.14159265358979 rad", "rad", 3.14159265358979, 180},
        {"25 kN", "kN", 25, 25000},
        {"640 N/mm²", "N/mm²", 640, 640},
        {"640 n/mm2", "N/mm²", 640, 640},
        {"85 ksi", "ksi", 85, 85 * 6.894757293168361},
        {"10 bar", "bar", 10, 1},
        {"58 mm²", "mm²", 58, 58},
        {"58 sq mm", "mm²", 58, 58},
        {"75 %", "%", 75, 0.75},
        {"212 °F", "°F", 212, 100},
        {"0 K", "K", 0, -273.15},
        {"-40 °F", "°F", -40, -40},
        {"\u221240 °C", "°C", -40, -40},
        {"2 US gal", "US gal", 2, 7.570823568},
        {"2 imp gal", "imp gal", 2, 9.09218},
        {"2 UK gal", "imp gal", 2, 9.09218},
        {"1 US qt", "US qt", 1, 0.946352946},
        {"850 cc", "ml", 850, 0.85},
        {"11.5 1e-6/K", "1e-6/K", 11.5, 11.5e-6},
    };
    for (const auto& c : cases) {
        INFO(c.text);
        const Reading reading = read_quantity(c.text);
        CHECK(reading.unit->symbol == c.symbol);
        CHECK_THAT(reading.value, Catch::WithinRel(c.value, 1e-15));
        CHECK_THAT(reading.canonical(), Catch::WithinRel(c.canonical, 1e-13) || Catch::WithinAbs(c.canonical, 1e-12));
    }
    CHECK(read_quantity("  32.50 Nm ").text == "32.50 Nm");
    CHECK(read_quantity("32.50 Nm").significant == 4);
    CHECK(read_quantity("-40 °C").is_signed);
    CHECK_FALSE(read_quantity("40 °C").is_signed);
    CHECK(read_quantity("32 Nm").as<Dimension::torque>() == 32.0 * newton_metre);
}

TEST_CASE("a bare number is read where a number is wanted, and nowhere else") {
    const Reading reading = read_quantity("0.2", Dimension::number);
    CHECK(reading.canonical() == 0.2);
    CHECK(reading.unit->symbol.empty());
    CHECK(read_quantity("20%", Dimension::number).canonical() == 0.2);
    CHECK(refused("32") == "'32' has no unit; a torque is written like '32 N·m'");
    CHECK(refused("32", Dimension::length) == "'32' has no unit; a length is written like '32 mm'");
    CHECK_THAT(refused("32", Dimension::angle), Contains("an angle is written like '32°'"));
    CHECK_THAT(refused("0.2 1", Dimension::number), Contains("'1' is no unit known here"));
}

TEST_CASE("a mass is not taken for a torque or a force") {
    CHECK(refused("24 lb") == "'lb' is a mass, not a torque or a force; write lbf·ft or lbf·in for a torque, lbf for a force");
    CHECK_THAT(refused("24 lbs", Dimension::torque), Contains("'lbs' is a mass, not a torque; write lbf·ft or lbf·in"));
    CHECK_THAT(refused("24 pounds", Dimension::force), Contains("'pounds' is a mass, not a force"));
    CHECK_THAT(refused_unit("Pound"), Contains("'Pound' is a mass"));
    CHECK(refused("3 kg") == "'kg' is a mass, not a torque or a force; write kgf·m or kgf·cm for a torque, kgf for a force");
    CHECK_THAT(refused("3 kilos", Dimension::torque), Contains("'kilos' is a mass, not a torque; write kgf·m"));
    CHECK(refused("5 oz") == "'oz' is a mass; write ozf·in for a torque");
}

TEST_CASE("a gallon says whose it is, and an energy is no torque") {
    CHECK(refused("2 gal") == "'gal' can be US or imperial; write 'US gal' or 'imp gal'");
    CHECK_THAT(refused("2 gallons", Dimension::volume), Contains("'gallons' can be US or imperial"));
    for (const char* word : {"gallon", "qt", "quart", "pt", "pint"}) {
        CHECK_THAT(refused_unit(word), Contains("can be US or imperial") && Contains("'US " + std::string{word} + "'"));
    }
    for (const char* word : {"J", "joule", "Joules"}) {
        CHECK(refused_unit(word) == "'" + std::string{word} + "' is an energy; a torque is written in N·m");
    }
    CHECK_THAT(refused("32 J", Dimension::torque), Contains("'J' is an energy"));
}

TEST_CASE("an unknown unit is refused with the nearest and with all that would do") {
    CHECK(refused("32 N·mx").starts_with("'N·mx' is no unit known here (did you mean 'N·m'?)"));
    for (const char* two : {"30-36 Nm", "30–36 N·m", "30..36 lbf·ft", "32 ± 2 Nm", "30 - 36 Nm"}) {
        CHECK(refused(two) ==
              "'" + std::string{two} + "' holds two figures, where one is read; write each by itself, like '32 N·m'");
    }
    CHECK_THAT(refused("32 ±Nm"), Contains("'±Nm' is no unit known here"));
    CHECK_THAT(refused("32 xyz"), Contains("'xyz' is no unit known here") && !Contains("did you mean"));
    CHECK_THAT(refused("32 furlongs", Dimension::angle),
               Contains("'furlongs' is no unit known here; for an angle: °, turn, rad"));
    CHECK_THAT(refused_unit("newtons metre square"), Contains("is no unit known here"));
    CHECK(refused_unit("  ") == "no unit was written, like N·m or lbf·ft");
}

TEST_CASE("a unit of another dimension is refused with those that are wanted") {
    CHECK(refused("32 mm", Dimension::angle) == "'32 mm' is a length, where an angle is wanted: °, turn, rad");
    CHECK_THAT(refused("32 N·m", Dimension::force),
               Contains("'32 N·m' is a torque, where a force is wanted: N, daN, kN, lbf, kgf, kp"));
    CHECK_THAT(refused("32 N", Dimension::torque), Contains("is a force, where a torque is wanted: N·m"));
    CHECK_THAT(refused("32 %", Dimension::stress), Contains("is a number, where a stress is wanted: MPa"));
    for (const UnitInfo& unit : all_units()) {
        const Dimension other = unit.dimension == Dimension::angle ? Dimension::torque : Dimension::angle;
        CHECK_THAT(refused("5 " + std::string{unit.symbol.empty() ? "%" : unit.symbol}, other), Contains("is wanted: "));
    }
}

TEST_CASE("text without a number is refused") {
    CHECK(refused("") == "nothing was written where a torque is wanted, like '32 N·m'");
    CHECK(refused("  ", Dimension::length) == "nothing was written where a length is wanted, like '32 mm'");
    CHECK(refused("tight") == "'tight' does not begin with a number; a torque is written like '32 N·m'");
    CHECK_THAT(refused("N·m 32", Dimension::torque), Contains("'N·m 32' does not begin with a number"));
    CHECK_THAT(refused("1,250 N·m"), Contains("as 1250 or as 1.250"));
    CHECK_THAT(refused("\xFF 5"), Contains("does not begin with a number"));
}

TEST_CASE("nothing is colder than absolute zero") {
    CHECK(refused("-300 °C") == "'-300 °C' lies under absolute zero (-273.15 °C)");
    CHECK_THAT(refused("-1 K"), Contains("under absolute zero"));
    CHECK_THAT(refused("-460 °F", Dimension::temperature), Contains("under absolute zero"));
    CHECK(read_quantity("-273.15 °C").value == -273.15);
}

TEST_CASE("conversion keeps the number, back and forth") {
    for (const UnitInfo& from : all_units()) {
        if (from.symbol.empty()) {
            continue;
        }
        const Reading reading = read_quantity("32.7 " + std::string{from.symbol});
        CHECK(convert(reading, from) == 32.7); // to its own unit: the same number exactly
        for (const UnitInfo& to : all_units()) {
            INFO(from.symbol << " to " << to.symbol);
            if (to.dimension != from.dimension) {
                CHECK_THAT(unit_tests::refusal(ErrorKind::usage, [&] { return convert(reading, to); }),
                           Contains("does not become " + std::string{dimension_name(to.dimension)}));
                continue;
            }
            const Reading there{"", convert(reading, to), &to, 3, false};
            CHECK_THAT(convert(there, from), Catch::WithinRel(32.7, 2e-14));
        }
    }
    CHECK_THAT(convert(read_quantity("24 lbf·ft"), unit_named("N·m")), Catch::WithinRel(32.53963075995361, 1e-15));
    CHECK_THAT(convert(read_quantity("100 °C"), unit_named("°F")), Catch::WithinRel(212.0, 1e-15));
}

TEST_CASE("each dimension has a canonical unit and a name") {
    const std::pair<Dimension, std::string> symbols[] = {
        {Dimension::number, ""},        {Dimension::length, "mm"},     {Dimension::area, "mm²"},   {Dimension::volume, "l"},
        {Dimension::force, "N"},        {Dimension::torque, "N·m"},    {Dimension::stress, "MPa"}, {Dimension::angle, "°"},
        {Dimension::temperature, "°C"}, {Dimension::expansion, "1/K"},
    };
    for (const auto& [dimension, symbol] : symbols) {
        CHECK(canonical_unit(dimension).symbol == symbol);
        CHECK(canonical_unit(dimension).dimension == dimension);
        CHECK(dimension_name(dimension).starts_with("a"));
    }
    CHECK(with_unit("32.5", unit_named("N·m")) == "32.5 N·m");
    CHECK(with_unit("90", unit_named("°")) == "90°");
    CHECK(with_unit("0.2", canonical_unit(Dimension::number)) == "0.2");
    CHECK(with_unit("75", unit_named("%")) == "75 %");
}
