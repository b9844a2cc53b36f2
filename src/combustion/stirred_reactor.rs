//! Carbon monoxide of a fire too cool for equilibrium: a stirred reactor at one temperature, by a table of detailed
//! kinetics.

use super::stirred_reactor_table::{
    AIR_RATIO_PERCENT, BURNS_FROM, CELSIUS, DRY_LOG_PPM, PRESSURE_HECTOPASCAL, RESIDENCE_CENTISECOND,
};
use crate::error::{Error, Result};
use crate::gas::{Mixture, Species};
use crate::limits::{Input, check};
use crate::quantity::{AbsolutePressure, Duration, Temperature};
use crate::scalar::Scalar;

/// Above this temperature the equilibrium of [`Products`](super::Products) is a guide to carbon monoxide; below it, and
/// where only a glowing chamber burns, [`carbon_monoxide_of_reactor`] is.
pub const EQUILIBRIUM_GUIDES_ABOVE_CELSIUS: f64 = 900.0;

/// A fuel of the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReactorFuel {
    /// Propane, which stands for butane and other liquefied gases too.
    Propane,
    /// Methane, which stands for natural gas.
    Methane,
}

impl ReactorFuel {
    /// The fuel of the table that stands for a gas: methane where it is more than half of what burns, propane where
    /// methane and heavier hydrocarbons together are more than nine tenths.
    ///
    /// # Errors
    ///
    /// [`Error::CannotBurn`]; [`Error::NotMeasured`] for a gas with more hydrogen or carbon monoxide in what burns.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::combustion::ReactorFuel;
    /// use jetwright::gas::{Mixture, Species};
    /// assert_eq!(ReactorFuel::of(&Mixture::<f64>::pure(Species::NormalButane)), Ok(ReactorFuel::Propane));
    /// assert!(ReactorFuel::of(&Mixture::<f64>::pure(Species::Hydrogen)).is_err());
    /// ```
    pub fn of<S: Scalar>(gas: &Mixture<S>) -> Result<Self> {
        let share_of = |chosen: fn(Species) -> bool| {
            gas.parts().filter(|&(species, _)| chosen(species)).fold(S::zero(), |sum, (_, share)| sum + share)
        };
        let burns = share_of(|species| species.atoms().burns());
        if burns <= S::zero() {
            return Err(Error::CannotBurn);
        }
        let others = share_of(|species| {
            let atoms = species.atoms();
            atoms.burns() && !(atoms.carbon > 0 && atoms.hydrogen > 0)
        });
        if others > S::c(0.1) * burns {
            return Err(Error::NotMeasured { given: (others / burns).to_f32() });
        }
        let methane = share_of(|species| species == Species::Methane);
        Ok(if methane > S::c(0.5) * burns { Self::Methane } else { Self::Propane })
    }
}

/// What leaves a stirred reactor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reactor<S = f64> {
    /// Carbon monoxide in the dry gas, mole fraction; 1e-6 is a ppm. Where the reactor does not burn, what it makes
    /// as soon as it does.
    pub carbon_monoxide_dry: S,
    /// Whether a reactor that burns keeps burning; else it purges, and nearly all the gas leaves unburnt.
    pub burns: bool,
}

/// Carbon monoxide of an isothermal stirred reactor: premixed gas and dry air in, all of one temperature and one
/// composition, residence V over flow at that temperature.
///
/// The logarithm of the fraction is interpolated straight in the temperature and the air ratio and in the logarithms of
/// residence and pressure. A reactor is as well mixed as can be: pockets in a real chamber, and cold walls, leave more.
///
/// # Range
///
/// 700 to 1000 degC, air ratio 0.8 to 3, 0.1 to 3 s, 580 to 1100 hPa; within 20 % of the solver between the points of the
/// table, at 67 drawn at random within 13 %. Said to burn only where every point around does. Above 860 degC a fire with air from 0.97 to 1.06 of its need
/// swings by a factor of two and more about the value here, some ten times a second.
///
/// # Errors
///
/// An input out of range.
///
/// # Source
///
/// GRI-Mech 3.0 (Smith et al.), its propane included, solved with Cantera 3.2.0 from burning on, at 700 and 1013.25 hPa;
/// `tests/reference/generate/reactor.py` writes the table. GRI-Mech was made for natural gas: propane is an extension.
///
/// # Examples
///
/// ```
/// use jetwright::combustion::{ReactorFuel, carbon_monoxide_of_reactor};
/// use jetwright::quantity::{AbsolutePressure, Duration, Temperature};
/// let found = carbon_monoxide_of_reactor(
///     ReactorFuel::Propane,
///     2.5_f64,
///     Temperature::from_celsius(760.0),
///     Duration::from_seconds(0.63),
///     AbsolutePressure::from_pascals(83_500.0),
/// ).unwrap();
/// // The solver itself: 7 800 ppm of the wet gas with 6.3 % of water, 8 330 of the dry.
/// assert!(found.burns && (found.carbon_monoxide_dry / 8.33e-3 - 1.0).abs() < 0.1);
/// ```
pub fn carbon_monoxide_of_reactor<S: Scalar>(
    fuel: ReactorFuel,
    air_ratio: S,
    temperature: Temperature<S>,
    residence: Duration<S>,
    pressure: AbsolutePressure<S>,
) -> Result<Reactor<S>> {
    let percent = check(Input::ReactorAirRatio, air_ratio)? * S::c(100.0);
    check(Input::ReactorTemperature, temperature.kelvin())?;
    let centisecond = check(Input::ReactorResidence, residence.seconds())? * S::c(100.0);
    let hectopascal = check(Input::StationPressure, pressure.pascals())? * S::c(0.01);
    let straight = |x: S| x;
    let axes = [
        Axis::new(&PRESSURE_HECTOPASCAL, hectopascal, S::ln),
        Axis::new(&CELSIUS, temperature.celsius(), straight),
        Axis::new(&AIR_RATIO_PERCENT, percent, straight),
        Axis::new(&RESIDENCE_CENTISECOND, centisecond, S::ln),
    ];
    let fuel = fuel as usize;
    let (logs, burns_from) = (DRY_LOG_PPM.get(fuel), BURNS_FROM.get(fuel));
    let (mut log, mut burns) = (S::zero(), true);
    for corner in 0..1_usize << axes.len() {
        let (mut row, mut place, mut last, mut weight) = (0, 0, 0, S::one());
        for (axis, held) in axes.iter().enumerate() {
            let upper = corner >> axis & 1;
            (row, last) = (place, held.below + upper);
            place = place * held.count + last;
            weight = weight * if upper == 1 { held.share } else { S::one() - held.share };
        }
        let thousandths = logs.and_then(|logs| logs.get(place)).copied().unwrap_or_default();
        log += weight * S::from_f32(f32::from(thousandths));
        // A corner that has no weight says nothing.
        let from = burns_from.and_then(|from| from.get(row)).copied().unwrap_or_default();
        burns &= weight.abs() < S::c(1e-5) || last >= usize::from(from);
    }
    Ok(Reactor { carbon_monoxide_dry: (log * S::c(1e-3)).exp() * S::c(1e-6), burns })
}

/// Where a value stands among the points of one side of the table.
struct Axis<S> {
    count: usize,
    /// The point below.
    below: usize,
    /// How far on the way to the next, 0 to 1; beyond the two pressures of the table a little outside.
    share: S,
}

impl<S: Scalar> Axis<S> {
    fn new(points: &[u16], at: S, scale: impl Fn(S) -> S) -> Self {
        let value = |point: &u16| S::count(u32::from(*point));
        let passed = points.iter().take_while(|point| value(point) <= at).count();
        let below = passed.clamp(1, points.len() - 1) - 1;
        let ends = points.get(below).zip(points.get(below + 1));
        let share = ends.map_or(S::zero(), |(low, high)| {
            let low = scale(value(low));
            (scale(at) - low) / (scale(value(high)) - low)
        });
        Self { count: points.len(), below, share }
    }
}
