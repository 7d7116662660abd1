#!/usr/bin/env bash
# Installs what the program needs, then makes the demo studio's hand-outs under out/.
# Usage: bash handouts/first_run.sh [--only-install]
# Debian 12 or newer and Ubuntu 24.04 or newer: as root, or with sudo.  macOS: through Homebrew.
# Running it again is quick: what is there already is left as it is.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

only_install=no
case "${1:-}" in
  "") ;;
  --only-install) only_install=yes ;;
  *) echo "Unknown word '$1'. Usage: bash handouts/first_run.sh [--only-install]" >&2; exit 2 ;;
esac

stop() { printf '%s\n' "$@" >&2; exit 1; }

# Runs a command without its chatter; shows all of it when the command fails.
quietly() {
  local said status=0
  said=$("$@" 2>&1) || status=$?
  [ "$status" -eq 0 ] || { printf '%s\n' "$said" >&2; stop "This did not work: $*" "The lines above say why; mend it, then run this command again."; }
}

# --- system libraries: Pango draws the print, liblouis translates to braille ---

install_with_apt() {
  local missing=() package as_root=()
  for package in "$@"; do
    dpkg-query -W -f '${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
  done
  [ ${#missing[@]} -eq 0 ] && return 0
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null || stop "These system packages are missing: ${missing[*]}." \
      "Run this command again as root, or install sudo first."
    as_root=(sudo)
  fi
  echo "Installing system packages: ${missing[*]}."
  quietly "${as_root[@]}" apt-get update
  quietly "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends "${missing[@]}"
}

install_with_brew() {
  local formula
  for formula in python pango liblouis; do
    brew list --versions "$formula" >/dev/null 2>&1 || quietly brew install "$formula"
  done
}

python=python3
if command -v apt-get >/dev/null && command -v dpkg-query >/dev/null; then
  install_with_apt python3 python3-venv python3-louis liblouis-data \
    libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0 fonts-dejavu-core
  # The system's own Python: the module louis comes with it.
  python=/usr/bin/python3
elif [ "$(uname -s)" = Darwin ]; then
  command -v brew >/dev/null || stop "On macOS this needs Homebrew. Install it, then run this command again."
  install_with_brew
else
  echo "This system is not one that the script can install for. It needs: Python 3.11 or newer with venv,"
  echo "Pango 1.44 or newer, HarfBuzz with its subset library, and liblouis 3.24 or newer with its Python module louis."
  echo "If they are there, the script goes on; if not, it stops with a message."
fi

"$python" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null ||
  stop "Python 3.11 or newer is needed and '$python' is older or missing." "Install a newer Python, then run this command again."

# --- the program in .venv, in exactly the locked versions ---

lock=handouts/first_run.lock
wanted=$(cat "$lock" pyproject.toml handouts/first_run.sh | cksum)-$("$python" -c 'import sys; print(sys.version)')-$PWD
if [ "$(cat .venv/installed 2>/dev/null || true)" != "$wanted" ] || ! .venv/bin/handouts --version >/dev/null 2>&1; then
  echo "Installing the program into .venv; this takes a minute or two."
  quietly "$python" -m venv --clear .venv
  quietly .venv/bin/python -m pip install --quiet --disable-pip-version-check --require-hashes -r "$lock"
  quietly .venv/bin/python -m pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation --editable .
  printf '%s' "$wanted" >.venv/installed
fi

# Compiled once here: else the first start waits for it, or each start where Python is told not to write what it compiles.
quietly .venv/bin/python -m compileall -q handouts

[ "$only_install" = yes ] && exit 0

# --- the demo studio ---

status=0
.venv/bin/handouts make --studio handouts/demo --out out --quiet || status=$?
[ "$status" -le 1 ] || stop "The demo hand-outs were not all made; the lines above say why."
count=$(find out -type f ! -name '.*' | wc -l | tr -d ' ')

cat <<END

Done. $count hand-outs of an invented studio with six clients are in the folder out/, a folder for each client.
Files that end in .pdf are large print: open or print them with any PDF program.
Files that end in .html are for a screen reader: open them in a web browser.
Files that end in .brf are braille: send them to an embosser or a braille display.
Try these first:
  out/C1/P1-v1/C1-P1-v1-sheet.pdf   large print, 24 point
  out/C4/P2-v1/C4-P2-v1-sheet.html  a page for a screen reader
  out/C2/P2-v2/C2-P2-v2-sheet.brf   contracted English braille
To begin a studio of your own: .venv/bin/handouts start my-studio
The doses and loads of the demo are invented. They are not advice for anyone.
END
