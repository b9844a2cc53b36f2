"""Pictures with matplotlib (``pip install jetwright[plot]``): axes with units, lines told apart without colour.

Every function draws into ``axes`` (a new figure's unless given) and returns it.
"""

from __future__ import annotations

from typing import Any, Mapping, Sequence

import numpy as np

from ._burning import burning_range
from ._flame import flame
from ._flow import drills as drill_list
from ._flow import flow
from ._gas import Gas
from ._sheet import Burner, Sheet
from ._site import Site
from ._units import inH2O, kW, mm, psi

_STYLES = (("-", "black"), ("--", "0.35"), (":", "0.35"), ("-.", "0.55"))


def _axes(axes: Any) -> Any:
    import matplotlib.pyplot as plt

    return plt.subplots(figsize=(6.4, 4.2), layout="constrained")[1] if axes is None else axes


def flow_against_gauge(
    *,
    gas: Gas | str | Mapping[str, float],
    bore: float,
    gauge_pressure: Any = None,
    drills: str | None = "number",
    axes: Any = None,
    **shape: Any,
) -> Any:
    """Net heat against gauge pressure for a bore and the drills either side of it; arguments as in ``jw.flow``."""
    axes = _axes(axes)
    gauge = np.linspace(0.2, 15.0, 75) * psi if gauge_pressure is None else np.asarray(gauge_pressure, dtype=float)
    lines = [("this bore", bore)]
    if drills is not None:
        sizes = list(drill_list(drills).items())
        lines += [size for size in sizes if size[1] < bore * 0.995][-1:]
        lines += [size for size in sizes if size[1] > bore * 1.005][:1]
    for (name, diameter), (style, shade) in zip(lines, _STYLES):
        heat = flow(gas=gas, bore=diameter, gauge_pressure=gauge, **shape).heat_net
        axes.plot(gauge / psi, heat / kW, style, color=shade, label=f"{name}, {diameter / mm:.2f} mm")
    axes.set(xlabel="gauge pressure, psi", ylabel="fire, kW net", xlim=(0, gauge.max() / psi), ylim=(0, None))
    axes.legend(frameon=False)
    axes.grid(color="0.9")
    return axes


def coefficient_against_pressure_ratio(
    *,
    gas: Gas | str | Mapping[str, float] = "propane",
    bore: float = 1.5 * mm,
    lengths: Sequence[float] = (0.0, 2.0, 7.0, 20.0),
    ambient: float = 101_325.0,
    axes: Any = None,
) -> Any:
    """Discharge coefficient against the pressure ahead over the supply's, for bores of several lengths in diameters."""
    axes = _axes(axes)
    ratio = np.linspace(0.25, 0.995, 150)
    gauge = ambient * (1 / ratio - 1)
    for length, (style, shade) in zip(lengths, _STYLES):
        edge = "sharp" if length == 0 else "square"
        result = flow(gas=gas, bore=bore, bore_length=length * bore, edge=edge, gauge_pressure=gauge)
        label = "thin sharp plate" if length == 0 else f"{length:g} diameters long"
        axes.plot(ratio, result.discharge_coefficient, style, color=shade, label=label)
    axes.set(xlabel="pressure ahead over supply pressure, absolute", ylabel="discharge coefficient", xlim=(0.25, 1))
    axes.legend(frameon=False)
    axes.grid(color="0.9")
    return axes


def flame_against_air_ratio(
    *,
    gas: Gas | str | Mapping[str, float],
    air_ratio: Any = None,
    mixture_temperatures: Sequence[float] = (293.15,),
    site: Site | None = None,
    axes: Any = None,
) -> Any:
    """Flame temperature without loss against the air ratio, a line a temperature of the mixture."""
    axes = _axes(axes)
    ratio = np.linspace(0.6, 2.5, 96) if air_ratio is None else np.asarray(air_ratio, dtype=float)
    for kelvin, (style, shade) in zip(mixture_temperatures, _STYLES):
        celsius = flame(gas=gas, air_ratio=ratio, mixture_temperature=kelvin, site=site).temperature - 273.15
        axes.plot(ratio, celsius, style, color=shade, label=f"mixture at {kelvin - 273.15:.0f} °C")
    lean = burning_range(gas=gas, temperature=mixture_temperatures[0], site=site).leanest_air_ratio
    if ratio.min() < lean < ratio.max():
        axes.axvline(lean, color="0.7", linewidth=0.8)
        axes.annotate("leaner does not burn cold", (lean, 0.98), xycoords=("data", "axes fraction"), rotation=90, va="top")
    axes.set(xlabel="air ratio, 1 = just enough", ylabel="flame temperature, °C", xlim=(ratio.min(), ratio.max()))
    axes.legend(frameon=False, loc="lower left")
    axes.grid(color="0.9")
    return axes


def products_against_air_ratio(
    *,
    gas: Gas | str | Mapping[str, float],
    air_ratio: Any = None,
    products: Sequence[str] = ("CO2", "CO", "H2", "O2"),
    site: Site | None = None,
    axes: Any = None,
) -> Any:
    """What is in the flame, as an analyser would read it dry, against the air ratio."""
    axes = _axes(axes)
    ratio = np.linspace(0.6, 2.0, 71) if air_ratio is None else np.asarray(air_ratio, dtype=float)
    dry = flame(gas=gas, air_ratio=ratio, site=site).dry()
    for symbol, (style, shade) in zip(products, _STYLES):
        axes.plot(ratio, dry[symbol] * 100, style, color=shade, label=symbol)
    axes.set(xlabel="air ratio, 1 = just enough", ylabel="share of the dry gas, %", xlim=(ratio.min(), ratio.max()))
    axes.set_ylim(0, None)
    axes.legend(frameon=False)
    axes.grid(color="0.9")
    return axes


def blower_and_system(
    *, burner: Burner, gauge_pressure: float, damper: float = 1.0, axes: Any = None
) -> Any:
    """The blower's curve in the site's air, what the burner asks at every flow, and where they meet."""
    axes = _axes(axes)
    flow_rate, pressure = burner.blower_curve(80)
    point = burner.run(gauge_pressure=float(gauge_pressure), damper=float(damper))
    density = _density(burner)
    here = point.air / density
    axes.plot(flow_rate * 1e3, pressure / inH2O, "-", color="black", label="blower, here")
    asked, system = burner.system_curve(gauge_pressure=float(gauge_pressure), damper=float(damper))
    shown = (system <= pressure.max() * 1.1) & (system >= 0.0)
    label = f"burner at {gauge_pressure / psi:.1f} psi, damper {damper:.0%}"
    axes.plot(asked[shown] * 1e3, system[shown] / inH2O, "--", color="0.35", label=label)
    axes.plot([here * 1e3], [point.blower_pressure / inH2O], "o", color="black", label=f"air ratio {point.air_ratio:.2f}")
    axes.set(xlabel="air, L/s as it passes", ylabel="static pressure, inches of water", xlim=(0, None), ylim=(0, None))
    axes.legend(frameon=False)
    axes.grid(color="0.9")
    return axes


def _density(burner: Burner) -> float:
    return float(burner._native.air_density)


def settings_table(*, burner: Burner, gauge_pressure: Any = None, damper: float = 1.0, axes: Any = None) -> Any:
    """The settings as curves: fire and air ratio against the gauge, with the damper left alone."""
    axes = _axes(axes)
    gauge = np.linspace(0.5, 12.0, 47) * psi if gauge_pressure is None else np.asarray(gauge_pressure, dtype=float)
    run = burner.run(gauge_pressure=gauge, damper=float(damper), invalid="nan")
    axes.plot(gauge / psi, run.heat_net / kW, "-", color="black", label="fire")
    axes.set(xlabel="gauge pressure, psi", ylabel="fire, kW net", xlim=(0, gauge.max() / psi), ylim=(0, None))
    other = axes.twinx()
    other.plot(gauge / psi, run.air_ratio, "--", color="0.35", label=f"air ratio, damper {damper:.0%}")
    other.axhline(1.0, color="0.7", linewidth=0.8)
    other.set(ylabel="air ratio, 1 = just enough", ylim=(0, min(4.0, float(np.nanmax(run.air_ratio)) * 1.05)))
    handles = [*axes.get_lines()[:1], *other.get_lines()[:1]]
    axes.legend(handles=handles, frameon=False, loc="upper center")
    axes.grid(color="0.9")
    return axes


def sheet_table(*, sheet: Sheet, axes: Any = None) -> Any:
    """The named settings of a sheet as a table to hang beside the burner."""
    axes = _axes(axes)
    titles = ["setting", "gauge\npsi", "damper\n% open", "fire\nkW net", "gas\ng/s", "air\nL/s", "air\nratio"]
    cells = [
        [
            row["name"],
            f"{row['gauge_pressure_pa'] / psi:.1f}",
            _cell(row["damper_opening"], 100.0, 0),
            f"{row['heat_net_w'] / kW:.1f}",
            f"{row['mass_flow_kg_per_s'] * 1e3:.2f}",
            _cell(row["air_flow_m3_per_s"], 1e3, 1),
            _cell(row["air_ratio"], 1.0, 2),
        ]
        for row in sheet["settings"]
    ]
    axes.set_axis_off()
    axes.set_title(sheet["name"])
    table = axes.table(cellText=cells, colLabels=titles, loc="upper center", cellLoc="center")
    table.auto_set_font_size(False)
    table.scale(1.0, 1.7)
    for (row, column), cell in table.get_celld().items():
        cell.set(edgecolor="0.6", facecolor="0.92" if row == 0 else "white")
        if row == 0:
            cell.set_height(cell.get_height() * 1.5)
    return axes


def _cell(value: float | None, factor: float, digits: int) -> str:
    return "-" if value is None else f"{value * factor:.{digits}f}"
