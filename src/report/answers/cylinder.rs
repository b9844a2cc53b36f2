//! A cylinder under draw.

use std::prelude::rust_2024::*;
use std::{format, vec};

use crate::plant::{CylinderRow, Store};
use crate::quantity::{GaugePressure, MassFlow};
use crate::report::field::columns;
use crate::report::tree::{Member, Node, Section, Tree};
use crate::report::units::Shop;
use crate::report::warnings::WARNINGS;

/// A cylinder under draw.
pub struct CylinderAnswer<'s> {
    /// Cylinders, the gas in them, and what they stand in.
    pub store: Store<'s>,
    /// The draw.
    pub flow: MassFlow,
    /// Pressure in them before it.
    pub pressure: GaugePressure,
    /// What they make of it.
    pub row: CylinderRow,
}

/// The answer; its sentences in these units.
#[must_use]
pub fn tree(answer: &CylinderAnswer<'_>, shop: &Shop) -> Tree {
    let mut nodes = vec![Node::fields([under_draw(answer)])];
    nodes.extend(said(answer, shop).into_iter().map(Node::Line));
    Tree { section: &ANSWER, csv: None, nodes }
}

fn said(answer: &CylinderAnswer<'_>, shop: &Shop) -> Vec<String> {
    let heat = |flow: MassFlow| {
        shop.heat(answer.store.gas.gross_heating_value().of(flow), answer.store.gas.net_heating_value().of(flow))
    };
    let amount = |flow: MassFlow| shop.gas(flow);
    let minutes = answer.row.used.minutes();
    let many =
        if answer.store.count == 1 { "The cylinder".into() } else { format!("The {} cylinders", answer.store.count) };
    let mut said = vec![format!(
        "{many}: {} left of {}, {} in it at {}. The regulator needs {}.",
        shop.mass(answer.store.charge.mass),
        shop.mass(answer.store.cylinder.capacity()),
        shop.gauge(answer.pressure),
        shop.temperature(answer.store.air),
        shop.gauge(answer.row.needs)
    )];
    said.push(format!("Drawn: {} ({}).", amount(answer.flow), heat(answer.flow)));
    let steady = format!("{} ({})", amount(answer.row.steady), heat(answer.row.steady));
    said.push(match answer.row.too_cold_after {
        None => format!("IT KEEPS UP till it is empty; at today's level it would hold {steady}, less as it empties."),
        Some(after) if after < answer.row.used => format!(
            "IT DOES NOT KEEP UP: too cold for the regulator after {:.0} min; at today's level it holds {steady}, less \
             as it empties{}.",
            after.minutes(),
            answer
                .row
                .cylinders_needed
                .map_or(String::new(), |count| format!(", {count} such cylinders would hold this"))
        ),
        Some(after) => format!(
            "It keeps up for {:.1} h, then it is too cold for the regulator; at today's level it holds {steady}, less \
             as it empties.",
            after.hours()
        ),
    });
    match answer.row.end.empty_after {
        Some(empty) => said.push(format!("EMPTY after {:.0} of the {minutes:.0} min.", empty.minutes())),
        None => {
            said.push(format!(
                "After {minutes:.0} min: {} left, the liquid at {}, {} in it.",
                shop.mass(answer.row.end.left),
                shop.temperature(answer.row.end.temperature),
                shop.gauge(answer.row.end.pressure.to_gauge(answer.store.ambient))
            ));
        }
    }
    if let (Some(lasts), Some(full)) = (answer.row.lasts, answer.row.full_lasts) {
        said.push(format!("Gas for {:.1} h, for {:.1} h when full.", lasts.hours(), full.hours()));
    }
    said.push(
        "An estimate within a tenth for a bare upright steel cylinder in still air. Never heat a cylinder with flame."
            .into(),
    );
    said
}

/// The answer for programs.
pub const ANSWER: Section = Section {
    key: "",
    name: "jetwright cylinder",
    words: "",
    about: "One object, for the draw and the minutes asked.",
    is_many: false,
    members: &[Member::Columns(UNDER_DRAW), Member::Section(&WARNINGS)],
};

columns! {
    /// A cylinder under draw.
    pub(crate) UNDER_DRAW, under_draw(answer: &CylinderAnswer<'_>);
    ambient_pressure_pa, "ambient pressure", LowPressure, Programs => answer.store.ambient.pascals();
    cylinders, "cylinders", Number, Programs => answer.store.count;
    capacity_kg, "capacity", Mass, Programs => answer.store.cylinder.capacity().kilograms();
    left_kg, "left", Mass, Programs => answer.store.charge.mass.kilograms();
    cylinder_gauge_pressure_pa, "cylinder gauge pressure", Gauge, Programs => answer.pressure.pascals();
    regulator_needs_pa, "regulator needs", LowPressure, Programs => answer.row.needs.pascals();
    mass_flow_kg_per_s, "mass flow", MassFlow, Programs => answer.flow.kilograms_per_second();
    heat_gross_w, "heat gross", HeatGross, Programs => answer.store.gas.gross_heating_value().of(answer.flow).watts();
    heat_net_w, "heat net", HeatNet, Programs => answer.store.gas.net_heating_value().of(answer.flow).watts();
    steady_draw_kg_per_s, "steady draw", MassFlow, Programs => answer.row.steady.kilograms_per_second();
    /// Heat of `steady_draw_kg_per_s` by its net heating value.
    steady_heat_net_w, "steady heat", HeatNet, Programs => answer.store.gas.net_heating_value().of(answer.row.steady).watts();
    keeps_up, "keeps up", Word, Programs => answer.row.keeps_up;
    cylinders_needed, "cylinders needed", Number, Programs => answer.row.cylinders_needed;
    too_cold_after_s, "too cold after", Time, Programs => answer.row.too_cold_after.map(|time| time.seconds());
    gas_lasts_s, "gas lasts", Time, Programs => answer.row.lasts.map(|time| time.seconds());
    full_lasts_s, "full lasts", Time, Programs => answer.row.full_lasts.map(|time| time.seconds());
    empty_after_s, "empty after", Time, Programs => answer.row.end.empty_after.map(|time| time.seconds());
    duration_s, "duration", Time, Programs => answer.row.used.seconds();
    /// Gas left in all cylinders after the minutes.
    end_left_kg, "end left", Mass, Programs => answer.row.end.left.kilograms();
    liquid_temperature_k, "liquid temperature", Temperature, Programs => answer.row.end.temperature.kelvin();
    /// Gauge pressure in them after the minutes.
    end_gauge_pressure_pa, "end gauge pressure", Gauge, Programs => answer.row.end.pressure.to_gauge(answer.store.ambient).pascals();
}
