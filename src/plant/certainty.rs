//! How sure the numbers of a setting are, at k = 2.

use heapless::Vec;

use crate::burner::Conditions;
use crate::measure::{Answers, Budget, Source, Spreads, UncertainBurner, UncertainJet};
use crate::plant::entries::MOST_SETTINGS;
use crate::plant::installation::Plant;
use crate::plant::setting::{Setting, conditions_of};
use crate::plant::spreads::{bore_spread, spreads};
use crate::quantity::GaugePressure;

/// How sure one number is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sure {
    /// The number, SI.
    pub value: f64,
    /// Expanded uncertainty at k = 2, SI.
    pub expanded: f64,
    /// Whether the first order tells it.
    pub is_straight: bool,
    /// Share of each source, in the order of [`Source`].
    pub shares: [f64; Source::COUNT],
}

impl Sure {
    fn of<const N: usize>(budget: &Budget<f64, N>) -> Self {
        Self {
            value: budget.value,
            expanded: budget.expanded(),
            is_straight: budget.is_straight(),
            shares: core::array::from_fn(|input| budget.share(input)),
        }
    }

    /// The expanded uncertainty as a share of the number.
    #[must_use]
    pub fn relative(&self) -> f64 {
        self.expanded / self.value
    }

    /// The source with the largest share.
    #[must_use]
    pub fn largest_uncertainty(&self) -> Source {
        let most =
            (0..Source::COUNT).fold(0, |most, next| if self.shares[next] > self.shares[most] { next } else { most });
        Source::ALL[most]
    }
}

/// How sure the numbers of a setting are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SettingSure {
    /// Gas in kg/s; fire and money have the same shares.
    pub gas: Sure,
    /// Discharge coefficient.
    pub coefficient: Sure,
    /// Air ratio; none without the air side.
    pub air_ratio: Option<Sure>,
}

impl SettingSure {
    fn of<const N: usize>(answers: &Answers<f64, N>) -> Self {
        Self {
            gas: Sure::of(&answers.gas),
            coefficient: Sure::of(&answers.coefficient),
            air_ratio: answers.air_ratio.as_ref().map(Sure::of),
        }
    }
}

/// How sure each setting is, in their order; none where no gas flows, or where nothing is known of the bore.
#[must_use]
pub fn sure_settings(plant: &Plant, settings: &[Setting]) -> Vec<Option<SettingSure>, MOST_SETTINGS> {
    let highest =
        settings.iter().fold(GaugePressure::default(), |most, next| if next.gauge > most { next.gauge } else { most });
    let is_measured = plant.entries.jet.measured.is_some() || plant.entries.jet.measured_coefficient.is_some();
    // What is said of a bore that has been weighed no longer matters.
    let bore = bore_spread(plant).or(is_measured.then(Default::default));
    let Some(bore) = bore else { return settings.iter().map(|_| None).collect() };
    let spreads = spreads(plant, bore, highest);
    settings.iter().map(|setting| sure(plant, setting, &spreads).filter(|sure| sure.gas.value > 0.0)).collect()
}

fn sure(plant: &Plant, setting: &Setting, spreads: &Spreads) -> Option<SettingSure> {
    let tie =
        plant.entries.jet.measured.as_ref().map(|measured| measured.tie(!plant.entries.uncertainty.is_other_gauge));
    let shape = &plant.entries.jet.shape;
    // What the line takes and how cold the gas comes are those of the setting; a gauge that errs moves both alike.
    let conditions = Conditions { gas_temperature: setting.gas_temperature, ..conditions_of(plant, &setting.entry) };
    if let (Some(burner), Some(air)) = (&plant.burner, &setting.air) {
        let at = (setting.at_jet, air.opening.unwrap_or(1.0));
        let burner = UncertainBurner::new(burner, shape, &conditions, at, tie, spreads).ok()?;
        return burner.answers().ok().map(|answers| SettingSure::of(&answers));
    }
    let open_air = plant.supply(&conditions, setting.at_jet, GaugePressure::from_pascals(0.0));
    let jet = UncertainJet::new(&plant.jet, shape, &plant.gas, &open_air, tie, spreads).ok()?;
    jet.answers().ok().map(|answers| SettingSure::of(&answers))
}
