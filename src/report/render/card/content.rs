//! What the card says, printed in the units of its gauge and its page.

use std::format;
use std::prelude::rust_2024::*;

use crate::report::render::facts::Facts;
use crate::report::tree::Tree;
use crate::report::units::{Kind, Shop};

/// Most warnings on the card: more are not read.
pub const MOST_WARNINGS: usize = 7;
/// Most places told of one warning.
const MOST_PLACES: usize = 4;
/// Longest name of a setting, in characters.
const NAME: usize = 24;

/// Why there is no card: what there is no room for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CardRefused(
    /// The text that does not fit.
    pub String,
);

/// A block: LIGHT, WORK or KEEP.
#[derive(Clone, Debug)]
pub struct Block {
    /// Its word in capitals.
    pub word: String,
    /// The setting's name.
    pub name: String,
    /// The gauge reading without its unit, and in SI; none where no setting is shown.
    pub gauge: Option<(String, f64)>,
    /// The damper's opening in percent without its sign, and as a share; none without a damper.
    pub damper: Option<(String, f64)>,
    /// Whether the air is set by nothing.
    pub first_try: bool,
    /// Fire, gas and money.
    pub numbers: Vec<String>,
    /// What it is for.
    pub purpose: Option<String>,
    /// Why no setting is shown.
    pub missing: Option<String>,
}

/// A warning in short.
#[derive(Clone, Debug)]
pub struct Warning {
    /// `danger`, `warning`, `caution` or `notice`.
    pub severity: String,
    /// What it says.
    pub text: String,
    /// The same with its places only counted.
    pub brief: String,
}

/// Everything on a card.
#[derive(Clone, Debug)]
pub struct Content {
    /// The burner.
    pub name: String,
    /// Gas, jet, damper, site.
    pub identity: String,
    /// The four lines of FLAME OUT.
    pub flame_out: Vec<String>,
    /// What else is done when the blower stops or gas is smelled.
    pub also: String,
    /// LIGHT, WORK and KEEP.
    pub blocks: Vec<Block>,
    /// In which order damper and gas are moved.
    pub order: String,
    /// Steps of lighting.
    pub light: Vec<String>,
    /// Steps of stopping.
    pub stop: Vec<String>,
    /// Warnings, the worst first.
    pub warnings: Vec<Warning>,
    /// When it is void.
    pub void: String,
    /// What it was computed from, and what it is not.
    pub origin: String,
    /// Unit of its gauge.
    pub unit: String,
    /// What it was made of.
    pub facts: Facts,
    /// The units of its gauge and its page.
    pub shop: Shop,
}

impl Content {
    /// The card of a sheet's tree; `shop` with the unit of the gauge itself.
    #[must_use]
    pub fn of(tree: &Tree, shop: &Shop) -> Self {
        let facts = Facts::of(tree);
        let steps = |of: &str, key: &str| -> Vec<String> {
            let rows = facts.rows("card.procedures");
            let rows = rows.iter().filter(|row| row.word("procedure") == Some(of));
            rows.filter_map(|row| row.word(key).map(Into::into)).collect()
        };
        let gas = facts.word("gas.kind").unwrap_or_default();
        let (jet, site) =
            (facts.word("card.jet_words").unwrap_or_default(), facts.word("card.site_words").unwrap_or_default());
        let damper = facts.number("built.damper_diameter_m").map(|diameter| {
            format!("{} {}", facts.word("built.damper_kind").unwrap_or_default(), shop.text(Kind::Length, diameter))
        });
        let identity = [Some(gas.into()), Some(jet.into()), damper, Some(site.into())];
        Self {
            name: facts.word("name").unwrap_or_default().into(),
            identity: identity.into_iter().flatten().collect::<Vec<String>>().join(" · "),
            flame_out: steps("flame_out", "at_a_glance"),
            also: facts.word("card.also").unwrap_or_default().into(),
            blocks: facts.rows("card.blocks").iter().map(|row| block(row, shop, &facts)).collect(),
            order: steps("run", "text")[..2].join(" "),
            light: steps("light", "text"),
            stop: steps("stop", "text"),
            warnings: facts.rows("card.short_warnings").iter().take(MOST_WARNINGS).map(warning).collect(),
            void: format!("VOID WITH another jet, blower, damper, head or gas, or far from {site}."),
            origin:
                "Estimates from the burner's file; no flame safeguard. Local codes and a licensed gas fitter decide."
                    .into(),
            unit: shop.gauge_unit().into(),
            facts,
            shop: *shop,
        }
    }
}

fn block(row: &Facts, shop: &Shop, facts: &Facts) -> Block {
    let text = |kind: Kind, key: &str| row.number(key).map(|si| shop.text(kind, si));
    let money = row
        .number("shown_cost_per_hour")
        .map(|cost| format!("{} an hour", Shop::money(facts.word("gas.currency").unwrap_or_default(), cost)));
    let name = row.word("setting").unwrap_or_default();
    Block {
        word: row.word("block").unwrap_or_default().to_uppercase(),
        name: cut(name),
        gauge: row.number("shown_gauge_pressure_pa").map(|si| (shop.number(Kind::Gauge, si), si)),
        damper: row.number("shown_damper_opening").map(|share| (shop.number(Kind::Share, share), share)),
        first_try: row.is("first_try"),
        numbers: [text(Kind::HeatNet, "shown_heat_net_w"), text(Kind::MassFlow, "shown_mass_flow_kg_per_s"), money]
            .into_iter()
            .flatten()
            .collect(),
        purpose: row.word("purpose").map(Into::into),
        missing: row.word("missing").map(Into::into),
    }
}

fn warning(row: &Facts) -> Warning {
    let places = row.words("places");
    let more = places.len().saturating_sub(MOST_PLACES);
    let mut told = places[..places.len() - more].join(", ");
    if more > 0 {
        told += &format!(" and {more} more");
    }
    let said = row.word("text").unwrap_or_default();
    let text = if told.is_empty() { format!("{said}.") } else { format!("{told}: {said}.") };
    let brief = if places.len() > 1 { format!("{} times: {said}.", places.len()) } else { text.clone() };
    Warning { severity: row.word("severity").unwrap_or_default().into(), text, brief }
}

/// As much of a name as there is room for.
fn cut(name: &str) -> String {
    if name.chars().count() <= NAME {
        return name.into();
    }
    name.chars().take(NAME - 1).chain(['…']).collect()
}
