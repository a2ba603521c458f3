// SPDX-License-Identifier: MIT
#include "clampbook/units/reading.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace clampbook {
namespace {

namespace c = constants;
using enum Dimension;

constexpr std::array k_units{
    UnitInfo{torque, "N·m", 1.0, 0, "nm newtonmetre newtonmetres newtonmeter newtonmeters"},
    UnitInfo{torque, "N·mm", 0.001, 0, "nmm"},
    UnitInfo{torque, "N·cm", 0.01, 0, "ncm"},
    UnitInfo{torque, "cN·m", 0.01, 0, "cnm"},
    UnitInfo{torque, "daN·m", 10.0, 0, "danm mdan"},
    UnitInfo{torque, "kN·m", 1000.0, 0, "knm"},
    UnitInfo{torque, "lbf·ft", c::k_lbf_ft_Nm, 0,
             "lbfft ftlbf ftlb ftlbs lbft lbsft lbfeet lbsfeet footpound footpounds poundfoot poundfeet poundsfeet "
             "footpoundforce poundforcefoot poundforcefeet"},
    UnitInfo{torque, "lbf·in", c::k_lbf_in_Nm, 0,
             "lbfin inlbf inlb inlbs lbin lbsin lbinch inchlb inchlbs inchpound inchpounds poundinch poundinches "
             "poundsinches poundforceinch"},
    UnitInfo{torque, "ozf·in", c::k_ozf_in_Nm, 0, "ozfin inozf inoz ozin inchounce inchounces ounceinch ounceinches"},
    UnitInfo{torque, "kgf·m", c::k_kgf_N, 0, "kgfm mkgf kgm mkg"},
    UnitInfo{torque, "kgf·cm", c::k_kgf_N * 0.01, 0, "kgfcm cmkgf kgcm cmkg"},
    UnitInfo{torque, "kp·m", c::k_kgf_N, 0, "kpm mkp"},
    UnitInfo{torque, "kp·cm", c::k_kgf_N * 0.01, 0, "kpcm cmkp"},
    UnitInfo{force, "N", 1.0, 0, "n newton newtons"},
    UnitInfo{force, "daN", 10.0, 0, "dan"},
    UnitInfo{force, "kN", 1000.0, 0, "kn kilonewton kilonewtons"},
    UnitInfo{force, "lbf", c::k_lbf_N, 0, "lbf lbsf poundforce poundsforce"},
    UnitInfo{force, "kgf", c::k_kgf_N, 0, "kgf"},
    UnitInfo{force, "kp", c::k_kgf_N, 0, "kp kilopond kiloponds"},
    UnitInfo{length, "mm", 1.0, 0, "mm millimetre millimetres millimeter millimeters"},
    UnitInfo{length, "cm", 10.0, 0, "cm"},
    UnitInfo{length, "m", 1000.0, 0, "m metre metres meter meters"},
    UnitInfo{length, "µm", 1e-3, 0, "\u00b5m \u03bcm um micron microns"},
    UnitInfo{length, "in", c::k_inch_mm, 0, "in inch inches \" \u2033"},
    UnitInfo{length, "ft", c::k_foot_mm, 0, "ft foot feet"},
    UnitInfo{area, "mm²", 1.0, 0, "mm2 sqmm"},
    UnitInfo{area, "cm²", 100.0, 0, "cm2 sqcm"},
    UnitInfo{area, "in²", c::k_in2_mm2, 0, "in2 sqin"},
    UnitInfo{stress, "MPa", 1.0, 0, "mpa"},
    UnitInfo{stress, "N/mm²", 1.0, 0, "n/mm2"},
    UnitInfo{stress, "GPa", 1000.0, 0, "gpa"},
    UnitInfo{stress, "kPa", 1e-3, 0, "kpa"},
    UnitInfo{stress, "bar", 0.1, 0, "bar"},
    UnitInfo{stress, "psi", c::k_psi_MPa, 0, "psi lbf/in2 lb/in2"},
    UnitInfo{stress, "ksi", c::k_psi_MPa * 1000.0, 0, "ksi"},
    UnitInfo{temperature, "°C", 1.0, 0, "°c degc celsius"},
    UnitInfo{temperature, "°F", 5.0 / 9.0, 32.0, "°f degf fahrenheit"},
    UnitInfo{temperature, "K", 1.0, 273.15, "k kelvin"},
    UnitInfo{volume, "l", 1.0, 0, "l litre litres liter liters dm3"},
    UnitInfo{volume, "ml", 1e-3, 0, "ml cm3 cc"},
    UnitInfo{volume, "US gal", c::k_us_gallon_l, 0, "usgal usgallon usgallons"},
    UnitInfo{volume, "US qt", c::k_us_gallon_l / 4.0, 0, "usqt usquart usquarts"},
    UnitInfo{volume, "US pt", c::k_us_gallon_l / 8.0, 0, "uspt uspint uspints"},
    UnitInfo{volume, "imp gal", c::k_imperial_gallon_l, 0, "impgal ukgal imperialgallon imperialgallons"},
    UnitInfo{volume, "imp qt", c::k_imperial_gallon_l / 4.0, 0, "impqt ukqt imperialquart imperialquarts"},
    UnitInfo{volume, "imp pt", c::k_imperial_gallon_l / 8.0, 0, "imppt ukpt imperialpint imperialpints"},
    UnitInfo{angle, "°", 1.0, 0, "° deg degree degrees"},
    UnitInfo{angle, "turn", c::k_turn_degrees, 0, "turn turns rev"},
    UnitInfo{angle, "rad", c::k_turn_degrees / (2 * c::k_pi), 0, "rad radian radians"},
    UnitInfo{number, "", 1.0, 0, "1"},
    UnitInfo{number, "%", 0.01, 0, "% percent pct"},
    UnitInfo{expansion, "1/K", 1.0, 0, "1/k"},
    UnitInfo{expansion, "1e-6/K", 1e-6, 0, "1e6/k"},
};

// Units of the table are found without regard to case, blanks, raised dots, points, hyphens and superscripts.
std::string unit_key(std::string_view text) {
    std::string key;
    for (const char32_t p : code_points(fold(text))) {
        switch (p) {
        case U' ':
        case U'.':
        case U'-':
        case U'*':
        case U'_':
        case 0xB7:   // middle dot
        case 0x22C5: // dot operator
        case 0x2022: // bullet
        case 0xD7:   // multiplication sign
            break;
        case 0xB2:
            key += '2';
            break;
        case 0xB3:
            key += '3';
            break;
        case 0xBA: // masculine ordinal, typed for a degree sign
            key += utf8(0xB0);
            break;
        default:
            key += utf8(p);
        }
    }
    return key;
}

const UnitInfo* find_unit(std::string_view key) {
    for (const UnitInfo& unit : k_units) {
        std::string_view rest = unit.spellings;
        while (!rest.empty()) {
            const std::size_t blank = rest.find(' ');
            if (rest.substr(0, blank) == key) {
                return &unit;
            }
            rest.remove_prefix(blank == std::string_view::npos ? rest.size() : blank + 1);
        }
    }
    return nullptr;
}

std::string symbols_of(Dimension dimension) {
    std::vector<std::string> symbols;
    for (const UnitInfo& unit : k_units) {
        if (unit.dimension == dimension) {
            symbols.emplace_back(unit.symbol);
        }
    }
    return join(symbols, ", ");
}

// What was probably meant by a word that is no unit here. `wanted` sharpens the advice.
[[noreturn]] void refuse_unit(std::string_view unit, const std::string& key, std::optional<Dimension> wanted) {
    if (key == "lb" || key == "lbs" || key == "pound" || key == "pounds") {
        throw error(ErrorKind::usage, "'{}' is a mass, not {}; write lbf·ft or lbf·in for a torque, lbf for a force", unit,
                    wanted ? dimension_name(*wanted) : "a torque or a force");
    }
    if (key == "kg" || key == "kilo" || key == "kilos") {
        throw error(ErrorKind::usage, "'{}' is a mass, not {}; write kgf·m or kgf·cm for a torque, kgf for a force", unit,
                    wanted ? dimension_name(*wanted) : "a torque or a force");
    }
    if (key == "oz") {
        throw error(ErrorKind::usage, "'{}' is a mass; write ozf·in for a torque", unit);
    }
    if (key == "gal" || key == "gallon" || key == "gallons" || key == "qt" || key == "quart" || key == "pt" || key == "pint") {
        throw error(ErrorKind::usage, "'{}' can be US or imperial; write 'US {}' or 'imp {}'", unit, unit, unit);
    }
    if (key == "j" || key == "joule" || key == "joules") {
        throw error(ErrorKind::usage, "'{}' is an energy; a torque is written in N·m", unit);
    }
    std::vector<std::string> symbols;
    for (const UnitInfo& known : k_units) {
        if (!known.symbol.empty() && (!wanted || known.dimension == *wanted)) {
            symbols.emplace_back(known.symbol);
        }
    }
    throw error(ErrorKind::usage, "'{}' is no unit known here{}{}", unit, did_you_mean(unit, symbols),
                wanted ? "; for " + std::string{dimension_name(*wanted)} + ": " + symbols_of(*wanted) : std::string{});
}

// What stands behind the first figure of a range or a tolerance: "–36 Nm", "..36 Nm", "± 2 Nm".
bool is_second_figure(std::string_view rest) {
    constexpr std::array<std::string_view, 7> k_signs{"-", "–", "—", "..", "…", "±", "+"};
    return std::ranges::any_of(
        k_signs, [&](std::string_view sign) { return rest.starts_with(sign) && read_decimal(trim(rest.substr(sign.size()))); });
}

Reading read(std::string_view raw, std::optional<Dimension> wanted) {
    const std::string_view text = trim(raw);
    const auto like = [&] { return std::string{dimension_name(wanted.value_or(torque))}; };
    const std::string example{!wanted || *wanted == torque ? "32 N·m" : with_unit("32", canonical_unit(*wanted))};
    if (text.empty()) {
        throw error(ErrorKind::usage, "nothing was written where {} is wanted, like '{}'", like(), example);
    }
    const auto decimal = read_decimal(text);
    if (!decimal) {
        throw error(ErrorKind::usage, "'{}' does not begin with a number; {} is written like '{}'", text, like(), example);
    }
    const std::string_view unit_text = trim(text.substr(decimal->length));
    if (unit_text.empty() && wanted != number) {
        throw error(ErrorKind::usage, "'{}' has no unit; {} is written like '{}'", text, like(), example);
    }
    const std::string key = unit_text.empty() ? "1" : unit_key(unit_text);
    const UnitInfo* unit = unit_text == "1" ? nullptr : find_unit(key);
    if (unit == nullptr && is_second_figure(unit_text)) {
        throw error(ErrorKind::usage, "'{}' holds two figures, where one is read; write each by itself, like '{}'", text,
                    example);
    }
    if (unit == nullptr) {
        refuse_unit(unit_text, key, wanted);
    }
    if (wanted && unit->dimension != *wanted) {
        throw error(ErrorKind::usage, "'{}' is {}, where {} is wanted: {}", text, dimension_name(unit->dimension),
                    dimension_name(*wanted), symbols_of(*wanted));
    }
    const std::string_view number_text = text.substr(0, decimal->length);
    const bool fractions =
        unit->dimension == length || unit->dimension == angle || unit->dimension == volume || unit->dimension == number;
    if (!fractions && number_text.find('/') != std::string_view::npos) {
        throw error(
            ErrorKind::usage,
            "'{}' can be read as a fraction or as two figures; write {} with a decimal point, and a range like '30–36 {}'", text,
            dimension_name(unit->dimension), unit->symbol);
    }
    if (unit->dimension == temperature && unit->to_canonical(decimal->value) < -273.15) {
        throw error(ErrorKind::usage, "'{}' lies under absolute zero (-273.15 °C)", text);
    }
    return Reading{std::string{text}, decimal->value, unit, decimal->significant, decimal->signed_};
}

} // namespace

std::span<const UnitInfo> all_units() noexcept { return k_units; }

std::string_view dimension_name(Dimension dimension) noexcept {
    switch (dimension) {
    case number:
        return "a number";
    case length:
        return "a length";
    case area:
        return "an area";
    case volume:
        return "a volume";
    case force:
        return "a force";
    case torque:
        return "a torque";
    case stress:
        return "a stress";
    case angle:
        return "an angle";
    case temperature:
        return "a temperature";
    case expansion:
        return "a thermal expansion";
    }
    return "a quantity";
}

const UnitInfo& canonical_unit(Dimension dimension) {
    const auto* found = std::ranges::find_if(
        k_units, [&](const UnitInfo& unit) { return unit.dimension == dimension && unit.factor == 1.0 && unit.zero == 0; });
    if (found == k_units.end()) {
        throw error(ErrorKind::internal, "{} has no canonical unit", dimension_name(dimension));
    }
    return *found;
}

const UnitInfo& unit_named(std::string_view text) {
    const std::string_view name = trim(text);
    const std::string key = unit_key(name);
    if (name.empty()) {
        throw error(ErrorKind::usage, "no unit was written, like N·m or lbf·ft");
    }
    if (const UnitInfo* unit = find_unit(key)) {
        return *unit;
    }
    refuse_unit(name, key, std::nullopt);
}

Reading read_quantity(std::string_view text) { return read(text, std::nullopt); }

Reading read_quantity(std::string_view text, Dimension wanted) { return read(text, wanted); }

QuantityReader::Plain QuantityReader::read(std::string_view text) {
    text = trim(text);
    const auto decimal = last_ == nullptr ? std::nullopt : read_decimal(text);
    if (decimal && trim(text.substr(decimal->length)) == last_text_) {
        const std::string_view number_text = text.substr(0, decimal->length);
        if (number_text.find('/') == std::string_view::npos) {
            return {number_text, decimal->value, last_, decimal->significant};
        }
    }
    const Reading reading = read_quantity(text);
    const std::size_t length = read_decimal(text)->length;
    // Temperatures have a least one, which is looked at each time.
    last_ = reading.unit->dimension == temperature ? nullptr : reading.unit;
    last_text_ = std::string{trim(text.substr(length))};
    return {trim(text.substr(0, length)), reading.value, reading.unit, reading.significant};
}

double convert(std::string_view text, double value, const UnitInfo& from, const UnitInfo& to) {
    if (from.dimension != to.dimension) {
        throw error(ErrorKind::usage, "'{}' is {} and does not become {} ({})", text, dimension_name(from.dimension),
                    dimension_name(to.dimension), to.symbol);
    }
    return &from == &to ? value : to.from_canonical(from.to_canonical(value));
}

double convert(const Reading& reading, const UnitInfo& to) { return convert(reading.text, reading.value, *reading.unit, to); }

std::string with_unit(std::string_view number_text, const UnitInfo& unit) {
    std::string out{number_text};
    append_unit(out, unit);
    return out;
}

void append_unit(std::string& out, const UnitInfo& unit) {
    if (!unit.symbol.empty() && unit.symbol != "°") {
        out += ' ';
    }
    out += unit.symbol;
}

} // namespace clampbook
