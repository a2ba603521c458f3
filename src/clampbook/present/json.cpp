// SPDX-License-Identifier: MIT
#include "clampbook/present/impl.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/present/present.hpp"

namespace clampbook::present {

std::string schema_name(std::string_view command) { return "clampbook/" + std::string{command} + "/v1"; }

namespace {

Json quantity(double value, std::string_view unit) {
    Json out = Json::object();
    out["value"] = value;
    if (!unit.empty()) {
        out["unit"] = unit;
    }
    return out;
}

Json json_of(const Citation& c) {
    return Json{{"source", c.source}, {"title", c.title}, {"place", c.place}, {"basis", c.basis}, {"keyed", c.keyed}};
}

} // namespace

Json json_of(const answer::Figure& figure) {
    // A count or a number of ours is a plain number.
    if (figure.unit.empty() && !figure.label && !figure.citation && figure.basis.empty()) {
        const auto whole = static_cast<std::int64_t>(figure.value);
        return static_cast<double>(whole) == figure.value ? Json(whole) : Json(figure.value);
    }
    Json out = quantity(figure.value, figure.unit);
    out["print"] = figure.print;
    if (!figure.also.empty()) {
        out["also"] = figure.also;
    }
    if (figure.label) {
        out["label"] = label_name(*figure.label);
    }
    if (figure.citation) {
        out["citation"] = json_of(*figure.citation);
    }
    if (!figure.basis.empty()) {
        out["basis"] = figure.basis;
    }
    return out;
}

Json json_of(const std::vector<Caution>& cautions) {
    Json out = Json::array();
    for (const Caution& caution : cautions) {
        out.push_back({{"code", caution.code}, {"text", caution.text}});
    }
    return out;
}

namespace {

// "window.low" goes to out["window"]["low"]; raised dots in unit names are no points.
void put(Json& out, const std::string& key, Json value) {
    Json* at = &out;
    for (const std::string& part : split(key, '.')) {
        at = &(*at)[part];
    }
    *at = std::move(value);
}

} // namespace

std::string finished(const Json& out, bool compact) {
    try {
        return out.dump(compact ? -1 : 2) + "\n";
    } catch (const Json::exception& fault) {
        throw error(ErrorKind::internal, "the answer cannot be written as JSON: {}", fault.what());
    }
}

namespace {

using present::json_of; // those that the floor shares

Json json_of(const Source& s) {
    return Json{{"id", s.id},           {"kind", s.kind}, {"title", s.title}, {"number", s.number},
                {"edition", s.edition}, {"date", s.date}, {"kept", s.kept}};
}

Json json_of(const Step& step) {
    Json out = Json::object();
    out["kind"] = step_kind_name(step.kind);
    if (step.kind != StepKind::hand_tight) {
        const std::string_view unit = step.kind == StepKind::torque ? "N·m" : "°";
        out["nominal"] = quantity(step.nominal, unit);
        out["low"] = quantity(step.low, unit);
        out["high"] = quantity(step.high, unit);
        out["unit_as_written"] = step.unit;
    }
    return out;
}

Json json_of(const answer::FoundValue& found) {
    const Value& v = found.value;
    Json out = Json::object();
    out["id"] = v.id;
    out["as_written"] = v.tightening.as_written;
    out["steps"] = Json::array();
    for (const Step& step : v.tightening.steps) {
        out["steps"].push_back(json_of(step));
    }
    out["in_newton_metres"] = found.in_newton_metres;
    out["in_pound_feet"] = found.in_pound_feet;
    out["label"] = label_name(v.label);
    out["check"] = v.is_checked() ? "checked" : "unchecked";
    out["standing"] = standing_name(v.standing);
    out["source"] = v.source ? json_of(*v.source) : Json(nullptr);
    out["page"] = v.page;
    out["note"] = v.note;
    out["confirmed"] = v.confirmed;
    out["entered_by"] = v.entered_by;
    out["entered_on"] = v.entered_on;
    if (v.standing != Standing::current) {
        out["end_reason"] = v.end_reason;
        out["superseded_by"] = v.superseded_by == 0 ? Json(nullptr) : Json(v.superseded_by);
    }
    if (v.is_checked()) {
        out["checked_by"] = v.checked_by;
        out["checked_on"] = v.checked_on;
    }
    return out;
}

Json json_of(const book::Place& place) {
    const Joint& j = place.joint;
    Json out = Json::object();
    out["id"] = j.id;
    out["name"] = j.name;
    out["machine"] = {{"id", place.machine.id},           {"maker", place.machine.maker}, {"model", place.machine.model},
                      {"variant", place.machine.variant}, {"years", place.machine.years}, {"code", place.machine.code}};
    out["assembly"] = place.assembly.name;
    out["role"] = role_name(j.role);
    out["count"] = j.count;
    out["thread"] = j.thread;
    out["property_class"] = j.property_class;
    out["form"] = j.form;
    out["ring"] = j.ring;
    out["housing"] = j.housing;
    out["engagement"] = j.engagement_mm ? quantity(*j.engagement_mm, "mm") : Json(nullptr);
    out["safety_critical"] = j.safety_critical;
    out["note"] = j.note;
    return out;
}

Json json_of(const answer::FoundJoint& found) {
    Json out = Json::object();
    out["joint"] = json_of(found.place);
    out["values"] = Json::array();
    for (const answer::FoundValue& value : found.values) {
        out["values"].push_back(json_of(value));
    }
    out["ring"] = {{"text", found.ring}, {"renew", found.renew}};
    out["disagreement"] = found.disagreement;
    out["derive_command"] = found.derive_command;
    out["no_generic"] = found.no_generic;
    out["cautions"] = json_of(found.cautions);
    return out;
}

Json json_of(const answer::SheetLine& line) {
    Json out = json_of(line.found);
    out["sign"] = line.sign;
    out["state"] = line.state;
    out["source_reference"] = line.source;
    out["change"] = line.change;
    return out;
}

Json json_of(const answer::SheetJoint& joint) {
    const Joint& j = joint.joint;
    Json out = Json::object();
    out["id"] = j.id;
    out["name"] = j.name;
    out["role"] = role_name(j.role);
    out["count"] = j.count;
    out["thread"] = j.thread;
    out["property_class"] = j.property_class;
    out["screws"] = joint.screws;
    out["ring"] = joint.ring;
    out["safety_critical"] = j.safety_critical;
    out["note"] = j.note;
    out["disagreement"] = joint.disagreement;
    out["values"] = Json::array();
    for (const answer::SheetLine& line : joint.lines) {
        out["values"].push_back(json_of(line));
    }
    out["ended"] = Json::array();
    for (const answer::SheetLine& line : joint.ended) {
        out["ended"].push_back(json_of(line));
    }
    return out;
}

} // namespace

std::string json(const answer::Document& document, bool compact) {
    Json out = Json::object();
    out["schema"] = schema_name(document.schema);
    for (const auto& section : document.sections) {
        for (const auto& item : section.items) {
            put(out, item.key, item.figure ? json_of(*item.figure) : Json(item.text));
        }
    }
    if (document.histogram) {
        const answer::Histogram& h = *document.histogram;
        out["histogram"] = {
            {"low", quantity(h.low, h.unit)}, {"high", quantity(h.high, h.unit)}, {"counts", h.counts}, {"total", h.total}};
    }
    if (!document.notes.empty()) {
        out["notes"] = document.notes;
    }
    if (!document.cautions.empty()) {
        out["cautions"] = json_of(document.cautions);
    }
    return finished(out, compact);
}

std::string json(const answer::TableAnswer& table) {
    Json out = Json::object();
    out["schema"] = schema_name(table.schema);
    out["title"] = table.title;
    Json& rows = out[table.rows_key] = Json::array();
    for (const auto& row : table.rows) {
        Json one = Json::object();
        for (std::size_t c = 0; c < table.columns.size(); ++c) {
            const answer::TableColumn& column = table.columns[c];
            const answer::TableCell& cell = row[c];
            if (!column.number) {
                one[column.key] = cell.text;
            } else if (!cell.number) {
                one[column.key] = nullptr;
            } else if (table.quantities && cell.text != std::to_string(static_cast<std::int64_t>(*cell.number))) {
                one[column.key] = quantity(*cell.number, column.unit);
                one[column.key]["print"] = cell.text;
            } else {
                const auto whole = static_cast<std::int64_t>(*cell.number);
                one[column.key] = static_cast<double>(whole) == *cell.number ? Json(whole) : Json(*cell.number);
            }
        }
        rows.push_back(std::move(one));
    }
    if (!table.notes.empty()) {
        out["notes"] = table.notes;
    }
    if (!table.cautions.empty()) {
        out["cautions"] = json_of(table.cautions);
    }
    return finished(out);
}

std::string json(const answer::FindAnswer& found) {
    Json out = Json::object();
    out["schema"] = schema_name("find");
    out["query"] = found.query;
    out["total"] = found.total;
    out["matches"] = Json::array();
    for (const answer::FoundJoint& match : found.matches) {
        out["matches"].push_back(json_of(match));
    }
    out["other_words"] = found.other_words;
    out["nearest"] = found.nearest;
    return finished(out);
}

std::string json(const answer::Sheet& sheet) {
    Json out = Json::object();
    out["schema"] = schema_name("sheet");
    out["title"] = sheet.title;
    out["chosen"] = sheet.chosen;
    out["prepared_by"] = sheet.prepared_by;
    out["date"] = sheet.date;
    out["revision"] = sheet.revision;
    out["digest"] = sheet.digest;
    out["since"] = sheet.since;
    out["legend"] = answer::sheet_legend();
    out["assemblies"] = Json::array();
    for (const answer::SheetAssembly& group : sheet.assemblies) {
        Json one = Json::object();
        one["machine"] = group.machine.title();
        one["maker"] = group.machine.maker;
        one["assembly"] = group.assembly.name;
        one["joints"] = Json::array();
        for (const answer::SheetJoint& joint : group.joints) {
            one["joints"].push_back(json_of(joint));
        }
        out["assemblies"].push_back(std::move(one));
    }
    out["sources"] = Json::array();
    for (const Source& source : sheet.sources) {
        Json one = json_of(source);
        one["line"] = source.line();
        out["sources"].push_back(std::move(one));
    }
    out["checked_by"] = Json::array();
    for (const auto& [name, values] : sheet.checked_by) {
        out["checked_by"].push_back({{"name", name}, {"values", values}});
    }
    out["counts"] = {{"joints", sheet.joints},
                     {"values", sheet.values},
                     {"checked", sheet.checked},
                     {"without_value", sheet.without_value},
                     {"left_out", sheet.left_out}};
    out["cautions"] = json_of(sheet.cautions);
    return finished(out);
}

std::string json(const answer::FoundJoint& joint, std::string_view schema) {
    Json out = Json::object();
    out["schema"] = schema_name(schema);
    out.update(json_of(joint));
    return finished(out);
}

} // namespace clampbook::present
