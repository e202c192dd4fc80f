#!/usr/bin/env bash
# Sets up what the tests need, checks the format, builds, and runs every test. The last line is the true total.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
cd "$here"
. deploy/packages.sh
step() { printf '\n— %s\n' "$*"; }

step "Set-up"
need_dotnet
need_packages postgresql chromium poppler-utils
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1

step "Restore"
dotnet tool restore >/dev/null
dotnet restore RepairOrders.sln -v q

step "Format"
dotnet csharpier check .

step "Build"
dotnet build RepairOrders.sln -c Release --no-restore -v q --nologo

step "Publish"
dotnet publish src/RepairOrders.Host -c Release -o out/app --no-restore -v q --nologo
export REPAIRORDERS_APP=$here/out/app

step "Tests"
rm -rf out/trx
mkdir -p out/trx
failed=0
# One project after the other: on a small machine tests of time and load would disturb each other.
for project in Engineering House Ui Api Browser; do
  name=RepairOrders.$project.Tests
  printf '%s\n' "$name"
  dotnet run --project "tests/$name" -c Release --no-build -- \
    --report-trx --report-trx-filename "$project.trx" --results-directory out/trx --progress off >"out/$project.log" 2>&1 || {
    failed=1
    grep -v '^{"@t"' "out/$project.log" | tail -n 200
  }
  grep -E '^ +(total|failed|succeeded|skipped|duration):' "out/$project.log" | tr '\n' ' ' || true
  echo
done

passed=0 wrong=0 total=0
while read -r counters; do
  count() { sed -n "s/.* $1=\"\([0-9]*\)\".*/\1/p" <<<"$counters"; }
  total=$((total + $(count total)))
  passed=$((passed + $(count passed)))
  wrong=$((wrong + $(count failed) + $(count error) + $(count timeout) + $(count aborted)))
done < <(find out/trx -name '*.trx' -exec grep -ho '<Counters[^>]*>' {} +)

# A run that ended early leaves no counters: its exit code, and a project without a result file, count as failure.
for project in Engineering House Ui Api Browser; do
  [ -f "out/trx/$project.trx" ] || failed=1
done
[ "$total" -gt 0 ] || failed=1
step "Total"
echo "$passed passed, $wrong failed, $((total - passed - wrong)) skipped"
exit "$failed"
