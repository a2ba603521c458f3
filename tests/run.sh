#!/bin/sh
# SPDX-License-Identifier: MIT
# All that must hold before a change is taken: layout, clang-tidy, the tests under the sanitizers, the tests of the
# contributors' build. Installs what is missing on a bare Debian 12; needs no network where nothing is. Stops at the first
# stage that fails. The last lines are CTest's own.
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

# A source that was clean stays unread until it changes, or the list of checks does.
tidy() {
    if [ -n "$(find .clang-tidy -newer build/tidy/clean 2>/dev/null || echo unread)" ]; then
        rm -rf build/tidy
    fi
    build tidy && touch build/tidy/clean
}

stage "installing what is missing" sh examples/install_packages.sh test
stage "the layout check" sh tests/format.sh
stage "clang-tidy" tidy
stage "the build with sanitizers" build asan-ubsan
stage "testing under the sanitizers" ctest --preset asan-ubsan --no-tests=error --parallel "$jobs"
stage "the contributors' build" build dev
echo "== the tests"
exec ctest --preset dev --no-tests=error --parallel "$jobs"
