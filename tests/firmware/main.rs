//! The firmware of `examples/firmware` in the emulator against the host. `tests/firmware.sh` builds it and runs these;
//! without it there is nothing to run.

#![cfg(feature = "cli")]

mod burners;
mod controller;
mod costs;
mod elf;
mod emulator;
mod helpers;
mod settings;
mod states;
