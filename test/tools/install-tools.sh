#!/usr/bin/env bash
# Installs what the tests need and the machine lacks: Chromium, LibreOffice Calc, Gnumeric, poppler, Redis, OpenSSL, systemd's checker
# and three font families.
# Does nothing, and needs no rights and no network, where everything is there.
set -euo pipefail

# What to look for, and the Debian package that brings it.
missing=()
# Chromium without its windows opens a page in half the processor time; the whole browser does too.
{ command -v chromium-headless-shell || command -v chromium; } >/dev/null || missing+=(chromium-headless-shell)
command -v soffice >/dev/null || missing+=(libreoffice-calc)
{ command -v pdftoppm && command -v pdftotext; } >/dev/null || missing+=(poppler-utils)
command -v ssconvert >/dev/null || missing+=(gnumeric)
command -v redis-server >/dev/null || missing+=(redis-server)
command -v openssl >/dev/null || missing+=(openssl)
command -v systemd-analyze >/dev/null || missing+=(systemd)
fonts=$(fc-list 2>/dev/null || true)
grep -qi dejavu <<<"$fonts" || missing+=(fonts-dejavu)
grep -qi liberation <<<"$fonts" || missing+=(fonts-liberation)
grep -qi carlito <<<"$fonts" || missing+=(fonts-crosextra-carlito)

if [ ${#missing[@]} -eq 0 ]; then
  echo 'Test tools: all there.'
  exit 0
fi

if ! command -v apt-get >/dev/null; then
  echo "Test tools missing, and no apt-get to install them with: ${missing[*]}" >&2
  echo 'Install them by hand (the names are those of Debian packages), then run this again.' >&2
  exit 1
fi

as_root=()
if [ "$(id -u)" -ne 0 ]; then
  if ! command -v sudo >/dev/null; then
    echo "Test tools missing: ${missing[*]}" >&2
    echo "Install them as root: apt-get update && apt-get install ${missing[*]}" >&2
    exit 1
  fi
  as_root=(sudo)
fi

log=$(mktemp)
trap 'rm -f "$log"' EXIT
apt() {
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -q -y "$@" >"$log" 2>&1 </dev/null && return
  tail -n 20 "$log" >&2
  echo "apt-get $1 failed; test tools still missing: ${missing[*]}" >&2
  exit 1
}

echo "Test tools: installing ${missing[*]} (a few minutes) ..."
apt update
# An older Debian has the whole browser only.
if command -v apt-cache >/dev/null && ! apt-cache show chromium-headless-shell >/dev/null 2>&1; then
  missing=("${missing[@]/#chromium-headless-shell/chromium}")
fi
apt install --no-install-recommends "${missing[@]}"
echo 'Test tools: installed.'
