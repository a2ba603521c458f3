// SPDX-License-Identifier: MIT
// Worked examples of textbooks and government documents: stiffness of bolt and members, joint diagram, preload bounds, turn,
// heat, embedding.
#include "example_rows.hpp"

#include "clampbook/engine/elastic.hpp"
#include "clampbook/engine/friction.hpp"
#include "clampbook/engine/scatter.hpp"
#include "clampbook/engine/strength.hpp"

#include <catch2/catch.hpp>

#include <functional>

using namespace clampbook;
using namespace published;

namespace {

constexpr double k_stiff = 1e6; // MN/m and Mlbf/in are a million of N/m and lbf/in

Force pounds(double n) { return n * pound_force; }
Force kips(double n) { return n * 1000 * pound_force; }
Area square_inches(double n) { return n * square_inch; }

// Mlbf/in, MN/m: any stiffness is the inverse of a compliance in its own units, so that a ratio of two needs none.
double stiffness_si(engine::Compliance c) { return 1 / c.millimetre_per_newton / 1000; } // [MN/m] = N/µm = kN/mm
double stiffness_inch(engine::Compliance c) {
    return 1 / (c.millimetre_per_newton * constants::k_lbf_N / constants::k_inch_mm) / k_stiff; // [Mlbf/in]
}
Stress mpsi(double n) { return n * k_stiff * pound_per_square_inch; }
Stress gpa(double n) { return n * 1000 * megapascal; }

engine::Springs springs_of(const Inputs& in) { return {{in.number("delta_S_mm_per_N")}, {in.number("delta_P_mm_per_N")}}; }

// A screw's share of a load by two stiffnesses in one unit.
double share_of(double bolt, double members) { return engine::Springs{{1 / bolt}, {1 / members}}.load_share(); }

engine::TighteningSpread spread_5020(const Inputs& in, bool critical) {
    return {pounds(in.number("P_nom")), in.number("Gamma"), in.number("c_max"), in.number("c_min"),
            critical ? 1 : static_cast<int>(in.number("n_f"))};
}

double nasa_5020(const Inputs& in, const std::string& quantity) {
    const auto initial = engine::initial_bounds(spread_5020(in, quantity != "P_pi_min_slip_noncritical"));
    const auto after = engine::service_bounds(
        initial,
        {pounds(in.number("dPT_max")), pounds(in.number("dPT_min")) + pounds(in.number("P_creep")), in.number("relax_fraction")});
    const Force found = quantity == "P_pi_max"  ? initial.most
                        : quantity == "P_p_max" ? after.most
                        : quantity == "P_p_min" ? after.least
                                                : initial.least;
    return found.in(pound_force);
}

// Shigley Eq. 8-26 is the friction form with the mean of nominal and minor diameter, and a collar of 1.25 d.
double shigley_torque(const Inputs& in) {
    engine::ThreadGeometry thread = engine::unified_geometry(in.number("d_in") * inch, in.number("n_tpi"));
    thread.pitch_diameter = in.number("d_mean_in") * inch;
    const Length collar = 1.25 * in.number("d_in") * inch;
    return engine::friction_torque(pounds(in.number("F_lbf")),
                                   {thread, in.number("f"), in.number("fc"), 1.2 * collar, 0.8 * collar})
        .total.in(pound_force_inch);
}

double collar_torque(const Inputs& in) {
    const Length collar = in.number("dc_in") * inch;
    const auto thread = engine::unified_geometry(1.0 * inch, 8);
    return engine::friction_torque(pounds(in.number("F_lbf")), {thread, 0.1, in.number("fc"), 1.2 * collar, 0.8 * collar})
        .head.in(pound_force_inch);
}

bool has(const Case& row, std::string_view name) { return row.text("inputs").find(name) != std::string::npos; }

// Kind by kind, in the unit of the row's figure.
const std::map<std::string, std::function<double(const Case&, const Inputs&)>, std::less<>> k_kinds{
    {"preload_fraction_proof",
     [](const Case& row, const Inputs& in) {
         return has(row, "At_mm2") ? (in.number("fraction") *
                                      engine::load_at(in.number("Sp_MPa") * megapascal, in.number("At_mm2") * square_millimetre))
                                         .in(kilonewton)
                                   : (in.number("fraction") * engine::load_at(in.number("Sp_kpsi") * 1000 * pound_per_square_inch,
                                                                              square_inches(in.number("At_in2"))))
                                             .in(pound_force) /
                                         1000;
     }},
    {"bolt_stress",
     [](const Case&, const Inputs& in) {
         return (kips(in.number("F_kip")) / square_inches(in.number("At_in2"))).in(pound_per_square_inch) / 1000;
     }},
    {"bolt_stress_loaded",
     [](const Case&, const Inputs& in) {
         const auto loaded = engine::under_load(kips(in.number("Fi_kip")), in.number("C"), kips(in.number("P_kip")));
         return (loaded.screw / square_inches(in.number("At_in2"))).in(pound_per_square_inch) / 1000;
     }},
    {"load_factor",
     [](const Case& row, const Inputs& in) {
         if (has(row, "At_mm2")) {
             const Force proof = engine::load_at(in.number("Sp_MPa") * megapascal, in.number("At_mm2") * square_millimetre);
             return engine::load_factor(proof, in.number("Fi_kN") * kilonewton, in.number("C"), in.number("P_kN") * kilonewton);
         }
         const Force proof =
             engine::load_at(in.number("Sp_kpsi") * 1000 * pound_per_square_inch, square_inches(in.number("At_in2")));
         return engine::load_factor(proof, kips(in.number("Fi_kip")), in.number("C"), kips(in.number("P_kip")));
     }},
    {"separation_factor",
     [](const Case&, const Inputs& in) {
         return engine::separation_factor(kips(in.number("Fi_kip")), in.number("C"), kips(in.number("P_kip")));
     }},
    {"bolt_stiffness",
     [](const Case& row, const Inputs& in) {
         if (has(row, "Ad_mm2")) {
             return stiffness_si(engine::bolt_in_grip({in.number("Ad_mm2") * square_millimetre, in.number("ld_mm") * millimetre,
                                                       in.number("At_mm2") * square_millimetre, in.number("lt_mm") * millimetre},
                                                      gpa(in.number("E_GPa"))));
         }
         return stiffness_inch(engine::bolt_in_grip({square_inches(in.number("Ad_in2")), in.number("ld_in") * inch,
                                                     square_inches(in.number("At_in2")), in.number("lt_in") * inch},
                                                    mpsi(in.number("E_Mpsi"))));
     }},
    {"frustum_stiffness_30deg",
     [](const Case& row, const Inputs& in) {
         CHECK(in.number("half_angle_deg") == 30);
         const bool si = row.text("quantity") == "k_MN_per_m";
         const auto length = [&](const char* name) { return si ? in.number(name) * millimetre : in.number(name) * inch; };
         const auto found = engine::cone(si ? gpa(in.number("E")) : mpsi(in.number("E")), length("d"), length("D"), length("t"));
         return si ? stiffness_si(found) : stiffness_inch(found);
     }},
    {"series_stiffness",
     [](const Case&, const Inputs& in) {
         engine::Compliance sum;
         for (const double k : in.numbers("k")) {
             sum = sum + engine::Compliance{1 / k};
         }
         return 1 / sum.millimetre_per_newton;
     }},
    {"member_stiffness_wileman",
     [](const Case& row, const Inputs& in) {
         const bool si = row.text("quantity") == "km_MN_per_m";
         const auto length = [&](const char* name) { return si ? in.number(name) * millimetre : in.number(name) * inch; };
         const auto found = engine::clamped_by_fit(si ? gpa(in.number("E")) : mpsi(in.number("E")), length("d"), length("l"),
                                                   in.number("A"), in.number("B"));
         return si ? stiffness_si(found) : stiffness_inch(found);
     }},
    {"joint_constant", [](const Case&, const Inputs& in) { return share_of(in.number("kb"), in.number("km")); }},
    {"joint_diagram_bolt_force",
     [](const Case&, const Inputs& in) {
         return engine::under_load(in.number("Fi_N") * newton, in.number("C"), in.number("P_N") * newton).screw.in(newton);
     }},
    {"joint_diagram_residual_clamp",
     [](const Case&, const Inputs& in) {
         return engine::under_load(in.number("Fi_N") * newton, in.number("C"), in.number("P_N") * newton).clamping.in(newton);
     }},
    {"joint_diagram_external_load",
     [](const Case&, const Inputs& in) {
         return engine::load_leaving(pounds(in.number("Fi_lbf")), share_of(in.number("kb_over_km"), 1),
                                     pounds(in.number("residual_clamp_lbf")))
             .in(pound_force);
     }},
    {"bolt_stress_amplitude",
     [](const Case&, const Inputs& in) {
         return engine::stress_amplitude(in.number("C"), in.number("P_kN") * kilonewton, in.number("At_mm2") * square_millimetre)
             .in(megapascal);
     }},
    {"scatter_statistics",
     [](const Case&, const Inputs& in) {
         std::vector<double> newtons;
         for (const double kn : in.numbers("F_kN")) {
             newtons.push_back(kn * 1000);
         }
         return engine::Spread{newtons}.deviation().in(kilonewton);
     }},
    {"min_preload_alphaA",
     [](const Case&, const Inputs& in) {
         return engine::least_preload(in.number("F_M_max_kN") * kilonewton, in.number("alpha_A")).in(kilonewton);
     }},
    {"turn_of_nut_angle",
     [](const Case&, const Inputs& in) {
         return engine::turn_for(in.number("F_N") * newton, springs_of(in), in.number("P_mm") * millimetre).in(degree);
     }},
    {"turn_of_nut_bolt_only",
     [](const Case&, const Inputs& in) {
         return engine::turn_of_bolt_alone(in.number("stress") * megapascal, in.number("L_B") * millimetre,
                                           in.number("E") * megapascal, in.number("lead") * millimetre)
             .in(degree);
     }},
    {"nasa_preload_bounds",
     [](const Case& row, const Inputs& in) {
         const Force nominal =
             engine::preload_from(in.number("T_lbf_in") * pound_force_inch, in.number("K"), in.number("D_in") * inch);
         const auto bounds = engine::bounds_about(nominal, in.number("Gamma"));
         const std::string& quantity = row.text("quantity");
         return (quantity == "P_nom_lbf" ? nominal : quantity == "P_max_lbf" ? bounds.most : bounds.least).in(pound_force);
     }},
    {"nasa5020_preload", [](const Case& row, const Inputs& in) { return nasa_5020(in, row.text("quantity")); }},
    {"thermal_preload_change",
     [](const Case&, const Inputs& in) {
         return engine::thermal_change(in.number("alpha_part_per_K"), in.number("alpha_bolt_per_K"), in.number("dT_K"),
                                       in.number("l_K_mm") * millimetre, springs_of(in))
             .in(newton);
     }},
    {"embedding_loss",
     [](const Case&, const Inputs& in) {
         return engine::embedding_loss(in.number("f_Z_mm") * millimetre, springs_of(in)).in(newton);
     }},
    {"torque_shigley_8_26", [](const Case&, const Inputs& in) { return shigley_torque(in); }},
    {"collar_torque", [](const Case&, const Inputs& in) { return collar_torque(in); }},
};

} // namespace

TEST_CASE("worked examples of joints", "[published]") {
    Family family{"joint", 66};
    const std::string own = "the row's own (rounding of the print)";
    Tally& stiffness = family.tally("bolt_in_grip, cone, clamped_by_fit, springs in series", "%", own);
    Tally& diagram = family.tally("joint diagram: shares, loads, factors", "%", own);
    Tally& bounds = family.tally("preload bounds and their statistics", "%", own);
    Tally& turns = family.tally("turn, heat, embedding", "%", own);
    Tally& torques = family.tally("friction_torque by Shigley Eq. 8-26", "%", own);
    std::set<std::string> met;
    for (const Case& row : family.rows()) {
        INFO(row.where());
        const std::string& kind = row.text("kind");
        const auto compute = k_kinds.find(kind);
        REQUIRE(compute != k_kinds.end());
        met.insert(kind);
        Tally& tally = kind.find("stiffness") != std::string::npos                                                ? stiffness
                       : kind.starts_with("nasa") || kind == "min_preload_alphaA" || kind.starts_with("scatter")  ? bounds
                       : kind.starts_with("turn") || kind.starts_with("thermal") || kind.starts_with("embedding") ? turns
                       : kind.find("torque") != std::string::npos                                                 ? torques
                                                                                                                  : diagram;
        tally.compare(row, row.text("quantity"), compute->second(row, Inputs{row}), row.number("expected"),
                      row.number("tolerance_rel"), row.confidence());
    }
    CHECK(met.size() == k_kinds.size());
    family.finish();
}

TEST_CASE("the cones of a worked example, put together from its layers", "[published]") {
    // Budynas/Nisbett, instructor solutions, problem 8-27: a steel washer of 0.065 in and 0.4375 in of aluminium about a hole of
    // 0.375 in, face 0.5625 in. Its three cones have 78.57, 23.46 and 14.31 Mlbf/in; together 7.99.
    const std::array layers{engine::Layer{0.065 * inch, mpsi(30)}, engine::Layer{0.4375 * inch, mpsi(14)}};
    CHECK(stiffness_inch(engine::clamped_parts(layers, 0.375 * inch, 0.5625 * inch)) == Approx(7.99).epsilon(0.001));
}
