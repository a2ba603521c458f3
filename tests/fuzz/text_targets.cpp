// SPDX-License-Identifier: MIT
// What people type: quantities, names of threads, tightenings. What was read, printed and read again is the same.

#include "targets.hpp"

#include "clampbook/base/decimal.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/model/thread.hpp"
#include "clampbook/model/tightening.hpp"
#include "clampbook/reference/reference.hpp"
#include "clampbook/units/reading.hpp"

#include <algorithm>
#include <cmath>

namespace fuzz {
namespace {

using namespace clampbook;

// The command line refuses the rest before anything reads it.
bool typed(std::string_view bytes) { return is_utf8(bytes) && !has_control(bytes); }

void refused_as_typed(const std::optional<Error>& fault) {
    require(!fault || fault->kind() != ErrorKind::internal, "what is typed is never an internal fault");
}

bool near(double a, double b) { return a == b || std::abs(a - b) <= 1e-12 * std::max(std::abs(a), std::abs(b)); }

// Requires that the name reads again, and as the same thread.
void same_again(const ThreadName& name, const std::string& written) {
    std::optional<ThreadName> again;
    const auto fault = refused([&] { again = read_thread(written); });
    require(!fault, "the name put together from its parts reads: " + written);
    require(again->system == name.system && again->size == name.size && again->pitch == name.pitch &&
                again->threads_per_inch == name.threads_per_inch && again->series == name.series,
            "the name put together from its parts is the same thread: " + written);
}

std::string put_together(const ThreadName& name) {
    const std::string threads = name.threads_per_inch ? "-" + print_shortest(*name.threads_per_inch) : std::string{};
    switch (name.system) {
    case ThreadSystem::metric:
        return name.size + (name.pitch ? "x" + print_shortest(name.pitch->in(millimetre)) : std::string{});
    case ThreadSystem::unified:
        return name.size + threads + (name.series.empty() ? std::string{} : " " + name.series);
    case ThreadSystem::pipe_parallel:
        return "G" + name.size + threads;
    case ThreadSystem::pipe_taper:
        return "R" + name.size + threads;
    case ThreadSystem::npt:
        return name.size + threads + " NPT";
    }
    breach("a thread has one of five systems");
}

} // namespace

void quantity(std::string_view bytes) {
    if (!typed(bytes)) {
        return;
    }
    std::optional<Reading> read;
    refused_as_typed(refused([&] { read = read_quantity(bytes); }));
    refused_as_typed(refused([&] { (void)read_quantity(bytes, Dimension::torque); }));
    refused_as_typed(refused([&] { (void)unit_named(bytes); }));
    if (!read) {
        return;
    }
    ++taken();
    require(std::isfinite(read->value) && std::isfinite(read->canonical()), "a quantity is finite");
    require(read->text == trim(bytes) && read->significant >= 1, "text and digits are kept");
    const UnitInfo& unit = *read->unit;
    const std::string printed = with_unit(print_shortest(read->value), unit);
    std::optional<Reading> again;
    const auto fault = refused([&] { again = read_quantity(printed, unit.dimension); });
    require(!fault, "what was read and printed reads again: " + printed);
    require(again->unit == &unit && again->value == read->value, "what was read, printed and read again is the same: " + printed);
    const double canonical = convert(*read, canonical_unit(unit.dimension));
    require(near(canonical, read->canonical()), "conversion and reading agree");
    require(unit.zero != 0 || near(unit.from_canonical(canonical), read->value), "a conversion there and back changes nothing");
}

void thread(std::string_view bytes) {
    if (!typed(bytes)) {
        return;
    }
    static const reference::Reference curated;
    (void)looks_like_thread(bytes);
    std::optional<ThreadName> name;
    refused_as_typed(refused([&] { name = read_thread(bytes); }));
    if (!name) {
        return;
    }
    ++taken();
    require(!name->size.empty() && name->text == trim(bytes), "a thread has a size, and its text is kept");
    require(!name->pitch || *name->pitch > 0 * millimetre, "a pitch is above zero");
    require(!name->threads_per_inch || *name->threads_per_inch > 0, "threads per inch are above zero");
    same_again(*name, put_together(*name));
    same_again(*name, thread_for_print(put_together(*name)));
    refused_as_typed(refused([&] {
        const auto row = curated.thread(*name);
        require(curated.thread(read_thread(row.code)).code == row.code, "a curated thread's code names it: " + row.code);
    }));
}

void tightening(std::string_view bytes) {
    if (!typed(bytes)) {
        return;
    }
    std::optional<Tightening> read;
    refused_as_typed(refused([&] { read = read_tightening(bytes); }));
    if (!read) {
        return;
    }
    ++taken();
    require(!read->steps.empty(), "a tightening has a step");
    for (const Step& step : read->steps) {
        require(std::isfinite(step.low) && std::isfinite(step.high) && step.low <= step.nominal && step.nominal <= step.high,
                "a step's band holds its figure");
        require(step.low >= 0, "no step is below zero");
    }
    require(read_tightening(read->as_written) == *read, "the text that is kept gives the same steps");
    require(agree(*read, *read) && same_figure(*read, *read), "a tightening agrees with itself");
    const auto last = final_torque(*read);
    require(!last || std::isfinite(*last), "the last torque is finite");
    // A rounded figure may pass a limit that the exact one just meets.
    const auto well_within = [](const Step& step) { return step.high < 0.9e7 && (step.low == 0 || step.low > 1.1e-4); };
    if (!std::ranges::all_of(read->steps, well_within)) {
        return;
    }
    for (const char* unit : {"N·m", "lbf·ft"}) {
        const std::string printed = tightening_in(*read, unit);
        std::optional<Tightening> again;
        const auto fault = refused([&] { again = read_tightening(printed); });
        require(!fault, "a tightening in another unit reads: " + printed);
        require(agree(*read, *again), "a tightening in another unit is the same: " + printed);
    }
}

} // namespace fuzz
