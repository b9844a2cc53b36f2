//! Two columns by themselves, made of the table when this compiles: a chip that reads them would else link every row whole.

use super::atoms::{Atoms, NONE};
use super::columns::Thermochemistry;
use super::table::TABLE;

pub(super) static ATOMS: [Atoms; TABLE.len()] = {
    let mut column = [NONE; TABLE.len()];
    let mut index = 0;
    while index < column.len() {
        column[index] = TABLE[index].atoms;
        index += 1;
    }
    column
};

pub(super) static THERMOCHEMISTRY: [Option<Thermochemistry>; TABLE.len()] = {
    let mut column = [None; TABLE.len()];
    let mut index = 0;
    while index < column.len() {
        column[index] = TABLE[index].thermochemistry;
        index += 1;
    }
    column
};
