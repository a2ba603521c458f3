# SPDX-License-Identifier: MIT
# A reader that goes away early, as `head` does: no signal, one sentence, exit code 1, and no more work than needed.
. "$(dirname "$0")/common.sh"
need mkfifo timeout
told='^clampbook: the answer could not be written in full: its reader closed the pipe'

# The answers are longer than what a pipe holds, so that the writer sees the end of its reader.
for command in "list words" "list words --csv" "list words --json"; do
    mkfifo pipe
    # shellcheck disable=SC2086
    (clampbook $command >pipe 2>err; echo "$?" >code) &
    head -n 1 <pipe >first
    wait
    rm pipe
    [ -s first ] || fail "'$command | head -n 1' shows nothing"
    [ "$(cat code)" = 1 ] || fail "'$command' exits with $(cat code) where its reader closed the pipe"
    [ "$(wc -l <err)" -eq 1 ] && grep -q "$told" err || fail "'$command' says where its reader closed the pipe: $(cat err)"
done

# An endless stream ends with its reader.
endless() {
    (yes '32 N·m' | clampbook convert --batch --to lbf·ft 2>err; echo "$?" >code) | head -n 2 >first
}
mkfifo done
(endless; echo ended >done) &
timeout 20 cat done >ended || fail "the conversion of a stream does not end with its reader"
wait
[ "$(cat first)" = "32 N·m = 23.6 lbf·ft
32 N·m = 23.6 lbf·ft" ] || fail "the stream shows: $(cat first)"
[ "$(cat code)" = 1 ] || fail "the stream ends with $(cat code)"
[ "$(wc -l <err)" -eq 1 ] && grep -q "$told" err || fail "the stream says at its end: $(cat err)"

# A reader that reads everything is answered in full.
clampbook list words >whole || fail "list words does not answer"
clampbook list words | cat | cmp -s - whole || fail "a pipe gives another answer than a file"
exit 0
