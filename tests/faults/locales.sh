# SPDX-License-Identifier: MIT
# No answer depends on the locale: Turkish (i and ı), German (decimal comma), and a locale that is not there.
. "$(dirname "$0")/common.sh"
need localedef locale
mkdir locales
for name in tr_TR de_DE; do
    localedef -i "$name" -f UTF-8 "locales/$name.UTF-8" >/dev/null 2>&1
    [ -d "locales/$name.UTF-8" ] || fail "the locale $name could not be built"
done
# The locales are in effect: the test would not notice anything otherwise.
[ "$(LOCPATH=$PWD/locales LC_ALL=de_DE.UTF-8 locale decimal_point)" = "," ] || fail "the German locale has no decimal comma"
[ "$(LOCPATH=$PWD/locales LC_ALL=tr_TR.UTF-8 awk 'BEGIN { print toupper("i") }')" != "" ] || fail "the Turkish locale does not work"
make_book shop.db

answers() {
    number=0
    while read -r command; do
        number=$((number + 1))
        echo "== $command"
        # shellcheck disable=SC2086
        eval "clampbook $command" 2>&1
        echo "exit $?"
    done <<'COMMANDS'
convert "24 lbf·ft" --to N·m
convert "12,5 NM" --to lbf·ft --scale 0.5
convert "283 IN-LB" --to n·m --json
convert "1,250 N·m"
thread M18x1.5
thread "m18 x 1,5" --json
thread 3/8-16 unc
thread 1/2-14 npt
strength M10 8.8 --json
strength 3/8-16 UNC GRADE 5
derive M10 8.8 --nut-factor 0.20 --preload 75% --json
derive M10 8.8 --nut-factor 0,20 --condition LUBRICATED
list threads --csv
list WORDS
list words --json
find --book shop.db DRAIN PLUG GRITTER
find --book shop.db drain plug ıİiI
find --book shop.db FILTER LID --json
find --book shop.db TAPÓN DE VACIADO
find --book shop.db ÖLABLASSSCHRAUBE
find --book shop.db wheel nuts gritter
joint list --book shop.db
machine show PATH SWEEPER C --book shop.db --csv
source show demo-wm-03 --book shop.db
history 16 --book shop.db
book info --book shop.db
--help
find --help
FIND drain
COMMANDS
    # What is written into a book is the same as well.
    clampbook book new "$1.db" >/dev/null && clampbook machine add --maker "İIıi" --model "TITAN i" --book "$1.db" &&
        clampbook assembly add GEARBOX ı --machine "titan I" --book "$1.db" &&
        clampbook joint add FILL PLUG --machine "TITAN I" --assembly "gearbox ı" --role FILL --thread "M18x1,5" --ring ALUMINIUM --engagement "12,5 mm" --book "$1.db" &&
        clampbook enter "32,5 NM ± 1,5 nm" --joint "fill plug" --label SHOP --book "$1.db" --on 2024-05-06
    clampbook machine add --maker "İIıi" --model "Titan I" --book "$1.db" 2>&1
    clampbook joint show 1 --book "$1.db" --json
    rm -f "$1".db*
}

answers book >plain
grep -q '^exit 0' plain && grep -q '"as_written": "32,5 NM ± 1,5 nm"' plain || fail "the answers in the C locale are not what is to be compared: $(tail -n 20 plain)"
for name in tr_TR.UTF-8 de_DE.UTF-8; do
    (LOCPATH=$scratch/work/locales LC_ALL=$name LANG=$name && export LOCPATH LC_ALL LANG && answers book) >other
    cmp -s plain other || fail "answers in $name differ: $(diff plain other | head -n 10)"
done
# Locales that are not there, and none at all.
(LC_ALL=tr_TR.UTF-8 && export LC_ALL && answers book) >other
cmp -s plain other || fail "answers in a locale that is not there differ: $(diff plain other | head -n 10)"
(unset LC_ALL && LANG=xx_XX LC_NUMERIC=zz && export LANG LC_NUMERIC && answers book) >other
cmp -s plain other || fail "answers in an unknown locale differ: $(diff plain other | head -n 10)"
(TZ=Pacific/Kiritimati && export TZ && answers book) >other
cmp -s plain other || fail "answers in another time zone differ: $(diff plain other | head -n 10)"
exit 0
