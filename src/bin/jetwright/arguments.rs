//! The arguments, typed and in range as soon as they are parsed.

use std::ffi::OsString;
use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use jetwright::Input;
use jetwright::file::shorten;
use jetwright::orifice::DrillList;
use jetwright::plant::entries::JetSize;
use jetwright::quantity::{GaugePressure, HeatRate, Number, Share, Temperature};

use crate::command_error::CommandError;
use crate::common::{AnswerArguments, Hole, ShapeArguments, SharedArguments, within};
use crate::measured_arguments::{MeterArguments, WeighArguments};
use crate::options::Asked;
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
    #[command(flatten)]
    pub hole: Asked<Hole>,
    #[command(flatten)]
    pub shape: ShapeArguments,
    #[command(flatten)]
    pub shared: SharedArguments,
}

impl FlowArguments {
    /// The size of the jet.
    pub fn size(&self) -> Result<JetSize, CommandError> {
        let hole = self.hole.checked()?;
        Ok(JetSize::of(hole.drill, hole.bore)?)
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
