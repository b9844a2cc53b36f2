//! Liquid in the cylinder, what it gives, and what lines cost.

use super::row::Row;
use jetwright::friction::Friction;
use jetwright::fuel::{Cylinder, isothermal_inlet, low_pressure_pipe_flow, throttled};
use jetwright::gas::{Gas, Species};
use jetwright::orifice::{Stream, frictional_bore};
use jetwright::quantity::{AbsolutePressure, Length, Mass, PressureDifference, Temperature};
use jetwright::{Input, Scalar, solve};

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let pascals = |name: &str| AbsolutePressure::from_pascals(row.get::<S>(name));
    let kelvin = || Temperature::from_kelvin(row.get::<S>("temperature_k"));
    let saturated = || row.gas::<S>().mixture().saturated(kelvin()).unwrap();
    let area = |diameter: S| S::c(core::f64::consts::FRAC_PI_4) * diameter.squared();
    Some(match row.quantity.as_str() {
        "vapor_pressure_pa" => saturated().pressure.pascals(),
        "latent_heat_j_per_kg" => saturated().latent_heat,
        "liquid_density_kg_per_m3" => saturated().density.kilograms_per_cubic_meter(),
        "liquid_heat_capacity_j_per_kg_k" => saturated().heat_capacity,
        "throttled_temperature_k" => {
            throttled(&row.gas(), pascals("pressure_before_pa"), kelvin(), pascals("pressure_after_pa"))
                .unwrap()
                .kelvin()
        }
        "cylinder_draw_btu_per_h" => {
            let full = Mass::from_pounds(S::c(100.0));
            let cylinder = Cylinder::new(Length::from_meters(S::c(0.368)), full, None, S::one()).unwrap();
            let propane = Gas::from(Species::Propane);
            let down = AbsolutePressure::from_pascals(S::c(101_325.0));
            let air = Temperature::from_fahrenheit(row.get("air_temperature_f"));
            let draw = cylinder.steady_draw(&propane, Mass::from_pounds(row.get("charge_lb")), air, down).unwrap();
            propane.gross_heating_value().of(draw).btu_per_hour()
        }
        "code_pipe_ft3_per_h" => {
            let (diameter, length) =
                (Length::from_inches(row.get::<S>("diameter_in")), Length::from_feet(row.get::<S>("length_ft")));
            let drop = PressureDifference::from_inches_of_water(row.get("drop_inh2o"));
            let flow =
                low_pressure_pipe_flow(diameter, length, drop, row.get("relative_density"), row.get("viscosity_pa_s"));
            flow.unwrap().cubic_feet_per_minute() * S::c(60.0)
        }
        "isothermal_inlet_pa" => {
            let flux = row.get::<S>("mass_flow_kg_per_s") / area(row.get("diameter_m"));
            isothermal_inlet(row.get("outlet_pa"), flux, row.get("work_j_per_kg"), row.get("losses")).unwrap()
        }
        "isothermal_diameter_m" => isothermal_diameter(row),
        "isothermal_middle_pa" => {
            let diameter = isothermal_diameter::<S>(row);
            isothermal_inlet_of(row, diameter, S::c(0.5))
        }
        "adiabatic_line_kg_per_s" => {
            let (supply, outlet) = (row.get::<S>("stagnation_pa"), row.get::<S>("outlet_pa"));
            let stream = Stream::perfect_gas(row.get("isentropic_exponent"), outlet / supply);
            let friction = Friction { factor: row.get("friction_length"), log_slope: S::zero() };
            let coefficient = frictional_bore(S::zero(), &stream, |_| friction).unwrap().coefficient;
            let lossless = stream.flux_squared.sqrt() * supply / (S::c(287.0) * row.get("stagnation_k")).sqrt();
            coefficient * lossless * area(row.get("diameter_m"))
        }
        _ => return None,
    })
}

/// The inlet of the last part of a line of a diameter.
fn isothermal_inlet_of<S: Scalar>(row: &Row, diameter: S, part: S) -> S {
    let flux = row.get::<S>("mass_flow_kg_per_s") / (S::c(core::f64::consts::FRAC_PI_4) * diameter.squared());
    let losses = row.get::<S>("darcy_factor") * row.get("length_m") * part / diameter;
    isothermal_inlet(row.get("outlet_pa"), flux, row.get("work_j_per_kg"), losses).unwrap_or(S::c(1e9))
}

/// The diameter that has the row's inlet pressure.
fn isothermal_diameter<S: Scalar>(row: &Row) -> S {
    let inlet = row.get::<S>("inlet_pa");
    let excess = |diameter: S| (isothermal_inlet_of(row, diameter, S::one()) / inlet).ln();
    solve::root(Input::PipeDiameter, S::c(0.02), S::c(0.08), excess).unwrap().x
}
