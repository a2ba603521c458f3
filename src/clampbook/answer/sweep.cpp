// SPDX-License-Identifier: MIT
#include "clampbook/answer/sweep.hpp"

#include "clampbook/answer/sweep_parts.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/model/thread.hpp"

#include <algorithm>

namespace clampbook::answer {
namespace {

using reference::Reference;

template <typename Request>
std::vector<std::string> same_screw(const SweepPlan<Request>& plan, const Document& document) {
    std::vector<std::string> same;
    if (!plan.varies("thread")) {
        same.push_back(thread_for_print(words_of(document, "thread")));
    }
    if (!plan.varies("property_class")) {
        same.push_back("class " + words_of(document, "property_class"));
    }
    return same;
}

void add_same_face(std::vector<std::string>& same, const FaceChoice& face, const Document& document) {
    if (item_of(document, "bearing_diameter") == nullptr) {
        return;
    }
    same.push_back(!face.bearing.empty() ? "bearing face " + face.bearing
                                         : (face.head.empty() ? "hexagon" : face.head) + " head");
    const bool fit = face.hole.empty() || face.hole == "fine" || face.hole == "medium" || face.hole == "coarse";
    same.push_back(fit ? (face.hole.empty() ? "medium" : face.hole) + " hole" : "hole " + face.hole);
}

std::string friction_words(const Document& document) {
    const std::string thread = words_of(document, "friction.thread");
    const std::string head = words_of(document, "friction.head");
    return "friction " + thread + (thread == head ? "" : " in the thread and " + head + " under the head");
}

std::string nut_factor_words(const Document& document, const std::string& given) {
    const Item* k = item_of(document, "nut_factor");
    return "nut factor " + k->figure->print + (given.empty() ? " (" + k->figure->basis + ")" : "");
}

bool is_share(const std::string& text) { return text.find('%') != std::string::npos; }

} // namespace

std::optional<Sweep> derive_sweep(const Reference& reference, const DeriveRequest& request) {
    using Request = DeriveRequest;
    const FrictionChoices& friction = request.friction;
    SweepPlan<Request> plan{reference, request};
    plan.add({"condition", "condition", "", false}, "",
             names_of(request.condition, [&](std::string_view one) { (void)reference.nut_factor(one); }),
             [](Request& r) -> std::string& { return r.condition; });
    plan.add({"nut_factor", "K", "", true}, "nut_factor", values_of(request.nut_factor, RangeUnit::none),
             [](Request& r) -> std::string& { return r.nut_factor; });
    plan.add({"friction", "friction", "", true}, "friction.thread", values_of(friction.coefficients, RangeUnit::none),
             [](Request& r) -> std::string& { return r.friction.coefficients; });
    plan.add({"utilisation", "used", "", true}, "utilisation", values_of(friction.utilisation, RangeUnit::share),
             [](Request& r) -> std::string& { return r.friction.utilisation; });
    const bool of_load = is_share(request.preload); // a share of the proof load is the utilisation
    plan.add({of_load ? "utilisation" : "preload", of_load ? "used" : "preload", of_load ? "" : "N", true},
             of_load ? "utilisation" : "preload", values_of(request.preload, RangeUnit::load),
             [](Request& r) -> std::string& { return r.preload; });
    plan.add({"torque", "torque", "N·m", true}, "torque", values_of(request.torque, RangeUnit::torque),
             [](Request& r) -> std::string& { return r.torque; });
    if (plan.is_single()) {
        return std::nullopt;
    }
    LeftOut left_out;
    const std::vector<SweepAnswer> answers = plan.answers(reference, request, left_out, derive);
    const Document& first = answers.front().document;
    const bool by_friction = !friction.coefficients.empty();
    const bool one_k = !by_friction && !plan.varies("nut_factor") && !plan.varies("condition");
    const bool one_share = request.torque.empty() && (by_friction || request.preload.empty() || of_load);
    const bool torque_given = !request.torque.empty();
    const std::vector<SweepOutput> outputs{{{"torque", "torque", "N·m", true}, "torque"},
                                           {{"torque_also", "also", "", false}, "torque", true},
                                           {{"preload", "preload", "N", true}, "preload"},
                                           {{"utilisation", "used", "", true, one_share}, "utilisation"},
                                           {{"nut_factor", "K", "", true, one_k}, "nut_factor"}};
    Sweep sweep = sweep_of("derive-sweep", torque_given ? "Generic preload from a torque" : "Generic tightening", plan.inputs(),
                           outputs, answers, left_out);
    std::vector<std::string> same = same_screw(plan, first);
    if (by_friction && !plan.varies("friction")) {
        same.push_back(friction_words(first));
    }
    if (one_k) {
        same.push_back(nut_factor_words(first, request.nut_factor));
    }
    if (torque_given && !plan.varies("torque")) {
        same.push_back("torque " + request.torque);
    }
    if (!request.preload.empty() && !of_load && !plan.varies("preload")) {
        same.push_back("preload " + request.preload);
    }
    if (one_share && !plan.varies("utilisation")) {
        const std::string& given = by_friction ? friction.utilisation : request.preload;
        same.push_back((given.empty() ? words_of(first, "utilisation") : given) +
                       (by_friction ? " of the yield strength" : " of the proof load"));
    }
    add_same_face(same, friction.face, first);
    if (friction.torsion == "elastic") {
        same.emplace_back("torsion by the older rule");
    }
    if (!friction.under.empty()) {
        same.push_back("on " + friction.under);
    }
    entitle(sweep, same);
    const auto column = [&](const char* key) {
        return static_cast<std::size_t>(std::ranges::find(sweep.table.columns, key, &TableColumn::key) -
                                        sweep.table.columns.begin());
    };
    sweep.cell =
        torque_given ? Sweep::Cell{column("preload"), column("utilisation")} : Sweep::Cell{column("torque"), column("preload")};
    return sweep;
}

std::optional<Sweep> scatter_sweep(const Reference& reference, const ScatterRequest& request) {
    using Request = ScatterRequest;
    if (is_range(request.friction) && request.friction.find(':') != std::string::npos) {
        throw error(ErrorKind::usage,
                    "'{}' has a step; --friction of scatter is the band that the friction lies in, like '{}', and 'clampbook "
                    "derive' makes a "
                    "table over friction",
                    request.friction, trim(request.friction.substr(0, request.friction.find(':'))));
    }
    SweepPlan<Request> plan{reference, request};
    plan.add({"condition", "condition", "", false}, "",
             names_of(request.condition, [&](std::string_view one) { (void)reference.nut_factor(one); }),
             [](Request& r) -> std::string& { return r.condition; });
    plan.add({"nut_factor", "K", "", true}, "nut_factor", values_of(request.nut_factor, RangeUnit::none),
             [](Request& r) -> std::string& { return r.nut_factor; });
    plan.add({"tool", "tool ±", "", true}, "tool", values_of(request.tool, RangeUnit::share),
             [](Request& r) -> std::string& { return r.tool; });
    plan.add({"torque", "torque", "N·m", true}, "torque", values_of(request.torque, RangeUnit::torque),
             [](Request& r) -> std::string& { return r.torque; });
    if (plan.is_single()) {
        return std::nullopt;
    }
    LeftOut left_out;
    const std::vector<SweepAnswer> answers = plan.answers(reference, request, left_out, scatter);
    const Document& first = answers.front().document;
    std::vector<SweepOutput> outputs{{{"torque", "torque", "N·m", true, true}, "torque"},
                                     {{"least", "least", "N", true}, "preload.least"},
                                     {{"most", "most", "N", true}, "preload.most"},
                                     {{"tightening_factor", "α_A", "", true}, "tightening_factor"},
                                     {{"p5", "5 % under", "N", true}, "percentiles.p5"},
                                     {{"p95", "95 % under", "N", true}, "percentiles.p95"},
                                     {{"chance_over_proof", "over proof", "", true}, "chance_over_proof"}};
    if (!request.needed.empty()) {
        outputs.push_back({{"chance_under_needed", "too little", "", true}, "chance_under_needed"});
    }
    Sweep sweep = sweep_of("scatter-sweep", "Spread of the preload from one torque", plan.inputs(), outputs, answers, left_out);
    std::vector<std::string> same = same_screw(plan, first);
    if (!plan.varies("torque")) {
        same.push_back("torque " + request.torque);
    }
    if (!request.method.empty()) {
        same.push_back(words_of(first, "method"));
        if (!plan.varies("nut_factor") && !plan.varies("condition")) {
            same.push_back(nut_factor_words(first, request.nut_factor));
        }
    } else {
        same.push_back("friction " + request.friction);
        if (!plan.varies("tool")) {
            same.push_back(request.tool.empty() ? "tool not counted" : "tool ±" + request.tool);
        }
    }
    add_same_face(same, request.face, first);
    if (!request.needed.empty()) {
        same.push_back("needed " + request.needed);
    }
    same.push_back(words_of(first, "draws") + " draws, seed " + words_of(first, "seed"));
    entitle(sweep, same);
    return sweep;
}

std::optional<Sweep> strip_sweep(const Reference& reference, const StripRequest& request) {
    using Request = StripRequest;
    SweepPlan<Request> plan{reference, request};
    plan.add({"housing", "housing", "", false}, "",
             names_of(request.housing, [&](std::string_view one) { (void)reference.housing(one); }),
             [](Request& r) -> std::string& { return r.housing; });
    plan.add({"engagement", "engaged", "mm", true}, "engagement", values_of(request.engagement, RangeUnit::length),
             [](Request& r) -> std::string& { return r.engagement; });
    plan.add({"friction", "friction", "", true}, "friction.thread", values_of(request.friction, RangeUnit::none),
             [](Request& r) -> std::string& { return r.friction; });
    if (plan.is_single()) {
        return std::nullopt;
    }
    LeftOut left_out;
    const std::vector<SweepAnswer> answers = plan.answers(reference, request, left_out, strip);
    const Document& first = answers.front().document;
    const std::vector<SweepOutput> outputs{{{"engagement", "engaged", "mm", true, true}, "engagement"},
                                           {{"strip_load", "strips at", "N", true}, "strip_load"},
                                           {{"strip_torque", "torque", "N·m", true}, "strip_torque"},
                                           {{"needed_engagement", "enough at", "mm", true}, "needed_engagement"},
                                           {{"critical_member", "what goes first", "", false}, "critical_member"}};
    Sweep sweep = sweep_of("strip-sweep", "When a tapped hole strips", plan.inputs(), outputs, answers, left_out);
    std::vector<std::string> same = same_screw(plan, first);
    if (!plan.varies("housing")) {
        same.push_back("housing " + words_of(first, "housing.material"));
    }
    if (!plan.varies("engagement")) {
        same.push_back("engagement " + request.engagement);
    }
    same.emplace_back(request.nominal ? "basic sizes" : "limits of size");
    if (!request.across_flats.empty()) {
        same.push_back("across flats " + request.across_flats);
    }
    if (!plan.varies("friction") && item_of(first, "friction.thread") != nullptr) {
        same.push_back(friction_words(first));
    }
    add_same_face(same, request.face, first);
    entitle(sweep, same);
    return sweep;
}

} // namespace clampbook::answer
