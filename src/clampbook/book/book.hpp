// SPDX-License-Identifier: MIT
#pragma once

// The shop's book: one SQLite file that holds machines, assemblies, joints, values and their sources. What was written
// down stays: values are never changed or deleted, and each telling leaves an event whose hash covers the one before.
// This floor keeps records; whether a value is sensible is judged above it. One object per thread.

#include "clampbook/book/publication.hpp"
#include "clampbook/model/joint.hpp"

#include <cstddef>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace clampbook::book {

/// The layout of a new book: the number of the last file in schema/book.
inline constexpr int k_layout = 1;

/// Tells the database library that this process has one thread, which saves it locks and counts: a twentieth of an import. To be
/// called before anything is opened; later it changes nothing. Whoever has several threads leaves it alone.
void expect_one_thread() noexcept;

enum class Access { read, write };

/// Who tells the book something, and when: a UTC time like 2026-11-25T10:15:00Z.
struct Stamp {
    std::string person;
    std::string at;
    std::string origin = {}; ///< the file or book that it is taken from, where nobody types it

    [[nodiscard]] std::string date() const { return at.substr(0, 10); }
};

/// A joint with the assembly and machine that it belongs to.
struct Place {
    Machine machine;
    Assembly assembly;
    Joint joint;
};

/// One part of a search. A joint fits where all `words` occur in it (each as the beginning of a word), or one of the
/// `phrases` does, or its role is one of `roles`. Words are folded. For a thread, `thread` alone is set.
struct SearchGroup {
    std::vector<std::string> words;
    std::vector<std::vector<std::string>> phrases;
    std::vector<Role> roles;
    std::string thread;
};

struct SearchResult {
    std::vector<Place> places; ///< best first, at most as many as asked for
    std::size_t total = 0;
};

struct Info {
    std::string path;
    std::size_t machines = 0;
    std::size_t assemblies = 0;
    std::size_t joints = 0;
    std::size_t joints_without_value = 0;
    std::size_t values = 0;
    std::size_t checked_values = 0;
    std::size_t sources = 0;
    std::size_t people = 0;
    std::size_t events = 0;
    int layout = 0;
    std::string created_on;
    std::string last_event_at;
    std::string head; ///< hash of the last event
};

/// A second person's keying of a value. Who checked, and when, may lie before the telling, where it comes from another book.
struct Check {
    std::string as_written;
    std::string by;
    std::string on; ///< ISO 8601 date
};

/// The end of a value: withdrawn, or superseded by another.
struct End {
    RecordId by_value = 0; ///< the value that takes its place; 0 where it is withdrawn
    std::string reason;
    std::string by;
    std::string on; ///< ISO 8601 date
};

/// A line of the book's own history.
struct Event {
    std::int64_t seq = 0;
    std::string at;
    std::string person;
    std::string kind;
    RecordId joint = 0;                                     ///< that it tells of; 0 where of none
    RecordId value = 0;                                     ///< that it tells of; 0 where of none
    std::string detail;                                     ///< JSON
    std::vector<std::pair<std::string, std::string>> facts; ///< what the JSON says, name and text, empty ones left out
};

class Book {
public:
    /// Makes a new book. Throws conflict where the file exists, and what the disk says otherwise.
    static Book create(const std::string& path, const Stamp& stamp);
    /// Makes a new book and has it filled. It gets its name when it is whole: nothing is there until then.
    static void create_whole(const std::string& path, const Stamp& stamp, const std::function<void(Book&)>& fill);

    /// Opens a book. For reading, a read-only disk will do. Throws invalid_data where there is no file, where it is a
    /// folder or no book, or where a newer clampbook made it (naming both layouts), and where a published copy is not there
    /// whole. A published copy is never written: throws conflict, naming the book that it was published from.
    Book(const std::string& path, Access access);
    ~Book();
    Book(Book&&) noexcept;
    Book& operator=(Book&&) noexcept;
    Book(const Book&) = delete;
    Book& operator=(const Book&) = delete;

    /// Runs `body` in one transaction: all that it writes is kept, or nothing. Inside another it is a part of that one. Waits for
    /// another writer for a while, then throws conflict.
    void in_one_go(const std::function<void()>& body);
    /// The same, but inside another a body that throws leaves what was written before it.
    void in_part(const std::function<void()>& body);

    // Each of these writes one record and its event, in a transaction of its own unless inside `in_one_go`.
    // They throw conflict where a record of that name is there already.
    /// `added_by` and `added_at` of the source are kept; the stamp's where they are empty.
    RecordId add_source(const Source& source, const Stamp& stamp);
    RecordId add_machine(const Machine& machine, const Stamp& stamp);
    RecordId add_assembly(const Assembly& assembly, const Stamp& stamp);
    RecordId add_joint(const Joint& joint, const Stamp& stamp);
    /// Keeps a value; `value.source` is given by its id. `entered_on` may differ from the stamp's date.
    RecordId add_value(const Value& value, const Stamp& stamp);

    /// Keeps that a second person keyed the same figure. Whether it is the same is judged above this floor.
    void check_value(RecordId value, const Check& check, const Stamp& stamp);
    /// Ends a value. Throws conflict where it has ended already.
    void end_value(RecordId value, const End& end, const Stamp& stamp);

    [[nodiscard]] std::vector<Source> sources() const;
    [[nodiscard]] std::optional<Source> find_source(const Source& like) const;
    [[nodiscard]] std::vector<Machine> machines() const;
    [[nodiscard]] std::optional<Machine> find_machine(const Machine& like) const;
    [[nodiscard]] std::vector<Assembly> assemblies(RecordId machine) const;
    [[nodiscard]] std::optional<Assembly> find_assembly(RecordId machine, std::string_view name) const;
    [[nodiscard]] std::optional<Joint> find_joint(RecordId assembly, std::string_view name) const;
    /// Every joint in the order machine, assembly, joint.
    [[nodiscard]] std::vector<Place> places() const;
    /// The same whole, one after the other, none of them kept in memory.
    void each_joint(const std::function<void(const JointRecord&)>& body) const;
    /// Every current value in that order with its joint; a joint that has none comes once, without. Steps are left out, which the
    /// text says, and checks, ends and what else is known of a source than its names and date.
    void each_current(const std::function<void(const Place&, const Value*)>& body) const;
    /// Every machine with its assemblies, in that order.
    [[nodiscard]] std::vector<MachineRecord> machine_records() const;
    [[nodiscard]] std::optional<Place> place(RecordId joint) const;
    /// Values of a joint, oldest first.
    [[nodiscard]] std::vector<Value> values(RecordId joint) const;

    [[nodiscard]] std::optional<Value> value(RecordId id) const;
    /// The number that the next value will get.
    [[nodiscard]] RecordId next_value() const;

    [[nodiscard]] SearchResult search(const std::vector<SearchGroup>& groups, std::size_t at_most) const;
    /// Names of machines, assemblies and joints, each once: material for "did you mean".
    [[nodiscard]] std::vector<std::string> names() const;

    /// What was told of a joint, its machine and assembly left out, in order.
    [[nodiscard]] std::vector<Event> history(RecordId joint) const;
    /// What was told of values after the event `seq`, in order.
    [[nodiscard]] std::vector<Event> told_of_values_after(std::int64_t seq) const;
    /// How many events there were at the beginning of a day (ISO 8601 date).
    [[nodiscard]] std::int64_t events_before(const std::string& date) const;
    [[nodiscard]] Info info() const;

    /// Faults of the file, a sentence each; none where the book is whole: the database itself, the links between
    /// records, the search words, and that each value's steps are still what its text says.
    [[nodiscard]] std::vector<std::string> verify() const;
    /// What was changed behind the program's back, a sentence each; none where the book is as it was told. Computes the chain of
    /// events again and names the first line that doesn't follow, compares how many there are and the last hash with what the
    /// book remembers, and holds every record, value, check and end against the event that told it.
    [[nodiscard]] std::vector<std::string> audit() const;
    /// Copies the book as it is now into a new file, which is a book again where this is a published copy. Throws conflict where
    /// the file exists.
    void backup(const std::string& path) const;
    /// Writes the book as it is now as a published copy, in place of an older one; gives what the copy says of itself. Throws
    /// conflict where something else is there.
    // NOLINTNEXTLINE(modernize-use-nodiscard): it is there for who wants to tell of it
    Publication publish(const std::string& path, const Stamp& stamp) const;
    /// What a published copy says of itself; none of a book.
    [[nodiscard]] std::optional<Publication> publication() const;
    /// Why a published copy is not what was published, in a sentence, by its digest over the whole file.
    [[nodiscard]] std::optional<std::string> publication_fault() const;

    struct Impl;

private:
    explicit Book(std::unique_ptr<Impl> impl);
    std::unique_ptr<Impl> impl_;
};

/// A thread's code as one search word: `M18x1.5` becomes `m18x1p5`. The coarse `M10` becomes `m10coarse`, since `m10`
/// alone is the size, under which the fine pitches are found too.
[[nodiscard]] std::string thread_word(std::string_view thread_code);
/// The size of a metric thread as a search word: `m18`.
[[nodiscard]] std::string thread_size_word(std::string_view size);

} // namespace clampbook::book
