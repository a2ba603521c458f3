// SPDX-License-Identifier: MIT
#include "clampbook/answer/export.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/exchange/export.hpp"
#include "clampbook/exchange/rows.hpp"

#include <ostream>

namespace clampbook::answer {
namespace {

exchange::JointRow row_of(const JointRecord& record) {
    const Joint& joint = record.joint;
    exchange::JointRow row;
    row.machine_maker = record.machine.maker;
    row.machine_model = record.machine.model;
    row.machine_variant = record.machine.variant;
    row.assembly = record.assembly.name;
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
    if (value.source) {
        row.source_kind = value.source->kind;
        row.source_title = value.source->title;
        row.source_number = value.source->number;
        row.source_edition = value.source->edition;
        row.source_date = value.source->date;
    }
    row.page = value.page;
    row.entered_by = value.entered_by;
    row.entered_on = value.entered_on;
    row.value_note = value.note;
    row.confirmed = value.confirmed;
}

} // namespace

void export_csv(const book::Book& book, std::ostream& out) {
    out << exchange::joint_header();
    book.each_joint([&](const JointRecord& record) {
        bool told = false;
        for (const Value& value : record.values) {
            if (value.standing == Standing::current) {
                exchange::JointRow row = row_of(record);
                add_value(row, value);
                out << exchange::joint_line(row);
                told = true;
            }
        }
        if (!told) {
            out << exchange::joint_line(row_of(record));
        }
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
