"""Rows of the fuel room: liquid in the cylinder, what it gives, and what the line costs."""

from math import log, pi

from CoolProp.CoolProp import PropsSI
from scipy.optimize import brentq
from table import FOUND, FOUND_IN_CODE, computed_with, half_digit, row, write

rows = []
LIBRARY = computed_with("CoolProp")
EQUATION = f"reference equation of propane, Lemmon, McLinden and Wagner, J. Chem. Eng. Data 54 (2009) 3141 {LIBRARY}"

for celsius in range(-40, 51, 5):
    kelvin = celsius + 273.15
    given = {"composition": "C3H8=1", "temperature_k": kelvin}
    at = lambda what, quality: PropsSI(what, "T", kelvin, "Q", quality, "n-Propane")
    rows.append(row("vapor_pressure_pa", given, at("P", 0), "Pa", 0.005, EQUATION))
    rows.append(row("latent_heat_j_per_kg", given, at("H", 1) - at("H", 0), "J/kg", 0.015, EQUATION))
    rows.append(row("liquid_density_kg_per_m3", given, at("D", 0), "kg/m3", 0.005, EQUATION))
    rows.append(row("liquid_heat_capacity_j_per_kg_k", given, at("C", 0), "J/(kg K)", 0.03, EQUATION))

NAMES = {"nC4": "n-Butane", "iC4": "IsoButane", "C3H6": "Propylene", "C2H6": "Ethane", "nC5": "n-Pentane"}
for symbol, name in NAMES.items():
    for celsius in (-20, 0, 20):
        kelvin = celsius + 273.15
        at = lambda what, quality: PropsSI(what, "T", kelvin, "Q", quality, name)
        given = {"composition": f"{symbol}=1", "temperature_k": kelvin}
        source = f"reference equation of {name} {LIBRARY}"
        rows.append(row("vapor_pressure_pa", given, at("P", 0), "Pa", 0.01, source))
        rows.append(row("latent_heat_j_per_kg", given, at("H", 1) - at("H", 0), "J/kg", 0.02, source))

# Boiling mixture: Raoult's law leaves out what the liquids do to each other.
for mixture, parts in (("C3H8=0.5|nC4=0.5", {"Propane": 0.5, "n-Butane": 0.5}), ("C3H8=0.95|C2H6=0.05", {"Propane": 0.95, "Ethane": 0.05})):
    for celsius in (0, 20):
        fluid = "&".join(f"{name}[{share}]" for name, share in parts.items())
        value = PropsSI("P", "T", celsius + 273.15, "Q", 0, fluid)
        source = f"bubble pressure by the multi-fluid equation of GERG-2008, {LIBRARY}"
        rows.append(row("vapor_pressure_pa", {"composition": mixture, "temperature_k": celsius + 273.15}, value, "Pa", 0.06, source))

# The drop, not the temperature, is what a wrong equation gets wrong; what the slope of the second virial coefficient of
# Tsonopoulos is off near the dew point grows with the pressure (a third coefficient, by Orbey and Vera, does not help).
THROTTLED = {-20: 0.2, 0: 0.2, 10: 0.2, 20: 0.6, 30: 1.1, 40: 1.9}
SLOPE = "; the tolerance is what the slope of the second virial coefficient is off near the dew point"
for celsius, after in ((-20, 141325), (0, 142693), (0, 124868), (10, 142693), (10, 124868), (20, 142693), (20, 300000), (30, 142693), (40, 142693)):
    before = PropsSI("P", "T", celsius + 273.15, "Q", 1, "n-Propane")
    enthalpy = PropsSI("H", "T", celsius + 273.15, "Q", 1, "n-Propane")
    value = PropsSI("T", "P", after, "H", enthalpy, "n-Propane")
    given = {"composition": "C3H8=1", "temperature_k": celsius + 273.15, "pressure_before_pa": before, "pressure_after_pa": after}
    rows.append(row("throttled_temperature_k", given, value, "K", f"{THROTTLED[celsius]} abs", EQUATION + SLOPE))

TABLE = {
    100: (113, 167, 214, 277, 300), 90: (104, 152, 200, 247, 277), 80: (94, 137, 180, 214, 236),
    70: (83, 122, 160, 199, 214), 60: (75, 109, 140, 176, 192), 50: (64, 94, 125, 154, 167),
    40: (55, 79, 105, 131, 141), 30: (45, 66, 85, 107, 118), 20: (36, 51, 68, 83, 92), 10: (28, 38, 49, 60, 66),
}
MANUAL = "Kohler TP-6727, appendix D, 100 lb cylinder, continuous draw, approximate [found]"
for pounds, values in TABLE.items():
    for fahrenheit, value in zip((0, 20, 40, 60, 70), values):
        given = {"charge_lb": pounds, "air_temperature_f": fahrenheit}
        rows.append(row("cylinder_draw_btu_per_h", given, value * 1000, "Btu/h", 0.2 if pounds == 10 else 0.10, MANUAL))

INSIDE = {"0.5": 0.622, "0.75": 0.824, "1": 1.049, "1.25": 1.380}
CODE = "International Fuel Gas Code 2018, table 402.4({}), schedule 40 [found]"
for table, drop, feet, values in (
    ("3", 3.0, 10, (454, 949, 1790, 3670)), ("3", 3.0, 50, (190, 397, 748, 1540)), ("4", 6.0, 10, (660, 1380, 2600, 5340)),
):
    for size, value in zip(INSIDE.values(), values):
        given = {"diameter_in": size, "length_ft": feet, "drop_inh2o": drop, "relative_density": 0.60, "viscosity_pa_s": 12e-6}
        rows.append(row("code_pipe_ft3_per_h", given, value, "ft3/h", 0.02, CODE.format(table)))
# The table is in heat. Commercial propane of 2488 Btu/ft3, NFPA 58 annex B (from memory), puts its rows 0.3 to 0.9 %
# under the equation, as the natural-gas tables in cubic feet are; 2516 of the pure ideal gas would make that 2 %.
PROPANE = "International Fuel Gas Code 2018, table 402.4(28), propane at 11 inches, schedule 40 [found]; 2488 Btu/ft3 of commercial propane, NFPA 58 annex B [from memory]"
for feet, values in ((10, (291, 608, 1150, 2350)), (20, (200, 418, 787, 1620)), (30, (160, 336, 632, 1300)), (50, (122, 255, 480, 985)), (60, (110, 231, 434, 892))):
    for size, value in zip(INSIDE.values(), values):
        given = {"diameter_in": size, "length_ft": feet, "drop_inh2o": 0.5, "relative_density": 1.50, "viscosity_pa_s": 8e-6}
        rows.append(row("code_pipe_ft3_per_h", given, value * 1000 / 2488, "ft3/h", 0.02, PROPANE))

rows.append(row(
    "isothermal_inlet_pa",
    {"outlet_pa": 9e5, "mass_flow_kg_per_s": 145.4847572636031, "diameter_m": 0.5, "work_j_per_kg": 1e6 / 11.3, "losses": 0.00185 * 1000 / 0.5},
    "1000000", "Pa", 1e-7, f"isothermal_gas of fluids 1.3.1, its documented example of 145.4848 kg/s {FOUND_IN_CODE}"))
MASSEY = "Massey, Mechanics of Fluids, example 11.{}, as worked in an open collection of solutions [found]"
given = {"inlet_pa": 8e5, "outlet_pa": 5e5, "mass_flow_kg_per_s": 0.32, "darcy_factor": 0.024, "length_m": 145, "work_j_per_kg": 287 * 288}
rows.append(row("isothermal_diameter_m", given, "0.041", "m", "0.0006 abs", MASSEY.format(7) + "; half of its last digit and the 0.0001 m of the logarithm it leaves out"))
whole = lambda d: 8e5**2 - 5e5**2 - (0.32 / (pi / 4 * d * d)) ** 2 * 287 * 288 * (0.024 * 145 / d + 2 * log(8 / 5))
rows.append(row("isothermal_diameter_m", given, brentq(whole, 0.03, 0.06), "m", 1e-5, "isothermal flow with friction, solved for the diameter with the logarithm kept [computed from the formula]"))
rows.append(row("isothermal_middle_pa", given, "667100", "Pa", 0.001, MASSEY.format(7) + ", which leaves out the logarithm of the pressures"))
rows.append(row(
    "adiabatic_line_kg_per_s",
    {"stagnation_pa": 5.1e5, "outlet_pa": 2.8e5, "stagnation_k": 294, "friction_length": 21.12 - 5.206, "diameter_m": 0.02, "isentropic_exponent": 1.4},
    "0.109", "kg/s", half_digit("0.109"), MASSEY.format(6) + "; friction lengths 21.12 and 5.206 at the ends, where it reads 21.37 and 5.21 off a chart"))
fanno = lambda m: (1 - m * m) / (1.4 * m * m) + 1.2 / 1.4 * log(1.2 * m * m / (1 + 0.2 * m * m))
mach = 85 / (1.4 * 287 * 450) ** 0.5
out = brentq(lambda m: fanno(mach) - fanno(m) - 0.023 * 27 / 0.05, mach, 0.99)
p0 = 220e3 * (1 + 0.2 * mach**2) ** 3.5
p2 = 220e3 * mach / out * ((1 + 0.2 * mach**2) / (1 + 0.2 * out**2)) ** 0.5
rows.append(row(
    "adiabatic_line_kg_per_s",
    {"stagnation_pa": p0, "outlet_pa": p2, "stagnation_k": 450 * (1 + 0.2 * mach**2), "friction_length": 0.023 * 27 / 0.05, "diameter_m": 0.05, "isentropic_exponent": 1.4},
    "0.2843", "kg/s", 0.0005, "Cengel and Cimbala, Fluid Mechanics, example 12-17, Mach 0.42 at the outlet, there by the Fanno relation [found]"))
write("fuel", rows)
