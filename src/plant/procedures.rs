//! What is done in which order: lighting, running, stopping, and what goes wrong. Kinds and numbers; no text is here.
//!
//! Air before gas, and gas off before air; a purge after every unlit second.

use heapless::Vec;

use crate::plant::card::Card;
use crate::plant::evaluation::Sheet;
use crate::plant::hazards::HazardKind;
use crate::quantity::Duration;

/// Most steps of one procedure.
pub const MOST_STEPS: usize = 8;

/// A procedure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Procedure {
    /// The flame is out and gas may flow.
    FlameOut,
    /// From cold to alight.
    Light,
    /// While it burns.
    Run,
    /// From burning to cold.
    Stop,
    /// The air fails.
    BlowerStops,
    /// Gas where none should be.
    GasSmell,
    /// The power comes back by itself.
    PowerBack,
}

impl Procedure {
    /// Every procedure, the most pressing first.
    pub const ALL: [Self; 7] =
        [Self::FlameOut, Self::Light, Self::Run, Self::Stop, Self::BlowerStops, Self::GasSmell, Self::PowerBack];

    /// The key it has for programs.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::FlameOut => "flame_out",
            Self::Light => "light",
            Self::Run => "run",
            Self::Stop => "stop",
            Self::BlowerStops => "blower_stops",
            Self::GasSmell => "gas_smell",
            Self::PowerBack => "power_back",
        }
    }
}

/// A step of a procedure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// The gas off now, within the seconds until an explosive charge.
    GasOff,
    /// The blower is left on.
    AirStays,
    /// Air alone through the chamber.
    Purge,
    /// One more try, by the procedure of lighting.
    TryOnce,
    /// No try: the supply is shut.
    SupplyShut,
    /// Door or lid open, every gas valve shut, beside the opening.
    StandAside,
    /// Blower on, damper where it lights.
    BlowerOn,
    /// A flame that burns, at the ports.
    FlameAtPorts,
    /// Gas, to the gauge that lights.
    GasOn,
    /// Not alight in time: gas off, purge, cause.
    NotAlight,
    /// The lighting flame away once all ports burn.
    Alight,
    /// More heat: air first.
    MoreAirFirst,
    /// Less heat: gas first.
    LessGasFirst,
    /// Someone stays and watches.
    Watch,
    /// The supply shut, what is in the line burnt.
    BurnLineEmpty,
    /// The valve at the burner shut.
    ValveShut,
    /// The blower stays on so long.
    AirStaysOn,
    /// Blower off, damper shut.
    BlowerOff,
    /// So long the chamber ignites gas by itself.
    StillIgnites,
    /// The damper shut against hot gas that rises.
    DamperShut,
    /// No switch and no flame.
    NoSwitch,
    /// Everyone out, help called from outside.
    AllOut,
    /// Nobody where heavy gas pools.
    NotInPits,
    /// The gas valves seen to be shut before the blower starts.
    SeeValvesShut,
}

/// The numbers of the procedures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Procedures {
    /// Seconds, rounded down, after which unlit gas makes the chamber's air explosive; none where that is not known.
    pub gas_off_within: Option<Duration>,
    /// How long the chamber is purged.
    pub purge: Duration,
    /// Whether the chamber's volume and a flow of air stand behind it.
    pub purge_is_known: bool,
    /// How long the blower stays on after the gas is off; none where that hangs on what is seen.
    pub air_on: Option<Duration>,
    /// How long the chamber ignites gas by itself; none without a furnace.
    pub ignites_for: Option<Duration>,
    /// Whether the gas comes from a cylinder.
    pub from_cylinder: bool,
    /// Whether the gas pools.
    pub pools: bool,
    /// Whether there is a damper.
    pub has_damper: bool,
    /// Whether there is a setting to light with.
    pub can_light: bool,
    /// Whether nobody has seen it light: one try.
    pub first_try: bool,
}

impl Procedures {
    /// The steps of a procedure; none of lighting where nothing safe lights.
    #[must_use]
    pub fn steps(&self, of: Procedure) -> Vec<Step, MOST_STEPS> {
        use Step as S;
        let then = if self.can_light { S::TryOnce } else { S::SupplyShut };
        let steps: &[Option<S>] = match of {
            Procedure::FlameOut => &[Some(S::GasOff), Some(S::AirStays), Some(S::Purge), Some(then)],
            Procedure::Light if !self.can_light => &[],
            Procedure::Light => &[
                Some(S::StandAside),
                Some(S::BlowerOn),
                Some(S::Purge),
                Some(S::FlameAtPorts),
                Some(S::GasOn),
                Some(S::NotAlight),
                Some(S::Alight),
            ],
            Procedure::Run => &[Some(S::MoreAirFirst), Some(S::LessGasFirst), Some(S::Watch)],
            Procedure::Stop => &[
                Some(S::BurnLineEmpty),
                Some(S::ValveShut),
                Some(S::AirStaysOn),
                Some(S::BlowerOff),
                if self.ignites_for.is_some() { Some(S::StillIgnites) } else { None },
            ],
            Procedure::BlowerStops => &[Some(S::GasOff), Some(S::DamperShut), Some(S::SupplyShut)],
            Procedure::GasSmell => &[
                Some(S::NoSwitch),
                Some(S::SupplyShut),
                Some(S::AllOut),
                if self.pools { Some(S::NotInPits) } else { None },
            ],
            Procedure::PowerBack => &[Some(S::SeeValvesShut), Some(S::BlowerOn), Some(S::Purge), Some(then)],
        };
        steps.iter().flatten().copied().collect()
    }
}

impl Sheet {
    /// The numbers of the procedures.
    #[must_use]
    pub fn procedures(&self, card: &Card) -> Procedures {
        let lights = card.lights();
        let course = self.furnace.as_ref().map(|block| &block.course);
        let still = self.hazards.iter().find(|hazard| hazard.kind == HazardKind::ReIgnites);
        Procedures {
            gas_off_within: card.charge_after.map(|time| Duration::from_seconds(libm::floor(time.seconds()))),
            purge: self.purge.time,
            purge_is_known: self.purge.is_known,
            air_on: course.and_then(|course| course.air_on?.high).map(Duration::from_seconds),
            ignites_for: still.and_then(|hazard| hazard.number).map(Duration::from_seconds),
            from_cylinder: self.cylinder.is_some() || self.gas_pools(),
            pools: self.gas_pools(),
            has_damper: self.plant.entries.damper.is_some(),
            can_light: lights.is_some(),
            first_try: lights.is_some_and(|block| block.first_try),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Procedure, Procedures, Step};
    use crate::quantity::Duration;

    fn every() -> impl Iterator<Item = Procedures> {
        (0..32).map(|bits: u32| {
            let is = |bit: u32| bits >> bit & 1 == 1;
            let time = |seconds, bit| is(bit).then(|| Duration::from_seconds(seconds));
            Procedures {
                gas_off_within: time(2.0, 0),
                purge: Duration::from_seconds(60.0),
                purge_is_known: is(1),
                air_on: time(300.0, 2),
                ignites_for: time(1200.0, 2),
                from_cylinder: is(3),
                pools: is(3),
                has_damper: is(1),
                can_light: is(4),
                first_try: is(0),
            }
        })
    }

    fn place(steps: &[Step], step: Step) -> usize {
        steps.iter().position(|&one| one == step).unwrap()
    }

    // EN 746-2 and NFPA 86, as their public summaries order a manual start: valves seen shut, air, purge, ignition source,
    // gas; and on loss of flame or air the gas first (from memory).
    #[test]
    fn air_comes_before_gas_and_gas_goes_before_air() {
        for numbers in every() {
            let light = numbers.steps(Procedure::Light);
            assert_eq!(light.is_empty(), !numbers.can_light);
            if numbers.can_light {
                let order =
                    [Step::StandAside, Step::BlowerOn, Step::Purge, Step::FlameAtPorts, Step::GasOn, Step::NotAlight];
                assert!(order.windows(2).all(|pair| place(&light, pair[0]) < place(&light, pair[1])));
            }
            let stop = numbers.steps(Procedure::Stop);
            assert!(place(&stop, Step::BurnLineEmpty) < place(&stop, Step::ValveShut));
            assert!(place(&stop, Step::ValveShut) < place(&stop, Step::AirStaysOn));
            assert!(place(&stop, Step::AirStaysOn) < place(&stop, Step::BlowerOff));
            for of in [Procedure::FlameOut, Procedure::BlowerStops] {
                assert_eq!(numbers.steps(of)[0], Step::GasOff);
            }
            let out = numbers.steps(Procedure::FlameOut);
            assert!(place(&out, Step::AirStays) < place(&out, Step::Purge));
            let back = numbers.steps(Procedure::PowerBack);
            assert!(place(&back, Step::SeeValvesShut) < place(&back, Step::BlowerOn));
            assert_eq!(back.contains(&Step::TryOnce), numbers.can_light, "nothing is tried that does not light");
        }
    }
}
