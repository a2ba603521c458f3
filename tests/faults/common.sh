# SPDX-License-Identifier: MIT
# Read by each script of this folder: a folder of its own to work in, the program found first, and words for what is
# expected. usage of a script: sh SCRIPT.sh PROGRAM_FOLDER. Exit code 0: held; 1: did not, with a sentence on standard
# error; 77: this machine does not allow the test, with a sentence that says why.
set -u

if [ $# -lt 1 ] || [ ! -x "$1/clampbook" ]; then
    echo "usage: $0 FOLDER_OF_CLAMPBOOK" >&2
    exit 1
fi
faults=$(cd "$(dirname "$0")" && pwd)
PATH=$(cd "$1" && pwd):$PATH
scratch=$(mktemp -d)
home=$scratch/home
mkdir "$home" "$scratch/work"
cd "$scratch/work" || exit 1
leave() {
    cd /
    if [ -n "${writer-}" ]; then
        kill -s KILL -- "-$writer" 2>/dev/null
    fi
    if [ -n "${CLAMPBOOK_OWN_MOUNTS-}" ]; then
        umount "$scratch/work/disk" 2>/dev/null
    fi
    rm -rf "$scratch"
}
trap leave EXIT
trap 'exit 1' HUP INT TERM
HOME=$home LC_ALL=C TZ=UTC CLAMPBOOK_BY=clerk
export PATH HOME LC_ALL TZ CLAMPBOOK_BY
unset CLAMPBOOK_BOOK XDG_DATA_HOME LOCPATH

fail() {
    echo "$(basename "$0"): $*" >&2
    exit 1
}

not_here() {
    echo "$(basename "$0"): $*" >&2
    exit 77
}

need() {
    for tool in "$@"; do
        command -v "$tool" >/dev/null || fail "the test needs $tool"
    done
}

# expect CODE PATTERN COMMAND...: runs the command, its answer into the file `out`, and fails unless it exits with the code
# and says one line on standard error that the pattern fits (nothing at all for an empty pattern). Standard error goes
# through a pipe, so that no limit on files falls on it.
expect() {
    code=$1 pattern=$2
    shift 2
    { "$@" 3>&- 2>&1 >out; echo "$?" >code; } | cat >err
    [ "$(cat code)" = "$code" ] || fail "'$*' exits with $(cat code) instead of $code; it says: $(cat err)"
    if [ -z "$pattern" ]; then
        [ ! -s err ] || fail "'$*' is to say nothing on standard error; it says: $(cat err)"
    else
        [ "$(wc -l <err)" -eq 1 ] || fail "'$*' is to say one line on standard error; it says: $(cat err)"
        grep -qE "$pattern" err || fail "'$*' is to say '$pattern'; it says: $(cat err)"
    fi
}

# Keeps what the book holds, to compare it with what it holds later. The path is left out.
state() {
    clampbook book info --book "$1" --json | grep -v '"path"' || fail "'book info' does not answer for $1"
}

verify() {
    clampbook book verify --book "$1" >verified 2>&1 || fail "$1 is not whole: $(cat verified)"
}

# Starts a command in a session of its own, in the background; its number is then in `writer`, and it can be killed whole.
start() {
    setsid "$@" &
    writer=$!
    tries=0
    until kill -s 0 -- "-$writer" 2>/dev/null || [ "$tries" -ge 200 ]; do
        tries=$((tries + 1))
        sleep 0.01
    done
}

values() {
    clampbook book info --book "$1" | sed -n 's/^  values  *//p'
}

make_book() {
    clampbook demo "$1" >made 2>&1 || fail "the demo book cannot be made: $(cat made)"
}

# Runs the script again where it may mount: `in_own_mounts "$@"`; the rest of the script runs inside.
in_own_mounts() {
    if [ -n "${CLAMPBOOK_OWN_MOUNTS-}" ]; then
        return
    fi
    need unshare mount
    for way in -m -rm; do
        if unshare $way sh -c 'mount -t tmpfs -o size=64k none "$1"' sh "$home" 2>/dev/null; then
            CLAMPBOOK_OWN_MOUNTS=yes unshare $way sh "$faults/$(basename "$0")" "$@"
            exit $?
        fi
    done
    not_here "no disk can be mounted here, neither as root nor in a name space of the user's own"
}
