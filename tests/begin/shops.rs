//! Ten invented shops, two a trade. Each owner knows some things and not others; the truth is drawn from curves,
//! dampers and walls of another make than the classes that stand for them, and must lie within the ± that is printed.
//!
//! Every number is invented. The draws: a blower's impeller of any pressure number from 0.5 to 1.0 and flow number from
//! 0.10 to 0.40, at 2850 or 3450 a minute, its curve a line and a power mixed; any of the four kinds of damper, its
//! plate a few hundredths off; a bore, a gauge and weather as far off as such things are; a wall that conducts what a
//! light, heavy or soft one may.

use std::f64::consts::PI;

use jetwright::file::begin::{Answer, Answers, compose, question, trade};
use jetwright::file::burner_file::{BurnerFile, parse};

/// How often a truth may lie outside of 1000 draws: ± that hold 95 times in 100, and three times the draws' own scatter.
const LEAST_INSIDE: usize = 930;
const DRAWS: usize = 100;
/// Opening that the damper stands at.
const OPENING: f64 = 0.5;

/// What an owner says and what is true of it, on the average.
struct Shop {
    trade: &'static str,
    said: &'static [(&'static str, &'static str)],
    /// Bore in millimeters and its standard deviation.
    bore: (f64, f64),
    /// Gauge in bar.
    gauge: f64,
    /// Standard deviation of the gauge as a share, where nobody read one.
    gauge_unread: f64,
    /// True conductivity of the wall, least and most, W/(m K); none where no wall is said.
    conducts: Option<(f64, f64)>,
    /// Thickness of the wall, mm, and its standard deviation.
    wall: (f64, f64),
}

const SHOPS: [Shop; 10] = [
    Shop {
        trade: "forge",
        said: &[
            ("jet", "1.4 mm"),
            ("gauge", "0.35 bar"),
            ("blower-flow", "100 m3/h"),
            ("duct", "50 mm"),
            ("ports", "80 x 4 mm"),
            ("chamber", "200 x 200 x 400 mm"),
            ("lining", "soft"),
            ("thickness", "50 mm"),
        ],
        bore: (1.4, 0.005),
        gauge: 0.35,
        gauge_unread: 0.0,
        conducts: Some((0.7, 1.4)),
        wall: (50.0, 1.0),
    },
    Shop {
        trade: "forge",
        said: &[
            ("gauge", "0.35 bar"),
            ("blower-pressure", "500 Pa"),
            ("damper", "blast gate"),
            ("duct", "50 mm"),
            ("ports", "80 x 4 mm"),
        ],
        bore: (1.5, 0.25),
        gauge: 0.35,
        gauge_unread: 0.0,
        conducts: None,
        wall: (0.0, 0.0),
    },
    Shop {
        trade: "crucible",
        said: &[
            ("jet", "number 50"),
            ("gauge", "0.35 bar"),
            ("blower-plate", "60 W, 110 mm"),
            ("duct", "50 mm"),
            ("damper", "blast gate"),
            ("ports", "60 x 4.5 mm"),
            ("chamber", "300 x 400 mm"),
            ("lining", "light"),
            ("thickness", "65 mm"),
        ],
        bore: (1.778 + 0.02, 0.035),
        gauge: 0.35,
        gauge_unread: 0.0,
        conducts: Some((0.18, 0.46)),
        wall: (65.0, 1.0),
    },
    Shop {
        trade: "crucible",
        said: &[
            ("jet", "1.6 mm"),
            ("blower-flow", "120 m3/h"),
            ("blower-pressure", "700 Pa"),
            ("duct", "50 mm"),
            ("ports", "60 x 4.5 mm"),
        ],
        bore: (1.6, 0.005),
        gauge: 0.3,
        gauge_unread: 0.25,
        conducts: None,
        wall: (0.0, 0.0),
    },
    Shop {
        trade: "kiln",
        said: &[
            ("jet", "2 mm"),
            ("gauge", "0.2 bar"),
            ("blower-flow", "150 m3/h"),
            ("damper", "butterfly"),
            ("duct", "60 mm"),
            ("ports", "100 x 5 mm"),
            ("chamber", "600 x 600 x 600 mm"),
            ("lining", "light"),
        ],
        bore: (2.0, 0.005),
        gauge: 0.2,
        gauge_unread: 0.0,
        conducts: Some((0.22, 0.40)),
        wall: (75.0, 7.0),
    },
    Shop {
        trade: "kiln",
        said: &[
            ("jet", "2 mm"),
            ("gauge", "0.25 bar"),
            ("blower-plate", "90 W, 130 mm"),
            ("duct", "60 mm"),
            ("ports", "100 x 5 mm"),
        ],
        bore: (2.0, 0.005),
        gauge: 0.25,
        gauge_unread: 0.0,
        conducts: None,
        wall: (0.0, 0.0),
    },
    Shop {
        trade: "glass",
        said: &[
            ("jet", "1.6 mm"),
            ("gauge", "0.3 bar"),
            ("blower-pressure", "600 Pa"),
            ("duct", "50 mm"),
            ("damper", "gate valve"),
            ("ports", "80 x 4 mm"),
            ("chamber", "400 x 400 x 400 mm"),
            ("lining", "heavy"),
            ("thickness", "100 mm"),
        ],
        bore: (1.6, 0.005),
        gauge: 0.3,
        gauge_unread: 0.0,
        conducts: Some((0.9, 2.1)),
        wall: (100.0, 2.0),
    },
    Shop {
        trade: "glass",
        said: &[
            ("gauge", "0.3 bar"),
            ("blower-flow", "100 m3/h"),
            ("damper", "ball valve"),
            ("duct", "50 mm"),
            ("ports", "80 x 4 mm"),
        ],
        bore: (1.5, 0.25),
        gauge: 0.3,
        gauge_unread: 0.0,
        conducts: None,
        wall: (0.0, 0.0),
    },
    Shop {
        trade: "brazing",
        said: &[
            ("jet", "1 mm"),
            ("gauge", "0.4 bar"),
            ("blower-flow", "60 m3/h"),
            ("duct", "40 mm"),
            ("ports", "40 x 3.5 mm"),
            ("chamber", "300 x 200 x 300 mm"),
            ("lining", "light"),
            ("thickness", "50 mm"),
        ],
        bore: (1.0, 0.005),
        gauge: 0.4,
        gauge_unread: 0.0,
        conducts: Some((0.18, 0.42)),
        wall: (50.0, 1.0),
    },
    Shop {
        trade: "brazing",
        said: &[
            ("jet", "1 mm"),
            ("blower-plate", "40 W, 100 mm"),
            ("damper", "blast gate"),
            ("duct", "40 mm"),
            ("ports", "40 x 3.5 mm"),
        ],
        bore: (1.0, 0.005),
        gauge: 0.3,
        gauge_unread: 0.25,
        conducts: None,
        wall: (0.0, 0.0),
    },
];

/// A sequence of draws, the same each time: a linear congruence by Knuth's constants.
struct Draws(u64);

impl Draws {
    fn share(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.share()
    }

    /// Between, each factor as likely.
    fn by_factor(&mut self, least: f64, most: f64) -> f64 {
        self.between(least.ln(), most.ln()).exp()
    }

    /// Around zero with standard deviation one, by twelve sums.
    fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.share()).sum::<f64>() - 6.0
    }
}

impl Shop {
    fn said(&self, key: &str) -> Option<&'static str> {
        self.said.iter().find(|(said, _)| *said == key).map(|(_, text)| *text)
    }

    /// The file that its owner gets, with the damper at the mark.
    fn file(&self) -> String {
        let mut answers = Answers::default();
        for (key, text) in [("trade", self.trade), ("gas", "propane")].iter().chain(self.said) {
            answers.take(question(key).unwrap(), Answer::Said((*text).into())).unwrap();
        }
        compose(&answers).replacen("[[setting]]\n", &format!("[[setting]]\ndamper = {OPENING}\n"), 1)
    }

    /// A burner as it may truly be.
    fn truth(&self, draws: &mut Draws) -> String {
        let file = self.file();
        let (head, rest) = file.split_once("\n[jet]\n").unwrap();
        let head = head.replace("300 m", &format!("{:.0} m", (300.0 + 250.0 * draws.normal()).clamp(0.0, 1200.0)));
        let head = head.replace("\"20 C\"", &format!("\"{:.1} C\"", 20.0 + 5.0 * draws.normal()));
        let bore = (self.bore.0 + self.bore.1 * draws.normal()).max(0.5 * self.bore.0);
        let edge = (0.005 * bore * draws.normal()).abs().max(1e-4);
        let jet = format!(
            "[jet]\nbore = \"{bore:.4} mm\"\nedge = \"rounded\"\nedge_radius = \"{edge:.5} mm\"\nbore_length = \"12 mm\"\n"
        );
        let blower = self.blower(draws);
        let kinds = ["blast gate", "butterfly", "ball valve", "gate valve"];
        let drawn = kinds[(draws.share() * 4.0) as usize];
        let kind = self.said("damper").unwrap_or(drawn);
        let correction = (0.12 * draws.normal()).exp().clamp(0.5, 2.0);
        let damper = format!(
            "[damper]\nkind = \"{kind}\"\ndiameter = \"{}\"\ncorrection = {correction:.4}\n",
            self.said("duct").unwrap()
        );
        let (_, from_head) = rest.split_once("[head]").unwrap();
        let (from_head, _) = from_head.split_once("\n[fire]").unwrap();
        let fraction = 0.25 * (1.0 + 0.02 * draws.normal());
        let from_head = from_head.replace("\"25 %\"", &format!("\"{:.3} %\"", 100.0 * fraction));
        let from_head = match self.conducts {
            None => from_head,
            Some((least, most)) => {
                let k = draws.by_factor(least, most);
                let thick = self.wall.0 + self.wall.1 * draws.normal();
                self.with_wall(&from_head, k, thick)
            }
        };
        // The first stage is the one whose damper stands at the mark.
        let gauge = self.gauge
            * trade(self.trade).unwrap().stages[0].gauge_share
            * (1.0 + self.gauge_unread * draws.normal()).max(0.1);
        // A dial of 15 psi errs by three hundredths of it near the ends and by two in the middle.
        let error = if self.gauge_unread > 0.0 { 0.0 } else { 0.5 * 0.02 * 1.034 * draws.normal() };
        let opening = OPENING + 0.015 * draws.normal();
        format!(
            "{head}\n{jet}{blower}{damper}[head]{from_head}\n[[setting]]\nname = \"full\"\ngauge = \"{:.5} bar\"\n\
             damper = {opening:.4}\n",
            gauge + error
        )
    }

    /// The wall as a material of its own, which conducts the same at every temperature.
    fn with_wall(&self, text: &str, conductivity: f64, thickness: f64) -> String {
        let lining = self.said("lining").unwrap();
        let named = format!("material = \"unknown {lining} lining\"");
        assert!(text.contains(&named), "{text}");
        let own = format!(
            "material = \"the true wall\"\ndensity = \"800 kg/m3\"\nlimit = \"1700 C\"\n\
             conductivity = [{{ temperature = \"400 C\", value = {conductivity:.4} }}]\n\
             specific_heat = [{{ temperature = \"400 C\", value = 1000 }}]"
        );
        // Only the layer's thickness is a measure across the wall: panels keep theirs, as their corners do.
        let said = format!("thickness = \"{} mm\"", self.wall.0);
        text.replace(&named, &own).replace(&said, &format!("thickness = \"{thickness:.2} mm\""))
    }

    fn blower(&self, draws: &mut Draws) -> String {
        let pressure_number = draws.between(0.5, 1.0);
        let flow_number = draws.by_factor(0.10, 0.40);
        let turns = if draws.share() < 0.5 { 2850.0 } else { 3450.0 } / 60.0;
        let number = |key: &str| self.said(key).map(|text| text.split(' ').next().unwrap().parse::<f64>().unwrap());
        let tip = |diameter: f64| PI * turns * diameter;
        let pressure = |diameter: f64| pressure_number * 1.2 * tip(diameter).powi(2);
        let flow = |diameter: f64| flow_number * tip(diameter) * PI / 4.0 * diameter * diameter;
        // What a nameplate says is itself a twentieth off.
        let near = 1.0 + 0.025 * draws.normal();
        let (shut_off, free) = match (number("blower-pressure"), number("blower-flow")) {
            (Some(shut_off), Some(free)) => (shut_off * near, free / 3600.0),
            (Some(shut_off), None) => {
                let diameter = (shut_off / (pressure_number * 1.2)).sqrt() / (PI * turns);
                (shut_off * near, flow(diameter))
            }
            (None, Some(free)) => {
                let free = free / 3600.0 * near;
                let diameter = (free / (flow_number * PI * turns * PI / 4.0)).cbrt();
                (pressure(diameter), free)
            }
            (None, None) => {
                let (power, diameter) = self.said("blower-plate").unwrap().split_once(", ").unwrap();
                let power: f64 = power.split(' ').next().unwrap().parse().unwrap();
                let diameter = 1e-3 * diameter.split(' ').next().unwrap().parse::<f64>().unwrap();
                let to_air = draws.between(0.12, 0.40);
                let shut_off = pressure(diameter);
                (shut_off, to_air * power / (0.385 * shut_off))
            }
        };
        let (line, power) = (draws.between(0.0, 0.4), draws.between(1.6, 3.0));
        let points: Vec<String> = (0..12)
            .map(|at| {
                let x = f64::from(at) / 11.0;
                let p = shut_off * (1.0 - line * x - (1.0 - line) * x.powf(power)).max(0.0);
                format!("{{ flow = \"{:.3} L/s\", pressure = \"{p:.3} Pa\" }}", 1000.0 * free * x)
            })
            .collect();
        format!("[blower]\npoints = [{}]\n", points.join(", "))
    }
}

fn read(text: &str) -> BurnerFile {
    parse(text, "shop").unwrap_or_else(|error| panic!("{error}\n{text}"))
}

fn around(value: f64, expanded: f64) -> (f64, f64) {
    (value - expanded, value + expanded)
}

/// How often the truth lies within ±, and the widest and narrowest ±, as shares.
#[derive(Default)]
struct Score {
    inside: usize,
    of: usize,
    spreads: Vec<f64>,
}

impl Score {
    fn count(&mut self, (least, most): (f64, f64), truth: f64) {
        self.of += 1;
        self.inside += usize::from(least <= truth && truth <= most);
    }

    fn share(&self) -> f64 {
        self.inside as f64 / self.of as f64
    }
}

#[test]
fn the_truth_lies_within_what_is_printed() {
    let (mut heat, mut air, mut walls) = (Score::default(), Score::default(), Score::default());
    let mut draws = Draws(20_250_101);
    for (place, shop) in SHOPS.iter().enumerate() {
        let (sheet, _) = read(&shop.file()).evaluate(false).unwrap();
        let sure = sheet.sure[0].unwrap();
        let ratio = sure.air_ratio.expect("a blower and a head");
        heat.spreads.push(sure.gas.relative());
        air.spreads.push(ratio.relative());
        let before = (heat.inside, air.inside);
        for _ in 0..DRAWS {
            let file = read(&shop.truth(&mut draws));
            let (plant, _) = file.plant().unwrap();
            let settings = plant.settings().unwrap();
            heat.count(around(sure.gas.value, sure.gas.expanded), settings[0].gas.kilograms_per_second());
            let true_ratio = settings[0].air.as_ref().and_then(|air| air.air_ratio()).unwrap_or(f64::NAN);
            air.count(around(ratio.value, ratio.expanded), true_ratio);
        }
        println!(
            "{place} {}: heat ± {:.0} % holds {}, air ratio {:.2} ± {:.0} % holds {}",
            shop.trade,
            100.0 * sure.gas.relative(),
            heat.inside - before.0,
            ratio.value,
            100.0 * ratio.relative(),
            air.inside - before.1
        );
        let Some(furnace) = &sheet.furnace else { continue };
        let kept = furnace.course.kept_long;
        let (Some(least), Some(most)) = (kept.low, kept.high) else { panic!("{}: no ends", shop.trade) };
        walls.spreads.push(0.5 * (most - least) / kept.value);
        let before = walls.inside;
        for _ in 0..DRAWS / 10 {
            let (truth, _) = read(&shop.truth(&mut draws)).evaluate(false).unwrap();
            walls.count((least, most), truth.furnace.unwrap().course.kept_long.value);
        }
        println!(
            "  kept by {:.1} kW, {:.1} to {:.1}, holds {}",
            kept.value * 1e-3,
            least * 1e-3,
            most * 1e-3,
            walls.inside - before
        );
    }
    for (name, score) in [("heat", &heat), ("air ratio", &air), ("fire that keeps it", &walls)] {
        let widest = score.spreads.iter().copied().fold(0.0, f64::max);
        println!("{name}: inside {} of {}, ± up to {:.0} %", score.inside, score.of, 100.0 * widest);
    }
    assert!(heat.inside >= LEAST_INSIDE && air.inside >= LEAST_INSIDE, "{} {}", heat.inside, air.inside);
    assert!(walls.share() >= LEAST_INSIDE as f64 / 1000.0, "{}", walls.share());
    // Where jet and gauge are known the heat is within 15 %, and the air ratio within 60 % but where the jet is not.
    assert!(heat.spreads.iter().filter(|spread| **spread < 0.15).count() >= 6, "{:?}", heat.spreads);
    assert!(air.spreads.iter().filter(|spread| **spread < 0.6).count() >= 8, "{:?}", air.spreads);
    assert!(heat.spreads.iter().chain(&air.spreads).all(|spread| *spread < 1.5), "{:?}", air.spreads);
}
