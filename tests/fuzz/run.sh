#!/bin/sh
# SPDX-License-Identifier: MIT
# Builds the fuzzers and runs them one after the other; says of each how much it ran and what of the floors it reached.
# Usage: run.sh [TARGET...] [--minutes N] [--keep]
# With --keep, what was found worth keeping replaces the files of tests/fuzz/corpus. What breaks an assertion lies in
# tests/fuzz/findings from then on, where the ordinary tests run it. Stops with 1 where something did.
set -eu
cd "$(dirname "$0")/../.."

all="quantity thread tightening rows story press book"
usage="usage: run.sh [TARGET...] [--minutes N] [--keep]; targets: $all"
minutes=30
keep=false
targets=
while [ "$#" -gt 0 ]; do
    case "$1" in
    --minutes)
        minutes=${2:?$usage}
        shift
        ;;
    --keep) keep=true ;;
    *)
        case " $all " in
        *" $1 "*) targets="$targets $1" ;;
        *)
            echo "$usage" >&2
            exit 2
            ;;
        esac
        ;;
    esac
    shift
done
targets=${targets:-$all}

for tool in clang++-14 llvm-profdata-14 llvm-cov-14; do
    if ! command -v "$tool" >/dev/null; then
        echo "run.sh: $tool is not installed: apt-get install clang-14 llvm-14 libclang-rt-14-dev" >&2
        exit 1
    fi
done
mkdir -p build
cmake --preset fuzz >build/fuzz.log 2>&1 || { cat build/fuzz.log >&2; exit 1; }
# shellcheck disable=SC2086 # a list of words
cmake --build --preset fuzz --target $(printf 'fuzz_%s ' $targets)

kept=tests/fuzz/corpus
scratch=build/fuzz/runs
failed=0
for target in $targets; do
    program=build/fuzz/tests/fuzz/fuzz_$target
    case $target in
    quantity | thread | tightening) longest=200 ;;
    rows) longest=4096 ;;
    story) longest=8192 ;;
    *) longest=65536 ;;
    esac
    mkdir -p "$scratch/$target" "tests/fuzz/findings/$target" "$kept/$target"
    set -- "-max_total_time=$((minutes * 60))" "-max_len=$longest" -timeout=10 -rss_limit_mb=2000 -print_final_stats=1 \
        "-artifact_prefix=tests/fuzz/findings/$target/"
    if [ -f "tests/fuzz/dictionary/$target.dict" ]; then
        set -- "$@" "-dict=tests/fuzz/dictionary/$target.dict"
    fi
    log=$scratch/$target.log
    if ! LLVM_PROFILE_FILE=/dev/null nice -n 19 "$program" "$@" "$scratch/$target" "$kept/$target" >"$log" 2>&1; then
        failed=1
        echo "run.sh: $target: something does not hold; see $log" >&2
        grep -a -m 3 -E 'does not hold|ERROR|runtime error' "$log" >&2 || true
    fi
    if $keep; then
        rm -rf "$scratch/least"
        mkdir "$scratch/least"
        # Edges alone count here: what counters tell beside them would keep hundreds of files.
        # A file that breaks an assertion is left out of what is kept without a word: it lies in the scratch folder, and nothing is
        # replaced.
        rm -rf "$scratch/broken"
        mkdir "$scratch/broken"
        LLVM_PROFILE_FILE=/dev/null "$program" -set_cover_merge=1 -use_counters=0 -timeout=10 "-max_len=$longest" \
            "-artifact_prefix=$scratch/broken/" "$scratch/least" "$kept/$target" "$scratch/$target" >"$scratch/merge.log" 2>&1
        if [ -n "$(ls "$scratch/broken")" ]; then
            echo "run.sh: $target: $(ls "$scratch/broken" | wc -l) files break what is asserted, see $scratch/broken; nothing was replaced" >&2
            exit 1
        fi
        rm -rf "${kept:?}/$target"
        mv "$scratch/least" "$kept/$target"
    fi
    LLVM_PROFILE_FILE="$scratch/$target.profraw" "$program" "$kept/$target"/* >/dev/null 2>&1 || true
    llvm-profdata-14 merge -o "$scratch/$target.profdata" "$scratch/$target.profraw"
    echo "== $target: $(ls "$kept/$target" | wc -l) files kept, $(du -cb "$kept/$target"/* | tail -1 | cut -f1) bytes"
    sed -n 's/^stat::\(number_of_executed_units\|average_exec_per_sec\): */   \1 /p' "$log"
    grep -aoE 'cov: [0-9]+ ft: [0-9]+' "$log" | tail -1 | sed 's/^/   /'
    llvm-cov-14 export -summary-only "$program" "-instr-profile=$scratch/$target.profdata" |
        python3 tests/fuzz/lines.py
done
exit "$failed"
