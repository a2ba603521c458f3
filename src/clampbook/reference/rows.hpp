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
struct PressureRow {
    std::string name; ///< of the material
    std::optional<Stress> limit;
    Citation citation; ///< of the limit, where there is one
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

} // namespace clampbook::reference
