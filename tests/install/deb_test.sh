#!/bin/sh
# SPDX-License-Identifier: MIT
# Makes the Debian packages of a build, has lintian look at them, and installs them with dpkg into a folder that holds the files of the
# packages that they depend on and nothing else: what a package forgets to name is missing there. Then the programs run in it. Wants no
# network: what they depend on is copied from this machine.
# Usage: deb_test.sh CPACK BUILD SCRATCH. Exit code 77: this machine lets nobody change the root folder.
set -eu

if [ $# -ne 3 ]; then
    echo "usage: deb_test.sh CPACK BUILD SCRATCH" >&2
    exit 2
fi
if [ "$(id -u)" -ne 0 ]; then
    unshare -r true 2>/dev/null || {
        echo "deb_test: this user may not change the root folder" >&2
        exit 77
    }
    exec unshare -r sh "$0" "$@"
fi
cpack=$1
build=$2
scratch=$3
LC_ALL=C.UTF-8
PATH=$PATH:/usr/sbin:/sbin
export LC_ALL PATH
chroot=$(command -v chroot)
unset CLAMPBOOK_BOOK CLAMPBOOK_BY CLAMPBOOK_PRESS XDG_DATA_HOME FONTCONFIG_FILE

fail() {
    echo "deb_test: $1" >&2
    exit 1
}

rm -rf "$scratch"
mkdir -p "$scratch"
(cd "$build" && "$cpack" -G DEB -B "$scratch/deb" -D CPACK_DEBIAN_COMPRESSION_TYPE=gzip) >"$scratch/cpack.log" 2>&1 || fail "the packages cannot be made: $(tail -n 5 "$scratch/cpack.log")"
clampbook=$(echo "$scratch"/deb/clampbook_*.deb)
press=$(echo "$scratch"/deb/clampbook-press_*.deb)
library=$(echo "$scratch"/deb/libclampbook-dev_*.deb)
lintian --fail-on error,warning "$clampbook" "$press" "$library" >"$scratch/lintian.log" 2>&1 || fail "lintian: $(cat "$scratch/lintian.log")"

field() { dpkg-deb -f "$1" "$2"; }
field "$clampbook" Depends | grep -qxE 'libc6 \(>= [0-9.]+\)' || fail "clampbook depends on more than the C library: $(field "$clampbook" Depends)"
for needed in libpango libcairo2 libxlsxwriter fonts-dejavu-core fonts-dejavu-extra; do
    field "$press" Depends | grep -q "$needed" || fail "clampbook-press does not depend on $needed"
done
dpkg-deb -c "$library" >"$scratch/library"
if grep -q 'impl\.hpp' "$scratch/library"; then fail "the library holds a private header"; fi
grep -q 'usr/include/clampbook/engine/strength\.hpp' "$scratch/library" || fail "the library has no headers"

# The names of installed packages that stand for a line of dependencies, and what those depend on in turn.
closure() {
    lines=$1
    done=
    while [ -n "$lines" ]; do
        next=
        for name in $(echo "$lines" | sed 's/([^)]*)//g; s/|[^,]*//g; s/,/ /g; s/:any//g'); do
            case " $done " in *" $name "*) continue ;; esac
            [ "$(dpkg-query -W -f='${db:Status-Status}\n' "$name" 2>/dev/null | head -n 1)" = installed ] || continue
            done="$done $name"
            next="$next, $(dpkg-query -W -f='${Depends}, ${Pre-Depends}\n' "$name" | head -n 1)"
        done
        lines=$(echo "$next" | tr -d ' ,' | grep -q . && echo "$next" || true)
    done
    echo "$done"
}

# A root folder with those packages in it, for the loader and for dpkg.
root=$scratch/root
new_root() {
    rm -rf "$root"
    mkdir -p "$root/usr/bin" "$root/usr/sbin" "$root/usr/lib" "$root/usr/lib64" "$root/var/lib/dpkg/info" "$root/var/lib/dpkg/updates" "$root/tmp" "$root/root"
    for folder in bin sbin lib lib64; do
        ln -s "usr/$folder" "$root/$folder"
    done
}
add_packages() {
    for name in $(closure "$1"); do
        grep -qx "Package: $name" "$root/var/lib/dpkg/status" 2>/dev/null && continue
        dpkg-query -s "$name" >>"$root/var/lib/dpkg/status"
        echo >>"$root/var/lib/dpkg/status"
        dpkg -L "$name" | grep -vxE '/\.|/bin|/sbin|/lib|/lib64' | sed 's|^/||' >"$scratch/files"
        tar -C / --no-recursion --ignore-failed-read -cf - -T "$scratch/files" 2>/dev/null | tar -C "$root" -xf - --keep-directory-symlink
        : >"$root/var/lib/dpkg/info/$name.list"
    done
}
install_package() { dpkg --root="$root" --no-triggers -i "$1" >"$scratch/dpkg.log" 2>&1; }
inside() { (cd / && env -i PATH=/usr/bin HOME=/root LC_ALL=C.UTF-8 "$chroot" "$root" "$@"); }

new_root
: >"$root/var/lib/dpkg/status"
install_package "$clampbook" && fail "dpkg installs clampbook where the C library is not"
new_root
add_packages "$(field "$clampbook" Depends)"
install_package "$clampbook" || fail "clampbook cannot be installed: $(cat "$scratch/dpkg.log")"
inside clampbook --version >"$scratch/version" || fail "the program does not run with what its package depends on"
head -n 1 "$scratch/version" | grep -qx "clampbook $(field "$clampbook" Version | sed 's/-[^-]*$//')" || fail "another version than the package's: $(cat "$scratch/version")"
inside clampbook demo /tmp/yard.db >/dev/null || fail "no demo can be made"
inside clampbook find --book /tmp/yard.db drop box drain plug | grep -q 'N·m' || fail "nothing is found in the demo"
inside clampbook derive M10 8.8 | grep -q 'torque' || fail "no figure is derived"
inside clampbook complete -- derive M18x | grep -q '^M18x1.5' || fail "nothing is offered at the Tab"
inside clampbook doctor --book /tmp/yard.db --by Ann >"$scratch/doctor" || fail "doctor: exit code $?"
grep -q '^! the program clampbook-press' "$scratch/doctor" || fail "doctor does not say that the press is missing"
inside clampbook sheet --book /tmp/yard.db --pdf /tmp/sheet.pdf >/dev/null 2>"$scratch/err" && fail "a PDF is set without the press"
grep -q 'install the package clampbook-press' "$scratch/err" || fail "without the press: $(cat "$scratch/err")"

install_package "$press" && fail "dpkg installs the press without what it depends on"
dpkg --root="$root" --no-triggers -r clampbook-press >/dev/null 2>&1
add_packages "$(field "$press" Depends)"
install_package "$press" || fail "clampbook-press cannot be installed: $(cat "$scratch/dpkg.log")"
inside clampbook doctor --book /tmp/yard.db --by Ann >"$scratch/doctor" || fail "doctor with the press: exit code $?"
grep -q 'nothing is wrong, and nothing is missing' "$scratch/doctor" || fail "doctor with the press: $(cat "$scratch/doctor")"
inside clampbook sheet --book /tmp/yard.db --pdf /tmp/sheet.pdf --xlsx /tmp/sheet.xlsx --svg /tmp/sheet.svg >/dev/null || fail "no sheet is set"
pdftotext "$root/tmp/sheet.pdf" - | grep -q 'drain plug' || fail "the sheet does not tell of the drain plug"
pdffonts "$root/tmp/sheet.pdf" | grep -q 'DejaVuSansCondensed ' || fail "the sheet is set in other fonts"
inside clampbook teach preload --png /tmp/chart.png >/dev/null || fail "no chart is drawn"

# Papers where a user looks for them.
for page in clampbook clampbook-derive clampbook-book clampbook-press; do
    man -M "$root/usr/share/man" "$page" 2>&1 | col -bx | grep -q "^ *$page - " || fail "no manual page $page"
done
for file in doc/clampbook/copyright doc/clampbook/changelog.gz doc/clampbook/README.md doc/clampbook/examples/one_training_morning.sh \
    bash-completion/completions/clampbook zsh/vendor-completions/_clampbook fish/vendor_completions.d/clampbook.fish \
    clampbook/schema/json/v1/find.schema.json; do
    [ -s "$root/usr/share/$file" ] || fail "/usr/share/$file is not there"
done
[ "$(find "$root/usr/share/man/man1" -name 'clampbook*.1.gz' | wc -l)" -ge 32 ] || fail "manual pages are missing"

dpkg --root="$root" --no-triggers -P clampbook-press clampbook >"$scratch/dpkg.log" 2>&1 || fail "the packages cannot be taken out: $(cat "$scratch/dpkg.log")"
left=$(find "$root/usr" "$root/etc" -name '*clampbook*' 2>/dev/null | head -n 3)
[ -z "$left" ] || fail "this is left behind: $left"
echo "lintian: $(grep -c . "$scratch/lintian.log" || true) lines; $(wc -c <"$clampbook") and $(wc -c <"$press") bytes"
rm -rf "$root"
