// SPDX-License-Identifier: MIT
#include "sheet.hpp"
#include "reader.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

namespace clampbook::press {
namespace {

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

} // namespace

Sheet read_sheet(const Part& part) {
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
