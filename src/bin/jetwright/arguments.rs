//! Every command, with its help.

use clap::{Parser, Subcommand};

use crate::air::AirArguments;
use crate::begin::BeginArguments;
use crate::blank::BlankArguments;
use crate::chip::ChipArguments;
use crate::common::FileArguments;
use crate::completions::CompletionArguments;
use crate::cylinder::CylinderArguments;
use crate::flame::FlameArguments;
use crate::flow::FlowArguments;
use crate::jet::JetArguments;
use crate::line::LineArguments;
use crate::meter::MeterArguments;
use crate::setpoints::SetpointArguments;
use crate::sheet::PageArguments;
use crate::weigh::WeighArguments;
use crate::work::WorkArguments;

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
    /// Write a first burner file from a few questions; each is an option too, and "unknown" is an answer.
    #[command(after_help = "Example:\n  jetwright begin --trade forge --gas propane --jet \"1.4 mm\" \
        --gauge \"5 psi\" --blower-flow \"100 cfm\" my-forge.toml")]
    Begin(BeginArguments),
    /// Print a commented burner file to start from: whole, short, or for a trade.
    #[command(after_help = "Example:\n  jetwright blank > burner.toml\n  jetwright blank --short > burner.toml")]
    Blank(BlankArguments),
    /// Print a JSON schema of the burner file, for an editor or a check.
    #[command(after_help = "Example:\n  jetwright schema > burner.schema.json")]
    Schema,
    /// Print what completes the command in a shell.
    #[command(after_help = "Example:\n  jetwright completions bash > jetwright.bash")]
    Completions(CompletionArguments),
    /// Print the manual page.
    #[command(after_help = "Example:\n  jetwright man > jetwright.1")]
    Man,
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
    #[command(after_help = "Example:\n  jetwright work --material \"bell bronze\" --mass \"12 kg\" --to \"1100 C\" \
        --chamber \"1250 C\" --crucible-mass \"5 kg\" --crucible-wall \"15 mm\" --crucible-area \"1300 cm2\"")]
    Work(WorkArguments),
    /// The panels of a burner file's chamber added up: areas, volumes, bags, drying out.
    #[command(after_help = "Example:\n  jetwright blank > burner.toml\n  jetwright lining burner.toml")]
    Lining(FileArguments),
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
    Chamber(FileArguments),
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
    #[command(after_help = "Example:\n  jetwright cylinder --gas propane --heat \"22 kW net\" --capacity \"45 kg\" \
        --contents \"20 kg\" --diameter \"375 mm\" --minimum-inlet-pressure \"1 bar\" --minutes \"90 min\"")]
    Cylinder(CylinderArguments),
    /// What a low-pressure gas pipe passes, by the formula of the fuel-gas codes.
    #[command(after_help = "Example:\n  jetwright line --gas natural-gas --diameter \"27 mm\" --length \"15 m\" \
        --drop \"120 Pa\"")]
    Line(LineArguments),
}
