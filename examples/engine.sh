#!/bin/sh
# SPDX-License-Identifier: MIT
# The seven computations, each on a question of the workshop, with its answer's first lines. Wants `clampbook` on the PATH.
# Usage: engine.sh
set -eu

# Shows a command as it would be typed, then the lines of its answer that begin with one of the words given.
ask() {
    question=$1
    words=$2
    shift 2
    printf '\n%s\n$' "$question"
    for word; do
        case $word in
        *' '*) printf ' "%s"' "$word" ;;
        *) printf ' %s' "$word" ;;
        esac
    done
    printf '\n'
    "$@" | grep -E "^  ($words)"
}

ask "1. Where does the torque of an M10 8.8 go?" "torque T|preload F|pitch|friction in the thread  |friction under the head  " \
    clampbook derive M10 8.8 --friction 0.12

ask "2. The wrench is right to 4 %. How far is the preload from what was meant?" "least|most|tightening factor|5 % lie|95 % lie|falls" \
    clampbook scatter M10 8.8 --torque "40 N·m" --friction 0.10..0.16 --tool 4% --needed 20kN

ask "3. The same screw in a die-cast housing: what gives first, and how deep is deep enough?" "load at|what goes|so that" \
    clampbook strip M10 8.8 --housing "EN AC-46000" --engagement 12mm

ask "4. A drain plug with a copper ring in that housing:" "window|advice|at least|at most|strips" \
    clampbook plug M18x1.5 --housing "EN AC-46000" --ring copper
ask "   and with a steel ring:" "window|why" \
    clampbook plug M18x1.5 --housing "EN AC-46000" --ring steel

ask "5. 20 N·m and a quarter turn:" "preload F|yields from|the screw  |of it for good" \
    clampbook angle M10 8.8 --grip 40mm --under steel --snug "20 N·m" --turn 90°

ask "6. 32 N·m with a crow's foot of 50 mm:" "set|nearest|off|fits|so the" \
    clampbook wrench "32 N·m" --adapter 50mm --length 300mm --unit lbf·ft --scale 0.5 --tool "II A" --maximum "100 N·m"

printf '\n7. Somebody types lbf·ft where the source says lbf·in:\n'
book=$(mktemp -d)
trap 'rm -rf "$book"' EXIT
clampbook demo "$book/yard.db" >"$book/told"
printf '$ clampbook enter "106 lbf·ft" --joint "path sweeper bevel gearbox level plug" --label shop --by clerk\n'
clampbook enter "106 lbf·ft" --joint "path sweeper bevel gearbox level plug" --label shop --by clerk --book "$book/yard.db" 2>&1 && exit 1
echo "exit code $?"
