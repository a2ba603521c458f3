// SPDX-License-Identifier: MIT
#include "clampbook/teach/lesson_parts.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/units/reading.hpp"

#include <cmath>

namespace clampbook::teach {

using answer::Document;
using answer::Figure;

namespace {

const answer::Item* find_item(const Document& document, std::string_view key) {
    for (const answer::Section& section : document.sections) {
        for (const answer::Item& item : section.items) {
            if (item.key == key) {
                return &item;
            }
        }
    }
    return nullptr;
}

} // namespace

const Figure* find_figure(const Document& document, std::string_view key) {
    const answer::Item* item = find_item(document, key);
    return item != nullptr && item->figure ? &*item->figure : nullptr;
}

const Figure& figure_in(const Document& document, std::string_view key) {
    const Figure* found = find_figure(document, key);
    if (found == nullptr) {
        throw error(ErrorKind::internal, "the answer '{}' has no figure '{}'", document.schema, key);
    }
    return *found;
}

std::string text_in(const Document& document, std::string_view key) {
    const answer::Item* item = find_item(document, key);
    return item == nullptr ? std::string{} : item->text;
}

Force force_in(const Document& document, std::string_view key) { return figure_in(document, key).value * newton; }
Torque torque_in(const Document& document, std::string_view key) { return figure_in(document, key).value * newton_metre; }

std::string kilonewtons(Force force) { return answer::print_quantity(force.in(kilonewton), "kN", 3); }
std::string newton_metres(Torque torque) { return answer::print_quantity(torque.in(newton_metre), "N·m", 3); }
std::string percent_words(double share) { return answer::print_quantity(share * 100, "%", 3); }
std::string micrometres(Length length) { return answer::print_quantity(length.in(micrometre), "µm", 3); }
std::string millimetres(Length length) { return answer::print_quantity(length.in(millimetre), "mm", 3); }

std::string coefficient(double value) {
    const double rounded = std::round(value * 1e6) / 1e6;
    const std::string shortest = print_shortest(rounded);
    const std::string usual = print_fixed(rounded, 2);
    return usual.size() > shortest.size() ? usual : shortest;
}

std::string percent_as_given(double share) { return with_unit(print_shortest(std::round(share * 1e8) / 1e6), unit_named("%")); }

Figure derived_force(Force force, std::string basis) { return in_kilonewtons(answer::force_figure(force, std::move(basis))); }

Figure derived_torque(Torque torque, std::string basis) {
    return answer::torque_figure(torque, Label::derived, std::move(basis));
}

Figure derived_stretch(Length length, std::string basis) {
    Figure out = answer::figure(length, "mm", 3, Label::derived);
    out.print = micrometres(length);
    out.basis = std::move(basis);
    return out;
}

Figure in_kilonewtons(Figure figure) {
    figure.print = kilonewtons(figure.value * newton);
    return figure;
}

std::string chosen(Lesson& lesson, const char* option, const std::string& text, const char* otherwise) {
    std::string out = text.empty() ? otherwise : text;
    lesson.inputs.push_back(std::string{option} + " " + quoted(out));
    return out;
}

std::string quoted(std::string_view word) {
    if (word.find_first_of(" '\"#$&();<>|*?\\`") == std::string_view::npos && !word.empty()) {
        return std::string{word};
    }
    std::string out = "'";
    for (const char c : word) {
        out += c == '\'' ? std::string{"'\\''"} : std::string{c};
    }
    return out + "'";
}

engine::FrictionJoint TurnedScrew::with_friction(double friction) const {
    return {screw.geometry, friction, friction, bearing.value * millimetre, hole.value * millimetre};
}

TurnedScrew turned_screw(const reference::Reference& reference, const std::string& thread, const std::string& property_class,
                         const std::string& head) {
    TurnedScrew out{answer::screw_of(reference, thread, property_class), {}, {}};
    const answer::Face face = answer::face_of(reference, {head, {}, {}}, out.screw.thread.size);
    out.bearing = face.bearing;
    out.hole = face.hole;
    return out;
}

double one_friction(std::string_view text) {
    const answer::Coefficients mu = answer::read_coefficients(text);
    if (mu.thread != mu.head) {
        throw error(ErrorKind::usage,
                    "'{}' gives two coefficients of friction; a lesson takes one for thread and head, like 0.12", text);
    }
    return mu.thread;
}

} // namespace clampbook::teach
