/* Gas and air of a forced-air burner. Process control, NEVER a flame safeguard: a listed one stays in
 * charge of the gas valve. Made by cbindgen from src/capi/; change it there. Pointers are null or point at
 * what their type says, and no two of one call at the same thing.
 *
 * Interrupts and threads: a struct is used by one call at a time. A tick that interrupts another on the same
 * controller answers JETWRIGHT_STATUS_BUSY and asks for no gas; nothing else is guarded. Different structs are
 * independent: the library keeps nothing of its own. Nothing here allocates, waits or calls back.
 *
 * Stack: at most JETWRIGHT_STACK_MOST bytes for any call, as measured on a Cortex-M4. */

#ifndef JETWRIGHT_H
#define JETWRIGHT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define JETWRIGHT_VERSION "0.1.0"
#define JETWRIGHT_VERSION_MAJOR 0
#define JETWRIGHT_VERSION_MINOR 1
#define JETWRIGHT_VERSION_PATCH 0

#if defined(__GNUC__) || defined(__clang__)
#define JETWRIGHT_MUST_USE __attribute__((warn_unused_result))
#else
#define JETWRIGHT_MUST_USE
#endif

/* Bytes of stack. */
#define JETWRIGHT_STACK_MOST 12288

#define JETWRIGHT_BYTES                                                                      \
    (sizeof(JetwrightController) + 2 * sizeof(JetwrightTable) + 3 * sizeof(JetwrightBurner) \
     + 4 * sizeof(JetwrightCrossLimit) + 5 * sizeof(JetwrightAirChanges)                     \
     + 6 * sizeof(JetwrightTotals) + 7 * sizeof(JetwrightInputs)                             \
     + 8 * sizeof(JetwrightOutputs) + 9 * sizeof(JetwrightControllerSettings)                \
     + 10 * sizeof(JetwrightCrossLimitSettings) + 11 * sizeof(JetwrightRecord)               \
     + 12 * sizeof(JetwrightHazards))

/* Whether the library is the one of this header: call it first. */
#define JETWRIGHT_CHECK_ABI() jetwright_check_abi(JETWRIGHT_ABI, JETWRIGHT_BYTES)


/*
 Counts up with every change of a struct or a function of this header.
 */
#define JETWRIGHT_ABI 2

/*
 Words of a `JetwrightController`.
 */
#define JETWRIGHT_CONTROLLER_WORDS 230

/*
 Words of a `JetwrightBurner`.
 */
#define JETWRIGHT_BURNER_WORDS 240

/*
 Most hazards of one state.
 */
#define JETWRIGHT_STATE_HAZARDS 8

/*
 Words of a `JetwrightCrossLimit`.
 */
#define JETWRIGHT_CROSS_LIMIT_WORDS 22

/*
 Words of a `JetwrightAirChanges`.
 */
#define JETWRIGHT_AIR_CHANGES_WORDS 6

/*
 Words of a `JetwrightTotals`.
 */
#define JETWRIGHT_TOTALS_WORDS 6

/*
 Events of a `JetwrightRecord`.
 */
#define JETWRIGHT_RECORD_EVENTS 8

/*
 Bytes of a name, its zero at the end with them.
 */
#define JETWRIGHT_NAME_BYTES 48

/*
 Rows of a table of the C interface.
 */
#define JETWRIGHT_ROWS 17

/*
 Words of a `JetwrightTable`.
 */
#define JETWRIGHT_TABLE_WORDS 41

/*
 Most hazards of an image.
 */
#define JETWRIGHT_HAZARDS 16

/*
 In place of a row: at every one.
 */
#define JETWRIGHT_EVERY_ROW 255

/*
 How a call went. Every call writes what it should: with any status but `Ok` no permission, gas off, `NAN` for a
 measurement, and what a `_make` or `_read` function should have made is not made.
 */
enum JetwrightStatus
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /*
   The answer is written.
   */
  JETWRIGHT_STATUS_OK = 0,
  /*
   A pointer is null.
   */
  JETWRIGHT_STATUS_NULL_POINTER = 1,
  /*
   The struct was not made by its `_make` or `_read` function.
   */
  JETWRIGHT_STATUS_NOT_MADE = 2,
  /*
   A number is not finite.
   */
  JETWRIGHT_STATUS_NOT_FINITE = 3,
  /*
   A number is outside the accepted range.
   */
  JETWRIGHT_STATUS_OUT_OF_RANGE = 4,
  /*
   An enumerator is none of those listed.
   */
  JETWRIGHT_STATUS_UNKNOWN = 5,
  /*
   The gas would be a liquid.
   */
  JETWRIGHT_STATUS_LIQUID = 6,
  /*
   No answer within the accepted range.
   */
  JETWRIGHT_STATUS_NO_SOLUTION = 7,
  /*
   A setting is not usable, or the settings do not go together; the `_make` functions say which.
   */
  JETWRIGHT_STATUS_SETTING = 8,
  /*
   The air-ratio band is too narrow for the tolerances.
   */
  JETWRIGHT_STATUS_BAND_TOO_NARROW = 9,
  /*
   The image does not begin like a table.
   */
  JETWRIGHT_STATUS_IMAGE_NOT_A_TABLE = 10,
  /*
   The image is of another version.
   */
  JETWRIGHT_STATUS_IMAGE_VERSION = 11,
  /*
   The image has another number of rows than `JETWRIGHT_ROWS`.
   */
  JETWRIGHT_STATUS_IMAGE_ROWS = 12,
  /*
   The image is cut off, or too long.
   */
  JETWRIGHT_STATUS_IMAGE_LENGTH = 13,
  /*
   The image is damaged.
   */
  JETWRIGHT_STATUS_IMAGE_DAMAGED = 14,
  /*
   The image's numbers are no table, or no burner.
   */
  JETWRIGHT_STATUS_IMAGE_CONTENT = 15,
  /*
   The image does not begin like a burner.
   */
  JETWRIGHT_STATUS_IMAGE_NOT_A_BURNER = 16,
  /*
   The table is not of this burner: make both images of one file.
   */
  JETWRIGHT_STATUS_IMAGE_OTHER_BURNER = 17,
  /*
   The table of species has no such property of a gas, and the answer needs it.
   */
  JETWRIGHT_STATUS_MISSING_PROPERTY = 18,
  /*
   The image has a part that this program does not know and must not pass over.
   */
  JETWRIGHT_STATUS_IMAGE_SECTION = 19,
  /*
   The controller is in use by an interrupted call or another thread: this one asks for no gas.
   */
  JETWRIGHT_STATUS_BUSY = 20,
  /*
   The controller's memory is not as the last call left it: it asks for no gas until it is made anew.
   */
  JETWRIGHT_STATUS_DAMAGED = 21,
  /*
   The header is of another version of the library than the library, or their structs differ in size.
   */
  JETWRIGHT_STATUS_ABI = 22,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum JetwrightStatus JetwrightStatus;
#else
typedef uint32_t JetwrightStatus;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/*
 Where the controller is.
 */
enum JetwrightState
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /*
   Nothing runs.
   */
  JETWRIGHT_STATE_OFF = 0,
  /*
   Air on, counting its changes; no gas.
   */
  JETWRIGHT_STATE_PRE_PURGE = 1,
  /*
   Purged; no gas, waiting for a person.
   */
  JETWRIGHT_STATE_READY = 2,
  /*
   Gas asked for, and not there yet.
   */
  JETWRIGHT_STATE_LIGHTING = 3,
  /*
   Gas asked for, following the heat wanted.
   */
  JETWRIGHT_STATE_FIRING = 4,
  /*
   Gas off, air still on.
   */
  JETWRIGHT_STATE_POST_PURGE = 5,
  /*
   Something was at fault: gas off, air on, until a person resets.
   */
  JETWRIGHT_STATE_LOCKOUT = 6,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum JetwrightState JetwrightState;
#else
typedef uint32_t JetwrightState;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/*
 A gas with a name of the trade.
 */
enum JetwrightGas
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /*
   Pure propane.
   */
  JETWRIGHT_GAS_PROPANE = 0,
  /*
   Propane at the limits of HD-5.
   */
  JETWRIGHT_GAS_HD5 = 1,
  /*
   A representative commercial propane.
   */
  JETWRIGHT_GAS_COMMERCIAL_PROPANE = 2,
  /*
   Pure normal butane.
   */
  JETWRIGHT_GAS_BUTANE = 3,
  /*
   Half propane, half butanes.
   */
  JETWRIGHT_GAS_PROPANE_BUTANE = 4,
  /*
   Pure methane.
   */
  JETWRIGHT_GAS_METHANE = 5,
  /*
   A representative pipeline gas.
   */
  JETWRIGHT_GAS_NATURAL_GAS = 6,
  /*
   Pure hydrogen.
   */
  JETWRIGHT_GAS_HYDROGEN = 7,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum JetwrightGas JetwrightGas;
#else
typedef uint32_t JetwrightGas;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/*
 The mouth of a bore.
 */
enum JetwrightEdge
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /*
   A thin plate with a sharp edge.
   */
  JETWRIGHT_EDGE_SHARP = 0,
  /*
   A drilled hole with a square edge.
   */
  JETWRIGHT_EDGE_SQUARE = 1,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum JetwrightEdge JetwrightEdge;
#else
typedef uint32_t JetwrightEdge;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/*
 Whether a reading of the flue gas counts the water.
 */
enum JetwrightBasis
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /*
   Of gas drawn off and cooled, its water condensed: most analyzers.
   */
  JETWRIGHT_BASIS_DRY = 0,
  /*
   Of the gas as it is: a hot probe in the flue.
   */
  JETWRIGHT_BASIS_WET = 1,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum JetwrightBasis JetwrightBasis;
#else
typedef uint32_t JetwrightBasis;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/*
 What a person asks for.
 */
enum JetwrightCommand
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /*
   Nothing new.
   */
  JETWRIGHT_COMMAND_NOTHING = 0,
  /*
   Air on, and purge.
   */
  JETWRIGHT_COMMAND_START = 1,
  /*
   Light, with the person at the burner.
   */
  JETWRIGHT_COMMAND_LIGHT = 2,
  /*
   Gas off, then purge.
   */
  JETWRIGHT_COMMAND_STOP = 3,
  /*
   What was at fault has been looked at.
   */
  JETWRIGHT_COMMAND_RESET = 4,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum JetwrightCommand JetwrightCommand;
#else
typedef uint32_t JetwrightCommand;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/*
 What each code of a hazard means, in a table's image and of a state. A code stays what it is once given.
 */
enum JetwrightHazardKind
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint16_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /*
   The mixture would blow back into the blower.
   */
  JETWRIGHT_HAZARD_KIND_BLOWS_BACK = 1,
  /*
   Leaner than a cold mixture burns; the number is the air ratio, the limit the leanest that burns cold.
   */
  JETWRIGHT_HAZARD_KIND_TOO_LEAN = 2,
  /*
   A chamber that does not glow blows the flames off the ports.
   */
  JETWRIGHT_HAZARD_KIND_GOES_OUT = 3,
  /*
   Carbon monoxide in the dry products, and the most that NIOSH lets anyone breathe.
   */
  JETWRIGHT_HAZARD_KIND_CARBON_MONOXIDE = 4,
  /*
   Time after which unlit gas makes the chamber's air explosive, and the longest trial for ignition.
   */
  JETWRIGHT_HAZARD_KIND_UNLIT_GAS = 5,
  /*
   The gauge is no higher than the pressure it blows into.
   */
  JETWRIGHT_HAZARD_KIND_NO_GAS = 6,
  /*
   Gradient at the ports over the flashback gradient, and where flashback is excluded.
   */
  JETWRIGHT_HAZARD_KIND_FLASHBACK = 7,
  /*
   Nothing is known of where the flame of this gas flashes back.
   */
  JETWRIGHT_HAZARD_KIND_FLASHBACK_UNKNOWN = 8,
  /*
   Gas heavier than air: its relative density.
   */
  JETWRIGHT_HAZARD_KIND_HEAVY_GAS = 9,
  /*
   The charge boils off zinc.
   */
  JETWRIGHT_HAZARD_KIND_ZINC_FUME = 10,
  /*
   How long the chamber ignites gas by itself after a stop.
   */
  JETWRIGHT_HAZARD_KIND_RE_IGNITES = 11,
  /*
   Water of a fresh lining.
   */
  JETWRIGHT_HAZARD_KIND_WET_LINING = 12,
  /*
   Temperature of steel in the wall, and its maximum.
   */
  JETWRIGHT_HAZARD_KIND_STEEL_TOO_HOT = 13,
  /*
   Supply pressure over the dew-point pressure.
   */
  JETWRIGHT_HAZARD_KIND_NEAR_CONDENSING = 14,
  /*
   What an air ratio of 1 set at sea level becomes here.
   */
  JETWRIGHT_HAZARD_KIND_ALTITUDE = 15,
  /*
   Mass of the lining, and what one person may lift.
   */
  JETWRIGHT_HAZARD_KIND_HEAVY_LINING = 16,
  /*
   Temperature of the shell, and where touching it burns.
   */
  JETWRIGHT_HAZARD_KIND_HOT_SHELL = 17,
  /*
   The blower runs where it may surge.
   */
  JETWRIGHT_HAZARD_KIND_LEFT_OF_PEAK = 18,
  /*
   The blower cannot give the air asked: the air ratio it reaches, and the one asked.
   */
  JETWRIGHT_HAZARD_KIND_BLOWER_TOO_SMALL = 19,
  /*
   The damper, or the lack of one, leaves more air than asked: the air ratio left, and the one asked.
   */
  JETWRIGHT_HAZARD_KIND_DAMPER_TOO_WIDE = 20,
  /*
   Temperature that the largest setting reaches, and the chamber's.
   */
  JETWRIGHT_HAZARD_KIND_FIRE_TOO_SMALL = 21,
  /*
   Heat input that the charge needs, and what the blower feeds where that is less.
   */
  JETWRIGHT_HAZARD_KIND_WORK_OUT_OF_REACH = 22,
  /*
   Time the charge takes, and the time it may take.
   */
  JETWRIGHT_HAZARD_KIND_WORK_TOO_SLOW = 23,
  /*
   Temperature that the largest setting reaches when left on, and the maximum of the hot layer.
   */
  JETWRIGHT_HAZARD_KIND_LINING_OVERHEATS = 24,
  /*
   Time after which the cylinder is too cold for its regulator, and the time of the setting.
   */
  JETWRIGHT_HAZARD_KIND_CANNOT_KEEP_UP = 25,
  /*
   Time after which the cylinder gives no more.
   */
  JETWRIGHT_HAZARD_KIND_CYLINDER_SHORT = 26,
  /*
   Share of the reading that the line takes, and where that matters.
   */
  JETWRIGHT_HAZARD_KIND_GAUGE_READS_HIGH = 27,
  /*
   The coldest liquid in the cylinder, and where frost begins.
   */
  JETWRIGHT_HAZARD_KIND_FROST = 28,
  /*
   Share of the main gas of a liquid blend, and where it counts as one gas.
   */
  JETWRIGHT_HAZARD_KIND_BLEND_BOILS_APART = 29,
  /*
   Back pressure over the gauge, and where that matters.
   */
  JETWRIGHT_HAZARD_KIND_BACK_PRESSURE = 30,
  /*
   Opening of the damper, and where a small turn changes much.
   */
  JETWRIGHT_HAZARD_KIND_DAMPER_NEARLY_SHUT = 31,
  /*
   Marked size of a contact tip.
   */
  JETWRIGHT_HAZARD_KIND_UNMEASURED_TIP = 32,
  /*
   Reynolds number of the jet, and where viscosity rules.
   */
  JETWRIGHT_HAZARD_KIND_SLOW_JET = 33,
  /*
   Length of the bore over its diameter, neither thin nor long, and where long begins.
   */
  JETWRIGHT_HAZARD_KIND_SHORT_BORE = 34,
  /*
   Bore over the tube before it, and where that matters.
   */
  JETWRIGHT_HAZARD_KIND_NARROW_APPROACH = 35,
  /*
   A chamber between autoignition and 760 degC: its temperature, and the 760 degC from which gas ignites as it comes.
   */
  JETWRIGHT_HAZARD_KIND_IGNITES_LATE = 36,
  /*
   The gauge over the regulator's lock-up pressure, and 1.
   */
  JETWRIGHT_HAZARD_KIND_BEYOND_REGULATOR = 37,
  /*
   Opening of a disc whose gap nobody measured, and from where its air is known.
   */
  JETWRIGHT_HAZARD_KIND_DISC_GAP_UNKNOWN = 60,
  /*
   The air is throttled by a valve made to shut a line.
   */
  JETWRIGHT_HAZARD_KIND_THROTTLING_VALVE = 61,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum JetwrightHazardKind JetwrightHazardKind;
#else
typedef uint16_t JetwrightHazardKind;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/*
 How much a hazard can hurt: the signal words of ANSI Z535.6.
 */
enum JetwrightSeverity
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : uint8_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
  /*
   Damage or waste, or a number less certain than it looks.
   */
  JETWRIGHT_SEVERITY_NOTICE = 1,
  /*
   Could injure lightly.
   */
  JETWRIGHT_SEVERITY_CAUTION = 2,
  /*
   Could kill or maim.
   */
  JETWRIGHT_SEVERITY_WARNING = 3,
  /*
   Will kill or maim if it is not avoided.
   */
  JETWRIGHT_SEVERITY_DANGER = 4,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum JetwrightSeverity JetwrightSeverity;
#else
typedef uint8_t JetwrightSeverity;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/*
 A controller, made by `jetwright_controller_make`. Its words are not for reading.
 */
typedef struct JetwrightController {
  /*
   Set when it has been made.
   */
  uint32_t made;
  /*
   Set while a call works on it.
   */
  uint32_t busy;
  /*
   Of all that decides about gas, as the last call left it.
   */
  uint32_t sum;
  /*
   The controller.
   */
  uint32_t words[JETWRIGHT_CONTROLLER_WORDS];
} JetwrightController;

/*
 A table of settings, made by `jetwright_table_read`. Its words are not for reading.
 */
typedef struct JetwrightTable {
  /*
   Set when the table has been made.
   */
  uint32_t made;
  /*
   The table.
   */
  uint32_t words[JETWRIGHT_TABLE_WORDS];
} JetwrightTable;

/*
 A cross-limiter, made by `jetwright_cross_limit_make`. Its words are not for reading.
 */
typedef struct JetwrightCrossLimit {
  /*
   Set when it has been made.
   */
  uint32_t made;
  /*
   The limiter.
   */
  uint32_t words[JETWRIGHT_CROSS_LIMIT_WORDS];
} JetwrightCrossLimit;

/*
 Counts air changes; made by `jetwright_air_changes_make`. Its words are not for reading.
 */
typedef struct JetwrightAirChanges {
  /*
   Set when it has been made.
   */
  uint32_t made;
  /*
   The counter.
   */
  uint32_t words[JETWRIGHT_AIR_CHANGES_WORDS];
} JetwrightAirChanges;

/*
 What a healthy sensor's readings look like, in the sensor's own unit. All are finite.
 */
typedef struct JetwrightSensorLimits {
  /*
   Smallest reading of a healthy sensor: under its zero by its offset, above what a broken wire reads.
   */
  float lowest;
  /*
   Largest reading of a healthy sensor, above `lowest`.
   */
  float highest;
  /*
   Fastest change of what is measured, per second; above zero.
   */
  float fastest;
  /*
   Change between two readings that noise alone can make; zero or more.
   */
  float noise;
  /*
   A live sensor never reads exactly the same for this long, s; zero where it may, and nothing below zero.
   */
  float stuck_after_s;
} JetwrightSensorLimits;

/*
 What a controller is told once. Times are above zero and finite.
 */
typedef struct JetwrightControllerSettings {
  /*
   Three sensors: gauge pressure, gas temperature, air.
   */
  struct JetwrightSensorLimits sensors[3];
  /*
   Heat the fire is lit at, W; within the limiter's range.
   */
  float lighting_w;
  /*
   Longest time from asking for gas until it reads what it was set to, s: as little more than its line takes to
   fill as the ticks allow, because so long the mixture may be too lean.
   */
  float lighting_time_s;
  /*
   How long the gas must then read so; longer than its line takes to fill, s.
   */
  float steady_time_s;
  /*
   Longest wait after purging, s.
   */
  float ready_time_s;
  /*
   Longest time gas may read after it was last asked for, s.
   */
  float closing_time_s;
  /*
   How long air may still read after the blower was switched off, s: until it has run down. Longer air from a cold
   chamber locks out.
   */
  float run_down_time_s;
  /*
   Longest time between two ticks, ms: from 1 to 2000. A thousand ticks without one count as a clock that has stopped.
   */
  uint32_t longest_tick_ms;
  /*
   How far the time counted between two ticks may lie from the time that passed, as a share of it: from zero to
   under 0.3; 0.01 to 0.03 for a crystal and ticks of 100 ms, of which one millisecond is 0.01 already.
   */
  float clock_tolerance;
  /*
   Air under this is lost, m3/s: from a tenth to all of what the smallest heat input needs.
   */
  float least_air_m3_per_s;
  /*
   Heat that a cubic meter of air burns at the target air ratio, J/m3: from 3e5 to 1e7; `jetwright air` prints it.
   */
  float air_heat_j_per_m3;
  /*
   1 where a second air sensor is fitted, 0 where none is.
   */
  uint32_t has_second_air;
  /*
   How far two readings of the air may differ, as a share; above zero.
   */
  float air_agreement;
  /*
   For how long they may differ by more, s.
   */
  float air_agreement_time_s;
} JetwrightControllerSettings;

/*
 Which setting a `_make` function refused, in the words of the Rust errors: print it while you set up.
 */
typedef struct JetwrightRefused {
  /*
   What the setting is called, ended by a zero; empty where no setting was refused.
   */
  char name[JETWRIGHT_NAME_BYTES];
  /*
   Of a sensor's limit, which sensor, from 0; else -1.
   */
  int32_t sensor;
} JetwrightRefused;

/*
 What a controller is told each tick.
 */
typedef struct JetwrightInputs {
  /*
   A counter of milliseconds; it may wrap.
   */
  uint32_t now_ms;
  /*
   A `JetwrightCommand`; anything else stops.
   */
  uint32_t command;
  /*
   Net heat wanted, W.
   */
  float wanted_w;
  /*
   The sensors' readings in their own units, in the order of their limits.
   */
  float readings[3];
  /*
   Net heat of the gas as it is read between its valve and the jet, W; `NAN` where the readings mean nothing.
   */
  float gas_w;
  /*
   What the air as it is read would burn at the target air ratio, W; as for the gas.
   */
  float air_w;
  /*
   The same air, m3/s.
   */
  float air_flow_m3_per_s;
  /*
   A second reading of it, m3/s; -1 or less where there is none. Locks out where the settings say otherwise.
   */
  float second_air_flow_m3_per_s;
  /*
   1 where the chamber is known to be cold: then air that reads while the blower is off locks out.
   */
  uint32_t chamber_is_cold;
  /*
   1 where the listed safeguard permits gas; anything else refuses.
   */
  uint32_t permitted;
} JetwrightInputs;

/*
 What to set for a heat.
 */
typedef struct JetwrightSetpoint {
  /*
   Gauge pressure before the jet, Pa.
   */
  float gauge_pa;
  /*
   What the air's actuator is set to, such as a damper's opening.
   */
  float air;
} JetwrightSetpoint;

/*
 What a controller answers each tick.
 */
typedef struct JetwrightOutputs {
  /*
   Where it is.
   */
  JetwrightState state;
  /*
   A request to the listed safeguard, never a command to a valve.
   */
  bool asks_for_gas;
  /*
   Whether the blower is to run.
   */
  bool blower_on;
  /*
   Whether something was at fault in this tick.
   */
  bool fault;
  /*
   What was, in this tick: zero for nothing, else a number that `jetwright_cause_text` puts into words.
   */
  uint32_t cause;
  /*
   What the lockout began with, until it is reset: the same numbers.
   */
  uint32_t first_cause;
  /*
   The sensor of the first cause, by its place among the readings; -1 for none of them.
   */
  int32_t first_cause_sensor;
  /*
   Heat the gas is set for, W.
   */
  float gas_w;
  /*
   Heat the air is set for, W.
   */
  float air_w;
  /*
   Gauge pressure and air setting of both.
   */
  struct JetwrightSetpoint set;
  /*
   Air changes counted.
   */
  float air_changes;
} JetwrightOutputs;

/*
 A burner in its weather, made by `jetwright_burner_read`. Its words are not for reading.
 */
typedef struct JetwrightBurner {
  /*
   Set when it has been made.
   */
  uint32_t made;
  /*
   Id of the image's burner; a table of the same file carries the same.
   */
  uint32_t burner_id;
  /*
   The burner.
   */
  uint64_t words[JETWRIGHT_BURNER_WORDS];
} JetwrightBurner;

/*
 The air around.
 */
typedef struct JetwrightSite {
  /*
   Its pressure as a barometer on the site reads it, Pa.
   */
  float ambient_pa;
  /*
   Its temperature, K.
   */
  float air_temperature_k;
  /*
   Its relative humidity, 0 to 1.
   */
  float humidity;
} JetwrightSite;

/*
 Three readings of a running burner.
 */
typedef struct JetwrightReadings {
  /*
   What the gauge before the jets reads while gas flows, Pa.
   */
  float gauge_pa;
  /*
   Temperature of the gas there, K.
   */
  float gas_temperature_k;
  /*
   Static pressure at the blower's outlet, before the damper, Pa.
   */
  float blower_pa;
} JetwrightReadings;

/*
 What the readings mean. Gas and air are those of all heads together.
 */
typedef struct JetwrightEstimate {
  /*
   Gas, kg/s: count it with `jetwright_totals_add`.
   */
  float gas_kg_per_s;
  /*
   Its heat with the flue's water as steam, W.
   */
  float heat_net_w;
  /*
   Air at the blower's inlet, m3/s. While purging no gas flows and there is no estimate:
   `jetwright_burner_air_flow` is what air changes count.
   */
  float air_flow_m3_per_s;
  /*
   Air, kg/s.
   */
  float air_kg_per_s;
  /*
   Air supplied over air needed; zero where the air ahead of the jets holds the gas back.
   */
  float air_ratio;
  /*
   Static pressure where the jets stand, Pa.
   */
  float back_pa;
} JetwrightEstimate;

/*
 How far each reading and each model may be off, two standard deviations.
 */
typedef struct JetwrightReadingSpreads {
  /*
   Of the gauge, Pa.
   */
  float gauge_pa;
  /*
   Of the gas temperature, K.
   */
  float gas_temperature_k;
  /*
   Of the blower's pressure, Pa.
   */
  float blower_pa;
  /*
   Of the jet's flow at a given pressure, as a share: the sheet tells it, a weighing narrows it.
   */
  float jet;
  /*
   Of the blower's flow at a given pressure, as a share.
   */
  float blower_curve;
} JetwrightReadingSpreads;

/*
 How sure an estimate is: expanded uncertainties at two standard deviations, as shares of its numbers.
 */
typedef struct JetwrightEstimateSpread {
  /*
   Of gas and heat.
   */
  float gas;
  /*
   Of the air.
   */
  float air;
  /*
   Of the air ratio.
   */
  float air_ratio;
} JetwrightEstimateSpread;

/*
 What an analyzer reads in the flue gas, by volume, 0 to 1.
 */
typedef struct JetwrightFlueReading {
  /*
   Oxygen.
   */
  float oxygen;
  /*
   Carbon monoxide, if it is read; else zero.
   */
  float carbon_monoxide;
  /*
   A `JetwrightBasis`.
   */
  uint32_t basis;
} JetwrightFlueReading;

/*
 What an analyzer should read when all burns to the end, by volume, 0 to 1.
 */
typedef struct JetwrightExpectedReading {
  /*
   Oxygen, water condensed.
   */
  float oxygen_dry;
  /*
   Oxygen, water counted.
   */
  float oxygen_wet;
  /*
   Carbon dioxide, water condensed.
   */
  float carbon_dioxide_dry;
} JetwrightExpectedReading;

/*
 A flame, and the chamber it heats.
 */
typedef struct JetwrightFlame {
  /*
   A `JetwrightGas`.
   */
  uint32_t gas;
  /*
   Air supplied over air needed, 0.6 to 4.
   */
  float air_ratio;
  /*
   Temperature of gas and air before they burn, K.
   */
  float mixture_temperature_k;
  /*
   Temperature at which the burnt gas leaves the chamber, 600 to 2900 K.
   */
  float chamber_temperature_k;
} JetwrightFlame;

/*
 One jet, or several equal ones.
 */
typedef struct JetwrightJet {
  /*
   A `JetwrightGas`.
   */
  uint32_t gas;
  /*
   A `JetwrightEdge`.
   */
  uint32_t edge;
  /*
   Diameter, m.
   */
  float bore_m;
  /*
   Length of the straight bore, m.
   */
  float bore_length_m;
  /*
   How many.
   */
  float count;
  /*
   A measured discharge coefficient; zero for the model's.
   */
  float measured_coefficient;
} JetwrightJet;

/*
 The gas before the jet, and what it blows into.
 */
typedef struct JetwrightSupply {
  /*
   Pressure of the air around, Pa.
   */
  float ambient_pa;
  /*
   What the gauge before the jet reads, Pa.
   */
  float gauge_pa;
  /*
   Gauge pressure the jet blows into, Pa.
   */
  float back_pa;
  /*
   Temperature of the gas before the jet, K.
   */
  float temperature_k;
} JetwrightSupply;

/*
 Something that can hurt in a state.
 */
typedef struct JetwrightStateHazard {
  /*
   A `JetwrightHazardKind`.
   */
  uint16_t kind;
  /*
   A `JetwrightSeverity`; the more, the worse.
   */
  uint8_t severity;
  /*
   The number it stands on, in SI; `NAN` for a kind that has none.
   */
  float number;
  /*
   Where that number becomes a hazard, in the same unit; `NAN` for a kind that has none.
   */
  float limit;
} JetwrightStateHazard;

/*
 What can hurt in a state.
 */
typedef struct JetwrightStateHazards {
  /*
   How many there are; -1 where the state cannot be, which is not the same as none.
   */
  int32_t count;
  /*
   The first `count` of these, the worst first.
   */
  struct JetwrightStateHazard hazards[JETWRIGHT_STATE_HAZARDS];
} JetwrightStateHazards;

/*
 How fast an actuator moves toward its command, as heat of its flow in a second.
 */
typedef struct JetwrightTravel {
  /*
   Never slower than this while it is not there yet, W/s; above zero. Counted from the command and from a
   standing blower, dead time with it.
   */
  float slowest_w_per_s;
  /*
   Never faster than this at any moment, W/s; `slowest_w_per_s` or more.
   */
  float fastest_w_per_s;
} JetwrightTravel;

/*
 What a cross-limiter is told once. Gas and air are both counted as net heat: the gas as what it makes, the air as
 what it would burn at the target air ratio.
 */
typedef struct JetwrightCrossLimitSettings {
  /*
   Never richer than this; an air ratio from 0.5 to 5, as the next two.
   */
  float lowest_air_ratio;
  /*
   The air ratio of the setpoint table.
   */
  float target_air_ratio;
  /*
   Never leaner than this.
   */
  float highest_air_ratio;
  /*
   The smallest fire, W; above zero, and not below that of the table.
   */
  float lowest_w;
  /*
   The largest fire, W; above the smallest, and not above that of the table.
   */
  float highest_w;
  /*
   Speed of the gas regulator.
   */
  struct JetwrightTravel gas_travel;
  /*
   Speed of the damper or blower.
   */
  struct JetwrightTravel air_travel;
  /*
   How far the flow of an actuator that has arrived can lie from its setpoint, as a share of it: from zero
   to under 0.3. Includes what a straight line between two rows of the setpoint table is off, which
   `jetwright setpoints` prints.
   */
  float actuator_tolerance;
  /*
   How far a reading can lie from the flow, as a share of it: from zero to under 0.3.
   */
  float reading_tolerance;
} JetwrightCrossLimitSettings;

/*
 What to command now.
 */
typedef struct JetwrightLimited {
  /*
   Heat the gas is set for, W: look its gauge pressure up.
   */
  float gas_w;
  /*
   Heat the air is set for, W: look its air setting up.
   */
  float air_w;
  /*
   Set where the gas must be off.
   */
  bool gas_must_be_off;
} JetwrightLimited;

/*
 Gas, heat and money so far; made by `jetwright_totals_make`. Its words are not for reading.
 */
typedef struct JetwrightTotals {
  /*
   Set when it has been made.
   */
  uint32_t made;
  /*
   The sums.
   */
  uint32_t words[JETWRIGHT_TOTALS_WORDS];
} JetwrightTotals;

/*
 What a fire has used.
 */
typedef struct JetwrightUsed {
  /*
   Gas, kg.
   */
  float gas_kg;
  /*
   Net heat, J.
   */
  float heat_net_j;
  /*
   Money, in the unit of the price.
   */
  float money;
  /*
   Time without a reading, s.
   */
  float unknown_s;
} JetwrightUsed;

/*
 What all jets pass.
 */
typedef struct JetwrightFlow {
  /*
   Gas, kg/s.
   */
  float mass_flow_kg_per_s;
  /*
   Heat with the flue's water condensed, W.
   */
  float heat_gross_w;
  /*
   Heat with the flue's water as steam, W.
   */
  float heat_net_w;
  /*
   Discharge coefficient.
   */
  float discharge_coefficient;
  /*
   Whether the jet chokes.
   */
  bool choked;
} JetwrightFlow;

/*
 A change of state, and what was read then.
 */
typedef struct JetwrightEvent {
  /*
   The counter of milliseconds.
   */
  uint32_t now_ms;
  /*
   Where the controller was.
   */
  JetwrightState from;
  /*
   Where it went.
   */
  JetwrightState to;
  /*
   What locked out: zero for nothing, else a number that `jetwright_cause_text` puts into words.
   */
  uint32_t cause;
  /*
   The sensor of the cause; -1 for none of them.
   */
  int32_t cause_sensor;
  /*
   The sensors' readings.
   */
  float readings[3];
  /*
   Heat of the gas as it was read, W.
   */
  float gas_w;
  /*
   Heat of the air as it was read, W.
   */
  float air_w;
} JetwrightEvent;

/*
 The last changes of state, from the oldest to the newest.
 */
typedef struct JetwrightRecord {
  /*
   How many there are.
   */
  uint32_t count;
  /*
   The first `count` of these.
   */
  struct JetwrightEvent events[JETWRIGHT_RECORD_EVENTS];
} JetwrightRecord;

/*
 Something that can hurt at the settings of a table, as the image says it.
 */
typedef struct JetwrightHazard {
  /*
   What it is.
   */
  uint16_t kind;
  /*
   How much it can hurt; the more, the worse.
   */
  uint8_t severity;
  /*
   The row it is met at, from 0, or `JETWRIGHT_EVERY_ROW`.
   */
  uint8_t row;
  /*
   How much there is of it, in SI; zero for a kind that has no number.
   */
  float number;
} JetwrightHazard;

/*
 What can hurt at the settings of a table.
 */
typedef struct JetwrightHazards {
  /*
   How many there are; -1 where the image does not say, which is not the same as none.
   */
  int32_t count;
  /*
   The first `count` of these.
   */
  struct JetwrightHazard hazards[JETWRIGHT_HAZARDS];
} JetwrightHazards;

#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

/*
 Whether the library is the one of this header: call it first, as `JETWRIGHT_CHECK_ABI()`. `Abi` where it is not.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_check_abi(uint32_t abi,
                                    size_t bytes);

/*
 Makes a controller that is off, of a table, a cross-limiter and a counter of air changes, which it copies.

 `refused` may be null; else it tells which setting was refused.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_controller_make(struct JetwrightController *controller,
                                          const struct JetwrightTable *table,
                                          const struct JetwrightCrossLimit *limit,
                                          const struct JetwrightAirChanges *changes,
                                          const struct JetwrightControllerSettings *settings,
                                          struct JetwrightRefused *refused);

/*
 One tick. Any status but `Ok` means that the gas must be off, and `outputs` says so: no gas, blower on, no heat; open
 the air's actuator wide. So does a call that interrupts another on the same controller, and one that finds its memory
 written over.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_controller_tick(struct JetwrightController *controller,
                                          const struct JetwrightInputs *inputs,
                                          struct JetwrightOutputs *outputs);

/*
 Reads a burner from the bytes that `jetwright chip FILE --image OUT` has written, in the weather of its file.

 A damaged, wrong-version or cut-off image is refused, each with a status of its own.

 # Safety

 `image` is null or points at `length` bytes.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_burner_read(struct JetwrightBurner *burner,
                                      const uint8_t *image,
                                      size_t length);

/*
 Whether a table is of the same burner file: `ImageOtherBurner` where it is not.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_burner_check_table(const struct JetwrightBurner *burner,
                                             const struct JetwrightTable *table);

/*
 Puts a burner into another weather, over a chamber of a temperature in K. Call it when they have changed, not each
 tick.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_burner_at(struct JetwrightBurner *burner,
                                    const struct JetwrightSite *site,
                                    float chamber_temperature_k);

/*
 Heat and air ratio of a burner from three readings. No damper mark is trusted.

 Any status but `Ok` means that nothing is known: count it as gas off. Left of the highest point of the blower's
 curve its pressure does not tell the air, and near it only roughly. A gauge under 200 Pa is refused: with the gas
 shut, ask `jetwright_burner_air_flow`. So is a blower's pressure under half of what its air would need ahead of the
 jets, as of a blower that stands; one a little slow reads as more air.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_burner_estimate(const struct JetwrightBurner *burner,
                                          const struct JetwrightReadings *readings,
                                          struct JetwrightEstimate *estimate);

/*
 Air at the blower's inlet (m3/s) while no gas flows, from the blower's pressure (Pa) alone: for
 `jetwright_air_changes_count` while purging. It tells nothing of the gas: that none is there must be known
 otherwise.

 `least_pa` is a little less than what was seen with the damper fully open, above zero: a blower that stands or
 turns slowly reads less, which by its curve would be more air. Any status but `Ok` means that the air is not known:
 count zero, which begins the air changes anew. Refused under `least_pa`, and where a closed path would read as
 much.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_burner_air_flow(const struct JetwrightBurner *burner,
                                          float blower_pa,
                                          float least_pa,
                                          float *air_flow_m3_per_s);

/*
 The estimate with its ±. Costs seven estimates: ask it now and then, not each tick.

 Refused as the estimate is, and where a reading means nothing at both ends of its spread; a spread that is no
 number or out of range is refused too.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_burner_estimate_with_spread(const struct JetwrightBurner *burner,
                                                      const struct JetwrightReadings *readings,
                                                      const struct JetwrightReadingSpreads *spreads,
                                                      struct JetwrightEstimate *estimate,
                                                      struct JetwrightEstimateSpread *spread);

/*
 The air ratio that a reading of the flue gas of a `JetwrightGas` tells.

 Zero oxygen tells 1 or less, and the answer is 1. Air drawn in before the probe reads as air ratio.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_air_ratio_from_oxygen(uint32_t gas_number,
                                                const struct JetwrightSite *site,
                                                const struct JetwrightFlueReading *reading,
                                                float *air_ratio);

/*
 What an analyzer should read in the flue gas of a `JetwrightGas` at an air ratio from 1 on.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_expected_reading(uint32_t gas_number,
                                           const struct JetwrightSite *site,
                                           float air_ratio,
                                           struct JetwrightExpectedReading *expected);

/*
 Share of a flame's net heat that is left for the chamber; below zero where the chamber is hotter than the flame.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_available_heat(const struct JetwrightFlame *flame,
                                         const struct JetwrightSite *site,
                                         float *share);

/*
 What the state of a jet warns of: its gas, its bore, and what flows.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_jet_hazards(const struct JetwrightJet *jet,
                                      const struct JetwrightSupply *supply,
                                      struct JetwrightStateHazards *hazards);

/*
 What a fire of this air ratio warns of: carbon monoxide, a mixture too lean to burn cold, a heavy gas, a flame of
 which flashback is not known. Carbon monoxide is that of the hottest of the chamber and a glow.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_flame_hazards(const struct JetwrightFlame *flame,
                                        const struct JetwrightSite *site,
                                        struct JetwrightStateHazards *hazards);

/*
 Makes a cross-limiter whose actuators may stand anywhere; they settle under `jetwright_cross_limit_hold`.

 `refused` may be null; else it tells which setting was refused.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_cross_limit_make(struct JetwrightCrossLimit *limit,
                                           const struct JetwrightCrossLimitSettings *settings,
                                           struct JetwrightRefused *refused);

/*
 One step with the gas open: heat wanted, readings of now (W, all net), seconds since the last step.

 Any status but `Ok`, and `gas_must_be_off`, mean that the gas must be off.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_cross_limit_step(struct JetwrightCrossLimit *limit,
                                           float wanted_w,
                                           float gas_reading_w,
                                           float air_reading_w,
                                           float elapsed_s,
                                           struct JetwrightLimited *limited);

/*
 One step with the gas off: sends both actuators where they are wanted (W), and estimates on.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_cross_limit_hold(struct JetwrightCrossLimit *limit,
                                           float gas_w,
                                           float air_w,
                                           float elapsed_s);

/*
 Makes a counter of air changes: volume of the chamber, how many changes are needed, flow under which air is lost.

 `refused` may be null; else it tells which setting was refused.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_air_changes_make(struct JetwrightAirChanges *changes,
                                           float volume_m3,
                                           float needed,
                                           float least_flow_m3_per_s,
                                           struct JetwrightRefused *refused);

/*
 Counts the time since the last call at the lesser flow of its two ends; lost air begins again. Give it the least
 time that can have passed. Says how many changes are counted, and whether they are enough.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_air_changes_count(struct JetwrightAirChanges *changes,
                                            float flow_m3_per_s,
                                            float elapsed_s,
                                            float *so_far,
                                            bool *enough);

/*
 Makes the totals of a gas: net heating value in J/kg, price of a kilogram.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_totals_make(struct JetwrightTotals *totals,
                                      float net_heating_value_j_per_kg,
                                      float price_per_kg);

/*
 Counts a gas flow over a time; one that is no number counts as unknown time.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_totals_add(struct JetwrightTotals *totals,
                                     float gas_kg_per_s,
                                     float elapsed_s);

/*
 What has been used since the totals were made.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_totals_read(const struct JetwrightTotals *totals,
                                      struct JetwrightUsed *used);

/*
 What a jet passes, within 1e-5 of double precision. The gas is not worked out but read, rounded once.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_jet_flow(const struct JetwrightJet *jet,
                                   const struct JetwrightSupply *supply,
                                   struct JetwrightFlow *flow);

/*
 Pressure of the air at an altitude (m) in the standard atmosphere, Pa.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_ambient_pressure(float altitude_m,
                                           float air_temperature_k,
                                           float *pressure_pa);

/*
 The last changes of state of a controller, each with what was read then.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_controller_record(const struct JetwrightController *controller,
                                            struct JetwrightRecord *record);

/*
 A cause in words, ended by a zero; for a number that is none, words that say so. Never null.
 */
JETWRIGHT_MUST_USE const char *jetwright_cause_text(uint32_t cause);

/*
 Reads a table from the bytes that `jetwright setpoints FILE --image OUT` has written.

 A damaged, wrong-version or cut-off image is refused, each with a status of its own.

 # Safety

 `image` is null or points at `length` bytes.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_table_read(struct JetwrightTable *table,
                                     const uint8_t *image,
                                     size_t length);

/*
 Lists what can hurt at a table's settings, from the same bytes, refused as by `jetwright_table_read`.

 # Safety

 `image` is null or points at `length` bytes.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_table_hazards(struct JetwrightHazards *hazards,
                                        const uint8_t *image,
                                        size_t length);

/*
 The net heats of the first and the last row, W: the smallest and the largest fire of a cross-limiter at most.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_table_range(const struct JetwrightTable *table,
                                      float *lowest_w,
                                      float *highest_w);

/*
 What to set for a net heat in W; the first or last row outside the table's range, the first for no number.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_table_at(const struct JetwrightTable *table,
                                   float heat_net_w,
                                   struct JetwrightSetpoint *set);

/*
 The air ratio that a table's settings give: the target of its cross-limiter.
 */
JETWRIGHT_MUST_USE
JetwrightStatus jetwright_table_air_ratio(const struct JetwrightTable *table,
                                          float *air_ratio);

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* JETWRIGHT_H */
