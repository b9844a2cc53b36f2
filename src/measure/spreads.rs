//! Starting values: how well a shop knows each input. All are expanded uncertainties at k = 2.

use super::source::Source;
use crate::air::GAP_SPREAD;
use crate::error::Result;
use crate::orifice::{BoreShape, Edge};
use crate::quantity::{GaugePressure, Length, PressureDifference, TemperatureDifference};
use crate::scalar::Scalar;

/// How well a bore is known by how its size is known (engineering judgement): pins gauge it to a hundredth.
const PINNED: f64 = 0.01e-3;
/// A nominal drill cuts +0.10/-0.05 mm around 1.5 mm; the expanded uncertainty with the same mean square, and as a share.
const DRILLED: f64 = 0.08e-3;
const DRILLED_SHARE: f64 = DRILLED / 1.5e-3;

/// Error limits of a dial, as shares of its span.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DialClass {
    /// In the first and the last quarter of the span.
    pub ends: f64,
    /// In the middle half.
    pub middle: f64,
}

impl DialClass {
    /// The classes by name: ASME B40.100 grades (3-2-3 is B, 2-1-2 is A, 1 is 1A) and EN 837-1 accuracy classes (from
    /// memory).
    pub const NAMED: [(&'static str, DialClass); 8] = [
        ("3-2-3", DialClass { ends: 0.03, middle: 0.02 }),
        ("2-1-2", DialClass { ends: 0.02, middle: 0.01 }),
        ("0.25", DialClass { ends: 0.0025, middle: 0.0025 }),
        ("0.6", DialClass { ends: 0.006, middle: 0.006 }),
        ("1", DialClass { ends: 0.01, middle: 0.01 }),
        ("1.6", DialClass { ends: 0.016, middle: 0.016 }),
        ("2.5", DialClass { ends: 0.025, middle: 0.025 }),
        ("4", DialClass { ends: 0.04, middle: 0.04 }),
    ];
    /// What a shop's gauge has unless its dial says better.
    pub const USUAL: DialClass = Self::NAMED[0].1;
}

/// A pressure gauge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Dial<S = f64> {
    /// By what its dial says.
    Class {
        /// Its full scale.
        span: GaugePressure<S>,
        /// Its class.
        class: DialClass,
    },
    /// By an error that is known, the same everywhere.
    Error(GaugePressure<S>),
}

impl<S: Scalar> Dial<S> {
    /// The gauge a shop would have for a reading: the least of 15, 30, 60 and 100 psi that the reading stays under by
    /// a fifth, of class 3-2-3.
    #[must_use]
    pub fn usual(highest_reading: GaugePressure<S>) -> Self {
        let mut span = GaugePressure::from_psi(S::c(15.0));
        for larger in [30.0, 60.0, 100.0] {
            if highest_reading > span * S::c(0.8) {
                span = GaugePressure::from_psi(S::c(larger));
            }
        }
        Dial::Class { span, class: DialClass::USUAL }
    }

    /// Expanded uncertainty of the error at a reading.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::measure::{Dial, DialClass};
    /// use jetwright::quantity::GaugePressure;
    /// let dial = Dial::Class { span: GaugePressure::from_psi(15.0_f64), class: DialClass::USUAL };
    /// // Class 3-2-3: two hundredths of 15 psi in the middle half, three in the first quarter.
    /// assert!((dial.expanded(GaugePressure::from_psi(6.0)).psi() - 0.30).abs() < 1e-12);
    /// assert!((dial.expanded(GaugePressure::from_psi(2.0)).psi() - 0.45).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn expanded(&self, reading: GaugePressure<S>) -> GaugePressure<S> {
        match *self {
            Dial::Error(error) => error,
            Dial::Class { span, class } => {
                let is_middle = reading > span * S::c(0.25) && reading < span * S::c(0.75);
                span * S::c(if is_middle { class.middle } else { class.ends })
            }
        }
    }
}

/// How the size of a bore is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sizing {
    /// It was measured.
    Measured,
    /// By the drill that made it.
    Drilled,
    /// By the mark on a contact tip, which wears.
    MarkedTip,
}

/// Expanded uncertainty of a bore of this size; none for a tip nobody has measured, of which nothing can be said.
///
/// # Source
///
/// Engineering judgement: a measured bore +-0.01 mm, a nominal drill +0.10/-0.05 mm at 1.5 mm and in proportion below.
///
/// # Examples
///
/// ```
/// use jetwright::measure::{Sizing, starting_bore};
/// use jetwright::quantity::Length;
/// let bore = Length::from_millimeters(1.5_f64);
/// // A hundredth on 1.5 mm is 1.3 % of the area.
/// assert!((2.0 * starting_bore(bore, Sizing::Measured).unwrap().meters() / bore.meters() - 0.0133).abs() < 1e-4);
/// assert!(starting_bore(bore, Sizing::MarkedTip).is_none());
/// ```
#[must_use]
pub fn starting_bore<S: Scalar>(diameter: Length<S>, sizing: Sizing) -> Option<Length<S>> {
    let of_drill = (S::c(DRILLED_SHARE) * diameter.meters()).smaller(S::c(DRILLED));
    match sizing {
        Sizing::Measured => Some(Length::from_meters(S::c(PINNED))),
        Sizing::Drilled => Some(Length::from_meters(of_drill)),
        Sizing::MarkedTip => None,
    }
}

/// How well each input is known: expanded uncertainties at k = 2.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spreads<S = f64> {
    /// Of the bore's diameter.
    pub bore: Length<S>,
    /// How far the mouth may be rounded (or burred) beyond what is said of it.
    pub edge_rounding: Length<S>,
    /// Of the coefficient by the model, as a share; the model's own unless given.
    pub hole: Option<S>,
    /// Of the gauge.
    pub dial: Dial<S>,
    /// Of the gas before the jet.
    pub gas_temperature: TemperatureDifference<S>,
    /// Of the flow for its composition, as a share.
    pub composition: S,
    /// Of the air around.
    pub air_pressure: PressureDifference<S>,
    /// Of that air.
    pub air_temperature: TemperatureDifference<S>,
    /// Of the damper's mark, as a share of its way.
    pub damper: S,
    /// Of the damper's loss at a mark, as a share; the damper's own unless given.
    pub damper_loss: Option<S>,
    /// Of the gap round a shut disc, as a share of the duct.
    pub disc_gap: S,
    /// Of the blower's pressure, as a share.
    pub blower: S,
    /// Of the head's open area, its loss included, as a share.
    pub head: S,
    /// Of the mixture in the ports.
    pub mixture_temperature: TemperatureDifference<S>,
}

impl<S: Scalar> Spreads<S> {
    /// Starting values for a bore and a gauge.
    ///
    /// # Source
    ///
    /// Engineering judgement, all settable: the edge rounded by a hundredth of the bore, gas +-8 K, composition +-1 %
    /// of the flow, air pressure +-15 hPa (the weather over an altitude), air +-3 K, damper +-3 % of its way, gap of a disc +-2 % of the duct, blower
    /// +-10 % of its pressure, head +-5 % of its area, mixture +-10 K.
    #[must_use]
    pub fn starting(diameter: Length<S>, bore: Length<S>, dial: Dial<S>) -> Self {
        let kelvin = |value: f64| TemperatureDifference::from_kelvin(S::c(value));
        Self {
            bore,
            edge_rounding: diameter * S::c(0.01),
            hole: None,
            dial,
            gas_temperature: kelvin(8.0),
            composition: S::c(0.01),
            air_pressure: PressureDifference::from_pascals(S::c(1500.0)),
            air_temperature: kelvin(3.0),
            damper: S::c(0.03),
            damper_loss: None,
            disc_gap: S::c(GAP_SPREAD.0),
            blower: S::c(0.1),
            head: S::c(0.05),
            mixture_temperature: kelvin(10.0),
        }
    }

    /// The share of a mouth's loss that the rounding may take away.
    ///
    /// # Errors
    ///
    /// A measure of the edge out of range.
    pub fn mouth(&self, shape: &BoreShape<S>, diameter: Length<S>) -> Result<S> {
        let broken = match shape.edge {
            Edge::Sharp | Edge::Square => Edge::Rounded { radius: self.edge_rounding },
            Edge::Rounded { radius } => Edge::Rounded { radius: radius + self.edge_rounding },
            Edge::Chamfered { depth, angle } => Edge::Chamfered { depth: depth + self.edge_rounding, angle },
        };
        Ok((S::one() - broken.entry_loss(diameter)? / shape.edge.entry_loss(diameter)?).abs().smaller(S::c(0.9)))
    }

    /// The expanded uncertainty of a source that is the same at every setting; zero for those that follow from the setting.
    #[must_use]
    pub fn fixed(&self, source: Source) -> S {
        match source {
            Source::Bore => self.bore.meters(),
            Source::GasTemperature => self.gas_temperature.kelvin(),
            Source::Composition => self.composition,
            Source::AirPressure => self.air_pressure.pascals(),
            Source::AirTemperature => self.air_temperature.kelvin(),
            Source::Damper => self.damper,
            Source::Blower => self.blower,
            Source::Head => self.head,
            Source::MixtureTemperature => self.mixture_temperature.kelvin(),
            Source::Edge
            | Source::Hole
            | Source::PressureDependence
            | Source::Weighing
            | Source::Gauge
            | Source::DamperLoss => S::zero(),
        }
    }
}
