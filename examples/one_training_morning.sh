#!/bin/sh
# SPDX-License-Identifier: MIT
# A trainer's morning: what clamps and what the wrench shows, where the torque goes, why a bolt chart ruins a sump, a chart for the
# wall, a worksheet with its key, and the booklet to take home. Everything is computed; no maker's figure stands in it. Wants
# `clampbook` and `clampbook-press` on the PATH.
# Usage: one_training_morning.sh FOLDER   a new folder that the handouts go to
set -eu

. "$(dirname "$0")/show.sh"
folder=${1:?usage: one_training_morning.sh FOLDER}
mkdir "$folder" 2>/dev/null || {
    echo "one_training_morning.sh: '$folder' is there already or can't be made; name a new folder in one that is there" >&2
    exit 2
}
cd "$folder"

echo "1. What there is to teach"
show clampbook teach

echo
echo "2. On the screen: what a tightened screw is, with the screw that lies on the bench"
show clampbook teach preload --thread M12 --class 10.9 --grip 50mm

echo
echo "3. A drop of oil, and the nut factor behind it"
show clampbook teach shares --oiled 0.09 | sed -n -e '/^\$/p' -e '/^To grasp/,/^The computation/p'
show clampbook teach nut-factor --nut-factor 0.18 | sed -n -e '/^\$/p' -e '/^To grasp/,/^The computation/p'

echo
echo "4. A better wrench hardly helps: ±4 % and ±1 %"
show clampbook teach scatter | grep -e '^\$' -e 'The wrench is right'
show clampbook teach scatter --tool 1% | grep -e '^\$' -e 'The wrench is right'

echo
echo "5. The sump plug: its window, and the bolt chart beside it"
show clampbook teach plug --ring aluminium --answers | sed -n -e '/^\$/p' -e '/^The torques of one plug/,$p'

echo
echo "6. A chart for the wall, and the same as a table"
show clampbook derive M6,M8,M10,M12 8.8,10.9 --friction 0.12 --pdf wall.pdf
show clampbook derive M8,M10 8.8 --friction 0.08..0.16:0.04

echo
echo "7. A worksheet for twelve, its key on pages of its own, and an easy one for the break"
show clampbook teach exercises --count 12 --seed 7 --answers --pdf exercises.pdf
show clampbook teach exercises --count 3 --seed 3 --level 1 --topics conversion,adapter,slip --answers

echo
echo "8. Handouts, drawings for the slides, and the booklet"
show clampbook teach order --pdf order.pdf --html order.html
for lesson in preload nut-factor angle; do
    show clampbook teach "$lesson" --svg "$lesson.svg" --png "$lesson.png"
done
show clampbook teach strip --csv >strip.csv
show clampbook teach all --answers --pdf booklet.pdf
ls -- *.csv *.html *.pdf *.png *.svg
