//! The head: what pressure pushes a mixture through its ports.

use crate::error::Result;
use crate::friction::Wall;
use crate::interpolate::polyline::in_table;
use crate::limits::{Input, check};
use crate::quantity::{Area, Density, Length, MassFlow, PressureDifference, Speed};
use crate::scalar::Scalar;
use crate::words::words;

/// How the stream settles along a hole, by length over diameter: Idelchik, Handbook of Hydraulic Resistance,
/// diagram 4-12 (table; a formula for it in wide circulation is mis-printed).
const SETTLING: [(f64, f64); 10] = [
    (0.0, 1.35),
    (0.2, 1.22),
    (0.4, 1.10),
    (0.6, 0.84),
    (0.8, 0.42),
    (1.0, 0.24),
    (1.2, 0.16),
    (1.6, 0.07),
    (2.0, 0.02),
    (2.4, 0.0),
];

/// A burner head: round ports or one slot through a wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Head<S = f64> {
    area: Area<S>,
    hydraulic_diameter: Length<S>,
    length_ratio: S,
    open_fraction: S,
    /// Loss coefficient on port speed but for the exit and the friction.
    entry_loss: S,
    /// How many equal round ports; none for a slot.
    ports: Option<S>,
}

words!(Head { area, hydraulic_diameter, length_ratio, open_fraction, entry_loss, ports });

/// A mixture passing the ports of one head.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeadFlow<S = f64> {
    /// Pressure it takes.
    pub pressure: PressureDifference<S>,
    /// Mean speed in the ports.
    pub speed: Speed<S>,
    /// Reynolds number of a port.
    pub reynolds_number: S,
    /// The power of the flow that the pressure follows at one density: 2, and what friction makes beside it.
    pub power: S,
}

impl<S: Scalar> Head<S> {
    /// A head of equal round ports.
    ///
    /// `open_fraction` is the share of the head's inner face that is open; the more of it, the less the
    /// stream has to turn.
    ///
    /// # Errors
    ///
    /// The measure that is out of range.
    pub fn with_ports(count: S, diameter: Length<S>, length: Length<S>, open_fraction: S) -> Result<Self> {
        let count = check(Input::PortCount, count)?;
        let d = check(Input::PortDiameter, diameter.meters())?;
        let area = Area::from_square_meters(count * S::c(core::f64::consts::FRAC_PI_4) * d.squared());
        Ok(Self { ports: Some(count), ..Self::new(area, diameter, length, open_fraction)? })
    }

    /// A head with one slot of a width (the narrow way) and a length along the head.
    ///
    /// # Errors
    ///
    /// The measure that is out of range.
    pub fn with_slot(width: Length<S>, slot_length: Length<S>, depth: Length<S>) -> Result<Self> {
        let w = check(Input::PortDiameter, width.meters())?;
        let l = check(Input::SlotLength, slot_length.meters())?;
        let hydraulic = Length::from_meters(S::c(2.0) * w * l / (w + l));
        Self::new(Area::from_square_meters(w * l), hydraulic, depth, S::zero())
    }

    fn new(area: Area<S>, hydraulic_diameter: Length<S>, length: Length<S>, open_fraction: S) -> Result<Self> {
        let length_ratio = check(Input::PortLength, length.meters())? / hydraulic_diameter.meters();
        let open_fraction = check(Input::OpenFraction, open_fraction)?;
        let entry_loss = entry_loss(length_ratio, open_fraction);
        Ok(Self { area, hydraulic_diameter, length_ratio, open_fraction, entry_loss, ports: None })
    }

    /// The same in another number type.
    #[must_use]
    pub fn cast<T: Scalar>(&self) -> Head<T> {
        Head {
            area: self.area.cast(),
            hydraulic_diameter: self.hydraulic_diameter.cast(),
            length_ratio: T::c(self.length_ratio.to_f64()),
            open_fraction: T::c(self.open_fraction.to_f64()),
            entry_loss: T::c(self.entry_loss.to_f64()),
            ports: self.ports.map(|ports| T::c(ports.to_f64())),
        }
    }

    /// The same head with its open area multiplied, by more ports of the same size.
    #[must_use]
    pub fn widened(&self, factor: S) -> Self {
        Self { area: self.area * factor, ports: self.ports.map(|ports| ports * factor), ..*self }
    }

    /// The same head with every hole a factor as wide and as many of them by another; a slot grows in width.
    ///
    /// The wall is as thick as it was, and the holes take up as much more of it.
    ///
    /// # Errors
    ///
    /// A hole, a number of holes or an open fraction out of range.
    pub fn resized(&self, width: S, count: S) -> Result<Self> {
        let diameter = self.hydraulic_diameter * width;
        check(Input::PortDiameter, diameter.meters())?;
        let (ports, more) = match self.ports {
            Some(ports) => (Some(check(Input::PortCount, ports * count)?), width.squared() * count),
            None => (None, width * count),
        };
        let open_fraction = check(Input::OpenFraction, self.open_fraction * more)?;
        let length_ratio = self.length_ratio / width;
        let entry_loss = entry_loss(length_ratio, open_fraction);
        Ok(Self {
            area: self.area * more,
            hydraulic_diameter: diameter,
            length_ratio,
            open_fraction,
            entry_loss,
            ports,
        })
    }

    /// How many round ports; none for a slot.
    #[must_use]
    pub fn ports(&self) -> Option<S> {
        self.ports
    }

    /// What decides whether a flame passes: the diameter of a port, the width of a slot.
    #[must_use]
    pub fn narrowest(&self) -> Length<S> {
        if self.ports.is_some() { self.hydraulic_diameter } else { self.hydraulic_diameter * S::c(0.5) }
    }

    /// Open area of the head.
    #[must_use]
    pub fn area(&self) -> Area<S> {
        self.area
    }

    /// Loss coefficient on port speed: 0.5 (1-f)^0.75 + tau (1-f)^1.375 + 1 + lambda l/d, f the open fraction.
    ///
    /// # Source
    ///
    /// Idelchik, Handbook of Hydraulic Resistance, diagram 8-3 form for thick plates, with the whole exit lost in
    /// a large chamber; stated for Reynolds numbers above 1e5, used below them with the friction factor of the
    /// Reynolds number at hand, so small ports are indicative.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::burner::Head;
    /// use jetwright::quantity::Length;
    /// let mm = Length::from_millimeters;
    /// let head = Head::with_ports(40.0_f64, mm(4.0), mm(8.0), 0.0).unwrap();
    /// // Two diameters long in a wide wall: 0.5 + 0.02 + 1 + 2 lambda.
    /// assert!((head.loss_coefficient(0.02) - 1.56).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn loss_coefficient(&self, friction_factor: S) -> S {
        self.entry_loss + S::one() + friction_factor * self.length_ratio
    }

    /// The pressure a mass flow of a mixture takes: zeta rho v^2 / 2.
    ///
    /// Density and viscosity (Pa s) are those in the ports, where a hot head has warmed the mixture.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::burner::Head;
    /// use jetwright::quantity::{Density, Length, MassFlow};
    /// let mm = Length::from_millimeters;
    /// let head = Head::with_ports(40.0_f64, mm(4.0), mm(8.0), 0.2).unwrap();
    /// let mixture = Density::from_kilograms_per_cubic_meter(1.0);
    /// let flow = head.flow(MassFlow::from_grams_per_second(10.0), mixture, 1.8e-5);
    /// // 0.01 kg/s through 503 mm2 at 1 kg/m3 is 19.9 m/s; some 1.5 heads of 198 Pa.
    /// assert!((flow.speed.meters_per_second() - 19.89).abs() < 0.01);
    /// assert!(flow.pressure.pascals() > 280.0 && flow.pressure.pascals() < 320.0);
    /// ```
    #[must_use]
    pub fn flow(&self, mass_flow: MassFlow<S>, density: Density<S>, viscosity: S) -> HeadFlow<S> {
        let speed = mass_flow.at(density).cubic_meters_per_second() / self.area.square_meters();
        let rho = density.kilograms_per_cubic_meter();
        // A still mixture has no Reynolds number; the least one stands for it.
        let reynolds_number = (rho * speed * self.hydraulic_diameter.meters() / viscosity).larger(S::c(1.0));
        let friction = Wall::new(S::zero()).friction(reynolds_number);
        let loss_coefficient = self.loss_coefficient(friction.factor);
        let pressure = S::c(0.5) * loss_coefficient * rho * speed.squared();
        HeadFlow {
            pressure: PressureDifference::from_pascals(pressure),
            speed: Speed::from_meters_per_second(speed),
            reynolds_number,
            power: S::c(2.0) + friction.log_slope * friction.factor * self.length_ratio / loss_coefficient,
        }
    }

    /// How steeply the speed of a mixture rises from a port's wall, 1/s: g = (f/8) Re v/d, f the Darcy factor; where
    /// the flow is laminar 8 v/d of a round port and 6 v/h of a slot of width h.
    ///
    /// # Source
    ///
    /// Wall shear f rho v^2 / 8 over the viscosity, for a port long enough for its flow to settle; at the mouth of a
    /// short one the gradient is steeper. A slot is as a round port of its hydraulic diameter, with half as much again
    /// while it is laminar.
    ///
    /// # Examples
    ///
    /// ```
    /// use jetwright::burner::Head;
    /// use jetwright::quantity::{Density, Length, MassFlow};
    /// let mm = Length::from_millimeters;
    /// let head = Head::with_ports(1.0_f64, mm(3.0), mm(30.0), 0.0).unwrap();
    /// // 5 m/s through 7.069 mm2 of a mixture of 1 kg/m3, laminar: 8 * 5 / 0.003.
    /// let flow = head.flow(MassFlow::from_grams_per_second(0.035_343), Density::from_kilograms_per_cubic_meter(1.0), 1.8e-5);
    /// assert!((head.wall_gradient(&flow) - 13_333.0).abs() < 5.0);
    /// ```
    #[must_use]
    pub fn wall_gradient(&self, flow: &HeadFlow<S>) -> S {
        let reynolds = flow.reynolds_number;
        let rate = flow.speed.meters_per_second() / self.hydraulic_diameter.meters();
        let shear = Wall::new(S::zero()).friction(reynolds).factor * reynolds / S::c(8.0) * rate;
        if self.ports.is_some() {
            return shear;
        }
        // The profile between two plates is steeper than in a pipe until it is turbulent: 96 instead of 64.
        shear.larger(S::c(12.0) * rate)
    }
}

/// 0.5 (1-f)^0.75 + tau (1-f)^1.375.
fn entry_loss<S: Scalar>(length_ratio: S, open_fraction: S) -> S {
    let closed = S::one() - open_fraction;
    let root = closed.sqrt();
    // (1-f)^0.75 and (1-f)^1.375 from square roots.
    let three_quarters = root * root.sqrt();
    let eighth = root.sqrt().sqrt();
    S::c(0.5) * three_quarters + settling(length_ratio) * closed * root.sqrt() * eighth
}

/// The settling term at a length over diameter, between the rows of the table.
fn settling<S: Scalar>(length_ratio: S) -> S {
    in_table(SETTLING.len(), |index| SETTLING[index], length_ratio)
}

#[cfg(test)]
mod tests {
    use super::Head;
    use crate::quantity::{Density, Length, MassFlow};

    #[test]
    fn the_coefficient_is_the_handbooks_on_the_hole() {
        // Idelchik, diagram 4-18A (thick-walled hole in a large wall): zeta on hole speed, without friction.
        // Its rows and those of diagram 4-12 used here differ by up to 0.12 in print.
        for (length_ratio, published) in [(0.0, 2.85), (0.2, 2.72), (0.6, 2.34), (1.0, 1.76), (1.6, 1.60), (2.0, 1.55)]
        {
            let d = Length::from_millimeters(4.0);
            let head = Head::with_ports(1.0_f64, d, d * length_ratio, 0.0).unwrap();
            assert!((head.loss_coefficient(0.0) - published).abs() < 0.05, "{length_ratio}");
        }
    }

    #[test]
    fn a_slot_and_ports_of_the_same_area_pass_about_the_same() {
        let mm = Length::from_millimeters;
        let slot = Head::with_slot(mm(3.0_f64), mm(100.0), mm(20.0)).unwrap();
        let ports = Head::with_ports(
            slot.area().square_meters() / (core::f64::consts::FRAC_PI_4 * 36e-6),
            mm(6.0),
            mm(20.0),
            0.0,
        );
        let (flow, rho) = (MassFlow::from_grams_per_second(8.0), Density::from_kilograms_per_cubic_meter(1.0));
        let (a, b) = (slot.flow(flow, rho, 1.8e-5), ports.unwrap().flow(flow, rho, 1.8e-5));
        assert!((a.pressure.pascals() / b.pressure.pascals() - 1.0).abs() < 0.02);
    }

    #[test]
    fn twice_the_flow_takes_about_four_times_the_pressure_and_a_hot_port_more() {
        let mm = Length::from_millimeters;
        let head = Head::with_ports(40.0_f64, mm(4.0), mm(8.0), 0.2).unwrap();
        let at = |grams, rho, mu| {
            head.flow(MassFlow::from_grams_per_second(grams), Density::from_kilograms_per_cubic_meter(rho), mu)
                .pressure
                .pascals()
        };
        let ratio = at(20.0, 1.0, 1.8e-5) / at(10.0, 1.0, 1.8e-5);
        assert!(ratio > 3.8 && ratio < 4.1, "{ratio}");
        // The same mass at half the density moves twice as fast: twice the pressure.
        let hot = at(10.0, 0.5, 3.0e-5) / at(10.0, 1.0, 1.8e-5);
        // Less or more by the little that friction changes with the Reynolds number.
        assert!((hot - 2.0).abs() < 0.1, "{hot}");
    }
}
