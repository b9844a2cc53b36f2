"""furnace.csv: walls, surfaces, openings, heating times, heats. Written with scipy, ht, CoolProp, chemicals, cantera."""

import cantera
import numpy as np
from chemicals import CAS_from_any, Hfus, MW, Tm
from CoolProp.CoolProp import PropsSI
from ht import Nu_vertical_plate_Churchill
from scipy import integrate, optimize, special

from table import FOUND, FROM_FORMULA, FROM_MEMORY, computed_with, half_digit, row, write

rows = []
COULSON = "Coulson and Richardson, Chemical Engineering vol. 1, example 9.3 (p 391)"
INCROPERA = "Incropera et al., Fundamentals of Heat and Mass Transfer, 6th ed., "
HOLMAN = "Holman, Heat Transfer, example 3-2"
KREITH = "Kreith, Manglik, Bohn, Principles of Heat Transfer, 7th ed., "

# Walls between faces of known temperature.
three = {"hot_k": 1200, "cold_k": 330, "thickness_1_m": 0.2, "conductivity_1": 1.4, "thickness_2_m": 0.1,
         "conductivity_2": 0.21, "thickness_3_m": 0.2, "conductivity_3": 0.7}
rows.append(row("wall_heat_w_per_m2", three, "961", "W/m2", "1 abs", f"{COULSON} {FOUND}"))
for face, kelvin in ((1, "1063"), (2, "604.7")):
    rows.append(row("wall_face_k", {**three, "face": face}, kelvin, "K", half_digit(kelvin), f"{COULSON} {FOUND}"))
kreith = {"hot_k": 1413.15, "cold_k": 533.15, "thickness_1_m": 0.198, "conductivity_1": 0.27}
rows.append(row("wall_heat_w_per_m2", kreith, "1200", "W/m2", 2.5e-3,
                f"{KREITH}example 1.12, thickness recomputed {FROM_FORMULA}"))
rows.append(row("box_heat_w", {"side_m": 0.5, "thickness_m": 0.1, "conductivity": 1.04, "difference_k": 450}, "8592",
                "W", "0.5 abs", f"{HOLMAN} {FOUND}"))

# A wall whose conductivity changes, and a round one: conduction integrated by scipy.
fiber = ((293.15, 0.040), (473.15, 0.055), (673.15, 0.09), (873.15, 0.14), (1073.15, 0.20), (1273.15, 0.285))
whole = integrate.quad(lambda t: np.interp(t, *zip(*fiber)), 330, 1250, points=[p[0] for p in fiber], limit=200)[0]
rows.append(row("fibre_wall_heat_w_per_m2", {"hot_k": 1250, "cold_k": 330, "thickness_m": 0.05}, whole / 0.05, "W/m2",
                1e-4, f"Integral of the table's own conductivity over temperature {computed_with('scipy')}"))
for radius, thick in ((0.15, 0.075), (0.1, 0.1), (0.3, 0.2)):
    heat = 2 * np.pi * 0.5 * 0.4 * 800 / np.log((radius + thick) / radius)
    rows.append(row("round_wall_heat_w", {"radius_m": radius, "thickness_m": thick, "length_m": 0.5,
                                          "conductivity": 0.4, "hot_k": 1200, "cold_k": 400}, heat, "W", 1e-4,
                    f"2 pi k L dT / ln(r2/r1) {FROM_FORMULA}"))

# Outside faces.
for celsius in (40, 60, 80, 100, 150, 200, 300):
    for height in (0.3, 1.0):
        face, air = celsius + 273.15, 293.15
        film = (face + air) / 2
        density, viscosity, k, cp = (PropsSI(x, "T", film, "P", 101325, "Air") for x in ("D", "V", "L", "C"))
        grashof = 9.80665 * (face - air) / film * height**3 * (density / viscosity) ** 2
        h = Nu_vertical_plate_Churchill(cp * viscosity / k, grashof) * k / height
        rows.append(row("convection_w_per_m2_k", {"face_k": face, "air_k": air, "height_m": height}, h, "W/(m2 K)", 8e-3,
                        f"Churchill and Chu 1975, air of CoolProp {computed_with('ht')}"))
rows.append(row("plate_loss_w", {"face_k": 505.15, "air_k": 296.15, "height_m": 0.71, "width_m": 1.02}, "1060", "W",
                1.5e-2, f"{INCROPERA}example 9.2, properties rounded there {FOUND}"))
rows.append(row("duct_loss_w_per_m", {"face_k": 318.15, "air_k": 288.15, "height_m": 0.3, "width_m": 0.75}, "246", "W/m",
                6e-2, f"{INCROPERA}example 9.3; its sides by the laminar form, 13 % below the general one used here {FOUND}"))
rows.append(row("radiation_w", {"area_m2": 0.9 * np.pi * 0.02, "hot_k": 1000, "room_k": 800}, "1893", "W", 1e-3,
                f"{KREITH}example 1.4, a meter of rod {FOUND}"))
for depth, share in ((0.5, "0.8013"), (1, "0.6720"), (2, "0.5142"), (4, "0.3566"), (10, "0.1910")):
    rows.append(row("passed_share", {"depth_over_radius": depth}, share, "", "0.0004 abs",
                    f"Clausing, Ann. Phys. 12 (1932) 961 {FROM_MEMORY}"))

# Heating times: lumped.
rows.append(row("lumped_time_s", {"volume_over_area_m": 0.000706 / 6, "density": 8500, "specific_heat": 400,
                                  "conductivity": 20, "film": 400, "emissivity": 0, "chamber_k": 473.15,
                                  "start_k": 298.15, "target_k": 472.15}, "5.2", "s", "0.05 abs",
                f"{INCROPERA}example 5.1 {FOUND}"))
rows.append(row("lumped_time_s", {"volume_over_area_m": 0.0015, "density": 2770, "specific_heat": 875,
                                  "conductivity": 177, "film": 40, "emissivity": 0.8, "chamber_k": 448.15,
                                  "start_k": 298.15, "target_k": 423.15}, "123", "s", "1.5 abs",
                f"{INCROPERA}example 5.3, 423 s less the 300 s of the cure {FOUND}"))

# Heating times: series of slab and cylinder, all terms that count.
def slab(bi, fo):
    total = 0.0
    for n in range(60):
        z = optimize.brentq(lambda z: z * np.sin(z) - bi * np.cos(z), n * np.pi, n * np.pi + np.pi / 2 - 1e-12)
        total += 4 * np.sin(z) / (2 * z + np.sin(2 * z)) * np.exp(-z * z * fo)
    return total


def cylinder(bi, fo):
    total, zeros, ones = 0.0, special.jn_zeros(0, 60), np.concatenate(([1e-9], special.jn_zeros(1, 59)))
    for low, high in zip(ones, zeros):
        z = optimize.brentq(lambda z: z * special.j1(z) - bi * special.j0(z), low, high)
        total += 2 / z * special.j1(z) / (special.j0(z) ** 2 + special.j1(z) ** 2) * np.exp(-z * z * fo)
    return total


for shape, series, ratio in (("slab", slab, 1), ("round", cylinder, 2)):
    for bi in (0.25, 1.0, 3.0, 10.0):
        for theta in (0.8, 0.5, 0.2, 0.05):
            fourier = optimize.brentq(lambda fo: series(bi, fo) - theta, 0.01, 60, xtol=1e-13)
            half, k, density, heat, hot, cold = 0.05, 2.0, 2000.0, 1000.0, 1300.0, 300.0
            if bi / ratio < 0.1:
                continue
            rows.append(row(f"{shape}_time_s", {"size_m": 2 * half, "conductivity": k, "density": density,
                                                "specific_heat": heat, "film": bi * k / half, "chamber_k": hot,
                                                "start_k": cold, "target_k": hot - theta * (hot - cold)},
                            fourier * half**2 * density * heat / k, "s", 1e-3,
                            f"Series solution, {INCROPERA}equations 5.39 and 5.47, 60 terms {computed_with('scipy')}"))

# A deep wall whose face is suddenly hot, and one under a steady fire.
for seconds, depth in ((600, 0.02), (1800, 0.04), (3600, 0.06), (3600, 0.02)):
    k, density, heat = 0.34, 790.0, 1000.0
    spread = np.sqrt(k / density / heat * seconds)
    rows.append(row("deep_wall_k", {"seconds": seconds, "depth_m": depth}, 300 + 1000 * special.erfc(depth / 2 / spread),
                    "K", 1.5e-3, f"300 + 1000 erfc(x / (2 sqrt(a t))), {INCROPERA}equation 5.57 {computed_with('scipy')}"))
for seconds in (300, 1200, 3600):
    rise = 2 * 3000 * np.sqrt(seconds / (np.pi * 0.34 * 790 * 1000))
    rows.append(row("fired_face_rise_k", {"seconds": seconds, "flux_w_per_m2": 3000}, rise, "K", 2e-3,
                    f"2 q sqrt(t / (pi k rho c)), {INCROPERA}equation 5.59 {FROM_FORMULA}"))

# Two layers of the table under a steady fire, film outside: lines of 900 cells, by scipy.
brick_k, brick_c = [(293.15, .22), (673.15, .27), (873.15, .30), (1073.15, .32), (1273.15, .34), (1473.15, .36)], [
    (293.15, 820), (673.15, 954), (873.15, 994), (1073.15, 1018), (1273.15, 1034), (1473.15, 1050)]
fibre_c = [(293.15, 800), (673.15, 1010), (1363.15, 1130)]


def layered(seconds, flux, film):
    n1, n2 = 540, 360
    dx = np.concatenate((np.full(n1, 0.075 / n1), np.full(n2, 0.05 / n2)))
    both = lambda t, a, b: np.concatenate((np.interp(t[:n1], *zip(*a)), np.interp(t[n1:], *zip(*b))))
    density = np.concatenate((np.full(n1, 790.0), np.full(n2, 128.0)))

    def rate(_, t):
        k = both(t, brick_k, fiber)
        between = (t[:-1] - t[1:]) / (dx[:-1] / 2 / k[:-1] + dx[1:] / 2 / k[1:])
        last = (t[-1] - 293.15) / (dx[-1] / 2 / k[-1] + 1 / film)
        flow = np.concatenate(([flux], between, [last]))
        return (flow[:-1] - flow[1:]) / (density * both(t, brick_c, fibre_c) * dx)

    t = integrate.solve_ivp(rate, (0, seconds), np.full(n1 + n2, 293.15), method="LSODA", lband=1, uband=1, rtol=1e-7,
                            atol=1e-5).y[:, -1]
    return t[0] + flux * dx[0] / 2 / np.interp(t[0], *zip(*brick_k)), np.interp(0.06, np.cumsum(dx) - dx / 2, t)


for seconds, flux in ((600, 9000), (3600, 5000), (14400, 3000)):
    hot, inside = layered(seconds, flux, 12)
    inputs = {"seconds": seconds, "flux_w_per_m2": flux, "film": 12}
    source = f"75 mm insulating brick 26 and 50 mm fiber blanket, properties of the table {computed_with('scipy')}"
    rows.append(row("layered_face_k", inputs, hot, "K", 1.5e-3, source))
    rows.append(row("layered_60_mm_k", inputs, inside, "K", 1.5e-3, source))

# Heat of steel: EN 1993-1-2, integrated.
def steel(t):
    if t <= 600:
        return 425 + 0.773 * t - 1.69e-3 * t**2 + 2.22e-6 * t**3
    if t <= 735:
        return 666 + 13002 / (738 - t)
    return 545 + 17820 / (t - 731) if t <= 900 else 650


for celsius in (200, 600, 700, 735, 760, 900, 1100, 1200):
    heat = integrate.quad(steel, 20, celsius, points=[p for p in (600, 735, 900) if p < celsius] or None, limit=400)[0]
    rows.append(row("heat_j_per_kg", {"name": "steel", "from_c": 20, "to_c": celsius}, heat, "J/kg", 1e-4,
                    f"EN 1993-1-2:2005, 3.4.1.2, integrated {computed_with('scipy')}"))
for name in ("copper", "aluminum", "silver"):
    cas = CAS_from_any(name)
    ours = "aluminum" if name == "aluminum" else name
    rows.append(row("heat_of_melting_j_per_kg", {"name": ours}, Hfus(cas) / MW(cas) * 1e3, "J/kg", 1e-2,
                    f"CRC Handbook {computed_with('chemicals')}"))
    rows.append(row("melting_point_c", {"name": ours}, Tm(cas) - 273.15, "C", "1 abs",
                    f"CRC Handbook {computed_with('chemicals')}"))

# What of a fire stays: equilibrium products of propane at each temperature, net heat 46.35 MJ/kg.
gas = cantera.Solution("gri30.yaml")
for ratio in (1.0, 1.2):
    gas.TP = 298.15, 101325
    gas.set_equivalence_ratio(1 / ratio, "C3H8", "O2:0.20946,N2:0.78084,AR:0.00934,CO2:0.00036")
    start, share, mixture = gas.enthalpy_mass, gas["C3H8"].Y[0], gas.X
    for kelvin in (800, 1200, 1523, 1700, 1800):
        gas.TPX = kelvin, 101325, mixture
        gas.equilibrate("TP")
        rows.append(row("available_share", {"flue_k": kelvin, "air_ratio": ratio},
                        (start - gas.enthalpy_mass) / share / 46.35e6, "", "0.0015 abs",
                        f"Propane in dry air, GRI-Mech 3.0 thermochemistry {computed_with('cantera')}"))

write("furnace", rows)
