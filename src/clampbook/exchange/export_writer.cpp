// SPDX-License-Identifier: MIT
// The export written, part by part; export.cpp reads it.

#include "clampbook/exchange/export.hpp"

#include <nlohmann/json.hpp>

#include <ostream>

namespace clampbook::exchange {
namespace {

using Json = nlohmann::ordered_json;

Json names_of(const Machine& m) { return {{"maker", m.maker}, {"model", m.model}, {"variant", m.variant}}; }
Json names_of(const Source& s) { return {{"title", s.title}, {"number", s.number}, {"edition", s.edition}}; }

Json json_of(const Value& v) {
    Json out{{"as_written", v.tightening.as_written},
             {"label", label_name(v.label)},
             {"source", v.source ? names_of(*v.source) : Json(nullptr)},
             {"page", v.page},
             {"note", v.note},
             {"confirmed", v.confirmed},
             {"entered_by", v.entered_by},
             {"entered_on", v.entered_on},
             {"check", nullptr},
             {"end", nullptr}};
    if (v.is_checked()) {
        out["check"] = {{"as_written", v.check_as_written}, {"by", v.checked_by}, {"on", v.checked_on}};
    }
    if (v.standing != Standing::current) {
        out["end"] = {{"standing", standing_name(v.standing)},
                      {"by_value", v.superseded_by == 0 ? Json(nullptr) : Json(v.superseded_by)},
                      {"reason", v.end_reason},
                      {"by", v.ended_by},
                      {"on", v.ended_on}};
    }
    return out;
}

} // namespace

ExportWriter::ExportWriter(std::ostream& out) : out_(out) {
    out_ << "{\n"
         << R"("schema": ")" << k_export_schema << '"';
}

void ExportWriter::open(int list) {
    while (list_ < list) {
        if (list_ >= 0) {
            out_ << "\n]";
        }
        ++list_;
        first_ = true;
        if (list_ < static_cast<int>(k_export_lists.size())) {
            out_ << ",\n\"" << k_export_lists.at(static_cast<std::size_t>(list_)) << "\": [";
        }
    }
}

void ExportWriter::part(int list, const std::string& json) {
    open(list);
    out_ << (first_ ? "\n" : ",\n") << json;
    first_ = false;
}

void ExportWriter::source(const Source& s) {
    Json out = names_of(s);
    out.update(Json{{"kind", s.kind},
                    {"date", s.date},
                    {"kept", s.kept},
                    {"file_digest", s.file_digest},
                    {"note", s.note},
                    {"added_by", s.added_by},
                    {"added_at", s.added_at}});
    part(0, out.dump());
}

void ExportWriter::machine(const MachineRecord& record) {
    const Machine& m = record.machine;
    Json out = names_of(m);
    out.update(Json{{"years", m.years}, {"code", m.code}, {"note", m.note}, {"assemblies", Json::array()}});
    for (const Assembly& assembly : record.assemblies) {
        out["assemblies"].push_back({{"name", assembly.name}, {"note", assembly.note}});
    }
    part(1, out.dump());
}

void ExportWriter::joint(const JointRecord& record) {
    const Joint& j = record.joint;
    Json out{{"machine", names_of(record.machine)},
             {"assembly", record.assembly.name},
             {"name", j.name},
             {"role", role_name(j.role)},
             {"count", j.count},
             {"thread", j.thread},
             {"property_class", j.property_class},
             {"form", j.form},
             {"ring", j.ring},
             {"housing", j.housing},
             {"engagement_mm", j.engagement_mm ? Json(*j.engagement_mm) : Json(nullptr)},
             {"safety_critical", j.safety_critical},
             {"note", j.note},
             {"values", Json::array()}};
    for (const Value& value : record.values) {
        out["values"].push_back(json_of(value));
    }
    part(2, out.dump());
}

void ExportWriter::finish() {
    open(static_cast<int>(k_export_lists.size()));
    out_ << "\n}\n";
}

} // namespace clampbook::exchange
