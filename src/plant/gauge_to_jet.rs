//! From the gauge's reading to the jet and back: the line between them, and how cold the gas comes.

use crate::burner::{AirSetting, Conditions};
use crate::error::{Error, Result as CheckedResult};
use crate::fuel::throttled;
use crate::limits::Input;
use crate::orifice::{Supply, pressure_for_heat};
use crate::plant::installation::Plant;
use crate::quantity::{GaugePressure, HeatRate, MassFlow};

/// Rounds of jet pressure and gas temperature against what hangs on them; each leaves a hundredth of the last.
const ROUNDS: usize = 3;

/// The largest fire that a blower feeds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fed {
    /// Pressure at the jets.
    pub at_jet: GaugePressure,
    /// What the gauge reads; none where no reading in range gives it.
    pub gauge: Option<GaugePressure>,
    /// Gas of all heads.
    pub gas: MassFlow,
}

impl Plant {
    /// The gas before the jet at a reading, blowing into a back pressure no higher than it.
    #[must_use]
    pub fn supply(&self, conditions: &Conditions, gauge: GaugePressure, back: GaugePressure) -> Supply {
        let back = if back > gauge { gauge } else { back };
        let (ambient, temperature) = (self.site.ambient_pressure(), conditions.gas_temperature);
        Supply { ambient, gauge, back, temperature }
    }

    /// Gas of all heads at a pressure at the jets.
    fn gas_at(&self, conditions: &Conditions, gauge: GaugePressure, back: GaugePressure) -> CheckedResult<MassFlow> {
        let flow = self.jet.flow(&self.gas, &self.supply(conditions, gauge, back))?;
        Ok(flow.mass_flow * self.heads)
    }

    /// The same conditions with the gas as cold as it comes at a gauge reading: throttled from the full cylinder, then
    /// warmed by the line.
    pub fn conditions_at(&self, conditions: &Conditions, gauge: GaugePressure) -> CheckedResult<Conditions> {
        let Some((pressure, temperature)) = self.before.vapor else { return Ok(*conditions) };
        let after = gauge.to_absolute(self.site.ambient_pressure());
        let cold = throttled(&self.gas, pressure, temperature, after)?;
        let throttled = Conditions { gas_temperature: cold, ..*conditions };
        let Some(hose) = self.before.hose else { return Ok(throttled) };
        let flow = self.gas_at(&throttled, gauge, GaugePressure::from_pascals(0.0))?;
        let gas_temperature = hose.warmed(&self.gas, after, cold, self.site.air_temperature(), flow)?;
        Ok(Conditions { gas_temperature, ..*conditions })
    }

    /// The pressure at the jets for a reading, into a back pressure.
    fn at_jet(
        &self,
        conditions: &Conditions,
        gauge: GaugePressure,
        back: GaugePressure,
    ) -> CheckedResult<GaugePressure> {
        let Some(line) = &self.before.line else { return Ok(gauge) };
        let supply = self.supply(conditions, gauge, back);
        let lowest = GaugePressure::from_pascals(supply.back.pascals().max(0.0));
        line.at_jet(&self.gas, &supply, lowest, |at_jet| self.gas_at(conditions, at_jet, supply.back))
    }

    /// What the gauge reads for a pressure at the jets and their gas.
    pub fn reading(
        &self,
        conditions: &Conditions,
        at_jet: GaugePressure,
        gas: MassFlow,
    ) -> CheckedResult<GaugePressure> {
        let Some(line) = &self.before.line else { return Ok(at_jet) };
        let ambient = self.site.ambient_pressure();
        let inlet = line.inlet(&self.gas, at_jet.to_absolute(ambient), conditions.gas_temperature, gas)?;
        Ok(inlet.to_gauge(ambient))
    }

    /// What the gauge reads for a pressure at the jets that blow into still air.
    pub fn reading_of(&self, conditions: &Conditions, at_jet: GaugePressure) -> CheckedResult<GaugePressure> {
        let gas = self.gas_at(conditions, at_jet, GaugePressure::from_pascals(0.0))?;
        self.reading(conditions, at_jet, gas)
    }

    /// Runs something at the pressure that a reading leaves at the jets; it answers with the back pressure it makes.
    pub fn run_at<T>(
        &self,
        conditions: &Conditions,
        gauge: GaugePressure,
        mut run: impl FnMut(GaugePressure) -> CheckedResult<(T, GaugePressure)>,
    ) -> CheckedResult<(T, GaugePressure)> {
        let mut at_jet = self.at_jet(conditions, gauge, GaugePressure::from_pascals(0.0))?;
        let (mut found, mut back) = run(at_jet)?;
        if self.before.line.is_some() {
            for _ in 0..ROUNDS {
                at_jet = self.at_jet(conditions, gauge, back)?;
                (found, back) = run(at_jet)?;
            }
        }
        Ok((found, at_jet))
    }

    /// The largest fire that the blower feeds at an air ratio, damper wide open, its gas as cold as it comes there.
    ///
    /// # Errors
    ///
    /// As [`Burner::highest_gauge`](crate::burner::Burner::highest_gauge), and without blower and head.
    pub fn highest_fed(&self, conditions: &Conditions, air_ratio: f64) -> CheckedResult<Fed> {
        let none = Error::NoSolution { input: Input::AirFlow, nearest: 0.0 };
        let burner = self.burner.as_ref().ok_or(none)?;
        let mut there = *conditions;
        let mut rounds = if self.before.vapor.is_some() { ROUNDS } else { 1 };
        loop {
            let at_jet = burner.highest_gauge(&there, air_ratio)?;
            let gas = burner.demand(&there, at_jet, air_ratio)?.gas;
            let gauge = self.reading(&there, at_jet, gas);
            rounds -= 1;
            match gauge {
                Ok(read) if rounds > 0 => there = self.conditions_at(conditions, read)?,
                _ => return Ok(Fed { at_jet, gauge: gauge.ok(), gas }),
            }
        }
    }

    /// What the gauge reads for a heat.
    pub fn gauge_for_heat(
        &self,
        conditions: &Conditions,
        heat: HeatRate,
        air: AirSetting,
    ) -> CheckedResult<GaugePressure> {
        let gas = self.gas.flow_for(heat)?;
        let open = GaugePressure::from_pascals(0.0);
        let mut there = *conditions;
        let mut gauge = open;
        for _ in 0..if self.before.vapor.is_some() { ROUNDS } else { 1 } {
            let at_jet = match &self.burner {
                Some(burner) => burner.gauge_for_heat(&there, heat, air)?,
                None => pressure_for_heat(&self.jet, &self.gas, &self.supply(&there, open, open), heat)?,
            };
            gauge = self.reading(&there, at_jet, gas)?;
            let most = Input::GaugePressure.range().max;
            if gauge.pascals() > most {
                return Err(Error::NoSolution { input: Input::PipeLength, nearest: most as f32 });
            }
            there = self.conditions_at(conditions, gauge)?;
        }
        Ok(gauge)
    }
}
