"""The coupled furnace model for anyone with another solver."""

from __future__ import annotations

import math
from typing import Any, Mapping

import numpy as np

from . import _native


def _plain(value: Any, path: str) -> Any:
    """Mappings, lists, text, flags and finite numbers as JSON knows them; keys that are ``None`` count as absent."""
    if isinstance(value, Mapping):
        prefix = f"{path}." if path else ""
        return {str(key): _plain(item, f"{prefix}{key}") for key, item in value.items() if item is not None}
    if isinstance(value, np.ndarray):
        value = value.tolist()
    if isinstance(value, (list, tuple)):
        return [_plain(item, f"{path}[{index}]") for index, item in enumerate(value)]
    if isinstance(value, np.generic):
        value = value.item()
    if isinstance(value, (bool, str, int)):
        return value
    if isinstance(value, float) and math.isfinite(value):
        return value
    accepted = "a mapping, a list, text, true, false or a finite number"
    raise ValueError(f"{path or 'the case'}: {value!r} is given; accepted: {accepted}")


def furnace_case(case: Mapping[str, Any]) -> list[dict[str, Any]]:
    """Takes one furnace through its stages: the model's comparison interface for anyone with another solver.

    Gas, walls, openings and contents are solved together through time: gas zones in series, radiation by a sum of gray
    gases, conduction through every wall build and into every content, air drawn in through the openings. Everything
    begins at 293.15 K, which is the temperature of the room too. SI units, kelvin.

    Parameters
    ----------
    case
        A plain mapping, the same as its JSON:

        ``gas``
            ``{"kind": "linear", "flame_temperature", "air_cp"}``: the available heat runs straight from 1 at 293.15 K to
            0 at the flame's temperature, and 3.789e-7 kg of gas and air belong to a joule (propane with 5 % of air too
            much), which counts where air that leaks in thins the gas; or ``{"kind": "propane", "air_ratio",
            "water_in_air"}`` with any named fuel or composition and the mole fraction of water in the air.
        ``radiation``
            ``"smith"`` (if absent) or ``{"gray_kappa"}``, one gray gas (1/m) of weight 1; a linear gas needs this one.
        ``gas_zones``, ``h_fired``, ``h_air``, ``h_off``, ``pressure``, ``volume``
            Zones, 1 to 3 (2 if absent); films of the gas, W/(m2 K), with a fire (15), with air alone (as with a fire)
            and with everything off (8); pressure of the room (101 325 Pa); empty volume of the chamber.
        ``walls``
            1 to 4 of ``{"area"}`` or ``{"radius", "length"}``, with ``emissivity``, ``outer_h`` (if absent, free
            convection and radiation of a shell 0.5 m high) and ``layers``, the hot one first: ``{"material",
            "thickness"}`` or ``{"rho_k_c": [density, conductivity, specific heat], "thickness"}``.
        ``openings``, ``leaks``
            ``{"area", "passage", "z1", "z2"}``: a hole that radiates, and passes air between its heights; at one height
            where ``z2`` is absent; never where ``z1`` is. ``{"area", "z1"}``: air only.
        ``stages``
            ``{"do": "fire", "fire", "leak"}`` (W; kg/s of air mixed in), ``{"do": "hold", "set", "most"}``,
            ``{"do": "air", "air", "draft"}``, ``{"do": "off", "draft"}``, each with one of ``for``,
            ``until_chamber_rises_to``, ``until_chamber_falls_to``, ``until_core_rises_to``; ``{"do": "put", "content"}``
            and ``{"do": "take"}``, which take no time, the last that was put in being the first taken out.
        ``content``
            ``{"kind": "bar", "diameter", "length", "emissivity"}`` with ``substance`` or ``rho_k_c``;
            ``{"kind": "lump", "mass", "c", "area", "emissivity", "volume"}``; ``{"kind": "crucible", "crucible_mass",
            "wall", "k_wall", "c_wall", "area", "emissivity", "volume", "inner_h", "charge", "charge_mass"}``: without
            ``k_wall`` and ``c_wall`` clay graphite, and ``"charge": "simple melt"`` an invented metal of 400 J/(kg K),
            besides 200 kJ/kg from 1270 to 1280 K, then 500 J/(kg K).

    Returns
    -------
    list of dict
        A row for every stage but ``put`` and ``take``: ``do``, ``seconds``, ``chamber`` (fourth-power mean of the hot
        faces), ``gas_exit``, ``faces`` (the builds, then the contents), ``fire_at_end``, ``chamber_highest``,
        ``chamber_lowest``, ``core`` (axis or charge of what was put in last), and the heats of the stage, J:
        ``fuel_heat``, ``flue_heat``, ``openings_heat``, ``shell_heat``, ``stored``. A stage that never reaches its end
        stops after 4e5 s.

    Raises
    ------
    ValueError
        Names the key, what was given, and what is accepted.

    Examples
    --------
    A box of insulating brick to 1200 °C and kept there for an hour:

    >>> import jetwright as jw
    >>> rows = jw.furnace_case({
    ...     "gas": {"kind": "propane", "air_ratio": 1.05, "water_in_air": 0.0098},
    ...     "volume": 0.028,
    ...     "walls": [{"area": 0.5, "emissivity": 0.75, "layers": [{"material": "insulating brick 26", "thickness": 0.114}]}],
    ...     "openings": [{"area": 0.006, "passage": 0.5}],
    ...     "stages": [
    ...         {"do": "fire", "fire": 20e3, "until_chamber_rises_to": 1473.15},
    ...         {"do": "hold", "set": 1473.15, "most": 20e3, "for": 3600},
    ...     ],
    ... })
    >>> [row["do"] for row in rows], rows[1]["fire_at_end"] < 20e3
    (['fire', 'hold'], True)
    """
    import json

    if not isinstance(case, Mapping):
        raise ValueError(f"the case: {case!r} is given; accepted: a mapping")
    rows: list[dict[str, Any]] = json.loads(_native.furnace_case(json.dumps(_plain(case, ""))))
    return rows
