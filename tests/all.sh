#!/usr/bin/env bash
# Runs every check of the project, in the order a failure is cheapest; installs what is missing where it can.
# Set CI=true to make a missing bare-metal target an error instead of a skip. `long.sh` draws far larger samples.
set -euo pipefail
cd "$(dirname "$0")/.."
. tests/steps.sh

# Clippy, tests and benches share one set of features, and so what they compile. What runs without `std` is the same
# but for the mathematics, which the unit tests, published values and laws look at.
step "format" cargo fmt --all -- --check
step "clippy, warnings denied" cargo clippy --quiet --all-targets --all-features -- -D warnings
step "clippy of the bare core" cargo clippy --quiet --all-targets -- -D warnings
step "tests, all features" cargo test --quiet --all-features
step "tests of the bare core" cargo test --quiet --lib --test main
step "benches check their results" cargo test --quiet --all-features --bench physics
step "documentation, warnings denied" env RUSTDOCFLAGS="-D warnings" cargo doc --quiet --no-deps --all-features
step "a sample of the deliberate faults of the controller is caught" bash tests/deliberate_faults.sh 12
step "the Python package, built, installed and tested" bash tests/python.sh
step "the card, printed by a browser and measured" bash tests/card.sh
step "the core on bare metal" bash tests/bare_metal.sh
step "the firmware in the emulator" bash tests/firmware.sh
