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


HEATING = {
    "molar_mass_kg_per_kmol": ("molar_mass", 1.0),
    "compression_factor": ("compression_factor", 1.0),
    "gross_molar_kj_per_mol": ("gross_molar", 1e-3),
    "net_molar_kj_per_mol": ("net_molar", 1e-3),
    "gross_mass_mj_per_kg": ("gross_mass", 1e-6),
    "net_mass_mj_per_kg": ("net_mass", 1e-6),
    "gross_volume_mj_per_m3": ("gross_volume", 1e-6),
    "net_volume_mj_per_m3": ("net_volume", 1e-6),
    "density_kg_per_m3": ("density", 1.0),
    "relative_density": ("relative_density", 1.0),
    "wobbe_gross_mj_per_m3": ("wobbe_gross", 1e-6),
    "wobbe_net_mj_per_m3": ("wobbe_net", 1e-6),
}


def test_heating_values():
    met = 0
    for row in rows("heating"):
        if row["quantity"] in HEATING:
            inputs = row["inputs"]
            name, factor = HEATING[row["quantity"]]
            values = gas_of(inputs["composition"]).calorific_values(
                combustion=float(inputs["combustion_c"]), metering=float(inputs["metering_c"])
            )
            within(values[name] * factor, row)
            met += 1
    assert met >= 80


def test_flames():
    met = 0
    for row in rows("flame"):
        inputs = row["inputs"]
        flame = jw.flame(
            gas=gas_of(inputs["composition"]),
            air_ratio=float(inputs["air_ratio"]),
            mixture_temperature=float(inputs["mixture_temperature_k"]),
            chamber_temperature=1600.0,
            site=jw.Site(station_pressure=float(inputs["pressure_pa"])),
        )
        basis, symbol = row["quantity"].split("_", 1)
        if row["quantity"] == "adiabatic_flame_temperature_k":
            within(flame.temperature, row)
        elif row["quantity"] == "dry_CO_at_1600_k":
            within(flame.chamber_carbon_monoxide, row)
        else:
            within((flame.products if basis == "wet" else flame.dry())[symbol], row)
        met += 1
    assert met >= 700


def test_flue_gas():
    met = 0
    for row in rows("flue"):
        inputs, quantity = row["inputs"], row["quantity"]
        if quantity.startswith("iron"):
            continue
        gas = gas_of(inputs["composition"])
        if quantity == "air_ratio_from_oxygen_dry":
            carbon_monoxide = float(inputs.get("carbon_monoxide", 0.0))
            within(jw.air_ratio_from_oxygen(gas=gas, oxygen=float(inputs["oxygen"]), carbon_monoxide=carbon_monoxide), row)
        elif quantity in ("oxygen_dry", "carbon_dioxide_dry"):
            within(getattr(jw.expected_reading(gas=gas, air_ratio=float(inputs["air_ratio"])), quantity), row)
        else:
            flame = jw.flame(
                gas=gas,
                air_ratio=float(inputs["air_ratio"]),
                mixture_temperature=298.15,
                chamber_temperature=float(inputs.get("temperature_k", 800.0)),
                site=jw.Site(station_pressure=float(inputs.get("pressure_pa", 101_325.0))),
            )
            within(flame.dew_point - 273.15 if quantity == "dew_point_celsius" else getattr(flame, quantity), row)
        met += 1
    assert met >= 180


def test_limits_and_burning_velocities():
    met = 0
    for row in rows("burning"):
        inputs, quantity = row["inputs"], row["quantity"]
        gas = gas_of(inputs["composition"])
        if quantity == "autoignition_celsius":
            within(jw.autoignition(gas) - 273.15, row)
        elif quantity.endswith("burning_velocity_m_per_s"):
            kelvin = float(inputs["mixture_temperature_k"])
            site = jw.Site(station_pressure=float(inputs["pressure_pa"]))
            ratio = float(inputs["air_ratio"])
            fastest = quantity.startswith("fastest")
            speed = jw.burning_velocity(
                gas=gas, air_ratio=ratio, mixture_temperature=kelvin, fastest=fastest, site=site
            )
            within(speed, row)
        elif quantity.startswith("explosive_"):
            kelvin = float(inputs["celsius"]) + 273.15
            name = quantity.removeprefix("explosive_")
            within(getattr(jw.burning_range(gas=gas, temperature=kelvin, standard="explosive"), name), row)
        else:
            name, standard = quantity.rsplit("_", 1)
            kelvin = float(inputs["celsius"]) + 273.15
            standard = {"nfpa": "nfpa497", "iec": "iec60079"}[standard]
            within(getattr(jw.burning_range(gas=gas, temperature=kelvin, standard=standard), name), row)
        met += 1
    assert met >= 100


def test_entry_losses_seen_through_the_coefficient():
    """Idelchik's rounded mouths: at low speed the coefficient is 1/sqrt(1 + K) of the loss, scaled to 0.524 for a square."""
    met = 0
    for row in rows("orifice"):
        if row["quantity"] == "entry_loss_rounded" and "Idelchik" in row["source"]:
            ratio = next(float(value) for name, value in row["inputs"].items() if "ratio" in name or "radius" in name)
            given = {"edge": "rounded", "edge_radius": ratio * 2e-3} if ratio else {"edge": "square"}
            result = jw.flow(gas="methane", gauge_pressure=50.0, bore=2e-3, bore_length=3e-3, **given)
            loss = float(row["value"]) * (1 / 0.81**2 - 1) / 0.5
            assert result.discharge_coefficient == pytest.approx(1 / np.sqrt(1 + loss), rel=2e-3)
            met += 1
    assert met >= 8


def constant(conductivity, density=2000.0, specific_heat=1000.0):
    return jw.Material(density=density, conductivity=conductivity, specific_heat=specific_heat, limit=2000.0)


def between(inputs):
    pairs = [(f"conductivity_{number}", f"thickness_{number}_m") for number in (1, 2, 3)]
    layers = [(constant(inputs[k]), inputs[thick]) for k, thick in pairs if thick in inputs]
    return jw.wall(layers=layers, area=1.0, hot_face=inputs["hot_k"], cold_face=inputs["cold_k"])


def piece_time(inputs, shape, size):
    substance = jw.Substance(
        density=inputs["density"], conductivity=inputs["conductivity"], specific_heat=inputs["specific_heat"], limit=2000.0,
        emissivity=inputs.get("emissivity", 0.0),
    )  # fmt: skip
    return jw.work(
        substance=substance, start=inputs["start_k"], target=inputs["target_k"], chamber_temperature=inputs["chamber_k"],
        film_coefficient=inputs["film"], **{shape: size},
    ).piece_time  # fmt: skip


def loss(inputs, height, facing="side"):
    site = jw.Site(air_temperature=inputs["air_k"])
    return jw.shell_loss(face=inputs["face_k"], height=height, facing=facing, site=site).convection


def duct_strip(inputs):
    height, width = inputs["height_m"], inputs["width_m"]
    sides = 2 * height * loss(inputs, height)
    return (sides + width * (loss(inputs, width / 2, "up") + loss(inputs, width / 2, "down"))) * (inputs["face_k"] - inputs["air_k"])


def melting_point(inputs):
    substance = jw.Substance(inputs["name"])
    return (substance.solidus + substance.liquidus) / 2 - 273.15


def heat_of_melting(inputs):
    substance = jw.Substance(inputs["name"])
    begin, end = substance.solidus, substance.liquidus
    return substance.heat(begin, end) - substance.heat(end, 2 * end - begin)


def available(inputs):
    cold = jw.Site(air_temperature=298.15)
    return jw.chamber(
        layers=[("insulating brick 26", 0.1)], area=1.0, gas="propane", chamber_temperature=inputs["flue_k"], flue_excess=0.0,
        air_ratio=inputs["air_ratio"], site=cold,
    ).available_heat  # fmt: skip


def passed_share(inputs):
    radius = np.sqrt(0.01 / np.pi)
    shallow, deep = jw.opening(area=0.01, depth=np.array([0.0, inputs["depth_over_radius"] * radius]), chamber_temperature=1500.0)
    return deep / shallow


FURNACE = {
    "wall_heat_w_per_m2": lambda x: between(x).heat_flux,
    "wall_face_k": lambda x: between(x).faces[int(x["face"])],
    "fibre_wall_heat_w_per_m2": lambda x: jw.wall(
        layers=[("fiber blanket", x["thickness_m"])], area=1.0, hot_face=x["hot_k"], cold_face=x["cold_k"]
    ).heat,
    "round_wall_heat_w": lambda x: jw.wall(
        layers=[(constant(x["conductivity"]), x["thickness_m"])], inner_radius=x["radius_m"], length=x["length_m"],
        hot_face=x["hot_k"], cold_face=x["cold_k"],
    ).heat,
    "box_heat_w": lambda x: x["conductivity"] * x["difference_k"] * jw.box_shape_factor(
        width=x["side_m"], height=x["side_m"], depth=x["side_m"], thickness=x["thickness_m"]
    ),
    "convection_w_per_m2_k": lambda x: loss(x, x["height_m"]),
    "plate_loss_w": lambda x: loss(x, x["height_m"]) * (x["face_k"] - x["air_k"]) * x["height_m"] * x["width_m"],
    "duct_loss_w_per_m": duct_strip,
    "lumped_time_s": lambda x: piece_time(x, "plate", 2 * x["volume_over_area_m"]),
    "slab_time_s": lambda x: piece_time(x, "plate", x["size_m"]),
    "round_time_s": lambda x: piece_time(x, "bar", x["size_m"]),
    "available_share": available,
    "passed_share": passed_share,
    "heat_j_per_kg": lambda x: jw.Substance(x["name"]).heat(x["from_c"] + 273.15, x["to_c"] + 273.15),
    "heat_of_melting_j_per_kg": heat_of_melting,
    "melting_point_c": melting_point,
}  # fmt: skip
#: Rows that ask the grid alone, which Python reaches through a furnace only (test_live_furnace), or a room of 800 K.
GRID_ONLY = {"deep_wall_k", "fired_face_rise_k", "layered_face_k", "layered_60_mm_k", "radiation_w"}


def numbers(inputs):
    return {name: value if name == "name" else float(value) for name, value in inputs.items()}


def test_furnace():
    met = 0
    for row in rows("furnace"):
        if row["quantity"] not in GRID_ONLY:
            within(FURNACE[row["quantity"]](numbers(row["inputs"])), row)
            met += 1
    assert met >= 88


HORSEPOWER = 550 * jw.foot * jw.lb * 9.80665


def ports(inputs):
    head = jw.Head(
        ports=1, port_diameter=4e-3, port_length=4e-3 * inputs["length_over_diameter"], open_fraction=inputs["open_fraction"]
    )
    return head.loss_coefficient(inputs["friction_factor"])


def plate_in_a_duct(inputs):
    """A plate in a duct loses (1-f)^2 of the ports' heads behind it; a head in a chamber loses all of one."""
    share = inputs["open_fraction"]
    return (ports(inputs) - 1 + (1 - share) ** 2) / share**2


def speed_pressure(inputs):
    density = inputs["density_lb_per_ft3"] * jw.lb / jw.foot**3
    flow = inputs["speed_fpm"] * jw.foot / jw.minute * np.pi / 4 * (3 * jw.inch) ** 2
    return jw.duct_loss(flow=flow, diameter=3 * jw.inch, density=density) / jw.inH2O


AIR = {
    "butterfly_loss_coefficient": lambda x: jw.damper_loss(
        kind="butterfly", opening=1 - x["angle_deg"] / 90, gap=x["gap"]
    ),
    "ball_valve_loss_coefficient": lambda x: jw.damper_loss(kind="ball valve", opening=x["opening"]),
    "gate_valve_loss_coefficient": lambda x: jw.damper_loss(kind="gate valve", opening=x["opening"]),
    "blast_gate_loss_coefficient": lambda x: jw.damper_loss(kind="blast gate", opening=x["opening"]),
    "shaft_power_hp": lambda x: jw.duty(
        flow=x["flow_cfm"] * jw.cfm, static_pressure=x["pressure_inh2o"] * jw.inH2O, efficiency=x["efficiency"]
    ).shaft_power / HORSEPOWER,
    "velocity_pressure_inh2o": speed_pressure,
    "port_loss_coefficient": ports,
    "head_loss_coefficient_on_duct": plate_in_a_duct,
}  # fmt: skip


def nozzle(inputs):
    supply = inputs["absolute_pressure_pa"]
    ratio = inputs["back_pressure_pa"] / supply
    specific = 8314.462618 / inputs["molar_mass_kg_per_kmol"] * inputs["compression_factor"]
    flux = jw.perfect_gas(exponent=inputs["isentropic_exponent"], pressure_ratio=ratio).flux
    return flux * supply / np.sqrt(specific * inputs["temperature_k"]) * inputs["area_m2"]


COMPRESSIBLE = {
    "critical_pressure_ratio": lambda x: jw.perfect_gas(exponent=x["isentropic_exponent"], pressure_ratio=0.05).pressure_ratio,
    "perfect_gas_critical_flow_function": lambda x: jw.perfect_gas(exponent=x["isentropic_exponent"], pressure_ratio=0.05).flux,
    "nozzle_mass_flow_kg_per_s": nozzle,
    "choked_bore_over_nozzle": lambda x: jw.perfect_gas(
        exponent=x["isentropic_exponent"], pressure_ratio=0.05, friction_length=x["friction_length"]
    ).coefficient,
}


@pytest.mark.parametrize(("topic", "arms", "least"), [("air", AIR, 85), ("compressible", COMPRESSIBLE, 17)])
def test_every_row(topic, arms, least):
    met = 0
    for row in rows(topic):
        within(arms[row["quantity"]](numbers(row["inputs"])), row)
        met += 1
    assert met >= least
