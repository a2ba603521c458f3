// SPDX-License-Identifier: MIT
// The spec sheet as one HTML file. Everything that comes from the book is escaped; style and script are ours and named by their
// hashes in the page's own security policy, so that nothing else runs even where an escape were missing.

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/present/html.hpp"
#include "clampbook/present/present.hpp"

// Put there by clampbook_embed in src/CMakeLists.txt.
extern "C" {
extern const char clampbook_sheet_css_begin[];
extern const char clampbook_sheet_css_end[];
extern const char clampbook_sheet_js_begin[];
extern const char clampbook_sheet_js_end[];
}

namespace clampbook::present {
namespace {

using answer::SheetJoint;
using answer::SheetLine;

std::string element(std::string_view tag, std::string_view classes, std::string_view text) {
    return text.empty() ? std::string{} : fmt::format("<{0} class=\"{1}\">{2}</{0}>", tag, classes, escaped(text));
}

std::string cell(std::string_view classes, std::string_view head, const std::string& content) {
    return fmt::format(R"(<td class="{}" data-head="{}">{}</td>)", classes, escaped(head), content);
}

std::string joint_cell(const SheetJoint& joint, std::size_t rows) {
    return fmt::format(R"(<th scope="row" class="joint"{}>)", rows > 1 ? fmt::format(R"( rowspan="{}")", rows) : "") + "<b>" +
           escaped(joint.joint.name) + "</b>" + element("span", "alarm", joint.joint.safety_critical ? "Safety-critical" : "") +
           element("span", "alarm", joint.disagreement) + element("span", "note", joint.ring) +
           element("span", "note", joint.joint.note) + "</th>";
}

std::string classes_of(const SheetLine& line, bool ended) {
    std::string out = ended ? "ended" : "";
    out += line.sign.find('?') == std::string::npos ? "" : " unchecked";
    out += line.sign.find('~') == std::string::npos ? "" : " computed";
    return std::string{trim(out)};
}

std::string value_cells(const SheetJoint& joint, const SheetLine& line) {
    const Value& value = line.found.value;
    const std::size_t comma = line.state.find(", ");
    const std::string figure =
        "<span class=\"figure\">" + escaped(line.sign + (line.sign.empty() ? "" : " ") + value.tightening.as_written) + "</span>";
    return cell("screws", "Screws", escaped(joint.screws)) +
           cell("written", "As written", figure + element("span", "change", line.change) + element("span", "note", value.note)) +
           cell("nm", "N·m", escaped(line.found.in_newton_metres)) + cell("lbf", "lbf·ft", escaped(line.found.in_pound_feet)) +
           cell("state", "Whose figure",
                escaped(line.state.substr(0, comma)) + " " + element("span", "word", line.state.substr(comma + 2))) +
           cell("source", "Source", escaped(line.source));
}

std::string joint_rows(const SheetJoint& joint) {
    std::string out = "<tbody>";
    const std::size_t rows = joint.lines.size() + joint.ended.size();
    if (joint.lines.empty()) {
        out += "<tr>" + joint_cell(joint, rows + 1) + cell("screws", "Screws", escaped(joint.screws)) +
               cell("written none", "As written", "no value in the book") + cell("nm", "N·m", "") + cell("lbf", "lbf·ft", "") +
               cell("state", "Whose figure", "") + cell("source", "Source", "") + "</tr>\n";
    }
    bool first = !joint.lines.empty();
    const auto add = [&](const SheetLine& line, bool ended) {
        out += fmt::format("<tr class=\"{}\">", classes_of(line, ended)) + (first ? joint_cell(joint, rows) : "") +
               value_cells(joint, line) + "</tr>\n";
        first = false;
    };
    for (const SheetLine& line : joint.lines) {
        add(line, false);
    }
    for (const SheetLine& line : joint.ended) {
        add(line, true);
    }
    return out + "</tbody>\n";
}

std::string assembly_section(const answer::SheetAssembly& group) {
    std::string out = "<section class=\"assembly\"><h3>" + escaped(group.assembly.name) + "</h3>\n<table><thead><tr>";
    for (const auto& [classes, head] : {std::pair{"joint", "Joint"},
                                        {"screws", "Screws"},
                                        {"written", "Tightening, as written"},
                                        {"nm", "N·m"},
                                        {"lbf", "lbf·ft"},
                                        {"state", "Whose figure"},
                                        {"source", "Source"}}) {
        out += fmt::format(R"(<th scope="col" class="{}">{}</th>)", classes, head);
    }
    out += "</tr></thead>\n";
    for (const SheetJoint& joint : group.joints) {
        out += joint_rows(joint);
    }
    return out + "</table></section>\n";
}

std::string head_of(const answer::Sheet& sheet, std::string_view css, std::string_view js) {
    return "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n"
           "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src " +
           hash_of(css) + "; script-src " + hash_of(js) +
           "; base-uri 'none'; form-action 'none'\">\n"
           "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>" +
           escaped(sheet.title) + "</title>\n<style>" + std::string{css} + "</style></head>\n";
}

std::string foot_of(const answer::Sheet& sheet) {
    std::string out = "<footer>\n<h2>Sources</h2>\n<dl>\n";
    for (std::size_t i = 0; i < sheet.sources.size(); ++i) {
        out += fmt::format("<dt>[{}]</dt><dd>{}</dd>\n", i + 1, escaped(sheet.sources[i].line()));
    }
    std::vector<std::string> checkers;
    for (const auto& [name, n] : sheet.checked_by) {
        checkers.push_back(fmt::format("{} ({})", name, n));
    }
    out += "</dl>\n<h2>This sheet</h2>\n<dl>\n";
    const std::string left =
        sheet.left_out == 0 ? "" : fmt::format("; {} joints have no checked value and are left out", sheet.left_out);
    for (const auto& [head, text] :
         {std::pair{std::string{"Holds"}, fmt::format("{} joints, {} values, {} of them checked; {} joints without a value{}",
                                                      sheet.joints, sheet.values, sheet.checked, sheet.without_value, left)},
          {"Date", sheet.date},
          {"Revision of the book", std::to_string(sheet.revision)},
          {"Digest", sheet.digest},
          {"Prepared by", sheet.prepared_by},
          {"Checked by", join(checkers, ", ")}}) {
        out += "<dt>" + head + "</dt><dd>" + escaped(text) + "</dd>\n";
    }
    out += "</dl>\n";
    for (const Caution& caution : sheet.cautions) {
        out += element("p", "caution", "! " + caution.text) + "\n";
    }
    return out + "</footer>\n";
}

} // namespace

std::string html(const answer::Sheet& sheet) {
    const std::string_view css{clampbook_sheet_css_begin, clampbook_sheet_css_end};
    const std::string_view js{clampbook_sheet_js_begin, clampbook_sheet_js_end};
    std::string out = head_of(sheet, css, js);
    out +=
        "<body data-unit=\"both\">\n<header>\n<h1>" + escaped(sheet.title) + "</h1>\n" + element("p", "chosen", sheet.chosen) +
        "\n" +
        element("p", "stamp",
                fmt::format("{}; revision {} of the book, digest {}", sheet.date, sheet.revision, sheet.digest.substr(0, 16))) +
        "\n" + element("p", "stamp", sheet.since.empty() ? "" : "Marked: what changed since " + sheet.since) + "\n" +
        element("p", "legend", answer::sheet_legend()) + "\n</header>\n";
    out +=
        "<form class=\"controls\" role=\"search\" hidden><label>Search <input type=\"search\" id=\"search\" autocomplete=\"off\">"
        "</label><fieldset aria-label=\"Unit beside the figure as written\">"
        "<label><input type=\"radio\" name=\"unit\" value=\"both\" checked> both units</label>"
        "<label><input type=\"radio\" name=\"unit\" value=\"nm\"> N·m</label>"
        "<label><input type=\"radio\" name=\"unit\" value=\"lbf\"> lbf·ft</label></fieldset>"
        "<output id=\"count\" aria-live=\"polite\"></output></form>\n<main>\n";
    RecordId machine = 0;
    for (const answer::SheetAssembly& group : sheet.assemblies) {
        if (group.machine.id != machine) {
            out += (machine == 0 ? "" : "</section>\n") + std::string{"<section class=\"machine\"><h2>"} +
                   escaped(group.machine.title()) + " <small>" + escaped(group.machine.maker) + "</small></h2>\n";
            machine = group.machine.id;
        }
        out += assembly_section(group);
    }
    out += std::string{machine == 0 ? "" : "</section>\n"} + "</main>\n" + foot_of(sheet) + "<script>" + std::string{js} +
           "</script>\n</body></html>\n";
    return out;
}

} // namespace clampbook::present
