// SPDX-License-Identifier: MIT
#include "sheet.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <nlohmann/json.hpp>

#include <istream>

namespace clampbook::press {
namespace {

using Json = nlohmann::json;

constexpr std::string_view k_schema = "clampbook/sheet/v1";

// A part of the document with the path that leads to it, for messages.
class Part {
public:
    Part(const Json& json, std::string path) : json_(json), path_(std::move(path)) {}

    [[nodiscard]] Part at(const char* key) const {
        if (!json_.is_object()) {
            throw wrong("an object");
        }
        const auto found = json_.find(key);
        if (found == json_.end()) {
            throw error(ErrorKind::invalid_data, "'{}' is missing", path_.empty() ? key : path_ + "." + key);
        }
        return {*found, path_.empty() ? key : path_ + "." + key};
    }
    [[nodiscard]] std::string text(const char* key) const {
        const Part part = at(key);
        if (!part.json_.is_string()) {
            throw part.wrong("a text");
        }
        return part.json_.get<std::string>();
    }
    [[nodiscard]] std::string text_or_nothing(const char* key) const { return json_.contains(key) ? text(key) : std::string{}; }
    [[nodiscard]] std::int64_t whole(const char* key) const {
        const Part part = at(key);
        if (!part.json_.is_number_integer()) {
            throw part.wrong("a whole number");
        }
        return part.json_.get<std::int64_t>();
    }
    [[nodiscard]] bool yes(const char* key) const {
        const Part part = at(key);
        if (!part.json_.is_boolean()) {
            throw part.wrong("true or false");
        }
        return part.json_.get<bool>();
    }
    [[nodiscard]] double quantity(const char* key) const {
        const Part part = at(key).at("value");
        if (!part.json_.is_number()) {
            throw part.wrong("a number");
        }
        return part.json_.get<double>();
    }
    [[nodiscard]] bool is_null() const { return json_.is_null(); }
    template <typename F>
    void each(const char* key, F&& body) const {
        const Part part = at(key);
        if (!part.json_.is_array()) {
            throw part.wrong("a list");
        }
        for (std::size_t i = 0; i < part.json_.size(); ++i) {
            body(Part{part.json_[i], fmt::format("{}[{}]", part.path_, i)});
        }
    }

private:
    [[nodiscard]] Error wrong(const char* expected) const {
        return error(ErrorKind::invalid_data, "'{}' must be {}", path_.empty() ? "the whole" : path_, expected);
    }
    const Json& json_;
    std::string path_;
};

Line line_of(const Part& part) {
    Line out;
    out.as_written = part.text("as_written");
    out.sign = part.text("sign");
    out.state = part.text("state");
    out.source = part.text("source_reference");
    out.change = part.text("change");
    out.note = part.text("note");
    out.newton_metres = part.text("in_newton_metres");
    out.pound_feet = part.text("in_pound_feet");
    out.label = part.text("label");
    out.check = part.text("check");
    out.page = part.text("page");
    out.checked_by = part.text_or_nothing("checked_by");
    out.checked_on = part.text_or_nothing("checked_on");
    if (const Part source = part.at("source"); !source.is_null()) {
        out.source_line = source.text("title");
    }
    part.each("steps", [&](const Part& step) {
        const std::string kind = step.text("kind");
        if (kind == "torque") {
            out.torque = step.quantity("nominal");
            out.low = step.quantity("low");
            out.high = step.quantity("high");
        } else if (kind == "angle") {
            out.angle = step.quantity("nominal");
        }
    });
    return out;
}

Joint joint_of(const Part& part) {
    Joint out;
    out.name = part.text("name");
    out.role = part.text("role");
    out.count = part.whole("count");
    out.thread = part.text("thread");
    out.property_class = part.text("property_class");
    out.screws = part.text("screws");
    out.ring = part.text("ring");
    out.note = part.text("note");
    out.disagreement = part.text("disagreement");
    out.safety_critical = part.yes("safety_critical");
    part.each("values", [&](const Part& line) { out.lines.push_back(line_of(line)); });
    part.each("ended", [&](const Part& line) { out.ended.push_back(line_of(line)); });
    return out;
}

Json parsed(std::istream& in) {
    try {
        return Json::parse(in);
    } catch (const Json::parse_error& fault) {
        std::string words = fault.what();
        const std::size_t at = words.find("line ");
        throw error(ErrorKind::invalid_data, "what stands on standard input is no JSON: {}",
                    at == std::string::npos ? words : words.substr(at));
    }
}

} // namespace

Sheet read_sheet(std::istream& in) {
    const Json json = parsed(in);
    const Part part{json, {}};
    const std::string schema = part.text("schema");
    if (schema != k_schema) {
        throw error(ErrorKind::invalid_data, "the press sets {}, not {}", k_schema, schema);
    }
    Sheet out;
    out.title = part.text("title");
    out.chosen = part.text("chosen");
    out.prepared_by = part.text("prepared_by");
    out.date = part.text("date");
    out.revision = part.whole("revision");
    out.digest = part.text("digest");
    out.since = part.text("since");
    out.legend = part.text("legend");
    part.each("assemblies", [&](const Part& group) {
        Assembly assembly{group.text("machine"), group.text("maker"), group.text("assembly"), {}};
        group.each("joints", [&](const Part& joint) { assembly.joints.push_back(joint_of(joint)); });
        out.assemblies.push_back(std::move(assembly));
    });
    part.each("sources", [&](const Part& source) { out.sources.push_back(source.text("line")); });
    part.each("checked_by", [&](const Part& checker) {
        out.checked_by.push_back(fmt::format("{} ({})", checker.text("name"), checker.whole("values")));
    });
    const Part counts = part.at("counts");
    out.counts = fmt::format("{} joints, {} values, {} of them checked; {} joints without a value", counts.whole("joints"),
                             counts.whole("values"), counts.whole("checked"), counts.whole("without_value"));
    if (const std::int64_t left = counts.whole("left_out"); left > 0) {
        out.counts += fmt::format("; {} joints have no checked value and are left out", left);
    }
    part.each("cautions", [&](const Part& caution) { out.cautions.push_back(caution.text("text")); });
    return out;
}

} // namespace clampbook::press
