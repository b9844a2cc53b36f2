//! One evening: a person, a shop where one thing goes wrong, and the controller between them.

use jetwright::Scalar;
use jetwright::control::{
    AirChanges, AirRatioBand, Command, Controller, ControllerSettings, CrossLimit, CrossLimitSettings, Inputs,
    SensorLimits, Setpoint, SetpointTable, State, Travel,
};
use jetwright::quantity::{ActualVolumeFlow, Duration, GaugePressure, NetHeatRate};

use crate::plant::*;
use crate::random::Random;
use crate::referee::*;

const TICKS: usize = 140;

/// What goes wrong with a sensor; the number is its place among the readings.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Lie {
    None,
    NotANumber(usize),
    OutOfRange(usize),
    Jump(usize, f64),
    Stuck(usize),
    Drift(usize, f64),
    SecondApart,
}

/// What the evenings have seen.
#[derive(Debug, Default)]
pub struct Tally {
    /// Evenings with a fire.
    pub fires: u64,
    /// Evenings in which the fire came to the heat wanted.
    pub followed: u64,
    /// Faults that began while a fire burnt.
    pub faults_in_fire: [(&'static str, u64); 10],
}

impl Tally {
    fn fault(&mut self, name: &'static str) {
        if let Some(entry) = self.faults_in_fire.iter_mut().find(|entry| entry.0 == name || entry.0.is_empty()) {
            *entry = (name, entry.1 + 1);
        }
    }
}

type Desk<S> = Controller<9, 3, S>;

fn desk<S: Scalar>() -> Desk<S> {
    let watts = |value: f64| NetHeatRate::from_watts(S::c(value));
    let seconds = |value: f64| Duration::from_seconds(S::c(value));
    let flow = |value: f64| ActualVolumeFlow::from_cubic_meters_per_second(S::c(value));
    let travel = Travel { slowest: S::c(SPEED.0), fastest: S::c(SPEED.1) };
    let table = SetpointTable::build(watts(LOWEST), watts(HIGHEST), 3, |heat| {
        let share = heat.watts() / S::c(HIGHEST);
        Ok(Setpoint { gauge: GaugePressure::from_pascals(S::c(50e3) * share * share), air: share })
    });
    let limit = CrossLimit::new(&CrossLimitSettings {
        band: AirRatioBand { lowest: S::c(BAND.0), target: S::c(BAND.1), highest: S::c(BAND.2) },
        lowest: watts(LOWEST),
        highest: watts(HIGHEST),
        gas_travel: travel,
        air_travel: travel,
        actuator_tolerance: S::c(ACTUATOR_TOLERANCE),
        reading_tolerance: S::c(READING_TOLERANCE),
    });
    let sensors = SENSORS.map(|[lowest, highest, fastest, noise]| SensorLimits {
        lowest: S::c(lowest),
        highest: S::c(highest),
        fastest: S::c(fastest),
        noise: S::c(noise),
        stuck_after: Some(seconds(STUCK_AFTER)),
    });
    let changes = AirChanges::new(S::c(VOLUME), S::c(CHANGES), flow(LEAST_AIR)).unwrap();
    let settings = ControllerSettings {
        lighting: watts(LIGHTING),
        lighting_time: seconds(3.0),
        steady_time: seconds(0.5),
        ready_time: seconds(20.0),
        closing_time: seconds(CLOSING_TIME),
        longest_tick: LONGEST_TICK,
        clock_tolerance: S::zero(),
        least_air: flow(LEAST_AIR),
        air_agreement: (S::c(AGREEMENT.0), seconds(AGREEMENT.1)),
    };
    Controller::new(table.unwrap(), limit.unwrap(), changes, sensors, settings).unwrap()
}

/// What a person does on seeing a state: mostly the sensible thing, sometimes anything.
fn command(state: State, random: &mut Random) -> Command {
    if random.one_in(60) {
        let any = [Command::Nothing, Command::Start, Command::Light, Command::Stop, Command::Reset];
        return any[random.next() as usize % any.len()];
    }
    match state {
        State::Off if random.one_in(2) => Command::Start,
        State::Ready if random.one_in(2) => Command::Light,
        State::Firing if random.one_in(150) => Command::Stop,
        State::Locked if random.one_in(4) => Command::Reset,
        _ => Command::Nothing,
    }
}

/// The time to the next tick as it is, s, and as the counter of milliseconds tells it.
fn time_step(random: &mut Random) -> (f64, u32) {
    let usual = 100 + (random.next() % 350) as u32;
    let (real, counted) = match random.next() % 1500 {
        0..15 => (0, 0),
        15..18 => (501 + usual * 20, 501 + usual * 20),
        18..20 => (usual, 1 + usual.wrapping_mul(11).wrapping_neg()),
        _ => (usual, usual),
    };
    (f64::from(real) * 1e-3, counted)
}

struct Shop {
    plant: Plant,
    lie: Lie,
    lie_for: f64,
    frozen: [f64; 3],
    has_second_air: bool,
}

impl Shop {
    /// What the sensors tell, and the second air flow.
    fn readings(&mut self, random: &mut Random) -> ([f64; 3], Option<f64>) {
        let mut noise = || 1.0 + random.between(-READING_TOLERANCE, READING_TOLERANCE);
        let mut readings = [self.plant.gas() * noise(), 285.0 + 10.0 * (noise() - 1.0), self.plant.air() * noise()];
        let mut second = self.has_second_air.then(|| self.plant.air() * noise());
        match self.lie {
            Lie::None => self.frozen = readings,
            Lie::NotANumber(place) => readings[place] = [f64::NAN, f64::INFINITY][place % 2],
            Lie::OutOfRange(place) => readings[place] = if place == 1 { 400.0 } else { -50.0 },
            Lie::Jump(place, by) => readings[place] += by,
            Lie::Stuck(place) => readings[place] = self.frozen[place],
            Lie::Drift(place, rate) => readings[place] *= 1.0 + rate * self.lie_for,
            Lie::SecondApart => second = Some(self.plant.air() * 0.8 * noise()),
        }
        (readings, second)
    }

    /// Lets the one thing go wrong that does tonight.
    fn breaks(&mut self, what: u64, random: &mut Random) -> &'static str {
        let place = random.next() as usize % 3;
        let heat_place = place / 2 * 2;
        match what {
            0 => self.lie = Lie::NotANumber(place),
            1 => self.lie = Lie::OutOfRange(place),
            2 => self.lie = Lie::Jump(place, if place == 1 { 5.0 } else { random.between(-30e3, 30e3) }),
            3 => self.lie = Lie::Stuck(place),
            4 | 5 => self.lie = Lie::Drift(heat_place, random.between(-0.05, 0.05)),
            6 => self.lie = Lie::SecondApart,
            7 => self.plant.broken = Broken::BlowerDead,
            8 => self.plant.broken = Broken::GasStuck,
            9 => self.plant.broken = Broken::AirStuck,
            _ => return "nothing",
        }
        [
            "not a number",
            "out of range",
            "jump",
            "stuck sensor",
            "drift",
            "drift",
            "sensors apart",
            "blower dead",
            "gas stuck",
            "air stuck",
        ][what as usize]
    }
}

pub fn evening<S: Scalar>(seed: u64, tally: &mut Tally) -> Result<(), String> {
    let mut random = Random::new(seed);
    let mut desk = desk::<S>();
    let mut referee = Referee::default();
    let has_second_air = random.one_in(2);
    let plant = Plant::new(&mut random);
    let mut shop = Shop { plant, lie: Lie::None, lie_for: 0.0, frozen: [0.0; 3], has_second_air };
    let what = random.next() % 13;
    let at_tick = if random.one_in(3) { random.next() % TICKS as u64 } else { 30 + random.next() % 60 };
    let mut now = if random.one_in(3) { u32::MAX - (random.next() % 30_000) as u32 } else { random.next() as u32 };
    let mut wanted = random.between(LOWEST, HIGHEST);
    let (mut state, mut sent) = (State::Off, (LIGHTING, 0.0));
    let (mut has_fire, mut has_followed) = (false, false);
    for tick in 0..TICKS as u64 {
        if tick == at_tick {
            let name = shop.breaks(what, &mut random);
            if state == State::Firing {
                tally.fault(name);
            }
        }
        let (seconds, counted) = time_step(&mut random);
        for _ in 0..3 {
            shop.plant.passes(seconds / 3.0, sent.0, sent.1, &mut random);
            referee.moved(&shop.plant, state, seconds / 3.0).map_err(|found| format!("tick {tick}: {found}"))?;
        }
        if shop.lie != Lie::None {
            shop.lie_for += seconds;
        }
        now = now.wrapping_add(counted);
        if random.one_in(25) {
            wanted = random.between(0.5 * LOWEST, 1.2 * HIGHEST);
        }
        let asked_heat = if random.one_in(400) { [f64::NAN, f64::INFINITY, -1.0][tick as usize % 3] } else { wanted };
        let (readings, second_air) = shop.readings(&mut random);
        let permitted = !random.one_in(300);
        let command = command(state, &mut random);
        let watts = |value: f64| NetHeatRate::from_watts(S::c(value));
        let flow = |heat: f64| ActualVolumeFlow::from_cubic_meters_per_second(S::c(heat / HEAT_PER_AIR));
        let answer = desk.tick(&Inputs {
            now,
            command,
            wanted: watts(asked_heat),
            readings: readings.map(S::c),
            gas: watts(readings[0]),
            air: watts(readings[2]),
            air_flow: flow(readings[2]),
            second_air_flow: second_air.map(flow),
            permitted,
        });
        state = answer.state;
        sent = (answer.gas.watts().to_f64(), answer.air.watts().to_f64());
        shop.plant.open = answer.asks_for_gas && permitted;
        if tick == 0 {
            // The counter's first value tells no time.
            referee = Referee::default();
        }
        let seen = Seen { command, readings, second_air, permitted, counted, state, asks: answer.asks_for_gas };
        let told = || format!("tick {tick}, fault {what} since {at_tick}, {:?}", answer.reason);
        referee.judges(&seen, &shop.plant).map_err(|found| format!("{found} at {}", told()))?;
        referee.turns_the_page(&seen);
        let set = (answer.set.gauge.pascals().to_f64(), answer.set.air.to_f64());
        if !(set.0 >= 5_000.0 && set.0 <= 50_001.0 && set.1 >= 0.3 && set.1 <= 1.0001 && sent.0 >= LOWEST) {
            return Err(format!("a setpoint that is none: {set:?} at {}", told()));
        }
        has_fire |= state == State::Firing;
        has_followed |= state == State::Firing && asked_heat > LOWEST && (sent.0 - asked_heat).abs() < 1.0;
    }
    tally.fires += u64::from(has_fire);
    tally.followed += u64::from(has_followed);
    Ok(())
}
