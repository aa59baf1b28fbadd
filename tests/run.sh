#!/usr/bin/env bash
# Sets everything up when that is needed, then runs the tests. The last line is CTest's own, and so is the exit status.
# Tests that take minutes carry the label "long" and are run by: ctest --test-dir build --output-on-failure -L long
set -euo pipefail

cd "$(dirname "${BASH_SOURCE[0]}")/.."
bash scenes/prepare.sh
exec ctest --test-dir build --output-on-failure -j2 -LE long
