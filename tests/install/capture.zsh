# SPDX-License-Identifier: MIT
# Types a line into a zsh in a terminal of its own, presses Tab, and prints what the completion was given to offer.
# Usage: zsh -f capture.zsh LINE (SCRIPTS: the folder of _clampbook)
zmodload zsh/zpty zsh/datetime
kept=$(mktemp)
export CAPTURE_KEPT=$kept

# Reads on until the mark is in the file of what was kept; without reading, the other shell stops when the terminal is full.
wait_for() {
    local part
    local -F end=$((EPOCHREALTIME + 20))
    while ! grep -qx -e "$1" "$kept"; do
        zpty -rt session part >/dev/null 2>&1
        ((EPOCHREALTIME < end)) || { echo "capture.zsh: no answer ($1)" >&2; exit 1; }
        sleep 0.02
    done
}

zpty session zsh -f -i
zpty -w session 'PROMPT=; unsetopt zle_bracketed_paste 2>/dev/null; LISTMAX=10000; fpath=($SCRIPTS $fpath); autoload -Uz compinit; compinit -C -d $HOME/dump'
zpty -w session 'compadd() { local -a kept; builtin compadd -O kept "$@" 2>/dev/null; (($#kept)) && print -rl -- $kept >>$CAPTURE_KEPT; builtin compadd "$@"; }'
zpty -w session 'finish() { zle kill-whole-line; print "<done>" >>$CAPTURE_KEPT; }; zle -N finish; bindkey "^I" complete-word; bindkey "^X^D" finish'
zpty -w session 'print "<ready>" >>$CAPTURE_KEPT'
wait_for '<ready>'
zpty -n -w session "$1"$'\t'
zpty -n -w session $'\x18\x04'
wait_for '<done>'
zpty -d session
grep -vx -e '<ready>' -e '<done>' "$kept"
rm -f "$kept"
exit 0
