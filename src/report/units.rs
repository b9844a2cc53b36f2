//! Numbers as a shop reads them: the unit and the figures of every kind of number, in both sets of units.

use std::format;
use std::prelude::rust_2024::*;

use crate::quantity::{
    ActualVolumeFlow, Area, Density, Duration, GaugePressure, GrossHeatRate, Length, Mass, MassFlow, NetHeatRate,
    Power, PressureDifference, Speed, Temperature, Unit, Volume,
};
pub use crate::report::kind::Kind;

/// The units of a text answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shop {
    /// psi, inches of water, cubic feet, Btu and pounds; else bar, pascals, cubic meters, kilowatts and kilograms.
    pub inch: bool,
    /// The unit of gauge pressures where they keep to that of the question; else psi or bar.
    pub gauge: Option<&'static Unit>,
}

/// A number with these decimals; what rounds to nothing has no sign.
pub(crate) fn fixed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(size) if !size.contains(|digit: char| digit.is_ascii_digit() && digit != '0') => size.into(),
        _ => text,
    }
}

/// A number with about this many figures and no exponent; whole digits are kept up to 9999.
pub(crate) fn figures(value: f64, figures: i32) -> String {
    let size = if value == 0.0 { 0 } else { value.abs().log10().floor() as i32 };
    if size > 3 {
        let step = 10_f64.powi(size + 1 - figures);
        return fixed((value / step).round() * step, 0);
    }
    fixed(value, usize::try_from(figures - 1 - size).unwrap_or(0).min(4))
}

/// A gauge reading with the decimals of its dial, and with three figures below a tenth of its fine range.
fn reading(value: f64, decimals: usize, fine: f64) -> String {
    // A light setting is the last step of the dial, and reads from a finer gauge.
    if value > 0.0 && value < fine / 10.0 {
        return fixed(value, (2.0 - value.log10().floor()).min(6.0) as usize);
    }
    fixed(value, decimals + usize::from(value < fine))
}

/// A gauge reading in a unit of its own.
fn gauge_in(unit: &Unit, si: f64) -> String {
    let value = si / unit.factor;
    match unit.symbol {
        "bar" => reading(value, 3, 0.1),
        "psi" | "psig" => reading(value, 1, 1.0),
        _ if value < 0.1 => reading(value, 1, 1.0),
        _ => figures(value, 3),
    }
}

impl Shop {
    /// Inch or metric units throughout.
    #[must_use]
    pub const fn of(inch: bool) -> Self {
        Self { inch, gauge: None }
    }

    /// The unit of a kind; empty where its numbers need none.
    #[must_use]
    pub const fn unit(&self, kind: Kind) -> &'static str {
        if let (Kind::Gauge, Some(unit)) = (kind, self.gauge) {
            return unit.symbol;
        }
        let (inch, metric) = match kind {
            Kind::Word
            | Kind::OfItsKind
            | Kind::Number
            | Kind::Count
            | Kind::Ratio
            | Kind::Money
            | Kind::MoneyRate
            | Kind::Clock => ("", ""),
            Kind::PerMass | Kind::PerVolume | Kind::Bore | Kind::Lasting | Kind::Gradient => ("", ""),
            Kind::Share | Kind::FineShare | Kind::SmallShare => ("%", "%"),
            Kind::Price => ("per lb", "per kg"),
            Kind::Gauge => ("psi", "bar"),
            Kind::LowPressure => ("in w.c.", "Pa"),
            Kind::Ambient => ("psia", "hPa"),
            Kind::Heat => ("kBtu/h", "kW"),
            Kind::HeatGross => ("kBtu/h gross", "kW gross"),
            Kind::HeatNet => ("kBtu/h net", "kW net"),
            Kind::Power => ("hp", "W"),
            Kind::Energy => ("kBtu", "MJ"),
            Kind::MassFlow => ("lb/h", "kg/h"),
            Kind::Flow => ("cfm", "m3/h"),
            Kind::Mass => ("lb", "kg"),
            Kind::Temperature => ("F", "C"),
            Kind::Length => ("in", "mm"),
            Kind::Height => ("ft", "m"),
            Kind::Area => ("ft2", "m2"),
            Kind::Volume => ("ft3", "L"),
            Kind::Time => ("s", "s"),
            Kind::Minutes => ("min", "min"),
            Kind::Speed => ("ft/s", "m/s"),
            Kind::FlameSpeed => ("in/s", "cm/s"),
            Kind::Force => ("lbf", "N"),
            Kind::Density => ("lb/ft3", "kg/m3"),
            Kind::MassFlux => ("lb/(ft2 s)", "kg/(m2 s)"),
            Kind::HeatPerMass => ("Btu/lb", "MJ/kg"),
            Kind::HeatPerVolume => ("Btu/ft3", "MJ/m3"),
        };
        if self.inch { inch } else { metric }
    }

    /// A small area in words, and in m2.
    #[must_use]
    pub const fn small_area(&self) -> (&'static str, f64) {
        if self.inch { ("square inch", 6.4516e-4) } else { ("square centimeter", 1e-4) }
    }

    /// The number in that unit, with the figures a shop reads, from SI.
    #[must_use]
    pub fn number(&self, kind: Kind, si: f64) -> String {
        let pick = |inch: f64, metric: f64| if self.inch { inch } else { metric };
        match kind {
            Kind::Word | Kind::OfItsKind | Kind::Number | Kind::PerMass | Kind::PerVolume => figures(si, 3),
            Kind::Count | Kind::Gradient => fixed(si, 0),
            Kind::Ratio => Self::ratio(si),
            Kind::Share => fixed(1e2 * si, 0),
            Kind::FineShare => fixed(1e2 * si, 1),
            Kind::SmallShare => fixed(1e2 * si, 2),
            Kind::Money | Kind::MoneyRate => fixed(si, 2),
            Kind::Price => fixed(pick(si / Mass::from_kilograms(1.0).pounds(), si), 2),
            Kind::Gauge => {
                let gauge = GaugePressure::from_pascals(si);
                match self.gauge {
                    Some(unit) => gauge_in(unit, si),
                    None if self.inch => reading(gauge.psi(), 1, 1.0),
                    None => reading(gauge.bar(), 3, 0.1),
                }
            }
            Kind::LowPressure => figures(pick(PressureDifference::from_pascals(si).inches_of_water(), si), 3),
            Kind::Ambient => {
                if self.inch {
                    fixed(GaugePressure::from_pascals(si).psi(), 2)
                } else {
                    fixed(si / 1e2, 0)
                }
            }
            // Losses are estimates: two figures of the small ones.
            Kind::Heat => figures(self.heat_of(si), if self.heat_of(si).abs() < 10.0 { 2 } else { 3 }),
            Kind::HeatGross | Kind::HeatNet => figures(self.heat_of(si), 3),
            Kind::Power => figures(pick(Power::from_watts(si).horsepower(), si), 2),
            Kind::Energy => figures(pick(self.heat_of(si) / 3600.0, si / 1e6), 3),
            Kind::MassFlow => {
                let flow = MassFlow::from_kilograms_per_second(si);
                figures(pick(flow.pounds_per_hour(), flow.kilograms_per_hour()), 3)
            }
            Kind::Flow => {
                let flow = ActualVolumeFlow::from_cubic_meters_per_second(si);
                figures(pick(flow.cubic_feet_per_minute(), flow.cubic_meters_per_hour()), 3)
            }
            Kind::Mass => fixed(pick(Mass::from_kilograms(si).pounds(), si), 2),
            Kind::Temperature => {
                let temperature = Temperature::from_kelvin(si);
                fixed(pick(temperature.fahrenheit(), temperature.celsius()), 0)
            }
            Kind::Length => figures(pick(Length::from_meters(si).inches(), 1e3 * si), 3),
            Kind::Bore => {
                let bore = Length::from_meters(si);
                let (inches, millimeters) = (bore.inches(), bore.millimeters());
                // In both units, since drills are sold in both.
                if self.inch {
                    format!("{inches:.4} in = {millimeters:.2} mm")
                } else {
                    format!("{millimeters:.2} mm = {inches:.4} in")
                }
            }
            Kind::Height => fixed(pick(Length::from_meters(si).feet(), si), 0),
            Kind::Area => figures(pick(Area::from_square_meters(si).square_inches() / 144.0, si), 3),
            Kind::Volume => figures(pick(Volume::from_cubic_meters(si).cubic_feet(), 1e3 * si), 3),
            Kind::Time => fixed(si, 1),
            Kind::Lasting => {
                let time = Duration::from_seconds(si);
                if time.hours() < 1.5 { format!("{:.0} min", time.minutes()) } else { format!("{:.1} h", time.hours()) }
            }
            Kind::Minutes => fixed(Duration::from_seconds(si).minutes(), 0),
            Kind::Clock => {
                let minutes = Duration::from_seconds(si).minutes().round() as u64;
                format!("{}:{:02}", minutes / 60, minutes % 60)
            }
            Kind::Speed => figures(pick(Speed::from_meters_per_second(si).feet_per_minute() / 60.0, si), 3),
            Kind::FlameSpeed => fixed(pick(Length::from_meters(si).inches(), 1e2 * si), 0),
            Kind::Force => figures(pick(si / 4.448_221_615_260_5, si), 3),
            Kind::Density => figures(pick(Density::from_kilograms_per_cubic_meter(si).pounds_per_cubic_foot(), si), 3),
            Kind::MassFlux => figures(pick(si * 0.204_816_143_6, si), 3),
            Kind::HeatPerMass => figures(pick(si / 2326.0, si / 1e6), 3),
            Kind::HeatPerVolume => figures(pick(si / 37_258.945_8, si / 1e6), 3),
        }
    }

    /// Thousands of Btu an hour, or kilowatts.
    fn heat_of(&self, watts: f64) -> f64 {
        if self.inch { GrossHeatRate::from_watts(watts).btu_per_hour() / 1e3 } else { watts / 1e3 }
    }

    /// A number and its unit, from SI.
    #[must_use]
    pub fn text(&self, kind: Kind, si: f64) -> String {
        let (number, unit) = (self.number(kind, si), self.unit(kind));
        if unit.is_empty() { number } else { format!("{number} {unit}") }
    }
    /// Half the width of a number, with the decimals it is printed with.
    #[must_use]
    pub fn expanded(&self, kind: Kind, si: f64, half: f64) -> String {
        let number = self.number(kind, si);
        let decimals = number.split_once('.').map_or(0, |(_, decimals)| decimals.len());
        // Kinds with an expanded uncertainty have units that are a plain factor of SI.
        let factor = match kind {
            Kind::Gauge if self.gauge.is_some() => self.gauge.map_or(1.0, |unit| 1.0 / unit.factor),
            Kind::Gauge if self.inch => GaugePressure::from_pascals(1.0).psi(),
            Kind::Gauge => 1e-5,
            Kind::Heat | Kind::HeatGross | Kind::HeatNet => self.heat_of(1.0),
            Kind::MassFlow if self.inch => MassFlow::from_kilograms_per_second(1.0).pounds_per_hour(),
            Kind::MassFlow => 3600.0,
            Kind::Share | Kind::FineShare | Kind::SmallShare => 1e2,
            _ => 1.0,
        };
        fixed(half * factor, decimals)
    }

    /// A number, half its width and its unit.
    #[must_use]
    pub fn within(&self, kind: Kind, si: f64, half: f64) -> String {
        format!("{} ±{} {}", self.number(kind, si), self.expanded(kind, si, half), self.unit(kind))
    }

    /// Unit of gauge pressure.
    #[must_use]
    pub const fn gauge_unit(&self) -> &'static str {
        self.unit(Kind::Gauge)
    }
    /// A gauge reading, with as many figures as a gauge shows, without its unit.
    #[must_use]
    pub fn gauge_number(&self, gauge: GaugePressure) -> String {
        self.number(Kind::Gauge, gauge.pascals())
    }
    /// A gauge reading.
    #[must_use]
    pub fn gauge(&self, gauge: GaugePressure) -> String {
        self.text(Kind::Gauge, gauge.pascals())
    }
    /// A low pressure given in Pa.
    #[must_use]
    pub fn low_pressure(&self, pascals: f64) -> String {
        self.text(Kind::LowPressure, pascals)
    }
    /// A flow of air.
    #[must_use]
    pub fn air(&self, flow: ActualVolumeFlow) -> String {
        self.text(Kind::Flow, flow.cubic_meters_per_second())
    }
    /// The kind a fire is printed as: gross in inch units, net in metric ones, as each is used to.
    #[must_use]
    pub const fn fire_kind(&self) -> Kind {
        if self.inch { Kind::HeatGross } else { Kind::HeatNet }
    }
    /// A fire.
    #[must_use]
    pub fn heat(&self, gross: GrossHeatRate, net: NetHeatRate) -> String {
        self.text(self.fire_kind(), if self.inch { gross.watts() } else { net.watts() })
    }
    /// Gas an hour.
    #[must_use]
    pub fn gas(&self, gas: MassFlow) -> String {
        self.text(Kind::MassFlow, gas.kilograms_per_second())
    }
    /// A mass of gas.
    #[must_use]
    pub fn mass(&self, mass: Mass) -> String {
        self.text(Kind::Mass, mass.kilograms())
    }
    /// A temperature.
    #[must_use]
    pub fn temperature(&self, temperature: Temperature) -> String {
        self.text(Kind::Temperature, temperature.kelvin())
    }
    /// A difference of temperature.
    #[must_use]
    pub fn degrees(&self, kelvins: f64) -> String {
        if self.inch { format!("{} F", fixed(1.8 * kelvins, 0)) } else { format!("{} K", fixed(kelvins, 0)) }
    }
    /// A bore, in both units.
    #[must_use]
    pub fn bore(&self, bore: Length) -> String {
        self.text(Kind::Bore, bore.meters())
    }
    /// A small length.
    #[must_use]
    pub fn length(&self, length: Length) -> String {
        self.text(Kind::Length, length.meters())
    }
    /// A height.
    #[must_use]
    pub fn height(&self, height: Length) -> String {
        self.text(Kind::Height, height.meters())
    }
    /// Money.
    #[must_use]
    pub fn money(currency: &str, amount: f64) -> String {
        format!("{currency}{amount:.2}")
    }
    /// A time on the clock of a run, hours and minutes.
    #[must_use]
    pub fn clock(time: Duration) -> String {
        Self::of(false).number(Kind::Clock, time.seconds())
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

#[cfg(test)]
mod tests {
    use super::{Kind, Shop, figures, fixed};
    use crate::quantity::GaugePressure;

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
    fn nothing_has_no_sign() {
        assert_eq!((fixed(-0.4, 0), fixed(-0.6, 0), fixed(-10.0, 0)), ("0".into(), "-1".into(), "-10".into()));
        assert_eq!((Shop::off_by(-0.0001), Shop::off_by(-0.012)), ("+0.0 %".into(), "-1.2 %".into()));
    }

    #[test]
    fn a_low_gauge_keeps_its_figures() {
        let gauge = |psi| Shop::of(true).gauge_number(GaugePressure::from_psi(psi));
        assert_eq!((gauge(0.25), gauge(0.999), gauge(5.0)), ("0.25".into(), "1.00".into(), "5.0".into()));
        // Half an inch of water: two decimals of a psi would be 11 % off.
        assert_eq!(gauge(0.018_06), "0.0181");
        assert_eq!(Shop::of(false).gauge_number(GaugePressure::from_pascals(1250.0)), "0.0125");
        assert_eq!(Shop::of(false).gauge_number(GaugePressure::from_pascals(124.3)), "0.00124");
    }

    // Units of the international yard and pound: 1 Btu/h = 0.293 071 W, 1 ft3 = 28.316 8 L, 1 lbf = 4.448 22 N,
    // 1 Btu/lb = 2326 J/kg, 1 lb/ft3 = 16.018 5 kg/m3 (NIST SP 811, appendix B).
    #[test]
    fn inch_units_are_those_of_the_tables() {
        let inch = |kind, si| Shop::of(true).text(kind, si);
        assert_eq!(inch(Kind::Heat, 2930.72), "10.0 kBtu/h");
        assert_eq!(inch(Kind::Energy, 1.055_06e6), "1.00 kBtu");
        assert_eq!(inch(Kind::Volume, 0.028_316_9), "1.00 ft3");
        assert_eq!(inch(Kind::Area, 0.092_904), "1.00 ft2");
        assert_eq!(inch(Kind::Force, 444.823), "100 lbf");
        assert_eq!(inch(Kind::HeatPerMass, 46.52e6), "20000 Btu/lb");
        assert_eq!(inch(Kind::Density, 16.018_6), "1.00 lb/ft3");
        assert_eq!(inch(Kind::Speed, 3.048_01), "10.0 ft/s");
        assert_eq!(inch(Kind::MassFlux, 4.882_44), "1.00 lb/(ft2 s)");
        assert_eq!(inch(Kind::HeatPerVolume, 37.259e6), "1000 Btu/ft3");
    }
}
