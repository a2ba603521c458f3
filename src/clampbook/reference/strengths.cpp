// SPDX-License-Identifier: MIT
// Lookups of property classes, loads, nut factors, and of materials and forms by their everyday names.

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/reference/impl.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <algorithm>

namespace clampbook::reference {
namespace {

std::vector<std::string> column_of(Statements& statements, const std::string& sql) {
    Query query{statements, sql};
    std::vector<std::string> values;
    while (query.executeStep()) {
        values.push_back(query.getColumn(0).getString());
    }
    return values;
}

// Spellings are the same where they fold to the same letters and digits.
std::string spelling(std::string_view text) {
    std::string out;
    for (const char c : fold(text)) {
        if (c != ' ' && c != '-' && c != '_') {
            out += c;
        }
    }
    return out;
}

// The code that was meant, among the codes themselves and the aliases of a table.
std::string by_spelling(Statements& statements, const char* table, const std::vector<std::string>& codes, std::string_view typed,
                        std::string_view what) {
    const std::string wanted = spelling(typed);
    for (const std::string& code : codes) {
        if (spelling(code) == wanted) {
            return code;
        }
    }
    Query query{statements, "SELECT alias, code FROM alias WHERE table_name = ?"};
    query.bind(1, table);
    std::vector<std::string> names = codes;
    while (query.executeStep()) {
        if (spelling(query.getColumn(0).getString()) == wanted) {
            return query.getColumn(1).getString();
        }
        names.push_back(query.getColumn(0).getString());
    }
    throw error(ErrorKind::not_found, "'{}' is no {} known here{}; known are {}", typed, what, did_you_mean(typed, names),
                join(codes, ", "));
}

std::string sizes_of(const std::vector<ClassRow>& rows, bool inches) {
    Length low = rows.front().from.value_or(rows.front().up_to);
    Length high = rows.front().up_to;
    for (const ClassRow& row : rows) {
        low = std::min(low, row.from.value_or(row.over.value_or(low)));
        high = std::max(high, row.up_to);
    }
    if (inches) {
        return fmt::format("{:.6g} to {:.6g} in", low.in(inch), high.in(inch));
    }
    return fmt::format("M{:.4g} to M{:.4g}", low.in(millimetre), high.in(millimetre));
}

} // namespace

std::vector<std::string> Reference::class_names() const {
    return guarded(impl_->name, [&] {
        return column_of(impl_->statements,
                         "SELECT DISTINCT class FROM property_class ORDER BY authority, tensile_strength_MPa, class");
    });
}

std::string Reference::class_name(std::string_view typed) const {
    return guarded(impl_->name,
                   [&] { return by_spelling(impl_->statements, "property_class", class_names(), typed, "property class"); });
}

ClassRow Reference::property_class(std::string_view name, const ThreadRow& thread) const {
    return guarded(impl_->name, [&] {
        Query query{impl_->statements,
                    std::string{"SELECT class, t.code, over_mm, from_mm, up_to_mm, tensile_strength_MPa, yield_strength_MPa, "
                                "yield_kind, proof_stress_MPa, t.note, thread_system, "} +
                        k_citation_columns +
                        " FROM property_class t JOIN source s ON s.code = t.source WHERE class = ? ORDER BY up_to_mm"};
        query.bind(1, std::string{name});
        std::vector<ClassRow> rows;
        std::string system;
        while (query.executeStep()) {
            ClassRow row;
            const auto length = [&](int column) -> std::optional<Length> {
                const auto number = number_at(query, column);
                return number ? std::optional{*number * millimetre} : std::nullopt;
            };
            row.name = text_at(query, 0);
            row.code = text_at(query, 1);
            row.over = length(2);
            row.from = length(3);
            row.up_to = *length(4);
            row.tensile_strength = *number_at(query, 5) * megapascal;
            row.yield_strength = *number_at(query, 6) * megapascal;
            row.yield_kind = text_at(query, 7);
            if (const auto proof = number_at(query, 8)) {
                row.proof_stress = *proof * megapascal;
            }
            row.note = text_at(query, 9);
            system = text_at(query, 10);
            row.citation = citation_at(query, 11);
            rows.push_back(std::move(row));
        }
        if (rows.empty()) {
            throw error(ErrorKind::internal, "'{}' passed as a property class but is none", name);
        }
        if (is_pipe(thread.system)) {
            throw error(ErrorKind::out_of_validity, "{} is a pipe thread: it seals and is not made in property classes",
                        thread.code);
        }
        if ((system == "M") != (thread.system == ThreadSystem::metric)) {
            throw error(ErrorKind::out_of_validity, "class {} is made with {} threads, and {} is {}", name,
                        system == "M" ? "metric" : "inch", thread_for_print(thread.code),
                        system == "M" ? "an inch thread" : "a metric one");
        }
        const Length slack = 1e-6 * millimetre;
        for (const ClassRow& row : rows) {
            const bool above =
                (!row.from || thread.major >= *row.from - slack) && (!row.over || thread.major > *row.over + slack);
            if (above && thread.major <= row.up_to + slack) {
                return row;
            }
        }
        throw error(ErrorKind::out_of_validity, "class {} is not made in {}: {} gives it for {}", name,
                    thread_for_print(thread.code), rows.front().citation.title, sizes_of(rows, system == "UN"));
    });
}

std::optional<LoadRow> Reference::load(std::string_view thread_code, std::string_view class_name) const {
    return guarded(impl_->name, [&]() -> std::optional<LoadRow> {
        Query query{impl_->statements, std::string{"SELECT stress_area_mm2, proof_load_N, tensile_load_N, proof_load_basis, "
                                                   "tensile_load_basis, "} +
                                           k_citation_columns +
                                           " FROM bolt_load t JOIN source s ON s.code = t.source WHERE thread = ? AND class = ?"};
        query.bind(1, std::string{thread_code});
        query.bind(2, std::string{class_name});
        if (!query.executeStep()) {
            return std::nullopt;
        }
        return LoadRow{*number_at(query, 0) * square_millimetre, *number_at(query, 1) * newton,    *number_at(query, 2) * newton,
                       text_at(query, 3) == "published",         text_at(query, 4) == "published", citation_at(query, 5)};
    });
}

std::vector<NutFactorRow> Reference::nut_factors() const {
    return guarded(impl_->name, [&] {
        Query query{impl_->statements, std::string{"SELECT t.code, condition, low_value, high_value, value_value, "} +
                                           k_citation_columns +
                                           " FROM nut_factor t JOIN source s ON s.code = t.source ORDER BY t.code"};
        std::vector<NutFactorRow> rows;
        while (query.executeStep()) {
            rows.push_back({text_at(query, 0), text_at(query, 1), number_at(query, 2), number_at(query, 3), number_at(query, 4),
                            citation_at(query, 5)});
        }
        return rows;
    });
}

NutFactorRow Reference::nut_factor(std::string_view condition) const {
    std::vector<std::string> codes;
    for (NutFactorRow& row : nut_factors()) {
        if (spelling(row.code) == spelling(condition)) {
            return row;
        }
        codes.push_back(row.code);
    }
    throw error(ErrorKind::not_found, "'{}' is no condition with a nut factor here{}; known are {}", condition,
                did_you_mean(condition, codes), join(codes, ", "));
}

ScatterRow Reference::scatter(std::string_view typed) const {
    return guarded(impl_->name, [&] {
        Query query{impl_->statements, std::string{"SELECT t.code, method, scatter_high_value, alpha_high_value, "} +
                                           k_citation_columns +
                                           " FROM tightening_scatter t JOIN source s ON s.code = t.source ORDER BY t.code"};
        std::vector<std::string> codes;
        while (query.executeStep()) {
            codes.push_back(text_at(query, 0));
            if (spelling(codes.back()) == spelling(typed)) {
                return ScatterRow{codes.back(), text_at(query, 1), number_at(query, 2), number_at(query, 3),
                                  citation_at(query, 4)};
            }
        }
        throw error(ErrorKind::not_found, "'{}' is no way of tightening with a scatter here{}; known are: {}", typed,
                    did_you_mean(typed, codes), join(codes, "; "));
    });
}

PreloadChoice Reference::preload_choice(std::string_view code) const {
    return guarded(impl_->name, [&] {
        Query query{impl_->statements, std::string{"SELECT words, share_value, "} + k_citation_columns +
                                           " FROM preload_choice t JOIN source s ON s.code = t.source WHERE t.code = ?"};
        query.bind(1, std::string{code});
        if (!query.executeStep()) {
            throw error(ErrorKind::internal, "the reference lacks the preload choice '{}'", code);
        }
        return PreloadChoice{text_at(query, 0), *number_at(query, 1), citation_at(query, 2)};
    });
}

std::optional<SizeRow> Reference::bearing_diameter(std::string_view head, std::string_view size) const {
    return guarded(impl_->name, [&]() -> std::optional<SizeRow> {
        Query query{impl_->statements, std::string{"SELECT t.code, bearing_diameter_min_mm, "} + k_citation_columns +
                                           " FROM head t JOIN source s ON s.code = t.source WHERE t.kind = ? AND t.size = ? "
                                           "AND bearing_diameter_min_mm IS NOT NULL ORDER BY t.code LIMIT 1"};
        query.bind(1, std::string{head});
        query.bind(2, std::string{size});
        if (!query.executeStep()) {
            return std::nullopt;
        }
        return SizeRow{text_at(query, 0), *number_at(query, 1) * millimetre, citation_at(query, 2)};
    });
}

std::optional<SizeRow> Reference::clearance_hole(std::string_view fit, std::string_view size) const {
    return guarded(impl_->name, [&]() -> std::optional<SizeRow> {
        Query query{impl_->statements, std::string{"SELECT t.code, CASE ?1 WHEN 'fine' THEN fine_mm WHEN 'medium' THEN "
                                                   "medium_mm WHEN 'coarse' THEN coarse_mm END, "} +
                                           k_citation_columns +
                                           " FROM clearance_hole t JOIN source s ON s.code = t.source WHERE t.size = ?2"};
        query.bind(1, std::string{fit});
        query.bind(2, std::string{size});
        if (!query.executeStep() || !number_at(query, 1)) {
            return std::nullopt;
        }
        return SizeRow{std::string{fit} + " hole for " + text_at(query, 0), *number_at(query, 1) * millimetre,
                       citation_at(query, 2)};
    });
}

std::string Reference::fastener_class(std::string_view typed) const {
    return guarded(impl_->name, [&] {
        for (const std::string& nut : column_of(impl_->statements, "SELECT DISTINCT class FROM nut_load")) {
            if (nut == trim(typed)) {
                return nut;
            }
        }
        return class_name(typed);
    });
}

std::string Reference::housing(std::string_view typed) const {
    return guarded(impl_->name, [&] {
        return by_spelling(impl_->statements, "housing", column_of(impl_->statements, "SELECT code FROM housing ORDER BY code"),
                           typed, "housing material");
    });
}

std::string Reference::ring_material(std::string_view typed) const {
    return guarded(impl_->name, [&] {
        return by_spelling(impl_->statements, "ring_material",
                           column_of(impl_->statements, "SELECT code FROM ring_material ORDER BY code"), typed, "ring material");
    });
}

std::string Reference::plug_form(std::string_view typed) const {
    return guarded(impl_->name, [&] {
        return by_spelling(impl_->statements, "plug_form",
                           column_of(impl_->statements, "SELECT code FROM plug_form ORDER BY code"), typed, "plug form");
    });
}

std::vector<Word> Reference::words() const {
    return guarded(impl_->name, [&] {
        Query query{impl_->statements, "SELECT w.concept, coalesce(c.role, ''), w.language, w.word, w.preferred = 'yes' "
                                       "FROM word w JOIN concept c ON c.code = w.concept ORDER BY w.code"};
        std::vector<Word> words;
        while (query.executeStep()) {
            words.push_back(
                {text_at(query, 0), text_at(query, 1), text_at(query, 2), text_at(query, 3), query.getColumn(4).getInt() != 0});
        }
        return words;
    });
}

} // namespace clampbook::reference
