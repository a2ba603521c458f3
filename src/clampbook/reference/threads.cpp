// SPDX-License-Identifier: MIT
// Lookups of threads and of what their standards print of them.

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/reference/impl.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cmath>

namespace clampbook::reference {
namespace {

template <Dimension D>
std::optional<Quantity<D>> quantity_at(const SQLite::Statement& query, int column, Unit<D> unit) {
    const auto number = number_at(query, column);
    return number ? std::optional{*number * unit} : std::nullopt;
}

const char* system_code(ThreadSystem system) {
    switch (system) {
    case ThreadSystem::metric:
        return "M";
    case ThreadSystem::unified:
        return "UN";
    case ThreadSystem::pipe_parallel:
        return "G";
    case ThreadSystem::pipe_taper:
        return "R";
    case ThreadSystem::npt:
        return "NPT";
    }
    return "";
}

ThreadRow row_of(const SQLite::Statement& query, ThreadSystem system) {
    ThreadRow row;
    row.system = system;
    row.code = text_at(query, 0);
    row.size = text_at(query, 1);
    row.series = text_at(query, 2);
    row.major = *number_at(query, 3) * millimetre;
    row.pitch = quantity_at(query, 4, millimetre);
    row.threads_per_inch = number_at(query, 5);
    row.pitch_diameter = quantity_at(query, 6, millimetre);
    row.minor_internal = quantity_at(query, 7, millimetre);
    row.minor_external = quantity_at(query, 8, millimetre);
    row.stress_area = quantity_at(query, 9, square_millimetre);
    row.gauge_length = quantity_at(query, 10, millimetre);
    row.useful_length = quantity_at(query, 11, millimetre);
    row.note = text_at(query, 12);
    row.citation = citation_at(query, 13);
    return row;
}

bool close(double a, double b) { return std::fabs(a - b) <= 1e-6; }

bool matches(const ThreadRow& row, const ThreadName& name) {
    if (name.system == ThreadSystem::metric) {
        return name.pitch ? row.pitch && close(row.pitch->in(millimetre), name.pitch->in(millimetre)) : row.series == "coarse";
    }
    const bool series = name.series.empty() || row.series == name.series || (name.series == "UN" && row.series == "8-UN");
    return series && (!name.threads_per_inch || (row.threads_per_inch && close(*row.threads_per_inch, *name.threads_per_inch)));
}

std::vector<ThreadRow> rows_of_size(Statements& statements, const ThreadName& name) {
    Query query{statements, std::string{"SELECT t.code, t.size, t.series, major_diameter_mm, pitch_mm, threads_per_inch_value, "
                                        "pitch_diameter_mm, minor_internal_mm, minor_external_mm, stress_area_mm2, "
                                        "gauge_length_mm, useful_length_mm, t.note, "} +
                                k_citation_columns +
                                " FROM thread t JOIN source s ON s.code = t.source WHERE system = ? AND size = ? "
                                "ORDER BY coalesce(pitch_mm, 25.4 / threads_per_inch_value) DESC"};
    query.bind(1, system_code(name.system));
    query.bind(2, name.size);
    std::vector<ThreadRow> rows;
    while (query.executeStep()) {
        rows.push_back(row_of(query, name.system));
    }
    return rows;
}

std::string standard_of(ThreadSystem system) {
    switch (system) {
    case ThreadSystem::metric:
        return "ISO 261";
    case ThreadSystem::unified:
        return "ASME B1.1";
    case ThreadSystem::pipe_parallel:
        return "ISO 228-1";
    case ThreadSystem::pipe_taper:
        return "ISO 7-1";
    case ThreadSystem::npt:
        return "ASME B1.20.1";
    }
    return {};
}

} // namespace

std::optional<ThreadRow> Reference::find_thread(const ThreadName& name) const {
    return guarded(impl_->name, [&]() -> std::optional<ThreadRow> {
        std::optional<ThreadRow> found;
        for (ThreadRow& row : rows_of_size(impl_->statements, name)) {
            if (matches(row, name) && !found) {
                found = std::move(row);
            }
        }
        return found;
    });
}

ThreadRow Reference::thread(const ThreadName& name) const {
    if (auto found = find_thread(name)) {
        return *found;
    }
    const auto near = guarded(impl_->name, [&] {
        std::vector<std::string> codes;
        for (const ThreadRow& row : rows_of_size(impl_->statements, name)) {
            codes.push_back(thread_for_print(row.code));
        }
        return codes;
    });
    if (!near.empty()) {
        throw error(ErrorKind::not_found, "'{}' is not among the threads of {} kept here; in this size there {} {}", name.text,
                    standard_of(name.system), near.size() == 1 ? "is" : "are", join(near, ", "));
    }
    if (name.system == ThreadSystem::metric) {
        const auto beside = guarded(impl_->name, [&] {
            Query query{impl_->statements,
                        "SELECT DISTINCT size FROM thread WHERE system = 'M' ORDER BY abs(major_diameter_mm - ?), size LIMIT 2"};
            query.bind(1, read_decimal(name.size.substr(1))->value);
            std::vector<std::string> sizes;
            while (query.executeStep()) {
                sizes.push_back(query.getColumn(0).getString());
            }
            return sizes;
        });
        throw error(ErrorKind::not_found, "'{}' is not among the threads of {} kept here; the sizes beside it are {}", name.text,
                    standard_of(name.system), join(beside, " and "));
    }
    const auto all = guarded(impl_->name, [&] {
        Query query{impl_->statements, "SELECT code FROM thread WHERE system = ?"};
        query.bind(1, system_code(name.system));
        std::vector<std::string> codes;
        while (query.executeStep()) {
            codes.push_back(query.getColumn(0).getString());
            if (name.series.empty()) { // typed without: compared without
                codes.push_back(codes.back().substr(0, codes.back().find(' ')));
            }
        }
        return codes;
    });
    throw error(ErrorKind::not_found, "'{}' is not among the threads of {} kept here{}", name.text, standard_of(name.system),
                did_you_mean(name.text, all));
}

std::optional<ToleranceRow> Reference::tolerance(std::string_view kind, Length major, Length pitch) const {
    return guarded(impl_->name, [&]() -> std::optional<ToleranceRow> {
        Query query{impl_->statements, std::string{"SELECT size_mm, "} + k_citation_columns +
                                           " FROM thread_tolerance t JOIN source s ON s.code = t.source "
                                           "WHERE tolerance = ? AND abs(pitch_mm - ?) < 1e-6 "
                                           "AND (over_mm IS NULL OR (? > over_mm AND ? <= up_to_mm))"};
        query.bind(1, std::string{kind});
        query.bind(2, pitch.in(millimetre));
        query.bind(3, major.in(millimetre));
        query.bind(4, major.in(millimetre));
        if (!query.executeStep()) {
            return std::nullopt;
        }
        return ToleranceRow{*number_at(query, 0) * millimetre, citation_at(query, 1)};
    });
}

} // namespace clampbook::reference
