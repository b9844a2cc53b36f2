//! How sure a jet's flow is, and a burner's air ratio at a setting.

use super::budget::{Budget, Measurand, budgets};
use super::source::Source;
use super::spreads::Spreads;
use crate::burner::{Burner, Conditions};
use crate::error::Result;
use crate::gas::Gas;
use crate::limits::Input;
use crate::orifice::{BoreShape, Coefficient, Jet, JetFlow, Supply};
use crate::quantity::{AbsolutePressure, GaugePressure, Length, MassFlow, Temperature};
use crate::scalar::{Float, Scalar};
use crate::site::Site;

/// Inputs of a jet alone.
const JET: usize = Source::OF_A_JET;
/// Inputs of a whole burner.
const ALL: usize = Source::COUNT;
/// How far the way a coefficient follows the pressure is known, as a share of what it changes by: Jobson's thin plate
/// and Cunningham's differ by a tenth of it.
const DEPENDENCE: f64 = 0.1;

/// How a jet's coefficient hangs on a weighing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tie<S = f64> {
    /// What stood before and behind the jet while it was weighed.
    pub supply: Supply<S>,
    /// How far an error of the gauge went into the coefficient, and so drops out where the same gauge is read again:
    /// 0 for another gauge, else the weighing's weight beside the model.
    pub gauge_weight: S,
    /// Expanded uncertainty (k = 2) of the coefficient, as a share, without the gauge where its error drops out.
    pub expanded: S,
}

/// How sure the results of a setting are; the inputs of each budget are those of [`Source`], in its order.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answers<F, const N: usize> {
    /// Gas, kg/s; heat and money have the same shares.
    pub gas: Budget<F, N>,
    /// Discharge coefficient.
    pub coefficient: Budget<F, N>,
    /// Air, kg/s; none for a jet alone.
    pub air: Option<Budget<F, N>>,
    /// Air ratio; none for a jet alone.
    pub air_ratio: Option<Budget<F, N>>,
}

/// The hole of a jet, its measures and its coefficient in doubt.
#[derive(Clone, Copy, Debug)]
struct Hole<F> {
    jet: Jet<F>,
    shape: BoreShape<F>,
    gas: Gas<F>,
    /// The tie, the model's coefficient and flow there.
    tie: Option<(Tie<F>, F, F)>,
}

impl<F: Float> Hole<F> {
    fn new(jet: &Jet<F>, shape: &BoreShape<F>, gas: &Gas<F>, tie: Option<Tie<F>>) -> Result<Self> {
        let tie = match tie {
            Some(tie) => {
                let there = Jet { coefficient: Coefficient::Model, ..*jet }.flow(gas, &tie.supply)?;
                Some((tie, there.discharge_coefficient, there.mass_flow.kilograms_per_second()))
            }
            None => None,
        };
        Ok(Self { jet: *jet, shape: *shape, gas: *gas, tie })
    }

    /// Standard uncertainties of a jet's inputs where it flows so.
    fn standard(&self, spreads: &Spreads<F>, gauge: GaugePressure<F>, flow: &JetFlow<F>) -> Result<[F; ALL]> {
        let mut expanded = Source::ALL.map(|source| spreads.fixed(source));
        let is_measured = !matches!(self.jet.coefficient, Coefficient::Model | Coefficient::Corrected { .. });
        expanded[Source::Gauge as usize] = spreads.dial.expanded(gauge).pascals();
        expanded[Source::Hole as usize] = spreads.hole.unwrap_or(flow.coefficient_uncertainty);
        expanded[Source::Edge as usize] = spreads.mouth(&self.shape, self.jet.bore.diameter())?;
        if is_measured {
            // A measured coefficient holds for the bore it was measured in, whatever its true size and edge.
            expanded[Source::Bore as usize] = F::zero();
            expanded[Source::Edge as usize] = F::zero();
        }
        if let Some((tie, there, _)) = self.tie {
            let here = match self.jet.coefficient {
                Coefficient::Corrected { factor, .. } => flow.discharge_coefficient / factor,
                _ => flow.discharge_coefficient,
            };
            let change = if here > F::zero() { (here / there - F::one()).abs() } else { F::zero() };
            expanded[Source::PressureDependence as usize] = F::c(DEPENDENCE) * change;
            expanded[Source::Weighing as usize] = tie.expanded;
        }
        Ok(expanded.map(|expanded| expanded * F::c(0.5)))
    }

    /// The jet where its inputs depart by so much.
    fn at<S: Scalar>(&self, gas: &Gas<S>, by: &[S]) -> Result<Jet<S>> {
        let (one, of) = (S::one(), |source: Source| by[source as usize]);
        let diameter = self.jet.bore.diameter().cast() + Length::from_meters(of(Source::Bore));
        let bore = self.shape.cast().with_diameter(diameter)?.with_mouth(one + of(Source::Edge));
        let count = S::c(self.jet.count.to_f64());
        let hole = one + of(Source::Hole);
        let mut factor = hole * (one + of(Source::PressureDependence)) * (one + of(Source::Weighing));
        if let Some((tie, _, flow)) = self.tie {
            let supply = cast(&tie.supply);
            let off = of(Source::Gauge) * S::c(tie.gauge_weight.to_f64());
            let supply = Supply { gauge: supply.gauge + GaugePressure::from_pascals(off), ..supply };
            let there = Jet { bore, count, coefficient: corrected(hole) }.flow(gas, &supply)?;
            factor = factor * S::c(flow.to_f64()) / there.mass_flow.kilograms_per_second();
        }
        factor = factor * (one + of(Source::Composition));
        let times = |value: F| S::c(value.to_f64()) * factor;
        let coefficient = match self.jet.coefficient {
            Coefficient::Model => corrected(factor),
            Coefficient::Corrected { factor, .. } => corrected(times(factor)),
            Coefficient::Measured(value) => Coefficient::Measured(times(value)),
            Coefficient::MeasuredAt { value, supply } => {
                Coefficient::MeasuredAt { value: times(value), supply: cast(&supply) }
            }
        };
        Ok(Jet { bore, count, coefficient })
    }
}

fn cast<F: Scalar, S: Scalar>(supply: &Supply<F>) -> Supply<S> {
    Supply {
        ambient: supply.ambient.cast(),
        gauge: supply.gauge.cast(),
        back: supply.back.cast(),
        temperature: supply.temperature.cast(),
    }
}

/// The model's coefficient times a factor, whose spread is not looked at here.
fn corrected<S: Scalar>(factor: S) -> Coefficient<S> {
    Coefficient::Corrected { factor, uncertainty: S::zero() }
}

/// A coefficient without what the composition put into it.
fn of_hole<S: Scalar>(flow: &JetFlow<S>, by: &[S]) -> S {
    flow.discharge_coefficient / (S::one() + by[Source::Composition as usize])
}

/// A jet whose inputs are known only so well.
#[derive(Clone, Copy, Debug)]
pub struct UncertainJet<F = f64> {
    hole: Hole<F>,
    supply: Supply<F>,
    standard: [F; JET],
}

impl<F: Float> UncertainJet<F> {
    /// A jet of a shape at a supply, tied to a weighing or not, with the expanded uncertainties of its inputs.
    ///
    /// # Errors
    ///
    /// What [`Jet::flow`] refuses.
    pub fn new(
        jet: &Jet<F>,
        shape: &BoreShape<F>,
        gas: &Gas<F>,
        supply: &Supply<F>,
        tie: Option<Tie<F>>,
        spreads: &Spreads<F>,
    ) -> Result<Self> {
        let hole = Hole::new(jet, shape, gas, tie)?;
        let standard = hole.standard(spreads, supply.gauge, &jet.flow(gas, supply)?)?;
        Ok(Self { hole, supply: *supply, standard: core::array::from_fn(|input| standard[input]) })
    }

    /// Standard uncertainty of each input, in the order of [`Source`].
    #[must_use]
    pub fn standard(&self) -> [F; JET] {
        self.standard
    }

    /// How sure its results are.
    ///
    /// # Errors
    ///
    /// What [`Jet::flow`] refuses at the best estimates.
    ///
    /// # Examples
    ///
    /// ```
    /// # use jetwright::gas::{Gas, Species};
    /// # use jetwright::measure::{Dial, Sizing, Source, Spreads, UncertainJet, starting_bore};
    /// # use jetwright::orifice::{BoreLength, BoreShape, Jet, Supply};
    /// # use jetwright::quantity::{AbsolutePressure, GaugePressure, Length, Temperature};
    /// let shape = BoreShape::drilled(BoreLength::Fixed(Length::from_millimeters(10.0_f64)));
    /// let bore = Length::from_millimeters(1.5);
    /// let jet = Jet::new(shape.with_diameter(bore).unwrap());
    /// let supply = Supply {
    ///     ambient: AbsolutePressure::from_pascals(83_500.0),
    ///     gauge: GaugePressure::from_psi(2.0),
    ///     back: GaugePressure::from_pascals(0.0),
    ///     temperature: Temperature::from_celsius(10.0),
    /// };
    /// let spreads = Spreads::starting(bore, starting_bore(bore, Sizing::Measured).unwrap(), Dial::usual(supply.gauge));
    /// let sure = UncertainJet::new(&jet, &shape, &Gas::from(Species::Propane), &supply, None, &spreads).unwrap();
    /// let flow = sure.answers().unwrap().gas;
    /// // A 0-15 psi gauge of class 3-2-3 is 0.45 of 2 psi off at worst, half of which is 11 % of the flow: most of it.
    /// assert_eq!(flow.largest(), Some(Source::Gauge as usize));
    /// assert!((flow.expanded() / flow.value - 0.13).abs() < 0.01);
    /// ```
    pub fn answers(&self) -> Result<Answers<F, JET>> {
        let [gas, coefficient] = budgets(self, self.standard)?;
        Ok(Answers { gas, coefficient, air: None, air_ratio: None })
    }
}

impl<F: Float> Measurand<JET, 2> for UncertainJet<F> {
    fn results<S: Scalar>(&self, by: [S; JET]) -> Result<[S; 2]> {
        let of = |source: Source| by[source as usize];
        let gas = self.hole.gas.cast();
        let supply = cast(&self.supply);
        let supply = Supply {
            ambient: supply.ambient + AbsolutePressure::from_pascals(of(Source::AirPressure)),
            gauge: supply.gauge + GaugePressure::from_pascals(of(Source::Gauge)),
            temperature: Temperature::from_kelvin(supply.temperature.kelvin() + of(Source::GasTemperature)),
            ..supply
        };
        let flow = self.hole.at(&gas, &by)?.flow(&gas, &supply)?;
        Ok([flow.mass_flow.kilograms_per_second(), of_hole(&flow, &by)])
    }
}

/// A burner at a setting, its inputs known only so well.
#[derive(Clone, Debug)]
pub struct UncertainBurner<F = f64> {
    hole: Hole<F>,
    burner: Burner<F>,
    conditions: Conditions<F>,
    gauge: GaugePressure<F>,
    opening: F,
    standard: [F; ALL],
}

impl<F: Float> UncertainBurner<F> {
    /// A burner, the shape of its jet, at a gauge setting and a damper opening.
    ///
    /// # Errors
    ///
    /// What [`Burner::run`] refuses.
    pub fn new(
        burner: &Burner<F>,
        shape: &BoreShape<F>,
        conditions: &Conditions<F>,
        (gauge, opening): (GaugePressure<F>, F),
        tie: Option<Tie<F>>,
        spreads: &Spreads<F>,
    ) -> Result<Self> {
        let hole = Hole::new(&burner.jet, shape, &conditions.gas, tie)?;
        let running = burner.run(conditions, gauge, opening)?;
        let mut standard = hole.standard(spreads, gauge, &running.jet)?;
        match burner.path.damper() {
            None => standard[Source::Damper as usize] = F::zero(),
            Some(damper) => {
                let own = damper.loss_spread(opening, spreads.disc_gap)?;
                standard[Source::DamperLoss as usize] = F::c(0.5) * spreads.damper_loss.unwrap_or(own);
            }
        }
        Ok(Self { hole, burner: burner.clone(), conditions: *conditions, gauge, opening, standard })
    }

    /// Standard uncertainty of each input, in the order of [`Source`].
    #[must_use]
    pub fn standard(&self) -> [F; ALL] {
        self.standard
    }

    /// How sure its results are.
    ///
    /// # Errors
    ///
    /// What [`Burner::run`] refuses at the best estimates.
    pub fn answers(&self) -> Result<Answers<F, ALL>> {
        let [gas, coefficient, air, air_ratio] = budgets(self, self.standard)?;
        Ok(Answers { gas, coefficient, air: Some(air), air_ratio: Some(air_ratio) })
    }
}

impl<F: Float> Measurand<ALL, 4> for UncertainBurner<F> {
    fn results<S: Scalar>(&self, by: [S; ALL]) -> Result<[S; 4]> {
        let (one, of) = (S::one(), |source: Source| by[source as usize]);
        let given = &self.conditions;
        let warmer =
            |temperature: Temperature<F>, by: S| Temperature::from_kelvin(temperature.cast::<S>().kelvin() + by);
        let site = Site::at_station_pressure(
            given.site.ambient_pressure().cast() + AbsolutePressure::from_pascals(of(Source::AirPressure)),
            warmer(given.site.air_temperature(), of(Source::AirTemperature)),
            S::c(given.site.humidity().to_f64()),
        )?;
        let gas = given.gas.cast();
        let conditions = Conditions {
            site,
            gas,
            gas_temperature: warmer(given.gas_temperature, of(Source::GasTemperature)),
            mixture_temperature: warmer(given.mixture_temperature, of(Source::MixtureTemperature)),
            chamber_temperature: given.chamber_temperature.cast(),
        };
        let burner = Burner {
            jet: self.hole.at(&gas, &by)?,
            head: self.burner.head.cast().widened(one + of(Source::Head)),
            head_count: S::c(self.burner.head_count.to_f64()),
            blower: self.burner.blower.cast().with_pressure(one + of(Source::Blower)),
            path: self.burner.path.cast().with_damper_loss(of(Source::DamperLoss).exp())?,
            mixing_tube: self.burner.mixing_tube.map(Length::cast),
            exhaust: self.burner.exhaust.as_ref().map(crate::burner::Exhaust::cast),
        };
        let range = Input::DamperOpening.range();
        let opening = (S::c(self.opening.to_f64()) + of(Source::Damper)).clamped(S::c(range.min), S::c(range.max));
        let gauge = self.gauge.cast() + GaugePressure::from_pascals(of(Source::Gauge));
        let running = burner.run(&conditions, gauge, opening)?;
        let flow = |flow: MassFlow<S>| flow.kilograms_per_second();
        let air_ratio = running.air_ratio.unwrap_or(S::zero());
        Ok([flow(running.gas), of_hole(&running.jet, &by), flow(running.air), air_ratio])
    }
}
