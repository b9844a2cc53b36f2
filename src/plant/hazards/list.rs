//! A hazard, and a list of them that is sorted at all times.

use heapless::Vec;

use super::table::{HazardKind, Severity};
use crate::Scalar;
use crate::plant::refusal::Place;

/// Most hazards of one answer: eleven of each of twelve settings and of the charge's own fire, and the burner's.
pub const HAZARD_CAP: usize = 160;

/// Where the heat input of the charge stands.
pub const AT_WORK: Place = Place::section("work");

/// A hazard somewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hazard<S = f64> {
    /// What it is.
    pub kind: HazardKind,
    /// Where: a setting, or a part of the burner.
    pub place: Place,
    /// The number it stands on, in the SI unit of the kind's measure.
    pub number: Option<S>,
    /// Where that number becomes a hazard, in the same unit.
    pub limit: Option<S>,
}

impl<S: Scalar> Hazard<S> {
    /// Of something true or false, without a number.
    #[must_use]
    pub const fn new(kind: HazardKind, place: Place) -> Self {
        Self { kind, place, number: None, limit: None }
    }

    /// With its number and limit; what is not finite is left out.
    #[must_use]
    pub fn with(self, number: impl Into<Option<S>>, limit: impl Into<Option<S>>) -> Self {
        let finite = |value: Option<S>| value.filter(|value| Scalar::is_finite(*value));
        Self { number: finite(number.into()), limit: finite(limit.into()), ..self }
    }

    /// How bad it is.
    #[must_use]
    pub const fn severity(&self) -> Severity {
        self.kind.severity()
    }

    /// The setting it stands at, counted from 0.
    #[must_use]
    pub fn setting(&self) -> Option<usize> {
        (self.place.section == "setting").then(|| self.place.at[0].map(usize::from))?
    }

    /// Whether it stands at the heat input of the charge.
    #[must_use]
    pub fn at_work(&self) -> bool {
        self.place == AT_WORK
    }
}

/// A setting, counted from 0.
#[must_use]
pub const fn at_setting(index: usize) -> Place {
    Place::entry("setting", index, "")
}

/// Hazards, the worst first; those of one severity and rank stand as they were found. When more than
/// [`HAZARD_CAP`] are found the least are left out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Hazards {
    list: Vec<Hazard, HAZARD_CAP>,
}

impl Hazards {
    /// None.
    #[must_use]
    pub const fn new() -> Self {
        Self { list: Vec::new() }
    }

    /// Puts one in its place.
    pub fn push(&mut self, hazard: Hazard) {
        let order = |hazard: &Hazard| (hazard.severity(), hazard.kind.rank());
        let at = self.list.iter().take_while(|before| order(before) <= order(&hazard)).count();
        if at == HAZARD_CAP {
            return;
        }
        if self.list.is_full() {
            self.list.pop();
        }
        // There is room now, and `at` lies within the list.
        let _ = self.list.insert(at, hazard);
    }

    /// All of them.
    pub fn iter(&self) -> core::slice::Iter<'_, Hazard> {
        self.list.iter()
    }

    /// As a slice.
    #[must_use]
    pub fn as_slice(&self) -> &[Hazard] {
        &self.list
    }

    /// Whether one is of this kind.
    #[must_use]
    pub fn has(&self, kind: HazardKind) -> bool {
        self.iter().any(|hazard| hazard.kind == kind)
    }
}

impl Extend<Hazard> for Hazards {
    fn extend<T: IntoIterator<Item = Hazard>>(&mut self, more: T) {
        for hazard in more {
            self.push(hazard);
        }
    }
}

impl FromIterator<Hazard> for Hazards {
    fn from_iter<T: IntoIterator<Item = Hazard>>(found: T) -> Self {
        let mut list = Self::new();
        list.extend(found);
        list
    }
}

impl<'h> IntoIterator for &'h Hazards {
    type Item = &'h Hazard;
    type IntoIter = core::slice::Iter<'h, Hazard>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

#[cfg(test)]
mod tests {
    use super::{HAZARD_CAP, Hazard, Hazards, at_setting};
    use crate::plant::hazards::HazardKind;
    use crate::plant::refusal::Place;

    #[test]
    fn the_worst_stands_first_and_is_never_left_out() {
        let mut found = Hazards::new();
        for index in 0..HAZARD_CAP + 3 {
            found.push(Hazard::new(HazardKind::SlowJet, at_setting(index % 12)));
        }
        found.push(Hazard::new(HazardKind::HeavyGas, Place::section("gas")).with(1.5, 1.0));
        found.push(Hazard::new(HazardKind::CarbonMonoxide, at_setting(3)).with(f64::NAN, 2e-4));
        found.push(Hazard::new(HazardKind::CarbonMonoxide, at_setting(1)));
        let kinds: std::vec::Vec<_> = found.iter().take(4).map(|hazard| (hazard.kind, hazard.setting())).collect();
        assert_eq!(found.as_slice().len(), HAZARD_CAP);
        assert_eq!(found.as_slice()[0].number, None, "what is not a number is left out");
        assert_eq!(
            kinds,
            [
                (HazardKind::CarbonMonoxide, Some(3)),
                (HazardKind::CarbonMonoxide, Some(1)),
                (HazardKind::HeavyGas, None),
                (HazardKind::SlowJet, Some(0)),
            ]
        );
    }
}
