// SPDX-License-Identifier: MIT
#include "clampbook/exchange/csv.hpp"

#include "clampbook/base/text.hpp"

#include <csv.h>

#include <algorithm>
#include <exception>
#include <istream>
#include <utility>

namespace clampbook::exchange {
namespace {

// The parser is a C library that calls back; a C++ exception must not pass through it, so the first one waits here.
class Parser {
public:
    Parser(std::string_view name, const std::function<void(const CsvHeader&)>& on_header,
           const std::function<void(const CsvRow&)>& on_row, const OnFault& on_fault)
        : name_(name), on_header_(on_header), on_row_(on_row), on_fault_(on_fault) {
        if (csv_init(&parser_, CSV_STRICT | CSV_STRICT_FINI | CSV_APPEND_NULL) != 0) {
            throw error(ErrorKind::internal, "the CSV reader could not be set up");
        }
    }
    ~Parser() { csv_free(&parser_); }
    Parser(const Parser&) = delete;
    Parser& operator=(const Parser&) = delete;

    void line(std::string_view bytes) {
        ++line_;
        if (line_ == 1 && bytes.starts_with("\xEF\xBB\xBF")) {
            bytes.remove_prefix(3);
        }
        if (!in_row_ && trim(bytes).empty()) {
            return; // the parser passes over empty lines without a word
        }
        if (!in_row_) {
            row_start_ = line_;
            in_row_ = true;
        }
        if (!have_separator_) {
            have_separator_ = true;
            const auto count = [&](char c) { return std::ranges::count(bytes, c); };
            header_.separator = count(';') > count(',') ? ';' : ',';
            csv_set_delim(&parser_, static_cast<unsigned char>(header_.separator));
        }
        if (!is_utf8(bytes)) {
            throw error(ErrorKind::invalid_data, "{}:{}: the line is not UTF-8 text; save the file as UTF-8", name_, line_);
        }
        if (csv_parse(&parser_, bytes.data(), bytes.size(), &Parser::on_cell, &Parser::on_end, this) != bytes.size()) {
            rethrow();
            throw error(ErrorKind::invalid_data, "{}:{}: {}", name_, line_, csv_strerror(csv_error(&parser_)));
        }
        rethrow();
    }

    void finish() {
        if (csv_fini(&parser_, &Parser::on_cell, &Parser::on_end, this) != 0) {
            rethrow();
            throw error(ErrorKind::invalid_data, "{}:{}: a quote is open at the end of the file", name_, row_start_);
        }
        rethrow();
        if (!have_header_) {
            throw error(ErrorKind::invalid_data, "{}: the file holds no header line", name_);
        }
    }

private:
    static void on_cell(void* bytes, std::size_t size, void* self) noexcept {
        static_cast<Parser*>(self)->guard([&](Parser& p) {
            p.row_.line = p.row_start_;
            p.row_.cells.emplace_back(static_cast<const char*>(bytes), size);
        });
    }
    static void on_end(int /*terminator*/, void* self) noexcept {
        static_cast<Parser*>(self)->guard([](Parser& p) { p.end_row(); });
    }

    template <typename F>
    void guard(F&& body) noexcept {
        if (!fault_) {
            try {
                body(*this);
            } catch (...) {
                fault_ = std::current_exception();
            }
        }
    }
    void rethrow() {
        if (fault_) {
            std::rethrow_exception(std::exchange(fault_, nullptr));
        }
    }

    void end_row() {
        CsvRow row = std::move(row_);
        row_ = {};
        in_row_ = false;
        if (!have_header_) {
            take_header(row);
            return;
        }
        const bool empty = std::ranges::all_of(row.cells, [](const std::string& cell) { return trim(cell).empty(); });
        if (empty) {
            return;
        }
        if (row.cells.size() != header_.columns.size()) {
            const auto fault = [&] {
                return error(ErrorKind::invalid_data, "{}:{}: {} cells, where the header has {}", name_, row.line,
                             row.cells.size(), header_.columns.size());
            };
            if (!on_fault_) {
                throw fault();
            }
            on_fault_(fault());
            return;
        }
        on_row_(row);
    }

    void take_header(CsvRow& row) {
        for (std::string& cell : row.cells) {
            const std::string name{trim(cell)};
            if (name.empty()) {
                throw error(ErrorKind::invalid_data, "{}:{}: a column has no name", name_, row.line);
            }
            if (std::ranges::find(header_.columns, name) != header_.columns.end()) {
                throw error(ErrorKind::invalid_data, "{}:{}: the column '{}' stands twice", name_, row.line, name);
            }
            header_.columns.push_back(name);
        }
        have_header_ = true;
        on_header_(header_);
    }

    std::string name_;
    const std::function<void(const CsvHeader&)>& on_header_;
    const std::function<void(const CsvRow&)>& on_row_;
    const OnFault& on_fault_;
    csv_parser parser_{};
    CsvHeader header_;
    CsvRow row_;
    std::size_t line_ = 0;
    std::size_t row_start_ = 0; // a quoted cell may run over several lines
    bool in_row_ = false;
    bool have_separator_ = false;
    bool have_header_ = false;
    std::exception_ptr fault_;
};

} // namespace

std::size_t CsvHeader::at(std::string_view column, std::string_view file) const {
    const auto found = std::ranges::find(columns, column);
    if (found == columns.end()) {
        throw error(ErrorKind::invalid_data, "{}: the column '{}' is missing{}", file, column, did_you_mean(column, columns));
    }
    return static_cast<std::size_t>(found - columns.begin());
}

void read_csv(std::istream& in, std::string_view name, const std::function<void(const CsvHeader&)>& on_header,
              const std::function<void(const CsvRow&)>& on_row, const OnFault& on_fault) {
    Parser parser{name, on_header, on_row, on_fault};
    std::string line;
    while (std::getline(in, line)) {
        if (!in.eof()) {
            line += '\n';
        }
        parser.line(line);
    }
    if (in.bad()) {
        throw error(ErrorKind::invalid_data, "{}: the file could not be read to its end", name);
    }
    parser.finish();
}

CsvTable read_csv(std::istream& in, std::string_view name) {
    CsvTable table;
    read_csv(
        in, name, [&](const CsvHeader& header) { table.header = header; }, [&](const CsvRow& row) { table.rows.push_back(row); });
    return table;
}

} // namespace clampbook::exchange
