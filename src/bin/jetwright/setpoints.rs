//! `jetwright setpoints`.

use std::fmt::Write;

use jetwright::control::{Setpoint, USUAL_ROWS};
use jetwright::file::burner_file;
use jetwright::plant::Sheet;
use jetwright::plant::hazards::of_rows;
use jetwright::plant::setpoints::{Asked, BETWEEN, ChipTable, Off, Setpoints};
use jetwright::quantity::{GaugePressure, HeatRate, NetHeatRate};
use jetwright::report::rows::csv_of;
use jetwright::report::{Shop, table};
use serde_json::{Map, Value, json};

use crate::arguments::{Format, SetpointArguments, Source, Units};
use crate::command_error::CommandError;
use crate::output;
use crate::warned::Warned;

/// The gauge and the damper for an air ratio from the smallest to the largest fire, for a chip.
pub fn run(arguments: &SetpointArguments) -> Result<String, CommandError> {
    let inch = arguments.answer.units == Units::Inch;
    let (sheet, places) = burner_file::read(&arguments.file)?.evaluate(inch)?;
    if arguments.source.is_some() && arguments.answer.format != Format::Text {
        let text = "accepted is a source or a format, one of the two";
        return Err(CommandError::option("source", text).beside("format", 0).into());
    }
    let asked = Asked { air_ratio: arguments.air_ratio.map(|ratio| ratio.0), from: arguments.from, to: arguments.to };
    let mark = sheet.for_chip().map_or(0, |chip| chip.mark());
    let found = sheet.plant.setpoints(&sheet.settings, mark, &asked).map_err(|refusal| {
        if refusal.place.section.is_empty() { refusal.into() } else { CommandError::from(places.told(&refusal)) }
    })?;
    let Setpoints { table: chip, off, air_ratio: ratio, unread } = found;
    let mut image = [0; ChipTable::IMAGE_BYTES];
    if chip.write_image(&mut image).is_ok() {
        if let Some(path) = &arguments.image {
            std::fs::write(path, image).map_err(|error| CommandError::option("image", error))?;
        }
    }
    let shop = Shop { inch };
    let warned = warned(&chip, &sheet, &shop);
    Ok(match (arguments.source, arguments.answer.format) {
        (Some(Source::C), _) => in_c(&image, ratio, &warned.text(&shop)),
        (Some(Source::Rust), _) => in_rust(&chip, ratio, &warned.text(&shop)),
        (None, Format::Json) => output::pretty(&json!({
            "rows": rows(&chip).into_iter().map(Value::Object).collect::<Vec<_>>(),
            "gauge_bound_pa": chip.bound().gauge.pascals(),
            "air_setting_bound": chip.bound().air,
            "air_ratio": ratio,
            "heat_off_share": off.heat,
            "air_ratio_off_share": off.air_ratio,
            "warnings": warned.json(),
        })),
        (None, Format::Csv) => {
            warned.beside(&shop);
            csv_of(&rows(&chip)).map_err(CommandError::table)?
        }
        (None, Format::Text) => {
            let unread = unread.map_or(String::new(), |least| unread_words(least, &shop));
            text(&chip, ratio, &off, &shop) + &unread + &warned.text(&shop)
        }
    })
}

/// What each row of a table warns of, by its heat input, and what the burner warns of at any.
fn warned(table: &ChipTable, sheet: &Sheet, shop: &Shop) -> Warned {
    let set = table.rows().iter();
    let set = set.map(|set| (GaugePressure::from_pascals(f64::from(set.gauge.pascals())), f64::from(set.air)));
    let gas = &sheet.plant.gas;
    let names = heats(table).map(|watts| {
        let net = NetHeatRate::from_watts(watts);
        let gross = gas.flow_for(HeatRate::Net(net)).map(|flow| gas.gross_heating_value().of(flow));
        gross.map_or_else(|_| String::new(), |gross| shop.heat(gross, net))
    });
    Warned::named(of_rows(sheet, set), names.collect())
}

/// That the smallest fire of a table cannot be read, where it was asked for.
fn unread_words(least: GaugePressure, shop: &Shop) -> String {
    format!("  CAUTION: this gauge cannot be read below {}, and the table begins lower.\n", shop.gauge(least))
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

fn text(setpoints: &ChipTable, ratio: f64, off: &Off, shop: &Shop) -> String {
    let gauge = format!("gauge {}", shop.gauge_unit());
    let of = |pascals: f32| shop.gauge_number(GaugePressure::from_pascals(f64::from(pascals)));
    let rows: Vec<Vec<String>> = heats(setpoints)
        .zip(setpoints.rows())
        .map(|(heat, set)| {
            vec![format!("{:.2}", heat / 1e3), of(set.gauge.pascals()), format!("{:.1} %", 100.0 * set.air)]
        })
        .collect();
    let bound = setpoints.bound();
    let mut text = table(&["fire kW net", &gauge, "damper"], &[], &rows);
    let _ = writeln!(
        text,
        "  Air ratio {}. A straight line between two rows is off by {:.0} Pa of gauge and {:.2} % of damper at most:\n  \
         {:.2} % of the heat and {:.2} % of the air ratio, sampled at {BETWEEN} fires between each two rows. A controller's\n  \
         tolerance of its actuators must include it. For a controller: process control, never a flame safeguard.",
        Shop::ratio(ratio),
        bound.gauge.pascals(),
        100.0 * bound.air,
        100.0 * off.heat,
        100.0 * off.air_ratio,
    );
    text
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
