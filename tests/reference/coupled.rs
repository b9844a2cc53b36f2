//! The coupled furnace: its gas's radiation, the exchange between surfaces, zones and openings.

use super::row::Row;
use jetwright::furnace::Body;
use jetwright::furnace::coupled::{
    Build, Chain, Draft, Drive, End, Exchange, Films, Firing, Furnace, LID_EXCHANGE, Medium, OPENING_DISCHARGE, Part,
    Place, Radiation, Stream, Surface, Until, Vent,
};
use jetwright::gas::{Gas, Species};
use jetwright::quantity::{AbsolutePressure, Area, Temperature};
use jetwright::{Float, Scalar, Site};

const ATMOSPHERE: f64 = 101_325.0;
const ROOM: f64 = 293.15;
/// Gas constant of dry air, J/(kg K).
const AIR: f64 = 287.05;

/// What is written between bars, its parts between colons.
fn parts<'a>(row: &'a Row, name: &str) -> Vec<Vec<&'a str>> {
    row.text(name).split('|').map(|part| part.split(':').collect()).collect()
}

fn number<S: Scalar>(text: &str) -> S {
    S::c(text.parse().unwrap())
}

fn radiation<S: Scalar>(row: &Row) -> Radiation<S> {
    if row.optional("kappa").is_some() {
        let kappa = row.get::<S>("kappa");
        return if kappa > S::zero() { Radiation::gray(kappa) } else { Radiation::clear() };
    }
    Radiation::of_products(row.get("co2"), row.get("h2o"), row.get::<S>("pressure_pa") / S::c(ATMOSPHERE))
}

/// Heat that each surface receives from gas and others, W.
fn net<S: Scalar>(row: &Row) -> Vec<S> {
    let surface = |part: Vec<&str>| Surface {
        part: match part[0] {
            "wall" => Part::Wall,
            "opening" => Part::Opening,
            _ => Part::Content,
        },
        area: number(part[1]),
        emissivity: number(part[2]),
        kelvin: number(part[3]),
    };
    let surfaces: Vec<Surface<S>> = parts(row, "surfaces").into_iter().map(surface).collect();
    let exchange = Exchange::new(radiation(row), row.get("path_m"), &surfaces);
    exchange.net(&surfaces, row.get("gas_k")).to_vec()
}

fn stream<S: Float>(row: &Row) -> Stream<S> {
    if row.text("kind") == "linear" {
        return Stream::linear(S::c(ROOM), row.get("flame_k"), S::c(1100.0), S::c(3.789e-7), Radiation::clear());
    }
    let (pressure, air) = (AbsolutePressure::from_pascals(S::c(ATMOSPHERE)), Temperature::from_kelvin(S::c(ROOM)));
    let half = Site::at_station_pressure(pressure, air, S::c(0.5)).unwrap().water_fraction();
    // The fraction of water goes with the humidity.
    let humidity = S::c(0.5) * row.get::<S>("water") / half;
    let site = Site::at_station_pressure(pressure, air, humidity).unwrap();
    Stream::new(&Gas::from(Species::Propane), &site, row.get("air_ratio")).unwrap()
}

/// Temperature that leaves, K, and heat given to a wall that stays as hot as it is, W: its room is as hot and its
/// specific heat endless.
fn zones<S: Float>(row: &Row) -> (S, S) {
    let (area, wall_kelvin) = (row.get::<S>("area_m2"), row.get::<S>("wall_k"));
    let layer = (Medium::Plain(S::c(1e4), S::one(), S::c(1e12)), S::one());
    let body = Body::Flat { area: Area::from_square_meters(area) };
    let chain = Chain::wall(&[layer], &body, End::Adiabatic);
    let emissivity = row.optional("emissivity").map_or(S::one(), |_| row.get("emissivity"));
    let path = row.optional("path_m").map_or(S::one(), |_| row.get("path_m"));
    let film = row.get("film");
    let mut furnace = Furnace {
        builds: heapless::Vec::new(),
        openings: heapless::Vec::new(),
        vents: heapless::Vec::new(),
        volume: path * area / S::c(3.6),
        stream: stream(row),
        zones: row.number("zones") as usize,
        films: Films { fired: film, blown: film, off: film },
        room: wall_kelvin,
        pressure: S::c(ATMOSPHERE),
        discharge: S::c(OPENING_DISCHARGE),
        lid_exchange: S::c(LID_EXCHANGE),
    };
    furnace.builds.push(Build { chain, area, emissivity }).unwrap();
    let drive = Drive::Fire { heat: row.get("heat_w"), leak: S::zero() };
    let passed = Firing::cold(&furnace).run(&drive, Until::Time(S::one())).unwrap();
    (passed.gas, passed.ledger.fuel - passed.ledger.flue)
}

/// Air that the openings let in, kg/s.
fn entering<S: Scalar>(row: &Row) -> S {
    let vent = |part: Vec<&str>| Vent {
        area: number(part[1]),
        place: match part[0] {
            "lid" => Place::Lid(number(part[2])),
            "gap" => Place::Gap(number(part[2])),
            _ => Place::Upright(number(part[2]), number(part[3])),
        },
    };
    let vents: Vec<Vent<S>> = parts(row, "vents").into_iter().map(vent).collect();
    let density = |kelvin: S| row.get::<S>("pressure_pa") / (S::c(AIR) * kelvin);
    let draft = Draft {
        outside: density(S::c(ROOM)),
        inside: density(row.get("inside_k")),
        blown: row.get::<S>("blown_g_per_s") * S::c(1e-3),
        discharge: S::c(OPENING_DISCHARGE),
        lid_exchange: S::c(LID_EXCHANGE),
    };
    draft.entering(&vents).unwrap()
}

/// Our value for a row of this topic.
pub fn ours<S: Float>(row: &Row) -> Option<S> {
    Some(match row.quantity.as_str() {
        "gas_emissivity" => radiation::<S>(row).emissivity(row.get("path_m"), row.get("gas_k")),
        "wall_flux_w_per_m2" => net::<S>(row)[0],
        "enclosure_w" => match row.text("which") {
            "all" => net::<S>(row).into_iter().fold(S::zero(), |sum, heat| sum + heat),
            which => net::<S>(row)[which.parse::<usize>().unwrap()],
        },
        "zone_gas_k" => zones::<S>(row).0,
        "zone_heat_w" => zones::<S>(row).1,
        "mass_per_heat_kg_per_mj" => stream::<S>(row).mass_per_heat * S::c(1e6),
        "entering_g_per_s" => entering::<S>(row) * S::c(1e3),
        _ => return None,
    })
}
