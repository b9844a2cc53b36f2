//! The air a fire needs.

use std::format;
use std::prelude::rust_2024::*;
use std::vec;

use crate::combustion::AirNeed;
use crate::gas::Gas;
use crate::quantity::{ActualVolumeFlow, MassFlow};
use crate::report::field::columns;
use crate::report::tree::{Member, Node, Section, Tree};
use crate::report::units::Shop;
use crate::report::warnings::WARNINGS;
use crate::site::Site;

/// The air of a fire at an air ratio.
pub struct Air<'s> {
    /// The site.
    pub site: &'s Site,
    /// The gas.
    pub gas: &'s Gas,
    /// Air it needs.
    pub need: AirNeed,
    /// Air supplied over air needed.
    pub air_ratio: f64,
    /// Gas that gives the heat.
    pub gas_flow: MassFlow,
    /// Air that just burns it.
    pub exact: MassFlow,
    /// Air supplied.
    pub air: MassFlow,
    /// The same as the blower takes it in.
    pub flow: ActualVolumeFlow,
}

/// The answer; its sentences in these units.
#[must_use]
pub fn tree(answer: &Air<'_>, shop: &Shop) -> Tree {
    let (gas, flow) = (answer.gas, answer.gas_flow);
    let needs = format!(
        "{} at air ratio {} (1 = just enough) needs {} of air: {} as the blower takes it in here.",
        shop.heat(gas.gross_heating_value().of(flow), gas.net_heating_value().of(flow)),
        Shop::ratio(answer.air_ratio),
        shop.gas(answer.air),
        shop.air(answer.flow),
    );
    let burns = format!(
        "That burns {} of gas; one volume of gas takes {:.1} volumes of air to just burn.",
        shop.gas(flow),
        answer.need.volume_ratio,
    );
    let nodes = vec![Node::fields([air_needed(answer)]), Node::Line(needs), Node::Line(burns)];
    Tree { section: &ANSWER, csv: None, nodes }
}

/// The answer for programs.
pub const ANSWER: Section = Section {
    key: "",
    name: "jetwright air",
    words: "",
    about: "One object.",
    is_many: false,
    members: &[Member::Columns(AIR_NEEDED), Member::Section(&WARNINGS)],
};

columns! {
    /// The air of a fire.
    pub(crate) AIR_NEEDED, air_needed(answer: &Air<'_>);
    ambient_pressure_pa, "ambient pressure", LowPressure, Programs => answer.site.ambient_pressure().pascals();
    /// Density of the moist air on the site.
    air_density_kg_per_m3, "air density", Density, Programs => answer.site.air_density().kilograms_per_cubic_meter();
    /// Air supplied over air needed: 1 is just enough. Null in a setting without blower and head, without gas, or whose
    /// gas would blow back.
    air_ratio, "air ratio", Number, Programs => answer.air_ratio;
    mass_flow_kg_per_s, "mass flow", MassFlow, Programs => answer.gas_flow.kilograms_per_second();
    heat_gross_w, "heat gross", HeatGross, Programs => answer.gas.gross_heating_value().of(answer.gas_flow).watts();
    heat_net_w, "heat net", HeatNet, Programs => answer.gas.net_heating_value().of(answer.gas_flow).watts();
    air_stoichiometric_kg_per_s, "air stoichiometric", MassFlow, Programs => answer.exact.kilograms_per_second();
    /// Moist air supplied. Null in a setting without blower and head, or whose gas would blow back.
    air_kg_per_s, "air", MassFlow, Programs => answer.air.kilograms_per_second();
    /// The same air as the blower takes it in on the site. Null as `air_kg_per_s`.
    air_flow_m3_per_s, "air flow", Flow, Programs => answer.flow.cubic_meters_per_second();
    /// Volumes of moist air that just burn a volume of gas.
    air_stoichiometric_m3_per_m3, "air stoichiometric m3 per", PerVolume, Programs => answer.need.volume_ratio;
    /// Kilograms of moist air that just burn a kilogram of gas.
    air_stoichiometric_kg_per_kg, "air stoichiometric kg per", PerMass, Programs => answer.need.mass_ratio;
}
