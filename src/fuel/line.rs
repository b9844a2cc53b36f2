//! The line between gauge and jet: hose, valve and fittings cost pressure, and the jet feels what is left.

use crate::error::{Error, Result};
use crate::friction::Wall;
use crate::gas::Gas;
use crate::limits::{Input, check};
use crate::orifice::{Jet, JetFlow, Supply};
use crate::quantity::{AbsolutePressure, GaugePressure, Length, MassFlow, PressureDifference, Temperature};
use crate::scalar::Scalar;
use crate::solve;

/// Above this share of the reading lost on the way, the gauge reads high: the fire is some 2.5 % smaller than it tells, as much
/// as a shop gauge is off by itself.
pub const GAUGE_READS_HIGH: f64 = 0.05;
/// Most times the outlet pressure sought as inlet pressure.
const STEEPEST: f64 = 60.0;

/// The inlet pressure of an isothermal line: p1^2 - p2^2 = G^2 z R T (f L/D + K + 2 ln(p1/p2)).
///
/// # Units
///
/// Pressures in pascals absolute; `flux` G in kg/(s m2); `work` z R T in J/kg; `losses` f L/D + K on the dynamic head.
///
/// # Errors
///
/// [`Error::NoSolution`] when the flow is more than the line can pass at that outlet: its speed would be beyond
/// sqrt(z R T).
///
/// # Source
///
/// Massey, Mechanics of Fluids, section 11.10, isothermal flow with friction (from memory).
///
/// # Examples
///
/// ```
/// use jetwright::fuel::isothermal_inlet;
/// // Massey's example 11.7: air, 0.32 kg/s, 145 m of 41 mm pipe, Darcy factor 0.024, 288 K, 8 to 5 bar.
/// let flux = 0.32 / (0.25 * core::f64::consts::PI * 0.041_f64.powi(2));
/// let inlet = isothermal_inlet(5e5, flux, 287.0 * 288.0, 0.024 * 145.0 / 0.041).unwrap();
/// // The diameter is printed to two digits; the loss goes with its fifth power.
/// assert!((inlet / 8e5 - 1.0).abs() < 0.04);
/// ```
pub fn isothermal_inlet<S: Scalar>(outlet: S, flux: S, work: S, losses: S) -> Result<S> {
    let number = flux.squared() * work / outlet.squared();
    let beyond = Error::NoSolution { input: Input::PipeLength, nearest: outlet.to_f32() };
    if number >= S::one() || !number.is_finite() {
        return Err(beyond);
    }
    // With y = ln(p1/p2): exp(2y) - 1 = number (losses + 2 y), which has one root above zero.
    let most = S::c(STEEPEST).ln();
    let excess = |y: S| (S::c(2.0) * y).exp_m1() - number * (losses + S::c(2.0) * y);
    if excess(most) < S::zero() {
        return Err(beyond);
    }
    let root = solve::root(Input::PipeLength, S::zero(), most, excess)?;
    Ok(outlet * root.x.exp())
}

/// A line of one bore, from the gauge to the jet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line<S = f64> {
    diameter: S,
    length: S,
    wall: Wall<S>,
    fitting_loss: S,
}

/// What a line leaves of a gauge's reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LineFlow<S = f64> {
    /// The jet, fed by what the line leaves.
    pub jet: JetFlow<S>,
    /// Gauge pressure at the jet.
    pub at_jet: GaugePressure<S>,
    /// What is lost on the way.
    pub loss: PressureDifference<S>,
    /// The loss over the reading.
    pub share: S,
    /// Whether the gauge reads high: the share is above [`GAUGE_READS_HIGH`].
    pub gauge_reads_high: bool,
}

impl<S: Scalar> Line<S> {
    /// A line with an inside diameter, length, roughness, and the sum of its fittings' loss coefficients.
    ///
    /// # Errors
    ///
    /// The input that is out of its range.
    pub fn new(diameter: Length<S>, length: Length<S>, roughness: Length<S>, fitting_loss: S) -> Result<Self> {
        let diameter = check(Input::PipeDiameter, diameter.meters())?;
        Ok(Self {
            diameter,
            length: check(Input::PipeLength, length.meters())?,
            wall: Wall::new(check(Input::Roughness, roughness.meters())? / diameter),
            fitting_loss: check(Input::FittingLoss, fitting_loss)?,
        })
    }

    /// The same line with a valve in it, known by its flow coefficient Kv: K = 2 A^2 (1 bar) / (rho (Kv/3600)^2).
    ///
    /// # Errors
    ///
    /// Coefficient or the resulting loss out of range.
    ///
    /// # Source
    ///
    /// The definition of Kv, IEC 60534-1: water of 1000 kg/m3 at one bar (from memory).
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::fuel::Line;
    /// use jetwright::quantity::Length;
    /// let hose = Line::new(Length::from_millimeters(8.0_f64), Length::from_meters(3.0), Length::from_meters(0.0), 0.0);
    /// // By hand: A = 50.3 mm2, Kv 1 is 2.78e-4 m3/s: 200 * 2.53e-9 / 7.72e-8 = 6.55.
    /// let with_valve = hose.unwrap().with_valve(1.0).unwrap();
    /// assert!((with_valve.fitting_loss() - 6.55).abs() < 0.01);
    /// ```
    pub fn with_valve(self, coefficient: S) -> Result<Self> {
        let flow = check(Input::ValveCoefficient, coefficient)? / S::c(3600.0);
        let loss = self.fitting_loss + S::c(200.0) * (self.area() / flow).squared();
        Ok(Self { fitting_loss: check(Input::FittingLoss, loss)?, ..self })
    }

    /// Sum of the loss coefficients of fittings and valve.
    #[must_use]
    pub fn fitting_loss(&self) -> S {
        self.fitting_loss
    }

    fn area(&self) -> S {
        S::c(core::f64::consts::FRAC_PI_4) * self.diameter.squared()
    }

    /// The pressure before the line for a flow and the pressure behind it: [`isothermal_inlet`] with Darcy friction.
    ///
    /// # Errors
    ///
    /// A flow the line cannot pass; [`Error::Liquid`].
    ///
    /// # Source
    ///
    /// Friction as of [`Wall::friction`].
    pub fn inlet(
        &self,
        gas: &Gas<S>,
        outlet: AbsolutePressure<S>,
        temperature: Temperature<S>,
        flow: MassFlow<S>,
    ) -> Result<AbsolutePressure<S>> {
        let flow = flow.kilograms_per_second();
        if flow <= S::zero() {
            return Ok(outlet);
        }
        let flux = flow / self.area();
        let reynolds_number = flux * self.diameter / gas.viscosity(temperature);
        let losses = self.wall.friction(reynolds_number).factor * self.length / self.diameter + self.fitting_loss;
        let work = outlet.pascals() / gas.density(outlet, temperature)?.kilograms_per_cubic_meter();
        isothermal_inlet(outlet.pascals(), flux, work, losses).map(AbsolutePressure::from_pascals)
    }

    /// The gauge pressure behind the line, for what the gauge before it reads and whatever takes gas behind it:
    /// p(reading) = inlet(p at jet, flow at p at jet).
    ///
    /// # Arguments
    ///
    /// `supply` holds the reading; `lowest` is a pressure behind the line at which no gas flows; `flow_at` is all gas
    /// of the line at a pressure behind it.
    ///
    /// # Errors
    ///
    /// Those of `flow_at` at the reading itself; [`Error::NoSolution`] when gas flows at the lowest pressure still.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::fuel::Line;
    /// use jetwright::gas::{Gas, Species};
    /// use jetwright::orifice::Supply;
    /// use jetwright::quantity::{AbsolutePressure, GaugePressure, Length, MassFlow, Temperature};
    /// let hose = Line::new(Length::from_millimeters(6.0_f64), Length::from_meters(3.0), Length::from_meters(0.0), 5.0);
    /// let supply = Supply {
    ///     ambient: AbsolutePressure::from_pascals(83_500.0),
    ///     gauge: GaugePressure::from_pascals(41_000.0),
    ///     back: GaugePressure::from_pascals(0.0),
    ///     temperature: Temperature::from_celsius(10.0),
    /// };
    /// let flow = MassFlow::from_grams_per_second(0.52);
    /// let nothing = GaugePressure::from_pascals(0.0);
    /// let at_jet = hose.unwrap().at_jet(&Gas::from(Species::Propane), &supply, nothing, |_| Ok(flow)).unwrap();
    /// // By hand: 18.4 kg/(s m2) at 2.43 kg/m3 is 70 Pa of head; times 0.029 * 500 + 5 it is 1.4 kPa.
    /// assert!((41_000.0 - at_jet.pascals() - 1_400.0).abs() < 140.0);
    /// ```
    pub fn at_jet(
        &self,
        gas: &Gas<S>,
        supply: &Supply<S>,
        lowest: GaugePressure<S>,
        flow_at: impl Fn(GaugePressure<S>) -> Result<MassFlow<S>>,
    ) -> Result<GaugePressure<S>> {
        let before = supply.gauge.to_absolute(supply.ambient).pascals();
        flow_at(supply.gauge)?;
        // More than the line can pass asks more than any inlet.
        let beyond = S::c(STEEPEST) * before;
        let root = solve::root(Input::GaugePressure, lowest.pascals(), supply.gauge.pascals(), |at_jet| {
            let at_jet = GaugePressure::from_pascals(at_jet);
            let inlet = flow_at(at_jet)
                .and_then(|flow| self.inlet(gas, at_jet.to_absolute(supply.ambient), supply.temperature, flow));
            inlet.map_or(beyond, |inlet| inlet.pascals() - before)
        })?;
        Ok(GaugePressure::from_pascals(root.x))
    }

    /// The jet at the end of the line, for what the gauge before it reads.
    ///
    /// `supply` holds the gauge's reading.
    ///
    /// # Errors
    ///
    /// As of [`Jet::flow`]; [`Error::NoSolution`] when an air stream that draws sucks the line below the air around.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::fuel::Line;
    /// use jetwright::gas::{Gas, Species};
    /// use jetwright::orifice::{BoreShape, Jet, Supply};
    /// use jetwright::quantity::{AbsolutePressure, GaugePressure, Length, Temperature};
    /// let hose = Line::new(Length::from_millimeters(6.0_f64), Length::from_meters(3.0), Length::from_meters(0.0), 5.0);
    /// let jet = Jet::new(BoreShape::default().with_diameter(Length::from_millimeters(1.5)).unwrap());
    /// let supply = Supply {
    ///     ambient: AbsolutePressure::from_pascals(83_500.0),
    ///     gauge: GaugePressure::from_psi(6.0),
    ///     back: GaugePressure::from_pascals(0.0),
    ///     temperature: Temperature::from_celsius(10.0),
    /// };
    /// let flow = hose.unwrap().feed(&jet, &Gas::from(Species::Propane), &supply).unwrap();
    /// // By hand: 0.52 g/s in 6 mm is 8 m/s; 72 Pa of dynamic head times 0.029 * 500 + 5 is 1.4 kPa of 41.4,
    /// // within the fifteenth that the flow is rounded by, squared.
    /// assert!((flow.share / 0.034 - 1.0).abs() < 0.14 && !flow.gauge_reads_high);
    /// ```
    pub fn feed(&self, jet: &Jet<S>, gas: &Gas<S>, supply: &Supply<S>) -> Result<LineFlow<S>> {
        let fed = |gauge: GaugePressure<S>| jet.flow(gas, &Supply { gauge, ..*supply });
        let open = GaugePressure::from_pascals(supply.back.pascals().larger(S::zero()));
        let at_jet = self.at_jet(gas, supply, open, |gauge| Ok(fed(gauge)?.mass_flow))?;
        let loss = supply.gauge.pascals() - at_jet.pascals();
        let share = if supply.gauge.pascals() > S::zero() { loss / supply.gauge.pascals() } else { S::zero() };
        Ok(LineFlow {
            jet: fed(at_jet)?,
            at_jet,
            loss: PressureDifference::from_pascals(loss),
            share,
            gauge_reads_high: share > S::c(GAUGE_READS_HIGH),
        })
    }
}
