//! The whole installation as one value: its entries, and the burner, jet and line they make.

use crate::burner::{Burner, Conditions};
use crate::combustion::AirNeed;
use crate::gas::Gas;
use crate::orifice::{Drill, Jet};
use crate::plant::before_jet::BeforeJet;
use crate::plant::entries::Entries;
use crate::site::Site;

/// The whole installation.
#[derive(Clone)]
pub struct Plant {
    /// What it is described by.
    pub entries: Entries,
    /// The site.
    pub site: Site,
    /// The gas.
    pub gas: Gas,
    /// Air the gas needs here.
    pub air_need: AirNeed,
    /// The jets of one head.
    pub jet: Jet,
    /// The drill that made them, if it was named.
    pub drill: Option<Drill>,
    /// How many heads.
    pub heads: f64,
    /// The whole burner, if blower and head are described.
    pub burner: Option<Burner>,
    /// What it runs under, with the chamber at work.
    pub conditions: Conditions,
    /// What lies before the jet.
    pub before: BeforeJet,
}
