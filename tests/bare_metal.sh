#!/usr/bin/env bash
# Builds the core and the C library for chips without an operating system, with the toolchain's own targets if they are
# there, else with Debian's compiler and its library source; then links the library for each, and runs the C example
# with it in the emulator.
set -euo pipefail
cd "$(dirname "$0")/.."
. tests/chip.sh

chip_directory="$PWD/target/bare-metal"
for target in $targets; do
    to=(--quiet --release --lib --target "$target" --target-dir "$chip_directory")
    chip_cargo build "${to[@]}" --no-default-features
    chip_cargo rustc "${to[@]}" --no-default-features --features capi --crate-type staticlib
    echo "built for $target, core and C library"
done

for tool in clang ld.lld:lld qemu-system-arm; do
    command -v "${tool%:*}" >/dev/null || install "--no-install-recommends ${tool#*:}"
    command -v "${tool%:*}" >/dev/null || skip "no ${tool%:*}, with which the C example is built for a chip and run."
done
JETWRIGHT_CHIP_LIBRARIES="$chip_directory" cargo test --quiet --all-features --test c_interface chip
