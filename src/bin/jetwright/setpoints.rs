//! `jetwright setpoints`.

use std::fmt::Write;

use jetwright::Input;
use jetwright::burner::{AirSetting, Burner};
use jetwright::control::{MadeFor, Setpoint, SetpointTable, USUAL_ROWS};
use jetwright::file::burner_file;
use jetwright::plant::{Assembled, Sheet, compose};
use jetwright::quantity::{GaugePressure, HeatRate, NetHeatRate};
use jetwright::report::rows::csv_of;
use jetwright::report::{Shop, table};
use serde_json::{Map, Value, json};

use crate::arguments::{Format, SetpointArguments, Source, Units};
use crate::command_error::CommandError;
use crate::output;

/// Heats asked between two rows for the bound.
const BETWEEN: u16 = 63;
/// From one fire that is tried to the next smaller one.
const SMALLER: f64 = 1.1;
/// Halvings of such a step.
const HALVINGS: usize = 24;
/// How far inside its ends the range of fires is taken, so that rounding does not leave it.
const INSIDE: f64 = 1e-4;
/// The largest fire that is taken unasked, over the largest there is.
const UNASKED: f64 = 0.95;
/// The most that a straight line between two rows may turn the air ratio, as a share. A band reaches about a tenth to
/// either side of its target, and the actuators take some three hundredths of it: the table may take no more than they
/// do (engineering judgement).
const AIR_RATIO_OFF: f64 = 0.03;

type ChipTable = SetpointTable<USUAL_ROWS, f32>;

/// The gauge and the damper for an air ratio from the smallest to the largest fire, for a chip.
pub fn run(arguments: &SetpointArguments) -> Result<String, CommandError> {
    let inch = arguments.answer.units == Units::Inch;
    let sheet = compose(burner_file::read(&arguments.file)?, inch)?;
    let (Some(burner), Some(chip_burner)) = (&sheet.rig.burner, sheet.for_chip()) else {
        return Err(sheet.file.refuse("blower", "this command needs blower, damper and head").into());
    };
    if sheet.file.entries.damper.is_none() {
        return Err(sheet.file.refuse("damper", "this command needs the damper that a table sets").into());
    }
    if arguments.source.is_some() && arguments.answer.format != Format::Text {
        let text = "accepted is a source or a format, one of the two";
        return Err(CommandError::option("source", text).beside("format", 0).into());
    }
    let ratio = arguments.air_ratio.map_or(sheet.file.entries.air_ratio, |ratio| ratio.0);
    let (rig, setting) = (&sheet.rig, AirSetting::Ratio(ratio));
    // What the file's gauge reads, with the gas as cold as it comes and the line behind the gauge.
    let set = |heat| {
        let gauge = rig.gauge_for_heat(&rig.conditions, HeatRate::Net(heat), setting)?;
        let there = rig.conditions_at(&rig.conditions, gauge)?;
        let at_jet = burner.gauge_for_heat(&there, HeatRate::Net(heat), setting)?;
        Ok(Setpoint { gauge, air: burner.opening_for(&there, at_jet, ratio)? })
    };
    let bad_ratio = |why: String| match arguments.air_ratio {
        Some(_) => CommandError::option("air-ratio", why).into(),
        None => CommandError::from(sheet.file.refuse("fire.air_ratio", why)),
    };
    let reads = |heat| set(heat).is_ok_and(|set| set.gauge >= sheet.least_read());
    let Some(reach) = reachable(|heat| set(heat).is_ok()) else {
        return Err(bad_ratio("blower and damper give this air ratio at no fire: accepted is another one".into()));
    };
    let readable = reachable(reads).map_or(reach.1, |(least, _)| least);
    let (lowest, highest) = asked(arguments, &sheet, reach, readable)?;
    let made_for = MadeFor { air_ratio: ratio, burner: chip_burner.mark() };
    let exact = SetpointTable::<USUAL_ROWS>::build(made_for, lowest, highest, BETWEEN, set).map_err(|error| {
        bad_ratio(format!("no table {}: {error}; --from and --to narrow it", words((lowest, highest))))
    })?;
    let chip = exact.to_single();
    let off = Off::of(&chip, rig, burner, ratio).map_err(|error| bad_ratio(error.to_string()))?;
    if off.air_ratio > AIR_RATIO_OFF {
        let text = format!(
            "straight lines between {USUAL_ROWS} rows {} are off by {:.1} % of the air ratio, accepted is up to {:.0} %: \
             a larger smallest fire, or a smaller largest one",
            words((lowest, highest)),
            1e2 * off.air_ratio,
            1e2 * AIR_RATIO_OFF
        );
        return Err(CommandError::option("from", text).into());
    }
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
            "air_ratio": ratio,
            "heat_off_share": off.heat,
            "air_ratio_off_share": off.air_ratio,
        })),
        (None, Format::Csv) => csv_of(&rows(&chip)).map_err(CommandError::table)?,
        (None, Format::Text) => {
            let shop = Shop { inch };
            text(&chip, ratio, &off, &shop) + &unread(&chip, &sheet, &shop)
        }
    })
}

/// The most that a burner set by the table lies off what the table was asked for, as shares.
struct Off {
    heat: f64,
    air_ratio: f64,
}

impl Off {
    /// Sampled: the burner is run at the settings of the table itself, at many heats from row to row.
    fn of(table: &ChipTable, rig: &Assembled, burner: &Burner, ratio: f64) -> jetwright::Result<Self> {
        let mut off = Self { heat: 0.0, air_ratio: 0.0 };
        let parts = u32::from(BETWEEN) + 1;
        for part in 0..=parts * (USUAL_ROWS as u32 - 1) {
            let heat =
                NetHeatRate::from_watts(table.lowest().watts() + table.step().watts() * (part as f32 / parts as f32));
            let set = table.at(heat);
            let gauge = GaugePressure::from_pascals(f64::from(set.gauge.pascals()));
            let there = rig.conditions_at(&rig.conditions, gauge)?;
            let (found, _) = rig.run_at(&there, gauge, |at_jet| {
                let found = burner.run(&there, at_jet, f64::from(set.air))?;
                Ok((found, found.back_pressure))
            })?;
            // No air ratio is as far off as can be.
            let found_ratio = found.air_ratio.unwrap_or(f64::INFINITY);
            let found_heat = rig.gas.net_heating_value().of(found.gas);
            off.heat = off.heat.max((found_heat.watts() / f64::from(heat.watts()) - 1.0).abs());
            off.air_ratio = off.air_ratio.max((found_ratio / ratio - 1.0).abs());
        }
        Ok(off)
    }
}

/// That the smallest fire of a table cannot be read, where it was asked for.
fn unread(table: &ChipTable, sheet: &Sheet, shop: &Shop) -> String {
    let (least, lowest) = (sheet.least_read(), table.rows()[0].gauge.pascals());
    // A row is rounded to single precision.
    if f64::from(lowest) > 0.9999 * least.pascals() {
        return String::new();
    }
    format!("  CAUTION: this gauge cannot be read below {}, and the table begins lower.\n", shop.gauge(least))
}

/// From the smallest to the largest.
type Fires = (NetHeatRate, NetHeatRate);

/// Rounded inward, so that what is read off can be asked.
fn words((lowest, highest): Fires) -> String {
    let (low, high) = ((1e2 * lowest.kilowatts()).ceil() / 1e2, (1e2 * highest.kilowatts()).floor() / 1e2);
    format!("from {low:.2} to {high:.2} kW net")
}

/// The fires that have an answer, each end a ten-thousandth inside; none when none has. A damper at its least shuts out
/// the small ones, the blower or the jet the large ones.
fn reachable(answers: impl Fn(NetHeatRate) -> bool) -> Option<Fires> {
    let range = Input::HeatRate.range();
    let answers = |watts: f64| answers(NetHeatRate::from_watts(watts));
    let mut found: Option<Fires> = None;
    let mut watts = range.max;
    let mut refused = watts;
    while watts > range.min {
        match (answers(watts), found) {
            (true, None) => {
                let most = NetHeatRate::from_watts(border(watts, refused, answers) * (1.0 - INSIDE));
                found = Some((most, most));
            }
            (false, Some((_, most))) => {
                let least = NetHeatRate::from_watts(border(refused, watts, answers) * (1.0 + INSIDE));
                return Some((least, most)).filter(|(least, most)| least < most);
            }
            _ => {}
        }
        refused = watts;
        watts /= SMALLER;
    }
    found.map(|(_, most)| (NetHeatRate::from_watts(range.min), most))
}

/// The last that has an answer on the way from one that has to one that has not.
fn border(mut answered: f64, mut refused: f64, answers: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..HALVINGS {
        let middle = 0.5 * (answered + refused);
        if answers(middle) { answered = middle } else { refused = middle }
    }
    answered
}

/// The fires asked for, and what can be read and reached where nothing is asked, but for the last of it, where the damper
/// goes from half to wide open and changes next to nothing.
fn asked(
    arguments: &SetpointArguments,
    sheet: &Sheet,
    reach: Fires,
    readable: NetHeatRate,
) -> Result<Fires, CommandError> {
    let gas = &sheet.rig.gas;
    let end = |option: &'static str, heat: Option<HeatRate>, unless_asked: NetHeatRate| {
        let net = match heat {
            None => return Ok(unless_asked),
            Some(HeatRate::Net(heat)) => heat,
            Some(gross) => {
                let flow = gas.flow_for(gross).map_err(|error| CommandError::option(option, error))?;
                gas.net_heating_value().of(flow)
            }
        };
        let is_reached = net >= reach.0 && net <= reach.1;
        let text = || format!("accepted is {}: damper and blower give this air ratio there", words(reach));
        if is_reached { Ok(net) } else { Err(CommandError::option(option, text())) }
    };
    let (lowest, highest) = (end("from", arguments.from, readable)?, end("to", arguments.to, reach.1 * UNASKED)?);
    if highest <= lowest {
        let option = if arguments.to.is_some() { "to" } else { "from" };
        return Err(CommandError::option(option, "the largest fire must be larger than the smallest").into());
    }
    Ok((lowest, highest))
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
