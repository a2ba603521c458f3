// SPDX-License-Identifier: MIT
#pragma once

// Rows of the curated database as plain values: what a lookup gives, each with its citation.

#include "clampbook/model/citation.hpp"
#include "clampbook/model/thread.hpp"
#include "clampbook/units/quantity.hpp"

#include <cstddef>
#include <optional>
#include <string>
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

/// A curated diameter, or a pressure, with where it stands.
struct SizeRow {
    std::string name; ///< `ISO 4014 M10`, `medium hole for M10`
    Length size;
    Citation citation;
};
/// A material that a screw is put into or clamps, with what stands elsewhere cited by itself.
struct MaterialRow {
    std::string code;   ///< `EN AC-46000`
    std::string name;   ///< `AlSi9Cu3(Fe)`
    std::string family; ///< `cast aluminium`
    Stress tensile_strength;
    Citation citation; ///< of the strengths
    Stress shear_strength;
    std::string shear_basis; ///< how it follows: printed, or a ratio times the tensile strength
    Citation shear;
    Stress modulus;
    double expansion = 0; ///< [1/K]
    Citation elastic;
    std::optional<Stress> limiting_pressure;
    std::optional<Citation> pressure;
};

/// A plug of a standard.
struct PlugRow {
    std::string code; ///< `DIN 910 M18x1.5`
    std::string form;
    Length across_flats;
    std::optional<Length> collar_diameter;
    Length thread_length;
    Citation citation;
};
struct PlugFormRow {
    std::string code;
    std::string name;
    std::string drive; ///< hexagon, hexagon socket, square
    std::string seal;  ///< ring, o-ring, thread
    Citation citation;
};

/// A flat ring of a standard.
struct RingRow {
    std::string code;  ///< `A 18x22`
    std::string print; ///< "18×22×1.5 mm"
    Length inner;
    Length outer;
    Length thickness;
    Citation citation;
};

/// Torque at which a port with O-ring is tested.
struct PortTorqueRow {
    std::string standard;
    std::string series; ///< S heavy, L light
    Torque torque;
    Citation citation;
};

/// ISO 228-1 tolerances of a parallel pipe thread.
struct PipeToleranceRow {
    Length pitch_internal;
    Length pitch_external;
    Length minor_internal;
    Length major_external;
    Citation citation;
};

/// Shear strength of a screw's thread over its tensile strength.
struct ShearRatioRow {
    double ratio = 0;
    bool own = false; ///< of this class; else the least that is kept
    Citation citation;
};

/// How much one surface settles.
struct EmbeddingRow {
    std::string roughness;
    std::string location; ///< thread, head or nut, interface
    Length amount;
    Citation citation;
};

/// The deviation that a class of tool may have.
struct ToolRow {
    std::string code; ///< `type II class A`
    std::string tool;
    std::optional<double> deviation_small; ///< where the largest torque is at most 10 N·m
    double deviation = 0;
    Citation citation;
};

struct FrictionClassRow {
    std::string code;
    double low = 0;
    std::optional<double> high;
    std::string condition;
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

/// How far the preload scatters with a way of tightening: a source gives a half range on either side of the mean, or the
/// tightening factor. Where it gives a range of these, this is its upper end.
struct ScatterRow {
    std::string code;
    std::string method;
    std::optional<double> half_range;
    std::optional<double> factor; ///< α_A
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
    std::optional<Stress> seating_stress;
    std::optional<Citation> seating;
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

} // namespace clampbook::reference
