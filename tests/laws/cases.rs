//! Jets drawn from the accepted ranges, one recipe for both number types.

use crate::sample::sample;
use jetwright::friction::{Friction, Wall};
use jetwright::gas::{Gas, Mixture, NAMED};
use jetwright::orifice::{BoreFlow, BoreLength, BoreShape, Edge, Jet, JetFlow, Stream, Supply, frictional_bore};
use jetwright::quantity::{AbsolutePressure, Angle, GaugePressure, Length, PressureDifference, Temperature};
use jetwright::{Input, Result, Scalar};
use proptest::prelude::*;

/// How many numbers a jet is drawn from.
pub const DRAWN: usize = 11;

/// The ranges jets are drawn from, SI.
#[derive(Clone, Copy, Debug)]
pub struct Ranges {
    pub bore: (f64, f64),
    pub length: (f64, f64),
    pub roughness: (f64, f64),
    pub gauge: (f64, f64),
    pub ambient: (f64, f64),
    pub kelvin: (f64, f64),
}

const fn row(input: Input) -> (f64, f64) {
    let range = input.range();
    (range.min, range.max)
}

/// Everything that is accepted; the gauge from a hundredth of a pascal, since zero has its own test.
pub const ACCEPTED: Ranges = Ranges {
    bore: row(Input::Bore),
    length: row(Input::BoreLength),
    roughness: row(Input::Roughness),
    gauge: (1e-2, row(Input::GaugePressure).1),
    ambient: row(Input::StationPressure),
    kelvin: row(Input::GasTemperature),
};

/// What a shop uses: 0.3 to 10 mm, up to 60 mm long, 0.05 to 60 psi, -30 to 50 degC, up to 3000 m.
pub const IN_USE: Ranges = Ranges {
    bore: (0.3e-3, 10e-3),
    length: (0.0, 60e-3),
    roughness: (0.0, 50e-6),
    gauge: (345.0, 413_685.0),
    ambient: (70_100.0, 107_000.0),
    kelvin: (243.15, 323.15),
};

/// A jet and its supply, in numbers that both types hold exactly.
#[derive(Clone, Copy, Debug)]
pub struct JetCase {
    pub gas: usize,
    pub bore: f64,
    pub length: f64,
    pub edge: Edge<f64>,
    pub roughness: f64,
    pub approach: Option<f64>,
    pub ambient: f64,
    pub gauge: f64,
    pub back: f64,
    pub kelvin: f64,
}

/// The nearest number that single precision holds.
pub fn narrow(value: f64) -> f64 {
    f64::from(value as f32)
}

/// Point `index` of an even cover of the unit cube: fractional parts of multiples of the powers of 1/g, with
/// g^(n+1) = g + 1 (Roberts, "The unreasonable effectiveness of quasirandom sequences", 2018, from memory).
pub fn spread<const N: usize>(index: usize) -> [f64; N] {
    let mut g = 1.5_f64;
    for _ in 0..40 {
        g = (1.0 + g).powf(1.0 / (N as f64 + 1.0));
    }
    core::array::from_fn(|axis| (0.5 + index as f64 * g.powi(-(axis as i32 + 1))).fract())
}

fn even((low, high): (f64, f64), share: f64) -> f64 {
    narrow(low + (high - low) * share).clamp(low, high)
}

fn by_decades((low, high): (f64, f64), share: f64) -> f64 {
    narrow(low * (high / low).powf(share)).clamp(low, high)
}

impl JetCase {
    /// The jet of eleven numbers from 0 to 1.
    pub fn drawn(ranges: &Ranges, unit: [f64; DRAWN]) -> Self {
        let [gas, edge, bore, length, roughness, approach, ambient, gauge, back, kelvin, mouth] = unit;
        let bore = by_decades(ranges.bore, bore);
        let gauge = by_decades(ranges.gauge, gauge);
        // A quarter has no length, half of them some diameters, the rest whatever length is accepted.
        let length = match length {
            share if share < 0.25 => ranges.length.0,
            share if share < 0.75 => narrow(bore * 8.0 * (share - 0.25)).min(ranges.length.1),
            share => even(ranges.length, 4.0 * share - 3.0),
        };
        let edge = match (edge * 4.0) as usize {
            0 => Edge::Sharp,
            1 => Edge::Square,
            2 => Edge::Chamfered {
                depth: Length::from_meters(narrow(bore * 0.8 * mouth)),
                angle: Angle::from_radians(narrow(core::f64::consts::PI * 0.999 * (mouth * 7.0).fract())),
            },
            _ => Edge::Rounded { radius: Length::from_meters(narrow(bore * 0.3 * mouth)) },
        };
        // Half of them blow into the open, the rest into air that takes part of the gauge or draws a little.
        let back = match back {
            share if share < 0.5 => 0.0,
            share => narrow((gauge * (1.9 * share - 1.0)).max(row(Input::BackPressure).0)),
        };
        Self {
            gas: ((gas * NAMED.len() as f64) as usize).min(NAMED.len() - 1),
            bore,
            length,
            edge,
            roughness: if roughness < 0.2 { 0.0 } else { even(ranges.roughness, (roughness * 1.25 - 0.25).powi(3)) },
            approach: (approach > 0.6).then(|| narrow(bore / (0.69 * (2.5 * approach - 1.49)))),
            ambient: even(ranges.ambient, ambient),
            gauge,
            back,
            kelvin: even(ranges.kelvin, kelvin),
        }
    }

    /// Jets that cover the ranges evenly; more of them in `tests/long.sh`.
    pub fn cover(ranges: &Ranges, count: usize) -> impl Iterator<Item = Self> {
        sample(count).map(|index| Self::drawn(ranges, spread(index)))
    }

    /// Its gas.
    pub fn gas<S: Scalar>(&self) -> Gas<S> {
        named_gas(self.gas)
    }

    /// Its shape.
    pub fn shape<S: Scalar>(&self) -> BoreShape<S> {
        let meters = |length: Length<f64>| Length::from_meters(S::c(length.meters()));
        BoreShape {
            length: BoreLength::Fixed(Length::from_meters(S::c(self.length))),
            edge: match self.edge {
                Edge::Sharp => Edge::Sharp,
                Edge::Square => Edge::Square,
                Edge::Chamfered { depth, angle } => {
                    Edge::Chamfered { depth: meters(depth), angle: Angle::from_radians(S::c(angle.radians())) }
                }
                Edge::Rounded { radius } => Edge::Rounded { radius: meters(radius) },
            },
            roughness: Length::from_meters(S::c(self.roughness)),
            approach: self.approach.map(|across| Length::from_meters(S::c(across))),
        }
    }

    /// One such jet.
    pub fn jet<S: Scalar>(&self) -> Result<Jet<S>> {
        Ok(Jet::new(self.shape().with_diameter(Length::from_meters(S::c(self.bore)))?))
    }

    /// Its supply.
    pub fn supply<S: Scalar>(&self) -> Supply<S> {
        Supply {
            ambient: AbsolutePressure::from_pascals(S::c(self.ambient)),
            gauge: GaugePressure::from_pascals(S::c(self.gauge)),
            back: GaugePressure::from_pascals(S::c(self.back)),
            temperature: Temperature::from_kelvin(S::c(self.kelvin)),
        }
    }

    /// What it passes.
    pub fn flow<S: Scalar>(&self) -> Result<JetFlow<S>> {
        self.jet()?.flow(&self.gas(), &self.supply())
    }

    /// Its lossless stream, and the Reynolds number of the bore at the lossless flow; none where it is a liquid.
    pub fn stream<S: Scalar>(&self) -> Option<(Stream<S>, S)> {
        let (gas, supply) = (self.gas::<S>(), self.supply::<S>());
        let pressure = supply.gauge.to_absolute(supply.ambient);
        let drop = supply.gauge.pascals() - supply.back.pascals();
        let expansion = gas.expand(pressure, PressureDifference::from_pascals(drop), supply.temperature).ok()?;
        let reynolds_number = expansion.mass_flux * S::c(self.bore) / gas.viscosity(supply.temperature);
        Some((Stream::new(&expansion, drop / pressure.pascals()), reynolds_number))
    }

    /// Its flow were it a long bore, however short it is; none where the gas is a liquid.
    pub fn bore_flow<S: Scalar>(&self) -> Option<Result<BoreFlow<S>>> {
        let (stream, reynolds_number) = self.stream::<S>()?;
        let length = S::c((self.length / self.bore - 1.5).max(0.0));
        let wall = Wall::new(S::c(self.roughness / self.bore));
        let entry_loss = self.shape().edge.entry_loss(Length::from_meters(S::c(self.bore))).ok()?;
        Some(frictional_bore(entry_loss, &stream, |share| {
            let friction = wall.friction(reynolds_number * share);
            Friction { factor: friction.factor * length, log_slope: friction.log_slope }
        }))
    }

    /// The logarithm of its mass flow; none where it is refused.
    pub fn log_flow(&self) -> Option<f64> {
        self.flow::<f64>().ok().map(|flow| flow.mass_flow.kilograms_per_second().ln())
    }
}

/// Any accepted jet.
pub fn any_jet() -> impl Strategy<Value = JetCase> {
    prop::array::uniform11(0.0..1.0_f64).prop_map(|unit| JetCase::drawn(&ACCEPTED, unit))
}

/// A named gas in a number type.
pub fn named_gas<S: Scalar>(index: usize) -> Gas<S> {
    let parts: Vec<_> = NAMED[index].mixture().parts().map(|(species, fraction)| (species, S::c(fraction))).collect();
    Gas::new(Mixture::new(&parts).unwrap())
}

/// Every number of a flow.
pub fn numbers<S: Scalar>(flow: &JetFlow<S>) -> [(&'static str, f64); 11] {
    [
        ("mass flow", flow.mass_flow.kilograms_per_second()),
        ("standard volume flow", flow.standard_volume_flow.cubic_meters_per_second()),
        ("actual volume flow", flow.actual_volume_flow.cubic_meters_per_second()),
        ("gross heat", flow.heat_gross.watts()),
        ("net heat", flow.heat_net.watts()),
        ("discharge coefficient", flow.discharge_coefficient),
        ("mass flux", flow.mass_flux),
        ("exit speed", flow.exit_speed.meters_per_second()),
        ("thrust", flow.thrust.newtons()),
        ("Reynolds number", flow.reynolds_number),
        ("supply density", flow.supply_density.kilograms_per_cubic_meter()),
    ]
    .map(|(name, value)| (name, value.to_f64()))
}
