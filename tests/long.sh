#!/usr/bin/env bash
# What `all.sh` samples, in full: twenty times the burners, jets and firings, drawn where `all.sh` does not look.
# `bash tests/long.sh 7` draws by that seed, and again finds what it found by it. Runs all, and tells what failed.
set -euo pipefail
cd "$(dirname "$0")/.."

export JETWRIGHT_SEED="${1:-2}" JETWRIGHT_TIMES="${JETWRIGHT_TIMES:-20}"
export PROPTEST_CASES=$((256 * JETWRIGHT_TIMES))
. tests/steps.sh

failed=()
try() {
    step "$1" tell "$@"
}
tell() {
    local name="$1"
    shift
    "$@" || failed+=("$name")
}

try "laws" cargo test --quiet --all-features --test main
try "laws by the bare core's mathematics" cargo test --quiet --test main
try "the card over sixty burners" bash tests/card.sh 60
try "firings of the controller" cargo test --quiet --all-features --test fault_campaign
try "deliberate faults of the controller are caught" bash tests/deliberate_faults.sh

[ ${#failed[@]} = 0 ] || doing="$(printf '%s; ' "${failed[@]}")"
[ ${#failed[@]} = 0 ]
