//! Dampers, plates with holes, blower power.

use super::row::Row;
use jetwright::Scalar;
use jetwright::air::{Damper, DamperKind, Duty, Resistance};
use jetwright::burner::Head;
use jetwright::quantity::{ActualVolumeFlow, Density, Length, PressureDifference};

/// kg of a pound, m of a foot, W of a mechanical horsepower.
const POUND: f64 = 0.453_592_37;
const FOOT: f64 = 0.3048;
const HORSEPOWER: f64 = 550.0 * FOOT * POUND * 9.806_65;

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let duct = Length::from_inches(S::c(3.0));
    let damper = |kind, opening| Damper::new(kind, duct).unwrap().loss_coefficient(opening).unwrap();
    Some(match row.quantity.as_str() {
        "butterfly_loss_coefficient" => {
            let disc = Damper::disc(duct, row.get("gap")).unwrap();
            disc.loss_coefficient(S::one() - row.get::<S>("angle_deg") / S::c(90.0)).unwrap()
        }
        "blast_gate_loss_coefficient" => damper(DamperKind::BlastGate, row.get("opening")),
        "ball_valve_loss_coefficient" => damper(DamperKind::BallValve, row.get("opening")),
        "gate_valve_loss_coefficient" => damper(DamperKind::GateValve, row.get("opening")),
        "shaft_power_hp" => {
            let flow = ActualVolumeFlow::from_cubic_feet_per_minute(row.get("flow_cfm"));
            let pressure = PressureDifference::from_inches_of_water(row.get("pressure_inh2o"));
            let density = Density::from_kilograms_per_cubic_meter(S::c(1.2));
            let duty = Duty::new(flow, pressure, density, Some(row.get("efficiency"))).unwrap();
            duty.shaft_power.unwrap().watts() * S::c(1.0 / HORSEPOWER)
        }
        "velocity_pressure_inh2o" => {
            let density = row.get::<S>("density_lb_per_ft3") * S::c(POUND / (FOOT * FOOT * FOOT));
            let one_head =
                Resistance::from_loss_coefficient(S::one(), duct, Density::from_kilograms_per_cubic_meter(density));
            let area = S::c(core::f64::consts::FRAC_PI_4) * duct.meters().squared();
            let flow = row.get::<S>("speed_fpm") * S::c(FOOT / 60.0) * area;
            one_head.loss(ActualVolumeFlow::from_cubic_meters_per_second(flow)).inches_of_water()
        }
        "port_loss_coefficient" => port_loss(row),
        // A plate in a duct loses (1-f)^2 of the ports' heads behind it; a head in a chamber loses all of one.
        "head_loss_coefficient_on_duct" => {
            let open = row.get::<S>("open_fraction");
            (port_loss::<S>(row) - S::one() + (S::one() - open).squared()) / open.squared()
        }
        _ => return None,
    })
}

/// Loss of a head of ports of 4 mm, on their speed.
fn port_loss<S: Scalar>(row: &Row) -> S {
    let diameter = Length::from_millimeters(S::c(4.0));
    let length = diameter * row.get("length_over_diameter");
    let head = Head::with_ports(S::one(), diameter, length, row.get("open_fraction")).unwrap();
    head.loss_coefficient(row.get("friction_factor"))
}
