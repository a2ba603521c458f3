# SPDX-License-Identifier: MIT
# Read by the examples that show commands and their answers.

# Shows a command as it would be typed, and its answer.
show() {
    printf '$'
    for word; do
        case $word in
        *[\ \;\(]*) printf ' "%s"' "$word" ;;
        *) printf ' %s' "$word" ;;
        esac
    done
    printf '\n'
    "$@"
}
