// SPDX-License-Identifier: MIT
// The nut-factor form T = K F d against worked examples of handbooks and a table of a navy training course.
#include "cases.hpp"

#include "clampbook/engine/strength.hpp"
#include "clampbook/units/reading.hpp"

#include <catch2/catch.hpp>

using namespace clampbook;
using namespace published;

namespace {

template <Dimension D>
Quantity<D> quantity(const Case& row, std::string_view column) {
    return read_quantity(row.text(column), D).as<D>();
}

} // namespace

TEST_CASE("nut-factor examples", "[published]") {
    Family family{"nut_factor", 26};
    Tally& examples = family.tally("torque_for, worked examples", "%", "0.15 to 0.2 % (rounding of the print)");
    Tally& bounds = family.tally("preload_from with the bounds of its scatter", "%", "0.05 %");
    Tally& table =
        family.tally("torque_for, table of approximate torques", "%", "8 % (the table is rounded, its K is 0.152 to 0.170)");
    Tally& back = family.tally("the other way round", "%", "as above");
    for (const Case& row : family.rows()) {
        INFO(row.where());
        const double k = row.number("nut_factor");
        const double bound = row.number("bound");
        const double allowed = row.number("tolerance_rel");
        const Length diameter = quantity<Dimension::length>(row, "diameter");
        if (row.text("wanted") == "torque") {
            const Force force = row.has("force") ? quantity<Dimension::force>(row, "force")
                                                 : engine::load_at(quantity<Dimension::stress>(row, "stress"),
                                                                   quantity<Dimension::area>(row, "stress_area"));
            const Torque printed = quantity<Dimension::torque>(row, "expected");
            REQUIRE((row.text("kind") == "torque_nut_factor" || row.text("kind") == "navy_studbolt_torque"));
            CHECK(bound == 1.0);
            (row.text("kind") == "torque_nut_factor" ? examples : table)
                .compare(row, "torque", engine::torque_for(force, k, diameter).in(newton_metre), printed.in(newton_metre),
                         allowed, row.confidence());
            back.compare(row, "preload", engine::preload_from(printed, k, diameter).in(newton), force.in(newton), allowed,
                         row.confidence());
            continue;
        }
        REQUIRE(row.text("wanted") == "force");
        const Torque torque = quantity<Dimension::torque>(row, "torque");
        const Force printed = quantity<Dimension::force>(row, "expected");
        bounds.compare(row, "preload", (bound * engine::preload_from(torque, k, diameter)).in(newton), printed.in(newton),
                       allowed, row.confidence());
        back.compare(row, "torque", engine::torque_for(printed / bound, k, diameter).in(newton_metre), torque.in(newton_metre),
                     allowed, row.confidence());
    }
    family.finish();
}
