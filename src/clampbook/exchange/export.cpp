// SPDX-License-Identifier: MIT
// The export read, part by part; export_writer.cpp writes it.

#include "clampbook/exchange/export.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <istream>

namespace clampbook::exchange {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::array<const char*, 3> k_parts{"source", "machine", "joint"};

// The fields of one JSON object, each asked for by name; what is left over in the end is unknown.
class Fields {
public:
    Fields(const Json& json, std::string where) : json_(json), where_(std::move(where)) {
        if (!json.is_object()) {
            throw error(ErrorKind::invalid_data, "{}: an object was expected", where_);
        }
    }

    const Json& at(const char* key) {
        asked_.emplace_back(key);
        const auto found = json_.find(key);
        if (found == json_.end()) {
            throw error(ErrorKind::invalid_data, "{}: '{}' is missing", where_, key);
        }
        return *found;
    }
    std::string text(const char* key) {
        const Json& field = at(key);
        require(field.is_string(), key, "a text");
        std::string out = field.get<std::string>();
        if (has_control(out)) {
            throw error(ErrorKind::invalid_data, "{}: '{}' holds a line end or another control character", where_, key);
        }
        return out;
    }
    std::string needed_text(const char* key) {
        std::string out = text(key);
        require(!trim(out).empty(), key, "a text that is not empty");
        return out;
    }
    std::int64_t whole(const char* key) {
        const Json& field = at(key);
        require(field.is_number_integer(), key, "a whole number");
        return field.get<std::int64_t>();
    }
    bool yes(const char* key) {
        const Json& field = at(key);
        require(field.is_boolean(), key, "true or false");
        return field.get<bool>();
    }
    std::optional<double> number(const char* key) {
        const Json& field = at(key);
        require(field.is_null() || field.is_number(), key, "a number or null");
        return field.is_null() ? std::nullopt : std::optional{field.get<double>()};
    }
    const Json& list(const char* key) {
        const Json& field = at(key);
        require(field.is_array(), key, "a list");
        return field;
    }
    // Nothing where the field is null.
    std::optional<Fields> object(const char* key) {
        const Json& field = at(key);
        return field.is_null() ? std::nullopt : std::optional{Fields{field, where_ + ": " + key}};
    }
    // Runs a reading of this field's text and says where it fails.
    template <typename F>
    auto read(const char* key, F&& body) {
        const std::string typed = text(key);
        try {
            return std::forward<F>(body)(typed);
        } catch (const Error& fault) {
            throw error(ErrorKind::invalid_data, "{}: {}: {}", where_, key, fault.what());
        }
    }
    void done() const {
        for (const auto& [key, ignored] : json_.items()) {
            if (std::ranges::find(asked_, key) == asked_.end()) {
                throw error(ErrorKind::invalid_data, "{}: '{}' is not known here{}", where_, key, did_you_mean(key, asked_));
            }
        }
    }
    void require(bool holds, const char* key, const char* expected) const {
        if (!holds) {
            throw error(ErrorKind::invalid_data, "{}: '{}' must be {}, not {}", where_, key, expected, json_.at(key).dump());
        }
    }

private:
    const Json& json_;
    std::string where_;
    std::vector<std::string> asked_;
};

Source source_names(Fields& f) {
    Source s;
    s.title = f.needed_text("title");
    s.number = f.text("number");
    s.edition = f.text("edition");
    return s;
}

Machine machine_names(Fields& f) {
    Machine m;
    m.maker = f.needed_text("maker");
    m.model = f.needed_text("model");
    m.variant = f.text("variant");
    return m;
}

Source source_of(const Json& json, const std::string& where) {
    Fields f{json, where};
    Source s = source_names(f);
    s.kind = f.needed_text("kind");
    s.date = f.text("date");
    s.kept = f.text("kept");
    s.file_digest = f.text("file_digest");
    s.note = f.text("note");
    s.added_by = f.text("added_by");
    s.added_at = f.text("added_at");
    f.done();
    return s;
}

MachineRecord machine_of(const Json& json, const std::string& where) {
    Fields f{json, where};
    MachineRecord out{machine_names(f), {}};
    out.machine.years = f.text("years");
    out.machine.code = f.text("code");
    out.machine.note = f.text("note");
    for (const Json& one : f.list("assemblies")) {
        Fields a{one, where + ": assemblies"};
        out.assemblies.push_back({0, 0, a.needed_text("name"), a.text("note")});
        a.done();
    }
    f.done();
    return out;
}

Value value_of(const Json& json, RecordId number, std::size_t of, const std::string& where) {
    Fields f{json, where};
    Value v;
    v.id = number;
    v.tightening = f.read("as_written", read_tightening);
    v.label = f.read("label", read_label);
    if (auto source = f.object("source")) {
        v.source = source_names(*source);
        source->done();
    }
    v.page = f.text("page");
    v.note = f.text("note");
    v.confirmed = f.text("confirmed");
    v.entered_by = f.needed_text("entered_by");
    v.entered_on = f.needed_text("entered_on");
    if (auto check = f.object("check")) {
        v.check_as_written = check->needed_text("as_written");
        v.checked_by = check->needed_text("by");
        v.checked_on = check->needed_text("on");
        check->done();
    }
    if (auto end = f.object("end")) {
        const std::string standing = end->text("standing");
        end->require(standing == "superseded" || standing == "withdrawn", "standing", "superseded or withdrawn");
        v.standing = standing == "withdrawn" ? Standing::withdrawn : Standing::superseded;
        if (v.standing == Standing::superseded) {
            v.superseded_by = end->whole("by_value");
            const bool another =
                v.superseded_by >= 1 && v.superseded_by <= static_cast<RecordId>(of) && v.superseded_by != number;
            end->require(another, "by_value", "the place of another value of this joint, counted from 1");
        } else {
            end->require(end->at("by_value").is_null(), "by_value", "null");
        }
        v.end_reason = end->needed_text("reason");
        v.ended_by = end->needed_text("by");
        v.ended_on = end->needed_text("on");
        end->done();
    }
    f.done();
    return v;
}

JointRecord joint_of(const Json& json, const std::string& where) {
    Fields f{json, where};
    JointRecord out;
    auto machine = f.object("machine");
    f.require(machine.has_value(), "machine", "an object");
    out.machine = machine_names(*machine);
    machine->done();
    out.assembly.name = f.needed_text("assembly");
    Joint& j = out.joint;
    j.name = f.needed_text("name");
    j.role = f.read("role", read_role);
    const std::int64_t count = f.whole("count");
    f.require(count >= 1 && count <= 999, "count", "1 to 999");
    j.count = static_cast<int>(count);
    j.thread = f.text("thread");
    j.property_class = f.text("property_class");
    j.form = f.text("form");
    j.ring = f.text("ring");
    j.housing = f.text("housing");
    j.engagement_mm = f.number("engagement_mm");
    j.safety_critical = f.yes("safety_critical");
    j.note = f.text("note");
    const Json& values = f.list("values");
    for (std::size_t i = 0; i < values.size(); ++i) {
        out.values.push_back(
            value_of(values[i], static_cast<RecordId>(i + 1), values.size(), fmt::format("{}: value {}", where, i + 1)));
    }
    f.done();
    return out;
}

// What the parser says, in our words: "file:3:12: no JSON: unexpected …".
Error not_json(const std::string& name, const std::string& words) {
    const std::size_t line = words.find("line ");
    const std::size_t column = words.find(", column ");
    const std::size_t colon = words.find(": ", column == std::string::npos ? 0 : column);
    if (line == std::string::npos || column == std::string::npos || colon == std::string::npos) {
        return error(ErrorKind::invalid_data, "{}: no JSON: {}", name, words);
    }
    return error(ErrorKind::invalid_data, "{}:{}:{}: no JSON: {}", name, words.substr(line + 5, column - line - 5),
                 words.substr(column + 9, colon - column - 9), words.substr(colon + 2));
}

class Reader {
public:
    Reader(const std::string& name, const ExportHandlers& handlers) : name_(name), handlers_(handlers) {}

    // Called by the parser for each part of the text; false lets go of what was read, so that no list is ever kept whole.
    bool event(int depth, Json::parse_event_t event, const Json& parsed) {
        if (depth == 1 && event == Json::parse_event_t::key) {
            key_ = parsed.get<std::string>();
            if (!have_schema_ && key_ != "schema") {
                throw no_export();
            }
            const auto* const known = std::ranges::find(k_export_lists, key_);
            if (key_ != "schema" && known == k_export_lists.end()) {
                throw error(ErrorKind::invalid_data, "{}: '{}' is not known here", name_, key_);
            }
            list_ = known - k_export_lists.begin();
            number_ = 0;
            return true;
        }
        if (depth == 1 && key_ == "schema") {
            if (!parsed.is_string() || parsed.get<std::string>() != k_export_schema) {
                throw no_export();
            }
            have_schema_ = true;
            return true;
        }
        if (depth == 1 && (event == Json::parse_event_t::value || event == Json::parse_event_t::object_start)) {
            throw error(ErrorKind::invalid_data, "{}: '{}' must be a list", name_, key_);
        }
        const bool begins = event == Json::parse_event_t::object_start || event == Json::parse_event_t::array_start;
        if (depth != 2 || begins || !have_schema_) {
            return true;
        }
        part(parsed);
        return false;
    }
    [[nodiscard]] Error no_export() const {
        return error(ErrorKind::invalid_data, R"({}: is no export of clampbook: it does not begin with "schema": "{}")", name_,
                     k_export_schema);
    }
    [[nodiscard]] bool have_schema() const { return have_schema_; }

private:
    void part(const Json& json) {
        const auto at = static_cast<std::size_t>(list_);
        std::string where = fmt::format("{}: {} {}", name_, k_parts.at(at), ++number_);
        for (const char* key : {"name", "title", "model"}) {
            if (json.is_object() && json.contains(key) && json[key].is_string()) {
                where += " (" + json[key].get<std::string>() + ")";
                break;
            }
        }
        try {
            switch (at) {
            case 0:
                handlers_.source(source_of(json, where), where);
                break;
            case 1:
                handlers_.machine(machine_of(json, where), where);
                break;
            default:
                handlers_.joint(joint_of(json, where), where);
                break;
            }
        } catch (const Error& fault) {
            if (fault.kind() == ErrorKind::internal || fault.kind() == ErrorKind::interrupted) {
                throw;
            }
            handlers_.fault(fault);
        }
    }

    const std::string& name_;
    const ExportHandlers& handlers_;
    std::string key_;
    std::ptrdiff_t list_ = 0;
    std::size_t number_ = 0;
    bool have_schema_ = false;
};

} // namespace

void read_export(std::istream& in, const std::string& name, const ExportHandlers& handlers) {
    Reader reader{name, handlers};
    try {
        const Json rest = Json::parse(
            in, [&](int depth, Json::parse_event_t event, Json& parsed) { return reader.event(depth, event, parsed); });
        if (!rest.is_object() || !reader.have_schema()) {
            throw reader.no_export();
        }
    } catch (const Json::parse_error& fault) {
        throw not_json(name, fault.what());
    } catch (const Json::exception& fault) {
        throw error(ErrorKind::invalid_data, "{}: {}", name, fault.what());
    }
    if (in.bad()) {
        throw error(ErrorKind::invalid_data, "{}: the file could not be read to its end", name);
    }
}

} // namespace clampbook::exchange
