//! The gas of the chamber: stirred zones in series, each meeting its share of every surface.

use heapless::Vec;

use super::exchange::{Exchange, SURFACE_CAP, Surface};
use super::radiation::GRAY_GASES;
use super::stream::Stream;
use crate::scalar::Scalar;

/// Most zones.
pub const ZONE_CAP: usize = 3;
/// Most looks for a zone's temperature, of which a bisection alone would need 34.
const LOOKS: usize = 60;
/// Between these a zone's temperature is sought, K.
const COLDEST: f64 = 100.0;
const HOTTEST: f64 = 4000.0;

/// What drives the gas.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Flow<S> {
    /// Net heat of the fire, W.
    pub heat: S,
    /// Air that enters beside it, kg/s.
    pub air: S,
    /// That air over the burner's own flow; what a fire short of air burns along.
    pub leak: S,
}

/// The gas in balance with its surfaces.
#[derive(Clone, Debug)]
pub(super) struct Balanced<S> {
    /// Temperature of each zone, K.
    pub zones: Vec<S, ZONE_CAP>,
    /// Net heat each surface receives, W.
    pub heats: Vec<S, SURFACE_CAP>,
    /// Slope of that by each surface's temperature, W/K, and by the fire, last.
    pub slopes: Vec<[S; SURFACE_CAP + 1], SURFACE_CAP>,
    /// Heat the gas carries out of the chamber, W.
    pub flue: S,
}

/// Balances the gas with surfaces whose films are given, W/(m2 K), from guesses of the zones' temperatures.
pub(super) fn balance<S: Scalar>(
    stream: &Stream<S>,
    exchange: &Exchange<S>,
    surfaces: &[Surface<S>],
    films: &[S],
    flow: &Flow<S>,
    guesses: &[S],
) -> Balanced<S> {
    let zero = S::zero();
    let count = surfaces.len();
    let received = exchange.received(surfaces);
    let burns_leak = stream.is_rich() && flow.heat > zero;
    // Air that burns what a rich fire left is in its available heat already.
    let air = if burns_leak { zero } else { flow.air };
    let zones = guesses.len();
    let share = S::one() / S::c(zones as f64);
    let film = |i: usize| films[i] * surfaces[i].area;
    let mut sums = Sums { of_gas: [zero; GRAY_GASES], without: zero, film: zero, film_heat: zero };
    for (i, surface) in surfaces.iter().enumerate() {
        for (sum, of) in sums.of_gas.iter_mut().zip(&received.of_gas[i]) {
            *sum += *of;
        }
        sums.without += received.without[i];
        sums.film += film(i);
        sums.film_heat += film(i) * surface.kelvin;
    }
    let mut made = Balanced { zones: Vec::new(), heats: Vec::new(), slopes: Vec::new(), flue: zero };
    for (i, surface) in surfaces.iter().enumerate() {
        let mut row = [zero; SURFACE_CAP + 1];
        for (slope, of) in row.iter_mut().zip(&received.slopes[i]) {
            *slope = *of;
        }
        row[i] -= film(i);
        // One entry a surface, as many as the cap.
        let _ = made.heats.push(received.without[i] - film(i) * surface.kelvin);
        let _ = made.slopes.push(row);
    }
    // What a zone hands on: its available heat and the air's enthalpy, with their slopes by each surface and the fire.
    let mut before = (zero, zero);
    let mut before_moves = [zero; SURFACE_CAP + 1];
    let mut before_slopes = (zero, zero);
    for guess in guesses {
        let zone = Zone { stream, exchange, flow, air, share, sums: &sums, before };
        let (kelvin, slope) = zone.temperature(*guess);
        let given = exchange.given_off(kelvin);
        let (left, left_slope) = stream.available(kelvin, flow.leak);
        let (enthalpy, enthalpy_slope) = stream.air_enthalpy(kelvin);
        // How the zone moves with each surface and with the fire.
        let mut moves = [zero; SURFACE_CAP + 1];
        let carried = -flow.heat * before_slopes.0 + air * before_slopes.1;
        for (j, mover) in moves.iter_mut().enumerate().take(count) {
            let radiated = (0..count).fold(zero, |sum, i| sum + received.slopes[i][j]);
            let push = -share * (radiated - film(j)) + carried * before_moves[j];
            *mover = -push / slope;
        }
        moves[SURFACE_CAP] = -(left - before.0 + carried * before_moves[SURFACE_CAP]) / slope;
        for i in 0..count {
            let (mut heat, mut rise) = (film(i) * kelvin, film(i));
            for (takes, given) in received.of_gas[i].iter().zip(&given) {
                heat += *takes * given.0;
                rise += *takes * given.1;
            }
            made.heats[i] += share * heat;
            for (slope, mover) in made.slopes[i].iter_mut().zip(&moves) {
                *slope += share * rise * *mover;
            }
        }
        let _ = made.zones.push(kelvin);
        before = (left, enthalpy);
        before_moves = moves;
        before_slopes = (left_slope, enthalpy_slope);
    }
    made.flue = flow.heat * (S::one() - before.0) + air * before.1;
    made
}

/// Sums over the surfaces.
struct Sums<S> {
    of_gas: [S; GRAY_GASES],
    without: S,
    film: S,
    film_heat: S,
}

/// One zone.
struct Zone<'a, S: Scalar> {
    stream: &'a Stream<S>,
    exchange: &'a Exchange<S>,
    flow: &'a Flow<S>,
    air: S,
    share: S,
    sums: &'a Sums<S>,
    before: (S, S),
}

impl<S: Scalar> Zone<'_, S> {
    /// Heat that is left over at a temperature, W, falling with it, and its slope.
    fn surplus(&self, kelvin: S) -> (S, S) {
        let (left, left_slope) = self.stream.available(kelvin, self.flow.leak);
        let mut value = self.flow.heat * (left - self.before.0);
        let mut slope = self.flow.heat * left_slope;
        if self.air > S::zero() {
            let (enthalpy, enthalpy_slope) = self.stream.air_enthalpy(kelvin);
            value -= self.air * (enthalpy - self.before.1);
            slope -= self.air * enthalpy_slope;
        }
        let mut to_surfaces = self.sums.without + self.sums.film * kelvin - self.sums.film_heat;
        let mut rise = self.sums.film;
        for (takes, given) in self.sums.of_gas.iter().zip(&self.exchange.given_off(kelvin)) {
            to_surfaces += *takes * given.0;
            rise += *takes * given.1;
        }
        (value - self.share * to_surfaces, slope - self.share * rise)
    }

    /// The temperature at which nothing is left over, and the slope there.
    fn temperature(&self, guess: S) -> (S, S) {
        let (mut low, mut high) = (S::c(COLDEST), S::c(HOTTEST));
        let mut at = guess.clamped(low, high);
        let mut slope = -S::one();
        for _ in 0..LOOKS {
            let (value, fall) = self.surplus(at);
            slope = fall;
            if value > S::zero() {
                low = at
            } else {
                high = at
            }
            let next = at - value / fall;
            if (next - at).abs() < S::c(1e-7) * at {
                at = next;
                break;
            }
            at = if next > low && next < high { next } else { S::c(0.5) * (low + high) };
        }
        (at, slope)
    }
}
