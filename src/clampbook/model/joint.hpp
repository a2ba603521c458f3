// SPDX-License-Identifier: MIT
#pragma once

// The records of a shop's book as plain values: machine, assembly, joint, source, and a value with where it stands.
// What they mean together is told by the floors above; here they only have their shape.

#include "clampbook/model/citation.hpp"
#include "clampbook/model/tightening.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace clampbook {

using RecordId = std::int64_t;

/// What a joint is for. Stored in books by name: do not rename.
enum class Role { drain, fill, level, vent, cover, pump, filter, sensor, flange, bearing, wheel, brake, steering, mount, other };

[[nodiscard]] std::span<const Role> all_roles() noexcept;
[[nodiscard]] std::string_view role_name(Role role) noexcept;
/// English words under which a joint of this role is found beside its name: "drain plug".
[[nodiscard]] std::string_view role_words(Role role) noexcept;
/// Throws usage with the nearest role.
[[nodiscard]] Role read_role(std::string_view text);
/// True for joints that close an oil space with a plug: their torque comes from ring and housing, not from a bolt chart.
[[nodiscard]] bool is_plug(Role role) noexcept;
/// True for joints where a wrong torque hurts people: wheel, brake, steering.
[[nodiscard]] bool is_safety_critical(Role role) noexcept;

struct Machine {
    RecordId id = 0;
    std::string maker;
    std::string model;
    std::string variant;
    std::string years;
    std::string code;
    std::string note;

    /// "Yard carrier A, wide track"
    [[nodiscard]] std::string title() const;
};

struct Assembly {
    RecordId id = 0;
    RecordId machine = 0;
    std::string name;
    std::string note;
};

struct Joint {
    RecordId id = 0;
    RecordId assembly = 0;
    std::string name;
    Role role = Role::other;
    int count = 1;
    std::string thread; ///< code of the curated thread, empty where not known
    std::string property_class;
    std::string form;
    std::string ring; ///< material and, where unusual, size
    std::string housing;
    std::optional<double> engagement_mm;
    bool safety_critical = false;
    std::string note;
};

/// What is said of a joint besides its names and note, as text, by the names of the exchange file; empty where nothing is.
using JointFacts = std::array<std::pair<std::string_view, std::string>, 9>;
[[nodiscard]] JointFacts facts_of(const Joint& joint);

/// A document of the shop that figures were taken from.
struct Source {
    RecordId id = 0;
    std::string kind;
    std::string title;
    std::string number;
    std::string edition;
    std::string date;
    std::string kept;
    std::string file_digest;
    std::string note;
    std::string added_by = {}; ///< who added it to a book, and when; empty for a source that is in none yet
    std::string added_at = {};

    /// "Workshop manual (invented), DEMO-WM-01, edition 4, 2022-11-10"
    [[nodiscard]] std::string line() const;
};

/// Stored in books by name: do not rename.
enum class Standing { current, superseded, withdrawn };
[[nodiscard]] std::string_view standing_name(Standing standing) noexcept;

struct Value {
    RecordId id = 0;
    RecordId joint = 0;
    Label label = Label::shop;
    Tightening tightening;
    std::optional<Source> source;
    std::string page;
    std::string note;
    std::string confirmed;
    std::string entered_by;
    std::string entered_on; ///< ISO 8601 date
    std::string checked_by; ///< empty while unchecked
    std::string checked_on;
    std::string check_as_written; ///< the figure as the second person keyed it
    Standing standing = Standing::current;
    RecordId superseded_by = 0; ///< the value that took its place, where one did
    std::string end_reason;     ///< why it is no longer current
    std::string ended_by;
    std::string ended_on;

    [[nodiscard]] bool is_checked() const noexcept { return !checked_by.empty(); }
};

struct MachineRecord {
    Machine machine;
    std::vector<Assembly> assemblies;
};

/// A joint whole, apart from any book: the values' `id` is their place in the list, counted from 1, and `superseded_by` such a
/// place. Machine, assembly and sources are named by what tells them apart; their numbers mean nothing.
struct JointRecord {
    Machine machine;
    Assembly assembly;
    Joint joint;
    std::vector<Value> values;
};

} // namespace clampbook
