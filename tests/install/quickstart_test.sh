#!/bin/sh
# SPDX-License-Identifier: MIT
# Runs examples/quickstart.sh twice, since it promises that this does no harm, and looks for its answers.
# Usage: quickstart_test.sh SOURCE
set -eu

output=$(mktemp)
trap 'rm -f "$output"' EXIT
for turn in first second; do
    sh "$1/examples/quickstart.sh" >"$output" 2>&1 || {
        cat "$output"
        echo "quickstart_test: the $turn run fails" >&2
        exit 1
    }
    # The joint and the label that were found, the converted torque, the label of the derived one.
    for answer in "drain plug" demo "32.5 N·m" derived; do
        sed '/^\$ /d; /^[0-9]\. /d' "$output" | grep -q -F -e "$answer" || {
            cat "$output"
            echo "quickstart_test: the $turn run does not answer '$answer'" >&2
            exit 1
        }
    done
done
