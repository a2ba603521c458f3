// SPDX-License-Identifier: MIT
// Adapters on torque wrenches, scatter by way of tightening, and what classes of tool may be off by: worked examples of aircraft
// and army manuals, and the tables that the curated database was keyed from.
#include "example_rows.hpp"

#include "clampbook/engine/scatter.hpp"
#include "clampbook/engine/wrench.hpp"
#include "clampbook/reference/reference.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace clampbook;
using namespace published;

namespace {

// What a source calls a way of tightening, and the curated row of it.
const std::map<std::string, std::string, std::less<>> k_ways{
    {"angle-controlled motorised or manual", "angle-controlled 1986"},
    {"hydraulic tensioning", "hydraulic tensioning 1986"},
    {"torque wrench, torque from estimated friction", "torque wrench 1986"},
    {"precision power screwdriver", "precision power screwdriver 1986"},
    {"torque measurement, cadmium plated", "torque, cadmium-plated"},
    {"preload indicating washers", "indicating washer"},
    {"ultrasonic devices", "ultrasonic"},
    {"bolt elongation", "elongation"},
    {"instrumented bolts", "instrumented bolts"},
    {"by feel", "handbook by feel"},
    {"turn-of-nut", "handbook turn of nut"},
    {"preload indicating washer", "handbook indicating washer"},
    {"computer controlled wrench, yield sensing", "handbook yield sensing"},
    {"bolt elongation, upper", "handbook elongation"},
    {"bolt elongation, lower", "handbook elongation"},
    {"strain gauges", "handbook strain gauges"},
    {"yield- or angle-controlled", "yield or angle"},
    {"hydraulic", "hydraulic"},
    {"torque wrench, torque by test on the joint", "torque wrench tested"},
    {"torque wrench, friction class B estimated", "torque wrench estimated"},
    {"impact wrench checked with torque wrench", "impact wrench checked"},
    {"impact wrench unchecked", "impact wrench unchecked"}};

// A cell of the curated table, found by its row's code.
double curated(const reference::Table& table, std::string_view code, std::string_view column) {
    const auto at = [&](std::string_view key) {
        for (std::size_t i = 0; i < table.columns.size(); ++i) {
            if (table.columns[i].key == key) {
                return i;
            }
        }
        FAIL("no column " << key);
        return std::size_t{0};
    };
    for (const auto& row : table.rows) {
        if (row[at("code")].text == code) {
            INFO(code << ": " << column);
            REQUIRE(row[at(column)].value);
            return *row[at(column)].value;
        }
    }
    FAIL("no row " << code);
    return 0;
}

} // namespace

TEST_CASE("adapters", "[published]") {
    Family family{"adapter", 12};
    Tally& tally = family.tally("setting_for, applied_by", "%", "the row's own (rounding of the print)");
    for (const Case& row : family.rows()) {
        INFO(row.where());
        const Inputs in{row};
        // A manual may write an adapter that points back as one of negative length.
        const double length = std::fabs(in.number("E_adapter"));
        const engine::Adapter adapter{in.number("L_wrench") * inch, length * inch, in.number("angle_deg") * degree};
        const bool applied = row.text("kind") == "adapter_applied";
        const Torque torque = in.number(applied ? "T_setting" : "T_fastener") * pound_force_foot;
        const Torque ours = applied ? engine::applied_by(torque, adapter) : engine::setting_for(torque, adapter);
        tally.compare(row, row.text("quantity"), ours.in(pound_force_foot), row.number("expected"), row.number("tolerance_rel"),
                      row.confidence());
    }
    family.finish();
}

TEST_CASE("scatter, tightening factors and tools", "[published]") {
    const reference::Reference reference;
    const reference::Table scatter = reference.table("scatter");
    const reference::Table tools = reference.table("tools");
    Family family{"scatter", 61};
    Tally& table = family.tally("curated scatter and tightening factors", "", "none");
    Tally& factor = family.tally("tightening_factor", "%", "the row's own (rounding of the print)");
    Tally& deviation = family.tally("curated deviations of tools", "", "none");
    Tally& range =
        family.tally("best_range", "%", "4 % (one range is printed after a rounding of its own); a known difference 200 %");
    Tally& nut = family.tally("curated nut factors", "", "none");
    for (const Case& row : family.rows()) {
        INFO(row.where());
        const Inputs in{row};
        const std::string& kind = row.text("kind");
        const std::string& quantity = row.text("quantity");
        const double expected = row.number("expected");
        const auto exactly = [&](Tally& tally, double ours, double printed) {
            tally.compare(row, quantity, ours, printed, 1e-12, row.confidence());
        };
        if (kind == "tightening_scatter" || kind == "nasa_preload_uncertainty" || kind == "mh_preload_accuracy") {
            const bool low = quantity.ends_with("_low") || in.text("method").ends_with("lower");
            exactly(table, curated(scatter, k_ways.at(in.text("method")), low ? "scatter_low" : "scatter_high"), expected / 100);
        } else if (kind == "alpha_A_table") {
            exactly(table, curated(scatter, k_ways.at(in.text("method")), quantity == "alpha_A_low" ? "alpha_low" : "alpha_high"),
                    expected);
        } else if (kind == "alpha_from_scatter") {
            const double s = in.number("scatter_percent") / 100;
            factor.compare(row, quantity, engine::tightening_factor(s), expected, row.number("tolerance_rel"), row.confidence());
            CHECK(engine::scatter_of(engine::tightening_factor(s)) == Approx(s).epsilon(1e-12));
        } else if (kind == "iso6789_deviation") {
            const reference::ToolRow tool = reference.tool(in.text("type") + " " + in.text("class"));
            const double ours = quantity.ends_with("le_10Nm") ? tool.deviation_small.value() : tool.deviation;
            exactly(deviation, ours, expected / 100);
        } else if (kind == "us_torque_tool_accuracy") {
            exactly(deviation, curated(tools, "torque wrench 0 to 1000 lbf·ft", "deviation"), expected / 100);
        } else if (kind == "us_effective_range") {
            const std::string& stated = in.text("stated_range"); // "0-200 lb-in"
            const double largest = std::stod(stated.substr(2));
            const engine::ToolRange best = engine::best_range(largest * newton_metre); // a ratio: any unit will do
            range.compare(row, "range", (quantity == "low" ? best.least : best.most).in(newton_metre), expected, 0.04,
                          row.confidence(), 2.0);
        } else {
            REQUIRE(kind == "nut_factor_table");
            const std::string& condition = in.text("condition");
            exactly(nut, reference.nut_factor(condition.starts_with("nonplated") ? "black finish" : condition).value.value(),
                    expected);
        }
    }
    family.finish();
}
