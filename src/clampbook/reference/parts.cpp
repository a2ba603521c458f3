// SPDX-License-Identifier: MIT
// Lookups of what is bolted together: materials, plugs, rings, ports, surfaces and the tools that tighten them.

#include "clampbook/base/text.hpp"
#include "clampbook/reference/impl.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

namespace clampbook::reference {
namespace {

// A figure of a row that is cited apart from it: the columns under the names that k_citation_columns asks for.
std::string cited_apart(std::string_view prefix, std::string_view basis) {
    return fmt::format("(SELECT code, coalesce({0}_source, source) AS source, coalesce({0}_place, place) AS place, {1} AS basis, "
                       "coalesce({0}_keyed, keyed) AS keyed",
                       prefix, basis);
}

Citation citation_apart(Statements& statements, const std::string& table, std::string_view prefix, std::string_view basis,
                        std::string_view code) {
    Query query{statements, std::string{"SELECT "} + k_citation_columns + " FROM " + cited_apart(prefix, basis) + " FROM " +
                                table + ") t JOIN source s ON s.code = t.source WHERE t.code = ?"};
    query.bind(1, std::string{code});
    query.executeStep();
    return citation_at(query, 0);
}

std::optional<Stress> stress_at(const SQLite::Statement& query, int column) {
    const auto number = number_at(query, column);
    return number ? std::optional{*number * megapascal} : std::nullopt;
}

} // namespace

MaterialRow Reference::material(std::string_view code) const {
    return guarded(impl_->name, [&] {
        Query query{impl_->statements, std::string{"SELECT t.code, name, family, tensile_strength_MPa, shear_strength_MPa, "
                                                   "shear_ratio_value, modulus_MPa, expansion_per_K, limiting_pressure_MPa, "} +
                                           k_citation_columns +
                                           " FROM housing t JOIN source s ON s.code = t.source WHERE t.code = ?"};
        query.bind(1, std::string{code});
        if (!query.executeStep()) {
            throw error(ErrorKind::internal, "'{}' passed as a material but is none", code);
        }
        MaterialRow row;
        row.code = text_at(query, 0);
        row.name = text_at(query, 1);
        row.family = text_at(query, 2);
        row.tensile_strength = *stress_at(query, 3);
        const double ratio = *number_at(query, 5);
        if (const auto shear = stress_at(query, 4)) {
            row.shear_strength = *shear;
            row.shear_basis = "as printed";
        } else {
            row.shear_strength = ratio * row.tensile_strength;
            row.shear_basis = fmt::format("{:.2f} Rm", ratio);
        }
        row.modulus = *stress_at(query, 6);
        row.expansion = *number_at(query, 7);
        row.limiting_pressure = stress_at(query, 8);
        row.citation = citation_at(query, 9);
        row.shear = citation_apart(impl_->statements, "housing", "shear", "shear_basis", row.code);
        row.elastic = citation_apart(impl_->statements, "housing", "elastic", "basis", row.code);
        if (row.limiting_pressure) {
            row.pressure = citation_apart(impl_->statements, "housing", "pressure", "basis", row.code);
        }
        return row;
    });
}

std::optional<RingRow> Reference::usual_ring(std::string_view thread_code) const {
    return guarded(impl_->name, [&]() -> std::optional<RingRow> {
        Query query{impl_->statements,
                    std::string{"SELECT t.code, inner_diameter_print, outer_diameter_print, thickness_print, inner_diameter_mm, "
                                "outer_diameter_mm, thickness_mm, "} +
                        k_citation_columns +
                        " FROM ring_thread u JOIN ring t ON t.code = u.ring JOIN source s ON s.code = t.source "
                        "WHERE u.size = ? AND u.usual = 'yes' AND t.form = 'A'"};
        query.bind(1, std::string{thread_code.substr(0, thread_code.find('x'))});
        if (!query.executeStep()) {
            return std::nullopt;
        }
        const auto number = [&](int column) {
            const std::string print = text_at(query, column);
            return print.substr(0, print.find(' '));
        };
        return RingRow{text_at(query, 0),
                       number(1) + "×" + number(2) + "×" + number(3) + " mm",
                       *number_at(query, 4) * millimetre,
                       *number_at(query, 5) * millimetre,
                       *number_at(query, 6) * millimetre,
                       citation_at(query, 7)};
    });
}

RingInfo Reference::ring(std::string_view material, std::string_view thread_code) const {
    return guarded(impl_->name, [&] {
        Query query{impl_->statements, std::string{"SELECT t.code, t.name, renew, seating_stress_MPa, "} + k_citation_columns +
                                           " FROM ring_material t JOIN source s ON s.code = t.source WHERE t.code = ?"};
        query.bind(1, std::string{material});
        if (!query.executeStep()) {
            throw error(ErrorKind::internal, "'{}' passed as a ring material but is none", material);
        }
        RingInfo info{
            text_at(query, 0), text_at(query, 1), text_at(query, 2), {}, citation_at(query, 4), stress_at(query, 3), {}};
        if (info.seating_stress) {
            info.seating = citation_apart(impl_->statements, "ring_material", "seating", "'published'", info.material);
        }
        const bool flat = info.material == "aluminium" || info.material == "copper" || info.material == "steel";
        if (const auto usual = flat && !thread_code.empty() ? usual_ring(thread_code) : std::nullopt) {
            info.usual = usual->print;
        }
        return info;
    });
}

std::optional<PlugRow> Reference::plug(std::string_view form, std::string_view thread_code) const {
    return guarded(impl_->name, [&]() -> std::optional<PlugRow> {
        Query query{impl_->statements,
                    std::string{"SELECT t.code, form, across_flats_mm, collar_diameter_mm, thread_length_mm, "} +
                        k_citation_columns +
                        " FROM plug t JOIN source s ON s.code = t.source WHERE form = ? AND thread = ? ORDER BY t.code"};
        query.bind(1, std::string{form});
        query.bind(2, std::string{thread_code});
        if (!query.executeStep()) {
            return std::nullopt;
        }
        const auto collar = number_at(query, 3);
        return PlugRow{text_at(query, 0),
                       text_at(query, 1),
                       *number_at(query, 2) * millimetre,
                       collar ? std::optional{*collar * millimetre} : std::nullopt,
                       *number_at(query, 4) * millimetre,
                       citation_at(query, 5)};
    });
}

PlugFormRow Reference::plug_form_row(std::string_view code) const {
    return guarded(impl_->name, [&] {
        Query query{impl_->statements, std::string{"SELECT t.code, name, drive, seal, "} + k_citation_columns +
                                           " FROM plug_form t JOIN source s ON s.code = t.source WHERE t.code = ?"};
        query.bind(1, std::string{code});
        if (!query.executeStep()) {
            throw error(ErrorKind::internal, "'{}' passed as a form of plug but is none", code);
        }
        return PlugFormRow{text_at(query, 0), text_at(query, 1), text_at(query, 2), text_at(query, 3), citation_at(query, 4)};
    });
}

std::vector<PortTorqueRow> Reference::port_torques(std::string_view thread_code) const {
    return guarded(impl_->name, [&] {
        Query query{impl_->statements,
                    std::string{"SELECT standard, series, torque_Nm, "} + k_citation_columns +
                        " FROM port_torque t JOIN source s ON s.code = t.source WHERE thread = ? ORDER BY torque_Nm"};
        query.bind(1, std::string{thread_code});
        std::vector<PortTorqueRow> rows;
        while (query.executeStep()) {
            rows.push_back({text_at(query, 0), text_at(query, 1), *number_at(query, 2) * newton_metre, citation_at(query, 3)});
        }
        return rows;
    });
}

std::optional<PipeToleranceRow> Reference::pipe_tolerance(double threads_per_inch) const {
    return guarded(impl_->name, [&]() -> std::optional<PipeToleranceRow> {
        Query query{impl_->statements,
                    std::string{"SELECT pitch_internal_mm, pitch_external_mm, minor_internal_mm, major_external_mm, "} +
                        k_citation_columns +
                        " FROM pipe_tolerance t JOIN source s ON s.code = t.source WHERE threads_per_inch_value = ?"};
        query.bind(1, threads_per_inch);
        if (!query.executeStep()) {
            return std::nullopt;
        }
        return PipeToleranceRow{*number_at(query, 0) * millimetre, *number_at(query, 1) * millimetre,
                                *number_at(query, 2) * millimetre, *number_at(query, 3) * millimetre, citation_at(query, 4)};
    });
}

ShearRatioRow Reference::shear_ratio(std::string_view class_name) const {
    return guarded(impl_->name, [&] {
        // The class itself first, then the least.
        Query query{impl_->statements,
                    std::string{"SELECT ratio_value, t.code = ?1, "} + k_citation_columns +
                        " FROM screw_shear t JOIN source s ON s.code = t.source ORDER BY t.code <> ?1, ratio_value"};
        query.bind(1, std::string{class_name});
        if (!query.executeStep()) {
            throw error(ErrorKind::internal, "the reference lacks the shear strength of screws");
        }
        return ShearRatioRow{*number_at(query, 0), *number_at(query, 1) != 0, citation_at(query, 2)};
    });
}

EmbeddingRow Reference::embedding(int roughness, std::string_view location) const {
    return guarded(impl_->name, [&] {
        Query query{impl_->statements, std::string{"SELECT roughness, location, amount_mm, "} + k_citation_columns +
                                           " FROM embedding t JOIN source s ON s.code = t.source "
                                           "WHERE load = 'axial' AND location = ? AND roughness LIKE ?"};
        query.bind(1, std::string{location});
        query.bind(2, fmt::format("%Rz < {} µm", roughness));
        if (!query.executeStep()) {
            throw error(ErrorKind::internal, "the reference lacks the embedding of '{}' under Rz {} µm", location, roughness);
        }
        return EmbeddingRow{text_at(query, 0), text_at(query, 1), *number_at(query, 2) * millimetre, citation_at(query, 3)};
    });
}

FrictionClassRow Reference::friction_class(std::string_view code) const {
    return guarded(impl_->name, [&] {
        Query query{impl_->statements, std::string{"SELECT t.code, low_value, high_value, condition, "} + k_citation_columns +
                                           " FROM friction_class t JOIN source s ON s.code = t.source WHERE t.code = ?"};
        query.bind(1, std::string{code});
        if (!query.executeStep()) {
            throw error(ErrorKind::not_found, "'{}' is no friction class; they are A to E", code);
        }
        return FrictionClassRow{text_at(query, 0), *number_at(query, 1), number_at(query, 2), text_at(query, 3),
                                citation_at(query, 4)};
    });
}

ToolRow Reference::tool(std::string_view typed) const {
    return guarded(impl_->name, [&] {
        // "type II class A", "II A", "IIA" and "ii-a" are one.
        const auto letters = [](std::string_view text) {
            std::string out;
            for (const std::string& word : folded_words(text)) {
                out += word == "type" || word == "class" ? std::string{} : word;
            }
            return out;
        };
        Query query{impl_->statements, std::string{"SELECT t.code, tool, deviation_small_value, deviation_value, "} +
                                           k_citation_columns +
                                           " FROM tool_accuracy t JOIN source s ON s.code = t.source "
                                           "WHERE type IS NOT NULL ORDER BY t.code"};
        std::vector<std::string> known;
        while (query.executeStep()) {
            if (letters(text_at(query, 0)) == letters(typed)) {
                return ToolRow{text_at(query, 0), text_at(query, 1), number_at(query, 2), *number_at(query, 3),
                               citation_at(query, 4)};
            }
            known.push_back(text_at(query, 0) + " (" + text_at(query, 1) + ")");
        }
        throw error(ErrorKind::not_found, "'{}' is no type and class of tool known here; known are {}", typed, join(known, ", "));
    });
}

} // namespace clampbook::reference
