//! What a result may be unsure for.

/// An input of the jet or the burner that is known only so well.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Source {
    /// Diameter of the jet's bore.
    Bore,
    /// Mouth of the bore, as a share of its loss.
    Edge,
    /// The model of the hole, as a share of the coefficient.
    Hole,
    /// How the hole's coefficient follows the pressure, away from the pressure of a weighing.
    PressureDependence,
    /// The weighing or the meter.
    Weighing,
    /// Reading of the gauge.
    Gauge,
    /// Temperature of the gas before the jet.
    GasTemperature,
    /// Composition of the gas, as a share of its flow.
    Composition,
    /// Pressure of the air around.
    AirPressure,
    /// Temperature of that air.
    AirTemperature,
    /// The mark the damper is set to.
    Damper,
    /// What a damper of its kind loses at that mark, as a share of it.
    DamperLoss,
    /// The blower's curve, as a share of its pressure.
    Blower,
    /// The head's openings and loss, as a share of its open area.
    Head,
    /// Temperature of the mixture in the ports.
    MixtureTemperature,
}

impl Source {
    /// How many there are.
    pub const COUNT: usize = 15;
    /// How many of them, from the first, a jet alone has.
    pub const OF_A_JET: usize = 9;
    /// Every source, those of a jet first.
    pub const ALL: [Source; Self::COUNT] = [
        Source::Bore,
        Source::Edge,
        Source::Hole,
        Source::PressureDependence,
        Source::Weighing,
        Source::Gauge,
        Source::GasTemperature,
        Source::Composition,
        Source::AirPressure,
        Source::AirTemperature,
        Source::Damper,
        Source::DamperLoss,
        Source::Blower,
        Source::Head,
        Source::MixtureTemperature,
    ];

    /// Its word for programs.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Source::Bore => "bore",
            Source::Edge => "edge",
            Source::Hole => "hole",
            Source::PressureDependence => "pressure_dependence",
            Source::Weighing => "weighing",
            Source::Gauge => "gauge",
            Source::GasTemperature => "gas_temperature",
            Source::Composition => "composition",
            Source::AirPressure => "air_pressure",
            Source::AirTemperature => "air_temperature",
            Source::Damper => "damper",
            Source::DamperLoss => "damper_loss",
            Source::Blower => "blower",
            Source::Head => "head",
            Source::MixtureTemperature => "mixture_temperature",
        }
    }

    /// Its words for a sheet.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Source::Bore => "the bore's true diameter",
            Source::Edge => "the edge of the bore",
            Source::Hole => "the model of the hole",
            Source::PressureDependence => "the hole away from the weighing's pressure",
            Source::Weighing => "the weighing",
            Source::Gauge => "the gauge",
            Source::GasTemperature => "the temperature of the gas",
            Source::Composition => "the composition of the gas",
            Source::AirPressure => "the air pressure",
            Source::AirTemperature => "the air temperature",
            Source::Damper => "the damper's mark",
            Source::DamperLoss => "the damper's loss",
            Source::Blower => "the blower's curve",
            Source::Head => "the openings of the head",
            Source::MixtureTemperature => "the temperature of the mixture",
        }
    }

    /// What makes it surer.
    #[must_use]
    pub const fn remedy(self) -> &'static str {
        match self {
            Source::Bore => "gauge the bore with pins, or weigh the cylinder",
            Source::Edge => "look at the edge under a lens, or weigh the cylinder",
            Source::Hole => "weigh the cylinder",
            Source::PressureDependence => "weigh again at this setting",
            Source::Weighing => "weigh longer or once more",
            Source::Gauge => "use a gauge of less span or a better class",
            Source::GasTemperature => "put a thermometer on the line before the jet",
            Source::Composition => "ask the supplier for the analysis",
            Source::AirPressure => "read a barometer on the spot",
            Source::AirTemperature => "read a thermometer at the blower's inlet",
            Source::Damper => "mark the damper and stop it with a pin",
            Source::DamperLoss => "measure the gap of the shut disc, or note the oxygen at one mark",
            Source::Blower => "measure the pressure at the blower's outlet",
            Source::Head => "measure the ports, and the pressure before them",
            Source::MixtureTemperature => "measure the temperature of the head",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Source;

    #[test]
    fn the_order_is_that_of_the_numbers() {
        for (index, source) in Source::ALL.into_iter().enumerate() {
            assert_eq!(source as usize, index, "{}", source.key());
        }
    }
}
