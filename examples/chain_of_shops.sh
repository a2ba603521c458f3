#!/bin/sh
# SPDX-License-Identifier: MIT
# Two yards of one chain: each publishes its book and exports it; PostgreSQL takes both with its own COPY and tells where they
# disagree, what one has and the other lacks, and finds joints by words; what is lacking goes back as rows that `clampbook import`
# takes. Everything is invented. Wants `clampbook` on the PATH, and a PostgreSQL 15 or newer that `psql` reaches with an empty
# database by PGHOST, PGDATABASE and so on.
# Usage: chain_of_shops.sh FOLDER   a new folder that books, copies and rows go to
set -eu

. "$(dirname "$0")/show.sh"
sql=$(cd "$(dirname "$0")/../schema/postgresql" && pwd)
folder=${1:?usage: chain_of_shops.sh FOLDER}
mkdir "$folder" 2>/dev/null || {
    echo "chain_of_shops.sh: '$folder' is there already or can't be made; name a new folder in one that is there" >&2
    exit 2
}
cd "$folder"
ask() { show psql -X -q -v ON_ERROR_STOP=1 -P footer=off -c "$1"; }

echo "1. Two yards with the same machines (invented); each goes its own way"
clampbook demo north.db >/dev/null
clampbook demo south.db >/dev/null
# The command, and how its answer begins.
begin() {
    show "$@" >said
    sed -n 1,2p said
    rm said
}
north() { begin clampbook "$@" --by "demo lead north" --book north.db; }
south() { begin clampbook "$@" --by "demo lead south" --book south.db; }
north check 2 "65 N·m"
north enter "45 N·m" --joint "Yard carrier A drop box drain plug" --label shop --note "by trial"
south supersede 2 "80 N·m" --reason "leaks at 65 N·m"
south supersede 3 "48 lbf·ft" --reason "the wrench shows lbf·ft"

echo
echo "2. Each publishes its book, and takes rows and sheet from that one copy"
for yard in north south; do
    $yard book publish $yard-published.db
    clampbook export --csv --book $yard-published.db >$yard-rows.csv
    clampbook sheet --csv --book $yard-published.db >$yard-sheet.csv
done
wc -l north-rows.csv south-rows.csv

echo
echo "3. The tables, once; then each yard's rows and sheet, as often as it publishes"
for part in 001_rows 002_views; do
    show psql -X -q -v ON_ERROR_STOP=1 -f "$sql/$part.sql"
done
for yard in north south; do
    show psql -X -q -v shop=$yard -f "$sql/load_rows.sql" <$yard-rows.csv
    show psql -X -q -v shop=$yard -f "$sql/load_sheet.sql" <$yard-sheet.csv
done
ask "SELECT shop, count(*) AS values, count(*) FILTER (WHERE checked_by <> '') AS checked FROM current_value GROUP BY shop ORDER BY shop"

echo
echo "4. By words, in every yard at once"
ask "SELECT shop, machine, tightening, round(newton_metres::numeric, 1) AS newton_metres, checked_by, page FROM current_value
  WHERE words @@ websearch_to_tsquery('simple', 'gritter drop box drain plug') ORDER BY shop"

echo
echo "5. Where the yards disagree; 65 N·m and 48 lbf·ft is no disagreement"
ask "SELECT machine, joint, shop, tightening, other_shop, other_tightening FROM disagreement ORDER BY machine, joint"

echo
echo "6. What one yard lacks and the other has, and back to it as rows"
ask "SELECT lacking_shop, machine, joint, shop, tightening, label FROM known_elsewhere ORDER BY machine, joint"
psql -X -q -v ON_ERROR_STOP=1 -c "COPY (SELECT * FROM exchange_rows(ARRAY(SELECT id FROM known_elsewhere WHERE lacking_shop = 'south'))) TO STDOUT (FORMAT csv, HEADER)" >for-south.csv
south import for-south.csv
show clampbook find yard carrier a drop box drain plug --book south.db
