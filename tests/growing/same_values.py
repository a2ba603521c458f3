# SPDX-License-Identifier: MIT
"""Holds the rows that PostgreSQL gives against the JSON export of the same book: every current value and none else, letter for letter,
and the torque in N·m where the text is a plain one in a single unit. usage: same_values.py EXPORT.json TABLE.csv"""

import csv
import json
import re
import sys

# 1 lbf = 4.4482216152605 N, 1 ft = 0.3048 m, 1 in = 0.0254 m (NIST SP 811, appendix B.8: exact)
FACTORS = {"N·m": 1.0, "lbf·ft": 4.4482216152605 * 0.3048, "lbf·in": 4.4482216152605 * 0.0254, "kgf·m": 9.80665}

with open(sys.argv[1], encoding="utf-8") as file:
    book = json.load(file)
sources = {(s["title"], s["number"], s["edition"]): s for s in book["sources"]}


def line(names):
    if names is None:
        return ""
    source = sources[names["title"], names["number"], names["edition"]]
    return ", ".join(part for part in (source["title"], source["number"], source["edition"] and "edition " + source["edition"], source["date"]) if part)


wanted = []
for joint in book["joints"]:
    machine = joint["machine"]
    for value in joint["values"]:
        if value["end"] is None:
            check = value["check"] or {"by": "", "on": ""}
            wanted.append((machine["maker"], ", ".join(part for part in (machine["model"], machine["variant"]) if part), joint["assembly"], joint["name"],
                           str(joint["count"]), joint["thread"], "t" if joint["safety_critical"] else "f", value["as_written"], value["label"],
                           line(value["source"]), value["page"], value["entered_by"], value["entered_on"], check["by"], check["on"]))
found, computed, turned = [], 0, 0
with open(sys.argv[2], encoding="utf-8", newline="") as file:
    for row in csv.DictReader(file):
        torque, angle = row.pop("newton_metres"), row.pop("angle")
        found.append(tuple(row.values()))
        plain = re.fullmatch(r"([0-9.]+) (N·m|lbf·ft|lbf·in|kgf·m)", row["tightening"])
        if plain:
            computed += 1
            meant = float(plain[1]) * FACTORS[plain[2]]
            if abs(float(torque) - meant) > 1e-9 * meant or angle:
                sys.exit(f"{row['tightening']} is {torque} N·m in the table, not {meant}")
        turn = re.search(r"([0-9]+)°$", row["tightening"])
        if turn:
            turned += 1
            if float(angle) != float(turn[1]):
                sys.exit(f"{row['tightening']} turns by {angle}° in the table")
if sorted(wanted) != sorted(found):
    sys.exit(f"missing: {sorted(set(wanted) - set(found))[:3]}\nfound instead: {sorted(set(found) - set(wanted))[:3]}")
if len(found) < 100 or computed < 50 or turned < 2:
    sys.exit(f"too little to compare: {len(found)} values, {computed} torques, {turned} angles")
