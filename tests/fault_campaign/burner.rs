//! The numbers of this run's burner, all invented, and the controller that is made for it.

use jetwright::Scalar;
use jetwright::control::{
    AirChanges, AirRatioBand, Controller, ControllerSettings, CrossLimit, CrossLimitSettings, MadeFor, SensorLimits,
    Setpoint, SetpointTable, Travel,
};
use jetwright::quantity::{ActualVolumeFlow, Duration, GaugePressure, NetHeatRate};

use crate::random::Random;

/// Smallest and largest fire, W.
pub const LOWEST: f64 = 10_000.0;
pub const HIGHEST: f64 = 30_000.0;
/// Slowest and fastest actuator, W/s. From twice the largest fire the gas can come to lighting later than the air.
pub const GAS_SPEED: (f64, f64) = (3_000.0, 20_000.0);
pub const AIR_SPEED: (f64, f64) = (5_000.0, 20_000.0);
pub const ACTUATOR_TOLERANCE: f64 = 0.03;
pub const READING_TOLERANCE: f64 = 0.01;
/// The clock's error and its jitter together, as a share of each tick.
pub const CLOCK_TOLERANCE: f64 = 0.05;
/// Heat a cubic meter of air burns at the target air ratio, J/m3.
pub const HEAT_PER_AIR: f64 = 3.0e6;
/// Lowest air ratio, target, highest: a usual band, and one hardly wider than the tolerances need, 1.05 over and times
/// 1.03/0.97 x (1.01/0.99)^2 = 1.105, with a hundredth to move in.
const BANDS: [(f64, f64, f64); 2] = [(0.92, 1.05, 1.25), (0.9498, 1.05, 1.1724)];
pub const CHANGES: f64 = 4.0;
/// Air under this is lost, m3/s.
pub const LEAST_AIR: f64 = 0.002;
/// Longest tick, ms.
pub const LONGEST_TICK: u32 = 500;
/// How long the line from the valve to the jet takes to fill, s: 0.57 L at the 10.9 kPa of lighting hold
/// 0.57 L x 10.9/101.3 x 91 MJ/m3 = 5.6 kJ, which 14 kW bring in 0.4 s.
pub const FILLING_TIME: f64 = 0.4;
/// The filling, and a tick to see it.
pub const LIGHTING_TIME: f64 = 1.0;
pub const READY_TIME: f64 = 10.0;
pub const CLOSING_TIME: f64 = 2.0;
/// From the largest heat input at the slowest, 30 kW x 1.03 / 5 kW/s, and some.
pub const RUN_DOWN: f64 = 7.0;
pub const STUCK_AFTER: f64 = 2.5;
/// How far two readings of the air may differ, and how long, s.
pub const AGREEMENT: (f64, f64) = (0.1, 1.0);
/// What healthy sensors read: lowest, highest, fastest a second, noise. Gauge and air in the heat they stand for, W;
/// gas temperature, K.
const SENSORS: [[f64; 4]; 3] = [[-1.0, 40e3, 60e3, 700.0], [240.0, 330.0, 2.0, 0.5], [-1.0, 40e3, 25e3, 700.0]];

/// What differs from burner to burner.
#[derive(Clone)]
pub struct Burner {
    pub lighting: f64,
    pub band: (f64, f64, f64),
    /// Chamber, m3.
    pub volume: f64,
    pub sensors: [[f64; 4]; 3],
    /// Shortest tick that is not missed, and by how much the longest is longer, ms.
    pub ticks: (u32, u32),
    pub ticks_in_all: usize,
    /// Lit at the largest fire by somebody who waits for it with short ticks: nothing has to settle after the air
    /// changes, so that nothing hides a count that is cut short.
    pub is_prompt: bool,
}

impl Burner {
    pub fn drawn(random: &mut Random) -> Self {
        let band = BANDS[random.next() as usize % 2];
        if !random.one_in(8) {
            let (lighting, sensors) = (14_000.0, SENSORS);
            return Self {
                lighting,
                band,
                volume: 0.01,
                sensors,
                ticks: (100, 350),
                ticks_in_all: 165,
                is_prompt: false,
            };
        }
        let mut sensors = SENSORS;
        sensors[0][2] *= HIGHEST / 14_000.0;
        Self { lighting: HIGHEST, band, volume: 0.02, sensors, ticks: (50, 100), ticks_in_all: 205, is_prompt: true }
    }

    /// Air that must be purged, m3.
    pub fn air_needed(&self) -> f64 {
        CHANGES * self.volume
    }

    /// About how long the run is, s.
    pub fn seconds(&self) -> f64 {
        self.ticks_in_all as f64 * 1e-3 * f64::from(self.ticks.0 + self.ticks.1 / 2)
    }

    pub fn desk<S: Scalar>(&self, has_second_air: bool) -> Controller<9, 3, S> {
        let watts = |value: f64| NetHeatRate::from_watts(S::c(value));
        let seconds = |value: f64| Duration::from_seconds(S::c(value));
        let flow = |value: f64| ActualVolumeFlow::from_cubic_meters_per_second(S::c(value));
        let travel = |speed: (f64, f64)| Travel { slowest: S::c(speed.0), fastest: S::c(speed.1) };
        let made_for = MadeFor { air_ratio: S::c(self.band.1), burner: 0 };
        let table = SetpointTable::build(made_for, watts(LOWEST), watts(HIGHEST), 3, |heat| {
            let share = heat.watts() / S::c(HIGHEST);
            Ok(Setpoint { gauge: GaugePressure::from_pascals(S::c(50e3) * share * share), air: share })
        });
        let limit = CrossLimit::new(&CrossLimitSettings {
            band: AirRatioBand { lowest: S::c(self.band.0), target: S::c(self.band.1), highest: S::c(self.band.2) },
            lowest: watts(LOWEST),
            highest: watts(HIGHEST),
            gas_travel: travel(GAS_SPEED),
            air_travel: travel(AIR_SPEED),
            actuator_tolerance: S::c(ACTUATOR_TOLERANCE),
            reading_tolerance: S::c(READING_TOLERANCE),
        });
        let sensors = self.sensors.map(|[lowest, highest, fastest, noise]| SensorLimits {
            lowest: S::c(lowest),
            highest: S::c(highest),
            fastest: S::c(fastest),
            noise: S::c(noise),
            stuck_after: Some(seconds(STUCK_AFTER)),
        });
        let changes = AirChanges::new(S::c(self.volume), S::c(CHANGES), flow(LEAST_AIR)).unwrap();
        let settings = ControllerSettings {
            lighting: watts(self.lighting),
            lighting_time: seconds(LIGHTING_TIME),
            steady_time: seconds(0.5),
            ready_time: seconds(READY_TIME),
            closing_time: seconds(CLOSING_TIME),
            run_down_time: seconds(RUN_DOWN),
            longest_tick: LONGEST_TICK,
            clock_tolerance: S::c(CLOCK_TOLERANCE),
            least_air: flow(LEAST_AIR),
            air_heat: S::c(HEAT_PER_AIR),
            has_second_air,
            air_agreement: (S::c(AGREEMENT.0), seconds(AGREEMENT.1)),
        };
        Controller::new(table.unwrap(), limit.unwrap(), changes, sensors, settings).unwrap()
    }
}
