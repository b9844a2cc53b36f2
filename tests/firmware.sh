#!/usr/bin/env bash
# Builds examples/firmware, runs it in the emulator and holds it against the host: settings of burner files, 10 000
# states, no double-precision helper, no reachable panic, and the costs that its README states.
set -euo pipefail
cd "$(dirname "$0")/.."
. tests/chip.sh

emulator=qemu-system-arm
command -v $emulator >/dev/null || install $emulator
command -v $emulator >/dev/null || skip "no $emulator, which runs the firmware on a computer."
# The targets' usual linker comes with the toolchain; Debian's compiler has none of its own.
if ! with_own_targets; then
    command -v ld.lld >/dev/null || install lld
    export CARGO_TARGET_THUMBV7EM_NONE_EABIHF_LINKER=ld.lld CARGO_TARGET_THUMBV6M_NONE_EABI_LINKER=ld.lld
fi

target="$PWD/target/firmware"
build() {
    (cd examples/firmware && chip_cargo build --quiet --target-dir "$target" "$@")
}

if [ "${1:-}" = build ]; then
    shift
    build "$@"
    exit
fi

JETWRIGHT_FIRMWARE="$target" cargo test --quiet --all-features --test firmware -- --test-threads 1 "$@"
