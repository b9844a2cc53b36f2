//! `jetwright setpoints`.

use std::fmt::Write;

use jetwright::burner::AirSetting;
use jetwright::control::{ControlError, Setpoint, SetpointTable, USUAL_ROWS};
use jetwright::quantity::{HeatRate, NetHeatRate};
use jetwright::sheet::rows::csv_of;
use jetwright::sheet::{Shop, burner_file, compose, table};
use serde_json::{Map, Value, json};

use crate::arguments::{Format, SetpointArguments, Source, Units};
use crate::command_error::CommandError;
use crate::output;

/// Heats asked between two rows for the bound.
const BETWEEN: u16 = 63;

type ChipTable = SetpointTable<USUAL_ROWS, f32>;

/// The settings of a burner file's air ratio from the smallest to the largest fire, for a chip.
pub fn run(arguments: &SetpointArguments) -> Result<String, CommandError> {
    let inch = arguments.answer.units == Units::Inch;
    let sheet = compose(burner_file::read(&arguments.file)?, inch)?;
    let Some(burner) = &sheet.rig.burner else {
        return Err(sheet.file.refuse("blower", "this command needs blower, damper and head").into());
    };
    let net = |heat: HeatRate| match heat {
        HeatRate::Net(heat) => Ok(heat),
        gross => sheet.rig.gas.flow_for(gross).map(|flow| sheet.rig.gas.net_heating_value().of(flow)),
    };
    let of_settings = |pick: fn(f64, f64) -> f64| {
        let heats = sheet.settings.iter().map(|setting| setting.heat_net.watts());
        NetHeatRate::from_watts(heats.reduce(pick).unwrap_or_default())
    };
    let bad = |option: &'static str| move |error: jetwright::Error| CommandError::option(option, error);
    let lowest = arguments.from.map_or(Ok(of_settings(f64::min)), net).map_err(bad("from"))?;
    let highest = arguments.to.map_or(Ok(of_settings(f64::max)), net).map_err(bad("to"))?;
    if highest <= lowest {
        return Err(CommandError::option("to", "the largest fire must be larger than the smallest").into());
    }
    let ratio = arguments.air_ratio.map_or(sheet.file.air_ratio, |ratio| ratio.0);
    let (rig, setting) = (&sheet.rig, AirSetting::Ratio(ratio));
    // What the file's gauge reads, with the gas as cold as it comes and the line behind the gauge.
    let exact = SetpointTable::<USUAL_ROWS>::build(lowest, highest, BETWEEN, |heat| {
        let gauge = rig.gauge_for_heat(&rig.conditions, HeatRate::Net(heat), setting)?;
        let there = rig.conditions_at(&rig.conditions, gauge)?;
        let at_jet = burner.gauge_for_heat(&there, HeatRate::Net(heat), setting)?;
        Ok(Setpoint { gauge, air: burner.opening_for(&there, at_jet, ratio)? })
    })
    .map_err(|error| refusal(&sheet.file, error, lowest, highest))?;
    let chip = exact.to_single();
    let mut image = [0; ChipTable::IMAGE_BYTES];
    if chip.write_image(&mut image).is_ok() {
        if let Some(path) = &arguments.image {
            std::fs::write(path, image).map_err(|error| CommandError::option("image", error))?;
        }
    }
    Ok(match (arguments.source, arguments.answer.format) {
        (Some(Source::C), _) => in_c(&image, ratio),
        (Some(Source::Rust), _) => in_rust(&chip, ratio),
        (None, Format::Json) => output::pretty(&json!({
            "rows": rows(&chip).into_iter().map(Value::Object).collect::<Vec<_>>(),
            "gauge_bound_pa": chip.bound().gauge.pascals(),
            "air_setting_bound": chip.bound().air,
        })),
        (None, Format::Csv) => csv_of(&rows(&chip)).map_err(CommandError::table)?,
        (None, Format::Text) => text(&chip, ratio, Shop { inch }),
    })
}

/// Why there is no table, with what to change.
fn refusal(
    file: &burner_file::BurnerFile,
    error: ControlError,
    lowest: NetHeatRate,
    highest: NetHeatRate,
) -> CommandError {
    let range = format!("from {:.2} to {:.2} kW net", lowest.kilowatts(), highest.kilowatts());
    file.refuse("fire.air_ratio", format!("no table {range}: {error}; --from and --to narrow it")).into()
}

fn heats(table: &ChipTable) -> impl Iterator<Item = f64> {
    let (lowest, step) = (f64::from(table.lowest().watts()), f64::from(table.step().watts()));
    (0..USUAL_ROWS).map(move |row| lowest + step * row as f64)
}

fn rows(table: &ChipTable) -> Vec<Map<String, Value>> {
    let row = |(heat, set): (f64, &Setpoint<f32>)| {
        let mut row = Map::new();
        row.insert("heat_net_w".into(), json!(heat));
        row.insert("gauge_pressure_pa".into(), json!(set.gauge.pascals()));
        row.insert("air_setting".into(), json!(set.air));
        row
    };
    heats(table).zip(table.rows()).map(row).collect()
}

fn text(setpoints: &ChipTable, ratio: f64, shop: Shop) -> String {
    let gauge = format!("gauge {}", shop.gauge_unit());
    let of = |pascals: f32| shop.gauge_number(jetwright::quantity::GaugePressure::from_pascals(f64::from(pascals)));
    let rows: Vec<Vec<String>> = heats(setpoints)
        .zip(setpoints.rows())
        .map(|(heat, set)| vec![format!("{:.2}", heat / 1e3), of(set.gauge.pascals()), format!("{:.3}", set.air)])
        .collect();
    let bound = setpoints.bound();
    let mut text = table(&["fire kW net", &gauge, "air opening"], &[], &rows);
    let _ = writeln!(
        text,
        "  Air ratio {}. A straight line between two rows is off by {:.0} Pa of gauge and {:.4} of opening at most.\n  \
         For a controller: process control, never a flame safeguard.",
        Shop::ratio(ratio),
        bound.gauge.pascals(),
        bound.air,
    );
    text
}

/// The image as a constant of C.
fn in_c(image: &[u8], ratio: f64) -> String {
    let mut text = format!(
        "/* Setpoints at an air ratio of {ratio}, for jetwright_table_read. Process control, never a flame safeguard. */\n\
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
fn in_rust(table: &ChipTable, ratio: f64) -> String {
    let mut text = format!(
        "/// Setpoints at an air ratio of {ratio}. Process control, never a flame safeguard.\n\
         pub const TABLE: SetpointTable<{USUAL_ROWS}, f32> = SetpointTable::stored(\n    \
         NetHeatRate::from_watts({:?}),\n    {:?},\n    [\n",
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
