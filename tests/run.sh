#!/bin/sh
# SPDX-License-Identifier: MIT
# What must hold before a change is taken: layout, clang-tidy and cppcheck, the tests of the contributors' build with a short set of
# them under valgrind, then most of the tests under the address and undefined-behaviour sanitizers. (None of our code has threads:
# the sanitizer for those has nothing to look at.)
# Installs what is missing on a bare Debian 12; needs no network where nothing is. Stops at the first stage that fails. The
# last lines are CTest's own.
set -eu
cd "$(dirname "$0")/.."

jobs=2

stage() {
    title=$1
    shift
    echo "== $title"
    "$@" || {
        echo "tests/run.sh: $title failed." >&2
        exit 1
    }
}

build() {
    cmake --preset "$1" && cmake --build --preset "$1" --parallel "$jobs"
}

stage "installing what is missing" sh examples/install_packages.sh test
stage "the layout check" sh tests/format.sh
stage "the analysers" sh tests/analysers.sh
stage "the contributors' build" build dev
stage "the tests" ctest --preset dev --no-tests=error --parallel "$jobs"
stage "the sanitizers' build" build asan-ubsan
echo "== the tests under the sanitizers"
exec ctest --preset asan-ubsan --no-tests=error --parallel "$jobs"
