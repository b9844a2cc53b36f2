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
use jetwright_firmware::registers::{read, write};

/// Written by `jetwright setpoints BURNER.toml --image FILE`.
static TABLE: &[u8] = include_bytes!(env!("TABLE_IMAGE", "set TABLE_IMAGE to the full path of the image of a table"));

/// A heat as it is wanted or reads, W.
fn watts(index: usize) -> NetHeatRate<f32> {
    NetHeatRate::from_watts(read(index))
}

/// Reads heat wanted, gas and air, W; writes gauge pressure, air setting and whether gas may be asked for.
#[entry]
fn main() -> ! {
    // What is in the flash is read there, not when the program is compiled.
    let table = Table::read_image(black_box(TABLE)).ok();
    let Some((table, mut limit)) = table.and_then(|table| limiter(&table).map(|limit| (table, limit))) else {
        write(2, 0.0);
        host::stop()
    };
    loop {
        let set = limit.step(watts(0), watts(1), watts(2), Duration::from_seconds(TICK));
        write(0, table.at(set.gas).gauge.pascals());
        write(1, table.at(set.air).air);
        write(2, if set.fault.is_none() { 1.0 } else { 0.0 });
    }
}
