#!/usr/bin/env bash
# Installs the checkers of pages and e-books, as locked, without their install
# scripts: those only fetch a browser, and the tests use the system's.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")"
wanted=$(cksum <package-lock.json)
if [ "$(cat node_modules/.installed 2>/dev/null || true)" != "$wanted" ]; then
  echo "Installing the checkers of pages and e-books into tests/node."
  npm ci --ignore-scripts --omit=optional --no-audit --no-fund --loglevel=error >/dev/null
  printf '%s' "$wanted" >node_modules/.installed
fi
