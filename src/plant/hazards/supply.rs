//! What the numbers of cylinder and line warn of.

use std::format;
use std::prelude::rust_2024::*;
use std::vec;

use crate::file::burner_file::BurnerFile;
use crate::fuel::GAUGE_LIES;
use crate::gas::Mixture;
use crate::plant::cylinder::CylinderBlock;
use crate::plant::evaluation::Setting;
use crate::plant::work::THE_WORK;
use crate::quantity::{Duration, Temperature};
use crate::report::units::Shop;

/// Below this the wall of a cylinder grows frost, Celsius.
const FROST: f64 = 0.0;

/// A liquid with less than this of its main gas boils apart as it is drawn. Against a depletion by Raoult's law with
/// both parts followed, a liquid of one composition keeps up for a third longer (half propane, half butane).
const ONE_GAS: f64 = 0.9;

/// A warning drawn from a number of cylinder or line.
#[derive(Clone, Debug, PartialEq)]
pub enum SupplyCaution {
    /// The pressure falls under what the regulator needs while the setting is used.
    CannotKeepUp {
        /// Setting.
        setting: String,
        /// When.
        after: Duration,
    },
    /// The evening outlasts the cylinder.
    ShortEvening {
        /// When it is over.
        after: Duration,
        /// Whether it is empty then, not too cold.
        empty: bool,
    },
    /// The cylinder freezes.
    Frost {
        /// The coldest the liquid gets.
        liquid: Temperature,
    },
    /// The liquid is a blend, whose lighter gas boils off first.
    BlendBoilsApart {
        /// Largest share of one gas in it.
        most: f64,
    },
    /// The line takes a good part of the reading.
    GaugeLies {
        /// Setting.
        setting: String,
        /// Share of the reading.
        share: f64,
    },
}

/// Share of the reading that the line takes.
pub(crate) fn line_share(setting: &Setting) -> f64 {
    let gauge = setting.gauge.pascals();
    if gauge > 0.0 { (gauge - setting.at_jet.pascals()) / gauge } else { 0.0 }
}

/// Every caution that cylinder and line call for.
pub(crate) fn supply_cautions(
    file: &BurnerFile,
    mixture: &Mixture,
    settings: &[Setting],
    cylinder: Option<&CylinderBlock>,
) -> Vec<SupplyCaution> {
    let mut found = vec![];
    if file.entries.supply.line.is_some() {
        for setting in settings {
            let share = line_share(setting);
            if share > GAUGE_LIES {
                found.push(SupplyCaution::GaugeLies { setting: setting.entry.name.as_str().into(), share });
            }
        }
    }
    let Some(block) = cylinder else { return found };
    let most = mixture.parts().map(|(_, fraction)| fraction).fold(0.0, f64::max);
    if most < ONE_GAS {
        found.push(SupplyCaution::BlendBoilsApart { most });
    }
    let names = settings.iter().map(|setting| setting.entry.name.as_str()).chain([THE_WORK]);
    let each = block.rows.iter().map(Some).chain([block.work.as_ref()]);
    for (name, row) in names.zip(each).filter_map(|(name, row)| Some((name, row?))) {
        if let Some(after) = row.too_cold_after.filter(|after| *after < row.used) {
            found.push(SupplyCaution::CannotKeepUp { setting: name.into(), after });
        }
    }
    let evening = block.evening.as_ref();
    if let Some(evening) = evening {
        let cold = evening.too_cold_after.map(|after| (after, false));
        if let Some((after, empty)) = cold.or(evening.empty_after.map(|after| (after, true))) {
            found.push(SupplyCaution::ShortEvening { after, empty });
        }
    }
    let coldest = block
        .rows
        .iter()
        .chain(&block.work)
        .map(|row| row.end.temperature)
        .chain(evening.map(|evening| evening.liquid));
    if let Some(liquid) = coldest.reduce(|least, next| if next < least { next } else { least }) {
        if liquid.celsius() < FROST {
            found.push(SupplyCaution::Frost { liquid });
        }
    }
    found
}

impl SupplyCaution {
    /// The key it has for programs.
    #[must_use]
    pub fn key(&self) -> &'static str {
        match self {
            SupplyCaution::CannotKeepUp { .. } => "cylinder_cannot_keep_up",
            SupplyCaution::ShortEvening { .. } => "cylinder_short",
            SupplyCaution::Frost { .. } => "frost",
            SupplyCaution::BlendBoilsApart { .. } => "blend_boils_apart",
            SupplyCaution::GaugeLies { .. } => "gauge_lies",
        }
    }

    /// The setting it is about.
    #[must_use]
    pub fn setting(&self) -> Option<&str> {
        match self {
            SupplyCaution::CannotKeepUp { setting, .. } | SupplyCaution::GaugeLies { setting, .. } => Some(setting),
            _ => None,
        }
    }

    /// Danger to life first, as of the sheet's other cautions.
    #[must_use]
    pub fn rank(&self) -> u8 {
        match self {
            SupplyCaution::CannotKeepUp { .. } | SupplyCaution::ShortEvening { .. } => 3,
            SupplyCaution::GaugeLies { .. } | SupplyCaution::Frost { .. } | SupplyCaution::BlendBoilsApart { .. } => 4,
        }
    }

    /// The number it stands on.
    #[must_use]
    pub fn number(&self, shop: &Shop) -> Option<String> {
        Some(match self {
            SupplyCaution::CannotKeepUp { after, .. } => format!("after {:.0} min", after.minutes()),
            SupplyCaution::ShortEvening { after, empty } => {
                format!("{} after {}", if *empty { "empty" } else { "too cold" }, Shop::clock(*after))
            }
            SupplyCaution::Frost { liquid } => format!("down to {}", shop.temperature(*liquid)),
            SupplyCaution::BlendBoilsApart { most } => format!("{} of one gas", Shop::share(*most)),
            SupplyCaution::GaugeLies { share, .. } => format!("{} of the reading", Shop::share(*share)),
        })
    }

    /// What it says, without setting and number.
    #[must_use]
    pub fn text(&self) -> String {
        match self {
            SupplyCaution::CannotKeepUp { .. } => {
                "THE CYLINDER CANNOT KEEP UP: it gets too cold for its regulator and the fire dies down; a second one on \
                 a manifold, a fuller one, a warmer place; never heat it with flame"
            }
            SupplyCaution::ShortEvening { .. } => {
                "THE CYLINDER DOES NOT LAST THE EVENING: have a fuller or a second one ready before you light"
            }
            SupplyCaution::Frost { .. } => {
                "FROST ON THE CYLINDER keeps heat from it, and it gives less than told here; never heat it with flame"
            }
            SupplyCaution::BlendBoilsApart { .. } => {
                "the lighter gas of a blend boils off first: the cylinder may stop keeping up a third sooner than told here"
            }
            SupplyCaution::GaugeLies { .. } => {
                "THE GAUGE LIES: the line takes so much of it before the jet; a wider line or valve, or a gauge at the jet"
            }
        }
        .into()
    }
}
