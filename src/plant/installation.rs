//! The entries of a burner file made into the rooms' own types.

use std::prelude::rust_2024::*;
use std::string::ToString;

use crate::air::{AirPath, Blower, Damper, Duct};
use crate::burner::{Burner, Conditions, Exhaust, Head};
use crate::error::Result as CheckedResult;
use crate::file::burner_file::BurnerFile;
use crate::file::error::FileError;
use crate::gas::{self, Gas};
use crate::orifice::{Coefficient, Drill, Jet};
use crate::plant::entries::{BlowerCurve, BlowerEntry, HeadEntry, JetSize, PortsEntry, SiteEntry, SitePressure};
use crate::plant::gauge_to_jet::BeforeJet;
use crate::prose::refusals::{advice, jet_key};
use crate::quantity::{GaugePressure, Length};
use crate::site::Site;

/// Everything the sheet computes with.
pub struct Assembled {
    /// The site.
    pub site: Site,
    /// The gas.
    pub gas: Gas,
    /// The jets of one head.
    pub jet: Jet,
    /// The drill that made them, if it was named.
    pub drill: Option<Drill>,
    /// How many heads.
    pub heads: f64,
    /// The whole burner, if blower and head are described.
    pub burner: Option<Burner>,
    /// What it runs under, with the chamber at work.
    pub conditions: Conditions,
    /// What lies before the jet.
    pub before: BeforeJet,
}

impl SiteEntry {
    /// The site.
    ///
    /// # Errors
    ///
    /// An input out of its range.
    pub fn site(&self) -> CheckedResult<Site> {
        let (temperature, humidity) = (self.air_temperature, self.humidity);
        match self.pressure {
            SitePressure::Altitude(altitude) => Site::at_altitude(altitude, temperature, humidity),
            SitePressure::Station(pressure) => Site::at_station_pressure(pressure, temperature, humidity),
            SitePressure::Forecast { sea_level, altitude } => {
                Site::at_forecast(sea_level, altitude, temperature, humidity)
            }
        }
    }
}

impl JetSize {
    /// The bore's diameter, and the drill if one was named.
    ///
    /// # Errors
    ///
    /// What is accepted, when the drill is not in any list.
    pub fn diameter(&self) -> Result<(Length, Option<Drill>), &'static str> {
        match self {
            JetSize::Bore(bore) => Ok((*bore, None)),
            JetSize::Drill(name) => Drill::find(name).map(|drill| (drill.diameter(), Some(drill))).ok_or(
                "not a drill; accepted are \"number 80\" to \"number 1\", \"letter A\" to \"letter Z\", \"1/64 in\" to \
                 \"1/2 in\", metric sizes like \"1.8 mm\" (0.3 to 3 mm by 0.05, to 10 mm by 0.1) and tips like \"tip 0.9 mm\"",
            ),
        }
    }
}

/// Makes the rooms' types of a burner file.
///
/// # Errors
///
/// [`FileError`] naming the field that a room refuses.
pub fn assemble(file: &BurnerFile) -> Result<Assembled, FileError> {
    let refuse = |field: &'static str| move |error: crate::Error| file.refuse(field, error);
    let site = file.entries.site.site().map_err(refuse("site.altitude"))?;
    let mixture = gas::parse(&file.entries.gas.kind).map_err(|error| file.refuse("gas.kind", error))?;
    mixture.known_to_burn().map_err(refuse("gas.kind"))?;
    let gas = Gas::new(mixture);
    let (diameter, drill) = file.entries.jet.size.diameter().map_err(|accepted| file.refuse("jet.drill", accepted))?;
    let bore = file.entries.jet.shape.with_diameter(diameter).map_err(|error| {
        let key = match (jet_key(&error), drill) {
            ("bore", Some(_)) => "drill",
            (key, _) => key,
        };
        file.refuse(&("jet.".to_string() + key), advice(&error))
    })?;
    if let Some(refused) = file.entries.jet.measured.as_ref().and_then(|measured| measured.refuses(diameter)) {
        return Err(file.refuse("jet.measured", crate::prose::refusals::reason_words(&refused)));
    }
    let count = f64::from(file.entries.jet.count);
    let before = BeforeJet::of(file, &gas)?;
    let jet = Jet { bore, count, coefficient: Coefficient::Model };
    let air_temperature = file.entries.site.air_temperature;
    let conditions = Conditions {
        site,
        gas,
        gas_temperature: file.entries.gas.temperature,
        mixture_temperature: file.entries.head.map_or(air_temperature, |head| head.mixture_temperature),
        chamber_temperature: file.entries.chamber.map_or(air_temperature, |chamber| chamber.temperature),
    };
    let heads = file.entries.head.map_or(1.0, |head| f64::from(head.count));
    let mut made = Assembled { site, gas, jet, drill, heads, burner: None, conditions, before };
    made.jet.coefficient = coefficient(file, &made).map_err(refuse("jet.measured_gauge"))?;
    if let (Some(blower), Some(head)) = (&file.entries.blower, &file.entries.head) {
        made.burner = Some(burner(file, made.jet, blower, head)?);
    }
    Ok(made)
}

fn coefficient(file: &BurnerFile, made: &Assembled) -> CheckedResult<Coefficient> {
    if let Some(measured) = &file.entries.jet.measured {
        return Ok(measured.coefficient());
    }
    Ok(match (file.entries.jet.measured_coefficient, file.entries.jet.measured_gauge) {
        (None, _) => Coefficient::Model,
        (Some(value), None) => Coefficient::Measured(value),
        (Some(value), Some(gauge)) => {
            let conditions = made.conditions_at(&made.conditions, gauge)?;
            Coefficient::MeasuredAt { value, supply: made.supply(&conditions, gauge, GaugePressure::from_pascals(0.0)) }
        }
    })
}

fn burner(file: &BurnerFile, jet: Jet, blower: &BlowerEntry, head: &HeadEntry) -> Result<Burner, FileError> {
    let refuse = |field: &'static str| move |error: crate::Error| file.refuse(field, error);
    let curve = match &blower.curve {
        BlowerCurve::Points(points) => Blower::new(points, blower.density).map_err(refuse("blower.points"))?,
        BlowerCurve::Ends { shut_off, free_delivery } => {
            Blower::from_two_numbers(*shut_off, *free_delivery, blower.density).map_err(refuse("blower.shut_off"))?
        }
    };
    let blower = curve.scaled(blower.density, blower.speed_ratio, 1.0).map_err(refuse("blower.now_speed"))?;
    let mut ducts = Vec::new();
    for (index, duct) in file.entries.ducts.iter().enumerate() {
        let made = Duct::new(duct.diameter, duct.length, duct.roughness, duct.fitting_loss);
        ducts.push(
            made.map_err(|error| file.refuse(&("duct[".to_string() + &(index + 1).to_string() + "].diameter"), error))?,
        );
    }
    let damper = match file.entries.damper {
        Some(damper) => Some(Damper::new(damper.kind, damper.diameter).map_err(refuse("damper.diameter"))?),
        None => None,
    };
    let made = match head.ports {
        PortsEntry::Round { count, diameter, open_fraction } => {
            Head::with_ports(f64::from(count), diameter, head.port_length, open_fraction)
        }
        PortsEntry::Slot { width, length } => Head::with_slot(width, length, head.port_length),
    };
    let exhaust = match file.entries.chamber {
        Some(chamber) => {
            Some(Exhaust::new(chamber.exhaust_area, chamber.exhaust_loss).map_err(refuse("chamber.exhaust_area"))?)
        }
        None => None,
    };
    Ok(Burner {
        jet,
        head: made.map_err(refuse("head.ports"))?,
        head_count: f64::from(head.count),
        blower,
        path: AirPath::new(&ducts, damper).map_err(refuse("duct"))?,
        mixing_tube: head.mixing_tube_diameter,
        exhaust,
    })
}
