"""site.csv: standard pressure, station pressure, moist-air density, oxygen of moist air.

Written with CoolProp 8.0.0 and fluids 1.3.1.
"""

import math

from CoolProp.HumidAirProp import HAPropsSI
from fluids.atmosphere import ATMOSPHERE_1976

from table import FROM_FORMULA, computed_with, row, write

rows = []

for altitude in (0, 250, 500, 1000, 1500, 1600, 2000, 2500, 3000):
    rows.append(row("standard_pressure_pa", {"altitude_m": altitude}, ATMOSPHERE_1976(altitude).P, "Pa", 1e-4,
                    "ISO 2533:1975 and U.S. Standard Atmosphere 1976, geometric altitude " + computed_with("fluids")))

# The altimeter setting stands for the standard atmosphere shifted in height so that it meets the station:
# (p/p0)^n = (sea level/p0)^n - L h / T0 with n = R L / (g M), L = 6.5 K/km.
EXPONENT = 8.31432 * 0.0065 / (9.80665 * 0.0289644)
EARTH_RADIUS = 6_356_766.0
for sea_level in (98_000, 101_325, 103_500):
    for altitude in (0, 500, 1600, 2500):
        geopotential = altitude * EARTH_RADIUS / (EARTH_RADIUS + altitude)
        base = (sea_level / 101_325) ** EXPONENT - 0.0065 * geopotential / 288.15
        rows.append(row("station_pressure_pa", {"sea_level_pressure_pa": sea_level, "altitude_m": altitude},
                        101_325 * base ** (1 / EXPONENT), "Pa", 2e-4,
                        "WMO-No. 8, Guide to Instruments and Methods of Observation, part I chapter 3 (altimeter setting), "
                        "constants of U.S. Standard Atmosphere 1976 " + FROM_FORMULA))

# Picard et al. 2008 by its own formula, written out here on its own; x_CO2 = 400 ppm.
def cipm_2007(celsius, pressure, humidity):
    t = celsius + 273.15
    saturation = math.exp(1.2378847e-5 * t * t - 1.9121316e-2 * t + 33.93711047 - 6.3431645e3 / t)
    enhancement = 1.00062 + 3.14e-8 * pressure + 5.6e-7 * celsius**2
    vapor = humidity * enhancement * saturation / pressure
    a0, a1, a2, b0, b1 = 1.58123e-6, -2.9331e-8, 1.1043e-10, 5.707e-6, -2.051e-8
    c0, c1, d, e = 1.9898e-4, -2.376e-6, 1.83e-11, -0.765e-8
    z = 1 - pressure / t * (a0 + a1 * celsius + a2 * celsius**2 + (b0 + b1 * celsius) * vapor
                            + (c0 + c1 * celsius) * vapor**2) + (pressure / t) ** 2 * (d + e * vapor**2)
    return pressure * 28.96546e-3 / (z * 8.314472 * t) * (1 - vapor * (1 - 18.01528e-3 / 28.96546e-3))


for celsius, pressure, humidity, printed in (
    (20, 101_325, 0.5, 1.199314), (20, 101_325, 0, 1.204557), (15, 101_325, 0, 1.225521), (0, 101_325, 0, 1.293049),
    (20, 100_000, 0.5, 1.183557), (25, 101_325, 0.6, 1.175922), (30, 90_000, 0.8, 1.019800),
):
    value = cipm_2007(celsius, pressure, humidity)
    assert abs(value / printed - 1) < 2e-6, (celsius, pressure, humidity, value)
    rows.append(row("moist_air_density_kg_per_m3",
                    {"air_temperature_k": celsius + 273.15, "pressure_pa": pressure, "humidity": humidity},
                    value, "kg/m3", 1e-5,
                    "Picard, Davis, Glaeser, Fujii, Metrologia 45 (2008) 149, CIPM-2007, 400 ppm CO2 " + FROM_FORMULA))

for celsius in (-30, -15, 0.5, 10, 20, 35, 50):
    for pressure in (70_000, 84_000, 105_000):
        for humidity in (0, 0.5, 1):
            if humidity == 1 and pressure != 84_000:
                continue
            state = ("T", celsius + 273.15, "P", pressure, "R", humidity)
            given = {"air_temperature_k": celsius + 273.15, "pressure_pa": pressure, "humidity": humidity}
            density = (1 + HAPropsSI("W", *state)) / HAPropsSI("Vda", *state)
            rows.append(row("moist_air_density_kg_per_m3", given, density, "kg/m3", 5e-4,
                            "Humid air after ASHRAE RP-1485 " + computed_with("CoolProp")))
            if celsius > 0 and humidity > 0:
                oxygen = 0.20946 * (1 - HAPropsSI("psi_w", *state))
                rows.append(row("air_oxygen_fraction", given, oxygen, "", 3e-4,
                                "20.946 % of dry air (ISO 2533:1975 table 1), vapor after ASHRAE RP-1485 "
                                + computed_with("CoolProp")))
rows.append(row("air_oxygen_fraction", {"air_temperature_k": 288.15, "pressure_pa": 101_325, "humidity": 0}, "0.20946",
                "", 1e-6, "ISO 2533:1975 table 1, dry air [found]"))

write("site", rows)
