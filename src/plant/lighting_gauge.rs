//! Lighting by what the gauge reads: the line between it and the jet, both ways.

use crate::Error;
use crate::Input;
use crate::burner::{AirSetting, Burner, Conditions, Glow, Lighting, LightingRange, Span};
use crate::error::Result as CheckedResult;
use crate::plant::installation::Plant;
use crate::quantity::{GaugePressure, MassFlow};

/// What is known of a burner's lighting.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Known {
    /// How many times the gradient of a plain port this head's flames bear.
    pub head_constant: Option<f64>,
    /// Air ratio of the cold burner where it was seen to light; none until it was.
    pub seen_air_ratio: Option<f64>,
    /// What is known of the chamber.
    pub chamber: Glow,
}

/// Gas of all heads and the back pressure at a pressure at the jets.
fn flow_of(
    burner: &Burner,
    conditions: &Conditions,
    at_jet: GaugePressure,
    air: AirSetting,
) -> CheckedResult<(MassFlow, GaugePressure)> {
    Ok(match air {
        AirSetting::Opening(opening) => {
            let running = burner.run(conditions, at_jet, opening)?;
            (running.gas, running.back_pressure)
        }
        AirSetting::Ratio(ratio) => {
            let demand = burner.demand(conditions, at_jet, ratio)?;
            (demand.gas, demand.back_pressure)
        }
    })
}

impl Plant {
    fn lit_burner(&self) -> CheckedResult<&Burner> {
        self.burner.as_ref().ok_or(Error::NoSolution { input: Input::AirFlow, nearest: 0.0 })
    }

    /// The pressure that a reading leaves at the jets of a cold burner.
    pub fn lit_at_jet(
        &self,
        conditions: &Conditions,
        gauge: GaugePressure,
        air: AirSetting,
    ) -> CheckedResult<GaugePressure> {
        let burner = self.lit_burner()?;
        let cold = conditions.cold();
        let open = GaugePressure::from_pascals(0.0);
        if self.before.line.is_none() {
            return Ok(gauge);
        }
        // Where the burner cannot be run the line ends in open air.
        let run = |at_jet| Ok(((), flow_of(burner, &cold, at_jet, air).map_or(open, |(_, back)| back)));
        Ok(self.run_at(&cold, gauge, run)?.1)
    }

    /// What the gauge reads for a pressure at the jets; the same where no reading in range gives it.
    #[must_use]
    pub fn lit_reading(&self, conditions: &Conditions, at_jet: GaugePressure, air: AirSetting) -> GaugePressure {
        let read = || {
            let (gas, _) = flow_of(self.lit_burner()?, conditions, at_jet, air)?;
            self.reading(conditions, at_jet, gas)
        };
        if self.before.line.is_none() { at_jet } else { read().unwrap_or(at_jet) }
    }

    /// What a reading does in a cold chamber and in a glowing one.
    ///
    /// # Errors
    ///
    /// As [`Burner::lighting`].
    pub fn lighting(
        &self,
        conditions: &Conditions,
        gauge: GaugePressure,
        air: AirSetting,
        known: &Known,
    ) -> CheckedResult<Lighting> {
        let at_jet = self.lit_at_jet(conditions, gauge, air)?;
        self.lit_burner()?.lighting(conditions, at_jet, air, known.head_constant, &self.part_of_a_head(&known.chamber))
    }

    /// The readings that light a cold chamber, and so on.
    ///
    /// # Errors
    ///
    /// As [`Burner::lighting_range`].
    pub fn lighting_range(
        &self,
        conditions: &Conditions,
        air: AirSetting,
        known: &Known,
    ) -> CheckedResult<LightingRange> {
        let found = self.lit_burner()?.lighting_range(
            conditions,
            air,
            known.head_constant,
            &self.part_of_a_head(&known.chamber),
        )?;
        let read = |conditions: &Conditions, span: Option<Span>| {
            span.map(|span| Span {
                low: self.lit_reading(conditions, span.low, air),
                high: self.lit_reading(conditions, span.high, air),
                ..span
            })
        };
        let cold = conditions.cold();
        Ok(LightingRange {
            within_limits: read(&cold, found.within_limits),
            cold: read(&cold, found.cold),
            glowing: read(conditions, found.glowing),
        })
    }
}
