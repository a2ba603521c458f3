# SPDX-License-Identifier: MIT
"""Lines that were executed, a floor a line, from what llvm-cov exports on standard input."""

import collections
import json
import sys

floors = collections.defaultdict(lambda: [0, 0])
for file in json.load(sys.stdin)["data"][0]["files"]:
    name = file["filename"]
    if "/src/" in name:
        parts = name.split("/src/")[-1].split("/")
        lines = file["summary"]["lines"]
        floor = floors[parts[1] if parts[0] == "clampbook" else parts[0]]
        floor[0] += lines["covered"]
        floor[1] += lines["count"]
for name, (covered, count) in sorted(floors.items()):
    if covered:
        print(f"   {name:10} {covered:5} of {count:5} lines, {100 * covered / count:.0f} %")
