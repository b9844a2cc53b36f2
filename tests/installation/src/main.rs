//! Builds an installation in code on a chip and prints its settings, their hazards, and the stack that took.

#![no_std]
#![no_main]

mod bells;
mod stack;

use core::panic::PanicInfo;

use cortex_m_rt::entry;
use cortex_m_semihosting::{debug, hprintln};
use jetwright::plant::{Answer, Number, Plant, Refusal, SettingAnswer};

/// Its ends are printed too: they are known here.
fn show(index: usize, name: &str, number: Number) {
    let Number { value, low, high } = number;
    hprintln!("{} {} {:e} {:e} {:e}", index, name, value, low.unwrap_or(f64::NAN), high.unwrap_or(f64::NAN));
}

fn tell(index: usize, answer: &Answer<SettingAnswer>) {
    let SettingAnswer { gas, heat_net, air_ratio, .. } = answer.found;
    show(index, "gas", gas);
    show(index, "heat_net", heat_net);
    show(index, "air_ratio", air_ratio.unwrap_or(Number::alone(f64::NAN)));
    for hazard in answer.hazards.iter() {
        hprintln!("{} warns {}", index, hazard.kind.key());
    }
}

fn asked(plant: &Plant) -> Result<(), Refusal> {
    for index in 0..plant.entries.settings.len() {
        tell(index, &plant.setting(index)?);
    }
    Ok(())
}

fn ask() -> Result<(), Refusal> {
    asked(&Plant::new(bells::bells())?)
}

#[entry]
fn main() -> ! {
    let (answered, stack) = stack::depth(ask);
    hprintln!("stack {}", stack);
    hprintln!("plant {}", size_of::<Plant>());
    debug::exit(if answered.is_ok() { debug::EXIT_SUCCESS } else { debug::EXIT_FAILURE });
    loop {}
}

#[panic_handler]
fn panic(_: &PanicInfo<'_>) -> ! {
    debug::exit(debug::EXIT_FAILURE);
    loop {}
}
