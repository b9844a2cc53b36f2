//! Burner files: the demonstration's and others drawn around it when the tests run.

use std::fmt::Write;
use std::path::PathBuf;

/// The demonstration's.
pub fn demo() -> PathBuf {
    concat!(env!("CARGO_MANIFEST_DIR"), "/examples/bell-foundry.toml").into()
}

/// Numbers between zero and one that are the same in every run.
pub struct Draw(u64);

impl Draw {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1)
    }

    pub fn share(&mut self) -> f64 {
        // Knuth's constants of a linear congruential generator (from memory).
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }

    pub fn pick<T: Copy>(&mut self, of: &[T]) -> T {
        of[((self.share() * of.len() as f64) as usize).min(of.len() - 1)]
    }
}

/// A burner of invented measures, whose blower feeds its two settings.
pub fn drawn(seed: u64) -> String {
    let mut draw = Draw::new(seed);
    let bore = draw.between(1.0, 2.2);
    let edge = draw.pick(&["square", "sharp", "square"]);
    let length = if edge == "sharp" { 0.0 } else { draw.between(0.0, 40.0) };
    // A blower and a head that go with the square of the bore.
    let size = bore / 1.5;
    let flow = 36.0 * size * size;
    let mut file = String::new();
    write!(
        file,
        "name = \"Drawn {seed} (invented)\"
[site]
altitude = \"{:.0} m\"
air_temperature = \"{:.1} C\"
humidity = \"{:.0} %\"
[gas]
kind = \"{}\"
temperature = \"{:.1} C\"
[jet]
bore = \"{bore:.3} mm\"
bore_length = \"{length:.2} mm\"
edge = \"{edge}\"
[blower]
points = [
    {{ flow = \"0 m3/h\", pressure = \"800 Pa\" }},
    {{ flow = \"{:.2} m3/h\", pressure = \"810 Pa\" }},
    {{ flow = \"{:.2} m3/h\", pressure = \"700 Pa\" }},
    {{ flow = \"{:.2} m3/h\", pressure = \"400 Pa\" }},
    {{ flow = \"{:.2} m3/h\", pressure = \"50 Pa\" }},
]
[[duct]]
diameter = \"{:.0} mm\"
length = \"{:.2} m\"
fitting_loss = {:.2}
[damper]
kind = \"{}\"
diameter = \"{:.0} mm\"
[head]
ports = {:.0}
port_diameter = \"4 mm\"
port_length = \"{:.1} mm\"
open_fraction = \"30 %\"
mixture_temperature = \"{:.0} C\"
",
        draw.between(0.0, 2500.0),
        draw.between(-10.0, 35.0),
        draw.between(0.0, 100.0),
        draw.pick(&["propane", "natural-gas", "butane"]),
        draw.between(5.0, 30.0),
        0.1 * flow,
        0.5 * flow,
        0.8 * flow,
        1.1 * flow,
        45.0 * size,
        draw.between(0.3, 3.0),
        draw.between(0.0, 2.0),
        draw.pick(&["blast gate", "butterfly"]),
        34.0 * size,
        45.0 * size * size,
        draw.between(5.0, 40.0),
        draw.between(20.0, 200.0),
    )
    .expect("text takes text");
    if draw.share() > 0.3 {
        writeln!(file, "mixing_tube_diameter = \"{:.0} mm\"", 45.0 * size).expect("text takes text");
    }
    if draw.share() > 0.3 {
        writeln!(file, "[chamber]\nexhaust_opening = \"80 cm2\"\ntemperature = \"1150 C\"").expect("text takes text");
    }
    file + "[fire]\nair_ratio = 1.05\n[[setting]]\nname = \"small\"\ngauge = \"0.15 bar\"\n[[setting]]\nname = \"large\"\ngauge = \"0.25 bar\"\n"
}
