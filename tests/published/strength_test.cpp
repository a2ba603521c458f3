// SPDX-License-Identifier: MIT
// Strengths and loads of screws against ISO 898-1 and SAE J429.
#include "cases.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/engine/strength.hpp"
#include "clampbook/engine/thread_geometry.hpp"
#include "clampbook/reference/reference.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <utility>

using namespace clampbook;
using namespace published;

namespace {

constexpr double k_same = 1e-12;
constexpr double k_one_percent = 0.01 + 1e-9;

double rounded(double value, double step) { return std::floor(value / step + 0.5 + 1e-9) * step; }

double to_three_digits(double value) { return rounded(value, std::pow(10.0, std::floor(std::log10(value)) - 2)); }

Origin origin_of(const std::string& basis) {
    REQUIRE((basis == "seen" || basis == "formula"));
    return basis == "seen" ? Origin::seen : Origin::formula;
}

// The cell of a curated table in the row whose `code` is given.
double curated_cell(const reference::Table& table, std::string_view code, std::string_view key) {
    const auto column = [&](std::string_view name) {
        const auto found = std::ranges::find_if(table.columns, [&](const auto& c) { return c.key == name; });
        INFO("column " << name << " of " << table.topic);
        REQUIRE(found != table.columns.end());
        return static_cast<std::size_t>(found - table.columns.begin());
    };
    const std::size_t code_at = column("code");
    const std::size_t key_at = column(key);
    const auto row = std::ranges::find_if(table.rows, [&](const auto& cells) { return cells[code_at].text == code; });
    INFO("row " << code << ", column " << key);
    REQUIRE(row != table.rows.end());
    REQUIRE((*row)[key_at].value.has_value());
    return *(*row)[key_at].value;
}

} // namespace

TEST_CASE("proof and tensile loads of ISO 898-1", "[published]") {
    const reference::Reference reference;
    Family family{"iso898_1_proof_loads", 249};
    Tally& curated = family.tally("curated stress areas and loads", "%", "none");
    Tally& computed = family.tally("engine's stress area × curated stress", "%", "1 % of the load");
    Tally& digits = family.tally("printed stress area × stress, to three digits", "%", "none");
    Tally& areas = family.tally("engine's stress area", "mm²", "half a last digit");
    for (const Case& row : family.rows()) {
        INFO(row.where() << ": " << row.text("thread") << " " << row.text("class"));
        const auto thread = reference.thread(read_thread(row.text("thread")));
        const auto load = reference.load(thread.code, row.text("class"));
        REQUIRE(load.has_value());
        const Area printed_area = row.number("stress_area_mm2") * square_millimetre;
        const Area area = engine::metric_geometry(thread.major, row.number("pitch_mm") * millimetre).stress_area;
        CHECK(load->proof_load_published == (row.text("proof_basis") == "seen"));
        CHECK(load->tensile_load_published == (row.text("tensile_basis") == "seen"));
        curated.compare(row, "curated area", load->stress_area.in(square_millimetre), row.number("stress_area_mm2"), k_same,
                        row.confidence());
        areas.compare(row, "area", area.in(square_millimetre), row.number("stress_area_mm2"),
                      half_last_digit(row.text("stress_area_mm2"), true), row.confidence());

        const auto strengths = reference.property_class(reference.class_name(row.text("class")), thread);
        REQUIRE(strengths.proof_stress.has_value());
        const auto one = [&](const std::string& column, const std::string& basis, Stress stress, Force kept) {
            const double print = row.number(column);
            const Origin origin = origin_of(row.text(basis));
            curated.compare(row, "curated " + column, kept.in(newton), print, k_same, origin);
            computed.compare(row, "area x stress", engine::load_at(stress, area).in(newton), print, k_one_percent, origin);
            digits.compare(row, column, to_three_digits(engine::load_at(stress, printed_area).in(newton)), print, k_same, origin,
                           k_one_percent);
        };
        one("proof_load_N", "proof_basis", *strengths.proof_stress, load->proof_load);
        one("min_tensile_load_N", "tensile_basis", strengths.tensile_strength, load->tensile_load);
    }
    family.finish();
}

TEST_CASE("property classes of ISO 898-1", "[published]") {
    const reference::Reference reference;
    const reference::Table classes = reference.table("classes");
    Family family{"iso898_1_classes", 10};
    Tally& strength = family.tally("strengths at both ends of the size range", "%", "none");
    Tally& further = family.tally("nominal strengths, hardness, elongation", "%", "none");
    for (const Case& row : family.rows()) {
        INFO(row.where() << ": " << row.text("class") << " " << row.text("size_range"));
        const std::string& range = row.text("size_range");
        REQUIRE((range == "all d" || range == "d<=16" || range == "d>16"));
        const auto origin = [&](const std::string& column) {
            return row.text("memory_fields").find(column) == std::string::npos ? row.confidence() : Origin::memory;
        };
        for (const char* size : {range == "d>16" ? "M18" : "M1.6", range == "d<=16" ? "M16" : "M39"}) {
            const auto found = reference.property_class(row.text("class"), reference.thread(read_thread(size)));
            REQUIRE(found.proof_stress.has_value());
            CHECK(found.yield_kind == row.text("yield_kind"));
            strength.compare(row, "Rm_min_MPa", found.tensile_strength.in(megapascal), row.number("Rm_min_MPa"), k_same,
                             origin("Rm_min_MPa"));
            strength.compare(row, "yield_min_MPa", found.yield_strength.in(megapascal), row.number("yield_min_MPa"), k_same,
                             origin("yield_min_MPa"));
            strength.compare(row, "Sp_MPa", found.proof_stress->in(megapascal), row.number("Sp_MPa"), k_same, origin("Sp_MPa"));
        }
        const std::string code = row.text("class") + (row.text("class") == "8.8" ? " " + range : ""); // the one class in two rows
        for (const auto& [column, key] :
             {std::pair{"Rm_nom_MPa", "tensile_strength_nominal"}, std::pair{"yield_nom_MPa", "yield_strength_nominal"},
              std::pair{"HV_min", "hardness_min"}, std::pair{"HV_max", "hardness_max"},
              std::pair{"A_min_percent", "elongation"}}) {
            if (row.has(column)) {
                const double percent = std::string_view{column} == "A_min_percent" ? 100.0 : 1.0;
                further.compare(row, column, percent * curated_cell(classes, code, key), row.number(column), k_same,
                                origin(column));
            }
        }
    }
    family.finish();
}

TEST_CASE("grades and loads of SAE J429", "[published]") {
    const reference::Reference reference;
    const reference::Table classes = reference.table("classes");
    Family family{"sae_j429", 103};
    Tally& curated = family.tally("curated stresses, areas and loads", "%", "none");
    Tally& computed =
        family.tally("engine's stress area × curated stress", "%", "1 % of the load, or half a last digit where that is more");
    Tally& steps = family.tally("printed stress area × stress, to 50 lbf (from 10000 lbf: 100)", "%", "none");
    Tally& stresses = family.tally("the same stresses in MPa", "MPa", "half a last digit");
    Tally& loads = family.tally("the same loads in N", "N", "half a last digit");
    for (const Case& row : family.rows()) {
        INFO(row.where() << ": grade " << row.text("grade") << ", " << row.text("size") << " " << row.text("series"));
        const std::string grade = reference.class_name("grade " + row.text("grade"));
        const auto stress = [&](const std::string& name, Stress ours) {
            curated.compare(row, name, ours.in(pound_per_square_inch), row.number(name + "_psi"), k_same, row.confidence());
            stresses.compare(row, name + " in MPa", ours.in(megapascal), row.number(name + "_MPa"),
                             half_last_digit(row.text(name + "_MPa")), row.confidence());
        };
        if (row.text("record") == "grade") {
            const std::string& sizes = row.text("size");
            const std::size_t dots = sizes.find("..");
            REQUIRE(dots != std::string::npos);
            for (const std::string& size : {sizes.substr(0, dots), sizes.substr(dots + 2)}) {
                const auto found = reference.property_class(grade, reference.thread(read_thread(size + " UNC")));
                REQUIRE(found.proof_stress.has_value());
                stress("proof", *found.proof_stress);
                stress("yield", found.yield_strength);
                stress("tensile", found.tensile_strength);
                // `HRB 70-100`
                const std::string& hardness = row.text("hardness");
                const std::size_t dash = hardness.find('-');
                REQUIRE(dash != std::string::npos);
                CHECK(print_shortest(curated_cell(classes, found.code, "hardness_min")) == hardness.substr(4, dash - 4));
                CHECK(print_shortest(curated_cell(classes, found.code, "hardness_max")) == hardness.substr(dash + 1));
            }
            continue;
        }
        REQUIRE(row.text("record") == "load");
        const auto thread = reference.thread(read_thread(row.text("size") + "-" + row.text("tpi") + " " + row.text("series")));
        const auto found = reference.property_class(grade, thread);
        const auto load = reference.load(thread.code, grade);
        REQUIRE(found.proof_stress.has_value());
        REQUIRE(load.has_value());
        stress("proof", *found.proof_stress);
        stress("tensile", found.tensile_strength);
        const Area printed_area = row.number("stress_area_in2") * square_inch;
        const Area area = engine::unified_geometry(thread.major, row.number("tpi")).stress_area;
        curated.compare(row, "area", load->stress_area.in(square_inch), row.number("stress_area_in2"), k_same, row.confidence());
        // The source cell says which of the two loads was read; the other one was computed.
        const auto origin = [&](const std::string& name) {
            return row.confidence() == Origin::seen || row.text("source").starts_with(name + ": SAE J429") ? Origin::seen
                                                                                                           : Origin::formula;
        };
        const auto one = [&](const std::string& name, Stress at, Force kept, bool published) {
            const std::string column = name + "_load_lbf";
            const double print = row.number(column);
            CHECK(published == (origin(name) == Origin::seen));
            curated.compare(row, "curated " + column, kept.in(pound_force), print, k_same, origin(name));
            computed.compare(row, "area x stress", engine::load_at(at, area).in(pound_force), print,
                             std::max(k_one_percent, (print < 10000 ? 25.0 : 50.0) / print), origin(name));
            steps.compare(row, column, rounded(engine::load_at(at, printed_area).in(pound_force), print < 10000 ? 50.0 : 100.0),
                          print, k_same, origin(name), k_one_percent);
            loads.compare(row, name + " in N", kept.in(newton), row.number(name + "_load_N"),
                          half_last_digit(row.text(name + "_load_N")), Origin::formula);
        };
        one("proof", *found.proof_stress, load->proof_load, load->proof_load_published);
        one("tensile", found.tensile_strength, load->tensile_load, load->tensile_load_published);
    }
    family.finish();
}
