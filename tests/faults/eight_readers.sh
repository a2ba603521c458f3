# SPDX-License-Identifier: MIT
# Eight programs read a book while two write into it: no reader sees half of what a writer keeps in one go, nor less than was kept
# before it began; no writer loses anything; and nobody waits longer than a bound.
# CLAMPBOOK_SECONDS: how long, 8 unless said otherwise; the full test is 300.
. "$(dirname "$0")/common.sh"
need sqlite3 awk
make_book shop.db
begun=$(values shop.db)
seconds=${CLAMPBOOK_SECONDS:-8}
# A writer waits 10 s for another before it gives up (book/file.cpp); nobody comes near that, nor does a reader.
longest=8000

now() { echo $(($(date +%s%N) / 1000000)); }
finish=$(($(now) + seconds * 1000))

# took FILE SINCE: keeps how many milliseconds something took.
took() { echo $(($(now) - $2)) >>"$1"; }

# Keeps one figure left and right of its box in one go, each with the page of its number, and tells that it is kept. Every fifth is
# entered by itself, into a joint of the demo.
write() {
    i=1
    while [ "$(now)" -lt "$finish" ]; do
        {
            echo 'machine_maker,machine_model,assembly,joint,tightening,label,page,entered_by,confirmed'
            printf 'maker,model,box %s,%s,%d N·m,shop,p. %d,writer %s,counted\n' "$1" left $i $i "$1" "$1" right $i $i "$1"
        } >"rows-$1.csv"
        since=$(now)
        clampbook import "rows-$1.csv" --by "writer $1" --book shop.db >/dev/null 2>>"err-$1" || echo "rows $i of writer $1" >>refused
        took "waits-$1" "$since"
        echo "$i" >"kept-$1.new" && mv "kept-$1.new" "kept-$1"
        if [ $((i % 5)) -eq 0 ]; then
            since=$(now)
            clampbook enter "$((1000 + i)) N·m" --joint "$1" --label shop --confirm counted --by "writer $1" --book shop.db \
                >/dev/null 2>>"err-$1" || echo "value $i of writer $1" >>refused
            took "waits-$1" "$since"
        fi
        i=$((i + 1))
    done
}

# What a reader sees of a writer's box: as many figures left as right, all of them up to the last, each with the page of its number.
seen() {
    awk -v box="$2" -v least="$3" '
        index($0, "maker,model,,box " box ",") == 1 {
            side = index($0, ",left,") ? "left" : "right"
            match($0, /[0-9]+ N·m/); figure = substr($0, RSTART, RLENGTH) + 0
            match($0, /p\. [0-9]+/); page = substr($0, RSTART + 3, RLENGTH - 3) + 0
            if (figure != page) print "box " box ": the figure " figure " stands on page " page
            count[side]++
            if (figure > most[side]) most[side] = figure
        }
        END {
            if (count["left"] != count["right"]) print "box " box ": " count["left"] " figures left, " count["right"] " right"
            if (count["left"] != most["left"]) print "box " box ": " count["left"] " figures, of which the last is " most["left"]
            if (count["left"] + 0 < least) print "box " box ": " count["left"] + 0 " figures, although " least " were kept before"
        }' "$1"
}

read_on() {
    reads=0
    while [ "$(now)" -lt "$finish" ]; do
        least_1=$(cat kept-1)
        least_2=$(cat kept-2)
        since=$(now)
        clampbook export --csv --book shop.db >"rows-of-$1" 2>"said-$1" || echo "reader $1: $(cat "said-$1")" >>torn
        took "reads-$1" "$since"
        { seen "rows-of-$1" 1 "$least_1"; seen "rows-of-$1" 2 "$least_2"; } >>torn
        since=$(now)
        clampbook find --book shop.db gritter bearing cover >/dev/null 2>"said-$1" || echo "reader $1: $(cat "said-$1")" >>torn
        took "reads-$1" "$since"
        reads=$((reads + 1))
    done
}

echo 0 >kept-1
echo 0 >kept-2
: >torn
for writer_no in 1 2; do write $writer_no & done
for reader_no in 1 2 3 4 5 6 7 8; do read_on $reader_no & done
wait

[ ! -s torn ] || fail "$(wc -l <torn) times a reader saw what is not so: $(sort torn | uniq -c | sort -rn | head -n 3)"
[ ! -e refused ] || fail "refused were $(head -n 3 refused | tr '\n' ' '): $(cat err-* | head -n 3)"
verify shop.db
clampbook audit --book shop.db >out 2>err || fail "$(cat err)"
kept=0
for writer_no in 1 2; do
    [ "$(cat kept-$writer_no)" -ge 3 ] || fail "writer $writer_no came to write $(cat kept-$writer_no) times alone"
    kept=$((kept + 2 * $(cat kept-$writer_no) + $(cat kept-$writer_no) / 5))
done
[ "$(values shop.db)" -eq $((begun + kept)) ] || fail "of $kept values $(($(values shop.db) - begun)) are there"
for file in waits-1 waits-2 reads-1 reads-2 reads-3 reads-4 reads-5 reads-6 reads-7 reads-8; do
    [ "$(sort -n "$file" | tail -n 1)" -lt "$longest" ] || fail "somebody waited $(sort -n "$file" | tail -n 1) ms ($file)"
done
# figures FILE...: how many, the median and the longest.
figures() { cat "$@" | sort -n | awk '{ a[NR] = $1 } END { print NR ", median " a[int((NR + 1) / 2)] " ms, longest " a[NR] " ms" }'; }
echo "$seconds s: $(figures waits-*) written ($kept values); $(figures reads-*) read"
exit 0
