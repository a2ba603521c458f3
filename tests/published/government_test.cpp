// SPDX-License-Identifier: MIT
// Our generic torque beside those of government tables. No formula stands behind these, so nothing is reproduced: for each
// family the ratio of ours to theirs is printed, and held to the band that was found.
#include "cases.hpp"

#include "clampbook/base/text.hpp"
#include "clampbook/engine/strength.hpp"
#include "clampbook/engine/thread_geometry.hpp"
#include "clampbook/reference/reference.hpp"
#include "clampbook/units/reading.hpp"

#include <catch2/catch.hpp>

#include <fmt/core.h>

#include <algorithm>
#include <map>

using namespace clampbook;
using namespace published;

namespace {

// The band that the ratio of a family lies in, and its median, rounded outwards; why it lies there is told in the README.
struct Band {
    double low;
    double median;
    double high;
};
const std::map<std::string, Band, std::less<>> k_bands{{"army_dry, grade 2", {0.90, 1.04, 1.68}},
                                                       {"army_dry, grade 5", {0.91, 1.01, 1.47}},
                                                       {"army_dry, grade 8", {0.84, 1.00, 1.46}},
                                                       {"army_metric", {0.74, 0.95, 1.19}},
                                                       {"ac4313, tension nuts, recommended", {0.71, 1.02, 1.41}},
                                                       {"ac4313, tension nuts, maximum", {0.76, 1.22, 1.75}},
                                                       {"ac4313, shear nuts, recommended", {0.71, 1.02, 1.39}},
                                                       {"ac4313, shear nuts, maximum", {0.76, 1.19, 1.75}},
                                                       {"navy lubricated studs", {1.05, 1.13, 1.20}}};

engine::ThreadGeometry geometry(const reference::ThreadRow& thread) {
    return engine::parallel_geometry(thread.system, thread.code, thread.major, thread.pitch, thread.threads_per_inch);
}

// The tables have 1-14, which ASME B1.1 counts among the special threads: its sizes follow from its name.
reference::ThreadRow thread_of(const reference::Reference& reference, const std::string& text) {
    if (text != "1-14 UNF") {
        return reference.thread(read_thread(text));
    }
    reference::ThreadRow thread = reference.thread(read_thread("1-12 UNF"));
    thread.threads_per_inch = 14;
    return thread;
}

// As derive does: 75 % of the proof load, or the stress that the table names; the nut factor of the table's condition.
Torque ours(const reference::Reference& reference, const Case& row) {
    const reference::ThreadRow thread = thread_of(reference, row.text("thread"));
    const Area area = geometry(thread).stress_area;
    const std::string& family = row.text("family");
    const std::string condition = family.starts_with("ac4313") ? "cadmium-plated"
                                  : family.starts_with("navy") ? "lubricated"
                                                               : "not stated";
    const double k = reference.nut_factor(condition).value.value();
    const Force preload =
        row.has("stress")
            ? engine::load_at(read_quantity(row.text("stress"), Dimension::stress).as<Dimension::stress>(), area)
            : 0.75 * engine::load_at(reference.property_class(row.text("class"), thread).proof_stress.value(), area);
    return engine::torque_for(preload, k, thread.major);
}

} // namespace

TEST_CASE("generic torques beside government tables", "[published]") {
    const reference::Reference reference;
    Family family{"government_tables", 281};
    Tally& pairs = family.tally("lbf·ft and N·m of one entry", "%", "the row's own (rounding of the print)");
    std::map<std::string, std::vector<double>, std::less<>> ratios;
    for (const Case& row : family.rows()) {
        INFO(row.where());
        const auto theirs = read_quantity(row.text("torque"), Dimension::torque).as<Dimension::torque>();
        if (row.text("family") == "unit pairs") {
            const auto other = read_quantity(row.text("pair"), Dimension::torque).as<Dimension::torque>();
            pairs.compare(row, "torque", other.in(newton_metre), theirs.in(newton_metre), row.number("tolerance_rel"),
                          row.confidence());
            continue;
        }
        ratios[row.text("family")].push_back(ours(reference, row) / theirs);
    }
    CHECK(ratios.size() == k_bands.size());
    for (auto& [name, list] : ratios) {
        std::ranges::sort(list);
        const double median = list[list.size() / 2];
        const auto band = k_bands.find(name);
        INFO(name << ": median " << median << ", " << list.front() << " to " << list.back());
        REQUIRE(band != k_bands.end());
        CHECK(list.front() >= band->second.low);
        CHECK(list.back() <= band->second.high);
        CHECK(std::abs(median - band->second.median) <= 0.01);
        report(fmt::format("| {} | {} | {:.2f} | {:.2f} to {:.2f} |", name, list.size(), median, list.front(), list.back()));
    }
    family.finish();
}
