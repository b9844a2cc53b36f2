//! What the runs have seen: a campaign that sees little proves little.

use crate::faults::Kind;

#[derive(Debug)]
pub struct Tally {
    /// Runs with a fire.
    pub fires: u64,
    /// Runs in which the fire came to the heat wanted.
    pub followed: u64,
    /// Restarts of the chip.
    pub reboots: u64,
    /// Runs in which two faults or more were there at once in a fire.
    pub overlaps: u64,
    /// Faults that began while a fire burnt.
    pub faults_in_fire: [(&'static str, u64); Kind::COUNT],
    /// Lightings, and those of them whose air changes nobody could know.
    pub lightings: (u64, u64),
    /// The least air that was blown before a lighting, as a share of what is needed.
    pub least_blown: f64,
    /// Ticks with the gas open, and those of them whose mixture nobody could know.
    pub ticks: (u64, u64),
}

impl Tally {
    pub fn new() -> Self {
        Self {
            fires: 0,
            followed: 0,
            overlaps: 0,
            reboots: 0,
            faults_in_fire: [("", 0); Kind::COUNT],
            lightings: (0, 0),
            least_blown: f64::INFINITY,
            ticks: (0, 0),
        }
    }

    pub fn fault(&mut self, name: &'static str) {
        if let Some(entry) = self.faults_in_fire.iter_mut().find(|entry| entry.0 == name || entry.0.is_empty()) {
            *entry = (name, entry.1 + 1);
        }
    }

    pub fn lights(&mut self, share_blown: Option<f64>) {
        self.lightings.0 += 1;
        match share_blown {
            Some(share) => self.least_blown = self.least_blown.min(share),
            None => self.lightings.1 += 1,
        }
    }

    pub fn burns(&mut self, is_known: bool) {
        self.ticks.0 += 1;
        self.ticks.1 += u64::from(!is_known);
    }
}
