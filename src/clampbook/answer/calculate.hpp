// SPDX-License-Identifier: MIT
#pragma once

// The answers that need no book: a conversion, a thread, the strength of a screw, a generic tightening. Each joins
// curated figures and engine into a document; nothing is printed here.

#include "clampbook/answer/document.hpp"
#include "clampbook/reference/reference.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace clampbook::answer {

struct ConvertRequest {
    std::string quantity;
    std::string to;    ///< a unit; empty gives the workshop's other units
    std::string scale; ///< the step of a tool's scale: `0.5`, `0.5 N·m`; empty for none
};

/// The result carries the digits that the input carries plus one for the eye, and full precision for JSON.
/// Throws usage for what does not read, and out_of_validity where the scale's step is not more than zero or would round
/// the whole figure away.
[[nodiscard]] Document convert(const ConvertRequest& request);

/// One line of a list that is converted: what `convert` would say of it, without a document around it.
struct Conversion {
    std::string_view number; ///< as typed
    const UnitInfo* from = nullptr;
    double value = 0; ///< in `to`
    const UnitInfo* to = nullptr;
    int digits = 1; ///< to be shown
};

/// Converts one quantity after the other to one unit. Throws as `convert` does.
class Converter {
public:
    explicit Converter(std::string_view to) : to_(&unit_named(to)) {}
    /// What `number` points to belongs to the text that was given.
    [[nodiscard]] Conversion of(std::string_view quantity);

private:
    const UnitInfo* to_;
    QuantityReader reader_;
};

/// Geometry of a thread, and its limits of size by tolerance class.
[[nodiscard]] Document thread(const reference::Reference& reference, std::string_view designation);

/// Stress area, proof load and minimum tensile load with table and clause.
[[nodiscard]] Document strength(const reference::Reference& reference, std::string_view designation,
                                std::string_view property_class);

/// The face under a head and the hole that it covers.
struct FaceChoice {
    std::string head;    ///< hexagon, socket, flange; empty for hexagon
    std::string bearing; ///< diameter of the bearing face, in place of a head's
    std::string hole;    ///< fine, medium, coarse, or a diameter; empty for medium

    bool operator==(const FaceChoice&) const = default;
};

/// What the friction form is asked with; all empty where the nut factor's form is meant.
struct FrictionChoices {
    std::string coefficients; ///< `0.12`, or thread and head apart: `0.12,0.14`
    std::string utilisation;  ///< `90%` of the yield strength; empty for 90 %
    FaceChoice face = {};
    std::string torsion; ///< plastic or elastic; empty for plastic
    std::string under;   ///< the material under the head; empty for none

    bool operator==(const FrictionChoices&) const = default;
};

struct DeriveRequest {
    std::string thread;
    std::string property_class;
    std::string nut_factor; ///< a number; empty for the condition's
    std::string condition;  ///< of the curated nut factors; empty for `not stated`
    std::string preload;    ///< `75%` of proof load or a force; empty for the default
    std::string torque;     ///< the other way round: the preload that it makes
    bool permanent = false; ///< default preload of a joint that stays closed
    FrictionChoices friction = {};
};

/// Preload and torque by a nut factor or, where coefficients of friction are given, by these, with the shares of the torque.
/// Throws usage for what does not read or excludes each other, not_found for a head or hole that the curated database has
/// not in this size, out_of_validity outside the method with the limit named.
[[nodiscard]] Document derive(const reference::Reference& reference, const DeriveRequest& request);

struct ScatterRequest {
    std::string thread;
    std::string property_class;
    std::string torque;
    std::string method;     ///< a way of tightening with a curated scatter
    std::string nut_factor; ///< with a method: for the preload that is meant
    std::string condition;  ///< the same by condition
    std::string friction;   ///< `0.10..0.16`, in place of a method
    FaceChoice face = {};   ///< with friction
    std::string tool;       ///< with friction: the tool's deviation, `4%`; empty for none
    std::string needed;     ///< a force whose chance to be missed is wanted
    std::string shape;      ///< rectangular or triangular; empty for rectangular
    std::string seed;       ///< a whole number; empty for 1
    std::string draws;      ///< how many; empty for one million
};

/// How far the preload from one torque spreads: bounds, tightening factor, and drawn shares between them.
/// Throws as `derive` does.
[[nodiscard]] Document scatter(const reference::Reference& reference, const ScatterRequest& request);

struct StripRequest {
    std::string thread;
    std::string property_class;
    std::string housing;
    std::string engagement;
    bool nominal = false;     ///< basic sizes in place of the limits of size
    std::string across_flats; ///< of a nut or a thin boss, which gives way sideways; empty for a massive housing
    std::string friction;     ///< for the torque; empty for 0.08, the low end of friction class B
    FaceChoice face = {};     ///< for the torque
};

/// When and where a thread strips, and how deep the screw must go in so that it breaks first.
[[nodiscard]] Document strip(const reference::Reference& reference, const StripRequest& request);

struct PlugRequest {
    std::string thread;
    std::string property_class; ///< of the plug; empty for 5.8
    std::string housing;
    std::string ring;       ///< material, and a size where it is not the usual one: `copper 18x24`
    std::string form;       ///< empty for a hexagon head with collar
    std::string engagement; ///< empty for what the standard's plug has
    std::string bore;       ///< of a hollow plug; empty for none, or the socket's
    std::string friction;   ///< a band; empty for friction class B
};

/// The torque window of a plug, or for a taper thread its turns. Throws not_found where a ring's or plug's size is not kept.
[[nodiscard]] Document plug(const reference::Reference& reference, const PlugRequest& request);

struct AngleRequest {
    std::string thread;
    std::string property_class;
    std::string grip;
    std::string under;        ///< the clamped material
    std::string tapped;       ///< the material of a tapped hole; empty for a nut
    std::string shank;        ///< unthreaded length in the grip; empty for none
    std::string snug;         ///< the torque before the turn
    std::string turn;         ///< `90°`
    std::string friction;     ///< one coefficient, or thread and head; empty for 0.12
    FaceChoice face = {};     ///< of the head
    std::string load;         ///< from outside, for the joint diagram
    std::string roughness;    ///< 10, 40 or 160 µm, the Rz that the surfaces stay under; empty for 40
    std::string interfaces;   ///< how many between the clamped parts; empty for 1
    std::string tightened_at; ///< temperature
    std::string working_at;   ///< temperature
};

/// What a turn after a snug torque makes of a joint.
[[nodiscard]] Document angle(const reference::Reference& reference, const AngleRequest& request);

struct WrenchRequest {
    std::string torque;
    std::string adapter; ///< its length; empty for none
    std::string length;  ///< of the wrench, grip to drive; with an adapter
    std::string turned;  ///< angle away from the wrench's axis; empty for 0°
    std::string unit;    ///< of the tool's scale; empty for the torque's own
    std::string scale;   ///< step of the scale
    std::string maximum; ///< the tool's largest torque
    std::string tool;    ///< type and class: `II A`
};

/// What to set a torque wrench to, whether it may, and how far off that is.
[[nodiscard]] Document wrench(const reference::Reference& reference, const WrenchRequest& request);

} // namespace clampbook::answer
