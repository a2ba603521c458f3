#!/bin/sh
# SPDX-License-Identifier: MIT
# Installs the build into a prefix of its own, builds a small program against what was installed, and looks at what it prints.
# Usage: install_test.sh CMAKE BUILD CONSUMER SCRATCH CXX
set -eu

if [ $# -ne 5 ]; then
    echo "usage: install_test.sh CMAKE BUILD CONSUMER SCRATCH CXX" >&2
    exit 2
fi
cmake=$1
build=$2
consumer=$3
scratch=$4
cxx=$5

fail() {
    echo "install_test: $1" >&2
    exit 1
}

rm -rf "$scratch"
mkdir -p "$scratch"
"$cmake" --install "$build" --prefix "$scratch/prefix" >"$scratch/install.log" || fail "the installation fails"

# Private headers stay behind.
if find "$scratch/prefix" -name 'impl.hpp' | grep -q .; then
    fail "a private header was installed"
fi

"$cmake" -S "$consumer" -B "$scratch/build" -G Ninja -DCMAKE_PREFIX_PATH="$scratch/prefix" -DCMAKE_CXX_COMPILER="$cxx" \
    -DCMAKE_BUILD_TYPE=Release || fail "the consumer cannot be configured"
"$cmake" --build "$scratch/build" || fail "the consumer cannot be built"

# 0.20 × 0.75 × 580 MPa × π/4 × (10 mm − 0.9381945 × 1.5 mm)² × 10 mm: ISO 898-1 clause 9.1.6.1 and table 3.
wanted="M10 8.8: 50.45 N·m"
got=$("$scratch/build/consumer") || fail "the consumer fails"
[ "$got" = "$wanted" ] || fail "the consumer prints '$got', not '$wanted'"
echo "$got"
