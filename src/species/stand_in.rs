//! A made-up row that stands for a species' own, for tests of what a species is asked for.

extern crate std;

use core::cell::Cell;
use std::boxed::Box;
use std::thread_local;

use super::columns::SpeciesRow;
use super::property::Property;
use super::table::{Species, TABLE};

thread_local! {
    static STANDING: Cell<Option<(Species, &'static SpeciesRow)>> = const { Cell::new(None) };
}

pub(super) fn row_of(species: Species) -> Option<&'static SpeciesRow> {
    STANDING.get().filter(|(stands_for, _)| *stands_for == species).map(|(_, row)| row)
}

/// While `work` runs, this thread finds `row` where it looks for the species'.
pub(crate) fn stand_in<T>(species: Species, row: SpeciesRow, work: impl FnOnce() -> T) -> T {
    // A few hundred bytes a test are left behind: rows are static.
    STANDING.set(Some((species, Box::leak(Box::new(row)))));
    let _own_row_again = OwnRowAgain;
    work()
}

/// A test that fails leaves the row to the next one as it was.
struct OwnRowAgain;

impl Drop for OwnRowAgain {
    fn drop(&mut self) {
        STANDING.set(None);
    }
}

/// A made-up fuel: a species' numbers under a name of its own.
pub(crate) fn made_up(like: Species) -> SpeciesRow {
    SpeciesRow { symbol: "XX", name: "made-up fuel", ..TABLE[like as usize] }
}

/// The row with one column left out.
pub(crate) fn without(mut row: SpeciesRow, property: Property) -> SpeciesRow {
    match property {
        Property::Thermochemistry => row.thermochemistry = None,
        Property::Liquid => row.liquid = None,
        Property::BurningLimits => row.limits = None,
        Property::Autoignition => row.autoignition = None,
        Property::Flame => row.flame = None,
    }
    row
}
