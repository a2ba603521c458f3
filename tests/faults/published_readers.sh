# SPDX-License-Identifier: MIT
# Two bays read a published copy while the shop publishes it again and again: each reader sees one published state, whole, and
# never an older one than before.
# CLAMPBOOK_ROUNDS: how often it is published at least, 30 unless said otherwise; it goes on until each bay has read five times.
. "$(dirname "$0")/common.sh"
need sqlite3
make_book shop.db
# Each round tells two joints one value each, in one go: a state between two rounds has them in unlike numbers.
{
    echo 'machine_maker,machine_model,assembly,joint,tightening,label,page,entered_by,confirmed'
    seq 1500 | awk '{ printf "maker,model,filler,screw %d,%d N·m,shop,p. %d,clerk,counted\n", $1 % 100, 1000 + $1, $1 }'
} >rows.csv
clampbook import rows.csv --book shop.db >/dev/null || fail "the rows are no good"
rounds=${CLAMPBOOK_ROUNDS:-30}
publish() {
    {
        echo 'machine_maker,machine_model,assembly,joint,tightening,label,page,entered_by,confirmed'
        printf 'maker,model,box,%s,%d N·m,shop,p. 1,clerk,counted\n' left $((100 + $1)) right $((100 + $1)) | sed "s/p. 1/p. $1/"
    } >round.csv
    clampbook import round.csv --book shop.db >/dev/null && clampbook book publish share.db --book shop.db >/dev/null || echo "round $1" >>refused
}
publish 0

bay() {
    seen=0
    reads=0
    while [ ! -e finished ]; do
        clampbook export --csv --book share.db >"rows-$1" 2>"err-$1" || { echo "bay $1 is refused: $(cat "err-$1")" >>torn; break; }
        left=$(grep -c '^maker,model,,box,left,' "rows-$1")
        right=$(grep -c '^maker,model,,box,right,' "rows-$1")
        [ "$left" -eq "$right" ] || echo "bay $1 saw $left values left and $right right" >>torn
        [ "$left" -ge "$seen" ] || echo "bay $1 saw $left values after $seen" >>torn
        [ "$left" -eq "$seen" ] || echo "$left" >>"states-$1"
        seen=$left
        clampbook book verify --book share.db >"said-$1" 2>"err-$1" || { echo "bay $1: $(cat "err-$1")" >>torn; break; }
        for word in drain cover level fill vent; do
            clampbook find --book share.db gritter "$word" >"said-$1" 2>"err-$1"
            code=$?
            [ "$code" -eq 0 ] || [ "$code" -eq 3 ] || echo "bay $1: $(cat "err-$1")" >>torn
        done
        reads=$((reads + 1))
        echo "$reads" >"reads-$1"
    done
}
echo 0 >reads-1
echo 0 >reads-2
bay 1 &
first=$!
bay 2 &
second=$!
round=1
read_enough() { [ "0$(cat reads-1)" -ge 5 ] && [ "0$(cat reads-2)" -ge 5 ]; }
while [ "$round" -lt "$rounds" ] || { [ "$round" -lt $((20 * rounds)) ] && [ ! -e torn ] && ! read_enough; }; do
    publish "$round"
    round=$((round + 1))
done
: >finished
wait "$first" "$second"
[ ! -e refused ] || fail "the shop could not publish: $(tr '\n' ' ' <refused)"
[ ! -e torn ] || fail "$(sort torn | uniq -c | head -n 5)"
for bay in 1 2; do
    [ "$(cat reads-$bay)" -ge 5 ] || fail "bay $bay came to read $(cat reads-$bay) times alone"
    [ "$(wc -l <states-$bay)" -ge 3 ] || fail "bay $bay saw $(wc -l <states-$bay) states alone"
done
[ "$(ls | grep '^share')" = share.db ] || fail "files are left beside the copy: $(ls | grep share)"

# A reader that is in the middle of the copy when it is replaced reads the one that it began with to its end.
clampbook export --csv --book share.db >whole.csv || fail "the copy cannot be read"
[ "$(wc -c <whole.csv)" -gt 100000 ] || fail "the rows fit into a pipe, so that nobody would be in the middle"
mkfifo slow
clampbook export --csv --book share.db >slow 2>err &
reader=$!
exec 6<slow
head -c 1000 <&6 >part.csv
publish "$round"
cat <&6 >>part.csv
exec 6<&-
wait "$reader" || fail "the reader is refused: $(cat err)"
cmp -s whole.csv part.csv || fail "a reader in the middle of the copy got another end"
clampbook export --csv --book share.db >next.csv && cmp -s whole.csv next.csv && fail "the copy was not replaced meanwhile"
exit 0
