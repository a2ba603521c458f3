#!/bin/sh
# SPDX-License-Identifier: MIT
# How much of the floors the tests run: lines and branches, by gcovr. Branches are those of our own lines; the ones that a compiler adds
# for what might be thrown are left out. Usage: sh tests/coverage.sh [--report]     --report: of a build whose tests have run already
set -eu
cd "$(dirname "$0")/.."

command -v gcovr >/dev/null || { echo "coverage.sh: gcovr is not installed: apt-get install gcovr" >&2; exit 1; }
if [ "${1-}" != --report ]; then
    cmake --preset coverage
    cmake --build --preset coverage --parallel 2
    ctest --preset coverage --parallel 2 -E 'browser|install|examples|growing|full_disk|published_share|read_only_disk'
fi
# floor FOLDER LINES BRANCHES: what is wanted of it, in percent.
failed=0
# (Those three forbid the very writing that counts.)
floor() {
    echo "== $1"
    gcovr --root . --filter "src/clampbook/$1/" --exclude-throw-branches --exclude-unreachable-branches --print-summary \
        --fail-under-line "$2" --fail-under-branch "$3" --json "build/coverage/$1.json" build/coverage/src |
        grep -E '^(lines|branches):' || failed=1
    gcovr --add-tracefile "build/coverage/$1.json" --root . --fail-under-line "$2" --fail-under-branch "$3" >/dev/null 2>&1 || failed=1
}
floor units 95 90
floor engine 95 90
floor book 95 90
exit "$failed"
