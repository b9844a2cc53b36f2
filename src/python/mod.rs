//! The compiled half of the Python package: thin wrappers, no physics.
//!
//! Arrays are loops over the core's functions on contiguous `f64` data; what Python does better (keyword
//! arguments, labels, plots) stands in `python/jetwright`.

mod air;
mod burning;
mod flame;
mod flow;
mod gas;
mod operands;
mod sheet;
mod site;
mod supply;

use pyo3::prelude::*;

/// The module behind `import jetwright`.
#[pymodule]
mod _native {
    #[pymodule_export]
    use super::air::{Blower, Head, air_needed, air_ratio};
    #[pymodule_export]
    use super::burning::{
        air_ratio_of_reading, autoignition, burning_range, burning_velocity, expected_reading, fire_character,
    };
    #[pymodule_export]
    use super::flame::{flame, products};
    #[pymodule_export]
    use super::flow::{bore_for_flow, drills, flow, flow_one, gauge_for_flow};
    #[pymodule_export]
    use super::gas::Gas;
    #[pymodule_export]
    use super::sheet::{Burner, sheet_from_text};
    #[pymodule_export]
    use super::site::site;
    #[pymodule_export]
    use super::supply::{cylinder, low_pressure_line};

    use super::*;

    #[pymodule_init]
    fn init(module: &Bound<'_, PyModule>) -> PyResult<()> {
        module.add("__version__", env!("CARGO_PKG_VERSION"))
    }
}
