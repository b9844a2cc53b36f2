# Sourced by the scripts that build for a chip: finds a compiler for it, or installs Debian's where that can be.
# Sets `chip_cargo`, which takes a subcommand and its arguments, or ends the script with a word of what it skipped.

targets="thumbv7em-none-eabihf thumbv6m-none-eabi riscv32imc-unknown-none-elf"
debian="rustc-web cargo-web rust-web-src"

with_own_targets() {
    local target
    for target in $targets; do
        rustup target list --installed 2>/dev/null | grep -qx "$target" || return 1
    done
}

have_debian() { [ -x /usr/bin/cargo ] && [ -d /usr/src/rustc-"$(/usr/bin/rustc --version | cut -d' ' -f2)" ]; }

install() {
    command -v apt-get >/dev/null && [ "$(id -u)" = 0 ] || return 0
    # shellcheck disable=SC2086
    { apt-get -qq update && apt-get -qq -y install $1; } >/dev/null
}

# Says what is skipped and why; an error where CI=true.
skip() {
    echo "skipped: $1"
    [ "${CI:-}" != true ]
    exit
}

if with_own_targets; then
    chip_cargo() { cargo "$@"; }
else
    have_debian || install "$debian"
    have_debian || skip "no bare-metal target. 'rustup target add $targets' or Debian's '$debian' would bring it."
    chip_cargo() { RUSTC_BOOTSTRAP=1 RUSTC=/usr/bin/rustc RUSTFLAGS="" /usr/bin/cargo "$@" -Zbuild-std=core; }
fi
