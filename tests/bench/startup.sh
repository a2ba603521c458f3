#!/bin/sh
# SPDX-License-Identifier: MIT
# Measures how fast a lookup and a million draws are beside the sqlite3 program, in a release build. Exit 1 where it is slower.
set -eu
cd "$(dirname "$0")/../.."

cmake --preset bench >&2
cmake --build --preset bench --target startup_bench clampbook_program >&2
# Run apart from the build, so that the exit code is the bench's own.
exec build/bench/tests/bench/startup_bench build/bench/src/clampbook "$(command -v sqlite3)" "$@"
