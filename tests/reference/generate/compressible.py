"""compressible.csv: perfect-gas nozzles and Fanno flow from textbooks and standards. Python standard library alone."""

import math

from table import FOUND, FOUND_IN_CODE, FROM_FORMULA, row, write

rows = []
for g in (1.67, 1.4, 1.3, 1.2, 1.13, 1.11):
    r = (2 / (g + 1)) ** (g / (g - 1))
    given = {"isentropic_exponent": g}
    rows.append(row("critical_pressure_ratio", given, r, "", 1e-6, f"NACA report 1135 (1953), equation 44 at Mach 1 {FROM_FORMULA}"))
    rows.append(row("perfect_gas_critical_flow_function", given, math.sqrt(g * (2 / (g + 1)) ** ((g + 1) / (g - 1))), "", 1e-6,
                    f"ISO 9300, ideal critical flow function {FROM_FORMULA}"))

# A loss-free nozzle, flow given or area given.
nozzle = {"molar_mass_kg_per_kmol": 28.97, "isentropic_exponent": 1.4, "compression_factor": 1, "temperature_k": 288,
          "absolute_pressure_pa": 101_000}
for back, flow, tolerance in ((80_000, "0.0201", 1e-2), (40_000, "0.024", 2.1e-2)):
    rows.append(row("nozzle_mass_flow_kg_per_s", nozzle | {"back_pressure_pa": back, "area_m2": 1e-4}, flow, "kg/s", tolerance,
                    "Munson, Young & Okiishi, Fundamentals of Fluid Mechanics, examples 11.5 and 11.6, from a chart, printed "
                    f"to two or three digits {FOUND}"))
valve = {"molar_mass_kg_per_kmol": 51, "isentropic_exponent": 1.11, "compression_factor": 0.90, "temperature_k": 348,
         "absolute_pressure_pa": 670_000}
for back, area, tolerance, name in ((101_325, 3.6990e-3, 1e-4, "example 1, critical"),
                                    (532_000, 4.24836e-3, 1e-3, "example 2, subcritical; its constant 17.9 is rounded")):
    rows.append(row("nozzle_mass_flow_kg_per_s", valve | {"back_pressure_pa": back, "area_m2": f"{area * 0.975:.9g}"},
                    24_270 / 3600, "kg/s", tolerance,
                    f"API 520 part 1, {name}: area times 0.975, as fluids 1.3.1 reproduces it {FOUND_IN_CODE}"))

# A bore without a mouth's loss, as long as friction needs to bring Mach 0.5 to Mach 1, passes p0*/p0 of a nozzle's flow.
rows.append(row("choked_bore_over_nozzle", {"isentropic_exponent": 1.4, "friction_length": "1.06906031"},
                f"{1 / 1.33984375:.9g}", "", 1e-6,
                "Fanno flow at Mach 0.5: f L/D 1.06906031, p0/p0* 1.33984375, from the Virginia Tech compressible "
                f"aerodynamics calculator, as pygasflow tests it {FOUND_IN_CODE}"))

write("compressible", rows)
