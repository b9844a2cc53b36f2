//! What goes wrong in an run: sensors that lie and parts that break, alone or together, for a moment or for good.

use crate::burner::{Burner, READING_TOLERANCE};
use crate::plant::{Broken, Plant};
use crate::random::Random;

/// A number is a sensor's place among the readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    NotANumber(usize),
    OutOfRange(usize),
    Jump(usize, f64),
    Stuck(usize),
    /// Wrong by a share that grows, 1/s.
    Drift(usize, f64),
    /// Wrong by a share from the first.
    Share(usize, f64),
    /// The second air sensor reads another share of the air.
    SecondApart(f64),
    SecondGone,
    BlowerDead,
    AirStuck,
    CylinderEmpty,
    GasStuck,
    /// Flows differ from their setpoints by more than they should, by a share.
    GasOff(f64),
    AirOff(f64),
    ValveLeaks,
}

impl Kind {
    pub const COUNT: usize = 15;

    fn any(random: &mut Random) -> Self {
        let place = random.next() as usize % 3;
        let heat_place = place / 2 * 2;
        match random.next() % 19 {
            0 => Kind::NotANumber(place),
            1 => Kind::OutOfRange(place),
            2 => Kind::Jump(place, if place == 1 { 5.0 } else { random.between(-30e3, 30e3) }),
            3 | 4 => Kind::Stuck(place),
            5 | 6 => Kind::Drift(heat_place, random.between(-0.05, 0.05)),
            7 => Kind::Share(heat_place, random.between(-0.06, 0.06)),
            8 => Kind::SecondApart([0.8, 1.25][random.next() as usize % 2]),
            9 | 10 => Kind::BlowerDead,
            11 => Kind::AirStuck,
            12 => Kind::CylinderEmpty,
            13 => Kind::GasOff(Self::off(random)),
            14 => Kind::AirOff(Self::off(random)),
            15 => Kind::ValveLeaks,
            16 => Kind::SecondGone,
            _ => Kind::GasStuck,
        }
    }

    /// Much, or so little that both measurements are believed.
    fn off(random: &mut Random) -> f64 {
        let most = if random.one_in(2) { 0.15 } else { 0.02 };
        random.between(-most, most)
    }

    pub fn name(self) -> &'static str {
        match self {
            Kind::NotANumber(_) => "not a number",
            Kind::OutOfRange(_) => "out of range",
            Kind::Jump(..) => "jump",
            Kind::Stuck(_) => "stuck sensor",
            Kind::Drift(..) => "drift",
            Kind::Share(..) => "wrong by a share",
            Kind::SecondApart(_) => "sensors apart",
            Kind::SecondGone => "second sensor gone",
            Kind::BlowerDead => "blower dead",
            Kind::AirStuck => "air stuck",
            Kind::CylinderEmpty => "cylinder empty",
            Kind::GasStuck => "gas stuck",
            Kind::GasOff(_) => "gas off its setpoint",
            Kind::AirOff(_) => "air off its setpoint",
            Kind::ValveLeaks => "valve leaks",
        }
    }
}

/// A fault and when it is there, s of the run.
#[derive(Clone, Copy, Debug)]
pub struct Fault {
    pub kind: Kind,
    pub begins: f64,
    pub ends: f64,
}

/// All of an run's.
#[derive(Debug)]
pub struct Faults {
    list: [Option<Fault>; 4],
    /// What each sensor read last before it stuck.
    frozen: [f64; 3],
}

impl Faults {
    /// In a tenth of the runs one on either side; of the others none in a sixth, one in a third, and two to four,
    /// mostly close to each other, in half.
    pub fn drawn(burner: &Burner, random: &mut Random) -> Self {
        let length = burner.seconds();
        if random.one_in(10) {
            return Self { list: Self::on_either_side(length, random), frozen: [0.0; 3] };
        }
        let count = [0, 1, 1, 2, 3, 4][random.next() as usize % 6];
        let first = if random.one_in(3) { random.between(0.0, length) } else { length * random.between(0.25, 0.75) };
        let mut list = [None; 4];
        for (index, fault) in list.iter_mut().enumerate().take(count) {
            let begins = match (index, random.next() % 4) {
                (0, _) => first,
                (_, 0) => random.between(0.0, length),
                (_, 1) => first + random.between(-2.0, 2.0),
                _ => first + random.between(-0.3, 0.3),
            };
            let lasts = match random.next() % 4 {
                0 => random.between(0.0, 0.4),
                1 => random.between(0.4, 6.0),
                _ => f64::INFINITY,
            };
            *fault = Some(Fault { kind: Kind::any(random), begins, ends: begins + lasts });
        }
        Self { list, frozen: [0.0; 3] }
    }

    /// The sensor of one side wrong by a little and the actuator of the other, which the readings alone do not show.
    fn on_either_side(length: f64, random: &mut Random) -> [Option<Fault>; 4] {
        let (share, off) = (random.between(-0.08, 0.08), random.between(-0.15, 0.15));
        let pair = if random.one_in(2) {
            [Kind::Share(0, share), Kind::AirOff(off)]
        } else {
            [Kind::Share(2, share), Kind::GasOff(off)]
        };
        let [first, second] =
            pair.map(|kind| Some(Fault { kind, begins: random.between(-0.5, 0.5) * length, ends: f64::INFINITY }));
        [first, second, None, None]
    }

    fn at(&self, now: f64) -> impl Iterator<Item = Fault> + '_ {
        self.list.iter().flatten().copied().filter(move |fault| fault.begins <= now && now < fault.ends)
    }

    pub fn count_at(&self, now: f64) -> usize {
        self.at(now).count()
    }

    /// Those that have come between two moments.
    pub fn begun(&self, from: f64, to: f64) -> impl Iterator<Item = Kind> + '_ {
        self.list
            .iter()
            .flatten()
            .filter(move |fault| from < fault.begins && fault.begins <= to)
            .map(|fault| fault.kind)
    }

    pub fn broken_at(&self, now: f64) -> Broken {
        let mut broken = Broken::default();
        for fault in self.at(now) {
            match fault.kind {
                Kind::BlowerDead => broken.blower_dead = true,
                Kind::AirStuck => broken.air_stuck = true,
                Kind::CylinderEmpty => broken.cylinder_empty = true,
                Kind::GasStuck => broken.gas_stuck = true,
                Kind::GasOff(share) => broken.gas_off = share,
                Kind::AirOff(share) => broken.air_off = share,
                Kind::ValveLeaks => broken.leaks = true,
                _ => {}
            }
        }
        broken
    }

    /// What the sensors tell now, of what they would tell if they were sound, and of the air again.
    pub fn told(&mut self, now: f64, sound: [f64; 3], mut second: Option<f64>) -> ([f64; 3], Option<f64>) {
        let mut told = sound;
        let mut stuck = [false; 3];
        for fault in self.at(now) {
            match fault.kind {
                Kind::NotANumber(place) => told[place] = [f64::NAN, f64::INFINITY][place % 2],
                Kind::OutOfRange(place) => told[place] = if place == 1 { 400.0 } else { -50.0 },
                Kind::Jump(place, by) => told[place] += by,
                Kind::Stuck(place) => (told[place], stuck[place]) = (self.frozen[place], true),
                Kind::Drift(place, rate) => told[place] *= 1.0 + rate * (now - fault.begins),
                Kind::Share(place, share) => told[place] *= 1.0 + share,
                Kind::SecondApart(share) => second = second.map(|air| share * air),
                Kind::SecondGone => second = None,
                _ => {}
            }
        }
        for ((frozen, sound), stuck) in self.frozen.iter_mut().zip(sound).zip(stuck) {
            if !stuck {
                *frozen = sound;
            }
        }
        (told, second)
    }
}

/// Sound sensors: each has an error of its own, and noise, together within the tolerance.
pub struct Sensors {
    errors: [f64; 2],
    noise: f64,
    pub has_second_air: bool,
}

impl Sensors {
    pub fn drawn(random: &mut Random) -> Self {
        let noise = READING_TOLERANCE * [1.0, 0.3, 0.05][random.next() as usize % 3];
        let mut error = || random.often_an_end(READING_TOLERANCE - noise);
        Self { errors: [error(), error()], noise, has_second_air: random.one_in(2) }
    }

    pub fn sound(&self, plant: &Plant, random: &mut Random) -> ([f64; 3], Option<f64>) {
        let mut noise = || random.between(-self.noise, self.noise);
        let gas = plant.gas() * (1.0 + self.errors[0] + noise());
        let air = plant.air() * (1.0 + self.errors[1] + noise());
        let second = self.has_second_air.then(|| plant.air() * (1.0 + noise()));
        ([gas, 285.0 + 10.0 * noise(), air], second)
    }
}
