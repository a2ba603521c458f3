// SPDX-License-Identifier: MIT
#include "clampbook/engine/strength.hpp"
#include "clampbook/answer/parts.hpp"
#include "clampbook/answer/screw.hpp"
#include "clampbook/base/error.hpp"

namespace clampbook::answer {
namespace {

using reference::Reference;

Figure printed_load(Force force, const Citation& citation, bool inch_thread) {
    Figure f = figure(force, "N", 5, Label::standard);
    f.print = print_quantity(f.value, "N", inch_thread ? 4 : 3);
    f.citation = citation;
    if (inch_thread) {
        f.also = print_quantity(force.in(pound_force), "lbf", 3);
    }
    return f;
}

Figure computed_load(Force force, std::string basis, bool inch_thread) {
    Figure f = figure(force, "N", 3, Label::derived);
    f.basis = std::move(basis);
    if (inch_thread) {
        f.also = print_quantity(force.in(pound_force), "lbf", 3);
    }
    return f;
}

} // namespace

Screw screw_of(const Reference& reference, std::string_view designation, std::string_view property_class) {
    Screw s;
    s.thread = reference.thread(read_thread(designation));
    if (is_pipe(s.thread.system)) {
        throw error(ErrorKind::out_of_validity,
                    "{} is a pipe thread: it seals and carries no property class, so no load or preload follows from it",
                    s.thread.code);
    }
    const std::string name = reference.class_name(property_class);
    s.property_class = reference.property_class(name, s.thread);
    const bool inch_thread = s.thread.system == ThreadSystem::unified;
    s.geometry = geometry_of(s.thread);
    const auto load = reference.load(s.thread.code, name);
    if (load) {
        s.area = figure(load->stress_area, "mm²", 3, Label::standard);
        s.area.citation = load->citation;
    } else {
        s.area = figure(s.geometry.stress_area, "mm²", 3, Label::derived);
        s.area.basis = inch_thread ? "π/4 · (d − 0.9743 P)² (ASME B1.1)" : "π/4 · ((d2 + d3)/2)² (ISO 898-1, clause 9.1)";
    }
    if (inch_thread) {
        s.area.also = print_quantity(s.area.value / constants::k_in2_mm2, "in²", 3);
    }
    const Area area = s.area.value * square_millimetre;
    // Classes without a proof stress (stainless) are loaded against their 0.2 % limit instead.
    s.has_proof_stress = s.property_class.proof_stress.has_value();
    const Stress base = s.property_class.proof_stress.value_or(s.property_class.yield_strength);
    if (load && load->proof_load_published) {
        s.proof_load = printed_load(load->proof_load, load->citation, inch_thread);
    } else if (load) {
        s.proof_load = printed_load(load->proof_load, load->citation, inch_thread);
        s.proof_load.label = Label::derived;
        s.proof_load.basis = "Sp · As, three digits";
    } else {
        s.proof_load = computed_load(engine::load_at(base, area),
                                     s.has_proof_stress ? "Sp · As" : s.property_class.yield_kind + " · As", inch_thread);
    }
    if (load && load->tensile_load_published) {
        s.tensile_load = printed_load(load->tensile_load, load->citation, inch_thread);
    } else if (load) {
        s.tensile_load = printed_load(load->tensile_load, load->citation, inch_thread);
        s.tensile_load.label = Label::derived;
        s.tensile_load.basis = "Rm · As, three digits";
    } else {
        s.tensile_load = computed_load(engine::load_at(s.property_class.tensile_strength, area), "Rm · As", inch_thread);
    }
    return s;
}

std::string Screw::title() const { return thread_for_print(thread.code) + " " + property_class.name; }

std::string Screw::load_name() const { return has_proof_stress ? "proof load" : "load at the 0.2 % limit"; }

Document strength(const Reference& reference, std::string_view designation, std::string_view property_class) {
    const Screw s = screw_of(reference, designation, property_class);
    const reference::ClassRow& c = s.property_class;
    Document document;
    document.schema = "strength";
    document.heading = thread_for_print(s.thread.code) + " " + c.name;
    document.section({});
    document.add("thread", "thread", s.thread.code);
    document.add("property_class", "property class", c.name);
    document.add("stress_area", "stress area As", s.area);
    if (s.has_proof_stress) {
        document.add("proof_load", "proof load", s.proof_load);
    } else {
        document.add("yield_load", "load at the 0.2 % limit", s.proof_load);
        document.notes.push_back(c.citation.title +
                                 " gives no proof stress for this class; the load at its 0.2 % limit stands in its place.");
    }
    document.add("min_tensile_load", "minimum tensile load", s.tensile_load);
    if (c.proof_stress) {
        document.add("proof_stress", "proof stress Sp", curated_stress(*c.proof_stress, c.citation));
    }
    document.add("yield_strength", "yield strength" + (c.yield_kind == "yield" ? std::string{} : " " + c.yield_kind) + ", least",
                 curated_stress(c.yield_strength, c.citation));
    document.add("tensile_strength", "tensile strength Rm, least", curated_stress(c.tensile_strength, c.citation));
    if (!c.note.empty()) {
        document.notes.push_back(c.note);
    }
    document.cautions.push_back(caution_maker_first());
    return document;
}

} // namespace clampbook::answer
