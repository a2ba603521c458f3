# SPDX-License-Identifier: MIT
# Standard output that takes nothing: every command says so and exits with 1; what was entered is entered once.
. "$(dirname "$0")/common.sh"
[ -c /dev/full ] || not_here "there is no /dev/full"
make_book shop.db
told='^clampbook: the answer could not be written in full'

to_full() { "$@" >/dev/full; }
for command in "--help" "--version" "help" "find --help" "convert 32Nm --to lbf·ft" "thread M10" "thread M10 --json" \
    "strength M10 8.8" "derive M10 8.8" "list" "list threads --csv" "find --book shop.db drain plug" "find --book shop.db M22 --json" \
    "book info --book shop.db" "book verify --book shop.db" "machine list --book shop.db" "joint list --book shop.db" \
    "source list --book shop.db" "history 1 --book shop.db" "joint show 1 --book shop.db"; do
    # The words of a command are meant to be split.
    # shellcheck disable=SC2086
    expect 1 "$told" to_full clampbook $command
done
batch() { echo '32 N·m' | clampbook convert --batch --to lbf·ft >/dev/full; }
expect 1 "$told" batch

before=$(values shop.db)
expect 1 "$told" to_full clampbook enter "77 N·m" --joint 1 --label shop --book shop.db
[ "$(values shop.db)" -eq $((before + 1)) ] || fail "the value was not kept, or more than once"
expect 6 "is current in the book already" clampbook enter "77 N·m" --joint 1 --label shop --book shop.db
verify shop.db
expect 1 "$told" to_full clampbook demo other.db
verify other.db

# What was refused keeps its own exit code, whether the sentence can be written or not.
mute() { "$@" 2>/dev/full; }
expect 2 '' mute clampbook frobnicate
expect 4 '' mute clampbook find --book nowhere.db drain
expect 5 '' mute clampbook strength M42 8.8
exit 0
