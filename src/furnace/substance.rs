//! What is heated: heat from one temperature to another, melting included.

use super::body::Matter;
use crate::error::Result;
use crate::interpolate::Polyline;
use crate::limits::{Input, check};
use crate::quantity::{Density, Temperature};
use crate::scalar::Scalar;

/// A substance as it stands in the table; temperatures in Celsius.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SubstanceData {
    /// What a user writes.
    pub key: &'static str,
    /// Density, kg/m3.
    pub density: f64,
    /// Conductivity, W/(m K), by temperature.
    pub conductivity: &'static [(f64, f64)],
    /// Specific heat of the solid, J/(kg K), by temperature.
    pub solid_heat: &'static [(f64, f64)],
    /// Where it begins to melt and where it is all melted.
    pub melting: (f64, f64),
    /// Heat of melting, J/kg, spread evenly between the two.
    pub latent: f64,
    /// Specific heat of the melt, J/(kg K).
    pub liquid_heat: f64,
    /// Emissivity as it lies in a fire.
    pub emissivity: f64,
    /// Where the numbers are from.
    pub source: &'static str,
}

const PURE: &str = "CRC Handbook of Chemistry and Physics (heat of fusion, melting point), specific heats of \
    Touloukian's tables, from memory; the former two beside the library chemicals 1.5.2";
const ALLOY: &str = "melting range and conductivity of the copper trade's alloy sheets, from memory; heat of melting \
    by mixing the metals', which leaves 10 %";
const CERAMIC: &str = "representative, from memory; 15 %";

/// Every substance.
pub const SUBSTANCES: &[SubstanceData] = &[
    SubstanceData {
        key: "steel",
        density: 7850.0,
        conductivity: &[(20.0, 53.33), (800.0, 27.3)],
        // Replaced by the standard's own formula, with its peak at 735.
        solid_heat: &[(20.0, 440.0)],
        melting: (1450.0, 1520.0),
        latent: 270e3,
        liquid_heat: 800.0,
        emissivity: 0.8,
        source: "EN 1993-1-2:2005, 3.4.1.2 and 3.4.1.3, to 1200 C; melting from memory",
    },
    SubstanceData {
        key: "copper",
        density: 8960.0,
        conductivity: &[(20.0, 401.0), (527.0, 366.0), (1027.0, 339.0)],
        solid_heat: &[(25.0, 385.0), (127.0, 398.0), (327.0, 417.0), (527.0, 433.0), (727.0, 451.0), (1027.0, 490.0)],
        melting: (1084.1, 1085.1),
        latent: 208.7e3,
        liquid_heat: 515.0,
        emissivity: 0.7,
        source: PURE,
    },
    SubstanceData {
        key: "bell bronze",
        density: 8600.0,
        conductivity: &[(20.0, 45.0), (600.0, 90.0)],
        solid_heat: &[(20.0, 360.0), (700.0, 430.0)],
        melting: (798.0, 890.0),
        latent: 179e3,
        liquid_heat: 460.0,
        emissivity: 0.7,
        source: ALLOY,
    },
    SubstanceData {
        key: "tin bronze",
        density: 8780.0,
        conductivity: &[(20.0, 71.0), (600.0, 130.0)],
        solid_heat: &[(20.0, 377.0), (700.0, 440.0)],
        melting: (845.0, 1000.0),
        latent: 194e3,
        liquid_heat: 480.0,
        emissivity: 0.7,
        source: ALLOY,
    },
    SubstanceData {
        key: "brass",
        density: 8500.0,
        conductivity: &[(20.0, 120.0), (600.0, 150.0)],
        solid_heat: &[(20.0, 377.0), (700.0, 450.0)],
        melting: (900.0, 945.0),
        latent: 176e3,
        liquid_heat: 490.0,
        emissivity: 0.6,
        source: ALLOY,
    },
    SubstanceData {
        key: "aluminum",
        density: 2700.0,
        conductivity: &[(20.0, 237.0), (527.0, 218.0)],
        solid_heat: &[(25.0, 897.0), (127.0, 951.0), (327.0, 1036.0), (527.0, 1154.0), (627.0, 1210.0)],
        melting: (659.8, 660.8),
        latent: 397e3,
        liquid_heat: 1177.0,
        emissivity: 0.3,
        source: PURE,
    },
    SubstanceData {
        key: "silver",
        density: 10_490.0,
        conductivity: &[(20.0, 429.0), (727.0, 379.0)],
        solid_heat: &[(25.0, 235.0), (127.0, 239.0), (327.0, 250.0), (527.0, 262.0), (727.0, 277.0)],
        melting: (961.3, 962.3),
        latent: 104.6e3,
        liquid_heat: 310.0,
        emissivity: 0.2,
        source: PURE,
    },
    SubstanceData {
        key: "glass",
        density: 2500.0,
        conductivity: &[(20.0, 1.0), (600.0, 1.6)],
        solid_heat: &[(20.0, 800.0), (400.0, 1080.0), (600.0, 1250.0), (1200.0, 1400.0)],
        // It softens without a heat of melting.
        melting: (1100.0, 1101.0),
        latent: 0.0,
        liquid_heat: 1400.0,
        emissivity: 0.9,
        source: CERAMIC,
    },
    SubstanceData {
        key: "stoneware",
        density: 2300.0,
        conductivity: &[(20.0, 1.1), (1000.0, 1.5)],
        solid_heat: &[(20.0, 830.0), (500.0, 1050.0), (1000.0, 1150.0)],
        melting: (1400.0, 1500.0),
        latent: 0.0,
        liquid_heat: 1200.0,
        emissivity: 0.85,
        source: CERAMIC,
    },
    SubstanceData {
        key: "clay graphite",
        density: 2000.0,
        conductivity: &[(20.0, 20.0), (1200.0, 12.0)],
        solid_heat: &[(20.0, 750.0), (400.0, 1150.0), (800.0, 1350.0), (1200.0, 1450.0)],
        melting: (1800.0, 1801.0),
        latent: 0.0,
        liquid_heat: 1500.0,
        emissivity: 0.85,
        source: CERAMIC,
    },
];

/// A substance worked out for computing.
#[derive(Clone, Debug, PartialEq)]
pub struct Substance<S = f64> {
    is_steel: bool,
    density: S,
    conductivity: Polyline<S>,
    solid_heat: Polyline<S>,
    solidus: S,
    liquidus: S,
    latent: S,
    liquid_heat: S,
    emissivity: S,
}

impl<S: Scalar> Substance<S> {
    /// A substance of [`SUBSTANCES`] by its key, "aluminium" being the other spelling of one; none when there is no such
    /// substance.
    #[must_use]
    pub fn named(key: &str) -> Option<Self> {
        let key = if key == "aluminium" { "aluminum" } else { key };
        let data = SUBSTANCES.iter().find(|data| data.key == key)?;
        Some(Self {
            is_steel: key == "steel",
            density: S::c(data.density),
            conductivity: Polyline::of_table(data.conductivity),
            solid_heat: Polyline::of_table(data.solid_heat),
            solidus: S::c(data.melting.0 + 273.15),
            liquidus: S::c(data.melting.1 + 273.15),
            latent: S::c(data.latent),
            liquid_heat: S::c(data.liquid_heat),
            emissivity: S::c(data.emissivity),
        })
    }

    /// A solid of one's own by points, K and SI units, that melts nowhere below the given temperature.
    ///
    /// # Errors
    ///
    /// A value out of its range, or points that do not rise.
    pub fn by_points(
        density: Density<S>,
        conductivity: &[(S, S)],
        specific_heat: &[(S, S)],
        limit: Temperature<S>,
        emissivity: S,
    ) -> Result<Self> {
        let solid_heat = Polyline::new(Input::SpecificHeat, specific_heat)?;
        let solidus = check(Input::ChamberTemperature, limit.kelvin())?;
        Ok(Self {
            is_steel: false,
            density: check(Input::MaterialDensity, density.kilograms_per_cubic_meter())?,
            conductivity: Polyline::new(Input::Conductivity, conductivity)?,
            liquid_heat: solid_heat.value(solidus),
            solid_heat,
            solidus,
            liquidus: solidus + S::one(),
            latent: S::zero(),
            emissivity: check(Input::Emissivity, emissivity)?,
        })
    }

    /// Where it begins to melt.
    #[must_use]
    pub fn solidus(&self) -> Temperature<S> {
        Temperature::from_kelvin(self.solidus)
    }
    /// Where it is all melted.
    #[must_use]
    pub fn liquidus(&self) -> Temperature<S> {
        Temperature::from_kelvin(self.liquidus)
    }
    /// Emissivity as it lies in a fire.
    #[must_use]
    pub fn emissivity(&self) -> S {
        self.emissivity
    }

    /// Heat to bring a kilogram from one temperature to another, J/kg, melting included.
    ///
    /// # Source
    ///
    /// Steel: EN 1993-1-2:2005, 3.4.1.2, integrated; 650 J/(kg K) from 900 C to where it melts. Others: the table's
    /// specific heats and heat of melting.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::furnace::Substance;
    /// use jetwright::quantity::Temperature;
    /// let steel: Substance = Substance::named("steel").unwrap();
    /// let heat = steel.heat(Temperature::from_celsius(20.0), Temperature::from_celsius(1200.0));
    /// assert!((heat - 827e3).abs() < 1e3);
    /// ```
    #[must_use]
    pub fn heat(&self, from: Temperature<S>, to: Temperature<S>) -> S {
        self.heat_between(from.kelvin(), to.kelvin())
    }

    fn solid_between(&self, from: S, to: S) -> S {
        if self.is_steel {
            steel_heat(from - S::c(273.15), to - S::c(273.15))
        } else {
            self.solid_heat.integral(from, to)
        }
    }
}

impl<S: Scalar> Matter<S> for Substance<S> {
    fn density(&self) -> S {
        self.density
    }
    fn conductivity(&self, kelvin: S) -> S {
        self.conductivity.value(kelvin)
    }
    fn specific_heat(&self, kelvin: S) -> S {
        if kelvin > self.liquidus {
            self.liquid_heat
        } else if kelvin > self.solidus {
            self.liquid_heat + self.latent / (self.liquidus - self.solidus)
        } else if self.is_steel {
            steel_specific_heat(kelvin - S::c(273.15))
        } else {
            self.solid_heat.value(kelvin)
        }
    }
    fn heat_between(&self, from: S, to: S) -> S {
        if to < from {
            return -self.heat_between(to, from);
        }
        let mut heat = S::zero();
        if from < self.solidus {
            heat += self.solid_between(from, to.smaller(self.solidus));
        }
        let (low, high) = (from.larger(self.solidus), to.smaller(self.liquidus));
        if high > low {
            heat += self.latent * (high - low) / (self.liquidus - self.solidus);
        }
        if to > self.solidus {
            heat += self.liquid_heat * (to - from.larger(self.solidus));
        }
        heat
    }
}

/// Specific heat of steel, J/(kg K), at a temperature in Celsius.
fn steel_specific_heat<S: Scalar>(celsius: S) -> S {
    let t = celsius.larger(S::c(20.0));
    if t <= S::c(600.0) {
        S::c(425.0) + t * (S::c(0.773) - t * (S::c(1.69e-3) - t * S::c(2.22e-6)))
    } else if t <= S::c(735.0) {
        S::c(666.0) + S::c(13_002.0) / (S::c(738.0) - t)
    } else if t <= S::c(900.0) {
        S::c(545.0) + S::c(17_820.0) / (t - S::c(731.0))
    } else {
        S::c(650.0)
    }
}

/// Its integral between two temperatures in Celsius, the lower first.
fn steel_heat<S: Scalar>(from: S, to: S) -> S {
    let within = |low: f64, high: f64| (from.clamped(S::c(low), S::c(high)), to.clamped(S::c(low), S::c(high)));
    let twenty = S::c(20.0);
    let below = (to.smaller(twenty) - from.smaller(twenty)) * steel_specific_heat(twenty);
    let (a, b) = within(20.0, 600.0);
    let squares = a.squared() + a * b + b.squared();
    let cubes = (a.squared() + b.squared()) * (a + b);
    let first =
        (b - a) * (S::c(425.0) + S::c(0.3865) * (a + b) - S::c(1.69e-3 / 3.0) * squares + S::c(2.22e-6 / 4.0) * cubes);
    let (a, b) = within(600.0, 735.0);
    let second = S::c(666.0) * (b - a) + S::c(13_002.0) * ((b - a) / (S::c(738.0) - b)).ln_1p();
    let (a, b) = within(735.0, 900.0);
    let third = S::c(545.0) * (b - a) + S::c(17_820.0) * ((b - a) / (a - S::c(731.0))).ln_1p();
    let above = S::c(650.0) * (to.larger(S::c(900.0)) - from.larger(S::c(900.0)));
    below + first + second + third + above
}

#[cfg(test)]
mod tests {
    use super::{SUBSTANCES, Substance};
    use crate::furnace::Matter;

    #[test]
    fn heat_is_the_integral_of_specific_heat_and_adds_up() {
        for data in SUBSTANCES {
            let matter: Substance = Substance::named(data.key).unwrap();
            let single: Substance<f32> = Substance::named(data.key).unwrap();
            let (from, to) = (280.0, data.melting.1 + 273.15 + 150.0);
            let steps = 400_000;
            let width = (to - from) / f64::from(steps);
            let sum: f64 =
                (0..steps).map(|step| matter.specific_heat(from + (f64::from(step) + 0.5) * width) * width).sum();
            let heat = matter.heat_between(from, to);
            // A step of the sum is 4 mK, of the kelvin in which a pure metal melts.
            assert!((sum / heat - 1.0).abs() < 1e-3, "{}: {sum} {heat}", data.key);
            let halves = matter.heat_between(from, 700.0) + matter.heat_between(700.0, to);
            assert!((halves / heat - 1.0).abs() < 1e-12, "{}", data.key);
            assert!((f64::from(single.heat_between(from as f32, to as f32)) / heat - 1.0).abs() < 1e-5);
        }
    }
}
