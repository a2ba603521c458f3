// SPDX-License-Identifier: MIT
#pragma once

// What the press's --help says; its manual page is made of it too.

#include <array>

namespace clampbook::press {

struct Use {
    const char* synopsis; ///< what is typed behind the program's name
    const char* text;
};

inline constexpr const char* k_summary = "sets sheets, lessons and charts as PDF, SVG, picture or spreadsheet";
inline constexpr std::array k_uses{
    Use{"pdf|svg|png|xlsx FILE [--paper a4|letter] < pages.json",
        "Sets the JSON that 'clampbook sheet --json' gives (clampbook/sheet/v1), or pages (clampbook/pages/v1), of which svg and "
        "png "
        "draw the first chart alone. The FILE '-' is standard output. Files of the same input are the same bytes."},
    Use{"--check", "Tells its version, and the fonts that its pages ask for, each with the one that this machine has for it."},
    Use{"--version", "Tells its version."},
    Use{"--help", "Tells this."},
};

} // namespace clampbook::press
