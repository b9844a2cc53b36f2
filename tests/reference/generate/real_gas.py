"""real_gas.csv: density, isentropic mass flux, critical flow function, saturation, viscosity from Helmholtz equations.

Written with CoolProp 8.0.0. The flux is the largest density times speed along the isentrope from the supply to the
room; states are left out that stand above 0.97 of saturation or whose equilibrium expansion turns wet on the way,
because a real jet stays a supersaturated vapor there.
"""

import math

import CoolProp.CoolProp as CP
from scipy.optimize import minimize_scalar

from table import computed_with, row, write

SOURCE = computed_with("CoolProp")
GAS_CONSTANT = 8.314462618
FLUIDS = {"C3H8": "Propane", "CH4": "Methane", "C2H6": "Ethane", "nC4": "n-Butane", "iC4": "IsoButane",
          "C3H6": "Propylene", "N2": "Nitrogen", "CO2": "CarbonDioxide", "H2": "Hydrogen", "O2": "Oxygen", "Ar": "Argon"}
NAMES = {"C3H8": "propane", "CH4": "methane", "C2H6": "ethane", "nC4": "n-butane", "iC4": "isobutane",
         "C3H6": "propylene", "N2": "nitrogen", "CO2": "carbon dioxide", "H2": "hydrogen", "O2": "oxygen", "Ar": "argon"}
EQUATION = {"C3H8": "Lemmon, McLinden & Wagner 2009", "CH4": "Setzmann & Wagner 1991", "C2H6": "Buecker & Wagner 2006",
            "nC4": "Buecker & Wagner 2006", "iC4": "Buecker & Wagner 2006", "C3H6": "Lemmon et al.",
            "N2": "Span et al. 2000"}
PSI = 6894.757293168361
rows = []


def state(species):
    return CP.AbstractState("HEOS", FLUIDS[species])


def saturation(species, kelvin):
    """Dew-point pressure, or infinity above the critical temperature."""
    gas = state(species)
    if kelvin >= gas.T_critical():
        return math.inf
    gas.update(CP.QT_INPUTS, 1.0, kelvin)
    return gas.p()


def flux(gas, supply, kelvin, room):
    """Largest rho u between supply and room along the isentrope, and the pressure it stands at; None if wet."""
    gas.update(CP.PT_INPUTS, supply, kelvin)
    entropy, enthalpy = gas.smass(), gas.hmass()

    def at(pressure):
        gas.update(CP.PSmass_INPUTS, pressure, entropy)
        if gas.phase() == CP.iphase_twophase:
            raise ArithmeticError
        return gas.rhomass() * math.sqrt(max(0.0, 2 * (enthalpy - gas.hmass())))

    try:
        found = minimize_scalar(lambda p: -at(p), bounds=(max(room, 0.4 * supply), supply), method="bounded",
                                options={"xatol": 1e-7 * supply})
        throat = found.x
        if throat < room * (1 + 1e-5):
            throat = room
        for step in range(1, 25):  # dry all the way down
            at(supply + (throat - supply) * step / 24)
        return at(throat), throat
    except (ArithmeticError, ValueError):
        return None


def halton(index, base):
    result, fraction = 0.0, 1.0
    while index:
        fraction /= base
        result += fraction * (index % base)
        index //= base
    return result


def states(species):
    """About 48 states over the ranges and up to a dozen either side of choking."""
    gas, kept, index = state(species), [], 1
    while len(kept) < 48 and index < 4000:
        kelvin = round(253.15 + 70 * halton(index, 2), 2)
        gauge = round(0.1 * 300 ** halton(index, 3) * PSI, 1)
        room = round(70_000 + 31_325 * halton(index, 5), 0)
        index += 1
        kept += usable(gas, species, gauge, room, kelvin)
    for kelvin in (258.15, 288.15, 318.15):
        for room in (75_000.0, 101_325.0):
            for share in (0.98, 1.02):
                for guess in (1.75, 1.85, 1.7, 1.8):
                    # supply at which the throat would just reach the room, from the throat ratio found there
                    supply = room * guess
                    if supply >= 0.97 * saturation(species, kelvin):
                        continue
                    found = flux(gas, supply, kelvin, 0.4 * supply)
                    if found is None:
                        continue
                    kept += usable(gas, species, round(room / (found[1] / supply) * share - room, 1), room, kelvin)
                    break
    return kept


def usable(gas, species, gauge, room, kelvin):
    supply = gauge + room
    if gauge <= 0 or supply >= 0.97 * saturation(species, kelvin):
        return []
    found = flux(gas, supply, kelvin, room)
    if found is None:
        return []
    gas.update(CP.PT_INPUTS, supply, kelvin)
    return [(gauge, room, kelvin, gas.rhomass(), found[0], found[1] > room)]


# The densities that a virial equation cut after its second coefficient can be held to.
DENSITY = {"CH4": 1e-3, "C2H6": 1e-3, "C3H8": 3e-3, "nC4": 3e-3}
for species in ("C3H8", "CH4", "C2H6", "nC4"):
    both = []
    for gauge, room, kelvin, density, found, choked in states(species):
        given = {"gas": NAMES[species], "gauge_pressure_pa": gauge, "ambient_pressure_pa": room, "gas_temperature_k": kelvin}
        source = f"{EQUATION[species]} {SOURCE}"
        both.append((choked, row("isentropic_mass_flux_kg_per_m2_s", given, found, "kg/(m2 s)", 1e-3, source),
                     row("mass_density_kg_per_m3", given, density, "kg/m3", DENSITY[species], source)))
    print(species, len(both), "states,", sum(c for c, _, _ in both), "choked")
    rows += [f for _, f, _ in both]
    rows += [d for _, _, d in both[::2]]

# Densities to 4 bar absolute, short of saturation.
for species in ("C3H8", "CH4", "C2H6", "nC4"):
    for kelvin in (250.0, 288.15, 320.0):
        for pressure in (101_325.0, 200_000.0, 400_000.0):
            if pressure < 0.97 * saturation(species, kelvin):
                gas = state(species)
                gas.update(CP.PT_INPUTS, pressure, kelvin)
                rows.append(row("mass_density_kg_per_m3",
                                {"gas": NAMES[species], "absolute_pressure_pa": pressure, "gas_temperature_k": kelvin},
                                gas.rhomass(), "kg/m3", DENSITY[species], f"{EQUATION[species]} {SOURCE}"))


def mixture_density(composition, pressure, kelvin):
    gas = CP.AbstractState("HEOS", "&".join(FLUIDS[s] for s in composition))
    gas.set_mole_fractions(list(composition.values()))
    gas.specify_phase(CP.iphase_gas)
    gas.update(CP.PT_INPUTS, pressure, kelvin)
    return gas.rhomass()


NATURAL = {"CH4": 0.933212, "C2H6": 0.025656, "C3H8": 0.015368, "N2": 0.010350, "CO2": 0.015414}
BLEND = {"C3H8": 0.6, "nC4": 0.4}
COMMERCIAL = {"C3H8": 0.70, "C3H6": 0.25, "nC4": 0.05}
for pair in (("C3H8", "C3H6"), ("C3H6", "nC4"), ("C3H8", "nC4")):
    numbers = [CP.get_fluid_param_string(FLUIDS[s], "CAS") for s in pair]
    for ordered in (numbers, numbers[::-1]):
        try:
            CP.get_mixture_binary_pair_data(*ordered, "betaT")
            break
        except ValueError:
            continue
    else:
        CP.apply_simple_mixing_rule(*numbers, "Lorentz-Berthelot")
        print("Lorentz-Berthelot rule for", pair)
for composition, states_, tolerance, source in (
    (NATURAL, ((101_325.0, 288.15), (101_325.0, 253.15), (200_000.0, 273.15), (300_000.0, 288.15), (300_000.0, 320.0)), 1e-3,
     "ISO 6976:2016 annex D example 1 composition, GERG-2008 mixture parameters"),
    (BLEND, ((101_325.0, 288.15), (150_000.0, 288.15), (200_000.0, 310.0)), 4e-3,
     "Propane-butane, composition invented, GERG-2008 mixture parameters"),
    (COMMERCIAL, ((101_325.0, 288.15), (200_000.0, 288.15), (300_000.0, 310.0)), 4e-3,
     "Propane-propylene-butane, composition invented"),
):
    text = "|".join(f"{s}={x:g}" for s, x in composition.items())
    for pressure, kelvin in states_:
        rows.append(row("mass_density_kg_per_m3",
                        {"gas": text, "absolute_pressure_pa": pressure, "gas_temperature_k": kelvin},
                        mixture_density(composition, pressure, kelvin), "kg/m3", tolerance, f"{source} {SOURCE}"))

# Critical flow function of ISO 9300: mass flux sqrt(R T0 / M) / p0 of a choked loss-free nozzle.
for species, temperatures, pressures in (("N2", (273.15, 293.15, 313.15), (101_325.0, 300_000.0)),
                                         ("CH4", (273.15, 293.15, 313.15), (101_325.0, 300_000.0)),
                                         ("C3H8", (273.15, 288.15, 313.15), (101_325.0, 200_000.0, 300_000.0))):
    for kelvin in temperatures:
        for pressure in pressures:
            found = flux(state(species), pressure, kelvin, 0.4 * pressure)
            if found is None:
                print("wet:", species, kelvin, pressure)
                continue
            value = found[0] * math.sqrt(GAS_CONSTANT / state(species).molar_mass() * kelvin) / pressure
            rows.append(row("critical_flow_function",
                            {"gas": NAMES[species], "absolute_pressure_pa": pressure, "gas_temperature_k": kelvin},
                            value, "", 1e-3, f"Defined as in ISO 9300, {EQUATION[species]} {SOURCE}"))

for species, tolerance in (("C3H8", 5e-3), ("nC4", 2e-2), ("iC4", 2e-2), ("C3H6", 2e-2)):
    for celsius in (-40, -30, -20, -10, 0, 10, 20, 30, 40, 50):
        rows.append(row("saturation_pressure_pa", {"gas": NAMES[species], "gas_temperature_k": celsius + 273.15},
                        saturation(species, celsius + 273.15), "Pa", tolerance, f"{EQUATION[species]} {SOURCE}"))

for species in FLUIDS:
    for kelvin in (253.15, 288.7056, 293.1, 323.15):
        gas = state(species)
        try:
            if saturation(species, kelvin) < 101_325:
                continue
            gas.update(CP.PT_INPUTS, 101_325, kelvin)
            viscosity = gas.viscosity()
        except ValueError as error:
            print("no viscosity:", species, kelvin, str(error)[:60])
            continue
        rows.append(row("dynamic_viscosity_pa_s",
                        {"gas": NAMES[species], "absolute_pressure_pa": 101_325, "gas_temperature_k": kelvin},
                        viscosity, "Pa s", 5e-2, f"Reference correlation of the species {SOURCE}"))

write("real_gas", rows)
