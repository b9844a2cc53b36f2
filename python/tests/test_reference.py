"""The published values of ``tests/reference``, read by the same files as the Rust tests."""

import csv
import pathlib

import jetwright as jw
import numpy as np
import pytest

FOLDER = pathlib.Path(__file__).parents[2] / "tests" / "reference"


def rows(topic):
    with open(FOLDER / f"{topic}.csv", encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            inputs = dict(part.split("=", 1) for part in row["inputs"].split(";") if part)
            yield row | {"inputs": inputs}


def gas_of(text):
    if "=" in text:
        return jw.Gas(text.replace("|", ","))
    return jw.Gas(text) if text in ("propane", "methane", "butane", "natural-gas", "hydrogen") else jw.Gas(f"{text}=1")


def kelvin_row(inputs):
    return {name: float(value) for name, value in inputs.items() if name not in ("gas", "composition")}


def standard_pressure(inputs):
    return jw.Site(altitude=inputs["altitude_m"]).ambient_pressure


def station_pressure(inputs):
    return jw.Site(altitude=inputs["altitude_m"], sea_level_pressure=inputs["sea_level_pressure_pa"]).ambient_pressure


def moist_air(inputs):
    return jw.Site(
        station_pressure=inputs["pressure_pa"], air_temperature=inputs["air_temperature_k"], humidity=inputs["humidity"]
    ).air_density


SITE = {
    "standard_pressure_pa": standard_pressure,
    "station_pressure_pa": station_pressure,
    "moist_air_density_kg_per_m3": moist_air,
}


def within(ours, row):
    text = row["tolerance"]
    value = float(row["value"])
    allowed = float(text[:-4]) if text.endswith(" abs") else float(text) * abs(value)
    assert abs(ours - value) <= allowed * (1 + 1e-9), f"{row['quantity']} {row['inputs']}: {ours} beside {value}"


@pytest.mark.parametrize("quantity", SITE)
def test_site(quantity):
    met = 0
    for row in rows("site"):
        if row["quantity"] == quantity:
            within(SITE[quantity](kelvin_row(row["inputs"])), row)
            met += 1
    assert met >= 9


def test_real_gas():
    met = {}
    for row in rows("real_gas"):
        inputs = row["inputs"]
        name = inputs.get("gas") or inputs.get("composition")
        number = kelvin_row(inputs)
        if name in ("air", "nitrogen", "oxygen", "carbon dioxide", "carbon-dioxide", "argon", "water") or "N2=1" == name:
            continue  # nothing in it burns, so Python offers no gas of it
        gas = gas_of(name)
        if row["quantity"] == "isentropic_mass_flux_kg_per_m2_s":
            ambient = number["ambient_pressure_pa"]
            ours = gas.expand(
                pressure=ambient + number["gauge_pressure_pa"], ahead=ambient, temperature=number["gas_temperature_k"]
            ).mass_flux
        elif row["quantity"] == "dynamic_viscosity_pa_s":
            ours = gas.viscosity(temperature=next(value for key, value in number.items() if key.endswith("_k")))
        else:
            continue
        within(ours, row)
        met[row["quantity"]] = met.get(row["quantity"], 0) + 1
    assert met["isentropic_mass_flux_kg_per_m2_s"] >= 200 and met["dynamic_viscosity_pa_s"] >= 25


def test_drills():
    met = 0
    every = {}
    for name in ("number", "letter", "fractional"):
        every |= jw.drills(name)
    bores = np.array(list(every.values()))
    for row in rows("drills"):
        value = float(row["value"]) * (jw.inch if row["unit"] == "in" else 1.0)
        assert np.min(np.abs(bores - value)) < 1e-9, row
        met += 1
    assert met >= 106


def test_stoichiometric_air():
    met = 0
    dry = jw.Site(humidity=0.0)
    for row in rows("combustion"):
        if row["quantity"] == "stoichiometric_air_mass_ratio":
            gas = gas_of(row["inputs"].get("gas") or row["inputs"].get("composition"))
            within(float(jw.air_needed(gas=gas, mass_flow=1.0, site=dry)), row)
            met += 1
    assert met >= 6
