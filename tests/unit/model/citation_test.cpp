// SPDX-License-Identifier: MIT
// Labels by their names, and a citation in one line.

#include "clampbook/model/citation.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace clampbook;

TEST_CASE("labels have stable names, in the order of trust") {
    const std::pair<Label, std::string> names[] = {{Label::maker, "maker"},       {Label::standard, "standard"},
                                                   {Label::shop, "shop"},         {Label::derived, "derived"},
                                                   {Label::practice, "practice"}, {Label::demo, "demo"}};
    std::set<std::string> meanings;
    int place = 0;
    for (const auto& [label, name] : names) {
        CHECK(label_name(label) == name);
        CHECK(read_label(name) == label);
        CHECK(read_label(" " + name + " ") == label);
        CHECK(static_cast<int>(label) == place++);
        meanings.insert(std::string{label_meaning(label)});
    }
    CHECK(read_label("Maker") == Label::maker);
    CHECK(meanings.size() == 6);
    CHECK_FALSE(meanings.contains(""));
}

TEST_CASE("a word that is no label is refused with the nearest") {
    CHECK(unit_tests::refusal(ErrorKind::usage, [] { return read_label("makr"); }) ==
          "'makr' is no label (did you mean 'maker'?); the labels are maker, standard, shop, derived, practice, demo");
    CHECK(unit_tests::refusal(ErrorKind::usage, [] { return read_label(""); }) ==
          "'' is no label; the labels are maker, standard, shop, derived, practice, demo");
}

TEST_CASE("a citation is one line that says how it was keyed") {
    const auto line = [](const char* basis, const char* keyed) {
        return Citation{"iso-898-1-2013", "ISO 898-1:2013", "Table 4", basis, keyed}.line();
    };
    CHECK(line("published", "reproduction") == "ISO 898-1:2013, Table 4 (published, keyed from a reproduction)");
    CHECK(line("published", "document") == "ISO 898-1:2013, Table 4 (published, keyed from the document)");
    CHECK(line("published", "memory") == "ISO 898-1:2013, Table 4 (published, keyed from memory)");
    CHECK(line("derived", "computed") == "ISO 898-1:2013, Table 4 (derived, computed by the stated rule)");
}
