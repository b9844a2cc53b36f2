//! Everything that is bolted together, and the conditions it runs under.

use super::chamber::Exhaust;
use super::head::{Head, HeadFlow};
use crate::air::{AirPath, Blower, air_viscosity};
use crate::combustion::AirNeed;
use crate::error::{Error, Result};
use crate::gas::{GAS_CONSTANT, Gas};
use crate::limits::{Input, check};
use crate::orifice::{Jet, JetFlow, Supply};
use crate::quantity::{
    AbsolutePressure, ActualVolumeFlow, Density, GaugePressure, Length, MassFlow, PressureDifference, Temperature,
};
use crate::scalar::Scalar;
use crate::site::Site;
use crate::words::words;

/// A forced-air burner, as built.
#[derive(Clone, Debug, PartialEq)]
pub struct Burner<S = f64> {
    /// The jet or jets of one head.
    pub jet: Jet<S>,
    /// One head.
    pub head: Head<S>,
    /// How many equal heads, each with its own jets, hang on the blower.
    pub head_count: S,
    /// The blower, at the speed of its wheel now and the density of its curve.
    pub blower: Blower<S>,
    /// Ducts and damper between blower and jets; all heads' air passes them.
    pub path: AirPath<S>,
    /// Inside diameter of the tube in which a jet's push adds to the air; none for a jet into a wide box.
    pub mixing_tube: Option<Length<S>>,
    /// The opening of each chamber; none for a fire in the open.
    pub exhaust: Option<Exhaust<S>>,
}

words!(Burner { jet, head, head_count, blower, path, mixing_tube, exhaust });

/// What a burner runs under.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Conditions<S = f64> {
    /// The site and its weather.
    pub site: Site<S>,
    /// The gas.
    pub gas: Gas<S>,
    /// Temperature of the gas before the jet.
    pub gas_temperature: Temperature<S>,
    /// Temperature of the mixture in the ports.
    pub mixture_temperature: Temperature<S>,
    /// Temperature in the chamber.
    pub chamber_temperature: Temperature<S>,
}

/// What the air of a site has at rest, worked out once for a search.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Air<S> {
    pub density: Density<S>,
    pub viscosity: S,
    /// Viscosity in the ports.
    pub in_ports: S,
}

/// What the jets of one head give it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Feed<S> {
    /// Gas, kg/s.
    pub gas: S,
    /// Thrust of the jets, N.
    pub thrust: S,
}

impl<S: Scalar> Feed<S> {
    pub fn of(jet: &JetFlow<S>) -> Self {
        Self { gas: jet.mass_flow.kilograms_per_second(), thrust: jet.thrust.newtons() }
    }
}

/// What the mixture of one head needs, and gets from its jets, for a gas and an air flow.
pub(super) struct HeadNeed<S> {
    pub head: HeadFlow<S>,
    pub chamber_pressure: PressureDifference<S>,
    pub push: PressureDifference<S>,
}

impl<S: Scalar> HeadNeed<S> {
    /// Static pressure needed where the jet stands.
    pub fn back_pressure(&self) -> S {
        self.head.pressure.pascals() + self.chamber_pressure.pascals() - self.push.pascals()
    }
}

words!(Conditions { site, gas, gas_temperature, mixture_temperature, chamber_temperature });

impl<S: Scalar> Conditions<S> {
    pub(super) fn checked(&self) -> Result<()> {
        check(Input::MixtureTemperature, self.mixture_temperature.kelvin())?;
        check(Input::ChamberTemperature, self.chamber_temperature.kelvin())?;
        check(Input::GasTemperature, self.gas_temperature.kelvin())?;
        Ok(())
    }

    pub(super) fn ambient(&self) -> AbsolutePressure<S> {
        self.site.ambient_pressure()
    }

    pub(super) fn supply(&self, gauge: GaugePressure<S>, back: S) -> Supply<S> {
        Supply {
            ambient: self.ambient(),
            gauge,
            back: GaugePressure::from_pascals(back),
            temperature: self.gas_temperature,
        }
    }

    pub(super) fn air(&self) -> Air<S> {
        Air {
            density: self.site.air_density(),
            viscosity: air_viscosity(self.site.air_temperature()),
            in_ports: air_viscosity(self.mixture_temperature),
        }
    }

    /// The air this gas needs here.
    #[must_use]
    pub fn air_need(&self) -> AirNeed<S> {
        AirNeed::new(&self.gas, &self.site)
    }

    /// The same with head and chamber as cold as the air, as when it is lit.
    #[must_use]
    pub fn cold(&self) -> Self {
        let cold = self.site.air_temperature();
        Self { mixture_temperature: cold, chamber_temperature: cold, ..*self }
    }

    /// Density of a mixture of air and gas at a temperature and the pressure of the air around.
    fn mixture_density(&self, air: S, gas: S, temperature: Temperature<S>) -> Density<S> {
        let moles = air / self.site.air_molar_mass() + gas / self.gas.molar_mass();
        let molar_mass = (air + gas) / moles;
        let density = self.ambient().pascals() * molar_mass / (S::c(1e3 * GAS_CONSTANT) * temperature.kelvin());
        Density::from_kilograms_per_cubic_meter(density)
    }
}

impl<S: Scalar> Burner<S> {
    /// The blower in this site's air.
    pub(super) fn blower_here(&self, conditions: &Conditions<S>) -> Result<Blower<S>> {
        self.blower.scaled(conditions.site.air_density(), S::one(), S::one())
    }

    /// Gas flow of one head's jets into a back pressure; none where the air stream stands above the gauge.
    pub(super) fn jet_flow(&self, conditions: &Conditions<S>, gauge: GaugePressure<S>, back: S) -> Result<JetFlow<S>> {
        let range = Input::BackPressure.range();
        let back = back.clamped(S::c(range.min), S::c(range.max)).smaller(gauge.pascals());
        self.jet.flow(&conditions.gas, &conditions.supply(gauge, back))
    }

    /// What one head needs for its gas and air flow.
    pub(super) fn head_need(
        &self,
        conditions: &Conditions<S>,
        here: &Air<S>,
        feed: Feed<S>,
        air: MassFlow<S>,
    ) -> HeadNeed<S> {
        let (air, gas) = (air.kilograms_per_second(), feed.gas);
        let both = MassFlow::from_kilograms_per_second(air + gas);
        let none = PressureDifference::from_pascals(S::zero());
        if both.kilograms_per_second() <= S::zero() {
            let head = self.head.flow(both, here.density, here.in_ports);
            return HeadNeed { head, chamber_pressure: none, push: none };
        }
        let in_ports = conditions.mixture_density(air, gas, conditions.mixture_temperature);
        let head = self.head.flow(both, in_ports, here.in_ports);
        let chamber_pressure = self
            .exhaust
            .map_or(none, |exhaust| exhaust.pressure(both, conditions.ambient(), conditions.chamber_temperature));
        let push = self.mixing_tube.map_or(none, |tube| {
            let in_tube = conditions.mixture_density(air, gas, conditions.site.air_temperature());
            push(feed.thrust, air, air + gas, here.density, in_tube, tube)
        });
        HeadNeed { head, chamber_pressure, push }
    }

    /// One burner's inputs, checked once.
    pub(super) fn checked(&self, conditions: &Conditions<S>, gauge: GaugePressure<S>) -> Result<()> {
        conditions.checked()?;
        check(Input::HeadCount, self.head_count)?;
        if let Some(tube) = self.mixing_tube {
            check(Input::DuctDiameter, tube.meters())?;
        }
        self.jet_flow(conditions, gauge, S::zero()).map(|_| ())
    }

    /// Static pressure that the air spends between blower and jets: ducts, damper, and the speed it gains where
    /// the mixing tube is narrower than the last duct, rho (v_tube^2 - v_duct^2) / 2.
    ///
    /// What a wider tube could give back is taken as lost, and a tube without a duct before it as the blower's
    /// outlet, whose speed the static pressure of the curve allows for.
    pub(super) fn path_loss(
        &self,
        here: &Air<S>,
        flow: ActualVolumeFlow<S>,
        damper_loss_coefficient: S,
    ) -> PressureDifference<S> {
        let density = here.density;
        let lost = self.path.loss_with(flow, density, here.viscosity, damper_loss_coefficient);
        let (Some(tube), Some(duct)) = (self.mixing_tube, self.path.last_duct()) else { return lost };
        let in_tube = flow.cubic_meters_per_second() / (self.head_count * tube_area(tube));
        let gained = (in_tube.squared() - duct.velocity(flow).squared()).larger(S::zero());
        lost + PressureDifference::from_pascals(S::c(0.5) * density.kilograms_per_cubic_meter() * gained)
    }

    /// Air of the whole blower, shared by the heads.
    pub(super) fn air_of_one_head(&self, air: S) -> MassFlow<S> {
        MassFlow::from_kilograms_per_second(air / self.head_count)
    }
}

/// The area of a mixing tube, m2.
pub(super) fn tube_area<S: Scalar>(tube: Length<S>) -> S {
    S::c(core::f64::consts::FRAC_PI_4) * tube.meters().squared()
}

/// Rise of pressure that a jet makes in a tube of constant width, wall friction aside:
/// (jet thrust + air momentum - mixture momentum) / area.
fn push<S: Scalar>(
    thrust: S,
    air: S,
    mixture: S,
    air_density: Density<S>,
    mixture_density: Density<S>,
    tube: Length<S>,
) -> PressureDifference<S> {
    let area = tube_area(tube);
    let air_momentum = air.squared() / (air_density.kilograms_per_cubic_meter() * area);
    let mixture_momentum = mixture.squared() / (mixture_density.kilograms_per_cubic_meter() * area);
    PressureDifference::from_pascals((thrust + air_momentum - mixture_momentum) / area)
}

/// The error of a search that ended at the shortfall of pressure there, not at an answer.
pub(super) fn too_weak<S: Scalar>(shortfall: S) -> Error {
    Error::NoSolution { input: Input::AirFlow, nearest: shortfall.to_f32() }
}
