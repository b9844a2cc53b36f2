//! The furnace for programs.

use std::prelude::rust_2024::*;
use std::vec;

use crate::plant::course::{ChargeCourse, Course, Heated};
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

    fn course(&self) -> &Course {
        &self.block.course
    }

    fn charge(&self) -> Option<ChargeCourse> {
        self.course().charge
    }

    /// The charge with the largest setting; none when it never gets there.
    fn heated(&self) -> Option<Heated> {
        self.charge().filter(|charge| charge.time.is_some()).map(|charge| charge.heated)
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
    about: "The fire needed and the firing around it, one coupled furnace through time. `keep` is the empty chamber at \
        `chamber_temperature_k`, 40 min after warming up; `keep_steady` the same at steady state. `charge` goes in cold \
        straight after warming up and is fired with at most the largest setting.",
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
    /// Fire, net, that brings the charge to its temperature in the time it may take, the chamber dipping as it does; null
    /// without work, or where the chamber at its temperature cannot in that time.
    work_fire_net_w, "work fire net", HeatNet [within], Programs => row.charge().and_then(|charge| charge.needed).map(|(fire, _)| fire);
    /// Gauge for that fire at the file's air ratio; null without work, or when jet or blower do not give it: then there
    /// is no `plan`.
    work_gauge_pressure_pa, "work gauge pressure", Gauge, Programs => row.fire().map(|fire| fire.gauge.pascals());
    /// Damper for it; null as above, and without a damper.
    work_damper_opening, "work damper opening", Number, Programs => row.air().and_then(|air| air.opening);
    /// Air ratio there; null as above, and without blower and head.
    work_air_ratio, "work air ratio", Number, Programs => row.air().and_then(crate::plant::SettingAir::air_ratio);
    /// Time the charge takes with the largest setting; null without work, or when it never gets there.
    charge_time_s, "charge time", Time [within], Programs => row.charge().and_then(|charge| charge.time);
    /// Lowest temperature of the chamber on the way; null without work.
    charge_lowest_chamber_k, "charge lowest chamber", Temperature [within], Programs => row.charge().map(|charge| charge.lowest);
    /// Time the charge takes however large the fire, the chamber never above its temperature; null without work.
    charge_least_time_s, "charge least time", Time, Programs => row.charge().map(|charge| charge.least);
    /// Largest fire, net, while it takes `charge_time_s`; null like it.
    charge_peak_heat_net_w, "charge peak heat net", HeatNet, Programs => row.heated().map(|heated| heated.peak);
    /// Average fire, net, so; null like it.
    charge_mean_heat_net_w, "charge mean heat net", HeatNet, Programs => row.heated().map(|heated| heated.mean());
    /// Net heat of the gas it burns so; null like it.
    charge_fire_j, "charge fire", Energy, Programs => row.heated().map(|heated| heated.fuel);
    /// Fire, net, that keeps the empty chamber 40 min after it has warmed up.
    keep_heat_net_w, "keep heat net", HeatNet [within], Programs => row.course().kept;
    /// Gauge for that fire at the file's air ratio; null when no reading in range gives it.
    keep_gauge_pressure_pa, "keep gauge", Gauge [within], Programs => row.block.keep_gauges[0].gauge;
    /// Whether that gauge is too low to be read: this jet is too large to keep the chamber.
    keep_gauge_too_low, "keep gauge too low", Word, Programs => row.block.keep_gauges[0].is_too_low;
    /// Fire, net, that keeps it when at steady state.
    keep_steady_heat_net_w, "keep steady heat net", HeatNet [within], Programs => row.course().kept_long;
    /// Gauge for that; null when no reading in range gives it.
    keep_steady_gauge_pressure_pa, "keep steady gauge", Gauge [within], Programs => row.block.keep_gauges[1].gauge;
    /// Of that fire through the walls.
    keep_steady_walls_w, "keep steady walls", Heat, Programs => row.course().kept_parts.walls;
    /// Of it out of the openings, each seen through its depth.
    keep_steady_openings_w, "keep steady openings", Heat, Programs => row.course().kept_parts.openings;
    /// Of it with the gas that leaves, air that came in included.
    keep_steady_flue_w, "keep steady flue", Heat, Programs => row.course().kept_parts.flue;
    /// Temperature the gas leaves at so.
    keep_steady_flue_temperature_k, "keep steady flue temperature", Temperature, Programs => row.course().kept_parts.gas;
    /// Air that comes in by the openings so; none where no height of them is given.
    keep_steady_entering_kg_per_s, "keep steady entering", MassFlow, Programs => row.course().kept_parts.entering;
    /// Fire, net, that would keep it at steady state with the hot layer twice as thick.
    keep_steady_thicker_net_w, "keep steady thicker net", HeatNet, Programs => row.block.kept_thicker;
    /// Where the chamber ends with the largest setting left on; null without fire.
    largest_reaches_k, "largest reaches", Temperature [within], Programs => row.course().ends;
    /// Where it ends with each setting left on, in their order, an array in K; null without fire.
    settings_end_k, "settings end", Temperature, Programs => row.block.ends.iter().map(|end| end.map_or(f64::NAN, |end| end.chamber)).collect::<Vec<f64>>();
    /// From cold to `chamber_temperature_k` with the largest setting; null when it does not get there.
    warm_up_s, "warm up", Time [within], Programs => row.course().warm_up;
    /// Net heat of the gas it burns for that; null when it does not get there.
    warm_up_fire_j, "warm up fire", Energy, Programs => row.course().warm_up.map(|_| row.course().warm_up_heats[0]);
    /// Of it stored in the wall; null when it does not get there.
    warm_up_stored_j, "warm up stored", Energy, Programs => row.course().warm_up.map(|_| row.course().warm_up_heats[1]);
    /// The cause that moves `warm_up_s` most: `gas_mixing`, `film_fired`, `film_off`, `gas_emissivity`,
    /// `wall_emissivity`, `wall_conductivity`, `wall_heat`, `opening_passage`, `opening_discharge`, `lid_exchange`,
    /// `air_ratio`, `inside_film`, `content_area`, `content_emissivity`.
    warm_up_largest_uncertainty, "warm up most uncertain", Word, Programs => row.course().dominant[0];
    /// The same of `keep_heat_net_w`.
    keep_largest_uncertainty, "keep most uncertain", Word, Programs => row.course().dominant[1];
    /// The same of `charge_time_s`; null without work.
    charge_largest_uncertainty, "charge most uncertain", Word, Programs => row.charge().map(|_| row.course().dominant[2]);
    /// The same of `reignition_s`.
    reignition_largest_uncertainty, "reignition most uncertain", Word, Programs => row.course().dominant[3];
    /// Temperatures from the hot face over the interfaces to the outside, at steady state, an array in K.
    wall_faces_k, "wall faces", Temperature, Programs => row.block.wall.faces.iter().map(|face| face.kelvin()).collect::<Vec<f64>>();
    /// The last of them.
    shell_temperature_k, "shell temperature", Temperature, Programs => row.block.wall.shell().kelvin();
    /// Temperature of the steel in the wall, at steady state; null without steel.
    steel_temperature_k, "steel temperature", Temperature, Programs => row.block.steel.map(|(at, _)| at.kelvin());
    /// Above this that grade scales away; null without steel.
    steel_limit_k, "steel limit", Temperature, Programs => row.block.steel.map(|(_, limit)| limit.kelvin());
    /// Draft of the hot chamber over its own height.
    draft_pa, "draft", LowPressure, Programs => row.block.draft.pascals();
    /// Hot gas which that draft drives back through the stopped heads; null without a head and a blower.
    back_through_head_kg_per_s, "back through head", MassFlow, Programs => row.block.back_through_head.map(|flow| flow.kilograms_per_second());
    /// Air of the room that the largest fire takes, a setting's or the work's.
    fire_air_m3_per_s, "fire air", Flow, Programs => row.block.fire_air.cubic_meters_per_second();
    /// Fresh air that keeps carbon monoxide at the limit, leak times share over limit; null without a room.
    carbon_monoxide_air_m3_per_s, "carbon monoxide air", Flow, Programs => row.block.carbon_monoxide_air.map(|flow| flow.cubic_meters_per_second());
    /// How long the walls light gas after the flame went out: until the coldest is at 760 degC, from the worst moment since
    /// the chamber was at its temperature. The low end is all that may be promised, never above 600 s without a
    /// thermocouple; the high end is the longest that gas which leaks may light at once, all shut with what is inside
    /// hot.
    reignition_s, "reignition", Time [within], Programs => row.course().least_lights;
    /// How long gas that leaks may light at all, all shut with what is inside hot: until the coldest wall is at the gas's
    /// autoignition temperature.
    may_light_s, "may light", Time [within], Programs => row.course().may_light[1];
    /// That temperature.
    autoignition_k, "autoignition", Temperature, Programs => row.block.lights.kelvin();
    /// Time that air must run after the gas is off, the charge taken out, so that no hot face is ever above 540 degC
    /// afterwards with everything off and shut; keep the high end. Null without a blower.
    air_on_s, "air on", Time [within], Programs => row.course().air_on;
    /// The high end of the same with the charge left inside; null without blower or work.
    air_on_inside_high_s, "air on inside high", Time, Programs => row.course().air_on_inside;
    /// Time to purge the chamber before lighting: the longest `air_changes_s` of all settings, at least 60; null
    /// without blower and head.
    chamber_purge_s, "purge", Time, Programs => row.sheet.air.as_ref().map(|_| row.sheet.purge.time.seconds());
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
    words: "The run's steps, an array, empty when the largest setting will not light a cold chamber or is too small, or the work's fire is out of \
        reach. It is calculated from the furnace; `run` goes by the settings' own times",
    about: "",
    is_many: true,
    members: &[Member::Columns(STEP)],
};

columns! {
    /// A step of the plan.
    pub(crate) STEP, step(row: &StageRow<'_>);
    /// When the step begins; null where that hangs on what is seen.
    starts_s, "starts", Time, Programs => row.stage.at.map(|at| at.seconds());
    /// What is done.
    what, "what", Word, Programs => stage_words(row.sheet, row.stage, &Shop::of(false)) + &tried_words(row.sheet, row.stage);
    /// Whether nobody has seen its setting light a cold chamber: one try, and a purge before any other.
    first_try, "first try", Word, Programs => is_tried(row.sheet, row.stage);
    /// Gas it burns.
    plan_gas_kg, "plan gas", Mass, Programs => row.stage.gas.kilograms();
}
