//! A weighing gives back the jet that made it, as surely as it says.

use super::rig::BELL_FOUNDRY;
use jetwright::gas::Gas;
use jetwright::measure::{
    Compared, Dial, Finding, Measured, Reading, Run, Sizing, Spreads, Trust, UncertainJet, WeighingError, compare,
    join, measured_jet, of_hole, plan, starting_bore,
};
use jetwright::orifice::{BoreShape, Coefficient, Jet, Supply};
use jetwright::quantity::{AbsolutePressure, Duration, GaugePressure, Length, Mass, MassFlow, Temperature};
use jetwright::{Float, Scalar};

/// The invented foundry's jet: what the model takes it for.
struct Shop<F> {
    jet: Jet<F>,
    shape: BoreShape<F>,
    gas: Gas<F>,
    spreads: Spreads<F>,
}

fn shop<F: Float>(sizing: Sizing) -> Shop<F> {
    let (shape, bore) = (BELL_FOUNDRY.shape(), Length::from_millimeters(F::c(1.5)));
    let dial = Dial::usual(GaugePressure::from_psi(F::c(6.0)));
    Shop {
        jet: Jet::new(shape.with_diameter(bore).unwrap()),
        shape,
        gas: BELL_FOUNDRY.conditions().gas,
        spreads: Spreads::starting(bore, starting_bore(bore, sizing).unwrap(), dial),
    }
}

fn supply<F: Float>(psi: f64) -> Supply<F> {
    Supply {
        ambient: AbsolutePressure::from_pascals(F::c(83_500.0)),
        gauge: GaugePressure::from_psi(F::c(psi)),
        back: GaugePressure::from_pascals(F::c(600.0)),
        temperature: Temperature::from_celsius(F::c(10.0)),
    }
}

impl<F: Float> Shop<F> {
    fn model(&self, psi: f64) -> F {
        self.jet.flow(&self.gas, &supply(psi)).unwrap().mass_flow.kilograms_per_second()
    }

    /// What the scale would lose with a jet that passes `factor` times what the model says.
    fn run(&self, psi: f64, factor: f64, minutes: f64) -> Run<F> {
        let time = Duration::from_minutes(F::c(minutes));
        Run {
            mass: Mass::from_kilograms(F::c(factor) * self.model(psi) * time.seconds()),
            time,
            supply: supply(psi),
            held: None,
        }
    }

    fn measure(&self, runs: &[Run<F>], grams: f64) -> Result<Measured<F>, WeighingError> {
        let reading = Reading::of_scale(Mass::from_grams(F::c(grams)));
        measured_jet(&self.jet, &self.shape, &self.gas, runs, &reading, &self.spreads)
    }
}

#[test]
fn a_weighing_gives_back_the_jet_that_made_it() {
    let shop = shop::<f64>(Sizing::Drilled);
    for factor in [0.8, 1.0, 1.15] {
        let found = shop.measure(&[shop.run(6.0, factor, 30.0)], 10.0).unwrap();
        assert!((found.factor / factor - 1.0).abs() < 1e-9);
        // A bore of the effective size passes what was weighed.
        let bore = shop.shape.with_diameter(found.effective_bore).unwrap();
        let flow = Jet { bore, ..shop.jet }.flow(&shop.gas, &supply(6.0)).unwrap().mass_flow.kilograms_per_second();
        assert!((flow / (factor * shop.model(6.0)) - 1.0).abs() < 1e-9);
        // And so does the coefficient.
        let jet = Jet { coefficient: Coefficient::Measured(found.coefficient), ..shop.jet };
        let flow = jet.flow(&shop.gas, &supply(6.0)).unwrap().mass_flow.kilograms_per_second();
        assert!((flow / (factor * shop.model(6.0)) - 1.0).abs() < 1e-9);
    }
    let narrow = self::shop::<f32>(Sizing::Drilled);
    let found = narrow.measure(&[narrow.run(6.0, 1.1, 30.0)], 10.0).unwrap();
    assert!((found.factor.to_f64() / 1.1 - 1.0).abs() < 1e-5);
}

/// 30 minutes at 0.5 g/s on a scale of 10 g: 4.08 g of some 900, and a second of 1800; the gauge 2 of 6 psi in 100 at
/// k = 1 and half of it in the flow.
#[test]
fn a_weighing_is_as_sure_as_its_scale_clock_and_gauge() {
    let shop = shop::<f64>(Sizing::Drilled);
    let one = shop.measure(&[shop.run(6.0, 1.0, 30.0)], 10.0).unwrap();
    let mass = shop.model(6.0) * 1800.0;
    let by_hand = ((4.082e-3 / mass).powi(2) + (1.0_f64 / 1800.0).powi(2)).sqrt();
    assert!((one.own / by_hand - 1.0).abs() < 1e-3, "{} {by_hand}", one.own);
    assert!((one.gauge - 0.0125).abs() < 1e-3 && (one.shared - 0.0098).abs() < 1e-3, "{one:?}");
    // Four runs halve what is their own and nothing else.
    let run = shop.run(6.0, 1.0, 30.0);
    let four = shop.measure(&[run; 4], 10.0).unwrap();
    assert!((four.own / one.own - 0.5).abs() < 1e-9 && (four.gauge - one.gauge).abs() < 1e-12);
    let longer = shop.measure(&[shop.run(6.0, 1.0, 60.0)], 10.0).unwrap();
    assert!((longer.own / one.own - 0.5).abs() < 1e-3);
}

#[test]
fn runs_that_scatter_are_less_sure_and_runs_that_contradict_are_refused() {
    let shop = shop::<f64>(Sizing::Drilled);
    let runs = |spread: f64| [1.0 - spread, 1.0, 1.0 + spread].map(|factor| shop.run(6.0, factor, 30.0));
    let (calm, wild) = (shop.measure(&runs(0.001), 10.0).unwrap(), shop.measure(&runs(0.009), 10.0).unwrap());
    // By hand: three runs of 0.43 % that lie 0.9 % apart have chi squared over 2 of 4.3, and a mean twice as unsure.
    let ratio = wild.own / calm.own;
    assert!((ratio - 2.05).abs() < 0.15, "{ratio}");
    assert!(matches!(shop.measure(&runs(0.05), 10.0), Err(WeighingError::RunsDisagree { ratio }) if ratio < 0.92));
    // A difference that the gauge does not explain is no trend.
    assert!(matches!(shop.measure(&runs(0.2), 10.0), Err(WeighingError::RunsDisagree { .. })));
}

#[test]
fn what_measures_nothing_is_told_by_its_run() {
    let shop = shop::<f64>(Sizing::Drilled);
    let good = shop.run(6.0, 1.0, 30.0);
    let with = |run: Run<f64>| shop.measure(&[good, run], 10.0).unwrap_err();
    let lost = |kilograms: f64| Run { mass: Mass::from_kilograms(kilograms), ..good };
    assert_eq!(with(lost(-0.5)), WeighingError::NothingLost { run: 1 });
    assert_eq!(with(lost(0.0)), WeighingError::NothingLost { run: 1 });
    assert_eq!(shop.measure(&[], 10.0), Err(WeighingError::NoRuns));
    let held = Some(Mass::from_kilograms(0.9 * good.mass.kilograms()));
    assert_eq!(with(Run { held, ..good }), WeighingError::EmptyCylinder { run: 1 });
    // A minute loses 30 g, of which the scale leaves 8 g: a hundredth wants some 27 times as long.
    let Err(WeighingError::TooShort { run: 0, needs }) = shop.measure(&[shop.run(6.0, 1.0, 1.0)], 10.0) else {
        panic!("a minute on a scale of ten grams tells nothing")
    };
    let by_hand = 8.165e-3 / (0.01 * shop.model(6.0));
    assert!((f64::from(needs) / by_hand - 1.0).abs() < 1e-3, "{needs} {by_hand}");
    let refused = shop.measure(&[Run { supply: supply(70.0), ..good }], 10.0);
    assert!(matches!(refused, Err(WeighingError::Refused { run: 0, .. })));
}

#[test]
fn joined_with_the_model_it_is_surer_than_either_and_lies_between() {
    let shop = shop::<f64>(Sizing::Drilled);
    let jet = UncertainJet::new(&shop.jet, &shop.shape, &shop.gas, &supply(6.0), None, &shop.spreads).unwrap();
    let model = of_hole(&jet).unwrap();
    // A nominal drill: 10.7 % of the area and 6 % of the coefficient at k = 2.
    assert!((model - 0.061).abs() < 0.006, "{model}");
    for factor in [0.95, 1.06] {
        let measured = shop.measure(&[shop.run(6.0, factor, 10.0)], 20.0).unwrap();
        let joined = join(&measured, model);
        assert_eq!(joined.trust, Trust::Agrees);
        assert!(joined.standard < model && joined.standard < measured.standard());
        assert!(joined.without_gauge < joined.standard);
        assert!((joined.factor - 1.0).abs() < (factor - 1.0).abs() && (joined.factor - 1.0) * (factor - 1.0) > 0.0);
    }
    let doubtful = join(&shop.measure(&[shop.run(6.0, 1.18, 30.0)], 10.0).unwrap(), model);
    assert!(doubtful.trust == Trust::Doubtful && (doubtful.factor - 1.18).abs() < 1e-9, "{doubtful:?}");
    let beyond = join(&shop.measure(&[shop.run(6.0, 1.5, 30.0)], 10.0).unwrap(), model);
    assert!(beyond.trust == Trust::BeyondBelief && beyond.odds < 1e-6, "{beyond:?}");
}

#[test]
fn later_runs_tell_wear_dirt_and_droop_from_chance() {
    let shop = shop::<f64>(Sizing::Drilled);
    let measured = |factors: [f64; 3]| {
        let runs = [2.0, 4.0, 7.0].into_iter().zip(factors).map(|(psi, factor)| shop.run(psi, factor, 40.0));
        Compared::from(&shop.measure(&runs.collect::<Vec<_>>(), 5.0).unwrap())
    };
    let before = measured([1.0; 3]);
    for (factors, finding) in [
        ([1.07; 3], Finding::Worn),
        ([0.92; 3], Finding::Dirty),
        ([1.0, 0.97, 0.92], Finding::Drooping),
        ([1.003, 0.998, 1.001], Finding::NoDifference),
    ] {
        let now = measured(factors);
        let found = compare(&before, &now, true);
        assert_eq!(found.finding, finding, "{factors:?} {found:?} {now:?}");
        assert_eq!(found.odds < 0.0456, finding != Finding::NoDifference);
        let back = compare(&now, &before, true);
        assert!(((back.change + 1.0) * (found.change + 1.0) - 1.0).abs() < 1e-12 && back.standard == found.standard);
        assert!(compare(&before, &now, false).standard > found.standard);
    }
    // Against one pressure alone, the gauge's own error at its low end would explain as much.
    let single = Compared::from(&shop.measure(&[shop.run(6.0, 1.0, 40.0)], 5.0).unwrap());
    let now = measured([1.01, 1.0, 0.98]);
    assert!(compare(&single, &now, true).finding != Finding::Drooping, "{now:?}");
    assert_eq!(compare(&before, &now, true).finding, Finding::Drooping);
}

#[test]
fn a_planned_weighing_reaches_what_the_plan_says() {
    let shop = shop::<f64>(Sizing::Drilled);
    let reading = Reading::of_scale(Mass::from_grams(20.0));
    let short = shop.measure(&[shop.run(6.0, 1.0, 20.0)], 20.0).unwrap();
    let others = (short.gauge.powi(2) + short.shared.powi(2)).sqrt();
    let plan = plan(MassFlow::from_kilograms_per_second(shop.model(6.0)), &reading, others, 0.06);
    let then = shop.measure(&[shop.run(6.0, 1.0, plan.enough.minutes())], 20.0).unwrap();
    assert!(
        (then.standard() / plan.weighed - 1.0).abs() < 1e-3
            && (join(&then, 0.06).standard / plan.joined - 1.0).abs() < 1e-3
    );
    assert!((plan.mass.kilograms() / (shop.model(6.0) * plan.enough.seconds()) - 1.0).abs() < 1e-12);
    // A finer scale needs less, and hardly anything is known before the least time.
    let fine = self::plan(
        MassFlow::from_kilograms_per_second(shop.model(6.0)),
        &Reading::of_scale(Mass::from_grams(2.0)),
        others,
        0.06,
    );
    assert!(fine.enough < plan.enough && plan.least < plan.enough);
}
