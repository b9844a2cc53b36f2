//! A cylinder under draw: it boils as fast as its wetted wall takes in heat.

use crate::error::Result;
use crate::gas::Gas;
use crate::limits::{Input, check};
use crate::quantity::{AbsolutePressure, Duration, Length, Mass, MassFlow, Temperature};
use crate::scalar::Scalar;

/// Heat through the wetted wall, W/(m2 K): what the trade's table of a 100 lb cylinder implies in all its cells.
const WALL: f64 = 12.4;
/// Specific heat of steel at room temperature, J/(kg K): EN 1993-1-2.
const STEEL: f64 = 450.0;
/// Empty over full: the usual welded steel cylinder (common practice, no source).
const USUAL_TARE: f64 = 0.75;
/// Steps of a draw; a hundredth of a degree against four times as many.
const STEPS: usize = 120;

/// Upright cylinders of liquefied gas, several alike on one manifold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cylinder<S = f64> {
    diameter: S,
    capacity: S,
    tare: S,
    count: S,
}

/// What is in the cylinders: the gas of all together, and its temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Charge<S = f64> {
    /// Gas left in all cylinders.
    pub mass: Mass<S>,
    /// Temperature of the liquid.
    pub temperature: Temperature<S>,
}

/// How a draw ends.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub struct Draw<S = f64> {
    /// Gas left in all cylinders.
    pub left: Mass<S>,
    /// Temperature of the liquid in the end.
    pub temperature: Temperature<S>,
    /// Pressure in the cylinder in the end.
    pub pressure: AbsolutePressure<S>,
    /// When the pressure fell under what is needed; none when it held.
    pub too_cold_after: Option<Duration<S>>,
    /// When the liquid ran out; none when some is left.
    pub empty_after: Option<Duration<S>>,
}

impl<S: Scalar> Cylinder<S> {
    /// Cylinders of an outside diameter that hold so much gas each when full; `tare` is the empty mass of one, three
    /// quarters of what it holds unless given.
    ///
    /// # Errors
    ///
    /// The input that is out of its range.
    pub fn new(diameter: Length<S>, capacity: Mass<S>, tare: Option<Mass<S>>, count: S) -> Result<Self> {
        let capacity = check(Input::CylinderCharge, capacity.kilograms())?;
        let tare = tare.map_or(S::c(USUAL_TARE) * capacity, Mass::kilograms);
        Ok(Self {
            diameter: check(Input::CylinderDiameter, diameter.meters())?,
            capacity,
            tare: check(Input::CylinderTare, tare)?,
            count: check(Input::CylinderCount, count)?,
        })
    }

    /// Gas in all cylinders when full.
    #[must_use]
    pub fn capacity(&self) -> Mass<S> {
        Mass::from_kilograms(self.capacity * self.count)
    }

    /// Heat into all cylinders for every kelvin the liquid is colder than the air, W/K.
    fn conductance(&self, mass: S, density: S) -> S {
        let bottom = S::c(core::f64::consts::FRAC_PI_4) * self.diameter.squared();
        let liquid = mass / (self.count * density * bottom);
        S::c(WALL) * self.count * (bottom + S::c(core::f64::consts::PI) * self.diameter * liquid)
    }

    /// The draw that holds for ever at a pressure in the cylinder: 12.4 W/(m2 K) * wetted area *
    /// (air - boiling temperature) / latent heat, with the liquid as it then is.
    ///
    /// # Units
    ///
    /// `charge` is the gas in all cylinders, `pressure` that in them, absolute: the regulator's need above ambient.
    ///
    /// # Errors
    ///
    /// An input out of range; [`Error::NotLiquefied`](crate::Error::NotLiquefied); no boiling point in range.
    ///
    /// # Source
    ///
    /// The coefficient is fitted to the table of a 100 lb cylinder in an installation manual (Kohler TP-6727,
    /// appendix D, approximate, origin unknown), which lets the cylinder down to zero gauge pressure.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::fuel::Cylinder;
    /// use jetwright::gas::{Gas, Species};
    /// use jetwright::quantity::{AbsolutePressure, Length, Mass, Temperature};
    /// let cylinder = Cylinder::new(Length::from_meters(0.368_f64), Mass::from_pounds(100.0), None, 1.0).unwrap();
    /// let propane = Gas::from(Species::Propane);
    /// let (air, down) = (Temperature::from_fahrenheit(60.0), AbsolutePressure::from_pascals(101_325.0));
    /// let draw = cylinder.steady_draw(&propane, Mass::from_pounds(50.0), air, down).unwrap();
    /// // The printed table has 154 000 Btu/h for 50 lb at 60 degF.
    /// let heat = propane.gross_heating_value().of(draw).btu_per_hour();
    /// assert!((heat / 154_000.0 - 1.0).abs() < 0.10);
    /// ```
    pub fn steady_draw(
        &self,
        gas: &Gas<S>,
        charge: Mass<S>,
        air: Temperature<S>,
        pressure: AbsolutePressure<S>,
    ) -> Result<MassFlow<S>> {
        let mass = check(Input::CylinderCharge, charge.kilograms() / self.count)? * self.count;
        let air = check(Input::AirTemperature, air.kelvin())?;
        let boiling = gas.mixture().boiling_temperature(pressure)?;
        let liquid = gas.mixture().saturated(boiling)?;
        let warmer = (air - boiling.kelvin()).larger(S::zero());
        let watts = self.conductance(mass, liquid.density.kilograms_per_cubic_meter()) * warmer;
        let empty = if mass > S::zero() { S::one() } else { S::zero() };
        Ok(MassFlow::from_kilograms_per_second(empty * watts / liquid.latent_heat))
    }

    /// The charge a draw leaves behind: (m c + steel) dT/dt = wall (air - T) - draw * latent heat, dm/dt = -draw.
    ///
    /// The liquid keeps its composition. A blend's lighter gas boils off first, so that near its end a cylinder of half
    /// propane and half butane keeps up for a third less than this says.
    ///
    /// # Units
    ///
    /// `needed` is the pressure the cylinder must keep, absolute. A draw that it does not keep up with is taken all the
    /// same, so that the end is colder than any regulator would let it get.
    ///
    /// # Errors
    ///
    /// An input out of range, an empty cylinder among them; [`Error::NotLiquefied`](crate::Error::NotLiquefied).
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::fuel::{Charge, Cylinder};
    /// use jetwright::gas::{Gas, Species};
    /// use jetwright::quantity::{AbsolutePressure, Duration, Length, Mass, MassFlow, Temperature};
    /// let cylinder = Cylinder::new(Length::from_meters(0.37_f64), Mass::from_kilograms(45.0), None, 1.0).unwrap();
    /// let (propane, air) = (Gas::from(Species::Propane), Temperature::from_celsius(15.0));
    /// let start = Charge { mass: Mass::from_kilograms(20.0), temperature: air };
    /// let flow = MassFlow::from_kilograms_per_hour(2.0);
    /// let needed = AbsolutePressure::from_pascals(220_000.0);
    /// let end = cylinder.draw(&propane, start, air, flow, Duration::from_hours(1.0), needed).unwrap();
    /// assert!((end.left.kilograms() - 18.0).abs() < 1e-9 && end.too_cold_after.is_none());
    /// // By hand: 205 W of latent heat out, and at first nothing in, cools 19 kg of liquid and 34 kg of steel
    /// // by 9.7 K an hour at most; the wall, 12.4 W/(m2 K) on some 0.3 m2, gives up to 1 K back.
    /// assert!(end.temperature.celsius() > 5.3 && end.temperature.celsius() < 6.3);
    /// ```
    pub fn draw(
        &self,
        gas: &Gas<S>,
        start: Charge<S>,
        air: Temperature<S>,
        flow: MassFlow<S>,
        time: Duration<S>,
        needed: AbsolutePressure<S>,
    ) -> Result<Draw<S>> {
        let least = S::c(1e-6);
        check(Input::CylinderCharge, start.mass.kilograms() / self.count)?;
        let air = check(Input::AirTemperature, air.kelvin())?;
        let rate = check(Input::GasDraw, flow.kilograms_per_second())?;
        let time = check(Input::Duration, time.seconds())?;
        let mixture = gas.mixture();
        // Along the exponential that the wall's heat draws to, so that no step is too long for a small cylinder.
        let after = |time: S, mass: S, kelvin: S, from: S| -> Result<S> {
            let liquid = mixture.saturated(Temperature::from_kelvin(kelvin))?;
            let wall = self.conductance(mass, liquid.density.kilograms_per_cubic_meter());
            let capacity = mass * liquid.heat_capacity + S::c(STEEL) * self.tare * self.count;
            let end = air - rate * liquid.latent_heat / wall;
            // Far under any use, and where a still colder liquid would only leave the range of its fits.
            Ok((from - (end - from) * (-time * wall / capacity).exp_m1()).larger(S::c(200.0)))
        };
        let pressure_at = |kelvin: S| Ok(mixture.saturated(Temperature::from_kelvin(kelvin))?.pressure.pascals());
        let step = time / S::c(STEPS as f64);
        let (mut mass, mut kelvin) = (start.mass.kilograms(), start.temperature.kelvin());
        let mut pressure = pressure_at(kelvin)?;
        let needed = needed.pascals();
        let mut too_cold_after = (pressure < needed).then_some(S::zero());
        let mut empty_after = (mass <= least).then_some(S::zero());
        for index in 0..STEPS {
            if empty_after.is_some() {
                break;
            }
            let begun = S::c(index as f64) * step;
            if rate * step >= mass {
                empty_after = Some(begun + mass / rate);
                mass = S::zero();
                break;
            }
            let half = S::c(0.5) * step;
            let middle = after(half, mass, kelvin, kelvin)?;
            kelvin = after(step, mass - rate * half, middle, kelvin)?;
            mass -= rate * step;
            let before = pressure;
            pressure = pressure_at(kelvin)?;
            if too_cold_after.is_none() && pressure < needed {
                too_cold_after = Some(begun + step * (before - needed) / (before - pressure));
            }
        }
        Ok(Draw {
            left: Mass::from_kilograms(mass),
            temperature: Temperature::from_kelvin(kelvin),
            pressure: AbsolutePressure::from_pascals(pressure),
            too_cold_after: too_cold_after.map(Duration::from_seconds),
            empty_after: empty_after.map(Duration::from_seconds),
        })
    }
}
