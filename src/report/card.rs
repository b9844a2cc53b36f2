//! The card and the procedures for programs: what the printed card is made of.

use std::prelude::rust_2024::*;
use std::{format, vec};

use crate::plant::entries::{SitePressure, Use};
use crate::plant::hazards::Hazard;
use crate::plant::procedures::{Procedure, Procedures, Step};
use crate::plant::work::THE_WORK;
use crate::plant::{Card, CardBlock, Fired, Setting, SettingAir, Sheet};
use crate::prose::card::{no_setting, short};
use crate::prose::hazards::number;
use crate::prose::procedures::{also, at_a_glance, words};
use crate::report::field::columns;
use crate::report::tree::{Member, Node, Row, Section};
use crate::report::units::{Kind, Shop};
use crate::report::warnings::printed;

/// Longest name of a setting on the card, in characters.
const NAME: usize = 24;

/// The card of a sheet, for programs.
pub(crate) fn card(sheet: &Sheet, shop: &Shop) -> Node {
    let card = sheet.card();
    let numbers = sheet.procedures(&card);
    let row = CardRow { sheet, card: &card, numbers: &numbers, shop };
    let blocks = card.blocks.iter().map(|block| Row::of([card_block(&BlockRow { sheet, block })]));
    let steps = Procedure::ALL.iter().flat_map(|&of| {
        let steps = numbers.steps(of);
        let numbered = steps.iter().zip(1_usize..).map(|(&step, at)| StepRow { of, at, step, numbers: &numbers });
        numbered.map(|row| Row::of([procedure_step(&row)])).collect::<Vec<_>>()
    });
    let warnings = card_warnings(sheet, &card, shop);
    let warnings = warnings.iter().map(|row| Row::of([card_warning(row)]));
    Node::block(
        &CARD,
        vec![
            Node::fields([card_fields(&row)]),
            Node::rows(&BLOCKS, blocks.collect()),
            Node::rows(&STEPS, steps.collect()),
            Node::rows(&SHORT_WARNINGS, warnings.collect()),
        ],
    )
}

/// The card's own fields.
pub(crate) struct CardRow<'s> {
    sheet: &'s Sheet,
    card: &'s Card,
    numbers: &'s Procedures,
    shop: &'s Shop,
}

impl CardRow<'_> {
    fn site(&self) -> String {
        match self.sheet.plant.entries.site.pressure {
            SitePressure::Altitude(altitude) | SitePressure::Forecast { altitude, .. } => self.shop.height(altitude),
            SitePressure::Station(pressure) => self.shop.text(Kind::Ambient, pressure.pascals()),
        }
    }

    fn drill(&self) -> String {
        match self.sheet.plant.drill {
            Some(drill) => format!("drill {drill}"),
            None => self.shop.bore(self.sheet.plant.jet.bore.diameter()),
        }
    }
}

/// A block of the card.
pub(crate) struct BlockRow<'s> {
    sheet: &'s Sheet,
    block: &'s CardBlock,
}

impl BlockRow<'_> {
    fn fire(&self) -> Option<&Setting> {
        self.block.fired.and_then(|fired| self.sheet.fire(fired)).filter(|_| self.block.refused.is_none())
    }

    fn air(&self) -> Option<&SettingAir> {
        self.fire().and_then(|fire| fire.air.as_ref())
    }

    fn use_word(&self) -> &'static str {
        use_word(self.block.of)
    }

    fn name(&self) -> Option<&str> {
        self.block.fired.and_then(|fired| self.sheet.fire(fired)).map(|fire| fire.entry.name.as_str())
    }

    fn verdict(&self) -> Option<&'static str> {
        let Some(Fired::Setting(index)) = self.block.fired else { return None };
        Some(self.sheet.lighting.as_ref()?.settings.get(index)?.verdict.key())
    }
}

fn use_word(of: Use) -> &'static str {
    Use::WORDS.iter().find(|(_, one)| *one == of).map_or("", |(word, _)| word)
}

/// A step of a procedure.
pub(crate) struct StepRow<'n> {
    of: Procedure,
    at: usize,
    step: Step,
    numbers: &'n Procedures,
}

/// A warning in short.
pub(crate) struct ShortRow {
    severity: &'static str,
    places: Vec<String>,
    text: &'static str,
}

/// As much of a name as the card has room for.
fn cut(name: &str) -> String {
    if name.chars().count() <= NAME {
        return name.into();
    }
    name.chars().take(NAME - 1).chain(['…']).collect()
}

/// The hazards in short: those of one kind together, a setting called by its block where it fills one.
fn card_warnings(sheet: &Sheet, card: &Card, shop: &Shop) -> Vec<ShortRow> {
    let print = |value, measure| printed(shop, value, measure);
    let place = |hazard: &Hazard| {
        let fired = if hazard.at_work() { Some(Fired::Work) } else { hazard.setting().map(Fired::Setting) };
        let block = fired.and_then(|fired| card.blocks.iter().find(|block| block.fired == Some(fired)));
        let name = match (block, fired) {
            (Some(block), _) => Some(use_word(block.of).to_uppercase()),
            (None, Some(Fired::Work)) => Some(THE_WORK.into()),
            (None, Some(Fired::Setting(index))) => Some(cut(&sheet.settings[index].entry.name)),
            (None, None) => None,
        };
        match (name, number(hazard, &print)) {
            (Some(name), Some(number)) => Some(format!("{name} {number}")),
            (name, number) => name.or(number),
        }
    };
    let mut rows: Vec<ShortRow> = vec![];
    for hazard in &sheet.hazards {
        let text = short(hazard.kind);
        match rows.iter_mut().find(|row| row.text == text) {
            Some(row) => row.places.extend(place(hazard)),
            None => rows.push(ShortRow {
                severity: hazard.severity().key(),
                places: place(hazard).into_iter().collect(),
                text,
            }),
        }
    }
    rows
}

/// Sheet: card, for programs.
pub(crate) const CARD: Section = Section {
    key: "card",
    name: "sheet: card",
    words: "The card beside the furnace",
    about: "Its words are in the units of the page; every number in them stands elsewhere in SI.",
    is_many: false,
    members: &[
        Member::Columns(CARD_FIELDS),
        Member::Section(&BLOCKS),
        Member::Section(&STEPS),
        Member::Section(&SHORT_WARNINGS),
    ],
};

columns! {
    /// What the card says once.
    pub(crate) CARD_FIELDS, card_fields(row: &CardRow<'_>);
    /// The shortest time of all settings, blower on or stopped, until unlit gas makes the chamber's air explosive, with
    /// the gas at the high end of its uncertainty; null without the chamber's volume.
    explosive_after_s, "explosive after", Time, Programs => row.card.charge_after.map(|time| time.seconds());
    /// How long the chamber is purged.
    purge_s, "purge", Time, Programs => row.numbers.purge.seconds();
    /// Whether the chamber's volume and a flow of air stand behind that.
    purge_is_known, "purge is known", Word, Programs => row.numbers.purge_is_known;
    /// What else is done at FLAME OUT, in a line.
    also, "also", Word, Programs => also(row.numbers);
    /// The jet in words, as it is asked for in a shop.
    jet_words, "jet", Word, Programs => row.drill();
    /// Altitude or air pressure in words.
    site_words, "site", Word, Programs => row.site();
}

/// Sheet: blocks of the card, for programs.
pub(crate) const BLOCKS: Section = Section {
    key: "blocks",
    name: "sheet: card blocks",
    words: "LIGHT, WORK and KEEP, an array of three",
    about: "Its numbers are null where no setting is fit to be shown.",
    is_many: true,
    members: &[Member::Columns(BLOCK)],
};

columns! {
    /// A block of the card.
    pub(crate) BLOCK, card_block(row: &BlockRow<'_>);
    /// Which block: `light`, `work` or `keep`.
    block, "block", Word, Programs => row.use_word();
    setting, "setting", Word, Programs => row.name();
    /// Why no setting is shown, and what to write for one; null where one is.
    missing, "missing", Word, Programs => row.block.refused.map(|why| no_setting(why, row.use_word()));
    /// What it does in a cold chamber: `lights`, `first_try` or `will_not_light`; null of the work's own fire, and
    /// without blower and head.
    verdict, "verdict", Word, Programs => row.verdict();
    /// Whether nobody has seen it light.
    first_try, "first try", Word, Programs => row.block.first_try;
    /// Its gauge; null where no setting is shown.
    shown_gauge_pressure_pa, "gauge", Gauge, Programs => row.fire().map(|fire| fire.gauge.pascals());
    /// Its damper; null where no setting is shown, and without a damper.
    shown_damper_opening, "damper", Share, Programs => row.air().and_then(|air| air.opening);
    /// Its fire; null where no setting is shown.
    shown_heat_net_w, "heat net", HeatNet, Programs => row.fire().map(|fire| fire.heat_net.watts());
    /// Its gas; null where no setting is shown.
    shown_mass_flow_kg_per_s, "gas", MassFlow, Programs => row.fire().map(|fire| fire.gas.kilograms_per_second());
    /// Its money; null where no setting is shown, and without a price.
    shown_cost_per_hour, "an hour", MoneyRate, Programs => row.fire().and_then(|fire| fire.cost_per_hour);
    /// What the setting is for; null where no setting is shown, and when the file does not say.
    purpose, "purpose", Word, Programs => row.fire().and_then(|fire| fire.entry.purpose.as_ref());
}

/// Sheet: procedures, for programs.
pub(crate) const STEPS: Section = Section {
    key: "procedures",
    name: "sheet: procedures",
    words: "Numbered steps of each procedure, an array; none of lighting where no setting is fit to be shown",
    about: "",
    is_many: true,
    members: &[Member::Columns(STEP)],
};

columns! {
    /// A step of a procedure.
    pub(crate) STEP, procedure_step(row: &StepRow<'_>);
    /// `flame_out`, `light`, `run`, `stop`, `blower_stops`, `gas_smell` or `power_back`.
    procedure, "procedure", Word, Programs => row.of.key();
    /// Its number, from 1.
    step, "step", Count, Programs => row.at;
    /// What is done, in a sentence.
    text, "text", Word, Programs => words(row.step, row.numbers);
    /// The same in a few words, for what is read from two meters.
    at_a_glance, "at a glance", Word, Programs => at_a_glance(row.step, row.numbers);
}

/// Sheet: warnings of the card, for programs.
pub(crate) const SHORT_WARNINGS: Section = Section {
    key: "short_warnings",
    name: "sheet: card warnings",
    words: "The warnings in few words, an array, the worst first; the card prints the first seven",
    about: "",
    is_many: true,
    members: &[Member::Columns(SHORT_WARNING)],
};

columns! {
    /// A warning in short.
    pub(crate) SHORT_WARNING, card_warning(row: &ShortRow);
    severity, "severity", Word, Programs => row.severity;
    /// Where it is met, with its number, an array of words; the blocks by their names in capitals.
    places, "places", Word, Programs => row.places.clone();
    text, "text", Word, Programs => row.text;
}
