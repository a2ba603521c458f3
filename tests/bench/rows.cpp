// SPDX-License-Identifier: MIT
// Makes the rows of a large, invented workshop in the exchange format, for the measurements: machines with eight assemblies of
// sixteen joints, most joints with one figure and every second with two, threads, classes and torques as they go together in a
// workshop. The same count and seed give the same bytes on every machine.
// Usage: bench_rows VALUES [SEED]

#include "clampbook/exchange/rows.hpp"

#include <array>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

namespace {

using clampbook::exchange::JointRow;

// Splitmix64: a number from a seed, by the four operations and shifts alone.
class Draw {
public:
    explicit Draw(std::uint64_t seed) : state_(seed) {}
    // From 0 up to, not including, `below`.
    [[nodiscard]] std::size_t below(std::size_t below) {
        state_ += 0x9e3779b97f4a7c15U;
        std::uint64_t z = state_;
        z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
        z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
        return static_cast<std::size_t>((z ^ (z >> 31U)) % below);
    }
    template <typename T, std::size_t N>
    [[nodiscard]] const T& of(const std::array<T, N>& all) {
        return all[below(N)];
    }

private:
    std::uint64_t state_;
};

struct Kind {
    std::string_view name;
    std::string_view role;
    std::string_view thread;
    std::string_view property_class;
    std::string_view ring;
    std::array<std::string_view, 3> figures; // as a manual prints them, the first two of one size
};

constexpr std::array<Kind, 16> k_kinds{{
    {"drain plug", "drain", "M18x1.5", "", "copper", {"34 N·m", "36 N·m", "32 ± 3 N·m"}},
    {"fill plug", "fill", "M22x1.5", "", "aluminium", {"45 N·m", "48 N·m", "33 lbf·ft"}},
    {"level plug", "level", "M14x1.5", "", "copper", {"25 N·m", "24 N·m", "18 lbf·ft"}},
    {"breather", "vent", "M10x1", "", "aluminium", {"10 N·m", "11 N·m", "9–11 N·m"}},
    {"cover screws", "cover", "M8", "8.8", "", {"25 N·m", "24 N·m", "22–26 N·m"}},
    {"pump screws", "pump", "M6", "8.8", "", {"10 N·m", "9.5 N·m", "84 lbf·in"}},
    {"strainer cover", "filter", "M6", "8.8", "", {"9 N·m", "10 N·m", "8–10 N·m"}},
    {"speed sensor", "sensor", "M18x1.5", "", "", {"30 N·m", "32 N·m", "24 lbf·ft"}},
    {"output flange nut", "flange", "M20x1.5", "8.8", "", {"320 N·m", "330 N·m", "240 lbf·ft"}},
    {"bearing cap screws", "bearing", "M12", "10.9", "", {"115 N·m", "120 N·m", "40 N·m + 90°"}},
    {"mounting screws", "mount", "M16", "8.8", "", {"210 N·m", "205 N·m", "150 lbf·ft"}},
    {"input cover screws", "cover", "M10", "8.8", "", {"49 N·m", "48 N·m", "20 N·m + 90°"}},
    {"shift housing screws", "other", "M8", "10.9", "", {"35 N·m", "34 N·m", "32–38 N·m"}},
    {"coupling screws", "flange", "M10x1.25", "10.9", "", {"70 N·m", "72 N·m", "50 lbf·ft"}},
    {"cooler union", "other", "M16x1.5", "", "", {"45 N·m", "40 N·m", "40–45 N·m"}},
    {"ring gear bolts", "flange", "M12x1.25", "10.9", "", {"130 N·m", "125 N·m", "50 N·m + 60°"}},
}};
constexpr std::array<std::string_view, 8> k_assemblies{
    "front axle drive", "rear axle drive", "transfer case",      "gearbox",
    "drop box",         "power take-off",  "hydraulic pump set", "spreader drive"};
constexpr std::array<std::string_view, 8> k_machines{"small carrier", "loader",      "tractor",       "sweeper",
                                                     "tool carrier",  "snow blower", "crane carrier", "tipper"};
constexpr std::array<std::string_view, 4> k_variants{"", "4x4", "long wheelbase", "hydrostatic"};
constexpr std::array<std::string_view, 3> k_housings{"EN AC-46000", "EN-GJL-250", "EN-GJS-400-15"};
constexpr std::array<std::string_view, 5> k_people{"A. Lead", "B. Second", "C. Third", "D. Fourth", "E. Fifth"};
constexpr std::uint64_t k_seed = 20261127;

class Shop {
public:
    Shop(std::uint64_t values, std::uint64_t seed) : left_(values), draw_(seed) {}

    void print() {
        std::fputs(clampbook::exchange::joint_header().c_str(), stdout);
        for (std::uint64_t machine = 1; left_ > 0; ++machine) {
            JointRow row;
            row.machine_maker = "maker " + std::to_string(draw_.below(40) + 1) + " (invented)";
            row.machine_model = std::string{draw_.of(k_machines)} + " K" + std::to_string(machine);
            row.machine_variant = draw_.of(k_variants);
            row.source_kind = "manual";
            row.source_title = "Workshop manual K" + std::to_string(machine);
            row.source_number = "WM-" + std::to_string(machine);
            row.source_edition = std::to_string(draw_.below(4) + 1);
            row.source_date = std::to_string(1995 + draw_.below(30));
            row.source_date += "-03-01";
            for (std::size_t a = 0; a < k_assemblies.size() && left_ > 0; ++a) {
                row.assembly = k_assemblies[a];
                for (std::size_t k = 0; k < k_kinds.size() && left_ > 0; ++k) {
                    joint(row, k_kinds[k], std::to_string(a + 1) + "-" + std::to_string(k + 10));
                }
            }
        }
    }

private:
    void joint(JointRow row, const Kind& kind, const std::string& page) {
        row.joint = kind.name;
        row.role = kind.role;
        row.thread = kind.thread;
        row.property_class = kind.property_class;
        row.ring = kind.ring;
        row.housing = draw_.of(k_housings);
        row.count = kind.property_class.empty() ? "1" : std::to_string(4 + 2 * draw_.below(5));
        row.engagement_mm = kind.ring.empty() ? "" : "14";
        row.note = draw_.below(5) == 0 ? "see bulletin B" + std::to_string(draw_.below(100000)) : "";
        row.tightening = draw_.of(kind.figures);
        row.label = "maker";
        row.page = page;
        row.entered_by = draw_.of(k_people);
        row.entered_on = std::to_string(2015 + draw_.below(11));
        row.entered_on += "-0" + std::to_string(1 + draw_.below(9)) + "-1" + std::to_string(draw_.below(10));
        line(row);
        if (draw_.below(2) == 0 && left_ > 0) {
            row.tightening = kind.figures[draw_.below(2)];
            row.label = "shop";
            row.source_kind = "measurement";
            row.source_title = "Shop trials " + std::to_string(2015 + draw_.below(11));
            row.source_number = row.source_edition = row.source_date = row.note = "";
            row.page = "";
            line(row);
        }
    }
    void line(const JointRow& row) {
        std::fputs(clampbook::exchange::joint_line(row).c_str(), stdout);
        --left_;
    }

    std::uint64_t left_;
    Draw draw_;
};

} // namespace

int main(int argc, char** argv) {
    const std::uint64_t values = argc >= 2 ? std::strtoull(argv[1], nullptr, 10) : 0;
    if (argc > 3 || values == 0) {
        std::fputs("usage: bench_rows VALUES [SEED]\n", stderr);
        return 2;
    }
    Shop{values, argc == 3 ? std::strtoull(argv[2], nullptr, 10) : k_seed}.print();
    return std::ferror(stdout) != 0 || std::fflush(stdout) != 0 ? 1 : 0;
}
