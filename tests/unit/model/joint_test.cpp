// SPDX-License-Identifier: MIT
// Roles of joints by their stable names, and records in one line.

#include "clampbook/model/joint.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace clampbook;

TEST_CASE("roles have stable names") {
    const std::vector<std::string> names{"drain",  "fill",    "level", "vent",  "cover",    "pump",  "filter", "sensor",
                                         "flange", "bearing", "wheel", "brake", "steering", "mount", "other"};
    REQUIRE(all_roles().size() == names.size());
    for (std::size_t i = 0; i < names.size(); ++i) {
        const Role role = all_roles()[i];
        INFO(names[i]);
        CHECK(role_name(role) == names[i]);
        CHECK(static_cast<std::size_t>(role) == i);
        CHECK(read_role(names[i]) == role);
        CHECK(read_role(" " + names[i] + " ") == role);
        CHECK((role == Role::other) == role_words(role).empty());
    }
    CHECK(read_role("Drain") == Role::drain);
    CHECK(unit_tests::refusal(ErrorKind::usage, [] { return read_role("drian"); }) ==
          "'drian' is no role of a joint (did you mean 'drain'?); the roles are drain, fill, level, vent, cover, pump, filter, "
          "sensor, "
          "flange, bearing, wheel, brake, steering, mount, other");
}

TEST_CASE("plugs and safety-critical joints are told apart from the others") {
    std::set<Role> plugs;
    std::set<Role> critical;
    for (const Role role : all_roles()) {
        if (is_plug(role)) {
            plugs.insert(role);
        }
        if (is_safety_critical(role)) {
            critical.insert(role);
        }
    }
    CHECK(plugs == std::set{Role::drain, Role::fill, Role::level, Role::vent});
    CHECK(critical == std::set{Role::wheel, Role::brake, Role::steering});
}

TEST_CASE("records are told in one line") {
    Machine machine;
    machine.model = "Yard carrier A";
    CHECK(machine.title() == "Yard carrier A");
    machine.variant = "wide track";
    CHECK(machine.title() == "Yard carrier A, wide track");
    Source source;
    source.title = "Workshop manual";
    CHECK(source.line() == "Workshop manual");
    source.edition = "3";
    CHECK(source.line() == "Workshop manual, edition 3");
    source.number = "WM 12";
    source.date = "2020-05-01";
    CHECK(source.line() == "Workshop manual, WM 12, edition 3, 2020-05-01");
    CHECK(standing_name(Standing::current) == "current");
    CHECK(standing_name(Standing::superseded) == "superseded");
    CHECK(standing_name(Standing::withdrawn) == "withdrawn");
}
