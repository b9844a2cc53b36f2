//! The burner this firmware is built for, and what moves it.

use jetwright::control::{AirRatioBand, ChipBurner, CrossLimit, CrossLimitSettings, SetpointTable, Travel};
use jetwright::quantity::NetHeatRate;

/// Seconds from tick to tick.
pub const TICK: f32 = 0.1;
/// Rows of the table that `jetwright setpoints` makes.
pub const ROWS: usize = 17;

/// Written by `jetwright chip BURNER.toml --image FILE`.
static BURNER: &[u8] = include_bytes!(env!("BURNER_IMAGE"));
/// Written by `jetwright setpoints BURNER.toml --image FILE`.
static TABLE: &[u8] = include_bytes!(env!("TABLE_IMAGE"));

/// The burner of the image; none if a byte of it has changed.
pub fn burner() -> Option<ChipBurner<f32>> {
    ChipBurner::read_image(BURNER).ok()
}

/// The table of the image; none if a byte of it has changed.
pub fn table() -> Option<SetpointTable<ROWS, f32>> {
    SetpointTable::read_image(TABLE).ok()
}

/// The limiter of the table's range. Speeds and tolerances are INVENTED: put in those of your own actuators.
pub fn limiter(table: &SetpointTable<ROWS, f32>) -> Option<CrossLimit<f32>> {
    let travel = Travel { slowest: 3_000.0, fastest: 6_000.0 };
    CrossLimit::new(&CrossLimitSettings {
        band: AirRatioBand { lowest: 0.85, target: 1.05, highest: 1.4 },
        lowest: table.lowest(),
        highest: table.highest(),
        gas_travel: travel,
        air_travel: travel,
        actuator_tolerance: 0.03,
        reading_tolerance: 0.02,
    })
    .ok()
}

/// Where an actuator of 4.5 kW a second has come in a tick.
pub fn moved(from: NetHeatRate<f32>, to: NetHeatRate<f32>) -> NetHeatRate<f32> {
    let most = 4_500.0 * TICK;
    let step = to.watts() - from.watts();
    let step = if step > most {
        most
    } else if step < -most {
        -most
    } else {
        step
    };
    NetHeatRate::from_watts(from.watts() + step)
}
