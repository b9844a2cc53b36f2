#!/usr/bin/env bash
# Runs every check of the project, in the order a failure is cheapest; installs what is missing where it can.
# Set CI=true to make a missing bare-metal target an error instead of a skip.
set -euo pipefail
cd "$(dirname "$0")/.."

step() { printf '\n== %s\n' "$1"; }

step "format"
cargo fmt --all -- --check

step "clippy, warnings denied"
cargo clippy --quiet --all-targets -- -D warnings
cargo clippy --quiet --all-targets --all-features -- -D warnings

step "tests, no features"
cargo test --quiet

step "tests, all features"
cargo test --quiet --all-features

step "deliberate faults of the controller are caught"
bash tests/deliberate_faults.sh

step "benches check their results"
cargo bench --quiet --all-features -- --test

step "documentation, warnings denied"
RUSTDOCFLAGS="-D warnings" cargo doc --quiet --no-deps --all-features

step "the Python package, built, installed and tested"
bash tests/python.sh

step "the core on bare metal"
bash tests/bare_metal.sh

step "the firmware in the emulator"
bash tests/firmware.sh

printf '\nall checks passed\n'
