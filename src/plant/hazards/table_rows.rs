//! Hazards of a controller's setpoint table: each of its rows judged as a setting of the burner.

use super::lighting::of_setting_lighting;
use super::list::{Hazard, Hazards, at_setting};
use super::of_setting;
use crate::control::{HAZARD_CAP, ImageHazard};
use crate::plant::certainty::sure_settings;
use crate::plant::entries::{AirAim, GasAim, SettingEntry, shortened};
use crate::plant::evaluation::Sheet;
use crate::plant::lighting::setting_lighting;
use crate::plant::setting::set;
use crate::quantity::GaugePressure;

/// What the rows of a table warn of, each a gauge reading and a damper opening, and what the installation warns of
/// whatever is set. Rows are the settings of the answer, counted from 0.
#[must_use]
pub fn of_rows(sheet: &Sheet, rows: impl IntoIterator<Item = (GaugePressure, f64)>) -> Hazards {
    let mut found: Hazards = sheet.hazards.iter().filter(|hazard| hazard.setting().is_none()).copied().collect();
    for (index, (gauge, opening)) in rows.into_iter().enumerate() {
        let entry = SettingEntry {
            name: shortened("row"),
            gas: GasAim::Gauge(gauge),
            air: AirAim::Damper(opening),
            chamber_temperature: None,
            minutes: None,
            purpose: None,
            used_for: None,
        };
        let Ok(row) = set(&sheet.plant, &entry) else { continue };
        let place = at_setting(index);
        of_setting(&sheet.plant, &row, place, &mut found);
        let (Some(burner), Some(block)) = (&sheet.plant.burner, &sheet.lighting) else { continue };
        let sure = sure_settings(&sheet.plant, core::slice::from_ref(&row)).first().copied().flatten();
        if let Ok(lighting) = setting_lighting(burner, &sheet.plant, &row, sure.as_ref(), block.left, &block.known) {
            of_setting_lighting(&sheet.plant, &row, &lighting, place, &mut found);
        }
    }
    found
}

/// Hazards as the image of a table carries them, the worst first: one of a kind, at its row, or at every row when it is
/// met at several or belongs to none; the number is the one furthest from its limit.
#[must_use]
pub fn for_image(hazards: &Hazards) -> heapless::Vec<ImageHazard, HAZARD_CAP> {
    let beyond = |hazard: &Hazard| (hazard.number.unwrap_or(0.0) - hazard.limit.unwrap_or(0.0)).abs();
    let mut found = heapless::Vec::<ImageHazard, HAZARD_CAP>::new();
    for hazard in hazards {
        let kind = hazard.kind as u16;
        if found.iter().any(|known| known.kind == kind) {
            continue;
        }
        let same = || hazards.iter().filter(|other| other.kind == hazard.kind);
        let worst = same().fold(hazard, |worst, other| if beyond(other) > beyond(worst) { other } else { worst });
        let row = hazard.setting().filter(|_| same().count() == 1).and_then(|row| u8::try_from(row).ok());
        let _ = found.push(ImageHazard {
            kind,
            severity: hazard.severity().code(),
            row: row.unwrap_or(ImageHazard::EVERY_ROW),
            number: worst.number.unwrap_or(0.0) as f32,
        });
    }
    found
}
