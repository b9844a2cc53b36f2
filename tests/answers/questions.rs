//! Every question of an installation in one shape: its ends follow from those of what it stands on, and it warns of what
//! the sheet warns of. The burners are invented.

use jetwright::file::{blank::blank, burner_file::parse};
use jetwright::plant::entries::{AirAim, GasAim, SettingEntry};
use jetwright::plant::setpoints::Asked;
use jetwright::plant::{Holding, Number, Plant, Sheet};

use super::{BELLS, furnace::run, json};

fn plant(text: &str) -> Plant {
    parse(text, "asked").expect("a burner file").plant().expect("an installation").0
}

fn sheet(text: &str) -> Sheet {
    plant(text).evaluate(false).expect("a sheet")
}

fn share(number: Number) -> f64 {
    number.expanded().expect("its ends are known") / number.value
}

fn close(one: f64, other: f64) {
    assert!((one / other - 1.0).abs() < 1e-9, "{one} against {other}");
}

#[test]
fn a_reading_of_the_sweep_is_a_setting_with_the_damper_left() {
    let plant = plant(BELLS);
    let left = plant.setting(0).unwrap().found.setting.air.unwrap().opening.unwrap();
    let swept = plant.sweep(true).unwrap();
    assert!(swept.found.len() > 4);
    for rung in &swept.found {
        let gas = GasAim::Gauge(rung.rung.gauge);
        let entry = SettingEntry { gas, air: AirAim::Damper(left), ..plant.entries.settings[0].clone() };
        let set = plant.set(0, &entry).unwrap().found;
        close(rung.gas.low.unwrap(), set.gas.low.unwrap());
        close(rung.heat_net.high.unwrap(), set.heat_net.high.unwrap());
        close(rung.air_ratio.unwrap().value, rung.rung.air_ratio_damper_left.unwrap());
        close(rung.gas.value, rung.rung.gas.kilograms_per_second());
    }
    // A dial errs by a part of its span, so that a low reading is less certain than a high one.
    let first_and_last = [swept.found.first().unwrap().gas, swept.found.last().unwrap().gas].map(share);
    assert!(first_and_last[0] > 1.5 * first_and_last[1], "{first_and_last:?}");
}

#[test]
fn a_rich_reading_of_the_sweep_warns_of_carbon_monoxide_and_a_lean_one_does_not() {
    let swept = plant(BELLS).sweep(true).unwrap();
    let poisons = |index: usize| {
        swept.hazards.iter().any(|hazard| hazard.kind.key() == "carbon_monoxide" && hazard.setting() == Some(index))
    };
    for (index, rung) in swept.found.iter().enumerate() {
        let ratio = rung.air_ratio.unwrap().value;
        // Between them lies what the glowing chamber decides.
        assert!(ratio > 0.95 || poisons(index), "{ratio}");
        assert!(ratio < 1.1 || !poisons(index), "{ratio}");
    }
    assert!(poisons(swept.found.len() - 1));
}

#[test]
fn the_certainty_and_the_lighting_of_a_setting_are_those_of_the_sheet() {
    let (plant, sheet) = (plant(BELLS), sheet(BELLS));
    for (index, sure) in sheet.sure.iter().enumerate() {
        let asked = plant.certainty(index).unwrap();
        close(asked.found.unwrap().gas.expanded, sure.unwrap().gas.expanded);
        let lighting = plant.setting_lighting(index).unwrap().found.unwrap().lighting;
        assert_eq!(lighting, sheet.lighting.as_ref().unwrap().settings[index].lighting);
    }
    assert!(plant.certainty(9).is_err());
}

#[test]
fn gas_of_the_firing_and_time_of_the_cylinder_have_the_ends_of_the_gas() {
    let sheet = sheet(&blank());
    let firing = sheet.firing().found;
    let shares: Vec<f64> = sheet.sure.iter().map(|sure| sure.unwrap().gas.relative()).collect();
    let [least, most] = [f64::min, f64::max].map(|of| shares.iter().copied().reduce(of).unwrap());
    // A sum of fires is as sure as the fires it is of.
    assert!((least..=1.2 * most).contains(&share(firing.gas)), "{} of {shares:?}", share(firing.gas));
    let cylinder = sheet.cylinder().found.unwrap();
    for (lasts, (setting, share)) in cylinder.lasts.iter().zip(sheet.settings.iter().zip(shares)) {
        let lasts = lasts.unwrap();
        let gas = setting.gas.kilograms_per_second();
        // The shortest time is that of the largest draw, and empties the same cylinder.
        close(lasts.low.unwrap() * gas * (1.0 + share), cylinder.block.left.kilograms());
        close(lasts.high.unwrap() * gas * (1.0 - share), cylinder.block.left.kilograms());
    }
}

#[test]
fn ends_of_the_chambers_temperature_are_held_by_the_ends_of_its_fire() {
    let file = run(&[]);
    let sheet = sheet(&std::fs::read_to_string(file.path()).unwrap());
    let held = sheet.chamber().unwrap().found.unwrap();
    let (settings, round): (Vec<Holding>, Vec<Holding>) = held.iter().copied().partition(|held| held.setting.is_some());
    assert!(!settings.is_empty() && round.len() > 5);
    let block = sheet.furnace.as_ref().unwrap();
    for held in &settings {
        let [low, high] = [held.chamber.low.unwrap(), held.chamber.high.unwrap()];
        // Between two round temperatures the fire rises with the temperature as a straight line does or faster: the gas
        // alone moves the chamber by less than its ends.
        let slope = (round[round.len() - 1].fire.value - round[round.len() - 3].fire.value) / 200.0;
        assert!(high - low > held.fire.expanded().unwrap() / slope, "{held:?}");
        assert!(low < held.chamber.value && held.chamber.value < high);
    }
    // The fire that keeps a temperature near the chamber's own is as sure as the sheet says.
    let own = round.iter().min_by(|one, other| {
        let off = |held: &Holding| (held.chamber.value - block.temperature.kelvin()).abs();
        off(one).total_cmp(&off(other))
    });
    let own = share(own.unwrap().fire);
    let said = share(block.course.kept_long);
    assert!((own / said - 1.0).abs() < 0.25, "{own} against {said}");
    let rows = json(&["chamber", file.path()]);
    let ends = |key: &str| rows["rows"][0][key].as_f64().unwrap();
    assert!(ends("chamber_temperature_low_k") < ends("chamber_temperature_k"));
    assert!(ends("heat_net_high_w") > ends("heat_net_w"));
}

#[test]
fn the_blower_the_purge_and_the_setpoints_warn_as_the_sheet_does() {
    let sheet = sheet(BELLS);
    let blower = sheet.blower();
    let found = blower.found.unwrap();
    close(found.surplus.value, found.block.surplus.pascals());
    let (gross, net) = (found.largest_gross.unwrap(), found.largest_net.unwrap());
    close(share(gross), share(net));
    assert!(share(net) > 0.01 && share(net) < 0.2);
    assert_eq!(blower.hazards, sheet.hazards);
    assert_eq!(sheet.purge().hazards, sheet.hazards);
    close(sheet.purge().found.value, sheet.purge.time.seconds());
    assert!(sheet.lighting().found.is_some());
    let rich = sheet.setpoints(&Asked { air_ratio: Some(0.8), ..Asked::default() }).unwrap();
    assert!(rich.hazards.iter().any(|hazard| hazard.kind.key() == "carbon_monoxide"));
    close(rich.found.air_ratio, 0.8);
}
