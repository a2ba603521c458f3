// SPDX-License-Identifier: MIT
// The book's records: told once, told twice, told in one go, kept in the chain of events, and found by their words.

#include "clampbook/base/digest.hpp"
#include "shop.hpp"

#include <catch2/catch.hpp>

using namespace unit_tests;

TEST_CASE("records come back as they were told, after the book was shut") {
    Shop shop;
    const Source told{0, "manual", "Manual X", "WM-1", "4", "2022-11-10", "shelf 3", "ab12", "spine torn"};
    const RecordId source = shop.book.add_source(told, k_stamp);
    Joint joint{0,         shop.assembly, "Pump screw",  Role::pump, 6,    "M10",     "8.8",
                "hexagon", "copper",      "EN AC-46000", 14.5,       true, "oil them"};
    joint.id = shop.book.add_joint(joint, k_stamp);
    Value value = value_of(joint.id, "50 N·m + 90°");
    value.label = Label::maker;
    value.source = told;
    value.source->id = source;
    value.page = "p. 12";
    value.note = "cold";
    value.confirmed = "seen twice";
    value.id = shop.book.add_value(value, k_stamp);

    const Book book{shop.path, Access::read};
    const auto machine = book.find_machine({0, "MAKER", "carrier  a", "Wide", "", "", ""});
    REQUIRE(machine);
    CHECK(machine->id == shop.machine);
    CHECK(machine->years == "1999–2004");
    CHECK(machine->code == "K7");
    CHECK_FALSE(book.find_machine({0, "Maker", "Carrier A", "", "", "", ""}));
    REQUIRE(book.assemblies(shop.machine).size() == 1);
    CHECK(book.find_assembly(shop.machine, "rear  axle")->name == "Rear Axle");
    CHECK_FALSE(book.find_assembly(shop.machine + 1, "Rear Axle"));
    const auto found = book.find_joint(shop.assembly, "PUMP SCREW");
    REQUIRE(found);
    CHECK(found->id == joint.id);
    CHECK(found->role == Role::pump);
    CHECK(found->count == 6);
    CHECK((found->thread + found->property_class + found->form + found->ring + found->housing + found->note) ==
          "M108.8hexagoncopperEN AC-46000oil them");
    CHECK(found->engagement_mm == 14.5);
    CHECK(found->safety_critical);
    CHECK(book.place(joint.id)->machine.model == "Carrier A");
    CHECK_FALSE(book.place(99));
    CHECK(book.places().size() == 3);
    const auto sources = book.sources();
    REQUIRE(sources.size() == 1);
    CHECK(sources[0].line() == told.line());
    CHECK((sources[0].kept + sources[0].file_digest + sources[0].note) == "shelf 3ab12spine torn");
    CHECK(book.find_source({0, "", "manual x", "wm-1", "4", "", "", "", ""})->id == source);
    const auto values = book.values(joint.id);
    REQUIRE(values.size() == 1);
    CHECK(values[0].id == value.id);
    CHECK(values[0].label == Label::maker);
    CHECK(values[0].tightening == value.tightening);
    CHECK(values[0].source->id == source);
    CHECK((values[0].page + values[0].note + values[0].confirmed) == "p. 12coldseen twice");
    CHECK(values[0].entered_by == "Bob");
    CHECK(values[0].entered_on == "2026-11-24");
    CHECK(values[0].standing == Standing::current);
    CHECK_FALSE(values[0].is_checked());
    const book::Info info = book.info();
    CHECK(std::array{info.machines, info.assemblies, info.joints, info.joints_without_value, info.values, info.checked_values,
                     info.sources, info.people} == std::array<std::size_t, 8>{1, 1, 3, 1, 2, 0, 1, 2});
}

TEST_CASE("a check and an end are read with the value") {
    Shop shop;
    shop.raw().exec("INSERT INTO person VALUES (7, 'Dora', 'dora'); INSERT INTO value_check VALUES (1, '32', 7, '2026-11-30');"
                    "INSERT INTO value_end VALUES (1, 'withdrawn', NULL, 'wrong plug', 7, '2026-12-01')");
    const Value value = shop.book.values(shop.drain).at(0);
    CHECK(value.checked_by == "Dora");
    CHECK(value.checked_on == "2026-11-30");
    CHECK(value.standing == Standing::withdrawn);
    CHECK(shop.book.info().joints_without_value == 2);
}

TEST_CASE("a record of a name that is there already is a conflict, however it is spelled") {
    Shop shop;
    (void)shop.book.add_source({0, "manual", "Manual X", "WM-1", "4", "", "", "", ""}, k_stamp);
    const std::string before = shop.book.info().head;
    CHECK(refusal(ErrorKind::conflict, [&] {
              return shop.book.add_machine({0, "maker", "CARRIER A", "wide", "", "", ""}, k_stamp);
          }) == "the machine 'CARRIER A, wide' is in the book already");
    CHECK(refusal(ErrorKind::conflict, [&] {
              return shop.book.add_assembly({0, shop.machine, "rear  axle", ""}, k_stamp);
          }) == "the assembly 'rear  axle' is in the book already");
    CHECK(refusal(ErrorKind::conflict, [&] { return shop.add_joint("Drain Plug", Role::other, ""); }) ==
          "the joint 'Drain Plug' is in the book already");
    CHECK(refusal(ErrorKind::conflict, [&] {
              return shop.book.add_source({0, "plate", "MANUAL X", "wm-1", "4", "", "", "", ""}, k_stamp);
          }) == "the source 'MANUAL X, wm-1, edition 4' is in the book already");
    CHECK(refusal(ErrorKind::conflict, [&] { return shop.book.add_assembly({0, 99, "hub", ""}, k_stamp); }) != "accepted");
    CHECK(refusal(ErrorKind::usage, [&] {
              return shop.book.add_source({0, "k", "T", "", "", "", "", "", ""}, {" ", k_stamp.at});
          }).starts_with("nobody is named"));
    CHECK(shop.book.info().head == before);
    // the same name elsewhere, and another edition, are other records
    const RecordId other = shop.book.add_machine({0, "Maker", "Carrier A", "narrow", "", "", ""}, k_stamp);
    CHECK(shop.book.add_assembly({0, other, "Rear Axle", ""}, k_stamp) != shop.assembly);
    CHECK(shop.book.add_source({0, "manual", "Manual X", "WM-1", "5", "", "", "", ""}, k_stamp) == 2);
}

TEST_CASE("each telling leaves an event whose hash covers the one before") {
    Shop shop;
    SQLite::Database db = shop.raw();
    SQLite::Statement query{db,
                            "SELECT seq, at, person, kind, coalesce(joint, '-'), coalesce(value, '-'), detail, previous, hash "
                            "FROM event ORDER BY seq"};
    std::string previous(64, '0');
    std::vector<std::string> kinds;
    std::string last_detail;
    while (query.executeStep()) {
        const auto text = [&](int column) { return query.getColumn(column).getString(); };
        CHECK(text(0) == std::to_string(kinds.size() + 1));
        CHECK(text(7) == previous);
        std::string line = previous + "\n";
        for (int i = 0; i < 7; ++i) {
            line += text(i) + "\n";
        }
        CHECK(text(8) == hex_of(sha256(line)));
        previous = text(8);
        kinds.push_back(text(3));
        last_detail = text(6);
    }
    CHECK(kinds == std::vector<std::string>{"book made", "machine added", "assembly added", "joint added", "joint added",
                                            "value entered"});
    CHECK(last_detail.find(R"("as_written":"32 ± 3 N·m")") != std::string::npos);
    CHECK(db.execAndGet("SELECT value FROM book_info WHERE key = 'event.count'").getString() == "6");
    CHECK(db.execAndGet("SELECT value FROM book_info WHERE key = 'event.head'").getString() == previous);
    CHECK(shop.book.info().head == previous);
    CHECK(shop.book.info().events == 6);
    CHECK(shop.book.info().last_event_at == k_stamp.at);
    const auto history = shop.book.history(shop.drain);
    REQUIRE(history.size() == 2);
    CHECK(history[0].kind == "joint added");
    CHECK(history[1].kind == "value entered");
    CHECK(history[1].person == "Ann");
    CHECK(history[1].at == k_stamp.at);
}

TEST_CASE("an event tells a text letter for letter, whatever its letters mean in JSON") {
    Shop shop;
    for (const char* note : {R"(a "bolt" \ a nut)", R"("")", "\\", "", "plain"}) {
        Value value = value_of(shop.cover, "24 N·m");
        value.note = note;
        shop.book.add_value(value, k_stamp);
        INFO(note);
        SQLite::Database db = shop.raw();
        CHECK(db.execAndGet("SELECT json_extract(detail, '$.note') FROM event ORDER BY seq DESC LIMIT 1").getString() == note);
    }
}

TEST_CASE("what is told in one go is kept whole or not at all") {
    Shop shop;
    const std::string before = content_of(shop.path);
    const auto half = [&](const auto& fault) {
        return [&] {
            shop.book.in_one_go([&] {
                const RecordId m = shop.book.add_machine({0, "M", "Y", "", "", "", ""}, {"Carl", k_stamp.at});
                shop.book.in_part([&] { (void)shop.book.add_assembly({0, m, "box", ""}, k_stamp); });
                (void)shop.add_joint("third", Role::other, "");
                throw fault;
            });
            return 0;
        };
    };
    CHECK(refusal(ErrorKind::not_found, half(Error{ErrorKind::not_found, "gone"})) == "gone");
    CHECK(refusal(ErrorKind::internal, half(std::runtime_error{"lightning"})) ==
          "'" + shop.path + "': lightning; nothing was changed");
    CHECK(content_of(shop.path) == before);
    shop.book.in_one_go([&] { (void)shop.add_joint("third", Role::other, ""); });
    CHECK(content_of(shop.path) != before);
    // a value whose steps the book refuses is not kept without them
    Value broken = value_of(shop.drain, "5 N·m");
    broken.tightening.steps.front().low = 9;
    CHECK(refusal(ErrorKind::conflict, [&] { return shop.book.add_value(broken, k_stamp); }) != "accepted");
    CHECK(shop.book.values(shop.drain).size() == 1);
}

TEST_CASE("joints are found by beginnings of words, phrases, roles and threads") {
    Shop shop;
    const RecordId other = shop.book.add_machine({0, "Maker", "Axle carrier B", "", "", "", ""}, k_stamp);
    Joint joint;
    joint.assembly = shop.book.add_assembly({0, other, "Öl-Kasten", ""}, k_stamp);
    joint.name = "plug of the drain";
    joint.role = Role::drain;
    joint.thread = "3/8-16 UNC";
    const RecordId second = shop.book.add_joint(joint, k_stamp);
    const auto found = [&](const std::vector<book::SearchGroup>& groups) {
        std::vector<RecordId> ids;
        for (const book::Place& place : shop.book.search(groups, 9).places) {
            ids.push_back(place.joint.id);
        }
        std::ranges::sort(ids);
        return ids;
    };
    using Ids = std::vector<RecordId>;
    CHECK(found({{{"dra"}, {}, {}, {}}}) == Ids{shop.drain, second});
    CHECK(found({{{"drain", "ax"}, {}, {}, {}}}) == Ids{shop.drain, second});
    CHECK(found({{{"a"}, {}, {}, {}}}) == Ids{shop.drain, shop.cover}); // the model, not every word with an a
    CHECK(found({{{"ol"}, {}, {}, {}}, {{"kasten"}, {}, {}, {}}}) == Ids{second});
    CHECK(found({{{"dra"}, {}, {}, {}}, {{"rear"}, {}, {}, {}}}) == Ids{shop.drain});
    CHECK(found({{{}, {{"of", "the", "dr"}}, {}, {}}}) == Ids{second});
    CHECK(found({{{}, {}, {Role::cover}, {}}}) == Ids{shop.cover});
    CHECK(found({{{}, {}, {}, book::thread_word("M18x1.5")}}) == Ids{shop.drain});
    CHECK(found({{{}, {}, {}, book::thread_size_word("M18")}}) == Ids{shop.drain});
    CHECK(found({{{}, {}, {}, book::thread_word("M18")}}).empty()); // the coarse one is another thread
    CHECK(found({{{}, {}, {}, book::thread_word("3/8-16 UNC")}}) == Ids{second});
    CHECK(found({{{}, {}, {}, book::thread_size_word("M1")}}).empty());
    CHECK(found({{{"gone"}, {{"cover"}}, {}, {}}}) == Ids{shop.cover});
    CHECK(found({}).empty());
    const book::SearchResult one = shop.book.search({{{"plug"}, {}, {}, {}}}, 1);
    CHECK(one.places.size() == 1);
    CHECK(one.total == 2);
    CHECK(shop.book.names() == std::vector<std::string>{"Axle carrier B", "Carrier A", "Maker", "Rear Axle", "cover screws",
                                                        "drain plug", "plug of the drain", "Öl-Kasten"});
}

TEST_CASE("a thread is one word that no other thread has") {
    CHECK(book::thread_word("M18x1.5") == "m18x1p5");
    CHECK(book::thread_word("M18") == "m18coarse"); // the size alone finds every pitch
    CHECK(book::thread_size_word("M18") == "m18");
    CHECK(book::thread_word("3/8-16 UNC") == "3q8z16unc");
    CHECK(book::thread_word("#10-32 UNF") == "no10z32unf");
    CHECK(book::thread_word("1-1/8-12 UNF") == "1z1q8z12unf");
    CHECK(book::thread_word("G1/2") == "g1q2");
}

TEST_CASE("a beginning that very many words have finds all of them") {
    Shop shop;
    for (char letter = 'a'; letter <= 'z'; ++letter) {
        Joint joint;
        joint.assembly = shop.assembly;
        joint.name = std::string{"shim"} + letter + "x";
        shop.book.add_joint(joint, k_stamp);
    }
    const auto found = [&](const std::string& word) { return shop.book.search({{{word}, {}, {}, {}}}, 99).total; };
    CHECK(found("shim") == 26);
    CHECK(found("shimq") == 1);
    CHECK(found("shimqy") == 0);
}

TEST_CASE("more people than are remembered are each one person") {
    Shop shop;
    shop.book.in_one_go([&] {
        for (int i = 0; i < 40; ++i) {
            Value value = value_of(shop.cover, std::to_string(20 + i) + " N·m");
            value.entered_by = "Fitter " + std::to_string(i % 20);
            shop.book.add_value(value, k_stamp);
        }
    });
    CHECK(shop.book.verify().empty());
    CHECK(shop.raw().execAndGet("SELECT count(*) FROM person WHERE name GLOB 'Fitter *'").getInt() == 20);
}

TEST_CASE("a name that nobody can type, and a value that is not there, are refused") {
    Shop shop;
    const auto by = [&](const std::string& name) {
        Value value = value_of(shop.cover, "24 N·m");
        value.entered_by = name;
        return refusal(ErrorKind::usage, [&] { return shop.book.add_value(value, k_stamp); });
    };
    CHECK(by(" ") == "nobody is named; say who with --by NAME or in CLAMPBOOK_BY");
    CHECK(by("Ann\nBob").find("is no name: it holds a line end") != std::string::npos);
    CHECK(by("Ann\xff").find("is not UTF-8 text") != std::string::npos);
    const auto check = [&] {
        shop.book.check_value(99, {"24 N·m", "Ann", "2026-11-25"}, k_stamp);
        return 0;
    };
    CHECK(refusal(ErrorKind::not_found, check) == "there is no value #99 in the book");
}
