// SPDX-License-Identifier: MIT
// Stripping: a handbook's metric table of stress and shear areas, the inch formulas of FED-STD-H28, Alexander's factors, the
// engagement of VDI 2230-1, a NASA shortcut; and guide values of engagement, which no formula stands behind.
#include "example_rows.hpp"

#include "clampbook/engine/strip.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <iostream>

using namespace clampbook;
using namespace published;

namespace {

engine::ThreadPair pair_of(const Inputs& in, std::string_view kind) {
    if (kind.starts_with("h28")) {
        const auto inches = [&](std::string_view name) { return in.number(name) * inch; };
        const bool short_row = kind == "h28_min_engagement";
        return {1.0 / in.number("n_tpi") * inch, short_row ? 10.0 * inch : inches("Ds_min_in"), inches("Es_min_in"),
                short_row ? 0.0 * inch : inches("En_max_in"), inches("Kn_max_in")};
    }
    const auto mm = [&](std::string_view name) { return in.number(name) * millimetre; };
    if (kind == "shear_area_external") {
        return {mm("P_mm"), mm("d_mm"), mm("d2min_6g_mm"), 0.0 * millimetre, mm("D1max_6H_mm")};
    }
    if (kind == "shear_area_internal") {
        return {mm("P_mm"), mm("dmin_6g_mm"), mm("dmin_6g_mm"), mm("D2max_6H_mm"), 0.5 * mm("dmin_6g_mm")};
    }
    return {mm("P_mm"), mm("dmin_mm"), mm("d2min_mm"), mm("D2max_mm"), mm("D1max_mm")};
}

// Shear strengths by their ratios to the tensile strengths.
engine::ShearStrengths strengths_of(const Inputs& in) {
    return {in.number("tau_ratio_bolt") * in.number("Rm_bolt_MPa") * megapascal,
            in.number("tau_ratio_nut") * in.number("Rm_nut_MPa") * megapascal};
}

// What the guide's materials shear at, over their tensile strength (VDI 2230-1, Table A9 and Table 7; from memory).
double guide_ratio(std::string_view material) {
    return material.starts_with("GJL") ? 1.2 : material.starts_with("Al") ? 0.6 : 0.6;
}

} // namespace

TEST_CASE("stress areas, shear areas and stripping factors", "[published]") {
    Family family{"strip", 73};
    const std::string own = "the row's own (rounding of the print)";
    Tally& stress = family.tally("stress area", "%", own);
    Tally& metric = family.tally("shear_areas, metric", "%", own);
    Tally& inches = family.tally("shear_areas and equal_strength_engagement, inch", "%", own);
    Tally& factors = family.tally("nut_dilation, external_bending, internal_bending", "%", own);
    Tally& depth = family.tally("engagement_for", "%", own);
    Tally& shortcut = family.tally("pull_out_shortcut", "%", own);
    Tally& guide = family.tally("engagement_for an M12, against guide values", "%", "30 % (rounded guide values, no formula)");
    for (const Case& row : family.rows()) {
        INFO(row.where());
        const Inputs in{row};
        const std::string& kind = row.text("kind");
        const double expected = row.number("expected");
        const double allowed = row.number("tolerance_rel");
        const auto compare = [&](Tally& tally, double ours) {
            tally.compare(row, row.text("quantity"), ours, expected, allowed, row.confidence());
        };
        if (kind == "tensile_stress_area") {
            compare(stress, engine::metric_geometry(in.number("d_mm") * millimetre, in.number("P_mm") * millimetre)
                                .stress_area.in(square_millimetre));
        } else if (kind == "shear_area_external" || kind == "shear_area_internal") {
            const auto areas = engine::shear_areas(pair_of(in, kind), in.number("Le_mm") * millimetre);
            compare(metric, (kind == "shear_area_external" ? areas.external : areas.internal).in(square_millimetre));
        } else if (kind == "h28_shear_area_external" || kind == "h28_shear_area_internal") {
            const auto areas = engine::shear_areas(pair_of(in, kind), in.number("Le_in") * inch);
            compare(inches, (kind == "h28_shear_area_external" ? areas.external : areas.internal).in(square_inch));
        } else if (kind == "h28_min_engagement") {
            compare(inches, engine::equal_strength_engagement(in.number("At_in2") * square_inch, pair_of(in, kind)).in(inch));
        } else if (kind == "alexander_C1") {
            compare(factors, engine::nut_dilation(in.number("s_over_D")));
        } else if (kind == "alexander_C2") {
            compare(factors, engine::external_bending(in.number("Rs")));
        } else if (kind == "alexander_C3") {
            compare(factors, engine::internal_bending(in.number("Rs")));
        } else if (kind == "vdi_min_engagement") {
            const auto thread = engine::metric_geometry(in.number("d_mm") * millimetre, in.number("P_mm") * millimetre);
            const Force breaks = in.number("Rm_bolt_MPa") * megapascal * thread.stress_area;
            compare(depth, engine::engagement_for(breaks, pair_of(in, kind), strengths_of(in), in.number("C1")).in(millimetre));
        } else if (kind == "rp1228_pullout") {
            compare(shortcut,
                    engine::pull_out_shortcut(in.number("d_mean_in") * inch, in.number("F_shear_psi") * pound_per_square_inch,
                                              in.number("L_in") * inch)
                        .in(pound_force));
        } else {
            REQUIRE(kind == "guide_engagement");
        }
    }
    // The guide: one thread stands for all, with the least strengths of the class; rows that name a range of classes or of
    // strengths are counted but say too little to compute with.
    std::vector<double> ratios;
    std::size_t vague = 0;
    for (const Case& row : family.rows()) {
        if (row.text("kind") != "guide_engagement") {
            continue;
        }
        const Inputs in{row};
        if (row.text("inputs").find("Rm_min_MPa") == std::string::npos) {
            ++vague;
            continue;
        }
        const std::string& cls = in.text("bolt_class");
        const double rm = cls == "8.8" ? 800 : cls == "10.9" ? 1040 : 1220;
        const double shear = cls == "8.8" ? 0.65 : cls == "10.9" ? 0.62 : 0.60;
        const Length pitch = (in.text("series") == "fine" ? 1.25 : 1.75) * millimetre;
        const auto thread = engine::metric_geometry(12.0 * millimetre, pitch);
        const auto tolerances = engine::metric_tolerances(12.0 * millimetre, pitch);
        const auto pair =
            engine::worst_pair(pitch, engine::external_limits(thread, tolerances), engine::internal_limits(thread, tolerances));
        const Stress nut = guide_ratio(in.text("material")) * in.number("Rm_min_MPa") * megapascal;
        const double ours = engine::engagement_for(rm * megapascal * thread.stress_area, pair, {shear * rm * megapascal, nut}) /
                            (12.0 * millimetre);
        guide.compare(row, "Le_over_d", ours, row.number("expected"), 0.30, row.confidence());
        ratios.push_back(ours / row.number("expected"));
    }
    std::ranges::sort(ratios);
    std::cout << "    guide: ours over theirs, median " << ratios[ratios.size() / 2] << ", " << ratios.front() << " to "
              << ratios.back() << "; " << vague << " rows too vague to compute\n";
    CHECK(ratios.size() == 12);
    CHECK(vague == 4);
    family.finish();
}
