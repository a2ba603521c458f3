// SPDX-License-Identifier: MIT
#include "clampbook/answer/document.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/units/reading.hpp"

namespace clampbook::answer {

Section& Document::section(std::string title) {
    sections.push_back({std::move(title), {}});
    return sections.back();
}

void Document::add(std::string key, std::string title, std::string text) {
    if (sections.empty()) {
        section({});
    }
    sections.back().items.push_back({std::move(key), std::move(title), std::nullopt, std::move(text)});
}

void Document::add(std::string key, std::string title, Figure figure) {
    if (sections.empty()) {
        section({});
    }
    sections.back().items.push_back({std::move(key), std::move(title), std::move(figure), {}});
}

std::string print_quantity(double value, std::string_view unit, int significant) {
    const std::string number = print_significant(value, significant);
    return unit.empty() ? number : with_unit(number, unit_named(unit));
}

Figure torque_figure(Torque torque, Label label, std::string basis) {
    Figure f = figure(torque, "N·m", 3, label);
    f.basis = std::move(basis);
    f.also = print_quantity(torque.in(pound_force_foot), "lbf·ft", 3);
    return f;
}

Figure torque_as_given(const Reading& reading) {
    const auto torque = reading.as<Dimension::torque>();
    Figure f = torque_figure(torque, Label::derived, "as given");
    f.print = reading.text;
    f.also = reading.unit->symbol == "N·m" ? f.also : print_quantity(torque.in(newton_metre), "N·m", 3);
    return f;
}

Figure force_figure(Force force, std::string basis) {
    Figure f = figure(force, "N", 3, Label::derived);
    f.basis = std::move(basis);
    f.also = print_quantity(force.in(pound_force), "lbf", 3);
    return f;
}

Figure share_figure(double share, std::string basis) {
    Figure f;
    f.value = share;
    f.print = print_significant(share * 100, 3) + " %";
    f.label = Label::derived;
    f.basis = std::move(basis);
    return f;
}

Figure count_figure(std::uint64_t n) {
    Figure f;
    f.value = static_cast<double>(n);
    f.print = std::to_string(n);
    return f;
}

Caution caution_generic() {
    return {"generic", "Generic figure, computed from published inputs. It is no maker's figure and does not replace one."};
}

Caution caution_maker_first() {
    return {"maker-first", "The maker's instructions, local codes and licensed practice come first."};
}

Caution caution_safety_critical() {
    return {"safety-critical",
            "Safety-critical joint: only the maker's figure and procedure count here. No generic figure stands in for it."};
}

Caution caution_friction() {
    return {"friction",
            "Thread, bearing face and lubricant decide the preload: the same torque makes more or less of it, as the band shows. "
            "A nut factor for one condition is wrong for another."};
}

Caution caution_coefficients() {
    return {
        "friction",
        "The coefficients of friction decide the preload: the same torque makes more of it on a smoother or oiled screw, up to "
        "yield, and less on a rougher one. Take them from the screw's own coating and lubricant."};
}

Caution caution_no_prescription() {
    return {"no-prescription", "A computed limit tells what goes wrong and when. It prescribes nothing: threads wear, castings "
                               "differ, and the maker knows the housing."};
}

Caution caution_demo() { return {"demo", "Invented for demonstration: do not use it on a real machine."}; }

Caution caution_fill_first() {
    return {"fill-first", "Loosen the fill plug before the drain plug: an empty unit that cannot be filled is a stranded vehicle "
                          "(practice: common practice, no source)."};
}

} // namespace clampbook::answer
