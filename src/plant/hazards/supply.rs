//! Hazards of cylinder and line.

use super::list::{AT_WORK, Hazard, Hazards, at_setting};
use super::table::HazardKind;
use crate::fuel::{GAUGE_READS_HIGH, Regulator};
use crate::gas::Mixture;
use crate::plant::cylinder::{CylinderBlock, CylinderRow};
use crate::plant::refusal::Place;
use crate::plant::setting::Setting;
use crate::quantity::{Duration, GaugePressure, Temperature};

/// Below this the wall of a cylinder grows frost, Celsius.
const FROST: f64 = 0.0;

/// A liquid with less than this of its main gas boils apart as it is drawn. Against a depletion by Raoult's law with
/// both parts followed, a liquid of one composition keeps up for a third longer (half propane, half butane).
const ONE_GAS: f64 = 0.9;

/// Share of the reading that the line takes.
#[must_use]
pub fn line_share(setting: &Setting) -> f64 {
    share_taken(setting.gauge, setting.at_jet)
}

fn share_taken(gauge: GaugePressure, at_jet: GaugePressure) -> f64 {
    let gauge = gauge.pascals();
    if gauge > 0.0 { (gauge - at_jet.pascals()) / gauge } else { 0.0 }
}

/// A line that takes so much of the reading that the gauge misleads.
#[must_use]
pub fn of_line(gauge: GaugePressure, at_jet: GaugePressure, place: Place) -> Option<Hazard> {
    let share = share_taken(gauge, at_jet);
    (share > GAUGE_READS_HIGH).then(|| Hazard::new(HazardKind::GaugeReadsHigh, place).with(share, GAUGE_READS_HIGH))
}

/// A gauge reading that the regulator cannot give: above its lock-up pressure.
#[must_use]
pub fn of_lock_up(regulator: &Regulator, gauge: GaugePressure, place: Place) -> Option<Hazard> {
    let share = gauge.pascals() / regulator.lock_up().pascals();
    (share > 1.0).then(|| Hazard::new(HazardKind::BeyondRegulator, place).with(share, 1.0))
}

/// A liquid whose lighter gas boils off first.
#[must_use]
pub fn of_mixture(mixture: &Mixture) -> Option<Hazard> {
    let most = mixture.parts().map(|(_, fraction)| fraction).fold(0.0, f64::max);
    (most < ONE_GAS).then(|| Hazard::new(HazardKind::BlendBoilsApart, Place::section("cylinder")).with(most, ONE_GAS))
}

/// Everything the cylinders warn of.
pub fn of_cylinder(block: &CylinderBlock, mixture: &Mixture, found: &mut Hazards) {
    found.extend(of_mixture(mixture));
    let rows = (0..).zip(&block.rows).map(|(index, row)| (at_setting(index), row));
    found.extend(rows.chain(block.work.as_ref().map(|row| (AT_WORK, row))).filter_map(|(at, row)| of_draw(row, at)));
    let short = block.run.as_ref().and_then(|run| run.too_cold_after.or(run.empty_after));
    found.extend(of_short(short));
    let coldest = block.rows.iter().chain(&block.work).map(|row| row.end.temperature);
    let coldest = coldest.chain(block.run.as_ref().map(|run| run.liquid));
    found.extend(coldest.reduce(|least, next| if next < least { next } else { least }).and_then(of_frost));
}

/// A draw that gets the cylinder too cold for its regulator before its time is over.
#[must_use]
pub fn of_draw(row: &CylinderRow, place: Place) -> Option<Hazard> {
    let after = row.too_cold_after.filter(|after| *after < row.used)?;
    Some(Hazard::new(HazardKind::CannotKeepUp, place).with(after.seconds(), row.used.seconds()))
}

/// Cylinders that give no more gas after a time.
#[must_use]
pub fn of_short(after: Option<Duration>) -> Option<Hazard> {
    Some(Hazard::new(HazardKind::CylinderShort, Place::section("cylinder")).with(after?.seconds(), None))
}

/// Frost, by the coldest liquid.
#[must_use]
pub fn of_frost(liquid: Temperature) -> Option<Hazard> {
    let limit = Temperature::from_celsius(FROST);
    (liquid < limit)
        .then(|| Hazard::new(HazardKind::Frost, Place::section("cylinder")).with(liquid.kelvin(), limit.kelvin()))
}
