//! Prints the settings of a burner file, worked out on the chip, and brings the fire from the smallest to the largest
//! and back with sensors that are simulated.
//!
//! Process control only: a listed flame safeguard stays in charge of the gas valve.

#![no_std]
#![no_main]

use core::hint::black_box;

use cortex_m_rt::entry;
use jetwright::burner::{Burner, Conditions, Prepared};
use jetwright::control::{ChipBurner, CrossLimit, Readings, Totals};
use jetwright::quantity::{Duration, NetHeatRate, PricePerMass};
use jetwright_firmware::burner::{Refused, TICK, Table, limiter, moved, pair};
use jetwright_firmware::host;

/// Written by `jetwright chip BURNER.toml --image FILE`.
static BURNER: &[u8] =
    include_bytes!(env!("BURNER_IMAGE", "set BURNER_IMAGE to the full path of the image of a burner"));
/// Written by `jetwright setpoints BURNER.toml --image FILE`.
static TABLE: &[u8] = include_bytes!(env!("TABLE_IMAGE", "set TABLE_IMAGE to the full path of the image of a table"));

/// Ticks of a whole run: up for half of it, then down.
const TICKS: u32 = 200;
/// Ticks from one printed line to the next.
const PRINTED: u32 = 10;

#[entry]
fn main() -> ! {
    // What is in the flash is read there, not when the program is compiled.
    let done = pair(black_box(BURNER), black_box(TABLE)).and_then(|(chip, table)| {
        settings(&chip);
        up_and_down(&chip, &table).ok_or(Refused::Limits)
    });
    if let Err(refused) = done {
        refused.words().into_iter().for_each(host::text);
        host::text(c": gas off\n");
    }
    host::exit(done.is_ok())
}

/// One line a setting of the burner file.
fn settings(chip: &ChipBurner<f32>) {
    host::text(c"setting,gauge_pressure_pa,heat_net_w,gas_kg_per_h,air_kg_per_h,air_ratio,damper_opening\n");
    for setting in &chip.settings {
        for &letter in &setting.name {
            host::byte(letter);
        }
        let conditions = Conditions {
            chamber_temperature: setting.chamber_temperature,
            gas_temperature: setting.gas_temperature,
            ..chip.conditions
        };
        let found = chip.burner.prepared(&conditions).and_then(|ready| ready.run(setting.at_jet, setting.opening));
        let Ok(found) = found else {
            host::text(c",the blower cannot hold it\n");
            continue;
        };
        for value in [
            setting.gauge.pascals(),
            found.heat_net.watts(),
            found.gas.kilograms_per_second() * 3600.0,
            found.air.kilograms_per_second() * 3600.0,
            found.air_ratio.unwrap_or(f32::NAN),
            setting.opening,
        ] {
            host::byte(b',');
            host::thousandths(value);
        }
        host::byte(b'\n');
    }
}

/// From the smallest fire to the largest and back; none if the burner or the limiter refuses.
fn up_and_down(chip: &ChipBurner<f32>, table: &Table) -> Option<()> {
    let ready = chip.burner.prepared(&chip.conditions).ok()?;
    let mut limit = limiter(table)?;
    let (lowest, highest) = limit.range();
    let second = Duration::from_seconds(1.0);
    while !limit.is_settled_at(lowest) {
        limit.hold(lowest, lowest, second);
    }
    let mut totals = Totals::new(chip.conditions.gas.net_heating_value(), PricePerMass::from_per_kilogram(0.0));
    let mut stands = (lowest, lowest);
    host::text(c"second,gas_for_w,air_for_w,gauge_pressure_pa,damper_opening,heat_net_w,air_ratio\n");
    for tick in 0..TICKS {
        let wanted = if tick < TICKS / 2 { highest } else { lowest };
        let printed = tick % PRINTED == 0;
        stands = step(&ready, table, &mut limit, &mut totals, wanted, stands, printed.then_some(tick))?;
    }
    host::text(c"heat so far, kJ net: ");
    host::thousandths(totals.heat_net_joules() / 1000.0);
    host::text(c"\nThis is process control: a listed flame safeguard stays in charge of the gas valve.\n");
    Some(())
}

/// One tick: sensors, limiter, table, actuators, estimate. Gives where the actuators stand then.
fn step(
    ready: &Prepared<&Burner<f32>, f32>,
    table: &Table,
    limit: &mut CrossLimit<f32>,
    totals: &mut Totals<f32>,
    wanted: NetHeatRate<f32>,
    stands: (NetHeatRate<f32>, NetHeatRate<f32>),
    printed: Option<u32>,
) -> Option<(NetHeatRate<f32>, NetHeatRate<f32>)> {
    let elapsed = Duration::from_seconds(TICK);
    let set = limit.step(wanted, stands.0, stands.1, elapsed);
    if set.fault.is_some() {
        return None;
    }
    let stands = (moved(stands.0, set.gas), moved(stands.1, set.air));
    let (gauge, opening) = (table.at(stands.0).gauge, table.at(stands.1).air);
    // The simulated sensors: a burner that stands so.
    let real = ready.run(gauge, opening).ok()?;
    let readings =
        Readings { gauge, gas_temperature: ready.conditions().gas_temperature, blower_pressure: real.blower_pressure };
    // Left of its highest point the blower's pressure does not tell the air.
    let seen = if real.left_of_peak { None } else { readings.estimate(ready).ok() };
    totals.add(seen.map_or(real.gas, |seen| seen.gas), elapsed);
    if let Some(tick) = printed {
        let unknown = f32::NAN;
        for value in [
            tick as f32 * TICK,
            set.gas.watts(),
            set.air.watts(),
            gauge.pascals(),
            opening,
            seen.map_or(unknown, |seen| seen.heat_net.watts()),
            seen.and_then(|seen| seen.air_ratio).unwrap_or(unknown),
        ] {
            host::thousandths(value);
            host::byte(b',');
        }
        host::byte(b'\n');
    }
    Some(stands)
}
