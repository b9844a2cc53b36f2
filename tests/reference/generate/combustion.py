"""combustion.csv: air that burns a gas exactly. Python standard library alone: atoms counted by hand."""

from table import FOUND, FROM_FORMULA, row, write

OXYGEN, AIR = 0.20946, 28.96546
# Molar mass, carbon, hydrogen and oxygen atoms.
FUELS = {"CH4": (16.04246, 1, 4, 0), "C2H6": (30.06904, 2, 6, 0), "C3H8": (44.09562, 3, 8, 0),
         "nC4": (58.1222, 4, 10, 0), "C3H6": (42.07974, 3, 6, 0), "CO": (28.0101, 1, 0, 1), "H2": (2.01588, 0, 2, 0)}

rows = []
for name, (mass, c, h, o) in FUELS.items():
    volumes = (c + h / 4 - o / 2) / OXYGEN
    given = {"composition": f"{name}=1"}
    source = f"Atom balance, air of 20.946 % O2 (ISO 2533:1975) and 28.96546 kg/kmol (CIPM-2007) {FROM_FORMULA}"
    rows.append(row("stoichiometric_air_volume_ratio", given, volumes, "", 1e-3, source))
    rows.append(row("stoichiometric_air_mass_ratio", given, volumes * AIR / mass, "", 1e-3, source))
rows.append(row("stoichiometric_air_volume_ratio", {"composition": "C3H8=1"}, "23.86", "", 2e-3,
                f"Propane property sheets after NFPA 58 annex B: 23.86 ft3 of air a ft3 {FOUND}"))

write("combustion", rows)
