//! What several commands ask: the jet's shape, the gas, the site, and the look of the answer.

use std::path::PathBuf;

use clap::{Args, ValueEnum};
use jetwright::gas::{Gas, parse as parse_gas};
use jetwright::orifice::{Bore, BoreShape, Coefficient, Supply};
use jetwright::plant::assembly::jet_key;
use jetwright::plant::description::asked::JetAsked;
use jetwright::plant::description::{Fire, GasSupplied, JetHole, Site};
use jetwright::plant::entries::SiteEntry;
use jetwright::prose::advice;
use jetwright::quantity::{GaugePressure, Length, Temperature};
use jetwright::{Error, Input};

use crate::command_error::CommandError;
use crate::options::{Asked, offer, part, usually};

part! {
    /// Shape of the jet behind its diameter.
    Shape: JetHole, |description| description.jet.as_ref(), Some("Shape of the jet"), [
        offer("bore_length"),
        usually("edge", "square"),
        offer("chamfer_depth"),
        offer("chamfer_angle"),
        offer("edge_radius"),
        offer("roughness"),
        offer("approach_diameter"),
        offer("count"),
        offer("measured_coefficient"),
    ]
}

part! {
    /// What the jet blows into.
    Behind: JetAsked, |description| Some(&description.asked.jet), Some("Shape of the jet"), [offer("back_pressure")]
}

part! {
    /// The site.
    Place: Site, |description| description.site.as_ref(), Some("Gas, site and answer"), [
        offer("altitude"),
        offer("station_pressure"),
        offer("sea_level_pressure"),
        usually("air_temperature", "15 C"),
        offer("humidity"),
    ]
}

part! {
    /// The air ratio.
    Ratio: Fire, |description| Some(&description.fire), None, [offer("air_ratio")]
}

part! {
    /// The gas.
    Fuel: GasSupplied, |description| description.gas.as_ref(), Some("Gas, site and answer"), [
        offer("kind"),
        offer("temperature"),
    ]
}

/// A burner file, and the look of the answer.
#[derive(Debug, Args)]
pub struct FileArguments {
    /// The burner file; `jetwright blank` prints one to start from.
    pub file: PathBuf,
    #[command(flatten)]
    pub answer: AnswerArguments,
}

/// Shape of the jet behind its diameter.
#[derive(Debug, Args)]
#[command(next_help_heading = "Shape of the jet")]
pub struct ShapeArguments {
    #[command(flatten)]
    pub jet: Asked<Shape>,
    #[command(flatten)]
    pub behind: Asked<Behind>,
}

impl ShapeArguments {
    /// The bore of this shape.
    pub fn bore(&self, diameter: Length) -> Result<Bore, CommandError> {
        let bore = self.shape()?.with_diameter(diameter);
        Ok(bore.map_err(|error| CommandError::option(jet_key(&error), advice(&error)))?)
    }

    /// The shape, with what goes together checked.
    pub fn shape(&self) -> Result<BoreShape, CommandError> {
        let jet = self.jet.checked()?;
        Ok(jet.shape()?)
    }

    /// Gauge pressure the jet blows into.
    pub fn back_pressure(&self) -> GaugePressure {
        self.behind.given().back_pressure.unwrap_or_default()
    }

    /// How many jets share the gas.
    pub fn count(&self) -> f64 {
        f64::from(self.jet.given().count.unwrap_or(1))
    }

    /// Where the coefficient comes from.
    pub fn coefficient(&self) -> Coefficient {
        self.jet.given().measured_coefficient.map_or(Coefficient::Model, |measured| Coefficient::Measured(measured.0))
    }
}

/// Gas and site, and the look of the answer.
#[derive(Debug, Args)]
#[command(next_help_heading = "Gas, site and answer")]
pub struct SharedArguments {
    #[command(flatten)]
    pub fuel: Asked<Fuel>,
    #[command(flatten)]
    pub place: Asked<Place>,
    #[command(flatten)]
    pub answer: AnswerArguments,
}

impl SharedArguments {
    /// The site; sea level when nothing is given about its pressure.
    pub fn site(&self) -> Result<jetwright::Site, CommandError> {
        let said = self.place.given();
        let nothing = said.altitude.is_none() && said.station_pressure.is_none() && said.sea_level_pressure.is_none();
        let site =
            if nothing { Site { altitude: Some(Length::from_meters(0.0)), ..said } } else { self.place.checked()? };
        let entry = SiteEntry::of(&site)?;
        Ok(entry.site().map_err(|error| CommandError::option("altitude", error))?)
    }

    /// The gas.
    pub fn gas(&self) -> Result<Gas, CommandError> {
        let kind = self.fuel.given().kind.unwrap_or_default();
        let mixture = parse_gas(&kind).map_err(|error| CommandError::option("gas", error))?;
        Ok(Gas::new(mixture))
    }

    /// Temperature of the air.
    pub fn air_temperature(&self) -> Temperature {
        self.place.given().air_temperature.unwrap_or_default()
    }

    /// The gas before the jet at a gauge pressure, and what it blows into.
    pub fn supply(&self, site: &jetwright::Site, gauge: GaugePressure, back: GaugePressure) -> Supply {
        Supply { ambient: site.ambient_pressure(), gauge, back, temperature: self.gas_temperature() }
    }

    /// The error of a gauge pressure that the gas refuses, the first of them or a later one.
    pub fn refuse_gauge(&self, index: usize, error: &Error) -> CommandError {
        let inverted = Error::InvertedPair { lesser: Input::BackPressure, greater: Input::GaugePressure };
        let refused = match *error {
            found if found == inverted => {
                CommandError::option("back-pressure", "must be no higher than the gauge pressure")
                    .beside("gauge", index)
            }
            Error::Liquid { .. } => {
                let temperature = self.fuel.given().temperature.map_or("air-temperature", |_| "gas-temperature");
                CommandError::option("gauge", advice(error)).nth(index).beside(temperature, 0)
            }
            _ => CommandError::option("gauge", advice(error)).nth(index),
        };
        refused.into()
    }

    /// Temperature of the gas before the jet.
    pub fn gas_temperature(&self) -> Temperature {
        self.fuel.given().temperature.unwrap_or(self.air_temperature())
    }
}

/// The look of the answer.
#[derive(Debug, Args)]
pub struct AnswerArguments {
    /// Units of a text answer. Without it: those of the question, or metric where a burner file asks
    #[arg(long, value_enum)]
    pub units: Option<Units>,
    /// Text or HTML to read, or JSON or CSV for programs, both in SI base units.
    #[arg(long, value_enum, default_value = "text")]
    pub format: Format,
}

impl AnswerArguments {
    /// Whether inch units are asked for.
    pub fn is_inch(&self) -> bool {
        self.units == Some(Units::Inch)
    }

    /// Whether people read the answer.
    pub fn is_page(&self) -> bool {
        matches!(self.format, Format::Text | Format::Html)
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Units {
    Inch,
    Metric,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Format {
    Text,
    Html,
    Json,
    Csv,
}
