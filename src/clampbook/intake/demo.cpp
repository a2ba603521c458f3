// SPDX-License-Identifier: MIT
// The demo: an invented winter-service yard as rows of the exchange file, kept inside the program.

#include "clampbook/intake/import.hpp"

#include <sstream>

// Put there by clampbook_embed in src/CMakeLists.txt.
extern "C" {
extern const char clampbook_demo_joints_begin[];
extern const char clampbook_demo_joints_end[];
extern const char clampbook_demo_unvalued_begin[];
extern const char clampbook_demo_unvalued_end[];
}

namespace clampbook::intake {
namespace {

void take_text(book::Book& book, const reference::Reference& reference, std::string_view text, std::string_view name,
               const book::Stamp& stamp) {
    std::istringstream in{std::string{text}};
    const Judge judge{reference};
    Rows rows{book, judge, std::string{name}, stamp};
    exchange::read_joint_rows(in, name, [&](const exchange::JointRow& row) { (void)rows.take(row); });
}

} // namespace

void write_demo(const std::string& path, const reference::Reference& reference) {
    // A fixed day: the demo is the same book on every machine, whatever its clock says.
    const book::Stamp stamp{"demo clerk", "2026-06-30T12:00:00Z"};
    book::Book::create_whole(path, stamp, [&](book::Book& book) {
        book.in_one_go([&] {
            take_text(book, reference, {clampbook_demo_joints_begin, clampbook_demo_joints_end}, "demo/joints.csv", stamp);
            take_text(book, reference, {clampbook_demo_unvalued_begin, clampbook_demo_unvalued_end}, "demo/unvalued.csv", stamp);
        });
    });
}

} // namespace clampbook::intake
