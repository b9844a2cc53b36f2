//! Coefficients of plates and bores, losses of their mouths, the handbook's flow.

use super::row::Row;
use jetwright::Scalar;
use jetwright::friction::Friction;
use jetwright::orifice::{Edge, SQUARE_ENTRY_LOSS, Stream, frictional_bore, thin_plate};
use jetwright::quantity::{Angle, Length};

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let stream = || Stream::perfect_gas(row.get("isentropic_exponent"), row.get("pressure_ratio"));
    let one = Length::from_millimeters(S::one());
    // The tables are printed for 0.50 at a square mouth; ours are scaled to the measured one.
    let as_printed = |edge: Edge<S>| edge.entry_loss(one).unwrap() * S::c(0.5 / SQUARE_ENTRY_LOSS);
    Some(match row.quantity.as_str() {
        "thin_plate_discharge_coefficient" | "thin_plate_beside_cunningham" | "thin_plate_beside_weisbach" => {
            thin_plate(row.get("contraction_coefficient"), &stream())
        }
        "long_bore_discharge_coefficient" => {
            let friction = Friction { factor: row.get("friction_length"), log_slope: S::zero() };
            frictional_bore(row.get("entry_loss"), &stream(), |_| friction).unwrap().coefficient
        }
        "entry_loss_rounded" => as_printed(Edge::Rounded { radius: one * row.get("radius_over_diameter") }),
        "entry_loss_chamfered" => as_printed(Edge::Chamfered {
            depth: one * row.get("depth_over_diameter"),
            angle: Angle::from_degrees(row.get("cone_angle_deg")),
        }),
        _ => return None,
    })
}
