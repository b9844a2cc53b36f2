//! Numbers as a shop reads them: two sets of units, three figures.

use std::format;
use std::prelude::rust_2024::*;

use crate::quantity::{
    ActualVolumeFlow, Duration, GaugePressure, GrossHeatRate, Length, Mass, MassFlow, NetHeatRate, Power,
    PressureDifference, Temperature,
};

/// The units of a text answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shop {
    /// psi, inches of water, cubic feet, Btu and pounds; else bar, pascals, cubic metres, kilowatts and kilograms.
    pub inch: bool,
}

/// A number with these decimals; what rounds to nought has no sign.
fn fixed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(size) if !size.contains(|digit: char| digit.is_ascii_digit() && digit != '0') => size.into(),
        _ => text,
    }
}

/// A number with about this many figures and no exponent; whole digits are kept up to 9999.
fn figures(value: f64, figures: i32) -> String {
    let size = if value == 0.0 { 0 } else { value.abs().log10().floor() as i32 };
    if size > 3 {
        let step = 10_f64.powi(size + 1 - figures);
        return fixed((value / step).round() * step, 0);
    }
    fixed(value, usize::try_from(figures - 1 - size).unwrap_or(0).min(4))
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
        let (reading, decimals) = if self.inch { (gauge.psi(), 1) } else { (gauge.bar(), 3) };
        // A light setting is the last step of the dial, and reads from a finer gauge.
        let low = reading < if self.inch { 1.0 } else { 0.1 };
        fixed(reading, decimals + usize::from(low))
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
            format!("{} in w.c.", figures(pressure.inches_of_water(), 3))
        } else {
            format!("{} Pa", figures(pressure.pascals(), 3))
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
    /// Half the width of what a fire may be, as a share of it, with the fire's decimals.
    #[must_use]
    pub fn heat_half_width(&self, gross: GrossHeatRate, net: NetHeatRate, share: f64) -> String {
        let number = self.heat_number(gross, net);
        let decimals = number.split_once('.').map_or(0, |(_, decimals)| decimals.len());
        let width = share * if self.inch { gross.btu_per_hour() / 1e3 } else { net.kilowatts() };
        fixed(width, decimals)
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
        if self.inch { format!("{} lb", fixed(mass.pounds(), 2)) } else { format!("{} kg", fixed(mass.kilograms(), 2)) }
    }
    /// A temperature.
    #[must_use]
    pub fn temperature(&self, temperature: Temperature) -> String {
        if self.inch {
            format!("{} F", fixed(temperature.fahrenheit(), 0))
        } else {
            format!("{} C", fixed(temperature.celsius(), 0))
        }
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
        if self.inch { format!("{} ft", fixed(height.feet(), 0)) } else { format!("{} m", fixed(height.meters(), 0)) }
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
    /// A power at a shaft.
    #[must_use]
    pub fn power(&self, power: Power) -> String {
        if self.inch {
            format!("{} hp", figures(power.horsepower(), 2))
        } else {
            format!("{} W", figures(power.watts(), 2))
        }
    }
    /// An air ratio.
    #[must_use]
    pub fn ratio(ratio: f64) -> String {
        if ratio.abs() < 9.995 { fixed(ratio, 2) } else { figures(ratio, 3) }
    }
    /// How far something is off, as a percentage with its sign.
    #[must_use]
    pub fn off_by(share: f64) -> String {
        let text = format!("{:+.1} %", 100.0 * share);
        if text == "-0.0 %" { "+0.0 %".into() } else { text }
    }
    /// A share as a percentage.
    #[must_use]
    pub fn share(share: f64) -> String {
        format!("{:.0} %", 100.0 * share)
    }
}

/// The fire of an air ratio in words, given the leanest that burns cold and whether its carbon monoxide is cautioned
/// of. They follow the ratio as it is printed.
///
/// Common practice, no source.
#[must_use]
pub fn fire_words(air_ratio: f64, leanest: f64, poisons: bool) -> &'static str {
    if air_ratio > leanest {
        return "too lean to burn cold";
    }
    match (100.0 * air_ratio).round() / 100.0 {
        ratio if ratio < 0.90 => "rich: soft, reducing, makes carbon monoxide",
        ratio if ratio < 0.98 && poisons => "a little rich: reducing, makes carbon monoxide",
        ratio if ratio < 0.98 => "a little rich: reducing",
        _ if poisons => "makes carbon monoxide",
        ratio if ratio < 1.02 => "barely enough air",
        ratio if ratio < 1.10 => "clean",
        ratio if ratio < 1.30 => "a little lean: oxidising",
        _ => "lean: oxidising, wastes heat",
    }
}

#[cfg(test)]
mod tests {
    use super::{Shop, figures, fire_words, fixed};
    use crate::quantity::GaugePressure;

    #[test]
    fn a_fire_makes_carbon_monoxide_in_words_where_it_is_cautioned_of() {
        for hundredths in 90..140 {
            for poisons in [false, true] {
                let words = fire_words(f64::from(hundredths) / 100.0, 1.6, poisons);
                assert_eq!(words.contains("carbon monoxide"), poisons, "{hundredths}: {words}");
                assert_eq!(words.contains("rich"), hundredths < 98, "{hundredths}: {words}");
            }
        }
    }

    #[test]
    fn figures_keep_three_digits_and_never_an_exponent() {
        assert_eq!(figures(0.0, 3), "0.00");
        assert_eq!(figures(5.123, 3), "5.12");
        assert_eq!(figures(88.76, 3), "88.8");
        assert_eq!(figures(1234.5, 3), "1234");
        assert_eq!(figures(0.012_34, 3), "0.0123");
        assert_eq!(figures(15_123.0, 3), "15100");
        assert_eq!(figures(-0.000_01, 3), "0.0000");
    }

    #[test]
    fn nothing_reads_minus_nought() {
        assert_eq!((fixed(-0.4, 0), fixed(-0.6, 0), fixed(-10.0, 0)), ("0".into(), "-1".into(), "-10".into()));
        assert_eq!((Shop::off_by(-0.0001), Shop::off_by(-0.012)), ("+0.0 %".into(), "-1.2 %".into()));
    }

    #[test]
    fn a_low_gauge_keeps_two_figures() {
        let gauge = |psi| Shop { inch: true }.gauge_number(GaugePressure::from_psi(psi));
        assert_eq!((gauge(0.25), gauge(0.999), gauge(5.0)), ("0.25".into(), "1.00".into(), "5.0".into()));
        assert_eq!(Shop { inch: false }.gauge_number(GaugePressure::from_pascals(1250.0)), "0.0125");
    }
}
