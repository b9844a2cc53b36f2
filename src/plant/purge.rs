//! How long the chamber is purged before lighting: one time for the whole sheet.

use crate::burner::LEAST_CHANGES;
use crate::plant::furnace::FurnaceBlock;
use crate::plant::lighting::LightingBlock;
use crate::plant::setting::Setting;
use crate::quantity::Duration;
use crate::scalar::rounded_up;

/// Shortest time the chamber is purged, s: common practice, no source.
const LEAST: f64 = 60.0;

/// How long the chamber is purged before lighting.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Purge {
    /// The longest that any setting's damper wants, and no less than a minute.
    pub time: Duration,
    /// Whether the chamber's volume and a flow of air stand behind it.
    pub is_known: bool,
}

/// The time for a file's settings.
pub(crate) fn purge(settings: &[Setting], furnace: Option<&FurnaceBlock>, lighting: Option<&LightingBlock>) -> Purge {
    let volume = furnace.map(|block| block.lining.take_off().chamber_volume);
    let flows = settings.iter().filter_map(|setting| setting.air.as_ref()?.running).map(|running| running.air_flow);
    let by_flow = flows.filter_map(|flow| Some(LEAST_CHANGES * volume? / flow.cubic_meters_per_second()));
    let each = lighting.map_or(&[][..], |block| &block.settings[..]);
    let by_changes = each.iter().filter_map(|found| found.unlit?.purge).map(Duration::seconds);
    let longest = by_flow.chain(by_changes).filter(|seconds| seconds.is_finite()).reduce(f64::max);
    let time = Duration::from_seconds(rounded_up(longest.unwrap_or(LEAST).max(LEAST)));
    Purge { time, is_known: longest.is_some() }
}
