// SPDX-License-Identifier: MIT
// The demo: an invented winter-service yard as rows of the exchange file, kept inside the program.

#include "clampbook/base/error.hpp"
#include "clampbook/intake/import.hpp"

#include <filesystem>
#include <sstream>

asm(R"(
.section .rodata
.global clampbook_demo_joints_begin
clampbook_demo_joints_begin:
.incbin ")" CLAMPBOOK_DEMO "/joints.csv"
    R"("
.global clampbook_demo_joints_end
clampbook_demo_joints_end:
.byte 0
.global clampbook_demo_unvalued_begin
clampbook_demo_unvalued_begin:
.incbin ")" CLAMPBOOK_DEMO "/unvalued.csv"
    R"("
.global clampbook_demo_unvalued_end
clampbook_demo_unvalued_end:
.byte 0
.previous
)");

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
    const std::string draft = path + ".draft";
    if (std::filesystem::exists(std::filesystem::symlink_status(path))) {
        throw error(ErrorKind::conflict, "'{}' exists already; the demo needs a new name", path);
    }
    const auto clean = [&] {
        std::error_code none;
        for (const char* end : {"", "-wal", "-shm"}) {
            std::filesystem::remove(draft + end, none);
        }
    };
    clean();
    try {
        {
            book::Book book = book::Book::create(draft, stamp);
            book.in_one_go([&] {
                take_text(book, reference, {clampbook_demo_joints_begin, clampbook_demo_joints_end}, "demo/joints.csv", stamp);
                take_text(book, reference, {clampbook_demo_unvalued_begin, clampbook_demo_unvalued_end}, "demo/unvalued.csv",
                          stamp);
            });
        }
        std::filesystem::rename(draft, path);
    } catch (const std::filesystem::filesystem_error& fault) {
        clean();
        throw error(ErrorKind::internal, "'{}' cannot be written: {}", path, fault.code().message());
    } catch (...) {
        clean();
        throw;
    }
}

} // namespace clampbook::intake
