#!/usr/bin/env bash
# What to run after each change of a formula: format, clippy, unit tests, published values, laws, the controller. `all.sh` is the whole.
set -euo pipefail
cd "$(dirname "$0")/.."
. tests/steps.sh

step "format" cargo fmt --all -- --check
step "clippy, warnings denied" cargo clippy --quiet --all-targets --all-features -- -D warnings
step "unit tests, published values, laws" cargo test --quiet --all-features --lib --test main
step "single orders of the controller" cargo test --quiet --all-features --test fault_campaign -- --skip no_run_breaks_a_rule
