// SPDX-License-Identifier: MIT
// Numbers as people write them: what is read, how much of it, what is refused, and how numbers are printed.

#include "clampbook/base/decimal.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <limits>
#include <random>
#include <string>
#include <vector>

namespace {

using namespace clampbook;
using Catch::Contains;
using unit_tests::refusal;

struct Case {
    const char* text;
    double value;
    int significant;
    std::size_t length;
    bool is_signed;
};

std::string refused(std::string_view text) {
    return refusal(ErrorKind::usage, [&] { return read_decimal(text); });
}

} // namespace

TEST_CASE("decimals are read with their digits and their length") {
    const Case cases[] = {
        {"32", 32, 2, 2, false},
        {"0", 0, 1, 1, false},
        {"007", 7, 1, 3, false},
        {"100", 100, 3, 3, false},
        {"1.25", 1.25, 3, 4, false},
        {"1,25", 1.25, 3, 4, false},
        {"0.050", 0.05, 2, 5, false},
        {"0,050", 0.05, 2, 5, false},
        {"1.250", 1.25, 4, 5, false},
        {"1,2500", 1.25, 5, 6, false},
        {"1250,5", 1250.5, 5, 6, false},
        {".5", 0.5, 1, 2, false},
        {",5", 0.5, 1, 2, false},
        {"1.5e3", 1500, 2, 5, false},
        {"1.5E+3", 1500, 2, 6, false},
        {"2e-2", 0.02, 1, 4, false},
        {"-5", -5, 1, 2, true},
        {"+5", 5, 1, 2, true},
        {"\u22125.5", -5.5, 2, 6, true},
        // what follows the number is left alone
        {"32 N·m", 32, 2, 2, false},
        {"32Nm", 32, 2, 2, false},
        {"32.", 32, 2, 2, false},
        {"32, 50", 32, 2, 2, false},
        {"5e", 5, 1, 1, false},
        {"5 e3", 5, 1, 1, false},
        {"5e+", 5, 1, 1, false},
        {"0,250 in", 0.25, 3, 5, false},
    };
    for (const Case& c : cases) {
        INFO(c.text);
        const auto read = read_decimal(c.text);
        REQUIRE(read);
        CHECK_THAT(read->value, Catch::WithinRel(c.value, 1e-15));
        CHECK(read->significant == c.significant);
        CHECK(read->length == c.length);
        CHECK(read->signed_ == c.is_signed);
    }
}

TEST_CASE("fractions and mixed numbers are read") {
    const Case cases[] = {
        {"3/8", 0.375, 4, 3, false},
        {"-3/8", -0.375, 4, 4, true},
        {"11/4", 2.75, 4, 4, false},
        {"1 3/8", 1.375, 4, 5, false},
        {"1-3/8", 1.375, 4, 5, false},
        {"\u22121 3/8 in", -1.375, 4, 8, true},
        {"2 1/2 turns", 2.5, 4, 5, false},
        // no mixed numbers: the second part is not less than one, or stands apart
        {"1 9/8", 1, 1, 1, false},
        {"1-9/8", 1, 1, 1, false},
        {"1  3/8", 1, 1, 1, false},
        {"3/", 3, 1, 1, false},
        {"3/x", 3, 1, 1, false},
        {"12345/8", 12345, 5, 5, false},
        {"1/12345", 1, 1, 1, false},
    };
    for (const Case& c : cases) {
        INFO(c.text);
        const auto read = read_decimal(c.text);
        REQUIRE(read);
        CHECK(read->value == c.value);
        CHECK(read->significant == c.significant);
        CHECK(read->length == c.length);
        CHECK(read->signed_ == c.is_signed);
    }
}

TEST_CASE("where no number stands none is read") {
    for (const char* text : {"", " 5", "N·m", "-", "+", "\u2212", ".", ",", "-.", "/8", "e5", "--5", "nan", "inf", "x5"}) {
        INFO("'" << text << "'");
        CHECK_FALSE(read_decimal(text));
    }
}

TEST_CASE("what can be read two ways is refused with both readings") {
    CHECK(refused("1,250") == "'1,250' can be read two ways, as 1250 or as 1.250; write it without a grouping sign");
    CHECK_THAT(refused("1,250 N·m"), Contains("'1,250'") && Contains("as 1250 or as 1.250"));
    CHECK_THAT(refused("12,500"), Contains("as 12500 or as 12.500"));
    CHECK_THAT(refused("-125,000"), Contains("as 125000 or as 125.000"));
    CHECK_THAT(refused("1.250,5"), Contains("'1.250,5'"));
    CHECK_THAT(refused("1,250.5"), Contains("'1,250.5'"));
    CHECK_THAT(refused("1.250.000"), Contains("more than one decimal sign"));
    // four digits before it, or a zero, can only be a decimal comma
    CHECK(read_decimal("1250,500")->value == 1250.5);
    CHECK(read_decimal("0,125")->value == 0.125);
    CHECK(read_decimal(",125")->value == 0.125);
}

TEST_CASE("what is no number to work with is refused") {
    CHECK_THAT(refused("1/0"), Contains("'1/0' divides by zero"));
    CHECK_THAT(refused("1 3/0 in"), Contains("'3/0' divides by zero"));
    CHECK_THAT(refused("1e400"), Contains("'1e400' is too large or too small"));
    CHECK_THAT(refused("1e-400"), Contains("too large or too small"));
    // further in than a double's own limits, so that no unit and no product leads out of them
    CHECK_THAT(refused("1.1e100"), Contains("'1.1e100' is too large or too small"));
    CHECK_THAT(refused("9e-101"), Contains("too large or too small"));
    CHECK(read_decimal("1e100")->value == 1e100);
    CHECK(read_decimal("-1e-100")->value == -1e-100);
    CHECK(read_decimal("0e-400")->value == 0);
    CHECK(read_decimal("0.12345678901234567890123")->significant == k_most_digits);
    CHECK_THAT(refused(std::string(400, '9')), Contains("too large or too small"));
}

TEST_CASE("numbers are printed to significant digits") {
    const struct {
        double value;
        int significant;
        const char* text;
    } cases[] = {
        {9.996, 3, "10.0"},
        {9.996, 4, "9.996"},
        {0.09996, 3, "0.100"},
        {99.96, 3, "100"},
        {999.6, 3, "1000"},
        {32, 2, "32"},
        {32, 4, "32.00"},
        {32.5398, 3, "32.5"},
        {12345, 2, "12000"},
        {12345, 1, "10000"},
        {-9.996, 3, "-10.0"},
        {0, 1, "0"},
        {0, 3, "0.00"},
        {-0.0, 2, "0.0"},
        {1e-6, 2, "0.0000010"},
        {9.9e-7, 2, "9.9e-07"},
        {1e15, 3, "1000000000000000"},
        {1e16, 2, "1.0e+16"},
        {0.1, 17, "0.10000000000000001"},
        {1.0 / 3, 17, "0.33333333333333331"},
        {123456789012345, 15, "123456789012345"},
    };
    for (const auto& c : cases) {
        INFO(c.value << " to " << c.significant);
        CHECK(print_significant(c.value, c.significant) == c.text);
    }
}

TEST_CASE("numbers are printed to decimals, and without a negative zero") {
    CHECK(print_fixed(1.25, 0) == "1");
    CHECK(print_fixed(1.005, 3) == "1.005");
    CHECK(print_fixed(2.5, 3) == "2.500");
    CHECK(print_fixed(-0.001, 2) == "0.00");
    CHECK(print_fixed(-0.006, 2) == "-0.01");
    CHECK(print_fixed(-0.0, 0) == "0");
    CHECK(print_fixed(1e15, 1) == "1000000000000000.0");
}

TEST_CASE("what is printed shortest reads back as the same number") {
    CHECK(print_shortest(0.1) == "0.1");
    CHECK(print_shortest(25300) == "25300");
    std::mt19937_64 random{4};
    for (int i = 0; i < 5000; ++i) {
        const double value = std::ldexp(static_cast<double>(random()), static_cast<int>(random() % 60) - 90);
        const std::string text = print_shortest(value);
        const auto read = read_decimal(text);
        REQUIRE(read);
        INFO(text);
        REQUIRE(read->length == text.size());
        REQUIRE(read->value == value);
    }
}

TEST_CASE("significant digits are as many as were asked for, and right") {
    std::mt19937_64 random{5};
    for (int i = 0; i < 5000; ++i) {
        const double value = std::ldexp(static_cast<double>(random()), static_cast<int>(random() % 40) - 80);
        const int digits = 1 + static_cast<int>(random() % 15);
        if (value < 1e-6) {
            continue;
        }
        const std::string text = print_significant(value, digits);
        const double read = read_decimal(text)->value;
        INFO(text << " for " << print_shortest(value) << " to " << digits);
        REQUIRE(text.find('e') == std::string::npos);
        const double half_step = 0.5 * std::pow(10.0, std::floor(std::log10(value)) + 1 - digits);
        REQUIRE(std::fabs(read - value) <= half_step + 4e-16 * value);
    }
}

// What the C library prints with an exponent, with the point put where it belongs.
std::string by_the_c_library(double value, int digits) {
    std::array<char, 64> buffer{};
    std::snprintf(buffer.data(), buffer.size(), "%.*e", digits - 1, std::fabs(value));
    const std::string text{buffer.data()};
    const std::size_t mark = text.find('e');
    const int exponent = std::stoi(text.substr(mark + 1));
    std::string plain = text.substr(0, 1) + (digits > 1 ? text.substr(2, mark - 2) : "");
    if (exponent < 0) {
        plain = "0." + std::string(static_cast<std::size_t>(-exponent - 1), '0') + plain;
    } else if (exponent + 1 >= digits) {
        plain += std::string(static_cast<std::size_t>(exponent + 1 - digits), '0');
    } else {
        plain.insert(static_cast<std::size_t>(exponent) + 1, ".");
    }
    return (value < 0 ? "-" : "") + plain;
}

TEST_CASE("the quick way of printing gives what the C library gives, middles and borders included", "[long]") {
    std::vector<double> values{1,     9.5,    9.95,      99.5,      0.5,     2.5,        0.125,     1e-3, 9.999e-4, 1e9,
                               1e8,   999.95, 0.0095,    0.1,       0.01,    123456.5,   99999.5,   1.05, 1.15,     8.5,
                               -33.4, -0.35,  999999999, 123456789, 32.5000, 0.30000001, 0.0010005, 4.35, 2.675,    1.005};
    std::mt19937_64 random{7};
    for (int i = 0; i < 20000; ++i) {
        const double sign = random() % 8 == 0 ? -1 : 1;
        values.push_back(sign * std::ldexp(static_cast<double>(random() >> 11U), static_cast<int>(random() % 46) - 64));
        values.push_back(sign * static_cast<double>(random() % 100000) / 100); // as workshops write them
        values.push_back(static_cast<double>(random() % 2000) + 0.5);          // middles
    }
    for (const double value : values) {
        if (std::fabs(value) < 1e-5 || std::fabs(value) > 1e14) {
            continue;
        }
        std::string wrong; // one assertion a value: for each of its digits they would take longer than all else
        for (int digits = 1; digits <= 12; ++digits) {
            if (print_significant(value, digits) != by_the_c_library(value, digits)) {
                wrong += print_shortest(value) + " to " + std::to_string(digits) + "; ";
            }
        }
        REQUIRE(wrong == "");
    }
    std::string out = "M10: ";
    append_significant(out, 33.44, 3);
    CHECK(out == "M10: 33.4");
}

TEST_CASE("the quick way of reading gives the nearest double and as many digits as are written") {
    std::mt19937_64 random{8};
    for (int i = 0; i < 20000; ++i) {
        std::string text = std::to_string(random() % 1000000000);
        const std::size_t at = 1 + random() % text.size();
        const bool point = at < text.size();
        text = point ? text.substr(0, at) + "." + text.substr(at) : text;
        INFO(text);
        const auto read = read_decimal(text + " N·m");
        REQUIRE(read);
        REQUIRE(read->value == std::strtod(text.c_str(), nullptr));
        REQUIRE(read->length == text.size());
        const std::size_t first = text.find_first_not_of("0.");
        const std::size_t digits = first == std::string::npos ? 1 : text.size() - first - (point && at > first ? 1 : 0);
        REQUIRE(read->significant == static_cast<int>(digits));
    }
}

TEST_CASE("a number that is not finite does not get printed") {
    for (const double value : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                               -std::numeric_limits<double>::infinity()}) {
        const auto says = Contains("not finite");
        CHECK_THAT(refusal(ErrorKind::internal, [&] { return print_fixed(value, 2); }), says);
        CHECK_THAT(refusal(ErrorKind::internal, [&] { return print_significant(value, 3); }), says);
        CHECK_THAT(refusal(ErrorKind::internal, [&] { return print_shortest(value); }), says);
    }
}

TEST_CASE("a whole text is a number, or it is none") {
    for (const char* text : {"32", " 32 ", "1,5", "3/8", "-0.5"}) {
        INFO(text);
        CHECK(read_whole_decimal(text).has_value());
    }
    CHECK(read_whole_decimal(" 1.25 ")->value == 1.25);
    for (const char* text : {"", " ", "32 N", "32N", "x", "1 2", "32-"}) {
        INFO(text);
        CHECK_FALSE(read_whole_decimal(text).has_value());
    }
}
