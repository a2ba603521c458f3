#!/bin/sh
# SPDX-License-Identifier: MIT
# From a fresh checkout to first answers: installs what the build needs (Debian 12), builds, fills a scratch book with the
# invented demo machines and asks three questions. Run it as often as you like: everything it writes lies in build/.
set -eu
cd "$(dirname "$0")/.."

show() {
    echo
    echo "\$ $*"
    "$@"
}

echo "1. What the build needs"
sh examples/install_packages.sh build

echo "2. Building into build/release"
mkdir -p build
cmake --preset release >build/quickstart.log 2>&1 || { cat build/quickstart.log >&2; exit 1; }
cmake --build --preset release --parallel 2
PATH=$PWD/build/release/src:$PATH

echo "3. A scratch book, build/quickstart/book.db, with the demo in it (invented machines, labelled so)"
rm -rf build/quickstart
mkdir -p build/quickstart
CLAMPBOOK_BOOK=build/quickstart/book.db
export PATH CLAMPBOOK_BOOK
show clampbook demo "$CLAMPBOOK_BOOK"

echo
echo "4. Three questions: a value of the book, a conversion, a generic value with its sources"
show clampbook find carrier a front axle drain plug
show clampbook convert "24 lbf·ft" --to N·m
show clampbook derive M10 8.8 --nut-factor 0.20 --preload 75%

echo
echo "The program is build/release/src/clampbook; 'clampbook --help' lists what else it does."
