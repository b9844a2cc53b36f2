#!/usr/bin/env bash
# Builds the core and the C library for chips without an operating system, with the toolchain's own targets if they are
# there, else with Debian's compiler and its library source; then links the library for each, and runs the C example
# with it in the emulator, and an installation built in code.
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
# A whole installation, built in code on the chip and asked for its settings and their hazards.
with_own_targets || export CARGO_TARGET_THUMBV7EM_NONE_EABIHF_LINKER=ld.lld
(cd tests/installation && chip_cargo build --quiet --release --target thumbv7em-none-eabihf --target-dir "$chip_directory")
printed="$chip_directory/installation.txt"
timeout 120 qemu-system-arm -cpu cortex-m4 -machine mps2-an386 -nographic -semihosting-config enable=on,target=native \
    -kernel "$chip_directory/thumbv7em-none-eabihf/release/jetwright-installation" >"$printed" 2>&1
tail -n 2 "$printed"
JETWRIGHT_INSTALLATION="$printed" cargo test --quiet --all-features --test installation

JETWRIGHT_CHIP_LIBRARIES="$chip_directory" cargo test --quiet --all-features --test c_interface chip
