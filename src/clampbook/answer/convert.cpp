// SPDX-License-Identifier: MIT
#include "clampbook/answer/parts.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/units/reading.hpp"

#include <algorithm>
#include <cmath>

namespace clampbook::answer {
namespace {

// "the digits that the input carries plus one"; an integer in its own unit stays as it was written.
int digits_in(const UnitInfo& from, int significant, const UnitInfo& to) {
    return std::min(17, significant + (&from == &to ? 0 : 1));
}

Figure result_in(const Reading& input, const UnitInfo& unit) {
    Figure f;
    f.value = convert(input, unit);
    f.unit = unit.symbol;
    f.print = with_unit(print_significant(f.value, digits_in(*input.unit, input.significant, unit)), unit);
    f.basis = "exact factors from the defined inch, pound and standard gravity";
    return f;
}

// The unit that somebody most likely wants where none is named: the other side of the manual's page.
std::vector<std::string_view> counterparts(const UnitInfo& unit) {
    using enum Dimension;
    switch (unit.dimension) {
    case torque:
        return unit.symbol == "N·m" ? std::vector<std::string_view>{"lbf·ft", "lbf·in", "kgf·m"}
                                    : std::vector<std::string_view>{"N·m", unit.symbol == "lbf·ft" ? "lbf·in" : "lbf·ft"};
    case force:
        return unit.symbol == "N" || unit.symbol == "kN" ? std::vector<std::string_view>{"lbf", "kgf"}
                                                         : std::vector<std::string_view>{"N", "kN"};
    case length:
        return unit.symbol == "mm" ? std::vector<std::string_view>{"in"} : std::vector<std::string_view>{"mm"};
    case area:
        return unit.symbol == "mm²" ? std::vector<std::string_view>{"in²"} : std::vector<std::string_view>{"mm²"};
    case stress:
        return unit.symbol == "psi" || unit.symbol == "ksi" ? std::vector<std::string_view>{"MPa", "bar"}
                                                            : std::vector<std::string_view>{"psi", "bar"};
    case temperature:
        return unit.symbol == "°C" ? std::vector<std::string_view>{"°F", "K"} : std::vector<std::string_view>{"°C"};
    case volume:
        return unit.symbol == "l" || unit.symbol == "ml" ? std::vector<std::string_view>{"US qt", "imp pt", "ml"}
                                                         : std::vector<std::string_view>{"l"};
    case angle:
        return unit.symbol == "°" ? std::vector<std::string_view>{"turn", "rad"} : std::vector<std::string_view>{"°"};
    case number:
    case expansion:
        break;
    }
    throw error(ErrorKind::usage, "'{}' has no other unit to become", unit.symbol);
}

void add_scale(Document& document, const Figure& result, const UnitInfo& result_unit, std::string_view text) {
    const ScaleMark mark = mark_on_scale(result_unit.to_canonical(result.value), result_unit, result.print, text);
    Figure f;
    f.value = mark.setting;
    f.unit = mark.unit->symbol;
    f.print = mark.print;
    f.basis = mark.basis;
    document.add("scale.setting", "setting", f);
    Figure off;
    off.value = mark.setting / mark.exact - 1;
    off.print = (off.value > 0 ? "+" : "") + print_fixed(off.value * 100, 2) + " %";
    off.basis = "setting against the exact figure";
    document.add("scale.error", "off by", off);
}

} // namespace

Document convert(const ConvertRequest& request) {
    const Reading input = read_quantity(request.quantity);
    Document document;
    document.schema = "convert";
    Figure given;
    given.value = input.value;
    given.unit = input.unit->symbol;
    given.print =
        with_unit(std::string{trim(std::string_view{input.text}.substr(0, read_decimal(input.text)->length))}, *input.unit);
    given.basis = "as typed";
    document.add("input", "", given);
    if (!request.to.empty()) {
        const UnitInfo& unit = unit_named(request.to);
        const Figure result = result_in(input, unit);
        document.add("result", "", result);
        if (!request.scale.empty()) {
            add_scale(document, result, unit, request.scale);
        }
        return document;
    }
    bool first = true;
    for (const std::string_view symbol : counterparts(*input.unit)) {
        const UnitInfo& unit = unit_named(symbol);
        const Figure result = result_in(input, unit);
        document.add(first ? "result" : "also." + std::string{symbol}, "", result);
        if (first && !request.scale.empty()) {
            add_scale(document, result, unit, request.scale);
        }
        first = false;
    }
    return document;
}

Conversion Converter::of(std::string_view quantity) {
    const QuantityReader::Plain read = reader_.read(quantity);
    const double value = clampbook::convert(quantity, read.value, *read.unit, *to_);
    return {read.number, read.unit, value, to_, digits_in(*read.unit, read.significant, *to_)};
}

} // namespace clampbook::answer
