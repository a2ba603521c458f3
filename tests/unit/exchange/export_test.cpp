// SPDX-License-Identifier: MIT
// The export file: what is written is read back, part by part, and what is no such file is told with its place.

#include "clampbook/exchange/export.hpp"
#include "support.hpp"

#include <catch2/catch.hpp>

#include <sstream>

namespace {

using namespace clampbook;
using namespace clampbook::exchange;

struct Parts {
    std::vector<Source> sources;
    std::vector<MachineRecord> machines;
    std::vector<JointRecord> joints;
    std::vector<std::string> faults;
};

Parts parts_of(const std::string& text) {
    std::istringstream in{text};
    Parts out;
    read_export(in, "book.json",
                {[&](const Source& source, const std::string&) { out.sources.push_back(source); },
                 [&](const MachineRecord& machine, const std::string&) { out.machines.push_back(machine); },
                 [&](const JointRecord& joint, const std::string&) { out.joints.push_back(joint); },
                 [&](const Error& fault) { out.faults.emplace_back(fault.what()); }});
    return out;
}

std::string written(const Parts& parts) {
    std::ostringstream out;
    ExportWriter writer{out};
    for (const Source& source : parts.sources) {
        writer.source(source);
    }
    for (const MachineRecord& machine : parts.machines) {
        writer.machine(machine);
    }
    for (const JointRecord& joint : parts.joints) {
        writer.joint(joint);
    }
    writer.finish();
    return out.str();
}

Parts whole() {
    Parts parts;
    parts.sources.push_back(
        {0, "manual", "M \"1\"", "N", "2", "2020-01-01", "shelf", "", "a note", "Ann", "2026-11-25T10:15:00Z"});
    parts.machines.push_back({{0, "maker", "X", "wide", "1999", "K", "old"}, {{0, 0, "box", "note"}, {0, 0, "axle", ""}}});
    JointRecord joint;
    joint.machine = parts.machines[0].machine;
    joint.assembly.name = "box";
    joint.joint.name = "drain plug";
    joint.joint.role = Role::drain;
    joint.joint.engagement_mm = 12.7;
    Value value;
    value.id = 1;
    value.tightening = read_tightening("30–36 N·m");
    value.source = parts.sources[0];
    value.entered_by = "Ann";
    value.entered_on = "2026-11-25";
    value.checked_by = "Bob";
    value.checked_on = "2026-11-26";
    value.check_as_written = "30-36 N·m";
    value.standing = Standing::superseded;
    value.superseded_by = 2;
    value.end_reason = "reprint";
    value.ended_by = "Cid";
    value.ended_on = "2026-11-27";
    joint.values.push_back(value);
    Value next;
    next.id = 2;
    next.tightening = read_tightening("40 N·m");
    next.entered_by = "Cid";
    next.entered_on = "2026-11-27";
    joint.values.push_back(next);
    parts.joints.push_back(joint);
    return parts;
}

std::string refused(const std::string& text) {
    return unit_tests::refusal(ErrorKind::invalid_data, [&] { return parts_of(text); });
}

const std::string k_head = "{\"schema\": \"clampbook/export/v1\", ";

} // namespace

TEST_CASE("what is written is read back") {
    const std::string text = written(whole());
    const Parts back = parts_of(text);
    CHECK(back.faults.empty());
    REQUIRE(back.joints.size() == 1);
    REQUIRE(back.joints[0].values.size() == 2);
    const Value& value = back.joints[0].values[0];
    CHECK(value.tightening == read_tightening("30–36 N·m"));
    CHECK(value.source->title == "M \"1\"");
    CHECK(value.check_as_written == "30-36 N·m");
    CHECK(value.superseded_by == 2);
    CHECK(value.ended_on == "2026-11-27");
    CHECK(back.sources[0].added_at == "2026-11-25T10:15:00Z");
    CHECK(back.machines[0].assemblies[1].name == "axle");
    CHECK(written(back) == text);
    CHECK(parts_of(written({})).joints.empty());
}

TEST_CASE("what is no export is refused with its place") {
    CHECK(refused("").starts_with("book.json:1:1: no JSON: "));
    CHECK(refused("[]").starts_with("book.json: is no export of clampbook"));
    CHECK(refused("{}").starts_with("book.json: is no export of clampbook"));
    CHECK(refused("{\"sources\": []}").starts_with("book.json: is no export of clampbook"));
    CHECK(refused("{\"schema\": [\"clampbook/export/v1\"]}").starts_with("book.json: is no export of clampbook"));
    CHECK(refused("{\"schema\": \"clampbook/export/v2\"}").starts_with("book.json: is no export of clampbook"));
    CHECK(refused(k_head + "\"joints\": {}}") == "book.json: 'joints' must be a list");
    CHECK(refused(k_head + "\"joints\": 5}") == "book.json: 'joints' must be a list");
    CHECK(refused(k_head + "\"joint\": []}") == "book.json: 'joint' is not known here");
    CHECK(refused(k_head + "\"joints\": [}").starts_with("book.json:1:46: no JSON: "));
}

TEST_CASE("each part that doesn't fit is told, and those around it are read") {
    const auto fault_of = [](const std::string& from, const std::string& to) {
        std::string text = written(whole());
        const std::size_t at = text.find(from);
        REQUIRE(at != std::string::npos);
        text.replace(at, from.size(), to);
        const Parts parts = parts_of(text);
        REQUIRE(parts.faults.size() == 1);
        CHECK(parts.sources.size() + parts.machines.size() + parts.joints.size() == 2);
        return parts.faults[0];
    };
    CHECK(fault_of("\"title\":\"M", "\"titel\":\"M") == "book.json: source 1: 'title' is missing");
    CHECK(fault_of("\"kept\":\"shelf\"", "\"kept\":\"shelf\",\"x\":1")
              .starts_with("book.json: source 1 (M \"1\"): 'x' is not known here"));
    CHECK(fault_of("\"kept\":\"shelf\"", "\"kept\":\"a\\nb\"").find("line end") != std::string::npos);
    CHECK(fault_of("\"model\":\"X\",\"variant\":\"wide\",\"years\"", "\"model\":\"\",\"variant\":\"wide\",\"years\"") ==
          "book.json: machine 1 (): 'model' must be a text that is not empty, not \"\"");
    CHECK(fault_of("\"count\":1", "\"count\":1000") == "book.json: joint 1 (drain plug): 'count' must be 1 to 999, not 1000");
    CHECK(fault_of("\"engagement_mm\":12.7", "\"engagement_mm\":\"12.7\"")
              .ends_with("'engagement_mm' must be a number or null, not \"12.7\""));
    CHECK(fault_of("\"safety_critical\":false", "\"safety_critical\":0")
              .ends_with("'safety_critical' must be true or false, not 0"));
    CHECK(fault_of("30–36 N·m", "30–36").starts_with("book.json: joint 1 (drain plug): value 1: as_written: "));
    CHECK(fault_of("\"label\":\"shop\"", "\"label\":\"shops\"")
              .starts_with("book.json: joint 1 (drain plug): value 1: label: 'shops'"));
    CHECK(fault_of("\"by_value\":2", "\"by_value\":3").find("the place of another value of this joint") != std::string::npos);
    CHECK(fault_of("\"by_value\":2", "\"by_value\":1").find("the place of another value of this joint") != std::string::npos);
    CHECK(fault_of("superseded", "withdrawn").ends_with("end: 'by_value' must be null, not 2"));
    CHECK(fault_of("superseded", "gone").ends_with("end: 'standing' must be superseded or withdrawn, not \"gone\""));
    CHECK(fault_of("\"machine\":{\"maker\":\"maker\",\"model\":\"X\",\"variant\":\"wide\"}", "\"machine\":null")
              .ends_with("'machine' must be an object, not null"));
}
