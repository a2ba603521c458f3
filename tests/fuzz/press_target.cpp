// SPDX-License-Identifier: MIT
// What the press reads: JSON of a sheet or of pages, set in one of its forms, which the number of bytes picks.

#include "targets.hpp"

#include "press.hpp"
#include "reader.hpp"

#include <array>
#include <sstream>

// What was once found for a font stays in caches until the program ends, behind pointers that the search for leaks cannot follow.
extern "C" const char* __lsan_default_suppressions();
extern "C" const char* __lsan_default_suppressions() { return "leak:libfontconfig.so"; }

namespace fuzz {
namespace {

using namespace clampbook;

std::string made(const press::Part& part, std::size_t form) {
    if (part.text("schema") == "clampbook/sheet/v1") {
        const press::Sheet sheet = press::read_sheet(part);
        return form == 0 ? press::pdf(sheet, press::k_a4) : form == 1 ? press::svg(sheet) : press::xlsx(sheet);
    }
    const press::Handout handout = press::read_handout(part);
    return form == 0   ? press::pdf(handout, press::k_letter)
           : form == 1 ? press::picture(handout, press::Picture::svg)
                       : press::picture(handout, press::Picture::png);
}

} // namespace

void press(std::string_view bytes) {
    constexpr std::array<std::string_view, 6> k_begins{"%PDF-", "<?xml", "PK", "%PDF-", "<?xml", "\x89PNG"};
    std::string file;
    const auto fault = refused([&] {
        std::istringstream in{std::string{bytes}};
        const press::Json json = press::parsed(in);
        file = made(press::Part{json, {}}, bytes.size() % 3);
    });
    require(!fault || fault->kind() == ErrorKind::invalid_data,
            std::string{"JSON is at most not valid: "} + (fault ? fault->what() : ""));
    taken() += fault ? 0U : 1U;
    const std::string_view whole = file;
    require(fault || whole.starts_with(k_begins.at(bytes.size() % 3)) || whole.starts_with(k_begins.at(3 + bytes.size() % 3)),
            "what is made is a file of its form");
}

} // namespace fuzz
