"""Speed of the Python package beside the alternatives, in one run, after both sides have been shown to agree.

Run with the environment of the tests: ``target/python/bin/python benches/python.py``. Add ``--sweep`` for the sweep of
ten million points on two Dask processes.
"""

import os
import subprocess
import sys
import time

os.environ["JETWRIGHT_THREADS"] = "1"

import CoolProp.CoolProp as coolprop
import jetwright as jw
import numpy as np

AMBIENT, EXPONENT, GAS_CONSTANT = 101_325.0, 1.13, 188.56


def best(function, repeats=7):
    """Shortest of several runs, in seconds."""
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        function()
        times.append(time.perf_counter() - start)
    return min(times)


def perfect_gas(gauge, area, kelvin):
    """The one-line nozzle formula of a perfect gas."""
    ratio = AMBIENT / (AMBIENT + gauge)
    rest = 2 * EXPONENT / (EXPONENT - 1) * (ratio ** (2 / EXPONENT) - ratio ** ((EXPONENT + 1) / EXPONENT))
    return area * (AMBIENT + gauge) / np.sqrt(GAS_CONSTANT * kelvin) * np.sqrt(rest)


def reference(gauge, kelvin):
    """The reference equation's low-level object, one state after another."""
    state = coolprop.AbstractState("HEOS", "n-Propane")
    flux = np.empty(len(gauge))
    for index, (pascals, temperature) in enumerate(zip(gauge, kelvin)):
        state.update(coolprop.PT_INPUTS, AMBIENT + pascals, temperature)
        rest, entropy = state.hmass(), state.smass()
        state.update(coolprop.PSmass_INPUTS, AMBIENT, entropy)
        flux[index] = state.rhomass() * np.sqrt(2 * (rest - state.hmass()))
    return flux


def elements(count):
    random = np.random.default_rng(3)
    return random.uniform(2e3, 6e4, count), random.uniform(280.0, 305.0, count)


def compare(count, length, name):
    gauge, kelvin = elements(count)
    bore = 1.5e-3
    area = np.pi / 4 * bore**2

    def ours():
        return jw.flow(gas="propane", gauge_pressure=gauge, bore=bore, bore_length=length, gas_temperature=kelvin)

    result = ours()
    few = slice(0, min(count, 300))
    theirs = reference(gauge[few], kelvin[few])
    assert np.max(np.abs(result.mass_flux[few] / theirs - 1)) < 1e-3
    assert np.max(np.abs(perfect_gas(gauge, area, kelvin) / (result.mass_flux * area) - 1)) < 0.03
    us = best(ours) / count
    line = best(lambda: perfect_gas(gauge, area, kelvin)) / count
    slow = best(lambda: reference(gauge[few], kelvin[few]), 3) / len(theirs)
    print(
        f"{name:>12}, {count:>9,} elements: {us * 1e9:6.0f} ns an element a thread; NumPy's perfect gas {line * 1e9:5.1f} ns "
        f"({us / line:4.1f} times); reference equation {slow * 1e6:5.1f} us (1/{slow / us:.0f})"
    )


def main():
    for count in (1_000, 1_000_000):
        for length, name in ((0.0, "thin plate"), (10.5e-3, "7 diameters"), (30e-3, "20 diameters")):
            compare(count, length, name)
    flames()
    furnaces()
    firings()
    gauge = 5 * jw.psi
    one = best(lambda: [jw.flow(gas="propane", gauge_pressure=gauge, bore=1.5e-3) for _ in range(2000)]) / 2000
    print(f"one scalar call: {one * 1e6:.2f} us")
    imports = {}
    for module in ("numpy", "jetwright"):
        imports[module] = best(lambda: subprocess.run([sys.executable, "-c", f"import {module}"], check=True), 9)
    ratio = imports["jetwright"] / imports["numpy"]
    print(f"import jetwright: {imports['jetwright'] * 1e3:.0f} ms, numpy {imports['numpy'] * 1e3:.0f} ms ({ratio:.2f} times)")
    if "--sweep" in sys.argv:
        sweep()


def flames():
    """Equilibrium flames beside a general solver, one state after another."""
    import cantera

    solution = cantera.Solution("gri30.yaml")
    air = {"O2": 0.20946, "N2": 0.78084, "AR": 0.00934, "CO2": 0.00036}
    ratio = np.random.default_rng(4).uniform(0.7, 2.0, 2_000)

    def general(count):
        kelvin = []
        for value in ratio[:count]:
            solution.set_equivalence_ratio(1 / value, "C3H8", air, basis="mole")
            solution.TP = 298.15, AMBIENT
            solution.equilibrate("HP")
            kelvin.append(solution.T)
        return kelvin

    ours = jw.flame(gas="propane", air_ratio=ratio, mixture_temperature=298.15).temperature
    assert np.max(np.abs(ours[:100] - general(100))) < 0.1
    fast = best(lambda: jw.flame(gas="propane", air_ratio=ratio, mixture_temperature=298.15)) / len(ratio)
    slow = best(lambda: general(100), 3) / 100
    print(f"flame with its chamber state: {fast * 1e6:.1f} us; general solver {slow * 1e6:.0f} us (1/{slow / fast:.0f})")


def furnaces():
    """A steady wall beside scipy's root finder, and a warm-up beside its stiff solver on as many cells."""
    import scipy.integrate
    import scipy.optimize
    import scipy.sparse

    brick, fiber = jw.Material("insulating brick 26"), jw.Material("fiber blanket")
    layers, radius, length = [(brick, 0.075), (fiber, 0.05)], 0.15, 0.55
    wall = {"layers": layers, "inner_radius": radius, "length": length, "height": 0.4}
    grid = np.linspace(250.0, 2300.0, 821)
    known = [one.conductivity(grid) for one, _ in layers], [one.specific_heat(grid) for one, _ in layers]
    faces = np.linspace(288.15, 1900.0, 400)
    shell = jw.shell_loss(face=faces, height=0.4).heat_flux * 2 * np.pi * (radius + 0.125) * length
    integrals = [scipy.integrate.cumulative_trapezoid(k, grid, initial=0.0) for k in known[0]]
    spread = np.log([0.225 / 0.15, 0.275 / 0.225]) / (2 * np.pi * length)

    def by_hand(hot):
        def outward(heat):
            face = hot
            for integral, resistance in zip(integrals, spread):
                face = np.interp(np.interp(face, grid, integral) - heat * resistance, integral, grid)
            return face

        return scipy.optimize.brentq(lambda heat: np.interp(outward(heat), faces, shell) - heat, 1.0, 2e4)

    hot = np.random.default_rng(5).uniform(900.0, 1600.0, 2_000)
    assert np.max(np.abs(jw.wall(**wall, hot_face=hot).heat[:100] / [by_hand(one) for one in hot[:100]] - 1)) < 2e-3
    fast = best(lambda: jw.wall(**wall, hot_face=hot)) / len(hot)
    slow = best(lambda: [by_hand(one) for one in hot[:100]], 3) / 100
    print(f"steady wall: {fast * 1e6:.1f} us; scipy's root finder {slow * 1e6:.0f} us (1/{slow / fast:.0f})")

    fire, gas = 26e3, jw.Gas("propane")
    share = np.nan_to_num(jw.chamber(**wall, gas=gas, chamber_temperature=faces + 1e-3, invalid="nan").available_heat)
    edges = radius + np.concatenate([np.linspace(0, 0.075, 31), 0.075 + np.linspace(0, 0.05, 19)[1:]])
    middles, first = (edges[:-1] + edges[1:]) / 2, np.arange(48) < 30
    inner = np.log(middles / edges[:-1]) / (2 * np.pi * length)
    outer = np.log(edges[1:] / middles) / (2 * np.pi * length)
    mass = np.pi * length * np.diff(edges**2) * np.where(first, brick.density, fiber.density)

    def slope(_, kelvin):
        conducts, heat = (np.where(first, *(np.interp(kelvin, grid, one) for one in pair)) for pair in known)
        face = kelvin[0]
        for _ in range(8):
            face = 0.5 * face + 0.5 * (kelvin[0] + fire * np.interp(face, faces, share) * inner[0] / conducts[0])
        between = (kelvin[:-1] - kelvin[1:]) / (outer[:-1] / conducts[:-1] + inner[1:] / conducts[1:])
        flow = np.concatenate([[fire * np.interp(face, faces, share)], between, [np.interp(kelvin[-1], faces, shell)]])
        return (flow[:-1] - flow[1:]) / (mass * heat)

    def face_of(kelvin):
        return kelvin[0] + (kelvin[0] - kelvin[1]) * inner[0] / (outer[0] + inner[1])

    near = scipy.sparse.diags([1.0, 1.0, 1.0], [-1, 0, 1], shape=(48, 48))
    leg = jw.warm_up(**wall, gas=gas, fire=fire, chamber_temperature=1500.0)
    solve = lambda: scipy.integrate.solve_ivp(  # noqa: E731
        slope, (0, leg.time), np.full(48, 288.15), method="BDF", rtol=1e-5, atol=1e-2, jac_sparsity=near
    )
    assert abs(face_of(solve().y[:, -1]) / leg.hot_face - 1) < 5e-3
    fast = best(lambda: jw.warm_up(**wall, gas=gas, fire=fire, chamber_temperature=1500.0))
    slow = best(solve, 3)
    print(f"warm-up of {leg.time / 60:.0f} min: {fast * 1e3:.2f} ms; scipy's stiff solver on as many cells {slow * 1e3:.0f} ms (1/{slow / fast:.0f})")


def firings():
    """A day of a casting furnace of four hours and more, and a forge's twelve bars, beside a stiff solver."""
    sys.path.insert(0, os.path.join(os.path.dirname(__file__), "..", "python", "tests"))
    import stiff_furnace

    brick, fiber, steel = (790.0, 0.29, 1000.0), (130.0, 0.2, 1000.0), (7850.0, 30.0, 600.0)
    lining = [{"rho_k_c": plain, "thickness": thick} for plain, thick in ((brick, 0.075), (fiber, 0.05), (steel, 0.0015))]
    furnace = {
        "gas": {"kind": "propane", "air_ratio": 1.05, "water_in_air": 0.0098},
        "radiation": "smith", "gas_zones": 2, "h_fired": 20.0, "h_air": 20.0, "h_off": 8.0,
        "pressure": 83_528.0, "volume": 0.0283,
        "walls": [{"radius": 0.15, "length": 0.5437, "emissivity": 0.75, "outer_h": 15.0, "layers": lining}],
        "openings": [{"area": 60e-4, "passage": 0.55, "z1": 0.4}],
    }  # fmt: skip
    up = {"do": "fire", "fire": 22.5e3, "until_chamber_rises_to": 1523.15}
    hold = {"do": "hold", "set": 1523.15, "most": 22.5e3, "for": 14_400.0}
    off = {"do": "off", "draft": True, "until_chamber_falls_to": 1033.15}
    bar = {"kind": "bar", "diameter": 0.03, "length": 0.3, "emissivity": 0.8, "rho_k_c": [7850.0, 30.0, 650.0]}
    heat = [
        {"do": "put", "content": bar},
        {"do": "hold", "set": 1523.15, "most": 22.5e3, "until_core_rises_to": 1400.0},
        {"do": "take"},
    ]
    for name, stages in (("four hours", [up, hold, off]), ("twelve bars", [up, *heat * 12])):
        case = furnace | {"stages": stages}
        ours, theirs = jw.furnace_case(case), stiff_furnace.solve(case)
        assert all(abs(a["seconds"] / b["seconds"] - 1) < 1e-2 for a, b in zip(ours, theirs, strict=True))
        fast, slow = best(lambda: jw.furnace_case(case)), best(lambda: stiff_furnace.solve(case), 1)
        print(f"firing, {name}: {fast * 1e3:.1f} ms; scipy's stiff solver {slow * 1e3:.0f} ms (1/{slow / fast:.0f})")


def sweep():
    """Ten million points on two processes, with a progress bar, beside the same without Dask."""
    import dask.array as da
    from dask.distributed import Client, LocalCluster, progress

    del os.environ["JETWRIGHT_THREADS"]
    gauge = np.linspace(1e3, 3e5, 5_000_000)
    bores = np.array([[1.2e-3], [1.8e-3]])
    with LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None) as cluster, Client(cluster) as client:
        lazy = jw.flow(gas="propane", gauge_pressure=da.from_array(gauge, chunks=500_000), bore=bores).heat_net
        start = time.perf_counter()
        future = client.compute(lazy)
        progress(future, notebook=False)
        heat = future.result()
    print(f"\nsweep of {heat.size:,} points: {time.perf_counter() - start:.1f} s")
    assert np.array_equal(heat, jw.flow(gas="propane", gauge_pressure=gauge, bore=bores).heat_net)


if __name__ == "__main__":
    main()
