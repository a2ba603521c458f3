// SPDX-License-Identifier: MIT
#include "clampbook/model/ring.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <vector>

namespace clampbook {
namespace {

constexpr std::string_view k_times = "×";

// The numbers between the signs ×; nothing where something else stands there.
std::optional<std::vector<double>> numbers_of(std::string_view text) {
    std::vector<double> numbers;
    while (true) {
        const auto number = read_decimal(text);
        if (!number || !(number->value > 0)) {
            return std::nullopt;
        }
        numbers.push_back(number->value);
        text.remove_prefix(number->length);
        if (text.empty()) {
            return numbers;
        }
        if (!text.starts_with(k_times)) {
            return std::nullopt;
        }
        text.remove_prefix(k_times.size());
    }
}

} // namespace

RingName read_ring(std::string_view typed) {
    const std::string_view text = trim(typed);
    const std::size_t digit = text.find_first_of("0123456789");
    if (digit == std::string_view::npos || digit == 0) {
        return {std::string{text}, std::nullopt};
    }
    RingName ring{std::string{trim(text.substr(0, digit))}, RingSize{}};
    for (const char c : fold(text.substr(digit))) {
        ring.size->text += c == 'x' || c == '*' ? std::string{k_times} : c == ' ' ? std::string{} : std::string(1, c);
    }
    const auto numbers = numbers_of(ring.size->text);
    if (!numbers || numbers->size() < 2 || numbers->size() > 3) {
        throw error(ErrorKind::usage, "'{}' is no ring; a ring is written like 'copper' or 'copper 18x24'", typed);
    }
    if (!((*numbers)[1] > (*numbers)[0])) {
        throw error(ErrorKind::usage, "'{}' is no ring: its outer diameter must be larger than its inner one", typed);
    }
    ring.size->inner = (*numbers)[0] * millimetre;
    ring.size->outer = (*numbers)[1] * millimetre;
    if (numbers->size() == 3) {
        ring.size->thickness = (*numbers)[2] * millimetre;
    }
    return ring;
}

} // namespace clampbook
