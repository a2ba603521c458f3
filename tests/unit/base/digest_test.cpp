// SPDX-License-Identifier: MIT
#include "clampbook/base/digest.hpp"

#include <catch2/catch.hpp>

using namespace clampbook;

// Source: NIST, "Cryptographic Standards and Guidelines: Examples with Intermediate Values", SHA-256, and FIPS 180-2 appendix B.3 for
// a million times 'a'.
TEST_CASE("SHA-256 of the published examples") {
    CHECK(hex_of(sha256("abc")) == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(hex_of(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")) ==
          "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(hex_of(sha256(std::string(1'000'000, 'a'))) == "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("what is fed in parts has the digest of the whole, and then it begins anew") {
    Sha256 hash;
    for (const char* part : {"abcdbcdecdefdefgefghfghighijhijkijk", "", "ljklmklmnlmnomnopnopq"}) {
        hash.feed(part);
    }
    CHECK(hex_of(hash.digest()) == "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    hash.feed("abc");
    CHECK(hash.digest() == sha256("abc"));
}

// Source: RFC 4648, clause 10.
TEST_CASE("base64 of the published examples") {
    CHECK(base64_of("").empty());
    CHECK(base64_of("f") == "Zg==");
    CHECK(base64_of("fo") == "Zm8=");
    CHECK(base64_of("foo") == "Zm9v");
    CHECK(base64_of("foob") == "Zm9vYg==");
    CHECK(base64_of("fooba") == "Zm9vYmE=");
    CHECK(base64_of("foobar") == "Zm9vYmFy");
}
