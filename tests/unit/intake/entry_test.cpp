// SPDX-License-Identifier: MIT
// Joints in the words of the standards, and values as people enter them: what is kept, and what is refused with which
// words.

#include "../../data/support.hpp"
#include "clampbook/intake/intake.hpp"
#include "curated.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

namespace {

using namespace clampbook;
using intake::Entry;
using unit_tests::curated;
using unit_tests::refusal;

const book::Stamp k_stamp{"Ann", "2026-11-25T10:15:00Z"};

Joint screw() {
    Joint joint;
    joint.name = " pump  screw ";
    joint.role = Role::pump;
    return joint;
}

Joint told(Joint joint) { return intake::in_standard_words(curated(), std::move(joint)); }

std::string refused(ErrorKind kind, const std::function<void(Joint&)>& spoil) {
    Joint joint = screw();
    spoil(joint);
    return refusal(kind, [&] { return told(joint); });
}

struct Shop {
    data_tests::TemporaryFolder folder;
    book::Book book = book::Book::create((folder / "book.db").string(), k_stamp);
    RecordId joint = 0;

    Shop() {
        const RecordId machine = book.add_machine({0, "Maker", "X", "", "", "", ""}, k_stamp);
        Joint one = screw();
        one.assembly = book.add_assembly({0, machine, "box", ""}, k_stamp);
        joint = book.add_joint(one, k_stamp);
    }
    [[nodiscard]] Entry entry(const std::string& tightening, Label label = Label::shop) const {
        Entry e;
        e.joint = joint;
        e.tightening = tightening;
        e.label = label;
        return e;
    }
    Source source(const std::string& title, const std::string& number) {
        Source s{0, "manual", title, number, "", "", "", "", ""};
        s.id = book.add_source(s, k_stamp);
        return s;
    }
    std::string refused(ErrorKind kind, const Entry& entry) {
        return refusal(kind, [&] { return intake::enter(book, curated(), entry, k_stamp); });
    }
};

} // namespace

TEST_CASE("a joint is put into the words of the standards") {
    Joint joint = screw();
    joint.thread = "m10 x 1,5";
    joint.property_class = "class 8.8";
    joint.form = "Hexagon";
    joint.ring = "copper washer 18 X 24";
    joint.housing = "EN-GJL 250";
    joint.engagement_mm = 12.5;
    joint.count = 6;
    const Joint standard = told(joint);
    CHECK(standard.name == "pump  screw");
    CHECK(standard.thread == "M10");
    CHECK(standard.property_class == "8.8");
    CHECK(standard.form == "hexagon");
    CHECK(standard.ring == "copper 18×24");
    CHECK(standard.housing == "EN-GJL-250");
    CHECK(standard.engagement_mm == 12.5);
    CHECK(standard.count == 6);
    CHECK_FALSE(standard.safety_critical);

    joint = screw();
    joint.form = "DIN 910";
    joint.ring = "alu";
    joint.thread = "G1/2";
    CHECK(told(joint).form == "collar hexagon");
    CHECK(told(joint).ring == "aluminium");
    CHECK(told(joint).thread == "G1/2");
    joint.property_class = "8"; // of a nut: no size of screw to be held against
    joint.thread = "M14x1.5";
    CHECK(told(joint).property_class == "8");
    // a family's word stays: which alloy it was, nobody said
    joint.housing = " cast aluminium ";
    CHECK(told(joint).housing == "cast aluminium");
    CHECK(told(screw()).thread.empty());
}

TEST_CASE("wheels, brakes and steering are safety-critical whatever was said") {
    for (const Role role : all_roles()) {
        Joint joint = screw();
        joint.role = role;
        INFO(role_name(role));
        CHECK(told(joint).safety_critical == (role == Role::wheel || role == Role::brake || role == Role::steering));
        joint.safety_critical = true;
        CHECK(told(joint).safety_critical);
    }
}

TEST_CASE("a joint that cannot be is refused with the nearest that can") {
    using enum ErrorKind;
    CHECK(refused(usage, [](Joint& j) { j.name = "  "; }) == "the joint has no name");
    CHECK(refused(usage, [](Joint& j) { j.count = 0; }) == "a joint has 1 to 999 screws, not 0");
    CHECK(refused(usage, [](Joint& j) { j.count = 1000; }) == "a joint has 1 to 999 screws, not 1000");
    CHECK(refused(usage, [](Joint& j) { j.engagement_mm = 0; }) == "an engagement of 0 mm is not between 0 and 1000 mm");
    CHECK(refused(usage, [](Joint& j) { j.engagement_mm = 1000; }) == "an engagement of 1000 mm is not between 0 and 1000 mm");
    CHECK(refused(usage, [](Joint& j) { j.thread = "wide"; }).starts_with("'wide' "));
    CHECK(refused(not_found, [](Joint& j) { j.thread = "M10x1.3"; }).find("M10×1.25") != std::string::npos);
    CHECK(refused(not_found, [](Joint& j) { j.property_class = "8.9"; }).find("did you mean '8.8'?") != std::string::npos);
    CHECK(refused(out_of_validity, [](Joint& j) {
              j.thread = "M42";
              j.property_class = "8.8";
          }).find("M1.6 to M39") != std::string::npos);
    CHECK(refused(not_found, [](Joint& j) { j.form = "sokket"; }).ends_with("; screws are hexagon, socket or flange"));
    CHECK(refused(not_found, [](Joint& j) { j.ring = "coper 18x22"; }).find("did you mean 'copper'?") != std::string::npos);
    CHECK(refused(usage, [](Joint& j) { j.ring = "copper 18"; }) ==
          "'copper 18' is no ring; a ring is written like 'copper' or 'copper 18x24'");
    CHECK(refused(usage, [](Joint& j) { j.ring = "copper 18x22 bent"; }).starts_with("'copper 18x22 bent' is no ring"));
    CHECK(refused(not_found, [](Joint& j) { j.housing = "EN-GJL-251"; }).find("did you mean 'EN-GJL-250'?") != std::string::npos);
}

TEST_CASE("a value is kept as written, with who and when") {
    Shop shop;
    Entry entry = shop.entry("20 N·m, 50 N·m,  90°", Label::maker);
    entry.source = shop.source("Manual X", "WM-1");
    entry.page = " p. 3 ";
    entry.note = " cold ";
    entry.entered_on = "2026-11-24";
    const RecordId id = intake::enter(shop.book, curated(), entry, k_stamp);
    const Value value = shop.book.values(shop.joint).at(0);
    CHECK(value.id == id);
    CHECK(value.tightening.as_written == "20 N·m, 50 N·m,  90°");
    REQUIRE(value.tightening.steps.size() == 3);
    CHECK(value.tightening.steps[2].kind == StepKind::angle);
    CHECK(value.label == Label::maker);
    CHECK(value.source->number == "WM-1");
    CHECK(value.page == "p. 3");
    CHECK(value.note == "cold");
    CHECK(value.entered_by == "Ann");
    CHECK(value.entered_on == "2026-11-24");
    (void)intake::enter(shop.book, curated(), shop.entry("5 N·m"), k_stamp);
    CHECK(shop.book.values(shop.joint).at(1).entered_on == "2026-11-25");
}

TEST_CASE("a figure without its document, or of no day, is refused") {
    Shop shop;
    const Source source = shop.source("Manual X", "WM-1");
    Entry maker = shop.entry("5 N·m", Label::maker);
    const std::string wants = "a maker's figure needs the document it comes from, and the page in it: a source and a page";
    maker.page = "p. 3";
    CHECK(shop.refused(ErrorKind::usage, maker) == wants);
    maker.source = source;
    maker.page = " ";
    CHECK(shop.refused(ErrorKind::usage, maker) == wants);
    CHECK(shop.refused(ErrorKind::usage, shop.entry("5 N·m", Label::standard)) ==
          "a standard's figure needs the standard it comes from: a source");
    CHECK(shop.refused(ErrorKind::usage, shop.entry("5 lb")) != "accepted");
    CHECK(shop.refused(ErrorKind::usage, shop.entry("tight")).starts_with("'tight'"));
    Entry dated = shop.entry("5 N·m");
    dated.entered_on = "2026-11-26";
    CHECK(shop.refused(ErrorKind::usage, dated) == "the date of entry 2026-11-26 lies in the future; today is 2026-11-25");
    for (const char* no_day :
         {"2026-02-30", "25.11.2026", "2026-11-5", "2026-00-10", "2026-13-01", "20261125", "today", "2026-11-2x"}) {
        dated.entered_on = no_day;
        CHECK(shop.refused(ErrorKind::usage, dated) ==
              "the date of entry '" + std::string{no_day} + "' is no date; a date is written like 2026-11-25");
    }
    CHECK(shop.book.values(shop.joint).empty());
    CHECK(shop.book.info().people == 1); // who added the source
    CHECK_NOTHROW(intake::require_date("2024-02-29", "the day"));
}

TEST_CASE("the very same value is not kept twice, another one is") {
    Shop shop;
    Entry entry = shop.entry("5 N·m", Label::maker);
    entry.source = shop.source("Manual X", "WM-1");
    entry.page = "p. 3";
    (void)intake::enter(shop.book, curated(), entry, k_stamp);
    const std::string there = "'5 N·m' with this label, source and page is current in the book already (value 1)";
    CHECK(shop.refused(ErrorKind::conflict, entry) == there);
    const auto changed = [&](const std::function<void(Entry&)>& change) {
        Entry other = entry;
        change(other);
        return intake::enter(shop.book, curated(), other, k_stamp);
    };
    CHECK(changed([](Entry& e) { e.page = "p. 4"; }) == 2);
    CHECK(changed([](Entry& e) { e.label = Label::shop; }) == 3);
    CHECK(changed([&](Entry& e) { e.source = shop.source("Bulletin", ""); }) == 4);
    CHECK(changed([](Entry& e) { e.tightening = "44.25 lbf·in"; }) == 5); // the same figure as another unit prints it
    CHECK(shop.book.info().values == 5);
    Entry rival = entry;
    rival.tightening = "6 N·m";
    CHECK(
        shop.refused(ErrorKind::conflict, rival).starts_with("'5 N·m' with this label, source and page is current in the book"));
    rival.replaces = {1, 5};
    rival.reason = "read again";
    CHECK(intake::enter(shop.book, curated(), rival, k_stamp) == 6);
    CHECK(shop.book.value(1)->superseded_by == 6);
    CHECK(shop.book.value(5)->superseded_by == 6);
    rival.page = " p. 3 "; // the same page, blanks or not
    CHECK(shop.refused(ErrorKind::conflict, rival) ==
          "'6 N·m' with this label, source and page is current in the book already (value 6)");
}

TEST_CASE("a source is named by number in the book, document number or title") {
    Shop shop;
    (void)shop.source("Manual X", "WM-1");
    (void)shop.source("Manual X", "WM-2");
    (void)shop.source("Torque plate", "");
    CHECK(intake::source_named(shop.book, "2").number == "WM-2");
    CHECK(intake::source_named(shop.book, "wm-1").id == 1);
    CHECK(intake::source_named(shop.book, " torque  PLATE").id == 3);
    CHECK(refusal(ErrorKind::conflict, [&] { return intake::source_named(shop.book, "manual x"); }) ==
          "'manual x' names 2 sources; give the number of one: 1 (Manual X, WM-1); 2 (Manual X, WM-2)");
    CHECK(refusal(ErrorKind::not_found, [&] { return intake::source_named(shop.book, "torque plat"); }) ==
          "no source 'torque plat' is in the book (did you mean 'Torque plate'?); add it with 'clampbook source add'");
    CHECK(refusal(ErrorKind::not_found, [&] { return intake::source_named(shop.book, ""); }) != "accepted");
}
