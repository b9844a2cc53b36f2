//! Laws of lighting: a fixed flow of air whose numbers are known by hand, the invented burner, and others around it.

use super::rig::{BELL_FOUNDRY, Rig};
use crate::tolerance::{BORDER, SINGLE_PRECISION};
use jetwright::air::{AirPath, Blower, BlowerPoint};
use jetwright::burner::{
    AirSetting, Burner, Conditions, FlameGradients, GLOW_CELSIUS, Glow, GoesOut, Head, LightingRange, Lights, Span,
    UnlitChamber, air_changes, fills_after, ignition_delay, residence,
};
use jetwright::combustion::flames_measured;
use jetwright::gas::{Gas, Mixture, Species};
use jetwright::orifice::{BoreLength, BoreShape, Jet};
use jetwright::quantity::{
    AbsolutePressure, ActualVolumeFlow, Density, GaugePressure, Length, MassFlow, Power, PressureDifference,
    Temperature, Volume,
};
use jetwright::{Error, Input, Scalar, Site};

/// A burner at 1 600 m whose blower gives the air that 23.2 kW gross of propane at 6 psi just needs, whatever stands
/// against it: 7.30 g/s of dry air.
pub(super) fn fixed_air() -> (Burner, Conditions) {
    let mm = Length::from_millimeters;
    let cold = Temperature::from_celsius(20.0);
    let site = Site::at_altitude(Length::from_meters(1600.0), cold, 0.0).unwrap();
    let gas = Gas::from(Species::Propane);
    let conditions =
        Conditions { site, gas, gas_temperature: cold, mixture_temperature: cold, chamber_temperature: cold };
    // 23.2 kW of 50.33 MJ/kg burn with 15.68 kg of air a kilogram.
    let air = MassFlow::from_kilograms_per_second(23.2e3 / 50.33e6 * 15.68).at(site.air_density());
    let point = |flow: f64, pascals: f64| BlowerPoint {
        flow: air * flow,
        static_pressure: PressureDifference::from_pascals(pascals),
        shaft_power: None,
    };
    let curve = [point(0.0, 6000.0), point(0.999, 5900.0), point(1.001, 10.0)];
    let shape = BoreShape::drilled(BoreLength::Fixed(mm(12.0)));
    let jet = |bore: f64| Jet::new(shape.with_diameter(mm(bore)).unwrap());
    let burner = |bore: f64| Burner {
        jet: jet(bore),
        head: Head::with_ports(200.0, mm(3.0), mm(10.0), 0.3).unwrap(),
        head_count: 1.0,
        blower: Blower::new(&curve, site.air_density()).unwrap(),
        path: AirPath::new(&[], None).unwrap(),
        mixing_tube: None,
        exhaust: None,
    };
    let gross = |bore: f64| {
        let running = burner(bore).run(&conditions, GaugePressure::from_psi(6.0), 1.0).unwrap();
        gas.gross_heating_value().of(running.gas).watts()
    };
    let (mut low, mut high) = (0.8, 3.0);
    for _ in 0..50 {
        let middle = 0.5 * (low + high);
        if gross(middle) < 23.2e3 { low = middle } else { high = middle }
    }
    (burner(low), conditions)
}

pub(super) const WIDE_OPEN: AirSetting = AirSetting::Opening(1.0);

pub(super) fn psi(pressure: f64) -> GaugePressure {
    GaugePressure::from_psi(pressure)
}

pub(super) fn losing(watts: f64) -> Glow {
    Glow { volume: None, loss: Some(Power::from_watts(watts)) }
}

pub(super) fn range(
    burner: &Burner,
    conditions: &Conditions,
    air: AirSetting,
    constant: f64,
    glow: &Glow,
) -> LightingRange {
    burner.lighting_range(conditions, air, Some(constant), glow).unwrap()
}

/// Worked by hand for this burner with a jet whose flow goes about with the root of the gauge.
#[test]
fn the_worked_case_lights_and_holds_where_its_hand_says() {
    let (burner, conditions) = fixed_air();
    let state = |gauge: f64| {
        let running = burner.run(&conditions, psi(gauge), 1.0).unwrap();
        (1.0 / running.air_ratio.unwrap(), burner.port_state(&conditions, &running).unwrap())
    };
    for (gauge, richness) in [(1.0, 0.40), (2.0, 0.57), (4.0, 0.81), (6.0, 1.00), (7.0, 1.08), (9.0, 1.23)] {
        assert!((state(gauge).0 - richness).abs() < 0.015, "{gauge} psi: {}", state(gauge).0);
    }
    // A head whose flames bear the gradient of a plain port would have these, 1/s, and light from these gauges, psi. At
    // the last the mixture has 1.12 times the gas, and rich flames are slower by 4 %: the hand's 7.6 rises to 7.8.
    let gradient = state(7.0).1.gradient;
    for (limit, lights_from) in [(2000.0, 6.2), (3100.0, 7.0), (4000.0, 7.8)] {
        let cold = range(&burner, &conditions, WIDE_OPEN, gradient / limit, &losing(0.0)).cold.unwrap();
        assert!(cold.low_ends && (cold.low.psi() / lights_from - 1.0).abs() < 0.025, "{limit}: {}", cold.low.psi());
    }
    // Losses at 760 degC, kW, and the gauge that holds them, psi.
    for (loss, holds) in [(1.4, 0.76), (2.7, 1.06), (4.7, 1.59)] {
        let glowing = range(&burner, &conditions, WIDE_OPEN, 1.0, &losing(loss * 1e3)).glowing.unwrap();
        assert!((glowing.low.psi() / holds - 1.0).abs() < 0.06, "{loss}: {}", glowing.low.psi());
    }
}

#[test]
fn a_fire_whose_air_is_turned_down_with_its_gas_lights_lower_than_one_whose_damper_is_left() {
    let (burner, conditions) = fixed_air();
    let constant = burner.head_constant(&conditions, psi(7.0), WIDE_OPEN).unwrap();
    let left = range(&burner, &conditions, WIDE_OPEN, constant, &losing(0.0)).cold.unwrap();
    let turned = range(&burner, &conditions, AirSetting::Ratio(1.0), constant, &losing(0.0)).cold.unwrap();
    assert!(left.low_ends && (left.low.psi() - 7.0).abs() < 1e-3);
    assert!(turned.low.psi() < 0.5 * left.low.psi(), "{}", turned.low.psi());
    for rig in Rig::cover(40) {
        let (burner, conditions) = (rig.burner::<f64>(), rig.conditions::<f64>());
        let open = AirSetting::Opening(rig.opening);
        let Ok(constant) = burner.head_constant(&conditions, rig.gauge(), open) else { continue };
        let glow = losing(0.0);
        let Some(left) = range(&burner, &conditions, open, constant, &glow).cold else { continue };
        let ratio = burner.lighting(&conditions, left.low, open, None, &glow).unwrap().air_ratio.unwrap();
        if left.low_ends && (0.8..1.5).contains(&ratio) {
            let turned = range(&burner, &conditions, AirSetting::Ratio(ratio), constant, &glow).cold;
            assert!(turned.is_some_and(|turned| turned.low < left.low), "{rig:?}");
        }
    }
}

#[test]
fn a_tenth_of_the_damper_moves_both_ends() {
    let rig = Rig { blower_pressure: 400.0, ..BELL_FOUNDRY };
    let (burner, conditions) = (rig.burner::<f64>(), rig.conditions::<f64>());
    let constant =
        burner.head_constant(&conditions, GaugePressure::from_pascals(25e3), AirSetting::Opening(0.2)).unwrap();
    let at = |opening: f64| range(&burner, &conditions, AirSetting::Opening(opening), constant, &losing(2e3));
    let air = |opening: f64| {
        let running = burner.run(&conditions, GaugePressure::from_pascals(25e3), opening).unwrap();
        running.air.kilograms_per_second()
    };
    let ends = |opening: f64| {
        let range = at(opening);
        let (cold, glowing) = (range.cold.unwrap(), range.glowing.unwrap());
        assert!(cold.low_ends && cold.high_ends && glowing.low_ends);
        [cold.low, cold.high, glowing.low].map(GaugePressure::pascals)
    };
    assert!((ends(0.2)[0] / 25e3 - 1.0).abs() < 1e-6);
    for (less, more) in [(0.18, 0.2), (0.2, 0.22)] {
        // The same mixture of more air wants more gas, and so a gauge as the square of the air.
        let grown = (air(more) / air(less)).powi(2) - 1.0;
        assert!(grown > 0.04, "{grown}");
        let (below, above) = (ends(less), ends(more));
        let [cold_low, cold_high, glowing_low] = core::array::from_fn(|end| (above[end] / below[end] - 1.0) / grown);
        // The ports are faster too: the low end wants a richer flame besides, the high one a less rich one.
        assert!(cold_low > 1.3 && (0.9..1.0).contains(&cold_high), "{cold_low} {cold_high}");
        // The same loss of the walls is less of a larger fire.
        assert!((0.8..1.0).contains(&glowing_low), "{glowing_low}");
    }
    // A cold chamber wants several times the pressure that holds it glowing (common practice, no source).
    assert!(ends(0.2)[0] > 2.5 * ends(0.2)[2], "{:?}", ends(0.2));
}

#[test]
fn the_setting_seen_is_the_border_it_calibrates() {
    let mut met = 0;
    for rig in Rig::cover(250) {
        let (burner, conditions) = (rig.burner::<f64>(), rig.conditions::<f64>());
        let air = AirSetting::Opening(rig.opening);
        let Ok(constant) = burner.head_constant(&conditions, rig.gauge(), air) else { continue };
        let glow = losing(1e3);
        let at = |factor: f64| burner.lighting(&conditions, rig.gauge(), air, Some(constant * factor), &glow).unwrap();
        assert_eq!(at(1.001).lights, Lights::Cold, "{rig:?}");
        assert_eq!(at(0.999).goes_out, Some(GoesOut::BlowOff), "{rig:?}");
        assert_ne!(at(0.999).lights, Lights::Cold);
        met += 1;
    }
    assert!(met > 30, "{met}");
    let (burner, conditions) = fixed_air();
    let lean = burner.head_constant(&conditions, psi(1.0), WIDE_OPEN);
    assert!(
        matches!(lean, Err(Error::NoSolution { input: Input::AirRatio, nearest }) if (2.3..2.6).contains(&nearest))
    );
}

#[test]
fn without_a_setting_seen_only_the_limits_are_claimed() {
    let (burner, conditions) = fixed_air();
    let found = burner.lighting_range(&conditions, WIDE_OPEN, None, &losing(0.0)).unwrap();
    let Span { low, low_ends, high, high_ends } = found.within_limits.unwrap();
    assert!(found.cold.is_none() && low_ends && high_ends);
    // NFPA 497: 2.1 to 9.5 % of propane, of 23.87 volumes of dry air; moved by 0.0721 % a kelvin from 25 to 20 degC.
    let ratio = |share: f64| (1.0 / share - 1.0) / 23.871;
    for (gauge, expected) in [(low, ratio(0.021 * 1.003605)), (high, ratio(0.095 * 0.996395))] {
        let running = burner.run(&conditions.cold(), gauge, 1.0).unwrap();
        assert!((running.air_ratio.unwrap() / expected - 1.0).abs() < 2e-3, "{expected} {running:?}");
    }
    let just = |factor: f64| {
        let gauge = GaugePressure::from_pascals(low.pascals() * factor);
        burner.lighting(&conditions, gauge, WIDE_OPEN, None, &losing(0.0)).unwrap()
    };
    assert_eq!((just(1.001).lights, just(0.999).goes_out), (Lights::Cold, Some(GoesOut::TooLean)));
    assert_eq!((just(0.999).lights, just(0.05).lights), (Lights::Glowing, Lights::Never));
}

#[test]
fn a_small_chamber_must_glow_brighter() {
    let (burner, conditions) = fixed_air();
    let walls = |liters: f64| {
        let glow = Glow { volume: Some(Volume::from_liters(liters)), loss: None };
        burner.lighting(&conditions, psi(6.0), WIDE_OPEN, None, &glow).unwrap().walls.unwrap().celsius()
    };
    // Gases stay .78 s in 20 L and .039 s in 1 L of a 23 kW fire, and propane waits .082 s at 760 degC, half of it 40 K up.
    assert!((walls(20.0) - GLOW_CELSIUS).abs() < 1e-6);
    assert!(walls(1.0) > GLOW_CELSIUS + 30.0 && walls(1.0) < GLOW_CELSIUS + 60.0, "{}", walls(1.0));
    assert!(walls(0.5) > walls(1.0));
    let gases = MassFlow::from_grams_per_second(7.69);
    let stays = residence(
        Volume::from_liters(20.0),
        gases,
        AbsolutePressure::from_hectopascals(835.2),
        Temperature::from_kelvin(1033.15),
    );
    assert!((stays.unwrap().seconds() / 0.72 - 1.0).abs() < 0.05, "{stays:?}");
    let delay = |species, kelvin| ignition_delay(&Mixture::<f64>::pure(species), Temperature::from_kelvin(kelvin));
    for species in [Species::Methane, Species::Propane, Species::Ethane] {
        let mut before = f64::INFINITY;
        for kelvin in [300.0, 700.0, 973.0, 1033.0, 1200.0, 1600.0, 2300.0] {
            let here = delay(species, kelvin).unwrap().seconds();
            assert!(here > 0.0 && (here < before || here > 1e20), "{kelvin}: {here}");
            before = here;
        }
    }
    assert!(delay(Species::Propane, 2301.0).is_err());
}

#[test]
fn a_gradient_rises_with_the_flow_and_falls_with_the_width_of_the_hole() {
    let mm = Length::from_millimeters;
    let rho = Density::from_kilograms_per_cubic_meter(1.0);
    let heads = [
        Head::with_ports(20.0, mm(3.0), mm(10.0), 0.2).unwrap(),
        Head::with_slot(mm(2.0), mm(80.0), mm(10.0)).unwrap(),
    ];
    let gradient =
        |head: &Head, grams: f64| head.wall_gradient(&head.flow(MassFlow::from_grams_per_second(grams), rho, 1.8e-5));
    for head in &heads {
        let mut before = 0.0;
        for step in 1..400 {
            let here = gradient(head, 0.01 * 1.02_f64.powi(step));
            assert!(here > before && (step == 1 || here < before * 1.12), "{step}: {before} {here}");
            before = here;
        }
        // Laminar: twice the flow, twice the gradient.
        assert!((gradient(head, 0.04) / gradient(head, 0.02) - 2.0).abs() < 1e-9);
        let wider = head.resized(1.2, 1.0).unwrap();
        assert!(gradient(&wider, 5.0) < gradient(head, 5.0));
        assert!((wider.narrowest().meters() / head.narrowest().meters() - 1.2).abs() < 1e-9);
    }
    // Laminar between plates 6 v/h, in pipes 8 v/d (Poiseuille).
    let speed = |head: &Head, grams: f64| grams * 1e-3 / head.area().square_meters();
    let (pipe, slot) = (speed(&heads[0], 0.2), speed(&heads[1], 0.2));
    assert!((gradient(&heads[0], 0.2) / (8.0 * pipe / 3e-3) - 1.0).abs() < 1e-9);
    assert!((gradient(&heads[1], 0.2) / (6.0 * slot / 2e-3) - 1.0).abs() < 0.03, "the ends of the slot aside");
    // More holes share the flow; the wall they take is the head's.
    let more = heads[0].resized(1.0, 1.5).unwrap();
    assert!((gradient(&more, 0.3) / gradient(&heads[0], 0.2) - 1.0).abs() < 1e-9);
    assert_eq!(more.ports(), Some(30.0));
    assert!(heads[0].resized(1.0, 5.0).is_err(), "the holes would take more than the wall");
}

#[test]
fn what_a_flame_stands_is_most_a_little_rich_and_nothing_outside_the_limits() {
    let conditions = fixed_air().1;
    let flame =
        |ratio: f64, kelvin: f64| FlameGradients::new(&conditions, ratio, Temperature::from_kelvin(kelvin)).unwrap();
    let best = flame(1.0 / 1.08, 293.15);
    for ratio in [0.7, 0.8, 1.05, 1.3, 1.8] {
        let here = flame(ratio, 293.15);
        assert!(here.flashback < best.flashback && here.blow_off < best.blow_off, "{ratio}");
        assert!(here.quenching_distance > best.quenching_distance && here.flashback < here.blow_off);
        // Fresh air feeds a rich rim and thins a lean one.
        assert_eq!(here.blow_off_in_air > here.blow_off, ratio < 1.0, "{ratio}");
    }
    let same = flame(1.0, 293.15);
    assert!((same.blow_off_in_air / same.blow_off - 1.0).abs() < 1e-12);
    let none = flame(2.5, 293.15);
    assert_eq!((none.flashback, none.blow_off, none.blow_off_in_air), (0.0, 0.0, 0.0));
    assert!(flame(1.0, 400.0).flashback > 1.3 * best.flashback * 0.9, "a hot port flashes back sooner");
}

#[test]
fn unlit_gas_in_its_limit_cases() {
    let liters = Volume::from_liters;
    let flow = ActualVolumeFlow::from_liters_per_second;
    let after = |volume: f64, inflow: f64, share: f64, limit: f64| {
        fills_after(liters(volume), flow(inflow), share, limit).unwrap().map(|time| time.seconds())
    };
    // 0.30 L/s of propane into 20 L: 1.4 s without air, about 2 s with the 7.2 L/s that just burn it.
    assert!((after(20.0, 0.30, 1.0, 0.021).unwrap() - 1.4).abs() < 0.03);
    assert!((after(20.0, 0.30 * 24.87, 1.0 / 24.87, 0.021).unwrap() - 2.0).abs() < 0.05);
    // Far below the share that comes in, the chamber fills as if nothing left it.
    assert!((after(20.0, 0.3, 1.0, 1e-5).unwrap() / (20.0 * 1e-5 / 0.3) - 1.0).abs() < 1e-4);
    assert!((after(40.0, 0.3, 1.0, 0.021).unwrap() / after(20.0, 0.3, 1.0, 0.021).unwrap() - 2.0).abs() < 1e-12);
    assert_eq!(after(20.0, 7.0, 0.021, 0.021), None, "a mixture at the limit never gets there");
    assert_eq!(after(20.0, 0.0, 1.0, 0.021), None);
    assert!(after(20.0, 7.0, 0.0211, 0.021).unwrap() > 10.0);
    assert!(fills_after(liters(0.0), flow(1.0), 1.0, 0.021).is_err());
    assert!((air_changes(1.0_f64, (-4.0_f64).exp()).unwrap() - 4.0).abs() < 1e-12);
    assert_eq!(air_changes(0.01, 0.02), Ok(0.0));
    assert!(air_changes(1.0, 0.0).is_err());
    // Purged with the air of the setting, and the more air the sooner.
    let rig = Rig { blower_pressure: 400.0, ..BELL_FOUNDRY };
    let (burner, conditions) = (rig.burner::<f64>(), rig.conditions::<f64>());
    let unlit = |opening: f64| burner.unlit(&conditions, BELL_FOUNDRY.gauge(), opening, liters(30.0)).unwrap();
    let (narrow, wide) = (unlit(0.15), unlit(0.2));
    assert!(wide.purge.unwrap() < narrow.purge.unwrap());
    assert!(wide.gas_share < narrow.gas_share && narrow.changes > 4.0);
    assert!(narrow.burnable_without_air < narrow.burnable_after);
}

#[test]
fn single_precision_agrees() {
    let close = |a: f64, b: f64, of: &dyn std::fmt::Debug| {
        assert!((a - b).abs() <= 3.0 * SINGLE_PRECISION * b.abs().max(1e-3), "{a} {b} {of:?}");
    };
    for rig in Rig::cover(80) {
        let glow = Glow { volume: Some(Volume::from_liters(20.0)), loss: Some(Power::from_watts(2e3)) };
        let single_glow = Glow { volume: Some(Volume::from_liters(20.0_f32)), loss: Some(Power::from_watts(2e3_f32)) };
        let double = rig.burner::<f64>().lighting(
            &rig.conditions(),
            rig.gauge(),
            AirSetting::Opening(rig.opening),
            Some(30.0),
            &glow,
        );
        let single = rig.burner::<f32>().lighting(
            &rig.conditions(),
            rig.gauge(),
            AirSetting::Opening(rig.opening as f32),
            Some(30.0),
            &single_glow,
        );
        let (Ok(double), Ok(single)) = (double, single) else { continue };
        if let (Some(a), Some(b)) = (single.air_ratio, double.air_ratio) {
            close(f64::from(a), b, &rig);
        }
        let at_a_border = double.pull.is_some_and(|pull| (pull / 30.0 - 1.0).abs() < BORDER);
        if let (Some(a), Some(b)) = (single.pull, double.pull) {
            close(f64::from(a).ln(), b.ln(), &rig);
            assert!(at_a_border || single.goes_out == double.goes_out, "{rig:?}");
        }
        if let (Some(a), Some(b)) = (single.walls, double.walls) {
            close(f64::from(a.kelvin()), b.kelvin(), &rig);
        }
    }
    let air = |opening: f64| AirSetting::Opening(opening);
    let (rig, glow) = (BELL_FOUNDRY, losing(2e3));
    let double = rig.burner::<f64>().lighting_range(&rig.conditions(), air(0.5), Some(100.0), &glow).unwrap();
    let single_glow = Glow { volume: None, loss: Some(Power::from_watts(2e3_f32)) };
    let single = rig
        .burner::<f32>()
        .lighting_range(&rig.conditions(), AirSetting::Opening(0.5), Some(100.0), &single_glow)
        .unwrap();
    for (a, b) in
        [(single.cold, double.cold), (single.glowing, double.glowing), (single.within_limits, double.within_limits)]
    {
        let (a, b) = (a.unwrap(), b.unwrap());
        close(f64::from(a.low.pascals()), b.low.pascals(), &a);
        assert_eq!((a.low_ends, a.high_ends), (b.low_ends, b.high_ends));
    }
}

#[test]
fn every_burner_gets_an_answer_that_is_finite() {
    for rig in Rig::cover(50) {
        let (burner, conditions) = (rig.burner::<f64>(), rig.conditions::<f64>());
        let glow = Glow { volume: Some(Volume::from_liters(5.0)), loss: Some(Power::from_watts(1e3)) };
        let Ok(range) = burner.lighting_range(&conditions, AirSetting::Opening(rig.opening), Some(50.0), &glow) else {
            panic!("{rig:?}")
        };
        for span in [range.within_limits, range.cold, range.glowing].into_iter().flatten() {
            assert!(
                span.low <= span.high && span.low.pascals() >= 199.9 && span.high.pascals() <= 450_000.0,
                "{rig:?}"
            );
        }
        if let (Some(cold), Some(limits)) = (range.cold, range.within_limits) {
            assert!(cold.low.pascals() >= limits.low.pascals() * (1.0 - 1e-6), "{rig:?}");
        }
        match burner.flashback_below(&conditions, AirSetting::Ratio(rig.air_ratio)) {
            Err(Error::NotMeasured { .. }) => assert!(flames_measured(&conditions.gas).is_err(), "{rig:?}"),
            found => drop(found.unwrap()),
        }
    }
}

/// The invented foundry's "light": 6 psi, damper wide open, a chamber of 20 L.
fn unlit_at(celsius: f64, heads: f64, liters: f64) -> jetwright::burner::ExplosiveChamber {
    let (burner, conditions) = fixed_air();
    let chamber =
        UnlitChamber { volume: Volume::from_liters(liters), heads, temperature: Temperature::from_celsius(celsius) };
    burner.explosive(&conditions, GaugePressure::from_psi(6.0), 1.0, &chamber).unwrap()
}

#[test]
fn a_warm_chamber_is_explosive_in_a_fraction_of_the_seconds_of_a_cold_one() {
    let (cold, warm) = (unlit_at(20.0, 1.0, 20.0), unlit_at(400.0, 1.0, 20.0));
    let seconds = |found: Option<jetwright::quantity::Duration>| found.unwrap().seconds();
    // By hand: 7.3 g/s of air and .46 of propane are .252 and .0105 mol/s; at 20 degC and 835 hPa 7.66 L/s of 4 % gas.
    let (share, flow) = (0.0105 / 0.2625, 0.2625 * 8.314 * 293.15 / 83_500.0);
    let by_hand = |kelvin: f64, limit: f64| -(0.020 / (flow * kelvin / 293.15)) * (1.0 - limit / share).ln();
    for (found, expected) in [
        // What surely burns: 2.1 % cold, 2.1 % (1 - .000721 375) = 1.53 % warm.
        (cold.burnable_after, by_hand(293.15, 0.0211)),
        (warm.burnable_after, by_hand(673.15, 0.0153)),
        // What may explode: 1.7 % cold, 1.7 % (1 - .0012 375) = .935 % warm.
        (cold.explosive_after, by_hand(293.15, 0.017)),
        (warm.explosive_after, by_hand(673.15, 0.00935)),
    ] {
        assert!((seconds(found) / expected - 1.0).abs() < 0.02, "{found:?} {expected}");
    }
    assert!(seconds(warm.explosive_after) < 0.3 * seconds(cold.explosive_after));
    assert!(!cold.lights_itself && !warm.lights_itself && unlit_at(500.0, 1.0, 20.0).lights_itself);
    // A quarter of the limit: ln(1/(.25 .00935)).
    assert!((warm.changes - 6.058).abs() < 1e-3, "{}", warm.changes);
}

#[test]
fn hotter_is_never_later_and_a_doubled_chamber_takes_twice_as_long() {
    let seconds = |found: Option<jetwright::quantity::Duration>| found.unwrap().seconds();
    let mut before = f64::INFINITY;
    for step in 0..60 {
        let found = unlit_at(20.0 + 20.0 * f64::from(step), 1.0, 20.0);
        let (after, narrow) = (seconds(found.explosive_after), found.burnable_after.map(|after| after.seconds()));
        assert!(after > 0.0 && after <= before && narrow.is_none_or(|narrow| after <= narrow), "{step}");
        assert!(seconds(found.explosive_without_air) < after);
        before = after;
    }
    let twice =
        seconds(unlit_at(400.0, 1.0, 40.0).explosive_after) / seconds(unlit_at(400.0, 1.0, 20.0).explosive_after);
    assert!((twice - 2.0).abs() < 1e-9);
}

#[test]
fn heads_that_share_a_chamber_fill_it_so_much_sooner() {
    let (mut burner, conditions) = fixed_air();
    burner.head_count = 2.0;
    let after = |heads: f64| {
        let (volume, temperature) = (Volume::from_liters(20.0), Temperature::from_celsius(20.0));
        let chamber = UnlitChamber { volume, heads, temperature };
        let found = burner.explosive(&conditions, GaugePressure::from_psi(6.0), 1.0, &chamber).unwrap();
        (found.explosive_without_air.unwrap().seconds(), found.purge.unwrap().seconds())
    };
    let ((alone, alone_purge), (both, both_purge)) = (after(1.0), after(2.0));
    assert!((alone / both - 2.0).abs() < 1e-9 && (alone_purge / both_purge - 2.0).abs() < 1e-9);
    // No more heads than there are.
    assert_eq!(after(3.0), after(2.0));
}
