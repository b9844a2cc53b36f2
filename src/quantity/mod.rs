//! Quantities as types: SI inside, units only in the names of constructors and getters.
//!
//! Kinds that shops confuse are different types and never mix silently: gauge and absolute pressure
//! meet only through [`GaugePressure::to_absolute`] and [`AbsolutePressure::to_gauge`], standard and
//! actual volume flow only through a density, gross and net heat only through a gas.

mod area;
mod density;
mod heat;
mod length;
mod mass_flow;
mod pressure;
mod price;
mod speed;
mod spelling;
mod temperature;
mod text;
mod time;
mod volume;
mod volume_flow;
mod within;

pub use area::Area;
pub(crate) use density::CUBIC_FOOT;
pub use density::Density;
pub(crate) use heat::THERM;
pub use heat::{GrossHeatPerMass, GrossHeatRate, HeatBasis, HeatRate, NetHeatPerMass, NetHeatRate, Power};
pub use length::{Angle, Length};
pub use mass_flow::{Mass, MassFlow};
pub use pressure::{AbsolutePressure, GaugePressure, PressureDifference};
pub use price::PricePerMass;
pub use speed::{Force, RotationalSpeed, Speed};
pub(crate) use spelling::is_word;
#[cfg(feature = "report")]
pub(crate) use spelling::{ignores_case, spellings};
pub use temperature::{Temperature, TemperatureDifference};
pub use text::{Number, Quantity, Share, TextError, Unit, parse};
pub use time::Duration;
pub use volume::Volume;
pub use volume_flow::{ActualVolumeFlow, ReferenceState, StandardVolumeFlow};
pub use within::{WithinError, Written, parse_count, parse_within, parse_written};

/// Declares a quantity as a newtype over its SI value, with a constructor and a getter a unit.
macro_rules! quantity {
    (
        $(#[$doc:meta])* $name:ident, $what:literal, $si_from:ident, $si_get:ident, $si_unit:literal;
        $($from:ident, $get:ident, $factor:expr, $unit:literal;)*
    ) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        #[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(transparent))]
        pub struct $name<S = f64>(S);

        impl<S: $crate::Scalar> $name<S> {
            #[doc = concat!("From ", $si_unit, ".")]
            #[must_use]
            #[inline]
            pub const fn $si_from(value: S) -> Self {
                Self(value)
            }
            #[doc = concat!("In ", $si_unit, ".")]
            #[must_use]
            #[inline]
            pub const fn $si_get(self) -> S {
                self.0
            }
            /// The same in another number type, where it is a constant.
            #[must_use]
            #[inline]
            pub fn cast<T: $crate::Scalar>(self) -> $name<T> {
                $name(T::c(self.0.to_f64()))
            }
            $(
                #[doc = concat!("From ", $unit, ".")]
                #[must_use]
                #[inline]
                pub fn $from(value: S) -> Self {
                    Self(value * S::c($factor))
                }
                #[doc = concat!("In ", $unit, ".")]
                #[must_use]
                #[inline]
                pub fn $get(self) -> S {
                    self.0 / S::c($factor)
                }
            )*
        }

        impl<S: $crate::Scalar> $crate::words::Words for $name<S> {
            fn write(&self, put: &mut impl FnMut(f32)) {
                self.0.write(put);
            }
            fn read(next: &mut impl FnMut() -> Option<f32>) -> Option<Self> {
                S::read(next).map(Self)
            }
        }
    };
}

/// Sums and differences within one kind, and multiples of it.
macro_rules! additive {
    ($($name:ident),+) => {$(
        impl<S: $crate::Scalar> core::ops::Add for $name<S> {
            type Output = Self;
            #[inline]
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }
        impl<S: $crate::Scalar> core::ops::Sub for $name<S> {
            type Output = Self;
            #[inline]
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }
        impl<S: $crate::Scalar> core::ops::Mul<S> for $name<S> {
            type Output = Self;
            #[inline]
            fn mul(self, factor: S) -> Self {
                Self(self.0 * factor)
            }
        }
    )+};
}

/// The units a quantity is read in, from text.
macro_rules! readable {
    ($name:ident, $what:literal, $si_from:ident, [$($symbol:literal = $factor:expr),+ $(,)?]) => {
        impl $crate::quantity::Quantity for $name<f64> {
            const WHAT: &'static str = $what;
            const UNITS: &'static [$crate::quantity::Unit] =
                &[$($crate::quantity::Unit { symbol: $symbol, factor: $factor, offset: 0.0 }),+];
            fn from_si(value: f64) -> Self {
                Self::$si_from(value)
            }
            fn si(&self) -> f64 {
                self.0
            }
        }
    };
}

pub(crate) use {additive, quantity, readable};
