#!/bin/sh
# SPDX-License-Identifier: MIT
# Installs the Debian 12 packages that clampbook is built with, with `test` also those that its tests call, and with `bench` those
# that only the measurements want. Touches neither apt nor the network where all of them are there already.
# Usage: install_packages.sh build|test|bench
set -eu

packages="g++ cmake ninja-build ccache libsqlitecpp-dev libsqlite3-dev libcli11-dev libfmt-dev nlohmann-json3-dev libcsv-dev
nettle-dev pkg-config libpango1.0-dev libcairo2-dev libxlsxwriter-dev fonts-dejavu-core fonts-dejavu-extra"
test_packages="catch2 librapidcheck-dev sqlite3 units locales clang-format-14 clang-format clang-tidy poppler-utils chromium
python3-jsonschema python3-openpyxl faketime man-db mandoc groff zsh fish lintian postgresql cppcheck valgrind libc6-dbg"

case "${1-}" in
build) ;;
test) packages="$packages $test_packages" ;;
bench) packages="$packages $test_packages hyperfine libbenchmark-dev time" ;;
*)
    echo "usage: install_packages.sh build|test|bench" >&2
    exit 2
    ;;
esac

if ! command -v dpkg-query >/dev/null || ! command -v apt-get >/dev/null; then
    echo "install_packages.sh: this is no Debian; what the build may miss is called there: $packages" >&2
    exit 0
fi

# A browser's test needs Node.js; one that is there from elsewhere will do.
if [ "$1" = test ] && ! command -v npm >/dev/null; then
    packages="$packages nodejs npm"
fi

missing=
for package in $packages; do
    state=$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null || true)
    [ "$state" = installed ] || missing="$missing $package"
done
if [ -z "$missing" ]; then
    exit 0
fi

as_root=
if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null; then
        echo "install_packages.sh: as root, please: apt-get install$missing" >&2
        exit 1
    fi
    as_root=sudo
fi
echo "Installing:$missing"
$as_root apt-get update -q
# shellcheck disable=SC2086 # a list of words
$as_root env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends $missing
