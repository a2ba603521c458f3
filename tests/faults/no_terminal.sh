# SPDX-License-Identifier: MIT
# Without a terminal, without a home, and with standard streams closed: the same answers, and no book that takes the place
# of a closed stream.
. "$(dirname "$0")/common.sh"
need setsid
make_book shop.db
clampbook find --book shop.db drain plug drop box >answer || fail "find does not answer"
state shop.db >before

setsid -w clampbook find --book shop.db drain plug drop box </dev/null >out 2>err || fail "find needs a terminal: $(cat err)"
cmp -s answer out || fail "find answers otherwise without a terminal"
setsid -w clampbook find --book shop.db drain plug drop box <&- >out 2>err || fail "find needs standard input: $(cat err)"
cmp -s answer out || fail "find answers otherwise without standard input"
env -i PATH="$PATH" clampbook find --book shop.db drain plug drop box >out 2>err || fail "find needs an environment: $(cat err)"
cmp -s answer out || fail "find answers otherwise without an environment"
env -u HOME clampbook find --book shop.db drain plug drop box >out 2>err || fail "find needs a home: $(cat err)"
cmp -s answer out || fail "find answers otherwise without a home"
TERM=dumb clampbook find --book shop.db drain plug drop box >out && cmp -s answer out || fail "find answers otherwise on a dumb terminal"
NO_COLOR=1 clampbook find --book shop.db drain plug drop box >out && cmp -s answer out || fail "find answers otherwise with NO_COLOR"

no_home() { env -u HOME "$@"; }
expect 2 'there is no home folder to look for the book in; name it with --book FILE' no_home clampbook find drain
expect 2 'there is no home folder to look for the book in' no_home clampbook book new

# A home that cannot be written.
away() { HOME=/proc/nowhere "$@"; }
expect 4 "there is no book at '/proc/nowhere/" away clampbook find drain
expect 1 "/proc/nowhere" away clampbook book new

# Closed streams. The file of a book must never get the number of one: an answer would be written into it.
no_out() { "$@" >&-; }
expect 1 '^clampbook: the answer could not be written in full' no_out clampbook find --book shop.db drain plug
no_in() { "$@" <&-; }
expect 1 '^clampbook: standard input could not be read to its end; 0 lines were$' no_in clampbook convert --batch
clampbook find --book shop.db drain <&- >&- 2>&-
[ $? -eq 1 ] || fail "find with all streams closed does not exit with 1"
clampbook frobnicate <&- >&- 2>&-
[ $? -eq 2 ] || fail "an unknown command with all streams closed does not exit with 2"
state shop.db | cmp -s before - || fail "the book changed by being read"
number=600
for closed in '<&-' '>&-' '2>&-' '<&- >&-' '<&- 2>&-' '>&- 2>&-' '<&- >&- 2>&-'; do
    number=$((number + 1))
    (eval "exec $closed"; clampbook enter "$number N·m" --joint 1 --label shop --confirm counted --book shop.db) >out 2>err
    (eval "exec $closed"; clampbook demo other-$number.db) >out 2>err
    clampbook joint show 1 --book shop.db | grep -q "^  $number N·m " || fail "'enter' with $closed kept nothing"
    verify shop.db
    verify other-$number.db
done
exit 0
