// SPDX-License-Identifier: MIT
// Reading and printing do not depend on the locale of the machine or of the program.

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/text.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <clocale>
#include <locale>
#include <sstream>

namespace {

using namespace clampbook;

// A comma for the decimal sign, dots between groups of three: what a German locale asks for.
class Comma : public std::numpunct<char> {
    [[nodiscard]] char do_decimal_point() const override { return ','; }
    [[nodiscard]] char do_thousands_sep() const override { return '.'; }
    [[nodiscard]] std::string do_grouping() const override { return "\3"; }
};

class GlobalLocale {
public:
    explicit GlobalLocale(const std::locale& locale) : before_(std::locale::global(locale)) {}
    ~GlobalLocale() { std::locale::global(before_); }
    GlobalLocale(const GlobalLocale&) = delete;
    GlobalLocale& operator=(const GlobalLocale&) = delete;

private:
    std::locale before_;
};

void check_everything() {
    CHECK(read_decimal("1.25 mm")->value == 1.25);
    CHECK(read_decimal("1,25 mm")->value == 1.25);
    CHECK(read_decimal("1.5e3")->value == 1500);
    CHECK(read_decimal("12345.5")->value == 12345.5);
    CHECK(print_fixed(12345.5, 2) == "12345.50");
    CHECK(print_significant(12345.678, 7) == "12345.68");
    CHECK(print_shortest(1234567.25) == "1234567.25");
    CHECK(std::string{error(ErrorKind::usage, "{:.2f} and {}", 1234.5, 12345).what()} == "1234.50 and 12345");
    CHECK(fold("TITLE ISTANBUL") == "title istanbul");
    CHECK(fold("GRÖSSE Größe") == "grosse grosse");
    CHECK(trim("\u00a0x\u202f") == "x");
    CHECK(display_width("Größe") == 5);
}

} // namespace

TEST_CASE("a decimal comma of the program's locale changes nothing") {
    const GlobalLocale locale{std::locale{std::locale::classic(), new Comma}};
    std::ostringstream shown;
    shown << 1234.5;
    REQUIRE(shown.str() == "1.234,5"); // the facet is at work
    check_everything();
}

TEST_CASE("the locales of this machine change nothing") {
    std::size_t tried = 0;
    for (const char* name : {"C", "de_DE.UTF-8", "de_DE.utf8", "de_DE", "tr_TR.UTF-8", "tr_TR.utf8", "tr_TR"}) {
        if (std::setlocale(LC_ALL, name) == nullptr) {
            continue; // not installed here
        }
        INFO(name);
        check_everything();
        ++tried;
    }
    std::setlocale(LC_ALL, "C");
    CHECK(tried >= 1);
}
