"""Cylinder, throttling and line: the reference equation, scipy's integrator and the code's formula typed again."""

import csv
import os
import pathlib
import pickle
import subprocess
import tomllib

import CoolProp.CoolProp as coolprop
import fluids
import jetwright as jw
import numpy as np
import pytest
import scipy.integrate
import scipy.optimize

ROOT = pathlib.Path(__file__).parents[2]
GIVEN = {"gas": "propane", "capacity": 45.0, "diameter": 0.375, "needs": 1 * jw.bar}
YARD = jw.Site(altitude=1600, air_temperature=283.15)


def test_vapor_pressure_and_liquid():
    kelvin = np.linspace(238.15, 323.15, 200)
    ours = jw.Gas("propane").saturated(temperature=kelvin)
    at = lambda what, quality: coolprop.PropsSI(what, "T", kelvin, "Q", quality, "n-Propane")  # noqa: E731
    assert np.max(np.abs(ours.pressure / at("P", 0) - 1)) < 0.005
    assert np.max(np.abs(ours.latent_heat / (at("H", 1) - at("H", 0)) - 1)) < 0.015
    assert np.max(np.abs(ours.density / at("D", 0) - 1)) < 0.005
    cold = kelvin < 313.15
    assert np.max(np.abs(ours.heat_capacity / at("C", 0) - 1)[cold]) < 0.03


def test_rows_of_the_published_table():
    met = 0
    with open(ROOT / "tests" / "reference" / "fuel.csv", encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            if row["quantity"] != "cylinder_draw_btu_per_h":
                continue
            inputs = {name: float(value) for name, value in (part.split("=") for part in row["inputs"].split(";"))}
            air = jw.Site(air_temperature=(inputs["air_temperature_f"] - 32) / 1.8 + 273.15)
            pounds = inputs["charge_lb"] * jw.lb
            r = jw.cylinder(gas="propane", draw=0.0, capacity=100 * jw.lb, diameter=0.368, left=pounds, needs=0.0, site=air)
            heat = r.steady_draw * jw.Gas("propane").heating_value_gross / jw.btu_per_hour
            assert heat == pytest.approx(float(row["value"]), rel=float(row["tolerance"]))
            met += 1
    assert met == 70


def test_a_draw_integrated_by_scipy_with_the_reference_equation():
    rate, charge, air, seconds = 3.0 / 3600, 25.0, 283.15, 3 * 3600.0
    area = np.pi / 4 * 0.375**2

    def slope(_, state):
        mass, kelvin = state
        liquid = lambda what, quality=0: coolprop.PropsSI(what, "T", kelvin, "Q", quality, "n-Propane")  # noqa: E731
        wetted = area + mass / liquid("D") / area * np.pi * 0.375
        latent = liquid("H", 1) - liquid("H")
        return -rate, (12.4 * wetted * (air - kelvin) - rate * latent) / (mass * liquid("C") + 450 * 33.0)

    end = scipy.integrate.solve_ivp(slope, (0, seconds), (charge, air), rtol=1e-7).y[:, -1]
    ours = jw.cylinder(**GIVEN, draw=rate, left=charge, empty_mass=33.0, duration=seconds, site=YARD)
    # 3 % of heat capacity and 1 % of latent heat in a fall of 17 K.
    assert ours.liquid_temperature == pytest.approx(end[1], abs=0.4)
    assert ours.left == pytest.approx(end[0], rel=1e-9)


def test_arrays_broadcast_and_bad_elements_are_named():
    draw = np.array([1.0, 3.0, 9.0]) / 3600
    left = np.array([[10.0], [40.0]])
    r = jw.cylinder(**GIVEN, draw=draw, left=left, duration=7200.0, site=YARD)
    assert r.steady_draw.shape == r.keeps_up.shape == (2, 3) and r.keeps_up.dtype == bool
    assert (r.steady_draw[1] > r.steady_draw[0]).all() and (np.diff(r.liquid_temperature, axis=1) < 0).all()
    single = jw.cylinder(**GIVEN, draw=float(draw[2]), left=10.0, duration=7200.0, site=YARD)
    assert single.too_cold_after == r.too_cold_after[0, 2] < 7200 and isinstance(single.keeps_up, bool)
    two = jw.cylinder(**GIVEN, draw=2 * draw, left=40.0, count=2, duration=7200.0, site=YARD)
    assert two.liquid_temperature == pytest.approx(r.liquid_temperature[1], rel=1e-12)
    with pytest.raises(jw.RangeError, match="left at index") as caught:
        jw.cylinder(**GIVEN, draw=1e-4, left=[5.0, 0.0], site=YARD)
    assert (caught.value.argument, caught.value.index) == ("left", (1,))
    marked = jw.cylinder(**GIVEN, draw=[1e-4, 9.0], invalid="nan", site=YARD)
    assert np.isnan(marked.steady_draw[1]) and not np.isnan(marked.steady_draw[0])
    with pytest.raises(jw.RangeError, match="sold as a liquid"):
        jw.cylinder(**(GIVEN | {"gas": "methane"}), draw=1e-4)
    with pytest.raises(jw.RangeError, match="length"):
        jw.low_pressure_line(gas="propane", diameter=0.02, length=0.0, pressure_drop=100.0)
    assert len(r.to_pandas()) == 6 and pickle.loads(pickle.dumps(r.left)).shape == (2, 3)


def test_the_codes_formula_typed_again():
    gas = jw.Gas("propane")
    diameter, length = np.array([0.622, 1.049]), np.array([[10.0], [60.0]])
    ours = jw.low_pressure_line(gas=gas, diameter=diameter * jw.inch, length=length * jw.foot, pressure_drop=0.5 * jw.inH2O)
    relative = gas.calorific_values()["relative_density"]
    viscosity = gas.viscosity(temperature=288.706) * 1e3
    factor = 0.00354 * relative * 520 * (viscosity / relative) ** 0.152
    flow = (19.17 * diameter * (0.5 / (factor * length)) ** 0.206) ** (1 / 0.381)
    assert ours.volume_flow * 3600 / 0.3048**3 == pytest.approx(flow, rel=1e-5)
    density = coolprop.PropsSI("D", "T", 288.706, "P", 30 * 3386.389, "n-Propane")
    assert ours.mass_flow == pytest.approx(ours.volume_flow * density, rel=1e-3)


def test_the_foundrys_line_and_throttling_by_hand():
    """The demo's reading through its line: throttled by the reference equation, hose by its exponential, line by fluids."""
    file = ROOT / "examples" / "bell-foundry.toml"
    setting = next(row for row in jw.sheet(file)["settings"] if row["name"] == "melt")
    ambient = jw.Site(altitude=1600, air_temperature=293.15, humidity=0.35).ambient_pressure
    before = ambient + setting["gauge_pressure_pa"]
    enthalpy = coolprop.PropsSI("H", "T", 285.15, "Q", 1, "n-Propane")
    cold = coolprop.PropsSI("T", "P", before, "H", enthalpy, "n-Propane")
    flow = setting["mass_flow_kg_per_s"]
    capacity = coolprop.PropsSI("C", "P", before, "T", cold, "n-Propane")
    kelvin = 293.15 - (293.15 - cold) * np.exp(-8.0 * np.pi * 0.015 * 3.0 / (flow * capacity))
    assert setting["gas_temperature_k"] == pytest.approx(kelvin, abs=0.4)  # throttling agrees within 0.2 K from 10 C, 0.6 K from 20 C
    density = coolprop.PropsSI("D", "P", before, "T", kelvin, "n-Propane")
    area = np.pi / 4 * 0.008**2
    speed = flow / density / area
    reynolds = density * speed * 0.008 / coolprop.PropsSI("V", "P", before, "T", kelvin, "n-Propane")
    valve = fluids.Kv_to_K(1.5, 0.008)
    head = density * speed**2 / 2 * (fluids.friction_factor(Re=reynolds, eD=2e-6 / 0.008) * 3 / 0.008 + 4 + valve)
    lost = setting["gauge_pressure_pa"] - setting["jet_gauge_pressure_pa"]
    assert lost == pytest.approx(head, rel=0.03)
    burner = jw.Burner(file).run(gauge_pressure=setting["gauge_pressure_pa"], air_ratio=1.05)
    assert burner.gas == pytest.approx(flow, rel=1e-9)


def test_the_blank_has_a_cylinder_that_the_sheet_reads():
    whole = tomllib.loads(subprocess.run([os.environ["JETWRIGHT_COMMAND"], "blank"], check=True, capture_output=True, text=True).stdout)
    block = jw.sheet(whole)["cylinder"]
    names = [setting["name"] for setting in whole["setting"]]
    assert block["cylinder_run"]["lasts_run"]
    assert [draw["setting"] for draw in block["draws"]] == [*names, "the work"]
