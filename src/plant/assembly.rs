//! The installation made of its entries.

use heapless::Vec;

use crate::air::{AirPath, Blower, DUCT_CAP, Damper, DamperKind, Duct};
use crate::burner::{Burner, Conditions, Exhaust, Head};
use crate::combustion::AirNeed;
use crate::error::{Error, Result as CheckedResult};
use crate::gas::{self, Gas};
use crate::limits::Input;
use crate::orifice::{Coefficient, Drill, Jet};
use crate::plant::before_jet::BeforeJet;
use crate::plant::entries::{
    BlowerCurve, BlowerEntry, Entries, HeadEntry, JetSize, PortsEntry, SiteEntry, SitePressure,
};
use crate::plant::installation::Plant;
use crate::plant::refusal::{Place, Reason, Refusal};
use crate::quantity::{GaugePressure, Length};
use crate::site::Site;

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
    /// [`Reason::NoSuchDrill`] when the drill is in no list.
    pub fn diameter(&self) -> Result<(Length, Option<Drill>), Reason> {
        match self {
            JetSize::Bore(bore) => Ok((*bore, None)),
            JetSize::Drill(name) => {
                Drill::find(name).map(|drill| (drill.diameter(), Some(drill))).ok_or(Reason::NoSuchDrill)
            }
        }
    }
}

impl Plant {
    /// The installation that entries describe.
    ///
    /// # Errors
    ///
    /// [`Refusal`] of the entry that cannot be.
    pub fn new(entries: Entries) -> Result<Self, Refusal> {
        let site = entries.site.site().map_err(Place::key("site", "altitude").refusing())?;
        let mixture =
            gas::parse(&entries.gas.kind).map_err(|why| Place::key("gas", "kind").because(Reason::Gas(why)))?;
        mixture.known_to_burn().map_err(Place::key("gas", "kind").refusing())?;
        let gas = Gas::new(mixture);
        let entry = &entries.jet;
        let (diameter, drill) = entry.size.diameter().map_err(|why| Place::key("jet", "drill").because(why))?;
        let bore = entry.shape.with_diameter(diameter).map_err(|error| {
            let key = match (jet_key(&error), drill) {
                ("bore", Some(_)) => "drill",
                (key, _) => key,
            };
            Place::key("jet", key).refused(error)
        })?;
        if let Some(refused) = entry.measured.as_ref().and_then(|measured| measured.refuses(diameter)) {
            return Err(Place::key("jet", "measured").because(refused));
        }
        let before = BeforeJet::of(&entries, &gas)?;
        let air_temperature = entries.site.air_temperature;
        let conditions = Conditions {
            site,
            gas,
            gas_temperature: entries.gas.temperature,
            mixture_temperature: entries.head.map_or(air_temperature, |head| head.mixture_temperature),
            chamber_temperature: entries.chamber.map_or(air_temperature, |chamber| chamber.temperature),
        };
        let heads = entries.head.map_or(1, |head| head.count);
        if entry.count % heads != 0 {
            return Err(Place::key("jet", "count").because(Reason::JetsPerHead { jets: entry.count, heads }));
        }
        let mut made = Self {
            site,
            gas,
            air_need: AirNeed::new(&gas, &site),
            jet: Jet { bore, count: f64::from(entry.count / heads), coefficient: Coefficient::Model },
            drill,
            heads: f64::from(heads),
            burner: None,
            conditions,
            before,
            entries,
        };
        made.jet.coefficient = coefficient(&made).map_err(Place::key("jet", "measured_gauge").refusing())?;
        if let (Some(blower), Some(head)) = (&made.entries.blower, &made.entries.head) {
            made.burner = Some(burner(&made.entries, made.jet, blower, head)?);
        }
        Ok(made)
    }
}

/// The key of the jet that a refusal of its bore is about.
#[must_use]
pub const fn jet_key(error: &Error) -> &'static str {
    let (Error::OutOfRange { input, .. } | Error::NotFinite { input }) = error else { return "bore" };
    match input {
        Input::BoreLength => "bore_length",
        Input::ApproachRatio => "approach_diameter",
        Input::Roughness => "roughness",
        Input::EdgeRadius => "edge_radius",
        Input::ChamferDepth => "chamfer_depth",
        Input::ChamferAngle => "chamfer_angle",
        _ => "bore",
    }
}

fn coefficient(plant: &Plant) -> CheckedResult<Coefficient> {
    if let Some(measured) = &plant.entries.jet.measured {
        return Ok(measured.coefficient());
    }
    Ok(match (plant.entries.jet.measured_coefficient, plant.entries.jet.measured_gauge) {
        (None, _) => Coefficient::Model,
        (Some(value), None) => Coefficient::Measured(value),
        (Some(value), Some(gauge)) => {
            let conditions = plant.conditions_at(&plant.conditions, gauge)?;
            Coefficient::MeasuredAt {
                value,
                supply: plant.supply(&conditions, gauge, GaugePressure::from_pascals(0.0)),
            }
        }
    })
}

fn burner(entries: &Entries, jet: Jet, blower: &BlowerEntry, head: &HeadEntry) -> Result<Burner, Refusal> {
    let curve = match &blower.curve {
        BlowerCurve::Points(points) => {
            Blower::new(points, blower.density).map_err(Place::key("blower", "points").refusing())?
        }
        BlowerCurve::Ends { shut_off, free_delivery } => {
            Blower::from_two_numbers(*shut_off, *free_delivery, blower.density)
                .map_err(Place::key("blower", "shut_off").refusing())?
        }
    };
    let blower =
        curve.scaled(blower.density, blower.speed_ratio, 1.0).map_err(Place::key("blower", "now_speed").refusing())?;
    let mut ducts = Vec::<_, DUCT_CAP>::new();
    for (index, duct) in entries.ducts.iter().enumerate() {
        let made = Duct::new(duct.diameter, duct.length, duct.roughness, duct.fitting_loss);
        let _ = ducts.push(made.map_err(Place::entry("duct", index, "diameter").refusing())?);
    }
    let damper = match entries.damper {
        Some(damper) => {
            let made = match (damper.kind, damper.gap) {
                (DamperKind::Butterfly, Some(gap)) => Damper::disc(damper.diameter, gap),
                _ => Damper::new(damper.kind, damper.diameter),
            };
            let made = made.map_err(Place::key("damper", "diameter").refusing())?;
            Some(made.corrected(damper.correction).map_err(Place::key("damper", "correction").refusing())?)
        }
        None => None,
    };
    let made = match head.ports {
        PortsEntry::Round { count, diameter, open_fraction } => {
            Head::with_ports(f64::from(count), diameter, head.port_length, open_fraction)
        }
        PortsEntry::Slot { width, length } => Head::with_slot(width, length, head.port_length),
    };
    let exhaust = match entries.chamber {
        Some(chamber) => Some(
            Exhaust::new(chamber.exhaust_opening, chamber.exhaust_loss)
                .map_err(Place::key("chamber", "exhaust_opening").refusing())?,
        ),
        None => None,
    };
    Ok(Burner {
        jet,
        head: made.map_err(Place::key("head", "ports").refusing())?,
        head_count: f64::from(head.count),
        blower,
        path: AirPath::new(&ducts, damper).map_err(Place::section("duct").refusing())?,
        mixing_tube: head.mixing_tube_diameter,
        exhaust,
    })
}

#[cfg(test)]
mod tests {
    use super::jet_key;
    use crate::orifice::{BoreLength, BoreShape, Edge};
    use crate::quantity::{Angle, Length};

    #[test]
    fn each_measure_of_the_bore_is_refused_by_its_own_key() {
        let mm = Length::from_millimeters;
        let drilled = BoreShape::drilled(BoreLength::Fixed(mm(12.0)));
        let key = |shape: BoreShape, bore: f64| jet_key(&shape.with_diameter(mm(bore)).unwrap_err());
        let chamfer = |depth, degrees| Edge::Chamfered { depth: mm(depth), angle: Angle::from_degrees(degrees) };
        assert_eq!(key(drilled, 13.0), "bore");
        assert_eq!(key(BoreShape { length: BoreLength::Fixed(mm(66.0)), ..drilled }, 2.0), "bore_length");
        assert_eq!(key(BoreShape { approach: Some(mm(2.5)), ..drilled }, 2.0), "approach_diameter");
        assert_eq!(key(BoreShape { roughness: mm(0.6), ..drilled }, 2.0), "roughness");
        assert_eq!(key(BoreShape { edge: Edge::Rounded { radius: mm(21.0) }, ..drilled }, 2.0), "edge_radius");
        assert_eq!(key(BoreShape { edge: chamfer(21.0, 90.0), ..drilled }, 2.0), "chamfer_depth");
        assert_eq!(key(BoreShape { edge: chamfer(1.0, 181.0), ..drilled }, 2.0), "chamfer_angle");
    }
}
