//! The C interface, feature `capi`: what a chip's firmware in C calls, in single precision.
//!
//! Plain structs and status codes, nothing allocated, nothing called back. The header is made of these files by
//! cbindgen and checked in as `examples/c/src/jetwright.h`. No physics here.
//!
//! Process control only, never a flame safeguard.

mod abi;
mod controller;
mod estimate;
mod flue;
mod hazards;
mod kept;
mod limiting;
mod physics;
mod record;
mod refused;
mod status;
mod table;

pub use abi::{JETWRIGHT_ABI, jetwright_check_abi};
pub use controller::{
    JETWRIGHT_CONTROLLER_WORDS, JetwrightCommand, JetwrightController, JetwrightControllerSettings, JetwrightInputs,
    JetwrightOutputs, JetwrightSensorLimits, JetwrightState, jetwright_controller_make, jetwright_controller_tick,
};
pub use estimate::{
    JETWRIGHT_BURNER_WORDS, JetwrightBurner, JetwrightEstimate, JetwrightEstimateSpread, JetwrightReadingSpreads,
    JetwrightReadings, jetwright_burner_air_flow, jetwright_burner_at, jetwright_burner_check_table,
    jetwright_burner_estimate, jetwright_burner_estimate_with_spread, jetwright_burner_read,
};
pub use flue::{
    JetwrightBasis, JetwrightExpectedReading, JetwrightFlame, JetwrightFlueReading, JetwrightSite,
    jetwright_air_ratio_from_oxygen, jetwright_available_heat, jetwright_expected_reading,
};
pub use hazards::{
    JETWRIGHT_STATE_HAZARDS, JetwrightHazardKind, JetwrightSeverity, JetwrightStateHazard, JetwrightStateHazards,
    jetwright_flame_hazards, jetwright_jet_hazards,
};
pub use limiting::{
    JETWRIGHT_AIR_CHANGES_WORDS, JETWRIGHT_CROSS_LIMIT_WORDS, JETWRIGHT_TOTALS_WORDS, JetwrightAirChanges,
    JetwrightCrossLimit, JetwrightCrossLimitSettings, JetwrightLimited, JetwrightTotals, JetwrightTravel,
    JetwrightUsed, jetwright_air_changes_count, jetwright_air_changes_make, jetwright_cross_limit_hold,
    jetwright_cross_limit_make, jetwright_cross_limit_step, jetwright_totals_add, jetwright_totals_make,
    jetwright_totals_read,
};
pub use physics::{
    JetwrightEdge, JetwrightFlow, JetwrightGas, JetwrightJet, JetwrightSupply, jetwright_ambient_pressure,
    jetwright_jet_flow,
};
pub use record::{
    JETWRIGHT_RECORD_EVENTS, JetwrightEvent, JetwrightRecord, jetwright_cause_text, jetwright_controller_record,
};
pub use refused::{JETWRIGHT_NAME_BYTES, JetwrightRefused};
pub use status::JetwrightStatus;
pub use table::{
    JETWRIGHT_EVERY_ROW, JETWRIGHT_HAZARDS, JETWRIGHT_ROWS, JETWRIGHT_TABLE_WORDS, JetwrightHazard, JetwrightHazards,
    JetwrightSetpoint, JetwrightTable, jetwright_table_air_ratio, jetwright_table_at, jetwright_table_hazards,
    jetwright_table_range, jetwright_table_read,
};

/// On a bare chip the static library brings its own handler, for no program of C has one. Nothing here panics; were
/// it reached, the chip would stop in it, and its watchdog must turn the gas off.
#[cfg(target_os = "none")]
#[panic_handler]
fn stop(_: &core::panic::PanicInfo<'_>) -> ! {
    loop {
        core::hint::spin_loop();
    }
}
