//! Coefficients of plates and bores, losses of their mouths, the handbook's flow.

use super::row::Row;
use jetwright::Scalar;
use jetwright::friction::Friction;
use jetwright::orifice::{
    BoreLength, BoreShape, Edge, SQUARE_ENTRY_LOSS, Stream, discharge, frictional_bore, handbook_flow, thin_plate,
};
use jetwright::quantity::{Angle, Area, Length, PressureDifference};

/// A pressure ratio of so little flow that nothing is compressed.
const SLOW: f64 = 0.9995;
/// One at which every bore is choked.
const CHOKED: f64 = 0.05;

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let stream = || Stream::perfect_gas(row.get("isentropic_exponent"), row.get("pressure_ratio"));
    let one = Length::from_millimeters(S::one());
    // The tables are printed for 0.50 at a square mouth; ours are scaled to the measured one.
    let as_printed = |edge: Edge<S>| edge.entry_loss(one).unwrap() * S::c(0.5 / SQUARE_ENTRY_LOSS);
    let slow = || Stream::perfect_gas(S::c(1.4), S::c(SLOW));
    Some(match row.quantity.as_str() {
        "thin_plate_discharge_coefficient" | "thin_plate_beside_cunningham" | "thin_plate_beside_weisbach" => {
            thin_plate(row.get("contraction_coefficient"), &stream())
        }
        "long_bore_discharge_coefficient" => {
            let friction = Friction { factor: row.get("friction_length"), log_slope: S::zero() };
            frictional_bore(row.get("entry_loss"), &stream(), |_| friction).unwrap().coefficient
        }
        "short_tube_choked" => {
            smooth_bore(row, Edge::Square, &Stream::perfect_gas(row.get("isentropic_exponent"), S::c(CHOKED)))
        }
        "short_tube_slow" | "short_tube_beside_weisbach" | "thick_plate_beside_parker_kercher" => {
            smooth_bore(row, Edge::Square, &stream())
        }
        "smooth_bore_beside_lichtarowicz" => smooth_bore(row, Edge::Square, &slow()),
        "rounded_bore_beside_mcgreehan" => {
            smooth_bore(row, Edge::Rounded { radius: one * row.get("radius_over_diameter") }, &slow())
        }
        "entry_loss_rounded" => as_printed(Edge::Rounded { radius: one * row.get("radius_over_diameter") }),
        "entry_loss_chamfered" => as_printed(Edge::Chamfered {
            depth: one * row.get("depth_over_diameter"),
            angle: Angle::from_degrees(row.get("cone_angle_deg")),
        }),
        "handbook_flow_ft3_per_h" => {
            let area = S::c(core::f64::consts::FRAC_PI_4) * row.get::<S>("bore_in").squared();
            let head = PressureDifference::from_inches_of_water(row.get("head_inh2o"));
            handbook_flow(row.get("coefficient"), Area::from_square_inches(area), head, row.get("relative_density"))
        }
        _ => return None,
    })
}

/// Coefficient of a smooth bore of a millimeter at the Reynolds number that it flows at itself.
fn smooth_bore<S: Scalar>(row: &Row, edge: Edge<S>, stream: &Stream<S>) -> S {
    let length = BoreLength::Diameters(row.get("length_over_diameter"));
    let shape = BoreShape { length, edge, roughness: Length::from_meters(S::zero()), approach: None };
    let bore = shape.with_diameter(Length::from_millimeters(S::one())).unwrap();
    let reynolds_number = row.get::<S>("reynolds_number");
    let mut coefficient = S::c(0.8);
    for _ in 0..8 {
        coefficient = discharge(&bore, stream, reynolds_number / coefficient).unwrap().coefficient;
    }
    coefficient
}
