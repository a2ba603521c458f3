// SPDX-License-Identifier: MIT
#pragma once

// Cells of tables that other programs read: quoted as RFC 4180 has it, and so that no spreadsheet runs one as a formula.

#include <string>
#include <string_view>

namespace clampbook {

/// One cell of a CSV file (RFC 4180): quoted where it holds a separator, a quote or a line end, or
/// begins or ends with a blank.
[[nodiscard]] std::string csv_cell(std::string_view text);
/// The same at the end of `out`.
void append_csv_cell(std::string& out, std::string_view text);

/// `text` as a spreadsheet may be given it: what it would run as a formula (a first character = + - @, wide forms too) gets an apostrophe in front,
/// and so does what has apostrophes before such a character, so that `from_spreadsheet_text` gives each text back as it was.
[[nodiscard]] std::string spreadsheet_text(std::string_view text);
[[nodiscard]] std::string from_spreadsheet_text(std::string_view text);

} // namespace clampbook
