#!/usr/bin/env bash
# find.sh chromium | firefox: prints the path of that browser for the browser tests; installs the distribution's package
# where there is none and the user may. CHROMIUM or FIREFOX names one explicitly.
set -euo pipefail

case "${1:-}" in
  chromium) variable=CHROMIUM package=chromium names=("${CHROMIUM:-}" chromium chromium-browser) ;;
  firefox) variable=FIREFOX package=firefox-esr names=("${FIREFOX:-}" firefox-esr firefox) ;;
  *)
    echo "usage: find.sh chromium | firefox" >&2
    exit 2
    ;;
esac

works() { "$1" --version >/dev/null 2>&1; }

find_browser() {
  local name path
  for name in "${names[@]}"; do
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
  echo "no $1 found, installing the package $package" >&2
  export DEBIAN_FRONTEND=noninteractive
  { apt-get update && apt-get install -y --no-install-recommends "$package"; } >&2
  find_browser && exit 0
fi
cat >&2 <<TEXT
The browser tests need $1, and there is none that starts. Install it (on Debian: apt-get install $package) or name one:
$variable=/path/to/$1 make browser-test
TEXT
exit 1
