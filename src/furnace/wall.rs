//! The steady wall: layers whose conductivity changes with temperature, between a hot face and a room.

use heapless::Vec;

use super::body::{Body, LAYER_CAP};
use super::material::Material;
use super::surface::Surroundings;
use crate::error::{Error, Result};
use crate::limits::{Input, check};
use crate::quantity::{Area, Length, Power, Temperature};
use crate::scalar::Scalar;
use crate::solve;

/// One layer.
#[derive(Clone, Debug, PartialEq)]
pub struct Layer<S = f64> {
    /// What it is made of.
    pub material: Material<S>,
    /// How thick it is.
    pub thickness: Length<S>,
}

/// A wall of up to six layers, the hot one first.
#[derive(Clone, Debug, PartialEq)]
pub struct Wall<S = f64> {
    layers: Vec<Layer<S>, LAYER_CAP>,
    body: Body<S>,
}

/// A wall that has been steady state.
#[derive(Clone, Debug, PartialEq)]
pub struct SteadyWall<S = f64> {
    /// Heat through it.
    pub heat: Power<S>,
    /// Temperatures from the hot face over the interfaces to the outside.
    pub faces: Vec<Temperature<S>, 7>,
    /// The first layer that is hotter on its inner face than its material's limit, counted from 0.
    pub too_hot: Option<usize>,
}

impl<S: Scalar> SteadyWall<S> {
    /// The hot face.
    #[must_use]
    pub fn hot_face(&self) -> Temperature<S> {
        self.faces.first().copied().unwrap_or_default()
    }
    /// The outside.
    #[must_use]
    pub fn shell(&self) -> Temperature<S> {
        self.faces.last().copied().unwrap_or_default()
    }
}

impl<S: Scalar> Wall<S> {
    /// A wall of layers, the hot one first.
    ///
    /// # Errors
    ///
    /// No layer or more than six; a thickness, an area or a radius out of range.
    pub fn new(layers: &[Layer<S>], body: Body<S>) -> Result<Self> {
        if layers.is_empty() {
            return Err(Error::OutOfRange { input: Input::LayerThickness, given: 0.0 });
        }
        match body {
            Body::Flat { area } => {
                check(Input::WallArea, area.square_meters())?;
            }
            Body::Round { inner_radius, length } => {
                check(Input::PanelSize, inner_radius.meters() * S::c(2.0))?;
                check(Input::PanelSize, length.meters())?;
            }
        }
        let mut kept = Vec::new();
        for layer in layers {
            check(Input::LayerThickness, layer.thickness.meters())?;
            kept.push(layer.clone()).map_err(|_| Error::Points { input: Input::LayerThickness })?;
        }
        Ok(Self { layers: kept, body })
    }

    /// The layers, the hot one first.
    #[must_use]
    pub fn layers(&self) -> &[Layer<S>] {
        &self.layers
    }
    /// The shape.
    #[must_use]
    pub fn body(&self) -> Body<S> {
        self.body
    }
    /// Thickness of all layers, m.
    #[must_use]
    pub fn thickness(&self) -> Length<S> {
        Length::from_meters(self.layers.iter().fold(S::zero(), |sum, layer| sum + layer.thickness.meters()))
    }
    /// Area of the outside.
    #[must_use]
    pub fn outer_area(&self) -> Area<S> {
        Area::from_square_meters(self.body.area_at(self.thickness().meters()))
    }
    /// Area of the hot face.
    #[must_use]
    pub fn hot_area(&self) -> Area<S> {
        Area::from_square_meters(self.body.area_at(S::zero()))
    }

    /// The wall between a hot face and a room: heat by conduction, integral k dT over each layer's resistance, equal
    /// to what the outside gives off by free convection and radiation.
    ///
    /// # Errors
    ///
    /// A temperature out of range, or a hot face no warmer than the room.
    pub fn steady(&self, hot_face: Temperature<S>, room: &Surroundings<S>) -> Result<SteadyWall<S>> {
        let hot = check(Input::ChamberTemperature, hot_face.kelvin())?;
        let room = room.checked()?;
        if hot <= room.air.kelvin() {
            return Err(Error::InvertedPair { lesser: Input::AirTemperature, greater: Input::ChamberTemperature });
        }
        let area = self.outer_area().square_meters();
        let short = |shell: S| {
            let heat = area * room.heat_flux(Temperature::from_kelvin(shell));
            self.inner_face(shell, heat) - hot
        };
        let shell = solve::root(Input::ChamberTemperature, room.air.kelvin(), hot, short)?.x;
        Ok(self.profile(hot, shell, area * room.heat_flux(Temperature::from_kelvin(shell))))
    }

    /// The wall between two faces of known temperature.
    ///
    /// # Errors
    ///
    /// A temperature out of range, or the hot face not the hotter.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::furnace::{Body, Layer, Material, Wall};
    /// use jetwright::quantity::{Area, Density, Length, Temperature};
    /// let layer = |meters, conductivity| Layer {
    ///     material: Material::by_points(
    ///         Density::from_kilograms_per_cubic_meter(2000.0),
    ///         &[(300.0, conductivity)],
    ///         &[(300.0, 1000.0)],
    ///         Temperature::from_kelvin(2000.0),
    ///     )
    ///     .unwrap(),
    ///     thickness: Length::from_meters(meters),
    /// };
    /// // Coulson and Richardson, Chemical Engineering vol. 1, example 9.3: 961 W/m2, 1063 K and 605 K.
    /// let layers = [layer(0.20, 1.4), layer(0.10, 0.21), layer(0.20, 0.7_f64)];
    /// let wall = Wall::new(&layers, Body::Flat { area: Area::from_square_meters(1.0) }).unwrap();
    /// let steady = wall.between(Temperature::from_kelvin(1200.0), Temperature::from_kelvin(330.0)).unwrap();
    /// assert!((steady.heat.watts() - 961.6).abs() < 0.1);
    /// assert!((steady.faces[1].kelvin() - 1063.0).abs() < 0.5);
    /// ```
    pub fn between(&self, hot_face: Temperature<S>, cold_face: Temperature<S>) -> Result<SteadyWall<S>> {
        let hot = check(Input::ChamberTemperature, hot_face.kelvin())?;
        let cold = check(Input::ChamberTemperature, cold_face.kelvin())?;
        if hot <= cold {
            return Err(Error::InvertedPair { lesser: Input::AirTemperature, greater: Input::ChamberTemperature });
        }
        let (mut depth, mut most) = (S::zero(), None::<S>);
        for layer in &self.layers {
            let beyond = depth + layer.thickness.meters();
            let alone = layer.material.conductivity_line().integral(cold, hot) / self.body.resistance(depth, beyond);
            most = Some(most.map_or(alone, |most| most.smaller(alone)));
            depth = beyond;
        }
        // No layer alone lets more through than it would with the whole fall upon it.
        let most = most.unwrap_or(S::one()) * S::c(1.000_1);
        let heat = solve::root(Input::HeatRate, S::zero(), most, |heat| self.inner_face(cold, heat) - hot)?.x;
        Ok(self.profile(hot, cold, heat))
    }

    /// Temperature at a depth behind the hot face of a steady wall.
    ///
    /// # Errors
    ///
    /// A depth outside the wall.
    pub fn temperature_at(&self, steady: &SteadyWall<S>, depth: Length<S>) -> Result<Temperature<S>> {
        let mut start = S::zero();
        for (layer, face) in self.layers.iter().zip(&steady.faces) {
            let end = start + layer.thickness.meters();
            if depth.meters() >= S::zero() && depth.meters() <= end {
                let fall = steady.heat.watts() * self.body.resistance(start, depth.meters());
                return Ok(Temperature::from_kelvin(layer.material.conductivity_line().end_for(face.kelvin(), -fall)));
            }
            start = end;
        }
        Err(Error::OutOfRange { input: Input::LayerThickness, given: depth.meters().to_f32() })
    }

    /// The hot face that a heat through the wall and a cold face ask, from the outside inward.
    fn inner_face(&self, cold: S, heat: S) -> S {
        let (mut at, mut beyond) = (cold, self.thickness().meters());
        for layer in self.layers.iter().rev() {
            let depth = beyond - layer.thickness.meters();
            at = layer.material.conductivity_line().end_for(at, heat * self.body.resistance(depth, beyond));
            beyond = depth;
        }
        at
    }

    fn profile(&self, hot: S, cold: S, heat: S) -> SteadyWall<S> {
        let (mut faces, mut too_hot, mut at, mut beyond) = (Vec::new(), None, cold, self.thickness().meters());
        let mut inward: Vec<S, 7> = Vec::new();
        let _ = inward.push(cold);
        for (index, layer) in self.layers.iter().enumerate().rev() {
            let depth = beyond - layer.thickness.meters();
            at = layer.material.conductivity_line().end_for(at, heat * self.body.resistance(depth, beyond));
            let _ = inward.push(if index == 0 { hot } else { at });
            beyond = depth;
        }
        for (index, kelvin) in inward.iter().rev().enumerate() {
            let _ = faces.push(Temperature::from_kelvin(*kelvin));
            if let Some(layer) = self.layers.get(index) {
                if too_hot.is_none() && *kelvin > layer.material.limit().kelvin() {
                    too_hot = Some(index);
                }
            }
        }
        SteadyWall { heat: Power::from_watts(heat), faces, too_hot }
    }
}

/// Shape factor of a box with equal walls all round, m: six faces A/t, twelve edges 0.54 times their length, eight
/// corners 0.15 t. Heat is the factor times conductivity times difference.
///
/// # Range
///
/// Inside dimensions above a fifth of the wall.
///
/// # Source
///
/// Langmuir, Adams and Meikle 1913, as in Holman, Heat Transfer, table 3-1 and example 3-2.
///
/// # Errors
///
/// An inside dimension under a fifth of the thickness.
///
/// # Examples
///
/// ```
/// use jetwright::{furnace::box_shape_factor, quantity::Length};
/// let half = Length::from_meters(0.5_f64);
/// let factor = box_shape_factor([half, half, half], Length::from_meters(0.1)).unwrap();
/// assert!((factor * 1.04 * 450.0 - 8592.0).abs() < 2.0); // Holman, example 3-2: 8.592 kW
/// ```
pub fn box_shape_factor<S: Scalar>(inside: [Length<S>; 3], thickness: Length<S>) -> Result<S> {
    let t = check(Input::LayerThickness, thickness.meters())?;
    let [a, b, c] = inside.map(Length::meters);
    for side in [a, b, c] {
        check(Input::PanelSize, side)?;
        if side * S::c(5.0) < t {
            return Err(Error::OutOfRange { input: Input::PanelSize, given: side.to_f32() });
        }
    }
    let faces = S::c(2.0) * (a * b + b * c + c * a) / t;
    Ok(faces + S::c(4.0 * 0.54) * (a + b + c) + S::c(8.0 * 0.15) * t)
}
