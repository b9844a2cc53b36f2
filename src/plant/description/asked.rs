//! What single questions say besides the installation: options of the commands, and the file of a measured jet.

use super::burner::{plain, usual};
use super::macros::{inputs, names, option, reach, stated};
use super::row::Example::Offered;
use super::row::Otherwise::{Needed, Nothing, Rule as By};
use super::row::{Presence, Rule, Section};
use crate::limits::Input;
use crate::orifice::DrillList;
use crate::plant::entries::{NAME_CHARACTERS, Name};
use crate::quantity::{
    AbsolutePressure, Duration, GaugePressure, HeatRate, Length, Mass, MassFlow, Number, PressureDifference, Share,
    Temperature, Volume, Written,
};

/// What single questions say.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Asked {
    /// Of a jet.
    pub jet: JetAsked,
    /// Of a flame.
    pub flame: FlameAsked,
    /// Of a cylinder.
    pub draw: DrawAsked,
    /// Of a pipe.
    pub pipe: PipeAsked,
    /// Of work.
    pub heating: HeatingAsked,
    /// Of a controller's table.
    pub table: TableAsked,
    /// Of a weighing or a metering.
    pub run: RunAsked,
    /// Of a weighing.
    pub weighing: WeighingAsked,
    /// Of a metering.
    pub metering: MeteringAsked,
    /// The file of a measured jet.
    pub measured: MeasuredJet,
}

/// Their sections.
pub(super) const QUESTIONS: &[Section] = &[
    JetAsked::SECTION,
    FlameAsked::SECTION,
    DrawAsked::SECTION,
    PipeAsked::SECTION,
    HeatingAsked::SECTION,
    TableAsked::SECTION,
    RunAsked::SECTION,
    WeighingAsked::SECTION,
    MeteringAsked::SECTION,
    MeasuredJet::SECTION,
];

inputs! {
    /// What `flow`, `jet` and `air` ask.
    JetAsked: (asked jet), "flow, jet, air", Presence::Always;
    lists {}
    rules []
    {
        /// Gauge pressure before the jet, such as "5 psi".
        gauge: Written<GaugePressure>[Input::GaugePressure], Nothing, Offered("5 psi");
        /// Gauge pressure the jet blows into.
        back_pressure: GaugePressure[Input::BackPressure], plain("0 Pa"), Offered("300 Pa");
        /// Heat of the fire, gross or net, such as "26 kW net".
        heat: Written<HeatRate>[Input::HeatRate], Nothing, Offered("26 kW net");
        /// The list the nearest sizes are taken from: "number" (80 to 1), "letter" (A to Z), "fractional" (sixty-fourths
        /// of an inch), "metric", or "tips" (contact tips of welding guns by their marked size; they wear).
        drills: DrillList, plain("number"), Offered("metric");
    }
}

inputs! {
    /// What `flame` asks.
    FlameAsked: (asked flame), "flame", Presence::Always;
    lists {}
    rules [Rule::NotBoth(&["air_ratio"], &["oxygen"])]
    {
        /// Air ratio: 1 = just enough air, more is lean, less is rich.
        air_ratio: Number[Input::FlameAirRatio], By("1, or what the oxygen tells"), Offered("0.9");
        /// Oxygen an analyzer reads in the dry flue gas, such as "2.5 %", which tells the air ratio.
        oxygen: Share[Input::OxygenReading], Nothing, Offered("2.5 %");
        /// Temperature of the mixture as it comes to the flame.
        mixture_temperature: Temperature[Input::MixtureTemperature], By("that of the air"), Offered("20 C");
        /// Temperature at which the products leave the chamber.
        chamber_temperature: Temperature[Input::ProductTemperature], usual("1200 C"), Offered("1250 C");
    }
}

inputs! {
    /// What `cylinder` asks: a fire or a draw, and for how long.
    DrawAsked: (asked draw), "cylinder", Presence::Always;
    lists {}
    rules [Rule::OneOf(&[&["heat"], &["draw"]])]
    {
        /// The fire it feeds, gross or net, such as "22 kW net" ...
        heat: Written<HeatRate>[Input::HeatRate], Nothing, Offered("22 kW net");
        /// ... or the gas drawn, such as "1.8 kg/h", one of the two.
        draw: Written<MassFlow>[Input::GasDraw], Nothing, Offered("1.8 kg/h");
        /// How long the gas is drawn.
        minutes: Duration[Input::Duration], plain("60 min"), Offered("90 min");
    }
}

inputs! {
    /// What `line` asks of a low-pressure pipe.
    PipeAsked: (asked pipe), "line", Presence::Always;
    lists {}
    rules []
    {
        /// Pressure it may lose.
        drop: Written<PressureDifference>[Input::PipeDrop], Needed, Offered("120 Pa");
        /// The fire it must feed, gross or net.
        heat: Written<HeatRate>[Input::HeatRate], Nothing, Offered("30 kW net");
    }
}

inputs! {
    /// What `work` asks.
    HeatingAsked: (asked heating), "work", Presence::Always;
    lists {}
    rules [Rule::NotBoth(&["plate"], &["bar"])]
    {
        /// Temperature it goes in at.
        from: Temperature[Input::WorkTemperature], plain("20 C"), Offered("20 C");
        /// Temperature of the chamber; without it there is no time.
        chamber: Temperature[Input::ChamberTemperature], Nothing, Offered("1250 C");
        /// Convection of the fire's gases in W/(m2 K).
        film: Number[Input::FilmCoefficient], usual("30"), Offered("30");
        /// Thickness of a plate heated from both sides.
        plate: Length[Input::WorkSize], Nothing, Offered("10 mm");
        /// Diameter of a round bar.
        bar: Length[Input::WorkSize], Nothing, Offered("20 mm");
        /// Pieces an hour, for the average heat.
        pieces_an_hour: u32[Input::PiecesAnHour], Nothing, Offered("12");
    }
}

inputs! {
    /// What `setpoints` asks.
    TableAsked: (asked table), "setpoints", Presence::Always;
    lists {}
    rules []
    {
        /// Smallest fire, such as "10 kW net".
        from: HeatRate[Input::HeatRate], By("the smallest that the gauge reads and damper and blower give"),
            Offered("10 kW net");
        /// Largest fire.
        to: HeatRate[Input::HeatRate], By("95 % of the largest that damper and blower give"), Offered("26 kW net");
    }
}

inputs! {
    /// What `weigh` and `meter` ask of each run.
    RunAsked: (asked run), "weigh, meter", Presence::Always;
    lists {}
    rules []
    {
        /// The setting the burner stood at: its gauge, and the air its jet blows into.
        setting: Name[NAME_CHARACTERS], Nothing, Offered("melt");
        /// What the gauge read while gas flowed; once for all runs, or once a run.
        gauge: GaugePressure[Input::GaugePressure], By("that of the setting"), Offered("5 psi");
        /// How long it took; once a run.
        time: Duration[Input::WeighingTime], Nothing, Offered("30 min");
        /// How well the time is known.
        clock: Duration[Input::ClockError], usual("2 s"), Offered("2 s");
        /// Temperature of the gas before the jet.
        gas_temperature: Temperature[Input::GasTemperature], By("that of the file"), Offered("15 C");
        /// Gauge pressure the jet blew into.
        back_pressure: GaugePressure[Input::BackPressure], By("that of the setting"), Offered("300 Pa");
    }
}

inputs! {
    /// What `weigh` asks of the cylinder and the scale.
    WeighingAsked: (asked weighing), "weigh", Presence::Always;
    lists {}
    rules []
    {
        /// Gas lost from the cylinder; once a run.
        lost: Mass[Input::MassLost], Nothing, Offered("1.02 kg");
        /// Smallest step the scale shows.
        scale: Mass[Input::ScaleStep], Needed, Offered("10 g");
        /// Gas in the cylinder before the first run.
        held: Mass[Input::CylinderCharge], Nothing, Offered("30 kg");
    }
}

inputs! {
    /// What `meter` asks of the meter.
    MeteringAsked: (asked metering), "meter", Presence::Always;
    lists {}
    rules []
    {
        /// Gas the meter counted; once a run.
        counted: Volume[Input::MeteredVolume], Needed, Offered("0.65 m3");
        /// Gauge pressure inside the meter.
        meter_pressure: GaugePressure[Input::GaugePressure], Needed, Offered("20 mbar");
        /// Temperature inside the meter.
        meter_temperature: Temperature[Input::GasTemperature], Needed, Offered("12 C");
        /// How well the meter counts, such as "1.5 %" (accuracy class 1.5).
        meter_class: Share[Input::UncertaintyShare], usual("1.5 %"), Offered("1.5 %");
        /// Smallest step the meter shows.
        meter_step: Volume[Input::MeteredVolume], usual("1 L"), Offered("1 L");
    }
}

inputs! {
    /// The file of a measured jet, which `weigh` and `meter` write and a burner file names. Uncertainties are at k = 2,
    /// factors are gas passed over what the model says of the bore.
    MeasuredJet: (asked measured), "measured jet", Presence::Always;
    lists {}
    rules [Rule::Together(&["trend", "trend_uncertainty", "trend_uncertainty_by_gauge"])]
    {
        /// Name of the burner.
        name: Name[NAME_CHARACTERS], Needed, Offered("bells");
        /// How it was measured.
        how: Name[NAME_CHARACTERS], Needed, Offered("weighing");
        /// In how many runs.
        runs: u32[Input::RunCount], Needed, Offered("2");
        /// Diameter of the bore as the burner file had it.
        bore: Length[Input::Bore], Needed, Offered("1.78 mm");
        /// Mean gauge pressure at the jet.
        gauge_at_jet: GaugePressure[Input::GaugePressure], Needed, Offered("34 kPa");
        /// Mean gauge pressure it blew into.
        back_pressure: GaugePressure[Input::BackPressure], Needed, Offered("300 Pa");
        /// Mean temperature of the gas.
        gas_temperature: Temperature[Input::GasTemperature], Needed, Offered("288 K");
        /// Pressure of the air.
        ambient_pressure: AbsolutePressure[Input::StationPressure], Needed, Offered("835 hPa");
        /// The factor as measured.
        measured_factor: Number[Input::CoefficientFactor], Needed, Offered("0.97");
        /// How sure that is; an expanded uncertainty.
        measured_uncertainty: Share[Input::UncertaintyShare], Needed, Offered("3 %");
        /// The same without the gauge's part.
        measured_uncertainty_without_gauge: Share[Input::UncertaintyShare], Needed, Offered("2 %");
        /// How the factor changes with the logarithm of the flow, of runs at several gauges.
        trend: Number[Input::Trend], Nothing, Offered("0.02");
        /// How sure that is by itself.
        trend_uncertainty: Number[Input::Trend], Nothing, Offered("0.03");
        /// The gauge's part of it.
        trend_uncertainty_by_gauge: Number[Input::Trend], Nothing, Offered("0.02");
        /// The factor with what the model says averaged in.
        factor: Number[Input::CoefficientFactor], Needed, Offered("0.98");
        /// Weight of the measurement in it.
        weight: Share[Input::Fraction], Needed, Offered("80 %");
        /// How sure it is; an expanded uncertainty.
        uncertainty: Share[Input::UncertaintyShare], Needed, Offered("3 %");
        /// The same without the gauge's part.
        uncertainty_without_gauge: Share[Input::UncertaintyShare], Needed, Offered("2 %");
        /// Discharge coefficient that it means at this gauge.
        discharge_coefficient: Number[Input::CoefficientFactor], Needed, Offered("0.82");
        /// Bore that the model would want for it.
        effective_bore: Length[Input::Bore], Nothing, Offered("1.76 mm");
    }
}
