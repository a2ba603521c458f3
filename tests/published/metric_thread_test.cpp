// SPDX-License-Identifier: MIT
// Metric threads, their tolerances and their limits of size against ISO 261, ISO 724, ISO 965-1 and ISO 965-2.
#include "cases.hpp"

#include "clampbook/base/text.hpp"
#include "clampbook/engine/thread_geometry.hpp"
#include "clampbook/reference/reference.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

using namespace clampbook;
using namespace published;

namespace {

constexpr double k_same_mm = 1e-9;

// A figure was read where its name stands in the column `seen_fields`; else it was computed.
Origin origin_of(const Case& row, const std::string& name) {
    const auto words = split(row.text("seen_fields"), ' ');
    return std::ranges::find(words, name) == words.end() ? Origin::formula : Origin::seen;
}

// The cell `selection` of a thread in the curated table.
std::string selection_of(const reference::Table& threads, std::string_view code) {
    const auto column = [&](std::string_view name) {
        const auto found = std::ranges::find_if(threads.columns, [&](const auto& c) { return c.key == name; });
        REQUIRE(found != threads.columns.end());
        return static_cast<std::size_t>(found - threads.columns.begin());
    };
    const std::size_t code_at = column("code");
    const auto row = std::ranges::find_if(threads.rows, [&](const auto& cells) { return cells[code_at].text == code; });
    REQUIRE(row != threads.rows.end());
    return (*row)[column("selection")].text;
}

// Steps of the R40 series between two of its numbers.
double r40_steps(double a, double b) { return std::fabs(std::log10(a / b)) * 40; }

// Grade 6 and position g: printed where the curated database has it, by formula elsewhere.
engine::Tolerances tolerances_of(const reference::Reference& reference, Length major, Length pitch) {
    const engine::Tolerances formula = engine::metric_tolerances(major, pitch);
    const auto printed = [&](std::string_view kind, Length by_formula) {
        const auto row = reference.tolerance(kind, major, pitch);
        return row ? row->size : by_formula;
    };
    return {printed("es g", formula.fundamental), printed("Td 6", formula.major_external),
            printed("TD1 6", formula.minor_internal), printed("Td2 6", formula.pitch_external),
            printed("TD2 6", formula.pitch_internal)};
}

} // namespace

TEST_CASE("metric threads of ISO 261 and ISO 724", "[published]") {
    const reference::Reference reference;
    Family family{"iso261_724_threads", 155};
    const reference::Table threads = reference.table("threads");
    Tally& listed = family.tally("diameter and pitch of the curated thread", "mm", "none");
    Tally& diameters = family.tally("engine's d2, D1, d3", "mm", "half a last digit");
    Tally& areas = family.tally("engine's stress area", "mm²", "half a last digit (three digits from 1000 mm²)");
    Tally& curated = family.tally("curated d2, D1, d3, where they are kept", "mm", "none");
    Tally& curated_areas = family.tally("curated stress area, where it is kept", "mm²", "none");
    for (const Case& row : family.rows()) {
        INFO(row.where() << ": " << row.text("thread"));
        const auto found = reference.find_thread(read_thread(row.text("thread")));
        REQUIRE(found.has_value());
        REQUIRE(found->pitch.has_value());
        CHECK(found->code == row.text("thread"));
        CHECK(found->series == row.text("series"));
        CHECK(selection_of(threads, found->code) == (row.text("iso262") == "yes" ? "ISO 262" : ""));
        REQUIRE((row.text("iso262") == "yes" || row.text("iso262") == "no"));
        listed.compare(row, "d", found->major.in(millimetre), row.number("d_mm"), k_same_mm, Origin::seen);
        listed.compare(row, "pitch", found->pitch->in(millimetre), row.number("pitch_mm"), k_same_mm, Origin::seen);
        const auto g = engine::metric_geometry(row.number("d_mm") * millimetre, row.number("pitch_mm") * millimetre);
        const auto diameter = [&](const std::string& name, const std::string& column, Length ours, std::optional<Length> kept) {
            if (row.has(column)) {
                const Origin origin = origin_of(row, name);
                diameters.compare(row, name, ours.in(millimetre), row.number(column), half_last_digit(row.text(column)), origin);
                if (kept) {
                    curated.compare(row, "curated " + name, kept->in(millimetre), row.number(column), k_same_mm, origin);
                }
            }
        };
        diameter("d2", "d2_D2_mm", g.pitch_diameter, found->pitch_diameter);
        diameter("D1", "D1_mm", g.minor_internal, found->minor_internal);
        diameter("d3", "d3_mm", g.minor_external, found->minor_external);
        if (row.has("stress_area_mm2")) {
            const std::string& print = row.text("stress_area_mm2");
            areas.compare(row, "As", g.stress_area.in(square_millimetre), row.number("stress_area_mm2"),
                          half_last_digit(print, true), origin_of(row, "As"));
            if (found->stress_area) {
                curated_areas.compare(row, "curated As", found->stress_area->in(square_millimetre), row.number("stress_area_mm2"),
                                      k_same_mm, origin_of(row, "As"));
            }
        }
    }
    family.finish();
}

TEST_CASE("thread tolerances of ISO 965-1", "[published]") {
    const reference::Reference reference;
    Family family{"iso965_tolerances", 134};
    Tally& curated = family.tally("curated tolerances", "µm", "none");
    Tally& fundamental = family.tally("es by formula", "µm", "none; a known difference 3 µm");
    Tally& grades = family.tally("Td, TD1, Td2, TD2 by formula", "µm", "none; a known difference one step of R40");
    for (const Case& row : family.rows()) {
        INFO(row.where());
        const std::string& kind = row.text("tolerance");
        // A tolerance that does not hang on the diameter is asked for at one that every pitch is allowed for.
        const Length major = (row.has("up_to_mm") ? row.number("up_to_mm") : 60.0) * millimetre;
        const Length pitch = row.number("pitch_mm") * millimetre;
        const double print = row.number("value_um");
        const auto kept = reference.tolerance(kind, major, pitch);
        REQUIRE(kept.has_value());
        curated.compare(row, "curated", kept->size.in(micrometre), print, 1e-6, row.confidence());
        if (row.has("over_mm")) {
            CHECK(std::fabs(engine::metric_size_range(major).over.in(millimetre) - row.number("over_mm")) <= k_same_mm);
            const auto least = reference.tolerance(kind, (row.number("over_mm") + 0.001) * millimetre, pitch);
            REQUIRE(least.has_value());
            CHECK(least->size == kept->size);
        }
        const engine::Tolerances formula = engine::metric_tolerances(major, pitch);
        if (kind == "es g") {
            fundamental.compare(row, "value_um", formula.fundamental.in(micrometre), print, 1e-6, row.confidence(), 3 + 1e-6);
            continue;
        }
        const std::array kinds{std::pair{"Td 6", formula.major_external}, std::pair{"TD1 6", formula.minor_internal},
                               std::pair{"Td2 6", formula.pitch_external}, std::pair{"TD2 6", formula.pitch_internal}};
        const auto* ours = std::ranges::find_if(kinds, [&](const auto& entry) { return entry.first == kind; });
        REQUIRE(ours != kinds.end());
        const double by_formula = ours->second.in(micrometre);
        // The series is rounded to whole steps: neighbours lie up to 1.2 ideal steps apart, the next but one 1.8 or more.
        CHECK(r40_steps(by_formula, print) < 1.5);
        grades.compare(row, "value_um", by_formula, print, 1e-6, row.confidence(), 0.07 * print);
    }
    family.finish();
}

TEST_CASE("limits of size of ISO 965-2", "[published]") {
    const reference::Reference reference;
    Family family{"iso965_limits", 120};
    Tally& limits = family.tally("engine's limits, 6g and 6H", "mm", "half a last digit; a known difference 0.0015 mm");
    for (const Case& row : family.rows()) {
        INFO(row.where() << ": " << row.text("thread") << " " << row.text("class"));
        const auto thread = reference.thread(read_thread(row.text("thread")));
        REQUIRE(thread.pitch.has_value());
        REQUIRE(std::fabs(thread.pitch->in(millimetre)-row.number("pitch_mm")) <= k_same_mm);
        const bool external = row.text("part") == "external";
        REQUIRE((external ? row.text("class") == "6g" : row.text("part") == "internal" && row.text("class") == "6H"));
        const auto geometry = engine::metric_geometry(thread.major, *thread.pitch);
        const auto tolerances = tolerances_of(reference, thread.major, *thread.pitch);
        const auto l = external ? engine::external_limits(geometry, tolerances) : engine::internal_limits(geometry, tolerances);
        CHECK(row.has("major_max") == external); // the nut's largest major diameter is not limited
        for (const auto& [column, ours] :
             {std::pair{"major_max", l.major_max}, std::pair{"major_min", l.major_min}, std::pair{"pitch_max", l.pitch_max},
              std::pair{"pitch_min", l.pitch_min}, std::pair{"minor_max", l.minor_max}, std::pair{"minor_min", l.minor_min}}) {
            if (external || std::string_view{column} != "major_max") {
                limits.compare(row, column, ours.in(millimetre), row.number(column), half_last_digit(row.text(column)),
                               origin_of(row, column), 0.0015);
            }
        }
    }
    family.finish();
}
