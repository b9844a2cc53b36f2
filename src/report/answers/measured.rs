//! A burner file's jet against the gas it passed: the answer of `weigh` and `meter`.

use std::prelude::rust_2024::*;
use std::{format, vec};

use crate::measure::{Finding, RunResult, Trust};
use crate::quantity::GaugePressure;
use crate::report::answers::measured_answer::coefficient;
pub use crate::report::answers::measured_answer::{Found, MeasuredAnswer, MeasuredBy};
use crate::report::answers::measured_words::said;
use crate::report::field::{Value, columns};
use crate::report::tree::{Member, Node, Row, Section, Table, Tree};
use crate::report::units::Shop;
use crate::report::warnings::WARNINGS;

/// The answer; its sentences in these units.
#[must_use]
pub fn tree(answer: &MeasuredAnswer, shop: &Shop) -> Tree {
    let runs = answer.found.iter().flat_map(|found| &found.runs).enumerate();
    let rows = runs.map(|(index, (gauge, found))| Row::of([run(&(index + 1, *gauge, *found))])).collect();
    let mut nodes =
        vec![Node::fields([measured(answer)]), Node::Table(Table { section: Some(&RUNS), titles: vec![], rows })];
    nodes.extend(said(answer, shop).into_iter().map(Node::Line));
    Tree { section: &ANSWER, csv: None, nodes }
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

columns! {
    /// A run.
    pub(crate) RUN, run(row: &(usize, GaugePressure, RunResult));
    number, "", Word, Words(0) => format!("run {}", row.0);
    gauge_pressure_pa, "gauge", Gauge, Page(10) => row.1.pascals();
    mass_flow_kg_per_s, "gas", MassFlow, Page(20) => row.2.flow.kilograms_per_second();
    /// Gas a run passed over what the model says of the bore.
    run_over_model, "over the model", Number, Page(30) => Value::from(row.2.factor).said(format!("{:.3} ±{:.3}", row.2.factor, 2.0 * row.2.own * row.2.factor));
    /// Expanded uncertainty of that by the run's own readings, as a share.
    run_uncertainty_share, "run expanded uncertainty share", Number, Programs => 2.0 * row.2.own;
}

columns! {
    /// A jet against the gas it passed.
    pub(crate) MEASURED, measured(answer: &MeasuredAnswer);
    /// `weighing` or `meter`.
    how, "how", Word, Programs => answer.kind.word();
    bore_m, "bore", Length, Programs => answer.bore.meters();
    /// Expanded uncertainty of what was known of the hole before, as a share; 2 for a contact tip by its mark, of which nothing
    /// is.
    model_uncertainty_share, "model expanded uncertainty share", Number, Programs => answer.known;
    /// Gas all runs together passed over what the model says; null without a run.
    measured_over_model, "measured over model", Number, Programs => answer.measured().map(|measured| measured.factor);
    /// Expanded uncertainty of that, as a share; null without a run.
    measured_uncertainty_share, "measured expanded uncertainty share", Number, Programs => answer.measured().map(|measured| 2.0 * measured.standard());
    /// The same joined with the model by inverse variance; null without a run.
    joined_over_model, "joined over model", Number, Programs => answer.joined().map(|joined| joined.factor);
    /// Expanded uncertainty of that, as a share; null without a run.
    joined_uncertainty_share, "joined expanded uncertainty share", Number, Programs => answer.joined().map(|joined| 2.0 * joined.standard);
    /// Weight of the runs in it, 0 to 1; null without a run.
    joined_weight, "joined weight", Number, Programs => answer.joined().map(|joined| joined.weight);
    /// The joined coefficient of the bore; null without a run.
    measured_coefficient, "measured coefficient", Number, Programs => answer.found.as_ref().map(coefficient);
    /// The bore that passes by the model what the runs passed; null without a run.
    effective_bore_m, "effective bore", Length, Programs => answer.measured().map(|measured| measured.effective_bore.meters());
    /// Standard deviations between the runs and the model; null without a run.
    model_deviations, "model deviations", Number, Programs => answer.joined().map(|joined| joined.deviations);
    /// How often chance alone makes so many; null without a run.
    model_odds, "model odds", Number, Programs => answer.joined().map(|joined| joined.odds);
    /// `agrees`, or `doubtful` where the runs and the model are not averaged; null without a run.
    trust, "trust", Word, Programs => answer.joined().map(|joined| trust(joined.trust));
    /// What the jet passes more than in the earlier measurement, as a share; null without one.
    change_share, "change share", Number, Programs => answer.compared().map(|compared| compared.change);
    /// Expanded uncertainty of that; null without an earlier measurement.
    change_uncertainty_share, "change expanded uncertainty share", Number, Programs => answer.compared().map(|compared| 2.0 * compared.standard);
    /// How often chance alone makes so large a change; null without an earlier measurement.
    change_odds, "change odds", Number, Programs => answer.compared().map(|compared| compared.odds);
    /// `worn`, `dirty`, `drooping` or `no real difference`; null without an earlier measurement.
    finding, "finding", Word, Programs => answer.compared().map(|compared| finding(compared.finding));
    /// Before this time the scale says less than is known already.
    plan_least_s, "plan least", Time, Programs => answer.plan.least.seconds();
    /// After this time a longer run is hardly surer.
    plan_enough_s, "plan enough", Time, Programs => answer.plan.enough.seconds();
    /// Gas that passes in that time.
    plan_mass_kg, "plan mass", Mass, Programs => answer.plan.mass.kilograms();
    /// Expanded uncertainty of the coefficient then, joined with the model, as a share.
    plan_uncertainty_share, "plan expanded uncertainty share", Number, Programs => 2.0 * answer.plan.joined;
    /// The file that was written, as a burner file names it; null when none was.
    saved, "saved", Word, Programs => answer.saved.as_ref();
}

/// The answer for programs.
pub const ANSWER: Section = Section {
    key: "",
    name: "jetwright weigh",
    words: "",
    about: "What a weighing says of the jet of a burner file; `jetwright meter` answers with the same keys. Without a run only the \
        plan is filled. Expanded uncertainties are those of the 95 % band (k = 2).",
    is_many: false,
    members: &[Member::Columns(MEASURED), Member::Section(&RUNS), Member::Section(&WARNINGS)],
};

/// Its rows, for programs.
pub(crate) const RUNS: Section = Section {
    key: "rows",
    name: "weigh: rows",
    words: "The rows, an array of objects",
    about: "",
    is_many: true,
    members: &[Member::Columns(RUN)],
};
