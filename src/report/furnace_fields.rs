//! The furnace for programs.

use std::prelude::rust_2024::*;
use std::vec;

use crate::furnace::warming::Leg;
use crate::plant::entries::FurnaceEntry;
use crate::plant::furnace::{CastableBlock, FurnaceBlock};
use crate::plant::work::WorkBlock;
use crate::plant::{Setting, SettingAir, Sheet, Stage};
use crate::report::field::columns;
use crate::report::firing::{is_tried, stage_words, tried_words};
use crate::report::tree::{Member, Node, Row, Section};
use crate::report::units::Shop;

/// The furnace of a sheet.
pub(crate) struct FurnaceRow<'s> {
    pub sheet: &'s Sheet,
    pub block: &'s FurnaceBlock,
    pub entry: &'s FurnaceEntry,
}

impl FurnaceRow<'_> {
    fn work(&self) -> Option<&WorkBlock> {
        self.block.work.as_ref()
    }

    fn leg(&self) -> Option<Leg> {
        self.work().and_then(|work| work.leg)
    }

    fn fire(&self) -> Option<&Setting> {
        self.work().and_then(|work| work.fire())
    }

    fn air(&self) -> Option<&SettingAir> {
        self.fire().and_then(|fire| fire.air.as_ref())
    }

    /// Everything for programs.
    pub(crate) fn node(&self) -> Node {
        let mut nodes = vec![Node::fields([furnace_fields(self), layers(self)])];
        nodes.extend(self.block.castable.as_ref().map(castable_node));
        let firing = &self.sheet.firing;
        let stages = firing.stages.iter().filter(|_| firing.by_furnace);
        let rows = stages.map(|stage| Row::of([step(&StageRow { sheet: self.sheet, stage })]));
        nodes.push(Node::rows(&PLAN, rows.collect()));
        Node::block(&FURNACE, nodes)
    }
}

/// A stage of the plan.
pub(crate) struct StageRow<'s> {
    sheet: &'s Sheet,
    stage: &'s Stage,
}

/// The castable for programs.
pub(crate) fn castable_node(block: &CastableBlock) -> Node {
    Node::block(&CASTABLE, vec![Node::fields([castable_fields(block)])])
}

/// Sheet: furnace, for programs.
pub(crate) const FURNACE: Section = Section {
    key: "furnace",
    name: "sheet: furnace",
    words: "The furnace; null without its layers",
    about: "The fire needed and the evening around it. `holding` is the empty chamber, hot through, at \
        `chamber_temperature_k`.",
    is_many: false,
    members: &[
        Member::Columns(FURNACE_FIELDS),
        Member::Section(&CASTABLE),
        Member::Section(&PLAN),
        Member::Columns(LAYERS),
    ],
};

columns! {
    /// The furnace.
    pub(crate) FURNACE_FIELDS, furnace_fields(row: &FurnaceRow<'_>);
    chamber_temperature_k, "chamber temperature", Temperature, Programs => row.block.temperature.kelvin();
    /// Lined area inside, openings not counted.
    hot_area_m2, "hot area", Area, Programs => row.block.lining.take_off().hot_area.square_meters();
    /// Volume inside.
    chamber_volume_m3, "chamber volume", Volume, Programs => row.block.lining.take_off().chamber_volume;
    /// Volume of all panels.
    lining_volume_m3, "lining volume", Volume, Programs => row.block.lining.take_off().lining_volume;
    /// Heat of the charge and its crucible, mass times heat of a kilogram, melting included; null without work.
    work_heat_j, "work heat", Energy, Programs => row.work().map(|work| work.heat);
    /// That heat over the time the work may take; null without work.
    work_power_w, "work power", Heat, Programs => row.work().map(|work| work.power.watts());
    /// Average fire, net, that gives that power straight after warming up: (work + wall + openings) / available heat;
    /// null without work.
    work_fire_net_w, "work fire net", HeatNet, Programs => row.leg().map(|leg| leg.mean_fire().watts());
    /// Gauge for that fire at the file's air ratio; null without work, or when jet or blower do not give it: then there
    /// is no `plan`.
    work_gauge_pressure_pa, "work gauge pressure", Gauge, Programs => row.fire().map(|fire| fire.gauge.pascals());
    /// Damper for it; null as above, and without a damper.
    work_damper_opening, "work damper opening", Number, Programs => row.air().and_then(|air| air.opening);
    /// Air ratio there; null as above, and without blower and head.
    work_air_ratio, "work air ratio", Number, Programs => row.air().and_then(crate::plant::SettingAir::air_ratio);
    /// Time this crucible takes in a chamber at that temperature; null without a crucible or a chamber.
    melt_time_s, "melt time", Time, Programs => row.work().and_then(|work| work.melt).map(|melt| melt.time.seconds());
    /// Fire, net, that holds the empty chamber.
    holding_fire_net_w, "holding fire net", HeatNet, Programs => row.block.holding.fire.watts();
    /// Half width of the 95 % band (k = 2) of `holding_fire_net_w` by what linings of the same name conduct.
    holding_half_width_w, "holding half width", Heat, Programs => row.block.holding_half_width.watts();
    /// Of it through the walls.
    holding_walls_w, "holding walls", Heat, Programs => row.block.holding.walls.watts();
    /// Of it out of the openings, each a black body seen through its depth.
    holding_openings_w, "holding openings", Heat, Programs => row.block.holding.openings.watts();
    /// Of it with the gases that leave.
    holding_flue_w, "holding flue", Heat, Programs => row.block.holding.flue.watts();
    available_heat, "available heat", Number, Programs => row.block.holding.available;
    /// Fire, net, that would hold it with the hot layer twice as thick.
    holding_thicker_net_w, "holding thicker net", HeatNet, Programs => row.block.holding_thicker.fire.watts();
    /// Where the chamber ends with the largest setting left on; null when nothing burns.
    largest_reaches_k, "largest reaches", Temperature, Programs => row.block.reaches.map(|balance| balance.chamber.kelvin());
    /// From cold to `chamber_temperature_k` with the largest setting; null when it does not get there.
    warm_up_s, "warm up", Time, Programs => row.block.warm_up.map(|leg| leg.time.seconds());
    /// Net heat of the gas it burns for that; null when it does not get there.
    warm_up_fire_j, "warm up fire", Energy, Programs => row.block.warm_up.map(|leg| leg.fire);
    /// Of it stored in the wall; null when it does not get there.
    warm_up_stored_j, "warm up stored", Energy, Programs => row.block.warm_up.map(|leg| leg.stored);
    /// Temperatures from the hot face over the interfaces to the outside, hot through, an array in K.
    wall_faces_k, "wall faces", Temperature, Programs => row.block.wall.faces.iter().map(|face| face.kelvin()).collect::<Vec<f64>>();
    /// The last of them.
    shell_temperature_k, "shell temperature", Temperature, Programs => row.block.wall.shell().kelvin();
    /// Temperature of the steel in the wall, hot through; null without steel.
    steel_temperature_k, "steel temperature", Temperature, Programs => row.block.steel.map(|(at, _)| at.kelvin());
    /// Above this that grade scales away; null without steel.
    steel_limit_k, "steel limit", Temperature, Programs => row.block.steel.map(|(_, bears)| bears.kelvin());
    /// Draught of the hot chamber over its own height.
    draught_pa, "draught", LowPressure, Programs => row.block.draught.pascals();
    /// Hot gas which that draught drives back through the stopped heads; null without a head and a blower.
    back_through_head_kg_per_s, "back through head", MassFlow, Programs => row.block.back_through_head.map(|flow| flow.kilograms_per_second());
    /// Air of the room that the largest fire takes, a setting's or the work's.
    fire_air_m3_per_s, "fire air", Flow, Programs => row.block.fire_air.cubic_meters_per_second();
    /// Fresh air that keeps carbon monoxide at the limit, leak times share over limit; null without a room.
    monoxide_air_m3_per_s, "monoxide air", Flow, Programs => row.block.monoxide_air.map(|flow| flow.cubic_meters_per_second());
    /// Time after a stop, everything off, until the hot face is under 760 degC.
    relights_s, "relights", Time, Programs => row.block.relights.seconds();
    /// Time after a stop until it is under the gas's autoignition temperature.
    may_light_s, "may light", Time, Programs => row.block.may_light.1.seconds();
    /// Time that air must run after the gas is off, until the hot face is under 540 degC.
    air_on_s, "air on", Time, Programs => row.block.air_on.seconds();
    /// Time to blow the chamber through before lighting: the longest `air_changes_s` of all settings, at least 60; null
    /// without blower and head.
    blow_through_s, "blow through", Time, Programs => row.sheet.air.as_ref().map(|_| row.sheet.blow_through.time.seconds());
}

columns! {
    /// Its layers.
    pub(crate) LAYERS, layers(row: &FurnaceRow<'_>);
    /// What each layer is called, the hot one first, an array.
    layers, "layers", Word, Programs => row.entry.layer_names.iter().map(|name| String::from(name.as_str())).collect::<Vec<String>>();
}

/// Sheet: castable, for programs.
pub(crate) const CASTABLE: Section = Section {
    key: "castable",
    name: "sheet: castable",
    words: "The castable; null without its sheet",
    about: "",
    is_many: false,
    members: &[Member::Columns(CASTABLE_FIELDS)],
};

columns! {
    /// The castable to pour.
    pub(crate) CASTABLE_FIELDS, castable_fields(block: &CastableBlock);
    /// Dry material of the whole lining.
    dry_mass_kg, "dry mass", Mass, Programs => block.mix.dry.kilograms();
    /// Bags with the margin, whole.
    bags, "bags", Number, Programs => block.mix.bags;
    /// Water to mix it with.
    water_kg, "water", Mass, Programs => block.mix.water.kilograms();
    /// Anchors on a square grid; null without their spacing.
    anchors, "anchors", Number, Programs => block.anchors;
    /// Pull in each of two legs at 60 degrees that lift all of it.
    sling_pull_n, "sling pull", Force, Programs => block.pull.newtons();
    /// All steps of drying out.
    drying_s, "drying", Time, Programs => block.steps.iter().map(|step| step.time.seconds()).sum::<f64>();
    /// Heat that drives the water off.
    drying_heat_j, "drying heat", Energy, Programs => block.heat;
}

/// Sheet: plan, for programs.
pub(crate) const PLAN: Section = Section {
    key: "plan",
    name: "sheet: plan",
    words: "The evening's steps, an array, empty when the largest setting will not light a cold chamber or is too small, or the work's fire is out of \
        reach. It is reckoned from the furnace; `evening` goes by the settings' own times",
    about: "",
    is_many: true,
    members: &[Member::Columns(STEP)],
};

columns! {
    /// A step of the plan.
    pub(crate) STEP, step(row: &StageRow<'_>);
    /// When the step begins.
    starts_s, "starts", Time, Programs => row.stage.at.map(|at| at.seconds());
    /// What is done.
    what, "what", Word, Programs => stage_words(row.sheet, row.stage, &Shop::of(false)) + &tried_words(row.sheet, row.stage);
    /// Whether nobody has seen its setting light a cold chamber: one try, and a purge before any other.
    first_try, "first try", Word, Programs => is_tried(row.sheet, row.stage);
    /// Gas it burns.
    plan_gas_kg, "plan gas", Mass, Programs => row.stage.gas.kilograms();
}
