#!/bin/sh
# SPDX-License-Identifier: MIT
# A lead's day: a new book, its sources, an import with two faults that are told and mended, a second person's check, a conflict
# settled, and the spec sheet in all forms. Everything is invented. Wants `clampbook` on the PATH.
# Usage: compile_spec_sheet.sh FOLDER   a new folder that the book, the rows and the sheets go to
set -eu

. "$(dirname "$0")/show.sh"
folder=${1:?usage: compile_spec_sheet.sh FOLDER}
mkdir "$folder" 2>/dev/null || {
    echo "compile_spec_sheet.sh: '$folder' is there already or can't be made; name a new folder in one that is there" >&2
    exit 2
}
cd "$folder"
CLAMPBOOK_BOOK=yard.db
CLAMPBOOK_BY="demo lead"
export CLAMPBOOK_BOOK CLAMPBOOK_BY

# The same of a command that is to be refused: what it says, and its exit code.
refused() {
    code=0
    show "$@" 2>said || code=$?
    cat said
    rm said
    echo "(exit code $code)"
    [ "$code" -ne 0 ]
}

echo "1. A new book, and the documents on the desk"
show clampbook book new
show clampbook source add --kind manual --title "Workshop manual, Yard carriers (invented)" --number DEMO-WM-01 --edition 2 --date 2021-03-15
show clampbook source add --kind bulletin --title "Bulletin on plugs (invented)" --number DEMO-SB-07 --edition A --date 2023-05-22

echo
echo "2. The old spreadsheet comes in: a slip of the pen and a thread that nobody makes are told, and nothing is taken"
cat >rows.csv <<'ROWS'
machine_maker;machine_model;assembly;joint;role;count;thread;property_class;ring;housing;engagement_mm;tightening;label;source_title;source_number;source_edition;source_date;page;entered_by;note
demo maker (invented);Yard carrier A;rear axle drive;fill plug;fill;1;M20x1.5;;aluminium;EN AC-46000;14;35 N·m;demo;Workshop manual, Yard carriers (invented);DEMO-WM-01;2;2021-03-15;p. 31;demo clerk;renew ring
demo maker (invented);Yard carrier A;rear axle drive;drain plug;drain;1;M18x1.4;;copper;EN AC-46000;12,5;34 N·m;demo;Workshop manual, Yard carriers (invented);DEMO-WM-01;2;2021-03-15;p. 31;demo clerk;renew ring
demo maker (invented);Yard carrier A;rear axle drive;cover screws;cover;10;M8;8.8;;EN AC-46000;16;212 lbf·ft;demo;Workshop manual, Yard carriers (invented);DEMO-WM-01;2;2021-03-15;p. 33;demo clerk;crosswise
demo maker (invented);Yard carrier A;rear axle drive;wheel nuts;wheel;10;M14x1.5;10;;steel;;160 N·m;demo;Workshop manual, Yard carriers (invented);DEMO-WM-01;2;2021-03-15;p. 8;demo clerk;again after 50 km
demo maker (invented);Yard carrier A;drop box;drain plug;drain;1;M22x1.5;;copper;EN-GJL-250;16;50 N·m;demo;Workshop manual, Yard carriers (invented);DEMO-WM-01;2;2021-03-15;p. 41;demo clerk;
demo maker (invented);Yard carrier A;drop box;output flange nut;flange;1;M24x1.5;8;;steel;;20 N·m, 80 N·m, 60°;demo;Workshop manual, Yard carriers (invented);DEMO-WM-01;2;2021-03-15;p. 44;demo clerk;renew the nut
ROWS
refused clampbook import rows.csv

echo
echo "3. Both are mended from the manual; a look first, then all of it or nothing"
sed -i 's/M18x1.4/M18x1.5/; s/212 lbf·ft/212 lbf·in/' rows.csv
show clampbook import rows.csv --dry-run | sed -n '1,5p'
show clampbook import rows.csv | sed -n '1,5p'

echo
echo "4. A second person keys the figures again from the manual"
refused clampbook check 1 "35 N·m" --by "demo clerk"
refused clampbook check 2 "43 N·m" --by "demo second"
for value in '1 35 N·m' '2 34 N·m' '3 24 N·m' '4 160 N·m' '6 20 N·m, 80 N·m, 60°'; do
    show clampbook check "${value%% *}" "${value#* }" --by "demo second" | sed -n '1,2p'
done

echo
echo "5. The bulletin says otherwise of one plug: both are kept until it is settled, with a reason"
show clampbook enter "45 N·m" --joint "drop box drain plug" --label demo --source DEMO-SB-07 --page "p. 2" | sed -n '1,2p'
show clampbook conflicts
show clampbook withdraw 5 --reason "the bulletin replaces page 41" | sed -n '1,2p'
show clampbook check 7 "45 N·m" --by "demo second" | sed -n '1,2p'
show clampbook conflicts

echo
echo "6. The sheet, on the screen and as files"
show clampbook sheet drop box --prepared-by "demo lead"
show clampbook sheet --title "Yard carriers, axles and drop box" --prepared-by "demo lead" --since 4 \
    --html sheet.html --pdf sheet.pdf --svg sheet.svg --xlsx sheet.xlsx
clampbook sheet --csv >sheet.csv
clampbook sheet --json >sheet.json

echo
echo "7. Nobody changed a figure unseen; the whole story goes into a file"
show clampbook audit
clampbook export --json >book.json
ls -- *.csv *.html *.json *.pdf *.svg *.xlsx
