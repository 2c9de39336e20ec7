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

export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_CLI_UI_LANGUAGE=en NO_COLOR=1

logs=$(mktemp -d)
trap 'rm -rf "$logs"' EXIT

# Optimised, as it is used: the suite is mostly arithmetic and takes a fraction of the time.
if ! dotnet build Holdfast.slnx -c Release -v q; then
  echo "0 passed, 0 failed"
  exit 1
fi

# One suite: its output goes to a log, its exit code beside it.
run() {
  "artifacts/bin/$1/release/$1" > "$logs/$1.log" 2>&1
  echo $? > "$logs/$1.code"
  tail -n 3 "$logs/$1.log"
}

# The browser waits for pages more than it works, and takes longest: it runs beside the others from the beginning.
run Holdfast.Browser &
for suite in tests/*/; do
  suite=$(basename "$suite")
  case $suite in
    Shared | Holdfast.Browser | Holdfast.Studies.Appender) ;;
    *) run "$suite" ;;
  esac
done
wait

passed=0 failed=0 skipped=0
for code in "$logs"/*.code; do
  log=${code%.code}.log
  suite=$(basename "${log%.log}")
  grep -h -A 25 '\[FAIL\]' "$log"
  counts=$(sed -n "s/.*$suite  Total: \([0-9]*\), Errors: \([0-9]*\), Failed: \([0-9]*\), Skipped: \([0-9]*\).*/\1 \2 \3 \4/p" "$log" | tail -n 1)
  read -r total errors faults left <<< "${counts:-0 0 0 0}"
  # A test project that could not run counts as a failure.
  [ "$total" -gt 0 ] || { echo "$suite ran no test:"; tail -n 20 "$log"; faults=1 total=1; }
  [ "$(cat "$code")" -eq 0 ] || [ $((faults + errors)) -gt 0 ] || { echo "$suite ended with $(cat "$code"):"; tail -n 20 "$log"; errors=1; }
  passed=$((passed + total - faults - left)) failed=$((failed + faults + errors)) skipped=$((skipped + left))
done

# A browser shares two cores with every other suite here, and may wait a minute for a page in vain. Where nothing else failed, the few tests of the
# browser that did are run once more by themselves; what fails then has failed, and what passes is named.
again=$(sed -n 's/^ *\(Holdfast\.Browser\.[A-Za-z0-9_.]*\).* \[FAIL\].*/\1/p' "$logs/Holdfast.Browser.log" | sort -u)
if [ -n "$again" ] && [ "$failed" -le 4 ] && [ "$(grep -c '\[FAIL\]' "$logs/Holdfast.Browser.log")" -eq "$failed" ]; then
  echo "Once more, with nothing else running:" $again
  # shellcheck disable=SC2046
  if artifacts/bin/Holdfast.Browser/release/Holdfast.Browser $(printf -- '-method %s ' $again); then
    echo "$failed failed beside the other suites and passed by themselves:" $again
    passed=$((passed + failed)) failed=0
  fi
fi

line="$passed passed, $failed failed"
[ "$skipped" -eq 0 ] || line="$line, $skipped skipped"
echo "$line"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
