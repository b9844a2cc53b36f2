//! The evening by the settings' own minutes, and what draws on the cylinders in it.

use std::format;
use std::prelude::rust_2024::*;

use crate::plant::cylinder::CylinderRow;
use crate::plant::evaluation::{Setting, Sheet};
use crate::plant::firing::{AIR_OFF, blow_words, gas_off_words, stand_words};
use crate::quantity::{Duration, Mass};
use crate::report::page::{heading, paragraph};
use crate::report::units::Shop;

impl Sheet {
    /// What draws on the cylinders: each setting, then the work's fire.
    pub fn draws(&self) -> impl Iterator<Item = (&Setting, &CylinderRow)> {
        let block = self.cylinder.as_ref();
        let work = self.furnace.as_ref().and_then(|block| block.work.as_ref()).and_then(|work| work.fire());
        let rows = block.map_or(&[][..], |block| &block.rows[..]).iter();
        self.settings.iter().zip(rows).chain(work.zip(block.and_then(|block| block.work.as_ref())))
    }

    /// Gas and money of all settings that have a time; none when no setting has one.
    #[must_use]
    pub fn evening(&self) -> Option<(Duration, Mass, Option<f64>)> {
        let timed: Vec<_> = self.settings.iter().filter(|setting| setting.gas_used.is_some()).collect();
        if timed.is_empty() {
            return None;
        }
        let seconds = timed.iter().filter_map(|setting| setting.entry.minutes).map(Duration::seconds).sum();
        let mass = timed.iter().filter_map(|setting| setting.gas_used).map(Mass::kilograms).sum();
        let cost = timed.iter().map(|setting| setting.cost).sum::<Option<f64>>();
        Some((Duration::from_seconds(seconds), Mass::from_kilograms(mass), cost))
    }
}

/// The evening; nothing where the furnace has a plan, or no setting a time.
pub(crate) fn tonight(page: &mut String, sheet: &Sheet, shop: &Shop) {
    let Some((_, mass, cost)) = sheet.evening() else { return };
    // One evening a sheet: the furnace's plan where there is one.
    if sheet.furnace.as_ref().is_some_and(|block| block.no_plan(&sheet.settings).is_none()) {
        return;
    }
    let currency = &sheet.file.entries.gas.currency;
    heading(page, "TONIGHT");
    let mut clock = Duration::from_seconds(0.0);
    paragraph(page, &format!("  {}", Shop::clock(clock)), &blow_words(&sheet.blow_through));
    clock = clock + sheet.blow_through.time;
    for setting in &sheet.settings {
        let (Some(minutes), Some(used)) = (setting.entry.minutes, setting.gas_used) else { continue };
        let purpose = setting.entry.purpose.as_ref().map_or(String::new(), |purpose| format!(", {purpose}"));
        let money = setting.cost.map_or(String::new(), |cost| format!(", {}", Shop::money(currency, cost)));
        let text = format!(
            "{}{purpose}: {} for {:.0} min, {} of gas{money}",
            setting.entry.name,
            stand_words(setting, shop),
            minutes.minutes(),
            shop.mass(used),
        );
        paragraph(page, &format!("  {}", Shop::clock(clock)), &text);
        clock = clock + minutes;
    }
    let money = cost.map_or(String::new(), |cost| format!(", {}", Shop::money(currency, cost)));
    let air_on = sheet.furnace.as_ref().map(|block| block.air_on);
    paragraph(page, &format!("  {}", Shop::clock(clock)), &gas_off_words(air_on));
    let end = air_on.map_or("  then".into(), |time| format!("  {}", Shop::clock(clock + time)));
    paragraph(page, &end, AIR_OFF);
    paragraph(page, "", &format!("It burns {} of gas{money}.", shop.mass(mass)));
}
