"""Live checks against general-purpose libraries, 500 states and more a quantity.

CoolProp 8 (reference equations), Cantera 3.2 (GRI-Mech 3.0 elements), fluids (friction, standard atmosphere) and scipy.
The run fails when one of them is missing.
"""

import cantera
import CoolProp.CoolProp as coolprop
import fluids
import jetwright as jw
import numpy as np
import pytest
import scipy.integrate
import scipy.interpolate

COUNT = 500
PURE = {"propane": "n-Propane", "methane": "Methane", "C2H6=1": "Ethane", "butane": "n-Butane"}


def states(name, count, seed):
    """Pressures and temperatures short of condensing, to 4 bar absolute."""
    random = np.random.default_rng(seed)
    critical = coolprop.PropsSI("Tcrit", name)
    found = []
    while len(found) < count:
        kelvin, pascals = random.uniform(253.15, 323.15), random.uniform(0.9e5, 3.1e5)
        if kelvin < critical and pascals > 0.97 * coolprop.PropsSI("P", "T", kelvin, "Q", 1, name):
            continue
        found.append((pascals, kelvin))
    return np.array(found).T


@pytest.mark.parametrize(("gas", "name"), PURE.items())
def test_isentropic_flux_within_a_thousandth(gas, name):
    pressure, kelvin = states(name, COUNT, 7)
    ahead = np.random.default_rng(8).uniform(0.62, 0.99, COUNT) * pressure
    ours = jw.Gas(gas).expand(pressure=pressure, ahead=ahead, temperature=kelvin).mass_flux
    state = coolprop.AbstractState("HEOS", name)
    met = 0
    for index in range(COUNT):
        state.update(coolprop.PT_INPUTS, pressure[index], kelvin[index])
        rest, entropy = state.hmass(), state.smass()
        state.update(coolprop.PSmass_INPUTS, ahead[index], entropy)
        if state.phase() == coolprop.iphase_twophase:
            continue
        theirs = state.rhomass() * np.sqrt(2 * (rest - state.hmass()))
        assert ours[index] == pytest.approx(theirs, rel=1e-3), (pressure[index], kelvin[index], ahead[index])
        met += 1
    assert met >= 0.9 * COUNT


@pytest.mark.parametrize(("gas", "name", "within"), [("methane", "Methane", 1e-3), ("propane", "n-Propane", 3e-3)])
def test_density(gas, name, within):
    pressure, kelvin = states(name, COUNT, 9)
    ours = jw.Gas(gas).density(pressure=pressure, temperature=kelvin)
    theirs = coolprop.PropsSI("D", "P", pressure, "T", kelvin, name)
    assert np.max(np.abs(ours / theirs - 1)) < within


@pytest.mark.parametrize(("gas", "name"), [("propane", "n-Propane"), ("methane", "Methane"), ("butane", "n-Butane")])
def test_viscosity_and_enthalpy(gas, name):
    pressure, kelvin = states(name, COUNT, 10)
    gas = jw.Gas(gas)
    viscosity = coolprop.PropsSI("V", "P", pressure, "T", kelvin, name)
    assert np.max(np.abs(gas.viscosity(temperature=kelvin) / viscosity - 1)) < 0.05
    change = gas.enthalpy(pressure=pressure, temperature=kelvin) - gas.enthalpy(pressure=1e5, temperature=300.0)
    reference = coolprop.PropsSI("H", "P", pressure, "T", kelvin, name)
    reference = reference - coolprop.PropsSI("H", "P", 1e5, "T", 300.0, name)
    # The virial equation's enthalpy strays from the reference by 1.5 % of the heat that 40 K hold, near saturation.
    assert np.max(np.abs(change - reference)) < 0.015 * 1700 * 40


def test_saturation():
    kelvin = np.linspace(238.15, 280.15, COUNT)
    pressure = coolprop.PropsSI("P", "T", kelvin, "Q", 1, "n-Propane")
    ratio = jw.Gas("propane").saturation_ratio(pressure=pressure, temperature=kelvin)
    assert np.max(np.abs(ratio - 1)) < 0.005


def test_standard_atmosphere():
    metres = np.linspace(-400.0, 4000.0, COUNT)
    theirs = np.array([fluids.ATMOSPHERE_1976(height).P for height in metres])
    assert np.max(np.abs(jw.Site(altitude=metres).ambient_pressure / theirs - 1)) < 1e-4


def test_moist_air():
    random = np.random.default_rng(11)
    celsius, pascals, humidity = random.uniform(-20, 45, COUNT), random.uniform(7e4, 1.05e5, COUNT), random.uniform(0, 1, COUNT)
    ours = jw.Site(station_pressure=pascals, air_temperature=celsius + 273.15, humidity=humidity).air_density
    volume = coolprop.HAPropsSI("Vha", "T", celsius + 273.15, "P", pascals, "R", humidity)
    assert np.max(np.abs(ours * volume - 1)) < 5e-4


def test_air_needed_by_the_elements():
    species = {"propane": "C3H8", "methane": "CH4", "C2H6=1": "C2H6", "hydrogen": "H2", "CO=1": "CO"}
    solution = cantera.Solution("gri30.yaml")
    random = np.random.default_rng(12)
    names = list(species)
    for _ in range(COUNT):
        shares = random.dirichlet(np.ones(len(names)))
        text = {"propane": "C3H8", "methane": "CH4", "C2H6=1": "C2H6", "hydrogen": "H2", "CO=1": "CO"}
        gas = jw.Gas({text[name]: float(share) for name, share in zip(names, shares)})
        fuel = {species[name]: float(share) for name, share in zip(names, shares)}
        air = {"O2": 0.20946, "N2": 0.78084, "AR": 0.00934, "CO2": 0.00036}
        ratio = solution.stoich_air_fuel_ratio(fuel, air)
        assert float(jw.air_needed(gas=gas, mass_flow=1.0)) == pytest.approx(ratio, rel=1e-3)


def test_blower_curve_is_the_monotone_cubic():
    points = [(0.0, 720.0), (0.005, 745.0), (0.010, 690.0), (0.016, 520.0), (0.022, 120.0)]
    curve = scipy.interpolate.PchipInterpolator(*zip(*points))
    flow = np.linspace(0.0, 0.022, COUNT)
    assert np.allclose(jw.Blower(points).static_pressure(flow), curve(flow), rtol=1e-12, atol=1e-9)
    resistance = np.geomspace(1e5, 1e8, COUNT)
    point = jw.Blower(points).operating_point(resistance)
    assert np.allclose(point.static_pressure, resistance * point.flow**2, rtol=1e-9)
    assert np.allclose(point.static_pressure[point.flow < 0.022], curve(point.flow[point.flow < 0.022]), rtol=1e-9)


def test_long_bore_by_integration():
    """Adiabatic friction integrated in Mach number by scipy, friction by fluids' Haaland, over 1.5 diameters less."""
    random = np.random.default_rng(13)
    loss, met = 1 / 0.81**2 - 1, 0
    gas = jw.Gas("CH4=1")
    for _ in range(60):
        bore, length = random.uniform(0.8e-3, 3e-3), random.uniform(5, 40)
        gauge, kelvin = random.uniform(2e3, 5e4), random.uniform(270, 310)
        result = jw.flow(gas=gas, gauge_pressure=gauge, bore=bore, bore_length=min(length * bore, 0.06), gas_temperature=kelvin)
        if result.choked or result.reynolds_number < 4100:
            continue
        length = min(length, 0.06 / bore)
        k = float(_exponent(gas, 101325 + gauge, kelvin))
        friction = fluids.friction.Haaland(Re=result.reynolds_number, eD=5e-6 / bore)
        mach = _mach(k, friction * (length - 1.5), loss, 101325 / (101325 + gauge))
        nozzle = np.sqrt(2 / (k - 1) * ((1 + gauge / 101325) ** ((k - 1) / k) - 1))
        flux = lambda m, p: m * p * np.sqrt(1 + (k - 1) / 2 * m * m)  # noqa: E731
        entry = (1 + (k - 1) / 2 * mach**2) ** (k / (k - 1)) + loss * k * mach**2 / 2
        coefficient = flux(mach, 1 / entry) / flux(nozzle, 101325 / (101325 + gauge))
        assert result.discharge_coefficient == pytest.approx(coefficient, rel=2e-3)
        met += 1
    assert met >= 25


def _exponent(gas, pressure, kelvin):
    half = gas.expand(pressure=pressure, ahead=pressure * 0.98, temperature=kelvin)
    return np.log(half.pressure_ratio) / np.log(half.density_ratio)


def _mach(k, length, loss, ratio):
    """Mach number at the head whose stream, after friction, leaves at the pressure ahead."""

    def end(mach):
        def slope(_, square):
            return square * k * square * (1 + (k - 1) / 2 * square) / (1 - square)

        def sonic(_, square):
            return square[0] - 0.998

        sonic.terminal = True
        path = scipy.integrate.solve_ivp(slope, (0, length), [mach**2], events=sonic, rtol=1e-9, atol=1e-12)
        out = np.sqrt(path.y[0][-1])
        entry = (1 + (k - 1) / 2 * mach**2) ** (k / (k - 1)) + loss * k * mach**2 / 2
        drop = mach / out * np.sqrt((1 + (k - 1) / 2 * mach**2) / (1 + (k - 1) / 2 * out**2))
        return drop / entry - ratio, path.t[-1] < length * (1 - 1e-9)

    low, high = 1e-3, 1.0
    for _ in range(60):
        middle = 0.5 * (low + high)
        value, choked = end(middle)
        low, high = (middle, high) if value > 0 and not choked else (low, middle)
    return low
