# SPDX-License-Identifier: MIT
# A book on a read-only disk is read, whole and whatever state it was left in; each writing is refused in a sentence.
. "$(dirname "$0")/common.sh"
here=$(cd "$1" && pwd)
in_own_mounts "$here"
need sqlite3

mkdir disk && mount -t tmpfs -o size=16m none disk || fail "no disk could be mounted"
make_book disk/fresh.db
make_book disk/read.db
clampbook find --book disk/read.db drain >/dev/null || fail "the book cannot be read"
# One that another program still holds changes for, in its log alone; and one whose log lost its companion.
make_book held.db
sqlite3 held.db >/dev/null <<'SQL' || fail "the held book could not be made"
.filectrl persist_wal 1
PRAGMA wal_autocheckpoint = 0;
CREATE TABLE held (x);
DROP TABLE held;
.shell cp held.db held.db-wal disk/
SQL
[ -s disk/held.db-wal ] || fail "the held book has no log"
state disk/fresh.db >before
(cd disk && sha256sum *) >sums
touch disk/probe && rm disk/probe || fail "the disk cannot be written even before"
mount -o remount,ro disk || fail "the disk could not be made read-only"
touch disk/probe 2>/dev/null && fail "the disk is not read-only"

expect 0 '' clampbook doctor --book disk/fresh.db --by Ann
grep -q 'may be written *no' out && grep -q "^! 'disk/fresh.db' can be read and not written" out || fail "doctor does not say that the disk is read-only: $(cat out)"
for book in fresh read; do
    expect 0 '' clampbook find --book disk/$book.db drain plug drop box
    grep -q '65 N·m   47.9 lbf·ft' out || fail "find on a read-only disk answers otherwise: $(cat out)"
    expect 0 '' clampbook book verify --book disk/$book.db
    expect 0 '' clampbook history 1 --book disk/$book.db
    expect 1 "^clampbook: 'disk/$book.db' .*(read-only|may be written)" \
        clampbook enter "32 N·m" --joint 1 --label shop --book disk/$book.db
    expect 1 "^clampbook: 'disk/$book.db' .*(read-only|may be written)" \
        clampbook machine add --maker a --model b --book disk/$book.db
    state disk/$book.db | cmp -s before - || fail "the book on the read-only disk tells otherwise than before"
done
# What stands in the log alone cannot be seen from a read-only disk: it is told, and never answered from half a book.
expect 1 "^clampbook: 'disk/held.db' " clampbook find --book disk/held.db drain plug drop box
[ ! -s out ] || fail "find answers from half a book: $(cat out)"
expect 1 "^clampbook: '?disk/new.db'? .*" clampbook book new disk/new.db
expect 1 "^clampbook: '?disk/new.db(.draft)?'? .*" clampbook demo disk/new.db
expect 1 "^clampbook: '?disk/new.db'? .*" clampbook book backup --book disk/fresh.db disk/new.db
expect 1 "^clampbook: .*disk/sub.*" clampbook book new disk/sub/new.db
expect 0 '' clampbook book backup --book disk/fresh.db copy.db
verify copy.db
(cd disk && sha256sum *) | cmp -s sums - || fail "a file on the read-only disk changed"

# The file alone is write-protected: the same, for whoever is not root.
if [ "$(id -u)" -ne 0 ] || command -v setpriv >/dev/null; then
    make_book locked.db
    chmod 444 locked.db
    mkdir locked && mv locked.db locked/ && chmod 555 locked
    plain=
    if [ "$(id -u)" -eq 0 ]; then
        chmod 755 "$scratch" "$scratch/work"
        plain="setpriv --reuid=65534 --regid=65534 --clear-groups"
        $plain clampbook --version >/dev/null 2>&1 || plain=
    fi
    if [ "$(id -u)" -ne 0 ] || [ -n "$plain" ]; then
        expect 0 '' $plain clampbook find --book locked/locked.db drain plug drop box
        expect 1 "^clampbook: 'locked/locked.db' .*(read-only|may be written)" \
            $plain clampbook enter "32 N·m" --joint 1 --label shop --book locked/locked.db
        # Not even read.
        chmod 0 locked/locked.db
        for ask in "find drain" "book info" "book verify" audit "book backup copy.db" "enter 5Nm --joint 1 --label shop"; do
            expect 4 "^clampbook: 'locked/locked.db' cannot be read: the file may not be opened\$" $plain clampbook $ask --book locked/locked.db
        done
    fi
    chmod 755 locked
fi
exit 0
