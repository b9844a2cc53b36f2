//! The top of the sheet: site, gas and jet.

use std::format;
use std::prelude::rust_2024::*;
use std::string::ToString;

use crate::gas::CalorificValues;
use crate::orifice::{DrillList, Edge};
use crate::plant::Sheet;
use crate::plant::entries::{JetSize, SitePressure};
use crate::quantity::Length;
use crate::report::field::{Value, columns};
use crate::report::sheet::KEYS_VERSION;
use crate::report::tree::{Member, Node, Page, Section};
use crate::report::units::{Kind, Shop};

pub(crate) fn head(page: &mut Page, sheet: &Sheet, shop: &Shop) {
    page.push(Node::Line(sheet.plant.entries.name.as_str().into()));
    page.push(Node::fields([head_fields(sheet)]));
    page.push(Node::block(&SITE, std::vec![Node::fields([site(sheet)])]));
    page.push(Node::block(&GAS, std::vec![Node::fields([gas(sheet)])]));
    page.push(Node::block(&JET, std::vec![Node::fields([jet(sheet)])]));
    if let Some(note) = &sheet.plant.entries.note {
        page.said("", note.as_str());
    }
    let air = &sheet.plant.site;
    let place = match sheet.plant.entries.site.pressure {
        SitePressure::Altitude(altitude) | SitePressure::Forecast { altitude, .. } => shop.height(altitude) + ", ",
        SitePressure::Station(_) => String::new(),
    };
    let ambient = air.ambient_pressure();
    let pressure = shop.text(Kind::Ambient, ambient.pascals());
    let oxygen = air.oxygen_fraction() * ambient.pascals() / air.air_temperature().kelvin();
    let at_sea_level = 0.209_46 * 101_325.0 / 288.15;
    page.said(
        "Site",
        format!(
            "{place}{}, {} humidity, air pressure {pressure}, {} of the oxygen at sea level",
            shop.temperature(air.air_temperature()),
            Shop::share(air.humidity()),
            Shop::share(oxygen / at_sea_level),
        ),
    );
    let heavy = &sheet.plant.entries.gas;
    let comes = match sheet.plant.before.vapor {
        Some((_, liquid)) => format!("from a cylinder at {}, colder before the jet", shop.temperature(liquid)),
        None => format!("at {} before the jet", shop.temperature(heavy.temperature)),
    };
    page.said("Gas", format!("{} {comes}", heavy.kind));
    page.said("Jet", jet_words(sheet, shop));
}

fn jet_words(sheet: &Sheet, shop: &Shop) -> String {
    let bore = &sheet.plant.jet.bore;
    let edge = match sheet.plant.entries.jet.shape.edge {
        Edge::Sharp => "thin sharp edge",
        Edge::Square => "square edge",
        Edge::Chamfered { .. } => "chamfered edge",
        Edge::Rounded { .. } => "rounded edge",
    };
    let name = match sheet.plant.drill {
        Some(drill) if drill.list() == DrillList::Tips => drill.to_string(),
        Some(drill) => format!("DRILL {}", drill.to_string().to_uppercase()),
        None => "measured bore".into(),
    };
    let many = match (sheet.plant.jet.count, sheet.plant.heads) {
        (1.0, 1.0) => String::new(),
        (count, heads) => format!("{count:.0} to a head, {heads:.0} heads: "),
    };
    let length = Length::from_meters(bore.length_ratio() * bore.diameter().meters());
    let spread = sheet.settings.iter().map(|setting| setting.jet.coefficient_uncertainty).fold(0.0, f64::max);
    format!(
        "{many}{name} ({}), straight for {}, {edge}. Its coefficient is ±{:.0} %.",
        shop.bore(bore.diameter()),
        shop.length(length),
        100.0 * spread,
    )
}

/// Heating values and their kin, of the real gas at 15 degC.
fn values(sheet: &Sheet) -> CalorificValues {
    sheet.plant.gas.mixture().calorific_values(Default::default(), Default::default())
}

fn composition(sheet: &Sheet) -> Vec<(String, f64)> {
    sheet.plant.gas.mixture().parts().map(|(species, share)| (species.symbol().to_string(), share)).collect()
}

/// The gas before the jet; with several temperatures the coldest.
fn coldest(sheet: &Sheet) -> f64 {
    let temperatures = sheet.settings.iter().map(|setting| setting.gas_temperature.kelvin());
    temperatures.fold(f64::INFINITY, f64::min)
}

/// Sheet: site, for programs.
pub(crate) const SITE: Section = Section {
    key: "site",
    name: "sheet: site",
    words: "The air of the site",
    about: "",
    is_many: false,
    members: &[Member::Columns(SITE_FIELDS)],
};

columns! {
    /// The air of the site.
    pub(crate) SITE_FIELDS, site(sheet: &Sheet);
    ambient_pressure_pa, "ambient pressure", LowPressure, Programs => sheet.plant.site.ambient_pressure().pascals();
    /// Temperature of the air.
    air_temperature_k, "air temperature", Temperature, Programs => sheet.plant.site.air_temperature().kelvin();
    /// Relative humidity.
    humidity, "humidity", Number, Programs => sheet.plant.site.humidity();
    air_density_kg_per_m3, "air density", Density, Programs => sheet.plant.site.air_density().kilograms_per_cubic_meter();
    /// Mole fraction of oxygen in the moist air.
    oxygen_fraction, "oxygen fraction", Number, Programs => sheet.plant.site.oxygen_fraction();
}

/// Sheet: gas, for programs.
pub(crate) const GAS: Section = Section {
    key: "gas",
    name: "sheet: gas",
    words: "The gas",
    about: "",
    is_many: false,
    members: &[Member::Columns(GAS_FIELDS)],
};

columns! {
    /// The gas.
    pub(crate) GAS_FIELDS, gas(sheet: &Sheet);
    kind, "kind", Word, Programs => &sheet.plant.entries.gas.kind;
    /// Mole fractions, an object with the symbol of a species as each key.
    composition, "composition", Word, Programs => composition(sheet);
    /// Temperature of the gas before the jet.
    gas_temperature_k, "gas temperature", Temperature, Programs => coldest(sheet);
    /// Gross heating value of the real gas, burnt at 15 degC (ISO 6976).
    heating_value_gross_j_per_kg, "heating value gross", HeatPerMass, Programs => values(sheet).gross_mass.joules_per_kilogram();
    /// Net heating value, the same way.
    heating_value_net_j_per_kg, "heating value net", HeatPerMass, Programs => values(sheet).net_mass.joules_per_kilogram();
    /// Density over that of dry air, both real, at 15 degC and 101 325 Pa.
    relative_density, "relative density", Number, Programs => values(sheet).relative_density;
    /// Gross Wobbe index at 15 degC and 101 325 Pa.
    wobbe_gross_j_per_m3, "wobbe gross j per", HeatPerVolume, Programs => values(sheet).wobbe_gross;
    air_stoichiometric_kg_per_kg, "air stoichiometric kg per", PerMass, Programs => sheet.plant.air_need.mass_ratio;
    /// Price of a kilogram, in the money of `currency`; null when the file has none.
    price_per_kg, "price per", Price, Programs => sheet.plant.entries.gas.price.map(|price| price.per_kilogram());
    /// Sign of the money.
    currency, "currency", Word, Programs => &sheet.plant.entries.gas.currency;
}

/// Sheet: jet, for programs.
pub(crate) const JET: Section = Section {
    key: "jet",
    name: "sheet: jet",
    words: "The jet",
    about: "",
    is_many: false,
    members: &[Member::Columns(JET_FIELDS)],
};

columns! {
    /// The jet.
    pub(crate) JET_FIELDS, jet(sheet: &Sheet);
    name, "name", Word, Programs => match &sheet.plant.entries.jet.size { JetSize::Drill(name) => Value::from(name.as_str()), JetSize::Bore(_) => "bore".into() };
    bore_m, "bore", Bore, Programs => sheet.plant.jet.bore.diameter().meters();
    /// Length of the straight bore.
    bore_length_m, "bore length", Length, Programs => sheet.plant.jet.bore.length_ratio() * sheet.plant.jet.bore.diameter().meters();
    /// Mouth of the bore: `sharp`, `square`, `chamfered` or `rounded`.
    edge, "edge", Word, Programs => match sheet.plant.entries.jet.shape.edge { Edge::Sharp => "sharp", Edge::Square => "square", Edge::Chamfered { .. } => "chamfered", Edge::Rounded { .. } => "rounded", };
    /// Jets of the burner, those of all heads together, a whole number.
    jets, "jets", Number, Programs => sheet.plant.entries.jet.count;
    /// Heads on the blower, a whole number; 1 when the file describes none.
    heads, "heads", Number, Programs => sheet.plant.heads;
}

columns! {
    /// What the sheet is of.
    pub(crate) HEAD, head_fields(sheet: &Sheet);
    /// Version of these keys, a whole number that rises when a key goes or changes its meaning.
    keys_version, "keys version", Count, Programs => KEYS_VERSION;
    name, "name", Word, Programs => &sheet.plant.entries.name;
    /// The remark of the file; null when it has none.
    note, "note", Word, Programs => sheet.plant.entries.note.as_ref();
}
