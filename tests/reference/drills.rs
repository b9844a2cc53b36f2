//! Drill sizes.

use super::row::Row;
use jetwright::Scalar;
use jetwright::orifice::Drill;

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let name = row.text("name");
    let full = match name {
        _ if name.contains('/') => format!("{name} in"),
        _ if name.starts_with(|first: char| first.is_ascii_digit()) => format!("number {name}"),
        _ => format!("letter {name}"),
    };
    match row.quantity.as_str() {
        "drill_diameter_in" => Some(S::c(Drill::find(&full)?.diameter().inches())),
        _ => None,
    }
}
