"""An isothermal stirred reactor by detailed kinetics: Cantera 3.2.0, GRI-Mech 3.0 (gri30.yaml), premixed with dry air.

Writes `src/combustion/stirred_reactor_table.rs` and the rows of `reactor.csv`, which lie off the table's points. Some
ten minutes on two cores: `reactor.py table propane`, `reactor.py table methane`, then `reactor.py write`, then
`reactor.py rows`.
"""

import json
import math
import pathlib
import random
import sys

import cantera

from table import write

AIR = "O2:0.20946,N2:0.78084,AR:0.00934"
FUELS = {"propane": "C3H8", "methane": "CH4"}
PRESSURES = [700, 1013]
CELSIUS = [700 + 20 * step for step in range(16)]
AIR_RATIOS = [0.8, 0.85, 0.9, 0.94, 0.97, 0.99, 1.0, 1.01, 1.03, 1.06, 1.1, 1.2, 1.35, 1.6, 2.0, 2.5, 3.0]
SECONDS = [0.1, 0.16, 0.26, 0.42, 0.7, 1.1, 1.8, 3.0]
# More of the fuel than this leaves unburnt only where the reactor has purged.
BLOWN_OUT = 0.9
TABLE = pathlib.Path(__file__).resolve().parents[3] / "src/combustion/stirred_reactor_table.rs"
KEPT = pathlib.Path("/tmp")


class Solver:
    def __init__(self):
        self.feed, self.inside, self.outside = (cantera.Solution("gri30.yaml") for _ in range(3))

    def network(self, fuel, ratio, celsius, seconds, pascals, start=None):
        """The reactor, from equilibrium on unless a start is given: the branch of a fire that burns."""
        state = celsius + 273.15, pascals
        self.feed.set_equivalence_ratio(1 / ratio, fuel, AIR)
        self.feed.TP = state
        for phase in (self.inside, self.outside):
            phase.TPY = *state, self.feed.Y
        if start is None:
            self.inside.equilibrate("TP")
        else:
            self.inside.TPY = *state, start
        inlet, outlet = (cantera.Reservoir(phase, clone=False) for phase in (self.feed, self.outside))
        self.reactor = cantera.IdealGasReactor(self.inside, energy="off", volume=1.0, clone=False)
        flow = cantera.MassFlowController(inlet, self.reactor, mdot=lambda _: self.reactor.mass / seconds)
        self.held = flow, cantera.PressureController(self.reactor, outlet, primary=flow, K=1e-3)
        network = cantera.ReactorNet([self.reactor])
        network.rtol, network.atol, network.max_steps = 1e-8, 1e-18, 5000
        return network

    def seen(self, fuel):
        """Carbon monoxide of the dry gas, and the share of the fuel that leaves unburnt."""
        phase = self.inside
        dry = phase["CO"].X[0] / (1 - phase["H2O"].X[0])
        return float(dry), float(phase[fuel].Y[0] / self.feed[fuel].Y[0])

    def in_time(self, fuel, *point):
        """The steady fire that time leads to; nothing where it swings for ever."""
        network = self.network(fuel, *point)
        before = math.nan
        for residences in (60, 80, 300, 400):
            network.advance(residences * point[2])
            dry, unburnt = self.seen(fuel)
            if abs(dry / before - 1) < 1e-4:
                return dry, unburnt
            before = dry
        return None

    def by_newton(self, fuel, ratio, *point):
        """The steady fire that a swinging one swings about, from a leaner one that does not."""
        # The nearest leaner fire that time leads to.
        for at in (1.12, 2.0, 3.0):
            try:
                if self.in_time(fuel, at, *point):
                    break
            except cantera.CanteraError:
                continue
        else:
            return None
        while at != ratio:
            at = max(ratio, at / 1.04) if at > ratio else min(ratio, at * 1.04)
            network = self.network(fuel, at, *point, start=self.inside.Y.copy())
            network.atol = 1e-15
            network.solve_steady()
        return self.seen(fuel)

    def solve(self, fuel, ratio, celsius, *rest):
        # Hot and close to just enough air fires swing, and time leads nowhere.
        swings = celsius > 840 and 0.95 < ratio < 1.08
        for attempt in (self.by_newton, self.in_time) if swings else (self.in_time, self.by_newton):
            try:
                found = attempt(fuel, ratio, celsius, *rest)
            except cantera.CanteraError:
                found = None
            if found:
                return found
        raise RuntimeError(f"no steady fire: {fuel} {ratio} {celsius} {rest}")


def pascals(hectopascal):
    return 101325.0 if hectopascal == 1013 else 100.0 * hectopascal


def tabulate(fuel):
    solver = Solver()
    for hectopascal in PRESSURES:
        kept = KEPT / f"reactor-{fuel}-{hectopascal}.json"
        kept.write_text(
            json.dumps(
                [
                    [[solver.solve(FUELS[fuel], ratio, celsius, s, pascals(hectopascal)) for s in SECONDS] for ratio in AIR_RATIOS]
                    for celsius in CELSIUS
                ]
            )
        )


def in_lines(numbers):
    """Numbers in lines of at most 120 characters, as rustfmt breaks them."""
    lines, line = [], "       "
    for number in numbers:
        if len(line) + len(f" {number},") > 120:
            lines.append(line)
            line = "       "
        line += f" {number},"
    return "\n".join([*lines, line])


def write_table():
    logs, burns_from = {}, {}
    for fuel in FUELS:
        logs[fuel], burns_from[fuel] = [], []
        for hectopascal in PRESSURES:
            for of_celsius in json.loads((KEPT / f"reactor-{fuel}-{hectopascal}.json").read_text()):
                for row in of_celsius:
                    burning = [unburnt < BLOWN_OUT for _, unburnt in row]
                    first = len(row) - burning[::-1].index(False) if False in burning else 0
                    assert first < len(row)
                    burns_from[fuel].append(first)
                    for place in range(len(row)):
                        logs[fuel].append(round(1e3 * math.log(1e6 * row[max(place, first)][0])))
    points = len(logs["propane"])
    rows = len(burns_from["propane"])
    lists = [
        ("PRESSURE_HECTOPASCAL", "Pressures, hPa; the second is 1013.25.", PRESSURES),
        ("CELSIUS", "Temperatures, Celsius.", CELSIUS),
        ("AIR_RATIO_PERCENT", "Air ratios, hundredths.", [round(100 * ratio) for ratio in AIR_RATIOS]),
        ("RESIDENCE_CENTISECOND", "Residences, hundredths of a second.", [round(100 * s) for s in SECONDS]),
    ]
    text = ["//! Carbon monoxide of an isothermal stirred reactor, written by `tests/reference/generate/reactor.py`: Cantera 3.2.0,"]
    text += ["//! GRI-Mech 3.0. Propane first, then methane; by pressure, temperature, air ratio and residence, the last fastest."]
    text += ["//! One table that a program writes and nobody edits: longer than a file of code may be.", ""]
    for name, doc, numbers in lists:
        text.append(f"/// {doc}")
        text.append(f"pub(super) const {name}: [u16; {len(numbers)}] = [{', '.join(map(str, numbers))}];")
    text += ["", "/// Thousandths of the natural logarithm of the ppm in the dry gas."]
    text += ["#[rustfmt::skip]", f"pub(super) static DRY_LOG_PPM: [[i16; {points}]; 2] = ["]
    text += [f"    [\n{in_lines(logs[fuel])}\n    ]," for fuel in FUELS] + ["];"]
    text += ["", "/// Which residence is the first of those that all burn, by pressure, temperature and air ratio."]
    text += ["#[rustfmt::skip]", f"pub(super) static BURNS_FROM: [[u8; {rows}]; 2] = ["]
    text += [f"    [\n{in_lines(burns_from[fuel])}\n    ]," for fuel in FUELS] + ["];"]
    TABLE.write_text("\n".join(text) + "\n")


SOURCE = "Isothermal stirred reactor of GRI-Mech 3.0 [computed with Cantera 3.2.0]"
# Both asked for in the wet gas: 7 800 and 24 300 ppm.
NAMED = [("propane", 2.5, 760.0, 0.63, 83500.0), ("propane", 1.05, 760.0, 0.63, 83500.0)]


def rows():
    solver, draw = Solver(), random.Random(13)
    points = list(NAMED)
    while len(points) < 72:
        celsius, seconds = draw.uniform(705, 995), math.exp(draw.uniform(math.log(0.11), math.log(2.9)))
        ratio = math.exp(draw.uniform(math.log(0.81), math.log(2.95)))
        points.append((draw.choice(list(FUELS)), round(ratio, 3), round(celsius, 1), round(seconds, 3), draw.choice([62e3, 83.5e3, 95e3, 101325.0])))
    for fuel, ratio, celsius, seconds, pascal in points:
        dry, unburnt = solver.solve(FUELS[fuel], ratio, celsius, seconds, pascal)
        where = f"fuel={fuel};air_ratio={ratio};celsius={celsius};residence_s={seconds};pressure_pa={pascal}"
        if unburnt < BLOWN_OUT:
            yield "reactor_carbon_monoxide_dry_ppm", where, f"{1e6 * dry:.6g}", "ppm", "0.2", SOURCE
        else:
            yield "reactor_blows_out", where, "1", "", "1e-6", SOURCE


if __name__ == "__main__":
    match sys.argv[1:]:
        case ["table", fuel]:
            tabulate(fuel)
        case ["write"]:
            write_table()
        case ["rows"]:
            write("reactor", list(rows()))
