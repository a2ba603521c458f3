// SPDX-License-Identifier: MIT
#include "clampbook/answer/parts.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/engine/thread_geometry.hpp"

namespace clampbook::answer {
namespace {

using reference::Reference;
using reference::ThreadRow;

// How lengths of this thread are shown: metric ones to a thousandth of a millimetre, inch ones to the digits of ASME B1.1.
Figure length_figure(Length length, const ThreadRow& row) {
    Figure f;
    f.value = length.in(millimetre);
    f.unit = "mm";
    f.print = print_fixed(f.value, 3) + " mm";
    if (row.system != ThreadSystem::metric) {
        f.also = print_fixed(length.in(inch), 4) + " in";
    }
    return f;
}

Figure printed(Length length, const ThreadRow& row) {
    Figure f = length_figure(length, row);
    f.label = Label::standard;
    f.citation = row.citation;
    return f;
}

Figure per_inch(const ThreadRow& row) {
    Figure f;
    f.value = *row.threads_per_inch;
    f.print = print_shortest(f.value);
    f.label = Label::standard;
    f.citation = row.citation;
    return f;
}

Figure computed(Length length, const ThreadRow& row, std::string basis) {
    Figure f = length_figure(length, row);
    f.label = Label::derived;
    f.basis = std::move(basis);
    return f;
}

// The print where one was read, else the formula.
Figure either(const std::optional<Length>& print, Length formula, const ThreadRow& row, const std::string& basis) {
    return print ? printed(*print, row) : computed(formula, row, basis);
}

void add_limits(Document& document, const ThreadRow& row, const engine::Limits& external, const engine::Limits& internal,
                std::string_view external_class, std::string_view internal_class, const std::string& basis) {
    const auto add = [&](const std::string& path, const char* title, Length length) {
        document.add(path, title, computed(length, row, basis));
    };
    document.section("limits of size, external " + std::string{external_class});
    document.add("limits.external.class", "class", std::string{external_class});
    add("limits.external.major_max", "major diameter, largest", external.major_max);
    add("limits.external.major_min", "major diameter, smallest", external.major_min);
    add("limits.external.pitch_max", "pitch diameter, largest", external.pitch_max);
    add("limits.external.pitch_min", "pitch diameter, smallest", external.pitch_min);
    add("limits.external.minor_max", "minor diameter, largest", external.minor_max);
    if (row.system == ThreadSystem::metric) {
        add("limits.external.minor_min", "minor diameter, smallest", external.minor_min);
    }
    document.section("limits of size, internal " + std::string{internal_class});
    document.add("limits.internal.class", "class", std::string{internal_class});
    add("limits.internal.major_min", "major diameter, smallest", internal.major_min);
    add("limits.internal.pitch_max", "pitch diameter, largest", internal.pitch_max);
    add("limits.internal.pitch_min", "pitch diameter, smallest", internal.pitch_min);
    add("limits.internal.minor_max", "minor diameter, largest", internal.minor_max);
    add("limits.internal.minor_min", "minor diameter, smallest", internal.minor_min);
}

void metric(Document& document, const Reference& reference, const ThreadRow& row) {
    const engine::ThreadGeometry g = engine::metric_geometry(row.major, *row.pitch);
    document.add("pitch", "pitch", printed(*row.pitch, row));
    document.add("pitch_diameter", "pitch diameter d2, D2",
                 either(row.pitch_diameter, g.pitch_diameter, row, "d − 0.649519 P (ISO 724)"));
    document.add("minor_diameter_internal", "minor diameter internal D1",
                 either(row.minor_internal, g.minor_internal, row, "d − 1.082532 P (ISO 724)"));
    document.add("minor_diameter_external", "minor diameter external d3",
                 either(row.minor_external, g.minor_external, row, "d − 1.226869 P (ISO 68-1)"));
    Figure area = figure(g.stress_area, "mm²", 3, Label::derived);
    area.basis = "π/4 · ((d2 + d3)/2)² (ISO 898-1, clause 9.1)";
    document.add("stress_area", "stress area As", area);
    const auto [t, all_printed] = metric_tolerances_of(reference, row);
    add_limits(document, row, engine::external_limits(g, t), engine::internal_limits(g, t), "6g", "6H",
               all_printed ? "basic size and the tolerances printed in ISO 965-1"
                           : "basic size and tolerances by the formulas of ISO 965-1");
}

void unified(Document& document, const ThreadRow& row) {
    const double n = *row.threads_per_inch;
    const engine::ThreadGeometry g = engine::unified_geometry(row.major, n);
    document.add("pitch", "pitch", computed(g.pitch, row, "1 in / " + print_shortest(n)));
    document.add("threads_per_inch", "threads per inch", per_inch(row));
    document.add("pitch_diameter", "pitch diameter",
                 either(row.pitch_diameter, g.pitch_diameter, row, "d − 0.64951905 P (ASME B1.1)"));
    document.add("minor_diameter_internal", "minor diameter internal",
                 either(row.minor_internal, g.minor_internal, row, "d − 1.08253175 P (ASME B1.1)"));
    document.add("minor_diameter_external", "minor diameter external (UNR)",
                 either(row.minor_external, g.minor_external, row, "d − 1.19078493 P (ASME B1.1)"));
    Figure area = figure(row.stress_area.value_or(g.stress_area), "mm²", 4, row.stress_area ? Label::standard : Label::derived);
    if (row.stress_area) {
        area.citation = row.citation;
    } else {
        area.basis = "π/4 · (d − 0.9743 P)² (ASME B1.1)";
    }
    area.also = print_quantity(area.value / constants::k_in2_mm2, "in²", 3);
    document.add("stress_area", "stress area As", area);
    const engine::Tolerances t = unified_tolerances_of(row, g);
    add_limits(document, row, engine::external_limits(g, t), engine::internal_limits(g, t), "2A", "2B",
               "basic size and tolerances by the formulas of ASME B1.1");
}

void pipe(Document& document, const ThreadRow& row) {
    const double n = *row.threads_per_inch;
    const Length pitch = (1.0 / n) * inch;
    document.add("pitch", "pitch", computed(pitch, row, "1 in / " + print_shortest(n)));
    document.add("threads_per_inch", "threads per inch", per_inch(row));
    if (row.system == ThreadSystem::npt) {
        if (row.pitch_diameter) {
            document.add("pitch_diameter", "pitch diameter E1, gauge plane", printed(*row.pitch_diameter, row));
        }
    } else {
        const engine::PipeGeometry g = engine::whitworth_pipe_geometry(row.major, n);
        document.add("pitch_diameter", "pitch diameter", either(row.pitch_diameter, g.pitch_diameter, row, "d − 0.640327 P"));
        document.add("minor_diameter_internal", "minor diameter internal",
                     either(row.minor_internal, g.minor, row, "d − 1.280654 P"));
        document.add("minor_diameter_external", "minor diameter external",
                     either(row.minor_internal, g.minor, row, "d − 1.280654 P"));
    }
    if (row.gauge_length) {
        document.add("gauge_length", row.system == ThreadSystem::npt ? "hand-tight engagement L1" : "gauge length",
                     printed(*row.gauge_length, row));
    }
    if (row.useful_length) {
        document.add("useful_length", row.system == ThreadSystem::npt ? "effective length L2" : "useful thread length",
                     printed(*row.useful_length, row));
    }
    document.notes.emplace_back(
        row.series == "taper pipe"
            ? "Taper 1 to 16 on the diameter; the thread itself seals. It has no stress area and carries no property class."
            : "The thread does not seal; a ring or face does. It has no stress area and carries no property class.");
}

} // namespace

Document thread(const Reference& reference, std::string_view designation) {
    const ThreadRow row = reference.thread(read_thread(designation));
    Document document;
    document.schema = "thread";
    document.heading = thread_for_print(row.code);
    if (row.code.find(row.series) == std::string::npos) { // "3/8-16 UNC" names its series itself
        document.heading += ", " + row.series + (row.system == ThreadSystem::metric ? " pitch" : "");
    }
    document.section({});
    document.add("thread", "thread", row.code);
    document.add("series", "series", row.series);
    document.add("major_diameter", row.series == "taper pipe" ? "major diameter, gauge plane" : "major diameter",
                 printed(row.major, row));
    switch (row.system) {
    case ThreadSystem::metric:
        metric(document, reference, row);
        break;
    case ThreadSystem::unified:
        unified(document, row);
        break;
    case ThreadSystem::pipe_parallel:
    case ThreadSystem::pipe_taper:
    case ThreadSystem::npt:
        pipe(document, row);
        break;
    }
    if (!row.note.empty()) {
        document.notes.push_back(row.note);
    }
    return document;
}

} // namespace clampbook::answer
