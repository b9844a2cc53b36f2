//! `jetwright work`.

use clap::Args;
use jetwright::Error;
use jetwright::furnace::work::{Charge, Crucible, Melt, average};
use jetwright::furnace::{HeatingTime, Piece, Shape, Soak, Substance, heating_time};
use jetwright::plant::description::WorkGiven;
use jetwright::plant::description::asked::HeatingAsked;
use jetwright::plant::hazards::of_charge;
use jetwright::quantity::Temperature;
use jetwright::report::answers::work::{WorkAnswer, tree};
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;
use crate::common::AnswerArguments;
use crate::options::{Asked, offer, part, there};
use crate::output;

const COLDER: &str = "accepted is hotter than the temperature the work is brought to";

part! {
    /// What is heated, and in what.
    Load: WorkGiven, |description| description.work.as_ref(), None, [
        offer("material"),
        offer("mass"),
        offer("temperature"),
        offer("crucible_mass"),
        offer("crucible_wall"),
        offer("crucible_area"),
    ]
}

part! {
    /// How it is heated.
    Heating: HeatingAsked, |description| Some(&description.asked.heating), None, [
        offer("from"),
        offer("chamber"),
        offer("film"),
        offer("plate"),
        offer("bar"),
        offer("pieces_an_hour"),
    ]
}

/// What is heated, and in what.
#[derive(Debug, Args)]
pub struct WorkArguments {
    #[command(flatten)]
    pub work: Asked<Load>,
    #[command(flatten)]
    pub heating: Asked<Heating>,
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
    film: f64,
    shape: Option<Shape>,
    pieces_an_hour: Option<u32>,
}

impl Heated {
    fn of(arguments: &WorkArguments) -> Result<Self, CommandError> {
        let given = arguments.work.checked()?;
        let (name, to) = (there(given.material, "material")?.0, there(given.temperature, "to")?);
        let asked = arguments.heating.checked()?;
        let (from, chamber, film) = (there(asked.from, "from")?, asked.chamber, there(asked.film, "film")?.0);
        if from >= to {
            return Err(CommandError::option("from", "accepted is colder than the temperature it is brought to").into());
        }
        if chamber.is_some_and(|chamber| chamber <= to) {
            return Err(CommandError::option("chamber", COLDER).beside("to", 0).into());
        }
        let substance = there(Substance::named(name), "material")?;
        let charge = Charge { substance, mass: there(given.mass, "mass")?, crucible: crucible(&given) };
        let plate = asked.plate.map(|thickness| Shape::Slab { thickness });
        let shape = plate.or(asked.bar.map(|diameter| Shape::Round { diameter }));
        Ok(Self { name, charge, from, to, chamber, film, shape, pieces_an_hour: asked.pieces_an_hour })
    }
}

/// Heat and time of a piece, a charge or a loaded crucible.
pub fn run(arguments: &WorkArguments) -> Result<String, CommandError> {
    let heated = Heated::of(arguments)?;
    let heat = heated.charge.heat(heated.from, heated.to).map_err(|error| CommandError::option("to", error))?;
    let melt = melt(&heated)?;
    let soak = soak(&heated)?;
    let mean = heated.pieces_an_hour.map(|count| average(heat, f64::from(count)));
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

fn melt(heated: &Heated) -> Result<Option<Melt>, CommandError> {
    let Heated { charge, from, to, .. } = heated;
    let (Some(chamber), Some(_)) = (heated.chamber, &charge.crucible) else { return Ok(None) };
    charge.melt(chamber, *from, *to, heated.film).map(Some).map_err(|error| refuse(&error))
}

fn soak(heated: &Heated) -> Result<Option<HeatingTime>, CommandError> {
    let Some(shape) = heated.shape else { return Ok(None) };
    let Some(chamber) = heated.chamber else {
        return Err(CommandError::option("chamber", "a plate or a bar needs the chamber's temperature").into());
    };
    let substance = &heated.charge.substance;
    let soak = Soak {
        chamber,
        start: heated.from,
        target: heated.to,
        film_coefficient: heated.film,
        emissivity: substance.emissivity(),
    };
    let piece = Piece { substance: substance.clone(), shape };
    heating_time(&piece, &soak).map(Some).map_err(|error| refuse(&error))
}
