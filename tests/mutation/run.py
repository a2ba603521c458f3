#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Breaks operators and numbers of the engine one at a time and asks whether a test turns red.

Works on a copy of the sources in build/mutation; the tests are the engine's own and the published figures. Prints what was not
noticed, and a score. Exit code 0: at least 95 of 100 were noticed; 1: fewer; 2: the list no longer fits the sources.

Usage: python3 tests/mutation/run.py [--only TEXT]     --only: those lines whose file or text holds TEXT
"""
import argparse
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
WORK = ROOT / "build/mutation"
COPY = WORK / "source"
BUILD = WORK / "build"
ENGINE = "src/clampbook/engine"
# The engine's own tests first: they are quick, and most of what breaks is noticed there.
TESTS = ["unit_engine_test", "published_test"]
AIM = 0.95


def mutations():
    for line in Path(__file__).with_name("engine.tsv").read_text().splitlines():
        if not line.startswith("#"):
            yield line.split("\t")


def ran(command, **more):
    return subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, **more)


def copied():
    """A copy of what git knows, so that a break never stands in anybody's sources."""
    shutil.rmtree(COPY, ignore_errors=True)
    for name in subprocess.check_output(["git", "ls-files", "-z"], cwd=ROOT, text=True).split("\0"):
        if name and (ROOT / name).is_file():
            (COPY / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(ROOT / name, COPY / name)  # as of now: what was built of the last break is older than that


def built(target):
    return ran(["cmake", "--build", str(BUILD), "--target", target])


def noticed():
    """What noticed the break: a test, the compiler, or nothing."""
    for test in TESTS:
        made = built(test)
        if made.returncode != 0:
            return "the compiler"
        try:
            if ran(["ctest", "--test-dir", str(BUILD), "-R", f"^{test}$", "--no-tests=error", "--timeout", "120"]).returncode != 0:
                return test
        except OSError as fault:
            sys.exit(f"run.py: {fault}")
    return None


def main():
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("--only", default="")
    told = asked.parse_args()
    copied()
    setup = ran(["cmake", "-S", str(COPY), "-B", str(BUILD), "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Debug", "-DCMAKE_CXX_FLAGS_DEBUG=-O0",
                 "-DCLAMPBOOK_TESTS=ON"])
    if setup.returncode != 0:
        sys.exit(setup.stdout)
    if what := noticed():
        sys.exit(f"run.py: the sources are red as they are: {what}")
    tally, survivors = {}, []
    for name, line, broken in mutations():
        if told.only not in name + line:
            continue
        path = COPY / ENGINE / name
        whole = path.read_text()
        lines = whole.split("\n")
        places = [i for i, text in enumerate(lines) if text.strip() == line]
        if len(places) != 1:
            print(f"run.py: {name} holds {len(places)} times: {line}", file=sys.stderr)
            sys.exit(2)
        lines[places[0]] = broken
        path.write_text("\n".join(lines))
        what = noticed()
        path.write_text(whole)
        tally[what] = tally.get(what, 0) + 1
        if what is None:
            survivors.append((name, line, broken))
            print(f"not noticed: {name}\n    {line}\n    {broken}", flush=True)
        elif what == "the compiler":
            print(f"does not compile: {name}\n    {broken}", flush=True)
    total = sum(tally.values())
    by_tests = sum(count for what, count in tally.items() if what in TESTS)
    print(f"{total} breaks, {by_tests} noticed: " + ", ".join(f"{count} by {what}" for what, count in sorted(tally.items(), key=str)))
    return 0 if total and by_tests >= AIM * total else 1


sys.exit(main())
