// SPDX-License-Identifier: MIT
// Figures that one print gives and that are not followed here, each with the figure that is.
#include "cases.hpp"

#include "clampbook/engine/thread_geometry.hpp"
#include "clampbook/reference/reference.hpp"
#include "clampbook/units/reading.hpp"

#include <catch2/catch.hpp>

#include <optional>

using namespace clampbook;
using namespace published;

namespace {

double in_unit(double canonical, const std::string& unit) { return unit_named(unit).from_canonical(canonical); }

std::optional<double> load_of(const reference::Reference& reference, const Case& row) {
    const auto found =
        reference.load(reference.thread(read_thread(row.text("key"))).code, reference.class_name(row.text("class")));
    if (!found) {
        return std::nullopt;
    }
    return in_unit((row.text("field") == "proof_load" ? found->proof_load : found->tensile_load).in(newton), row.text("unit"));
}

std::optional<double> class_of(const reference::Reference& reference, const Case& row) {
    const auto found =
        reference.property_class(reference.class_name(row.text("class")), reference.thread(read_thread(row.text("key"))));
    const std::string& field = row.text("field");
    const auto stress = field == "proof_stress"       ? found.proof_stress
                        : field == "tensile_strength" ? std::optional{found.tensile_strength}
                                                      : std::optional{found.yield_strength};
    return stress ? std::optional{in_unit(stress->in(megapascal), row.text("unit"))} : std::nullopt;
}

std::optional<double> pipe_of(const reference::Reference& reference, const Case& row) {
    const auto found = reference.thread(read_thread(row.text("key")));
    const std::string& field = row.text("field");
    const auto length = field == "major"          ? std::optional{found.major}
                        : field == "minor"        ? found.minor_internal
                        : field == "gauge_length" ? found.gauge_length
                                                  : found.useful_length;
    return length ? std::optional{in_unit(length->in(millimetre), row.text("unit"))} : std::nullopt;
}

double unified_of(const reference::Reference& reference, const Case& row) {
    const auto found = reference.thread(read_thread(row.text("key")));
    const auto g = engine::unified_geometry(found.major, found.threads_per_inch.value());
    return in_unit((row.text("field") == "minor_external" ? g.minor_external : g.minor_internal).in(millimetre),
                   row.text("unit"));
}

std::optional<double> ours(const reference::Reference& reference, const Case& row) {
    const std::string& kind = row.text("kind");
    if (kind == "load") {
        return load_of(reference, row);
    }
    if (kind == "class") {
        return class_of(reference, row);
    }
    if (kind == "pipe") {
        return pipe_of(reference, row);
    }
    if (kind == "unified") {
        return unified_of(reference, row);
    }
    REQUIRE(kind == "conversion");
    return convert(read_quantity(row.text("key")), unit_named(row.text("unit")));
}

} // namespace

TEST_CASE("prints that are not followed", "[published]") {
    const reference::Reference reference;
    Family family{"other_prints", 24};
    Tally& followed = family.tally("the figure followed", "%", "half a last digit");
    Tally& print = family.tally("the figure that the other print gives", "%", "none; differs by more than half a last digit");
    for (const Case& row : family.rows()) {
        INFO(row.where() << ": " << row.text("key") << " " << row.text("class") << " " << row.text("field"));
        REQUIRE(row.known().contains("print"));
        const auto value = ours(reference, row);
        REQUIRE(value.has_value());
        followed.compare(row, "followed", *value, row.number("followed"),
                         half_last_digit(row.text("followed")) / row.number("followed"), Origin::formula);
        print.compare(row, "print", *value, row.number("print"), half_last_digit(row.text("print")) / row.number("print"),
                      row.confidence(), 100);
    }
    family.finish();
}
