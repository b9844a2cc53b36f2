//! The kinds of values: the unit each has for programs.

/// What a value is: its unit for programs, and how a shop reads it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A word, a list of words, or true and false.
    Word,
    /// A number whose unit another column tells.
    OfItsKind,
    /// A plain number.
    Number,
    /// A whole number.
    Count,
    /// An air ratio, or one size over another.
    Ratio,
    /// A share of a whole.
    Share,
    /// A small share, with a decimal.
    FineShare,
    /// A share in hundredths of a percent.
    SmallShare,
    /// Money.
    Money,
    /// Money an hour.
    MoneyRate,
    /// Money for a kilogram.
    Price,
    /// What a gauge of the gas reads.
    Gauge,
    /// A low pressure, of air or of a pipe.
    LowPressure,
    /// Pressure of the air of the site.
    Ambient,
    /// Heat by time that has no basis: walls, openings, work.
    Heat,
    /// A fire, gross.
    HeatGross,
    /// A fire, net.
    HeatNet,
    /// Power at a shaft, or of a hole.
    Power,
    /// Heat.
    Energy,
    /// Gas or air by mass.
    MassFlow,
    /// A flow of air or gas by volume.
    Flow,
    /// A mass.
    Mass,
    /// A temperature.
    Temperature,
    /// A small length.
    Length,
    /// A bore.
    Bore,
    /// A height of land.
    Height,
    /// An area of wall.
    Area,
    /// A volume of chamber or lining.
    Volume,
    /// A time.
    Time,
    /// A time in whole minutes.
    Minutes,
    /// A time in hours, or in minutes where it is short.
    Lasting,
    /// A time on the clock of a run, hours and minutes.
    Clock,
    /// A speed.
    Speed,
    /// The slow speed at which a flame eats into its mixture.
    FlameSpeed,
    /// Something a second.
    Gradient,
    /// A force.
    Force,
    /// A density.
    Density,
    /// Flow over area.
    MassFlux,
    /// Heat of a mass.
    HeatPerMass,
    /// Heat of a volume.
    HeatPerVolume,
    /// Mass over mass.
    PerMass,
    /// Volume over volume.
    PerVolume,
}

impl Kind {
    /// The end of a key and the unit of its number; neither for words.
    #[must_use]
    pub const fn si(self) -> (&'static str, &'static str) {
        match self {
            Kind::Word => ("", ""),
            Kind::OfItsKind => ("", "of its kind"),
            Kind::Number | Kind::Count | Kind::Ratio | Kind::Share | Kind::FineShare | Kind::SmallShare => ("", "1"),
            Kind::Money => ("", "money"),
            Kind::MoneyRate => ("", "money/h"),
            Kind::Price => ("_per_kg", "money/kg"),
            Kind::Gauge | Kind::LowPressure | Kind::Ambient => ("_pa", "Pa"),
            Kind::Heat | Kind::HeatGross | Kind::HeatNet | Kind::Power => ("_w", "W"),
            Kind::Energy => ("_j", "J"),
            Kind::MassFlow => ("_kg_per_s", "kg/s"),
            Kind::Flow => ("_m3_per_s", "m3/s"),
            Kind::Mass => ("_kg", "kg"),
            Kind::Temperature => ("_k", "K"),
            Kind::Length | Kind::Bore | Kind::Height => ("_m", "m"),
            Kind::Area => ("_m2", "m2"),
            Kind::Volume => ("_m3", "m3"),
            Kind::Time | Kind::Minutes | Kind::Lasting | Kind::Clock => ("_s", "s"),
            Kind::Speed | Kind::FlameSpeed => ("_m_per_s", "m/s"),
            Kind::Gradient => ("_per_s", "1/s"),
            Kind::Force => ("_n", "N"),
            Kind::Density => ("_kg_per_m3", "kg/m3"),
            Kind::MassFlux => ("_kg_per_m2_s", "kg/(m2 s)"),
            Kind::HeatPerMass => ("_j_per_kg", "J/kg"),
            Kind::HeatPerVolume => ("_j_per_m3", "J/m3"),
            Kind::PerMass => ("_kg_per_kg", "1"),
            Kind::PerVolume => ("_m3_per_m3", "1"),
        }
    }

    /// Whether a table tells the unit once, in the title.
    #[must_use]
    pub const fn is_unit_in_title(self) -> bool {
        matches!(
            self,
            Kind::Gauge
                | Kind::LowPressure
                | Kind::Heat
                | Kind::HeatGross
                | Kind::HeatNet
                | Kind::MassFlow
                | Kind::Flow
                | Kind::Speed
                | Kind::SmallShare
        )
    }
}
