// SPDX-License-Identifier: MIT
// The spec sheet as a table: a row a value, numbers under their units, for a spreadsheet or a program.

#include "clampbook/answer/sheet.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/units/quantity.hpp"

#include <algorithm>

namespace clampbook::answer {
namespace {

TableCell text(std::string words) { return {std::move(words), {}}; }
TableCell number(std::optional<double> value, std::string print) { return {std::move(print), value}; }

// The step that the tightening ends with, of one kind: its limits make the band.
const Step* last_step(const Tightening& tightening, StepKind kind) {
    const auto found =
        std::find_if(tightening.steps.rbegin(), tightening.steps.rend(), [&](const Step& s) { return s.kind == kind; });
    return found == tightening.steps.rend() ? nullptr : &*found;
}

void add_row(TableAnswer& table, const SheetAssembly& group, const SheetJoint& joint, const SheetLine* line) {
    const Joint& j = joint.joint;
    std::vector<TableCell> row{text(group.machine.maker),
                               text(group.machine.title()),
                               text(group.assembly.name),
                               text(j.name),
                               text(std::string{role_name(j.role)}),
                               number(j.count, std::to_string(j.count)),
                               text(j.thread),
                               text(j.property_class)};
    const Value value = line == nullptr ? Value{} : line->found.value;
    const Step* torque = last_step(value.tightening, StepKind::torque);
    const Step* angle = last_step(value.tightening, StepKind::angle);
    const std::string in_newton_metres = line == nullptr ? "" : line->found.in_newton_metres;
    const std::string in_pound_feet = line == nullptr ? "" : line->found.in_pound_feet;
    const auto newton_metres = [&](double Step::*limit) {
        return torque == nullptr ? number({}, "") : number(torque->*limit, print_shortest(torque->*limit));
    };
    row.push_back(text(value.tightening.as_written));
    row.push_back(torque == nullptr ? number({}, "") : number(torque->nominal, in_newton_metres));
    row.push_back(newton_metres(&Step::low));
    row.push_back(newton_metres(&Step::high));
    row.push_back(torque == nullptr ? number({}, "")
                                    : number((torque->nominal * newton_metre).in(pound_force_foot), in_pound_feet));
    row.push_back(angle == nullptr ? number({}, "") : number(angle->nominal, print_shortest(angle->nominal)));
    row.push_back(text(joint.ring));
    row.push_back(text(j.safety_critical ? "yes" : "no"));
    row.push_back(text(joint.disagreement.empty() ? "" : "disagrees"));
    row.push_back(text(line == nullptr ? "" : std::string{label_name(value.label)}));
    row.push_back(text(line == nullptr ? "" : value.is_checked() ? "checked" : "unchecked"));
    row.push_back(text(std::string{line == nullptr ? "" : standing_name(value.standing)}));
    row.push_back(text(line == nullptr ? "" : line->change));
    row.push_back(text(value.source ? value.source->line() : ""));
    row.push_back(text(value.page));
    row.push_back(text(value.checked_by));
    row.push_back(text(value.checked_on));
    row.push_back(text(j.note));
    row.push_back(text(value.note));
    table.rows.push_back(std::move(row));
}

} // namespace

TableAnswer sheet_table(const Sheet& sheet) {
    TableAnswer table;
    table.schema = "sheet";
    table.title = sheet.title;
    for (const char* key : {"machine_maker", "machine", "assembly", "joint", "role"}) {
        table.columns.push_back({key, key, "", false});
    }
    table.columns.push_back({"count", "count", "", true});
    for (const char* key : {"thread", "property_class", "tightening"}) {
        table.columns.push_back({key, key, "", false});
    }
    table.columns.push_back({"newton_metres", "torque", "N·m", true});
    table.columns.push_back({"newton_metres_low", "low", "N·m", true});
    table.columns.push_back({"newton_metres_high", "high", "N·m", true});
    table.columns.push_back({"pound_feet", "torque", "lbf·ft", true});
    table.columns.push_back({"angle", "angle", "°", true});
    for (const char* key : {"ring", "safety_critical", "disagreement", "label", "check", "standing", "change", "source", "page",
                            "checked_by", "checked_on", "note", "value_note"}) {
        table.columns.push_back({key, key, "", false});
    }
    for (const SheetAssembly& group : sheet.assemblies) {
        for (const SheetJoint& joint : group.joints) {
            if (joint.lines.empty() && joint.ended.empty()) {
                add_row(table, group, joint, nullptr);
            }
            for (const SheetLine& line : joint.lines) {
                add_row(table, group, joint, &line);
            }
            for (const SheetLine& line : joint.ended) {
                add_row(table, group, joint, &line);
            }
        }
    }
    return table;
}

} // namespace clampbook::answer
