// SPDX-License-Identifier: MIT
#include "clampbook/model/ring.hpp"

#include "support.hpp"

#include <catch2/catch.hpp>

using namespace clampbook;
using unit_tests::refusal;

TEST_CASE("rings as people write them") {
    CHECK(read_ring("copper").material == "copper");
    CHECK_FALSE(read_ring(" o-ring ").size);
    CHECK(read_ring(" o-ring ").material == "o-ring");
    for (const char* text : {"copper 18x24", "copper 18 × 24", "copper  18*24", "copper18x24", "copper 18.0x24"}) {
        INFO(text);
        const RingName ring = read_ring(text);
        CHECK(ring.material == "copper");
        REQUIRE(ring.size);
        CHECK(ring.size->inner == 18.0 * millimetre);
        CHECK(ring.size->outer == 24.0 * millimetre);
        CHECK_FALSE(ring.size->thickness);
    }
    const RingName thick = read_ring("Cu 18x24 x 1,5");
    CHECK(thick.size->thickness == 1.5 * millimetre);
    CHECK(thick.size->text == "18×24×1,5");
}

TEST_CASE("what is no ring") {
    for (const char* text : {"copper 18", "copper 18x", "copper 18x22x1x2", "copper 0x22", "copper 18x22 bent", "copper 18-22"}) {
        INFO(text);
        CHECK(refusal(ErrorKind::usage, [&] { return read_ring(text).material; }) ==
              "'" + std::string{text} + "' is no ring; a ring is written like 'copper' or 'copper 18x24'");
    }
    CHECK(refusal(ErrorKind::usage, [] { return read_ring("copper 24x18").material; }) ==
          "'copper 24x18' is no ring: its outer diameter must be larger than its inner one");
    CHECK(refusal(ErrorKind::usage, [] { return read_ring("copper 18x18").material; }) != "accepted");
}
