"""The pictures: axes with units, and lines that show what they say."""

import pathlib

import jetwright as jw
import matplotlib
import numpy as np
import pytest

matplotlib.use("Agg")
from jetwright import plots  # noqa: E402

BELLS = pathlib.Path(__file__).parents[2] / "examples" / "bell-foundry.toml"


@pytest.fixture(autouse=True)
def _close():
    yield
    import matplotlib.pyplot as plt

    plt.close("all")


def test_flow_with_neighboring_drills():
    axes = plots.flow_against_gauge(gas="propane", bore=1.6e-3, bore_length=10e-3)
    labels = [line.get_label() for line in axes.get_lines()]
    assert len(labels) == 3 and labels[1].startswith("number 53") and labels[2].startswith("number 52")
    small, large = axes.get_lines()[1], axes.get_lines()[2]
    assert (large.get_ydata() > small.get_ydata()).all()
    assert "psi" in axes.get_xlabel() and "kW" in axes.get_ylabel()


def test_coefficients_and_blower_and_settings():
    axes = plots.coefficient_against_pressure_ratio()
    assert len(axes.get_lines()) == 4 and "coefficient" in axes.get_ylabel()
    burner = jw.Burner(BELLS)
    axes = plots.blower_and_system(burner=burner, gauge_pressure=6 * jw.psi, damper=0.35)
    point = axes.get_lines()[2]
    curve = axes.get_lines()[0]
    met = np.interp(point.get_xdata()[0], curve.get_xdata(), curve.get_ydata())
    assert met == pytest.approx(point.get_ydata()[0], rel=1e-2)
    system = axes.get_lines()[1]
    asked = np.interp(point.get_xdata()[0], system.get_xdata(), system.get_ydata())
    assert asked == pytest.approx(point.get_ydata()[0], rel=1e-2)
    axes = plots.settings_table(burner=burner, damper=0.35)
    assert "kW" in axes.get_ylabel()
    styles = {line.get_linestyle() for line in axes.figure.axes[0].get_lines() + axes.figure.axes[1].get_lines()[:1]}
    assert len(styles) == 2


def test_the_table_holds_the_sheets_settings():
    sheet = jw.sheet(BELLS)
    cells = plots.sheet_table(sheet=sheet).tables[0].get_celld()
    for row, setting in enumerate(sheet["settings"], 1):
        assert cells[row, 0].get_text().get_text() == setting["name"]
        assert float(cells[row, 3].get_text().get_text()) == pytest.approx(setting["heat_net_w"] / jw.kW, abs=0.051)
        assert float(cells[row, 6].get_text().get_text()) == pytest.approx(setting["air_ratio"], abs=0.0051)


def test_a_closed_damper_asks_more_of_the_blower():
    burner = jw.Burner(BELLS)
    wide, shut = (burner.system_curve(gauge_pressure=3e4, damper=damper) for damper in (1.0, 0.3))
    flow = 0.008
    assert np.interp(flow, *shut) > 1.5 * np.interp(flow, *wide)


def test_flames_and_their_products():
    axes = plots.flame_against_air_ratio(gas="propane", mixture_temperatures=(293.15, 600.0))
    cold, hot = axes.get_lines()[:2]
    assert (hot.get_ydata() > cold.get_ydata()).all() and "°C" in axes.get_ylabel()
    # Hottest a little rich, at 2 277 K from 25 degC (GRI-Mech 3.0).
    assert 0.9 < cold.get_xdata()[cold.get_ydata().argmax()] < 1.0
    assert cold.get_ydata().max() == pytest.approx(2277 - 273.15, abs=6)
    axes = plots.products_against_air_ratio(gas="methane")
    lines = {line.get_label(): line for line in axes.get_lines()}
    assert list(lines) == ["CO2", "CO", "H2", "O2"]
    assert (np.diff(lines["CO"].get_ydata()) < 0).all() and (np.diff(lines["O2"].get_ydata()) > 0).all()


def test_the_lighting_range_against_the_damper():
    axes = plots.lighting_range(burner=jw.Burner(BELLS), damper=np.linspace(0.2, 0.6, 5))
    glowing, limits, cold = (line.get_ydata() for line in axes.get_lines())
    assert (cold > limits).all() and (limits > glowing).all() and (np.diff(cold) > 0).all()
    assert "psi" in axes.get_ylabel() and "damper" in axes.get_xlabel() and len(axes.get_legend().get_texts()) == 3
    axes = plots.lighting_range(burner=jw.Burner(BELLS.with_name("natural-gas.toml")), damper=[0.3, 0.5])
    assert len(axes.get_lines()) == 2 and "limits only" in axes.get_title()


LAYERS = [("insulating brick 26", 0.075), ("fiber blanket", 0.05), ("steel sheet", 1.5e-3)]
WALL = {"layers": LAYERS, "inner_radius": 0.15, "length": 0.55}
FURNACE = WALL | {"gas": "propane", "openings": [0.006]}


def firing():
    steps = [
        jw.Step.warm_up(fire=23e3, chamber_temperature=1500.0),
        jw.Step.hold(chamber_temperature=1500.0, time=2400.0, work=5e3),
        jw.Step.cool_down(down_to=600.0),
    ]
    return jw.firing(**FURNACE, steps=steps)


def test_the_wall_profile_passes_the_faces():
    axes = plots.wall_profile(**WALL, hot_face=1500.0, firing=firing())
    lines = {line.get_label(): line for line in axes.get_lines()}
    faces = jw.wall(**WALL, hot_face=1500.0).faces
    steady = lines["steady state"]
    for depth, face in zip((0.0, 75.0, 125.0, 126.5), faces):
        assert np.interp(depth, steady.get_xdata(), steady.get_ydata()) == pytest.approx(face - 273.15, abs=5.0)
    kinds = {label.split(",")[0]: line for label, line in lines.items()}
    assert {"warm up", "hold", "cool down", "maximum service temperature"} <= set(kinds)
    # A wall that was hot for less than long is colder behind its face.
    held = kinds["hold"]
    assert (held.get_ydata()[5:40] < np.interp(held.get_xdata()[5:40], steady.get_xdata(), steady.get_ydata())).all()
    assert "mm" in axes.get_xlabel() and "°C" in axes.get_ylabel()


def test_the_firing_has_its_marks():
    course = firing()
    axes = plots.firing_course(firing=course, gas="propane")
    lines = {line.get_label(): line for line in axes.get_lines()}
    assert {"re-ignites gas by itself, 760 °C", "may light gas, 450 °C"} <= set(lines)
    assert lines["hot face"].get_ydata()[-1] == pytest.approx(course.legs[-1].hot_face - 273.15)
    assert "minutes" in axes.get_xlabel() and "°C" in axes.get_ylabel()
    named = " ".join(text.get_text() for text in axes.texts)
    assert "hold\n40 min" in named and "cool down" in named


def test_the_fire_is_the_sum_of_its_parts():
    axes = plots.fire_against_temperature(**FURNACE, work=2e3)
    fire = axes.get_lines()[0]
    top = max(path.vertices[:, 1].max() for area in axes.collections for path in area.get_paths())
    assert top == pytest.approx(fire.get_ydata()[-1]) and len(axes.collections) == 4
    assert "kW" in axes.get_ylabel() and "°C" in axes.get_xlabel()
