#!/bin/sh
# SPDX-License-Identifier: MIT
# The analysers that read the sources: clang-tidy, as .clang-tidy asks, and cppcheck. Nothing is built; each floor is read as one file,
# which takes a tenth of the time that its files take one by one. (bugprone-suspicious-include is off for that alone.)
# Usage: sh tests/analysers.sh
set -eu
cd "$(dirname "$0")/.."

folder=build/tidy
log=$folder/analysers.log
mkdir -p "$folder"
cmake --preset tidy >"$log" 2>&1 || { cat "$log" >&2; exit 1; }
# What the sources include of what is built: nothing but the path of the curated database.
python3 - "$folder/compile_commands.json" >"$folder/files" <<'END'
import json
import sys

for command in json.load(open(sys.argv[1])):
    if "verify_interface_header_sets" not in command["file"]:
        print(command["file"])
END
[ "$(wc -l <"$folder/files")" -ge 20 ] || { echo "analysers.sh: there are only $(wc -l <"$folder/files") files to read" >&2; exit 1; }
xargs -P 2 -n 1 clang-tidy --quiet --warnings-as-errors='*' --checks=-bugprone-suspicious-include -p "$folder" <"$folder/files" \
    >"$log" 2>"$log.errors" || {
    grep -hE 'error:|warning:' "$log" "$log.errors" >&2
    echo "analysers.sh: clang-tidy found something; all of it is in $log" >&2
    exit 1
}
cppcheck --enable=warning,performance,portability --std=c++20 --inline-suppr --quiet --error-exitcode=1 -j 2 -I src \
    --suppressions-list=tests/cppcheck.txt src/clampbook src/cli src/press src/refbuild src/manual
