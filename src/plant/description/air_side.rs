//! The air side: blower, ducts, damper, head and chamber.

use super::burner::{plain, usual};
use super::checks;
use super::macros::{inputs, names, option, reach, stated};
use super::row::Example::{Offered, Used};
use super::row::Otherwise::{self, Needed, Nothing, Of};
use super::row::{Presence, Rule};
use crate::air::{BlowerKind, DUCT_CAP, DamperKind, POINT_CAP};
use crate::limits::Input;
use crate::quantity::{
    ActualVolumeFlow, Area, Density, Length, Number, Power, PressureDifference, RotationalSpeed, Share, Temperature,
};

inputs! {
    /// The blower: points of its curve from the catalog, or the two ends of it, or as much as its nameplate says.
    BlowerGiven: (one blower), "blower", Presence::Optional;
    lists {
        /// Points of the curve.
        points: BlowerPointGiven, POINT_CAP;
    }
    rules [
        Rule::OneOf(&[
            &["shut_off"],
            &["free_delivery"],
            &["shut_off", "free_delivery"],
            &["points"],
            &["motor_power", "impeller"],
        ]),
        Rule::Needs("now_speed", "speed"),
        Rule::Check(checks::speed_ratio),
        Rule::Check(checks::power_twice),
    ]
    {
        /// Kind of its impeller: "forward curved" (a drum of many narrow blades), "backward curved" (few blades that lean
        /// away from the turn) or "radial" (straight paddles). It counts only where an end of the curve is missing.
        kind: BlowerKind, Otherwise::Rule("any kind, with a larger spread"), Offered("radial");
        /// Power that the motor's nameplate says, where neither end of the curve is known.
        motor_power: Power[Input::ShaftPower], Nothing, Offered("120 W");
        /// Outside diameter of the impeller, where neither end of the curve is known.
        impeller: Length[Input::DuctDiameter], Nothing, Offered("120 mm");
        /// Static pressure with the outlet shut, where no more than the ends of the curve are known.
        shut_off: PressureDifference[Input::ShutOff], Nothing, Offered("1.6 inH2O");
        /// Flow with nothing in the way, where no more than the ends of the curve are known.
        free_delivery: ActualVolumeFlow[Input::FreeDelivery], Nothing, Offered("30 cfm");
        /// Wheel speed the curve was taken at.
        speed: RotationalSpeed[Input::WheelSpeed], Nothing, Used(&["3450 rpm"]);
        /// Wheel speed now, if it is another one.
        now_speed: RotationalSpeed[Input::WheelSpeed], Nothing, Offered("3000 rpm");
        /// Air density the curve was taken at.
        density: Density[Input::AirDensity],
            super::row::Otherwise::This { value: "1.2 kg/m3", source: "what catalogs mean by standard air" },
            Used(&["1.2 kg/m3"]);
        /// Shaft power to air power, where the points give no power.
        efficiency: Share[Input::BlowerEfficiency], Nothing, Used(&["40 %"]);
    }
}

inputs! {
    /// A point of the blower's curve; the flow rises from point to point.
    BlowerPointGiven: (of blower points), ("blower" "points"),
        Presence::List { least: 2, most: POINT_CAP, is_needed: false };
    lists {}
    rules [Rule::Check(checks::blower_point)]
    {
        /// Flow of air.
        flow: ActualVolumeFlow[Input::AirFlow], Needed, Used(&["0 cfm", "10 cfm", "20 cfm", "25 cfm", "30 cfm"]);
        /// Static pressure at that flow.
        pressure: PressureDifference[Input::BlowerPressure], Needed,
            Used(&["1.6 inH2O", "1.5 inH2O", "1.0 inH2O", "0.55 inH2O", "0 inH2O"]);
        /// Power at the shaft, at every point or at none.
        power: Power[Input::ShaftPower], Nothing, Offered("30 W");
    }
}

inputs! {
    /// Duct between blower and burner; as many sections as it has sizes.
    DuctGiven: (list duct), "duct", Presence::List { least: 0, most: DUCT_CAP, is_needed: false };
    lists {}
    rules [Rule::NeedsSection("", "blower")]
    {
        /// Inside diameter.
        diameter: Length[Input::DuctDiameter], Needed, Used(&["2 in"]);
        /// Length.
        length: Length[Input::DuctLength], Needed, Used(&["1.5 m"]);
        /// Roughness of the wall.
        roughness: Length[Input::Roughness],
            super::row::Otherwise::This {
                value: "0.1 mm",
                source: "between steel pipe and spiral duct, common practice, no source",
            },
            Used(&["0.1 mm"]);
        /// Sum of the loss coefficients of bends and fittings.
        fitting_loss: Number[Input::FittingLoss], plain("0"), Used(&["1.2"]);
    }
}

inputs! {
    /// The damper.
    DamperGiven: (one damper), "damper", Presence::Optional;
    lists {}
    rules [Rule::NeedsSection("", "blower"), Rule::Check(checks::gap_of_a_disc)]
    {
        /// "blast gate" (a plate that slides), "butterfly" (a disc that turns), "ball valve" or "gate valve".
        kind: DamperKind, Otherwise::Rule("any kind: the middle of the four, with a spread that spans them"),
            Used(&["blast gate"]);
        /// Inside diameter of the duct it stands in.
        diameter: Length[Input::DuctDiameter], Needed, Used(&["2 in"]);
        /// Gap round a disc that is shut, as a share of the duct's area.
        gap: Share[Input::DiscGap], Otherwise::Rule("2 %, not measured"), Offered("3 %");
        /// Its loss over that of its table, from one setting seen.
        correction: Number[Input::DamperCorrection], plain("1"), Used(&["1"]);
    }
}

inputs! {
    /// The burner head: round ports, or one slot.
    HeadGiven: (one head), "head", Presence::Optional;
    lists {}
    rules [Rule::OneOf(&[&["ports", "port_diameter", "open_fraction"], &["slot_width", "slot_length"]])]
    {
        /// How many round ports a head has.
        ports: u32[Input::PortCount], Nothing, Used(&["60"]);
        /// Diameter of a port.
        port_diameter: Length[Input::PortDiameter], Nothing, Used(&["4.5 mm"]);
        /// How much of the head's face the ports open.
        open_fraction: Share[Input::OpenFraction], Nothing, Used(&["25 %"]);
        /// Gap of a slot.
        slot_width: Length[Input::PortDiameter], Nothing, Offered("3 mm");
        /// Length of a slot along the head.
        slot_length: Length[Input::SlotLength], Nothing, Offered("150 mm");
        /// Length of the holes through the head's wall.
        port_length: Length[Input::PortLength], Needed, Used(&["40 mm"]);
        /// How many equal heads hang on the one blower.
        count: u32[Input::HeadCount] as "heads", plain("1"), Used(&["1"]);
        /// Temperature of the mixture in the ports; a hot head warms it.
        mixture_temperature: Temperature[Input::MixtureTemperature], Of("site.air_temperature"), Used(&["80 C"]);
        /// Inside diameter of the mixing tube between jet and head.
        mixing_tube_diameter: Length[Input::DuctDiameter], Nothing, Used(&["2 in"]);
    }
}

inputs! {
    /// The chamber.
    ChamberGiven: (one chamber), "chamber", Presence::Optional;
    lists {}
    rules []
    {
        /// The opening the burnt gas leaves by.
        exhaust_opening: Area[Input::ExhaustArea], Needed, Used(&["50 cm2"]);
        /// Loss coefficient of that opening.
        exhaust_loss: Number[Input::ExhaustLoss], usual("1.5"), Used(&["1.5"]);
        /// How hot the chamber is when at work.
        temperature: Temperature[Input::ChamberTemperature] as "chamber-temperature", Needed, Used(&["1200 C"]);
    }
}
