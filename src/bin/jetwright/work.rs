//! `jetwright work`.

use jetwright::Error;
use jetwright::furnace::work::{Charge, Crucible, Melt, average};
use jetwright::furnace::{HeatingTime, Method, Piece, SUBSTANCES, Shape, Soak, Substance, heating_time};
use jetwright::plant::hazards::of_charge;
use jetwright::quantity::Temperature;
use jetwright::report::Shop;
use jetwright::report::rows::csv_of;
use serde_json::{Map, Value, json};

use crate::arguments::{Format, Units};
use crate::command_error::CommandError;
use crate::output;
use crate::warned::Warned;
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
    let mut row = Map::new();
    for (key, value) in [
        ("heat_j", json!(heat)),
        ("heat_per_mass_j_per_kg", json!(substance.heat(arguments.from, arguments.to))),
        ("average_heat_w", json!(mean.map(|power| power.watts()))),
        ("melting_begins_k", json!(substance.solidus().kelvin())),
        ("all_melted_k", json!(substance.liquidus().kelvin())),
        ("melt_time_s", json!(melt.map(|melt| melt.time.seconds()))),
        ("melting_begins_s", json!(melt.and_then(|melt| melt.melting_begins).map(|time| time.seconds()))),
        ("all_melted_s", json!(melt.and_then(|melt| melt.melted).map(|time| time.seconds()))),
        ("piece_time_s", json!(soak.map(|soak| soak.time.seconds()))),
        ("piece_surface_k", json!(soak.map(|soak| soak.surface.kelvin()))),
        ("biot_number", json!(soak.map(|soak| soak.biot))),
    ] {
        row.insert(key.into(), value);
    }
    let warned = Warned::of(&of_charge(&arguments.substance));
    let shop = Shop { inch: arguments.answer.units == Units::Inch };
    Ok(match arguments.answer.format {
        Format::Json => {
            row.insert("warnings".into(), warned.json());
            output::pretty(&Value::Object(row))
        }
        Format::Csv => {
            warned.beside(&shop);
            csv_of(&[row]).map_err(CommandError::table)?
        }
        Format::Text => text(arguments, heat, mean.map(|power| power.watts()), melt, soak) + &warned.text(&shop),
    })
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

fn text(
    arguments: &WorkArguments,
    heat: f64,
    mean: Option<f64>,
    melt: Option<Melt>,
    soak: Option<HeatingTime>,
) -> String {
    let shop = Shop { inch: arguments.answer.units == Units::Inch };
    let with = if arguments.crucible_mass.is_some() { ", its crucible's heat counted" } else { "" };
    let mut text = format!(
        "{} of {} from {} to {} takes {:.3} MJ{with}.\n",
        shop.mass(arguments.mass),
        arguments.substance,
        shop.temperature(arguments.from),
        shop.temperature(arguments.to),
        heat / 1e6
    );
    if let Some(mean) = mean {
        text.push_str(&format!("That many pieces an hour take {:.2} kW on average.\n", mean / 1e3));
    }
    if let Some(melt) = melt {
        text.push_str(&format!("In its crucible it takes {:.0} min in such a chamber", melt.time.minutes()));
        if let (Some(begins), Some(melted)) = (melt.melting_begins, melt.melted) {
            text.push_str(&format!(", melting from {:.0} to {:.0} min", begins.minutes(), melted.minutes()));
        }
        text.push_str(&format!("; it asks {:.1} kW when it goes in.\n", melt.most.watts() / 1e3));
    }
    if arguments.chamber.is_some() && melt.is_none() && soak.is_none() {
        text.push_str(
            "How long it takes goes by its shape: --plate, --bar, or a crucible's mass, wall and area tell it.\n",
        );
    }
    if let Some(soak) = soak {
        let how = if soak.method == Method::Lumped { "warm all through at once" } else { "by conduction inside" };
        text.push_str(&format!(
            "A piece takes {:.1} min until its middle is there, its skin then at {} ({how}, Biot number {:.2}).\n",
            soak.time.minutes(),
            shop.temperature(soak.surface),
            soak.biot
        ));
    }
    text
}
