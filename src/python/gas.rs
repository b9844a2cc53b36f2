//! The gas.

use std::collections::BTreeMap;
use std::prelude::rust_2024::*;
use std::string::ToString;

use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;

use super::operands::{Answer, Operand, map};
use crate::gas::{self, CombustionReference};
use crate::quantity::{AbsolutePressure, PressureDifference, ReferenceState, Temperature};

/// A fuel gas, worked out once.
#[pyclass(frozen, module = "jetwright._native", name = "Gas")]
pub struct Gas {
    pub core: gas::Gas,
    text: String,
}

#[pymethods]
impl Gas {
    #[new]
    fn new(text: &str) -> PyResult<Self> {
        let mixture = gas::parse(text).map_err(|error| PyValueError::new_err(error.to_string()))?;
        Ok(Self { core: gas::Gas::new(mixture), text: text.trim().into() })
    }

    /// What it was made from: a name, or mole fractions.
    #[getter]
    fn text(&self) -> &str {
        &self.text
    }

    /// Mole fractions by symbol.
    #[getter]
    fn fractions(&self) -> BTreeMap<&'static str, f64> {
        self.core.mixture().parts().map(|(species, share)| (species.symbol(), share)).collect()
    }

    /// kg/kmol.
    #[getter]
    fn molar_mass(&self) -> f64 {
        self.core.mixture().molar_mass()
    }

    /// J/kg at 15 degC.
    #[getter]
    fn heating_value_gross(&self) -> f64 {
        self.core.gross_heating_value().joules_per_kilogram()
    }

    /// J/kg at 15 degC.
    #[getter]
    fn heating_value_net(&self) -> f64 {
        self.core.net_heating_value().joules_per_kilogram()
    }

    /// Oxygen molecules to burn one of the mixture.
    #[getter]
    fn oxygen_to_burn(&self) -> f64 {
        self.core.mixture().oxygen_to_burn()
    }

    /// ISO 6976 values in SI units, by name.
    fn calorific_values(&self, combustion: f64, metering: f64) -> PyResult<BTreeMap<&'static str, f64>> {
        let combustion = match combustion {
            0.0 => CombustionReference::Celsius0,
            15.0 => CombustionReference::Celsius15,
            15.55 => CombustionReference::Fahrenheit60,
            20.0 => CombustionReference::Celsius20,
            25.0 => CombustionReference::Celsius25,
            _ => return Err(PyValueError::new_err("combustion is 0, 15, 15.55, 20 or 25 degC")),
        };
        let metering = match metering {
            0.0 => ReferenceState::Celsius0,
            15.0 => ReferenceState::Celsius15,
            15.55 => ReferenceState::Fahrenheit60,
            20.0 => ReferenceState::Celsius20,
            _ => return Err(PyValueError::new_err("metering is 0, 15, 15.55 or 20 degC")),
        };
        let values = self.core.mixture().calorific_values(combustion, metering);
        Ok(BTreeMap::from([
            ("molar_mass", values.molar_mass),
            ("compression_factor", values.compression_factor),
            ("gross_molar", values.gross_molar * 1e3),
            ("net_molar", values.net_molar * 1e3),
            ("gross_mass", values.gross_mass.joules_per_kilogram()),
            ("net_mass", values.net_mass.joules_per_kilogram()),
            ("gross_volume", values.gross_volume),
            ("net_volume", values.net_volume),
            ("density", values.density.kilograms_per_cubic_meter()),
            ("relative_density", values.relative_density),
            ("wobbe_gross", values.wobbe_gross),
            ("wobbe_net", values.wobbe_net),
        ]))
    }

    /// Density, viscosity, enthalpy, entropy and saturation ratio of (pressure, temperature).
    fn state<'py>(&self, py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
        map::<2, 5, (), _>(py, &operands, &shape, |&[pressure, temperature], _| {
            let (p, t) = checked(pressure, temperature)?;
            Ok([
                self.core.density(p, t)?.kilograms_per_cubic_meter(),
                self.core.viscosity(t),
                self.core.enthalpy(p, t)?,
                self.core.entropy(p, t)?,
                self.core.mixture().saturation_ratio(p, t),
            ])
        })
    }

    /// Pressure, latent heat, density and heat capacity of the liquid at each temperature.
    fn saturated<'py>(&self, py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
        map::<1, 4, (), _>(py, &operands, &shape, |&[kelvin], _| {
            let kelvin = crate::limits::check(crate::Input::GasTemperature, kelvin)?;
            let liquid = self.core.mixture().saturated(Temperature::from_kelvin(kelvin))?;
            let density = liquid.density.kilograms_per_cubic_meter();
            Ok([liquid.pressure.pascals(), liquid.latent_heat, density, liquid.heat_capacity])
        })
    }

    /// Lossless expansion of (supply pressure, pressure ahead, temperature): flux, speed, temperature, pressure
    /// ratio, density ratio, choked.
    fn expand<'py>(&self, py: Python<'py>, operands: Vec<Operand<'py>>, shape: Vec<usize>) -> Answer<'py> {
        map::<3, 6, (), _>(py, &operands, &shape, |&[pressure, ahead, temperature], _| {
            let (p, t) = checked(pressure, temperature)?;
            let drop = PressureDifference::from_pascals(pressure - ahead);
            if ahead > pressure || !ahead.is_finite() {
                return Err(crate::Error::InvertedPair {
                    lesser: crate::Input::BackPressure,
                    greater: crate::Input::GaugePressure,
                });
            }
            let flow = self.core.expand(p, drop, t)?;
            Ok([
                flow.mass_flux,
                flow.speed.meters_per_second(),
                flow.temperature.kelvin(),
                flow.pressure_ratio,
                flow.density_ratio,
                f64::from(u8::from(flow.choked)),
            ])
        })
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, (String,))> {
        Ok((slf.get_type().into_any(), (slf.get().text.clone(),)))
    }
}

/// A state within the range of temperatures, its pressure positive.
fn checked(pressure: f64, temperature: f64) -> crate::Result<(AbsolutePressure, Temperature)> {
    crate::limits::check(crate::Input::GasTemperature, temperature)?;
    crate::limits::check(crate::Input::SupplyPressure, pressure)?;
    Ok((AbsolutePressure::from_pascals(pressure), Temperature::from_kelvin(temperature)))
}
