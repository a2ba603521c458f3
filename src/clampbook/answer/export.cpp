// SPDX-License-Identifier: MIT
#include "clampbook/answer/export.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/exchange/export.hpp"
#include "clampbook/exchange/rows.hpp"

#include <ostream>

namespace clampbook::answer {
namespace {

exchange::JointRow row_of(const book::Place& place) {
    const Joint& joint = place.joint;
    exchange::JointRow row;
    row.machine_maker = place.machine.maker;
    row.machine_model = place.machine.model;
    row.machine_variant = place.machine.variant;
    row.assembly = place.assembly.name;
    row.joint = joint.name;
    row.role = role_name(joint.role);
    row.count = std::to_string(joint.count);
    row.thread = joint.thread;
    row.property_class = joint.property_class;
    row.form = joint.form;
    row.ring = joint.ring;
    row.housing = joint.housing;
    row.engagement_mm = joint.engagement_mm ? print_shortest(*joint.engagement_mm) : "";
    row.safety_critical = joint.safety_critical ? "yes" : "no";
    row.note = joint.note;
    return row;
}

void add_value(exchange::JointRow& row, const Value& value) {
    row.tightening = value.tightening.as_written;
    row.label = label_name(value.label);
    static const Source k_none;
    const Source& source = value.source ? *value.source : k_none;
    row.source_kind = source.kind;
    row.source_title = source.title;
    row.source_number = source.number;
    row.source_edition = source.edition;
    row.source_date = source.date;
    row.page = value.page;
    row.entered_by = value.entered_by;
    row.entered_on = value.entered_on;
    row.value_note = value.note;
    row.confirmed = value.confirmed;
}

} // namespace

void export_csv(const book::Book& book, std::ostream& out) {
    out << exchange::joint_header();
    exchange::JointRow row;
    RecordId joint = 0;
    std::string line;
    book.each_current([&](const book::Place& place, const Value* value) {
        if (place.joint.id != joint) {
            row = row_of(place);
            joint = place.joint.id;
        }
        if (value != nullptr) {
            add_value(row, *value);
        }
        line.clear();
        exchange::append_joint_line(line, row);
        out.write(line.data(), static_cast<std::streamsize>(line.size()));
    });
}

void export_json(const book::Book& book, std::ostream& out) {
    exchange::ExportWriter writer{out};
    for (const Source& source : book.sources()) {
        writer.source(source);
    }
    for (const MachineRecord& machine : book.machine_records()) {
        writer.machine(machine);
    }
    book.each_joint([&](const JointRecord& record) { writer.joint(record); });
    writer.finish();
}

} // namespace clampbook::answer
