// SPDX-License-Identifier: MIT
// Rows of the exchange file on their way into the book, and the demo that is such a file inside the program.

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/intake/intake.hpp"

#include <filesystem>
#include <sstream>

asm(R"(
.section .rodata
.global clampbook_demo_joints_begin
clampbook_demo_joints_begin:
.incbin ")" CLAMPBOOK_DEMO "/joints.csv"
    R"("
.global clampbook_demo_joints_end
clampbook_demo_joints_end:
.byte 0
.global clampbook_demo_unvalued_begin
clampbook_demo_unvalued_begin:
.incbin ")" CLAMPBOOK_DEMO "/unvalued.csv"
    R"("
.global clampbook_demo_unvalued_end
clampbook_demo_unvalued_end:
.byte 0
.previous
)");

extern "C" {
extern const char clampbook_demo_joints_begin[];
extern const char clampbook_demo_joints_end[];
extern const char clampbook_demo_unvalued_begin[];
extern const char clampbook_demo_unvalued_end[];
}

namespace clampbook::intake {
namespace {

bool read_yes(std::string_view text) {
    const std::string word = fold(text);
    if (word == "yes" || word == "y" || word == "1" || word == "true") {
        return true;
    }
    if (word.empty() || word == "no" || word == "n" || word == "0" || word == "false") {
        return false;
    }
    throw error(ErrorKind::usage, "'{}' is neither yes nor no", text);
}

double read_number(std::string_view text, std::string_view what) {
    const auto number = read_whole_decimal(text);
    if (!number) {
        throw error(ErrorKind::usage, "'{}' is no number for {}", text, what);
    }
    return number->value;
}

// Runs one cell's reading and says which column it was where it fails.
template <typename F>
auto cell(std::string_view column, F&& body) {
    try {
        return std::forward<F>(body)();
    } catch (const Error& fault) {
        throw error(fault.kind(), "{}: {}", column, fault.what());
    }
}

RecordId machine_of(book::Book& book, const exchange::JointRow& row, const book::Stamp& stamp) {
    Machine machine;
    machine.maker = row.machine_maker;
    machine.model = row.machine_model;
    machine.variant = row.machine_variant;
    if (machine.maker.empty() || machine.model.empty()) {
        throw error(ErrorKind::usage, "machine_maker and machine_model must not be empty");
    }
    const auto there = book.find_machine(machine);
    return there ? there->id : book.add_machine(machine, stamp);
}

int read_count(std::string_view text) {
    const double number = read_number(text, "a count");
    if (!(number >= 0 && number <= 1e6) || number != static_cast<int>(number)) {
        throw error(ErrorKind::usage, "'{}' is no whole number of screws", text);
    }
    return static_cast<int>(number);
}

// The joint as the row tells it, in the words of the standards.
Joint told_joint(const reference::Reference& reference, const exchange::JointRow& row) {
    Joint joint;
    joint.name = row.joint;
    joint.role = cell("role", [&] { return row.role.empty() ? Role::other : read_role(row.role); });
    joint.count = row.count.empty() ? 1 : cell("count", [&] { return read_count(row.count); });
    joint.thread = row.thread;
    joint.property_class = row.property_class;
    joint.form = row.form;
    joint.ring = row.ring;
    joint.housing = row.housing;
    if (!row.engagement_mm.empty()) {
        joint.engagement_mm = cell("engagement_mm", [&] { return read_number(row.engagement_mm, "a length in mm"); });
    }
    joint.safety_critical = cell("safety_critical", [&] { return read_yes(row.safety_critical); });
    joint.note = row.note;
    return in_standard_words(reference, joint);
}

// What a row says of a joint that is in the book already must be what the book says; an empty cell says nothing.
void require_agreement(const Joint& there, const Joint& told, const exchange::JointRow& row) {
    const auto require = [](std::string_view column, std::string_view said, bool agrees, std::string_view has) {
        if (!said.empty() && !agrees) {
            throw error(ErrorKind::conflict, "{}: the row says '{}', the book has '{}' for this joint", column, said,
                        has.empty() ? "nothing" : has);
        }
    };
    require("role", row.role, there.role == told.role, role_name(there.role));
    require("count", row.count, there.count == told.count, std::to_string(there.count));
    require("thread", row.thread, there.thread == told.thread, there.thread);
    require("property_class", row.property_class, there.property_class == told.property_class, there.property_class);
    require("form", row.form, there.form == told.form, there.form);
    require("ring", row.ring, there.ring == told.ring, there.ring);
    require("housing", row.housing, there.housing == told.housing, there.housing);
    require("engagement_mm", row.engagement_mm, there.engagement_mm == told.engagement_mm,
            there.engagement_mm ? print_shortest(*there.engagement_mm) : "");
    require("safety_critical", row.safety_critical, there.safety_critical == told.safety_critical,
            there.safety_critical ? "yes" : "no");
}

RecordId joint_of(book::Book& book, const reference::Reference& reference, const exchange::JointRow& row,
                  const book::Stamp& stamp) {
    const RecordId machine = machine_of(book, row, stamp);
    if (row.assembly.empty() || row.joint.empty()) {
        throw error(ErrorKind::usage, "assembly and joint must not be empty");
    }
    const auto assembly_there = book.find_assembly(machine, row.assembly);
    const RecordId assembly = assembly_there ? assembly_there->id : book.add_assembly({0, machine, row.assembly, ""}, stamp);
    Joint told = told_joint(reference, row);
    if (const auto there = book.find_joint(assembly, row.joint)) {
        require_agreement(*there, told, row);
        return there->id;
    }
    told.assembly = assembly;
    return book.add_joint(told, stamp);
}

std::optional<Source> source_of(book::Book& book, const exchange::JointRow& row, const book::Stamp& stamp) {
    if (row.source_title.empty()) {
        return std::nullopt;
    }
    Source source;
    source.kind = row.source_kind.empty() ? "document" : row.source_kind;
    source.title = row.source_title;
    source.number = row.source_number;
    source.edition = row.source_edition;
    source.date = row.source_date;
    if (!source.date.empty()) {
        require_date(source.date, "source_date");
    }
    if (auto there = book.find_source(source)) {
        if (!row.source_date.empty() && there->date != row.source_date) {
            throw error(ErrorKind::conflict, "source_date: the row says '{}', the book has '{}' for this source", row.source_date,
                        there->date);
        }
        return there;
    }
    source.id = book.add_source(source, stamp);
    return source;
}

void take_text(book::Book& book, const reference::Reference& reference, std::string_view text, std::string_view name,
               const book::Stamp& stamp) {
    std::istringstream in{std::string{text}};
    exchange::read_joint_rows(in, name, [&](const exchange::JointRow& row) { take_row(book, reference, row, name, stamp); });
}

void take_told(book::Book& book, const reference::Reference& reference, const exchange::JointRow& row, const book::Stamp& stamp) {
    const book::Stamp by{row.entered_by.empty() ? stamp.person : row.entered_by, stamp.at};
    const RecordId joint = joint_of(book, reference, row, by);
    if (row.tightening.empty()) {
        return;
    }
    Entry entry;
    entry.joint = joint;
    // The first row of a joint tells about the joint; a further one can only tell about its value.
    const auto place = book.place(joint);
    entry.note = place && place->joint.note == row.note ? "" : row.note;
    entry.tightening = row.tightening;
    entry.label = cell("label", [&] { return read_label(row.label); });
    entry.source = source_of(book, row, by);
    entry.page = row.page;
    entry.entered_on = row.entered_on;
    cell("tightening", [&] { return enter(book, reference, entry, by); });
}

} // namespace

void take_row(book::Book& book, const reference::Reference& reference, const exchange::JointRow& row, std::string_view file,
              const book::Stamp& stamp) {
    try {
        for (const exchange::JointColumn& column : exchange::joint_columns()) {
            if (has_control(row.*column.cell)) {
                throw error(ErrorKind::usage, "{}: the cell holds a line end or another control character", column.name);
            }
        }
        book.in_one_go([&] { take_told(book, reference, row, stamp); });
    } catch (const Error& fault) {
        if (fault.kind() == ErrorKind::internal || fault.kind() == ErrorKind::conflict) {
            throw error(fault.kind(), "{}:{}: {}", file, row.line, fault.what());
        }
        throw error(ErrorKind::invalid_data, "{}:{}: {}", file, row.line, fault.what());
    }
}

void write_demo(const std::string& path, const reference::Reference& reference) {
    // A fixed day: the demo is the same book on every machine, whatever its clock says.
    const book::Stamp stamp{"demo clerk", "2026-06-30T12:00:00Z"};
    const std::string draft = path + ".draft";
    if (std::filesystem::exists(std::filesystem::symlink_status(path))) {
        throw error(ErrorKind::conflict, "'{}' exists already; the demo needs a new name", path);
    }
    const auto clean = [&] {
        std::error_code none;
        for (const char* end : {"", "-wal", "-shm"}) {
            std::filesystem::remove(draft + end, none);
        }
    };
    clean();
    try {
        {
            book::Book book = book::Book::create(draft, stamp);
            book.in_one_go([&] {
                take_text(book, reference, {clampbook_demo_joints_begin, clampbook_demo_joints_end}, "demo/joints.csv", stamp);
                take_text(book, reference, {clampbook_demo_unvalued_begin, clampbook_demo_unvalued_end}, "demo/unvalued.csv",
                          stamp);
            });
        }
        std::filesystem::rename(draft, path);
    } catch (const std::filesystem::filesystem_error& fault) {
        clean();
        throw error(ErrorKind::internal, "'{}' cannot be written: {}", path, fault.code().message());
    } catch (...) {
        clean();
        throw;
    }
}

} // namespace clampbook::intake
