//! A few linear equations at once.

use super::model::CHAIN_CAP;
use crate::error::{Error, Result};
use crate::limits::Input;
use crate::scalar::Scalar;

/// Unknowns of a step: the hot faces, and the fire of a temperature that is kept.
pub(super) const UNKNOWN_CAP: usize = CHAIN_CAP + 1;

/// Solves rows whose last column is the right side, which becomes the answer: elimination with pivots.
pub(super) fn solve_rows<S: Scalar>(rows: &mut [[S; UNKNOWN_CAP + 1]; UNKNOWN_CAP], count: usize) -> Result<()> {
    for column in 0..count {
        let mut pivot = column;
        for row in column + 1..count {
            if rows[row][column].abs() > rows[pivot][column].abs() {
                pivot = row;
            }
        }
        rows.swap(column, pivot);
        let lead = rows[column];
        if lead[column].abs() <= S::zero() || !lead[column].is_finite() {
            return Err(Error::NotConverged { input: Input::ChamberTemperature });
        }
        for (index, row) in rows.iter_mut().enumerate().take(count) {
            if index == column {
                continue;
            }
            let factor = row[column] / lead[column];
            if factor == S::zero() {
                continue;
            }
            for (entry, of_lead) in row.iter_mut().zip(&lead) {
                *entry -= factor * *of_lead;
            }
        }
    }
    for (index, row) in rows.iter_mut().enumerate().take(count) {
        row[UNKNOWN_CAP] = row[UNKNOWN_CAP] / row[index];
    }
    Ok(())
}
