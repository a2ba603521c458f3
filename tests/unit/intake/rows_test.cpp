// SPDX-License-Identifier: MIT
// Rows of the exchange file on their way into the book, and the demo: what it holds, and that it is always the same.

#include "../../data/support.hpp"
#include "clampbook/intake/import.hpp"
#include "curated.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

namespace {

using namespace clampbook;
using exchange::JointRow;
using unit_tests::curated;
using unit_tests::refusal;
namespace fs = std::filesystem;

const book::Stamp k_stamp{"Ann", "2026-11-25T10:15:00Z"};

JointRow good_row() {
    JointRow row;
    row.line = 7;
    row.machine_maker = "Maker";
    row.machine_model = "X";
    row.assembly = "box";
    row.joint = "drain plug";
    row.role = "drain";
    row.thread = "m18x1,5";
    row.ring = "copper";
    row.tightening = "32 N·m";
    row.label = "maker";
    row.source_title = "Manual X";
    row.source_date = "2022-11-10";
    row.page = "p. 3";
    row.entered_by = "Bob";
    row.entered_on = "2026-11-20";
    return row;
}

struct Shop {
    data_tests::TemporaryFolder folder;
    book::Book book = book::Book::create((folder / "book.db").string(), k_stamp);

    intake::RowTaken take(const JointRow& row) { return intake::Rows{book, curated(), "sheet.csv", k_stamp}.take(row); }
    std::string refused(const std::function<void(JointRow&)>& spoil, ErrorKind kind = ErrorKind::invalid_data) {
        JointRow row = good_row();
        spoil(row);
        return refusal(kind, [&] {
            book.in_one_go([&] { take(row); });
            return 0;
        });
    }
};

} // namespace

TEST_CASE("a row brings machine, assembly, joint, source and value, each once") {
    Shop shop;
    shop.take(good_row());
    JointRow second = good_row();
    second.joint = "wheel nuts";
    second.role = "wheel";
    second.count = "8";
    second.engagement_mm = "14,5";
    second.thread = "M14x1.5";
    second.property_class = "10";
    second.tightening = "160 N·m";
    second.source_kind = "plate";
    second.entered_by = "";
    shop.take(second);
    const book::Info info = shop.book.info();
    CHECK(std::array{info.machines, info.assemblies, info.joints, info.values, info.sources} ==
          std::array<std::size_t, 5>{1, 1, 2, 2, 1});
    const auto places = shop.book.places();
    REQUIRE(places.size() == 2);
    CHECK(places[0].joint.thread == "M18x1.5");
    CHECK(places[0].joint.role == Role::drain);
    CHECK_FALSE(places[0].joint.safety_critical);
    CHECK(places[1].joint.safety_critical);
    CHECK(places[1].joint.count == 8);
    CHECK(places[1].joint.engagement_mm == 14.5);
    const Value value = shop.book.values(places[0].joint.id).at(0);
    CHECK(value.label == Label::maker);
    CHECK(value.entered_by == "Bob");
    CHECK(value.entered_on == "2026-11-20");
    CHECK(value.source->date == "2022-11-10");
    CHECK(value.source->kind == "document");
    CHECK(shop.book.values(places[1].joint.id).at(0).entered_by == "Ann");
    CHECK(shop.book.history(places[0].joint.id).at(0).person == "Ann"); // who told the book, whoever took the figure
}

TEST_CASE("a row without a value tells of the joint alone") {
    Shop shop;
    JointRow row = good_row();
    row.tightening.clear();
    row.label.clear();
    row.source_title.clear();
    row.page.clear();
    row.note = "no figure found";
    shop.take(row);
    CHECK(shop.book.info().values == 0);
    CHECK(shop.book.info().sources == 0);
    CHECK(shop.book.places().at(0).joint.note == "no figure found");
}

TEST_CASE("the note of a row with a value is kept, of a joint new or known") {
    Shop shop;
    JointRow row = good_row();
    row.note = "cold engine";
    shop.take(row);
    row.tightening = "33 N·m";
    row.page = "p. 4";
    row.note = "warm engine";
    shop.take(row);
    const book::Place place = shop.book.places().at(0);
    std::string notes = place.joint.note;
    for (const Value& value : shop.book.values(place.joint.id)) {
        notes += "|" + value.note;
    }
    CHECK(notes.find("cold engine") != std::string::npos);
    CHECK(notes.find("warm engine") != std::string::npos);
}

TEST_CASE("a row that does not fit is told with file, line and column, and nothing of it is kept") {
    const auto says = [](const std::function<void(JointRow&)>& spoil) {
        Shop shop;
        const std::string sentence = shop.refused(spoil);
        INFO(sentence);
        CHECK(shop.book.info().machines == 0);
        CHECK(shop.book.info().events == 1);
        return sentence;
    };
    CHECK(says([](JointRow& r) { r.role = "drane"; }).starts_with("sheet.csv:7: role: 'drane' "));
    CHECK(says([](JointRow& r) { r.count = "six"; }) == "sheet.csv:7: count: 'six' is no number for a count");
    CHECK(says([](JointRow& r) { r.count = "0"; }) == "sheet.csv:7: count: a joint has 1 to 999 screws, not 0");
    CHECK(says([](JointRow& r) { r.count = "2.7"; }).starts_with("sheet.csv:7: count: "));
    CHECK(says([](JointRow& r) { r.count = "1e12"; }).starts_with("sheet.csv:7: "));
    CHECK(says([](JointRow& r) { r.engagement_mm = "14 mm"; }).starts_with("sheet.csv:7: engagement_mm: '14 mm' is no number"));
    CHECK(says([](JointRow& r) { r.safety_critical = "maybe"; }) ==
          "sheet.csv:7: safety_critical: 'maybe' is neither yes nor no");
    CHECK(says([](JointRow& r) { r.thread = "M18x1.4"; }).starts_with("sheet.csv:7: thread: 'M18x1.4' is not among"));
    CHECK(says([](JointRow& r) { r.label = "makers"; }).starts_with("sheet.csv:7: label: 'makers' "));
    CHECK(says([](JointRow& r) { r.tightening = "32"; }).starts_with("sheet.csv:7: tightening: "));
    CHECK(says([](JointRow& r) { r.page = ""; }).starts_with("sheet.csv:7: page: a maker's figure needs the document"));
    CHECK(says([](JointRow& r) { r.entered_on = "soon"; }).find("'soon' is no date") != std::string::npos);
    CHECK(says([](JointRow& r) { r.source_date = "soon"; }) ==
          "sheet.csv:7: source_date 'soon' is no date; a date is written like 2026-11-25");
    CHECK(says([](JointRow& r) { r.machine_model = ""; }) == "sheet.csv:7: machine_maker and machine_model must not be empty");
    CHECK(says([](JointRow& r) { r.joint = ""; }) == "sheet.csv:7: assembly and joint must not be empty");
    Shop shop;
    shop.take(good_row());
    const std::string head = shop.book.info().head;
    CHECK(shop.take(good_row()).what == intake::Taken::here_already);
    CHECK(shop.book.info().head == head);
}

// Of the joint that was made last the rows remember what the file told of it; each goes on as if the book had been asked.
TEST_CASE("rows of one file, one after the other, say what the book would") {
    Shop shop;
    const intake::Judge judge{curated()};
    intake::Rows rows{shop.book, judge, "sheet.csv", k_stamp};
    const auto row = [](const char* joint, const char* tightening, const char* page = "p. 3") {
        JointRow out = good_row();
        out.joint = joint;
        out.tightening = tightening;
        out.page = page;
        return out;
    };
    const auto taken = [&](const JointRow& one) { return rows.take(one).what; };
    CHECK(taken(row("drain plug", "32 N·m")) == intake::Taken::value);
    CHECK(taken(row("drain plug", "32 N·m")) == intake::Taken::here_already);
    CHECK(taken(row("drain plug", "34 N·m", "p. 4")) == intake::Taken::value);
    CHECK(taken(row("Drain  plug", "34 N·m", "p. 4")) == intake::Taken::here_already); // another spelling of the same
    const auto contradiction = [&](const char* joint, const char* tightening, const char* page) {
        return refusal(ErrorKind::conflict, [&] { return taken(row(joint, tightening, page)); });
    };
    CHECK(contradiction("drain plug", "36 N·m", "p. 4") ==
          "sheet.csv:7: tightening: '36 N·m', and another row of this file says '34 N·m' with the same label, source and page");
    // Another joint may have another figure on the same page, and a row of the first may follow it.
    CHECK(taken(row("fill plug", "36 N·m", "p. 4")) == intake::Taken::value);
    CHECK(contradiction("drain plug", "30 N·m", "p. 3").find("another row of this file says '32 N·m'") != std::string::npos);
    CHECK(contradiction("fill plug", "30 N·m", "p. 4").find("another row of this file says '36 N·m'") != std::string::npos);
    JointRow other = row("fill plug", "36 N·m", "p. 5");
    other.thread = "M22x1.5";
    CHECK(refusal(ErrorKind::conflict, [&] { return taken(other); }).find("thread: 'M22x1.5'") != std::string::npos);
    other.assembly = "second box"; // where it is another joint
    CHECK(taken(other) == intake::Taken::value);
    CHECK(shop.book.info().values == 4);
    CHECK(shop.book.info().joints == 3);
}

TEST_CASE("a row that says something else of a joint that is there is not taken in silence") {
    Shop shop;
    shop.take(good_row());
    CHECK(shop.refused(
              [](JointRow& r) {
                  r.tightening = "60 N·m";
                  r.thread = "M22x1.5";
              },
              ErrorKind::conflict) != "accepted");
}

TEST_CASE("yes and no are read in their usual forms") {
    Shop shop;
    int number = 0;
    for (const auto& [text, critical] : std::vector<std::pair<const char*, bool>>{
             {"yes", true}, {"Y", true}, {"1", true}, {"TRUE", true}, {"no", false}, {"n", false}, {"0", false}, {"", false}}) {
        JointRow row = good_row();
        row.joint = "joint " + std::to_string(++number);
        row.safety_critical = text;
        shop.take(row);
        INFO("'" << text << "'");
        CHECK(shop.book.find_joint(1, row.joint)->safety_critical == critical);
    }
}

TEST_CASE("the demo is a whole invented yard") {
    data_tests::TemporaryFolder folder;
    const std::string path = (folder / "demo.db").string();
    intake::write_demo(path, curated());
    const book::Book book{path, book::Access::read};
    CHECK(book.verify().empty());
    CHECK(book.machines().size() == 6);
    CHECK(book.sources().size() == 6);
    for (const Machine& machine : book.machines()) {
        INFO(machine.title());
        CHECK(machine.maker.ends_with("(invented)"));
        const std::size_t assemblies = book.assemblies(machine.id).size();
        CHECK(assemblies >= 3);
        CHECK(assemblies <= 5);
    }
    for (const Source& source : book.sources()) {
        INFO(source.title);
        CHECK(source.title.ends_with("(invented)"));
    }
    std::set<Role> roles;
    std::set<std::string> unvalued;
    std::size_t disagreeing = 0;
    const auto places = book.places();
    CHECK(places.size() >= 90);
    for (const book::Place& place : places) {
        roles.insert(place.joint.role);
        CHECK((!is_safety_critical(place.joint.role) || place.joint.safety_critical));
        const auto values = book.values(place.joint.id);
        if (values.empty()) {
            unvalued.insert(place.machine.model + ", " + place.joint.name);
        }
        for (const Value& value : values) {
            INFO(place.machine.title() << ", " << place.joint.name << ": " << value.tightening.as_written);
            CHECK(value.label == Label::demo);
            CHECK(value.source);
            CHECK_FALSE(value.page.empty());
        }
        disagreeing += values.size() > 1 && !agree(values[0].tightening, values[1].tightening) ? 1U : 0U;
    }
    CHECK(roles.size() == all_roles().size());
    CHECK(unvalued == std::set<std::string>{"Path sweeper C, wheel nuts", "Yard carrier A, drain plug",
                                            "Yard carrier B, inspection cover screws"});
    CHECK(disagreeing == 2);
}

TEST_CASE("the demo is the same book each time, and overwrites nothing") {
    data_tests::TemporaryFolder folder;
    const std::string first = (folder / "one.db").string();
    const std::string second = (folder / "two.db").string();
    intake::write_demo(first, curated());
    intake::write_demo(second, curated());
    CHECK((data_tests::read_file(first) == data_tests::read_file(second)));
    data_tests::write_file(second, "mine");
    CHECK(refusal(ErrorKind::conflict, [&] { return intake::write_demo(second, curated()), 0; }) ==
          "'" + second + "' exists already; a new book needs a new name");
    CHECK(data_tests::read_file(second) == "mine");
    std::set<std::string> left;
    for (const auto& entry : fs::directory_iterator{folder / "."}) {
        left.insert(entry.path().filename().string());
    }
    CHECK(left == std::set<std::string>{"one.db", "two.db"});
}
