// SPDX-License-Identifier: MIT
// Lookups in the curated database by the names that people type: threads, classes, loads, conditions, materials, forms.

#include "clampbook/reference/reference.hpp"
#include "curated.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

namespace {

using namespace clampbook;
using unit_tests::curated;
using namespace clampbook::reference;
using Catch::WithinRel;
using unit_tests::refusal;

ThreadRow thread(std::string_view typed) { return curated().thread(read_thread(typed)); }

std::string unknown_thread(std::string_view typed) {
    return refusal(ErrorKind::not_found, [&] { return thread(typed); });
}

std::string class_code(std::string_view name, std::string_view screw) {
    return curated().property_class(name, thread(screw)).code;
}

std::string not_made(std::string_view name, std::string_view screw) {
    return refusal(ErrorKind::out_of_validity, [&] { return class_code(name, screw); });
}

} // namespace

TEST_CASE("a thread is found with or without what its name may leave out") {
    const ThreadRow coarse = thread("M10");
    CHECK(coarse.code == "M10");
    CHECK(coarse.size == "M10");
    CHECK(coarse.series == "coarse");
    CHECK(coarse.system == ThreadSystem::metric);
    CHECK_THAT(coarse.major.in(millimetre), WithinRel(10.0, 1e-12));
    CHECK_THAT(coarse.pitch->in(millimetre), WithinRel(1.5, 1e-12));
    CHECK_FALSE(coarse.threads_per_inch);
    CHECK(coarse.citation.source == "iso-261-1998");
    CHECK(thread("M10x1.5").code == "M10");
    CHECK(thread("m18 × 1,5").code == "M18x1.5");
    CHECK(thread("m18 × 1,5").series == "fine");
    const ThreadRow inch_coarse = thread("3/8-16");
    CHECK(inch_coarse.code == "3/8-16 UNC");
    CHECK(inch_coarse.series == "UNC");
    CHECK_THAT(inch_coarse.major.in(inch), WithinRel(0.375, 1e-12));
    CHECK(inch_coarse.threads_per_inch == 16.0);
    CHECK_THAT(inch_coarse.stress_area->in(square_millimetre), WithinRel(0.0775 * 25.4 * 25.4, 1e-12));
    CHECK(thread("3/8-24").code == "3/8-24 UNF");
    CHECK(thread("#10-32").code == "#10-32 UNF");
    CHECK(thread("G1/2").system == ThreadSystem::pipe_parallel);
    CHECK(thread("R 1/2").system == ThreadSystem::pipe_taper);
    CHECK(thread("NPT 1/2").code == "1/2-14 NPT");
    CHECK(thread("NPT 1/2").useful_length);
}

TEST_CASE("an unknown thread is told with those that are made") {
    CHECK(unknown_thread("M10x1.3") ==
          "'M10x1.3' is not among the threads of ISO 261 kept here; in this size there are M10, M10×1.25, M10×1, M10×0.75");
    CHECK(unknown_thread("3/8-20").find("of ASME B1.1 kept here; in this size there are 3/8-16 UNC, 3/8-24 UNF") !=
          std::string::npos);
    CHECK(unknown_thread("3/8-24 UNC").find("3/8-24 UNF") != std::string::npos);
    CHECK(unknown_thread("M13") == "'M13' is not among the threads of ISO 261 kept here; the sizes beside it are M12 and M14");
    CHECK(unknown_thread("3/9-16").find("of ASME B1.1 kept here (did you mean '3/4-16'?)") != std::string::npos);
    CHECK(unknown_thread("3/9-16 UNC").find("of ASME B1.1 kept here (did you mean '3/8-16 UNC'?)") != std::string::npos);
    CHECK(unknown_thread("G1/2-11").ends_with("ISO 228-1 kept here; in this size there is G1/2"));
    CHECK_FALSE(curated().find_thread(read_thread("M10x1.3")));
    CHECK(curated().find_thread(read_thread("M10x1.25"))->code == "M10x1.25");
}

TEST_CASE("every thread that is listed is found under the name that it is listed by") {
    const Table threads = curated().table("threads");
    const auto code =
        static_cast<std::size_t>(std::ranges::find(threads.columns, "code", &TableColumn::key) - threads.columns.begin());
    std::vector<std::string> lost;
    for (const auto& row : threads.rows) {
        const std::string& name = row.at(code).text;
        try {
            if (thread(name).code != name) {
                lost.push_back(name + " gives another");
            }
        } catch (const Error& fault) {
            lost.push_back(name + ": " + fault.what());
        }
    }
    CHECK(lost == std::vector<std::string>{});
    CHECK(thread("2-8 UN").code == "2-8 8-UN");
}

TEST_CASE("tolerances are those printed for pitch and range of diameter") {
    const auto micrometres = [](std::string_view kind, double major, double pitch) {
        const auto row = curated().tolerance(kind, major * millimetre, pitch * millimetre);
        return row ? row->size.in(millimetre) * 1000 : -1;
    };
    // ISO 965-1, Tables 1 to 5
    CHECK_THAT(micrometres("es g", 10, 1.5), WithinRel(32.0, 1e-12));
    CHECK_THAT(micrometres("Td 6", 10, 1.5), WithinRel(236.0, 1e-12));
    CHECK_THAT(micrometres("TD1 6", 10, 1.5), WithinRel(300.0, 1e-12));
    CHECK_THAT(micrometres("Td2 6", 10, 1.5), WithinRel(132.0, 1e-12));
    CHECK_THAT(micrometres("Td2 6", 11.2, 1.5), WithinRel(132.0, 1e-12));
    CHECK_THAT(micrometres("Td2 6", 12, 1.5), WithinRel(140.0, 1e-12));
    CHECK_THAT(micrometres("TD2 6", 22.4, 1.5), WithinRel(190.0, 1e-12));
    CHECK(micrometres("Td2 6", 10, 1.4) == -1);
    CHECK(micrometres("Td2 6", 300, 1.5) == -1);
    CHECK(micrometres("Td 9", 10, 1.5) == -1);
    CHECK(curated().tolerance("Td 6", 10 * millimetre, 1.5 * millimetre)->citation.place == "Table 3");
}

TEST_CASE("a class is read in its everyday spellings") {
    for (const auto& [typed, name] : std::vector<std::pair<const char*, const char*>>{{"8.8", "8.8"},
                                                                                      {"8,8", "8.8"},
                                                                                      {"class 10.9", "10.9"},
                                                                                      {"A2-70", "A2-70"},
                                                                                      {"A2 70", "A2-70"},
                                                                                      {"a270", "A2-70"},
                                                                                      {"A4/80", "A4-80"},
                                                                                      {"grade5", "grade 5"},
                                                                                      {"Grade 8", "grade 8"},
                                                                                      {"SAE grade 2", "grade 2"},
                                                                                      {"gr. 5", "grade 5"}}) {
        INFO(typed);
        CHECK(curated().class_name(typed) == name);
    }
    const std::string unknown = refusal(ErrorKind::not_found, [] { return curated().class_name("A3-70"); });
    CHECK(unknown.starts_with("'A3-70' is no property class known here (did you mean 'A1-70'?); known are 4.6, 4.8,"));
    for (const std::string& name : curated().class_names()) {
        CHECK(curated().class_name(name) == name);
        CHECK(unknown.find(" " + name) != std::string::npos);
    }
    CHECK(curated().class_names().size() == 23);
}

TEST_CASE("a class is looked up for the size of the screw") {
    const ClassRow small = curated().property_class("8.8", thread("M16"));
    CHECK(small.code == "8.8 d<=16");
    CHECK(small.name == "8.8");
    // ISO 898-1, Table 3
    CHECK_THAT(small.proof_stress->in(megapascal), WithinRel(580.0, 1e-12));
    CHECK_THAT(small.yield_strength.in(megapascal), WithinRel(640.0, 1e-12));
    CHECK_THAT(small.tensile_strength.in(megapascal), WithinRel(800.0, 1e-12));
    CHECK(small.yield_kind == "Rp0.2");
    CHECK(small.citation.line() == "ISO 898-1:2013, Table 3 (published, keyed from a reproduction)");
    CHECK(class_code("8.8", "M1.6") == "8.8 d<=16");
    CHECK(class_code("8.8", "M18x1.5") == "8.8 d>16");
    CHECK(class_code("8.8", "M39") == "8.8 d>16");
    CHECK(class_code("grade 2", "3/4-10") == "grade 2 to 3/4");
    CHECK(class_code("grade 2", "7/8-9") == "grade 2 over 3/4");
    CHECK(class_code("grade 5", "1-8") == "grade 5 to 1");
    CHECK(class_code("grade 5", "1-1/8-7") == "grade 5 over 1");
    CHECK_FALSE(curated().property_class("A2-70", thread("M24")).proof_stress);

    CHECK(not_made("8.8", "M42") == "class 8.8 is not made in M42: ISO 898-1:2013 gives it for M1.6 to M39");
    CHECK(not_made("9.8", "M18").ends_with("gives it for M1.6 to M16"));
    CHECK(not_made("A2-70", "M27").ends_with("gives it for M1.6 to M24"));
    CHECK(not_made("grade 5", "#10-32").ends_with("gives it for 0.25 to 1.5 in"));
    CHECK(not_made("8.8", "3/8-16") == "class 8.8 is made with metric threads, and 3/8-16 UNC is an inch thread");
    CHECK(not_made("grade 5", "M10") == "class grade 5 is made with inch threads, and M10 is a metric one");
    CHECK(not_made("8.8", "G1/2") == "G1/2 is a pipe thread: it seals and is not made in property classes");
    CHECK(refusal(ErrorKind::internal, [] { return curated().property_class("7.7", thread("M10")); }) != "accepted");
}

TEST_CASE("loads are those printed for thread and class") {
    const LoadRow load = curated().load("M10", "8.8").value();
    // ISO 898-1, Tables 4 and 5
    CHECK_THAT(load.stress_area.in(square_millimetre), WithinRel(58.0, 1e-12));
    CHECK_THAT(load.proof_load.in(newton), WithinRel(33700.0, 1e-12));
    CHECK_THAT(load.tensile_load.in(newton), WithinRel(46400.0, 1e-12));
    CHECK(load.proof_load_published);
    CHECK(load.tensile_load_published);
    const LoadRow computed = curated().load("M5", "12.9").value();
    CHECK_FALSE(computed.proof_load_published);
    CHECK_FALSE(computed.tensile_load_published);
    CHECK(computed.citation.keyed == "computed");
    CHECK_FALSE(curated().load("M10", "A2-70"));
    CHECK_FALSE(curated().load("M10x1.5", "8.8"));
}

TEST_CASE("nut factors by condition, scatter by method, and the usual preloads") {
    CHECK(curated().nut_factor("Zinc Plated").code == "zinc-plated");
    CHECK(curated().nut_factor("lubricated").value == 0.18);
    const NutFactorRow range = curated().nut_factor("zinc on steel");
    CHECK(range.low == 0.17);
    CHECK(range.high == 0.35);
    CHECK_FALSE(range.value);
    CHECK(range.citation.source == "nut-factor-chart");
    const std::string unknown = refusal(ErrorKind::not_found, [] { return curated().nut_factor("stainles"); });
    CHECK(unknown.starts_with("'stainles' is no condition with a nut factor here (did you mean 'stainless'?); known are "));
    for (const NutFactorRow& row : curated().nut_factors()) {
        INFO(row.code);
        CHECK(unknown.find(row.code) != std::string::npos);
        CHECK((row.value || (row.low && row.high)));
        CHECK_FALSE(row.citation.place.empty());
    }
    CHECK_THAT(curated().scatter("torque, unlubricated").half_range.value(), WithinRel(0.35, 1e-12));
    CHECK(curated().scatter("torque, lubricated").citation.source == "nasa-nsts-08307");
    CHECK(refusal(ErrorKind::not_found, [] {
              return curated().scatter("guess");
          }).starts_with("'guess' is no way of tightening with a scatter here"));
    CHECK(curated().scatter("Torque wrench estimated").factor == 2.0);
    CHECK(curated().preload_choice("reused").share == 0.75);
    CHECK(curated().preload_choice("permanent").share == 0.9);
    CHECK(refusal(ErrorKind::internal, [] { return curated().preload_choice("guess"); }) != "accepted");
}

TEST_CASE("materials, rings and forms are read in their everyday spellings") {
    CHECK(curated().housing("46000") == curated().housing("EN AC-46000"));
    CHECK(curated().housing("46000").starts_with("EN AC-46000"));
    CHECK(curated().housing("en-gjl 250") == "EN-GJL-250");
    CHECK(curated().housing("cast aluminium").starts_with("EN AC-"));
    CHECK(refusal(ErrorKind::not_found, [] { return curated().housing("EN-GJL-251"); }).find("did you mean 'EN-GJL-250'?") !=
          std::string::npos);
    CHECK(curated().ring_material("Aluminum washer") == "aluminium");
    CHECK(curated().ring_material("cu") == "copper");
    CHECK(curated().ring_material("O ring") == "o-ring");
    CHECK(curated().ring_material("rubber-metal") == "bonded");
    CHECK(curated().ring_material("no ring") == "none");
    CHECK(refusal(ErrorKind::not_found, [] { return curated().ring_material("coper"); }) ==
          "'coper' is no ring material known here (did you mean 'copper'?); known are aluminium, bonded, copper, none, o-ring, "
          "steel");
    CHECK(curated().plug_form("DIN 910") == "collar hexagon");
    CHECK(curated().plug_form("din908") == "collar socket");
    CHECK(curated().plug_form("Taper-Socket") == "taper socket");
    CHECK(refusal(ErrorKind::not_found, [] { return curated().plug_form("star"); }) != "accepted");
    CHECK(curated().fastener_class("8") == "8");
    CHECK(curated().fastener_class(" 10 ") == "10");
    CHECK(curated().fastener_class("grade5") == "grade 5");
    CHECK(refusal(ErrorKind::not_found, [] { return curated().fastener_class("13"); }) != "accepted");

    const RingInfo ring = curated().ring("copper", "M18x1.5");
    CHECK(ring.name == "copper ring");
    CHECK(ring.renew == "renew at every opening");
    CHECK(ring.usual == "18×22×1.5 mm"); // DIN 7603, form A
    CHECK(curated().ring("copper", "M18").usual == ring.usual);
    CHECK(curated().ring("copper", "").usual.empty());
    CHECK(curated().ring("copper", "3/8-16 UNC").usual.empty());
    CHECK(curated().ring("bonded", "M18x1.5").usual.empty());
    CHECK(refusal(ErrorKind::internal, [] { return curated().ring("cu", "M18"); }) != "accepted");
}

TEST_CASE("trade words come in five languages, with the role of the joint that they name") {
    std::set<std::string> languages;
    std::set<std::string> drain;
    for (const Word& word : curated().words()) {
        languages.insert(word.language);
        if (word.concept_code == "drain_plug" && word.preferred) {
            CHECK(word.role == "drain");
            drain.insert(word.text);
        }
    }
    CHECK(languages == std::set<std::string>{"de", "en", "es", "fr", "sv"});
    CHECK(drain ==
          std::set<std::string>{"drain plug", "Ablassschraube", "tapón de vaciado", "bouchon de vidange", "avtappningsplugg"});
}

TEST_CASE("metadata tell layout and content") {
    CHECK(curated().metadata("layout.major") == "1");
    CHECK(curated().metadata("content.sha256").size() == 64);
    CHECK(refusal(ErrorKind::invalid_data, [] { return curated().metadata("colour"); }) != "accepted");
}

TEST_CASE("bearing faces, clearance holes and limiting pressures") {
    // ISO 4014, ISO 4762, EN 1662 and ISO 273 as reproduced; VDI 2230-1:2003 for the pressure
    CHECK(curated().bearing_diameter("hexagon", "M10")->size == 14.63 * millimetre);
    CHECK(curated().bearing_diameter("hexagon", "M10")->name == "ISO 4014 M10");
    CHECK(curated().bearing_diameter("socket", "M10")->size == 15.33 * millimetre);
    CHECK(curated().bearing_diameter("flange", "M10")->name == "EN 1662 M10");
    CHECK_FALSE(curated().bearing_diameter("hexagon", "3/8"));
    CHECK_FALSE(curated().bearing_diameter("socket", "M33")); // the row is there without a bearing face
    CHECK(curated().clearance_hole("fine", "M10")->size == 10.5 * millimetre);
    CHECK(curated().clearance_hole("medium", "M10")->size == 11.0 * millimetre);
    CHECK(curated().clearance_hole("coarse", "M10")->size == 12.0 * millimetre);
    CHECK(curated().clearance_hole("coarse", "M10")->citation.source == "iso-273-1979");
    CHECK_FALSE(curated().clearance_hole("loose", "M10"));
    CHECK_FALSE(curated().clearance_hole("fine", "3/8"));
    const MaterialRow aluminium = curated().material("EN AC-46000");
    REQUIRE(aluminium.limiting_pressure);
    CHECK(*aluminium.limiting_pressure == 290.0 * megapascal);
    CHECK(aluminium.pressure->place == "table of limiting surface pressures");
    CHECK(refusal(ErrorKind::internal, [] { (void)curated().material("cheese"); }) != "accepted");
}

TEST_CASE("materials with what stands elsewhere cited apart") {
    const MaterialRow die_cast = curated().material("EN AC-46000");
    CHECK(die_cast.family == "cast aluminium");
    CHECK(die_cast.tensile_strength == 240.0 * megapascal);
    CHECK(die_cast.shear_strength == 140.0 * megapascal); // VDI 2230-1 Table A9, GD-AlSi9Cu3
    CHECK(die_cast.shear_basis == "as printed");
    CHECK(die_cast.shear.place == "Table A9");
    CHECK(die_cast.modulus == 75000.0 * megapascal);
    CHECK_THAT(die_cast.expansion, WithinRel(21e-6, 1e-12));
    CHECK(die_cast.elastic.source == "material-handbook");
    const MaterialRow steel = curated().material("S355J2"); // 470 MPa, 0.61 of it
    CHECK_THAT(steel.shear_strength.in(megapascal), WithinRel(0.61 * 470, 1e-12));
    CHECK(steel.shear_basis == "0.61 Rm");
    CHECK_FALSE(curated().material("C45").limiting_pressure);
    CHECK_FALSE(curated().material("C45").pressure);
}

TEST_CASE("rings, plugs and ports by thread") {
    const auto ring = curated().usual_ring("M18x1.5");
    REQUIRE(ring);
    CHECK(ring->code == "A 18x22");
    CHECK(ring->print == "18×22×1.5 mm");
    CHECK(ring->inner == 18.0 * millimetre);
    CHECK(ring->outer == 22.0 * millimetre);
    CHECK(ring->thickness == 1.5 * millimetre);
    CHECK(ring->citation.source == "din-7603-2001");
    CHECK(curated().usual_ring("G1/2"));
    CHECK_FALSE(curated().usual_ring("M11"));
    CHECK(*curated().ring("copper", "").seating_stress == 90.0 * megapascal); // ASME BPVC VIII-2, Table 4.16.1
    CHECK(curated().ring("copper", "").seating->source == "asme-bpvc-viii-2");
    CHECK_FALSE(curated().ring("bonded", "").seating_stress);
    const auto plug = curated().plug("collar socket", "M18x1.5");
    REQUIRE(plug);
    CHECK(plug->code == "DIN 908 M18x1.5");
    CHECK(plug->across_flats == 8.0 * millimetre);
    CHECK(plug->collar_diameter == 23.0 * millimetre);
    CHECK(plug->thread_length == 12.0 * millimetre);
    CHECK_FALSE(curated().plug("taper socket", "M18x1.5")->collar_diameter);
    CHECK_FALSE(curated().plug("collar socket", "M18"));
    CHECK(curated().plug_form_row("collar socket").drive == "hexagon socket");
    CHECK(curated().plug_form_row("o-ring hexagon").seal == "o-ring");
    CHECK(refusal(ErrorKind::internal, [] { return curated().plug_form_row("cork").code; }) != "accepted");
    const auto ports = curated().port_torques("M18x1.5");
    REQUIRE(ports.size() == 2);
    CHECK(ports[0].series == "L");
    CHECK(ports[0].torque == 45.0 * newton_metre);
    CHECK(ports[1].torque == 70.0 * newton_metre);
    CHECK(ports[1].citation.source == "iso-6149-2");
    CHECK(curated().port_torques("M18").empty());
    const auto pipe = curated().pipe_tolerance(14);
    REQUIRE(pipe);
    CHECK(pipe->pitch_internal == 0.142 * millimetre);
    CHECK(pipe->pitch_external == 0.284 * millimetre);
    CHECK(pipe->minor_internal == 0.541 * millimetre);
    CHECK(pipe->major_external == 0.284 * millimetre);
    CHECK_FALSE(curated().pipe_tolerance(12));
}

TEST_CASE("surfaces, friction classes, shear ratios and tools") {
    CHECK(curated().embedding(10, "head or nut").amount == 2.5 * micrometre);
    CHECK(curated().embedding(40, "interface").amount == 2.0 * micrometre);
    CHECK(curated().embedding(160, "thread").roughness == "40 µm <= Rz < 160 µm");
    CHECK(refusal(ErrorKind::internal, [] { return curated().embedding(16, "thread").location; }) != "accepted");
    CHECK(curated().friction_class("B").low == 0.08);
    CHECK(curated().friction_class("B").high == 0.16);
    CHECK_FALSE(curated().friction_class("E").high);
    CHECK(refusal(ErrorKind::not_found, [] { return curated().friction_class("F").code; }) ==
          "'F' is no friction class; they are A to E");
    CHECK(curated().shear_ratio("8.8").ratio == 0.65);
    CHECK(curated().shear_ratio("8.8").own);
    CHECK(curated().shear_ratio("4.6").ratio == 0.60); // the least of those kept
    CHECK_FALSE(curated().shear_ratio("4.6").own);
    for (const char* typed : {"II A", "IIA", "ii-a", "type II class A", "Type II, Class A"}) {
        INFO(typed);
        CHECK(curated().tool(typed).code == "type II class A");
    }
    CHECK(curated().tool("II A").deviation == 0.04);
    CHECK(curated().tool("II A").deviation_small == 0.06);
    CHECK(curated().tool("I A").code == "type I class A");
    CHECK(refusal(ErrorKind::not_found, [] {
              return curated().tool("A").code;
          }).starts_with("'A' is no type and class of tool known here"));
}
