//! The jet, and how it was measured.

use crate::Scalar;
use crate::measure::{Compared, Joined, Measured, Tie, Trend};
use crate::orifice::{BoreShape, Coefficient, Supply};
use crate::plant::entries::{Name, shortened};
use crate::plant::refusal::Reason;
use crate::quantity::{GaugePressure, Length};

/// How far the bore of a burner may be from the one that was measured, as a share.
const SAME_BORE: f64 = 0.005;

/// How the size of the jet is given.
// There is no heap to put the larger one in.
#[allow(clippy::large_enum_variant)]
#[derive(Clone, Debug, PartialEq)]
pub enum JetSize {
    /// A drill, such as `number 50`, `letter A` or `1/16 in`; not looked up yet.
    Drill(Name),
    /// A measured bore.
    Bore(Length),
}

/// Shape of the mouth of the bore, by its word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EdgeWord {
    /// A thin plate with a sharp edge.
    Sharp,
    /// A drilled hole, not broken at the mouth.
    Square,
    /// A hole with a chamfer.
    Chamfered,
    /// A hole with a rounded mouth.
    Rounded,
}

impl EdgeWord {
    /// Every shape by its word.
    pub const WORDS: &'static [(&'static str, Self)] =
        &[("sharp", Self::Sharp), ("square", Self::Square), ("chamfered", Self::Chamfered), ("rounded", Self::Rounded)];
}

/// Length of a bore that is not given: zero for a thin plate, else that of a drilled cap (common practice,
/// no source).
#[must_use]
pub fn usual_bore_length(word: EdgeWord) -> Length {
    Length::from_meters(if word == EdgeWord::Sharp { 0.0 } else { 12.0e-3 })
}

/// The jet.
#[derive(Clone, Debug, PartialEq)]
pub struct JetEntry {
    /// Its size.
    pub size: JetSize,
    /// Its shape.
    pub shape: BoreShape,
    /// How many equal jets share the gas, those of all heads together.
    pub count: u32,
    /// A coefficient measured by the user.
    pub measured_coefficient: Option<f64>,
    /// The gauge pressure it was measured at.
    pub measured_gauge: Option<GaugePressure>,
    /// A weighing or a meter's reading, by the file that holds it.
    pub measured: Option<MeasuredEntry>,
}

/// A measured jet. Uncertainties are expanded uncertainties at k = 2, as shares.
#[derive(Clone, Debug, PartialEq)]
pub struct MeasuredEntry {
    /// The burner it was measured on.
    pub name: Name,
    /// `weighing` or `meter`.
    pub how: Name,
    /// How many runs.
    pub runs: u32,
    /// The bore that the factors belong to.
    pub bore: Length,
    /// Mean supply of the runs.
    pub supply: Supply,
    /// Gas passed over the model's, by the runs alone.
    pub measured_factor: f64,
    /// Of that.
    pub measured_uncertainty: f64,
    /// The same without the gauge.
    pub measured_uncertainty_without_gauge: f64,
    /// How the factor changes with the flow; standard uncertainties.
    pub trend: Option<Trend>,
    /// Joined with the model.
    pub factor: f64,
    /// Weight of the runs in it.
    pub weight: f64,
    /// Of the joined factor.
    pub uncertainty: f64,
    /// The same without the gauge.
    pub uncertainty_without_gauge: f64,
    /// The joined coefficient of the bore at the supply.
    pub discharge_coefficient: f64,
    /// The bore that passes by the model what the runs passed.
    pub effective_bore: Length,
}

impl MeasuredEntry {
    /// From runs and their joining with the model.
    #[must_use]
    pub fn new(name: &str, how: &str, runs: usize, bore: Length, measured: &Measured, joined: &Joined) -> Self {
        Self {
            name: shortened(name),
            how: shortened(how),
            runs: u32::try_from(runs).unwrap_or(u32::MAX),
            bore,
            supply: measured.supply,
            measured_factor: measured.factor,
            measured_uncertainty: 2.0 * measured.standard(),
            measured_uncertainty_without_gauge: 2.0 * measured.without_gauge(),
            trend: measured.trend,
            factor: joined.factor,
            weight: joined.weight,
            uncertainty: 2.0 * joined.standard,
            uncertainty_without_gauge: 2.0 * joined.without_gauge,
            discharge_coefficient: measured.coefficient / measured.factor * joined.factor,
            effective_bore: measured.effective_bore,
        }
    }

    /// The coefficient of a jet measured so.
    #[must_use]
    pub fn coefficient(&self) -> Coefficient {
        Coefficient::Corrected { factor: self.factor, uncertainty: self.uncertainty }
    }

    /// How results hang on it, read from the same gauge or another.
    #[must_use]
    pub fn tie(&self, is_same_gauge: bool) -> Tie {
        let (gauge_weight, expanded) =
            if is_same_gauge { (self.weight, self.uncertainty_without_gauge) } else { (0.0, self.uncertainty) };
        Tie { supply: self.supply, gauge_weight, expanded }
    }

    /// As two measurements are compared.
    #[must_use]
    pub fn compared(&self) -> Compared {
        let (all, without_gauge) = (self.measured_uncertainty, self.measured_uncertainty_without_gauge);
        let gauge = 0.5 * Scalar::sqrt((all * all - without_gauge * without_gauge).max(0.0));
        Compared { factor: self.measured_factor, standard: 0.5 * without_gauge, gauge, trend: self.trend }
    }

    /// That it is not a measurement of a jet with this bore.
    #[must_use]
    pub fn refuses(&self, bore: Length) -> Option<Reason> {
        let off = (bore.meters() / self.bore.meters() - 1.0).abs();
        (off > SAME_BORE).then_some(Reason::MeasuredOtherBore { measured: self.bore, bore })
    }
}
