// SPDX-License-Identifier: MIT
// Files that are imported, through the way that `clampbook import` goes: into an empty book, in a transaction that is undone. What
// is taken leaves a sound book, is here already the second time, and comes out as it came in.

#include "scratch.hpp"
#include "targets.hpp"

#include "clampbook/answer/export.hpp"
#include "clampbook/intake/import.hpp"

#include <sstream>

namespace fuzz {
namespace {

using namespace clampbook;
using Import = decltype(&intake::import_rows);
using Export = decltype(&answer::export_csv);

struct Undone {};

// What `body` tells the book is forgotten.
template <typename F>
void undone(book::Book& book, F&& body) {
    try {
        book.in_one_go([&] {
            body();
            throw Undone{};
        });
    } catch (const Undone&) {
        return;
    }
}

book::Book& empty_book(int number) {
    static book::Book books[] = {book::Book::create(scratch("first.db"), k_stamp),
                                 book::Book::create(scratch("second.db"), k_stamp)};
    return books[number];
}

// Nothing where the file is refused as a whole.
std::optional<intake::ImportReport> given(book::Book& book, Import import, const std::string& bytes) {
    std::optional<intake::ImportReport> report;
    intake::ImportOptions options;
    options.rules.confirm_all = "as found";
    std::istringstream in{bytes};
    const auto fault = refused([&] { report = import(book, curated(), in, "file", options, k_stamp); });
    require(!fault || fault->kind() != ErrorKind::internal,
            std::string{"a file is never an internal fault: "} + (fault ? fault->what() : ""));
    if (report) {
        for (const auto* told : {&report->faults, &report->confirmed, &report->left_out}) {
            for (const std::string& line : told->lines) {
                require_sentence(error(ErrorKind::invalid_data, "{}", line));
            }
        }
        require(report->kept == (report->faults.total == 0), "all of a file is taken, or nothing of it");
    }
    return report;
}

std::string exported(const book::Book& book, Export to) {
    std::ostringstream out;
    to(book, out);
    require_shown(out.str(), "an export");
    return out.str();
}

void sound(const book::Book& book) {
    for (const std::string& fault : book.verify()) {
        breach("a book is whole after an import: " + fault);
    }
    for (const std::string& fault : book.audit()) {
        breach("a book holds what it was told by an import: " + fault);
    }
}

void told(const std::optional<intake::ImportReport>& report, const char* what) {
    if (!report || !report->kept) {
        breach(std::string{what} + (report ? ": " + report->faults.lines.at(0) : ""));
    }
}

void import(Import way, std::string_view bytes) {
    book::Book& book = empty_book(0);
    undone(book, [&] {
        const auto report = given(book, way, std::string{bytes});
        if (!report || !report->kept) {
            require(book.info().machines == 0 && book.info().events == 1, "what is refused leaves nothing behind");
            return;
        }
        ++fuzz::taken();
        sound(book);
        const std::string rows = exported(book, answer::export_csv);
        const std::string story = exported(book, answer::export_json);
        for (const auto& [again, file] : {std::pair{&intake::import_rows, &rows}, {&intake::import_export, &story}}) {
            const auto second = given(book, again, *file);
            told(second, "an export is taken by the book that it is of");
            require(second->values == 0 && second->joints == 0 && second->sources == 0, "a second time changes nothing");
        }
        require(exported(book, answer::export_csv) == rows, "a book that took its own rows exports the same rows");
        undone(empty_book(1), [&] {
            told(given(empty_book(1), intake::import_export, story), "an export is taken by an empty book");
            sound(empty_book(1));
            require(exported(empty_book(1), answer::export_json) == story, "a book made from an export gives the same export");
        });
    });
}

} // namespace

void rows(std::string_view bytes) { import(&intake::import_rows, bytes); }

void story(std::string_view bytes) { import(&intake::import_export, bytes); }

} // namespace fuzz
