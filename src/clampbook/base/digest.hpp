// SPDX-License-Identifier: MIT
#pragma once

// SHA-256 (FIPS 180-4), and bytes as text: hexadecimal and base64 (RFC 4648, clauses 8 and 4).

#include <array>
#include <memory>
#include <span>
#include <string>
#include <string_view>

namespace clampbook {

using Digest = std::array<unsigned char, 32>;

/// The digest of what is fed, part after part.
class Sha256 {
public:
    Sha256();
    ~Sha256();
    Sha256(const Sha256&) = delete;
    Sha256& operator=(const Sha256&) = delete;
    Sha256(Sha256&&) = delete;
    Sha256& operator=(Sha256&&) = delete;

    void feed(std::string_view part);
    /// Of all that was fed; begins anew.
    [[nodiscard]] Digest digest();

private:
    struct State;
    std::unique_ptr<State> state_;
};

[[nodiscard]] Digest sha256(std::string_view text);

/// Two digits a byte, in small letters.
[[nodiscard]] std::string hex_of(std::span<const unsigned char> bytes);

/// With the closing equals signs.
[[nodiscard]] std::string base64_of(std::span<const unsigned char> bytes);
[[nodiscard]] std::string base64_of(std::string_view bytes);

} // namespace clampbook
