// SPDX-License-Identifier: MIT
#include "clampbook/model/joint.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <algorithm>
#include <array>

namespace clampbook {
namespace {

struct RoleRow {
    Role role;
    std::string_view name;
    std::string_view words;
};

constexpr std::array k_roles{
    RoleRow{Role::drain, "drain", "drain plug"},
    RoleRow{Role::fill, "fill", "fill plug filler"},
    RoleRow{Role::level, "level", "level plug"},
    RoleRow{Role::vent, "vent", "vent breather"},
    RoleRow{Role::cover, "cover", "cover"},
    RoleRow{Role::pump, "pump", "pump"},
    RoleRow{Role::filter, "filter", "filter strainer"},
    RoleRow{Role::sensor, "sensor", "sensor"},
    RoleRow{Role::flange, "flange", "flange"},
    RoleRow{Role::bearing, "bearing", "bearing"},
    RoleRow{Role::wheel, "wheel", "wheel"},
    RoleRow{Role::brake, "brake", "brake"},
    RoleRow{Role::steering, "steering", "steering"},
    RoleRow{Role::mount, "mount", "mount"},
    RoleRow{Role::other, "other", ""},
};

const RoleRow& row_of(Role role) noexcept { return k_roles[static_cast<std::size_t>(role)]; }

consteval std::array<Role, k_roles.size()> listed() {
    std::array<Role, k_roles.size()> roles{};
    for (std::size_t i = 0; i < roles.size(); ++i) {
        roles[i] = k_roles[i].role;
    }
    return roles;
}
constexpr std::array<Role, k_roles.size()> k_all_roles = listed();

} // namespace

std::span<const Role> all_roles() noexcept { return k_all_roles; }

std::string_view role_name(Role role) noexcept { return row_of(role).name; }

std::string_view role_words(Role role) noexcept { return row_of(role).words; }

Role read_role(std::string_view text) {
    const auto known = [](std::string_view name) { return std::ranges::find(k_roles, name, &RoleRow::name); };
    const auto* found = known(text); // as books have it
    found = found == k_roles.end() ? known(fold(text)) : found;
    if (found != k_roles.end()) {
        return found->role;
    }
    std::vector<std::string> names;
    for (const RoleRow& row : k_roles) {
        names.emplace_back(row.name);
    }
    throw error(ErrorKind::usage, "'{}' is no role of a joint{}; the roles are {}", text, did_you_mean(text, names),
                join(names, ", "));
}

bool is_plug(Role role) noexcept {
    return role == Role::drain || role == Role::fill || role == Role::level || role == Role::vent;
}

bool is_safety_critical(Role role) noexcept { return role == Role::wheel || role == Role::brake || role == Role::steering; }

std::string Machine::title() const { return variant.empty() ? model : model + ", " + variant; }

std::string Source::line() const {
    std::string out = title;
    for (const std::string& part : {number, edition.empty() ? edition : "edition " + edition, date}) {
        out += part.empty() ? "" : ", " + part;
    }
    return out;
}

std::string_view standing_name(Standing standing) noexcept {
    switch (standing) {
    case Standing::current:
        return "current";
    case Standing::superseded:
        return "superseded";
    case Standing::withdrawn:
        return "withdrawn";
    }
    return {};
}

JointFacts facts_of(const Joint& joint) {
    return {{{"role", std::string{role_name(joint.role)}},
             {"count", std::to_string(joint.count)},
             {"thread", joint.thread},
             {"property_class", joint.property_class},
             {"form", joint.form},
             {"ring", joint.ring},
             {"housing", joint.housing},
             {"engagement_mm", joint.engagement_mm ? print_shortest(*joint.engagement_mm) : ""},
             {"safety_critical", joint.safety_critical ? "yes" : "no"}}};
}

} // namespace clampbook
