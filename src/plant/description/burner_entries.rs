//! From what was said to what is computed with: typed, complete, and checked as a whole.

use heapless::Vec;

use super::choices::SameGauge;
use super::furnace_entries::furnace;
use super::rules::there;
use super::{
    BlowerGiven, CylinderGiven, Description, GasSupplied, HeadGiven, JetHole, LineGiven, RegulatorGiven, Setting, Site,
    Uncertainty,
};
use crate::air::{BlowerPoint, NAMEPLATE_SPREAD, Nameplate};
use crate::orifice::{BoreLength, BoreShape, Edge};
use crate::plant::entries::{
    AirAim, BlowerCurve, BlowerEntry, ChamberEntry, CylinderEntry, DamperEntry, DuctEntry, EdgeWord, Entries, GasAim,
    GasEntry, HeadEntry, JetEntry, JetSize, LightingEntry, LineEntry, PortsEntry, RegulatorEntry, SettingEntry,
    SiteEntry, SitePressure, SupplyEntry, UNKNOWN_DAMPER, UncertaintyEntry, usual_bore_length,
};
use crate::plant::refusal::Refusal;
use crate::quantity::{Number, Share, Temperature};

impl Entries {
    /// The entries of a description: complete, and sound between its fields.
    ///
    /// What [`jet.measured`](JetHole::measured) names is not read here.
    ///
    /// # Errors
    ///
    /// [`Refusal`] at the first section and key that is missing, out of range, or does not go with the others.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::plant::{Entries, description::Description};
    /// let refusal = Entries::of(&Description::default()).unwrap_err();
    /// assert_eq!((refusal.place.section, refusal.place.key), ("", "name"));
    /// ```
    pub fn of(said: &Description) -> Result<Self, Refusal> {
        said.check()?;
        let mut description = said.clone();
        description.take_defaults();
        let site = SiteEntry::of(&there(&description.site, "site", "")?)?;
        let air_ratio = there(&description.fire.air_ratio, "fire", "air_ratio")?.0;
        let mut settings = Vec::new();
        for given in &description.setting {
            // Both lists have room for the same number.
            let _ = settings.push(setting(given, air_ratio)?);
        }
        let mut ducts = Vec::new();
        for given in &description.duct {
            let _ = ducts.push(DuctEntry {
                diameter: there(&given.diameter, "duct", "diameter")?,
                length: there(&given.length, "duct", "length")?,
                roughness: there(&given.roughness, "duct", "roughness")?,
                fitting_loss: there(&given.fitting_loss, "duct", "fitting_loss")?.0,
            });
        }
        let heads = description.head.as_ref().and_then(|head| head.count).unwrap_or(1);
        Ok(Self {
            name: there(&description.title.name, "", "name")?,
            note: description.title.note.clone(),
            site,
            gas: gas(&there(&description.gas, "gas", "")?, site.air_temperature)?,
            jet: jet(&there(&description.jet, "jet", "")?, heads)?,
            blower: description.blower.as_ref().map(blower).transpose()?,
            ducts,
            damper: match &description.damper {
                Some(given) => Some(DamperEntry {
                    kind: given.kind.unwrap_or(UNKNOWN_DAMPER),
                    kind_is_known: given.kind.is_some(),
                    diameter: there(&given.diameter, "damper", "diameter")?,
                    gap: given.gap.map(|share| share.0),
                    correction: there(&given.correction, "damper", "correction")?.0,
                }),
                None => None,
            },
            head: description.head.as_ref().map(|given| head(given, site.air_temperature)).transpose()?,
            chamber: match &description.chamber {
                Some(given) => Some(ChamberEntry {
                    exhaust_opening: there(&given.exhaust_opening, "chamber", "exhaust_opening")?,
                    exhaust_loss: there(&given.exhaust_loss, "chamber", "exhaust_loss")?.0,
                    temperature: there(&given.temperature, "chamber", "temperature")?,
                }),
                None => None,
            },
            air_ratio,
            settings,
            lighting: description.lighting.as_ref().map(|given| LightingEntry {
                lights_at: given.lights_at,
                damper: given.damper.map(|share| share.0),
                chamber_volume: given.chamber_volume,
                glow_loss: given.glow_loss,
            }),
            furnace: furnace(&description)?,
            uncertainty: uncertainty(&description.uncertainty),
            supply: SupplyEntry {
                cylinder: description.cylinder.map(|given| cylinder(&given, site.air_temperature)).transpose()?,
                regulator: description.regulator.as_ref().map(regulator).transpose()?,
                line: description.line.as_ref().map(line).transpose()?,
            },
        })
    }
}

impl SiteEntry {
    /// The site as it was said, its defaults taken and the rules of [`Site::SECTION`] kept.
    ///
    /// # Errors
    ///
    /// [`Refusal`] at what is missing.
    pub fn of(given: &Site) -> Result<Self, Refusal> {
        let pressure = match (given.station_pressure, given.sea_level_pressure) {
            (Some(station), _) => SitePressure::Station(station),
            (None, sea_level) => {
                let altitude = there(&given.altitude, "site", "altitude")?;
                sea_level.map_or(SitePressure::Altitude(altitude), |sea_level| SitePressure::Forecast {
                    sea_level,
                    altitude,
                })
            }
        };
        Ok(Self {
            pressure,
            air_temperature: there(&given.air_temperature, "site", "air_temperature")?,
            humidity: there(&given.humidity, "site", "humidity")?.0,
        })
    }
}

fn gas(given: &GasSupplied, air_temperature: Temperature) -> Result<GasEntry, Refusal> {
    Ok(GasEntry {
        kind: there(&given.kind, "gas", "kind")?,
        temperature: given.temperature.unwrap_or(air_temperature),
        temperature_is_given: given.temperature.is_some(),
        price: given.price,
        currency: there(&given.currency, "gas", "currency")?,
    })
}

impl JetHole {
    /// How its size is given, the rules of [`JetHole::SECTION`] kept.
    ///
    /// # Errors
    ///
    /// [`Refusal`] where neither a drill nor a bore is there.
    pub fn size(&self) -> Result<JetSize, Refusal> {
        match &self.drill {
            Some(drill) => Ok(JetSize::Drill(drill.clone())),
            None => Ok(JetSize::Bore(there(&self.bore, "jet", "bore")?)),
        }
    }

    /// The shape of its bore, its defaults taken and the rules of [`JetHole::SECTION`] kept.
    ///
    /// # Errors
    ///
    /// [`Refusal`] at what is missing.
    pub fn shape(&self) -> Result<BoreShape, Refusal> {
        let word = there(&self.edge, "jet", "edge")?;
        Ok(BoreShape {
            length: BoreLength::Fixed(self.bore_length.unwrap_or(usual_bore_length(word))),
            edge: match word {
                EdgeWord::Sharp => Edge::Sharp,
                EdgeWord::Square => Edge::Square,
                EdgeWord::Chamfered => Edge::Chamfered {
                    depth: there(&self.chamfer_depth, "jet", "chamfer_depth")?,
                    angle: there(&self.chamfer_angle, "jet", "chamfer_angle")?,
                },
                EdgeWord::Rounded => Edge::Rounded { radius: there(&self.edge_radius, "jet", "edge_radius")? },
            },
            roughness: there(&self.roughness, "jet", "roughness")?,
            approach: self.approach_diameter,
        })
    }
}

fn jet(given: &JetHole, heads: u32) -> Result<JetEntry, Refusal> {
    let shape = given.shape()?;
    Ok(JetEntry {
        size: given.size()?,
        shape,
        count: given.count.unwrap_or(heads),
        measured_coefficient: given.measured_coefficient.map(|number| number.0),
        measured_gauge: given.measured_gauge,
        measured: None,
    })
}

fn blower(given: &BlowerGiven) -> Result<BlowerEntry, Refusal> {
    let density = there(&given.density, "blower", "density")?;
    let plate = match (given.shut_off, given.free_delivery, given.motor_power, given.impeller) {
        (Some(shut_off), None, ..) => Some(Nameplate::ShutOff(shut_off)),
        (None, Some(flow), ..) => Some(Nameplate::FreeDelivery(flow)),
        (None, None, Some(power), Some(impeller)) => Some(Nameplate::Motor { power, impeller }),
        _ => None,
    };
    let ends = plate.map(|plate| plate.ends(given.kind, given.speed, density));
    let curve = match given.shut_off.zip(given.free_delivery).or(ends) {
        Some((shut_off, free_delivery)) => BlowerCurve::Ends { shut_off, free_delivery },
        _ => {
            let mut points = Vec::new();
            for point in &given.points {
                let _ = points.push(BlowerPoint {
                    flow: there(&point.flow, "blower", "points.flow")?,
                    static_pressure: there(&point.pressure, "blower", "points.pressure")?,
                    shaft_power: point.power,
                });
            }
            BlowerCurve::Points(points)
        }
    };
    let speed_ratio = match (given.speed, given.now_speed) {
        (Some(speed), Some(now)) => now.turns_per_second() / speed.turns_per_second(),
        _ => 1.0,
    };
    Ok(BlowerEntry {
        curve,
        nameplate_spread: plate.map(|_| if given.kind.is_some() { NAMEPLATE_SPREAD.0 } else { NAMEPLATE_SPREAD.1 }),
        speed: given.speed,
        speed_ratio,
        density,
        efficiency: given.efficiency.map(|share| share.0),
    })
}

fn head(given: &HeadGiven, air_temperature: Temperature) -> Result<HeadEntry, Refusal> {
    let ports = match (given.slot_width, given.slot_length) {
        (Some(width), Some(length)) => PortsEntry::Slot { width, length },
        _ => PortsEntry::Round {
            count: there(&given.ports, "head", "ports")?,
            diameter: there(&given.port_diameter, "head", "port_diameter")?,
            open_fraction: there(&given.open_fraction, "head", "open_fraction")?.0,
        },
    };
    Ok(HeadEntry {
        ports,
        port_length: there(&given.port_length, "head", "port_length")?,
        count: there(&given.count, "head", "count")?,
        mixture_temperature: given.mixture_temperature.unwrap_or(air_temperature),
        mixing_tube_diameter: given.mixing_tube_diameter,
    })
}

fn setting(given: &Setting, air_ratio: f64) -> Result<SettingEntry, Refusal> {
    let gas = match given.heat {
        Some(heat) => GasAim::Heat(heat),
        None => GasAim::Gauge(there(&given.gauge, "setting", "gauge")?),
    };
    let air = match given.damper {
        Some(Share(opening)) => AirAim::Damper(opening),
        None => AirAim::AirRatio(given.air_ratio.map_or(air_ratio, |Number(ratio)| ratio)),
    };
    Ok(SettingEntry {
        name: there(&given.name, "setting", "name")?,
        gas,
        air,
        chamber_temperature: given.chamber_temperature,
        minutes: given.minutes,
        purpose: given.purpose.clone(),
        used_for: given.r#use,
    })
}

fn cylinder(given: &CylinderGiven, air_temperature: Temperature) -> Result<CylinderEntry, Refusal> {
    let capacity = there(&given.capacity, "cylinder", "capacity")?;
    Ok(CylinderEntry {
        capacity,
        diameter: there(&given.diameter, "cylinder", "diameter")?,
        tare: given.tare,
        count: there(&given.count, "cylinder", "count")?,
        contents: given.contents.unwrap_or(capacity),
        temperature: given.temperature.unwrap_or(air_temperature),
    })
}

fn regulator(given: &RegulatorGiven) -> Result<RegulatorEntry, Refusal> {
    let mut points = Vec::new();
    for point in &given.points {
        let flow = there(&point.flow, "regulator", "points.flow")?;
        let _ = points.push((flow, there(&point.gauge, "regulator", "points.gauge")?));
    }
    Ok(RegulatorEntry { minimum_inlet_pressure: given.minimum_inlet_pressure, points })
}

fn line(given: &LineGiven) -> Result<LineEntry, Refusal> {
    Ok(LineEntry {
        diameter: there(&given.diameter, "line", "diameter")?,
        length: there(&given.length, "line", "length")?,
        roughness: there(&given.roughness, "line", "roughness")?,
        fitting_loss: there(&given.fitting_loss, "line", "fitting_loss")?.0,
        valve_coefficient: given.valve_coefficient.map(|number| number.0),
        outside_diameter: given.outside_diameter,
    })
}

fn uncertainty(given: &Uncertainty) -> UncertaintyEntry {
    let share = |share: Option<Share>| share.map(|share| share.0);
    UncertaintyEntry {
        bore: given.bore,
        edge_rounding: given.edge_rounding,
        coefficient: share(given.coefficient),
        gauge_span: given.gauge_span,
        gauge_class: given.gauge_class,
        gauge_error: given.gauge_error,
        is_other_gauge: given.gauge_at_weighing == Some(SameGauge::Other),
        gas_temperature: given.gas_temperature,
        composition: share(given.composition),
        air_pressure: given.air_pressure,
        air_temperature: given.air_temperature,
        damper: share(given.damper),
        blower: share(given.blower),
        head: share(given.head),
        mixture_temperature: given.mixture_temperature,
        walls: share(given.walls),
    }
}
