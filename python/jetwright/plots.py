"""Pictures with matplotlib (``pip install jetwright[plot]``): axes with units, lines told apart without color.

Every function draws into ``axes`` (a new figure's unless given) and returns it.
"""

from __future__ import annotations

from typing import Any, Mapping, Sequence

import numpy as np

from ._burning import autoignition, burning_range
from ._flame import flame
from ._flow import drills as drill_list
from ._flow import flow
from ._furnace import REIGNITES_ABOVE, Firing
from ._furnace import chamber as chamber_of
from ._furnace import wall as wall_of
from ._gas import Gas
from ._material import Material, as_material
from ._sheet import Burner, Sheet
from ._site import Site
from ._units import inH2O, kW, mm, psi

_ZERO = 273.15
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
    """What is in the flame, as an analyzer would read it dry, against the air ratio."""
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


def lighting_range(*, burner: Burner, damper: Any = None, axes: Any = None) -> Any:
    """Which gauge readings light a cold chamber, and which burn only in a glowing one, against the damper left alone.

    Until the file's ``[lighting]`` says where the head was seen to light, the limits of burning alone are drawn.
    """
    axes = _axes(axes)
    opening = np.linspace(0.15, 1.0, 35) if damper is None else np.asarray(damper, dtype=float)
    found = burner.lighting_range(damper=opening)
    bottom, top = 0.1 * psi, 30.0 * psi
    seen = bool(np.isfinite(found.cold_low).any())
    bands = [
        ("burns only in a glowing chamber", found.glowing_low, found.glowing_high, "0.9", None),
        ("within the limits of burning", found.within_limits_low, found.within_limits_high, "0.75", "...."),
    ]
    if seen:
        bands.append(("lights cold", found.cold_low, found.cold_high, "0.5", "////"))
    for label, low, high, shade, hatch in bands:
        low, high = np.clip(low, bottom, top) / psi, np.clip(high, bottom, top) / psi
        band = axes.fill_between(opening * 100, low, high, where=np.isfinite(low), facecolor=shade, hatch=hatch, label=label)
        band.set_edgecolor("white" if hatch else shade)
        axes.plot(opening * 100, low, "-", color="black", linewidth=0.9)
    axes.set(xlabel="damper left at, % open", ylabel="gauge pressure, psi", yscale="log")
    axes.set(xlim=(opening.min() * 100, opening.max() * 100), ylim=(bottom / psi, top / psi))
    axes.yaxis.set_major_formatter("{x:g}")
    axes.set_title("below the bands it goes out" if seen else "limits only: this head has not been seen to light")
    axes.legend(frameon=True, loc="lower right")
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


def wall_profile(
    *, layers: Sequence[tuple[Material | str, float]], hot_face: float, firing: Firing | None = None, axes: Any = None, **wall: Any
) -> Any:
    """Temperature through a wall that has been steady state; arguments as in ``jw.wall``, scalars.

    Every layer is shaded by turns and named, with its material's maximum service temperature as a short line at its inner face. With an
    ``firing`` (of the same wall) the profiles at the end of its steps stand beside it.
    """
    axes = _axes(axes)
    thickness = [float(part) for _, part in layers]
    depth = np.linspace(0.0, sum(thickness), 240)
    steady = wall_of(layers=layers, hot_face=float(hot_face), depth=depth, **wall)
    edges = np.concatenate([[0.0], np.cumsum(thickness)]) / mm
    top = 1.12 * (max([float(hot_face), *(as_material(material).limit for material, _ in layers)]) - _ZERO)
    for number, (material, part) in enumerate(layers):
        known = as_material(material)
        axes.axvspan(edges[number], edges[number + 1], color="0.95" if number % 2 == 0 else "0.88", linewidth=0)
        if part > 0.06 * sum(thickness):  # a sheet as thin as a line has no room for its name
            middle = (edges[number] + edges[number + 1]) / 2
            axes.text(middle, 0.985 * top, known.name or "own", ha="center", va="top", fontsize="small")
        reach = edges[number] + np.array([0.0, max(0.25 * (edges[number + 1] - edges[number]), 0.02 * edges[-1])])
        axes.plot(reach, [known.limit - _ZERO] * 2, ":", color="black", label="maximum service temperature" if number == 0 else None)
    axes.plot(depth / mm, steady.at_depth - _ZERO, "-", color="black", linewidth=1.8, label="steady state")
    if firing is not None:
        styles = (*_STYLES[1:], ((0, (6, 1, 1, 1, 1, 1)), "0.5"), ((0, (1, 4)), "black"))
        minutes = np.cumsum([leg.time for leg in firing.legs]) / 60
        for number, (step, (where, kelvin)) in enumerate(zip(firing.steps, firing.profiles)):
            style, shade = styles[number % len(styles)]
            label = f"{step.kind}, at {minutes[number]:.0f} min"
            axes.plot(where / mm, kelvin - _ZERO, linestyle=style, color=shade, label=label)
    axes.set(xlabel="depth behind the hot face, mm", ylabel="temperature, °C", xlim=(0, edges[-1]), ylim=(0, top))
    # Profiles fill the picture from corner to corner: the legend stands below it.
    axes.legend(frameon=False, fontsize="small", loc="upper center", bbox_to_anchor=(0.5, -0.14), ncols=2)
    return axes


def firing_course(*, firing: Firing, gas: Gas | str | Mapping[str, float] | None = None, axes: Any = None) -> Any:
    """Hot face and shell through a firing, its steps marked, with 760 degC and the gas's autoignition as lines.

    Above 760 degC a chamber re-ignites gas by itself; above its autoignition temperature it may.
    """
    axes = _axes(axes)
    minutes = firing.time / 60
    axes.plot(minutes, firing.hot_face - _ZERO, "-", color="black", linewidth=1.8, label="hot face")
    axes.plot(minutes, firing.outside - _ZERO, "--", color="0.35", label="shell")
    marks = [("re-ignites gas by itself, 760 °C", REIGNITES_ABOVE, ":")]
    lights = None if gas is None else autoignition(gas)
    if lights is not None:
        marks.append((f"may light gas, {lights - _ZERO:.0f} °C", lights, "-."))
    for name, kelvin, style in marks:
        axes.axhline(kelvin - _ZERO, linestyle=style, color="0.35", linewidth=1.0, label=name)
    top = 1.15 * (float(firing.hot_face.max()) - _ZERO)
    for number, (step, start, leg) in enumerate(zip(firing.steps, firing.starts, firing.legs)):
        if number:
            axes.axvline(start / 60, color="0.8", linewidth=0.8)
        if leg.time > 0.05 * firing.time[-1]:
            label = f"{step.kind}\n{leg.time / 60:.0f} min"
            axes.text((start + leg.time / 2) / 60, 0.985 * top, label, ha="center", va="top", fontsize="small")
    axes.set(xlabel="time, minutes", ylabel="temperature, °C", xlim=(0, minutes[-1]), ylim=(0, top))
    axes.legend(frameon=True, framealpha=1.0, edgecolor="none", fontsize="small", loc="center right")
    axes.grid(color="0.93")
    return axes


def fire_against_temperature(
    *, gas: Gas | str | Mapping[str, float], temperature: Any = None, axes: Any = None, **chamber: Any
) -> Any:
    """The fire that keeps each temperature of a chamber, and where its heat goes; arguments as in ``jw.chamber``."""
    axes = _axes(axes)
    kelvin = np.linspace(600.0, 1700.0, 90) if temperature is None else np.asarray(temperature, dtype=float)
    balance = chamber_of(gas=gas, chamber_temperature=kelvin, invalid="nan", **chamber)
    parts = [("into the work", balance.work), ("through the walls", balance.walls), ("out of openings", balance.openings)]
    parts = [part for part in parts if np.nanmax(part[1]) > 0]
    below = np.zeros_like(kelvin)
    for (name, part), shade in zip((*parts, ("up the flue", balance.flue)), ("0.5", "0.68", "0.82", "0.93")):
        axes.fill_between(kelvin - _ZERO, below / kW, (below + part) / kW, color=shade, linewidth=0, label=name)
        below = below + part
    axes.plot(kelvin - _ZERO, balance.fire / kW, "-", color="black", linewidth=1.8, label="the fire it takes")
    axes.set(xlabel="chamber, °C", ylabel="fire, kW net", xlim=(kelvin[0] - _ZERO, kelvin[-1] - _ZERO), ylim=(0, None))
    axes.legend(frameon=False, loc="upper left")
    axes.grid(color="0.93")
    return axes
