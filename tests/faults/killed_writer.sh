# SPDX-License-Identifier: MIT
# A writer that is killed at any moment: each value that was told as kept is there, none is there by half, and the book goes
# on.
. "$(dirname "$0")/common.sh"
need setsid sqlite3
make_book shop.db
begun=$(values shop.db)
: >kept
cat >loop <<'LOOP'
i=0
while [ "$i" -lt 1000 ]; do
    clampbook enter "$(($1 + i)) N·m" --joint 2 --label shop --confirm counted --book shop.db >>kept 2>>refused
    i=$((i + 1))
done
LOOP
round=0
killed=0
for delay in 0.02 0.05 0.08 0.11 0.14 0.17 0.20 0.23 0.26 0.29 0.32 0.35; do
    round=$((round + 1))
    start sh loop $((round * 1000))
    sleep "$delay"
    kill -s KILL -- "-$writer" 2>/dev/null && killed=$((killed + 1))
    wait "$writer" 2>/dev/null
    writer=
    verify shop.db
    told=$(grep -c '^value [0-9]* is in the book' kept)
    there=$(($(values shop.db) - begun))
    # The one value that a killed program had kept but not yet told, in each round.
    [ "$there" -ge "$told" ] || fail "$told values were told as kept, $there are there"
    [ "$there" -le $((told + round)) ] || fail "$there values are there, although only $told were told as kept in $round rounds"
done
[ "$killed" -eq "$round" ] || fail "only $killed of $round writers were there to be killed"
[ "$told" -gt 0 ] || fail "no writer kept anything before it was killed"
[ ! -s refused ] || fail "a writer was refused: $(sort -u refused)"
[ "$(sqlite3 shop.db 'SELECT count(*) FROM value WHERE id NOT IN (SELECT value FROM step)')" -eq 0 ] || fail "a value has no steps"
[ "$(sqlite3 shop.db "SELECT (SELECT count(*) FROM event WHERE kind = 'value entered') - (SELECT count(*) FROM value)")" -eq 0 ] ||
    fail "values and their events differ in number"

# A maker of books that is killed leaves no book that passes for a whole one.
for delay in 0.002 0.01 0.02 0.03 0.05; do
    rm -f other.db*
    start clampbook demo other.db >/dev/null 2>&1
    sleep "$delay"
    kill -s KILL -- "-$writer" 2>/dev/null
    wait "$writer" 2>/dev/null
    writer=
    if [ -e other.db ]; then
        verify other.db
    else
        # What it left behind is no hindrance.
        expect 0 '' clampbook demo other.db
        verify other.db
    fi
    [ "$(values other.db)" -eq "$begun" ] || fail "a demo book has $(values other.db) values instead of $begun"
done
# The same for an empty book, which has no draft: either none is there, or it can be used, or it is told what it is.
for delay in 0.001 0.004 0.008 0.012 0.02; do
    rm -f new.db*
    start clampbook book new new.db >/dev/null 2>&1
    sleep "$delay"
    kill -s KILL -- "-$writer" 2>/dev/null
    wait "$writer" 2>/dev/null
    writer=
    if clampbook book verify --book new.db >out 2>err; then
        expect 0 '' clampbook machine add --maker a --model b --book new.db
    else
        grep -qE "^clampbook: (there is no book at 'new.db'|'new.db' is (an empty file|a book that was never finished|a database, but no book))" err ||
            fail "a book whose making was killed: $(cat err)"
    fi
done
exit 0
