// SPDX-License-Identifier: MIT
// UTF-8 text: what is well-formed, how words fold for comparison, widths, lines, cells and the nearest spelling.

#include "clampbook/base/cells.hpp"
#include "clampbook/base/text.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

namespace {

using namespace clampbook;
using Words = std::vector<std::string>;

} // namespace

TEST_CASE("well-formed UTF-8 is told from malformed") {
    for (const char* good : {"", "abc", "é", "N·m", "€", "\U0001F527", "\uFFFD", "\uD7FF", "\uE000", "\U0010FFFF", "\u0080",
                             "\u0800", "\U00010000"}) {
        INFO(good);
        CHECK(is_utf8(good));
    }
    for (const char* bad : {"\x80",
                            "\xBF",
                            "\xC0\x80",
                            "\xC1\xBF",
                            "\xE0\x80\x80",
                            "\xE0\x9F\xBF",
                            "\xF0\x80\x80\x80",
                            "\xF0\x8F\xBF\xBF",
                            "\xED\xA0\x80",
                            "\xED\xBF\xBF",
                            "\xF4\x90\x80\x80",
                            "\xF5\x80\x80\x80",
                            "\xFF",
                            "\xFE",
                            "\xC3",
                            "\xE2\x82",
                            "\xF0\x9F\x94",
                            "\xC3(",
                            "\xE2(\xA1",
                            "a\xE4o"}) {
        CHECK_FALSE(is_utf8(bad));
        CHECK_FALSE(is_utf8(std::string{"before "} + bad + " after"));
    }
}

TEST_CASE("control characters are told from text") {
    for (const char* text : {"", "N·m", "Öl à \u00A0", "\u2028", "~"}) {
        CHECK_FALSE(has_control(text));
    }
    for (const char* text : {"\t", "a\n", "\r", "\x1B[31m", "\x7F", "\u0080", "a\u009F"}) {
        CHECK(has_control(text));
    }
    CHECK(has_control(std::string_view{"a\0b", 3}));
}

TEST_CASE("code points and their UTF-8 form are each other's inverse") {
    CHECK(code_points("aé€\U0001F527") == U"aé€\U0001F527");
    CHECK(code_points("a\xE4\x62") == U"a\uFFFDb");
    CHECK(code_points("\xE2\x82") == U"\uFFFD\uFFFD");
    std::mt19937 random{6};
    for (int i = 0; i < 3000; ++i) {
        const auto point = static_cast<char32_t>(random() % 0x110000U);
        if (point >= 0xD800 && point <= 0xDFFF) {
            continue;
        }
        const std::string text = utf8(point);
        REQUIRE(is_utf8(text));
        REQUIRE(code_points(text) == std::u32string(1, point));
    }
    for (const char32_t edge : {U'\x7F', U'\x80', U'\x7FF', U'\x800', U'\xFFFF', U'\x10000', U'\x10FFFF'}) {
        CHECK(code_points(utf8(edge)) == std::u32string(1, edge));
    }
}

TEST_CASE("no bytes at all break the text functions") {
    std::mt19937 random{7};
    std::size_t malformed = 0;
    for (int i = 0; i < 3000; ++i) {
        std::string bytes(random() % 24, '\0');
        for (char& c : bytes) {
            c = static_cast<char>(random() % 3 == 0 ? random() % 128 : random() % 256);
        }
        malformed += is_utf8(bytes) ? 0U : 1U;
        REQUIRE(is_utf8(fold(bytes)));
        REQUIRE(code_points(bytes).size() <= bytes.size());
        REQUIRE(trim(bytes).size() <= bytes.size());
        REQUIRE(edit_distance(bytes, bytes) == 0);
        REQUIRE(display_width(pad_right(bytes, 50)) == 50);
    }
    CHECK(malformed > 1000);
}

TEST_CASE("white space at the ends is taken off, that of typesetters too") {
    CHECK(trim("  a b \t\r\n") == "a b");
    CHECK(trim("\u00a032 N·m\u202f") == "32 N·m");
    CHECK(trim("\u2009x\u2000\u200a") == "x");
    CHECK(trim(" \u00a0 ").empty());
    CHECK(trim("").empty());
    CHECK(trim("é") == "é");
    CHECK(trim("x\u200b") == "x\u200b"); // a zero-width blank is no blank
}

TEST_CASE("words fold alike however they are written") {
    const struct {
        const char* text;
        const char* folded;
    } cases[] = {
        {"Ölablaßschraube", "olablassschraube"}, // German
        {"ÖLABLASSSCHRAUBE", "olablassschraube"},
        {"STRAẞE", "strasse"},
        {"Bouchon d’égout à vis", "bouchon d'egout a vis"}, // French
        {"Garçon Noël Cœur ŒUVRE Où", "garcon noel coeur oeuvre ou"},
        {"Tapón de vaciado, Ñandú, pingüino", "tapon de vaciado, nandu, pinguino"}, // Spanish
        {"Påfyllning ÄNDA Över", "pafyllning anda over"},                           // Swedish
        {"Ærø ÆØÅ øre", "aero aeoa ore"},
        {"Gearbox", "gearbox"},
        {"e\u0301 A\u030A u\u0308", "e a u"}, // accents that stand by themselves
        {"Łódź Žižka Ÿ ý", "lodz zizka y y"},
        {"Ĳssel", "ijssel"},
        {"M18×1,5", "m18×1,5"},
        {"30–36 \u2212 4‑5", "30-36 - 4-5"},
        {"  a \t\n b\u00a0\u2009c ", "a b c"},
        {"ı I İ", "i i i"},
        {"", ""},
    };
    for (const auto& c : cases) {
        INFO(c.text);
        CHECK(fold(c.text) == c.folded);
        CHECK(fold(fold(c.text)) == c.folded);
    }
    CHECK(fold("Ablaßschraube") == fold("ABLASSSCHRAUBE"));
    CHECK(fold("a\xE4") == "a\uFFFD");
}

TEST_CASE("upper and lower case of the five languages' letters fold alike") {
    const std::pair<const char*, const char*> letters[] = {
        {"Ä", "ä"}, {"Ö", "ö"}, {"Ü", "ü"}, {"Å", "å"}, {"É", "é"}, {"È", "è"}, {"Ê", "ê"}, {"Ë", "ë"}, {"À", "à"},
        {"Â", "â"}, {"Ç", "ç"}, {"Î", "î"}, {"Ï", "ï"}, {"Ô", "ô"}, {"Ù", "ù"}, {"Û", "û"}, {"Ÿ", "ÿ"}, {"Œ", "œ"},
        {"Æ", "æ"}, {"Á", "á"}, {"Í", "í"}, {"Ó", "ó"}, {"Ú", "ú"}, {"Ñ", "ñ"}, {"ẞ", "ß"}, {"Ø", "ø"},
    };
    for (const auto& [upper, lower] : letters) {
        INFO(upper << " and " << lower);
        CHECK(fold(upper) == fold(lower));
        CHECK(fold(upper).find_first_not_of("abcdefghijklmnopqrstuvwxyz") == std::string::npos);
    }
}

TEST_CASE("text is taken apart and put together") {
    CHECK(folded_words("Drain-plug (M18×1.5), Größe 2") == Words{"drain", "plug", "m18×1", "5", "grosse", "2"});
    CHECK(folded_words(" ,- ") == Words{});
    CHECK(split("a,b,,c,", ',') == Words{"a", "b", "", "c", ""});
    CHECK(split("", ',') == Words{""});
    CHECK(join(Words{"a", "b", "c"}, ", ") == "a, b, c");
    CHECK(join(Words{}, ", ").empty());
}

TEST_CASE("widths are those of a terminal") {
    CHECK(display_width("N·m") == 3);
    CHECK(display_width("e\u0301") == 1);
    CHECK(display_width("螺栓") == 4);
    CHECK(display_width("\u200b") == 0);
    CHECK(display_width("") == 0);
    CHECK(pad_right("é", 3) == "é  ");
    CHECK(pad_left("é", 3) == "  é");
    CHECK(pad_left("螺", 3) == " 螺");
    CHECK(pad_right("long", 2) == "long");
    CHECK(pad_left("long", 2) == "long");
}

TEST_CASE("lines are broken at blanks") {
    CHECK(wrap("tighten to the figure", 10) == Words{"tighten to", "the figure"});
    CHECK(wrap("aa bb", 5) == Words{"aa bb"});
    CHECK(wrap("aa bb", 4) == Words{"aa", "bb"});
    CHECK(wrap("a verylongword b", 4) == Words{"a", "verylongword", "b"});
    CHECK(wrap("größer größer", 6) == Words{"größer", "größer"});
    CHECK(wrap("  a   b  ", 80) == Words{"a b"});
    CHECK(wrap("", 5) == Words{""});
}

TEST_CASE("a cell is quoted where it must be") {
    CHECK(csv_cell("plain") == "plain");
    CHECK(csv_cell("") == "");
    CHECK(csv_cell("a,b") == "\"a,b\"");
    CHECK(csv_cell("a;b") == "\"a;b\"");
    CHECK(csv_cell("6\" pipe") == "\"6\"\" pipe\"");
    CHECK(csv_cell("a\nb") == "\"a\nb\"");
    CHECK(csv_cell("a\rb") == "\"a\rb\"");
}

TEST_CASE("edits are counted") {
    CHECK(edit_distance("", "") == 0);
    CHECK(edit_distance("", "abc") == 3);
    CHECK(edit_distance("drain", "drain") == 0);
    CHECK(edit_distance("drain", "drane") == 2);
    CHECK(edit_distance("drain", "drian") == 1); // neighbours swapped
    CHECK(edit_distance("drain", "rain") == 1);
    CHECK(edit_distance("drain", "drains") == 1);
    CHECK(edit_distance("drain", "brain") == 1);
    CHECK(edit_distance("kitten", "sitting") == 3);
    CHECK(edit_distance("Größe", "GROSSE") == 0);
    std::mt19937 random{8};
    const auto word = [&] {
        std::string out(random() % 9, 'a');
        for (char& c : out) {
            c = static_cast<char>('a' + random() % 3);
        }
        return out;
    };
    for (int i = 0; i < 2000; ++i) {
        const std::string a = word();
        const std::string b = word();
        INFO(a << " and " << b);
        const std::size_t there = edit_distance(a, b);
        REQUIRE(there == edit_distance(b, a));
        REQUIRE((there == 0) == (a == b));
        REQUIRE(there <= std::max(a.size(), b.size()));
        REQUIRE(there >= std::max(a.size(), b.size()) - std::min(a.size(), b.size()));
    }
}

TEST_CASE("the nearest spelling is offered, where one is near") {
    const Words roles{"drain", "fill", "level", "vent", "cover"};
    CHECK(nearest("drian", roles) == "drain");
    CHECK(nearest("LEVLE", roles) == "level");
    CHECK(nearest("drain", roles) == "drain");
    CHECK_FALSE(nearest("gearbox", roles));
    CHECK_FALSE(nearest("", roles));
    CHECK_FALSE(nearest("drain", Words{}));
    CHECK(did_you_mean("covr", roles) == " (did you mean 'cover'?)");
    CHECK(did_you_mean("gearbox", roles).empty());
}

TEST_CASE("what a spreadsheet would run is kept from it and comes back as it was") {
    for (const char* text : {"=1+1", "+1", "-1", "@a", "\tx", "\rx", "＝1", "＋1", "－1", "＠a", "'=1", "''=1", "'@"}) {
        INFO(text);
        const std::string shown = clampbook::spreadsheet_text(text);
        CHECK(shown == "'" + std::string{text});
        CHECK(clampbook::from_spreadsheet_text(shown) == text);
    }
    for (const char* text : {"", "'", "''", "32 N·m", "'quoted'", "a=b", " =1", "1-2", "´=1"}) {
        INFO(text);
        CHECK(clampbook::spreadsheet_text(text) == text);
        CHECK(clampbook::from_spreadsheet_text(text) == text);
    }
}

TEST_CASE("names are listed as people list them") {
    const std::vector<std::string> listed{"",   "Axle 2", "axle 10", "axle 10 b", "axle 010 c", "box",
                                          "M8", "M8x1",   "M10",     "m10x1.25",  "Öse 1",      "ose 2"};
    for (std::size_t i = 0; i < listed.size(); ++i) {
        for (std::size_t j = 0; j < listed.size(); ++j) {
            INFO(listed[i] << " | " << listed[j]);
            CHECK(clampbook::comes_before(listed[i], listed[j]) == (i < j));
        }
    }
    CHECK_FALSE(clampbook::comes_before("a 007", "a 7"));
    CHECK_FALSE(clampbook::comes_before("a 7", "a 007"));
    CHECK(clampbook::comes_before("a 99999999999999999999999", "a 100000000000000000000000"));
}
