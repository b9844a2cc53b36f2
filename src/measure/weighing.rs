//! A jet measured by the mass it passes in a time.

use super::settings::UncertainJet;
use super::source::Source;
use super::spreads::Spreads;
use crate::error::Error;
use crate::gas::Gas;
use crate::orifice::{BoreShape, Coefficient, Jet, Supply, bore_for_heat};
use crate::quantity::{Duration, GaugePressure, HeatRate, Length, Mass, MassFlow, Temperature};
use crate::scalar::{Float, Scalar};

/// A scale that leaves the mass lost this unsure (k = 2) says less than the model of the hole.
const USELESS: f64 = 0.1;
/// What a weighing long enough leaves to the scale.
const LONG_ENOUGH: f64 = 0.01;
/// A cylinder that has lost this share of its gas was empty before the end.
const EMPTY: f64 = 0.98;
/// Runs that scatter beyond their readings by more than this many standard deviations contradict each other.
const DISAGREE: f64 = 3.5;

/// One weighing, or one reading of a meter: the gas that one jet, or the jets of one head together, passed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Run<S = f64> {
    /// Gas passed.
    pub mass: Mass<S>,
    /// In this time.
    pub time: Duration<S>,
    /// What stood before and behind the jet.
    pub supply: Supply<S>,
    /// Gas the cylinder held at the beginning, if known.
    pub held: Option<Mass<S>>,
}

/// How well a run is read: expanded uncertainties at k = 2.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading<S = f64> {
    /// Of the mass lost.
    pub mass: Mass<S>,
    /// Of the mass, as a share of it: a meter's class.
    pub share: S,
    /// Of the time.
    pub time: Duration<S>,
}

impl<S: Scalar> Reading<S> {
    /// A scale that shows steps of so much, read twice, and a clock stopped by hand within two seconds.
    ///
    /// Each reading is anywhere within its step, so their difference has the standard uncertainty step / sqrt 6
    /// (JCGM 100:2008, F.2.2.1).
    #[must_use]
    pub fn of_scale(step: Mass<S>) -> Self {
        let mass = step * (S::c(2.0) / S::c(6.0).sqrt());
        Self { mass, share: S::zero(), time: Duration::from_seconds(S::c(2.0)) }
    }
}

/// Why runs measure nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum WeighingError {
    /// No run was given.
    NoRuns,
    /// The model refuses the supply of a run, counted from zero.
    Refused {
        /// Which run.
        run: usize,
        /// Why.
        error: Error,
    },
    /// A run passed no gas, or took no time.
    NothingLost {
        /// Which run.
        run: usize,
    },
    /// The scale cannot resolve so little gas.
    TooShort {
        /// Which run.
        run: usize,
        /// Seconds after which the scale leaves a hundredth.
        needs: f32,
    },
    /// The cylinder gave all it held, so it was empty before the end.
    EmptyCylinder {
        /// Which run.
        run: usize,
    },
    /// The runs scatter far beyond their readings.
    RunsDisagree {
        /// The smallest over the largest.
        ratio: f32,
    },
}

/// One run against the model.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunResult<S = f64> {
    /// Gas passed, by the run.
    pub flow: MassFlow<S>,
    /// The same over the model's, for the bore as it is said to be.
    pub factor: S,
    /// Standard uncertainty of that by the run's own readings, as a share.
    pub own: S,
}

impl<S: Scalar> RunResult<S> {
    /// What the model says of the run.
    fn model(&self) -> MassFlow<S> {
        self.flow * (S::one() / self.factor)
    }
}

/// What runs say of a jet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured<S = f64> {
    /// Gas passed over the model's.
    pub factor: S,
    /// Coefficient of the bore as it is said to be.
    pub coefficient: S,
    /// The bore that passes so much by the model.
    pub effective_bore: Length<S>,
    /// Standard uncertainty by the runs' own readings and their scatter, as a share.
    pub own: S,
    /// The same by the gauge.
    pub gauge: S,
    /// The same by everything else the runs share: temperature, composition, air pressure, a meter's class.
    pub shared: S,
    /// Mean supply of the runs.
    pub supply: Supply<S>,
    /// How the factor changes with the flow, where runs differ in it.
    pub trend: Option<Trend<S>>,
}

/// How a measured factor changes with the flow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trend<S = f64> {
    /// Change of ln(factor) from no flow to the mean flow.
    pub slope: S,
    /// Its standard uncertainty by the runs' own readings.
    pub own: S,
    /// The same by the gauge, which is less sure at low readings.
    pub gauge: S,
}

impl<S: Scalar> Measured<S> {
    /// Standard uncertainty of all, as a share.
    #[must_use]
    pub fn standard(&self) -> S {
        (self.own.squared() + self.gauge.squared() + self.shared.squared()).sqrt()
    }
    /// The same without the gauge.
    #[must_use]
    pub fn without_gauge(&self) -> S {
        (self.own.squared() + self.shared.squared()).sqrt()
    }
}

/// One run against the model.
///
/// # Errors
///
/// [`WeighingError`] naming run 0.
pub fn run_result<F: Float>(
    jet: &Jet<F>,
    gas: &Gas<F>,
    run: &Run<F>,
    reading: &Reading<F>,
) -> Result<RunResult<F>, WeighingError> {
    let (mass, time) = (run.mass.kilograms(), run.time.seconds());
    if !(mass > F::zero() && time > F::zero()) {
        return Err(WeighingError::NothingLost { run: 0 });
    }
    if run.held.is_some_and(|held| mass >= F::c(EMPTY) * held.kilograms()) {
        return Err(WeighingError::EmptyCylinder { run: 0 });
    }
    let scale = reading.mass.kilograms() / mass;
    if scale > F::c(USELESS) {
        let needs = (time * scale / F::c(LONG_ENOUGH)).to_f32();
        return Err(WeighingError::TooShort { run: 0, needs });
    }
    let model = Jet { coefficient: Coefficient::Model, ..*jet }.flow(gas, &run.supply);
    let model = model.map_err(|error| WeighingError::Refused { run: 0, error })?.mass_flow.kilograms_per_second();
    let flow = mass / time;
    let own = F::c(0.5) * (scale.squared() + (reading.time.seconds() / time).squared()).sqrt();
    Ok(RunResult { flow: MassFlow::from_kilograms_per_second(flow), factor: flow / model, own })
}

/// The coefficient and the effective bore of a jet from one run or several.
///
/// factor = (mass / time) / model; several runs are joined by 1/u^2 of their own readings, and where they scatter
/// more than those say the scatter counts (Birge's ratio).
///
/// # Errors
///
/// [`WeighingError`].
///
/// # Source
///
/// JCGM 100:2008, 4.2 and 5.1; Birge, Phys. Rev. 40 (1932) 207 (from memory).
///
/// # Examples
///
/// ```
/// # use jetwright::gas::{Gas, Species};
/// # use jetwright::measure::{Dial, Reading, Run, Sizing, Spreads, measured_jet, starting_bore};
/// # use jetwright::orifice::{BoreLength, BoreShape, Jet, Supply};
/// # use jetwright::quantity::{AbsolutePressure, Duration, GaugePressure, Length, Mass, Temperature};
/// let shape = BoreShape::drilled(BoreLength::Fixed(Length::from_millimeters(10.0_f64)));
/// let bore = Length::from_millimeters(1.5);
/// let jet = Jet::new(shape.with_diameter(bore).unwrap());
/// let supply = Supply {
///     ambient: AbsolutePressure::from_pascals(83_500.0),
///     gauge: GaugePressure::from_psi(6.0),
///     back: GaugePressure::from_pascals(0.0),
///     temperature: Temperature::from_celsius(10.0),
/// };
/// let propane = Gas::from(Species::Propane);
/// let spreads = Spreads::starting(bore, starting_bore(bore, Sizing::Drilled).unwrap(), Dial::usual(supply.gauge));
/// let run = Run { mass: Mass::from_kilograms(0.96), time: Duration::from_minutes(30.0), supply, held: None };
/// let reading = Reading::of_scale(Mass::from_grams(10.0));
/// let found = measured_jet(&jet, &shape, &propane, &[run], &reading, &spreads).unwrap();
/// // 0.533 g/s; ten grams on 960, read twice, are 0.4 % standard, and the bore goes with the root of the factor.
/// let model = jet.flow(&propane, &supply).unwrap().mass_flow.grams_per_second();
/// assert!((found.factor - 0.5333 / model).abs() < 1e-3 && (found.own - 0.0043).abs() < 1e-4);
/// assert!((found.effective_bore.millimeters() / 1.5 - found.factor.sqrt()).abs() < 3e-3);
/// ```
pub fn measured_jet<F: Float>(
    jet: &Jet<F>,
    shape: &BoreShape<F>,
    gas: &Gas<F>,
    runs: &[Run<F>],
    reading: &Reading<F>,
    spreads: &Spreads<F>,
) -> Result<Measured<F>, WeighingError> {
    let count = F::c(runs.len() as f64);
    let jet = Jet { coefficient: Coefficient::Model, ..*jet };
    let one_run = |run: usize| run_result(&jet, gas, &runs[run], reading).map_err(|error| error.of(run));
    let (mut weights, mut sum, mut flows) = (F::zero(), F::zero(), F::zero());
    for run in 0..runs.len() {
        let found = one_run(run)?;
        let weight = F::one() / found.own.squared();
        weights += weight;
        sum += weight * found.factor.ln();
        flows += found.model().kilograms_per_second() / count;
    }
    if runs.is_empty() {
        return Err(WeighingError::NoRuns);
    }
    let mean = sum / weights;
    let by_gauge = |run: usize| {
        of_supply(&jet, shape, gas, &runs[run].supply, spreads)
            .map(|(gauge, _)| gauge)
            .map_err(|error| WeighingError::Refused { run, error })
    };
    let scatter = scatter(runs.len(), (mean, flows), one_run, by_gauge)?;
    let supply = mean_supply(runs);
    let refused = |error| WeighingError::Refused { run: 0, error };
    let (gauge, others) = of_supply(&jet, shape, gas, &supply, spreads).map_err(refused)?;
    let factor = mean.exp();
    let there = jet.flow(gas, &supply).map_err(refused)?;
    let heat = HeatRate::Net(gas.net_heating_value().of(there.mass_flow * factor));
    let bore = bore_for_heat(shape, jet.count, Coefficient::Model, gas, &supply, heat).map_err(refused)?;
    Ok(Measured {
        factor,
        coefficient: there.discharge_coefficient * factor,
        effective_bore: bore,
        own: (scatter.birge / weights).sqrt(),
        gauge,
        shared: (others.squared() + (F::c(0.5) * reading.share).squared()).sqrt(),
        supply,
        trend: scatter.trend,
    })
}

impl WeighingError {
    /// The same error, of another run.
    fn of(self, number: usize) -> Self {
        match self {
            Self::Refused { error, .. } => Self::Refused { run: number, error },
            Self::NothingLost { .. } => Self::NothingLost { run: number },
            Self::TooShort { needs, .. } => Self::TooShort { run: number, needs },
            Self::EmptyCylinder { .. } => Self::EmptyCylinder { run: number },
            other => other,
        }
    }
}

/// How runs differ beyond their readings.
struct Scatter<F> {
    /// Chi squared over its degrees of freedom, no less than one.
    birge: F,
    trend: Option<Trend<F>>,
}

fn scatter<F: Float>(
    count: usize,
    (mean, mean_flow): (F, F),
    run: impl Fn(usize) -> Result<RunResult<F>, WeighingError>,
    by_gauge: impl Fn(usize) -> Result<F, WeighingError>,
) -> Result<Scatter<F>, WeighingError> {
    let (mut chi, mut least, mut most) = (F::zero(), mean, mean);
    let (mut lever, mut moment, mut weights, mut places) = (F::zero(), F::zero(), F::zero(), F::zero());
    for number in 0..count {
        let found = run(number)?;
        let (weight, log) = (F::one() / found.own.squared(), found.factor.ln());
        chi += weight * (log - mean).squared();
        (least, most) = (least.smaller(log), most.larger(log));
        weights += weight;
        places += weight * (found.model().kilograms_per_second() / mean_flow);
    }
    let freedom = F::c((count.max(2) - 1) as f64);
    // Wilson and Hilferty's cube root makes chi squared normal.
    let ninth = F::c(2.0 / 9.0) / freedom;
    let deviations = ((chi / freedom).cbrt() - (F::one() - ninth)) / ninth.sqrt();
    let mut of_gauge = F::zero();
    for number in 0..count {
        let found = run(number)?;
        let weight = F::one() / found.own.squared();
        let arm = found.model().kilograms_per_second() / mean_flow - places / weights;
        lever += weight * arm.squared();
        moment += weight * arm * (found.factor.ln() - mean);
        of_gauge += weight * arm * by_gauge(number)?;
    }
    let wide_apart = lever / weights > F::c(0.1 * 0.1);
    // A trend explains its part of the scatter.
    let explained = if wide_apart { moment.squared() / lever } else { F::zero() };
    if deviations > F::c(DISAGREE) && chi - explained > F::c(0.5) * chi {
        return Err(WeighingError::RunsDisagree { ratio: (least - most).exp().to_f32() });
    }
    let trend = wide_apart.then(|| Trend {
        slope: moment / lever,
        own: (F::one() / lever).sqrt(),
        gauge: (of_gauge / lever).abs(),
    });
    Ok(Scatter { birge: (chi / freedom).larger(F::one()), trend })
}

/// The mean of the runs' supplies.
fn mean_supply<F: Float>(runs: &[Run<F>]) -> Supply<F> {
    let mean = |of: fn(&Supply<F>) -> F| {
        runs.iter().fold(F::zero(), |sum, run| sum + of(&run.supply)) / F::c(runs.len() as f64)
    };
    Supply {
        ambient: crate::quantity::AbsolutePressure::from_pascals(mean(|supply| supply.ambient.pascals())),
        gauge: GaugePressure::from_pascals(mean(|supply| supply.gauge.pascals())),
        back: GaugePressure::from_pascals(mean(|supply| supply.back.pascals())),
        temperature: Temperature::from_kelvin(mean(|supply| supply.temperature.kelvin())),
    }
}

/// Standard uncertainty of the model's flow at a supply by the gauge, and by temperature, composition and air pressure
/// together, as shares.
///
/// # Errors
///
/// What [`Jet::flow`] refuses.
pub fn of_supply<F: Float>(
    jet: &Jet<F>,
    shape: &BoreShape<F>,
    gas: &Gas<F>,
    supply: &Supply<F>,
    spreads: &Spreads<F>,
) -> crate::error::Result<(F, F)> {
    let flow = UncertainJet::new(jet, shape, gas, supply, None, spreads)?.answers()?.gas;
    let part = |source: Source| flow.contributions[source as usize] / flow.value;
    let others = [Source::GasTemperature, Source::Composition, Source::AirPressure];
    let square = others.into_iter().fold(F::zero(), |sum, source| sum + part(source).squared());
    Ok((part(Source::Gauge).abs(), square.sqrt()))
}
