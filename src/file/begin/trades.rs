//! What differs by trade: words, stages, usual temperatures. All of it is common practice, no source.

/// A trade that has a furnace with forced air.
#[derive(Debug)]
pub struct Trade {
    /// What a user writes.
    pub key: &'static str,
    /// What its furnace is called.
    pub furnace: &'static str,
    /// What is heated in it.
    pub ware: &'static str,
    /// How hot the chamber is when at work.
    pub chamber_temperature: &'static str,
    /// Air ratio aimed at.
    pub air_ratio: &'static str,
    /// The stages of a firing, in order.
    pub stages: &'static [Stage],
}

/// A stage of a firing.
#[derive(Debug)]
pub struct Stage {
    /// Its name.
    pub name: &'static str,
    /// Its gauge pressure over that of the full fire.
    pub gauge_share: f64,
    /// How long it is used.
    pub minutes: &'static str,
    /// What it is for.
    pub purpose: &'static str,
}

const fn stage(name: &'static str, gauge_share: f64, minutes: &'static str, purpose: &'static str) -> Stage {
    Stage { name, gauge_share, minutes, purpose }
}

/// Every trade.
pub const TRADES: &[Trade] = &[
    Trade {
        key: "forge",
        furnace: "forge",
        ware: "stock",
        chamber_temperature: "1250 C",
        air_ratio: "1.00",
        stages: &[
            stage("light", 1.0, "5 min", "light and warm the lining"),
            stage("forging heat", 1.0, "60 min", "bring stock to forging heat"),
            stage("idle", 0.5, "20 min", "keep the forge hot between heats"),
        ],
    },
    Trade {
        key: "crucible",
        furnace: "crucible furnace",
        ware: "charge",
        chamber_temperature: "1200 C",
        air_ratio: "1.05",
        stages: &[
            stage("light", 1.0, "5 min", "light and warm the crucible"),
            stage("melt", 1.0, "60 min", "melt the charge"),
            stage("hold", 0.5, "15 min", "keep it liquid until it is poured"),
        ],
    },
    Trade {
        key: "kiln",
        furnace: "kiln",
        ware: "ware",
        chamber_temperature: "1230 C",
        air_ratio: "1.10",
        stages: &[
            stage("light", 0.6, "15 min", "light, door and flue open"),
            stage("rise", 0.6, "240 min", "dry and warm the ware slowly"),
            stage("full fire", 1.0, "180 min", "bring the ware to its top temperature"),
            stage("soak", 0.5, "20 min", "even out the kiln"),
        ],
    },
    Trade {
        key: "glass",
        furnace: "glass furnace",
        ware: "glass",
        chamber_temperature: "1150 C",
        air_ratio: "1.05",
        stages: &[
            stage("light", 1.0, "10 min", "light and warm the walls"),
            stage("melt", 1.0, "180 min", "melt and fine the glass"),
            stage("work", 0.5, "120 min", "keep the glass at working heat"),
        ],
    },
    Trade {
        key: "brazing",
        furnace: "brazing hearth",
        ware: "workpiece",
        chamber_temperature: "950 C",
        air_ratio: "1.00",
        stages: &[
            stage("light", 1.0, "2 min", "light and warm the hearth"),
            stage("braze", 1.0, "15 min", "bring the joint to heat"),
            stage("wait", 0.5, "10 min", "a small fire between workpieces"),
        ],
    },
];

/// The trade of a key.
#[must_use]
pub fn trade(key: &str) -> Option<&'static Trade> {
    TRADES.iter().find(|trade| trade.key == key)
}
