#!/usr/bin/env bash
# Installs what the tests need (a browser, poppler, the locked packages) and runs all tests.
# Usage: bash tests/run.sh [pytest words ...]
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

bash handouts/first_run.sh --only-install

# Runs a command without its chatter; shows all of it when the command fails.
quietly() {
  local said status=0
  said=$("$@" 2>&1) || status=$?
  [ "$status" -eq 0 ] || { printf '%s\n' "$said" "This did not work: $*" >&2; exit 1; }
}

if command -v apt-get >/dev/null && command -v dpkg-query >/dev/null; then
  # Java and npm are for the checkers of web pages and e-books, libatomic1 for the
  # driver of the browser.
  wanted=(poppler-utils git procps default-jre-headless npm libatomic1)
  if ! command -v chromium >/dev/null; then
    # On Ubuntu the package of this name only points to another installer.
    grep -q '^ID=debian' /etc/os-release && wanted+=(chromium)
  fi
  # Another Java or npm than the system's own serves as well.
  have() { case $1 in npm) command -v npm ;; default-jre-headless) command -v java ;; *) false ;; esac >/dev/null; }
  missing=()
  for package in "${wanted[@]}"; do
    dpkg-query -W -f '${Status}' "$package" 2>/dev/null | grep -q 'ok installed' ||
      have "$package" || missing+=("$package")
  done
  if [ ${#missing[@]} -gt 0 ]; then
    as_root=(); [ "$(id -u)" -eq 0 ] || as_root=(sudo)
    echo "Installing system packages for the tests: ${missing[*]}."
    quietly "${as_root[@]}" apt-get update
    quietly "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends "${missing[@]}"
  fi
elif [ "$(uname -s)" = Darwin ]; then
  for formula in poppler openjdk node; do
    brew list --versions "$formula" >/dev/null 2>&1 || quietly brew install "$formula"
  done
fi

bash tests/node/install.sh

lock=tests/requirements.lock
wanted=$(cat "$lock" .venv/installed | cksum)
if [ "$(cat .venv/installed-tests 2>/dev/null || true)" != "$wanted" ]; then
  echo "Installing the test packages into .venv."
  quietly .venv/bin/python -m pip install --quiet --disable-pip-version-check --require-hashes -r "$lock"
  printf '%s' "$wanted" >.venv/installed-tests
fi
command -v chromium >/dev/null || .venv/bin/python -m playwright install --with-deps chromium

.venv/bin/ruff check handouts tests
.venv/bin/mypy
exec .venv/bin/python -m pytest -n auto "$@"
