# SPDX-License-Identifier: MIT
# A published copy in bad places: on a read-only share, in somebody else's folder, under a lock, half synced, on a full disk, and
# with a publisher that is killed. Nothing is ever written beside it.
. "$(dirname "$0")/common.sh"
here=$(cd "$1" && pwd)
in_own_mounts "$here"
need sqlite3 setsid

mkdir disk && mount -t tmpfs -o size=2m none disk || fail "no disk could be mounted"
make_book shop.db
expect 0 '' clampbook book publish disk/bay.db --book shop.db
[ "$(ls disk)" = bay.db ] || fail "publishing left files behind: $(ls disk)"
state disk/bay.db >before
mount -o remount,ro disk || fail "the disk could not be made read-only"
touch disk/probe 2>/dev/null && fail "the disk is not read-only"

# $1: how the copy is called; further words: who runs the program.
reads() {
    copy=$1
    shift
    expect 0 '' "$@" clampbook find --book "$copy" drain plug drop box
    grep -q '65 N·m   47.9 lbf·ft' out || fail "find answers otherwise for $copy: $(cat out)"
    expect 0 '' "$@" clampbook book verify --book "$copy"
    expect 0 '' "$@" clampbook audit --book "$copy"
    expect 0 '' "$@" clampbook book info --book "$copy"
    expect 0 '' "$@" clampbook export --csv --book "$copy"
    expect 6 "^clampbook: '$copy' is a published copy, which is never changed: .* 'shop.db' .*" \
        "$@" clampbook enter "32 N·m" --joint 1 --label shop --book "$copy"
}
reads disk/bay.db
state disk/bay.db | cmp -s before - || fail "the copy on the read-only disk tells otherwise than before"
expect 1 "^clampbook: 'disk/new.db'.*" clampbook book publish disk/new.db --book shop.db
expect 1 "^clampbook: 'disk/bay.db'.*" clampbook book publish disk/bay.db --book shop.db

# Somebody else's file in somebody else's folder.
if [ "$(id -u)" -eq 0 ] && command -v setpriv >/dev/null; then
    chmod 755 "$scratch" "$scratch/work"
    mkdir share && cp disk/bay.db share/bay.db && chmod 444 share/bay.db && chmod 755 share
    plain="setpriv --reuid=65534 --regid=65534 --clear-groups"
    if $plain clampbook --version >/dev/null 2>&1; then
        $plain touch share/probe 2>/dev/null && fail "the folder of somebody else can be written"
        reads share/bay.db $plain
        [ "$(ls share)" = bay.db ] || fail "reading left files behind: $(ls share)"
    fi
fi

# No lock is asked for: whoever holds one keeps no reader waiting.
mount -o remount,rw disk
cp disk/bay.db locked.db && chmod 644 locked.db
mkfifo hold
sqlite3 locked.db <hold >/dev/null 2>&1 &
exec 5>hold
printf '.timeout 10000\nBEGIN EXCLUSIVE;\n' >&5
tries=0
until sqlite3 locked.db 'SELECT count(*) FROM joint' 2>&1 | grep -q locked; do
    tries=$((tries + 1))
    [ "$tries" -lt 200 ] || fail "the copy could not be locked"
    sleep 0.05
done
reads locked.db
echo 'ROLLBACK;' >&5
exec 5>&-
wait
[ "$(ls | grep -c '^locked.db')" -eq 1 ] || fail "reading left files behind: $(ls)"

# A file sync that has come so far: refused in a sentence at any length, and read when it is there whole.
size=$(stat -c %s disk/bay.db)
for part in 512 4096 100000 $((size - 66)) $((size - 65)) $((size - 1)); do
    head -c "$part" disk/bay.db >synced.db
    for command in 'find drain' 'book info' 'book verify' 'audit' 'sheet' 'export --csv' 'enter 32Nm --joint 1 --label shop'; do
        expect 4 "^clampbook: 'synced.db' is a published copy that has not come over whole \($part bytes instead of $size, no digest .*" \
            clampbook $command --book synced.db
    done
done
# One that set the whole room aside first, of which the end is missing still.
head -c 300000 disk/bay.db >synced.db && truncate -s "$size" synced.db
expect 4 "^clampbook: 'synced.db' is a published copy that has not come over whole" clampbook find drain --book synced.db
cp disk/bay.db synced.new && mv -f synced.new synced.db
reads synced.db

# A full disk: the older copy stays, and nothing else.
(cd disk && sha256sum bay.db) >sums
clampbook enter "32 N·m" --joint 1 --label shop --book shop.db >/dev/null || fail "the book takes no value"
dd if=/dev/zero of=disk/filler bs=4096 2>/dev/null
expect 1 "^clampbook: 'disk/bay.db'.*(the disk is full|No space left on device)" clampbook book publish disk/bay.db --book shop.db
(cd disk && sha256sum bay.db) | cmp -s sums - || fail "a copy that found no room took the older one away"
rm disk/filler
# A limit on the size of files, and one that leaves room for the pages, but not for the digest behind them.
expect 0 '' clampbook book publish disk/spare.db --book shop.db
pages=$(($(stat -c %s disk/spare.db) / 512))
rm disk/spare.db
for blocks in 1 "$pages"; do
    limited() { (ulimit -f "$blocks" && exec "$@"); }
    expect 1 "^clampbook: 'disk/bay.db'" limited clampbook book publish disk/bay.db --book shop.db
    (cd disk && sha256sum bay.db) | cmp -s sums - || fail "a copy that was cut at $blocks blocks took the older one away"
done
grep -q 'File too large' err || fail "it was not the digest that found no room: $(cat err)"
[ "$(ls disk)" = bay.db ] || fail "a refused copy left files behind: $(ls disk)"
reads disk/bay.db

# A publisher that is killed at any moment: the copy is the older or the newer one, whole.
old=$(tail -c 65 disk/bay.db)
killed=0
for delay in 0 0.001 0.002 0.004 0.006 0.008 0.010 0.014 0.018 0.022 0.030; do
    rm -f disk/*.draft*
    # Not by way of `start`, which takes as long as a publication to see that it began.
    clampbook book publish disk/bay.db --book shop.db >/dev/null 2>&1 &
    publisher=$!
    sleep "$delay"
    kill -s KILL "$publisher" 2>/dev/null
    wait "$publisher" 2>/dev/null
    [ $? -ne 137 ] || killed=$((killed + 1)) # the signal ended it, nothing else did
    verify disk/bay.db
    [ "$(head -c -65 disk/bay.db | sha256sum | cut -c 1-64)" = "$(tail -c 65 disk/bay.db)" ] || fail "the digest of the copy is not that of its bytes"
done
[ "$killed" -gt 0 ] || fail "no publisher was there to be killed"
expect 0 '' clampbook book publish disk/bay.db --book shop.db
[ "$(tail -c 65 disk/bay.db)" != "$old" ] || fail "the copy was not replaced"
verify disk/bay.db
exit 0
