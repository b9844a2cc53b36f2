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


def test_flow_with_neighbouring_drills():
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
