// SPDX-License-Identifier: MIT
#pragma once

// What every answer is made of: a document that holds all that will be shown, labels, sources and cautions included,
// so that text, JSON and CSV only differ in form.

#include "clampbook/model/citation.hpp"
#include "clampbook/units/quantity.hpp"
#include "clampbook/units/reading.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace clampbook::answer {

/// A figure with where it comes from. `value` is in `unit` at full precision; `print` is the same for the eye, unit included.
struct Figure {
    double value = 0;
    std::string unit; ///< as the table of units writes it; empty for a bare number
    std::string print;
    std::optional<Label> label;       ///< none for the user's own number in another unit
    std::optional<Citation> citation; ///< of a curated figure, or of the formula behind a derived one
    std::string basis;                ///< formula or words for the eye: "S_p · A_s"
    std::string also;                 ///< the same in another unit: "37.3 lbf·ft"
};

/// A line of the document: a figure or a text, under a stable key. A key with points nests in JSON: `window.low`.
struct Item {
    std::string key;
    std::string title;
    std::optional<Figure> figure;
    std::string text;
};

struct Section {
    std::string title; ///< may be empty
    std::vector<Item> items;
};

/// How often values fall into each of equal parts of a band.
struct Histogram {
    struct Mark {
        double at = 0;
        std::string words; ///< "proof load"
    };
    std::string title;
    std::string unit;     ///< of the band, as the table of units writes it
    std::string shown_in; ///< the unit that it is shown in for the eye
    double low = 0;
    double high = 0;
    std::vector<std::size_t> counts;
    std::size_t total = 0;
    std::vector<Mark> marks; ///< limits that are worth seeing in it
};

struct Document {
    std::string schema; ///< the command: `derive` gives clampbook/derive/v1
    std::string heading;
    std::vector<Section> sections;
    std::optional<Histogram> histogram;
    std::vector<std::string> notes; ///< what was assumed, in words
    std::vector<Caution> cautions;

    Section& section(std::string title);
    void add(std::string key, std::string title, std::string text);
    void add(std::string key, std::string title, Figure figure);
};

/// A figure for the eye with so many significant digits, and its unit.
[[nodiscard]] std::string print_quantity(double value, std::string_view unit, int significant);

template <Dimension D>
[[nodiscard]] Figure figure(Quantity<D> quantity, std::string_view unit, int significant, Label label) {
    Figure f;
    f.value = quantity.in(Unit<D>{1.0});
    f.unit = unit;
    f.print = print_quantity(f.value, unit, significant);
    f.label = label;
    return f;
}

/// A count or a number of ours, such as that of a record: no figure of the trade, so it has no label.
[[nodiscard]] Figure count_figure(std::uint64_t n);

/// A torque with its twin in lbf·ft.
[[nodiscard]] Figure torque_figure(Torque torque, Label label, std::string basis);

/// A torque as somebody typed it, with its twin in the other of N·m and lbf·ft.
[[nodiscard]] Figure torque_as_given(const Reading& reading);

/// A derived force with its twin in lbf.
[[nodiscard]] Figure force_figure(Force force, std::string basis);

/// A derived share of a whole, for the eye in percent.
[[nodiscard]] Figure share_figure(double share, std::string basis);

// The cautions, one wording each.
[[nodiscard]] Caution caution_generic();         ///< a generic figure is no maker's figure
[[nodiscard]] Caution caution_maker_first();     ///< makers' instructions, local codes and licensed practice come first
[[nodiscard]] Caution caution_safety_critical(); ///< wheel, brake, steering and the like
[[nodiscard]] Caution caution_friction();        ///< what the nut factor hangs on
[[nodiscard]] Caution caution_coefficients();    ///< what a coefficient of friction decides
[[nodiscard]] Caution caution_no_prescription(); ///< a window is no prescription
[[nodiscard]] Caution caution_demo();            ///< the figure is invented
[[nodiscard]] Caution caution_fill_first();      ///< loosen the fill plug before the drain plug

} // namespace clampbook::answer
