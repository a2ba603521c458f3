// SPDX-License-Identifier: MIT
// What must hold of the engine whatever it is given, over random valid inputs.

#include "clampbook/engine/elastic.hpp"
#include "clampbook/engine/plausibility.hpp"
#include "clampbook/engine/plug.hpp"
#include "clampbook/engine/scatter.hpp"
#include "clampbook/engine/strength.hpp"
#include "clampbook/engine/strip.hpp"
#include "clampbook/engine/wrench.hpp"

#include <catch2/catch.hpp>
#include <rapidcheck.h>

#include <cmath>

namespace {

using namespace clampbook;
using namespace clampbook::engine;

// A number of a band, fine enough that ends and middle come up.
double between(double low, double high) { return low + (high - low) * *rc::gen::inRange(0, 1'000'001) / 1e6; }

bool near(double a, double b) { return std::fabs(a - b) <= 1e-12 * std::max(std::fabs(a), std::fabs(b)); }

struct Sizes {
    double d = between(3, 64);
    double pitch = between(0.06, 0.16) * d;

    [[nodiscard]] ThreadGeometry thread() const { return metric_geometry(d * millimetre, pitch * millimetre); }
};

FrictionJoint any_joint() {
    const Sizes sizes;
    const double hole = between(1.02, 1.3) * sizes.d;
    return {sizes.thread(), between(0.02, 0.45), between(0.02, 0.45), between(1.05, 2.0) * hole * millimetre, hole * millimetre};
}

Springs any_springs() { return {{between(1e-7, 1e-5)}, {between(1e-7, 1e-5)}}; }

template <typename F>
void holds(const char* what, F&& property) {
    INFO(what);
    CHECK(rc::check(what, std::forward<F>(property)));
}

} // namespace

TEST_CASE("properties of the nut-factor and friction forms", "[properties]") {
    holds("the torque of a preload, and the preload of that torque", [] {
        const Force preload = between(100, 1e6) * newton;
        const double k = between(0.05, 0.5);
        const Length d = between(1, 64) * millimetre;
        RC_ASSERT(near(preload_from(torque_for(preload, k, d), k, d).in(newton), preload.in(newton)));
        const FrictionJoint joint = any_joint();
        RC_ASSERT(near(friction_preload(friction_torque(preload, joint).total, joint).in(newton), preload.in(newton)));
    });
    holds("preload rises with torque and falls with friction", [] {
        const FrictionJoint joint = any_joint();
        const Torque torque = between(1, 1000) * newton_metre;
        const Force preload = friction_preload(torque, joint);
        RC_ASSERT(friction_preload(1.001 * torque, joint) > preload);
        FrictionJoint rougher = joint;
        rougher.thread_friction += 0.01;
        RC_ASSERT(friction_preload(torque, rougher) < preload);
        rougher = joint;
        rougher.head_friction += 0.01;
        RC_ASSERT(friction_preload(torque, rougher) < preload);
    });
    holds("shares of the torque sum to one", [] {
        const TorqueShares shares = friction_torque(between(100, 1e6) * newton, any_joint());
        RC_ASSERT(near((shares.pitch + shares.thread + shares.head) / shares.total, 1));
        RC_ASSERT((shares.pitch > 0 * newton_metre && shares.thread > 0 * newton_metre && shares.head > 0 * newton_metre));
    });
    holds("a bore takes strength away, more of it the wider it is", [] {
        const ThreadGeometry thread = Sizes{}.thread();
        const double friction = between(0.02, 0.5);
        const Length bore = between(0.01, 0.8) * thread.minor_external;
        const Force solid = hollow_preload(400.0 * megapascal, thread, friction, 0 * millimetre);
        const Force hollow = hollow_preload(400.0 * megapascal, thread, friction, bore);
        RC_ASSERT(hollow < solid);
        RC_ASSERT(hollow_preload(400.0 * megapascal, thread, friction, 1.05 * bore) < hollow);
    });
}

TEST_CASE("properties of scatter", "[properties]") {
    holds("tightening factor and scatter invert each other", [] {
        const double s = between(0, 0.95);
        RC_ASSERT(std::fabs(scatter_of(tightening_factor(s)) - s) < 1e-12);
    });
    holds("a wider band of friction or a worse tool never narrows the bounds", [] {
        const FrictionJoint joint = any_joint();
        const double low = between(0.04, 0.2);
        const double high = low + between(0, 0.2);
        const double tool = between(0, 0.1);
        const Torque torque = between(1, 1000) * newton_metre;
        const PreloadBounds bounds = friction_bounds(torque, joint, {low, high}, tool);
        RC_ASSERT(bounds.least <= bounds.most);
        const PreloadBounds wider = friction_bounds(torque, joint, {low - 0.01, high + 0.01}, tool + 0.01);
        RC_ASSERT((wider.least < bounds.least && wider.most > bounds.most));
    });
    holds("draws lie within the bounds, and percentiles rise", [] {
        const FrictionJoint joint = any_joint();
        const double low = between(0.03, 0.2);
        const Band band{low, low + between(0.01, 0.2)};
        const Torque torque = between(1, 1000) * newton_metre;
        const Draws draws{*rc::gen::arbitrary<std::uint64_t>(), 1000, *rc::gen::element(Shape::rectangular, Shape::triangular)};
        const PreloadBounds bounds = friction_bounds(torque, joint, band, 0.04);
        const Spread drawn = draw_by_friction(torque, joint, band, 0.04, draws);
        RC_ASSERT((drawn.least() >= bounds.least && drawn.most() <= bounds.most));
        const double p = between(0.01, 0.98);
        RC_ASSERT(drawn.percentile(p) <= drawn.percentile(p + 0.01));
        RC_ASSERT(drawn.share_under(drawn.percentile(p)) <= p);
    });
}

TEST_CASE("properties of stripping and plugs", "[properties]") {
    holds("a finer pitch strips no earlier per millimetre of thread, and the screw's own thread later", [] {
        const double d = between(3, 64);
        const double coarse = between(0.08, 0.16) * d;
        const double fine = between(0.5, 0.95) * coarse;
        const auto areas = [&](double pitch) {
            return shear_areas(basic_pair(metric_geometry(d * millimetre, pitch * millimetre)), 1.0 * d * millimetre);
        };
        RC_ASSERT(areas(fine).external > areas(coarse).external);
        RC_ASSERT(areas(fine).internal >= (1 - 1e-12) * areas(coarse).internal);
    });
    holds("strip loads rise with depth and with strength; the needed depth carries just its load", [] {
        const Sizes sizes;
        const ThreadPair pair = basic_pair(sizes.thread());
        const ShearStrengths strengths{between(200, 900) * megapascal, between(80, 700) * megapascal};
        const Length depth = between(0.5, 2.5) * sizes.d * millimetre;
        const StripLoads loads = strip_loads(shear_areas(pair, depth), strengths);
        RC_ASSERT(strip_loads(shear_areas(pair, 1.1 * depth), strengths).least() > loads.least());
        RC_ASSERT((loads.c2 >= 0.89 && loads.c2 <= 1.2));
        RC_ASSERT((loads.c3 >= 0.89 && loads.c3 <= 1.06));
        RC_ASSERT(near(engagement_for(loads.least(), pair, strengths).in(millimetre), depth.in(millimetre)));
    });
    holds("more friction never lowers the seat torque; more strength never narrows the window", [] {
        const ThreadGeometry thread = Sizes{}.thread();
        const Length inner = thread.major;
        const Length outer = between(1.1, 1.5) * inner;
        const Plug plug{thread, outer, inner, between(0, 0.5) * thread.minor_external};
        const double low = between(0.03, 0.15);
        const Band band{low, low + between(0, 0.2)};
        PlugLimits limits{seating_load(inner, outer, between(40, 130) * megapascal), between(1e3, 1e6) * newton,
                          between(1e3, 1e6) * newton, between(200, 640) * megapascal, 800.0 * megapascal};
        const PlugWindow window = plug_window(plug, limits, band);
        RC_ASSERT(*plug_window(plug, limits, {band.low, band.high + 0.01}).seat > *window.seat);
        RC_ASSERT((window.high <= window.strip / k_strip_reserve && window.high <= *window.face / k_face_reserve &&
                   window.high <= window.yield / k_plug_reserve));
        limits.strip = 1.5 * limits.strip;
        limits.yield_strength = 1.2 * limits.yield_strength;
        limits.face = 1.5 * *limits.face;
        RC_ASSERT(plug_window(plug, limits, band).high > window.high);
    });
    holds("a practical torque lies in its window, on half a newton metre", [] {
        const double low = between(0.5, 500);
        const double high = low * between(1, 3);
        if (const auto advice = practical_torque(low * newton_metre, high * newton_metre)) {
            RC_ASSERT((*advice >= low * newton_metre && *advice <= high * newton_metre));
            RC_ASSERT(advice->in(newton_metre)*2 == std::round(advice->in(newton_metre)*2));
        } else {
            RC_ASSERT(std::floor(high * 2) - std::ceil(low * 2) < 1); // no half newton metre, or a single one off the middle
        }
    });
}

TEST_CASE("properties of the clamped joint and the wrench", "[properties]") {
    holds("turn and preload invert each other", [] {
        const Springs springs = any_springs();
        const Length lead = between(0.25, 6) * millimetre;
        const Force preload = between(100, 1e6) * newton;
        RC_ASSERT(near(preload_by_turn(turn_for(preload, springs, lead), springs, lead).in(newton), preload.in(newton)));
    });
    holds("what the screw gains and the parts lose is the load", [] {
        const double share = any_springs().load_share();
        const Force preload = between(1e3, 1e5) * newton;
        const Force load = between(0.01, 0.99) * load_leaving(preload, share, 0 * newton);
        const LoadedJoint loaded = under_load(preload, share, load);
        RC_ASSERT(near((loaded.screw - loaded.clamping).in(newton), load.in(newton)));
        RC_ASSERT((loaded.clamping > 0 * newton && loaded.screw > preload));
        RC_ASSERT(near(load_leaving(preload, share, loaded.clamping).in(newton), load.in(newton)));
    });
    holds("a longer bolt and a softer part give more", [] {
        const Length hole = between(3, 40) * millimetre;
        const Length face = between(1.2, 2.5) * hole;
        const Length grip = between(0.5, 10) * hole;
        const std::array stiff{Layer{grip, 205000.0 * megapascal}};
        const std::array soft{Layer{grip, 75000.0 * megapascal}};
        const std::array longer{Layer{1.1 * grip, 205000.0 * megapascal}};
        const double base = clamped_parts(stiff, hole, face).millimetre_per_newton;
        RC_ASSERT(clamped_parts(soft, hole, face).millimetre_per_newton > base);
        RC_ASSERT(clamped_parts(longer, hole, face).millimetre_per_newton > base);
    });
    holds("setting and applied torque invert each other; an adapter ahead asks for less", [] {
        const Adapter adapter{between(150, 1500) * millimetre, between(0, 100) * millimetre, between(0, 180) * degree};
        const Torque torque = between(1, 1000) * newton_metre;
        const Torque setting = setting_for(torque, adapter);
        RC_ASSERT(near(applied_by(setting, adapter).in(newton_metre), torque.in(newton_metre)));
        RC_ASSERT((adapter.turned > 90 * degree ? setting >= torque : setting <= torque));
    });
    holds("no slip is named that leaves the figure outside", [] {
        const TorqueWindow window =
            screw_window(between(1e3, 1e6) * newton, between(3, 64) * millimetre, TighteningHabit::clamped);
        const Torque typed = between(0.01, 20) * window.high;
        for (const Slip& slip : slips_into(window, typed, *rc::gen::element("N·m", "lbf·ft", "lbf·in", "kgf·m"))) {
            RC_ASSERT(window.holds(slip.factor * typed));
        }
    });
}
