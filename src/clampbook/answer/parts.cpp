// SPDX-License-Identifier: MIT
#include "clampbook/answer/parts.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/units/reading.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace clampbook::answer {
namespace {

using reference::Reference;
using reference::ThreadRow;

constexpr std::array<std::string_view, 3> k_heads{"hexagon", "socket", "flange"};
constexpr std::array<std::string_view, 3> k_fits{"fine", "medium", "coarse"};

// A number with a decimal point and nothing else.
std::optional<double> with_point(std::string_view text) {
    const auto number = read_whole_decimal(text);
    return number && text.find('.') != std::string_view::npos ? std::optional{number->value} : std::nullopt;
}

Figure bearing_of(const Reference& reference, const FaceChoice& choice, std::string_view size) {
    if (!choice.bearing.empty()) {
        if (!choice.head.empty()) {
            throw error(ErrorKind::usage, "--head and --bearing exclude each other: a head has its own bearing face");
        }
        return given_length(choice.bearing);
    }
    const std::string head = choice.head.empty() ? "hexagon" : choice.head;
    if (std::ranges::find(k_heads, head) == k_heads.end()) {
        throw error(ErrorKind::usage, "'{}' is no head known here; a head is hexagon, socket or flange", choice.head);
    }
    if (const auto row = reference.bearing_diameter(head, size)) {
        return curated_length(*row);
    }
    throw error(ErrorKind::not_found, "no bearing face of a {} head is kept here for {}; give its diameter with --bearing", head,
                size);
}

Figure hole_of(const Reference& reference, const FaceChoice& choice, std::string_view size) {
    const std::string fit = choice.hole.empty() ? "medium" : choice.hole;
    if (std::ranges::find(k_fits, fit) == k_fits.end()) {
        if (!read_decimal(trim(fit))) {
            throw error(ErrorKind::usage, "'{}' is no hole known here; a hole is fine, medium, coarse or a diameter like '11 mm'",
                        fit);
        }
        return given_length(choice.hole);
    }
    if (const auto row = reference.clearance_hole(fit, size)) {
        return curated_length(*row);
    }
    throw error(ErrorKind::not_found, "no clearance hole is kept here for {}; give its diameter with --hole", size);
}

} // namespace

Coefficients read_coefficients(std::string_view text) {
    const auto parts = split(text, ',');
    const auto thread = with_point(parts.front());
    const auto head = with_point(parts.back());
    if (!thread || !head || parts.size() > 2) {
        throw error(ErrorKind::usage,
                    "'{}' does not read as a coefficient of friction; write 0.12, or thread and head apart: 0.12,0.14", text);
    }
    return {*thread, *head};
}

void add_friction(Document& document, const GivenFriction& friction) {
    const auto add = [&](const char* key, const char* title, double mu) {
        Figure f = number_figure(mu, friction.basis);
        f.citation = friction.citation;
        document.add(key, title, f);
    };
    add("friction.thread", "friction in the thread μ_G", friction.mu.thread);
    add("friction.head", "friction under the head μ_K", friction.mu.head);
}

engine::Band read_friction_band(std::string_view text) {
    const std::size_t dots = text.find("..");
    const auto low = dots == std::string_view::npos ? std::nullopt : with_point(text.substr(0, dots));
    const auto high = dots == std::string_view::npos ? std::nullopt : with_point(text.substr(dots + 2));
    if (!low || !high) {
        throw error(ErrorKind::usage, "'{}' does not read as a band of friction; write its two ends: 0.10..0.16", text);
    }
    return {*low, *high};
}

double read_share(std::string_view text, std::string_view what, std::string_view example) {
    const Reading reading = read_quantity(text, Dimension::number);
    if (reading.unit->symbol != "%") {
        throw error(ErrorKind::usage, "'{}' has no unit; {} like '{}'", text, what, example);
    }
    return reading.canonical();
}

Figure number_figure(double value, std::string basis) {
    Figure f;
    f.value = value;
    f.print = print_shortest(value);
    f.label = Label::derived;
    f.basis = std::move(basis);
    return f;
}

Figure number_figure(double value, std::string basis, int significant) {
    Figure f = number_figure(value, std::move(basis));
    f.print = print_significant(value, significant);
    return f;
}

std::uint64_t read_count(std::string_view text, std::string_view what, std::uint64_t low, std::uint64_t high) {
    const auto number = read_whole_decimal(text);
    if (!number || number->value != std::floor(number->value) || !(number->value >= static_cast<double>(low)) ||
        !(number->value <= static_cast<double>(high))) {
        throw error(ErrorKind::usage, "'{}' is no {}; a whole number from {} to {} is wanted", text, what, low, high);
    }
    return static_cast<std::uint64_t>(number->value);
}

ScaleMark mark_on_scale(double wanted, const UnitInfo& unit, std::string_view print, std::string_view step_text) {
    const auto bare = read_whole_decimal(step_text);
    const std::optional<Reading> reading = bare ? std::nullopt : std::optional{read_quantity(step_text, unit.dimension)};
    ScaleMark mark;
    mark.unit = reading ? reading->unit : &unit;
    const double step = reading ? reading->value : bare->value;
    mark.exact = mark.unit->from_canonical(wanted);
    const std::string step_print = with_unit(print_shortest(step), *mark.unit);
    if (!(step > 0)) {
        throw error(ErrorKind::out_of_validity, "the scale's step '{}' must be more than zero", step_text);
    }
    mark.setting = std::round(mark.exact / step) * step;
    if (mark.setting == 0 || !std::isfinite(mark.setting)) {
        throw error(ErrorKind::out_of_validity,
                    "a scale in steps of {} rounds {} to nothing; its step must be less than twice the figure", step_print,
                    print);
    }
    // Decimals that the step needs, so that 23.5 is not shown as 23.499999.
    int decimals = 0;
    while (decimals < 9 && std::fabs(std::round(step * std::pow(10, decimals)) - step * std::pow(10, decimals)) > 1e-9) {
        ++decimals;
    }
    mark.print = with_unit(print_fixed(mark.setting, decimals), *mark.unit);
    mark.basis = "nearest mark of a scale in steps of " + step_print;
    return mark;
}

Figure given_length(std::string_view text) {
    Figure f = figure(read_quantity(text, Dimension::length).as<Dimension::length>(), "mm", 4, Label::derived);
    f.basis = "as given";
    return f;
}

Figure derived_length(Length length, std::string basis) {
    Figure f = figure(length, "mm", 3, Label::derived);
    f.basis = std::move(basis);
    return f;
}

Figure curated_length(const reference::SizeRow& row) {
    Figure f = figure(row.size, "mm", 4, Label::standard);
    f.print = print_shortest(f.value) + " mm";
    f.basis = row.name;
    f.citation = row.citation;
    return f;
}

Figure stress_figure(Stress stress, Label label, std::string basis) {
    Figure f = figure(stress, "MPa", 3, label);
    f.basis = std::move(basis);
    return f;
}

Figure curated_stress(Stress stress, std::optional<Citation> citation, std::string basis) {
    Figure f = stress_figure(stress, Label::standard, std::move(basis));
    f.citation = std::move(citation);
    return f;
}

Face face_of(const Reference& reference, const FaceChoice& choice, std::string_view size) {
    return {bearing_of(reference, choice, size), hole_of(reference, choice, size)};
}

reference::MaterialRow material_of(const Reference& reference, std::string_view typed, Document& document) {
    reference::MaterialRow row = reference.material(reference.housing(typed));
    const auto letters = [](std::string_view text) { return join(folded_words(text), ""); };
    if (!letters(row.code).ends_with(letters(typed))) {
        document.notes.push_back(fmt::format("'{}' names a family; {} stands for it here, the one kept as its representative.",
                                             trim(typed), row.code));
    }
    return row;
}

reference::MaterialRow material_of_screw(const Reference& reference, std::string_view class_name) {
    const bool stainless = class_name.size() > 1 && class_name[0] == 'A' && class_name[1] >= '0' && class_name[1] <= '9';
    return reference.material(reference.housing(stainless ? "stainless steel" : "steel"));
}

engine::ThreadGeometry geometry_of(const ThreadRow& thread) {
    return engine::parallel_geometry(thread.system, thread.code, thread.major, thread.pitch, thread.threads_per_inch);
}

MetricTolerances metric_tolerances_of(const Reference& reference, const ThreadRow& thread) {
    MetricTolerances out{engine::metric_tolerances(thread.major, *thread.pitch)};
    const auto take = [&](Length& slot, std::string_view kind) {
        if (const auto print = reference.tolerance(kind, thread.major, *thread.pitch)) {
            slot = print->size;
        } else {
            out.printed = false;
        }
    };
    take(out.tolerances.fundamental, "es g");
    take(out.tolerances.major_external, "Td 6");
    take(out.tolerances.minor_internal, "TD1 6");
    take(out.tolerances.pitch_external, "Td2 6");
    take(out.tolerances.pitch_internal, "TD2 6");
    return out;
}

engine::Tolerances unified_tolerances_of(const ThreadRow& thread, const engine::ThreadGeometry& geometry) {
    const Length engagement = thread.series == "8-UN" ? 9.0 * geometry.pitch : thread.major;
    return engine::unified_tolerances(thread.major, *thread.threads_per_inch, engagement);
}

PairChoice pair_of(const Reference& reference, const ThreadRow& thread, bool nominal) {
    const engine::ThreadGeometry g = geometry_of(thread);
    if (nominal) {
        return {engine::basic_pair(g), "basic sizes, as if both threads were made exactly to them"};
    }
    if (thread.system == ThreadSystem::pipe_parallel) {
        if (const auto t = reference.pipe_tolerance(*thread.threads_per_inch)) {
            return {{g.pitch, g.major - t->major_external, g.pitch_diameter - t->pitch_external,
                     g.pitch_diameter + t->pitch_internal, g.minor_internal + t->minor_internal, g.profile},
                    "limits of size, ISO 228-1 with class B outside (" + t->citation.keyed + ")"};
        }
        return {engine::basic_pair(g), "basic sizes: no tolerances of this pipe thread are kept here"};
    }
    const bool metric = thread.system == ThreadSystem::metric;
    const engine::Tolerances t = metric ? metric_tolerances_of(reference, thread).tolerances : unified_tolerances_of(thread, g);
    return {engine::worst_pair(g.pitch, engine::external_limits(g, t), engine::internal_limits(g, t)),
            metric ? "limits of size 6g and 6H (ISO 965-1)" : "limits of size 2A and 2B (ASME B1.1)"};
}

} // namespace clampbook::answer
