// Follows a heat with gas and air. Process control, NEVER a flame safeguard: a listed one stays in charge of the gas
// valve, and asks_for_gas is a request to it. Pins, scales and settings are invented; put your own in.
#include <jetwright.h>

#include "table.h"  // const uint8_t TABLE[], written by: jetwright setpoints burner.toml --source c

const int GAUGE_PIN = A0, AIR_PIN = A1, WANTED_PIN = A2, START_PIN = 2, LIGHT_PIN = 3, STOP_PIN = 4, PERMITTED_PIN = 5;
const int REQUEST_PIN = 6, BLOWER_PIN = 7, GAS_PIN = 9, AIR_OUT_PIN = 10;

JetwrightTable table;
JetwrightController controller;
bool made = false;

void setup() {
  pinMode(REQUEST_PIN, OUTPUT);
  pinMode(BLOWER_PIN, OUTPUT);
  digitalWrite(REQUEST_PIN, LOW);
  JetwrightCrossLimitSettings band = {0.92f, 1.05f, 1.25f, 9000.0f, 24000.0f, {2000.0f, 20000.0f}, {2000.0f, 20000.0f},
                                      0.03f, 0.01f};
  JetwrightControllerSettings rules = {
      {{-500.0f, 100e3f, 90e3f, 900.0f, 5.0f}, {240.0f, 330.0f, 2.0f, 0.5f, 0.0f}, {-0.001f, 0.05f, 0.03f, 3e-4f, 5.0f}},
      10000.0f, 4.0f, 0.5f, 60.0f, 2.0f, 500, 0.01f, 0.002f, 0.1f, 1.0f};
  JetwrightCrossLimit limit;
  JetwrightAirChanges changes;
  made = jetwright_table_read(&table, TABLE, sizeof TABLE) == JETWRIGHT_STATUS_OK &&
         jetwright_table_air_ratio(&table, &band.target_air_ratio) == JETWRIGHT_STATUS_OK &&
         jetwright_cross_limit_make(&limit, &band) == JETWRIGHT_STATUS_OK &&
         jetwright_air_changes_make(&changes, 0.02f, 4.0f, 0.002f) == JETWRIGHT_STATUS_OK &&
         jetwright_controller_make(&controller, &table, &limit, &changes, &rules) == JETWRIGHT_STATUS_OK;
}

void loop() {
  JetwrightJet jet = {JETWRIGHT_GAS_PROPANE, JETWRIGHT_EDGE_SQUARE, 1.5e-3f, 10e-3f, 1.0f, 0.0f};
  JetwrightSupply supply = {83500.0f, 100.0f * analogRead(GAUGE_PIN), 0.0f, 283.15f};
  JetwrightFlow flow = {0.0f, 0.0f, 0.0f, 0.0f, false};
  JetwrightInputs in = {};
  JetwrightOutputs out = {};
  float air_flow = 2e-5f * analogRead(AIR_PIN);
  in.now_ms = millis();
  in.command = digitalRead(STOP_PIN)    ? JETWRIGHT_COMMAND_STOP
               : digitalRead(LIGHT_PIN) ? JETWRIGHT_COMMAND_LIGHT
               : digitalRead(START_PIN) ? JETWRIGHT_COMMAND_START
                                        : JETWRIGHT_COMMAND_NOTHING;
  in.wanted_w = 9000.0f + 15.0f * analogRead(WANTED_PIN);
  in.readings[0] = supply.gauge_pa;
  in.readings[1] = supply.temperature_k;
  in.readings[2] = air_flow;
  bool read = jetwright_jet_flow(&jet, &supply, &flow) == JETWRIGHT_STATUS_OK;
  in.gas_w = read ? flow.heat_net_w : -1.0f;
  in.air_w = 2.9e6f * air_flow;  // what a cubic metre burns at air ratio 1.05 here: `jetwright air`
  in.air_flow_m3_per_s = air_flow;
  in.second_air_flow_m3_per_s = -1.0f;
  in.permitted = digitalRead(PERMITTED_PIN) == HIGH ? 1 : 0;
  bool sound = made && jetwright_controller_tick(&controller, &in, &out) == JETWRIGHT_STATUS_OK;
  digitalWrite(REQUEST_PIN, sound && out.asks_for_gas ? HIGH : LOW);
  digitalWrite(BLOWER_PIN, !sound || out.blower_on ? HIGH : LOW);
  if (sound) {
    analogWrite(GAS_PIN, (int)(out.set.gauge_pa * (255.0f / 100e3f)));
    analogWrite(AIR_OUT_PIN, (int)(out.set.air * 255.0f));
  }
}
