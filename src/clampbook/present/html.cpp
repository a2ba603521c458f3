// SPDX-License-Identifier: MIT
#include "clampbook/present/html.hpp"

#include "clampbook/base/error.hpp"

#include <sodium.h>

#include <array>

namespace clampbook::present {

std::string escaped(std::string_view text) {
    std::string out;
    for (const char c : text) {
        switch (c) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        case '"':
            out += "&quot;";
            break;
        case '\'':
            out += "&#39;";
            break;
        default:
            out += c;
        }
    }
    return out;
}

std::string hash_of(std::string_view text) {
    if (sodium_init() < 0) {
        throw error(ErrorKind::internal, "the hash library could not be set up");
    }
    std::array<unsigned char, crypto_hash_sha256_BYTES> digest{};
    crypto_hash_sha256(digest.data(), reinterpret_cast<const unsigned char*>(text.data()), text.size());
    std::array<char, sodium_base64_ENCODED_LEN(crypto_hash_sha256_BYTES, sodium_base64_VARIANT_ORIGINAL)> base64{};
    sodium_bin2base64(base64.data(), base64.size(), digest.data(), digest.size(), sodium_base64_VARIANT_ORIGINAL);
    return std::string{"'sha256-"} + base64.data() + "'";
}

std::string data_address(std::string_view type, std::string_view bytes) {
    std::string base64(sodium_base64_encoded_len(bytes.size(), sodium_base64_VARIANT_ORIGINAL), '\0');
    sodium_bin2base64(base64.data(), base64.size(), reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size(),
                      sodium_base64_VARIANT_ORIGINAL);
    base64.pop_back(); // the closing zero
    return "data:" + std::string{type} + ";base64," + base64;
}

} // namespace clampbook::present
