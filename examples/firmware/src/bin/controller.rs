//! The whole controller: a tick every tenth of a second by the chip's own timer, a watchdog that the loop feeds, sensors and
//! actuators that are simulated. A person starts it, lights it, and resets it after a sensor has failed for one tick; then
//! the loop hangs on purpose, and the watchdog must begin the chip anew with the gas off.
//!
//! Process control only: a listed flame safeguard stays in charge of the gas valve.

#![no_std]
#![no_main]

use core::ffi::CStr;
use core::hint::black_box;

use cortex_m_rt::entry;
use jetwright::control::{Command, Inputs, Outputs, Reason, State};
use jetwright::quantity::{ActualVolumeFlow, NetHeatRate};
use jetwright_firmware::burner::{AIR_HEAT, Controller, Refused, TICK_MS, Table, controller, moved};
use jetwright_firmware::{host, timer, watchdog};

/// Written by `jetwright setpoints BURNER.toml --image FILE`.
static TABLE: &[u8] = include_bytes!(env!("TABLE_IMAGE", "set TABLE_IMAGE to the full path of the image of a table"));

/// When the gauge reads no number, and when the person resets and goes home, ticks.
const FAILS: u32 = 500;
const RESETS: u32 = 600;
const ENDS: u32 = 900;

#[entry]
fn main() -> ! {
    // A valve shuts without power and without a program: the chip begins with the gas off.
    gas(false);
    if watchdog::has_bitten() {
        host::text(c"the watchdog began the chip anew: gas off\n");
        host::exit(true);
    }
    // What is in the flash is read there, not when the program is compiled.
    let table = Table::read_image(black_box(TABLE)).map_err(Refused::Table);
    let made = table.and_then(|table| Ok((controller(&table).ok_or(Refused::Limits)?, table)));
    let (mut desk, table) = match made {
        Ok(made) => made,
        Err(refused) => {
            refused.words().into_iter().for_each(host::text);
            host::text(c": gas off\n");
            host::exit(false)
        }
    };
    timer::start();
    watchdog::start();
    let mut burner = Burner::new(&table);
    host::text(c"millisecond,from,to,cause\n");
    for tick in 0..ENDS {
        timer::wait_until(tick * TICK_MS);
        let out = desk.tick(&burner.reads(timer::milliseconds(), tick, desk.state()));
        gas(out.asks_for_gas);
        burner.follows(&out);
        watchdog::feed();
    }
    history(&desk);
    host::text(c"This is process control: a listed flame safeguard stays in charge of the gas valve.\n");
    // The emulator's Cortex-M0 has no watchdog.
    if watchdog::IS_THERE { watchdog::hang() } else { host::exit(true) }
}

/// The request to the listed safeguard: a pin of your board.
fn gas(asks: bool) {
    black_box(asks);
}

/// What the controller keeps of its changes of state.
fn history(desk: &Controller) {
    for event in desk.record().iter() {
        host::number(event.now);
        for state in [event.from, event.to] {
            host::byte(b',');
            host::text(name(state));
        }
        host::byte(b',');
        host::text(event.cause.map_or(c"", Reason::text));
        host::byte(b'\n');
    }
}

fn name(state: State) -> &'static CStr {
    match state {
        State::Off => c"off",
        State::PrePurge => c"pre-purge",
        State::Ready => c"ready",
        State::Lighting => c"lighting",
        State::Firing => c"firing",
        State::PostPurge => c"post-purge",
        State::Lockout => c"lockout",
    }
}

/// The simulated burner, and the person beside it.
struct Burner {
    /// The heats wanted: the ends of the table.
    heats: [NetHeatRate<f32>; 2],
    gas: NetHeatRate<f32>,
    air: NetHeatRate<f32>,
    is_open: bool,
}

impl Burner {
    fn new(table: &Table) -> Self {
        let zero = NetHeatRate::from_watts(0.0);
        Self { heats: [table.lowest(), table.highest()], gas: zero, air: zero, is_open: false }
    }

    /// What sensors and person say.
    fn reads(&self, now: u32, tick: u32, state: State) -> Inputs<3, f32> {
        let command = match state {
            State::Off if tick == 1 => Command::Start,
            // Pressed again and again: one that came too early is gone.
            State::Ready if tick % 2 == 0 => Command::Light,
            State::Lockout if tick == RESETS => Command::Reset,
            _ => Command::Nothing,
        };
        let gas = if self.is_open { self.gas } else { NetHeatRate::from_watts(0.0) };
        let gauge = if tick == FAILS { f32::NAN } else { gas.watts() };
        Inputs {
            now,
            command,
            wanted: self.heats[(tick / 100 % 2) as usize],
            readings: [gauge, 288.0, self.air.watts()],
            gas,
            air: self.air,
            air_flow: ActualVolumeFlow::from_cubic_meters_per_second(self.air.watts() / AIR_HEAT),
            second_air_flow: None,
            chamber_is_cold: true,
            permitted: true,
        }
    }

    /// Actuators of 4.5 kW a second.
    fn follows(&mut self, out: &Outputs<f32>) {
        self.gas = moved(self.gas, out.gas);
        self.air = moved(self.air, out.air);
        self.is_open = out.asks_for_gas;
    }
}
