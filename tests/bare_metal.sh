#!/usr/bin/env bash
# Builds the core for chips without an operating system: with the toolchain's own targets if they are there,
# else with Debian's compiler and its library source.
set -euo pipefail
cd "$(dirname "$0")/.."

targets="thumbv7em-none-eabihf thumbv6m-none-eabi riscv32imc-unknown-none-elf"
debian="rustc-web cargo-web rust-web-src"

with_own_targets() {
    local target
    for target in $targets; do
        rustup target list --installed 2>/dev/null | grep -qx "$target" || return 1
    done
}

have_debian() { [ -x /usr/bin/cargo ] && [ -d /usr/src/rustc-"$(/usr/bin/rustc --version | cut -d' ' -f2)" ]; }

if with_own_targets; then
    for target in $targets; do
        cargo build --quiet --lib --no-default-features --target "$target"
        echo "built for $target"
    done
    exit 0
fi

if ! have_debian && command -v apt-get >/dev/null && [ "$(id -u)" = 0 ]; then
    # shellcheck disable=SC2086
    { apt-get -qq update && apt-get -qq -y install $debian; } >/dev/null
fi
if ! have_debian; then
    echo "skipped: no bare-metal target. 'rustup target add $targets' or Debian's '$debian' would bring it."
    [ "${CI:-}" != true ]
    exit
fi
for target in $targets; do
    RUSTC_BOOTSTRAP=1 RUSTC=/usr/bin/rustc RUSTFLAGS="" /usr/bin/cargo build --quiet -Zbuild-std=core --lib \
        --no-default-features --target "$target" --target-dir target/bare-metal
    echo "built for $target"
done
