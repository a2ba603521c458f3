// SPDX-License-Identifier: MIT
#pragma once

// The curated database: published figures with their citations, embedded in the program and opened read-only in memory.
// Lookups by name, with the nearest name where there is none; and the tables themselves for listing. What follows by
// formula is not here but in the engine.

#include "clampbook/reference/rows.hpp"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace clampbook::reference {

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

    /// The least diameter of the bearing face of a head (`hexagon`, `socket`, `flange`) on a thread of this size (`M10`), and
    /// the clearance hole (`fine`, `medium`, `coarse`). Nothing where the database has none of that size.
    [[nodiscard]] std::optional<SizeRow> bearing_diameter(std::string_view head, std::string_view size) const;
    [[nodiscard]] std::optional<SizeRow> clearance_hole(std::string_view fit, std::string_view size) const;
    /// The strengths and so on of a material as `housing` gives it. Throws internal for no such material.
    [[nodiscard]] MaterialRow material(std::string_view code) const;

    /// Throws not_found with the nearest condition and the list of all.
    [[nodiscard]] NutFactorRow nut_factor(std::string_view condition) const;
    [[nodiscard]] std::vector<NutFactorRow> nut_factors() const;
    /// Scatter of preload by the name of a way of tightening. Throws not_found with the nearest and the list of all.
    [[nodiscard]] ScatterRow scatter(std::string_view typed) const;
    /// A friction class of VDI 2230, `A` to `E`. Throws not_found.
    [[nodiscard]] FrictionClassRow friction_class(std::string_view code) const;
    /// The permissible deviation of a tool by ISO 6789, from `II A`, `type II class A`. Throws not_found with the list of all.
    [[nodiscard]] ToolRow tool(std::string_view typed) const;
    /// What thread, bearing face and inner interface settle by, under an axial load; `roughness` is 10, 40 or 160, the Rz [µm]
    /// that the surfaces stay under. Throws internal for another.
    [[nodiscard]] EmbeddingRow embedding(int roughness, std::string_view location) const;
    /// Of a screw's thread: of the class, or the least that is kept.
    [[nodiscard]] ShearRatioRow shear_ratio(std::string_view class_name) const;

    /// `reused` or `permanent`. Throws internal where the curated data lack it.
    [[nodiscard]] PreloadChoice preload_choice(std::string_view code) const;

    /// What a ring of this material (as `ring_material` gives it) means for a thread; the thread may be empty.
    [[nodiscard]] RingInfo ring(std::string_view material, std::string_view thread_code) const;

    /// The flat ring that is usual for a thread. Nothing where none is kept.
    [[nodiscard]] std::optional<RingRow> usual_ring(std::string_view thread_code) const;
    /// A plug of this form and thread. Nothing where none is kept.
    [[nodiscard]] std::optional<PlugRow> plug(std::string_view form, std::string_view thread_code) const;
    /// Throws internal for no such form.
    [[nodiscard]] PlugFormRow plug_form_row(std::string_view code) const;
    /// Torques of ports with O-ring in this thread, light series first; empty where none are kept.
    [[nodiscard]] std::vector<PortTorqueRow> port_torques(std::string_view thread_code) const;
    [[nodiscard]] std::optional<PipeToleranceRow> pipe_tolerance(double threads_per_inch) const;

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
    [[nodiscard]] Table table(std::string_view typed) const;

    /// A line of the metadata: layout.major, dataset.version, content.sha256, ...
    [[nodiscard]] std::string metadata(std::string_view key) const;
    /// The content hash, computed anew: equal to the metadata's content.sha256 where no row was changed after the builder.
    [[nodiscard]] std::string content_hash() const;

private:
    struct Impl;
    std::unique_ptr<Impl> impl_;
};

} // namespace clampbook::reference
