//! The least of a controller: a setpoint table and cross-limiting, no physics, no text. Its size is what the README
//! states; its addresses of sensors and actuators are INVENTED.
//!
//! Process control only: a listed flame safeguard stays in charge of the gas valve.

#![no_std]
#![no_main]

use core::hint::black_box;

use cortex_m_rt::entry;
use jetwright::quantity::{Duration, NetHeatRate};
use jetwright_firmware::burner::{TICK, Table, limiter};
use jetwright_firmware::host;

/// Written by `jetwright setpoints BURNER.toml --image FILE`.
static TABLE: &[u8] = include_bytes!(env!("TABLE_IMAGE", "set TABLE_IMAGE to the full path of the image of a table"));

/// Heat wanted, gas as it reads, air as it reads, W; then gauge pressure and air setting, and whether gas is asked for.
const WANTED: *const f32 = 0x4000_0000 as *const f32;
const OUT: *mut f32 = 0x4000_0010 as *mut f32;

fn read(index: usize) -> NetHeatRate<f32> {
    // SAFETY: a register of the invented board, within its block.
    NetHeatRate::from_watts(unsafe { WANTED.add(index).read_volatile() })
}

fn write(index: usize, value: f32) {
    // SAFETY: as above.
    unsafe { OUT.add(index).write_volatile(value) };
}

#[entry]
fn main() -> ! {
    // What is in the flash is read there, not when the program is compiled.
    let table = Table::read_image(black_box(TABLE)).ok();
    let Some((table, mut limit)) = table.and_then(|table| limiter(&table).map(|limit| (table, limit))) else {
        write(2, 0.0);
        host::stop()
    };
    loop {
        let set = limit.step(read(0), read(1), read(2), Duration::from_seconds(TICK));
        write(0, table.at(set.gas).gauge.pascals());
        write(1, table.at(set.air).air);
        write(2, if set.doubt.is_none() { 1.0 } else { 0.0 });
    }
}
