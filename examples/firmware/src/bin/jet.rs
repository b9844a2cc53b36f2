//! The least of the physics: heat of a jet from its gauge, with no image. Its size, built with `--profile small`, is what
//! the README states; its jet and its addresses are INVENTED.
//!
//! Process control only: a listed flame safeguard stays in charge of the gas valve.

#![no_std]
#![no_main]

use cortex_m_rt::entry;
use jetwright::gas::NAMED;
use jetwright::orifice::{BoreLength, BoreShape, Jet, Supply};
use jetwright::quantity::{AbsolutePressure, GaugePressure, Length, Temperature};
use jetwright_firmware::host;
use jetwright_firmware::registers::{read, write};

/// Reads gauge, Pa, gas temperature, K, and bore, m; writes gas, kg/s, and net heat, W.
#[entry]
fn main() -> ! {
    let shape = BoreShape::drilled(BoreLength::Fixed(Length::from_meters(10e-3_f32)));
    let propane = NAMED.first().and_then(|named| named.single());
    let (Some(propane), Ok(bore)) = (propane, shape.with_diameter(Length::from_meters(read(2)))) else {
        write(1, 0.0);
        host::stop()
    };
    let jet = Jet::new(bore);
    loop {
        let supply = Supply {
            ambient: AbsolutePressure::from_pascals(83_500.0),
            gauge: GaugePressure::from_pascals(read(0)),
            back: GaugePressure::from_pascals(0.0),
            temperature: Temperature::from_kelvin(read(1)),
        };
        // What is refused is no gas known: zero.
        let (gas, heat) = jet
            .flow(&propane, &supply)
            .map_or((0.0, 0.0), |passed| (passed.mass_flow.kilograms_per_second(), passed.heat_net.watts()));
        write(0, gas);
        write(1, heat);
    }
}
