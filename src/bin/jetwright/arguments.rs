//! The arguments, typed and in range as soon as they are parsed.

use std::ffi::OsString;
use std::path::PathBuf;

use clap::builder::{PossibleValuesParser, TypedValueParser};
use clap::{Args, Parser, Subcommand, ValueEnum};
use jetwright::file::shorten;
use jetwright::gas::{Gas, parse as parse_gas};
use jetwright::orifice::{Bore, BoreLength, BoreShape, Coefficient, DrillList, Supply};
use jetwright::plant::entries::{EdgeWord, JetSize, SiteEntry, SitePressure, edge_of, shortened, usual_bore_length};
use jetwright::plant::installation::jet_key;
use jetwright::prose::advice;
use jetwright::quantity::{
    AbsolutePressure, Angle, GaugePressure, HeatRate, Length, Number, Quantity, Share, Temperature, WithinError,
    parse_count, parse_within,
};
use jetwright::{Error, Input, Site};

use crate::command_error::CommandError;
use crate::measured_arguments::{MeterArguments, WeighArguments};
use crate::work_arguments::WorkArguments;

/// Longest argument accepted, in bytes; a path is the longest there is use for.
const LONGEST: usize = 4096;

/// Refuses an argument that no message could sensibly repeat.
pub fn refuse_overlong(arguments: impl Iterator<Item = OsString>) -> Result<(), CommandError> {
    for argument in arguments {
        if argument.len() > LONGEST {
            let shown = shorten(&argument.to_string_lossy(), 40);
            let message = format!("given {shown}, an argument has at most {LONGEST} bytes\n");
            return Err(CommandError::Usage(clap::Error::raw(clap::error::ErrorKind::ValueValidation, message)));
        }
    }
    Ok(())
}

/// Jet, air and burner head of a forced-air gas furnace. Process control only, never a flame safeguard.
#[derive(Debug, Parser)]
#[command(version, after_help = "Example:\n  jetwright flow --gas propane --gauge \"5 psi\" --bore \"1.8 mm\"")]
pub struct Arguments {
    #[command(subcommand)]
    pub command: Command,
}

#[derive(Debug, Subcommand)]
pub enum Command {
    /// Print the shop sheet of a burner file.
    #[command(after_help = "Example:\n  jetwright blank > burner.toml\n  jetwright sheet burner.toml")]
    Sheet(PageArguments),
    /// Print a commented burner file to start from.
    #[command(after_help = "Example:\n  jetwright blank > burner.toml")]
    Blank,
    /// Print a JSON schema of the burner file, for an editor or a check.
    #[command(after_help = "Example:\n  jetwright schema > burner.schema.json")]
    Schema,
    /// Gas flow and heat of a jet at gauge pressures.
    #[command(after_help = "Example:\n  jetwright flow --gas propane --gauge \"5 psi\" --gauge \"0.3 bar\" \
        --bore \"1.8 mm\" --bore-length \"12 mm\" --edge square --altitude \"1600 m\"")]
    Flow(FlowArguments),
    /// The bore and the drill for a heat at a gauge pressure.
    #[command(after_help = "Example:\n  jetwright jet --gas propane --gauge \"5 psi\" --heat \"26 kW net\" \
        --drills number --altitude \"1600 m\"")]
    Jet(JetArguments),
    /// The air a heat needs.
    #[command(after_help = "Example:\n  jetwright air --gas propane --heat \"26 kW net\" --air-ratio 1.05 \
        --altitude \"1600 m\"")]
    Air(AirArguments),
    /// Flame temperature and products of a gas at an air ratio.
    #[command(
        after_help = "Example:\n  jetwright flame --gas propane --air-ratio 0.9 --chamber-temperature \"1250 C\""
    )]
    Flame(FlameArguments),
    /// Heat and time to bring a piece, a charge or a loaded crucible to temperature.
    #[command(after_help = "Example:\n  jetwright work --substance \"bell bronze\" --mass \"12 kg\" --to \"1100 C\" \
        --chamber \"1250 C\" --crucible-mass \"5 kg\" --crucible-wall \"15 mm\" --crucible-area \"1300 cm2\"")]
    Work(WorkArguments),
    /// The panels of a burner file's chamber added up: areas, volumes, bags, drying out.
    #[command(after_help = "Example:\n  jetwright blank > burner.toml\n  jetwright lining burner.toml")]
    Lining(SheetArguments),
    /// What a weighing of the cylinder says of a burner file's jet; without --lost, how long to weigh.
    #[command(after_help = "Example:\n  jetwright blank > burner.toml\n  \
        jetwright weigh burner.toml --setting melt --scale \"10 g\"\n  \
        jetwright weigh burner.toml --setting melt --scale \"10 g\" --lost \"1.02 kg\" --time \"30 min\" \
        --lost \"1.05 kg\" --time \"31 min\"")]
    Weigh(WeighArguments),
    /// What a gas meter's reading says of a burner file's jet.
    #[command(after_help = "Example:\n  jetwright blank > burner.toml\n  \
        jetwright meter burner.toml --setting melt --counted \"0.65 m3\" --time \"30 min\" \
        --meter-pressure \"20 mbar\" --meter-temperature \"12 C\"")]
    Meter(MeterArguments),
    /// The chamber's temperature at each setting of a burner file, and the fire for each temperature.
    #[command(after_help = "Example:\n  jetwright blank > burner.toml\n  jetwright chamber burner.toml")]
    Chamber(SheetArguments),
    /// Write the burner and its settings as bytes for a controller's chip.
    #[command(
        after_help = "Example:\n  jetwright blank > burner.toml\n  jetwright chip burner.toml --image burner.bin"
    )]
    Chip(ChipArguments),
    /// Gauge and air setting for every heat, as a table, an image or source for a controller's chip.
    #[command(
        after_help = "Example:\n  jetwright blank > burner.toml\n  jetwright setpoints burner.toml --image table.bin"
    )]
    Setpoints(SetpointArguments),
    /// Whether a cylinder keeps up with a draw: at its level now, and for so many minutes.
    #[command(after_help = "Example:\n  jetwright cylinder --gas propane --heat \"22 kW net\" --holds \"45 kg\" \
        --left \"20 kg\" --diameter \"375 mm\" --needs \"1 bar\" --minutes \"90 min\"")]
    Cylinder(crate::supply_arguments::CylinderArguments),
    /// What a low-pressure gas pipe passes, by the formula of the fuel-gas codes.
    #[command(after_help = "Example:\n  jetwright line --gas natural-gas --diameter \"27 mm\" --length \"15 m\" \
        --drop \"120 Pa\"")]
    Line(crate::supply_arguments::LineArguments),
}

#[derive(Debug, Args)]
pub struct ChipArguments {
    /// The burner file; `jetwright blank` prints one to start from.
    pub file: PathBuf,
    /// The file to write.
    #[arg(long)]
    pub image: PathBuf,
}

#[derive(Debug, Args)]
pub struct SheetArguments {
    /// The burner file; `jetwright blank` prints one to start from.
    pub file: PathBuf,
    #[command(flatten)]
    pub answer: AnswerArguments,
}

/// Options of `jetwright sheet`.
#[derive(Debug, Args)]
pub struct PageArguments {
    #[command(flatten)]
    pub sheet: SheetArguments,
    /// Print the page for the wall only: settings, the evening, when it lights, stopping, cautions
    #[arg(long)]
    pub wall: bool,
}

/// What `jetwright setpoints` prints in place of an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Source {
    /// A constant of Rust.
    Rust,
    /// The image as a constant of C.
    C,
}

#[derive(Debug, Args)]
pub struct SetpointArguments {
    /// The burner file; `jetwright blank` prints one to start from.
    pub file: PathBuf,
    /// Smallest fire, such as "10 kW net"; the smallest that the gauge reads and damper and blower give unless given.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<HeatRate>(Input::HeatRate))]
    pub from: Option<HeatRate>,
    /// Largest fire; 95 % of the largest that damper and blower give unless given.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<HeatRate>(Input::HeatRate))]
    pub to: Option<HeatRate>,
    /// Air ratio; the file's unless given.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Number>(Input::AirRatio))]
    pub air_ratio: Option<Number>,
    /// A file to write the table's bytes to.
    #[arg(long)]
    pub image: Option<PathBuf>,
    /// Print a constant for a program's source instead; not with --format json or csv.
    #[arg(long, value_enum)]
    pub source: Option<Source>,
    #[command(flatten)]
    pub answer: AnswerArguments,
}

#[derive(Debug, Args)]
pub struct FlowArguments {
    /// Gauge pressure before the jet, such as "5 psi"; repeat it for more rows.
    #[arg(long, required = true, allow_hyphen_values = true, value_parser = within::<GaugePressure>(Input::GaugePressure))]
    pub gauge: Vec<GaugePressure>,
    /// Diameter of the bore, such as "1.8 mm".
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Length>(Input::Bore))]
    pub bore: Option<Length>,
    /// A drill instead of the bore: "number 50", "letter A" or "1/16 in".
    #[arg(long)]
    pub drill: Option<String>,
    #[command(flatten)]
    pub shape: ShapeArguments,
    #[command(flatten)]
    pub shared: SharedArguments,
}

impl FlowArguments {
    /// The size of the jet.
    pub fn size(&self) -> Result<JetSize, CommandError> {
        Ok(JetSize::of(self.drill.as_deref().map(shortened), self.bore)?)
    }
}

#[derive(Debug, Args)]
pub struct JetArguments {
    /// Gauge pressure before the jet, such as "5 psi".
    #[arg(long, allow_hyphen_values = true, value_parser = within::<GaugePressure>(Input::GaugePressure))]
    pub gauge: GaugePressure,
    /// Heat wanted, gross or net, such as "26 kW net".
    #[arg(long, allow_hyphen_values = true, value_parser = within::<HeatRate>(Input::HeatRate))]
    pub heat: HeatRate,
    /// The list the nearest sizes are taken from.
    #[arg(long, value_enum, default_value = "number")]
    pub drills: DrillWord,
    #[command(flatten)]
    pub shape: ShapeArguments,
    #[command(flatten)]
    pub shared: SharedArguments,
}

#[derive(Debug, Args)]
pub struct AirArguments {
    /// Heat of the fire, gross or net, such as "26 kW net".
    #[arg(long, allow_hyphen_values = true, value_parser = within::<HeatRate>(Input::HeatRate))]
    pub heat: HeatRate,
    /// Air ratio: 1 = just enough air, more is lean, less is rich.
    #[arg(long, default_value = "1.05", allow_hyphen_values = true, value_parser = within::<Number>(Input::AirRatio))]
    pub air_ratio: Number,
    #[command(flatten)]
    pub shared: SharedArguments,
}

#[derive(Debug, Args)]
pub struct FlameArguments {
    /// Air ratio: 1 = just enough air, more is lean, less is rich.
    #[arg(long, default_value = "1", allow_hyphen_values = true, value_parser = within::<Number>(Input::FlameAirRatio))]
    pub air_ratio: Number,
    /// Oxygen an analyser reads in the dry flue gas, such as "2.5 %", which tells the air ratio.
    #[arg(long, conflicts_with = "air_ratio", allow_hyphen_values = true, value_parser = within::<Share>(Input::OxygenReading))]
    pub oxygen: Option<Share>,
    /// Temperature of the mixture as it comes to the flame; that of the air unless given.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Temperature>(Input::MixtureTemperature))]
    pub mixture_temperature: Option<Temperature>,
    /// Temperature at which the products leave the chamber.
    #[arg(long, default_value = "1200 C", allow_hyphen_values = true, value_parser = within::<Temperature>(Input::ProductTemperature))]
    pub chamber_temperature: Temperature,
    #[command(flatten)]
    pub shared: SharedArguments,
}

/// Shape of the jet behind its diameter.
#[derive(Debug, Args)]
#[command(next_help_heading = "Shape of the jet")]
pub struct ShapeArguments {
    /// Length of the straight bore; 12 mm unless given, nought for a sharp edge.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Length>(Input::BoreLength))]
    pub bore_length: Option<Length>,
    /// Mouth of the bore.
    #[arg(long, default_value = "square", value_parser = edge_words())]
    pub edge: EdgeWord,
    /// Depth of a chamfered mouth.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Length>(Input::ChamferDepth))]
    pub chamfer_depth: Option<Length>,
    /// Full cone angle of a chamfered mouth.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Angle>(Input::ChamferAngle))]
    pub chamfer_angle: Option<Angle>,
    /// Radius of a rounded mouth.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Length>(Input::EdgeRadius))]
    pub edge_radius: Option<Length>,
    /// Roughness of the bore's wall.
    #[arg(long, default_value = "5 um", allow_hyphen_values = true, value_parser = within::<Length>(Input::Roughness))]
    pub roughness: Length,
    /// Inside diameter of the tube before the jet, if it is narrow beside the jet.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Length>(Input::DuctDiameter))]
    pub approach_diameter: Option<Length>,
    /// Gauge pressure the jet blows into.
    #[arg(long, default_value = "0 Pa", allow_hyphen_values = true, value_parser = within::<GaugePressure>(Input::BackPressure))]
    pub back_pressure: GaugePressure,
    /// How many equal jets share the gas.
    #[arg(long, default_value = "1", allow_hyphen_values = true, value_parser = |text: &str| parse_count(text, Input::JetCount))]
    pub jets: u32,
    /// A discharge coefficient of your own instead of the model's.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Number>(Input::DischargeCoefficient))]
    pub measured_coefficient: Option<Number>,
}

impl ShapeArguments {
    /// The bore of this shape.
    pub fn bore(&self, diameter: Length) -> Result<Bore, CommandError> {
        let bore = self.shape()?.with_diameter(diameter);
        Ok(bore.map_err(|error| CommandError::option(jet_key(&error), advice(&error)))?)
    }

    /// The shape, with what goes together checked.
    pub fn shape(&self) -> Result<BoreShape, CommandError> {
        let edge = edge_of(self.edge, self.chamfer_depth, self.chamfer_angle, self.edge_radius)?;
        let length = BoreLength::Fixed(self.bore_length.unwrap_or(usual_bore_length(self.edge)));
        Ok(BoreShape { length, edge, roughness: self.roughness, approach: self.approach_diameter })
    }

    /// Where the coefficient comes from.
    pub fn coefficient(&self) -> Coefficient {
        self.measured_coefficient.map_or(Coefficient::Model, |measured| Coefficient::Measured(measured.0))
    }
}

/// Gas and site, and the look of the answer.
#[derive(Debug, Args)]
#[command(next_help_heading = "Gas, site and answer")]
pub struct SharedArguments {
    /// A named gas, or mole fractions that add to one: "C3H8=0.95,C2H6=0.05".
    #[arg(long)]
    pub gas: String,
    /// Temperature of the gas before the jet; that of the air unless given.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Temperature>(Input::GasTemperature))]
    pub gas_temperature: Option<Temperature>,
    /// Height above sea level, 0 m unless a pressure is given.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Length>(Input::Altitude))]
    pub altitude: Option<Length>,
    /// What a barometer on the site reads, such as "835 hPa".
    #[arg(long, allow_hyphen_values = true, value_parser = within::<AbsolutePressure>(Input::StationPressure))]
    pub station_pressure: Option<AbsolutePressure>,
    /// A forecast's pressure, together with the altitude.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<AbsolutePressure>(Input::SeaLevelPressure))]
    pub sea_level_pressure: Option<AbsolutePressure>,
    /// Temperature of the air.
    #[arg(long, default_value = "15 C", allow_hyphen_values = true, value_parser = within::<Temperature>(Input::AirTemperature))]
    pub air_temperature: Temperature,
    /// Relative humidity of the air.
    #[arg(long, default_value = "0 %", allow_hyphen_values = true, value_parser = within::<Share>(Input::Humidity))]
    pub humidity: Share,
    #[command(flatten)]
    pub answer: AnswerArguments,
}

impl SharedArguments {
    /// The site; sea level when nothing is given about its pressure.
    pub fn site(&self) -> Result<Site, CommandError> {
        let nothing = self.station_pressure.is_none() && self.sea_level_pressure.is_none();
        let sea_level = nothing.then_some(Length::from_meters(0.0));
        let pressure = SitePressure::of(self.altitude.or(sea_level), self.station_pressure, self.sea_level_pressure)?;
        let entry = SiteEntry { pressure, air_temperature: self.air_temperature, humidity: self.humidity.0 };
        Ok(entry.site().map_err(|error| CommandError::option("altitude", error))?)
    }

    /// The gas.
    pub fn gas(&self) -> Result<Gas, CommandError> {
        let mixture = parse_gas(&self.gas).map_err(|error| CommandError::option("gas", error))?;
        Ok(Gas::new(mixture))
    }

    /// The gas before the jet at a gauge pressure, and what it blows into.
    pub fn supply(&self, site: &Site, gauge: GaugePressure, back: GaugePressure) -> Supply {
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
                let temperature = self.gas_temperature.map_or("air-temperature", |_| "gas-temperature");
                CommandError::option("gauge", advice(error)).nth(index).beside(temperature, 0)
            }
            _ => CommandError::option("gauge", advice(error)).nth(index),
        };
        refused.into()
    }

    /// Temperature of the gas before the jet.
    pub fn gas_temperature(&self) -> Temperature {
        self.gas_temperature.unwrap_or(self.air_temperature)
    }
}

/// The look of the answer.
#[derive(Debug, Args)]
pub struct AnswerArguments {
    /// Units of a text answer.
    #[arg(long, value_enum, default_value = "metric")]
    pub units: Units,
    /// Text or HTML to read, or JSON or CSV for programs, both in SI base units.
    #[arg(long, value_enum, default_value = "text")]
    pub format: Format,
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

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum DrillWord {
    /// Number drills, 80 to 1.
    Number,
    /// Letter drills, A to Z.
    Letter,
    /// Drills by sixty-fourths of an inch.
    Fractional,
    /// Metric drills.
    Metric,
    /// Contact tips of welding guns by their marked size; they wear.
    Tips,
}

impl DrillWord {
    /// The list it names.
    pub fn list(self) -> DrillList {
        match self {
            DrillWord::Number => DrillList::Number,
            DrillWord::Letter => DrillList::Letter,
            DrillWord::Fractional => DrillList::Fractional,
            DrillWord::Metric => DrillList::Metric,
            DrillWord::Tips => DrillList::Tips,
        }
    }
}

/// A parser of a quantity held to the range of an input.
pub fn within<Q>(input: Input) -> impl Fn(&str) -> Result<Q, WithinError> + Clone + Send + Sync + 'static
where
    Q: Quantity + Clone + Send + Sync + 'static,
{
    move |text| parse_within(text, input)
}

/// A parser of the words for the mouth of a bore.
fn edge_words() -> impl TypedValueParser<Value = EdgeWord> {
    PossibleValuesParser::new(EdgeWord::WORDS.iter().map(|(word, _)| *word)).try_map(|given| {
        EdgeWord::WORDS.iter().find(|(word, _)| *word == given).map(|(_, edge)| *edge).ok_or("not a shape of mouth")
    })
}
