//! Prints the settings of a burner file, worked out on the chip.
//!
//! Process control only: a listed flame safeguard stays in charge of the gas valve.

#![no_std]
#![no_main]

use cortex_m_rt::entry;
use jetwright::burner::Conditions;
use jetwright::control::ChipBurner;
use jetwright_firmware::host;

/// Written by `jetwright chip BURNER.toml --image FILE`.
static IMAGE: &[u8] = include_bytes!(env!("BURNER_IMAGE"));

#[entry]
fn main() -> ! {
    let Ok(chip) = ChipBurner::<f32>::read_image(IMAGE) else {
        host::text(c"the image is not a burner\n");
        host::exit(false)
    };
    host::text(c"setting,gauge_pa,heat_net_w,gas_kg_per_h,air_m3_per_h,air_ratio,damper\n");
    for setting in &chip.settings {
        let conditions = Conditions { chamber_temperature: setting.chamber_temperature, ..chip.conditions };
        for &letter in &setting.name {
            host::byte(letter);
        }
        let Ok(running) = chip.burner.run(&conditions, setting.gauge, setting.opening) else {
            host::text(c",the blower cannot hold it\n");
            continue;
        };
        for value in [
            setting.gauge.pascals(),
            conditions.gas.net_heating_value().of(running.gas).watts(),
            running.gas.kilograms_per_second() * 3600.0,
            running.air_flow.cubic_meters_per_second() * 3600.0,
            running.air_ratio.unwrap_or(f32::NAN),
            setting.opening,
        ] {
            host::byte(b',');
            host::thousandths(value);
        }
        host::byte(b'\n');
    }
    host::exit(true)
}
