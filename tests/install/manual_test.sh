#!/bin/sh
# SPDX-License-Identifier: MIT
# The manual pages: each command has one, each option of --help can be read in it, three formatters find no fault, and they are the
# same bytes each time they are made.
# Usage: manual_test.sh FOLDER_OF_CLAMPBOOK GENERATOR
set -eu

if [ $# -ne 2 ]; then
    echo "usage: manual_test.sh FOLDER_OF_CLAMPBOOK GENERATOR" >&2
    exit 2
fi
program=$1/clampbook
generator=$2
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
LC_ALL=C.UTF-8
MANWIDTH=200
unset MANROFFOPT
export LC_ALL MANWIDTH

fail() {
    echo "manual_test: $1" >&2
    exit 1
}

mkdir "$scratch/man" "$scratch/again" "$scratch/read"
"$generator" "$scratch/man" || fail "the pages cannot be made"
"$generator" "$scratch/again"
diff -r "$scratch/man" "$scratch/again" >/dev/null || fail "made again, the pages are other bytes"

# What the formatters complain of in a page.
complaints() {
    mandoc -T lint -W warning "$1" || true
    groff -k -man -Tutf8 -ww "$1" 2>&1 >/dev/null
    man --warnings -E UTF-8 -l "$1" 2>&1 >/dev/null
}

read_page() {
    man -E UTF-8 -l "$1" | col -bx
}

# The options of --help that the page that is read does not show, for a command and its own commands.
missing_options() {
    page=$1
    command=$2
    for sub in "" $("$program" "$command" --help | sed -n '/^Subcommands:/,$s/^  \([a-z]*\)  .*/\1/p'); do
        # shellcheck disable=SC2086 # no subcommand is no word
        for option in $("$program" "$command" $sub --help | sed -n 's/^  \(-h,\)\{0,1\}\(--[a-z-]*\).*/\2/p'); do
            grep -qE -e "^ +(-h, )?$option( |\$)" "$page" || echo "$command $sub $option"
        done
    done
}

pages=0
options=0
for command in $("$program" --help | sed -n 's/^  \([a-z]*\)  .*/\1/p'); do
    page=$scratch/man/clampbook-$command.1
    [ -s "$page" ] || fail "the command $command has no page"
    read_page "$page" >"$scratch/read/$command"
    missing=$(missing_options "$scratch/read/$command" "$command")
    [ -z "$missing" ] || fail "the pages do not tell of $missing"
    grep -qF "clampbook-$command(1)" "$scratch/man/clampbook.1" || grep -qF "clampbook\\-$command\\fR(1)" "$scratch/man/clampbook.1" ||
        fail "clampbook(1) does not name $command"
    pages=$((pages + 1))
    options=$((options + $(grep -cE '^ +(-h, )?--[a-z-]+( |$)' "$scratch/read/$command")))
done
[ "$pages" -ge 30 ] && [ "$options" -ge 200 ] || fail "only $pages pages and $options options were looked at"
for page in "$scratch"/man/*.1; do
    said=$(complaints "$page")
    [ -z "$said" ] || fail "$page: $said"
done

# Each of these would be noticed.
sed '/nut\\-factor/d' "$scratch/man/clampbook-derive.1" >"$scratch/without.1"
read_page "$scratch/without.1" >"$scratch/without"
[ "$(missing_options "$scratch/without" derive)" = "derive  --nut-factor" ] || fail "an option that is left out is not noticed"
{ cat "$scratch/man/clampbook.1" && echo '.XY no such request'; } >"$scratch/bad.1"
[ -n "$(complaints "$scratch/bad.1")" ] || fail "a request that groff does not know is not noticed"
echo "$pages commands, $options options, no complaint"
