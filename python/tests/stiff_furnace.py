"""The coupled furnace as a stiff system, for the tests: equations, grid and solver apart from the library's.

Method of lines on finite volumes, two to five times finer than the library's, backward differences by scipy; zones of
the gas and the pressure behind the openings by Brent's method; burnt gas and air by Cantera's equilibrium with the
NASA polynomials of its GRI 3.0 file. A temperature is kept by the fire that takes the chamber towards it within a second.
The gas that drives the draft follows the gas that leaves within a second, for the library takes that of the step before.
"""

import math

import numpy as np
from scipy.integrate import solve_ivp
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq
from scipy.sparse import lil_matrix

ROOM, SIGMA, GRAVITY, AIR = 293.15, 5.670374419e-8, 9.80665, 287.05
MASS_PER_HEAT = 3.789e-7
DISCHARGE, LID = 0.65, 0.055
TOWARDS, FOLLOWS = 1.0, 1.0
SMITH = {
    1: ((0.4303, 7.055, 178.1), ((0.5150, -2.303e-4, 0.9779e-7, -1.494e-11), (0.07749, 3.399e-4, -2.297e-7, 3.770e-11),
                                 (0.1907, -1.824e-4, 0.5608e-7, -0.5122e-11))),
    2: ((0.4201, 6.516, 131.9), ((0.6508, -5.551e-4, 3.029e-7, -5.353e-11), (-0.02504, 6.112e-4, -3.882e-7, 6.528e-11),
                                 (0.2718, -3.118e-4, 1.221e-7, -1.612e-11))),
}  # fmt: skip


class Linear:
    """Available heat straight from the room to the flame."""

    mass_per_heat = MASS_PER_HEAT

    def __init__(self, gas):
        self.flame, self.heat = gas["flame_temperature"], gas["air_cp"]

    def available(self, kelvin):
        return 1.0 - (kelvin - ROOM) / (self.flame - ROOM)

    def enthalpy(self, kelvin):
        return self.heat * (kelvin - ROOM)


class Burnt:
    """Propane or methane in moist air, in equilibrium."""

    known: dict = {}

    def __init__(self, gas, pressure):
        import cantera

        fuel = {"propane": "C3H8", "methane": "CH4"}[gas["kind"]]
        oxygen = {"propane": 5.0, "methane": 2.0}[gas["kind"]]
        mixture = cantera.Solution("gri30.yaml")
        dry = {"O2": 0.20946, "N2": 0.78120, "AR": 0.00934}
        water = gas["water_in_air"]
        air = {name: share * (1.0 - water) for name, share in dry.items()} | {"H2O": water}
        moles = gas["air_ratio"] * oxygen / air["O2"]
        charge = {name: moles * share for name, share in air.items()} | {fuel: 1.0}

        def of(kelvin, what):
            mixture.TPX = kelvin, pressure, what
            return mixture.enthalpy_mass

        # Net heat: fuel and oxygen to carbon dioxide and water vapor, at 298.15 K.
        carbon, hydrogen = mixture.n_atoms(fuel, "C"), mixture.n_atoms(fuel, "H")
        burnt = {"CO2": carbon, "H2O": hydrogen / 2}
        before, after = of(298.15, {fuel: 1.0, "O2": oxygen}), of(298.15, burnt)
        mixture.TPX = 298.15, pressure, {fuel: 1.0, "O2": oxygen}
        net = (before - after) / mixture[fuel].Y[0]
        mixture.TPX = ROOM, pressure, charge
        self.mass_per_heat = 1.0 / (mixture[fuel].Y[0] * net)
        first = mixture.enthalpy_mass
        temperatures = np.arange(600.0, 2701.0, 25.0)
        left = []
        for kelvin in temperatures:
            mixture.TPX = kelvin, pressure, charge
            mixture.equilibrate("TP")
            left.append((first - mixture.enthalpy_mass) * self.mass_per_heat)
        spline = CubicSpline(temperatures, left)
        self.spline, self.at_600, self.slope_600 = spline, float(spline(600.0)), float(spline(600.0, 1))
        mixture.TPX = 1600.0, pressure, charge
        mixture.equilibrate("TP")
        self.carbon_dioxide, self.water = mixture["CO2"].X[0], mixture["H2O"].X[0]
        grid = np.arange(200.0, 3001.0, 25.0)
        self.air = CubicSpline(grid, [of(kelvin, dry) - of(ROOM, dry) for kelvin in grid])

    def available(self, kelvin):
        if kelvin < 600.0:
            return self.at_600 + self.slope_600 * (kelvin - 600.0)
        return float(self.spline(min(kelvin, 2700.0))) + min(0.0, 2700.0 - kelvin) * 1e-3

    def enthalpy(self, kelvin):
        return float(self.air(kelvin))


class Chain:
    """Conductances between nodes, their heat capacities, and what lies at the cold end."""

    def __init__(self, conductances, capacities, out=0.0, melt=None):
        self.conductances, self.capacities = np.array(conductances), np.array(capacities)
        self.out, self.melt, self.size = out, melt, len(capacities)

    @classmethod
    def wall(cls, wall):
        conductances, capacities, depth = [], [0.0], 0.0
        for index, layer in enumerate(wall["layers"]):
            density, conductivity, heat = layer["rho_k_c"]
            thickness = layer["thickness"]
            count = 70
            growth = 1.045 if index == 0 else 1.03
            widths = growth ** np.arange(count)
            for width in thickness * widths / widths.sum():
                middle, beyond = depth + width / 2, depth + width
                if "area" in wall:
                    shape = wall["area"] / width
                    halves = [wall["area"] * width / 2] * 2
                else:
                    radii = [wall["radius"] + at for at in (depth, middle, beyond)]
                    shape = 2 * math.pi * wall["length"] / math.log(radii[2] / radii[0])
                    halves = [math.pi * wall["length"] * (b * b - a * a) for a, b in zip(radii, radii[1:])]
                conductances.append(conductivity * shape)
                capacities[-1] += density * heat * halves[0]
                capacities.append(density * heat * halves[1])
                depth = beyond
        area = wall["area"] if "area" in wall else 2 * math.pi * (wall["radius"] + depth) * wall["length"]
        return cls(conductances, capacities, area * wall["outer_h"])

    @classmethod
    def content(cls, content):
        if content["kind"] == "lump":
            return cls([], [content["mass"] * content["c"]])
        if content["kind"] == "bar":
            density, conductivity, heat = content["rho_k_c"]
            edges = np.linspace(content["diameter"] / 2, 0.0, 31)
            around = 2 * math.pi * content["length"]
            conductances = [around * conductivity * (a + b) / 2 / (a - b) for a, b in zip(edges, edges[1:])]
            walls = np.concatenate([[edges[0]], (edges[:-1] + edges[1:]) / 2, [0.0]])
            capacities = density * heat * around / 2 * -np.diff(walls**2)
            return cls(conductances, capacities)
        count = 12
        through = content["k_wall"] * content["area"] / content["wall"] * count
        wall = content["crucible_mass"] * content["c_wall"] / count
        capacities = [wall / 2] + [wall] * (count - 1) + [wall / 2, 400.0 * content["charge_mass"]]
        return cls([through] * count + [content["area"] * content["inner_h"]], capacities, melt=simple_melt)

    def temperatures(self, state):
        if self.melt is None:
            return state
        state = state.copy()
        state[-1] = self.melt(state[-1])
        return state


def simple_melt(solid):
    """Temperature by the temperature that the solid's specific heat alone would give."""
    if solid < 1270.0:
        return solid
    over, whole = 400.0 * (solid - 1270.0), 400.0 * 10.0 + 200e3
    return 1270.0 + 10.0 * over / whole if over < whole else 1280.0 + (over - whole) / 500.0


class System:
    """The furnace and what stands in it."""

    def __init__(self, case):
        self.case, self.pressure = case, case.get("pressure", 101_325.0)
        gas = case["gas"]
        self.gas = Linear(gas) if gas["kind"] == "linear" else Burnt(gas, self.pressure)
        self.walls, self.contents = [Chain.wall(wall) for wall in case["walls"]], []
        self.stuff = []
        self.areas = [w["area"] if "area" in w else 2 * math.pi * w["radius"] * w["length"] for w in case["walls"]]
        self.openings, self.leaks = case.get("openings", []), case.get("leaks", [])
        radiation = case.get("radiation", "smith")
        if radiation == "smith":
            amount = (self.gas.carbon_dioxide + self.gas.water) * self.pressure / 101_325.0
            share = min(max(self.gas.water / self.gas.carbon_dioxide - 1.0, 0.0), 1.0)
            (k1, b1), (k2, b2) = SMITH[1], SMITH[2]
            mix = lambda a, b: np.array(a) + share * (np.array(b) - np.array(a))  # noqa: E731
            self.kappas, self.weights, self.clear = amount * mix(k1, k2), mix(b1, b2), True
        else:
            self.kappas, self.weights = np.array([radiation["gray_kappa"]]), np.array([[1.0, 0.0, 0.0, 0.0]])
            self.clear = False

    def weight(self, kelvin):
        kelvin = np.minimum(kelvin, 2500.0)
        powers = np.array([kelvin**0, kelvin, kelvin**2, kelvin**3])
        return self.weights @ powers

    def radiation(self, faces, thinned):
        """Net heat of each surface less the gas's own, and its factor to what each gray gas gives off: rows of
        bands' factors; also the gray gases' absorptances over the path."""
        count = len(self.walls)
        kelvin = np.concatenate([faces, np.full(len(self.openings), ROOM)])
        area = np.array(self.areas + [area_of(c) for c in self.stuff] + [o["area"] for o in self.openings])
        gray = np.array(
            [w["emissivity"] for w in self.case["walls"]]
            + [c["emissivity"] for c in self.stuff]
            + [o["passage"] for o in self.openings]
        )
        is_content = np.zeros(len(area), dtype=bool)
        is_content[count : count + len(self.stuff)] = True
        free = self.case["volume"] - sum(volume_of(c) for c in self.stuff)
        path = 3.6 * free / area.sum()
        own = SIGMA * kelvin**4
        if thinned is None:
            kappas, weights = np.zeros(0), np.zeros((0, len(area)))
            weights = np.vstack([weights, np.ones(len(area))])
            passes = np.ones(1)
        else:
            kappas, weights = self.kappas * thinned, self.weight(kelvin)
            passes = np.exp(-kappas * path)
            if self.clear:
                weights = np.vstack([weights, 1.0 - weights.sum(axis=0)])
                passes = np.append(passes, 1.0)
        enclosure, inside = ~is_content, is_content
        whole, within = area[enclosure].sum(), area[inside].sum()
        x = within / whole
        back_e = (area * (1 - gray))[enclosure].sum() / whole
        back_c = (area * (1 - gray))[inside].sum() / within if within else 0.0
        without, factors = np.zeros(len(area)), []
        for band, (passed, weight) in enumerate(zip(passes, weights)):
            gives = area * gray * weight * own
            of_e, of_c = gives[enclosure].sum() / whole, gives[inside].sum() / within if within else 0.0
            # Received by enclosure and contents: two equations.
            matrix = np.array(
                [[1.0 - passed * (1 - x) * back_e, -passed * x * back_c], [-passed * back_e, 1.0]],
            )
            right = np.array([[passed * ((1 - x) * of_e + x * of_c), 1.0], [passed * of_e, 1.0]])
            received = np.linalg.solve(matrix, right)
            of = np.where(inside, 1, 0)
            without += area * gray * (received[of, 0] - weight * own)
            if band < len(kappas):
                factors.append(area * gray * received[of, 1])
        return without, np.array(factors).reshape(len(kappas), len(area)), 1.0 - passes[: len(kappas)]

    def drawn(self, leaving, blown):
        """Air that comes in through the openings."""
        outside, inside = (self.pressure / (AIR * kelvin) for kelvin in (ROOM, max(leaving, ROOM + 0.01)))
        lift = GRAVITY * (outside - inside)
        vents = [(o["area"], o["z1"], o.get("z2", o["z1"]), "z2" not in o) for o in self.openings if "z1" in o]
        vents += [(leak["area"], leak["z1"], leak["z1"], False) for leak in self.leaks]
        if not vents:
            return 0.0

        def flows(vent, pressure):
            area, low, high, _ = vent
            if low == high:
                there = pressure + lift * low
                size = DISCHARGE * area
                if there < 0:
                    return size * math.sqrt(-2 * outside * there), 0.0
                return 0.0, size * math.sqrt(2 * inside * there)
            bottom, top = pressure + lift * low, pressure + lift * high
            size = 2 / 3 * DISCHARGE * area / (high - low) / lift
            power = lambda p: max(p, 0.0) ** 1.5  # noqa: E731
            into = size * math.sqrt(2 * outside) * (power(-bottom) - power(-top))
            return into, size * math.sqrt(2 * inside) * (power(top) - power(bottom))

        def surplus(pressure):
            pairs = [flows(vent, pressure) for vent in vents]
            return blown + sum(into - out for into, out in pairs)

        span = lift * (max(vent[2] for vent in vents) - min(vent[1] for vent in vents)) + 1e-6
        low, high = -lift * max(vent[2] for vent in vents) - span, 100.0
        while surplus(high) > 0:
            high *= 4.0
        pressure = brentq(surplus, low, high, xtol=1e-13, rtol=1e-13)
        air = 0.0
        for vent in vents:
            into, out = flows(vent, pressure)
            air += into
            if vent[3]:
                across = math.sqrt(4 * vent[0] / math.pi)
                exchange = LID * outside * math.sqrt(GRAVITY * across**5 * (outside - inside) / (outside + inside) * 2)
                air += max(0.0, exchange - abs(into - out))
        return air

    def gas_balance(self, faces, film, fire, air, zones, thinned):
        """Heats of the surfaces, of each zone's leaving gas, and its temperature."""
        without, factors, held = self.radiation(faces, thinned)
        solid = len(faces)
        films = film * np.array(self.areas + [area_of(c) for c in self.stuff])
        heats, before, leaving = without.copy(), (0.0, 0.0), ROOM
        heats[:solid] -= films * faces
        sums, total, film_sum = factors.sum(axis=1), heats.sum(), films.sum()
        share = 1.0 / zones

        def given(kelvin):
            return held * self.weight(kelvin) * SIGMA * kelvin**4 if len(held) else np.zeros(0)

        gas = self.gas
        for _ in range(zones):

            def left(kelvin):
                supplied = fire * (gas.available(kelvin) - before[0]) - air * (gas.enthalpy(kelvin) - before[1])
                return supplied - share * (total + film_sum * kelvin + sums @ given(kelvin))

            leaving = brentq(left, 200.0, 3000.0, xtol=1e-7, rtol=1e-12)
            heats += share * (given(leaving) @ factors)
            heats[:solid] += share * films * leaving
            before = (gas.available(leaving), gas.enthalpy(leaving))
        return heats, leaving, fire * (1.0 - before[0]) + air * before[1]


def area_of(content):
    return math.pi * content["diameter"] * content["length"] if content["kind"] == "bar" else content["area"]


def volume_of(content):
    return math.pi / 4 * content["diameter"] ** 2 * content["length"] if content["kind"] == "bar" else content["volume"]


def solve(case):
    """Rows of the stages of a case, by the same mapping."""
    system = System(case)
    state = np.concatenate([np.full(chain.size, ROOM) for chain in system.walls])
    gas, rows = ROOM, []
    for stage in case["stages"]:
        if stage["do"] == "put":
            system.contents.append(Chain.content(stage["content"]))
            system.stuff.append(stage["content"])
            state = np.concatenate([state, np.full(system.contents[-1].size, ROOM)])
        elif stage["do"] == "take":
            state = state[: -system.contents.pop().size]
            system.stuff.pop()
        else:
            state, gas, row = run(system, stage, state, gas)
            rows.append(row)
    return rows


def run(system, stage, state, gas):
    case, kind = system.case, stage["do"]
    chains = system.walls + system.contents
    starts = np.cumsum([0] + [chain.size for chain in chains])
    nodes, hot = starts[-1], starts[:-1]
    areas = np.array(system.areas)
    fired = kind in ("fire", "hold")
    zones = case["gas_zones"] if fired else 1
    film = case["h_fired"] if fired else case["h_air"] if kind == "air" else case["h_off"]

    def chamber(y):
        faces = y[hot[: len(areas)]]
        return (areas @ faces**4 / areas.sum()) ** 0.25

    def conducted(y):
        rates, shell = np.zeros(nodes), 0.0
        for chain, start in zip(chains, starts):
            kelvin = chain.temperatures(y[start : start + chain.size])
            through = chain.conductances * (kelvin[:-1] - kelvin[1:])
            rates[start : start + chain.size - 1] -= through
            rates[start + 1 : start + chain.size] += through
            out = chain.out * (kelvin[-1] - ROOM)
            rates[start + chain.size - 1] -= out
            shell += out
        return rates, shell

    capacities = np.concatenate([chain.capacities for chain in chains])
    drafty = any("z1" in o for o in system.openings) or system.leaks

    def parts(y):
        faces = np.array([chain.temperatures(y[s : s + chain.size])[0] for chain, s in zip(chains, starts)])
        rates, shell = conducted(y)

        def with_fire(fire):
            if fired:
                own = fire * system.gas.mass_per_heat
                air = (system.drawn(y[nodes], own) if drafty else 0.0) + stage.get("leak", 0.0)
                thinned = own / (own + air) if own + air > 0 else 1.0
            else:
                blown = stage.get("air", 0.0)
                air = blown + (system.drawn(y[nodes], blown) if stage.get("draft") else 0.0)
                air, thinned = max(air, 1e-7), None
            return system.gas_balance(faces, film, fire, air, zones, thinned)

        def warming(fire):
            heats = with_fire(fire)[0]
            kelvin, walls = faces[: len(areas)], hot[: len(areas)]
            speeds = (rates[walls] + heats[: len(areas)]) / capacities[walls]
            now = chamber(y)
            return areas @ (kelvin**3 * speeds) / areas.sum() / now**3 - (stage["set"] - now) / TOWARDS

        fire = stage.get("fire", 0.0)
        if kind == "hold":
            most = stage["most"]
            if warming(most) <= 0:
                fire = most
            elif warming(1.0) >= 0:
                fire = 1.0
            else:
                fire = brentq(warming, 1.0, most, xtol=1e-4, rtol=1e-9)
        return fire, with_fire(fire), rates, shell

    def slope(_, y):
        fire, (heats, leaving, flue), rates, shell = parts(y)
        for index, start in enumerate(hot):
            rates[start] += heats[index]
        opened = heats[len(chains) :].sum()
        followed = (leaving - y[nodes]) / FOLLOWS
        return np.concatenate([rates / capacities, [followed], np.array([fire, flue, opened, shell]) / 1e5])

    size = nodes + 5
    pattern = lil_matrix((size, size))
    for start, chain in zip(starts, chains):
        for node in range(chain.size):
            for other in (node - 1, node, node + 1):
                if 0 <= other < chain.size:
                    pattern[start + node, start + other] = 1
    mixing = sorted({*hot, *(start + 1 for start, chain in zip(hot, chains) if chain.size > 1), nodes})
    for row in [*hot, *range(nodes, size)]:
        pattern[row, mixing] = 1
    for start, chain in zip(starts, chains):
        pattern[size - 1, start + chain.size - 1] = 1

    core = chains[-1]
    aims = {
        "until_chamber_rises_to": lambda _, y: chamber(y) - stage["until_chamber_rises_to"],
        "until_chamber_falls_to": lambda _, y: chamber(y) - stage["until_chamber_falls_to"],
        "until_core_rises_to": lambda _, y: (
            core.temperatures(y[starts[-2] : nodes])[-1] - stage["until_core_rises_to"]
        ),
    }
    event = next((aims[key] for key in aims if key in stage), None)
    if event is not None:
        event.terminal = True
    begin = np.concatenate([state, [gas], np.zeros(4)])
    found = solve_ivp(
        slope, (0.0, stage.get("for", 4e5)), begin, method="BDF", rtol=1e-5, atol=1e-2, jac_sparsity=pattern.tocsr(),
        events=event, first_step=1e-3,
    )  # fmt: skip
    assert found.success, found.message
    last = found.y[:, -1]
    fire, (_, leaving, _), _, _ = parts(last)
    courses = np.array([chamber(y) for y in found.y.T])
    fuel, flue, opened, shell = last[nodes + 1 :] * 1e5
    row = {
        "do": kind,
        "seconds": found.t[-1],
        "chamber": courses[-1],
        "gas_exit": leaving,
        "faces": [chain.temperatures(last[s : s + chain.size])[0] for chain, s in zip(chains, starts)],
        "fire_at_end": fire if fired else 0.0,
        "chamber_highest": courses.max(),
        "chamber_lowest": courses.min(),
        "core": core.temperatures(last[starts[-2] : nodes])[-1] if system.contents else None,
        "fuel_heat": fuel,
        "flue_heat": flue,
        "openings_heat": opened,
        "shell_heat": shell,
        "stored": float(capacities @ (last[:nodes] - begin[:nodes])),
    }
    return last[:nodes], leaving, row
