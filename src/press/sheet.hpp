// SPDX-License-Identifier: MIT
#pragma once

// The spec sheet as the press reads it: the public JSON `clampbook/sheet/v1`, and of that what a page shows. Anyone can write
// another press against the same JSON.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace clampbook::press {

class Part;

struct Line {
    std::string as_written;
    std::string sign;
    std::string state;
    std::string source;
    std::string change;
    std::string note;
    std::string newton_metres;
    std::string pound_feet;
    std::optional<double> torque; ///< N·m, of the last step that is one, with its band
    std::optional<double> low;
    std::optional<double> high;
    std::optional<double> angle; ///< °
    std::string label;
    std::string check;
    std::string source_line;
    std::string page;
    std::string checked_by;
    std::string checked_on;

    [[nodiscard]] bool is_unchecked() const { return sign.find('?') != std::string::npos; }
    [[nodiscard]] bool is_computed() const { return sign.find('~') != std::string::npos; }
};

struct Joint {
    std::string name;
    std::string role;
    std::int64_t count = 1;
    std::string thread;
    std::string property_class;
    std::string screws;
    std::string ring;
    std::string note;
    std::string disagreement;
    bool safety_critical = false;
    std::vector<Line> lines;
    std::vector<Line> ended;
};

struct Assembly {
    std::string machine;
    std::string maker;
    std::string name;
    std::vector<Joint> joints;
};

struct Sheet {
    std::string title;
    std::string chosen;
    std::string prepared_by;
    std::string date;
    std::int64_t revision = 0;
    std::string digest;
    std::string since;
    std::string legend;
    std::string counts; ///< in words
    std::vector<Assembly> assemblies;
    std::vector<std::string> sources;
    std::vector<std::string> checked_by;
    std::vector<std::string> cautions;
};

/// Throws invalid_data: a key that is missing or of the wrong kind (with its path).
[[nodiscard]] Sheet read_sheet(const Part& part);

} // namespace clampbook::press
