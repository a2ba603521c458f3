// SPDX-License-Identifier: MIT
// The table of lessons and their options.

#include "clampbook/teach/lesson.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/teach/lesson_parts.hpp"

#include <algorithm>
#include <array>

namespace clampbook::teach {
namespace {

constexpr std::array k_options{
    LessonOption{"--thread", &LessonRequest::thread, "THREAD", "thread of screw or plug: M10, 3/8-16 UNC"},
    LessonOption{"--other-thread", &LessonRequest::other_thread, "THREAD", "one to compare it with: M10x1.25"},
    LessonOption{"--class", &LessonRequest::property_class, "CLASS", "property class: 8.8"},
    LessonOption{"--friction", &LessonRequest::friction, "MU", "in thread and under the head alike: 0.12"},
    LessonOption{"--friction-band", &LessonRequest::friction_band, "MIN..MAX", "from the smoothest to the roughest: 0.08..0.16"},
    LessonOption{"--oiled", &LessonRequest::oiled, "MU", "the friction with a drop of oil: 0.08"},
    LessonOption{"--nut-factor", &LessonRequest::nut_factor, "K", "K of T = K F d: 0.20"},
    LessonOption{"--head", &LessonRequest::head, "HEAD", "hexagon, socket or flange"},
    LessonOption{"--preload", &LessonRequest::preload, "SHARE", "percent of the proof load, or a force: 75%"},
    LessonOption{"--torque", &LessonRequest::torque, "TORQUE", "the torque that is set or meant: 50 N·m"},
    LessonOption{"--tool", &LessonRequest::tool, "SHARE", "deviation of the tool to either side: 4%"},
    LessonOption{"--seed", &LessonRequest::seed, "NUMBER", "the same seed draws the same everywhere: 1"},
    LessonOption{"--load", &LessonRequest::load, "FORCE", "from outside: 10 kN"},
    LessonOption{"--grip", &LessonRequest::grip, "LENGTH", "thickness of what is clamped: 40 mm"},
    LessonOption{"--under", &LessonRequest::under, "MATERIAL", "what is clamped: steel"},
    LessonOption{"--snug", &LessonRequest::snug, "TORQUE", "before the turn: 20 N·m"},
    LessonOption{"--turn", &LessonRequest::turn, "ANGLE", "after it: 90°"},
    LessonOption{"--housing", &LessonRequest::housing, "MATERIAL", "what the hole is tapped into: EN AC-46000"},
    LessonOption{"--other-housing", &LessonRequest::other_housing, "MATERIAL", "one to compare it with: EN-GJL-250"},
    LessonOption{"--engagement", &LessonRequest::engagement, "LENGTH", "length of full thread: 12 mm"},
    LessonOption{"--ring", &LessonRequest::ring, "RING", "of the plug's flat ring: copper"},
    LessonOption{"--adapter", &LessonRequest::adapter, "LENGTH", "of an adapter on the wrench: 60 mm"},
    LessonOption{"--length", &LessonRequest::length, "LENGTH", "of the wrench, grip to drive: 400 mm"},
};

struct Entry {
    const char* name;
    const char* title;
    std::vector<const char*> options;
    void (*teach)(Lesson&, const reference::Reference&, const LessonRequest&);
};

const std::vector<Entry>& entries() {
    static const std::vector<Entry> all{
        {"preload",
         "What a tightened screw is",
         {"--thread", "--class", "--preload", "--grip", "--under", "--load"},
         teach_preload},
        {"shares", "Where the torque goes", {"--thread", "--class", "--friction", "--oiled", "--head"}, teach_shares},
        {"nut-factor",
         "The nut factor, and what stands behind it",
         {"--thread", "--class", "--friction", "--nut-factor", "--friction-band", "--other-thread"},
         teach_nut_factor},
        {"scatter",
         "Why a good wrench is not enough",
         {"--thread", "--class", "--friction-band", "--tool", "--seed", "--torque"},
         teach_scatter},
        {"angle",
         "Torque, then a turn",
         {"--thread", "--class", "--grip", "--under", "--snug", "--turn", "--friction", "--friction-band"},
         teach_angle},
        {"strip",
         "When a thread strips",
         {"--thread", "--other-thread", "--class", "--housing", "--other-housing", "--engagement"},
         teach_strip},
        {"plug", "The window of a drain plug", {"--thread", "--housing", "--ring"}, teach_plug},
        {"units", "One number, four torques", {"--torque", "--adapter", "--length"}, teach_units},
        {"order", "The order of a fluid change", {"--thread", "--housing", "--ring"}, teach_order},
    };
    return all;
}

} // namespace

std::span<const LessonOption> lesson_options() noexcept { return k_options; }

std::vector<LessonEntry> lesson_entries() {
    std::vector<LessonEntry> out;
    for (const Entry& entry : entries()) {
        out.push_back({entry.name, entry.title, entry.options});
    }
    return out;
}

Lesson lesson(const reference::Reference& reference, std::string_view name, const LessonRequest& request) {
    const auto entry = std::ranges::find(entries(), name, &Entry::name);
    if (entry == entries().end()) {
        std::vector<std::string> names{"all", "exercises"};
        for (const Entry& one : entries()) {
            names.emplace_back(one.name);
        }
        throw error(ErrorKind::not_found, "there is no lesson '{}'{}; 'clampbook teach' lists them", name,
                    did_you_mean(name, names));
    }
    for (const LessonOption& option : k_options) {
        if (!(request.*option.text).empty() &&
            std::ranges::find(entry->options, std::string_view{option.name}) == entry->options.end()) {
            throw error(ErrorKind::usage, "the lesson '{}' does not take {}; it takes {}", name, option.name,
                        join(std::vector<std::string>(entry->options.begin(), entry->options.end()), ", "));
        }
    }
    Lesson out;
    out.name = entry->name;
    out.title = entry->title;
    entry->teach(out, reference, request);
    return out;
}

} // namespace clampbook::teach
