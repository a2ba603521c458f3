// SPDX-License-Identifier: MIT
// The spec sheet as a spreadsheet: real numbers under heads that name their units, and a second leaf that says where they come from.

#include "press.hpp"

#include "clampbook/base/cells.hpp"
#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"
#include "clampbook/units/quantity.hpp"

#include <unistd.h>
#include <xlsxwriter.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cmath>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace clampbook::press {
namespace {

struct BookColumn {
    const char* title;
    double width; // characters
};
// The first ones are printed; those behind are for sorting and for programs.
constexpr std::array k_book_columns{BookColumn{"Machine", 20},
                                    BookColumn{"Assembly", 17},
                                    BookColumn{"Joint", 24},
                                    BookColumn{"Count", 6},
                                    BookColumn{"Thread", 11},
                                    BookColumn{"Class", 7},
                                    BookColumn{"Tightening, as written", 20},
                                    BookColumn{"Sign", 5},
                                    BookColumn{"Torque N·m", 9},
                                    BookColumn{"Torque lbf·ft", 9},
                                    BookColumn{"Angle °", 7},
                                    BookColumn{"Label", 8},
                                    BookColumn{"Check", 11},
                                    BookColumn{"Source", 13},
                                    BookColumn{"Ring", 24},
                                    BookColumn{"Remarks", 30},
                                    BookColumn{"Role", 9},
                                    BookColumn{"Safety-critical", 9},
                                    BookColumn{"Low N·m", 9},
                                    BookColumn{"High N·m", 9},
                                    BookColumn{"Disagreement", 13},
                                    BookColumn{"Change", 40},
                                    BookColumn{"Document", 64},
                                    BookColumn{"Checked by", 14},
                                    BookColumn{"Checked on", 11}};
constexpr lxw_col_t k_last_printed = 15;
constexpr double k_line_height = 15; // points, of the plain font

// One leaf, written cell by cell from left to right.
class Leaf {
public:
    Leaf(lxw_workbook* book, const char* name, lxw_format* plain, std::vector<double> widths)
        : leaf_(workbook_add_worksheet(book, name)), plain_(plain), widths_(std::move(widths)) {
        if (leaf_ == nullptr) {
            throw error(ErrorKind::internal, "the spreadsheet has no room for another leaf");
        }
        for (std::size_t i = 0; i < widths_.size(); ++i) {
            require(worksheet_set_column(leaf_, static_cast<lxw_col_t>(i), static_cast<lxw_col_t>(i), widths_[i], nullptr));
        }
    }
    void text(const std::string& words, lxw_format* format = nullptr) {
        if (!words.empty()) {
            require(worksheet_write_string(leaf_, row_, column_, spreadsheet_text(words).c_str(),
                                           format == nullptr ? plain_ : format));
            // A wrapped row gets its height here: not every program makes it when it opens the file.
            lines_ = std::max(lines_, std::ceil(1.15 * static_cast<double>(display_width(words)) / widths_.at(column_)));
        }
        ++column_;
    }
    void number(const std::optional<double>& value, lxw_format* format = nullptr) {
        if (value) {
            require(worksheet_write_number(leaf_, row_, column_, *value, format == nullptr ? plain_ : format));
        }
        ++column_;
    }
    void next() {
        if (lines_ > 1) {
            require(worksheet_set_row(leaf_, row_, std::min(lines_ * k_line_height, 400.0), nullptr));
        }
        lines_ = 1;
        ++row_;
        column_ = 0;
    }
    [[nodiscard]] lxw_worksheet* get() const { return leaf_; }
    [[nodiscard]] lxw_row_t row() const { return row_; }

private:
    static void require(lxw_error status) {
        if (status != LXW_NO_ERROR) {
            throw error(ErrorKind::internal, "the spreadsheet cannot be written: {}", lxw_strerror(status));
        }
    }
    lxw_worksheet* leaf_;
    lxw_format* plain_;
    std::vector<double> widths_; // of the columns, in characters
    lxw_row_t row_ = 0;
    lxw_col_t column_ = 0;
    double lines_ = 1; // that the row takes
};

struct Formats {
    lxw_format* head;
    lxw_format* plain;
    lxw_format* sure;      // a checked figure of somebody's
    lxw_format* unchecked; // italic, dashed frame
    lxw_format* computed;  // double rule under it
    explicit Formats(lxw_workbook* book)
        : head(workbook_add_format(book)), plain(workbook_add_format(book)), sure(workbook_add_format(book)),
          unchecked(workbook_add_format(book)), computed(workbook_add_format(book)) {
        for (lxw_format* format : {head, plain, sure, unchecked, computed}) {
            format_set_text_wrap(format);
            format_set_align(format, LXW_ALIGN_VERTICAL_TOP);
        }
        for (lxw_format* format : {sure, unchecked, computed}) {
            format_set_num_format(format, "[<10]0.00;0.0"); // for the eye; the cell holds the number whole
        }
        format_set_bold(head);
        format_set_bottom(head, LXW_BORDER_MEDIUM);
        format_set_bold(sure);
        format_set_italic(unchecked);
        format_set_border(unchecked, LXW_BORDER_DASHED);
        format_set_italic(computed);
        format_set_bottom(computed, LXW_BORDER_DOUBLE);
    }
    [[nodiscard]] lxw_format* of(const Line& line) const {
        return line.is_computed() ? computed : line.is_unchecked() ? unchecked : sure;
    }
};

std::optional<double> pound_feet(const std::optional<double>& newton_metres) {
    return newton_metres ? std::optional{(*newton_metres * newton_metre).in(pound_force_foot)} : std::nullopt;
}

void write_row(Leaf& leaf, const Formats& formats, const Assembly& assembly, const Joint& joint, const Line& line) {
    lxw_format* figure = formats.of(line);
    const bool empty = line.as_written.empty();
    leaf.text(assembly.machine);
    leaf.text(assembly.name);
    leaf.text(joint.name);
    leaf.number(static_cast<double>(joint.count));
    leaf.text(joint.thread);
    leaf.text(joint.property_class);
    leaf.text(line.as_written, figure);
    leaf.text(line.sign);
    leaf.number(line.torque, figure);
    leaf.number(pound_feet(line.torque), figure);
    leaf.number(line.angle, figure);
    leaf.text(line.label);
    leaf.text(empty ? "no value" : line.check);
    leaf.text(line.source);
    leaf.text(joint.ring);
    std::vector<std::string> remarks;
    for (const std::string& remark :
         {std::string{joint.safety_critical ? "SAFETY-CRITICAL" : ""}, std::string{joint.disagreement.empty() ? "" : "DISAGREES"},
          line.change, joint.note, line.note}) {
        if (!remark.empty()) {
            remarks.push_back(remark);
        }
    }
    leaf.text(join(remarks, "; "));
    leaf.text(joint.role);
    leaf.text(joint.safety_critical ? "yes" : "no");
    leaf.number(line.low, figure);
    leaf.number(line.high, figure);
    leaf.text(joint.disagreement.empty() ? "" : "disagrees");
    leaf.text(line.change);
    leaf.text(line.source_line);
    leaf.text(line.checked_by);
    leaf.text(line.checked_on);
    leaf.next();
}

void write_values(lxw_workbook* book, const Formats& formats, const Sheet& sheet) {
    std::vector<double> widths;
    for (const BookColumn& column : k_book_columns) {
        widths.push_back(column.width);
    }
    Leaf leaf{book, "Tightening", formats.plain, std::move(widths)};
    for (const BookColumn& column : k_book_columns) {
        leaf.text(column.title, formats.head);
    }
    leaf.next();
    for (const Assembly& assembly : sheet.assemblies) {
        for (const Joint& joint : assembly.joints) {
            if (joint.lines.empty() && joint.ended.empty()) {
                write_row(leaf, formats, assembly, joint, {});
            }
            for (const Line& line : joint.lines) {
                write_row(leaf, formats, assembly, joint, line);
            }
            for (const Line& line : joint.ended) {
                write_row(leaf, formats, assembly, joint, line);
            }
        }
    }
    constexpr auto k_last = static_cast<lxw_col_t>(k_book_columns.size() - 1);
    const lxw_row_t last = leaf.row() == 1 ? 1 : leaf.row() - 1;
    worksheet_freeze_panes(leaf.get(), 1, 3);
    worksheet_repeat_rows(leaf.get(), 0, 0);
    worksheet_autofilter(leaf.get(), 0, 0, last, k_last);
    worksheet_print_area(leaf.get(), 0, 0, last, k_last_printed);
    worksheet_set_landscape(leaf.get());
    worksheet_fit_to_pages(leaf.get(), 1, 0);
    worksheet_set_paper(leaf.get(), 9); // ISO A4
    worksheet_set_margins(leaf.get(), 0.4, 0.4, 0.5, 0.6);
    const std::string foot =
        fmt::format("&L{}, revision {}, digest {}&RPage &P of &N", sheet.date, sheet.revision, sheet.digest.substr(0, 16));
    worksheet_set_footer(leaf.get(), foot.c_str());
}

void write_about(lxw_workbook* book, const Formats& formats, const Sheet& sheet) {
    Leaf leaf{book, "About this sheet", formats.plain, {20, 100}};
    const auto pair = [&](const std::string& name, const std::string& words) {
        leaf.text(name, formats.head);
        leaf.text(words);
        leaf.next();
    };
    pair("Title", sheet.title);
    pair("Chosen", sheet.chosen);
    pair("Signs", sheet.legend);
    pair("Holds", sheet.counts);
    pair("Date", sheet.date);
    pair("Revision of the book", std::to_string(sheet.revision));
    pair("Digest", sheet.digest);
    pair("Changes since", sheet.since);
    pair("Prepared by", sheet.prepared_by);
    pair("Checked by", join(sheet.checked_by, ", "));
    for (std::size_t i = 0; i < sheet.sources.size(); ++i) {
        pair(fmt::format("Source [{}]", i + 1), sheet.sources[i]);
    }
    for (const std::string& caution : sheet.cautions) {
        pair("Caution", caution);
    }
    worksheet_set_landscape(leaf.get());
    worksheet_fit_to_pages(leaf.get(), 1, 0);
    worksheet_set_paper(leaf.get(), 9);
}

// A file in the folder for such, gone when it is no longer wanted.
class Scratch {
public:
    Scratch() : path_((std::filesystem::temp_directory_path() / "clampbook-XXXXXX").string()) {
        const int file = mkstemp(path_.data());
        if (file < 0) {
            throw error(ErrorKind::internal, "no file can be made in the folder for temporary files: {}", std::strerror(errno));
        }
        close(file);
    }
    ~Scratch() {
        std::error_code none;
        std::filesystem::remove(path_, none);
    }
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;
    [[nodiscard]] const std::string& path() const { return path_; }
    [[nodiscard]] std::string content() const {
        std::ifstream in{path_, std::ios::binary};
        std::string bytes{std::istreambuf_iterator<char>{in}, {}};
        if (!in || bytes.empty()) {
            throw error(ErrorKind::internal, "the spreadsheet cannot be read back from '{}'", path_);
        }
        return bytes;
    }

private:
    std::string path_;
};

std::time_t midnight(const std::string& date) {
    std::tm day{};
    return strptime(date.c_str(), "%Y-%m-%d", &day) == nullptr ? 0 : timegm(&day);
}

} // namespace

std::string xlsx(const Sheet& sheet) {
    // The library writes files alone; it gets one of its own, far from where the sheet goes.
    const Scratch scratch;
    lxw_workbook* book = workbook_new(scratch.path().c_str());
    if (book == nullptr) {
        throw error(ErrorKind::internal, "there is no memory for a spreadsheet");
    }
    try {
        std::string title = sheet.title;
        std::string author = sheet.prepared_by;
        lxw_doc_properties properties{};
        properties.title = title.data();
        properties.author = author.data();
        properties.created = midnight(sheet.date); // not the clock's: the same sheet gives the same bytes
        workbook_set_properties(book, &properties);
        const Formats formats{book};
        write_values(book, formats, sheet);
        write_about(book, formats, sheet);
    } catch (...) {
        (void)workbook_close(book);
        throw;
    }
    if (const lxw_error status = workbook_close(book); status != LXW_NO_ERROR) {
        throw error(ErrorKind::internal, "the spreadsheet cannot be made: {}", lxw_strerror(status));
    }
    return scratch.content();
}

} // namespace clampbook::press
