//! The answer of `weigh` and `meter`, in words and for programs.

use jetwright::measure::{Comparison, Finding, Trust};
use jetwright::quantity::{Duration, Length};
use jetwright::report::rows::csv_of;
use jetwright::report::{Shop, table};
use serde_json::{Map, Value, json};

use crate::arguments::{AnswerArguments, Format, Units};
use crate::command_error::CommandError;
use crate::measured::{Answer, Found, Kind};
use crate::output;

/// Prints the answer as asked.
pub fn print(answer: &Answer, look: &AnswerArguments) -> Result<String, CommandError> {
    Ok(match look.format {
        Format::Json => {
            let mut object = keys(answer);
            object.insert("rows".into(), Value::Array(rows(answer).into_iter().map(Value::Object).collect()));
            output::pretty(&Value::Object(object))
        }
        Format::Csv => csv_of(&[keys(answer)]).map_err(CommandError::table)?,
        Format::Text => text(answer, Shop { inch: look.units == Units::Inch }),
    })
}

fn finding(finding: Finding) -> &'static str {
    match finding {
        Finding::Worn => "worn",
        Finding::Dirty => "dirty",
        Finding::Drooping => "drooping",
        Finding::NoDifference => "no real difference",
    }
}

fn trust(trust: Trust) -> &'static str {
    match trust {
        Trust::Agrees => "agrees",
        Trust::Doubtful => "doubtful",
        Trust::BeyondBelief => "beyond belief",
    }
}

fn rows(answer: &Answer) -> Vec<Map<String, Value>> {
    let runs = answer.found.iter().flat_map(|found| &found.runs);
    runs.map(|(gauge, run)| {
        let mut row = Map::new();
        row.insert("gauge_pressure_pa".into(), json!(gauge.pascals()));
        row.insert("mass_flow_kg_per_s".into(), json!(run.flow.kilograms_per_second()));
        row.insert("run_over_model".into(), json!(run.factor));
        row.insert("run_half_width_share".into(), json!(2.0 * run.own));
        row
    })
    .collect()
}

fn keys(answer: &Answer) -> Map<String, Value> {
    let found = answer.found.as_ref();
    let (measured, joined) = (found.map(|found| &found.measured), found.map(|found| &found.joined));
    let compared = found.and_then(|found| found.earlier.as_ref()).map(|(_, compared)| compared);
    let mut row = Map::new();
    for (key, value) in [
        ("how", json!(answer.kind.word())),
        ("bore_m", json!(answer.bore.meters())),
        ("model_half_width_share", json!(answer.known)),
        ("measured_over_model", json!(measured.map(|measured| measured.factor))),
        ("measured_half_width_share", json!(measured.map(|measured| 2.0 * measured.standard()))),
        ("joined_over_model", json!(joined.map(|joined| joined.factor))),
        ("joined_half_width_share", json!(joined.map(|joined| 2.0 * joined.standard))),
        ("joined_weight", json!(joined.map(|joined| joined.weight))),
        ("measured_coefficient", json!(found.map(coefficient))),
        ("effective_bore_m", json!(measured.map(|measured| measured.effective_bore.meters()))),
        ("model_deviations", json!(joined.map(|joined| joined.deviations))),
        ("model_odds", json!(joined.map(|joined| joined.odds))),
        ("trust", json!(joined.map(|joined| trust(joined.trust)))),
        ("change_share", json!(compared.map(|compared| compared.change))),
        ("change_half_width_share", json!(compared.map(|compared| 2.0 * compared.standard))),
        ("change_odds", json!(compared.map(|compared| compared.odds))),
        ("finding", json!(compared.map(|compared| finding(compared.finding)))),
        ("plan_least_s", json!(answer.plan.least.seconds())),
        ("plan_enough_s", json!(answer.plan.enough.seconds())),
        ("plan_mass_kg", json!(answer.plan.mass.kilograms())),
        ("plan_half_width_share", json!(2.0 * answer.plan.joined)),
        ("saved", json!(answer.saved)),
    ] {
        row.insert(key.into(), value);
    }
    row
}

/// The joined coefficient.
fn coefficient(found: &Found) -> f64 {
    found.measured.coefficient / found.measured.factor * found.joined.factor
}

fn text(answer: &Answer, shop: Shop) -> String {
    let plan = &answer.plan;
    let percent = |share: f64| format!("{:.1} %", 100.0 * share);
    let minutes = |time: Duration| format!("{:.0} min", time.minutes().ceil());
    let Some(found) = &answer.found else {
        return format!(
            "Weigh for {} ({} of gas): then the jet is known within {}, and longer is hardly surer.\n\
             Before {} the scale says less than the model, {}.\n\
             Let the fire burn steadily, read the gauge while gas flows, wipe frost and dew off the cylinder before each \
             weighing.\n",
            minutes(plan.enough),
            shop.mass(plan.mass),
            percent(2.0 * plan.joined),
            minutes(plan.least),
            known(answer),
        );
    };
    let gauge = format!("gauge {}", shop.gauge_unit());
    let gas = format!("gas {}", shop.gas_unit());
    let cells = found.runs.iter().enumerate().map(|(index, (reading, run))| {
        let factor = format!("{:.3} ±{:.3}", run.factor, 2.0 * run.own * run.factor);
        vec![format!("run {}", index + 1), shop.gauge_number(*reading), shop.gas_number(run.flow), factor]
    });
    let mut text = table(&["", &gauge, &gas, "over the model"], &[], &cells.collect::<Vec<_>>());
    let (measured, joined) = (&found.measured, &found.joined);
    let (share, bore) = (2.0 * measured.standard(), measured.effective_bore);
    text.push_str(&format!(
        "The jet passes {:.3} ±{:.3} times what the model says of a bore of {}: as one of {:.2} ±{:.2} mm.\n",
        measured.factor,
        share * measured.factor,
        shop.bore(answer.bore),
        bore.millimeters(),
        Length::from_meters(0.5 * share * bore.meters()).millimeters(),
    ));
    let odds = once_in(joined.odds);
    text.push_str(&match joined.trust {
        Trust::Agrees => format!(
            "It agrees with the model, {}. Joined, with {:.0} % of the weight on the {}, the coefficient is {:.3} and sure \
             within {}.\n",
            known(answer),
            100.0 * joined.weight,
            answer.kind.word(),
            coefficient(found),
            percent(2.0 * joined.standard),
        ),
        _ => format!(
            "DOUBTFUL: it is {:.1} standard deviations from the model, {}, which chance makes {odds}. It is not averaged \
             with it: the coefficient by the {} alone is {:.3}, sure within {}. Check the bore, the gauge and what else \
             hung on the cylinder.\n",
            joined.deviations,
            known(answer),
            answer.kind.word(),
            coefficient(found),
            percent(2.0 * joined.standard),
        ),
    });
    if let Some((name, compared)) = &found.earlier {
        text.push_str(&comparison(name, compared));
    }
    if answer.kind == Kind::Weighing {
        text.push_str(&format!("A run of {} is as sure as this scale and gauge allow.\n", minutes(plan.enough)));
    }
    if let Some(path) = &answer.saved {
        text.push_str(&format!("Saved. In the burner file, under [jet]: measured = \"{path}\"\n"));
    }
    text
}

/// What was known of the hole before.
fn known(answer: &Answer) -> String {
    if answer.known > 1.0 {
        "which cannot know a worn tip".into()
    } else {
        format!("which is sure within {:.0} %", 100.0 * answer.known)
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
    format!("Against {name} it passes {size} {way}. {said}\n")
}
