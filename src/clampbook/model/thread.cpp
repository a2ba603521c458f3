// SPDX-License-Identifier: MIT
#include "clampbook/model/thread.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <cctype>

namespace clampbook {
namespace {

constexpr std::string_view k_examples = "M18x1.5, M10, 3/8-16 UNC, #10-32, G1/2, R1/2 or 1/2-14 NPT";

// Folded, the multiplication sign as x, and no blanks beside x, hyphens or slashes.
std::string tidy(std::string_view text) {
    std::string out;
    for (const char32_t p : code_points(fold(text))) {
        out += p == 0xD7 || p == U'*' ? "x" : utf8(p);
    }
    std::string close;
    for (std::size_t i = 0; i < out.size(); ++i) {
        const auto tight = [](char c) { return c == 'x' || c == '-' || c == '/'; };
        if (out[i] == ' ' && ((!close.empty() && tight(close.back())) || (i + 1 < out.size() && tight(out[i + 1])))) {
            continue;
        }
        close += out[i];
    }
    return close;
}

[[noreturn]] void refuse(std::string_view text, std::string_view why) {
    throw error(ErrorKind::usage, "'{}' does not read as a thread{}{}; threads are written like {}", text,
                why.empty() ? "" : ": ", why, k_examples);
}

bool eat(std::string_view& text, std::string_view front) {
    if (!text.starts_with(front)) {
        return false;
    }
    text.remove_prefix(front.size());
    text = trim(text);
    return true;
}

// The limits of sizes in this file are wide of all that is made; within them a number is printed without an exponent.

// A number with one decimal sign, point or comma; "1,5" cannot be a grouped number in a thread's name.
std::optional<double> plain_number(std::string_view& text) {
    std::size_t n = 0;
    bool sign = false;
    while (n < text.size() && (is_digit(text[n]) || (!sign && n > 0 && (text[n] == '.' || text[n] == ',') &&
                                                     n + 1 < text.size() && is_digit(text[n + 1])))) {
        sign = sign || !is_digit(text[n]);
        ++n;
    }
    if (n == 0 || n > 8) {
        return std::nullopt;
    }
    std::string number{text.substr(0, n)};
    if (const auto comma = number.find(','); comma != std::string::npos) {
        number[comma] = '.';
    }
    text.remove_prefix(n);
    return read_decimal(number)->value;
}

// An inch size: `#10`, `3/8`, `1-1/8`, `1 1/8`, `1`, as the standards write it.
std::string inch_size(std::string_view& text) {
    const auto digits = [&](std::size_t at) {
        std::size_t n = 0;
        while (at + n < text.size() && is_digit(text[at + n])) {
            ++n;
        }
        return n;
    };
    const auto take = [&](std::size_t n) {
        std::string part{text.substr(0, n)};
        text.remove_prefix(n);
        return part;
    };
    if (text.starts_with('#')) {
        text.remove_prefix(1);
        text = trim(text);
        const std::size_t n = digits(0);
        return n == 0 ? std::string{} : "#" + take(n);
    }
    const std::size_t whole = digits(0);
    if (whole == 0) {
        return {};
    }
    if (whole < text.size() && text[whole] == '/') {
        const std::size_t bottom = digits(whole + 1);
        return bottom == 0 ? std::string{} : take(whole + 1 + bottom);
    }
    if (whole < text.size() && (text[whole] == '-' || text[whole] == ' ')) {
        const std::size_t top = digits(whole + 1);
        if (top > 0 && whole + 1 + top < text.size() && text[whole + 1 + top] == '/') {
            const std::size_t bottom = digits(whole + top + 2);
            if (bottom > 0) {
                std::string size = take(whole + top + 2 + bottom);
                size[whole] = '-';
                return size;
            }
        }
    }
    return take(whole);
}

ThreadName metric(std::string_view rest, std::string_view text) {
    const auto diameter = plain_number(rest);
    if (!diameter) {
        refuse(text, "no diameter follows the M");
    }
    if (*diameter < 0.1 || *diameter > 9999) {
        refuse(text, "a diameter is 0.1 to 9999 mm");
    }
    ThreadName name{ThreadSystem::metric, "M" + print_shortest(*diameter), {}, {}, {}, std::string{trim(text)}};
    rest = trim(rest);
    if (eat(rest, "x")) {
        const auto pitch = plain_number(rest);
        if (!pitch) {
            refuse(text, "no pitch follows the x");
        }
        if (*pitch < 0.01 || *pitch > 99) {
            refuse(text, "a pitch is 0.01 to 99 mm");
        }
        name.pitch = *pitch * millimetre;
    }
    if (!trim(rest).empty()) {
        refuse(text, "'" + std::string{trim(rest)} + "' is not understood");
    }
    return name;
}

} // namespace

ThreadName read_thread(std::string_view text) {
    const std::string tidied = tidy(text);
    std::string_view rest = tidied;
    if (rest.empty()) {
        refuse(text, "nothing was written");
    }
    if (rest.starts_with('m') && rest.size() > 1 && (is_digit(rest[1]) || rest[1] == ' ')) {
        rest.remove_prefix(1);
        return metric(trim(rest), text);
    }
    ThreadName name{ThreadSystem::unified, {}, {}, {}, {}, std::string{trim(text)}};
    bool pipe = true;
    if (eat(rest, "npt")) {
        name.system = ThreadSystem::npt;
    } else if (rest.starts_with('g') && rest.size() > 1 && std::isalpha(static_cast<unsigned char>(rest[1])) == 0) {
        eat(rest, "g");
        name.system = ThreadSystem::pipe_parallel;
    } else if (rest.starts_with('r') && rest.size() > 1 && std::isalpha(static_cast<unsigned char>(rest[1])) == 0) {
        eat(rest, "r");
        name.system = ThreadSystem::pipe_taper;
    } else {
        pipe = false;
    }
    name.size = inch_size(rest);
    if (name.size.empty()) {
        refuse(text, "");
    }
    rest = trim(rest);
    if (eat(rest, "-")) {
        name.threads_per_inch = plain_number(rest);
        if (!name.threads_per_inch) {
            refuse(text, "the number of threads per inch should follow the hyphen");
        }
        if (*name.threads_per_inch < 1 || *name.threads_per_inch > 200) {
            refuse(text, "there are 1 to 200 threads per inch");
        }
        rest = trim(rest);
    }
    if (!pipe) {
        if (eat(rest, "npt")) {
            name.system = ThreadSystem::npt;
        } else if (eat(rest, "unc")) {
            name.series = "UNC";
        } else if (eat(rest, "unf")) {
            name.series = "UNF";
        } else if (eat(rest, "8-un")) { // the series' own name says the threads per inch
            name.series = "UN";
            name.threads_per_inch = name.threads_per_inch.value_or(8);
        } else if (eat(rest, "un")) {
            name.series = "UN";
        }
    }
    if (!rest.empty()) {
        refuse(text, "'" + std::string{rest} + "' is not understood");
    }
    if (name.system == ThreadSystem::unified && name.series.empty() && !name.threads_per_inch) {
        refuse(text, "the threads per inch or the series (UNC, UNF) are missing");
    }
    if (name.system == ThreadSystem::unified && !name.size.starts_with('#') && name.size.find('/') == std::string::npos &&
        name.size.size() <= 2 && name.size != "1" && name.size != "2" && name.size != "3" && name.size != "4") {
        name.size = "#" + name.size; // "10-32" is the number size
    }
    return name;
}

bool looks_like_thread(std::string_view text) noexcept {
    if (text.size() < 2) {
        return false;
    }
    const char first = text[0];
    if (first == '#') {
        return is_digit(text[1]);
    }
    if ((first == 'm' || first == 'M') && is_digit(text[1])) {
        return true;
    }
    if ((first == 'g' || first == 'G' || first == 'r' || first == 'R') && is_digit(text[1])) {
        return text.size() == 2 || text.find('/') != std::string_view::npos;
    }
    return is_digit(first) && text.find('/') != std::string_view::npos;
}

std::string thread_for_print(std::string_view code) {
    if (!code.starts_with('M')) {
        return std::string{code};
    }
    const std::size_t x = code.find('x');
    if (x == std::string_view::npos) {
        return std::string{code};
    }
    return std::string{code.substr(0, x)} + "×" + std::string{code.substr(x + 1)};
}

} // namespace clampbook
