//! `jetwright work`.

use clap::Args;
use jetwright::furnace::work::{Charge, Crucible, Melt, average};
use jetwright::furnace::{HeatingTime, Piece, Shape, Soak, Substance, heating_time};
use jetwright::plant::description::WorkGiven;
use jetwright::plant::hazards::of_charge;
use jetwright::quantity::{Length, Number, Temperature, parse_count};
use jetwright::report::answers::work::{WorkAnswer, tree};
use jetwright::report::warnings::Warned;
use jetwright::{Error, Input};

use crate::command_error::CommandError;
use crate::common::{AnswerArguments, within};
use crate::options::{Asked, offer, part, there};
use crate::output;

const COLDER: &str = "accepted is hotter than the temperature the work is brought to";

part! {
    /// What is heated, and in what.
    Load: WorkGiven, |description| description.work.as_ref(), None, [
        offer("substance"),
        offer("mass"),
        offer("temperature"),
        offer("crucible_mass"),
        offer("crucible_wall"),
        offer("crucible_area"),
    ]
}

/// What is heated, and in what.
#[derive(Debug, Args)]
pub struct WorkArguments {
    #[command(flatten)]
    pub work: Asked<Load>,
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
    #[command(flatten)]
    pub answer: AnswerArguments,
}

/// Work to be brought to a temperature.
struct Heated {
    name: &'static str,
    charge: Charge,
    from: Temperature,
    to: Temperature,
    chamber: Option<Temperature>,
}

impl Heated {
    fn of(arguments: &WorkArguments) -> Result<Self, CommandError> {
        let given = arguments.work.checked()?;
        let (name, to) = (there(given.substance, "substance")?.0, there(given.temperature, "to")?);
        let (from, chamber) = (arguments.from, arguments.chamber);
        if from >= to {
            return Err(CommandError::option("from", "accepted is colder than the temperature it is brought to").into());
        }
        if chamber.is_some_and(|chamber| chamber <= to) {
            return Err(CommandError::option("chamber", COLDER).beside("to", 0).into());
        }
        let substance = there(Substance::named(name), "substance")?;
        let charge = Charge { substance, mass: there(given.mass, "mass")?, crucible: crucible(&given) };
        Ok(Self { name, charge, from, to, chamber })
    }
}

/// Heat and time of a piece, a charge or a loaded crucible.
pub fn run(arguments: &WorkArguments) -> Result<String, CommandError> {
    let heated = Heated::of(arguments)?;
    let heat = heated.charge.heat(heated.from, heated.to).map_err(|error| CommandError::option("to", error))?;
    let melt = melt(arguments, &heated)?;
    let soak = soak(arguments, &heated)?;
    let mean = arguments.pieces_an_hour.map(|count| average(heat, f64::from(count)));
    let answer = WorkAnswer {
        substance: heated.charge.substance,
        name: heated.name.to_owned(),
        mass: heated.charge.mass,
        from: heated.from,
        to: heated.to,
        has_crucible: heated.charge.crucible.is_some(),
        has_chamber: heated.chamber.is_some(),
        heat,
        mean,
        melt,
        soak,
    };
    let shop = output::shop(&arguments.answer);
    output::print(
        &tree(&answer, &shop).warned(&Warned::of(&of_charge(heated.name)), &shop),
        "Heat and time of work",
        &arguments.answer,
    )
}

/// The crucible, if its three lines are given.
fn crucible(given: &WorkGiven) -> Option<Crucible> {
    let substance = Substance::named("clay graphite")?;
    Some(Crucible { substance, mass: given.crucible_mass?, wall: given.crucible_wall?, area: given.crucible_area? })
}

fn refuse(error: &Error) -> CommandError {
    match *error {
        Error::NoSolution { nearest, .. } => {
            let celsius = Temperature::from_kelvin(f64::from(nearest)).celsius();
            let text = format!("a piece begins to melt at {celsius:.0} C; a melt needs a crucible");
            CommandError::option("to", text).into()
        }
        _ => CommandError::option("chamber", COLDER).into(),
    }
}

fn melt(arguments: &WorkArguments, heated: &Heated) -> Result<Option<Melt>, CommandError> {
    let Heated { charge, from, to, .. } = heated;
    let (Some(chamber), Some(_)) = (heated.chamber, &charge.crucible) else { return Ok(None) };
    charge.melt(chamber, *from, *to, arguments.film.0).map(Some).map_err(|error| refuse(&error))
}

fn soak(arguments: &WorkArguments, heated: &Heated) -> Result<Option<HeatingTime>, CommandError> {
    let shape = match (arguments.plate, arguments.bar) {
        (None, None) => return Ok(None),
        (Some(thickness), None) => Shape::Slab { thickness },
        (None, Some(diameter)) => Shape::Round { diameter },
        (Some(_), Some(_)) => return Err(CommandError::option("plate", "accepted is a plate or a bar").into()),
    };
    let Some(chamber) = heated.chamber else {
        return Err(CommandError::option("chamber", "a plate or a bar needs the chamber's temperature").into());
    };
    let substance = &heated.charge.substance;
    let soak = Soak {
        chamber,
        start: heated.from,
        target: heated.to,
        film_coefficient: arguments.film.0,
        emissivity: substance.emissivity(),
    };
    let piece = Piece { substance: substance.clone(), shape };
    heating_time(&piece, &soak).map(Some).map_err(|error| refuse(&error))
}
