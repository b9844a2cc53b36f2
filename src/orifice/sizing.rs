//! The questions turned round: which pressure, which bore.

use super::bore::BoreShape;
use super::jet::{Jet, Supply};
use crate::error::Result;
use crate::gas::Gas;
use crate::limits::Input;
use crate::quantity::{GaugePressure, HeatRate, Length};
use crate::scalar::Scalar;
use crate::solve;

/// The gauge pressure at which a jet makes a heat; the gauge of `supply` is not looked at.
///
/// # Errors
///
/// [`Error::NoSolution`](crate::Error::NoSolution) when the whole range of pressures does not reach it, with the
/// flow missing in kg/s; an input out of range.
///
/// # Examples
///
/// ```
/// # use jetwright::gas::{Gas, Species};
/// # use jetwright::orifice::{BoreShape, Jet, Supply, pressure_for_heat};
/// # use jetwright::quantity::{AbsolutePressure, GaugePressure, HeatRate, Length, NetHeatRate, Temperature};
/// # let supply = Supply { ambient: AbsolutePressure::from_pascals(83_500.0), gauge: GaugePressure::from_psi(0.0_f64),
/// #     back: GaugePressure::from_psi(0.0), temperature: Temperature::from_celsius(15.0) };
/// let gas = Gas::from(Species::Propane);
/// let jet = Jet::new(BoreShape::default().with_diameter(Length::from_millimeters(1.5)).unwrap());
/// let heat = HeatRate::Net(NetHeatRate::from_kilowatts(26.0));
/// let gauge = pressure_for_heat(&jet, &gas, &supply, heat).unwrap();
/// let back = jet.flow(&gas, &Supply { gauge, ..supply }).unwrap();
/// assert!((back.heat_net.kilowatts() - 26.0).abs() < 1e-9);
/// ```
pub fn pressure_for_heat<S: Scalar>(
    jet: &Jet<S>,
    gas: &Gas<S>,
    supply: &Supply<S>,
    heat: HeatRate<S>,
) -> Result<GaugePressure<S>> {
    let wanted = gas.flow_for(heat)?.kilograms_per_second();
    let low = supply.back.pascals().larger(S::zero());
    let flow_at = |gauge: S| jet.flow(gas, &Supply { gauge: GaugePressure::from_pascals(gauge), ..*supply });
    // A gas that would be a liquid at the top of the range is asked no further than it stays a gas.
    let high = solve::highest_answered(low, S::c(Input::GaugePressure.range().max), flow_at)?;
    let root = solve::root(Input::GaugePressure, low, high, |gauge| {
        flow_at(gauge).map_or(-wanted, |flow| flow.mass_flow.kilograms_per_second() - wanted)
    })?;
    Ok(GaugePressure::from_pascals(root.x))
}

/// The bore with which a jet of a shape makes a heat, its count and coefficient those of `jet`.
///
/// # Errors
///
/// [`Error::NoSolution`](crate::Error::NoSolution) when no bore in range makes it, with the flow missing in kg/s;
/// an input out of range.
///
/// # Examples
///
/// ```
/// # use jetwright::gas::{Gas, Species};
/// # use jetwright::orifice::{BoreShape, Coefficient, Jet, Supply, bore_for_heat};
/// # use jetwright::quantity::{AbsolutePressure, GaugePressure, HeatRate, NetHeatRate, Temperature};
/// # let supply = Supply { ambient: AbsolutePressure::from_pascals(83_500.0), gauge: GaugePressure::from_psi(5.0_f64),
/// #     back: GaugePressure::from_psi(0.0), temperature: Temperature::from_celsius(15.0) };
/// let heat = HeatRate::Net(NetHeatRate::from_kilowatts(26.0));
/// let bore = bore_for_heat(&BoreShape::default(), 1.0, Coefficient::Model, &Gas::from(Species::Propane), &supply, heat);
/// // A 1.5 mm drill makes 21 kW here; the bore grows with the root of the heat, to some 1.67 mm.
/// let millimeters = bore.unwrap().millimeters();
/// assert!((millimeters - 1.5 * (26.0_f64 / 21.03).sqrt()).abs() < 0.02);
/// ```
pub fn bore_for_heat<S: Scalar>(
    shape: &BoreShape<S>,
    count: S,
    coefficient: super::jet::Coefficient<S>,
    gas: &Gas<S>,
    supply: &Supply<S>,
    heat: HeatRate<S>,
) -> Result<Length<S>> {
    let wanted = gas.flow_for(heat)?.kilograms_per_second();
    let flow_of = |diameter: S| -> Result<S> {
        let bore = shape.with_diameter(Length::from_meters(diameter))?;
        Ok(Jet { bore, count, coefficient }.flow(gas, supply)?.mass_flow.kilograms_per_second())
    };
    let (low, high) = diameters(shape);
    flow_of(low)?;
    let root = solve::root(Input::Bore, low, high, |diameter| flow_of(diameter).map_or(-wanted, |flow| flow - wanted))?;
    Ok(Length::from_meters(root.x))
}

/// The diameters a shape can have within every limit.
fn diameters<S: Scalar>(shape: &BoreShape<S>) -> (S, S) {
    let range = Input::Bore.range();
    let mut high = S::c(range.max);
    // The check of a bound that is a quotient must not find it a rounding beyond.
    let inside = S::one() - S::c(4.0) * S::EPSILON;
    if let super::bore::BoreLength::Diameters(count) = shape.length {
        high = high.smaller(inside * S::c(Input::BoreLength.range().max) / count.larger(S::c(1e-3)));
    }
    if let Some(approach) = shape.approach {
        high = high.smaller(inside * S::c(Input::ApproachRatio.range().max) * approach.meters());
    }
    (S::c(range.min), high)
}
