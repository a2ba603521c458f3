// SPDX-License-Identifier: MIT
// The friction form against tables of assembly preloads and tightening torques: coarse and fine threads, stainless screws,
// and tables of the older rule of torsion.
#include "cases.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/engine/friction.hpp"
#include "clampbook/model/thread.hpp"
#include "clampbook/units/reading.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace clampbook;
using namespace published;

namespace {

void compare_table(const std::string& name, std::size_t rows, engine::Torsion torsion) {
    Family family{name, rows};
    Tally& torques = family.tally("assembly_preload and friction_torque, torques", "%", "the row's own (rounding of the print)");
    Tally* preloads = torsion == engine::Torsion::elastic
                          ? nullptr
                          : &family.tally("assembly_preload, preloads", "%", "the row's own (rounding of the print)");
    for (const Case& row : family.rows()) {
        INFO(row.where() << ": " << row.text("thread") << " " << row.text("property_class"));
        const ThreadName name_of_thread = read_thread(row.text("thread"));
        const Length pitch = row.number("pitch_mm") * millimetre;
        CHECK((!name_of_thread.pitch || *name_of_thread.pitch == pitch));
        const Length major = read_decimal(name_of_thread.size.substr(1))->value * millimetre;
        const engine::ThreadGeometry thread = engine::metric_geometry(major, pitch);
        const Force preload =
            engine::assembly_preload(read_quantity(row.text("yield_strength"), Dimension::stress).as<Dimension::stress>(),
                                     row.number("utilisation"), thread, row.number("thread_friction"), torsion);
        const double allowed = row.number("tolerance_rel");
        if (row.text("wanted") == "preload") {
            const auto printed = read_quantity(row.text("expected"), Dimension::force).as<Dimension::force>();
            REQUIRE(preloads != nullptr);
            preloads->compare(row, "preload", preload.in(newton), printed.in(newton), allowed, row.confidence());
            continue;
        }
        REQUIRE(row.text("wanted") == "torque");
        const engine::FrictionJoint joint{thread, row.number("thread_friction"), row.number("head_friction"),
                                          row.number("bearing_outer_mm") * millimetre, row.number("hole_mm") * millimetre};
        const auto printed = read_quantity(row.text("expected"), Dimension::torque).as<Dimension::torque>();
        torques.compare(row, "torque", engine::friction_torque(preload, joint).total.in(newton_metre), printed.in(newton_metre),
                        allowed, row.confidence());
    }
    family.finish();
}

} // namespace

TEST_CASE("preloads and torques of coarse threads", "[published]") {
    compare_table("friction_coarse", 502, engine::Torsion::plastic);
}

TEST_CASE("preloads and torques of fine threads", "[published]") {
    compare_table("friction_fine", 108, engine::Torsion::plastic);
}

TEST_CASE("preloads and torques of stainless screws", "[published]") {
    compare_table("friction_stainless", 131, engine::Torsion::plastic);
}

TEST_CASE("torques by the older rule of torsion", "[published]") {
    compare_table("friction_elastic", 82, engine::Torsion::elastic);
}
