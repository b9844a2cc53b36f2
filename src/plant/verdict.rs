//! Three verdicts for a cold chamber: it lights, a first try may be made, or it will not light.

use crate::burner::{GoesOut, Lighting};
use crate::combustion::BurningRange;
use crate::plant::lighting_gauge::Known;

/// What a setting does in a cold chamber, judged on the safe side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Verdict {
    /// Seen to light, or at least as rich and as slow in the ports, for what its flame stands, as a setting that was.
    Lights,
    /// Within the limits of burning at the unsafe end of its ±, but nobody has seen this head light so lean.
    FirstTry,
    /// It goes out, or may at an end of its ±.
    WillNotLight(GoesOut),
}

impl Verdict {
    /// The verdict of a setting whose cold air ratio has this relative ±; `limits` are those of the cold mixture.
    #[must_use]
    pub fn of(lighting: &Lighting, spread: f64, limits: &BurningRange, known: &Known) -> Self {
        if let Some(why) = lighting.goes_out {
            return Self::WillNotLight(why);
        }
        let Some(ratio) = lighting.air_ratio else { return Self::WillNotLight(GoesOut::NoFlow) };
        // What was seen to light has its own errors: a setting beside it has the same ones.
        if known.head_constant.is_some() && known.seen_air_ratio.is_some_and(|seen| ratio <= seen * AS_RICH) {
            return Self::Lights;
        }
        if ratio * (1.0 + spread) > limits.leanest_air_ratio {
            return Self::WillNotLight(GoesOut::TooLean);
        }
        if ratio * (1.0 - spread) < limits.richest_air_ratio {
            return Self::WillNotLight(GoesOut::TooRich);
        }
        Self::FirstTry
    }

    /// The key it has for programs.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Lights => "lights",
            Self::FirstTry => "first_try",
            Self::WillNotLight(_) => "will_not_light",
        }
    }
}

/// Rounding of the setting that was seen, found a second time by another way.
const AS_RICH: f64 = 1.0 + 1e-6;
