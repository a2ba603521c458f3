// SPDX-License-Identifier: MIT
#pragma once

// Rows of a CSV file (RFC 4180, UTF-8, with or without BOM, LF or CRLF), each with the line it began on, so that every
// message can say file and line. The separator is a comma, or a semicolon where the header line says so; a semicolon
// file may write its numbers with a decimal comma.

#include "clampbook/base/error.hpp"

#include <cstddef>
#include <functional>
#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

namespace clampbook::exchange {

struct CsvRow {
    std::size_t line = 0; ///< of the file, counted from 1, where the row begins
    std::vector<std::string> cells;
};

struct CsvHeader {
    std::vector<std::string> columns; ///< white space at the ends taken off
    char separator = ',';

    /// Position of a column. Throws invalid_data naming the file and the column where it is missing.
    [[nodiscard]] std::size_t at(std::string_view column, std::string_view file) const;
};

/// What becomes of a row that cannot be read while those after it can.
using OnFault = std::function<void(const Error&)>;

/// Reads rows one after the other without keeping them. `on_header` is called once, then `on_row` for each further row
/// that is not wholly empty. Throws invalid_data naming `name` and the line: no header, a column named twice, a row
/// with another number of cells than the header, bytes that are not UTF-8, an open quote at the end; io errors of the
/// stream too. Where `on_fault` is given, a row with a wrong number of cells goes there instead.
void read_csv(std::istream& in, std::string_view name, const std::function<void(const CsvHeader&)>& on_header,
              const std::function<void(const CsvRow&)>& on_row, const OnFault& on_fault = {});

/// A whole file of moderate size.
struct CsvTable {
    CsvHeader header;
    std::vector<CsvRow> rows;
};
[[nodiscard]] CsvTable read_csv(std::istream& in, std::string_view name);

} // namespace clampbook::exchange
