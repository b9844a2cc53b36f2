//! What values must be to each other, beyond which keys go together.

use super::Description;
use super::row::{At, Breach, Broken};
use crate::air::DamperKind;
use crate::furnace::Material;
use crate::limits::{self, Input};

type Checked = Result<(), Broken>;

fn refuse(key: &'static str, breach: Breach) -> Checked {
    Err(Broken { key, breach })
}

fn refuse_if(is_broken: bool, key: &'static str, breach: Breach) -> Checked {
    if is_broken { refuse(key, breach) } else { Ok(()) }
}

/// The bore over the tube before it; that of a drill is checked when the drill is looked up.
pub(super) fn approach(description: &Description, _: At) -> Checked {
    let Some(jet) = &description.jet else { return Ok(()) };
    let (Some(bore), Some(approach)) = (jet.bore, jet.approach_diameter) else { return Ok(()) };
    limits::check(Input::ApproachRatio, bore.meters() / approach.meters())
        .map_or_else(|error| refuse("approach_diameter", Breach::Range(error)), |_| Ok(()))
}

/// The wheel's speed now, over that of the curve.
pub(super) fn speed_ratio(description: &Description, _: At) -> Checked {
    let Some(blower) = &description.blower else { return Ok(()) };
    let (Some(speed), Some(now)) = (blower.speed, blower.now_speed) else { return Ok(()) };
    limits::check(Input::SpeedRatio, now.turns_per_second() / speed.turns_per_second())
        .map_or_else(|error| refuse("now_speed", Breach::Range(error)), |_| Ok(()))
}

/// An efficiency where the points give the power.
pub(super) fn power_twice(description: &Description, _: At) -> Checked {
    let Some(blower) = &description.blower else { return Ok(()) };
    let has_power = blower.points.iter().any(|point| point.power.is_some());
    refuse_if(has_power && blower.efficiency.is_some(), "efficiency", Breach::PointsTellIt)
}

/// The gap of a damper that is a disc.
pub(super) fn gap_of_a_disc(description: &Description, _: At) -> Checked {
    const WORDS: &[(&str, &[&str])] = &[("butterfly", &["gap"])];
    let Some(damper) = &description.damper else { return Ok(()) };
    let is_disc = damper.kind.is_none_or(|kind| kind == DamperKind::Butterfly);
    refuse_if(damper.gap.is_some() && !is_disc, "gap", Breach::WordRefuses { key: "kind", words: WORDS })
}

/// Two neighbors of a list, the second at this place.
fn neighbors<T>(list: &[T], at: usize) -> Option<(&T, &T)> {
    Some((list.get(at.checked_sub(1)?)?, list.get(at)?))
}

/// A point of the blower's curve and the one before it.
pub(super) fn blower_point(description: &Description, at: At) -> Checked {
    let points = description.blower.as_ref().map_or(&[][..], |blower| &blower.points);
    let Some((last, point)) = neighbors(points, at[1]) else { return Ok(()) };
    refuse_if(point.flow <= last.flow, "flow", Breach::MustRise)?;
    refuse_if(point.power.is_some() != last.power.is_some(), "power", Breach::EveryPoint)
}

/// A point of the regulator's droop and the one before it.
pub(super) fn droop_point(description: &Description, at: At) -> Checked {
    let points = description.regulator.as_ref().map_or(&[][..], |regulator| &regulator.points[..]);
    let Some((last, point)) = neighbors(points, at[1]) else {
        let flows = points.first().and_then(|first| first.flow).is_some_and(|flow| flow.kilograms_per_second() > 0.0);
        return refuse_if(flows, "flow", Breach::FirstFlows);
    };
    refuse_if(point.flow <= last.flow, "flow", Breach::MustRise)?;
    refuse_if(point.gauge > last.gauge, "gauge", Breach::MustNotRise)
}

/// A setting's name is its own.
pub(super) fn own_name(description: &Description, at: At) -> Checked {
    let Some(setting) = description.setting.get(at[0]) else { return Ok(()) };
    let is_taken = description.setting[..at[0]].iter().any(|other| other.name == setting.name);
    refuse_if(is_taken, "name", Breach::NameTwice)
}

/// A setting's use is its own.
pub(super) fn own_use(description: &Description, at: At) -> Checked {
    let Some(setting) = description.setting.get(at[0]).filter(|setting| setting.r#use.is_some()) else { return Ok(()) };
    let is_taken = description.setting[..at[0]].iter().any(|other| other.r#use == setting.r#use);
    refuse_if(is_taken, "use", Breach::UseTwice)
}

/// Gas left in a cylinder and what it holds.
pub(super) fn no_more_left_than_held(description: &Description, _: At) -> Checked {
    let Some(cylinder) = &description.cylinder else { return Ok(()) };
    refuse_if(cylinder.contents.is_some() && cylinder.contents > cylinder.capacity, "contents", Breach::MoreThanHeld)
}

/// The diameters of a line.
pub(super) fn outside_the_inside(description: &Description, _: At) -> Checked {
    let Some(line) = &description.line else { return Ok(()) };
    let is_inside = line.outside_diameter.is_some() && line.outside_diameter <= line.diameter;
    refuse_if(is_inside, "outside_diameter", Breach::NotOutside)
}

/// A layer's material is known, or has its own data.
pub(super) fn known_material(description: &Description, at: At) -> Checked {
    let Some(layer) = description.layer.get(at[0]) else { return Ok(()) };
    let name = layer.material.as_deref().unwrap_or_default();
    let is_unknown = layer.density.is_none() && Material::<f64>::named(name).is_none();
    refuse_if(is_unknown, "material", Breach::NoSuchMaterial)
}

/// Temperatures of the conductivity's points.
pub(super) fn conductivity_rises(description: &Description, at: At) -> Checked {
    let points = description.layer.get(at[0]).map_or(&[][..], |layer| &layer.conductivity[..]);
    let falls = neighbors(points, at[1]).is_some_and(|(last, point)| point.temperature <= last.temperature);
    refuse_if(falls, "temperature", Breach::MustRise)
}

/// Temperatures of the specific heat's points.
pub(super) fn specific_heat_rises(description: &Description, at: At) -> Checked {
    let points = description.layer.get(at[0]).map_or(&[][..], |layer| &layer.specific_heat[..]);
    let falls = neighbors(points, at[1]).is_some_and(|(last, point)| point.temperature <= last.temperature);
    refuse_if(falls, "temperature", Breach::MustRise)
}
