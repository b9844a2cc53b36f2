//! The table of hazards: one row each.

use crate::limits::Input;

/// How bad a hazard is, by the signal words of ANSI Z535.6 (from memory).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// Will kill or maim if it is not avoided.
    Danger,
    /// Could kill or maim.
    Warning,
    /// Could injure lightly.
    Caution,
    /// Damage or waste, or a number less certain than it looks.
    Notice,
}

impl Severity {
    /// Every severity, the worst first.
    pub const ALL: [Severity; 4] = [Severity::Danger, Severity::Warning, Severity::Caution, Severity::Notice];

    /// The key it has for programs.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Severity::Danger => "danger",
            Severity::Warning => "warning",
            Severity::Caution => "caution",
            Severity::Notice => "notice",
        }
    }

    /// Its number in an image for a chip and in C: the more, the worse, 4 for danger.
    #[must_use]
    pub const fn code(self) -> u8 {
        4 - self as u8
    }
}

/// What a hazard's number and limit measure, both in SI units.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// Neither is there.
    Nothing,
    /// Air supplied over air needed.
    AirRatio,
    /// One quantity over another.
    Ratio,
    /// A part of a whole, 0 to 1.
    Share,
    /// A share by volume so small that it is said in parts per million.
    PartsPerMillion,
    /// A plain number.
    Count,
    /// A temperature, K.
    Temperature,
    /// A time, s.
    Duration,
    /// A mass, kg.
    Mass,
    /// A net heat input, W.
    NetHeat,
    /// A bore, m.
    Bore,
}

macro_rules! hazards {
    ($($(#[$doc:meta])+ $kind:ident = $code:literal, $key:literal, $severity:ident, $rank:literal, $measure:ident, $settles:expr;)+) => {
        /// What can hurt, damage or mislead. Codes stay what they are once given: images of chips hold them.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[repr(u16)]
        #[non_exhaustive]
        pub enum HazardKind { $($(#[$doc])+ $kind = $code,)+ }

        impl HazardKind {
            /// Every hazard.
            pub const ALL: &'static [HazardKind] = &[$(HazardKind::$kind,)+];

            /// The key it has for programs.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(HazardKind::$kind => $key,)+ }
            }

            /// How bad it is.
            #[must_use]
            pub const fn severity(self) -> Severity {
                match self { $(HazardKind::$kind => Severity::$severity,)+ }
            }

            /// Its place among those of one severity, the first to be read first.
            pub(crate) const fn rank(self) -> u8 {
                match self { $(HazardKind::$kind => $rank,)+ }
            }

            /// What its number and limit measure.
            #[must_use]
            pub const fn measure(self) -> Measure {
                match self { $(HazardKind::$kind => Measure::$measure,)+ }
            }

            /// What to measure, so that the hazard is known rather than estimated; none where only a change helps.
            #[must_use]
            pub const fn settled_by(self) -> Option<Input> {
                match self { $(HazardKind::$kind => $settles,)+ }
            }

            /// The hazard of a code of an image or of C.
            #[must_use]
            pub const fn of_code(code: u16) -> Option<HazardKind> {
                match code { $($code => Some(HazardKind::$kind),)+ _ => None }
            }
        }
    };
}

// Kind = code, key, severity, rank within the severity, what number and limit measure, what input settles it.
hazards! {
    /// The mixture would blow back into the blower.
    BlowsBack = 1, "blows_back", Danger, 0, Nothing, None;
    /// Leaner than a cold mixture burns; the number is the air ratio, the limit the leanest that burns cold.
    TooLean = 2, "too_lean", Danger, 0, AirRatio, Some(Input::OxygenReading);
    /// A chamber that does not glow blows the flames off the ports.
    GoesOut = 3, "goes_out", Danger, 0, Nothing, Some(Input::HeadConstant);
    /// Carbon monoxide in the dry products, and the most that NIOSH lets anyone breathe.
    CarbonMonoxide = 4, "carbon_monoxide", Danger, 1, PartsPerMillion, Some(Input::CarbonMonoxideReading);
    /// Time after which unlit gas makes the chamber's air explosive, and the longest trial for ignition.
    UnlitGas = 5, "unlit_gas", Danger, 1, Duration, None;
    /// The gauge is no higher than the pressure it blows into.
    NoGas = 6, "no_gas", Warning, 0, Nothing, None;
    /// Gradient at the ports over the flashback gradient, and where flashback is excluded.
    Flashback = 7, "flashback", Warning, 0, Ratio, None;
    /// Nothing is known of where the flame of this gas flashes back.
    FlashbackUnknown = 8, "flashback_unknown", Warning, 0, Nothing, None;
    /// Gas heavier than air: its relative density.
    HeavyGas = 9, "heavy_gas", Warning, 2, Ratio, None;
    /// The charge boils off zinc.
    ZincFume = 10, "zinc_fume", Warning, 2, Nothing, None;
    /// How long the chamber ignites gas by itself after a stop.
    ReIgnites = 11, "reignites", Warning, 2, Duration, None;
    /// Water of a fresh lining.
    WetLining = 12, "wet_lining", Warning, 2, Mass, None;
    /// Temperature of steel in the wall, and its maximum.
    SteelTooHot = 13, "steel_too_hot", Warning, 3, Temperature, Some(Input::Conductivity);
    /// Supply pressure over the dew-point pressure.
    NearCondensing = 14, "near_condensing", Warning, 4, Ratio, Some(Input::GasTemperature);
    /// What an air ratio of 1 set at sea level becomes here.
    Altitude = 15, "altitude", Warning, 6, AirRatio, Some(Input::StationPressure);
    /// Mass of the lining, and what one person may lift.
    HeavyLining = 16, "heavy_lining", Caution, 4, Mass, None;
    /// Temperature of the shell, and where touching it burns.
    HotShell = 17, "hot_shell", Caution, 4, Temperature, Some(Input::Conductivity);
    /// The blower runs where it may surge.
    LeftOfPeak = 18, "left_of_peak", Caution, 5, Nothing, None;
    /// The blower cannot give the air asked: the air ratio it reaches, and the one asked.
    BlowerTooSmall = 19, "blower_too_small", Notice, 3, AirRatio, None;
    /// The damper, or the lack of one, leaves more air than asked: the air ratio left, and the one asked.
    DamperTooWide = 20, "damper_too_wide", Notice, 3, AirRatio, Some(Input::OxygenReading);
    /// Temperature that the largest setting reaches, and the chamber's.
    FireTooSmall = 21, "fire_too_small", Notice, 3, Temperature, None;
    /// Heat input that the charge needs, and what the blower feeds where that is less.
    WorkOutOfReach = 22, "work_out_of_reach", Notice, 3, NetHeat, None;
    /// Time the charge takes, and the time it may take.
    WorkTooSlow = 23, "work_too_slow", Notice, 3, Duration, None;
    /// Temperature that the largest setting reaches when left on, and the maximum of the hot layer.
    LiningOverheats = 24, "lining_overheats", Notice, 3, Temperature, None;
    /// Time after which the cylinder is too cold for its regulator, and the time of the setting.
    CannotKeepUp = 25, "cylinder_cannot_keep_up", Notice, 3, Duration, None;
    /// Time after which the cylinder gives no more.
    CylinderShort = 26, "cylinder_short", Notice, 3, Duration, None;
    /// Share of the reading that the line takes, and where that matters.
    GaugeReadsHigh = 27, "gauge_reads_high", Notice, 4, Share, None;
    /// The coldest liquid in the cylinder, and where frost begins.
    Frost = 28, "frost", Notice, 4, Temperature, None;
    /// Share of the main gas of a liquid blend, and where it counts as one gas.
    BlendBoilsApart = 29, "blend_boils_apart", Notice, 4, Share, None;
    /// Back pressure over the gauge, and where that matters.
    BackPressure = 30, "back_pressure", Notice, 7, Share, None;
    /// Opening of the damper, and where a small turn changes much.
    DamperNearlyShut = 31, "damper_nearly_shut", Notice, 7, Share, None;
    /// Marked size of a contact tip.
    UnmeasuredTip = 32, "unmeasured_tip", Notice, 8, Bore, Some(Input::Bore);
    /// Reynolds number of the jet, and where viscosity rules.
    SlowJet = 33, "slow_jet", Notice, 9, Count, Some(Input::DischargeCoefficient);
    /// Length of the bore over its diameter, neither thin nor long, and where long begins.
    ShortBore = 34, "short_bore", Notice, 9, Ratio, Some(Input::DischargeCoefficient);
    /// Bore over the tube before it, and where that matters.
    NarrowApproach = 35, "narrow_approach", Notice, 9, Share, Some(Input::DischargeCoefficient);
    /// A chamber between autoignition and 760 degC: its temperature, and the 760 degC from which gas ignites as it comes.
    IgnitesLate = 36, "ignites_late", Danger, 1, Temperature, None;
    /// The gauge over the regulator's lock-up pressure, and 1.
    BeyondRegulator = 37, "beyond_regulator", Warning, 0, Ratio, None;
    /// Opening of a disc whose gap nobody measured, and from where its air is known.
    DiscGapUnknown = 60, "disc_gap_unknown", Warning, 5, Share, Some(Input::DiscGap);
    /// The air is throttled by a valve made to shut a line.
    ThrottlingValve = 61, "throttling_valve", Notice, 7, Nothing, Some(Input::DamperCorrection);
}

#[cfg(test)]
mod tests {
    use super::{HazardKind, Severity};

    #[test]
    fn codes_and_keys_name_one_hazard_each() {
        for (index, kind) in HazardKind::ALL.iter().enumerate() {
            assert_eq!(HazardKind::of_code(*kind as u16), Some(*kind));
            assert!(HazardKind::ALL[..index].iter().all(|other| other.key() != kind.key()), "{kind:?}");
        }
        assert_eq!(HazardKind::of_code(0), None);
        // Once given, a code stays: these stand in images on chips.
        assert_eq!((HazardKind::BlowsBack as u16, HazardKind::CarbonMonoxide as u16), (1, 4));
        assert!(Severity::Danger < Severity::Notice);
    }
}
