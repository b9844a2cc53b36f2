//! The burner this firmware is built for, and what moves it.

use core::ffi::CStr;

use jetwright::control::{
    AirChanges, AirRatioBand, ChipBurner, ControllerSettings, CrossLimit, CrossLimitSettings, ImageError, SensorLimits,
    SetpointTable, Travel,
};
use jetwright::quantity::{ActualVolumeFlow, Duration, NetHeatRate};

/// From tick to tick.
pub const TICK_MS: u32 = 100;
/// The same in seconds.
pub const TICK: f32 = 0.1;
/// Heat that a cubic meter of air burns at the table's air ratio, J/m3; `jetwright air` prints yours. INVENTED.
pub const AIR_HEAT: f32 = 3e6;
/// Rows of the table that `jetwright setpoints` makes.
pub const ROWS: usize = 17;

/// The table of an image.
pub type Table = SetpointTable<ROWS, f32>;

/// Why there is no fire, and of which image.
#[derive(Clone, Copy, Debug)]
pub enum Refused {
    /// The burner's image.
    Burner(ImageError),
    /// The table's image.
    Table(ImageError),
    /// What the burner or its limiter refuses.
    Limits,
}

impl Refused {
    /// The two in words.
    pub fn words(self) -> [&'static CStr; 2] {
        match self {
            Refused::Burner(error) => [c"the image of the burner: ", why(error)],
            Refused::Table(error) => [c"the image of the table: ", why(error)],
            Refused::Limits => [c"both images are whole: ", c"the burner cannot be limited with these tolerances"],
        }
    }
}

/// Without the numbers: to print those the library's own words need more flash than all the rest.
fn why(error: ImageError) -> &'static CStr {
    match error {
        ImageError::NotATable => c"not a setpoint table; `jetwright setpoints` writes one",
        ImageError::NotABurner => c"not a burner; `jetwright chip` writes one",
        ImageError::Version { .. } => c"of another version of the library",
        ImageError::Rows { .. } => c"of another number of rows",
        ImageError::Length { .. } => c"cut off or too long",
        ImageError::Damaged => c"damaged, the checksum does not fit",
        ImageError::Section { .. } => c"with a part that this program does not know",
        ImageError::OtherBurner => c"of another burner, make both images of one burner file",
        _ => c"its numbers are not usable",
    }
}

/// The burner of an image and the table of another, which must be of one burner file.
pub fn pair(burner: &[u8], table: &[u8]) -> Result<(ChipBurner<f32>, Table), Refused> {
    let burner = ChipBurner::read_image(burner).map_err(Refused::Burner)?;
    let table = Table::read_image(table).map_err(Refused::Table)?;
    burner.check_table(&table).map_err(Refused::Table)?;
    Ok((burner, table))
}

/// The limiter of the table's range, at the table's air ratio. Speeds, tolerances and how far the band reaches are
/// INVENTED: put in those of your own actuators. The actuators' tolerance includes what the table's straight lines are
/// off, which `jetwright setpoints` prints.
pub fn limiter(table: &Table) -> Option<CrossLimit<f32>> {
    let travel = Travel { slowest: 3_000.0, fastest: 6_000.0 };
    CrossLimit::new(&CrossLimitSettings {
        band: AirRatioBand { lowest: 0.85, target: table.made_for().air_ratio, highest: 1.4 },
        lowest: table.lowest(),
        highest: table.highest(),
        gas_travel: travel,
        air_travel: travel,
        actuator_tolerance: 0.03,
        reading_tolerance: 0.02,
    })
    .ok()
}

/// The whole controller of such a table, with gauge, gas temperature and air under watch.
pub type Controller = jetwright::control::Controller<ROWS, 3, f32>;

/// The controller of the table's burner. Every time, tolerance and limit is INVENTED: put in those of your own.
pub fn controller(table: &Table) -> Option<Controller> {
    let second = Duration::from_seconds(1.0);
    // Half of what the smallest fire needs.
    let least_air = ActualVolumeFlow::from_cubic_meters_per_second(0.5 * table.lowest().watts() / AIR_HEAT);
    let any = |highest| SensorLimits { lowest: -100.0, highest, fastest: 50e3, noise: 40e3, stuck_after: None };
    let settings = ControllerSettings {
        lighting: table.lowest(),
        lighting_time: second * 2.0,
        steady_time: second,
        ready_time: second * 60.0,
        closing_time: second * 2.0,
        run_down_time: second * 20.0,
        longest_tick: 2 * TICK_MS,
        clock_tolerance: 0.02,
        least_air,
        air_heat: AIR_HEAT,
        has_second_air: false,
        air_agreement: (0.1, second),
    };
    let changes = AirChanges::new(0.02, 4.0, least_air).ok()?;
    Controller::new(*table, limiter(table)?, changes, [any(200e3), any(400.0), any(200e3)], settings).ok()
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
