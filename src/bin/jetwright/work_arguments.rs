//! The arguments of `work`.

use clap::Args;
use jetwright::Input;
use jetwright::quantity::{Area, Length, Mass, Number, Temperature, parse_count};

use crate::common::{AnswerArguments, within};

/// What is heated, and in what.
#[derive(Debug, Args)]
pub struct WorkArguments {
    /// What it is made of: steel, copper, "bell bronze", "tin bronze", brass, aluminium, silver, glass, stoneware.
    #[arg(long)]
    pub substance: String,
    /// Mass of the charge, or of one piece.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Mass>(Input::WorkMass))]
    pub mass: Mass,
    /// Temperature it is brought to.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Temperature>(Input::WorkTemperature))]
    pub to: Temperature,
    /// Temperature it goes in at.
    #[arg(long, default_value = "20 C", allow_hyphen_values = true, value_parser = within::<Temperature>(Input::WorkTemperature))]
    pub from: Temperature,
    /// Temperature of the chamber; without it there is no time.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Temperature>(Input::ChamberTemperature))]
    pub chamber: Option<Temperature>,
    /// Convection of the fire's gases in W/(m2 K).
    #[arg(long, default_value = "30", allow_hyphen_values = true, value_parser = within::<Number>(Input::FilmCoefficient))]
    pub film: Number,
    /// Thickness of a plate heated from both sides.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Length>(Input::WorkSize))]
    pub plate: Option<Length>,
    /// Diameter of a round bar.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Length>(Input::WorkSize))]
    pub bar: Option<Length>,
    /// Pieces an hour, for the average heat.
    #[arg(long, allow_hyphen_values = true, value_parser = |text: &str| parse_count(text, Input::PiecesAnHour))]
    pub pieces_an_hour: Option<u32>,
    /// Mass of a clay-graphite crucible.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Mass>(Input::WorkMass))]
    pub crucible_mass: Option<Mass>,
    /// Thickness of its wall.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Length>(Input::LayerThickness))]
    pub crucible_wall: Option<Length>,
    /// Area of it that the fire sees.
    #[arg(long, allow_hyphen_values = true, value_parser = within::<Area>(Input::WallArea))]
    pub crucible_area: Option<Area>,
    #[command(flatten)]
    pub answer: AnswerArguments,
}
