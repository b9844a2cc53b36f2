#!/usr/bin/env bash
# Builds the core for chips without an operating system: with the toolchain's own targets if they are there,
# else with Debian's compiler and its library source.
set -euo pipefail
cd "$(dirname "$0")/.."
. tests/chip.sh

for target in $targets; do
    chip_cargo build --quiet --lib --no-default-features --target "$target" --target-dir target/bare-metal
    echo "built for $target"
done
