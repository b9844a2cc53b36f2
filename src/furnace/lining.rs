//! The chamber as a list of panels: areas, volumes, masses, anchors, what is lifted and how it is dried.

use heapless::Vec;

use crate::error::{Error, Result};
use crate::limits::{Input, check};
use crate::quantity::{Area, Density, Duration, Force, Length, Mass, Temperature};
use crate::scalar::Scalar;

/// Most panels of a lining.
pub const PANEL_CAP: usize = 16;
/// How far the ends of a chamber may differ from what closes them, as a share.
const CLOSES_WITHIN: f64 = 0.02;
/// Heat that a kilogram of water takes from 20 C to steam at 100 C, J: 80 K of 4187 and 2257 kJ (IAPWS, rounded).
const STEAM: f64 = 2.592e6;

/// One part of the chamber's lining.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Panel<S = f64> {
    /// A whole cylinder, open at both ends.
    Cylinder {
        /// Inner diameter.
        diameter: Length<S>,
        /// Length along the axis.
        length: Length<S>,
        /// Thickness of the lining.
        thickness: Length<S>,
    },
    /// Half a cylinder, as an arch: open at both ends and below.
    HalfRound {
        /// Inner diameter.
        diameter: Length<S>,
        /// Length along the axis.
        length: Length<S>,
        /// Thickness of the lining.
        thickness: Length<S>,
    },
    /// A box closed all round but for its front.
    Box {
        /// Inner width of the open front.
        width: Length<S>,
        /// Inner height of the open front.
        height: Length<S>,
        /// Inner depth behind it.
        depth: Length<S>,
        /// Thickness of the lining.
        thickness: Length<S>,
    },
    /// A flat panel: floor, lid, end or door. Its faces inside the chamber count.
    Flat {
        /// Area inside.
        area: Area<S>,
        /// Thickness of the lining.
        thickness: Length<S>,
    },
    /// Loose bricks stacked in a doorway, a course by a course.
    Courses {
        /// Width of the doorway.
        width: Length<S>,
        /// Height of one course.
        course: Length<S>,
        /// How many courses stand.
        count: S,
        /// Depth of the bricks.
        thickness: Length<S>,
    },
    /// An opening that nothing closes.
    Opening {
        /// Its area.
        area: Area<S>,
    },
}

/// What the panels add up to.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct TakeOff<S = f64> {
    /// Lined area inside, openings not counted.
    pub hot_area: Area<S>,
    /// Area of openings.
    pub opening_area: Area<S>,
    /// Volume of the chamber, m3.
    pub chamber_volume: S,
    /// Volume of the lining, m3.
    pub lining_volume: S,
    /// Area that ends and fronts leave open.
    pub to_close: Area<S>,
    /// Area of what closes them.
    pub closing: Area<S>,
}

/// A lining that closes.
#[derive(Clone, Debug, PartialEq)]
pub struct Lining<S = f64> {
    panels: Vec<Panel<S>, PANEL_CAP>,
    take_off: TakeOff<S>,
}

impl<S: Scalar> Lining<S> {
    /// Adds up panels.
    ///
    /// # Errors
    ///
    /// A size out of range; more than 16 panels; [`Error::NoSolution`] with the area that is missing (or, below zero,
    /// too much), m2, when flat panels, courses and openings do not close what the others leave open within 2 %.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::furnace::{Lining, Panel};
    /// use jetwright::quantity::{Area, Length};
    /// let mm = Length::from_millimeters;
    /// let end = |share: f64| Area::from_square_meters(share * 0.070_686);
    /// let shell = Panel::Cylinder { diameter: mm(300.0), length: mm(400.0), thickness: mm(75.0) };
    /// let floor = Panel::Flat { area: end(1.0), thickness: mm(75.0) };
    /// let lid = Panel::Flat { area: end(0.9), thickness: mm(75.0) };
    /// let vent = Panel::Opening { area: end(0.1) };
    /// let lining = Lining::new(&[shell, floor, lid, vent]).unwrap();
    /// assert!((lining.take_off().hot_area.square_meters() - 0.5113).abs() < 1e-3); // 0.377 + 1.9 * 0.0707
    /// assert!((lining.take_off().chamber_volume - 0.02827).abs() < 1e-4);
    /// assert!(Lining::new(&[shell, floor]).is_err());
    /// ```
    pub fn new(panels: &[Panel<S>]) -> Result<Self> {
        let kept = Vec::from_slice(panels).map_err(|_| Error::Points { input: Input::PanelSize })?;
        let mut sum = TakeOff::default();
        for panel in panels {
            add(panel, &mut sum)?;
        }
        let (open, closing) = (sum.to_close.square_meters(), sum.closing.square_meters());
        let missing = open - closing;
        if missing.abs() > S::c(CLOSES_WITHIN) * open || open <= S::zero() {
            return Err(Error::NoSolution { input: Input::PanelArea, nearest: missing.to_f32() });
        }
        Ok(Self { panels: kept, take_off: sum })
    }

    /// The panels.
    #[must_use]
    pub fn panels(&self) -> &[Panel<S>] {
        &self.panels
    }
    /// What they add up to.
    #[must_use]
    pub fn take_off(&self) -> &TakeOff<S> {
        &self.take_off
    }
    /// Mass of the lining at a density.
    #[must_use]
    pub fn mass(&self, density: Density<S>) -> Mass<S> {
        Mass::from_kilograms(self.take_off.lining_volume * density.kilograms_per_cubic_meter())
    }
}

fn add<S: Scalar>(panel: &Panel<S>, sum: &mut TakeOff<S>) -> Result<()> {
    let size = |length: Length<S>| check(Input::PanelSize, length.meters());
    let thick = |length: Length<S>| check(Input::LayerThickness, length.meters());
    let flat = |area: Area<S>| check(Input::WallArea, area.square_meters());
    let m2 = Area::from_square_meters;
    let (pi, half, two) = (S::c(core::f64::consts::PI), S::c(0.5), S::c(2.0));
    match *panel {
        Panel::Cylinder { diameter, length, thickness } | Panel::HalfRound { diameter, length, thickness } => {
            let (d, l, t) = (size(diameter)?, size(length)?, thick(thickness)?);
            let is_half = matches!(panel, Panel::HalfRound { .. });
            let share = if is_half { half } else { S::one() };
            let bore = share * S::c(0.25) * pi * d.squared();
            sum.hot_area = sum.hot_area + m2(share * pi * d * l);
            sum.chamber_volume += bore * l;
            sum.lining_volume += share * pi * (d + t) * t * l;
            sum.to_close = sum.to_close + m2(two * bore + if is_half { d * l } else { S::zero() });
        }
        Panel::Box { width, height, depth, thickness } => {
            let (w, h, d, t) = (size(width)?, size(height)?, size(depth)?, thick(thickness)?);
            sum.hot_area = sum.hot_area + m2(w * h + two * d * (w + h));
            sum.chamber_volume += w * h * d;
            sum.lining_volume += (w + two * t) * (h + two * t) * (d + t) - w * h * d;
            sum.to_close = sum.to_close + m2(w * h);
        }
        Panel::Flat { area, thickness } => {
            let (a, t) = (flat(area)?, thick(thickness)?);
            sum.hot_area = sum.hot_area + m2(a);
            sum.lining_volume += a * t;
            sum.closing = sum.closing + m2(a);
        }
        Panel::Courses { width, course, count, thickness } => {
            let (w, c, t) = (size(width)?, size(course)?, thick(thickness)?);
            let a = w * c * count.clamped(S::zero(), S::c(100.0));
            sum.hot_area = sum.hot_area + m2(a);
            sum.lining_volume += a * t;
            sum.closing = sum.closing + m2(a);
        }
        Panel::Opening { area } => {
            let a = flat(area)?;
            sum.opening_area = sum.opening_area + m2(a);
            sum.closing = sum.closing + m2(a);
        }
    }
    Ok(())
}

/// A castable by its maker's sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Castable<S = f64> {
    /// Dry material for a cubic meter of lining.
    pub dry_density: Density<S>,
    /// Mass of a bag.
    pub bag: Mass<S>,
    /// Water over dry material.
    pub water: S,
    /// What is bought above what is needed, as a share.
    pub margin: S,
}

/// What to buy and to mix.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mix<S = f64> {
    /// Dry material without the margin.
    pub dry: Mass<S>,
    /// Bags, a part of one counted as one.
    pub bags: u32,
    /// Water for the dry material.
    pub water: Mass<S>,
}

impl<S: Scalar> Castable<S> {
    /// Bags and water for a volume in m3: volume times dry density, times one and the margin, over the bag.
    ///
    /// # Errors
    ///
    /// A density, a mass or a share out of range.
    pub fn mix(&self, volume: S) -> Result<Mix<S>> {
        check(Input::MaterialDensity, self.dry_density.kilograms_per_cubic_meter())?;
        check(Input::Fraction, self.water)?;
        check(Input::Fraction, self.margin)?;
        let bag = check(Input::WorkMass, self.bag.kilograms())?;
        let dry = volume * self.dry_density.kilograms_per_cubic_meter();
        let bought = (dry * (S::one() + self.margin) / bag.larger(S::c(1e-3))).to_f64();
        let whole = bought as u32;
        let bags = whole + u32::from(bought > f64::from(whole) + 1e-9);
        Ok(Mix { dry: Mass::from_kilograms(dry), bags, water: Mass::from_kilograms(dry * self.water) })
    }
}

/// Anchors that hold an area on a square grid: area over spacing squared, a part of one counted as one.
///
/// # Errors
///
/// An area or a spacing out of range.
pub fn anchors<S: Scalar>(area: Area<S>, spacing: Length<S>) -> Result<u32> {
    let pitch = check(Input::PanelSize, spacing.meters())?;
    let count = (check(Input::WallArea, area.square_meters())? / pitch.squared()).to_f64();
    Ok(count as u32 + u32::from(count > f64::from(count as u32)))
}

/// A sling of two equal legs from one hook.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sling<S = f64> {
    /// Length of a leg.
    pub leg: Length<S>,
    /// Distance of the two points it is fixed to.
    pub spread: Length<S>,
}

impl<S: Scalar> Sling<S> {
    /// Pull in one leg: half the weight, times leg over the height of the hook.
    ///
    /// Ask a rigger before you lift; this says only how fast a flat sling pulls harder.
    ///
    /// # Errors
    ///
    /// A spread not below twice the leg; a size or a mass out of range.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::furnace::Sling;
    /// use jetwright::quantity::{Length, Mass};
    /// let sling = Sling { leg: Length::from_meters(1.0_f64), spread: Length::from_meters(1.0) };
    /// // 100 kg, legs 60 degrees above level: 490 N / sin 60.
    /// assert!((sling.pull(Mass::from_kilograms(100.0)).unwrap().newtons() - 566.2).abs() < 0.1);
    /// ```
    pub fn pull(&self, mass: Mass<S>) -> Result<Force<S>> {
        let leg = check(Input::PanelSize, self.leg.meters())?;
        let half = S::c(0.5) * check(Input::PanelSize, self.spread.meters())?;
        let weight = check(Input::WorkMass, mass.kilograms())? * S::c(super::surface::GRAVITY);
        if half >= leg {
            return Err(Error::InvertedPair { lesser: Input::PanelSize, greater: Input::PanelSize });
        }
        let height = (leg.squared() - half.squared()).sqrt();
        Ok(Force::from_newtons(S::c(0.5) * weight * leg / height))
    }
}

/// One step of drying out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DryingStep<S = f64> {
    /// Up to this temperature.
    pub to: Temperature<S>,
    /// While rising, at this rate, K an hour; zero where it is held.
    pub rate_per_hour: S,
    /// How long the step takes.
    pub time: Duration<S>,
}

/// Moist curing of a castable before it is heated, s: a day.
const CURING: f64 = 24.0 * 3600.0;
/// Stages of drying: Celsius to reach, K an hour, and hours held for every 25 mm.
const STAGES: [(f64, f64, f64); 3] = [(110.0, 25.0, 1.5), (300.0, 28.0, 1.0), (550.0, 28.0, 1.0)];
/// K an hour from the last stage to work.
const TO_WORK: f64 = 50.0;

/// The steps that dry out a castable of a thickness: a day of moist curing, slowly to 110 C and held an hour and a half for
/// every 25 mm, to 300 and 550 C and held an hour, then up to work. The first step is the curing, at the room's
/// temperature.
///
/// # Source
///
/// No faster in any stage than the slowest of three makers' sheets and a builders' guide: low-cement castable 28 K/h to
/// 540 C and 56 K/h beyond, insulating castable held 1.5 h for every 25 mm at 149 C, conventional castable 56 K/h; curing
/// common practice, no source. The maker's sheet overrides. Steam bursts a lining that is hurried.
///
/// # Examples
///
/// ```
/// use jetwright::furnace::drying;
/// use jetwright::quantity::{Length, Temperature};
/// let celsius = Temperature::from_celsius;
/// let steps = drying(Length::from_millimeters(50.0_f64), celsius(20.0), celsius(1200.0)).unwrap();
/// assert_eq!((steps[0].time.seconds(), steps[1].rate_per_hour, steps[2].time.seconds()), (86_400.0, 25.0, 10_800.0));
/// assert_eq!(steps.last().unwrap().rate_per_hour, 50.0);
/// ```
///
/// # Errors
///
/// A thickness or a temperature out of range.
pub fn drying<S: Scalar>(
    thickness: Length<S>,
    room: Temperature<S>,
    work: Temperature<S>,
) -> Result<Vec<DryingStep<S>, 8>> {
    let inches = check(Input::LayerThickness, thickness.meters())? / S::c(0.025);
    check(Input::ChamberTemperature, work.kelvin())?;
    let mut steps = Vec::new();
    let mut at = check(Input::AirTemperature, room.kelvin())?;
    let room_point = Temperature::from_kelvin(at);
    let curing = Duration::from_seconds(S::c(CURING));
    let _ = steps.push(DryingStep { to: room_point, rate_per_hour: S::zero(), time: curing });
    for (celsius, rate, hours) in STAGES {
        let to = S::c(celsius + 273.15);
        if to < work.kelvin() {
            let time = Duration::from_seconds((to - at) / S::c(rate) * S::c(3600.0));
            let to_point = Temperature::from_kelvin(to);
            let _ = steps.push(DryingStep { to: to_point, rate_per_hour: S::c(rate), time });
            let _ = steps.push(DryingStep {
                to: to_point,
                rate_per_hour: S::zero(),
                time: Duration::from_seconds(inches.larger(S::one()) * S::c(hours * 3600.0)),
            });
            at = to;
        }
    }
    let rate = S::c(TO_WORK);
    let time = Duration::from_seconds((work.kelvin() - at).larger(S::zero()) / rate * S::c(3600.0));
    let _ = steps.push(DryingStep { to: work, rate_per_hour: rate, time });
    Ok(steps)
}

/// Heat that drives off the water of a lining, J: 2.59 MJ/kg from 20 C to steam.
#[must_use]
pub fn drying_heat<S: Scalar>(water: Mass<S>) -> S {
    water.kilograms() * S::c(STEAM)
}
