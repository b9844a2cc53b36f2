//! What the chains are made of: conductivity, specific heat and enthalpy over temperature.

use heapless::Vec;

use crate::furnace::{LINE_CAP, Material, Matter, Substance};
use crate::scalar::Scalar;

/// Enthalpies are counted from here, K.
const REFERENCE: f64 = 273.15;
/// Most looks for a temperature by its enthalpy; a bisection of 3 000 K to a millikelvin takes 22.
const LOOKS: usize = 60;

/// A property straight between points and level beyond them, with its running integral.
#[derive(Clone, Debug, PartialEq)]
pub struct Track<S> {
    points: Vec<Knot<S>, LINE_CAP>,
}

#[derive(Clone, Copy, Debug, PartialEq)]
struct Knot<S> {
    kelvin: S,
    value: S,
    slope: S,
    integral: S,
}

impl<S: Scalar> Track<S> {
    /// Of points whose temperatures rise; level where there is one only.
    #[must_use]
    pub fn new(points: &[(S, S)]) -> Self {
        let mut knots: Vec<Knot<S>, LINE_CAP> = Vec::new();
        let mut integral = S::zero();
        for &(kelvin, value) in points.iter().take(LINE_CAP) {
            if let Some(last) = knots.last_mut() {
                last.slope = (value - last.value) / (kelvin - last.kelvin);
                integral += S::c(0.5) * (value + last.value) * (kelvin - last.kelvin);
            }
            // No more points than the capacity are taken.
            let _ = knots.push(Knot { kelvin, value, slope: S::zero(), integral });
        }
        Self { points: knots }
    }

    /// Value and integral from the first point.
    fn at(&self, kelvin: S) -> (S, S) {
        let Some(first) = self.points.first() else { return (S::zero(), S::zero()) };
        let mut knot = first;
        for next in self.points.iter().skip(1) {
            if next.kelvin > kelvin {
                break;
            }
            knot = next;
        }
        let past = kelvin - knot.kelvin;
        if past < S::zero() {
            return (knot.value, knot.value * past);
        }
        let value = knot.value + knot.slope * past;
        (value, knot.integral + S::c(0.5) * (knot.value + value) * past)
    }
}

/// One material of a chain.
#[derive(Clone, Debug, PartialEq)]
pub enum Medium<S = f64> {
    /// Nothing that changes with temperature: density (kg/m3), conductivity (W/(m K)), specific heat (J/(kg K)).
    Plain(S, S, S),
    /// A lining: density, conductivity, specific heat.
    Lining(S, Track<S>, Track<S>),
    /// What is heated, melting included.
    Substance(Substance<S>),
    /// A metal by numbers alone.
    Metal(Metal<S>),
}

/// A metal whose specific heat is one number below its melting range, the same with the latent heat in it, and another
/// above.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Metal<S = f64> {
    /// Specific heat of the solid, J/(kg K).
    pub solid: S,
    /// Begin and end of melting, K.
    pub melting: (S, S),
    /// Latent heat, J/kg, on top of the solid's specific heat.
    pub latent: S,
    /// Specific heat of the liquid, J/(kg K).
    pub liquid: S,
}

impl<S: Scalar> Metal<S> {
    fn heat(&self, kelvin: S) -> (S, S) {
        let (begin, end) = self.melting;
        let mushy = self.solid + self.latent / (end - begin);
        let from = S::c(REFERENCE);
        if kelvin < begin {
            (self.solid, self.solid * (kelvin - from))
        } else if kelvin < end {
            (mushy, self.solid * (begin - from) + mushy * (kelvin - begin))
        } else {
            (self.liquid, self.solid * (begin - from) + mushy * (end - begin) + self.liquid * (kelvin - end))
        }
    }
}

impl<S: Scalar> Medium<S> {
    /// A lining's material.
    #[must_use]
    pub fn lining(material: &Material<S>) -> Self {
        Medium::Lining(
            material.density().kilograms_per_cubic_meter(),
            Track::new(material.conductivity_line().points()),
            Track::new(material.specific_heat_line().points()),
        )
    }

    /// Density, kg/m3; none of a metal by numbers, which comes by its mass.
    #[must_use]
    pub fn density(&self) -> S {
        match self {
            Medium::Plain(density, ..) | Medium::Lining(density, ..) => *density,
            Medium::Substance(substance) => Matter::density(substance),
            Medium::Metal(_) => S::one(),
        }
    }

    /// Conductivity, W/(m K).
    #[must_use]
    pub fn conductivity(&self, kelvin: S) -> S {
        match self {
            Medium::Plain(_, conductivity, _) => *conductivity,
            Medium::Lining(_, conductivity, _) => conductivity.at(kelvin).0,
            Medium::Substance(substance) => Matter::conductivity(substance, kelvin),
            Medium::Metal(_) => S::one(),
        }
    }

    /// Specific heat, J/(kg K), and enthalpy, J/kg from one temperature for all.
    #[must_use]
    pub fn heat(&self, kelvin: S) -> (S, S) {
        match self {
            Medium::Plain(_, _, heat) => (*heat, *heat * (kelvin - S::c(REFERENCE))),
            Medium::Lining(_, _, heat) => heat.at(kelvin),
            Medium::Substance(substance) => {
                (substance.specific_heat(kelvin), substance.heat_between(S::c(REFERENCE), kelvin))
            }
            Medium::Metal(metal) => metal.heat(kelvin),
        }
    }

    /// Whether a change of temperature must be sought by its heat: where specific heat jumps, steps by temperature
    /// cycle.
    #[must_use]
    pub fn jumps(&self) -> bool {
        matches!(self, Medium::Substance(_) | Medium::Metal(_))
    }

    /// The temperature whose enthalpy lies so far above that of another.
    #[must_use]
    pub fn after(&self, kelvin: S, heat: S) -> S {
        let target = self.heat(kelvin).1 + heat;
        let (mut low, mut high) = if heat < S::zero() { (S::c(1.0), kelvin) } else { (kelvin, S::c(6000.0)) };
        let mut at = kelvin + heat / self.heat(kelvin).0;
        for _ in 0..LOOKS {
            if !(at >= low && at <= high) {
                at = S::c(0.5) * (low + high);
            }
            let (slope, there) = self.heat(at);
            let short = target - there;
            if short > S::zero() {
                low = at
            } else {
                high = at
            }
            let step = short / slope;
            at += step;
            if step.abs() < S::c(4.0) * S::EPSILON * at {
                break;
            }
        }
        at
    }
}

#[cfg(test)]
mod tests {
    use super::{Medium, Metal};
    use crate::furnace::{MATERIALS, Material, Matter, Substance};

    #[test]
    fn the_temperature_comes_back_from_the_heat() {
        let metal = Medium::Metal(Metal { solid: 400.0, melting: (1270.0, 1280.0), latent: 2e5, liquid: 500.0 });
        let bronze = Medium::Substance(Substance::named("bell bronze").unwrap());
        let steel = Medium::Substance(Substance::named("steel").unwrap());
        for medium in [metal, bronze, steel] {
            for (from, to) in [(293.0_f64, 1500.0), (1275.0, 1100.0), (1000.0, 1008.0), (1500.0, 400.0)] {
                let heat = medium.heat(to).1 - medium.heat(from).1;
                let found = medium.after(from, heat);
                assert!((found - to).abs() < 1e-6, "{medium:?} {from} {to} {found}");
            }
        }
    }

    #[test]
    fn a_track_is_the_materials_own_line() {
        for data in MATERIALS {
            let material: Material = Material::named(data.key).unwrap();
            let medium = Medium::lining(&material);
            for kelvin in [250.0_f64, 293.15, 600.0, 673.15, 1111.0, 1500.0, 1900.0] {
                let conductivity = Matter::conductivity(&material, kelvin);
                assert!((medium.conductivity(kelvin) / conductivity - 1.0).abs() < 1e-12);
                let heat = material.heat_between(400.0, kelvin);
                let ours = medium.heat(kelvin).1 - medium.heat(400.0).1;
                assert!((ours - heat).abs() < 1e-9 * heat.abs().max(1.0), "{} {kelvin}", data.key);
            }
        }
    }
}
