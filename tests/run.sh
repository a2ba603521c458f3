#!/bin/sh
# SPDX-License-Identifier: MIT
# All that must hold before a change is taken: layout, the tests under the sanitizers, the tests of the contributors' build.
# Installs what is missing on a bare Debian 12; needs no network where nothing is. Stops at the first stage that fails. The
# last lines are CTest's own. (clang-tidy takes longer than all of this together: it has a preset of its own, tidy.)
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
stage "the build with sanitizers" build asan-ubsan
stage "testing under the sanitizers" ctest --preset asan-ubsan --no-tests=error --parallel "$jobs"
stage "the contributors' build" build dev
echo "== the tests"
exec ctest --preset dev --no-tests=error --parallel "$jobs"
