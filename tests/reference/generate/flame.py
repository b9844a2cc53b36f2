"""Flames by a general equilibrium solver: Cantera 3.2.0, gri30.yaml, HP and TP equilibrium, real dry air."""

import cantera

from table import write

AIR = {"O2": 0.20946, "N2": 0.78084, "AR": 0.00934, "CO2": 0.00036}
SOURCE = "Equilibrium of GRI-Mech 3.0 [computed with Cantera 3.2.0]"
FUELS = [
    ("C3H8=1", {"C3H8": 1}),
    ("CH4=1", {"CH4": 1}),
    ("C2H6=1", {"C2H6": 1}),
    ("C3H8=0.7|CH4=0.1|N2=0.15|CO2=0.05", {"C3H8": 0.7, "CH4": 0.1, "N2": 0.15, "CO2": 0.05}),
]


def rows():
    gas = cantera.Solution("gri30.yaml")
    for name, fuel in FUELS:
        for ratio in (0.65, 0.8, 0.9, 0.95, 1.0, 1.05, 1.2, 1.5, 2.0):
            for kelvin, pascals in ((298.15, 101325.0), (250.0, 70000.0), (600.0, 83500.0)):
                where = f"composition={name};air_ratio={ratio};mixture_temperature_k={kelvin};pressure_pa={pascals}"
                gas.set_equivalence_ratio(1 / ratio, fuel, AIR, basis="mole")
                gas.TP = kelvin, pascals
                gas.equilibrate("HP", rtol=1e-10)
                yield "adiabatic_flame_temperature_k", where, f"{gas.T:.3f}", "K", "0.1 abs", SOURCE
                for product in ("CO2", "CO", "H2O", "H2", "O2", "NO"):
                    share = gas[product].X[0]
                    if share > 1e-3:
                        yield f"wet_{product}", where, f"{share:.8f}", "", "1e-3", SOURCE
                dry = gas["CO"].X[0] / (1 - gas["H2O"].X[0])
                if dry > 1e-3:
                    yield "dry_CO", where, f"{dry:.8f}", "", "1e-3", SOURCE
                gas.TP = 1600.0, pascals
                gas.equilibrate("TP", rtol=1e-10)
                cold = gas["CO"].X[0] / (1 - gas["H2O"].X[0])
                if cold > 1e-4:
                    yield "dry_CO_at_1600_k", where, f"{cold:.8f}", "", "1e-3", SOURCE


if __name__ == "__main__":
    write("flame", list(rows()))
