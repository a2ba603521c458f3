# SPDX-License-Identifier: MIT
# A full disk: whatever is refused is refused whole and in a sentence, what was taken stays, and the book goes on when there
# is room again.
. "$(dirname "$0")/common.sh"
here=$(cd "$1" && pwd)
in_own_mounts "$here"

mkdir disk && mount -t tmpfs -o size=1m none disk || fail "no disk could be mounted"
make_book disk/shop.db
state disk/shop.db >before
dd if=/dev/zero of=disk/filler bs=4096 2>/dev/null
echo x 2>/dev/null >>disk/filler && fail "the disk is not full"

expect 1 "^clampbook: 'disk/shop.db'.*nothing was changed" clampbook enter "32 N·m" --joint 1 --label shop --book disk/shop.db
expect 1 "^clampbook: 'disk/shop.db'.*nothing was changed" clampbook machine add --maker a --model b --book disk/shop.db
expect 0 '' clampbook find --book disk/shop.db drain plug drop box
grep -q '65 N·m   47.9 lbf·ft' out || fail "find on a full disk answers otherwise: $(cat out)"
expect 1 "^clampbook: 'disk/new.db'.*the disk is full" clampbook book new disk/new.db
expect 1 "^clampbook: 'disk/new.db(.draft)?'.*the disk is full" clampbook demo disk/new.db
expect 1 "^clampbook: 'disk/new.db'.*the disk is full" clampbook book backup --book disk/shop.db disk/new.db
[ -z "$(ls disk | grep new)" ] || fail "a refused book left files behind: $(ls disk)"
verify disk/shop.db
state disk/shop.db | cmp -s before - || fail "the book changed although the disk was full"

# With a little room: values are taken until it is used up, and each of those that were taken is there.
rm disk/filler
dd if=/dev/zero of=disk/filler bs=1024 count=520 2>/dev/null
begun=$(values disk/shop.db)
taken=0
while clampbook enter "$((100 + taken)) N·m" --joint 1 --label shop --confirm counted --book disk/shop.db >/dev/null 2>err; do
    taken=$((taken + 1))
    [ "$taken" -lt 1000 ] || fail "the disk does not fill"
done
grep -qE "^clampbook: 'disk/shop.db'.*nothing was changed" err || fail "the first value too many is refused with: $(cat err)"
[ "$taken" -gt 0 ] || fail "no value was taken although there was room"
verify disk/shop.db
[ "$(values disk/shop.db)" -eq $((begun + taken)) ] || fail "$taken values were taken, but the book went from $begun to $(values disk/shop.db)"
rm disk/filler
expect 0 '' clampbook enter "5000 N·m" --joint 1 --label shop --confirm counted --book disk/shop.db
verify disk/shop.db
[ "$(values disk/shop.db)" -eq $((begun + taken + 1)) ] || fail "the book lost values when there was room again"

# An import that fills the disk in the middle leaves nothing of its file; a merge neither; a sheet no half file.
{
    echo 'machine_maker,machine_model,assembly,joint,role,thread,property_class,tightening,label,source_title,page,entered_by'
    seq 900 | awk '{ printf "maker,model,box,screw %d,cover,M8,8.8,%d N·m,maker,manual,p. %d,Ann\n", $1, 16 + $1 % 10, $1 }'
} >rows.csv
clampbook book new other.db >/dev/null && clampbook import rows.csv --book other.db >/dev/null || fail "the rows are no good"
dd if=/dev/zero of=disk/filler bs=1024 count=350 2>/dev/null
state disk/shop.db >before
expect 1 "^clampbook: 'disk/shop.db'.*the disk is full; nothing was changed" clampbook import rows.csv --book disk/shop.db
verify disk/shop.db
state disk/shop.db | cmp -s before - || fail "a part of the file stayed in the book"
expect 1 "^clampbook: 'disk/shop.db'.*the disk is full; nothing was changed" clampbook merge other.db --apply --book disk/shop.db
verify disk/shop.db
state disk/shop.db | cmp -s before - || fail "a part of the other book stayed in the book"
rm disk/filler
echo old >disk/sheet.html
dd if=/dev/zero of=disk/filler bs=4096 2>/dev/null
for form in html pdf svg xlsx; do
    [ "$form" = html ] || rm -f disk/sheet.$form
    expect 1 "^clampbook: (the press: )?'disk/sheet.$form' cannot be written: No space left on device$" clampbook sheet --$form disk/sheet.$form --book other.db
    [ -z "$(ls disk | grep draft)" ] || fail "a sheet that found no room left files behind: $(ls disk)"
done
[ "$(cat disk/sheet.html)" = old ] || fail "a sheet that found no room took the older one away"
[ "$(ls disk | grep -c sheet)" -eq 1 ] || fail "a sheet that found no room is there by half: $(ls disk)"
rm disk/filler disk/sheet.html
clampbook audit --book disk/shop.db >out 2>err || fail "$(cat err)"

# A limit on the size of files is told like a full disk, and no signal ends the program.
make_book small.db
state small.db >before
limited() { (ulimit -f 1 && exec "$@"); }
expect 1 "^clampbook: 'small.db'.*nothing was changed" limited clampbook enter "32 N·m" --joint 1 --label shop --book small.db
expect 1 "^clampbook: 'new.db'" limited clampbook book new new.db
expect 1 "^clampbook: 'new.db" limited clampbook demo new.db
expect 1 "^clampbook: 'new.db'" limited clampbook book backup --book small.db new.db
[ -z "$(ls | grep new)" ] || fail "a refused book left files behind: $(ls)"
verify small.db
state small.db | cmp -s before - || fail "the book changed although no file could grow"
expect 1 '^clampbook: the answer could not be written in full' limited clampbook list threads
exit 0
