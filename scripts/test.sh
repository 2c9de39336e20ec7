#!/usr/bin/env bash
# Builds everything once and runs every test. The last line counts them; the exit code is that of the tests.
set -u
cd "$(dirname "$0")/.." || exit 1

if ! command -v dotnet >/dev/null 2>&1; then
  echo "The .NET 10 SDK is missing: see https://dotnet.microsoft.com/download" >&2
  echo "0 passed, 0 failed"
  exit 1
fi

# The browser tests drive Chromium; without it they are skipped and say so.
if [ ! -x /usr/bin/chromium ] && [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null 2>&1; then
  { apt-get update -qq && apt-get install -y -qq --no-install-recommends chromium; } >/dev/null 2>&1 \
    || echo "Chromium could not be installed; the browser tests are skipped." >&2
fi

export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_CLI_UI_LANGUAGE=en

log=$(mktemp)
trap 'rm -f "$log"' EXIT
# Optimised, as it is used: the suite is mostly arithmetic and takes a fraction of the time.
dotnet test --solution Holdfast.slnx -c Release "$@" 2>&1 | tee "$log"
code=${PIPESTATUS[0]}

# A test project that could not run counts as a failure.
counts=$(awk '/^Test run summary/{p=f=s=0} /^ *(failed|error): /{f+=$2} /^ *succeeded: /{p+=$2} /^ *skipped: /{s+=$2}
  END{printf "%d passed, %d failed", p, f; if (s > 0) printf ", %d skipped", s; print ""}' "$log")
case $counts in
  "0 passed, 0 failed"*) [ "$code" -ne 0 ] || code=1 ;;
esac
echo "$counts"
exit "$code"
