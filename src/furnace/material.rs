//! What linings are made of: generic classes, no brands, with their spread.

use super::body::Matter;
use crate::error::Result;
use crate::interpolate::Polyline;
use crate::limits::{Input, check};
use crate::quantity::{Density, Temperature};
use crate::scalar::Scalar;

/// A generic class of lining material as it stands in the table; temperatures in Celsius.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MaterialData {
    /// What a user writes.
    pub key: &'static str,
    /// Density, kg/m3.
    pub density: f64,
    /// Conductivity, W/(m K), by temperature.
    pub conductivity: &'static [(f64, f64)],
    /// Specific heat, J/(kg K), by temperature.
    pub specific_heat: &'static [(f64, f64)],
    /// Maximum service temperature of the class, by its classification.
    pub limit_celsius: f64,
    /// How far the conductivity of one maker's product lies from this, as a share (k = 2).
    pub spread: f64,
    /// Where the numbers are from.
    pub source: &'static str,
}

const VDI: &str = "VDI Heat Atlas, 2nd ed. 2010, table of refractories, as kept in the library ht 1.2.0";
const TYPICAL: &str = "typical of makers' sheets, from memory; take your maker's own";
const LIGHT_OR_HEAVY: &str = "known by its feel only: the middle of the classes above that feel so, and a spread that spans \
                              them; the lowest limit of them";
const FIRECLAY_HEAT: &[(f64, f64)] =
    &[(20.0, 830.0), (400.0, 956.0), (600.0, 997.0), (800.0, 1021.0), (1000.0, 1037.0), (1200.0, 1054.0)];
const LIGHT_HEAT: &[(f64, f64)] =
    &[(20.0, 820.0), (400.0, 942.0), (600.0, 979.0), (800.0, 1002.0), (1000.0, 1017.0), (1200.0, 1033.0)];
const ALUMINA_HEAT: &[(f64, f64)] =
    &[(20.0, 820.0), (400.0, 991.0), (600.0, 1040.0), (800.0, 1070.0), (1000.0, 1092.0), (1200.0, 1114.0)];

/// Every class of material.
///
/// The groups of insulating brick are those of ASTM C155: hundreds of degrees Fahrenheit of the reheat test.
pub const MATERIALS: &[MaterialData] = &[
    MaterialData {
        key: "insulating brick 23",
        density: 490.0,
        conductivity: &[(20.0, 0.11), (400.0, 0.14), (600.0, 0.16), (800.0, 0.18), (1000.0, 0.20), (1200.0, 0.22)],
        specific_heat: LIGHT_HEAT,
        limit_celsius: 1260.0,
        spread: 0.2,
        source: VDI,
    },
    MaterialData {
        key: "insulating brick 26",
        density: 790.0,
        conductivity: &[(20.0, 0.22), (400.0, 0.27), (600.0, 0.30), (800.0, 0.32), (1000.0, 0.34), (1200.0, 0.36)],
        specific_heat: &[
            (20.0, 820.0),
            (400.0, 954.0),
            (600.0, 994.0),
            (800.0, 1018.0),
            (1000.0, 1034.0),
            (1200.0, 1050.0),
        ],
        limit_celsius: 1400.0,
        spread: 0.2,
        source: VDI,
    },
    MaterialData {
        key: "insulating brick 28",
        density: 890.0,
        conductivity: &[(20.0, 0.27), (400.0, 0.32), (600.0, 0.35), (800.0, 0.38), (1000.0, 0.41), (1200.0, 0.43)],
        specific_heat: &[
            (20.0, 820.0),
            (400.0, 979.0),
            (600.0, 1026.0),
            (800.0, 1054.0),
            (1000.0, 1075.0),
            (1200.0, 1096.0),
        ],
        limit_celsius: 1540.0,
        spread: 0.2,
        source: VDI,
    },
    MaterialData {
        key: "dense fireclay brick",
        density: 2150.0,
        conductivity: &[(20.0, 0.95), (400.0, 1.05), (600.0, 1.10), (800.0, 1.15), (1000.0, 1.18), (1200.0, 1.22)],
        specific_heat: FIRECLAY_HEAT,
        limit_celsius: 1350.0,
        spread: 0.2,
        source: VDI,
    },
    MaterialData {
        key: "high-duty fireclay brick",
        density: 2320.0,
        conductivity: &[(20.0, 1.05), (400.0, 1.20), (600.0, 1.27), (800.0, 1.33), (1000.0, 1.38), (1200.0, 1.42)],
        specific_heat: FIRECLAY_HEAT,
        limit_celsius: 1450.0,
        spread: 0.2,
        source: VDI,
    },
    MaterialData {
        key: "dense high-alumina brick",
        density: 2540.0,
        conductivity: &[(20.0, 1.35), (400.0, 1.45), (600.0, 1.52), (800.0, 1.58), (1000.0, 1.63), (1200.0, 1.67)],
        specific_heat: &[
            (20.0, 830.0),
            (400.0, 987.0),
            (600.0, 1035.0),
            (800.0, 1065.0),
            (1000.0, 1087.0),
            (1200.0, 1109.0),
        ],
        limit_celsius: 1600.0,
        spread: 0.2,
        source: VDI,
    },
    MaterialData {
        key: "fiber blanket",
        density: 128.0,
        conductivity: &[(20.0, 0.040), (200.0, 0.055), (400.0, 0.09), (600.0, 0.14), (800.0, 0.20), (1000.0, 0.285)],
        specific_heat: &[(20.0, 800.0), (400.0, 1010.0), (1090.0, 1130.0)],
        limit_celsius: 1260.0,
        spread: 0.25,
        source: "alumina-silica, 128 kg/m3: typical of makers' sheets, from memory; laboratories differ by 7 % \
                 (ASTM C16.30 round robin)",
    },
    MaterialData {
        key: "insulating castable",
        density: 1100.0,
        conductivity: &[(20.0, 0.30), (400.0, 0.38), (600.0, 0.41), (800.0, 0.44), (1000.0, 0.46), (1200.0, 0.48)],
        specific_heat: ALUMINA_HEAT,
        limit_celsius: 1600.0,
        spread: 0.3,
        source: "between the light bricks 1540 and 1760 of the VDI Heat Atlas, 2nd ed. 2010: representative",
    },
    MaterialData {
        key: "dense castable",
        density: 2600.0,
        conductivity: &[(20.0, 1.90), (400.0, 1.80), (800.0, 1.70), (1200.0, 1.65)],
        specific_heat: ALUMINA_HEAT,
        limit_celsius: 1650.0,
        spread: 0.2,
        source: TYPICAL,
    },
    MaterialData {
        key: "calcium silicate board",
        density: 260.0,
        conductivity: &[(20.0, 0.060), (200.0, 0.070), (400.0, 0.090), (600.0, 0.110), (800.0, 0.140)],
        specific_heat: &[(20.0, 840.0), (400.0, 1030.0), (800.0, 1100.0)],
        limit_celsius: 1000.0,
        spread: 0.2,
        source: TYPICAL,
    },
    MaterialData {
        key: "steel sheet",
        density: 7850.0,
        conductivity: &[(20.0, 53.3), (800.0, 27.3)],
        specific_heat: &[(20.0, 440.0), (600.0, 760.0)],
        limit_celsius: 540.0,
        spread: 0.1,
        source: "EN 1993-1-2:2005, 3.4.1.2 and 3.4.1.3; limit: scaling of carbon steel, from memory",
    },
    MaterialData {
        key: "unknown light lining",
        density: 800.0,
        conductivity: &[(20.0, 0.23), (400.0, 0.27), (800.0, 0.31), (1200.0, 0.35)],
        specific_heat: LIGHT_HEAT,
        limit_celsius: 1260.0,
        spread: 0.5,
        source: LIGHT_OR_HEAVY,
    },
    MaterialData {
        key: "unknown heavy lining",
        density: 2300.0,
        conductivity: &[(20.0, 1.5), (1200.0, 1.5)],
        specific_heat: ALUMINA_HEAT,
        limit_celsius: 1400.0,
        spread: 0.5,
        source: LIGHT_OR_HEAVY,
    },
    MaterialData {
        key: "unknown soft lining",
        density: 128.0,
        conductivity: &[(20.0, 0.040), (200.0, 0.055), (400.0, 0.09), (600.0, 0.14), (800.0, 0.20), (1000.0, 0.285)],
        specific_heat: &[(20.0, 800.0), (400.0, 1010.0), (1090.0, 1130.0)],
        limit_celsius: 1260.0,
        spread: 0.5,
        source: LIGHT_OR_HEAVY,
    },
];

/// A material worked out for computing.
///
/// # Examples
///
/// ```
/// use jetwright::furnace::Material;
/// use jetwright::quantity::Temperature;
/// let brick: Material = Material::named("insulating brick 26").unwrap();
/// assert!((brick.conductivity(Temperature::from_celsius(900.0)) - 0.33).abs() < 1e-12);
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Material<S = f64> {
    density: S,
    conductivity: Polyline<S>,
    specific_heat: Polyline<S>,
    limit: Temperature<S>,
    spread: S,
}

impl<S: Scalar> Material<S> {
    /// A class of [`MATERIALS`] by its key, "fiber blanket" being the other spelling of one; none when there is no such
    /// class.
    #[must_use]
    pub fn named(key: &str) -> Option<Self> {
        let key = if key == "fiber blanket" { "fiber blanket" } else { key };
        let data = MATERIALS.iter().find(|data| data.key == key)?;
        Some(Self {
            density: S::c(data.density),
            conductivity: Polyline::of_table(data.conductivity),
            specific_heat: Polyline::of_table(data.specific_heat),
            limit: Temperature::from_celsius(S::c(data.limit_celsius)),
            spread: S::c(data.spread),
        })
    }

    /// A material of one's own by points: kelvin and W/(m K), kelvin and J/(kg K).
    ///
    /// # Errors
    ///
    /// Density, conductivity, specific heat or limit out of range; points that do not rise.
    pub fn by_points(
        density: Density<S>,
        conductivity: &[(S, S)],
        specific_heat: &[(S, S)],
        limit: Temperature<S>,
    ) -> Result<Self> {
        check(Input::MaterialDensity, density.kilograms_per_cubic_meter())?;
        check(Input::ChamberTemperature, limit.kelvin())?;
        Ok(Self {
            density: density.kilograms_per_cubic_meter(),
            conductivity: Polyline::new(Input::Conductivity, conductivity)?,
            specific_heat: Polyline::new(Input::SpecificHeat, specific_heat)?,
            limit,
            spread: S::c(0.1),
        })
    }

    /// The same material with its conductivity multiplied: what a lining that is worse or better than the table does.
    ///
    /// # Errors
    ///
    /// A conductivity out of its range.
    pub fn with_conductivity_factor(&self, factor: S) -> Result<Self> {
        let line = self.conductivity.scaled(Input::Conductivity, factor)?;
        Ok(Self { conductivity: line, ..self.clone() })
    }

    /// Conductivity, W/(m K).
    #[must_use]
    pub fn conductivity(&self, temperature: Temperature<S>) -> S {
        self.conductivity.value(temperature.kelvin())
    }
    /// The conductivity over temperature.
    #[must_use]
    pub fn conductivity_line(&self) -> &Polyline<S> {
        &self.conductivity
    }
    /// The specific heat over temperature.
    #[must_use]
    pub fn specific_heat_line(&self) -> &Polyline<S> {
        &self.specific_heat
    }
    /// Density.
    #[must_use]
    pub fn density(&self) -> Density<S> {
        Density::from_kilograms_per_cubic_meter(self.density)
    }
    /// Maximum service temperature.
    #[must_use]
    pub fn limit(&self) -> Temperature<S> {
        self.limit
    }
    /// Spread of its conductivity among makers, as a share (k = 2).
    #[must_use]
    pub fn spread(&self) -> S {
        self.spread
    }
}

impl<S: Scalar> Matter<S> for Material<S> {
    fn density(&self) -> S {
        self.density
    }
    fn conductivity(&self, kelvin: S) -> S {
        self.conductivity.value(kelvin)
    }
    fn specific_heat(&self, kelvin: S) -> S {
        self.specific_heat.value(kelvin)
    }
    fn heat_between(&self, from: S, to: S) -> S {
        self.specific_heat.integral(from, to)
    }
}

/// Steel that stands inside a wall: an anchor, a sleeve, the end of a burner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SteelGrade {
    /// What a user writes.
    pub key: &'static str,
    /// Above this it scales away within a season, Celsius.
    pub limit_celsius: f64,
}

/// Grades with the temperature above which they scale in air.
///
/// # Source
///
/// Long-service limits in air as printed in handbooks of heat-resisting steel, from memory; a reducing fire, sulfur
/// and cycling lower them.
pub const STEELS: &[SteelGrade] = &[
    SteelGrade { key: "carbon steel", limit_celsius: 540.0 },
    SteelGrade { key: "stainless 430", limit_celsius: 815.0 },
    SteelGrade { key: "stainless 304", limit_celsius: 870.0 },
    SteelGrade { key: "stainless 310", limit_celsius: 1035.0 },
];

#[cfg(test)]
mod tests {
    use super::{MATERIALS, Material};
    use crate::interpolate::Polyline;
    use crate::{Input, limits};

    #[test]
    fn every_class_is_within_the_limits_and_has_its_source() {
        for data in MATERIALS {
            let kelvin = |points: &[(f64, f64)]| {
                points.iter().map(|(celsius, value)| (celsius + 273.15, *value)).collect::<std::vec::Vec<_>>()
            };
            assert!(Polyline::new(Input::Conductivity, &kelvin(data.conductivity)).is_ok(), "{}", data.key);
            assert!(Polyline::new(Input::SpecificHeat, &kelvin(data.specific_heat)).is_ok(), "{}", data.key);
            assert!(limits::check(Input::MaterialDensity, data.density).is_ok(), "{}", data.key);
            assert!(!data.source.is_empty() && data.spread >= 0.07, "{}", data.key);
            assert!(Material::<f32>::named(data.key).is_some());
        }
        assert!(Material::<f64>::named("cheese").is_none());
        assert_eq!(Material::<f64>::named("fiber blanket"), Material::named("fiber blanket"));
    }
}
