// SPDX-License-Identifier: MIT
// clampbook-press: reads the JSON of a spec sheet on standard input and sets it as PDF, SVG or spreadsheet. A program of its own,
// since loading what it needs takes longer than a lookup.

#include "press.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/file.hpp"

#include <algorithm>
#include <iostream>
#include <new>

namespace {

using namespace clampbook;

constexpr const char* k_usage =
    "usage: clampbook-press pdf|svg|xlsx FILE [--paper a4|letter] < sheet.json\n"
    "Sets the JSON that 'clampbook sheet --json' gives. Files of the same sheet are the same bytes.\n";

struct Request {
    std::string form;
    std::string path;
    press::Paper paper = press::k_a4;
};

Request read_request(const std::vector<std::string>& words) {
    Request out;
    std::vector<std::string> plain;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (words[i] == "--paper" && i + 1 < words.size() && (words[i + 1] == "a4" || words[i + 1] == "letter")) {
            out.paper = words[++i] == "a4" ? press::k_a4 : press::k_letter;
        } else if (words[i].starts_with("-")) {
            throw error(ErrorKind::usage, "'{}' is not understood; see 'clampbook-press --help'", words[i]);
        } else {
            plain.push_back(words[i]);
        }
    }
    if (plain.size() != 2 || (plain[0] != "pdf" && plain[0] != "svg" && plain[0] != "xlsx")) {
        throw error(ErrorKind::usage, "a form (pdf, svg or xlsx) and a file are wanted; see 'clampbook-press --help'");
    }
    out.form = plain[0];
    out.path = plain[1];
    return out;
}

void make(const Request& request) {
    const press::Sheet sheet = press::read_sheet(std::cin);
    write_whole_file(request.path, request.form == "pdf"   ? press::pdf(sheet, request.paper)
                                   : request.form == "svg" ? press::svg(sheet)
                                                           : press::xlsx(sheet));
}

} // namespace

int main(int argc, char** argv) try {
    const std::vector<std::string> words{argv + 1, argv + argc};
    if (words.empty() || std::ranges::find(words, "--help") != words.end()) {
        std::cout << k_usage;
        return words.empty() ? 2 : 0;
    }
    make(read_request(words));
    return 0;
} catch (const clampbook::Error& fault) {
    std::cerr << "clampbook-press: " << fault.what() << "\n";
    return fault.exit_code();
} catch (const std::bad_alloc&) {
    std::cerr << "clampbook-press: there is not enough memory for this\n";
    return 1;
} catch (const std::exception& fault) {
    std::cerr << "clampbook-press: " << fault.what() << "\n";
    return 1;
}
