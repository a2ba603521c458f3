// SPDX-License-Identifier: MIT
#include "clampbook/model/tightening.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/units/reading.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace clampbook {
namespace {

constexpr std::string_view k_how = "; a tightening is written like '32 N·m', '30–36 N·m', '32 ± 3 N·m', '50 N·m + 90°', "
                                   "'20 N·m, 50 N·m, 90°' or 'hand-tight + 1 turn'";

// N·m or degrees. Wide of anything that is tightened; within them every figure is printed without an exponent.
constexpr double k_least = 1e-4;
constexpr double k_most = 1e7;

// A sign between two numbers, where it stands and how long it is.
struct Sign {
    std::size_t at;
    std::size_t size;
};

// The first of the spellings that occurs; of those at one place, the longest.
std::optional<Sign> find_sign(std::string_view text, std::span<const std::string_view> spellings) {
    std::optional<Sign> found;
    for (const std::string_view spelling : spellings) {
        const std::size_t at = text.find(spelling);
        if (at != std::string_view::npos && (!found || at < found->at || (at == found->at && spelling.size() > found->size))) {
            found = Sign{at, spelling.size()};
        }
    }
    return found;
}

constexpr std::array<std::string_view, 4> k_plus_minus{"±", "+/-", "+-", "+ / -"};
// Figure, en and em dashes, hyphens of their own, dots, a minus sign between blanks, and the word.
constexpr std::array<std::string_view, 11> k_range{"\u2010", "\u2011", "\u2012", "\u2013", "\u2014", "\u2212",
                                                   "..",     "...",    " to ",   " - ",    "~"};

// Bytes of a minus sign at the front, typed or set.
std::size_t minus_at(std::string_view text) { return text.starts_with('-') ? 1 : text.starts_with("\u2212") ? 3 : 0; }

// "+3/-1": the sign of an upper limit, not of a next step.
bool upper_limit_at(std::string_view text, std::size_t plus) {
    std::string_view rest = trim(text.substr(plus + 1));
    const auto number = rest.empty() || !is_digit(rest[0]) ? std::nullopt : std::optional{rest.find_first_not_of("0123456789.,")};
    if (!number || *number == std::string_view::npos) {
        return false;
    }
    rest = trim(rest.substr(*number));
    return rest.starts_with('/') && minus_at(trim(rest.substr(1))) > 0;
}

struct Part {
    std::string text;
    bool after_plus;
};

std::vector<Part> parts_of(const std::string& text) {
    std::vector<Part> parts;
    std::string part;
    bool after_plus = false;
    int depth = 0;
    const auto finish = [&](bool plus) {
        parts.push_back({std::string{trim(part)}, after_plus});
        part.clear();
        after_plus = plus;
    };
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        depth += c == '(' || c == '[' ? 1 : c == ')' || c == ']' ? -1 : 0;
        if (depth == 0) {
            const bool decimal_comma = c == ',' && i > 0 && is_digit(text[i - 1]) && i + 1 < text.size() && is_digit(text[i + 1]);
            if ((c == ',' && !decimal_comma) || c == ';') {
                finish(false);
                continue;
            }
            const auto tolerance = find_sign(std::string_view{text}.substr(i), k_plus_minus);
            if (c == '+' && !(tolerance && tolerance->at == 0) && !upper_limit_at(text, i)) {
                finish(true);
                continue;
            }
            if (std::string_view{text}.substr(i).starts_with(" then ")) {
                if (!trim(part).empty()) {
                    finish(false);
                }
                i += 5;
                continue;
            }
        }
        part += c;
    }
    finish(false);
    return parts;
}

double resolution(double value, int significant) {
    if (value == 0) {
        return 1;
    }
    return std::pow(10.0, std::floor(std::log10(std::fabs(value))) + 1 - significant);
}

struct Measured {
    Reading low;
    Reading high;
    double nominal; // in the unit of `low`
};

Measured measured(std::string_view text);

// The second figure of a pair such as "24 lbf·ft (33 N·m)" must say the same.
void check_equivalent(std::string_view text, const Measured& first, std::string_view bracket) {
    const Measured second = measured(bracket);
    const auto apart = [&](const Reading& a, const Reading& b) {
        if (a.unit->dimension != b.unit->dimension) {
            throw error(ErrorKind::usage, "'{}': the two figures are not of one kind", text);
        }
        const double allowed = 0.5 * resolution(a.value, a.significant) * a.unit->factor +
                               0.5 * resolution(b.value, b.significant) * b.unit->factor + 0.02 * std::fabs(a.canonical());
        return std::fabs(a.canonical() - b.canonical()) > allowed;
    };
    if (apart(first.low, second.low) || apart(first.high, second.high)) {
        const double in_first_unit = convert(second.low, *first.low.unit);
        throw error(ErrorKind::usage, "'{}': the figures do not agree; '{}' is {}, not {}", text, bracket,
                    with_unit(print_significant(in_first_unit, second.low.significant + 1), *first.low.unit), first.low.text);
    }
}

Measured plus_minus(std::string_view text, std::string_view centre_text, std::string_view spread_text) {
    const auto with_unit_of = [&](std::string_view number, const UnitInfo& unit) {
        return read_quantity(std::string{number} + " " + std::string{unit.symbol});
    };
    const auto bare = [](std::string_view part) {
        const auto number = read_decimal(part);
        return number && trim(part.substr(number->length)).empty();
    };
    const bool percent = spread_text.ends_with('%');
    if (bare(centre_text) && (bare(spread_text) || percent)) {
        throw error(ErrorKind::usage, "'{}' has no unit{}", text, k_how);
    }
    Reading spread = bare(spread_text) ? with_unit_of(spread_text, *read_quantity(centre_text).unit) : read_quantity(spread_text);
    const Reading centre = bare(centre_text) ? with_unit_of(centre_text, *spread.unit) : read_quantity(centre_text);
    double half = 0;
    if (spread.unit->dimension == Dimension::number) {
        half = centre.value * spread.canonical();
    } else {
        half = convert(spread, *centre.unit);
    }
    if (half < 0 || half >= centre.value) {
        throw error(ErrorKind::usage, "'{}': the tolerance is not smaller than the value", text);
    }
    Measured out{centre, centre, centre.value};
    out.low.value -= half;
    out.high.value += half;
    return out;
}

// "32 +3/-1 N·m" and "32 N·m +3/-1"
std::optional<Measured> upper_lower(std::string_view text) {
    const std::size_t plus = text.find('+');
    if (plus == std::string_view::npos || !upper_limit_at(text, plus)) {
        return std::nullopt;
    }
    const std::size_t slash = text.find('/', plus);
    const std::string_view upper = trim(text.substr(plus + 1, slash - plus - 1));
    const std::string_view signed_lower = trim(text.substr(slash + 1));
    const std::string_view lower = trim(signed_lower.substr(minus_at(signed_lower)));
    const auto lower_number = read_decimal(lower);
    const auto upper_number = read_decimal(upper);
    if (!lower_number || !upper_number || lower_number->signed_) {
        throw error(ErrorKind::usage, "'{}' is not understood{}", text, k_how);
    }
    std::string centre{trim(text.substr(0, plus))};
    centre += " " + std::string{trim(lower.substr(lower_number->length))};
    const Reading reading = read_quantity(centre);
    Measured out{reading, reading, reading.value};
    out.low.value -= lower_number->value;
    out.high.value += upper_number->value;
    if (out.low.value <= 0) {
        throw error(ErrorKind::usage, "'{}': the tolerance is not smaller than the value", text);
    }
    return out;
}

Measured range(std::string_view text, std::string_view low_text, std::string_view high_text) {
    const Reading high = read_quantity(high_text);
    const auto number = read_decimal(low_text);
    const bool bare = number && trim(low_text.substr(number->length)).empty();
    Reading low = read_quantity(bare ? std::string{low_text} + " " + std::string{high.unit->symbol} : std::string{low_text});
    if (low.unit != high.unit) {
        throw error(ErrorKind::usage, "'{}': both ends of a range need the same unit", text);
    }
    if (low.value >= high.value) {
        throw error(ErrorKind::usage, "'{}': the range runs backwards", text);
    }
    low.significant = std::max(low.significant, high.significant);
    return Measured{low, high, (low.value + high.value) / 2};
}

Measured measured(std::string_view text) {
    if (const auto sign = find_sign(text, k_plus_minus)) {
        return plus_minus(text, trim(text.substr(0, sign->at)), trim(text.substr(sign->at + sign->size)));
    }
    if (auto limits = upper_lower(text)) {
        return *limits;
    }
    if (const auto sign = find_sign(text, k_range); sign && sign->at > 0) {
        return range(text, trim(text.substr(0, sign->at)), trim(text.substr(sign->at + sign->size)));
    }
    if (const auto first = read_decimal(text)) {
        const std::string_view rest = trim(text.substr(first->length));
        if (rest.starts_with('-') && rest.size() > 1 && is_digit(rest[1])) {
            return range(text, text.substr(0, first->length), trim(rest.substr(1)));
        }
        const std::size_t times = rest.starts_with("×")                                                               ? 2
                                  : rest.starts_with('x') && rest.size() > 1 && (rest[1] == ' ' || is_digit(rest[1])) ? 1
                                                                                                                      : 0;
        if (times > 0) {
            Reading each = read_quantity(trim(rest.substr(times)), Dimension::angle);
            each.value *= first->value;
            return Measured{each, each, each.value};
        }
    }
    const Reading reading = read_quantity(text);
    return Measured{reading, reading, reading.value};
}

bool is_hand_tight(std::string_view text) {
    const std::vector<std::string> words = folded_words(text);
    const std::string all = join(words, " ");
    return all == "hand tight" || all == "handtight" || all == "finger tight" || all == "hand" || all == "snug by hand";
}

Step step_of(std::string_view text, bool after_plus) {
    if (is_hand_tight(text)) {
        return Step{StepKind::hand_tight, 0, 0, 0, {}, 1};
    }
    const std::size_t open = text.find_first_of("([");
    std::string_view main = text;
    std::string_view bracket;
    if (open != std::string_view::npos) {
        if (text.back() != (text[open] == '(' ? ')' : ']')) {
            throw error(ErrorKind::usage, "'{}': the bracket is not closed at the end", text);
        }
        main = trim(text.substr(0, open));
        bracket = trim(text.substr(open + 1, text.size() - open - 2));
    }
    const Measured found = measured(main);
    if (!bracket.empty()) {
        check_equivalent(text, found, bracket);
    }
    const UnitInfo& unit = *found.low.unit;
    if (unit.dimension != Dimension::torque && unit.dimension != Dimension::angle) {
        throw error(ErrorKind::usage, "'{}' is {}; a step is a torque or an angle{}", text, dimension_name(unit.dimension),
                    k_how);
    }
    if (found.low.value <= 0 || (found.low.is_signed && !after_plus)) {
        throw error(ErrorKind::usage, "'{}' must be more than zero and carries no sign", text);
    }
    if (found.low.canonical() < k_least || found.high.canonical() > k_most) {
        throw error(ErrorKind::usage, "'{}' lies outside of what a fastener is tightened to: 0.0001 to 10000000 N·m or degrees",
                    text);
    }
    const bool is_torque = unit.dimension == Dimension::torque;
    if (is_torque && after_plus) {
        throw error(ErrorKind::usage, "'{}' follows a plus; write '20 N·m, 50 N·m' for steps and '32 ± 3 N·m' for a tolerance",
                    text);
    }
    return Step{is_torque ? StepKind::torque : StepKind::angle,
                unit.to_canonical(found.nominal),
                found.low.canonical(),
                found.high.canonical(),
                std::string{unit.symbol},
                found.low.significant};
}

} // namespace

std::string_view step_kind_name(StepKind kind) noexcept {
    switch (kind) {
    case StepKind::torque:
        return "torque";
    case StepKind::angle:
        return "angle";
    case StepKind::hand_tight:
        return "hand-tight";
    }
    return {};
}

Tightening read_tightening(std::string_view text) {
    const std::string_view trimmed = trim(text);
    if (trimmed.empty()) {
        throw error(ErrorKind::usage, "no tightening was written{}", k_how);
    }
    if (!is_utf8(trimmed)) {
        throw error(ErrorKind::usage, "the tightening is not UTF-8 text");
    }
    Tightening tightening{std::string{trimmed}, {}};
    for (const Part& part : parts_of(std::string{trimmed})) {
        if (part.text.empty()) {
            throw error(ErrorKind::usage, "'{}' has an empty step{}", trimmed, k_how);
        }
        tightening.steps.push_back(step_of(part.text, part.after_plus));
    }
    return tightening;
}

std::optional<double> final_torque(const Tightening& tightening) noexcept {
    std::optional<double> highest;
    for (const Step& step : tightening.steps) {
        if (step.kind == StepKind::torque) {
            highest = std::max(highest.value_or(0), step.high);
        }
    }
    return highest;
}

namespace {

// Half of the last digit that a step was written with, in N·m or degrees.
double rounding_of(const Step& step) {
    const UnitInfo& unit = unit_named(step.unit);
    return 0.5 * resolution(unit.from_canonical(step.nominal), step.significant) * unit.factor;
}

// True where both have the same kinds of step in the same order, and `fits` holds for each pair that has a figure.
template <typename F>
bool step_by_step(const Tightening& a, const Tightening& b, F&& fits) {
    return std::ranges::equal(a.steps, b.steps, [&](const Step& x, const Step& y) {
        return x.kind == y.kind && (x.kind == StepKind::hand_tight || fits(x, y));
    });
}

} // namespace

bool agree(const Tightening& a, const Tightening& b) {
    return step_by_step(a, b, [](const Step& x, const Step& y) {
        const double allowed = std::max(rounding_of(x), rounding_of(y));
        return x.low <= y.high + allowed && y.low <= x.high + allowed;
    });
}

bool same_figure(const Tightening& a, const Tightening& b) {
    return step_by_step(a, b, [](const Step& x, const Step& y) {
        // One unit leaves nothing to round; the hair is for figures that were computed from a tolerance.
        const double allowed = x.unit == y.unit ? 1e-9 * std::fabs(x.nominal) : std::max(rounding_of(x), rounding_of(y));
        const auto near = [&](double first, double second) { return std::fabs(first - second) <= allowed; };
        return near(x.nominal, y.nominal) && near(x.low, y.low) && near(x.high, y.high);
    });
}

} // namespace clampbook
