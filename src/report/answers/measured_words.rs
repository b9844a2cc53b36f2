//! What a measured jet says, in sentences.

use std::prelude::rust_2024::*;
use std::{format, vec};

use crate::measure::{Comparison, Finding, Trust};
use crate::quantity::{Duration, Length};
use crate::report::answers::measured_answer::{MeasuredAnswer, MeasuredBy, coefficient};
use crate::report::units::Shop;

/// The answer in sentences.
pub(crate) fn said(answer: &MeasuredAnswer, shop: &Shop) -> Vec<String> {
    let plan = &answer.plan;
    let percent = |share: f64| format!("{:.1} %", 100.0 * share);
    let minutes = |time: Duration| format!("{:.0} min", time.minutes().ceil());
    let Some(found) = &answer.found else {
        return vec![format!(
            "Weigh for {} ({} of gas): then the jet is known to ±{}, and longer adds little. \
             Before {} the scale says less than the model, {}. \
             Let the fire burn steadily, read the gauge while gas flows, wipe frost and dew off the cylinder before each \
             weighing.",
            minutes(plan.enough),
            shop.mass(plan.mass),
            percent(2.0 * plan.joined),
            minutes(plan.least),
            known(answer),
        )];
    };
    let mut said = vec![];
    let (measured, joined) = (&found.measured, &found.joined);
    let (share, bore) = (2.0 * measured.standard(), measured.effective_bore);
    said.push(format!(
        "The jet passes {:.3} ±{:.3} times what the model says of a bore of {}: as one of {:.2} ±{:.2} mm.",
        measured.factor,
        share * measured.factor,
        shop.bore(answer.bore),
        bore.millimeters(),
        Length::from_meters(0.5 * share * bore.meters()).millimeters(),
    ));
    let odds = once_in(joined.odds);
    said.push(match joined.trust {
        Trust::Agrees => format!(
            "It agrees with the model, {}. Joined, with {:.0} % of the weight on the {}, the coefficient is {:.3} and sure \
             within {}.",
            known(answer),
            100.0 * joined.weight,
            answer.kind.word(),
            coefficient(found),
            percent(2.0 * joined.standard),
        ),
        _ => format!(
            "DOUBTFUL: it is {:.1} standard deviations from the model, {}, which chance makes {odds}. It is not averaged \
             with it: the coefficient by the {} alone is {:.3}, ±{}. Check the bore, the gauge and what else \
             hung on the cylinder.",
            joined.deviations,
            known(answer),
            answer.kind.word(),
            coefficient(found),
            percent(2.0 * joined.standard),
        ),
    });
    if let Some((name, compared)) = &found.earlier {
        said.push(comparison(name, compared));
    }
    if answer.kind == MeasuredBy::Weighing {
        said.push(format!("A run of {} is as sure as this scale and gauge allow.", minutes(plan.enough)));
    }
    if let Some(path) = &answer.saved {
        said.push(format!("Saved. In the burner file, under [jet]: measured = \"{path}\""));
    }
    said
}

/// What was known of the hole before.
fn known(answer: &MeasuredAnswer) -> String {
    if answer.known > 1.0 {
        "which cannot know a worn tip".into()
    } else {
        format!("which is ±{:.0} %", 100.0 * answer.known)
    }
}

/// Odds as words.
fn once_in(odds: f64) -> String {
    if odds > 0.1 {
        format!("{:.0} times in 100", 100.0 * odds)
    } else if odds > 1e-9 {
        format!("once in {}", figures(1.0 / odds))
    } else {
        "less than once in a thousand million".into()
    }
}

/// A number with two figures.
fn figures(value: f64) -> String {
    let step = 10_f64.powi(value.log10().floor() as i32 - 1).max(1.0);
    format!("{:.0}", (value / step).round() * step)
}

fn comparison(name: &str, compared: &Comparison) -> String {
    let size = format!("{:.1} ±{:.1} %", 100.0 * compared.change.abs(), 200.0 * compared.standard);
    let way = if compared.change < 0.0 { "less" } else { "more" };
    let odds = once_in(compared.odds);
    let said = match compared.finding {
        Finding::Worn => {
            format!("WORN: chance alone makes so much {odds}. Gauge the bore, and set by this measurement.")
        }
        Finding::Dirty => {
            format!("DIRTY: chance alone makes so much {odds}. Clean the bore with wood, not with steel.")
        }
        Finding::Drooping => format!(
            "DROOPING: it falls off the more gas flows, which chance alone makes {odds}. Look at the regulator, the hose \
             and the filter before the jet."
        ),
        Finding::NoDifference => format!("NO REAL DIFFERENCE: chance alone makes so much {odds}."),
    };
    format!("Against {name} it passes {size} {way}. {said}")
}
