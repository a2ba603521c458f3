// SPDX-License-Identifier: MIT
// wrench: what to set, whether the tool may, and what its scale and class make of it.

#include "clampbook/engine/wrench.hpp"
#include "clampbook/answer/parts.hpp"
#include "clampbook/base/decimal.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/units/reading.hpp"

namespace clampbook::answer {
namespace {

using reference::Reference;

// A torque in the tool's unit, with its twin.
Figure in_unit(Torque torque, const UnitInfo& unit, std::string basis) {
    Figure f = torque_figure(torque, Label::derived, std::move(basis));
    const std::string own = print_quantity(unit.from_canonical(f.value), unit.symbol, 4);
    f.also = unit.symbol == "N·m" ? f.also : print_quantity(f.value, "N·m", 3);
    f.print = own;
    return f;
}

engine::Adapter read_adapter(const WrenchRequest& request) {
    if (request.adapter.empty() != request.length.empty()) {
        throw error(ErrorKind::usage, "--adapter and --length belong together: the setting hangs on both");
    }
    if (request.adapter.empty() && !request.turned.empty()) {
        throw error(ErrorKind::usage, "--turned says how an adapter stands; give its length with --adapter");
    }
    engine::Adapter adapter{1 * millimetre, 0 * millimetre, 0 * degree};
    if (!request.adapter.empty()) {
        adapter.adapter = read_quantity(request.adapter, Dimension::length).as<Dimension::length>();
        adapter.wrench = read_quantity(request.length, Dimension::length).as<Dimension::length>();
        if (!request.turned.empty()) {
            adapter.turned = read_quantity(request.turned, Dimension::angle).as<Dimension::angle>();
        }
    }
    return adapter;
}

void add_adapter(Document& document, const WrenchRequest& request, const engine::Adapter& adapter) {
    if (request.adapter.empty()) {
        return;
    }
    document.add("adapter", "adapter", given_length(request.adapter));
    document.add("length", "wrench, grip to drive", given_length(request.length));
    Figure turned = figure(adapter.turned, "°", 3, Label::derived);
    turned.basis = request.turned.empty() ? "straight ahead" : "as given";
    document.add("turned", "turned away by", turned);
    document.add("ratio", "fastener over wrench", number_figure(engine::adapter_ratio(adapter), "(L + E cos a)/L", 4));
    document.notes.emplace_back("Pull at the middle of the grip: the setting holds for that length alone.");
}

// The mark of the scale, and what the fastener gets there.
Torque add_scale(Document& document, const WrenchRequest& request, Torque exact, const engine::Adapter& adapter,
                 const UnitInfo& unit, Torque wanted) {
    if (request.scale.empty()) {
        return exact;
    }
    const ScaleMark mark = mark_on_scale(
        exact.in(newton_metre), unit, print_quantity(unit.from_canonical(exact.in(newton_metre)), unit.symbol, 4), request.scale);
    const Torque setting = mark.unit->to_canonical(mark.setting) * newton_metre;
    Figure nearest = in_unit(setting, *mark.unit, mark.basis);
    nearest.print = mark.print;
    document.add("scale.setting", "nearest mark", nearest);
    const Torque applied = engine::applied_by(setting, adapter);
    const double off = applied / wanted - 1;
    Figure f = share_figure(off, "at that mark, against the torque wanted");
    f.print = (off > 0 ? "+" : "") + print_fixed(off * 100, 2) + " %";
    document.add("scale.error", "off by", f);
    return setting;
}

void add_range(Document& document, const WrenchRequest& request, Torque setting, const UnitInfo& unit) {
    if (request.maximum.empty()) {
        return;
    }
    const Torque largest = read_quantity(request.maximum, Dimension::torque).as<Dimension::torque>();
    const engine::ToolRange tested = engine::tested_range(largest);
    const engine::ToolRange best = engine::best_range(largest);
    document.section("range of the tool");
    document.add("range.low", "tested from", in_unit(tested.least, unit, "20 % of its maximum (ISO 6789-1)"));
    document.add("range.high", "to", in_unit(tested.most, unit, "its maximum"));
    document.add("range.fits", "fits",
                 std::string{tested.holds(setting)   ? best.holds(setting) ? "yes, in the middle half of its range" : "yes"
                             : setting > tested.most ? "no: over its maximum"
                                                     : "no: under 20 % of its maximum, where nothing is known of it"});
    if (!tested.holds(setting)) {
        document.cautions.push_back({"out-of-range", "The setting lies outside what the tool is tested for: take another tool."});
    }
}

void add_deviation(Document& document, const Reference& reference, const WrenchRequest& request, Torque applied,
                   const UnitInfo& unit) {
    if (request.tool.empty()) {
        return;
    }
    const reference::ToolRow tool = reference.tool(request.tool);
    const bool small = !request.maximum.empty() &&
                       engine::is_small_tool(read_quantity(request.maximum, Dimension::torque).as<Dimension::torque>());
    const double deviation = small && tool.deviation_small ? *tool.deviation_small : tool.deviation;
    document.section(tool.code + ", " + tool.tool);
    Figure f = share_figure(deviation, small ? "largest torque at most 10 N·m" : "largest torque over 10 N·m");
    f.print = "±" + f.print;
    f.label = Label::standard;
    f.citation = tool.citation;
    document.add("deviation", "may be off by", f);
    document.add("applied.low", "so the fastener gets at least", in_unit((1 - deviation) * applied, unit, "less the deviation"));
    document.add("applied.high", "and at most", in_unit((1 + deviation) * applied, unit, "and the deviation"));
    if (request.maximum.empty() && tool.deviation_small && *tool.deviation_small > tool.deviation) {
        document.notes.push_back(
            fmt::format("A tool of at most 10 N·m may be off by ±{:.0f} %: say its largest torque with --maximum.",
                        *tool.deviation_small * 100));
    }
}

} // namespace

Document wrench(const Reference& reference, const WrenchRequest& request) {
    const Reading reading = read_quantity(request.torque, Dimension::torque);
    const auto wanted = reading.as<Dimension::torque>();
    const engine::Adapter adapter = read_adapter(request);
    const UnitInfo& unit = request.unit.empty() ? *reading.unit : unit_named(request.unit);
    if (unit.dimension != Dimension::torque) {
        throw error(ErrorKind::usage, "'{}' is no unit of torque; a torque wrench is marked in N·m, lbf·ft, lbf·in or kgf·m",
                    request.unit);
    }
    Document document;
    document.schema = "wrench";
    document.heading = "Torque wrench for " + reading.text;
    const Torque exact = engine::setting_for(wanted, adapter);
    document.section({});
    document.add("torque", "wanted at the fastener", torque_as_given(reading));
    document.add("setting", "set the wrench to",
                 in_unit(exact, unit, request.adapter.empty() ? "no adapter: the same" : "T L/(L + E cos a) (US Army TM 9-254)"));
    const Torque setting = add_scale(document, request, exact, adapter, unit, wanted);
    add_adapter(document, request, adapter);
    add_range(document, request, setting, unit);
    add_deviation(document, reference, request, engine::applied_by(setting, adapter), unit);
    document.cautions.push_back(caution_maker_first());
    return document;
}

} // namespace clampbook::answer
