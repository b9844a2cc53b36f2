//! Numbers that look random and are the same every time.

/// SplitMix64 (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", 2014, from memory).
pub struct Random(u64);

impl Random {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15))
    }

    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    /// From zero to one.
    pub fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1u64 << 53) as f64
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }

    pub fn one_in(&mut self, count: u64) -> bool {
        self.next() % count == 0
    }

    /// Within a range to either side; its ends, where the worst is to be looked for, each in a third of all cases.
    pub fn often_an_end(&mut self, most: f64) -> f64 {
        match self.next() % 3 {
            0 => -most,
            1 => most,
            _ => self.between(-most, most),
        }
    }
}
