#!/usr/bin/env bash
# What `all.sh` samples, in full: twenty times the burners, jets and evenings, drawn where `all.sh` does not look.
# `bash tests/long.sh 7` draws by that seed; a find is repeated by the seed that the end names.
set -euo pipefail
cd "$(dirname "$0")/.."

export JETWRIGHT_SEED="${1:-2}" JETWRIGHT_TIMES="${JETWRIGHT_TIMES:-20}"
export PROPTEST_CASES=$((256 * JETWRIGHT_TIMES))
. tests/steps.sh

step "laws" cargo test --quiet --all-features --test main
step "laws by the bare core's mathematics" cargo test --quiet --test main
step "evenings of the controller" cargo test --quiet --all-features --test fault_campaign
step "deliberate faults of the controller are caught" bash tests/deliberate_faults.sh
