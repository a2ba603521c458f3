# SPDX-License-Identifier: MIT
# Completion of bash for clampbook: the program itself is asked what may stand here, so nothing of it is repeated.
_clampbook() {
    COMPREPLY=()
    local -a words=()
    local word candidate what
    for word in "${COMP_WORDS[@]:1:COMP_CWORD}"; do
        word=${word//\\/} # as typed: quotes and backslashes are still in it
        words+=("${word//[\"\']/}")
    done
    while IFS=$'\t' read -r candidate what; do
        if [[ $candidate == '<file>' ]]; then
            compopt -o default 2>/dev/null
        else
            COMPREPLY+=("$candidate")
        fi
    done < <("${COMP_WORDS[0]}" complete -- "${words[@]}" 2>/dev/null)
}
# `filenames` quotes blanks, as they stand in names of joints and classes.
complete -o filenames -F _clampbook clampbook
