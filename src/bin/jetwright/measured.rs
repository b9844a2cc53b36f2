//! What `weigh` and `meter` share: a burner file's jet against the gas it passed.

use std::path::{Path, PathBuf};

use clap::Args;
use jetwright::file::measured::{measured_text, read_measured};
use jetwright::file::{Places, burner_file};
use jetwright::measure::{
    BEYOND_BELIEF, Reading, Run, RunResult, Spreads, Trust, UncertainJet, WeighingError, compare, join, measured_jet,
    of_hole, of_supply, plan, run_result,
};
use jetwright::orifice::{Coefficient, Jet, Supply};
use jetwright::plant::Plant;
use jetwright::plant::description::asked::RunAsked;
use jetwright::plant::entries::MeasuredEntry;
use jetwright::plant::hazards::{Flowing, at_setting, of_gauges, of_line};
use jetwright::plant::spreads::{bore_spread, spreads};
use jetwright::prose::advice;
use jetwright::prose::refusals::reason_words;
use jetwright::quantity::{Duration, GaugePressure, Mass, MassFlow};
use jetwright::report::answers::measured::{Found, MeasuredAnswer, MeasuredBy, tree};
use jetwright::report::warnings::Warned;

use crate::command_error::{CommandError, OptionError};
use crate::common::AnswerArguments;
use crate::options::{Asked, offer, part, there};
use crate::output;

part! {
    /// The burner in each run.
    Runs: RunAsked, |description| Some(&description.asked.run), None, [
        offer("setting"),
        offer("gauge").many(),
        offer("time").many(),
        offer("clock"),
        offer("gas_temperature"),
        offer("back_pressure"),
    ]
}

/// A jet that is weighed or metered, and what is done with the answer.
#[derive(Debug, Args)]
pub struct MeasuredArguments {
    /// The burner file.
    pub file: PathBuf,
    #[command(flatten)]
    pub run: Asked<Runs>,
    /// An earlier measurement of the same jet to compare with.
    #[arg(long)]
    pub earlier: Option<PathBuf>,
    /// Where to write the measured jet, for a burner file to name.
    #[arg(long)]
    pub save: Option<PathBuf>,
    #[command(flatten)]
    pub answer: AnswerArguments,
}

impl MeasuredArguments {
    /// How well the time is known.
    pub fn clock(&self) -> Result<Duration, CommandError> {
        there(self.run.given().clock, "clock")
    }

    fn gauges(&self) -> Vec<GaugePressure> {
        self.run.every("gauge", |asked| asked.gauge)
    }

    fn times(&self) -> Vec<Duration> {
        self.run.every("time", |asked| asked.time)
    }
}

/// Nothing is known of a contact tip by its mark: a spread that leaves all weight to the measurement.
const UNKNOWN: f64 = 1.0;

/// The option with the gas passed.
const fn option(kind: MeasuredBy) -> &'static str {
    match kind {
        MeasuredBy::Weighing => "lost",
        MeasuredBy::Meter => "counted",
    }
}

/// Gas that passed in a run.
#[derive(Clone, Copy, Debug)]
pub struct Passed {
    pub mass: Mass,
    pub held: Option<Mass>,
}

/// The answer of either command.
pub fn answer(
    kind: MeasuredBy,
    arguments: &MeasuredArguments,
    passed: &[Passed],
    reading: &Reading,
) -> Result<String, CommandError> {
    let (plant, places) = burner_file::read(&arguments.file)?.plant()?;
    let read = supplies(arguments, &plant, &places, passed.len().max(1))?;
    let (readings, supplies): (Vec<GaugePressure>, Vec<Supply>) = read.iter().copied().unzip();
    let jet = Jet { coefficient: Coefficient::Model, ..plant.jet };
    let highest = readings.iter().fold(readings[0], |most, &next| if next > most { next } else { most });
    let bore = bore_spread(&plant);
    let spreads = spreads(&plant, bore.unwrap_or_default(), highest);
    let refuse = |error| CommandError::option("gauge", error);
    let shape = &plant.entries.jet.shape;
    let known = match bore {
        Some(_) => {
            let before = UncertainJet::new(&jet, shape, &plant.gas, &supplies[0], None, &spreads).map_err(refuse)?;
            of_hole(&before).map_err(refuse)?
        }
        None => UNKNOWN,
    };
    let (gauge, others) = of_supply(&jet, shape, &plant.gas, &supplies[0], &spreads).map_err(refuse)?;
    let flow = jet.flow(&plant.gas, &supplies[0]).map_err(refuse)?.mass_flow * plant.heads;
    if flow.kilograms_per_second() <= 0.0 {
        return Err(CommandError::option("gauge", "no gas flows at this gauge").into());
    }
    let others = (gauge.powi(2) + others.powi(2) + 0.25 * reading.share.powi(2)).sqrt();
    let plan = plan(flow, reading, others, known);
    let warned = warned(&plant, &jet, &read, arguments).map_err(refuse)?;
    let mut answer =
        MeasuredAnswer { kind, bore: jet.bore.diameter(), known: 2.0 * known, plan, found: None, saved: None };
    if passed.is_empty() {
        refuse_idle(arguments)?;
        return print(&answer, &warned, arguments);
    }
    let runs = runs(kind, arguments, passed, &supplies, plant.heads)?;
    let found = found(kind, arguments, (&jet, &plant), (&runs, &readings, reading), &spreads, known)?;
    let entry =
        MeasuredEntry::new(&plant.entries.name, kind.word(), runs.len(), answer.bore, &found.measured, &found.joined);
    let earlier = match &arguments.earlier {
        Some(path) => {
            let before = read_measured(path)?;
            if let Some(refused) = before.refuses(answer.bore) {
                return Err(CommandError::option("earlier", reason_words(&refused)).into());
            }
            let same_gauge = !plant.entries.uncertainty.is_other_gauge;
            Some((path.display().to_string(), compare(&before.compared(), &entry.compared(), same_gauge)))
        }
        None => None,
    };
    answer.found = Some(Found { earlier, ..found });
    if let Some(path) = &arguments.save {
        std::fs::write(path, measured_text(&entry)).map_err(|error| CommandError::option("save", error))?;
        // A burner file names it from its own folder.
        let folder = arguments.file.parent().unwrap_or(Path::new(""));
        answer.saved = Some(path.strip_prefix(folder).unwrap_or(path).display().to_string());
    }
    print(&answer, &warned, arguments)
}

fn print(answer: &MeasuredAnswer, warned: &Warned, arguments: &MeasuredArguments) -> Result<String, CommandError> {
    let shop = output::shop(&arguments.answer);
    output::print(&tree(answer, &shop).warned(warned, &shop), "A measured jet", &arguments.answer)
}

/// What the jet and the line warn of at each gauge reading, which the states are called by.
fn warned(
    plant: &Plant,
    jet: &Jet,
    read: &[(GaugePressure, Supply)],
    arguments: &MeasuredArguments,
) -> jetwright::Result<Warned> {
    let flows: Vec<_> =
        read.iter().map(|(_, supply)| jet.flow(&plant.gas, supply)).collect::<jetwright::Result<_>>()?;
    let flowing = read.iter().zip(&flows).map(|((_, supply), flow)| {
        let pressure = supply.gauge.to_absolute(supply.ambient);
        let saturation_ratio = plant.gas.mixture().saturation_ratio(pressure, supply.temperature);
        Flowing { bore: &jet.bore, drill: plant.drill, flow, saturation_ratio }
    });
    let mut found = of_gauges(&plant.gas, flowing);
    if plant.before.line.is_some() {
        found.extend((0..).zip(read).filter_map(|(at, (gauge, supply))| of_line(*gauge, supply.gauge, at_setting(at))));
    }
    let shop = output::shop(&arguments.answer);
    Ok(Warned::named(found, read.iter().map(|(gauge, _)| shop.gauge(*gauge)).collect()))
}

/// Refuses options that only a run gives sense to.
fn refuse_idle(arguments: &MeasuredArguments) -> Result<(), CommandError> {
    let idle = [
        ("time", !arguments.times().is_empty()),
        ("earlier", arguments.earlier.is_some()),
        ("save", arguments.save.is_some()),
    ];
    match idle.into_iter().find(|(_, is_given)| *is_given) {
        Some((option, _)) => Err(CommandError::option(option, "it needs --lost beside it, once a run").into()),
        None => Ok(()),
    }
}

/// What the gauge read in each run, and what stood before and behind the jet.
fn supplies(
    arguments: &MeasuredArguments,
    plant: &Plant,
    places: &Places,
    count: usize,
) -> Result<Vec<(GaugePressure, Supply)>, CommandError> {
    let (mut gauges, mut back) = (arguments.gauges(), GaugePressure::default());
    if let Some(name) = &arguments.run.given().setting {
        let settings = plant.settings().map_err(|refusal| places.told(&refusal))?;
        let Some(setting) = settings.iter().find(|setting| setting.entry.name == *name) else {
            let known: Vec<&str> = settings.iter().map(|setting| setting.entry.name.as_str()).collect();
            return Err(CommandError::option("setting", format!("accepted are {}", known.join(", "))).into());
        };
        if gauges.is_empty() {
            gauges.push(setting.gauge);
        }
        let running = setting.air.as_ref().and_then(|air| air.running);
        back = running.map_or(back, |running| running.back_pressure);
    }
    match gauges.len() {
        0 => return Err(CommandError::option("gauge", "accepted is a gauge reading, or a --setting").into()),
        1 => gauges = vec![gauges[0]; count],
        given if given != count => {
            let text = format!("{given} readings for {count} runs; accepted is one for all, or one a run");
            return Err(CommandError::option("gauge", text).into());
        }
        _ => {}
    }
    let back = arguments.run.given().back_pressure.unwrap_or(back);
    let mut supplies = Vec::new();
    for (index, &gauge) in gauges.iter().enumerate() {
        let supply = supply(arguments, plant, gauge, back);
        supplies.push((gauge, supply.map_err(|error| CommandError::option("gauge", advice(&error)).nth(index))?));
    }
    Ok(supplies)
}

/// What the line leaves of a reading, and how cold the gas comes to the jet.
fn supply(
    arguments: &MeasuredArguments,
    plant: &Plant,
    gauge: GaugePressure,
    back: GaugePressure,
) -> jetwright::Result<Supply> {
    let mut conditions = plant.conditions_at(&plant.conditions, gauge)?;
    conditions.gas_temperature = arguments.run.given().gas_temperature.unwrap_or(conditions.gas_temperature);
    let (_, at_jet) = plant.run_at(&conditions, gauge, |at_jet| {
        Ok((plant.jet.flow(&plant.gas, &plant.supply(&conditions, at_jet, back))?, back))
    })?;
    Ok(plant.supply(&conditions, at_jet, back))
}

/// The runs of one head.
fn runs(
    kind: MeasuredBy,
    arguments: &MeasuredArguments,
    passed: &[Passed],
    supplies: &[Supply],
    heads: f64,
) -> Result<Vec<Run>, CommandError> {
    let times = arguments.times();
    if times.len() != passed.len() {
        let (times, option) = (times.len(), option(kind));
        let text = format!("{times} times for {} runs; accepted is one --time for each --{option}", passed.len());
        return Err(CommandError::option("time", text).into());
    }
    let share = |mass: Mass| mass * (1.0 / heads);
    let runs = passed.iter().zip(&times).zip(supplies);
    Ok(runs
        .map(|((passed, &time), &supply)| Run { mass: share(passed.mass), time, supply, held: passed.held.map(share) })
        .collect())
}

fn found(
    kind: MeasuredBy,
    arguments: &MeasuredArguments,
    (jet, plant): (&Jet, &Plant),
    (runs, readings, reading): (&[Run], &[GaugePressure], &Reading),
    spreads: &Spreads,
    known: f64,
) -> Result<Found, CommandError> {
    // The readings are of all heads together, the runs of one.
    let reading = Reading { mass: reading.mass * (1.0 / plant.heads), ..*reading };
    let refuse = |error| refused(kind, error);
    let measured = measured_jet(jet, &plant.entries.jet.shape, &plant.gas, runs, &reading, spreads).map_err(refuse)?;
    let joined = join(&measured, known);
    if joined.trust == Trust::BeyondBelief {
        let at = if arguments.gauges().is_empty() { "setting" } else { "gauge" };
        let text = format!(
            "it is {:.2} times what this jet passes at this gauge by the model, {:.1} standard deviations off, and more than \
             {BEYOND_BELIEF} is beyond belief: check the bore, the gauge and its unit, the time, and what else hung on \
             the cylinder. The two are not averaged",
            measured.factor, joined.deviations
        );
        return Err(CommandError::option(option(kind), text).beside(at, 0).into());
    }
    let mut results = Vec::new();
    for (run, &gauge) in runs.iter().zip(readings) {
        let found = run_result(jet, &plant.gas, run, &reading).map_err(refuse)?;
        let flow = MassFlow::from_kilograms_per_second(found.flow.kilograms_per_second() * plant.heads);
        results.push((gauge, RunResult { flow, ..found }));
    }
    Ok(Found { runs: results, measured, joined, earlier: None })
}

fn refused(kind: MeasuredBy, error: WeighingError) -> OptionError {
    let option = self::option(kind);
    match error {
        WeighingError::Refused { run, error } => CommandError::option("gauge", error).nth(run),
        WeighingError::TooShort { run, needs } => {
            let text = format!(
                "too short for these readings, which are a tenth of it unsure or more: take {:.0} min or longer for 1 %",
                (f64::from(needs) / 60.0).ceil()
            );
            CommandError::option("time", text).nth(run).beside(option, run)
        }
        WeighingError::EmptyCylinder { run } => {
            let text = "the cylinder held no more, so it was empty before the end: weigh again with a fuller one";
            CommandError::option(option, text).nth(run).beside("held", 0)
        }
        WeighingError::RunsDisagree { ratio } => {
            let text = format!(
                "the runs contradict each other beyond their readings, the least is {ratio:.2} of the largest: find out \
                 which is wrong, they are not averaged"
            );
            CommandError::option(option, text)
        }
        WeighingError::NothingLost { run } => CommandError::option(option, "accepted is more than zero").nth(run),
        _ => CommandError::option(option, "accepted is a run or more"),
    }
}
