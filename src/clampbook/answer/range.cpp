// SPDX-License-Identifier: MIT
#include "clampbook/answer/range.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/model/thread.hpp"
#include "clampbook/units/reading.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <optional>
#include <span>

namespace clampbook::answer {
namespace {

constexpr std::size_t k_digits_max = 8; // of a number in a range, so that whole numbers of one scale hold all of them
constexpr std::size_t k_run_max = 4;    // parts between commas that may be one: two decimal commas and one to spare

const char* example_of(RangeUnit unit) {
    switch (unit) {
    case RangeUnit::none:
        return "0.08..0.20:0.02";
    case RangeUnit::share:
    case RangeUnit::load:
        return "60..90:10%";
    case RangeUnit::torque:
        return "20..60:10N·m";
    case RangeUnit::length:
        return "8..20:2mm";
    }
    return "";
}

// Of the unit that stands for all in an error.
const char* usual_unit(RangeUnit unit) {
    switch (unit) {
    case RangeUnit::none:
        return "";
    case RangeUnit::share:
    case RangeUnit::load:
        return "%";
    case RangeUnit::torque:
        return "N·m";
    case RangeUnit::length:
        return "mm";
    }
    return "";
}

bool fits(const UnitInfo& unit, RangeUnit wanted) {
    switch (wanted) {
    case RangeUnit::none:
        return false;
    case RangeUnit::share:
        return unit.symbol == "%";
    case RangeUnit::load:
        return unit.symbol == "%" || unit.dimension == Dimension::force;
    case RangeUnit::torque:
        return unit.dimension == Dimension::torque;
    case RangeUnit::length:
        return unit.dimension == Dimension::length;
    }
    return false;
}

const char* wanted_words(RangeUnit wanted) {
    switch (wanted) {
    case RangeUnit::none:
        return "a bare number is";
    case RangeUnit::share:
        return "percent are";
    case RangeUnit::load:
        return "percent or a force are";
    case RangeUnit::torque:
        return "a torque is";
    case RangeUnit::length:
        return "a length is";
    }
    return "";
}

// A number as a whole one and its decimals: 0.08 is 8 and 2.
struct RangeNumber {
    std::int64_t mantissa = 0;
    std::size_t decimals = 0;
    std::string typed;
    const UnitInfo* unit = nullptr;

    [[nodiscard]] std::int64_t at_scale(std::size_t scale) const {
        std::int64_t out = mantissa;
        for (std::size_t i = decimals; i < scale; ++i) {
            out *= 10;
        }
        return out;
    }
};

RangeNumber range_number(std::string_view part, std::string_view range, RangeUnit wanted) {
    const std::string_view text = trim(part);
    RangeNumber number;
    std::size_t at = 0;
    std::size_t digits = 0;
    bool has_mark = false;
    for (; at < text.size(); ++at) {
        const char c = text[at];
        if (c >= '0' && c <= '9') {
            number.mantissa = digits < k_digits_max ? number.mantissa * 10 + (c - '0') : 0;
            number.decimals += has_mark ? 1 : 0;
            ++digits;
        } else if ((c == '.' || c == ',') && !has_mark && digits > 0) {
            has_mark = true;
        } else {
            break;
        }
    }
    const std::string_view behind = trim(text.substr(at));
    const bool ends_in_mark = has_mark && number.decimals == 0;
    if (digits == 0 || ends_in_mark ||
        (!behind.empty() && std::string_view{".,/-+:0123456789"}.find(behind[0]) != std::string_view::npos)) {
        throw error(ErrorKind::usage, "'{}' in the range '{}' is no plain number; a range is written like '{}'", text, range,
                    example_of(wanted));
    }
    if (digits > k_digits_max) {
        throw error(ErrorKind::usage, "'{}' in the range '{}' has too many digits; at most {} are read", text, range,
                    k_digits_max);
    }
    number.typed = text.substr(0, at);
    (void)read_decimal(number.typed); // refuses 1,250, which can be read two ways
    std::ranges::replace(number.typed, ',', '.');
    number.unit = behind.empty() ? nullptr : &unit_named(behind);
    return number;
}

std::string print_scaled(std::int64_t mantissa, std::size_t decimals) {
    std::string digits = std::to_string(mantissa);
    if (decimals == 0) {
        return digits;
    }
    if (digits.size() <= decimals) {
        digits.insert(0, decimals + 1 - digits.size(), '0');
    }
    return digits.insert(digits.size() - decimals, ".");
}

// A round step that makes about five parts of the range and lands on its end where one does.
std::string round_step(std::int64_t span, std::size_t scale) {
    const std::int64_t fine = span * 10; // a digit more, for ranges like 1..2
    const auto wanted = static_cast<double>(fine) / 5;
    std::int64_t best = 1;
    double best_score = std::numeric_limits<double>::max();
    for (std::int64_t power = 1; power <= fine; power *= 10) {
        for (const std::int64_t part : {1, 2, 5}) {
            const std::int64_t step = part * power;
            const double misses = fine % step == 0 ? 0.0 : 1.0;
            const double score = std::fabs(std::log(static_cast<double>(step) / wanted)) + misses;
            if (step <= fine && score < best_score) {
                best = step;
                best_score = score;
            }
        }
    }
    std::string out = print_scaled(best, scale + 1);
    out.erase(out.find_last_not_of('0') + 1);
    return out.ends_with('.') ? out.substr(0, out.size() - 1) : out;
}

} // namespace

bool is_range(std::string_view text) noexcept { return text.find("..") != std::string_view::npos; }

std::vector<std::string> range_of(std::string_view text, RangeUnit wanted) {
    const std::size_t dots = text.find("..");
    if (dots == std::string_view::npos) {
        throw error(ErrorKind::usage, "'{}' is no range; one is written like '{}'", text, example_of(wanted));
    }
    const std::string_view tail = text.substr(dots + 2);
    const std::size_t colon = tail.find(':');
    const RangeNumber from = range_number(text.substr(0, dots), text, wanted);
    const RangeNumber to = range_number(tail.substr(0, colon), text, wanted);
    const std::optional<RangeNumber> step =
        colon == std::string_view::npos ? std::nullopt : std::optional{range_number(tail.substr(colon + 1), text, wanted)};

    const UnitInfo* unit = nullptr;
    for (const UnitInfo* one : {from.unit, to.unit, step ? step->unit : nullptr}) {
        if (one != nullptr && !fits(*one, wanted)) {
            throw error(ErrorKind::usage, "'{}' is written in {}, where {} wanted, like '{}'", text, one->symbol,
                        wanted_words(wanted), example_of(wanted));
        }
        if (one != nullptr && unit != nullptr && one != unit) {
            throw error(ErrorKind::usage, "'{}' holds two units, {} and {}; write one of them, behind the step", text,
                        unit->symbol, one->symbol);
        }
        unit = one != nullptr ? one : unit;
    }

    const std::size_t scale = std::max({from.decimals, to.decimals, step ? step->decimals : 0});
    const std::int64_t low = from.at_scale(scale);
    const std::int64_t high = to.at_scale(scale);
    const std::int64_t width = step ? step->at_scale(scale) : 0;
    const std::string symbol{unit == nullptr ? usual_unit(wanted) : unit->symbol};
    if (low == high) {
        throw error(ErrorKind::usage, "both ends of '{}' are the same; write '{}{}' alone, or a wider range", text, from.typed,
                    symbol);
    }
    const std::string round = round_step(std::abs(high - low), scale);
    if (low > high) {
        throw error(ErrorKind::usage, "'{}' runs backwards; write the smaller end first: '{}..{}:{}{}'", text, to.typed,
                    from.typed, width > 0 ? step->typed : round, symbol);
    }
    const std::string right = fmt::format("'{}..{}:{}{}'", from.typed, to.typed, round, symbol);
    if (!step) {
        throw error(ErrorKind::usage, "'{}' has no step; write one behind a colon, like {}", text, right);
    }
    if (width == 0) {
        throw error(ErrorKind::usage, "the step of '{}' is zero; write one that goes on, like {}", text, right);
    }
    if (width > high - low) {
        throw error(ErrorKind::usage, "the step of '{}' is wider than the range; write a smaller one, like {}", text, right);
    }
    if (unit == nullptr && wanted != RangeUnit::none) {
        throw error(ErrorKind::usage, "'{}' has no unit; write it behind the step, like '{}..{}:{}{}'", text, from.typed,
                    to.typed, step->typed, symbol);
    }
    const auto count = static_cast<std::size_t>((high - low) / width) + 1;
    if (count > k_combinations_max) {
        throw error(ErrorKind::usage, "'{}' holds {} values, more than {}; write a greater step, like {}", text, count,
                    k_combinations_max, right);
    }
    const std::size_t decimals = std::max(from.decimals, step->decimals);
    std::int64_t surplus = 1; // of the end's decimals, when it has more than the values
    for (std::size_t i = decimals; i < scale; ++i) {
        surplus *= 10;
    }
    std::vector<std::string> values;
    for (std::size_t i = 0; i < count; ++i) {
        const std::string number = print_scaled((low + static_cast<std::int64_t>(i) * width) / surplus, decimals);
        values.push_back(unit == nullptr ? number : with_unit(number, *unit));
    }
    return values;
}

std::vector<std::string> list_of(std::string_view text, const std::function<void(std::string_view)>& read) {
    const std::vector<std::string> pieces = split(text, ',');
    std::vector<std::string> parts;
    for (std::size_t at = 0; at < pieces.size();) {
        if (trim(pieces[at]).empty()) {
            throw error(ErrorKind::usage, "'{}' has a comma with nothing {} it; write what belongs there, or leave the comma out",
                        text, at == 0 ? "before" : "behind");
        }
        std::size_t length = std::min(k_run_max, pieces.size() - at);
        for (; length > 0; --length) {
            const std::string run = join(std::span{pieces}.subspan(at, length), ",");
            try {
                read(trim(run));
                parts.emplace_back(trim(run));
                break;
            } catch (const Error&) {
                if (length == 1) {
                    throw;
                }
            }
        }
        at += length;
    }
    return parts;
}

std::vector<std::string> thread_list(std::string_view text) {
    return list_of(text, [](std::string_view part) { (void)read_thread(part); });
}

std::vector<std::string> class_list(const reference::Reference& reference, std::string_view text) {
    return list_of(text, [&](std::string_view part) { (void)reference.class_name(part); });
}

} // namespace clampbook::answer
