//! A hole in the wall: a black body seen through a passage.

use super::surface::black;
use crate::error::Result;
use crate::limits::{Input, check};
use crate::quantity::{Area, Length, Power, Temperature};
use crate::scalar::Scalar;

/// An opening with the depth of the wall around it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Opening<S = f64> {
    area: Area<S>,
    depth: Length<S>,
}

impl<S: Scalar> Opening<S> {
    /// An opening of any shape, taken as round, whose sides give back what falls on them.
    ///
    /// # Errors
    ///
    /// Area or depth out of range.
    pub fn new(area: Area<S>, depth: Length<S>) -> Result<Self> {
        check(Input::WallArea, area.square_meters())?;
        if depth.meters() > S::zero() {
            check(Input::LayerThickness, depth.meters())?;
        }
        Ok(Self { area, depth })
    }

    /// Its area.
    #[must_use]
    pub fn area(&self) -> Area<S> {
        self.area
    }

    /// Heat it lets out: A F sigma (T^4 - T_room^4), F the share a passage of this depth passes.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::furnace::Opening;
    /// use jetwright::quantity::{Area, Length, Temperature};
    /// let (chamber, room) = (Temperature::from_celsius(1300.0_f64), Temperature::from_celsius(20.0));
    /// let hole = Opening::new(Area::from_square_centimeters(100.0), Length::from_meters(0.0)).unwrap();
    /// assert!((hole.heat(chamber, room).watts() - 3468.0).abs() < 2.0); // 0.01 m2 * 346.8 kW/m2
    /// ```
    #[must_use]
    pub fn heat(&self, chamber: Temperature<S>, room: Temperature<S>) -> Power<S> {
        Power::from_watts(self.area.square_meters() * self.passage() * black(chamber.kelvin(), room.kelvin()))
    }

    /// Share of what enters it that leaves the furnace, by [`passed_share`].
    #[must_use]
    pub fn passage(&self) -> S {
        let radius = (self.area.square_meters() * S::c(core::f64::consts::FRAC_1_PI)).sqrt();
        passed_share(self.depth.meters() / radius)
    }
}

/// Share of what enters a round passage that leaves at its other end, its sides giving back all they take, by depth
/// over radius.
///
/// # Source
///
/// Berman, J. Appl. Phys. 36 (1965) 3356, for the equal problem of free molecules; it agrees with the table of
/// Clausing 1932.
///
/// # Examples
///
/// ```
/// use jetwright::furnace::passed_share;
/// assert!((passed_share(1.0_f64) - 0.6720).abs() < 1e-4); // Clausing
/// assert!((passed_share(2.0_f64) - 0.5142).abs() < 1e-4);
/// ```
#[must_use]
pub fn passed_share<S: Scalar>(depth_over_radius: S) -> S {
    let (one, two) = (S::one(), S::c(2.0));
    let l = depth_over_radius.clamped(S::zero(), S::c(20.0));
    if l < S::c(0.2) {
        return one - l * (S::c(0.5) - l * (S::c(0.25) - l * (S::c(5.0 / 48.0) - l * S::c(1.0 / 32.0))));
    }
    let s = (l.squared() + S::c(4.0)).sqrt();
    let straight = one - l / (s + l);
    let bent = S::c(8.0) * (s - two) - S::c(4.0) * l.squared() / (s + l);
    let whole = S::c(72.0) * l * s - S::c(288.0) * ((l + s) / two).ln();
    straight - bent.squared() / whole
}

#[cfg(test)]
mod tests {
    use super::passed_share;

    #[test]
    fn clausings_table_is_met_and_depth_only_shades() {
        // Clausing, Ann. Phys. 12 (1932) 961, depth over radius and share, from memory.
        for (depth, share) in [
            (0.1_f64, 0.9524),
            (0.2, 0.9092),
            (0.5, 0.8013),
            (1.0, 0.6720),
            (2.0, 0.5142),
            (4.0, 0.3566),
            (10.0, 0.1910),
        ] {
            assert!((passed_share(depth) - share).abs() < 4e-4, "{depth}: {}", passed_share(depth));
        }
        let mut before = 1.0 + 1e-12;
        for step in 0..2000 {
            let share = passed_share(0.01 * f64::from(step));
            assert!(share < before && (share - before).abs() < 6e-3);
            assert!((f64::from(passed_share(0.01_f32 * step as f32)) - share).abs() < 3e-5);
            before = share;
        }
    }
}
