//! Numbers as a shop reads them: two sets of units, three figures.

use std::format;
use std::prelude::rust_2024::*;

use crate::quantity::{
    ActualVolumeFlow, Duration, GaugePressure, GrossHeatRate, Length, Mass, MassFlow, NetHeatRate, PressureDifference,
    Temperature,
};

/// The units of a text answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shop {
    /// psi, inches of water, cubic feet, Btu and pounds; else bar, pascals, cubic metres, kilowatts and kilograms.
    pub inch: bool,
}

/// A number with about this many figures and no exponent.
fn figures(value: f64, figures: i32) -> String {
    let size = if value == 0.0 { 0 } else { value.abs().log10().floor() as i32 };
    let decimals = usize::try_from(figures - 1 - size).unwrap_or(0).min(4);
    format!("{value:.decimals$}")
}

impl Shop {
    /// Unit of gauge pressure.
    #[must_use]
    pub fn gauge_unit(&self) -> &'static str {
        if self.inch { "psi" } else { "bar" }
    }
    /// A gauge reading, with as many figures as a gauge shows, without its unit.
    #[must_use]
    pub fn gauge_number(&self, gauge: GaugePressure) -> String {
        if self.inch { format!("{:.1}", gauge.psi()) } else { format!("{:.3}", gauge.bar()) }
    }
    /// A gauge reading.
    #[must_use]
    pub fn gauge(&self, gauge: GaugePressure) -> String {
        format!("{} {}", self.gauge_number(gauge), self.gauge_unit())
    }
    /// A low pressure given in Pa.
    #[must_use]
    pub fn low_pressure(&self, pascals: f64) -> String {
        let pressure = PressureDifference::from_pascals(pascals);
        if self.inch {
            format!("{:.2} in w.c.", pressure.inches_of_water())
        } else {
            format!("{:.0} Pa", pressure.pascals())
        }
    }
    /// A flow of air.
    #[must_use]
    pub fn air(&self, flow: ActualVolumeFlow) -> String {
        if self.inch {
            format!("{} cfm", figures(flow.cubic_feet_per_minute(), 3))
        } else {
            format!("{} m3/h", figures(flow.cubic_meters_per_hour(), 3))
        }
    }
    /// Unit and basis of heat.
    #[must_use]
    pub fn heat_unit(&self) -> &'static str {
        if self.inch { "kBtu/h gross" } else { "kW net" }
    }
    /// A fire, without its unit.
    #[must_use]
    pub fn heat_number(&self, gross: GrossHeatRate, net: NetHeatRate) -> String {
        figures(if self.inch { gross.btu_per_hour() / 1e3 } else { net.kilowatts() }, 3)
    }
    /// A fire.
    #[must_use]
    pub fn heat(&self, gross: GrossHeatRate, net: NetHeatRate) -> String {
        format!("{} {}", self.heat_number(gross, net), self.heat_unit())
    }
    /// Unit of gas an hour.
    #[must_use]
    pub fn gas_unit(&self) -> &'static str {
        if self.inch { "lb/h" } else { "kg/h" }
    }
    /// Gas an hour, without its unit.
    #[must_use]
    pub fn gas_number(&self, gas: MassFlow) -> String {
        figures(if self.inch { gas.pounds_per_hour() } else { gas.kilograms_per_hour() }, 3)
    }
    /// A mass of gas.
    #[must_use]
    pub fn mass(&self, mass: Mass) -> String {
        if self.inch { format!("{:.2} lb", mass.pounds()) } else { format!("{:.2} kg", mass.kilograms()) }
    }
    /// A temperature.
    #[must_use]
    pub fn temperature(&self, temperature: Temperature) -> String {
        if self.inch { format!("{:.0} F", temperature.fahrenheit()) } else { format!("{:.0} C", temperature.celsius()) }
    }
    /// A bore, in both units, since drills are sold in both.
    #[must_use]
    pub fn bore(&self, bore: Length) -> String {
        if self.inch {
            format!("{:.4} in = {:.2} mm", bore.inches(), bore.millimeters())
        } else {
            format!("{:.2} mm = {:.4} in", bore.millimeters(), bore.inches())
        }
    }
    /// A small length.
    #[must_use]
    pub fn length(&self, length: Length) -> String {
        if self.inch {
            format!("{} in", figures(length.inches(), 3))
        } else {
            format!("{} mm", figures(length.millimeters(), 3))
        }
    }
    /// A height.
    #[must_use]
    pub fn height(&self, height: Length) -> String {
        if self.inch { format!("{:.0} ft", height.feet()) } else { format!("{:.0} m", height.meters()) }
    }
    /// Money.
    #[must_use]
    pub fn money(currency: &str, amount: f64) -> String {
        format!("{currency}{amount:.2}")
    }
    /// A time on the evening's clock, hours and minutes.
    #[must_use]
    pub fn clock(time: Duration) -> String {
        let minutes = time.minutes().round() as u64;
        format!("{}:{:02}", minutes / 60, minutes % 60)
    }
    /// A share as a percentage.
    #[must_use]
    pub fn share(share: f64) -> String {
        format!("{:.0} %", 100.0 * share)
    }
}

/// The fire of an air ratio in words.
///
/// Common practice, no source.
#[must_use]
pub fn fire_words(air_ratio: f64) -> &'static str {
    match air_ratio {
        ratio if ratio < 0.90 => "rich: soft, reducing, makes carbon monoxide",
        ratio if ratio < 0.98 => "a little rich: reducing",
        ratio if ratio < 1.10 => "clean",
        ratio if ratio < 1.30 => "a little lean: oxidising",
        _ => "lean: oxidising, wastes heat",
    }
}

#[cfg(test)]
mod tests {
    use super::figures;

    #[test]
    fn figures_keep_three_digits_and_never_an_exponent() {
        assert_eq!(figures(0.0, 3), "0.00");
        assert_eq!(figures(5.123, 3), "5.12");
        assert_eq!(figures(88.76, 3), "88.8");
        assert_eq!(figures(1234.5, 3), "1234");
        assert_eq!(figures(0.012_34, 3), "0.0123");
    }
}
