//! Lighting for programs, and for the tables of the page.

use std::prelude::rust_2024::*;
use std::{format, vec};

use crate::burner::{FlameGradients, GLOW_CELSIUS, GoesOut, Lighting, LightingRange, Lights, PortState, Span};
use crate::plant::Sheet;
use crate::plant::Verdict;
use crate::plant::lighting::{LightingBlock, OtherHead, lights_key};
use crate::plant::unlit_gas::UnlitGas;
use crate::quantity::{Duration, GaugePressure};
use crate::report::field::{Value, columns};
use crate::report::settings::SettingRow;
use crate::report::tree::{Member, Node, Row, Section};

/// The lighting block of a sheet.
pub(crate) struct BlockRow<'s> {
    pub sheet: &'s Sheet,
    pub block: &'s LightingBlock,
}

impl BlockRow<'_> {
    /// Everything for programs.
    pub(crate) fn node(&self) -> Node {
        let block = self.block;
        Node::block(
            &LIGHTING_BLOCK,
            vec![
                Node::fields([known(self), turned_down(self)]),
                Node::block(&LEFT_RANGE, vec![Node::fields([range(&block.range)])]),
                Node::block(&TURNED_RANGE, vec![Node::fields([range(&block.turned)])]),
                Node::rows(&PICTURE, block.drawn.iter().map(|drawn| Row::of([pictured(drawn)])).collect()),
                Node::rows(&HEADS_TRIED, block.heads.iter().map(|head| Row::of([head_tried(head)])).collect()),
            ],
        )
    }
}

/// What the table of lighting prints.
pub(crate) const LIT: [&str; 3] = ["air_ratio_cold", "lights", "glow_needed_k"];
/// What the table of unlit gas prints.
pub(crate) const UNLIT: [&str; 3] =
    ["unlit_explosive_soonest_s", "unlit_explosive_warm_s", "unlit_explosive_without_air_s"];

impl SettingRow<'_> {
    fn unlit(&self) -> Option<&UnlitGas> {
        self.lighting.and_then(|found| found.unlit.as_ref())
    }

    fn ports(&self) -> Option<&PortState> {
        self.lighting.and_then(|found| found.ports.as_ref())
    }

    fn flame(&self) -> Option<&FlameGradients> {
        self.ports().and_then(|ports| ports.flame.as_ref())
    }

    /// Whether it lights a cold chamber.
    fn cold(&self) -> Value {
        let Some(found) = self.lighting else { return Value::default() };
        Value::from(lights_key(&found.lighting, found.verdict)).said(match found.verdict {
            Verdict::Lights => "LIGHTS",
            Verdict::FirstTry => "FIRST TRY",
            Verdict::WillNotLight(GoesOut::TooLean) => "WILL NOT LIGHT: too lean",
            Verdict::WillNotLight(GoesOut::TooRich) => "WILL NOT LIGHT: too rich",
            Verdict::WillNotLight(GoesOut::BlowOff) => "WILL NOT LIGHT: blow-off",
            Verdict::WillNotLight(GoesOut::NoFlow) => "WILL NOT LIGHT: no gas flows",
        })
    }

    /// What it does in a glowing chamber.
    fn glowing(&self) -> Value {
        let Some(lighting) = self.lighting.map(|found| &found.lighting) else { return Value::default() };
        Value::from(lighting.walls.map(|walls| walls.kelvin())).said(match (lighting.walls, lighting.lights) {
            (Some(walls), _) if walls.celsius() > GLOW_CELSIUS + 1.0 => "burns above {}",
            (Some(_), _) => "burns",
            (None, Lights::Cold) => "burns, the glow fades",
            (None, _) => "goes out",
        })
    }

    /// Where the damper stands while it lights.
    fn damper_at_rest(&self) -> Value {
        let opening = Value::from(self.setting.air.as_ref().and_then(|air| air.opening));
        let is_left = self.lighting.is_some_and(|found| found.is_left) && self.sheet.plant.entries.damper.is_some();
        if is_left && opening.si().is_some() { opening.said("{} (left)") } else { opening }
    }

    /// How long air purges the chamber.
    fn purge(&self) -> Value {
        let changes = self.unlit().and_then(|unlit| unlit.cold.purge);
        let time = Value::from(self.sheet.purge.time.seconds());
        if changes.is_none() { time.said("open the damper") } else { time.said(whole_seconds(self.sheet)) }
    }
}

fn whole_seconds(sheet: &Sheet) -> String {
    format!("{:.0} s", sheet.purge.time.seconds())
}

columns! {
    /// The damper while a setting lights.
    pub(crate) AT_REST, at_rest(row: &SettingRow<'_>);
    damper, "damper", Share, Words(20) => row.damper_at_rest();
}

columns! {
    /// How long air purges the chamber.
    pub(crate) PURGE, purge(row: &SettingRow<'_>);
    purge, "purge for", Time, Words(60) => row.purge();
}

const fn goes_out(verdict: Verdict) -> Option<GoesOut> {
    match verdict {
        Verdict::WillNotLight(why) => Some(why),
        _ => None,
    }
}

const fn goes_out_key(why: GoesOut) -> &'static str {
    match why {
        GoesOut::TooLean => "too_lean",
        GoesOut::TooRich => "too_rich",
        GoesOut::BlowOff => "blow_off",
        GoesOut::NoFlow => "no_flow",
    }
}

fn low(span: Option<Span>) -> Option<f64> {
    span.filter(|span| span.low_ends).map(|span| span.low.pascals())
}

fn high(span: Option<Span>) -> Option<f64> {
    span.filter(|span| span.high_ends).map(|span| span.high.pascals())
}

fn burning_flame(head: &OtherHead) -> Option<FlameGradients> {
    head.ports.flame.filter(|flame| flame.flashback > 0.0)
}

fn seconds(time: Option<Duration>) -> Option<f64> {
    time.map(Duration::seconds)
}

columns! {
    /// Whether it lights, and what keeps it.
    pub(crate) LIGHTING, lighting(row: &SettingRow<'_>);
    /// What the setting does with its damper where the sheet sets it: `cold` (lights in a cold chamber: seen, or at
    /// least as rich and as slow in the ports as what was seen), `first_try` (within the limits of burning over all of
    /// its uncertainty, but nobody has seen this head light so), `glowing` (burns only in a glowing chamber) or `never`;
    /// null without blower and head.
    lights, "a cold chamber", Word, Page(40) => row.cold();
    /// Why it does not light cold: `too_lean`, `too_rich`, `blow_off` (within the limits of burning, but the flames let
    /// go of the ports) or `no_flow`; null where it lights, or without blower and head.
    goes_out_cold, "goes out cold", Word, Programs => row.lighting.and_then(|found| goes_out(found.verdict)).map(goes_out_key);
    /// Air ratio while head and chamber are as cold as the air; null without blower and head, or when no gas flows.
    air_ratio_cold, "air ratio cold", Ratio, Page(30) => row.lighting.and_then(|found| found.lighting.air_ratio);
    /// Wall gradient of the cold ports over what a plain port's flame withstands in fresh air; above `head_constant` it
    /// blows off; null where nothing burns. Indicative.
    pull, "pull", Number, Programs => row.lighting.and_then(|found| found.lighting.pull);
    /// How hot walls must be to light it, at least 1033.15 (760 degC); null where the fire keeps no walls so hot.
    /// Indicative.
    glow_needed_k, "a glowing chamber", Temperature, Page(50) => row.glowing();
    /// Share of gas in what leaves the ports, by volume; null without `lighting_volume_m3`.
    unlit_gas_share, "unlit gas share", Number, Programs => row.unlit().map(|unlit| unlit.cold.gas_share);
    /// Until unlit gas may make the air of a cold chamber explosive, air on, by the wider of the published limits; null
    /// without `lighting_volume_m3`, or when the mixture is too lean for it.
    unlit_explosive_s, "explosive", Time, Programs => seconds(row.unlit().and_then(|unlit| unlit.cold.explosive_after));
    /// The same at the unsafe end, with as much more gas as the range of `air_ratio` allows; null without
    /// `lighting_volume_m3`, or when the mixture is too lean even so: only then is it too lean to be dangerous.
    unlit_explosive_soonest_s, "explosive after", Time, Page(40) => Value::from(seconds(row.unlit().and_then(|unlit| unlit.soonest.explosive_after))).or_said("too lean");
    /// The same after a flame-out in a chamber of 400 degC, too cool to ignite gas as it comes; null as the one before.
    unlit_explosive_warm_s, "in a chamber of 400 °C", Time, Page(45) => Value::from(seconds(row.unlit().and_then(|unlit| unlit.warm.explosive_after))).or_said("too lean");
    /// `unlit_explosive_soonest_s` with the blower stopped, so that the jets blow into no pressure; null without
    /// `lighting_volume_m3`, or when no gas flows.
    unlit_explosive_without_air_s, "blower stopped", Time, Page(50) => Value::from(seconds(row.unlit().and_then(|unlit| unlit.soonest.explosive_without_air))).or_said("no gas");
    /// Changes of air that thin a chamber full of gas to a quarter of the lower of its published lower limits, at least
    /// 4; null without `lighting_volume_m3`.
    air_changes, "air changes", Number, Programs => row.unlit().map(|unlit| unlit.cold.changes);
    /// How long that takes with the gas off and the damper where it stands; null without `lighting_volume_m3`.
    air_changes_s, "air changes", Time, Programs => seconds(row.unlit().and_then(|unlit| unlit.cold.purge));
    /// Reynolds number of a port, at work; null without blower and head, or when the gas would blow back.
    port_reynolds_number, "port reynolds number", Number, Programs => row.ports().map(|ports| ports.reynolds_number);
    /// Fire of one port, or of a whole slot; null without blower and head, or when the gas would blow back.
    port_heat_net_w, "port heat net", HeatNet, Programs => row.ports().map(|ports| ports.heat.watts());
    /// Wall gradient of the ports, at work; null without blower and head, or when the gas would blow back.
    port_gradient_per_s, "port gradient", Gradient, Programs => row.ports().map(|ports| ports.gradient);
    /// `head_pressure_pa` of the same flow while the head is as cold as the air; null without blower and head, or when
    /// the gas would blow back.
    head_pressure_cold_pa, "head pressure cold", LowPressure, Programs => row.ports().map(|ports| ports.pressure_cold.pascals());
    /// Gradient below which the flame flashes back into the ports, give or take a factor of three; null without blower and
    /// head, or at an `air_ratio` or for a gas no burning velocity is known for. Indicative.
    flashback_gradient_per_s, "flashback gradient", Gradient, Programs => row.flame().map(|flame| flame.flashback);
    /// Gradient above which a plain port's flame blows off amid burnt gases; null as the one before. Indicative.
    blow_off_gradient_per_s, "blow off gradient", Gradient, Programs => row.flame().map(|flame| flame.blow_off);
    /// The same amid fresh air; null as the one before. Indicative.
    blow_off_in_air_gradient_per_s, "blow off in air gradient", Gradient, Programs => row.flame().map(|flame| flame.blow_off_in_air);
    /// Width of a slot that stops the flame while the head is cold; null where nothing burns. Indicative.
    quenching_distance_m, "quenching distance", Length, Programs => row.flame().filter(|flame| flame.flashback > 0.0).map(|flame| flame.quenching_distance.meters());
}

/// Sheet: lighting, for programs.
pub(crate) const LIGHTING_BLOCK: Section = Section {
    key: "lighting",
    name: "sheet: lighting",
    words: "What lights cold and what burns only in a glowing chamber; null without blower and head, or for a gas \
        without limits of burning",
    about: "All but the limits of burning is indicative.",
    is_many: false,
    members: &[
        Member::Columns(KNOWN),
        Member::Section(&LEFT_RANGE),
        Member::Section(&TURNED_RANGE),
        Member::Columns(TURNED_DOWN),
        Member::Section(&PICTURE),
        Member::Section(&HEADS_TRIED),
    ],
};

/// Sheet: lighting range, for programs.
pub(crate) const LEFT_RANGE: Section = Section {
    key: "damper_left_range",
    name: "sheet: lighting range",
    words: "Gauge settings with the damper left alone",
    about: "The lowest stretch of gauge settings that does so.",
    is_many: false,
    members: &[Member::Columns(RANGE)],
};

/// Sheet: lighting range, for programs.
pub(crate) const TURNED_RANGE: Section = Section {
    key: "air_turned_down_range",
    name: "sheet: lighting range",
    words: "The same with the air turned down with the gas, at the file's air ratio, up to the gauge at which the \
        blower still feeds a head as hot as at work; it holds nothing without a damper",
    about: "The lowest stretch of gauge settings that does so.",
    is_many: false,
    members: &[Member::Columns(RANGE)],
};

/// Sheet: picture, for programs.
pub(crate) const PICTURE: Section = Section {
    key: "picture",
    name: "sheet: picture",
    words: "Settings with the damper left alone, the gauge rising by a constant factor, an array",
    about: "",
    is_many: true,
    members: &[Member::Columns(PICTURED)],
};

/// Sheet: heads_tried, for programs.
pub(crate) const HEADS_TRIED: Section = Section {
    key: "heads_tried",
    name: "sheet: heads_tried",
    words: "The head with other holes at the setting with the most gas, the damper left alone, as built first, an \
        array",
    about: "",
    is_many: true,
    members: &[Member::Columns(HEAD_TRIED)],
};

columns! {
    /// What is known of lighting.
    pub(crate) KNOWN, known(row: &BlockRow<'_>);
    /// Opening the damper is left at, that of the setting with the most gas; null without a damper.
    damper_left, "damper left", Number, Programs => row.sheet.plant.entries.damper.map(|_| row.block.left);
    /// How many times the gradient of a plain port this head's flames bear, by the lighting that was seen; null without
    /// one.
    head_constant, "head constant", Number, Programs => row.block.known.head_constant;
    /// Volume of the chamber; null when neither panels nor `[lighting]` tell it.
    lighting_volume_m3, "lighting volume", Volume, Programs => row.block.known.chamber.volume.map(|volume| volume.cubic_meters());
    /// What walls and openings lose while they just glow, at 760 degC; null when neither layers nor `[lighting]` tell
    /// it, and then taken as 0.
    glow_loss_w, "glow loss", Heat, Programs => row.block.known.chamber.loss.map(|loss| loss.watts());
}

columns! {
    /// How far the fire can be turned down.
    pub(crate) TURNED_DOWN, turned_down(row: &BlockRow<'_>);
    /// With the air turned down with the gas, the gauge below which flashback is possible; null when it never may,
    /// when nothing is known of it (`flashback_known`), and without a damper.
    flashback_below_pa, "flashes back below", LowPressure, Programs => row.block.flashback_below.map(|gauge| gauge.pascals());
    /// Whether anything is known of running back: true, or false for a gas of which more than 15 % of what burns is
    /// hydrogen, carbon monoxide, ethylene or propylene. Such gas flashes back far more easily.
    flashback_known, "flashes back known", Word, Programs => row.block.flashback_known;
    /// The lowest fire with the air turned down with the gas: it keeps the glow, does not flash back, and damper and
    /// gauge can still be set to it; null when there is none, when `flashback_known` is false, and without a damper.
    lowest_heat_net_w, "lowest heat net", HeatNet, Programs => row.block.fires.map(|fires| fires[0].2.watts());
    /// The highest the blower feeds at that air ratio; null as the one before.
    highest_heat_net_w, "highest heat net", HeatNet, Programs => row.block.fires.map(|fires| fires[1].2.watts());
}

columns! {
    /// Stretches of gauge pressure.
    pub(crate) RANGE, range(range: &LightingRange);
    /// Lowest gauge whose mixture is within the limits of burning; null when there is none, or when even the lowest
    /// looked at (200 Pa) is.
    within_limits_low_pa, "within limits low", LowPressure, Programs => low(range.within_limits);
    /// Highest; null when there is none, or when all up to the highest the gas allows are.
    within_limits_high_pa, "within limits high", LowPressure, Programs => high(range.within_limits);
    /// Lowest gauge that lights a cold chamber; null without `head_constant`, or as above.
    cold_low_pa, "cold low", LowPressure, Programs => low(range.cold);
    /// Highest; null as above.
    cold_high_pa, "cold high", LowPressure, Programs => high(range.cold);
    /// Lowest gauge that keeps a glowing chamber glowing; null as above.
    glowing_low_pa, "glowing low", LowPressure, Programs => low(range.glowing);
    /// Highest; null as above.
    glowing_high_pa, "glowing high", LowPressure, Programs => high(range.glowing);
}

columns! {
    /// A gauge pressure of the picture.
    pub(crate) PICTURED, pictured(row: &(GaugePressure, Lighting, Verdict));
    gauge_pressure_pa, "gauge pressure", Gauge, Programs => row.0.pascals();
    air_ratio_cold, "air ratio cold", Number, Programs => row.1.air_ratio;
    lights, "lights", Word, Programs => lights_key(&row.1, row.2);
    goes_out_cold, "goes out cold", Word, Programs => row.1.goes_out.map(goes_out_key);
    glow_needed_k, "glow needed", Temperature, Programs => row.1.walls.map(|walls| walls.kelvin());
}

columns! {
    /// The head as built, or with other holes.
    pub(crate) HEAD_TRIED, head_tried(head: &OtherHead);
    /// What is other about the head.
    holes, "", Word, Page(0) => head.what;
    air_ratio, "air ratio", Ratio, Page(20) => head.air_ratio;
    head_pressure_pa, "", LowPressure, Page(10) => head.ports.pressure.pascals();
    port_speed_m_per_s, "", Speed, Page(30) => head.ports.speed.meters_per_second();
    reynolds, "Reynolds", Count, Words(40) => head.ports.reynolds_number;
    port_gradient_per_s, "gradient", Gradient, Page(50) => head.ports.gradient;
    flashback, "flashes back at", Gradient, Words(60) => burning_flame(head).map(|flame| flame.flashback);
    stops, "stops at", Length, Words(70) => burning_flame(head).map(|flame| flame.quenching_distance.meters());
}
