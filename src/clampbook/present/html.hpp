// SPDX-License-Identifier: MIT
#pragma once

// What the HTML forms of this floor share. Not installed.

#include <string>
#include <string_view>

namespace clampbook::present {

/// Text that stays text, in an element or between quotes.
[[nodiscard]] std::string escaped(std::string_view text);

/// "'sha256-…'" of an inline style or script, as a security policy names it. Throws internal where the hash can't be made.
[[nodiscard]] std::string hash_of(std::string_view text);

/// The bytes as a `data:` address of this type.
[[nodiscard]] std::string data_address(std::string_view type, std::string_view bytes);

} // namespace clampbook::present
