//! Gradients, quenching, ignition delay and unlit gas.

use super::row::Row;
use jetwright::burner::{
    Conditions, FlameGradients, Head, air_changes, fills_after, ignition_delay, residence, thermal_diffusivity,
};
use jetwright::quantity::{AbsolutePressure, ActualVolumeFlow, Density, Length, MassFlow, Temperature, Volume};
use jetwright::{Scalar, Site};

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let mixture = || Temperature::from_kelvin(row.get("mixture_temperature_k"));
    let conditions = || {
        let air = Temperature::from_kelvin(S::c(293.15));
        let pressure = AbsolutePressure::from_pascals(row.get("pressure_pa"));
        Conditions {
            site: Site::at_station_pressure(pressure, air, S::zero()).unwrap(),
            gas: row.gas(),
            gas_temperature: air,
            mixture_temperature: mixture(),
            chamber_temperature: air,
        }
    };
    let flame = || FlameGradients::new(&conditions(), row.get("air_ratio"), mixture()).unwrap();
    let volume = || Volume::from_cubic_meters(row.get("volume_m3"));
    let temperature = || Temperature::from_kelvin(row.get("temperature_k"));
    Some(match row.quantity.as_str() {
        "thermal_diffusivity_m2_per_s" => thermal_diffusivity(&conditions(), row.get("air_ratio"), mixture()).unwrap(),
        "blow_off_gradient_per_s" => flame().blow_off,
        "blow_off_in_air_gradient_per_s" => flame().blow_off_in_air,
        "flashback_gradient_per_s" => flame().flashback,
        "quenching_distance_m" => flame().quenching_distance.meters(),
        "wall_gradient_per_s" => {
            let diameter = Length::from_meters(row.get("port_diameter_m"));
            let head = Head::with_ports(S::one(), diameter, diameter * S::c(10.0), S::zero()).unwrap();
            let density = Density::from_kilograms_per_cubic_meter(row.get("density_kg_per_m3"));
            let flow = row.get::<S>("speed_m_per_s") * head.area().square_meters();
            let mass = ActualVolumeFlow::from_cubic_meters_per_second(flow).at(density);
            head.wall_gradient(&head.flow(mass, density, row.get("viscosity_pa_s")))
        }
        "ignition_delay_s" => ignition_delay(&row.mixture(), temperature()).unwrap().seconds(),
        "residence_s" => {
            let flow = MassFlow::from_kilograms_per_second(row.get("flow_kg_per_s"));
            let ambient = AbsolutePressure::from_pascals(row.get("pressure_pa"));
            residence(volume(), flow, ambient, temperature()).unwrap().seconds()
        }
        "fills_after_s" => {
            let flow = ActualVolumeFlow::from_cubic_meters_per_second(row.get("flow_m3_per_s"));
            fills_after(volume(), flow, row.get("gas_share"), row.get("limit")).unwrap()?.seconds()
        }
        "air_changes" => air_changes(row.get("from"), row.get("to")).unwrap(),
        _ => return None,
    })
}
