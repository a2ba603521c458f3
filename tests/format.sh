#!/bin/sh
# SPDX-License-Identifier: MIT
# Checks that the sources are laid out as .clang-format says; with --fix, lays them out so.
#
# clang-format takes `in` for a keyword and so `q.in(newton) * d` for a cast of `*d`, which it writes `q.in(newton)*d`. The
# blanks are put back here.
set -eu
cd "$(dirname "$0")/.."

case "${1-}" in
"") fix=false ;;
--fix) fix=true ;;
*)
    echo "usage: format.sh [--fix]" >&2
    exit 2
    ;;
esac

# Other versions lay out a little differently.
tool=clang-format-14
if ! command -v "$tool" >/dev/null; then
    echo "format.sh: $tool is not installed" >&2
    exit 1
fi

scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
find src tests \( -name '*.hpp' -o -name '*.cpp' \) | sort >"$scratch/files"
if [ ! -s "$scratch/files" ]; then
    echo "format.sh: no sources found" >&2
    exit 1
fi

wrong=0
while read -r file; do
    "$tool" --style=file "$file" >"$scratch/raw"
    sed 's/\.in(\([A-Za-z0-9_:]*\))\([*&-]\)\([A-Za-z0-9_]\)/.in(\1) \2 \3/g' "$scratch/raw" >"$scratch/laid_out"
    if cmp -s "$file" "$scratch/laid_out"; then
        continue
    fi
    if $fix; then
        cat "$scratch/laid_out" >"$file"
        echo "$file: laid out"
    else
        diff -u --label "$file" --label "laid out" "$file" "$scratch/laid_out" || true
        wrong=$((wrong + 1))
    fi
done <"$scratch/files"

if [ "$wrong" -ne 0 ]; then
    echo "format.sh: $wrong files are laid out otherwise; 'sh tests/format.sh --fix' puts them right" >&2
    exit 1
fi
