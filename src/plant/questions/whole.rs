//! Questions that stand on the whole installation.

use heapless::Vec;

use crate::furnace::coupled::Settled;
use crate::plant::answer::{Answer, Number};
use crate::plant::blower::AirBlock;
use crate::plant::certainty::sure_settings;
use crate::plant::cylinder::{CylinderBlock, CylinderRow};
use crate::plant::entries::{AirAim, GasAim, MOST_SETTINGS, SettingEntry};
use crate::plant::evaluation::Sheet;
use crate::plant::firing::Firing;
use crate::plant::furnace::{gauge_for, models_of};
use crate::plant::hazards::of_rows;
use crate::plant::lighting::LightingBlock;
use crate::plant::refusal::Refusal;
use crate::plant::setpoints::{Asked, Setpoints};
use crate::plant::setting::Fired;
use crate::quantity::{GaugePressure, NetHeatRate, Temperature};

/// Temperatures that the fire is told for, Celsius.
const ROUND: [f64; 10] = [300.0, 500.0, 700.0, 800.0, 900.0, 1000.0, 1100.0, 1200.0, 1300.0, 1400.0];
/// Most rows of setting against temperature.
pub const HOLDING_CAP: usize = MOST_SETTINGS + ROUND.len();

/// The blower against the largest fire.
pub struct BlowerAnswer<'s> {
    /// The block.
    pub block: &'s AirBlock,
    /// What the blower has over it, Pa; below zero when it is too small.
    pub surplus: Number,
    /// The largest fire it can feed, gross, W; none when it feeds no setting.
    pub largest_gross: Option<Number>,
    /// The same, net, W.
    pub largest_net: Option<Number>,
}

/// A setting or a round temperature, the chamber empty and at steady state.
#[derive(Clone, Copy, Debug)]
pub struct Holding {
    /// The setting, counted from 0; none of a round temperature.
    pub setting: Option<usize>,
    /// What the gauge reads; none when no reading in range gives the fire.
    pub gauge: Option<GaugePressure>,
    /// The fire and where it goes.
    pub settled: Settled,
    /// The fire, net, W.
    pub fire: Number,
    /// The chamber, K.
    pub chamber: Number,
}

/// The firing, and the gas of all its stages.
pub struct FiringAnswer<'s> {
    /// Its stages.
    pub firing: &'s Firing,
    /// Gas, kg.
    pub gas: Number,
}

/// The cylinders.
pub struct CylinderAnswer<'s> {
    /// The block.
    pub block: &'s CylinderBlock,
    /// How long what is left lasts at each setting, s; none when nothing is drawn.
    pub lasts: Vec<Option<Number>, MOST_SETTINGS>,
}

impl Sheet {
    fn answer<T>(&self, found: T) -> Answer<T> {
        Answer { found, hazards: self.hazards.clone() }
    }

    /// Expanded uncertainty of a fire's gas as a share.
    fn gas_share(&self, fired: Fired) -> Option<f64> {
        match fired {
            Fired::Setting(index) => self.sure.get(index).copied().flatten(),
            Fired::Work => sure_settings(&self.plant, core::slice::from_ref(self.work()?)).first().copied().flatten(),
        }
        .map(|sure| sure.gas.relative())
    }

    /// The blower against the largest fire; none without blower and head.
    #[must_use]
    pub fn blower(&self) -> Answer<Option<BlowerAnswer<'_>>> {
        self.answer(self.air.as_ref().map(|block| {
            let share = block.highest_gauge.and_then(|gauge| {
                let (gas, air) = (GasAim::Gauge(gauge), AirAim::Damper(1.0));
                let entry = SettingEntry { gas, air, ..self.settings.get(block.setting)?.entry.clone() };
                let gas = self.plant.set(block.setting, &entry).ok()?.found.gas;
                Some(gas.expanded()? / gas.value)
            });
            BlowerAnswer {
                block,
                surplus: Number::alone(block.surplus.pascals()),
                largest_gross: block.largest_fire.map(|(gross, _)| Number::relative(gross.watts(), share)),
                largest_net: block.largest_fire.map(|(_, net)| Number::relative(net.watts(), share)),
            }
        }))
    }

    /// What lights cold and what burns only in a glowing chamber; none without blower and head. Its ends are not known:
    /// the scatter of flames is larger than every input's.
    #[must_use]
    pub fn lighting(&self) -> Answer<Option<&LightingBlock>> {
        self.answer(self.lighting.as_ref())
    }

    /// How long air purges the chamber before gas, s; no less is enough, so it has no lower end.
    #[must_use]
    pub fn purge(&self) -> Answer<Number> {
        self.answer(Number::alone(self.purge.time.seconds()))
    }

    /// What is done from the blower's start to its stop. The fires share their gauge and their jet, so what
    /// is not sure of their gas adds up.
    #[must_use]
    pub fn firing(&self) -> Answer<FiringAnswer<'_>> {
        let firing = &self.firing;
        let half: Option<f64> =
            firing.fires().map(|(fired, _, gas)| Some(self.gas_share(fired)? * gas.kilograms())).sum();
        let gas = firing.gas().kilograms();
        let gas = half.map_or(Number::alone(gas), |half| Number::within(gas, half));
        self.answer(FiringAnswer { firing, gas })
    }

    /// The cylinders; none unless described.
    #[must_use]
    pub fn cylinder(&self) -> Answer<Option<CylinderAnswer<'_>>> {
        let lasts = |(index, row): (usize, &CylinderRow)| {
            let (value, share) = (row.lasts?.seconds(), self.gas_share(Fired::Setting(index)));
            // The same mass at the largest and at the smallest draw.
            let end = |sign: f64| share.map(|share| value / (1.0 + sign * share)).filter(|end| end.is_finite());
            Some(Number { value, low: end(1.0), high: end(-1.0) })
        };
        self.answer(
            self.cylinder
                .as_ref()
                .map(|block| CylinderAnswer { block, lasts: block.rows.iter().enumerate().map(lasts).collect() }),
        )
    }

    /// Setting against temperature of the chamber, both ways; none without a furnace. The ends are those of the fire's
    /// gas and of the coupled furnace.
    ///
    /// # Errors
    ///
    /// [`Refusal`] of a gas or an air ratio that no flame is worked out for.
    pub fn chamber(&self) -> Result<Answer<Option<Vec<Holding, HOLDING_CAP>>>, Refusal> {
        let Some(block) = self.furnace.as_ref() else { return Ok(self.answer(None)) };
        let [model, rough] = models_of(self, block)?;
        let mut rows = Vec::new();
        for (index, (setting, ends)) in self.settings.iter().zip(&block.ends).enumerate() {
            let Some(settled) = *ends else { continue };
            let share = self.gas_share(Fired::Setting(index));
            let fire = Number::relative(setting.heat_net.watts(), share);
            let chamber = rough.ends_within(settled.chamber, fire.value, share);
            // There is room for every setting and every round temperature.
            let _ = rows.push(Holding { setting: Some(index), gauge: Some(setting.gauge), settled, fire, chamber });
        }
        for celsius in ROUND {
            let kelvin = Temperature::from_celsius(celsius).kelvin();
            let Ok(settled) = model.keeps(kelvin) else { continue };
            let gauge = gauge_for(&self.plant, NetHeatRate::from_watts(settled.fire));
            let (fire, chamber) = (rough.keeps_within(settled.fire, kelvin), Number::alone(settled.chamber));
            let _ = rows.push(Holding { setting: None, gauge, settled, fire, chamber });
        }
        Ok(self.answer(Some(rows)))
    }

    /// A controller's table, which warns of what each of its rows does.
    ///
    /// # Errors
    ///
    /// [`Refusal`] of what was asked, whose place has no section, or of an entry.
    pub fn setpoints(&self, asked: &Asked) -> Result<Answer<Setpoints>, Refusal> {
        let mark = self.for_chip().map_or(0, |chip| chip.burner_id());
        let found = self.plant.setpoints(&self.settings, mark, asked)?;
        let rows = found.table.rows().iter();
        let rows = rows.map(|row| (GaugePressure::from_pascals(f64::from(row.gauge.pascals())), f64::from(row.air)));
        let hazards = of_rows(self, rows);
        Ok(Answer { found, hazards })
    }
}
