// SPDX-License-Identifier: MIT
#pragma once

// Reading JSON strictly: what is missing or of another kind than expected is told with the path that leads to it.

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <nlohmann/json.hpp>

#include <cmath>
#include <cstdint>
#include <istream>
#include <string>
#include <string_view>
#include <utility>

namespace clampbook::press {

using Json = nlohmann::json;

/// Nothing on paper is larger, and what is reckoned from it for a drawing stays finite.
inline constexpr double k_largest = 1e12;

// A part of the document with the path that leads to it, for messages.
class Part {
public:
    Part(const Json& json, std::string path) : json_(json), path_(std::move(path)) {}

    [[nodiscard]] Part at(const char* key) const {
        if (!json_.is_object()) {
            throw wrong("an object");
        }
        const auto found = json_.find(key);
        if (found == json_.end()) {
            throw error(ErrorKind::invalid_data, "'{}' is missing", path_.empty() ? key : path_ + "." + key);
        }
        return {*found, path_.empty() ? key : path_ + "." + key};
    }
    [[nodiscard]] std::string text(const char* key) const { return at(key).text(); }
    [[nodiscard]] std::string text_or_nothing(const char* key) const { return json_.contains(key) ? text(key) : std::string{}; }
    [[nodiscard]] std::int64_t whole(const char* key) const {
        const Part part = at(key);
        if (!part.json_.is_number_integer()) {
            throw part.wrong("a whole number");
        }
        return part.json_.get<std::int64_t>();
    }
    [[nodiscard]] bool yes(const char* key) const {
        const Part part = at(key);
        if (!part.json_.is_boolean()) {
            throw part.wrong("true or false");
        }
        return part.json_.get<bool>();
    }
    [[nodiscard]] double number(const char* key) const { return at(key).number(); }
    [[nodiscard]] double quantity(const char* key) const { return at(key).number("value"); }
    [[nodiscard]] double number() const {
        if (!json_.is_number()) {
            throw wrong("a number");
        }
        const double value = json_.get<double>();
        if (!(std::abs(value) <= k_largest)) {
            throw wrong("a number between -1e12 and 1e12");
        }
        return value;
    }
    [[nodiscard]] std::string text() const {
        if (!json_.is_string()) {
            throw wrong("a text");
        }
        return printable(json_.get_ref<const std::string&>());
    }
    [[nodiscard]] bool has(const char* key) const { return json_.is_object() && json_.contains(key); }
    [[nodiscard]] bool is_null() const { return json_.is_null(); }
    template <typename F>
    void each(const char* key, F&& body) const {
        at(key).each(std::forward<F>(body));
    }
    template <typename F>
    void each(F&& body) const {
        if (!json_.is_array()) {
            throw wrong("a list");
        }
        for (std::size_t i = 0; i < json_.size(); ++i) {
            body(Part{json_[i], fmt::format("{}[{}]", path_, i)});
        }
    }
    /// One of these words, by its place among them.
    template <typename Words>
    [[nodiscard]] std::size_t choice(const char* key, const Words& words) const {
        const std::string word = text(key);
        for (std::size_t i = 0; i < words.size(); ++i) {
            if (word == words[i]) {
                return i;
            }
        }
        throw error(ErrorKind::invalid_data, "'{}' is '{}', which the press doesn't know", at(key).path_, word);
    }

private:
    [[nodiscard]] Error wrong(const char* expected) const {
        return error(ErrorKind::invalid_data, "'{}' must be {}", path_.empty() ? "the whole" : path_, expected);
    }
    const Json& json_;
    std::string path_;
};

/// Throws invalid_data with line and column where it is no JSON.
inline Json parsed(std::istream& in) {
    try {
        return Json::parse(in);
    } catch (const Json::exception& fault) { // a number out of range is no parse_error
        std::string words = fault.what();
        const std::size_t at = words.find("line ");
        throw error(ErrorKind::invalid_data, "what stands on standard input is no JSON: {}",
                    at == std::string::npos ? words : words.substr(at));
    }
}

} // namespace clampbook::press
