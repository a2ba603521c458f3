#!/bin/sh
# SPDX-License-Identifier: MIT
# examples/chain_of_shops.sh against a PostgreSQL that is started here, as nobody in particular, on a socket of its own and no port;
# then what the tables hold against `clampbook export --json`, the way back, hostile text, and each refusal.
# usage: chain_of_shops_test.sh FOLDER_OF_CLAMPBOOK SOURCE_FOLDER
set -eu
PATH=$(cd "$1" && pwd):$PATH
source=$(cd "$2" && pwd)
sql=$source/schema/postgresql
bin=
for folder in /usr/lib/postgresql/*/bin; do
    [ ! -x "$folder/initdb" ] || bin=$folder
done
[ -n "$bin" ] || {
    echo "chain_of_shops_test.sh: PostgreSQL isn't here: apt-get install postgresql" >&2
    exit 1
}
fail() {
    echo "chain_of_shops_test.sh: $*" >&2
    exit 1
}

# A short name: a socket's path has hardly more than 100 bytes.
scratch=$(mktemp -d /tmp/chain-XXXXXX)
server=$scratch/server
# PostgreSQL refuses to run as root.
plain=
[ "$(id -u)" -ne 0 ] || plain="setpriv --reuid=65534 --regid=65534 --clear-groups"
leave() {
    cd /
    [ ! -e "$server/postmaster.pid" ] || $plain "$bin/pg_ctl" -D "$server" -m immediate stop >/dev/null 2>&1 || true
    rm -rf "$scratch"
}
trap leave EXIT
trap 'exit 1' HUP INT TERM
mkdir "$server" "$scratch/home"
chmod 755 "$scratch"
[ -z "$plain" ] || chown 65534:65534 "$server"
cd "$scratch"
HOME=$scratch/home LC_ALL=C.UTF-8 TZ=UTC
export PATH HOME LC_ALL TZ
unset CLAMPBOOK_BOOK CLAMPBOOK_BY XDG_DATA_HOME PGHOSTADDR PGPORT PGSERVICE PGPASSWORD PGOPTIONS
$plain "$bin/initdb" -D "$server" -U chain -A trust -E UTF8 --locale=C --no-sync >initdb.log 2>&1 || fail "$(cat initdb.log)"
$plain "$bin/pg_ctl" -w -D "$server" -l "$server/log" -o "-c listen_addresses='' -c unix_socket_directories='$server' -c fsync=off" start >start.log 2>&1 ||
    fail "$(cat start.log "$server/log")"
PGHOST=$server PGUSER=chain PGDATABASE=chain
export PGHOST PGUSER PGDATABASE
psql -X -q -d postgres -c "CREATE DATABASE chain"
ask() { psql -X -q -A -t -v ON_ERROR_STOP=1 -c "$1"; }
load() { psql -X -q -v shop="$2" -f "$sql/load_$1.sql" <"$3"; }
# refused PATTERN COMMAND...: it fails and says so.
refused() {
    pattern=$1
    shift
    if "$@" >out 2>err; then fail "'$*' is not refused"; fi
    grep -qE "$pattern" err || fail "'$*' is refused with: $(cat err)"
}

sh "$source/examples/chain_of_shops.sh" day >told 2>&1 || fail "$(cat told)"
grep -q '65 N·m  *| south  *| 80 N·m' told || fail "the example tells of no disagreement: $(cat told)"
grep -q '33.2 lbf·ft' told || fail "the example's last lookup finds nothing: $(tail told)"
cd day

# Every current value of the export, with its second person, stands in the table; nothing else does.
for yard in north south; do
    clampbook export --json --book $yard-published.db >$yard.json
    ask "COPY (SELECT machine_maker, machine, assembly, joint, count, thread, safety_critical, tightening, label, source, page, entered_by,
        entered_on, checked_by, checked_on, newton_metres, angle FROM current_value WHERE shop = '$yard') TO STDOUT (FORMAT csv, HEADER)" >$yard-table.csv
    /usr/bin/python3 "$source/tests/growing/same_values.py" $yard.json $yard-table.csv
done
[ "$(ask "SELECT count(*) FROM current_value")" -eq 231 ] || fail "there are $(ask "SELECT count(*) FROM current_value") values"
[ "$(ask "SELECT count(*) FROM value_row")" -eq 236 ] || fail "there are $(ask "SELECT count(*) FROM value_row") rows"
[ "$(ask "SELECT count(*) FROM disagreement")" -eq 1 ] || fail "the disagreements are $(ask "SELECT * FROM disagreement")"
# Angles and hand-tight: each alone makes a disagreement, and the same does not.
ask "BEGIN; UPDATE value_figure SET angle = 91 WHERE shop = 'south' AND angle IS NOT NULL; SELECT count(*) FROM disagreement" >count
[ "$(cat count)" -eq $(($(ask "SELECT count(*) FROM value_figure WHERE shop = 'south' AND angle IS DISTINCT FROM 91 AND angle IS NOT NULL") + 1)) ] || fail "other angles make $(cat count) disagreements"
ask "BEGIN; UPDATE value_figure SET newton_metres = NULL, newton_metres_low = NULL, newton_metres_high = NULL WHERE shop = 'south'
    AND value = (SELECT value FROM value_row WHERE shop = 'south' AND joint = 'level plug' LIMIT 1); SELECT count(*) FROM disagreement" >count
[ "$(cat count)" -eq 2 ] || fail "a torque on one side alone makes $(cat count) disagreements"

# The way back: the same cells, and a book made from them gives the same file.
way_back() {
    ask "COPY (SELECT * FROM exchange_rows(ARRAY(SELECT id FROM value_row WHERE shop = '$1'))) TO STDOUT (FORMAT csv, HEADER)" >"$1-back.csv"
    /usr/bin/python3 -c 'import csv, sys
a, b = (list(csv.reader(open(name, encoding="utf-8", newline=""))) for name in sys.argv[1:])
sys.exit(None if a == b else f"{sys.argv[1]}: {[(x, y) for x, y in zip(a, b) if x != y][:2]}")' "$1-back.csv" "$1-rows.csv"
    clampbook book new "$1-again.db" --by lead >/dev/null
    clampbook import "$1-back.csv" --by lead --book "$1-again.db" >/dev/null
    clampbook export --csv --book "$1-again.db" | cmp - "$1-rows.csv" || fail "the rows of $1 come back otherwise"
}
way_back north
way_back south

# Text that a spreadsheet would run, quotes, line feeds, backslashes, apostrophes.
clampbook book new odd.db --by lead >/dev/null
clampbook source add --book odd.db --by lead --title "=cmd()" --number "@7" >/dev/null
clampbook machine add --book odd.db --by lead --maker "+maker" --model "-X" --variant "'=quoted" >/dev/null
clampbook assembly add "a, b; \"c\"" --book odd.db --by lead --machine "-X" >/dev/null
clampbook joint add "say \"plug\" \\N" --role drain --thread M18x1.5 --machine "-X" --assembly "a, b; \"c\"" --note "'so' they say" --book odd.db --by lead >/dev/null
clampbook joint add "bare" --role other --machine "-X" --assembly "a, b; \"c\"" --book odd.db --by lead >/dev/null
clampbook enter "32 ± 3 N·m" --joint 1 --label maker --source @7 --page "=1" --note "-" --by "@Ann" --book odd.db >/dev/null
clampbook check 1 "32 ± 3 N·m" --by "+Bob" --book odd.db >/dev/null
clampbook enter "hand-tight + 1 turn" --joint 1 --label practice --by Ann --book odd.db >/dev/null
revision=$(clampbook book info --book odd.db | sed -n 's/^  events *//p')
clampbook supersede 2 "hand-tight + 1/2 turn" --reason "too tight" --by Ann --book odd.db >/dev/null
clampbook export --csv --book odd.db >odd-rows.csv
clampbook sheet --csv --since "$revision" --book odd.db >odd-sheet.csv
grep -q ',superseded,' odd-sheet.csv || fail "the sheet tells of nothing that ended"
load rows odd odd-rows.csv
load sheet odd odd-sheet.csv
[ "$(ask "SELECT machine_maker, machine, source, page, value_note, checked_by, newton_metres_low, newton_metres_high FROM current_value WHERE shop = 'odd' AND label = 'maker'")" = \
    "+maker|-X, '=quoted|=cmd(), @7|=1|-|+Bob|29|35" ] || fail "the odd row is $(ask "SELECT * FROM current_value WHERE shop = 'odd'")"
way_back odd
# Every column that takes free text.
ask "INSERT INTO shop (name) VALUES ('guard')"
free="machine_maker, machine_model, machine_variant, assembly, joint, property_class, form, ring, housing, tightening, source_kind, source_title, source_number, source_edition, page, entered_by, note, value_note, confirmed"
row() { echo "INSERT INTO value_row (shop, $free, role, count, thread, safety_critical, label, source_date, entered_on) VALUES ('guard', $1, 'other', 1, '', false, 'shop', '${2-}', '2026-01-01');"; }
cells() { ask "SELECT DISTINCT cell FROM (SELECT $free FROM $1) r, LATERAL unnest(ARRAY[$free]) cell ORDER BY cell"; }
# One column at a time, each of the others with its own name in it.
echo "$free" | awk -v FS=', ' -v q="'" '{ for (i = 1; i <= NF; ++i) { line = ""; for (j = 1; j <= NF; ++j) line = line (j > 1 ? ", " : "") q (i == j ? q q "=x" : $j) q; print line } }' >each-alone
ask "$(number=1000; while read -r values; do number=$((number + 1)); row "$values" "$number"; done <each-alone)"
[ "$(ask "SELECT count(*) FROM value_row WHERE shop = 'guard'")" -eq 19 ] || fail "not each column was tried alone"
[ "$(cells "value_row WHERE shop = 'guard'" | head -n 1)" = "=x" ] || fail "an apostrophe stays: $(cells "value_row WHERE shop = 'guard'" | head -n 1)"
for cell in "'=x" "''-x" "'＝x" "'x" "x'=" "'	x"; do
    quoted=$(echo "$cell" | sed "s/'/''/g; s/.*/'&'/")
    all=$(echo "$free" | sed "s/[a-z_]*\(, \)*/$quoted\1/g")
    ask "DELETE FROM value_row WHERE shop = 'guard'; $(row "$all")"
    case $cell in "'x" | "x'=") kept=$cell ;; *) kept=${cell#\'} ;; esac
    [ "$(cells "value_row WHERE shop = 'guard'")" = "$kept" ] || fail "$cell is kept as: $(cells "value_row WHERE shop = 'guard'")"
    back=$(cells "exchange_rows(ARRAY(SELECT id FROM value_row WHERE shop = 'guard'))")
    [ "$back" = "$cell" ] || fail "$cell comes back as: $back"
done
ask "DELETE FROM value_row WHERE shop = 'guard'; DELETE FROM shop WHERE name = 'guard'"

# The same once more is the same; another shop stays as it is.
ask "SELECT shop, value FROM value_row ORDER BY 1, 2" >before
load rows north north-rows.csv
[ "$(ask "SELECT count(*) FROM value_figure WHERE shop = 'north'")" -eq 0 ] || fail "figures of the older sheet are left"
load sheet north north-sheet.csv
ask "SELECT shop, value FROM value_row ORDER BY 1, 2" | cmp - before || fail "a second load is not the first"

# What is refused leaves all as it was.
state() { ask "SELECT shop, value, checked_by, newton_metres FROM value_row LEFT JOIN value_figure USING (shop, value) ORDER BY 1, 2"; }
state >before
sed '1s/assembly/assemblies/' north-rows.csv >bad.csv
refused 'column name mismatch' load rows north bad.csv
sed 's/,demo,manual,/,rumour,manual,/' north-rows.csv >bad.csv
refused ck_value_row_label load rows north bad.csv
{ cat north-rows.csv; sed -n 2p north-rows.csv; } >bad.csv
refused uq_value_row load rows north bad.csv
head -c 3000 north-rows.csv >bad.csv
refused 'missing data for column|unterminated CSV' load rows north bad.csv
refused fk_value_figure_row load sheet north south-sheet.csv
grep -v ',40 N·m,' north-sheet.csv >bad.csv
refused 'The sheet lacks [1-9][0-9]* of the values' load sheet north bad.csv
sed '1s/standing/stands/' north-sheet.csv >bad.csv
refused 'column name mismatch' load sheet north bad.csv
state | cmp - before || fail "a refused load left something behind"

# Each named check refuses what it is there for; none is without a case.
: >named
while IFS='|' read -r name change; do
    refused "\"$name\"" ask "$change"
    echo "$name" >>named
done <<'CASES'
ck_shop_name|INSERT INTO shop (name) VALUES ('')
ck_value_row_maker|UPDATE value_row SET machine_maker = '' WHERE id = (SELECT min(id) FROM value_row)
ck_value_row_model|UPDATE value_row SET machine_model = '' WHERE id = (SELECT min(id) FROM value_row)
ck_value_row_assembly|UPDATE value_row SET assembly = '' WHERE id = (SELECT min(id) FROM value_row)
ck_value_row_joint|UPDATE value_row SET joint = '' WHERE id = (SELECT min(id) FROM value_row)
ck_value_row_role|UPDATE value_row SET role = 'plug'
ck_value_row_count|UPDATE value_row SET count = 0
ck_value_row_engagement|UPDATE value_row SET engagement_mm = 1000
ck_value_row_label|UPDATE value_row SET label = 'hearsay'
ck_value_row_figure|UPDATE value_row SET tightening = '' WHERE label = 'shop'
ck_value_row_figure|UPDATE value_row SET entered_on = NULL WHERE label = 'shop'
ck_value_row_maker_source|UPDATE value_row SET label = 'maker', page = '' WHERE label = 'shop'
fk_value_row_shop|UPDATE value_row SET shop = 'nowhere' WHERE shop = 'odd' AND label = ''
ck_value_figure_band|UPDATE value_figure SET newton_metres_low = newton_metres_high + 1
ck_value_figure_check|UPDATE value_figure SET checked_by = 'Bob' WHERE checked_on IS NULL
fk_value_figure_row|UPDATE value_figure SET shop = 'south' WHERE shop = 'odd'
uq_value_row|INSERT INTO value_row (shop, machine_maker, machine_model, machine_variant, assembly, joint, role, count, thread, property_class, form, ring, housing, safety_critical, tightening, label, source_kind, source_title, source_number, source_edition, source_date, page, entered_by, entered_on, note, value_note, confirmed) SELECT shop, machine_maker, machine_model, machine_variant, assembly, joint, role, count, thread, property_class, form, ring, housing, safety_critical, tightening, label, source_kind, source_title, source_number, source_edition, source_date, page, entered_by, entered_on, note, value_note, confirmed FROM value_row
pk_value_figure|INSERT INTO value_figure SELECT * FROM value_figure
pk_shop|INSERT INTO shop (name) VALUES ('north')
pk_value_row|INSERT INTO value_row OVERRIDING SYSTEM VALUE SELECT id, shop, machine_maker, machine_model, machine_variant, assembly, joint, role, count, thread, property_class, form, ring, housing, engagement_mm, safety_critical, 'another', label, source_kind, source_title, source_number, source_edition, source_date, page, entered_by, entered_on, note, value_note, confirmed FROM value_row WHERE label <> ''
CASES
ask "SELECT conname FROM pg_constraint WHERE connamespace = 'public'::regnamespace ORDER BY 1" >constraints
sort -u named | diff - constraints >untried || fail "constraints without a case: $(cat untried)"
state | cmp - before || fail "a refused change left something behind"

# Only the socket: no port is open.
[ "$(sed -n 6p "$server/postmaster.pid")" = "" ] || fail "the server listens on $(sed -n 6p "$server/postmaster.pid")"
echo "$(ask "SELECT count(*) FROM current_value") values of $(ask "SELECT count(*) FROM shop") shops"
