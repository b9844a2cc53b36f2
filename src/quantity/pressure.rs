//! Pressure: gauge, absolute, and a difference of either.

use super::length::INCH;
use super::mass_flow::POUND;
use super::{additive, quantity, readable};
use crate::scalar::Scalar;

/// Standard acceleration of free fall, exact by definition.
const STANDARD_GRAVITY: f64 = 9.806_65;
/// Pascals in a pound-force per square inch, from the pound, the inch and standard gravity.
const PSI: f64 = POUND * STANDARD_GRAVITY / (INCH * INCH);
/// Pascals in the conventional inch of water: 1000 kg/m3 and standard gravity.
const INCH_OF_WATER: f64 = 1000.0 * STANDARD_GRAVITY * INCH;
/// Pascals in the conventional inch of mercury: 13 595.1 kg/m3 and standard gravity.
const INCH_OF_MERCURY: f64 = 13_595.1 * STANDARD_GRAVITY * INCH;
/// Pascals in a standard atmosphere, exact by definition.
pub(crate) const ATMOSPHERE: f64 = 101_325.0;

quantity! {
    /// Pressure above the air around: what a gauge reads.
    ///
    /// The inch of water is the conventional one, 249.08891 Pa.
    ///
    /// ```
    /// use jetwright::quantity::{AbsolutePressure, GaugePressure};
    /// let gauge = GaugePressure::from_psi(5.0_f64);
    /// assert!((gauge.pascals() - 34_473.786).abs() < 1e-3);
    /// let ambient = AbsolutePressure::from_pascals(83_500.0);
    /// assert!((gauge.to_absolute(ambient).pascals() - 117_973.786).abs() < 1e-3);
    /// ```
    ///
    /// A gauge pressure is not an absolute one:
    ///
    /// ```compile_fail,E0308
    /// use jetwright::quantity::{AbsolutePressure, GaugePressure};
    /// let pressure: AbsolutePressure = GaugePressure::from_psi(5.0);
    /// ```
    ///
    /// nor are the two added or compared:
    ///
    /// ```compile_fail,E0308
    /// use jetwright::quantity::{AbsolutePressure, GaugePressure};
    /// let sum = AbsolutePressure::from_pascals(101_325.0) + GaugePressure::from_psi(5.0);
    /// ```
    GaugePressure, "a gauge pressure", from_pascals, pascals, "pascals above the air around";
    from_kilopascals, kilopascals, 1e3, "kilopascals above the air around";
    from_bar, bar, 1e5, "bar above the air around";
    from_psi, psi, PSI, "pounds per square inch above the air around";
    from_inches_of_water, inches_of_water, INCH_OF_WATER, "conventional inches of water (249.08891 Pa) above the air around";
}
additive!(GaugePressure);
readable!(
    GaugePressure,
    "a gauge pressure",
    from_pascals,
    [
        "psi" = PSI,
        "psig" = PSI,
        "bar" = 1e5,
        "mbar" = 1e2,
        "kPa" = 1e3,
        "Pa" = 1.0,
        "inH2O" = INCH_OF_WATER,
        "in w.c." = INCH_OF_WATER,
        "mmH2O" = INCH_OF_WATER / 25.4,
        "oz/in2" = PSI / 16.0,
    ]
);

quantity! {
    /// Pressure above vacuum: what a barometer reads.
    AbsolutePressure, "an absolute pressure", from_pascals, pascals, "pascals above vacuum";
    from_hectopascals, hectopascals, 1e2, "hectopascals above vacuum";
    from_psia, psia, PSI, "pounds per square inch above vacuum";
    from_inches_of_mercury, inches_of_mercury, INCH_OF_MERCURY, "conventional inches of mercury above vacuum";
}
additive!(AbsolutePressure);
readable!(
    AbsolutePressure,
    "an absolute pressure",
    from_pascals,
    [
        "hPa" = 1e2,
        "mbar" = 1e2,
        "kPa" = 1e3,
        "Pa" = 1.0,
        "bar" = 1e5,
        "inHg" = INCH_OF_MERCURY,
        "mmHg" = INCH_OF_MERCURY / 25.4,
        "psia" = PSI,
        "atm" = ATMOSPHERE,
    ]
);

quantity! {
    /// A loss or a rise of pressure: the difference of two pressures of one kind.
    PressureDifference, "a pressure difference", from_pascals, pascals, "pascals";
    from_psi, psi, PSI, "pounds per square inch";
    from_inches_of_water, inches_of_water, INCH_OF_WATER, "conventional inches of water (249.08891 Pa)";
}
additive!(PressureDifference);
readable!(
    PressureDifference,
    "a pressure difference",
    from_pascals,
    [
        "inH2O" = INCH_OF_WATER,
        "in w.c." = INCH_OF_WATER,
        "mmH2O" = INCH_OF_WATER / 25.4,
        "Pa" = 1.0,
        "kPa" = 1e3,
        "hPa" = 1e2,
        "mbar" = 1e2,
        "psi" = PSI,
    ]
);

impl<S: Scalar> GaugePressure<S> {
    /// The absolute pressure, given that of the air around.
    #[must_use]
    pub fn to_absolute(self, ambient: AbsolutePressure<S>) -> AbsolutePressure<S> {
        AbsolutePressure(self.0 + ambient.0)
    }
}

impl<S: Scalar> AbsolutePressure<S> {
    /// The pressure above that of the air around.
    #[must_use]
    pub fn to_gauge(self, ambient: AbsolutePressure<S>) -> GaugePressure<S> {
        GaugePressure(self.0 - ambient.0)
    }
}

#[cfg(test)]
mod tests {
    use super::{ATMOSPHERE, AbsolutePressure, GaugePressure};

    #[test]
    fn the_factors_are_those_of_the_tables() {
        // NIST SP 811 (2008), appendix B.8: psi 6.894757e3, inH2O conventional 2.490889e2, inHg conventional 3.386389e3.
        assert!((GaugePressure::from_psi(1.0_f64).pascals() / 6.894_757e3 - 1.0).abs() < 1e-7);
        assert!((GaugePressure::from_inches_of_water(1.0_f64).pascals() / 2.490_889e2 - 1.0).abs() < 1e-6);
        assert!((AbsolutePressure::from_inches_of_mercury(1.0_f64).pascals() / 3.386_389e3 - 1.0).abs() < 2e-7);
        // A column of a given height presses with the force of its weight on its area.
        assert!((AbsolutePressure::from_pascals(ATMOSPHERE).psia() - 14.695_95_f64).abs() < 1e-5);
    }

    #[test]
    fn gauge_to_absolute_and_back_is_the_same() {
        let ambient = AbsolutePressure::from_hectopascals(835.0_f64);
        let gauge = GaugePressure::from_psi(6.0);
        assert!((gauge.to_absolute(ambient).to_gauge(ambient).psi() - 6.0).abs() < 1e-12);
    }
}
