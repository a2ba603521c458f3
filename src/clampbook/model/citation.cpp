// SPDX-License-Identifier: MIT
#include "clampbook/model/citation.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace clampbook {
namespace {

struct LabelRow {
    Label label;
    std::string_view name;
    std::string_view meaning;
};

constexpr std::array k_labels{
    LabelRow{Label::maker, "maker", "the maker's published figure, typed in from a named document"},
    LabelRow{Label::standard, "standard", "printed in a published standard or handbook"},
    LabelRow{Label::shop, "shop", "decided or measured by the shop itself"},
    LabelRow{Label::derived, "derived", "computed here from published inputs by a named formula"},
    LabelRow{Label::practice, "practice", "common practice of the trade, no source"},
    LabelRow{Label::demo, "demo", "invented, for demonstration"},
};

} // namespace

std::string_view label_name(Label label) noexcept {
    for (const LabelRow& row : k_labels) {
        if (row.label == label) {
            return row.name;
        }
    }
    return {};
}

std::string_view label_meaning(Label label) noexcept {
    for (const LabelRow& row : k_labels) {
        if (row.label == label) {
            return row.meaning;
        }
    }
    return {};
}

Label read_label(std::string_view text) {
    const auto known = [](std::string_view name) { return std::ranges::find(k_labels, name, &LabelRow::name); };
    const auto* found = known(text); // as books have it
    found = found == k_labels.end() ? known(fold(text)) : found;
    if (found != k_labels.end()) {
        return found->label;
    }
    std::vector<std::string> names;
    for (const LabelRow& row : k_labels) {
        names.emplace_back(row.name);
    }
    throw error(ErrorKind::usage, "'{}' is no label{}; the labels are {}", text, did_you_mean(text, names), join(names, ", "));
}

std::string Citation::line() const {
    std::string how = basis;
    if (keyed == "memory") {
        how += ", keyed from memory";
    } else if (keyed == "reproduction") {
        how += ", keyed from a reproduction";
    } else if (keyed == "document") {
        how += ", keyed from the document";
    } else if (keyed == "computed") {
        how += ", computed by the stated rule";
    }
    return title + ", " + place + " (" + how + ")";
}

} // namespace clampbook
