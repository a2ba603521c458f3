// SPDX-License-Identifier: MIT
#include "clampbook/base/digest.hpp"

#include <nettle/base16.h>
#include <nettle/base64.h>
#include <nettle/sha2.h>

namespace clampbook {
namespace {

const unsigned char* bytes_of(std::string_view text) { return reinterpret_cast<const unsigned char*>(text.data()); }

} // namespace

struct Sha256::State {
    sha256_ctx context{};
};

Sha256::Sha256() : state_(std::make_unique<State>()) { sha256_init(&state_->context); }
Sha256::~Sha256() = default;

void Sha256::feed(std::string_view part) { sha256_update(&state_->context, part.size(), bytes_of(part)); }

Digest Sha256::digest() {
    Digest out{};
    sha256_digest(&state_->context, out.size(), out.data());
    return out;
}

Digest sha256(std::string_view text) {
    Sha256 hash;
    hash.feed(text);
    return hash.digest();
}

std::string hex_of(std::span<const unsigned char> bytes) {
    std::string out(BASE16_ENCODE_LENGTH(bytes.size()), '\0');
    base16_encode_update(out.data(), bytes.size(), bytes.data());
    return out;
}

std::string base64_of(std::span<const unsigned char> bytes) {
    std::string out(BASE64_ENCODE_RAW_LENGTH(bytes.size()), '\0');
    base64_encode_raw(out.data(), bytes.size(), bytes.data());
    return out;
}

std::string base64_of(std::string_view bytes) { return base64_of({bytes_of(bytes), bytes.size()}); }

} // namespace clampbook
