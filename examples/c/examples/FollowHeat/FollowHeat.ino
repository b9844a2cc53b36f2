// Follows a heat with gas and air. Process control, NEVER a flame safeguard: a listed one stays in charge of the gas
// valve, and asks_for_gas is a request to it. Every pin, scale and setting below is invented: put your own in.
//
// Wiring. Contacts go from their pin to ground; the pin's own pull-up reads a broken wire as HIGH.
//   STOP       button, normally closed: pressed, unplugged or broken means stop.
//   PERMITTED  the safeguard's dry contact that is closed while it would let gas flow (its limits closed, no lock-out):
//              broken means not permitted. Not its flame contact: that one closes after the gas.
//   START, LIGHT, RESET  buttons, normally open. Each acts when it is released after a press, RESET after one of a second
//              or more, and none that was held for over five: a wire chafed to ground never acts.
//   REQUEST    through a relay to the safeguard's call for heat; HIGH asks. The pin floats while the chip resets and
//              its loader runs: 10 kilohms from the relay driver's input to ground keep it off.
//   BLOWER     through a relay to the blower's contactor; HIGH runs it.
//   LOCKED     a lamp: lit while locked, until RESET; flashing when this sketch has failed, which only repair ends.
//   GAUGE, AIR, WANTED  0 V to the board's reference: gauge before the jet, air flow, knob. No more volts than that.
//              10 kilohms from each to ground make a broken wire read zero. A gauge whose zero is not 0 V (0.5 V,
//              4 mA) tells a broken wire from no gas: subtract its offset, and the lowest reading below refuses it.
//   GAS, AIR_OUT  PWM, which is no pressure and no position: filter it to a voltage and amplify that to what the
//              electric pressure regulator and the damper's actuator take, such as 0 to 10 V.
#include <jetwright.h>
#include <math.h>

#include "table.h"  // const uint8_t TABLE[], written by: jetwright setpoints burner.toml --source c

const int GAUGE_PIN = A0, AIR_PIN = A1, WANTED_PIN = A2, START_PIN = 2, LIGHT_PIN = 3, STOP_PIN = 4, PERMITTED_PIN = 5;
const int REQUEST_PIN = 6, BLOWER_PIN = 7, LOCKED_PIN = 8, GAS_PIN = 9, AIR_OUT_PIN = 10, RESET_PIN = 11;

// Your board's watchdog, in a file beside this one: without these two the sketch does not link. The first starts it
// with half a second to two seconds, the second feeds it, once a tick that went well. When it bites, the chip resets,
// REQUEST floats, and its resistor takes the request back.
void startWatchdog();
void feedWatchdog();

const float AMBIENT_PA = 83500.0f;           // air around the furnace, Pa: of your barometer
const float GAS_TEMPERATURE_K = 283.15f;     // gas before the jet, K: measured once; better a sensor, read in loop()
const float BORE_M = 1.5e-3f;                // diameter of the jet, m: of your burner file
const float BORE_LENGTH_M = 10e-3f;          // length of its straight bore, m: of your burner file
const float AIR_HEAT_J_PER_M3 = 2.9e6f;      // heat a m3 of air burns at the target ratio: `jetwright air`
const float FULL_COUNT = 1023.0f;            // of the converter: 4095 where it has 12 bits
const float FULL_PWM = 255.0f;               // of analogWrite
const float GAUGE_PA_PER_COUNT = 100.0f;     // Pa a count: the gauge's span over the converter's counts
const float GAUGE_OFFSET_PA = 0.0f;          // Pa it reads with its valve shut: as seen
const float GAUGE_LOWEST_PA = -500.0f;       // Pa: the least a healthy gauge reads, under zero by its error
const float AIR_M3_PER_S_PER_COUNT = 2e-5f;  // m3/s a count: the air sensor's span over the converter's counts
const float REGULATOR_SPAN_PA = 100e3f;      // Pa that the regulator gives at full PWM: its data sheet
const float CHAMBER_M3 = 0.02f;              // chamber and all the air passes behind it, m3: measured
const float AIR_CHANGES = 4.0f;              // how often it is purged: the code that applies to you
const float LEAST_AIR_M3_PER_S = 0.002f;     // air under this is lost, m3/s: well under that of the smallest fire
const uint32_t TICK_MS = 100;                // time between two ticks, ms

JetwrightTable table;
JetwrightController controller;
JetwrightRefused refused;  // which setting was refused: print refused.name when the lamp flashes from the start
float lowest_w, highest_w;  // the heats of the table
bool made = false;
uint32_t last_ms;

// Acts when it is released after a press that was meant, and was open before.
struct Button {
  int pin;
  uint32_t shortest_ms;
  bool was_open, down;
  uint32_t since;
  bool pressed(uint32_t now) {
    bool closed = digitalRead(pin) == LOW;
    uint32_t held = now - since;
    bool acts = down && !closed && was_open && held >= shortest_ms && held <= 5000;
    if (closed && !down) since = now;
    was_open = was_open || !closed;
    down = closed;
    return acts;
  }
};
Button start = {START_PIN, 50, false, false, 0}, light = {LIGHT_PIN, 50, false, false, 0};
Button reset = {RESET_PIN, 1000, false, false, 0};

bool makeController() {
  JetwrightCrossLimitSettings band = {};
  band.lowest_air_ratio = 0.92f;               // richest mixture there may be: of your furnace
  band.highest_air_ratio = 1.25f;              // leanest mixture there may be: well inside what still burns
  band.gas_travel.slowest_w_per_s = 2000.0f;   // W/s: largest less smallest fire over the regulator's longest time
  band.gas_travel.fastest_w_per_s = 20000.0f;  // W/s: the same over its shortest
  band.air_travel.slowest_w_per_s = 2000.0f;   // W/s: the same of the damper, from a standing blower
  band.air_travel.fastest_w_per_s = 20000.0f;  // W/s: the same over its shortest
  band.actuator_tolerance = 0.03f;             // share that a flow may lie off its setting: seen at three fires
  band.reading_tolerance = 0.01f;              // share that a reading may lie off the flow: data sheets

  JetwrightControllerSettings rules = {};
  JetwrightSensorLimits &gauge = rules.sensors[0], &temperature = rules.sensors[1], &air = rules.sensors[2];
  gauge.lowest = GAUGE_LOWEST_PA;              // Pa: under this it is broken
  gauge.highest = 100e3f;                      // Pa: above this it is broken; under the most that it can read
  gauge.fastest = 90e3f;                       // Pa/s: faster than the line fills and empties, as seen
  gauge.noise = 900.0f;                        // Pa: some steps of the converter and of the PWM, as seen
  gauge.stuck_after_s = 5.0f;                  // s: a live gauge never reads exactly the same so long
  temperature.lowest = 240.0f;                 // K: colder than your winter
  temperature.highest = 330.0f;                // K: warmer than your hose in the sun
  temperature.fastest = 2.0f;                  // K/s: faster than the sensor follows
  temperature.noise = 0.5f;                    // K: its last digits
  temperature.stuck_after_s = 0.0f;            // s: zero, it may stand still; here it is a constant
  air.lowest = -0.001f;                        // m3/s: under this it is broken, a little below zero
  air.highest = 0.05f;                         // m3/s: above this it is broken; more than the blower gives
  air.fastest = 0.03f;                         // m3/s2: faster than blower and damper, as seen
  air.noise = 3e-4f;                           // m3/s: of the stream and the sensor, as seen
  air.stuck_after_s = 5.0f;                    // s: a live stream never reads exactly the same so long
  rules.lighting_w = 10000.0f;                 // W: a fire of the table that lights cold, `jetwright sheet`
  rules.lighting_time_s = 1.0f;                // s: what the line takes to fill (0.4 s here), and the longest tick
  rules.steady_time_s = 0.5f;                  // s: longer than the line takes to fill
  rules.ready_time_s = 60.0f;                  // s: how long purged waits for a person
  rules.closing_time_s = 2.0f;                 // s: until the gauge reads nothing once the valve is shut
  rules.run_down_time_s = 20.0f;               // s: until no air reads once the blower is off, twice what was seen
  rules.longest_tick_ms = 5 * TICK_MS;         // ms: a later tick locks
  rules.clock_tolerance = 0.02f;               // share: 1 ms of TICK_MS, and the chip's clock
  rules.least_air_m3_per_s = LEAST_AIR_M3_PER_S;
  rules.air_heat_j_per_m3 = AIR_HEAT_J_PER_M3;
  rules.has_second_air = 0;                    // 1 where a second air sensor is fitted
  rules.air_agreement = 0.1f;                  // share by which two air sensors may differ; there is one here
  rules.air_agreement_time_s = 1.0f;           // s: for how long by more

  JetwrightCrossLimit limit;
  JetwrightAirChanges changes;
  if (JETWRIGHT_CHECK_ABI() != JETWRIGHT_STATUS_OK) return false;
  if (jetwright_table_read(&table, TABLE, sizeof TABLE) != JETWRIGHT_STATUS_OK) return false;
  if (jetwright_table_air_ratio(&table, &band.target_air_ratio) != JETWRIGHT_STATUS_OK) return false;
  if (jetwright_table_range(&table, &lowest_w, &highest_w) != JETWRIGHT_STATUS_OK) return false;
  band.lowest_w = lowest_w;                    // W: the fires of the table
  band.highest_w = highest_w;
  return jetwright_cross_limit_make(&limit, &band, &refused) == JETWRIGHT_STATUS_OK &&
         jetwright_air_changes_make(&changes, CHAMBER_M3, AIR_CHANGES, LEAST_AIR_M3_PER_S, &refused) ==
             JETWRIGHT_STATUS_OK &&
         jetwright_controller_make(&controller, &table, &limit, &changes, &rules, &refused) == JETWRIGHT_STATUS_OK;
}

void setup() {
  digitalWrite(REQUEST_PIN, LOW);
  pinMode(REQUEST_PIN, OUTPUT);
  pinMode(BLOWER_PIN, OUTPUT);
  pinMode(LOCKED_PIN, OUTPUT);
  pinMode(STOP_PIN, INPUT_PULLUP);
  pinMode(PERMITTED_PIN, INPUT_PULLUP);
  pinMode(START_PIN, INPUT_PULLUP);
  pinMode(LIGHT_PIN, INPUT_PULLUP);
  pinMode(RESET_PIN, INPUT_PULLUP);
  made = makeController();
  last_ms = (uint32_t)millis() - TICK_MS;
  startWatchdog();
}

JetwrightCommand command(uint32_t now) {
  // Each is asked every time: a button must see its own press.
  bool starts = start.pressed(now), lights = light.pressed(now), resets = reset.pressed(now);
  if (digitalRead(STOP_PIN) != LOW) return JETWRIGHT_COMMAND_STOP;
  if (resets) return JETWRIGHT_COMMAND_RESET;
  if (lights) return JETWRIGHT_COMMAND_LIGHT;
  if (starts) return JETWRIGHT_COMMAND_START;
  return JETWRIGHT_COMMAND_NOTHING;
}

void loop() {
  uint32_t now = (uint32_t)millis();
  if (now - last_ms < TICK_MS) return;
  last_ms = now;

  JetwrightJet jet = {JETWRIGHT_GAS_PROPANE, JETWRIGHT_EDGE_SQUARE, BORE_M, BORE_LENGTH_M, 1.0f, 0.0f};
  JetwrightSupply supply = {AMBIENT_PA, GAUGE_PA_PER_COUNT * analogRead(GAUGE_PIN) - GAUGE_OFFSET_PA, 0.0f,
                            GAS_TEMPERATURE_K};
  JetwrightFlow flow = {};
  JetwrightInputs in = {};
  JetwrightOutputs out = {};
  float air_flow = AIR_M3_PER_S_PER_COUNT * analogRead(AIR_PIN);
  in.now_ms = now;
  in.command = command(now);
  in.wanted_w = lowest_w + (highest_w - lowest_w) * analogRead(WANTED_PIN) / FULL_COUNT;
  in.readings[0] = supply.gauge_pa;
  in.readings[1] = supply.temperature_k;
  in.readings[2] = air_flow;
  // A gauge a little under zero, by its offset, is no gas.
  if (supply.gauge_pa < 0.0f && supply.gauge_pa > GAUGE_LOWEST_PA) supply.gauge_pa = 0.0f;
  bool read = jetwright_jet_flow(&jet, &supply, &flow) == JETWRIGHT_STATUS_OK;
  in.gas_w = read ? flow.heat_net_w : NAN;
  in.air_w = AIR_HEAT_J_PER_M3 * air_flow;
  in.air_flow_m3_per_s = air_flow;
  in.second_air_flow_m3_per_s = -1.0f;
  in.chamber_is_cold = 0;  // 1 where a thermometer says so: then a stuck air sensor is found with the blower off
  in.permitted = digitalRead(PERMITTED_PIN) == LOW ? 1 : 0;

  bool sound = made && jetwright_controller_tick(&controller, &in, &out) == JETWRIGHT_STATUS_OK;
  digitalWrite(REQUEST_PIN, sound && out.asks_for_gas ? HIGH : LOW);
  digitalWrite(BLOWER_PIN, !sound || out.blower_on ? HIGH : LOW);
  if (sound) {
    analogWrite(GAS_PIN, (int)(out.set.gauge_pa * (FULL_PWM / REGULATOR_SPAN_PA) + 0.5f));
    analogWrite(AIR_OUT_PIN, (int)(out.set.air * FULL_PWM + 0.5f));
    digitalWrite(LOCKED_PIN, out.state == JETWRIGHT_STATE_LOCKOUT ? HIGH : LOW);
    feedWatchdog();
  } else {
    // No request, no gas pressure, all the air there is; and the watchdog starves.
    analogWrite(GAS_PIN, 0);
    analogWrite(AIR_OUT_PIN, (int)FULL_PWM);
    digitalWrite(LOCKED_PIN, now / 250 % 2 ? HIGH : LOW);
  }
}
