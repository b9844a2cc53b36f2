/* Every call of the interface once, with one invented burner; its numbers are told for a test to compare.
 *
 * Process control, never a flame safeguard: a listed one stays in charge of the gas valve.
 */
#include "calls.h"

#include "jetwright.h"

#define TELL(name, ...)                                                         \
    do {                                                                        \
        const float numbers_[] = {__VA_ARGS__};                                 \
        tell((name), numbers_, (int)(sizeof numbers_ / sizeof numbers_[0]));    \
    } while (0)

#define CHECK(call)                                       \
    do {                                                  \
        JetwrightStatus status_ = (call);                 \
        if (status_ != JETWRIGHT_STATUS_OK) {             \
            TELL("not ok: " #call, (float)status_);       \
            return 1;                                     \
        }                                                 \
    } while (0)

/* What is kept from tick to tick; none of it made yet. */
static JetwrightTable table;
static JetwrightBurner burner;
static JetwrightCrossLimit limit;
static JetwrightController controller;

static void refused(JetwrightStatus status)
{
    TELL("refused-on-purpose", (float)status);
}

/* The plant of this example: actuators that move at 8 kW a second. */
static float moved(float position, float command, float seconds)
{
    float step = 8000.0f * seconds;
    if (command > position) {
        return command - position > step ? position + step : command;
    }
    return position - command > step ? position - step : command;
}

int every_call(unsigned char *image, size_t length, unsigned char *burner_image, size_t burner_length)
{
    const float zero = 0.0f;

    CHECK(JETWRIGHT_CHECK_ABI());

    /* What is wrong with an image is told apart, and nothing is used before it is made. */
    JetwrightSetpoint set;
    refused(jetwright_table_at(&table, 1.0f, &set));
    refused(jetwright_table_read(&table, image, length - 1));
    image[40] ^= 1;
    refused(jetwright_table_read(&table, image, length));
    image[40] ^= 1;
    image[4] ^= 2;
    refused(jetwright_table_read(&table, image, length));
    image[4] ^= 2;
    refused(jetwright_table_read(NULL, image, length));
    float target = 0.0f;
    refused(jetwright_table_air_ratio(&table, &target));
    CHECK(jetwright_table_read(&table, image, length));
    CHECK(jetwright_table_air_ratio(&table, &target));
    TELL("target", target);
    JetwrightHazards hazards;
    refused(jetwright_table_hazards(&hazards, image, length - 1));
    CHECK(jetwright_table_hazards(&hazards, image, length));
    TELL("hazards", (float)hazards.count);
    for (int index = 0; index < hazards.count; index++) {
        const JetwrightHazard *hazard = &hazards.hazards[index];
        TELL("hazard", (float)hazard->kind, (float)hazard->severity, (float)hazard->row, hazard->number);
    }
    float lowest = 0.0f, highest = 0.0f;
    CHECK(jetwright_table_range(&table, &lowest, &highest));
    TELL("range", lowest, highest);
    for (int kilowatts = 8; kilowatts <= 24; kilowatts += 4) {
        CHECK(jetwright_table_at(&table, 1000.0f * (float)kilowatts, &set));
        TELL("set", set.gauge_pa, set.air);
    }

    /* A gauge reading to heat, at 1600 m. */
    JetwrightJet jet = {JETWRIGHT_GAS_PROPANE, JETWRIGHT_EDGE_SQUARE, 1.5e-3f, 10e-3f, 1.0f, 0.0f};
    JetwrightSupply supply = {0.0f, 34474.0f, 0.0f, 283.15f};
    JetwrightFlow flow;
    CHECK(jetwright_ambient_pressure(1600.0f, 293.15f, &supply.ambient_pa));
    CHECK(jetwright_jet_flow(&jet, &supply, &flow));
    TELL("flow", flow.mass_flow_kg_per_s, flow.heat_net_w, flow.discharge_coefficient, (float)flow.choked);
    JetwrightStateHazards state;
    refused(jetwright_jet_hazards(&jet, NULL, &state));
    CHECK(jetwright_jet_hazards(&jet, &supply, &state));
    TELL("state", (float)state.count, (float)state.hazards[0].kind, state.hazards[0].number, state.hazards[0].limit);

    /* What the flue gas tells of the air, and the share of the heat that a chamber of 1500 K keeps. */
    JetwrightSite site = {0.0f, 293.15f, 0.5f};
    JetwrightFlueReading readings[] = {{0.03f, 0.0f, JETWRIGHT_BASIS_DRY}, {0.03f, 0.002f, JETWRIGHT_BASIS_WET}};
    JetwrightFlueReading no_basis = {0.03f, 0.0f, 2}, too_much = {0.5f, 0.0f, JETWRIGHT_BASIS_DRY};
    JetwrightFlueReading no_number = {zero / zero, 0.0f, JETWRIGHT_BASIS_DRY}, bare_air = {0.209f, 0.0f, JETWRIGHT_BASIS_WET};
    JetwrightFlame flame = {JETWRIGHT_GAS_PROPANE, 0.5f, 293.15f, 1500.0f};
    JetwrightExpectedReading expected;
    float ratio = 0.0f, share = 0.0f;
    site.ambient_pa = supply.ambient_pa;
    refused(jetwright_air_ratio_from_oxygen(99, &site, &readings[0], &ratio));
    refused(jetwright_air_ratio_from_oxygen(JETWRIGHT_GAS_PROPANE, &site, &no_basis, &ratio));
    refused(jetwright_air_ratio_from_oxygen(JETWRIGHT_GAS_PROPANE, &site, &too_much, &ratio));
    refused(jetwright_air_ratio_from_oxygen(JETWRIGHT_GAS_PROPANE, &site, &no_number, &ratio));
    refused(jetwright_air_ratio_from_oxygen(JETWRIGHT_GAS_PROPANE, &site, &bare_air, &ratio));
    refused(jetwright_available_heat(&flame, &site, &share));
    refused(jetwright_available_heat(&flame, NULL, &share));
    for (int basis = 0; basis < 2; basis++) {
        CHECK(jetwright_air_ratio_from_oxygen(JETWRIGHT_GAS_PROPANE, &site, &readings[basis], &ratio));
        CHECK(jetwright_expected_reading(JETWRIGHT_GAS_PROPANE, &site, ratio, &expected));
        TELL("flue", ratio, expected.oxygen_dry, expected.oxygen_wet, expected.carbon_dioxide_dry);
    }
    float ratios[] = {0.8f, 1.05f, 1.5f};
    for (int index = 0; index < 3; index++) {
        flame.air_ratio = ratios[index];
        CHECK(jetwright_available_heat(&flame, &site, &share));
        TELL("available", share);
        CHECK(jetwright_flame_hazards(&flame, &site, &state));
        TELL("fire", (float)state.count, (float)state.hazards[0].kind, (float)state.hazards[0].severity);
    }

    /* Three readings to heat and air ratio, in the weather of the burner's file and in another. */
    JetwrightReadings now[] = {{22063.2f, 289.15f, 570.0f}, {22063.2f, 301.15f, 535.0f}};
    JetwrightReadings too_strong = {22063.2f, 289.15f, 2000.0f}, no_gauge = {zero / zero, 289.15f, 570.0f};
    JetwrightSite sultry = {82000.0f, 308.15f, 0.8f}, no_weather = {82000.0f, 900.0f, 0.8f};
    JetwrightEstimate estimate;
    JetwrightReadingSpreads spreads = {500.0f, 2.0f, 5.0f, 0.03f, 0.04f}, no_spread = {-1.0f, 2.0f, 5.0f, 0.03f, 0.04f};
    JetwrightEstimateSpread spread;
    refused(jetwright_burner_estimate(&burner, &now[0], &estimate));
    refused(jetwright_burner_at(&burner, &sultry, 1500.0f));
    refused(jetwright_burner_read(&burner, image, length));
    refused(jetwright_burner_read(&burner, burner_image, burner_length - 1));
    burner_image[40] ^= 1;
    refused(jetwright_burner_read(&burner, burner_image, burner_length));
    burner_image[40] ^= 1;
    burner_image[4] ^= 2;
    refused(jetwright_burner_read(&burner, burner_image, burner_length));
    burner_image[4] ^= 2;
    refused(jetwright_burner_read(&burner, NULL, 0));
    refused(jetwright_burner_check_table(&burner, &table));
    CHECK(jetwright_burner_read(&burner, burner_image, burner_length));
    CHECK(jetwright_burner_check_table(&burner, &table));
    burner.burner_id ^= 1;
    refused(jetwright_burner_check_table(&burner, &table));
    burner.burner_id ^= 1;
    refused(jetwright_burner_at(&burner, &no_weather, 1500.0f));
    refused(jetwright_burner_estimate(&burner, &too_strong, &estimate));
    refused(jetwright_burner_estimate(&burner, &no_gauge, &estimate));
    refused(jetwright_burner_estimate_with_spread(&burner, &now[0], &no_spread, &estimate, &spread));
    refused(jetwright_burner_estimate_with_spread(&burner, &now[0], &spreads, &estimate, NULL));
    /* With the gas shut the gauge tells nothing; a blower that stands, and one against a closed path, tell no air. */
    JetwrightReadings shut = {60.0f, 289.15f, 570.0f};
    float blowing[] = {450.0f, 420.0f}, air_flow = 0.0f;
    refused(jetwright_burner_estimate(&burner, &shut, &estimate));
    refused(jetwright_burner_air_flow(&burner, 3.0f, 500.0f, &air_flow));
    refused(jetwright_burner_air_flow(&burner, 720.0f, 500.0f, &air_flow));
    refused(jetwright_burner_air_flow(&burner, zero / zero, 500.0f, &air_flow));
    for (int weather = 0; weather < 2; weather++) {
        if (weather == 1) {
            CHECK(jetwright_burner_at(&burner, &sultry, 1500.0f));
        }
        CHECK(jetwright_burner_estimate(&burner, &now[weather], &estimate));
        TELL("estimate", estimate.gas_kg_per_s, estimate.heat_net_w, estimate.air_flow_m3_per_s,
             estimate.air_kg_per_s, estimate.air_ratio, estimate.back_pa);
        CHECK(jetwright_burner_estimate_with_spread(&burner, &now[weather], &spreads, &estimate, &spread));
        CHECK(jetwright_burner_air_flow(&burner, blowing[weather], 400.0f, &air_flow));
        TELL("blowing", air_flow);
        TELL("spread", estimate.heat_net_w, spread.gas, spread.air, spread.air_ratio);
    }

    /* Gas and air from 10 to 20 kW. */
    JetwrightCrossLimitSettings settings = {0.92f,  target, 1.25f, 9000.0f, 24000.0f, {5000.0f, 20000.0f},
                                            {5000.0f, 20000.0f}, 0.03f, 0.01f};
    JetwrightLimited limited;
    CHECK(jetwright_cross_limit_make(&limit, &settings, NULL));
    for (int second = 0; second < 20; second++) {
        CHECK(jetwright_cross_limit_hold(&limit, 10000.0f, 10000.0f, 1.0f));
    }
    float gas = 10000.0f, air = 10000.0f;
    for (int step = 0; step < 20; step++) {
        CHECK(jetwright_cross_limit_step(&limit, 20000.0f, gas, air, 0.25f, &limited));
        TELL("limited", limited.gas_w, limited.air_w, (float)limited.gas_must_be_off);
        gas = moved(gas, limited.gas_w, 0.25f);
        air = moved(air, limited.air_w, 0.25f);
    }

    /* Purging, and what was used. */
    JetwrightAirChanges changes;
    float so_far = 0.0f;
    bool enough = false;
    CHECK(jetwright_air_changes_make(&changes, 0.0195f, 4.0f, 0.002f, NULL));
    int seconds = 0;
    while (!enough && seconds < 100) {
        CHECK(jetwright_air_changes_count(&changes, 0.008f, 1.0f, &so_far, &enough));
        seconds++;
    }
    TELL("blown", (float)seconds, so_far);
    JetwrightTotals totals;
    JetwrightUsed used;
    CHECK(jetwright_totals_make(&totals, 46.3e6f, 2.4f));
    for (int second = 0; second < 3600; second++) {
        CHECK(jetwright_totals_add(&totals, flow.mass_flow_kg_per_s, 1.0f));
    }
    CHECK(jetwright_totals_read(&totals, &used));
    TELL("used", used.gas_kg, used.heat_net_j, used.money);

    /* The whole controller: purged, lit by a person, out on a sensor that is gone. */
    JetwrightControllerSettings rules = {
        {{-10.0f, 60000.0f, 90000.0f, 900.0f, 5.0f}, {240.0f, 330.0f, 2.0f, 0.5f, 0.0f},
         {-10.0f, 60000.0f, 90000.0f, 900.0f, 5.0f}},
        10000.0f, 1.0f, 0.5f, 60.0f, 2.0f, 8.0f, 500, 0.01f, 0.002f, 3.0e6f, 0, 0.1f, 1.0f};
    JetwrightOutputs out = {JETWRIGHT_STATE_OFF, false, false, false, 0, 0, -1, 0.0f, 0.0f, {0.0f, 0.0f}, 0.0f};
    CHECK(jetwright_air_changes_make(&changes, 0.02f, 4.0f, 0.002f, NULL));
    CHECK(jetwright_cross_limit_make(&limit, &settings, NULL));
    /* What is refused has a name: here the speed of the third sensor, which is none. */
    JetwrightRefused why;
    rules.sensors[2].fastest = zero / zero;
    refused(jetwright_controller_make(&controller, &table, &limit, &changes, &rules, &why));
    TELL("named", (float)why.sensor, (float)why.name[0], (float)why.name[1]);
    rules.sensors[2].fastest = 90000.0f;
    CHECK(jetwright_controller_make(&controller, &table, &limit, &changes, &rules, &why));
    TELL("named", (float)why.sensor, (float)why.name[0]);
    gas = 10000.0f;
    air = 0.0f;
    for (unsigned tick = 0; tick < 200; tick++) {
        JetwrightInputs in;
        float gas_reading = out.asks_for_gas ? gas : 0.0f;
        in.now_ms = 4294960000u + 250u * tick;
        in.command = tick == 2     ? JETWRIGHT_COMMAND_START
                     : tick == 100 ? JETWRIGHT_COMMAND_LIGHT
                                   : JETWRIGHT_COMMAND_NOTHING;
        in.wanted_w = 20000.0f;
        in.readings[0] = gas_reading + (float)(tick % 2);
        in.readings[1] = 283.15f;
        in.readings[2] = tick < 180 ? air + (float)(tick % 2) : -500.0f;
        in.gas_w = in.readings[0];
        in.air_w = in.readings[2];
        in.air_flow_m3_per_s = in.air_w / 3.0e6f;
        in.second_air_flow_m3_per_s = -1.0f;
        in.chamber_is_cold = 1;
        in.permitted = 1;
        CHECK(jetwright_controller_tick(&controller, &in, &out));
        if (tick % 20 == 19) {
            TELL("tick", (float)out.state, (float)out.asks_for_gas, out.gas_w, out.air_w, out.set.gauge_pa);
        }
        gas = moved(gas, out.gas_w, 0.25f);
        air = moved(air, out.air_w, 0.25f);
    }
    return 0;
}
