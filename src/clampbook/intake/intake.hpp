// SPDX-License-Identifier: MIT
#pragma once

// The way in: what somebody tells the book is read, put into the words of the standards, judged, and only then written.
// The command `enter`, the records that go before it, and rows of the exchange file all come through here.

#include "clampbook/book/book.hpp"
#include "clampbook/reference/reference.hpp"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace clampbook::intake {

/// The curated database as the judge of what is told. It remembers what it has said of alike joints, so that a file of a million
/// rows asks the database a few thousand times; how much it remembers is bounded. A reference by itself will do where one thing
/// is told. The reference has to outlive it.
class Judge {
public:
    Judge(const reference::Reference& reference); // NOLINT: wherever a judge is asked for, a reference will do
    ~Judge();
    Judge(const Judge&) = delete;
    Judge& operator=(const Judge&) = delete;
    Judge(Judge&&) = delete;
    Judge& operator=(Judge&&) = delete;

    [[nodiscard]] const reference::Reference& reference() const noexcept { return reference_; }
    struct Memory;
    [[nodiscard]] Memory& memory() const noexcept { return *memory_; }

private:
    const reference::Reference& reference_;
    std::unique_ptr<Memory> memory_;
};

/// Whether a message begins with the field that it is about, as the exchange file names it: `thread: `.
enum class FieldNames { left_out, given };

/// The joint with its thread, class, form, ring and housing as the curated database writes them, from everyday
/// spellings. A wheel, brake or steering joint becomes safety-critical whatever was said.
/// Throws usage or not_found with the nearest right spelling, out_of_validity for a class not made in that thread, and
/// usage where count or engagement are no sensible numbers.
[[nodiscard]] Joint in_standard_words(const Judge& judge, Joint joint, FieldNames names = FieldNames::left_out);

/// A value as somebody enters it.
struct Entry {
    RecordId joint = 0;
    std::string tightening;
    Label label = Label::shop;
    std::optional<Source> source;
    std::string page;
    std::string note;
    std::string entered_by;         ///< who took it from its source; the stamp's person where empty
    std::string entered_on;         ///< ISO 8601 date; the stamp's date where empty
    std::string confirmed;          ///< why it stands although it is implausible; kept only where it is
    std::vector<RecordId> replaces; ///< values that end with it, superseded
    std::string reason;             ///< why they do
};

/// Reads and keeps a value; gives its number. Throws usage where the tightening does not read, where a `maker` or
/// `standard` value comes without source or a `maker` value without page, or where the date is none or lies after the
/// stamp's; conflict where the very same value is current already, where another figure with the same label, source and page is
/// current and not replaced (a figure without source and page stands nowhere), or where it is implausible and not confirmed.
RecordId enter(book::Book& book, const Judge& judge, const Entry& entry, const book::Stamp& stamp);

/// What is wrong with a tightening on a joint, in a sentence that names the slip where one explains it; nothing where it makes
/// sense, or where too little is known of the joint to say. No figure of what would make sense on a safety-critical joint.
[[nodiscard]] std::optional<std::string> implausible(const Judge& judge, const Joint& joint, const Tightening& tightening);

/// The value that `text` numbers: `3`, `#3`. Throws usage for anything else, not_found where there is none.
[[nodiscard]] Value value_numbered(const book::Book& book, std::string_view text);

/// Keeps that a second person keyed the figure again from its source and it agreed. Throws usage where it does not read, conflict
/// where it is another figure, where the person is who entered it, or where the value is checked or no longer current.
void check(book::Book& book, RecordId id, const std::string& tightening, const book::Stamp& stamp);

/// What takes a value's place: what is left empty stays as it was. `joint` of the entry is not looked at.
struct Successor {
    Entry entry;
    bool keeps_label = true;
    std::string reason; ///< needed
};
/// Enters the successor and ends the value, both or neither; gives the successor's number. Throws as `enter` does, usage without
/// a reason, conflict where the value is no longer current.
RecordId supersede(book::Book& book, const Judge& judge, RecordId id, const Successor& successor, const book::Stamp& stamp);

/// Ends a value without another in its place. Throws usage without a reason, conflict where it is no longer current.
void withdraw(book::Book& book, RecordId id, std::string_view reason, const book::Stamp& stamp);

/// Makes a new book at `path` and fills it with the invented demo, the same on every machine. All or nothing.
/// Throws conflict where the path exists.
void write_demo(const std::string& path, const reference::Reference& reference);

/// The source that `text` names: its number in the book, its document number, or its title. Throws not_found with the
/// nearest, and conflict where several fit.
[[nodiscard]] Source source_named(const book::Book& book, std::string_view text);

/// Throws usage unless `text` is a date like 2026-11-25.
void require_date(std::string_view text, std::string_view what);

} // namespace clampbook::intake
