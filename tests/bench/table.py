# SPDX-License-Identifier: MIT
"""The measurements of run.sh: pairs of commands by turns, medians of the wall clock by hyperfine, peak memory by the kernel.

Runs of a pair alternate, so that whatever else the machine does falls on both.
"""
import argparse
import json
import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

BUILD = Path("build/bench")
BOOKS = BUILD / "books"
PROGRAM = str((BUILD / "src/clampbook").resolve())
ROWS = BUILD / "tests/bench/bench_rows"
FIND_SQL = (
    "SELECT m.maker, m.model, a.name, j.name, j.thread, v.as_written, v.label, s.title, v.page FROM (SELECT rowid, bm25(joint_words, 2.0, "
    "4.0, 6.0, 3.0, 4.0, 1.0) AS weight FROM joint_words WHERE joint_words MATCH '{match}' ORDER BY weight, rowid LIMIT 20) w "
    "JOIN joint j ON j.id = w.rowid JOIN assembly a ON a.id = j.assembly JOIN machine m ON m.id = a.machine "
    "LEFT JOIN value v ON v.joint = j.id LEFT JOIN source s ON s.id = v.source ORDER BY w.weight, j.id, v.id"
)
EXPORT_SQL = (
    "SELECT m.maker, m.model, m.variant, a.name, j.name, j.role, j.count, j.thread, j.property_class, j.form, j.ring, j.housing, "
    "j.engagement_mm, CASE j.safety_critical WHEN 1 THEN 'yes' ELSE 'no' END, v.as_written, v.label, s.kind, s.title, s.number, s.edition, "
    "s.date, v.page, p.name, v.entered_on, j.note, v.note, v.confirmed FROM joint j JOIN assembly a ON a.id = j.assembly "
    "JOIN machine m ON m.id = a.machine LEFT JOIN value v ON v.joint = j.id AND NOT EXISTS (SELECT 1 FROM value_end e WHERE e.value = v.id) "
    "LEFT JOIN person p ON p.id = v.entered_by LEFT JOIN source s ON s.id = v.source ORDER BY m.folded, a.folded, j.folded, v.id"
)
# What the peer of the import makes: the rows as they are, and an index of the same words for as many joints (each has one maker's row).
IMPORT_SQL = """PRAGMA journal_mode = WAL;
PRAGMA synchronous = FULL;
CREATE TABLE value_row ({columns});
CREATE VIRTUAL TABLE words USING fts5 (machine, assembly, joint, role, thread, note, tokenize = 'unicode61', prefix = '2 3');
.mode csv
.import --skip 1 {rows} value_row
INSERT INTO words SELECT machine_maker || ' ' || machine_model || ' ' || machine_variant, assembly, joint, role, thread, note
FROM value_row WHERE label = 'maker';
"""


def quiet(command, stdin=None, **more):
    """Runs a command and shows what it says only where it fails."""
    ran = subprocess.run(command, stdin=stdin, stdout=subprocess.PIPE, stderr=subprocess.PIPE, **more)
    if ran.returncode != 0:
        sys.exit(f"{command}: exit {ran.returncode}: {ran.stderr.decode()}")
    return ran.stdout


def once(command, stdin=None):
    """Seconds that one run takes, its answer thrown away."""
    with open(stdin or os.devnull, "rb") as source, open(os.devnull, "wb") as nowhere, tempfile.TemporaryFile() as said:
        began = time.monotonic()
        child = subprocess.Popen(command, stdin=source, stdout=nowhere, stderr=said)
        code = child.wait()
        took = time.monotonic() - began
        if code != 0:
            said.seek(0)
            sys.exit(f"{command}: exit {code}: {said.read().decode()}")
    return took


def memory_of(command):
    """Peak memory (kB) of one run, asked of a small program that starts it: what this one takes would count for its children."""
    with tempfile.NamedTemporaryFile() as out:
        quiet(["/usr/bin/time", "-f", "%M", "-o", out.name, *command])
        return int(out.read())


def by_turns(ours, peer, runs, stdin=None):
    """Medians in seconds of two commands that take long enough for a clock."""
    pairs = [(once(ours, stdin), once(peer, stdin)) for _ in range(runs)]
    return [statistics.median(times) for times in zip(*pairs)]


def hyperfine(commands, runs):
    """Medians of several commands' wall clock in seconds, by turns in rounds of a few runs each."""
    times = [[] for _ in commands]
    rounds = max(1, runs // 5)
    for turn in range(rounds):
        order = list(range(len(commands)))
        if turn % 2:
            order.reverse()
        for i in order:
            with tempfile.NamedTemporaryFile(suffix=".json") as out:
                line = ["hyperfine", "-N", "--style", "none", "--warmup", "1", "--runs", str(min(runs, 5)), "--export-json", out.name]
                quiet(line + [commands[i]])
                times[i] += json.load(open(out.name))["results"][0]["times"]
    return [statistics.median(t) for t in times]


def shell(words):
    return " ".join("'" + w.replace("'", "'\\''") + "'" for w in words)


def book_of(values):
    """The book of a generated shop, made where it isn't there yet, and what making it took."""
    rows, book, took = (BOOKS / f"{values}.{end}" for end in ("csv", "db", "json"))
    if not rows.exists():
        with open(BOOKS / "draft.csv", "wb") as out:
            subprocess.run([ROWS, str(values)], stdout=out, check=True)
        os.rename(BOOKS / "draft.csv", rows)
    if not took.exists():
        fresh(book)
        began = time.monotonic()
        memory = memory_of([PROGRAM, "import", str(rows), "--book", str(book), "--by", "bench"])
        seconds = time.monotonic() - began
        took.write_text(json.dumps({"seconds": seconds, "kB": memory, "bytes": book.stat().st_size}))
    return rows, book, json.loads(took.read_text())


def fresh(book):
    for end in ("", "-wal", "-shm"):
        Path(f"{book}{end}").unlink(missing_ok=True)
    quiet([PROGRAM, "book", "new", str(book), "--by", "bench"])


def match_of(words):
    return " AND ".join(f'"{word}" *' for word in words)


class Table:
    def __init__(self):
        print(f"{'what':<58} {'clampbook':>12} {'peer':>12} {'ratio':>7}  aim")

    def row(self, what, ours, peers, aim, unit="ms"):
        scale = {"ms": 1000, "s": 1, "MB": 1 / 1000, "ns": 1}[unit]
        ratio = ours / peers
        print(f"{what:<58} {ours * scale:>9.2f} {unit:<2} {peers * scale:>9.2f} {unit:<2} {ratio:>7.2f}  {aim}{'' if ratio <= aim else '  MISSED'}",
              flush=True)

    def note(self, text):
        print("   " + text, flush=True)


def finds(table, runs):
    _, book, _ = book_of(1_000_000)
    for title, words in (("find, 1,000,000 values: three words, one rare", ["k4711", "front", "drain"]),
                         ("find, 1,000,000 values: three common words", ["carrier", "front", "drain"])):
        ours = [PROGRAM, "find", *words, "--book", str(book)]
        peer = ["sqlite3", str(book), FIND_SQL.format(match=match_of(words))]
        table.row(title, *hyperfine([shell(ours), shell(peer)], runs), 0.7)
        if "rare" in title:
            table.row("find, peak memory", memory_of(ours), memory_of(peer), 1.2, "MB")


def growth(table, runs, large):
    # Each of these machines is the one in its book whose name begins so: the words are as rare in each book.
    machines = {100_000: "k79", 1_000_000: "k799", 10_000_000: "k7999"}
    sizes = (100_000, 1_000_000) + ((10_000_000,) if large else ())
    commands, totals = [], []
    for size in sizes:
        _, book, _ = book_of(size)
        words = [PROGRAM, "find", machines[size], "transfer", "m18x1.5", "--book", str(book)]
        totals.append(json.loads(quiet(words + ["--json"]))["total"])
        commands.append(shell(words))
    if len(set(totals)) != 1 or totals[0] == 0:
        sys.exit(f"the words are not as rare in each book: {totals} joints have them")
    times = hyperfine(commands, runs)
    for size, took in zip(sizes[1:], times[1:]):
        table.row(f"find, {size:,} values against {sizes[0]:,}", took, times[0], 1.5)


def conversions(table, runs):
    table.row("convert against units -t",
              *hyperfine([shell([PROGRAM, "convert", "24 lbf·ft", "--to", "N·m"]), shell(["units", "-t", "24 lbf*ft", "N*m"])], runs), 0.3)
    lines = BOOKS / "quantities.txt"
    lines.write_text("".join(f"{(i % 5000) / 10 + 1:g} lbf·ft\n" for i in range(1_000_000)))
    ours, peer = [PROGRAM, "convert", "--batch", "--to", "N·m"], ["awk", "{ print $1 * 1.3558179483314004 }"]
    table.row("convert --batch, 1,000,000 lines, against awk", *by_turns(ours, peer, max(5, runs // 4), stdin=str(lines)), 0.5)


def tables_in_and_out(table, large):
    rows, book, _ = book_of(1_000_000)
    scratch, flat = BOOKS / "scratch.db", BOOKS / "flat.db"
    ours, peers, memory = [], [], 0
    with open(rows, encoding="utf-8") as head:
        columns = head.readline().strip()
    script = BOOKS / "flat.sql"
    script.write_text(IMPORT_SQL.format(columns=columns, rows=rows))
    for _ in range(3):
        fresh(scratch)
        began = time.monotonic()
        memory = memory_of([PROGRAM, "import", str(rows), "--book", str(scratch), "--by", "bench"])
        ours.append(time.monotonic() - began)
        for end in ("", "-wal", "-shm"):
            Path(f"{flat}{end}").unlink(missing_ok=True)
        peers.append(once(["sqlite3", str(flat)], stdin=str(script)))
    table.row("import of 1,000,000 rows against .import", statistics.median(ours), statistics.median(peers), 1.5, "s")
    table.row("import, peak memory against 64 MiB", memory, 65_536, 1.0, "MB")
    # The records themselves, joined, judged and hashed before: what the database takes to write them down.
    copies = []
    for _ in range(3):
        fresh(scratch)
        copy = BOOKS / "copy.sql"
        copy.write_text(f"ATTACH '{book}' AS s;\nBEGIN;\n" + "".join(
            f"INSERT INTO {t} SELECT * FROM s.{t};\n" for t in ("person", "source", "machine", "assembly", "joint", "value", "step")) +
            "INSERT INTO event SELECT * FROM s.event WHERE seq > 1;\nINSERT INTO joint_words (rowid, machine, assembly, joint, role, thread, note) "
            "SELECT rowid, machine, assembly, joint, role, thread, note FROM s.joint_words;\nCOMMIT;\n")
        copies.append(once(["sqlite3", str(scratch)], stdin=str(copy)))
    table.row("import against sqlite3 copying the same records", statistics.median(ours), statistics.median(copies), 1.5, "s")
    table.row("export --csv of 1,000,000 values against sqlite3 -csv",
              *by_turns([PROGRAM, "export", "--csv", "--book", str(book)], ["sqlite3", "-csv", str(book), EXPORT_SQL], 5), 1.0, "s")
    for end in ("", "-wal", "-shm"):
        Path(f"{scratch}{end}").unlink(missing_ok=True)
        Path(f"{flat}{end}").unlink(missing_ok=True)
    for size in (100_000, 1_000_000) + ((10_000_000,) if large else ()):
        _, _, took = book_of(size)
        table.note(f"{size:>10,} values: file {took['bytes'] / 1e6:,.0f} MB, import {took['seconds']:.1f} s with {took['kB'] / 1e3:.0f} MB")


def derivation(table):
    out = json.loads(quiet([str(BUILD / "tests/bench/derive_bench"), "--benchmark_format=json", "--benchmark_repetitions=9",
                            "--benchmark_enable_random_interleaving=true"]))
    runs = [r for r in out["benchmarks"] if r["run_type"] == "iteration"]
    median = {name: statistics.median(r["cpu_time"] for r in runs if r["name"] == name) for name in ("derive", "plain")}
    table.row("friction form, 64 derivations, against a plain loop", median["derive"], median["plain"], 1.3, "ns")
    table.note(f"allocations in all of it: {sum(r.get('allocations', 0) for r in runs):.0f}")


def sheets(table):
    _, book, _ = book_of(10_000)
    html, pdf = BOOKS / "sheet.html", BOOKS / "sheet.pdf"
    html.unlink(missing_ok=True)
    quiet([PROGRAM, "sheet", "--html", str(html), "--book", str(book)])
    ours, peers = [], []
    for _ in range(3):
        pdf.unlink(missing_ok=True)
        ours.append(once([PROGRAM, "sheet", "--pdf", str(pdf), "--book", str(book)]))
        peers.append(once(["chromium", "--headless", "--no-sandbox", "--disable-gpu", f"--print-to-pdf={(BOOKS / 'peer.pdf').resolve()}",
                           html.resolve().as_uri()]))
    table.row("sheet of 10,000 values as PDF against chromium", statistics.median(ours), statistics.median(peers), 0.2, "s")


def main():
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--runs", type=int, default=40, help="of each short command")
    asked.add_argument("--large", action="store_true", help="the book of 10,000,000 values too")
    asked.add_argument("--only", default="", help="the parts whose name begins so: conversions, derivation, finds, growth, sheets, tables")
    told = asked.parse_args()
    os.environ["LC_ALL"] = "C.UTF-8"
    BOOKS.mkdir(parents=True, exist_ok=True)
    table = Table()
    parts = {"conversions": lambda: conversions(table, told.runs), "derivation": lambda: derivation(table),
             "finds": lambda: finds(table, told.runs), "growth": lambda: growth(table, told.runs, told.large),
             "sheets": lambda: sheets(table), "tables": lambda: tables_in_and_out(table, told.large)}
    for name, part in parts.items():
        if name.startswith(told.only):
            part()


main()
