// SPDX-License-Identifier: MIT
// Pages as one HTML file: no script at all, one style that the page's own security policy names by its hash, drawings as images.

#include "clampbook/base/error.hpp"
#include "clampbook/present/html.hpp"
#include "clampbook/present/present.hpp"

// Put there by clampbook_embed in src/CMakeLists.txt.
extern "C" {
extern const char clampbook_pages_css_begin[];
extern const char clampbook_pages_css_end[];
}

namespace clampbook::present {
namespace {

using answer::BlockKind;
using answer::PageBlock;

std::string marked(std::string_view classes, std::string_view mark, std::string_view text) {
    return fmt::format("<p class=\"marked {}\"><b>{}</b><span>{}</span></p>\n", classes, escaped(mark), escaped(text));
}

std::string step(const PageBlock& block) {
    std::string out = "<div class=\"step\"><b>" + escaped(block.mark) + "</b><div><b>" + escaped(block.text) + "</b>";
    if (!block.formula.empty()) {
        out += "<br>" + escaped(block.formula);
    }
    if (!block.source.empty()) {
        out += "<br><span class=\"source\">" + escaped(block.source) + "</span>";
    }
    return out + "</div><span class=\"result\">" + escaped(block.result) + "</span></div>\n";
}

std::string table(const PageBlock& block) {
    std::string out = "<table><thead><tr>";
    const auto cell = [&](const char* tag, std::size_t column, const std::string& text) {
        out += std::string{"<"} + tag + (block.columns[column].number ? " class=\"number\">" : ">") + escaped(text) + "</" + tag +
               ">";
    };
    for (std::size_t c = 0; c < block.columns.size(); ++c) {
        cell("th", c, block.columns[c].title);
    }
    out += "</tr></thead><tbody>\n";
    for (const auto& row : block.rows) {
        out += "<tr>";
        for (std::size_t c = 0; c < row.size(); ++c) {
            cell("td", c, row[c]);
        }
        out += "</tr>\n";
    }
    return out + "</tbody></table>\n";
}

std::string figure(const answer::Chart& chart, const std::string& drawing) {
    return "<figure><img src=\"" + data_address("image/svg+xml", drawing) + "\" alt=\"" +
           escaped(chart.title + ". " + chart.words) + "\"><figcaption>" + escaped(chart.words) + "</figcaption></figure>\n";
}

} // namespace

std::string html(const answer::Pages& pages, const std::vector<std::string>& drawings) {
    const std::string_view css{clampbook_pages_css_begin, clampbook_pages_css_end};
    std::string out = "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n"
                      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; img-src data:; style-src " +
                      hash_of(css) +
                      "; base-uri 'none'; form-action 'none'\">\n"
                      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>" +
                      escaped(pages.title) + "</title>\n<style>" + std::string{css} + "</style></head>\n<body>\n";
    std::size_t drawn = 0;
    std::size_t part = 0;
    std::size_t entry = 0;
    const char* page = "";
    for (const PageBlock& block : pages.blocks) {
        switch (block.kind) {
        case BlockKind::title:
            out += fmt::format("<h1 id=\"part-{}\"{}>", ++part, page) + escaped(block.text) + "</h1>\n";
            page = "";
            break;
        case BlockKind::heading:
            out += "<h2>" + escaped(block.text) + "</h2>\n";
            break;
        case BlockKind::text:
            out += "<p>" + escaped(block.text) + "</p>\n";
            break;
        case BlockKind::small:
            out += "<p class=\"small\">" + escaped(block.text) + "</p>\n";
            break;
        case BlockKind::caution:
            out += marked("caution", "!", block.text);
            break;
        case BlockKind::item:
            out += marked("item", block.mark, block.text);
            break;
        case BlockKind::command:
            out += "<p><code>" + escaped(block.text) + "</code><br>" + escaped(block.formula) + "</p>\n";
            break;
        case BlockKind::step:
            out += step(block);
            break;
        case BlockKind::table:
            out += table(block);
            break;
        case BlockKind::chart:
            out += figure(block.chart.value(), drawings.at(drawn++));
            break;
        case BlockKind::room:
            out += "<div class=\"room\"></div>\n";
            break;
        case BlockKind::contents:
            out += "<h1>" + escaped(block.text) + "</h1>\n<ol>\n";
            for (const PageBlock& other : pages.blocks) {
                if (other.kind == BlockKind::title) {
                    out += fmt::format("<li><a href=\"#part-{}\">", ++entry) + escaped(other.text) + "</a></li>\n";
                }
            }
            out += "</ol>\n";
            break;
        case BlockKind::new_page:
            page = " class=\"page\"";
            break;
        }
    }
    return out + "<p class=\"small\">" + escaped(pages.foot) + "</p>\n</body></html>\n";
}

} // namespace clampbook::present
