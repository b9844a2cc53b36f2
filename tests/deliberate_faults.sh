#!/usr/bin/env bash
# Breaks the controller's logic on purpose, line by line in a copy of the tree, and wants the test that the safety argument
# names to catch each: tests/fault_campaign/safety/table.txt. With a number, every so many of the list: the sample of
# `all.sh`; `long.sh` tries them all. A second argument tries those with these letters in their name.
set -euo pipefail
cd "$(dirname "$0")/.."
export JETWRIGHT_FAULTS_EVERY="${1:-1}" JETWRIGHT_FAULTS_OF="${2:-}"
cargo test --quiet --features capi --test fault_campaign -- --ignored --nocapture each_deliberate_fault
