//! Radiation between the gas, the walls with their openings, and what stands among them, in closed form.

use heapless::Vec;

use super::radiation::{GRAY_GASES, Radiation};
use crate::furnace::surface::STEFAN_BOLTZMANN;
use crate::scalar::Scalar;

/// Most surfaces: walls, openings and contents.
pub const SURFACE_CAP: usize = 13;

/// A surface that meets the chamber's gas.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surface<S = f64> {
    /// Area, m2.
    pub area: S,
    /// Emissivity; of an opening the share that passes.
    pub emissivity: S,
    /// Temperature, K; of an opening that of the room.
    pub kelvin: S,
    /// What it is.
    pub part: Part,
}

/// What a surface is part of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// A wall: sees the others and the contents.
    Wall,
    /// An opening, which takes no convection.
    Opening,
    /// Something convex that sees only the walls.
    Content,
}

/// One gray gas (or the clear one) between the surfaces: what the walls and the contents receive is linear in what the
/// gas gives off and in what both give off themselves.
#[derive(Clone, Copy, Debug)]
struct Band<S> {
    /// Share that passes the gas.
    transmitted: S,
    /// Index of the gray gas; none of the clear one.
    gray: Option<usize>,
    /// Received by the walls of the gas's own, the walls' and the contents' radiation.
    walls: [S; 3],
    /// The same received by the contents.
    contents: [S; 3],
}

/// The exchange in one state of absorption.
#[derive(Clone, Debug)]
pub struct Exchange<S = f64> {
    radiation: Radiation<S>,
    bands: Vec<Band<S>, { GRAY_GASES + 1 }>,
    wall_area: S,
    content_area: S,
}

/// What each surface receives with the gas giving off nothing, W, and the slopes of that; how much more by what the gas
/// gives off.
#[derive(Clone, Debug)]
pub struct Received<S> {
    /// Net heat without the gas's own, W.
    pub without: Vec<S, SURFACE_CAP>,
    /// Slope of that by each surface's temperature, W/K: of surface `i` by surface `j` at `[i][j]`.
    pub slopes: Vec<Vec<S, SURFACE_CAP>, SURFACE_CAP>,
    /// Heat by what each gray gas gives off, m2.
    pub of_gas: Vec<[S; GRAY_GASES], SURFACE_CAP>,
}

impl<S: Scalar> Exchange<S> {
    /// The exchange of surfaces across a path, m.
    #[must_use]
    pub fn new(radiation: Radiation<S>, path: S, surfaces: &[Surface<S>]) -> Self {
        let (zero, one) = (S::zero(), S::one());
        let (mut wall_area, mut content_area, mut wall_back, mut content_back) = (zero, zero, zero, zero);
        for surface in surfaces {
            let back = surface.area * (one - surface.emissivity);
            if surface.part == Part::Content {
                content_area += surface.area;
                content_back += back;
            } else {
                wall_area += surface.area;
                wall_back += back;
            }
        }
        let wall_back = wall_back / wall_area;
        let content_back = if content_area > zero { content_back / content_area } else { zero };
        let x = content_area / wall_area;
        let mut bands = Vec::new();
        let gray = radiation.gases().iter().enumerate();
        let all = gray.map(|(index, gas)| (Some(index), (-gas.absorption * path).exp()));
        for (gray, t) in all.chain(radiation.has_clear().then_some((None, one))) {
            let whole = one - t * (one - x) * wall_back - t.squared() * x * wall_back * content_back;
            let walls = [
                (one + t * x * content_back) / whole,
                (t.squared() * x * content_back + t * (one - x)) / whole,
                t * x / whole,
            ];
            let contents = [one + t * wall_back * walls[0], t * (one + wall_back * walls[1]), t * wall_back * walls[2]];
            // One band a gray gas, and the clear one.
            let _ = bands.push(Band { transmitted: t, gray, walls, contents });
        }
        Self { radiation, bands, wall_area, content_area }
    }

    /// Weight of a band times black radiation at a temperature, W/m2, and its slope.
    fn black(&self, band: &Band<S>, kelvin: S) -> (S, S) {
        let (weight, slope) = match band.gray.and_then(|gray| self.radiation.gases().get(gray)) {
            Some(gray) => gray.weight(kelvin),
            None => self.radiation.gases().iter().fold((S::one(), S::zero()), |(rest, slope), gray| {
                let (weight, more) = gray.weight(kelvin);
                (rest - weight, slope - more)
            }),
        };
        let cubed = S::c(STEFAN_BOLTZMANN) * kelvin * kelvin.squared();
        (weight * cubed * kelvin, slope * cubed * kelvin + S::c(4.0) * weight * cubed)
    }

    /// What the gas gives off at a temperature in each gray gas, W/m2, and its slope.
    pub(super) fn given_off(&self, kelvin: S) -> [(S, S); GRAY_GASES] {
        let mut given = [(S::zero(), S::zero()); GRAY_GASES];
        for band in &self.bands {
            let Some(place) = band.gray.and_then(|gray| given.get_mut(gray)) else { continue };
            let (value, slope) = self.black(band, kelvin);
            let held = S::one() - band.transmitted;
            *place = (held * value, held * slope);
        }
        given
    }

    /// What the surfaces receive.
    pub(super) fn received(&self, surfaces: &[Surface<S>]) -> Received<S> {
        let zero = S::zero();
        let mut row: Vec<S, SURFACE_CAP> = Vec::new();
        for _ in surfaces {
            // No more surfaces than the cap are ever built.
            let _ = row.push(zero);
        }
        let mut received = Received { without: row.clone(), slopes: Vec::new(), of_gas: Vec::new() };
        for _ in surfaces {
            let _ = received.slopes.push(row.clone());
            let _ = received.of_gas.push([zero; GRAY_GASES]);
        }
        for band in &self.bands {
            let mut own = [(zero, zero); SURFACE_CAP];
            let (mut from_walls, mut from_contents) = (zero, zero);
            for (surface, own) in surfaces.iter().zip(&mut own) {
                *own = self.black(band, surface.kelvin);
                let given = surface.area * surface.emissivity * own.0;
                if surface.part == Part::Content { from_contents += given } else { from_walls += given }
            }
            let from_walls = from_walls / self.wall_area;
            let from_contents = if self.content_area > zero { from_contents / self.content_area } else { zero };
            for (i, surface) in surfaces.iter().enumerate() {
                let takes = surface.area * surface.emissivity;
                let of = if surface.part == Part::Content { band.contents } else { band.walls };
                received.without[i] += takes * (of[1] * from_walls + of[2] * from_contents - own[i].0);
                if let Some(gray) = band.gray {
                    received.of_gas[i][gray] = takes * of[0];
                }
                for (j, other) in surfaces.iter().enumerate() {
                    let gives = other.area * other.emissivity * own[j].1;
                    received.slopes[i][j] += takes
                        * if other.part == Part::Content {
                            of[2] * gives / self.content_area
                        } else {
                            of[1] * gives / self.wall_area
                        };
                }
                received.slopes[i][i] -= takes * own[i].1;
            }
        }
        received
    }

    /// Net radiation each surface receives from a gas of one temperature and from the others, W.
    #[must_use]
    pub fn net(&self, surfaces: &[Surface<S>], gas: S) -> Vec<S, SURFACE_CAP> {
        let received = self.received(surfaces);
        let given = self.given_off(gas);
        let mut net = received.without.clone();
        for (net, of_gas) in net.iter_mut().zip(&received.of_gas) {
            for (takes, given) in of_gas.iter().zip(&given) {
                *net += *takes * given.0;
            }
        }
        net
    }
}

#[cfg(test)]
mod tests {
    use super::{Exchange, Part, Surface};
    use crate::furnace::coupled::Radiation;

    fn surface(area: f64, emissivity: f64, kelvin: f64, part: Part) -> Surface {
        Surface { area, emissivity, kelvin, part }
    }

    // Radiation inside a closed room: what the surfaces and the gas take adds to nothing, and at one temperature none
    // takes anything (second law). A convex body in a larger one, clear gas: the formula of every textbook,
    // A1 sigma (T2^4 - T1^4) / (1/e1 + A1/A2 (1/e2 - 1)).
    #[test]
    fn a_clear_gas_leaves_the_textbook_pair() {
        let pair = [surface(0.5, 0.8, 1500.0, Part::Wall), surface(0.1, 0.85, 700.0, Part::Content)];
        let net = Exchange::new(Radiation::clear(), 0.2, &pair).net(&pair, 1000.0);
        let whole = 0.1 * 5.670_374_419e-8 * (1500.0_f64.powi(4) - 700.0_f64.powi(4)) / (1.0 / 0.85 + 0.2 * 0.25);
        assert!((net[1] / whole - 1.0).abs() < 1e-12 && (net[0] / whole + 1.0).abs() < 1e-12);
        assert!((whole - 22_295.5).abs() < 1.0);
    }

    #[test]
    fn at_one_temperature_nothing_flows() {
        let gas = Radiation::of_products(0.11, 0.155, 0.8244);
        let all = [
            surface(0.4, 0.8, 1500.0, Part::Wall),
            surface(0.01, 0.6, 1500.0, Part::Opening),
            surface(0.1, 0.85, 1500.0, Part::Content),
        ];
        for net in Exchange::new(gas, 0.16, &all).net(&all, 1500.0) {
            assert!(net.abs() < 1e-8, "{net}");
        }
    }

    // Four surfaces and a gray gas, solved as a full enclosure by hand in exact arithmetic of the same equations.
    #[test]
    fn a_room_with_an_opening_and_a_cold_piece() {
        let all = [
            surface(0.4, 0.8, 1500.0, Part::Wall),
            surface(0.1, 0.6, 1300.0, Part::Wall),
            surface(0.006, 0.6, 293.15, Part::Opening),
            surface(0.1, 0.85, 700.0, Part::Content),
        ];
        let net = Exchange::new(Radiation::gray(0.5), 0.16, &all).net(&all, 1700.0);
        for (ours, theirs) in net.iter().zip([-15_944.0, 4_517.0, 853.0, 22_192.0]) {
            assert!((ours - theirs).abs() < 1.0_f64, "{net:?}");
        }
    }

    #[test]
    fn the_slopes_are_those_of_the_heats() {
        let gas = Radiation::of_products(0.1, 0.16, 0.9);
        let mut all = [
            surface(0.4, 0.8, 1480.0, Part::Wall),
            surface(0.1, 0.6, 1300.0, Part::Wall),
            surface(0.1, 0.85, 700.0, Part::Content),
        ];
        let exchange = Exchange::new(gas, 0.16, &all);
        let slopes = exchange.received(&all).slopes;
        for j in 0..3 {
            let before = exchange.received(&all).without;
            all[j].kelvin += 0.01;
            let after = exchange.received(&all).without;
            all[j].kelvin -= 0.01;
            for i in 0..3 {
                let slope = (after[i] - before[i]) / 0.01;
                assert!((slope - slopes[i][j]).abs() < 1e-3 * slope.abs().max(0.1), "{i} {j}");
            }
        }
    }
}
