//! The sections of a burner file about what lies before the jet: cylinder, regulator, line.

use std::prelude::rust_2024::*;

use heapless::Vec;

use crate::air::POINT_CAP;
use crate::file::burner_file::{optional, ranged};
use crate::file::document::Section;
use crate::file::error::FileError;
use crate::file::keys::{CYLINDER, DROOP_POINT, LINE, REGULATOR};
use crate::limits::Input;
use crate::plant::entries::{CylinderEntry, LineEntry, RegulatorEntry, SupplyEntry};
use crate::quantity::{GaugePressure, Length, Mass, MassFlow, Temperature};

/// Roughness of a rubber hose or drawn tube unless given: common practice, no source.
const HOSE_ROUGHNESS: Length = Length::from_meters(2.0e-6);

/// What lies before the jet.
///
/// # Errors
///
/// [`FileError`] at the first field that is wrong.
pub fn read_supply(root: &Section<'_>, air_temperature: Temperature) -> Result<SupplyEntry, FileError> {
    let cylinder = root.section("cylinder", CYLINDER)?;
    Ok(SupplyEntry {
        cylinder: cylinder.map(|section| read_cylinder(section, air_temperature)).transpose()?,
        regulator: root.section("regulator", REGULATOR)?.map(read_regulator).transpose()?,
        line: root.section("line", LINE)?.map(read_line).transpose()?,
    })
}

fn read_cylinder(section: Section<'_>, air_temperature: Temperature) -> Result<CylinderEntry, FileError> {
    let holds: Mass = section.required("holds").ranged(Input::CylinderCharge)?;
    let left: Option<Mass> = ranged(&section, "left", Input::CylinderCharge)?;
    if holds.kilograms() <= 0.0 {
        return Err(section.refuse("holds", "a cylinder that holds nothing, accepted is more than 0 kg"));
    }
    if left.is_some_and(|left| left.kilograms() <= 0.0) {
        return Err(section.refuse("left", "an empty cylinder gives no gas, accepted is more than 0 kg"));
    }
    if left.is_some_and(|left| left > holds) {
        return Err(section.refuse("left", "accepted is up to what the cylinder holds"));
    }
    let entry = CylinderEntry {
        holds,
        diameter: section.required("diameter").ranged(Input::CylinderDiameter)?,
        empty_mass: ranged(&section, "empty_mass", Input::CylinderTare)?,
        count: optional(&section, "count", |field| field.count(Input::CylinderCount))?.unwrap_or(1),
        left: left.unwrap_or(holds),
        temperature: ranged(&section, "temperature", Input::AirTemperature)?.unwrap_or(air_temperature),
    };
    section.finish()?;
    Ok(entry)
}

fn read_regulator(section: Section<'_>) -> Result<RegulatorEntry, FileError> {
    let needs = ranged(&section, "needs", Input::InletPressure)?;
    let mut points: Vec<(MassFlow, GaugePressure), POINT_CAP> = Vec::new();
    for point in section.sections("points", POINT_CAP, DROOP_POINT)? {
        let flow: MassFlow = point.required("flow").ranged(Input::GasDraw)?;
        let gauge: GaugePressure = point.required("gauge").ranged(Input::GaugePressure)?;
        match points.last() {
            None if flow.kilograms_per_second() > 0.0 => {
                return Err(point.refuse("flow", "the first point is without flow, accepted is 0 kg/h"));
            }
            Some(last) if flow <= last.0 => {
                return Err(point.refuse("flow", "the flow must rise from point to point"));
            }
            Some(last) if gauge > last.1 => {
                return Err(point.refuse("gauge", "the pressure must not rise with the flow"));
            }
            _ => drop(points.push((flow, gauge))),
        }
        point.finish()?;
    }
    if points.len() == 1 {
        return Err(section.refuse("points", "a droop wants 2 to 16 points"));
    }
    if points.is_empty() && needs.is_none() {
        return Err(section.refuse("needs", "accepted are needs, points, or both"));
    }
    section.finish()?;
    Ok(RegulatorEntry { needs, points })
}

fn read_line(section: Section<'_>) -> Result<LineEntry, FileError> {
    let diameter: Length = section.required("diameter").ranged(Input::PipeDiameter)?;
    let outside_diameter: Option<Length> = ranged(&section, "outside_diameter", Input::PipeDiameter)?;
    if outside_diameter.is_some_and(|outside| outside <= diameter) {
        return Err(section.refuse("outside_diameter", "accepted is more than the inside diameter"));
    }
    let entry = LineEntry {
        diameter,
        length: section.required("length").ranged(Input::PipeLength)?,
        roughness: ranged(&section, "roughness", Input::Roughness)?.unwrap_or(HOSE_ROUGHNESS),
        fitting_loss: optional(&section, "fitting_loss", |field| field.number(Input::FittingLoss))?.unwrap_or(0.0),
        valve_coefficient: optional(&section, "valve_coefficient", |field| field.number(Input::ValveCoefficient))?,
        outside_diameter,
    };
    section.finish()?;
    Ok(entry)
}
