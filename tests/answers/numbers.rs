//! The numbers of good answers: against outside ones and against each other.

use std::f64::consts::FRAC_PI_4;

use super::{BurnerFile, GAUGE, json, number};

fn close(found: f64, wanted: f64, share: f64) {
    assert!((found / wanted - 1.0).abs() <= share, "{found} instead of {wanted}");
}

#[test]
fn the_command_gives_published_numbers() {
    // ISO 2533:1975, 1000 m geometric: 89 876.29 Pa (fluids 1.3.1, ATMOSPHERE_1976).
    let flow = ["flow", "--gas", "propane", "--gauge", "5 psi", "--bore", "1.8 mm"];
    let site = json(&[&flow[..], &["--altitude", "1000 m"]].concat());
    close(number(&site, "/ambient_pressure_pa"), 89_876.29, 1e-4);
    // Lossless mass flux by CoolProp 8.0.0 (HEOS), isentropic to the back pressure, or to where it is largest:
    // propane 288.15 K, 101 325 Pa + 5 psi; methane 293.15 K, 83 500 Pa + 30 psi, choked.
    let methane =
        ["flow", "--gas", "methane", "--gauge", "30 psi", "--bore", "1.8 mm", "--station-pressure", "835 hPa"];
    for (arguments, flux, choked) in [
        (flow.to_vec(), 344.865_314, false),
        ([&methane[..], &["--air-temperature", "20 C"]].concat(), 500.274_634, true),
    ] {
        let answer = json(&arguments);
        let row = |key: &str| number(&answer, &format!("/rows/0/{key}"));
        let area = FRAC_PI_4 * 1.8e-3 * 1.8e-3;
        close(row("mass_flow_kg_per_s") / (row("discharge_coefficient") * area), flux, 1e-3);
        close(row("mass_flux_kg_per_m2_s"), flux, 1e-3);
        assert_eq!(answer["rows"][0]["choked"], choked);
    }
    // Five oxygen to a propane: 5 * 28.9655 / 0.20946 over 44.0956 is 15.68 kg of dry air a kilogram.
    let air = json(&["air", "--gas", "propane", "--heat", "26 kW net"]);
    close(number(&air, "/air_stoichiometric_kg_per_kg"), 15.68, 1e-3);
    close(number(&air, "/air_stoichiometric_m3_per_m3"), 5.0 / 0.209_46, 1e-3);
    // 46.34 MJ/kg net, ISO 6976:2016 at 15 degC.
    close(number(&air, "/heat_net_w") / number(&air, "/mass_flow_kg_per_s"), 46.34e6, 1e-3);
    // 2 inch, 5 psi, 60 minutes and degrees as their definitions have them.
    let sheet = BurnerFile::bells(&[]).json();
    close(number(&sheet, "/settings/0/gauge_pressure_pa"), 5.0 * 4.448_221_615_260_5 / 0.0254_f64.powi(2), 1e-12);
    close(number(&sheet, "/settings/0/duration_s"), 3600.0, 1e-12);
    close(number(&sheet, "/site/air_temperature_k"), 293.15, 1e-12);
    close(number(&sheet, "/settings/1/heat_net_w"), 26_000.0, 1e-6);
    close(number(&sheet, "/settings/0/air_ratio"), 1.05, 1e-6);
    // What burns in the time and what it costs, by hand from the flow.
    let kilograms = 3600.0 * number(&sheet, "/settings/0/mass_flow_kg_per_s");
    close(number(&sheet, "/settings/0/gas_used_kg"), kilograms, 1e-12);
    close(number(&sheet, "/settings/0/cost"), 2.4 * kilograms, 1e-12);
}

#[test]
fn pressures_of_a_setting_balance() {
    // Three heads on one blower, with 2 jets each.
    let changes = [
        ("port_length", "count = 3\nport_length"),
        ("edge =", "count = 6\nedge ="),
        (GAUGE, "gauge = \"1 psi\"\ndamper = \"70 %\""),
    ];
    let sheet = BurnerFile::bells(&changes).json();
    let at = |key: &str| number(&sheet, &format!("/settings/0/{key}"));
    close(at("blower_pressure_pa"), at("path_loss_pa") + at("back_pressure_pa"), 1e-9);
    close(at("back_pressure_pa"), at("head_pressure_pa") + at("chamber_pressure_pa") - at("push_pa"), 1e-6);
    close(at("air_kg_per_s"), at("air_ratio") * at("air_stoichiometric_kg_per_s"), 1e-9);
    close(at("air_kg_per_s"), at("air_flow_m3_per_s") * number(&sheet, "/site/air_density_kg_per_m3"), 1e-9);
    let area = 3.0 * 2.0 * FRAC_PI_4 * 1.8e-3 * 1.8e-3;
    close(at("mass_flow_kg_per_s"), at("discharge_coefficient") * area * at("mass_flux_kg_per_m2_s"), 1e-9);
    close(at("heat_net_w"), at("mass_flow_kg_per_s") * number(&sheet, "/gas/heating_value_net_j_per_kg"), 1e-9);
    assert_eq!((number(&sheet, "/jet/jets"), number(&sheet, "/jet/heads")), (6.0, 3.0));
}

#[test]
fn ways_of_saying_the_same_agree() {
    let flow = |more: &[&str]| json(&[&["flow", "--gauge", "5 psi"], more].concat());
    let same = |one: &serde_json::Value, other: &serde_json::Value| assert_eq!(one["rows"], other["rows"]);
    let bore = ["--bore", "0.07 in"];
    same(&flow(&["--gas", "propane", "--drill", "number 50"]), &flow(&[&["--gas", "propane"], &bore[..]].concat()));
    same(&flow(&[&["--gas", "propane"], &bore[..]].concat()), &flow(&[&["--gas", "C3H8=1"], &bore[..]].concat()));
    same(&flow(&[&["--gas", "methane"], &bore[..]].concat()), &flow(&[&["--gas", "CH4=1"], &bore[..]].concat()));
    let cold = ["--gas-temperature", "15 C"];
    same(
        &flow(&["--gas", "propane", "--bore", "2 mm"]),
        &flow(&[&["--gas", "propane", "--bore", "2 mm"], &cold[..]].concat()),
    );
    // Gauges stay in the order asked, and a pair of jets passes twice what one does.
    let gauges =
        ["flow", "--gas", "propane", "--bore", "2 mm", "--gauge", "9 psi", "--gauge", "0.2 bar", "--gauge", "5 psi"];
    let (one, two) = (json(&gauges), json(&[&gauges[..], &["--jets", "2"]].concat()));
    for (index, pascals) in [62_052.816, 20_000.0, 34_473.786].into_iter().enumerate() {
        close(number(&one, &format!("/rows/{index}/gauge_pressure_pa")), pascals, 1e-6);
        let key = format!("/rows/{index}/mass_flow_kg_per_s");
        close(number(&two, &key), 2.0 * number(&one, &key), 1e-12);
    }
}

#[test]
fn gross_and_net_ask_for_different_bores() {
    let jet = |heat: &str| json(&["jet", "--gas", "propane", "--gauge", "5 psi", "--heat", heat]);
    let (net, gross) = (number(&jet("26 kW net"), "/bore_m"), number(&jet("26 kW gross"), "/bore_m"));
    // Net over gross is 46.34 over 50.37 MJ/kg (ISO 6976:2016), and the area goes with the flow, but for the
    // little that the coefficient changes with the hole's length in diameters.
    close((gross / net).powi(2), 46.34 / 50.37, 0.01);
    // The drills either side, and the gauge that makes each exact, lead back to the heat.
    let answer = jet("26 kW net");
    let bores = [number(&answer, "/nearest/0/bore_m"), number(&answer, "/nearest/1/bore_m")];
    assert!(bores[0] <= net && net <= bores[1], "{bores:?} {net}");
    for index in 0..2 {
        let at = |key: &str| number(&answer, &format!("/nearest/{index}/{key}"));
        close(at("heat_net_w"), 26_000.0 * (1.0 + at("heat_error")), 1e-9);
        let gauge = format!("{} Pa", at("exact_gauge_pressure_pa"));
        let name = answer["nearest"][index]["name"].as_str().unwrap();
        let back = json(&["flow", "--gas", "propane", "--gauge", &gauge, "--drill", name]);
        close(number(&back, "/rows/0/heat_net_w"), 26_000.0, 1e-6);
    }
}
