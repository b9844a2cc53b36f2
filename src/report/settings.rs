//! The settings: gas, air, how sure, what lies before the jet, other drills.

use std::prelude::rust_2024::*;
use std::string::ToString;

use crate::burner::Running;
use crate::combustion::leanest_air_ratio;
use crate::fuel::{GAUGE_READS_HIGH, Line, Regulator};
use crate::plant::carbon_monoxide::poisons;
use crate::plant::entries::AirAim;
use crate::plant::hazards::supply::line_share;
use crate::plant::lighting::SettingLighting;
use crate::plant::{Setting, SettingAir, Sheet};
use crate::plant::{SettingSure, Sure};
use crate::prose::fire::fire_words;
use crate::report::field::{Cells, Mark, Value, columns};
use crate::report::flow::{FLOW, FlowRow, flow, star};
use crate::report::lighting_fields::{LIGHTING, lighting};
use crate::report::tree::{Member, Row, Section};

/// A setting and all that is known of it.
pub(crate) struct SettingRow<'s> {
    pub sheet: &'s Sheet,
    pub setting: &'s Setting,
    pub sure: Option<&'s SettingSure>,
    pub lighting: Option<&'s SettingLighting>,
    leanest: f64,
}

/// The settings of a sheet.
pub(crate) fn settings(sheet: &Sheet) -> Vec<SettingRow<'_>> {
    let leanest = leanest_air_ratio(&sheet.plant.gas, &sheet.plant.site).unwrap_or(0.0);
    let settings = sheet.settings.iter().enumerate();
    settings
        .map(|(index, setting)| SettingRow {
            sheet,
            setting,
            sure: sheet.sure[index].as_ref(),
            lighting: sheet.lighting.as_ref().map(|block| &block.settings[index]),
            leanest,
        })
        .collect()
}

impl SettingRow<'_> {
    fn air(&self) -> Option<&SettingAir> {
        self.setting.air.as_ref()
    }

    fn running(&self) -> Option<Running> {
        self.air().and_then(|air| air.running)
    }

    fn ratio(&self) -> Option<f64> {
        self.air().and_then(SettingAir::air_ratio)
    }

    fn sure_ratio(&self) -> Option<Sure> {
        self.sure.and_then(|sure| sure.air_ratio)
    }

    fn air_ratio(&self) -> Value {
        let mark = self.sure_ratio().map_or(Mark::Equal, |sure| star(sure.is_straight));
        Value::from(self.ratio()).within(self.sure_ratio().map(|sure| sure.expanded)).marked(mark)
    }

    fn relative(&self) -> Option<f64> {
        self.sure.map(|sure| sure.gas.relative())
    }

    /// The damper's opening, or why there is none to set.
    fn damper(&self) -> Value {
        let Some(air) = self.air() else { return Value::default() };
        let opening = Value::from(air.opening);
        match (air.opening, air.shortfall) {
            (_, Some(_)) => opening.said("wide, too little"),
            (Some(_), None) if air.too_much_air && self.setting.gas.kilograms_per_second() > 0.0 => {
                opening.said("less than {}")
            }
            (Some(_), None) => opening,
            (None, None) => opening.said("none"),
        }
    }

    fn fire_is(&self) -> &'static str {
        match self.ratio() {
            _ if self.setting.gas.kilograms_per_second() <= 0.0 => "out: no gas flows",
            Some(ratio) => fire_words(ratio, self.leanest, poisons(ratio, self.setting.carbon_monoxide)),
            None if self.air().is_some() => "never light: gas blows back",
            None => "",
        }
    }

    fn line(&self) -> Option<&Line> {
        self.sheet.plant.before.line.as_ref()
    }

    /// What the line takes of the reading.
    fn lost(&self) -> Value {
        let lost = self.line().map(|_| line_share(self.setting));
        let value = Value::from(lost);
        if lost.is_some_and(|lost| lost > GAUGE_READS_HIGH) { value.said("{}: THE GAUGE READS HIGH") } else { value }
    }

    fn regulator(&self) -> Option<&Regulator> {
        self.sheet.plant.before.regulator.as_ref()
    }

    fn drill(&self, side: usize) -> Option<String> {
        self.setting.other_drillss[side].as_ref().map(|wrong| wrong.drill.to_string())
    }

    fn drill_gauge(&self, side: usize) -> Value {
        let wrong = self.setting.other_drillss[side].as_ref();
        Value::from(wrong.and_then(|wrong| wrong.gauge).map(|gauge| gauge.pascals())).or_said("out of reach")
    }

    pub(crate) fn name(&self) -> Cells {
        name(&self.setting.entry.name)
    }

    pub(crate) fn flow(&self) -> Cells {
        flow(&FlowRow {
            gauge: self.setting.gauge,
            jet: &self.setting.jet,
            heads: self.sheet.plant.heads,
            need: &self.sheet.plant.air_need,
            saturation_ratio: self.setting.saturation_ratio,
            sure: self.sure,
        })
    }

    /// Everything, with what the first table of the page prints.
    pub(crate) fn all(&self) -> Row {
        Row::of([
            self.name(),
            self.flow().only(&["gauge_pressure_pa", "mass_flow_kg_per_s", "heat_gross_w", "heat_net_w"]),
            burning(self),
            sure(self).for_programs(),
            before_jet(self).for_programs(),
            other_drill(self).for_programs(),
            lighting(self).for_programs(),
        ])
    }
}

columns! {
    /// What the row is of.
    pub(crate) NAME, name(name: &str);
    /// Name of what the object describes: a drill or tip, the burner, its jet (the words of the file, or `bore`), or a
    /// setting.
    name, "", Word, Page(0) => name;
}

/// The settings for programs.
pub(crate) const SETTINGS: Section = Section {
    key: "settings",
    name: "sheet: settings",
    words: "The settings in the order of the file, an array",
    about: "Gas, heat and air are those of all heads together. All air keys are null without blower and head.",
    is_many: true,
    members: &[
        Member::Columns(NAME),
        Member::Columns(FLOW),
        Member::Columns(BURNING),
        Member::Columns(SURE),
        Member::Columns(BEFORE_JET),
        Member::Columns(OTHER_DRILL),
        Member::Columns(LIGHTING),
    ],
};

columns! {
    /// Its air, its time and its money.
    pub(crate) BURNING, burning(row: &SettingRow<'_>);
    air_ratio, "air ratio", Ratio[within], Page(30) => row.air_ratio();
    /// The air ratio the file asks for; null when it sets a damper opening instead.
    air_ratio_asked, "air ratio asked", Number, Programs => match row.setting.entry.air { AirAim::AirRatio(ratio) => Some(ratio), AirAim::Damper(_) => None };
    /// How far the damper stands open; null without a damper, without blower and head, or in a gauge table when the air
    /// ratio is out of reach.
    damper_opening, "damper", Share, Page(20) => row.damper();
    /// Whether even the narrowest damper (or none) gives more air than asked: true or false. Null without blower and
    /// head.
    too_much_air, "too much air", Word, Programs => row.air().map(|air| air.too_much_air);
    air_kg_per_s, "air", MassFlow, Programs => row.running().map(|running| running.air.kilograms_per_second());
    air_flow_m3_per_s, "air flow", Flow, Programs => row.running().map(|running| running.air_flow.cubic_meters_per_second());
    /// Static pressure the blower makes. Null without blower and head, or when the gas would blow back.
    blower_pressure_pa, "blower pressure", LowPressure, Programs => row.running().map(|running| running.blower_pressure.pascals());
    /// Pressure that ducts and damper take, and that the air spends where the mixing tube is narrower than the last
    /// duct. Null without blower and head, or when the gas would blow back.
    path_loss_pa, "path loss", LowPressure, Programs => row.running().map(|running| running.path_loss.pascals());
    /// Gauge pressure of the air stream the jet blows into. Null without blower and head, or when the gas would blow
    /// back.
    back_pressure_pa, "back pressure", LowPressure, Programs => row.running().map(|running| running.back_pressure.pascals());
    /// Pressure the mixture needs through the ports. Null without blower and head, or when the gas would blow back.
    head_pressure_pa, "head pressure", LowPressure, Programs => row.running().map(|running| running.head_pressure.pascals());
    /// Pressure the burnt gas needs to leave the chamber; 0 without a chamber. Null without blower and head, or when
    /// the gas would blow back.
    chamber_pressure_pa, "chamber pressure", LowPressure, Programs => row.running().map(|running| running.chamber_pressure.pascals());
    /// Pressure the jet gives the air in the mixing tube; 0 without one. Null without blower and head, or when the gas
    /// would blow back.
    push_pa, "push", LowPressure, Programs => row.running().map(|running| running.push.pascals());
    /// Speed of the mixture in the ports. Null without blower and head, or when the gas would blow back.
    port_speed_m_per_s, "port speed", Speed, Programs => row.running().map(|running| running.port_speed.meters_per_second());
    /// Whether the blower runs at less flow than at its highest pressure, where it may surge: true or false. Null
    /// without blower and head, or when the gas would blow back.
    left_of_peak, "left of peak", Word, Programs => row.running().map(|running| running.left_of_peak);
    /// Pressure the blower lacks for the air ratio asked, damper wide open; null when it lacks none.
    air_shortfall_pa, "air shortfall", LowPressure, Programs => row.air().and_then(|air| air.shortfall).map(|shortfall| shortfall.pascals());
    /// Largest bore the blower can feed at the same gauge. Null when the blower is enough, or when this alone is no
    /// cure.
    cure_bore_m, "cure bore", Length, Programs => row.air().and_then(|air| air.remedies).and_then(|cures| cures.bore).map(|bore| bore.meters());
    /// Highest gauge it can feed. Null when the blower is enough, or when this alone is no cure.
    cure_gauge_pressure_pa, "cure gauge pressure", Gauge, Programs => row.air().and_then(|air| air.remedies).and_then(|cures| cures.gauge).map(|gauge| gauge.pascals());
    /// Open area of the heads, over that of now, with which it is enough. Null when the blower is enough, or when this
    /// alone is no cure.
    cure_head_area_ratio, "cure head area ratio", Number, Programs => row.air().and_then(|air| air.remedies).and_then(|cures| cures.head_area);
    /// Wheel speed, over that of now, with which it is enough. Null when the blower is enough, or when this alone is no
    /// cure.
    cure_wheel_speed_ratio, "cure wheel speed ratio", Number, Programs => row.air().and_then(|air| air.remedies).and_then(|cures| cures.wheel_speed);
    /// Carbon monoxide in the burnt gases at the hottest of the setting's chamber, the chamber at work and 760 degC, by
    /// volume and without the water; real mixing leaves more. Null without blower and head, or at an `air_ratio` no
    /// flame is worked out for.
    carbon_monoxide_dry, "carbon monoxide dry", Number, Programs => row.setting.carbon_monoxide;
    /// Time of the setting, or of all of them; null when the file gives none.
    duration_s, "duration", Time, Programs => row.setting.entry.minutes.map(|time| time.seconds());
    /// Gas burnt in that time; null when the file gives no time.
    gas_used_kg, "gas used", Mass, Programs => row.setting.gas_used.map(|mass| mass.kilograms());
    /// Money for that gas, in the money of `currency`; null without a time or a price.
    cost, "cost", Money, Programs => row.setting.cost;
    /// Money an hour; null without a price.
    cost_per_hour, "an hour", MoneyRate, Page(70) => row.setting.cost_per_hour;
    fire_is, "atmosphere", Word, Words(80) => row.fire_is();
}

columns! {
    /// How sure it is.
    pub(crate) SURE, sure(row: &SettingRow<'_>);
    /// Expanded uncertainty (k = 2) of `mass_flow_kg_per_s`; null where no gas flows, or where nothing is known
    /// of the bore, a contact tip by its mark.
    mass_flow_expanded_kg_per_s, "mass flow expanded uncertainty", MassFlow, Programs => row.relative().map(|relative| relative * row.setting.gas.kilograms_per_second());
    /// The same of `heat_gross_w`; null as there.
    heat_gross_expanded_w, "heat gross expanded uncertainty", HeatGross, Programs => row.relative().map(|relative| relative * row.setting.heat_gross.watts());
    /// The same of `heat_net_w`; null as there.
    heat_net_expanded_w, "heat net expanded uncertainty", HeatNet, Programs => row.relative().map(|relative| relative * row.setting.heat_net.watts());
    /// The same of `discharge_coefficient`; null as there.
    discharge_coefficient_expanded, "discharge coefficient expanded uncertainty", Number, Programs => row.sure.map(|sure| sure.coefficient.expanded);
    /// The input that makes the fire most uncertain: a word of `sheet: budgets` without its `_share`; null as there.
    fire_largest_uncertainty, "fire most uncertain", Word, Programs => row.sure.map(|sure| sure.gas.largest_uncertainty().key());
    /// Whether the expanded uncertainty follows from first derivatives alone: true, or false where a limit or a bend lies within
    /// it; null as there.
    fire_straight, "fire straight", Word, Programs => row.sure.map(|sure| sure.gas.is_straight);
    /// Expanded uncertainty of `air_ratio`; null as there, and without the air side.
    air_ratio_expanded, "air ratio expanded uncertainty", Number, Programs => row.sure_ratio().map(|ratio| ratio.expanded);
    /// The input that makes the air ratio most uncertain; null as there.
    air_ratio_largest_uncertainty, "air ratio most uncertain", Word, Programs => row.sure_ratio().map(|ratio| ratio.largest_uncertainty().key());
    /// Whether its expanded uncertainty follows from first derivatives alone; null as there.
    air_ratio_straight, "air ratio straight", Word, Programs => row.sure_ratio().map(|ratio| ratio.is_straight);
}

columns! {
    /// The gas on its way from the gauge to the jet.
    pub(crate) BEFORE_JET, before_jet(row: &SettingRow<'_>);
    gas_temperature_k, "gas at", Temperature, Page(40) => row.setting.gas_temperature.kelvin();
    /// Gauge pressure that the line leaves at the jet, which drives the flow; null without a line.
    jet_gauge_pressure_pa, "at the jet", Gauge, Page(20) => row.line().map(|_| row.setting.at_jet.pascals());
    /// What the line takes of the reading, as a share of it; null without a line.
    line_loss_share, "lost", FineShare, Page(30) => row.lost();
    /// What the gauge reads with the valve shut when it reads `gauge_pressure_pa` while gas flows; null unless the
    /// regulator's droop is given.
    still_gauge_pressure_pa, "valve shut, it reads", Gauge, Page(50) => row.regulator().map(|regulator| regulator.reading_without_flow(row.setting.gauge, row.setting.gas).pascals());
}

columns! {
    /// The sizes next to the drill in the cap.
    pub(crate) OTHER_DRILL, other_drill(row: &SettingRow<'_>);
    /// The next smaller size of the jet's list; null when there is none.
    drill_below, "drill below", Word, Programs => row.drill(0);
    /// Gauge pressure that gives the same fire with it; null when none does.
    drill_below_gauge_pressure_pa, "", Gauge, Page(5) => row.drill_gauge(0);
    /// The next larger size of the jet's list; null when there is none.
    drill_above, "drill above", Word, Programs => row.drill(1);
    /// Gauge pressure that gives the same fire with it; null when none does.
    drill_above_gauge_pressure_pa, "", Gauge, Page(15) => row.drill_gauge(1);
}
