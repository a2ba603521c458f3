# SPDX-License-Identifier: MIT
"""Runs every "try this" command of every lesson, as it stands, by a shell in an empty folder.

usage: commands.py FOLDER_OF_CLAMPBOOK
Each must answer with exit code 0 and say something; nothing may stand on standard error."""

import json
import os
import subprocess
import sys
import tempfile

faults, ran = [], 0
with tempfile.TemporaryDirectory() as folder:
    environment = {**os.environ, "PATH": sys.argv[1] + ":" + os.environ["PATH"], "HOME": folder}
    everything = subprocess.run(["clampbook", "teach", "all", "--json"], env=environment, capture_output=True, encoding="utf-8", check=True)
    for lesson in json.loads(everything.stdout)["lessons"]:
        for entry in lesson["try"]:
            done = subprocess.run(["/bin/sh", "-c", entry["command"]], cwd=folder, env=environment, capture_output=True, encoding="utf-8", check=False)
            ran += 1
            if done.returncode != 0 or done.stderr or not done.stdout:
                faults.append(f"{lesson['lesson']}: {entry['command']}: exit code {done.returncode}, {done.stderr.strip()!r}")
for fault in faults:
    print(f"commands.py: {fault}", file=sys.stderr)
print(f"{ran} commands, {len(faults)} faults")
sys.exit(1 if faults or ran < 27 else 0)
