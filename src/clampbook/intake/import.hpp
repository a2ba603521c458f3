// SPDX-License-Identifier: MIT
#pragma once

// Many tellings at once: the rows of an exchange file, a whole export, another shop's book. All of a file is taken or nothing of
// it, and every fault is told, not the first alone. Nothing that the book holds is overwritten: what is here already is passed
// over and counted, what says otherwise is a conflict.

#include "clampbook/base/remembered.hpp"
#include "clampbook/book/book.hpp"
#include "clampbook/exchange/rows.hpp"
#include "clampbook/intake/intake.hpp"
#include "clampbook/reference/reference.hpp"

#include <cstddef>
#include <functional>
#include <iosfwd>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace clampbook::intake {

/// What is done where a file meets what makes no sense, or what the book has otherwise. Empty: it is refused.
struct Rules {
    std::string confirm_all; ///< why implausible values stand all the same
    std::string supersede;   ///< why figures of the file take the place of others with the same label, source and page
};

struct ImportOptions {
    Rules rules;
    bool dry_run = false;                      ///< all is judged, nothing is kept
    std::function<void(std::size_t)> progress; ///< how many rows or joints were read, every now and then
    std::function<bool()> interrupted;         ///< true where somebody wants it to stop
};

/// The first lines of what may be many, and how many there were.
struct Told {
    std::vector<std::string> lines;
    std::size_t total = 0;
    void add(std::string line);
};
inline constexpr std::size_t k_lines_told = 50;

struct ImportReport {
    std::size_t read = 0; ///< rows, or joints of an export or book
    std::size_t machines = 0;
    std::size_t assemblies = 0;
    std::size_t joints = 0;
    std::size_t sources = 0;
    std::size_t values = 0;
    std::size_t checks = 0;
    std::size_t here_already = 0; ///< values that the book has
    std::size_t superseded = 0;   ///< values of the book that ended
    Told faults;                  ///< where there are any, nothing was kept
    bool conflicts_alone = true;  ///< no fault is worse than a conflict
    Told confirmed;               ///< implausible values that were taken all the same
    Told left_out;                ///< of another book: joints that contradict ours, values that we or they ended
    bool kept = false;
};

/// Reads rows of the exchange file. Throws invalid_data for a file that is none, interrupted, and what the disk says; faults of
/// rows stand in the report.
[[nodiscard]] ImportReport import_rows(book::Book& book, const reference::Reference& reference, std::istream& in,
                                       const std::string& name, const ImportOptions& options, const book::Stamp& stamp);

/// Reads a whole export, histories and checks included. Throws and reports as `import_rows` does.
[[nodiscard]] ImportReport import_export(book::Book& book, const reference::Reference& reference, std::istream& in,
                                         const std::string& name, const ImportOptions& options, const book::Stamp& stamp);

/// Takes another book's records; people, sources, dates, checks and ends stay as they are there. Values that disagree with ours
/// are kept beside them; joints that contradict ours are left out and told. A second time changes nothing.
[[nodiscard]] ImportReport merge(book::Book& book, const reference::Reference& reference, const book::Book& other,
                                 const std::string& name, const ImportOptions& options, const book::Stamp& stamp);

enum class Taken {
    joint,        ///< the row tells of a joint alone
    value,        ///< its value was entered
    superseding,  ///< it was entered and ended another
    here_already, ///< the book has it
};

struct RowTaken {
    Taken what = Taken::joint;
    RecordId value = 0; ///< its number; 0 where none was entered
};

/// Takes rows of one file, one after the other. Values that the book had before it was made are told apart from those of the
/// file, which must not contradict itself.
class Rows {
public:
    Rows(book::Book& book, const Judge& judge, std::string file, book::Stamp stamp, Rules rules = {});

    /// Takes one row: machine, assembly, joint and source are added where the book lacks them, then the value, if the row has one;
    /// all of it or nothing. Throws invalid_data or conflict, naming file, line and column, for whatever does not fit.
    RowTaken take(const exchange::JointRow& row);

private:
    [[nodiscard]] RecordId assembly_of(const exchange::JointRow& row, const Machine& like);
    [[nodiscard]] bool in_book(Source& source);
    [[nodiscard]] Taken judged(const Value& told, const std::vector<Value>& here, std::vector<RecordId>& replaces) const;
    void add_joint(const Machine& machine, const std::string& assembly_name, Joint& joint);
    [[nodiscard]] RowTaken take_told(const exchange::JointRow& row);

    book::Book& book_;
    const Judge& judge_;
    std::string file_;
    book::Stamp stamp_;
    Rules rules_;
    RecordId first_new_;
    std::string last_names_; // the names of machine and assembly that were asked for last, and what they are in the book
    RecordId last_assembly_ = 0;
    Remembered<Source> sources_; // by how they were named, as the book has them
    Joint made_;                 // the joint that was made last, and its values: all are of this file
    std::vector<Value> made_values_;
};

/// What a joint's taking left to tell.
struct JointTaken {
    std::size_t here_already = 0;
    std::vector<std::string> confirmed;
    std::vector<std::string> left_out;
};

/// Takes one source, one machine or one joint of another book or export. Throws as `Rows::take` does, without file and line.
void take_source(book::Book& book, const Source& source, const book::Stamp& stamp);
void take_machine(book::Book& book, const MachineRecord& record, const book::Stamp& stamp);
JointTaken take_joint(book::Book& book, const Judge& judge, const JointRecord& record, const Rules& rules,
                      const book::Stamp& stamp);

} // namespace clampbook::intake
