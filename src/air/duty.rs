//! What a blower does at one flow, and what to look for in a catalog.

use super::blower::Blower;
use crate::error::{Error, Result};
use crate::limits::{Input, check};
use crate::quantity::{ActualVolumeFlow, Density, Power, PressureDifference};
use crate::scalar::Scalar;

/// Density catalogs of fans are printed for, in kg/m3.
///
/// ISO 5801 and the European trade; the American 0.075 lb/ft3 is 1.2014.
pub const STANDARD_AIR_DENSITY: f64 = 1.2;

/// What a blower does at one flow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Duty<S = f64> {
    /// Flow at the inlet, as it passes.
    pub flow: ActualVolumeFlow<S>,
    /// Static pressure.
    pub static_pressure: PressureDifference<S>,
    /// Flow times static pressure.
    pub air_power: Power<S>,
    /// Power at the shaft: from the blower's points, else from the efficiency given, else unknown.
    pub shaft_power: Option<Power<S>>,
    /// The same duty as a catalog prints it.
    pub as_standard_air: StandardAirDuty<S>,
}

/// What to read in a catalog printed for air of 1.2 kg/m3 to find a blower for a duty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StandardAirDuty<S = f64> {
    /// The flow: the same.
    pub flow: ActualVolumeFlow<S>,
    /// The static pressure it must show: ours times 1.2 over our density.
    pub static_pressure: PressureDifference<S>,
    /// The shaft power it will show: ours times 1.2 over our density.
    pub shaft_power: Option<Power<S>>,
}

impl<S: Scalar> Duty<S> {
    /// The duty of a wanted flow at a wanted static pressure, whatever blower gives it:
    /// air power = flow x static pressure, shaft power = air power / efficiency.
    ///
    /// # Units
    ///
    /// `density` is that of the air at hand; `efficiency` is a share, shaft to air on static pressure.
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`] or [`Error::OutOfRange`].
    ///
    /// # Source
    ///
    /// AMCA Publication 201, Fans and Systems, the fan laws with speed and size unchanged.
    ///
    /// # Examples
    ///
    /// Half a kilopascal in air of 0.96 kg/m3 is looked up as 625 Pa:
    ///
    /// ```
    /// use jetwright::air::Duty;
    /// use jetwright::quantity::{ActualVolumeFlow, Density, PressureDifference};
    /// let flow = ActualVolumeFlow::from_cubic_meters_per_second(0.04_f64);
    /// let pressure = PressureDifference::from_pascals(500.0);
    /// let duty = Duty::new(flow, pressure, Density::from_kilograms_per_cubic_meter(0.96), Some(0.4)).unwrap();
    /// assert!((duty.air_power.watts() - 20.0).abs() < 1e-12);
    /// assert!((duty.shaft_power.unwrap().watts() - 50.0).abs() < 1e-12);
    /// assert!((duty.as_standard_air.static_pressure.pascals() - 625.0).abs() < 1e-9);
    /// ```
    pub fn new(
        flow: ActualVolumeFlow<S>,
        static_pressure: PressureDifference<S>,
        density: Density<S>,
        efficiency: Option<S>,
    ) -> Result<Self> {
        let air_power = check(Input::AirFlow, flow.cubic_meters_per_second())?
            * check(Input::BlowerPressure, static_pressure.pascals())?;
        let shaft_power = match efficiency {
            Some(efficiency) => Some(Power::from_watts(air_power / check(Input::BlowerEfficiency, efficiency)?)),
            None => None,
        };
        check(Input::AirDensity, density.kilograms_per_cubic_meter())?;
        Ok(Self::of(flow, static_pressure, shaft_power, density))
    }

    fn of(
        flow: ActualVolumeFlow<S>,
        static_pressure: PressureDifference<S>,
        shaft_power: Option<Power<S>>,
        density: Density<S>,
    ) -> Self {
        let thicker = S::c(STANDARD_AIR_DENSITY) / density.kilograms_per_cubic_meter();
        Self {
            flow,
            static_pressure,
            air_power: Power::from_watts(flow.cubic_meters_per_second() * static_pressure.pascals()),
            shaft_power,
            as_standard_air: StandardAirDuty {
                flow,
                static_pressure: static_pressure * thicker,
                shaft_power: shaft_power.map(|power| Power::from_watts(power.watts() * thicker)),
            },
        }
    }
}

impl<S: Scalar> Blower<S> {
    /// What this blower does at a flow: [`Duty::new`] with its own static pressure and density, and
    /// its own shaft power where its points give one; then the efficiency is not used.
    ///
    /// # Errors
    ///
    /// [`Error::NotFinite`] or [`Error::OutOfRange`]; [`Error::NoSolution`] naming the air flow, with
    /// free delivery in m3/s, when the flow is more than that.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::air::Blower;
    /// use jetwright::quantity::{ActualVolumeFlow, Density, PressureDifference};
    /// let free = ActualVolumeFlow::from_cubic_meters_per_second(0.06_f64);
    /// let shut_off = PressureDifference::from_pascals(1000.0);
    /// let blower = Blower::from_two_numbers(shut_off, free, Density::from_kilograms_per_cubic_meter(1.2)).unwrap();
    /// let duty = blower.duty(free * 0.5, Some(0.5)).unwrap();
    /// assert!((duty.air_power.watts() - 22.5).abs() < 0.05); // 0.03 m3/s at 750 Pa
    /// assert!((duty.shaft_power.unwrap().watts() - 45.0).abs() < 0.1);
    /// ```
    pub fn duty(&self, flow: ActualVolumeFlow<S>, efficiency: Option<S>) -> Result<Duty<S>> {
        check(Input::AirFlow, flow.cubic_meters_per_second())?;
        let free_delivery = self.free_delivery();
        if flow > free_delivery {
            let nearest = free_delivery.cubic_meters_per_second().to_f32();
            return Err(Error::NoSolution { input: Input::AirFlow, nearest });
        }
        let pressure = PressureDifference::from_pascals(self.static_pressure(flow).pascals().larger(S::zero()));
        match self.shaft_power(flow) {
            Some(power) => Ok(Duty::of(flow, pressure, Some(power), self.density())),
            None => Duty::new(flow, pressure, self.density(), efficiency),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::fixture::{any_points, density, flow, invented, of};
    use super::Duty;
    use crate::quantity::{Density, PressureDifference};
    use crate::{Error, Input};
    use proptest::prelude::*;

    #[test]
    fn air_power_is_that_of_the_trade_formula() {
        // hp = cfm x in w.c. / 6356 / efficiency (AMCA 201, from memory): 100 cfm at 10 in w.c. and 0.5;
        // its inch is that of water at 68 degF, 0.18 % less than the conventional one.
        use crate::quantity::ActualVolumeFlow;
        let duty = Duty::new(
            ActualVolumeFlow::from_cubic_feet_per_minute(100.0),
            PressureDifference::from_inches_of_water(10.0),
            density(1.2),
            Some(0.5),
        )
        .unwrap();
        assert!((duty.air_power.horsepower() / (1000.0 / 6356.0) - 1.0_f64).abs() < 2.5e-3);
        assert!((duty.shaft_power.unwrap().horsepower() / (2000.0 / 6356.0) - 1.0).abs() < 2.5e-3);
    }

    #[test]
    fn at_1600_m_a_catalog_is_read_above_what_is_wanted() {
        // ISO 2533: the density at 1 600 m is 0.8553 of that at sea level, 1.2250 kg/m3.
        let here = 1.2250 * 0.8553;
        let blower = invented::<f64>().scaled(density(here), 1.0, 1.0).unwrap();
        let duty = blower.duty(flow(0.035), None).unwrap();
        assert!((duty.static_pressure.pascals() - 760.0 * here / 1.2).abs() < 1e-9);
        assert!((duty.as_standard_air.static_pressure.pascals() - 760.0).abs() < 1e-9);
        assert!((duty.shaft_power.unwrap().watts() - 73.0 * here / 1.2).abs() < 1e-9);
        assert!((duty.as_standard_air.shaft_power.unwrap().watts() - 73.0).abs() < 1e-9);
        assert!((duty.as_standard_air.flow.cubic_meters_per_second() - 0.035).abs() < 1e-15);
    }

    #[test]
    fn more_than_free_delivery_and_an_efficiency_above_one_are_refused() {
        let blower = of::<f64>(&[(0.0, 100.0), (0.02, 0.0)]);
        let refused = Error::NoSolution { input: Input::AirFlow, nearest: 0.02 };
        assert_eq!(blower.duty(flow(0.021), None).unwrap_err(), refused);
        assert!(blower.duty(flow(0.01), Some(1.1)).is_err());
        assert_eq!(blower.duty(flow(0.01), None).unwrap().shaft_power, None);
    }

    proptest! {
        #[test]
        fn a_catalog_duty_scaled_to_our_air_is_our_duty(
            points in any_points(), thin in 0.6..1.6_f64, share in 0.0..1.0_f64, efficiency in 0.05..0.9_f64,
        ) {
            let blower = of::<f64>(&points).scaled(Density::from_kilograms_per_cubic_meter(thin), 1.0, 1.0).unwrap();
            let printed = of::<f64>(&points);
            let at = flow(points[points.len() - 1].0 * share);
            let pressure = blower.static_pressure(at).pascals();
            prop_assume!(pressure < Input::BlowerPressure.range().max);
            let duty = blower.duty(at, Some(efficiency)).unwrap();
            let difference = duty.as_standard_air.static_pressure.pascals() - printed.static_pressure(at).pascals();
            prop_assert!(difference.abs() < 1e-9 * printed.peak().1.pascals());
            let shaft = duty.shaft_power.unwrap().watts();
            prop_assert!((shaft * efficiency - duty.air_power.watts()).abs() <= 1e-9 * (1.0 + shaft));
        }
    }
}
