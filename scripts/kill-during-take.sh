#!/usr/bin/env bash
# Kills a writer again and again while it takes files in, at random moments and at every call of the disk, and checks that nothing it
# called kept is lost. Usage: kill-during-take.sh [CYCLES]
set -eu
cd "$(dirname "$0")/.."
dotnet build tests/Holdfast.Studies.Tests -v q
HOLDFAST_KILL_CYCLES=${1:-200} dotnet test --project tests/Holdfast.Studies.Tests --no-build --filter-class '*KillTests' '*FlushTests'
