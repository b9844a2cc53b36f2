"""The coupled furnace beside the stiff solver of these tests: three furnaces, and others drawn at random.

Both get the same mapping. What may differ: time 1 %, temperature 5 K, fire 1.5 %, each heat 1.5 % of the stage's
largest, as the grid and the steps of the model leave open; a stage of seconds besides half a second, and what is left
of a furnace that has cooled besides 0.05 % of all the fuel so far.
"""

import jetwright as jw
import numpy as np
import pytest
import stiff_furnace

TIME, INSTANT, FIRE, KELVIN, HEAT, REST = 0.01, 0.5, 0.015, 5.0, 0.015, 5e-4
HEATS = ("fuel_heat", "flue_heat", "openings_heat", "shell_heat", "stored")


def differences(ours, theirs):
    """What differs more than it may."""
    faults, burnt = [], 0.0
    for stage, (our, their) in enumerate(zip(ours, theirs)):
        burnt += their["fuel_heat"]
        largest = max(abs(their[heat]) for heat in HEATS)
        allowed = {"seconds": TIME * their["seconds"] + INSTANT, "fire_at_end": FIRE * their["fire_at_end"] + 1.0}
        allowed |= dict.fromkeys(("chamber", "gas_exit", "chamber_highest", "chamber_lowest"), KELVIN)
        allowed |= dict.fromkeys(HEATS, HEAT * largest + REST * burnt)
        pairs = [(key, our[key], their[key], most) for key, most in allowed.items()]
        pairs += [("faces", *both, KELVIN) for both in zip(our["faces"], their["faces"], strict=True)]
        if their["core"] is not None:
            pairs.append(("core", our["core"], their["core"], KELVIN))
        faults += [(stage, our["do"], *pair) for pair in pairs if not abs(pair[1] - pair[2]) <= pair[3]]
    assert len(ours) == len(theirs)
    return faults


def wall(area, *layers, emissivity=0.8):
    return {
        "area": area,
        "emissivity": emissivity,
        "outer_h": 15.0,
        "layers": [{"rho_k_c": list(plain), "thickness": thickness} for plain, thickness in layers],
    }


LIGHT, DENSE, FIBRE, COAT = (
    (800.0, 0.25, 1000.0),
    (2600.0, 1.7, 1050.0),
    (130.0, 0.2, 1000.0),
    (2000.0, 1.2, 1000.0),
)
BASE = {"gas_zones": 1, "h_fired": 20.0, "h_air": 20.0, "h_off": 8.0, "volume": 0.028}
GRAY = {"gas": {"kind": "linear", "flame_temperature": 2200.0, "air_cp": 1100.0}, "radiation": {"gray_kappa": 0.5}}
REAL = {"gas": {"kind": "propane", "air_ratio": 1.05, "water_in_air": 0.0098}, "radiation": "smith", "gas_zones": 2}
CRUCIBLE = {
    "kind": "crucible",
    "crucible_mass": 4.0,
    "wall": 0.015,
    "k_wall": 15.0,
    "c_wall": 1100.0,
    "area": 0.12,
    "emissivity": 0.85,
    "volume": 0.004,
    "inner_h": 300.0,
    "charge": "simple melt",
    "charge_mass": 10.0,
}


def up(fire, kelvin):
    return {"do": "fire", "fire": fire, "until_chamber_rises_to": kelvin}


def hold(kelvin, most, seconds):
    return {"do": "hold", "set": kelvin, "most": most, "for": seconds}


SIMPLE = (
    BASE
    | GRAY
    | {
        "walls": [wall(0.5, (LIGHT, 0.1))],
        "openings": [{"area": 0.006, "passage": 0.6}],
        "stages": [up(18e3, 1423.15), hold(1423.15, 18e3, 1800.0), {"do": "off", "until_chamber_falls_to": 1033.15}],
    }
)
TWO_BUILDS = (
    BASE
    | REAL
    | {
        "walls": [wall(0.4, (LIGHT, 0.1)), wall(0.1, (DENSE, 0.05), (FIBRE, 0.05))],
        "openings": [
            {"area": 0.006, "passage": 0.6, "z1": 0.0, "z2": 0.1},
            {"area": 0.003, "passage": 0.6, "z1": 0.3},
        ],
        "leaks": [{"area": 2e-4, "z1": 0.05}],
        "stages": [
            up(20e3, 1473.15),
            hold(1473.15, 20e3, 3600.0),
            {"do": "off", "draft": True, "until_chamber_falls_to": 1033.15},
            {"do": "air", "air": 4e-3, "for": 900.0},
        ],
    }
)
MELT = (
    BASE
    | REAL
    | {
        "walls": [wall(0.5, (LIGHT, 0.075), (FIBRE, 0.05))],
        "openings": [{"area": 0.006, "passage": 0.6, "z1": 0.4}],
        "stages": [
            up(22e3, 1473.15),
            {"do": "put", "content": CRUCIBLE},
            {"do": "hold", "set": 1473.15, "most": 22e3, "until_core_rises_to": 1373.15},
            {"do": "off", "draft": True, "until_chamber_falls_to": 1033.15},
            {"do": "take"},
            {"do": "fire", "fire": 15e3, "leak": 2e-3, "for": 600.0},
        ],
    }
)


@pytest.mark.parametrize("case", [SIMPLE, TWO_BUILDS, MELT], ids=["one wall", "two builds with draft", "crucible"])
def test_three_furnaces(case):
    assert differences(jw.furnace_case(case), stiff_furnace.solve(case)) == []


def drawn(seed):
    """An invented furnace and what is done with it."""
    draw = np.random.default_rng(seed)
    uniform, one = draw.uniform, draw.random
    size = 0.1 * 10.0 ** uniform(0.0, 1.0)
    walls = []
    for _ in range(draw.integers(1, 4)):
        layers = []
        if one() < 0.3:
            layers.append((COAT, uniform(0.001, 0.006)))
        for _ in range(draw.integers(1, 3)):
            plain = (10.0 ** uniform(2.1, 3.4), 10.0 ** uniform(-0.9, 0.3), uniform(800.0, 1200.0))
            layers.append((plain, uniform(0.02, 0.12)))
        made = wall(uniform(1.0, 4.0) * size**2, *layers, emissivity=uniform(0.4, 0.95))
        if one() < 0.3:
            del made["area"]
            made |= {"radius": size * uniform(0.3, 0.6), "length": size * uniform(0.8, 2.0)}
        walls.append(made)
    area = sum(w["area"] if "area" in w else 2 * np.pi * w["radius"] * w["length"] for w in walls)
    volume = uniform(0.6, 1.0) * (area / 6) ** 1.5
    openings = []
    for kind in draw.choice(["sealed", "lid", "front"], draw.integers(0, 3)):
        opening = {"area": uniform(0.003, 0.03) * area, "passage": uniform(0.3, 0.8)}
        if kind != "sealed":
            opening["z1"] = uniform(0.0, size)
        if kind == "front":
            opening["z2"] = opening["z1"] + uniform(0.2, 0.8) * size
        openings.append(opening)
    case = {
        "gas": {"kind": "linear", "flame_temperature": uniform(2000.0, 2400.0), "air_cp": uniform(1000.0, 1200.0)},
        "radiation": {"gray_kappa": uniform(0.1, 2.0)},
        "gas_zones": int(draw.integers(1, 4)),
        "h_fired": uniform(8.0, 40.0),
        "h_air": uniform(8.0, 40.0),
        "h_off": uniform(4.0, 12.0),
        "volume": volume,
        "pressure": uniform(70e3, 103e3),
        "walls": walls,
        "openings": openings,
    }
    if one() < 0.6:
        gas = {"kind": str(draw.choice(["propane", "methane"])), "water_in_air": uniform(0.0, 0.015)}
        case |= {"gas": gas | {"air_ratio": uniform(1.0, 1.4)}, "radiation": "smith"}
    if one() < 0.3:
        case["leaks"] = [{"area": uniform(2e-4, 2e-3) * area, "z1": uniform(0.0, size)}]
    fire, set_kelvin = uniform(30e3, 120e3) * area, uniform(1000.0, 1450.0)
    contents = [
        {"kind": "lump", "mass": uniform(5.0, 60.0) * area, "c": 700.0, "area": uniform(0.05, 0.3) * area,
         "emissivity": uniform(0.3, 0.9), "volume": uniform(0.0, 0.2) * volume},
        {"kind": "bar", "diameter": uniform(0.05, 0.2) * size, "length": uniform(0.5, 1.0) * size,
         "emissivity": uniform(0.3, 0.9), "rho_k_c": [7800.0, 30.0, 650.0]},
        CRUCIBLE | {"crucible_mass": 8.0 * area, "charge_mass": uniform(5.0, 25.0) * area,
                    "area": uniform(0.1, 0.3) * area, "volume": uniform(0.05, 0.2) * volume},
    ]  # fmt: skip
    stages = [{"do": "fire", "fire": fire, "until_chamber_rises_to": set_kelvin}]
    for _ in range(draw.integers(1, 4)):
        act = draw.choice(["hold", "put", "off", "air", "fire"])
        if act == "put":
            kept = {"do": "hold", "set": set_kelvin, "most": fire, "for": uniform(300.0, 4000.0)}
            stages += [{"do": "put", "content": contents[draw.integers(0, 3)]}, kept]
        elif act == "hold":
            stages.append({"do": "hold", "set": set_kelvin, "most": fire, "for": uniform(600.0, 7200.0)})
        elif act == "fire":
            leak = {"leak": uniform(0.0, 1.0) * 3.8e-7 * fire} if one() < 0.4 else {}
            stages.append({"do": "fire", "fire": uniform(0.3, 0.7) * fire, "for": uniform(300.0, 3000.0)} | leak)
        elif act == "off":
            stages.append({"do": "off", "draft": bool(one() < 0.7), "for": uniform(60.0, 3600.0)})
        else:
            flow = uniform(0.2, 2.0) * 3.8e-7 * fire
            stages.append({"do": "air", "air": flow, "draft": bool(one() < 0.4), "for": uniform(60.0, 1800.0)})
    return case | {"stages": stages}


@pytest.mark.parametrize("seed", range(8))
def test_drawn_furnaces(seed):
    case = drawn(seed)
    assert differences(jw.furnace_case(case), stiff_furnace.solve(case)) == []
