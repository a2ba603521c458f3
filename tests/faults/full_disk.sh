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
