//! `jetwright work`.

use jetwright::Error;
use jetwright::furnace::work::{Charge, Crucible, Melt, average};
use jetwright::furnace::{HeatingTime, Piece, SUBSTANCES, Shape, Soak, Substance, heating_time};
use jetwright::plant::hazards::of_charge;
use jetwright::quantity::Temperature;
use jetwright::report::answers::work::{WorkAnswer, tree};
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;
use crate::output;
use crate::work_arguments::WorkArguments;

const COLDER: &str = "accepted is hotter than the temperature the work is brought to";

/// Heat and time of a piece, a charge or a loaded crucible.
pub fn run(arguments: &WorkArguments) -> Result<String, CommandError> {
    let Some(substance) = Substance::named(&arguments.substance) else {
        let known: Vec<&str> = SUBSTANCES.iter().map(|data| data.key).collect();
        return Err(CommandError::option("substance", format!("accepted are {}", known.join(", "))).into());
    };
    if arguments.from >= arguments.to {
        return Err(CommandError::option("from", "accepted is colder than the temperature it is brought to").into());
    }
    if arguments.mass.kilograms() <= 0.0 {
        return Err(CommandError::option("mass", "accepted is more than 0 kg").into());
    }
    if arguments.chamber.is_some_and(|chamber| chamber <= arguments.to) {
        return Err(CommandError::option("chamber", COLDER).beside("to", 0).into());
    }
    let charge = Charge { substance: substance.clone(), mass: arguments.mass, crucible: crucible(arguments)? };
    let heat = charge.heat(arguments.from, arguments.to).map_err(|error| CommandError::option("to", error))?;
    let melt = melt(arguments, &charge)?;
    let soak = soak(arguments, &substance)?;
    let mean = arguments.pieces_an_hour.map(|count| average(heat, f64::from(count)));
    let answer = WorkAnswer {
        substance,
        name: arguments.substance.clone(),
        mass: arguments.mass,
        from: arguments.from,
        to: arguments.to,
        has_crucible: arguments.crucible_mass.is_some(),
        has_chamber: arguments.chamber.is_some(),
        heat,
        mean,
        melt,
        soak,
    };
    let shop = output::shop(&arguments.answer);
    output::print(
        &tree(&answer, &shop).warned(&Warned::of(&of_charge(&arguments.substance)), &shop),
        "Heat and time of work",
        &arguments.answer,
    )
}

fn crucible(arguments: &WorkArguments) -> Result<Option<Crucible>, CommandError> {
    match (arguments.crucible_mass, arguments.crucible_wall, arguments.crucible_area) {
        (None, None, None) => Ok(None),
        (Some(mass), Some(wall), Some(area)) => {
            Ok(Substance::named("clay graphite").map(|substance| Crucible { substance, mass, wall, area }))
        }
        (mass, wall, _) => {
            let option = match (mass, wall) {
                (None, _) => "crucible-mass",
                (_, None) => "crucible-wall",
                _ => "crucible-area",
            };
            Err(CommandError::option(option, "a crucible needs its mass, its wall and its area together").into())
        }
    }
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

fn melt(arguments: &WorkArguments, charge: &Charge) -> Result<Option<Melt>, CommandError> {
    let (Some(chamber), Some(_)) = (arguments.chamber, &charge.crucible) else { return Ok(None) };
    charge.melt(chamber, arguments.from, arguments.to, arguments.film.0).map(Some).map_err(|error| refuse(&error))
}

fn soak(arguments: &WorkArguments, substance: &Substance) -> Result<Option<HeatingTime>, CommandError> {
    let shape = match (arguments.plate, arguments.bar) {
        (None, None) => return Ok(None),
        (Some(thickness), None) => Shape::Slab { thickness },
        (None, Some(diameter)) => Shape::Round { diameter },
        (Some(_), Some(_)) => return Err(CommandError::option("plate", "accepted is a plate or a bar").into()),
    };
    let Some(chamber) = arguments.chamber else {
        return Err(CommandError::option("chamber", "a plate or a bar needs the chamber's temperature").into());
    };
    let soak = Soak {
        chamber,
        start: arguments.from,
        target: arguments.to,
        film_coefficient: arguments.film.0,
        emissivity: substance.emissivity(),
    };
    let piece = Piece { substance: substance.clone(), shape };
    heating_time(&piece, &soak).map(Some).map_err(|error| refuse(&error))
}
