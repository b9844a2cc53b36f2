//! The burner as a whole: its name, its site, its gas, its jet and its settings.

use super::checks;
use super::choices::SameGauge;
use super::macros::{inputs, names, option, reach, stated};
use super::row::Example::{Offered, Used};
use super::row::Otherwise::{Needed, Nothing, Of};
use super::row::{Otherwise, Presence, Rule};
use crate::limits::Input;
use crate::measure::DialClass;
use crate::plant::entries::{EdgeWord, MOST_SETTINGS, NAME_CHARACTERS, NOTE_CHARACTERS, Name, Note, Use};
use crate::quantity::{
    AbsolutePressure, Angle, Duration, GaugePressure, HeatRate, Length, Number, PressureDifference, PricePerMass,
    Share, Temperature, TemperatureDifference,
};

/// A value that common practice takes, without a source.
pub(super) const fn usual(value: &'static str) -> Otherwise {
    Otherwise::This { value, source: "common practice, no source" }
}

/// A value that means that nothing is there, or that there is one of it.
pub(super) const fn plain(value: &'static str) -> Otherwise {
    Otherwise::This { value, source: "" }
}

inputs! {
    /// The burner.
    Title: (always title), "", Presence::Always;
    lists {}
    rules []
    {
        /// Name of the burner.
        name: Name[NAME_CHARACTERS], Needed, Used(&["Night-school bell crucible (invented)"]);
        /// What the next person must know.
        note: Note[NOTE_CHARACTERS], Nothing,
            Used(&["All numbers are invented. Write here what the next person must know."]);
    }
}

inputs! {
    /// The site and its weather. The pressure of the air comes from the altitude, from a barometer on the spot, or
    /// from a forecast together with the altitude.
    Site: (one site), "site", Presence::Needed;
    lists {}
    rules [Rule::OneOf(&[&["altitude"], &["sea_level_pressure", "altitude"], &["station_pressure"]])]
    {
        /// Height above sea level.
        altitude: Length[Input::Altitude], Nothing, Used(&["1600 m"]);
        /// What a barometer on the site reads.
        station_pressure: AbsolutePressure[Input::StationPressure], Nothing, Offered("835 hPa");
        /// A forecast's pressure, which is reduced to sea level and so wants the altitude beside it.
        sea_level_pressure: AbsolutePressure[Input::SeaLevelPressure], Nothing, Offered("1015 hPa");
        /// Temperature of the air.
        air_temperature: Temperature[Input::AirTemperature], Needed, Used(&["20 C"]);
        /// Relative humidity of the air.
        humidity: Share[Input::Humidity], plain("0 %"), Used(&["40 %"]);
    }
}

inputs! {
    /// The gas. With a section [cylinder] and without a temperature, throttling decides how cold the gas comes.
    GasSupplied: (one gas), "gas", Presence::Needed;
    lists {}
    rules []
    {
        /// A named gas, or mole fractions that add to one, such as "C3H8=0.95,C2H6=0.05".
        kind: heapless::String<200>[200] as "gas", Needed, Used(&["propane"]);
        /// Temperature of the gas before the jet. A cylinder under draw is colder than the room.
        temperature: Temperature[Input::GasTemperature] as "gas-temperature", Of("site.air_temperature"),
            Used(&["15 C"]);
        /// What the gas costs by weight.
        price: PricePerMass[Input::Price], Nothing, Used(&["2.40 per kg"]);
        /// The money it is paid in.
        currency: heapless::String<32>[8], plain("$"), Used(&["$"]);
    }
}

inputs! {
    /// The jet. How long its straight hole is matters as much as its edge.
    JetHole: (one jet), "jet", Presence::Needed;
    lists {}
    rules [
        Rule::OneOf(&[&["bore"], &["drill"]]),
        Rule::ByWord("edge", &[
            ("sharp", &[]),
            ("square", &[]),
            ("chamfered", &["chamfer_depth", "chamfer_angle"]),
            ("rounded", &["edge_radius"]),
        ]),
        Rule::Needs("measured_gauge", "measured_coefficient"),
        Rule::NotBoth(&["measured_coefficient"], &["measured"]),
        Rule::Check(checks::approach),
    ]
    {
        /// The drill that made the hole, such as "number 50", "letter A" or "1/16 in".
        drill: Name[NAME_CHARACTERS], Nothing, Used(&["number 50"]);
        /// Diameter of the hole as measured.
        bore: Length[Input::Bore], Nothing, Offered("1.78 mm");
        /// Length of the straight hole.
        bore_length: Length[Input::BoreLength], Otherwise::Rule("12 mm, and 0 mm for a sharp edge"), Used(&["12 mm"]);
        /// Mouth of the hole: "sharp" (a thin plate), "square" (drilled and left so), "chamfered" or "rounded".
        edge: EdgeWord, Needed, Used(&["square"]);
        /// Depth of a chamfered mouth.
        chamfer_depth: Length[Input::ChamferDepth], Nothing, Offered("0.5 mm");
        /// Full cone angle of a chamfered mouth.
        chamfer_angle: Angle[Input::ChamferAngle], Nothing, Offered("90 deg");
        /// Radius of a rounded mouth.
        edge_radius: Length[Input::EdgeRadius], Nothing, Offered("0.5 mm");
        /// Roughness of the hole's wall.
        roughness: Length[Input::Roughness], usual("0.005 mm"), Used(&["5 um"]);
        /// How many equal jets share the gas, those of all heads together.
        count: u32[Input::JetCount] as "jets", Otherwise::Rule("one to a head"), Used(&["1"]);
        /// Inside diameter of the tube before the jet, if it is narrow beside the jet.
        approach_diameter: Length[Input::DuctDiameter], Nothing, Offered("8 mm");
        /// A discharge coefficient of your own instead of the model's.
        measured_coefficient: Number[Input::DischargeCoefficient], Nothing, Offered("0.80");
        /// The gauge pressure that coefficient was measured at.
        measured_gauge: GaugePressure[Input::GaugePressure], Nothing, Offered("5 psi");
        /// The file that `jetwright weigh` or `jetwright meter` wrote of this jet.
        measured: Note[NOTE_CHARACTERS], Nothing, Offered("my-jet.toml");
    }
}

inputs! {
    /// The fire.
    Fire: (always fire), "fire", Presence::Always;
    lists {}
    rules []
    {
        /// Air ratio aimed at: 1 = just enough air, more is lean, less is rich.
        air_ratio: Number[Input::AirRatio], usual("1.05"), Used(&["1.05"]);
    }
}

inputs! {
    /// What was seen of the burner's lighting; take the marks away once you have seen it light.
    Lighting: (one lighting), "lighting", Presence::Optional;
    lists {}
    rules [
        Rule::NeedsSection("", "blower"),
        Rule::NeedsSection("", "head"),
        Rule::NeedsSection("damper", "damper"),
        Rule::Needs("damper", "lights_at"),
        Rule::NotBeside("chamber_volume", "layer"),
        Rule::NotBeside("glow_loss", "layer"),
    ]
    {
        /// A gauge pressure at which the COLD burner lit and kept burning, any that did: never look for the lowest. Until
        /// it is given, only the limits of burning are known.
        lights_at: GaugePressure[Input::GaugePressure], Nothing, Offered("5 psi");
        /// How far the damper stood open then.
        damper: Share[Input::DamperOpening], Otherwise::Rule("that of the largest setting"), Offered("52 %");
        /// Volume of the chamber, where no layers and panels tell it.
        chamber_volume: crate::quantity::Volume[Input::ChamberVolume], Nothing, Offered("20 L");
        /// What the chamber loses when its walls just glow, where no layers and panels tell it.
        glow_loss: crate::quantity::Power[Input::GlowLoss], Nothing, Offered("2.5 kW");
    }
}

inputs! {
    /// A setting, in the order they are used. Each has a gauge pressure or a heat, and a damper opening or an air ratio.
    Setting: (list setting), "setting",
        Presence::List { least: 1, most: MOST_SETTINGS, is_needed: true };
    lists {}
    rules [
        Rule::OneOf(&[&["gauge"], &["heat"]]),
        Rule::NotBoth(&["air_ratio"], &["damper"]),
        Rule::NeedsSection("damper", "damper"),
        Rule::Check(checks::own_name),
        Rule::Check(checks::own_use),
    ]
    {
        /// Its name, which no other setting has.
        name: Name[NAME_CHARACTERS], Needed, Used(&["light", "melt", "hold"]);
        /// Gauge pressure before the jet.
        gauge: GaugePressure[Input::GaugePressure], Nothing, Used(&["5.5 psi", "5 psi", ""]);
        /// Heat wanted, gross or net.
        heat: HeatRate[Input::HeatRate], Nothing, Used(&["", "", "16 kW net"]);
        /// How far the damper stands open.
        damper: Share[Input::DamperOpening], Nothing, Used(&["", "60 %", ""]);
        /// Air ratio wanted: 1 = just enough air, more is lean, less is rich.
        air_ratio: Number[Input::AirRatio], Of("fire.air_ratio"), Used(&["", "", "0.95"]);
        /// Temperature of the chamber at this setting.
        chamber_temperature: Temperature[Input::ChamberTemperature], Of("chamber.temperature"),
            Used(&["20 C", "", ""]);
        /// How long it is used.
        minutes: Duration[Input::Duration], Nothing, Used(&["5 min", "60 min", "20 min"]);
        /// What it is for.
        purpose: Note[NOTE_CHARACTERS], Nothing,
            Used(&["light and warm the crucible", "melt the bronze", "hold while the molds are poured"]);
        /// Which of the three blocks of the card it fills, at most one setting each: "light", "work" or "keep".
        r#use: Use, Otherwise::Rule("by the run plan, else by the settings' times"), Used(&["light", "work", "keep"]);
    }
}

inputs! {
    /// How well each thing is known, 95 times in 100: expanded uncertainties. Every line may be left out, and usual values count.
    Uncertainty: (always uncertainty), "uncertainty", Presence::Always;
    lists {}
    rules [
        Rule::NotBoth(&["gauge_span", "gauge_class"], &["gauge_error"]),
        Rule::Needs("gauge_class", "gauge_span"),
    ]
    {
        /// Of the bore.
        bore: Length[Input::LengthUncertainty], Otherwise::Rule("by how the size is known"), Offered("0.08 mm");
        /// How far the edge may be rounded or burred.
        edge_rounding: Length[Input::LengthUncertainty], Otherwise::Rule("a hundredth of the bore"), Offered("0.02 mm");
        /// Of the coefficient by the model.
        coefficient: Share[Input::UncertaintyShare], Otherwise::Rule("the model's own"), Offered("5 %");
        /// Full scale of the gauge.
        gauge_span: GaugePressure[Input::GaugeSpan], Otherwise::Rule("that of a gauge for the largest setting"),
            Used(&["15 psi"]);
        /// Class of the gauge, as its dial says.
        gauge_class: DialClass, Otherwise::Rule("3-2-3"), Used(&["3-2-3"]);
        /// Error of the gauge, where it is known.
        gauge_error: GaugePressure[Input::PressureUncertainty], Nothing, Offered("0.2 psi");
        /// Whether the gauge is the "same" as when the jet was measured, or an "other" one.
        gauge_at_weighing: SameGauge, plain("same"), Offered("same");
        /// Of the gas before the jet.
        gas_temperature: TemperatureDifference[Input::TemperatureUncertainty], Otherwise::Rule("8 K"), Offered("8 K");
        /// Of the flow, for what is not known of the composition.
        composition: Share[Input::UncertaintyShare],
            Otherwise::Rule("1 %, and 1.5 % where the gas is not sold by a grade"), Offered("1 %");
        /// Of the pressure of the air.
        air_pressure: PressureDifference[Input::PressureUncertainty],
            Otherwise::Rule("15 hPa by an altitude, 4 hPa by a forecast, 2 hPa by a barometer"), Offered("15 hPa");
        /// Of the temperature of the air.
        air_temperature: TemperatureDifference[Input::TemperatureUncertainty], Otherwise::Rule("3 K"), Offered("3 K");
        /// Of the damper's mark, as a share of its way.
        damper: Share[Input::UncertaintyShare], Otherwise::Rule("3 %"), Offered("3 %");
        /// Of the blower's pressure.
        blower: Share[Input::UncertaintyShare], Otherwise::Rule("10 %, 25 % by its two ends, and 55 % or 75 % by a nameplate"), Offered("10 %");
        /// Of the head's open area.
        head: Share[Input::UncertaintyShare], Otherwise::Rule("5 %"), Offered("5 %");
        /// Of the mixture in the ports.
        mixture_temperature: TemperatureDifference[Input::TemperatureUncertainty], Otherwise::Rule("10 K"),
            Offered("10 K");
        /// Of what each layer of the wall conducts.
        walls: Share[Input::UncertaintyShare], Otherwise::Rule("the spread of makers' sheets"), Offered("20 %");
    }
}
