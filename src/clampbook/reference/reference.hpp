// SPDX-License-Identifier: MIT
#pragma once

// The curated database: published figures with their citations, embedded in the program and opened read-only in memory.
// Lookups by name, with the nearest name where there is none; and the tables themselves for listing. What follows by
// formula is not here but in the engine.

#include "clampbook/model/citation.hpp"
#include "clampbook/model/thread.hpp"
#include "clampbook/units/quantity.hpp"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace clampbook::reference {

/// A thread that a standard lists. Printed sizes are there only where a print of them was read.
struct ThreadRow {
    std::string code;   ///< `M18x1.5`, `3/8-16 UNC`, `G1/2`
    std::string size;   ///< `M18`, `3/8`
    std::string series; ///< coarse, fine, UNC, UNF, 8-UN, parallel pipe, taper pipe
    ThreadSystem system = ThreadSystem::metric;
    Length major;
    std::optional<Length> pitch;
    std::optional<double> threads_per_inch;
    std::optional<Length> pitch_diameter;
    std::optional<Length> minor_internal;
    std::optional<Length> minor_external;
    std::optional<Area> stress_area;
    std::optional<Length> gauge_length;  ///< taper threads
    std::optional<Length> useful_length; ///< taper threads
    std::string note;
    Citation citation;
};

/// A printed tolerance of ISO 965-1.
struct ToleranceRow {
    Length size;
    Citation citation;
};

/// Strengths of a property class in the sizes that it is made in.
struct ClassRow {
    std::string name; ///< `8.8`, `A2-70`, `grade 5`
    std::string code; ///< with its size range
    std::optional<Length> over;
    std::optional<Length> from;
    Length up_to;
    Stress tensile_strength;
    Stress yield_strength;
    std::string yield_kind; ///< ReL, Rpf, Rp0.2 or yield
    std::optional<Stress> proof_stress;
    std::string note;
    Citation citation;
};

/// Printed loads of one thread in one class.
struct LoadRow {
    Area stress_area;
    Force proof_load;
    Force tensile_load;
    bool proof_load_published = false;
    bool tensile_load_published = false;
    Citation citation;
};

/// A nut factor for a stated condition: one figure, a range, or both.
struct NutFactorRow {
    std::string code;
    std::string condition;
    std::optional<double> low;
    std::optional<double> high;
    std::optional<double> value;
    Citation citation;
};

/// How far the preload scatters with a way of tightening; the figure is a half range on either side of the mean.
struct ScatterRow {
    std::string code;
    std::string method;
    double half_range = 0;
    Citation citation;
};

/// The share of the proof load taken as preload where nobody prescribes one.
struct PreloadChoice {
    std::string words;
    double share = 0;
    Citation citation;
};

/// A ring material, and the flat ring of it that is usual for a thread.
struct RingInfo {
    std::string material;
    std::string name;  ///< "copper ring"
    std::string renew; ///< "renew at every opening"
    std::string usual; ///< "18×22×1.5", empty where no flat ring is listed for the thread
    Citation citation;
};

/// A trade word, with what it means here.
struct Word {
    std::string concept_code;
    std::string role; ///< of a joint; empty where the concept is no joint
    std::string language;
    std::string text;
    bool preferred = false;
};

/// A table for listing: cells as printed, and the number behind them where there is one.
struct TableColumn {
    std::string key;  ///< JSON and CSV name
    std::string unit; ///< canonical unit of `value`; empty for text
    bool is_quantity = false;
};
struct TableCell {
    std::string text;
    std::optional<double> value;
};
struct Table {
    std::string topic;
    std::string title;
    std::vector<TableColumn> columns;
    std::vector<std::vector<TableCell>> rows;
};
struct Topic {
    std::string name;  ///< `threads`, as typed after `list`
    std::string title; ///< what the table holds
    std::size_t rows = 0;
};

class Reference {
public:
    /// Opens the embedded database.
    Reference();
    /// Opens a file in its place. Throws invalid_data where it is no such database, damaged, or of another layout
    /// (naming both numbers).
    explicit Reference(const std::string& path);
    ~Reference();
    Reference(Reference&&) noexcept;
    Reference& operator=(Reference&&) noexcept;
    Reference(const Reference&) = delete;
    Reference& operator=(const Reference&) = delete;

    /// Throws not_found with the nearest thread.
    [[nodiscard]] ThreadRow thread(const ThreadName& name) const;
    [[nodiscard]] std::optional<ThreadRow> find_thread(const ThreadName& name) const;

    /// The printed tolerance ('es g', 'Td 6', 'TD1 6', 'Td2 6', 'TD2 6') of a metric thread, where one is printed.
    [[nodiscard]] std::optional<ToleranceRow> tolerance(std::string_view kind, Length major, Length pitch) const;

    /// The class as the standard writes it, from an everyday spelling (`A2 70`, `grade5`). Throws not_found with the
    /// nearest class.
    [[nodiscard]] std::string class_name(std::string_view typed) const;
    /// The row of the class for this size; throws out_of_validity naming the sizes that the class is made in.
    [[nodiscard]] ClassRow property_class(std::string_view name, const ThreadRow& thread) const;
    [[nodiscard]] std::vector<std::string> class_names() const;

    [[nodiscard]] std::optional<LoadRow> load(std::string_view thread_code, std::string_view class_name) const;

    /// Throws not_found with the nearest condition and the list of all.
    [[nodiscard]] NutFactorRow nut_factor(std::string_view condition) const;
    [[nodiscard]] std::vector<NutFactorRow> nut_factors() const;
    /// Scatter of preload by the code of a method. Throws internal where the curated data lack it.
    [[nodiscard]] ScatterRow scatter(std::string_view code) const;

    /// `reused` or `permanent`. Throws internal where the curated data lack it.
    [[nodiscard]] PreloadChoice preload_choice(std::string_view code) const;

    /// What a ring of this material (as `ring_material` gives it) means for a thread; the thread may be empty.
    [[nodiscard]] RingInfo ring(std::string_view material, std::string_view thread_code) const;

    /// A property class of a screw or the class of a nut, as the standard writes it. Throws not_found with the nearest.
    [[nodiscard]] std::string fastener_class(std::string_view typed) const;

    /// A housing, ring material or plug form as the database writes it, from an everyday spelling. Throws not_found
    /// with the nearest.
    [[nodiscard]] std::string housing(std::string_view typed) const;
    [[nodiscard]] std::string ring_material(std::string_view typed) const;
    [[nodiscard]] std::string plug_form(std::string_view typed) const;

    [[nodiscard]] std::vector<Word> words() const;

    [[nodiscard]] std::vector<Topic> topics() const;
    /// Throws not_found with the nearest topic.
    [[nodiscard]] Table table(std::string_view topic) const;

    /// A line of the metadata: layout.major, dataset.version, content.sha256, ...
    [[nodiscard]] std::string metadata(std::string_view key) const;

private:
    struct Impl;
    std::unique_ptr<Impl> impl_;
};

} // namespace clampbook::reference
