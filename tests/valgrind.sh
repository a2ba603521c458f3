#!/bin/sh
# SPDX-License-Identifier: MIT
# The short set of tests under valgrind: what reads memory that nobody wrote is seen here and by no sanitizer of ours. The unit tests of
# the lower floors but those marked [long], and a day of the program on the demo book. Needs the contributors' build. Any fault ends it with 1.
# Usage: sh tests/valgrind.sh [BUILD_FOLDER]
set -eu
cd "$(dirname "$0")/.."

build=${1:-build/dev}
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
export HOME="$scratch" CLAMPBOOK_BOOK="$scratch/book.db" CLAMPBOOK_BY=clerk LC_ALL=C.UTF-8

# checked CODE COMMAND...: ends with CODE, and valgrind finds nothing.
checked() {
    code=$1
    shift
    got=0
    valgrind --quiet --error-exitcode=99 --leak-check=full --errors-for-leak-kinds=definite --log-file="$scratch/said" "$@" \
        >"$scratch/out" 2>&1 </dev/null || got=$?
    if [ "$got" -ne "$code" ]; then
        cat "$scratch/out" "$scratch/said" >&2
        echo "valgrind.sh: '$*' ends with $got instead of $code" >&2
        exit 1
    fi
}

for floor in ${CLAMPBOOK_FLOORS-base units model exchange}; do
    checked 0 "$build/tests/unit/unit_${floor}_test" "~[long]"
done
clampbook=$build/src/clampbook
checked 0 "$clampbook" demo "$CLAMPBOOK_BOOK"
checked 0 "$clampbook" find drain plug
checked 0 "$clampbook" find gritter m18 --json
checked 3 "$clampbook" find nothing such
checked 0 "$clampbook" convert "24 lbf·ft" --to "N·m"
checked 0 "$clampbook" derive M10 8.8
checked 0 "$clampbook" thread 1/2-13 UNC
checked 0 "$clampbook" joint list
checked 0 "$clampbook" enter "61 N·m" --joint 2 --label shop --confirm "on valgrind's bench"
checked 0 "$clampbook" export --csv
cp "$scratch/out" "$scratch/rows.csv"
checked 0 "$clampbook" export --json
checked 0 "$clampbook" book new "$scratch/second.db"
checked 0 "$clampbook" import "$scratch/rows.csv" --book "$scratch/second.db" --confirm-all "as in the first"
checked 0 "$clampbook" merge "$scratch/second.db" --apply
checked 0 "$clampbook" sheet --html "$scratch/sheet.html"
checked 0 "$clampbook" book verify
checked 0 "$clampbook" audit
checked 0 "$clampbook" book publish "$scratch/bay.db"
checked 0 "$clampbook" find drain plug --book "$scratch/bay.db"
checked 4 "$clampbook" find drain plug --book "$scratch/rows.csv"
checked 0 "$clampbook" teach preload
echo "valgrind found nothing in the short set"
