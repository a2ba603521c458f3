// SPDX-License-Identifier: MIT
#pragma once

// What the JSON forms of this floor share: the library's type for them among it. Not installed.

#include "clampbook/answer/document.hpp"
#include "clampbook/answer/pages.hpp"

#include <nlohmann/json.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace clampbook::present {

using Json = nlohmann::ordered_json;

/// `derive` as "clampbook/derive/v1".
[[nodiscard]] std::string schema_name(std::string_view command);

[[nodiscard]] Json json_of(const answer::Figure& figure);
[[nodiscard]] Json json_of(const std::vector<Caution>& cautions);
[[nodiscard]] Json json_of(const answer::Chart& chart);

/// The text of it, with a line end. Throws internal where it can't be written.
[[nodiscard]] std::string finished(const Json& out, bool compact = false);

} // namespace clampbook::present
