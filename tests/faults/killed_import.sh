# SPDX-License-Identifier: MIT
# An import that is killed at any moment: the book has all of the file or nothing of it, is whole, and goes on. Then one that is
# stopped by hand, which says so, and one that shows on a terminal how far it is.
# CLAMPBOOK_KILLS: how often it is killed, 100 times unless said otherwise; CLAMPBOOK_ROWS: how many rows take long enough to be
# told of (the sanitized program is slow).
. "$(dirname "$0")/common.sh"
need setsid script awk
kills=${CLAMPBOOK_KILLS:-100}
make_book shop.db
rows() {
    echo 'machine_maker,machine_model,assembly,joint,role,thread,property_class,tightening,label,source_title,page,entered_by'
    seq "$2" | awk -v name="$1" '{ printf "maker,model %s,box,screw %d,cover,M8,8.8,%d N·m,maker,manual,p. %d,Ann\n", name, $1, 16 + $1 % 10, $1 }'
}
rows first 1000 >file.csv

# How long it takes when it is left alone.
cp shop.db alone.db
began=$(date +%s%N)
expect 0 '' clampbook import file.csv --book alone.db
took=$(($(date +%s%N) - began))
before=$(state shop.db) after=$(state alone.db | grep '"values"')

none=0 whole=0
for delay in $(awk -v n="$kills" -v took="$took" 'BEGIN { srand(20261125); for (i = 0; i < n; ++i) printf "%.4f\n", rand() * 1.15 * took / 1e9 }'); do
    start clampbook import file.csv --book shop.db >/dev/null 2>&1
    sleep "$delay"
    kill -s KILL -- "-$writer" 2>/dev/null
    wait "$writer" 2>/dev/null
    writer=
    now=$(state shop.db)
    if [ "$now" = "$before" ]; then
        none=$((none + 1))
    elif [ "$(echo "$now" | grep '"values"')" = "$after" ]; then
        whole=$((whole + 1))
        verify shop.db
        clampbook audit --book shop.db >out 2>err || fail "after $((none + whole)) kills: $(cat err)"
        rm -f shop.db shop.db-wal shop.db-shm
        make_book shop.db
    else
        fail "after $((none + whole)) kills the book holds a part of the file: $now"
    fi
done
verify shop.db
echo "killed $kills times: $none left nothing of the file, $whole had finished"
[ $((none + whole)) -eq "$kills" ] || fail "$none and $whole are not $kills"
[ "$none" -gt 0 ] || fail "no kill came before the end"
clampbook audit --book shop.db >out 2>err || fail "$(cat err)"
clampbook import file.csv --book shop.db >out 2>err || fail "after all kills: $(cat err)"

# Stopped by hand: a sentence, 130, and the book as before. A second file, long enough to be caught in the middle.
rows second 200000 >long.csv
before=$(state shop.db)
start clampbook import long.csv --book shop.db >out 2>err
sleep 1
kill -s INT -- "-$writer"
wait "$writer"
code=$?
writer=
[ "$code" -eq 130 ] || fail "a stopped import exits with $code instead of 130: $(cat err)"
[ "$(cat err)" = 'clampbook: stopped; the book is as it was before' ] || fail "a stopped import says: $(cat err)"
[ ! -s out ] || fail "a stopped import answers: $(cat out)"
[ "$(state shop.db)" = "$before" ] || fail "a stopped import left something behind"
verify shop.db

# On a terminal it says how far it is, and leaves no trace of that in the end; elsewhere it says nothing.
rows third "${CLAMPBOOK_ROWS:-100000}" >file.csv
script -qec "clampbook import file.csv --book shop.db" typescript >shown </dev/null || fail "on a terminal: $(cat shown)"
grep -qE '[0-9]+ read, [0-9]+ %' shown || fail "on a terminal it doesn't say how far it is: $(cat shown)"
exit 0
