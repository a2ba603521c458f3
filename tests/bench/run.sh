#!/bin/sh
# SPDX-License-Identifier: MIT
# Measures everything that tests/bench/README.md speaks of, and prints one table: a row a measurement, clampbook beside its peer in the
# same run. Installs what it needs; makes its books in build/bench/books and keeps them.
# Usage: run.sh [--runs N] [--only PART] [--large]     --large adds the book of 10,000,000 values: half an hour and 15 GB more
set -eu
cd "$(dirname "$0")/../.."

sh examples/install_packages.sh bench >&2
cmake --preset bench >&2
cmake --build --preset bench --target clampbook_program clampbook_press bench_rows derive_bench >&2
exec python3 tests/bench/table.py "$@"
