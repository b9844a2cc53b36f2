//! What a weighing or a metering answers, before it is put in words and columns.

use std::prelude::rust_2024::*;

use crate::measure::{Comparison, Joined, Measured, Plan, RunResult};
use crate::quantity::{GaugePressure, Length};

/// How the gas was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeasuredBy {
    /// A scale under the cylinder.
    Weighing,
    /// A gas meter.
    Meter,
}

impl MeasuredBy {
    /// Its word in files and answers.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Weighing => "weighing",
            Self::Meter => "meter",
        }
    }
}

/// All that is answered.
pub struct MeasuredAnswer {
    /// How the gas was measured.
    pub kind: MeasuredBy,
    /// The bore as it was described.
    pub bore: Length,
    /// What was known of the hole before, as an expanded uncertainty.
    pub known: f64,
    /// How long to measure.
    pub plan: Plan,
    /// What runs say; none when only a plan was asked.
    pub found: Option<Found>,
    /// Where it was saved.
    pub saved: Option<String>,
}

/// What runs say.
pub struct Found {
    /// What the gauge read, and what passed.
    pub runs: Vec<(GaugePressure, RunResult)>,
    /// The jet by the runs alone.
    pub measured: Measured,
    /// The same joined with the model.
    pub joined: Joined,
    /// The file of an earlier measurement, and what changed.
    pub earlier: Option<(String, Comparison)>,
}

impl MeasuredAnswer {
    pub(crate) fn measured(&self) -> Option<&Measured> {
        self.found.as_ref().map(|found| &found.measured)
    }

    pub(crate) fn joined(&self) -> Option<&Joined> {
        self.found.as_ref().map(|found| &found.joined)
    }

    pub(crate) fn compared(&self) -> Option<&Comparison> {
        self.found.as_ref().and_then(|found| found.earlier.as_ref()).map(|(_, compared)| compared)
    }
}

/// The joined coefficient.
pub(crate) fn coefficient(found: &Found) -> f64 {
    found.measured.coefficient / found.measured.factor * found.joined.factor
}
