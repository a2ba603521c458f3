// SPDX-License-Identifier: MIT
// The technician's lookup over the invented demo: words in any order, five languages, threads, single letters; and what is
// said of the joints that are found.

#include "../../data/support.hpp"
#include "clampbook/answer/find.hpp"
#include "clampbook/answer/query.hpp"
#include "clampbook/answer/records.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/intake/intake.hpp"
#include "demo.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

namespace {

using namespace clampbook;
using answer::FindAnswer;
using answer::FoundJoint;
using unit_tests::curated;
using unit_tests::demo;
using unit_tests::refusal;

FindAnswer found(const std::string& words, bool wide = false, std::size_t at_most = 1000) {
    return answer::find(demo(), curated(), {words, wide, at_most});
}

std::set<RecordId> ids(const FindAnswer& answer) {
    std::set<RecordId> out;
    for (const FoundJoint& match : answer.matches) {
        out.insert(match.place.joint.id);
    }
    return out;
}

std::set<RecordId> joints_where(const std::function<bool(const book::Place&)>& fits) {
    std::set<RecordId> out;
    for (const book::Place& place : demo().places()) {
        if (fits(place)) {
            out.insert(place.joint.id);
        }
    }
    return out;
}

// The one joint that the words find.
FoundJoint only(const std::string& words) {
    const FindAnswer answer = found(words);
    INFO(words);
    REQUIRE(answer.total == 1);
    return answer.matches.front();
}

bool cautions(const FoundJoint& joint, std::string_view code) {
    return std::ranges::find(joint.cautions, code, &Caution::code) != joint.cautions.end();
}

book::Place named(const std::string& words) { return answer::joint_named(demo(), curated(), words); }

} // namespace

TEST_CASE("a search is taken apart into threads and words") {
    const auto plan = [](const std::string& words) { return answer::search_plan(curated(), words).literal; };
    const auto threads = [&](const std::string& words) {
        std::string out;
        for (const book::SearchGroup& group : plan(words)) {
            out += "[" + group.thread + join(group.words, " ") + "]";
        }
        return out;
    };
    CHECK(threads("M18x1.5") == "[m18x1p5]");
    CHECK(threads("m18 x 1,5 drain") == "[m18x1p5][drain]");
    CHECK(threads("drain M18×1,5 plug") == "[m18x1p5][drain][plug]");
    CHECK(threads("m18") == "[m18]");
    CHECK(threads("3/8-16") == "[3q8z16unc]");
    CHECK(threads("3/8-24 unf plug") == "[3q8z24unf][plug]");
    CHECK(threads("G 1/2") == "[g1q2]");
    CHECK(threads("NPT 1/2 hose") == "[1q2z14npt][hose]");
    CHECK(threads("1/2-14 npt") == "[1q2z14npt]");
    CHECK(threads("Yard-carrier A") == "[yard][carrier][a]");
    CHECK(threads("Öl ABLASS") == "[ol][ablass]");
    for (const char* empty : {"", "  ", "--", "?!"}) {
        CHECK(refusal(ErrorKind::usage, [&] { return plan(empty); }) == "'" + std::string{empty} + "' holds no word to look for");
    }
}

TEST_CASE("other names for the same thing widen a search, and nothing else does") {
    const auto wide = [](const std::string& words) { return answer::search_plan(curated(), words).wide; };
    CHECK_FALSE(wide("quux 77"));
    CHECK_FALSE(wide("M18x1.5"));
    const auto plan = wide("m18 bouchon vidange de quux");
    REQUIRE(plan);
    REQUIRE(plan->size() == 3);
    // Several of a thing are looked up as one of it, unless another word is meant: engrasado is no engrasador.
    CHECK(wide("Ablassschrauben")->at(0).roles == std::vector<Role>{Role::drain});
    CHECK(wide("drain plugs")->at(0).words == std::vector<std::string>{"drain", "plugs"});
    CHECK(wide("engrasador")->at(0).phrases != wide("engrasado")->at(0).phrases);
    CHECK(plan->at(0).thread == "m18");
    CHECK(plan->at(1).words == std::vector<std::string>{"bouchon", "vidange"}); // a little word is no condition
    CHECK(plan->at(1).roles == std::vector<Role>{Role::drain});
    const auto& phrases = plan->at(1).phrases;
    CHECK(std::ranges::find(phrases, std::vector<std::string>{"drain", "plug"}) != phrases.end());
    CHECK(std::ranges::find(phrases, std::vector<std::string>{"avtappningsplugg"}) != phrases.end());
    CHECK(plan->at(2).words == std::vector<std::string>{"quux"});
}

TEST_CASE("every preferred trade word of a joint's role finds all joints of that role, in five languages") {
    std::set<std::string> languages;
    std::size_t words = 0;
    for (const reference::Word& word : curated().words()) {
        if (word.role.empty() || !word.preferred) {
            continue;
        }
        const auto there = ids(found(word.text, true));
        const Role role = read_role(word.role);
        const auto wanted = joints_where([&](const book::Place& place) { return place.joint.role == role; });
        INFO(word.language << " '" << word.text << "' for role " << word.role);
        CHECK(std::ranges::includes(there, wanted));
        languages.insert(word.language);
        ++words;
    }
    CHECK(languages.size() == 5);
    CHECK(words > 30);
}

TEST_CASE("words may stand in any order and be cut short") {
    const auto wanted = joints_where(
        [](const book::Place& place) { return place.assembly.name == "front axle drive" && place.joint.name == "drain plug"; });
    CHECK(wanted.size() == 3);
    for (const char* words :
         {"drain front axle drive", "drive axle front drain", "drai fron axl driv", "DRAIN plug Front Axle"}) {
        INFO(words);
        CHECK(ids(found(words)) == wanted);
    }
}

TEST_CASE("a single letter is the model that bears it") {
    const auto of_a = joints_where([](const book::Place& place) { return place.machine.model == "Yard carrier A"; });
    CHECK(ids(found("yard carrier a")) == of_a);
    CHECK(ids(found("A carrier yard")) == of_a);
    const FindAnswer drain = found("drain plug yard carrier a");
    CHECK(ids(drain) == joints_where([](const book::Place& place) {
              return place.machine.model == "Yard carrier A" && place.joint.role == Role::drain;
          }));
}

TEST_CASE("a thread finds the joints that have it and no others") {
    const auto with = [](const std::string& code) {
        return joints_where([&](const book::Place& place) { return place.joint.thread == code; });
    };
    for (const char* code : {"M18x1.5", "M10x1", "G1/2", "1/2-14 NPT", "R3/4"}) {
        INFO(code);
        CHECK_FALSE(with(code).empty());
        CHECK(ids(found(code)) == with(code));
    }
    CHECK(ids(found("m14")) == joints_where([](const book::Place& place) { return place.joint.thread.starts_with("M14"); }));
    CHECK(ids(found("M18x1.5 yard carrier a")) == joints_where([](const book::Place& place) {
              return place.joint.thread == "M18x1.5" && place.machine.model == "Yard carrier A";
          }));
    CHECK(ids(found("M10x1.5")) == with("M10")); // coarse, pitch and all: not the fine ones
}

TEST_CASE("very words come first, other words for the same thing are counted or asked for") {
    const FindAnswer literal = found("sump plug");
    CHECK(literal.total == 2);
    CHECK(literal.other_words == 18);
    const FindAnswer wide = found("sump plug", true);
    CHECK(wide.total == 20);
    CHECK(wide.other_words == 0);
    CHECK(std::ranges::includes(ids(wide), ids(literal)));
    const FindAnswer some = found("sump plug", true, 5);
    CHECK(some.matches.size() == 5);
    CHECK(some.total == 20);
    CHECK(found("drain bolt").total >= 20); // no joint is called so
}

TEST_CASE("what is not found is told with names near it, each once") {
    const FindAnswer none = found("frnt axle");
    CHECK(none.total == 0);
    REQUIRE(!none.nearest.empty());
    CHECK(none.nearest.front() == "front axle");
    std::set<std::string> folded;
    for (const std::string& name : found("radmuter").nearest) {
        INFO(name);
        CHECK(folded.insert(fold(name)).second);
    }
    CHECK(folded.contains("radmutter"));
}

TEST_CASE("a joint is told with ring, values in both units, and disagreement") {
    const FoundJoint both = only("yard carrier a rear axle drive drain");
    CHECK(both.ring == "copper ring 18×22×1.5 mm (usual size)");
    CHECK(both.renew == "renew at every opening");
    REQUIRE(both.values.size() == 2);
    CHECK(both.values[0].in_newton_metres == "39.3 N·m");
    CHECK(both.values[1].in_pound_feet == "25.1 lbf·ft");
    CHECK(both.disagreement == "2 current values, and they disagree: 29 lbf·ft against 34 N·m");
    CHECK(both.derive_command.empty());
    CHECK(both.no_generic.empty());
    for (const char* code : {"fill-first", "demo", "maker-first"}) {
        CHECK(cautions(both, code));
    }
    CHECK_FALSE(cautions(both, "safety-critical"));
    const FoundJoint turns = only("snow blower front axle drive drain");
    CHECK(turns.values.at(0).in_newton_metres.empty());
    CHECK(turns.disagreement.empty());
    CHECK(turns.ring.empty());
}

TEST_CASE("without a value a generic figure is offered for a screw alone") {
    const FoundJoint wheel = only("wheel nuts path sweeper");
    CHECK(wheel.current().empty());
    CHECK(wheel.derive_command.empty());
    CHECK(wheel.no_generic.starts_with("No generic figure stands in for a missing one on a safety-critical joint"));
    CHECK(cautions(wheel, "safety-critical"));
    const FoundJoint plug = only("drop box drain yard carrier a");
    CHECK(plug.derive_command == "clampbook plug M18x1.5 --housing EN-GJL-250 --ring copper --engagement 12mm");
    CHECK(plug.no_generic.empty());
    const FoundJoint screws = only("transfer case inspection cover");
    CHECK(screws.derive_command == "clampbook derive M8 8.8");
    CHECK(screws.no_generic.empty());
}

TEST_CASE("one joint is named by its number or by words that fit it alone") {
    CHECK(named("#90").joint.id == 90);
    CHECK(named(" 90 ").joint.id == 90);
    CHECK(named("transfer case inspection cover").joint.name == "inspection cover screws");
    CHECK(named("Path sweeper C bevel gearbox drain plug").assembly.name == "bevel gearbox");
    CHECK(refusal(ErrorKind::not_found, [] { return named("#9999"); }) == "there is no joint #9999 in the book");
    CHECK(refusal(ErrorKind::not_found, [] { return named("frnt axle"); }).find("near it: front axle") != std::string::npos);
    const std::string many = refusal(ErrorKind::conflict, [] { return named("drain front axle drive"); });
    CHECK(many.starts_with("'drain front axle drive' fits 3 joints; give more words or the number of one:\n"));
    CHECK(many.find("#83 Yard carrier A, narrow track, front axle drive, drain plug") != std::string::npos);
    CHECK(refusal(ErrorKind::usage, [] { return named("  "); }) != "accepted");
    CHECK(answer::joint(demo(), curated(), 90).place.joint.id == 90);
}

TEST_CASE("machines and assemblies are named, and the tables of the book count what it holds") {
    CHECK(answer::machine_named(demo(), "yard carrier a").model == "Yard carrier A");
    CHECK(answer::machine_named(demo(), "Yard carrier B, wide track").variant == "wide track");
    CHECK(answer::machine_named(demo(), "#1").id == 1);
    CHECK(refusal(ErrorKind::not_found, [] {
              return answer::machine_named(demo(), "yard carier a");
          }).find("did you mean 'Yard carrier A'?") != std::string::npos);
    const Machine machine = answer::machine_named(demo(), "path sweeper c");
    CHECK(answer::assembly_named(demo(), machine, "Bevel  GEARBOX").name == "bevel gearbox");
    CHECK(refusal(ErrorKind::not_found, [&] {
              return answer::assembly_named(demo(), machine, "bevel gearbx");
          }).find("did you mean 'bevel gearbox'?") != std::string::npos);
    CHECK(answer::machines(demo()).rows.size() == 6);
    CHECK(answer::sources(demo()).rows.size() == 6);
    CHECK(answer::joints(demo(), std::nullopt).rows.size() == demo().info().joints);
    CHECK(answer::machine(demo(), machine).rows.size() == answer::joints(demo(), machine).rows.size());
    CHECK(answer::assemblies(demo(), machine).rows.size() == demo().assemblies(machine.id).size());
    CHECK(answer::history(demo(), named("#90")).rows.size() == 3); // told of once, and two values
}
