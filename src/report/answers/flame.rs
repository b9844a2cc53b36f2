//! A flame, and what is left of it in the chamber.

use std::prelude::rust_2024::*;
use std::string::ToString;
use std::{format, vec};

use crate::burner::GLOW_CELSIUS;
use crate::combustion::{BurningRange, Character, Flame, Leaving, Product, Products, Scale};
use crate::prose::fire::{character_words, scale_word, scale_words};
use crate::quantity::{Speed, Temperature};
use crate::report::field::columns;
use crate::report::tree::{Member, Node, Row, Section, Tree};
use crate::report::units::{Kind, Shop};
use crate::report::warnings::WARNINGS;

/// The flame, and what is left of it in the chamber.
pub struct FlameAnswer {
    /// Air on the site, Pa.
    pub ambient_pressure: f64,
    /// Air supplied over air needed.
    pub ratio: f64,
    /// Gas and air as they come to the flame.
    pub mixture: Temperature,
    /// Where the products leave.
    pub chamber: Temperature,
    /// The flame.
    pub flame: Flame,
    /// What leaves the chamber.
    pub leaving: Leaving,
    /// Where water falls out of it.
    pub dew_point: Option<Temperature>,
    /// Limits of burning.
    pub range: BurningRange,
    /// Where the mixture lights by itself.
    pub autoignition: Option<Temperature>,
    /// Burning velocity.
    pub velocity: Option<Speed>,
    /// Whether that is near the fastest mixture.
    pub velocity_is_near: bool,
    /// What it does to steel; none outside the range of what is known.
    pub scale: Option<Scale>,
}

/// What the page tells of the products.
const TOLD: [Product; 7] = [
    Product::CarbonDioxide,
    Product::CarbonMonoxide,
    Product::Water,
    Product::Hydrogen,
    Product::Oxygen,
    Product::Nitrogen,
    Product::NitricOxide,
];

/// The answer; its sentences in these units.
#[must_use]
pub fn tree(answer: &FlameAnswer, shop: &Shop) -> Tree {
    let products = |of: fn(&Products, Product) -> f64| {
        let share = |product: &Product| (product.symbol().to_string(), of(&answer.flame.products, *product));
        Product::ALL.iter().map(share).collect::<Vec<_>>()
    };
    let shares = TOLD.iter().map(|&product| Row::of([share(&(answer, product))])).collect();
    let chamber = format!("in the chamber at {}", shop.temperature(answer.chamber));
    let mut nodes = vec![
        Node::fields([flame(answer), wet_and_dry(&[products(Products::wet), products(Products::dry)])]),
        Node::Line(format!(
            "At air ratio {:.2} (1 = just enough) the fire is {} and its flame reaches {} if nothing cools it.",
            answer.ratio,
            character_words(Character::of(answer.ratio)),
            shop.temperature(answer.flame.temperature),
        )),
        Node::Line(answer.stays(shop)),
        Node::view(shares, vec![("in_chamber", chamber)]),
    ];
    nodes.extend(answer.burning(shop).into_iter().map(Node::Line));
    nodes.extend(answer.dew_point.map(|dew| {
        Node::Line(format!("Water falls out of the gases where they cool under {}.", shop.temperature(dew)))
    }));
    nodes.extend(answer.scale.map(|scale| {
        Node::Line(format!("Steel at {} {}.", shop.temperature(answer.chamber), scale_words(scale.tendency)))
    }));
    nodes.push(Node::Line(
        "Carbon monoxide as if all burnt to the end: real mixing leaves more. It kills; vent outdoors.".into(),
    ));
    Tree { section: &ANSWER, csv: None, nodes }
}

impl FlameAnswer {
    fn left(&self) -> &Products {
        &self.leaving.products
    }

    fn lights_itself(&self) -> bool {
        self.autoignition.is_some_and(|lights| self.chamber.kelvin() >= lights.kelvin())
    }

    /// Whether the flame is as hot as the chamber is said to be.
    fn reaches_chamber(&self) -> bool {
        self.flame.temperature.kelvin() >= self.chamber.kelvin()
    }

    /// What stays in the chamber, or that this fire never gets it there.
    fn stays(&self, shop: &Shop) -> String {
        let chamber = shop.temperature(self.chamber);
        let (stays, loss) = (self.leaving.available_heat, &self.leaving.loss);
        if !self.reaches_chamber() {
            return format!(
                "It cannot get a chamber to {chamber}: its flame is colder, and takes {} of the net heat it brings \
                 out of one so hot.",
                Shop::share(-stays)
            );
        }
        format!(
            "Of the net heat {} stays in the chamber when the gases leave at {chamber}; {} leaves as their warmth \
             and {} unburnt.",
            Shop::share(stays),
            Shop::share(loss.sensible),
            Shop::share(loss.unburnt),
        )
    }

    /// Where the mixture burns, how fast, and whether the chamber lights it.
    fn burning(&self, shop: &Shop) -> Vec<String> {
        let range = &self.range;
        let here = if range.burns(self.ratio) { "burns" } else { "does not burn" };
        let mut said = vec![format!(
            "At {} it burns from air ratio {:.2} to {:.2}, {:.1} to {:.1} % gas in the mixture; this one {here}.",
            shop.temperature(self.mixture),
            range.richest_air_ratio,
            range.leanest_air_ratio,
            100.0 * range.upper_limit,
            100.0 * range.lower_limit,
        )];
        if let Some(velocity) = self.velocity.map(Speed::meters_per_second).filter(|&velocity| velocity > 0.0) {
            let sure = if self.velocity_is_near {
                "within 15 %"
            } else {
                "indicative: so far from the fastest mixture, or thinned, it may be from a third of that to a third more"
            };
            said.push(format!("The flame eats into it at {}, {sure}.", shop.text(Kind::FlameSpeed, velocity)));
        }
        if let Some(lights) = self.autoignition {
            let (lights, glow) = (shop.temperature(lights), shop.temperature(Temperature::from_celsius(GLOW_CELSIUS)));
            said.push(if self.chamber.celsius() >= GLOW_CELSIUS {
                format!("Where even the coldest wall is above {glow}, gas lights as it comes (EN 746-2 takes 750 °C).")
            } else if self.lights_itself() {
                format!(
                    "DANGER between {lights} and {glow} of the coldest wall: gas may light late, all that has gathered at \
                     once (EN 746-2 lets no flame go unwatched under 750 °C, nor within an hour above it)."
                )
            } else {
                format!("The chamber is below {lights}, from where a wall may light a mixture.")
            });
        }
        said
    }
}

columns! {
    /// Shares of the products.
    pub(crate) PRODUCTS, wet_and_dry(named: &[Vec<(String, f64)>; 2]);
    /// Shares by volume in the flame, by formula (`CO2`, `CO`, `H2O`, `H2`, `O2`, `N2`, `OH`, `O`, `H`, `NO`, `Ar`).
    products_wet, "products wet", Word, Programs => named[0].clone();
    /// The same without the water, as an analyzer reads.
    products_dry, "products dry", Word, Programs => named[1].clone();
}

columns! {
    /// A product in the flame and in the chamber.
    pub(crate) SHARES, share(row: &(&FlameAnswer, Product));
    product, "", Word, Words(0) => row.1.symbol();
    in_flame, "in the flame", SmallShare, Words(10) => row.0.flame.products.wet(row.1);
    in_chamber, "in the chamber", SmallShare, Words(20) => row.0.left().wet(row.1);
    in_chamber_dry, "the same dry", SmallShare, Words(30) => row.0.left().dry(row.1);
}

/// The answer for programs.
pub const ANSWER: Section = Section {
    key: "",
    name: "jetwright flame",
    words: "",
    about: "One object; CSV has no products.",
    is_many: false,
    members: &[Member::Columns(FLAME), Member::Columns(PRODUCTS), Member::Section(&WARNINGS)],
};

columns! {
    /// A flame, and what is left of it in the chamber.
    pub(crate) FLAME, flame(answer: &FlameAnswer);
    ambient_pressure_pa, "ambient pressure", LowPressure, Programs => answer.ambient_pressure;
    air_ratio, "air ratio", Number, Programs => answer.ratio;
    /// Temperature of gas and air as they come to the flame.
    mixture_temperature_k, "mixture temperature", Temperature, Programs => answer.mixture.kelvin();
    /// Temperature of the flame when nothing cools it, in chemical equilibrium.
    adiabatic_flame_temperature_k, "adiabatic flame temperature", Temperature, Programs => answer.flame.temperature.kelvin();
    /// Temperature at which the products leave the chamber.
    chamber_temperature_k, "chamber temperature", Temperature, Programs => answer.chamber.kelvin();
    /// Whether the flame is as hot as that: true, or false where this fire never gets the chamber there.
    flame_reaches_chamber, "flame reaches chamber", Word, Programs => answer.reaches_chamber();
    /// Share of the net heat that stays in the chamber when the products leave it at that temperature; below 0 where
    /// the flame does not reach it.
    available_heat, "available heat", Number, Programs => answer.leaving.available_heat;
    /// Carbon monoxide in the products at the chamber's temperature, by volume and without the water; real mixing
    /// leaves more.
    chamber_carbon_monoxide_dry, "chamber carbon monoxide dry", Number, Programs => answer.left().dry(Product::CarbonMonoxide);
    /// Hydrogen in the same.
    chamber_hydrogen_dry, "chamber hydrogen dry", Number, Programs => answer.left().dry(Product::Hydrogen);
    /// Oxygen in the same: what an analyzer should read.
    chamber_oxygen_dry, "chamber oxygen dry", Number, Programs => answer.left().dry(Product::Oxygen);
    /// Carbon dioxide in the same.
    chamber_carbon_dioxide_dry, "chamber carbon dioxide dry", Number, Programs => answer.left().dry(Product::CarbonDioxide);
    /// Share of the net heat that leaves as warmth of those products over 25 degC. With `available_heat` and
    /// `flue_loss_unburnt` it adds to 1 and `preheat`.
    flue_loss_sensible, "flue loss sensible", Number, Programs => answer.leaving.loss.sensible;
    /// Share of the net heat that leaves as carbon monoxide, hydrogen and what came apart.
    flue_loss_unburnt, "flue loss unburnt", Number, Programs => answer.leaving.loss.unburnt;
    /// Warmth of the mixture over 25 degC, as a share of the net heat; below 0 for a colder one.
    preheat, "preheat", Number, Programs => answer.leaving.loss.preheat;
    /// Temperature at which the first water falls out of those products; null for a gas without hydrogen in dry air.
    dew_point_k, "dew point", Temperature, Programs => answer.dew_point.map(Temperature::kelvin);
    /// Most air with which the mixture burns at its own temperature, limits of NFPA 497 moved by temperature.
    leanest_air_ratio, "leanest air ratio", Number, Programs => answer.range.leanest_air_ratio;
    /// Least air with which it does.
    richest_air_ratio, "richest air ratio", Number, Programs => answer.range.richest_air_ratio;
    /// Share of gas in the leanest mixture, by volume.
    lower_limit, "lower limit", Number, Programs => answer.range.lower_limit;
    /// Share of gas in the richest mixture, by volume.
    upper_limit, "upper limit", Number, Programs => answer.range.upper_limit;
    /// Temperature of a wall above which the gas may ignite, by IEC 60079-20-1; surely and at once only above 760 degC.
    autoignition_temperature_k, "autoignition temperature", Temperature, Programs => answer.autoignition.map(Temperature::kelvin);
    /// Whether the chamber is hotter than that, so that any mixture reacts: true or false.
    lights_itself_in_chamber, "lights itself in chamber", Word, Programs => answer.lights_itself();
    /// Speed at which a still flame eats into the mixture; 0 outside the limits, null for a gas that the formula was
    /// not measured for.
    burning_velocity_m_per_s, "burning velocity", FlameSpeed, Programs => answer.velocity.map(Speed::meters_per_second);
    /// Whether that speed is within 15 %: true for an air ratio from 0.85 to 1.2 and a gas of which at most 10 % is
    /// inert, else false, and it may be from a third of it to a third more; null as the one before.
    burning_velocity_bias_holds, "burning velocity bias holds", Word, Programs => answer.velocity.map(|_| answer.velocity_is_near);
    /// What the fire is called by its air ratio: `reducing`, `slightly reducing`, `near neutral`, `slightly oxidizing`,
    /// `oxidizing`.
    character, "character", Word, Programs => character_words(Character::of(answer.ratio));
    /// What the products do to steel at the chamber's temperature: `none`, `slow`, `fast`; null outside 850 to 1 700 K.
    scale, "scale", Word, Programs => answer.scale.map(|scale| scale_word(scale.tendency));
    /// CO2/CO in the products over that of iron and its oxide, above 1 scale grows; null outside 850 to 1 700 K.
    scale_drive, "scale drive", Number, Programs => answer.scale.map(|scale| scale.drive);
}
