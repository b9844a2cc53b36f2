//! How many steps each search takes at worst, so that a chip can be sure of its time.

use super::cases::{ACCEPTED, IN_USE, JetCase, spread};
use super::rig::Rig;
use jetwright::air::{Damper, DamperKind};
use jetwright::orifice::{Edge, Jet, Supply};
use jetwright::quantity::{GaugePressure, Length};
use jetwright::{Input, Scalar, solve};

/// Long bores crossing from laminar to turbulent, the hardest for the subsonic solution.
fn passages() -> impl Iterator<Item = JetCase> {
    let measures = [0.25e-3, 0.4e-3, 0.8e-3].into_iter().flat_map(|bore| {
        [0.02, 0.04, 0.065]
            .into_iter()
            .flat_map(move |length| [0.0, 0.5e-3].into_iter().map(move |roughness| (bore, length, roughness)))
    });
    measures.flat_map(|(bore, length, roughness)| {
        (0..8 * 80).map(move |index| JetCase {
            gas: index % 8,
            bore,
            length,
            edge: Edge::Square,
            roughness,
            approach: None,
            ambient: 58_000.0,
            gauge: 10.0 * 45_000.0_f64.powf(index as f64 / 640.0),
            back: 0.0,
            kelvin: 238.15 + 90.0 * spread::<1>(index)[0],
        })
    })
}

fn worst_subsonic<S: Scalar>(cases: impl Iterator<Item = JetCase>) -> usize {
    let iterations = cases.filter_map(|case| case.bore_flow::<S>()).map(|flow| flow.unwrap());
    iterations.filter(|flow| !flow.choked).map(|flow| flow.iterations).max().unwrap()
}

#[test]
fn a_bore_takes_few_newton_steps() {
    let breaths = || {
        JetCase::cover(&ACCEPTED, 3000).enumerate().map(|(index, case)| {
            let gauge = 10.0_f64.powi(index as i32 % 15 - 14);
            JetCase { gauge, back: 0.0, ..case }
        })
    };
    let all =
        || JetCase::cover(&ACCEPTED, 12_000).chain(JetCase::cover(&IN_USE, 6_000)).chain(breaths()).chain(passages());
    let (double, single) = (worst_subsonic::<f64>(all()), worst_subsonic::<f32>(all()));
    // Met among 300 000 jets: 9 and 8.
    assert!(double <= 10 && single <= 9, "{double} {single}");
}

/// The searches of `pressure_for_heat` and `bore_for_heat`, asked for the flow of the case itself and for half of it.
fn worst_inverse<S: Scalar>(count: usize) -> [usize; 2] {
    let mut worst = [0; 2];
    for case in JetCase::cover(&IN_USE, count) {
        let (gas, supply) = (case.gas::<S>(), case.supply::<S>());
        let (Ok(jet), Ok(flow)) = (case.jet::<S>(), case.flow::<S>()) else { continue };
        for share in [1.0, 0.5] {
            let wanted = flow.mass_flow.kilograms_per_second() * S::c(share);
            let missing = |jet: &Jet<S>, supply: &Supply<S>| {
                jet.flow(&gas, supply).map_or(-wanted, |flow| flow.mass_flow.kilograms_per_second() - wanted)
            };
            let top = S::c(Input::GaugePressure.range().max);
            let gauge = solve::root(Input::GaugePressure, supply.back.pascals().larger(S::zero()), top, |gauge| {
                missing(&jet, &Supply { gauge: GaugePressure::from_pascals(gauge), ..supply })
            });
            let (least, most) = (S::c(Input::Bore.range().min), S::c(Input::Bore.range().max));
            let shape = jetwright::orifice::BoreShape { approach: None, ..case.shape::<S>() };
            let bore = solve::root(Input::Bore, least, most, |bore| {
                let jet = Jet::new(shape.with_diameter(Length::from_meters(bore)).unwrap());
                missing(&jet, &supply)
            });
            for (worst, root) in worst.iter_mut().zip([gauge, bore]) {
                *worst = (*worst).max(root.map_or(0, |root| root.iterations));
            }
        }
    }
    worst
}

#[test]
fn the_pressure_and_the_bore_for_a_heat_take_few_flows() {
    // Met among 80 000 searches each: 17 and 16 in double precision, one less in single.
    for worst in [worst_inverse::<f64>(1500), worst_inverse::<f32>(1500)] {
        assert!(worst.iter().all(|&taken| (5..=20).contains(&taken)), "{worst:?}");
    }
}

/// Evaluations of a run, of a demand, of a damper's search and of the highest gauge's.
fn worst_burner<S: Scalar>(count: usize) -> [usize; 4] {
    let mut worst = [0; 4];
    let gate = Damper::<S>::new(DamperKind::BlastGate, Length::from_millimeters(S::c(76.0))).unwrap();
    let disc = Damper::<S>::new(DamperKind::Butterfly, Length::from_millimeters(S::c(76.0))).unwrap();
    for rig in Rig::cover(count) {
        let (burner, conditions, ratio) = (rig.burner::<S>(), rig.conditions::<S>(), S::c(rig.air_ratio));
        let run = burner.run(&conditions, rig.gauge(), S::c(rig.opening)).map_or(0, |run| run.iterations);
        let demand = burner.demand(&conditions, rig.gauge(), ratio).map_or(0, |demand| demand.iterations);
        let (low, high) = (S::c(0.1), S::one());
        let damper = [&gate, &disc].map(|damper| {
            let asked = damper.loss_coefficient(S::c(rig.opening)).unwrap().ln();
            solve::root(Input::DamperOpening, low, high, |at| damper.loss_coefficient(at).unwrap().ln() - asked)
                .map_or(0, |root| root.iterations)
        });
        let surplus = |gauge: S| {
            let gauge = GaugePressure::from_pascals(gauge);
            burner.demand(&conditions, gauge, ratio).and_then(|demand| burner.surplus(&conditions, &demand))
        };
        let top = S::c(Input::GaugePressure.range().max);
        let highest = solve::root(Input::GaugePressure, S::c(5.0), top, |gauge| surplus(gauge).unwrap_or(-top))
            .map_or(0, |root| root.iterations);
        for (worst, taken) in worst.iter_mut().zip([run, demand, damper[0].max(damper[1]), highest]) {
            *worst = (*worst).max(taken);
        }
    }
    worst
}

#[test]
fn a_burner_takes_few_evaluations() {
    // Met among 12 000 burners: 43, 29, 9 and 51; the last where it ends at the border of a liquid.
    for worst in [worst_burner::<f64>(600), worst_burner::<f32>(600)] {
        let within = |(&taken, most): (&usize, usize)| (3..=most).contains(&taken);
        assert!(worst.iter().zip([48, 34, 12, 58]).all(within), "{worst:?}");
    }
}
