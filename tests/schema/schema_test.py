# SPDX-License-Identifier: MIT
"""Holds the JSON of every command against its schema in schema/json/v1.

usage: schema_test.py FOLDER_OF_CLAMPBOOK SOURCE_FOLDER
Each command of commands.txt is run with --json; its answer must fit the schema that it names. Then each schema is tried itself: it
must refuse an answer with a key taken out that it requires, and one with a key that nobody knows. A schema that no command used is a
fault too, and so is a command of the program without a line in commands.txt."""

import copy
import json
import os
import pathlib
import shlex
import subprocess
import sys
import tempfile

import jsonschema

program_folder, source = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve()
schemas = source / "schema/json/v1"
faults = []

store = {}
for path in sorted(schemas.glob("*.json")):
    schema = json.loads(path.read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    if schema["$id"] != path.name:
        faults.append(f"{path.name}: its $id is {schema['$id']}")
    store[path.name] = schema
validators = {name: jsonschema.Draft202012Validator(schema, resolver=jsonschema.RefResolver("", schema, store=store)) for name, schema in store.items()}


def schema_of(answer):
    name = answer.get("schema", "")
    parts = name.split("/")
    if len(parts) != 3 or parts[0] != "clampbook" or parts[2] != "v1":
        return None
    return f"{parts[1]}.schema.json"


def refuses(validator, answer):
    return not validator.is_valid(answer)


def try_schema(name, answer):
    validator = validators[name]
    for key in store[name].get("required", []):
        without = copy.deepcopy(answer)
        del without[key]
        if not refuses(validator, without):
            faults.append(f"{name}: takes an answer without '{key}'")
    stranger = copy.deepcopy(answer)
    stranger["nobody_knows"] = 1
    if not refuses(validator, stranger):
        faults.append(f"{name}: takes a key that nobody knows")
    other = copy.deepcopy(answer)
    other["schema"] = "clampbook/other/v1"
    if not refuses(validator, other):
        faults.append(f"{name}: takes another schema's name")


used, commands = {}, set()
with tempfile.TemporaryDirectory() as folder:
    environment = {"PATH": f"{program_folder}:{os.environ['PATH']}", "HOME": folder, "CLAMPBOOK_BY": "Lead", "LC_ALL": "C.UTF-8",
                   **{key: value for key, value in os.environ.items() if key.endswith("SAN_OPTIONS")}}
    (pathlib.Path(folder) / "rows.csv").write_text(
        "machine_maker,machine_model,assembly,joint,role,thread,property_class,tightening,label,entered_by\n"
        "maker one,Plough P,lift,stop screws,mount,M8,8.8,240 N·m,shop,Ann\n", encoding="utf-8")
    for line in (source / "tests/schema/commands.txt").read_text(encoding="utf-8").splitlines():
        if not line or line.startswith("#"):
            continue
        wanted, line = (int(line[0]), line[3:]) if line[1] == ":" else (0, line)
        words = shlex.split(line)
        commands.add(words[0])
        has_json = not (line.startswith(("demo ", "book new ", "book publish ", "complete ")) or " add " in line)
        needs_book = words[0] in {"source", "machine", "assembly", "joint", "enter", "check", "supersede", "withdraw", "history", "conflicts",
                                  "audit", "book", "doctor", "find", "import", "merge", "export", "sheet"} and "--book" not in words and line != "book new shop.db"
        ran = subprocess.run(["clampbook", *words, *(["--json"] if has_json else []), *(["--book", "shop.db"] if needs_book else [])],
                             cwd=folder, env=environment, capture_output=True, encoding="utf-8", check=False)
        if ran.returncode != wanted:
            faults.append(f"{line}: exit code {ran.returncode}: {ran.stderr.strip()}")
            continue
        if not has_json:
            continue
        answer = json.loads(ran.stdout)
        name = schema_of(answer)
        if name not in validators:
            faults.append(f"{line}: no schema for {answer.get('schema')!r}")
            continue
        if next(iter(answer)) != "schema":
            faults.append(f"{line}: the first key is not 'schema'")
        for fault in sorted(validators[name].iter_errors(answer), key=str)[:3]:
            faults.append(f"{line}: {'/'.join(map(str, fault.absolute_path))}: {fault.message[:300]}")
        used.setdefault(name, answer)

    # What the press is given, kept by a press that sets nothing.
    kept = pathlib.Path(folder) / "keeps_pages"
    kept.write_text("#!/bin/sh\nexec cat > pages.json\n", encoding="utf-8")
    kept.chmod(0o755)
    for line in ("teach all --answers --pdf out.pdf", "derive M8,M10 8.8 --friction 0.10..0.14:0.02 --pdf out.pdf"):
        subprocess.run(["clampbook", *shlex.split(line)], cwd=folder, env={**environment, "CLAMPBOOK_PRESS": str(kept)}, capture_output=True, check=True)
        pages = json.loads((pathlib.Path(folder) / "pages.json").read_text(encoding="utf-8"))
        for fault in sorted(validators["pages.schema.json"].iter_errors(pages), key=str)[:3]:
            faults.append(f"{line}: {'/'.join(map(str, fault.absolute_path))}: {fault.message[:300]}")
        used.setdefault("pages.schema.json", pages)

for name, answer in used.items():
    try_schema(name, answer)
for name in store:
    if name not in used and name != "common.schema.json":
        faults.append(f"{name}: no command of commands.txt answers in it")
help_text = subprocess.run([program_folder / "clampbook", "--help"], capture_output=True, encoding="utf-8", check=True).stdout
for line in help_text.splitlines():
    if line.startswith("  ") and line.split()[0] not in commands:
        faults.append(f"the command {line.split()[0]} has no line in commands.txt")

for fault in faults:
    print(f"schema_test.py: {fault}", file=sys.stderr)
print(f"{len(used)} schemas, {len(faults)} faults")
sys.exit(1 if faults else 0)
