#!/bin/sh
# SPDX-License-Identifier: MIT
# What a shell offers at the Tab, asked of the shell itself: lines.txt beside this holds a line of typing and what must be, or must not
# be, among what is offered.
# Usage: completion_test.sh bash|zsh|fish FOLDER_OF_CLAMPBOOK FOLDER_OF_SCRIPTS
set -eu

if [ $# -ne 3 ]; then
    echo "usage: completion_test.sh bash|zsh|fish FOLDER_OF_CLAMPBOOK FOLDER_OF_SCRIPTS" >&2
    exit 2
fi
shell=$1
PATH=$2:$PATH
scripts=$3
here=$(cd "$(dirname "$0")" && pwd)
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
unset CLAMPBOOK_BOOK CLAMPBOOK_BY XDG_DATA_HOME
HOME=$scratch
LC_ALL=C.UTF-8
export PATH HOME LC_ALL SCRIPTS="$scripts"

fail() {
    echo "completion_test ($shell): $1" >&2
    exit 1
}
command -v "$shell" >/dev/null || fail "the shell is not installed"
cd "$scratch"
clampbook demo yard.db >/dev/null
touch paper.csv
CLAMPBOOK_BOOK=$scratch/yard.db
export CLAMPBOOK_BOOK

# Prints what is offered for the line, one a line.
offered() {
    case $shell in
    bash)
        bash --norc --noprofile -c '
            . "$SCRIPTS/clampbook.bash"
            line=$1
            # Words as readline cuts them: at blanks that are not quoted, and around =.
            COMP_WORDS=() word= quoted=
            for ((i = 0; i < ${#line}; i++)); do
                c=${line:i:1}
                if [[ $c == "\"" ]]; then
                    [[ $quoted ]] && quoted= || quoted=1
                    word+=$c
                elif [[ $c == "\\" ]]; then
                    word+=$c${line:++i:1}
                elif [[ $c == " " && -z $quoted ]]; then
                    [[ $word ]] && COMP_WORDS+=("$word")
                    word=
                elif [[ $c == "=" && -z $quoted ]]; then
                    [[ $word ]] && COMP_WORDS+=("$word")
                    COMP_WORDS+=("=")
                    word=
                else
                    word+=$c
                fi
            done
            # Behind = readline has no empty word, and = itself is the current one.
            [[ -z $word && $line == *= ]] || COMP_WORDS+=("$word")
            COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
            compopt() { FILES=1; }
            _clampbook
            for word in "${COMPREPLY[@]}"; do printf "%s\n" "$word"; done
            [[ $FILES ]] && compgen -f -- "${COMP_WORDS[COMP_CWORD]}"
            exit 0' bash "$1"
        ;;
    fish) fish --no-config -c 'source $SCRIPTS/clampbook.fish; complete -C $argv[1]' "$1" | cut -f1 ;;
    zsh) zsh -f "$here/capture.zsh" "$1" ;;
    esac
}

asked=0
line=
while IFS= read -r row; do
    case $row in
    "> "*)
        line=${row#> }
        line=${line%|} # the mark of the place where Tab is pressed
        offered "$line" >"$scratch/offered"
        asked=$((asked + 1))
        ;;
    "+ "*) grep -qxF -e "${row#+ }" "$scratch/offered" || fail "'$line' is to offer '${row#+ }', and offers: $(head -n 20 "$scratch/offered")" ;;
    "- "*) if grep -qxF -e "${row#- }" "$scratch/offered"; then fail "'$line' is not to offer '${row#- }'"; fi ;;
    "0") if [ -s "$scratch/offered" ]; then fail "'$line' is to offer nothing, and offers: $(head -n 5 "$scratch/offered")"; fi ;;
    "" | "#"*) ;;
    *) fail "completion_lines.txt: '$row' is not understood" ;;
    esac
done <"$here/completion_lines.txt"
[ "$asked" -ge 15 ] || fail "only $asked lines were asked"
echo "$shell: $asked lines"
