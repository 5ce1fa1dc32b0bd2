#!/usr/bin/env bash
# Prints the path of a Chromium for the browser test; installs the distribution's package where there is none and the
# user may. CHROMIUM names one explicitly.
set -euo pipefail

works() { "$1" --version >/dev/null 2>&1; }

find_browser() {
  local name path
  for name in "${CHROMIUM:-}" chromium chromium-browser; do
    [ -n "$name" ] || continue
    path="$(command -v "$name" || true)"
    # Some distributions put a script of this name in place that only asks for another package.
    if [ -n "$path" ] && works "$path"; then
      echo "$path"
      return 0
    fi
  done
  return 1
}

find_browser && exit 0
if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; then
  echo "no Chromium found, installing the package chromium" >&2
  export DEBIAN_FRONTEND=noninteractive
  { apt-get update && apt-get install -y --no-install-recommends chromium; } >&2
  find_browser && exit 0
fi
cat >&2 <<'TEXT'
The browser test needs Chromium, and there is none that starts. Install it (on Debian: apt-get install chromium) or
name one: CHROMIUM=/path/to/chromium make browser-test
TEXT
exit 1
