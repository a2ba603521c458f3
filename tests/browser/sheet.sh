# SPDX-License-Identifier: MIT
# Makes the sheets that the browser is shown, runs it, and looks at what it printed. usage: sheet.sh PROGRAM_FOLDER
set -eu
here=$(cd "$(dirname "$0")" && pwd)
PATH=$(cd "$1" && pwd):$PATH
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
export PATH HOME="$scratch" CLAMPBOOK_BY=Lead
cd "$here"
if [ ! -d node_modules/playwright-core ]; then
    npm ci --no-audit --no-fund --ignore-scripts >"$scratch/npm.log" 2>&1 || { cat "$scratch/npm.log" >&2; exit 1; }
fi
cd "$scratch"
clampbook demo demo.db >/dev/null
clampbook check 1 "34 lbf·ft" --by Bob --book demo.db >/dev/null
clampbook sheet --book demo.db --html good.html >/dev/null
clampbook book new bad.db >/dev/null
name='<img src=x onerror="document.title='"'run'"'"><script>document.title='"'run'"'</script>&amp;"'"'"
clampbook machine add --maker "<b>m" --model "</h2><script>x" --book bad.db >/dev/null
clampbook assembly add "<style>*{display:none}</style>" --machine 1 --book bad.db >/dev/null
clampbook joint add "$name" --role drain --thread M18x1.5 --note "<iframe src=x>" --machine 1 --assembly "<style>*{display:none}</style>" --book bad.db >/dev/null
clampbook enter "32 N·m" --joint 1 --label shop --page "<object>" --note "<svg onload=x>" --book bad.db >/dev/null
clampbook sheet --book bad.db --title "</title><script>document.title='run'</script>" --prepared-by "<u>x" --html bad.html >/dev/null
cp "$here/sheet.mjs" "$here/package.json" .
ln -s "$here/node_modules" node_modules
node sheet.mjs "$scratch/good.html" "$scratch/bad.html" "$scratch"
for paper in A4 Letter; do
    pdftotext -layout $paper.pdf $paper.txt
    [ "$(grep -c 'Tightening, as written' $paper.txt)" -ge 27 ] || { echo "$paper: tables without head" >&2; exit 1; }
    grep -q "Printed copies are out of date" $paper.txt || { echo "$paper: no foot" >&2; exit 1; }
    if grep -q 'both units' $paper.txt; then
        echo "$paper: the search box is printed" >&2
        exit 1
    fi
done
pdfinfo A4.pdf | grep -qE 'Page size: +59[45]' || { echo "A4.pdf is no A4" >&2; exit 1; }
pdfinfo Letter.pdf | grep -qE 'Page size: +612 x 792' || { echo "Letter.pdf is no Letter" >&2; exit 1; }
