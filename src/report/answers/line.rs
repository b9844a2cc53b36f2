//! What a low-pressure gas pipe passes.

use std::format;
use std::prelude::rust_2024::*;
use std::vec;

use crate::quantity::{ActualVolumeFlow, GrossHeatRate, Length, MassFlow, NetHeatRate};
use crate::report::field::columns;
use crate::report::tree::{Member, Node, Section, Tree};
use crate::report::units::Shop;
use crate::report::warnings::WARNINGS;

/// A low-pressure gas pipe.
pub struct Pipe {
    /// What it passes, as the codes measure it.
    pub flow: ActualVolumeFlow,
    /// The same by mass.
    pub mass: MassFlow,
    /// The fire of it, gross.
    pub gross: GrossHeatRate,
    /// The fire of it, net.
    pub net: NetHeatRate,
    /// Whether it is enough for the heat asked.
    pub passes: Option<bool>,
    /// The least bore for that heat.
    pub least: Option<Length>,
}

/// The answer; its sentences in these units.
#[must_use]
pub fn tree(answer: &Pipe, shop: &Shop) -> Tree {
    let passes = format!(
        "It passes {} of gas, {}: a fire of {}.",
        shop.air(answer.flow),
        shop.gas(answer.mass),
        shop.heat(answer.gross, answer.net)
    );
    let verdict = match (answer.passes, answer.least) {
        (Some(true), Some(least)) => Some(format!("That is enough; {} inside would do.", shop.length(least))),
        (Some(_), Some(least)) => Some(format!("NOT ENOUGH: the fire wants {} inside.", shop.length(least))),
        (Some(_), None) => Some("NOT ENOUGH, and no pipe in range would do.".into()),
        _ => None,
    };
    let by = "By the low-pressure formula of the fuel-gas codes. Local codes and a licensed gas fitter decide.";
    let mut nodes = vec![Node::fields([pipe(answer)]), Node::Line(passes)];
    nodes.extend(verdict.map(Node::Line));
    nodes.push(Node::Line(by.into()));
    Tree { section: &ANSWER, csv: None, nodes }
}

/// The answer for programs.
pub const ANSWER: Section = Section {
    key: "",
    name: "jetwright line",
    words: "",
    about: "One object, by the low-pressure formula of the fuel-gas codes.",
    is_many: false,
    members: &[Member::Columns(PIPE), Member::Section(&WARNINGS)],
};

columns! {
    /// A low-pressure gas pipe.
    pub(crate) PIPE, pipe(answer: &Pipe);
    /// What the pipe passes, measured at 60 degF and 30 inches of mercury.
    code_flow_m3_per_s, "code flow", Flow, Programs => answer.flow.cubic_meters_per_second();
    mass_flow_kg_per_s, "mass flow", MassFlow, Programs => answer.mass.kilograms_per_second();
    heat_gross_w, "heat gross", HeatGross, Programs => answer.gross.watts();
    heat_net_w, "heat net", HeatNet, Programs => answer.net.watts();
    /// Whether that is enough for the heat asked: true or false; null when none is asked.
    passes, "passes", Word, Programs => answer.passes;
    /// Inside diameter that is just enough for it; null when none is asked or none in range is.
    least_diameter_m, "least diameter", Length, Programs => answer.least.map(|diameter| diameter.meters());
}
