//! The compiled half of the Python package: thin wrappers, no physics.
//!
//! Arrays are loops over the core's functions on contiguous `f64` data; what Python does better (keyword
//! arguments, labels, plots) stands in `python/jetwright`.

mod air;
mod burning;
mod flame;
mod flow;
mod furnace;
mod furnace_case;
mod gas;
mod hazards;
mod lighting;
mod mapping;
mod material;
mod measure;
mod operands;
mod parts;
mod sheet;
mod site;
mod supply;
mod work;

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
    use super::flow::{
        drills, flow, flow_one, for_heat, jet_edges, jet_inputs, jet_measured, jet_results, jet_roughness,
    };
    #[pymodule_export]
    use super::furnace::{box_factor, chamber, cool_down, firing, reignites_above, shell_loss, wall, warm_up};
    #[pymodule_export]
    use super::furnace_case::furnace_case;
    #[pymodule_export]
    use super::gas::Gas;
    #[pymodule_export]
    use super::hazards::{
        castable_hazards, cylinder_hazards, flame_hazards, flow_hazards, gas_hazards, hazard_kinds, lighting_hazards,
        run_hazards,
    };
    #[pymodule_export]
    use super::lighting::{lighting, lighting_known, lighting_range};
    #[pymodule_export]
    use super::material::{Material, Substance, materials, steels, substances};
    #[pymodule_export]
    use super::measure::{compare, flow_uncertainty, plan_weighing, uncertainty_sources, weigh};
    #[pymodule_export]
    use super::operands::input_keys;
    #[pymodule_export]
    use super::parts::{damper_loss, duct_loss, duty, perfect_gas};
    #[pymodule_export]
    use super::sheet::{Burner, sheet_of};
    #[pymodule_export]
    use super::site::site;
    #[pymodule_export]
    use super::supply::{cylinder, low_pressure_line};
    #[pymodule_export]
    use super::work::{
        anchor_count, carbon_monoxide_limits, castable, draft, drying_steps, fresh_air, lining, opening, sling_pull,
        work,
    };

    use super::*;

    #[pymodule_init]
    fn init(module: &Bound<'_, PyModule>) -> PyResult<()> {
        module.add("__version__", env!("CARGO_PKG_VERSION"))
    }
}
