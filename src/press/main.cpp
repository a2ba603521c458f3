// SPDX-License-Identifier: MIT
// clampbook-press: reads the JSON of a spec sheet, or of pages and their charts, on standard input and sets it as PDF, SVG, PNG or
// spreadsheet. A program of its own, since loading what it needs takes longer than a lookup.

#include "canvas.hpp"
#include "press.hpp"
#include "reader.hpp"
#include "usage.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/file.hpp"
#include "clampbook/base/text.hpp"

#include <algorithm>
#include <array>
#include <iostream>
#include <new>

namespace {

using namespace clampbook;

void show_usage(std::ostream& out) {
    out << "clampbook-press " << press::k_summary << ".\n";
    for (const press::Use& use : press::k_uses) {
        out << "\nclampbook-press " << use.synopsis << "\n  " << join(wrap(use.text, 78), "\n  ") << "\n";
    }
}

constexpr std::array k_forms{"pdf", "svg", "png", "xlsx"};

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
        } else if (words[i].starts_with("-") && words[i] != "-") {
            throw error(ErrorKind::usage, "'{}' is not understood; see 'clampbook-press --help'", words[i]);
        } else {
            plain.push_back(words[i]);
        }
    }
    if (plain.size() != 2 || std::ranges::find(k_forms, plain[0]) == k_forms.end()) {
        throw error(ErrorKind::usage, "a form (pdf, svg, png or xlsx) and a file are wanted; see 'clampbook-press --help'");
    }
    out.form = plain[0];
    out.path = plain[1];
    return out;
}

std::string made(const Request& request) {
    const press::Json json = press::parsed(std::cin);
    const press::Part part{json, {}};
    const std::string schema = part.text("schema");
    if (schema == "clampbook/sheet/v1") {
        const press::Sheet sheet = press::read_sheet(part);
        if (request.form == "png") {
            throw error(ErrorKind::usage, "a sheet has no picture; it is set as pdf, svg or xlsx");
        }
        return request.form == "pdf"   ? press::pdf(sheet, request.paper)
               : request.form == "svg" ? press::svg(sheet)
                                       : press::xlsx(sheet);
    }
    if (schema == "clampbook/pages/v1") {
        const press::Handout handout = press::read_handout(part);
        if (request.form == "xlsx") {
            throw error(ErrorKind::usage, "pages are no spreadsheet; they are set as pdf, and their chart as svg or png");
        }
        return request.form == "pdf" ? press::pdf(handout, request.paper)
                                     : press::picture(handout, request.form == "svg" ? press::Picture::svg : press::Picture::png);
    }
    throw error(ErrorKind::invalid_data, "the press sets clampbook/sheet/v1 and clampbook/pages/v1, not {}", schema);
}

void make(const Request& request) {
    const std::string bytes = made(request);
    if (request.path != "-") {
        write_whole_file(request.path, bytes);
        return;
    }
    if (!std::cout.write(bytes.data(), static_cast<std::streamsize>(bytes.size())).flush()) {
        throw error(ErrorKind::internal,
                    "the answer could not be written in full: its reader closed the pipe, or the disk is full");
    }
}

} // namespace

int main(int argc, char** argv) try {
    const std::vector<std::string> words{argv + 1, argv + argc};
    if (words.empty() || std::ranges::find(words, "--help") != words.end()) {
        show_usage(std::cout);
        return words.empty() ? 2 : 0;
    }
    if (words == std::vector<std::string>{"--version"} || words == std::vector<std::string>{"--check"}) {
        std::cout << "clampbook-press " CLAMPBOOK_VERSION "\n";
        for (const auto& [wanted, found] : words.front() == "--check" ? press::fonts_here() : press::FontPairs{}) {
            std::cout << wanted << ": " << found << "\n";
        }
        return 0;
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
