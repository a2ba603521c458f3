# SPDX-License-Identifier: MIT
# Two programs write into one book at once: every value of both is there, once, in one unbroken history; and one that holds
# the book too long is told of, not waited for without end.
# CLAMPBOOK_ENTRIES: how many values each enters, 5,000 unless said otherwise (the sanitized program is slow); a multiple of 50.
. "$(dirname "$0")/common.sh"
need sqlite3 timeout
make_book shop.db
begun=$(values shop.db)

entries=${CLAMPBOOK_ENTRIES:-5000}
# Nine of ten values come in by rows of 45, as a shop's files do; each tenth is entered by itself.
write() {
    i=0
    while [ "$i" -lt "$entries" ]; do
        {
            echo 'machine_maker,machine_model,assembly,joint,tightening,label,page,entered_by,confirmed'
            seq $(($1 + i)) $(($1 + i + 44)) | awk -v who="writer $1" '{ printf "maker,model,box,screw %d,%d N·m,shop,p. %d,%s,counted\n", $1 % 100, $1, $1, who }'
        } >"rows-$1.csv"
        clampbook import "rows-$1.csv" --by "writer $1" --book shop.db >/dev/null 2>>"err-$1" || echo "rows from $(($1 + i))" >>refused
        i=$((i + 45))
        for one in 1 2 3 4 5; do
            clampbook enter "$(($1 + i)) N·m" --joint $((i % 100 + 1)) --label shop --confirm counted --by "writer $1" --book shop.db \
                >/dev/null 2>>"err-$1" || echo "$(($1 + i))" >>refused
            i=$((i + 1))
        done
    done
}
write 10000 &
first=$!
write 20000 &
second=$!
# Readers are never kept waiting, and never see half of a value.
while kill -0 "$first" 2>/dev/null || kill -0 "$second" 2>/dev/null; do
    clampbook find --book shop.db gritter bearing cover >out 2>err || fail "a reader is refused beside two writers: $(cat err)"
    sleep 0.3
done
wait
[ ! -e refused ] || fail "refused were $(tr '\n' ' ' <refused): $(cat err-*)"
verify shop.db
both=$((2 * entries))
[ "$(values shop.db)" -eq $((begun + both)) ] || fail "of $both values $(($(values shop.db) - begun)) are there"
kept=$(sqlite3 shop.db "SELECT count(DISTINCT as_written) FROM value WHERE as_written GLOB '[12][0-9][0-9][0-9][0-9] N·m'")
[ "$kept" -eq "$both" ] || fail "$kept different values are there instead of $both"
clampbook audit --book shop.db >out 2>err || fail "$(cat err)"
broken=$(sqlite3 shop.db "SELECT count(*) FROM event e JOIN event p ON p.seq = e.seq - 1 WHERE e.previous <> p.hash")
[ "$broken" -eq 0 ] || fail "the chain of events is broken in $broken places"

# The same value by both at once is taken once.
rm -f refused
same() { clampbook enter "3000 N·m" --joint 1 --label shop --confirm counted --book shop.db >/dev/null 2>&1; echo "$?" >>codes; }
same & same & same & same &
wait
[ "$(sort codes | tr '\n' ' ')" = "0 6 6 6 " ] || fail "four times the same value at once ends with: $(sort codes | tr '\n' ' ')"

# Another program that holds the book.
mkfifo hold
sqlite3 shop.db <hold >/dev/null &
exec 5>hold
# It waits for the lock, since the question below takes it for a moment too.
printf '.timeout 10000\nBEGIN IMMEDIATE;\n' >&5
until sqlite3 shop.db '.timeout 0' 'BEGIN IMMEDIATE; ROLLBACK;' 2>&1 | grep -q locked; do sleep 0.05; done
expect 0 '' clampbook find --book shop.db gritter bearing cover
expect 6 "^clampbook: 'shop.db' is being written by another program; nothing was changed, try again" \
    timeout 60 clampbook enter "4000 N·m" --joint 1 --label shop --confirm counted --book shop.db
echo 'ROLLBACK;' >&5
exec 5>&-
wait
expect 0 '' clampbook enter "4000 N·m" --joint 1 --label shop --confirm counted --book shop.db
verify shop.db
exit 0
