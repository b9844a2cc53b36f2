//! `jetwright flame`.

use jetwright::Error;
use jetwright::combustion::{
    Basis, BurningRange, Character, Flame, FlueReading, Leaving, LimitStandard, Product, Reactants, Scale,
    air_ratio_from_oxygen, autoignition, burning_range, burning_velocity, burning_velocity_bias_holds,
};
use jetwright::plant::hazards::of_flame;
use jetwright::prose::fire::{character_words, scale_word, scale_words};
use jetwright::quantity::{Speed, Temperature};
use jetwright::report::rows::csv_of;
use jetwright::report::{Shop, table};
use serde_json::{Map, Value, json};

use crate::arguments::{FlameArguments, Format, Units};
use crate::command_error::CommandError;
use crate::output;
use crate::warned::Warned;

/// The flame, and what is left of it in the chamber.
struct Answer {
    ambient_pressure: f64,
    ratio: f64,
    mixture: Temperature,
    chamber: Temperature,
    flame: Flame,
    leaving: Leaving,
    dew_point: Option<Temperature>,
    range: BurningRange,
    autoignition: Option<Temperature>,
    velocity: Option<Speed>,
    velocity_is_near: bool,
    scale: Option<Scale>,
    warned: Warned,
}

/// The flame of a gas at an air ratio, and what is left of it in the chamber.
pub fn run(arguments: &FlameArguments) -> Result<String, CommandError> {
    let answer = answer(arguments)?;
    let shop = Shop { inch: arguments.shared.answer.units == Units::Inch };
    Ok(match arguments.shared.answer.format {
        Format::Csv => {
            answer.warned.beside(&shop);
            csv_of(&[answer.row()]).map_err(CommandError::table)?
        }
        Format::Json => {
            let mut row = answer.row();
            row.insert("products_wet".into(), shares(|product| answer.flame.products.wet(product)));
            row.insert("products_dry".into(), shares(|product| answer.flame.products.dry(product)));
            row.insert("warnings".into(), answer.warned.json());
            output::pretty(&Value::Object(row))
        }
        Format::Text => answer.text(shop) + &answer.warned.text(&shop),
    })
}

fn answer(arguments: &FlameArguments) -> Result<Answer, CommandError> {
    let shared = &arguments.shared;
    let (site, gas) = (shared.site()?, shared.gas()?);
    let mixture = arguments.mixture_temperature.unwrap_or(site.air_temperature());
    let chamber = arguments.chamber_temperature;
    let ratio_from = if arguments.oxygen.is_some() { "oxygen" } else { "air-ratio" };
    let refuse = |error| CommandError::option(ratio_from, error);
    let ratio = match arguments.oxygen {
        Some(oxygen) => {
            let reading = FlueReading { oxygen: oxygen.0, carbon_monoxide: 0.0, basis: Basis::Dry };
            air_ratio_from_oxygen(&gas, &site, reading).map_err(refuse)?
        }
        None => arguments.air_ratio.0,
    };
    let range = burning_range(&gas, &site, mixture, LimitStandard::Nfpa497);
    let range = range.map_err(|error| CommandError::option("gas", error))?;
    let reactants = Reactants::new(&gas, &site, ratio, mixture).map_err(refuse)?;
    let leaving = reactants.leaving(chamber).map_err(|error| CommandError::option("chamber-temperature", error))?;
    let velocity = match burning_velocity(&gas, &site, ratio, mixture) {
        Err(Error::NotMeasured { .. }) => None,
        found => Some(found.map_err(refuse)?),
    };
    Ok(Answer {
        ambient_pressure: site.ambient_pressure().pascals(),
        ratio,
        mixture,
        chamber,
        flame: reactants.flame().map_err(refuse)?,
        dew_point: leaving.products.dew_point(site.ambient_pressure()),
        range,
        autoignition: autoignition(gas.mixture()).map_err(refuse)?,
        velocity_is_near: burning_velocity_bias_holds(&gas, ratio),
        velocity,
        // Outside its range nothing is known of scale, and the rest of the answer stands.
        scale: leaving.products.scale(chamber).ok(),
        leaving,
        warned: Warned::of(&of_flame(&gas, &site, mixture, chamber, ratio)),
    })
}

fn shares(of: impl Fn(Product) -> f64) -> Value {
    Value::Object(Product::ALL.iter().map(|&product| (product.symbol().into(), json!(of(product)))).collect())
}

impl Answer {
    fn lights_itself(&self) -> bool {
        self.autoignition.is_some_and(|lights| self.chamber.kelvin() >= lights.kelvin())
    }

    /// Whether the flame is as hot as the chamber is said to be.
    fn reaches_chamber(&self) -> bool {
        self.flame.temperature.kelvin() >= self.chamber.kelvin()
    }

    /// What stays in the chamber, or that this fire never gets it there.
    fn stays(&self, shop: Shop) -> String {
        let chamber = shop.temperature(self.chamber);
        let (stays, loss) = (self.leaving.available_heat, &self.leaving.loss);
        if !self.reaches_chamber() {
            return format!(
                "It cannot get a chamber to {chamber}: its flame is colder, and takes {} of the net heat it brings\n\
                 out of one so hot.",
                Shop::share(-stays)
            );
        }
        format!(
            "Of the net heat {} stays in the chamber when the gases leave at {chamber}; {} leaves as their warmth\n\
             and {} unburnt.",
            Shop::share(stays),
            Shop::share(loss.sensible),
            Shop::share(loss.unburnt),
        )
    }

    fn row(&self) -> Map<String, Value> {
        let left = &self.leaving.products;
        let mut row = Map::new();
        for (key, value) in [
            ("ambient_pressure_pa", json!(self.ambient_pressure)),
            ("air_ratio", json!(self.ratio)),
            ("mixture_temperature_k", json!(self.mixture.kelvin())),
            ("adiabatic_flame_temperature_k", json!(self.flame.temperature.kelvin())),
            ("chamber_temperature_k", json!(self.chamber.kelvin())),
            ("flame_reaches_chamber", json!(self.reaches_chamber())),
            ("available_heat", json!(self.leaving.available_heat)),
            ("chamber_carbon_monoxide_dry", json!(left.dry(Product::CarbonMonoxide))),
            ("chamber_hydrogen_dry", json!(left.dry(Product::Hydrogen))),
            ("chamber_oxygen_dry", json!(left.dry(Product::Oxygen))),
            ("chamber_carbon_dioxide_dry", json!(left.dry(Product::CarbonDioxide))),
            ("flue_loss_sensible", json!(self.leaving.loss.sensible)),
            ("flue_loss_unburnt", json!(self.leaving.loss.unburnt)),
            ("preheat", json!(self.leaving.loss.preheat)),
            ("dew_point_k", json!(self.dew_point.map(Temperature::kelvin))),
            ("leanest_air_ratio", json!(self.range.leanest_air_ratio)),
            ("richest_air_ratio", json!(self.range.richest_air_ratio)),
            ("lower_limit", json!(self.range.lower_limit)),
            ("upper_limit", json!(self.range.upper_limit)),
            ("autoignition_temperature_k", json!(self.autoignition.map(Temperature::kelvin))),
            ("lights_itself_in_chamber", json!(self.lights_itself())),
            ("burning_velocity_m_per_s", json!(self.velocity.map(Speed::meters_per_second))),
            ("burning_velocity_bias_holds", json!(self.velocity.map(|_| self.velocity_is_near))),
            ("character", json!(character_words(Character::of(self.ratio)))),
            ("scale", json!(self.scale.map(|scale| scale_word(scale.tendency)))),
            ("scale_drive", json!(self.scale.map(|scale| scale.drive))),
        ] {
            row.insert(key.into(), value);
        }
        row
    }

    fn text(&self, shop: Shop) -> String {
        let percent = |share: f64| format!("{:.2}", 100.0 * share);
        let (flame, left) = (&self.flame.products, &self.leaving.products);
        let rows: Vec<Vec<String>> = [
            Product::CarbonDioxide,
            Product::CarbonMonoxide,
            Product::Water,
            Product::Hydrogen,
            Product::Oxygen,
            Product::Nitrogen,
            Product::NitricOxide,
        ]
        .into_iter()
        .map(|product| {
            let shares = [flame.wet(product), left.wet(product), left.dry(product)];
            std::iter::once(product.symbol().into()).chain(shares.map(percent)).collect()
        })
        .collect();
        let in_chamber = format!("in the chamber at {}, %", shop.temperature(self.chamber));
        let titles = ["", "in the flame, %", &in_chamber, "the same dry, %"];
        format!(
            "At air ratio {:.2} (1 = just enough) the fire is {} and its flame reaches {} if nothing cools it.\n\
             {}\n{}{}{}{}\
             Carbon monoxide as if all burnt to the end: real mixing leaves more. It kills; vent outdoors.\n",
            self.ratio,
            character_words(Character::of(self.ratio)),
            shop.temperature(self.flame.temperature),
            self.stays(shop),
            table(&titles, &[], &rows),
            self.burning(shop),
            self.water(shop),
            self.steel(shop),
        )
    }

    /// Where the mixture burns, and how fast.
    fn burning(&self, shop: Shop) -> String {
        let range = &self.range;
        let here = if range.burns(self.ratio) { "burns" } else { "does not burn" };
        let mut text = format!(
            "At {} it burns from air ratio {:.2} to {:.2}, {:.1} to {:.1} % gas in the mixture; this one {here}.\n",
            shop.temperature(self.mixture),
            range.richest_air_ratio,
            range.leanest_air_ratio,
            100.0 * range.upper_limit,
            100.0 * range.lower_limit,
        );
        if let Some(velocity) = self.velocity.map(Speed::meters_per_second).filter(|&velocity| velocity > 0.0) {
            let sure = if self.velocity_is_near {
                "within 15 %"
            } else {
                "indicative: so far from the fastest mixture,\nor thinned, it may be from a third of that to a third more"
            };
            text += &format!("The flame eats into it at {:.0} cm/s, {sure}.\n", 100.0 * velocity);
        }
        if let Some(lights) = self.autoignition {
            let lights = shop.temperature(lights);
            text += &if self.lights_itself() {
                format!("The chamber is above {lights}, where any mixture lights by itself.\n")
            } else {
                format!("The chamber is below {lights}, from where a mixture lights by itself.\n")
            };
        }
        text
    }

    /// Where water falls out.
    fn water(&self, shop: Shop) -> String {
        self.dew_point.map_or(String::new(), |dew| {
            format!("Water falls out of the gases where they cool under {}.\n", shop.temperature(dew))
        })
    }

    /// What the fire does to steel.
    fn steel(&self, shop: Shop) -> String {
        self.scale.map_or(String::new(), |scale| {
            let words = scale_words(scale.tendency);
            format!("Steel at {} {words}.\n", shop.temperature(self.chamber))
        })
    }
}
