//! `jetwright setpoints`.

use std::fmt::Write;
use std::path::PathBuf;

use clap::{Args, ValueEnum};
use jetwright::control::{SetpointImage, USUAL_ROWS};
use jetwright::file::burner_file;
use jetwright::plant::description::Fire;
use jetwright::plant::description::asked::TableAsked;
use jetwright::plant::hazards::for_image;
use jetwright::plant::setpoints::{Asked as Fires, ChipTable, Setpoints};
use jetwright::plant::{Answer, Sheet};
use jetwright::quantity::{HeatRate, NetHeatRate};
use jetwright::report::Shop;
use jetwright::report::answers::setpoints::{SetpointAnswer, tree};
use jetwright::report::render::text;
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;
use crate::common::{AnswerArguments, Format};
use crate::options::{Asked, offer, part, unless};
use crate::output;

part! {
    /// The air ratio of the table.
    TableRatio: Fire, |description| Some(&description.fire), None, [unless("air_ratio", "the file's")]
}

part! {
    /// The ends of the table.
    Ends: TableAsked, |description| Some(&description.asked.table), None, [offer("from"), offer("to")]
}

/// What `jetwright setpoints` prints in place of an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Source {
    /// A constant of Rust.
    Rust,
    /// The image as a constant of C.
    C,
}

#[derive(Debug, Args)]
pub struct SetpointArguments {
    /// The burner file; `jetwright blank` prints one to start from.
    pub file: PathBuf,
    #[command(flatten)]
    pub fires: Asked<Ends>,
    #[command(flatten)]
    pub ratio: Asked<TableRatio>,
    /// A file to write the table's bytes to.
    #[arg(long)]
    pub image: Option<PathBuf>,
    /// Print a constant for a program's source instead; not with --format json or csv.
    #[arg(long, value_enum)]
    pub source: Option<Source>,
    #[command(flatten)]
    pub answer: AnswerArguments,
}

/// The gauge and the damper for an air ratio from the smallest to the largest fire, for a chip.
pub fn run(arguments: &SetpointArguments) -> Result<String, CommandError> {
    let inch = arguments.answer.is_inch();
    let (sheet, places) = burner_file::read(&arguments.file)?.evaluate(inch)?;
    if arguments.source.is_some() && arguments.answer.format != Format::Text {
        let text = "accepted is a source or a format, one of the two";
        return Err(CommandError::option("source", text).beside("format", 0).into());
    }
    let ends = arguments.fires.given();
    let asked =
        Fires { air_ratio: arguments.ratio.given().air_ratio.map(|ratio| ratio.0), from: ends.from, to: ends.to };
    let answer = sheet.setpoints(&asked).map_err(|refusal| {
        if refusal.place.section.is_empty() { refusal.into() } else { CommandError::from(places.told(&refusal)) }
    })?;
    let Answer { found: Setpoints { table: chip, off, air_ratio: ratio, unread }, hazards } = answer;
    let whole = SetpointImage { table: chip, hazards: Some(for_image(&hazards)) };
    let mut image = vec![0; whole.bytes()];
    if whole.write(&mut image).is_ok() {
        if let Some(path) = &arguments.image {
            std::fs::write(path, &image).map_err(|error| CommandError::option("image", error))?;
        }
    }
    let written = (0..sheet.settings.len()).filter_map(|setting| places.gauge_unit(setting));
    let shop = output::shop(&arguments.answer).with_low_gauge(written, arguments.answer.units.is_some());
    let warned = Warned::named(hazards, names(&chip, &sheet, &shop));
    match arguments.source {
        Some(Source::C) => Ok(in_c(&image, ratio, &text::nodes(&[warned.node(&shop)], &shop))),
        Some(Source::Rust) => Ok(in_rust(&chip, ratio, &text::nodes(&[warned.node(&shop)], &shop))),
        None => {
            let gas = &sheet.plant.gas;
            let answer = SetpointAnswer {
                table: &chip,
                air_ratio: ratio,
                off,
                gross_over_net: gas.gross_heating_value().joules_per_kilogram()
                    / gas.net_heating_value().joules_per_kilogram(),
                unread,
            };
            output::print_in(&tree(&answer, &shop).warned(&warned, &shop), "Setpoints", &shop, &arguments.answer)
        }
    }
}

/// Rows are called by their heat input.
fn names(table: &ChipTable, sheet: &Sheet, shop: &Shop) -> Vec<String> {
    let gas = &sheet.plant.gas;
    let names = heats(table).map(|watts| {
        let net = NetHeatRate::from_watts(watts);
        let gross = gas.flow_for(HeatRate::Net(net)).map(|flow| gas.gross_heating_value().of(flow));
        gross.map_or_else(|_| String::new(), |gross| shop.heat(gross, net))
    });
    names.collect()
}

fn heats(table: &ChipTable) -> impl Iterator<Item = f64> {
    let (lowest, step) = (f64::from(table.lowest().watts()), f64::from(table.step().watts()));
    (0..USUAL_ROWS).map(move |row| lowest + step * row as f64)
}

/// The image as a constant of C.
fn in_c(image: &[u8], ratio: f64, warnings: &str) -> String {
    let mut text = format!(
        "/* Setpoints at an air ratio of {ratio}, for jetwright_table_read. Process control, never a flame safeguard.{warnings} */\n\
         #include <stdint.h>\n\nstatic const uint8_t TABLE[{}] = {{\n",
        image.len()
    );
    for line in image.chunks(16) {
        let bytes: Vec<String> = line.iter().map(|byte| format!("0x{byte:02x}")).collect();
        let _ = writeln!(text, "    {},", bytes.join(", "));
    }
    text + "};\n"
}

/// The table as a constant of Rust.
fn in_rust(table: &ChipTable, ratio: f64, warnings: &str) -> String {
    let warnings: String = warnings.trim().lines().map(|line| format!("// {line}\n")).collect();
    let mut text = format!(
        "{warnings}/// Setpoints at an air ratio of {ratio}. Process control, never a flame safeguard.\n\
         pub const TABLE: SetpointTable<{USUAL_ROWS}, f32> = SetpointTable::stored(\n    \
         MadeFor {{ air_ratio: {:?}, burner: {:#010x} }},\n    NetHeatRate::from_watts({:?}),\n    {:?},\n    [\n",
        table.made_for().air_ratio,
        table.made_for().burner,
        table.lowest().watts(),
        table.step().watts()
    );
    for set in table.rows() {
        let (gauge, air) = (set.gauge.pascals(), set.air);
        let _ = writeln!(text, "        Setpoint {{ gauge: GaugePressure::from_pascals({gauge:?}), air: {air:?} }},");
    }
    let (gauge, air) = (table.bound().gauge.pascals(), table.bound().air);
    let _ = writeln!(
        text,
        "    ],\n    InterpolationBound {{ gauge: PressureDifference::from_pascals({gauge:?}), air: {air:?} }},\n);"
    );
    text
}
