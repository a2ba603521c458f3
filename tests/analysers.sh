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
# Targets that are read as one file: most of the time goes into headers. What they include of what is built is a path, nothing more.
python3 - "$folder" >"$folder/files" <<'END'
import json
import os
import re
import shlex
import sys

TOGETHER = [
    "clampbook_base clampbook_units clampbook_model clampbook_engine clampbook_exchange",
    "clampbook_press_lib clampbook_press",
    "clampbook_cli clampbook_manual_lib clampbook_program",
    "clampbook_refbuild_lib refbuild",
]
folder = os.path.join(os.path.abspath(sys.argv[1]), "together")
os.makedirs(folder, exist_ok=True)
groups = {}
for command in json.load(open(os.path.join(sys.argv[1], "compile_commands.json"))):
    if "verify_interface_header_sets" in command["file"] or command["file"].endswith(".S"):
        continue
    target = re.search(r"CMakeFiles/([^/]+)\.dir/", command["command"]).group(1)
    name = next((names.split()[0] for names in TOGETHER if target in names.split()), target)
    words = shlex.split(command["command"].replace("-isystem ", "-isystem"))
    groups.setdefault(name, []).append((command["file"], words))
commands = []
for name, parts in sorted(groups.items(), key=lambda group: -len(group[1])): # the longest first
    source = os.path.join(folder, name + ".cxx")
    with open(source, "w") as out:
        out.writelines(f'#include "{file}"\n' for file, _ in parts)
    # What one part is compiled with and another isn't, is harmless to the other: paths and names.
    options = list(dict.fromkeys(word for _, words in parts for word in words[1:words.index("-o")]))
    commands.append({"directory": folder, "file": source, "arguments": ["c++", *options, "-c", source]})
    print(source)
json.dump(commands, open(os.path.join(folder, "compile_commands.json"), "w"))
END
[ "$(wc -l <"$folder/files")" -ge 10 ] || { echo "analysers.sh: there are only $(wc -l <"$folder/files") files to read" >&2; exit 1; }
xargs -P 2 -n 1 clang-tidy --quiet --warnings-as-errors='*' --checks=-bugprone-suspicious-include -p "$folder/together" <"$folder/files" \
    >"$log" 2>"$log.errors" || {
    grep -hE 'error:|warning:' "$log" "$log.errors" >&2
    echo "analysers.sh: clang-tidy found something; all of it is in $log" >&2
    exit 1
}
cppcheck --enable=warning,performance,portability --std=c++20 --inline-suppr --quiet --error-exitcode=1 -j 2 -I src \
    --suppressions-list=tests/cppcheck.txt src/clampbook src/cli src/press src/refbuild src/manual
