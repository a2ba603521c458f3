// SPDX-License-Identifier: MIT
#pragma once

// The columns of machines, assemblies and joints as every query asks for them, and the records read from such columns. Not
// installed.

#include "clampbook/book/impl.hpp"

namespace clampbook::book {

inline constexpr const char* k_machine_columns = "m.id, m.maker, m.model, m.variant, m.years, m.code, m.note";
inline constexpr const char* k_assembly_columns = "a.id, a.machine, a.name, a.note";
inline constexpr const char* k_joint_columns =
    "j.id, j.assembly, j.name, j.role, j.count, j.thread, j.property_class, j.form, j.ring, "
    "j.housing, j.engagement_mm, j.safety_critical, j.note";
/// Each reads its record from the columns that begin at `c`.
[[nodiscard]] Machine machine_at(const SQLite::Statement& q, int c);
[[nodiscard]] Assembly assembly_at(const SQLite::Statement& q, int c);
[[nodiscard]] Joint joint_at(SQLite::Statement& q, int c);

} // namespace clampbook::book
